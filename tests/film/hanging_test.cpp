// SPDX-License-Identifier: BSD-3-Clause
#include "film/kernel/hanging.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

#include "../close.hpp"

using namespace coverframe;
using kernel::fitting_length;
using kernel::FittingLength;

namespace {

/// The integral by Simpson's rule on many intervals.
double simpson(double H, double L, double h, double W, double EA) {
    constexpr int intervals = 20000;
    const auto integrand = [&](int i) {
        const double Z = h + W * L / H * (double(i) / intervals - 0.5);
        const double rho = std::sqrt(L * L + Z * Z);
        return rho / (1 + H * rho / (L * EA));
    };
    double sum = integrand(0) + integrand(intervals);
    for (int i = 1; i < intervals; ++i) sum += (i % 2 == 1 ? 4 : 2) * integrand(i);
    return sum / (3 * intervals);
}

/// Level forces at which the bow is this many times the span.
std::vector<double> bows() { return {1e-4, 0.1, 0.399999, 0.400001, 0.6, 0.799999, 0.800001, 1.2, 2.0}; }

}  // namespace

TEST_CASE("hanging: the length agrees with a fine sum, at every number of points") {
    constexpr double L = 1.3, W = 300, EA = 12e3;
    for (const double h : {0.0, -0.4, -1.5, 0.7}) {
        for (const double bow : bows()) {
            CAPTURE(h);
            CAPTURE(bow);
            const double H = W / bow;
            CHECK(close(fitting_length(H, L, h, W, EA).value, simpson(H, L, h, W, EA), bow < 0.01 ? 1e-12 : 1e-14));
        }
    }
}

TEST_CASE("hanging: derivatives of the length") {
    constexpr double L = 1.3, W = 300, EA = 12e3, h = -0.6;
    for (const double bow : bows()) {
        CAPTURE(bow);
        const double H = W / bow;
        const FittingLength fit = fitting_length(H, L, h, W, EA);
        // Central differences of fourth order.
        const auto slope = [](auto value, double step) {
            return (8 * (value(step) - value(-step)) - value(2 * step) + value(-2 * step)) / (12 * step);
        };
        const double by_H = slope([&](double d) { return fitting_length(H + d, L, h, W, EA).value; }, 1e-3 * H);
        const double by_L = slope([&](double d) { return fitting_length(H, L + d, h, W, EA).value; }, 1e-3);
        const double by_h = slope([&](double d) { return fitting_length(H, L, h + d, W, EA).value; }, 1e-3);
        CHECK(close(fit.by_H, by_H, 1e-8));
        CHECK(close(fit.by_L, by_L, 1e-8));
        CHECK(close(fit.by_h, by_h, 1e-8));
    }
}

TEST_CASE("hanging: from any level force the strip comes to the same state") {
    const std::array<double, 3> upper{3, 0, 1};
    const std::array<double, 3> lower{3, 1.3, 0.2};
    const Strip strip{12.5e3, 1.53, 250};
    const StripState settled = strip_state(strip, upper, lower);
    for (const double share : {1e-6, 0.1, 0.9, 1.0, 1.001, 3.0, 1e6}) {
        CAPTURE(share);
        const kernel::HangingState near = kernel::hanging_near(strip, upper, lower, share * settled.level_force, 1e-15);
        CHECK(close(near.strip.level_force, settled.level_force, 1e-13));
        // A step that is under the tolerance leaves an error of the order of its square.
        const kernel::HangingState loose = kernel::hanging_near(strip, upper, lower, share * settled.level_force, 1e-3);
        CHECK(loose.change <= 1e-3);
        CHECK(close(loose.strip.level_force, settled.level_force, 2 * loose.change * loose.change + 1e-13));
    }
}
