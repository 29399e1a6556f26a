// SPDX-License-Identifier: BSD-3-Clause
// Film over whole arrays: strip, rail, ponding, ageing; girth of a plan's cover along the boat. The interpreter lock
// is released around the loop only.
#include <pybind11/stl.h>

#include <array>
#include <limits>
#include <vector>

#include "arrays.hpp"
#include "coverframe/film/ageing.hpp"
#include "coverframe/film/ponding.hpp"
#include "coverframe/film/rail.hpp"
#include "coverframe/film/strip.hpp"
#include "coverframe/plan/girth.hpp"
#include "coverframe/units/crossing.hpp"
#include "coverframe/units/text.hpp"

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
std::array<double, 9> strip_a_metre_wide(const std::array<double, 5>& given) {
    const auto [span, rise, load_kpa, tension, stiffness] = given;
    const std::array<double, 3> upper{};
    const std::array<double, 3> lower{0, span, rise};
    const Strip strip{.stiffness = stiffness,
                      .free_length = free_length_for_tension(stiffness, tension, upper, lower),
                      .load = in_Pa(from_kPa(load_kpa)) * span};
    const StripState state = strip_state(strip, upper, lower);
    const Hollow hollow = hollow_of(state);
    return {state.level_force, state.tension_upper,     state.tension_lower, -state.pull_upper[2], -state.pull_lower[2],
            state.sag,         state.slack ? 1.0 : 0.0, hollow.depth,        hollow.area};
}

/// Turn, pull on the band (least, greatest), lift of the band (least, greatest), relief (least, greatest), what presses
/// on the rail without friction, down and inwards.
std::array<double, 9> over_rail(const std::array<double, 4>& given) {
    const auto [tension, arrives, leaves, friction] = given;
    const RailTurn r = turn_over_rail(tension, from_deg(arrives), from_deg(leaves), friction);
    return {in_deg(from_rad(r.turn)),
            r.band_pull[0],
            r.band_pull[1],
            r.band_lift[0],
            r.band_lift[1],
            r.relief[0],
            r.relief[1],
            r.rail_down,
            r.rail_inwards};
}

/// Sag, level tension, critical tension, settling tension, longest span, both criteria (0 or 1), and what would help:
/// infinite, or a span of zero, where nothing does.
std::array<double, 10> ponding(const std::array<double, 5>& given) {
    const auto [span, fall, load_kpa, tension, stiffness] = given;
    constexpr double none = std::numeric_limits<double>::infinity();
    const Ponding p = ponding_of({span, fall, stiffness, tension, in_Pa(from_kPa(load_kpa))});
    const double settles = settling_tension(span, fall, in_Pa(from_kPa(load_kpa)));
    const double holds = p.holds_water ? 1.0 : 0.0;
    if (p.drains) {
        return {p.sag, p.tension, p.critical_tension, settles, p.longest_span, 1.0, holds, fall, tension, span};
    }
    return {p.sag,
            p.tension,
            p.critical_tension,
            settles,
            p.longest_span,
            0.0,
            holds,
            p.fall_needed.value_or(none),
            p.pretension_needed.value_or(none),
            p.span_needed.value_or(0.0)};
}

/// Girth of the cover at each x [m].
py::object girths(const Plan& plan, const Shape& shape, const Numbers& x) {
    const Column column(x, shape);
    const py::tuple results = evaluate_all<1>(shape, [&](std::size_t i) {
        const auto girth = girth_at(plan, from_m(column[i]));
        if (!girth) {
            throw InputError("film.girth.range", "/x_m", std::to_string(column[i]),
                             "the rail of this boat runs from x = " +
                                 write(plan.boat.rail.front().x, "m") + " to " + write(plan.boat.rail.back().x, "m") +
                                 "; ask for the girth there");
        }
        return std::array<double, 1>{in_m(*girth)};
    });
    return results[0];
}

/// Width, length, x of the widest place [m], and its name.
py::tuple needed_sheet(const Plan& plan) {
    const auto sheet = sheet_needed(plan);
    expect(sheet.has_value(), "a cover that is drawn");
    return py::make_tuple(in_m(sheet->width), in_m(sheet->length), in_m(sheet->widest_at), sheet->place);
}

/// Binds a rule of `in` numbers that gives `out` numbers, over arrays.
template <std::size_t in, std::size_t out>
void bind_over(py::module_& module, const char* name, std::array<double, out> (*rule)(const std::array<double, in>&)) {
    module.def(name, [rule](const Shape& shape, const std::array<Numbers, in>& given) {
        std::vector<Column> columns;
        for (const Numbers& each : given) columns.emplace_back(each, shape);
        return evaluate_all<out>(shape, [&](std::size_t i) {
            std::array<double, in> at{};
            for (std::size_t k = 0; k < in; ++k) at[k] = columns[k][i];
            return rule(at);
        });
    });
}

using One = std::array<double, 1>;
using Four = std::array<double, 4>;
using Five = std::array<double, 5>;

}  // namespace

void bind_film(py::module_& module) {
    module.def("girth", &girths);
    module.def("sheet_needed", &needed_sheet);
    bind_over<5, 9>(module, "strip", &strip_a_metre_wide);
    bind_over<4, 9>(module, "over_rail", &over_rail);
    bind_over<5, 10>(module, "ponding", &ponding);
    bind_over<4, 1>(module, "span_at_limit",
                    [](const Four& a) { return One{span_at_limit(a[0], a[1], a[2], in_Pa(from_kPa(a[3])))}; });
    bind_over<4, 1>(module, "modulus_after", [](const Four& a) { return One{modulus_after(a[0], a[1], a[2], a[3])}; });
    bind_over<4, 1>(module, "tension_after", [](const Four& a) { return One{tension_after(a[0], a[1], a[2], a[3])}; });
    bind_over<4, 1>(module, "tension_warmed",
                    [](const Four& a) { return One{tension_warmed(a[0], a[1], a[2], a[3])}; });
    bind_over<5, 1>(module, "stretch_left",
                    [](const Five& a) { return One{stretch_left(a[0], a[1], a[2], a[3], a[4])}; });
}

}  // namespace coverframe::binding
