// SPDX-License-Identifier: BSD-3-Clause
#include <cmath>

#include "coverframe/base/error.hpp"
#include "coverframe/film/strip.hpp"

namespace coverframe {

double span_at_limit(double stiffness, double pretension, double limit, double load) {
    const auto positive = [](double value) { return std::isfinite(value) && value > 0; };
    if (!positive(stiffness) || !positive(limit) || !positive(load) || !(pretension >= 0 && pretension < limit)) {
        throw InputError("film.strip", "", "",
                         "stiffness, limit and load must be over zero, and the film tighter at its limit than before");
    }
    const auto pull = [&](double span) {
        const std::array<double, 3> end{0, span, 0};
        return strip_state({stiffness, span / (1 + pretension / stiffness), load * span}, {0, 0, 0}, end).tension_upper;
    };
    double low = 1e-6, high = 1e-3;
    while (pull(high) < limit) {
        low = high;
        high *= 2;
    }
    while (high - low > 1e-12 * high) {
        const double middle = 0.5 * (low + high);
        (pull(middle) < limit ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

}  // namespace coverframe
