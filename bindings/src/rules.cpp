// SPDX-License-Identifier: BSD-3-Clause
// Rules of the documents over whole arrays.
//
// Every function is given the shape of its result, its choice if it has one, and one array for each number: either as
// many items as the result, row after row, or a single item that serves all. The interpreter lock is released around
// the loop only.
#include <pybind11/stl.h>

#include <array>
#include <string>
#include <utility>
#include <vector>

#include "binding.hpp"
#include "coverframe/actions/asce7_22.hpp"
#include "coverframe/actions/en1991_1_3.hpp"
#include "coverframe/film/strip.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe::binding {
namespace {

using Shape = std::vector<py::ssize_t>;

std::size_t size_of(const Shape& shape) {
    std::size_t size = 1;
    for (const py::ssize_t extent : shape) size *= static_cast<std::size_t>(extent);
    return size;
}

/// A read-only look at one argument.
class Column {
public:
    Column(const Numbers& values, const Shape& shape)
        : data_(values.data()), step_(values.size() == 1 ? 0 : 1) {
        expect(values.size() == 1 || static_cast<std::size_t>(values.size()) == size_of(shape), "size of a column");
    }
    double operator[](std::size_t i) const { return data_[i * step_]; }

private:
    const double* data_;
    std::size_t step_;
};

/// "/1/2" for an item of a two-dimensional array.
std::string pointer_to(std::size_t item, const Shape& shape) {
    std::string pointer;
    for (auto extent = shape.rbegin(); extent != shape.rend(); ++extent) {
        const auto length = static_cast<std::size_t>(*extent);
        pointer = "/" + std::to_string(item % length) + pointer;
        item /= length;
    }
    return pointer;
}

/// The same error with the place of the item in it. A single number has no place.
InputError at_item(const InputError& error, std::size_t item, const Shape& shape) {
    if (shape.empty()) return error;
    std::vector<Problem> problems = error.problems();
    for (Problem& problem : problems) {
        problem.where = pointer_to(item, shape);
        problem.advice += " (item " + problem.where.substr(1) + ")";
    }
    return InputError(std::move(problems));
}

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

/// As above for a rule that gives one number.
template <class Rule>
py::array_t<double> evaluate(const Shape& shape, Rule rule) {
    py::array_t<double> result(shape);
    double* to = result.mutable_data();
    const std::size_t size = size_of(shape);
    {
        const py::gil_scoped_release unlocked;
        std::size_t i = 0;
        try {
            for (; i < size; ++i) to[i] = rule(i);
        } catch (const InputError& error) {
            throw at_item(error, i, shape);
        }
    }
    return result;
}

void bind_asce7_22(py::module_& module) {
    using asce7_22::RiskCategory;
    using Document = asce7_22::Surface;
    const auto surface = [](bool slippery) { return slippery ? Document::unobstructed_slippery : Document::other; };

    module.def("asce7_22_flat_load", [](const Shape& shape, const Numbers& ground, const Numbers& exposure,
                                        const Numbers& thermal) {
        const Column p_g(ground, shape), c_e(exposure, shape), c_t(thermal, shape);
        return evaluate(shape, [&](std::size_t i) {
            return in_kPa(asce7_22::flat_load_7_3(from_kPa(p_g[i]), c_e[i], c_t[i]));
        });
    });
    module.def("asce7_22_minimum_load", [](const Shape& shape, int category, const Numbers& ground) {
        const Column p_g(ground, shape);
        return evaluate(shape, [&](std::size_t i) {
            return in_kPa(asce7_22::minimum_load_7_3_3(from_kPa(p_g[i]), static_cast<RiskCategory>(category)));
        });
    });
    module.def("asce7_22_slope_factor", [surface](const Shape& shape, bool slippery, const Numbers& slope,
                                                  const Numbers& thermal) {
        const Column theta(slope, shape), c_t(thermal, shape);
        return evaluate(shape, [&](std::size_t i) {
            return asce7_22::slope_factor_7_4(from_deg(theta[i]), c_t[i], surface(slippery));
        });
    });
    module.def("asce7_22_sloped_load", [](const Shape& shape, const Numbers& flat, const Numbers& factor) {
        const Column p_f(flat, shape), c_s(factor, shape);
        return evaluate(shape, [&](std::size_t i) {
            return in_kPa(asce7_22::sloped_load_7_4(from_kPa(p_f[i]), c_s[i]));
        });
    });
    module.def("asce7_22_unit_weight", [](const Shape& shape, const Numbers& ground) {
        const Column p_g(ground, shape);
        return evaluate(shape, [&](std::size_t i) {
            return in_kN_per_m3(asce7_22::unit_weight_7_7(from_kPa(p_g[i])));
        });
    });
    module.def("asce7_22_drift_height", [](const Shape& shape, const Numbers& ground, const Numbers& fetch,
                                           const Numbers& wind) {
        const Column p_g(ground, shape), l_u(fetch, shape), w_2(wind, shape);
        return evaluate(shape, [&](std::size_t i) {
            return in_m(asce7_22::drift_height_7_6(from_kPa(p_g[i]), from_m(l_u[i]), w_2[i]));
        });
    });
    module.def("asce7_22_unbalanced_gable", [](const Shape& shape, const Numbers& sloped, const Numbers& ground,
                                      const Numbers& slope, const Numbers& width, const Numbers& wind) {
        const Column p_s(sloped, shape), p_g(ground, shape), theta(slope, shape), w(width, shape), w_2(wind, shape);
        return evaluate_all<4>(shape, [&](std::size_t i) {
            const asce7_22::UnbalancedGable gable = asce7_22::unbalanced_gable_7_6_1({.sloped_load = from_kPa(p_s[i]),
                                                                                      .ground_load = from_kPa(p_g[i]),
                                                                                      .slope = from_deg(theta[i]),
                                                                                      .eave_to_ridge = from_m(w[i]),
                                                                                      .winter_wind = w_2[i]});
            return std::array<double, 4>{in_kPa(gable.windward), in_kPa(gable.leeward_surcharge),
                                         in_m(gable.surcharge_width), in_m(gable.drift_height)};
        });
    });
}

void bind_en1991_1_3(py::module_& module) {
    using en1991_1_3::Sliding;
    using en1991_1_3::Topography;

    module.def("en1991_1_3_exposure_coefficient", [](int topography) {
        return en1991_1_3::exposure_coefficient_5_2_7(static_cast<Topography>(topography));
    });
    module.def("en1991_1_3_shape_coefficient", [](const Shape& shape, bool free_to_slide, const Numbers& slope) {
        const Column alpha(slope, shape);
        const Sliding sliding = free_to_slide ? Sliding::free : Sliding::prevented;
        return evaluate(shape, [&](std::size_t i) {
            return en1991_1_3::shape_coefficient_pitched_5_3_3(from_deg(alpha[i]), sliding);
        });
    });
    module.def("en1991_1_3_roof_load", [](const Shape& shape, const Numbers& ground, const Numbers& coefficient,
                               const Numbers& exposure, const Numbers& thermal) {
        const Column s_k(ground, shape), mu(coefficient, shape), c_e(exposure, shape), c_t(thermal, shape);
        return evaluate(shape, [&](std::size_t i) {
            return in_kPa(en1991_1_3::roof_load_5_2(from_kPa(s_k[i]), mu[i], c_e[i], c_t[i]));
        });
    });
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

void bind_strip(py::module_& module) {
    module.def("strip", [](const Shape& shape, const Numbers& span, const Numbers& rise, const Numbers& load,
                           const Numbers& tension, const Numbers& stiffness) {
        const Column l(span, shape), h(rise, shape), q(load, shape), t(tension, shape), ea(stiffness, shape);
        return evaluate_all<9>(
            shape, [&](std::size_t i) { return strip_a_metre_wide(l[i], h[i], q[i], t[i], ea[i]); });
    });
}

}  // namespace

void bind_rules(py::module_& module) {
    bind_asce7_22(module);
    bind_en1991_1_3(module);
    bind_strip(module);
}

}  // namespace coverframe::binding
