// SPDX-License-Identifier: BSD-3-Clause
// The film strip over whole arrays. The interpreter lock is released around the loop only.
#include <array>

#include "arrays.hpp"
#include "coverframe/film/strip.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe::binding {
namespace {

/// Calls `rule(i)`, which gives `count` numbers, for every item; one array a number.
/// \throws InputError of the first item the rule refuses, with its place
template <std::size_t count, class Rule>
py::tuple evaluate_all(const Shape& shape, Rule rule) {
    std::array<py::array_t<double>, count> results;
    std::array<double*, count> to{};
    for (std::size_t k = 0; k < count; ++k) {
        results[k] = py::array_t<double>(shape);
        to[k] = results[k].mutable_data();
    }
    const std::size_t size = size_of(shape);
    {
        const py::gil_scoped_release unlocked;
        std::size_t i = 0;
        try {
            for (; i < size; ++i) {
                const std::array<double, count> values = rule(i);
                for (std::size_t k = 0; k < count; ++k) to[k][i] = values[k];
            }
        } catch (const InputError& error) {
            throw at_item(error, i, shape);
        }
    }
    return py::tuple(py::cast(results));
}

/// One strip a metre wide: level force, tension at both ends, vertical pull on both supports (down positive), sag,
/// slack (0 or 1), depth and cross-section of the hollow. [N/m], [m], [m2]
std::array<double, 9> strip_a_metre_wide(double span, double rise, double load_kpa, double tension, double stiffness) {
    const std::array<double, 3> upper{};
    const std::array<double, 3> lower{0, span, rise};
    const Strip strip{.stiffness = stiffness,
                      .free_length = free_length_for_tension(stiffness, tension, upper, lower),
                      .load = in_Pa(from_kPa(load_kpa)) * span};
    const StripState state = strip_state(strip, upper, lower);
    const Hollow hollow = hollow_of(state);
    return {state.level_force,    state.tension_upper, state.tension_lower, -state.pull_upper[2], -state.pull_lower[2],
            state.sag,            state.slack ? 1.0 : 0.0, hollow.depth,    hollow.area};
}

}  // namespace

void bind_strip(py::module_& module) {
    module.def("strip", [](const Shape& shape, const Numbers& span, const Numbers& rise, const Numbers& load,
                           const Numbers& tension, const Numbers& stiffness) {
        const Column l(span, shape), h(rise, shape), q(load, shape), t(tension, shape), ea(stiffness, shape);
        return evaluate_all<9>(
            shape, [&](std::size_t i) { return strip_a_metre_wide(l[i], h[i], q[i], t[i], ea[i]); });
    });
}

}  // namespace coverframe::binding
