// SPDX-License-Identifier: BSD-3-Clause
// The snow of several documents on one cover.
#include <pybind11/stl.h>

#include <array>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "binding.hpp"
#include "coverframe/actions/compare.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe::binding {
namespace {

using namespace pybind11::literals;

/// Load [kPa], document, risk category, source, rain [kPa], return period [years].
using Ground = std::tuple<double, std::string, std::string, std::string, std::optional<double>, std::optional<int>>;

constexpr std::array documents{SnowDocument::asce7_10, SnowDocument::asce7_16, SnowDocument::asce7_22,
                               SnowDocument::nbc2015,  SnowDocument::nbc2020,  SnowDocument::en1991_1_3};

/// Least and greatest factor on snow by name of the document.
py::dict snow_factors() {
    py::dict factors;
    for (const SnowDocument document : documents) {
        const SnowFactorRange range = snow_factor_range(document);
        factors[name_of(document)] = py::make_tuple(range.low, range.high);
    }
    return factors;
}

SnowDocument document_named(const std::string& name) {
    for (const SnowDocument document : documents) {
        if (name == name_of(document)) return document;
    }
    throw std::invalid_argument("no document is called " + name);
}

GroundSnow ground_of(const Ground& ground) {
    const auto& [load, document, risk_category, source, rain, years] = ground;
    GroundSnow snow;
    snow.load = from_kPa(load);
    snow.document = document_named(document);
    snow.risk_category = risk_category;
    snow.source = source;
    if (rain) snow.rain = from_kPa(*rain);
    snow.return_period_years = years;
    return snow;
}

double kpa(const PlanLoad& load) { return in_kPa(load.value); }

py::dict dict_of(const ComparedDocument& row) {
    const auto& arrangements = row.arrangements;
    using One = ComparedArrangement;
    const SnowBasis& basis = row.plan.basis.snow;
    return py::dict(
        "document"_a = name_of(basis.document), "ground_snow_kpa"_a = in_kPa(row.plan.site.ground_snow.load),
        "ground_source"_a = row.plan.site.ground_snow.source, "exposure_factor"_a = basis.exposure_factor.value,
        "thermal_factor"_a = basis.thermal_factor.value, "snow_factor"_a = row.plan.basis.combination.snow.value,
        "balanced_kpa"_a = kpa(row.balanced), "greatest_kpa"_a = kpa(row.greatest), "greatest_in"_a = row.greatest_in,
        "factored_kpa"_a = kpa(row.factored), "shedding_deg"_a = in_deg(row.shedding.value), "notes"_a = row.notes,
        "arrangement"_a = texts(arrangements, [](const One& a) { return a.name; }),
        "clause"_a = texts(arrangements, [](const One& a) { return text_of(a.clause); }),
        "port_kpa"_a = numbers(arrangements, [](const One& a) { return kpa(a.port); }),
        "starboard_kpa"_a = numbers(arrangements, [](const One& a) { return kpa(a.starboard); }));
}

py::list compare(const Plan& plan, const std::vector<Ground>& others, double spacing_m) {
    std::vector<GroundSnow> grounds;
    for (const Ground& ground : others) grounds.push_back(ground_of(ground));
    py::list rows;
    for (const ComparedDocument& row : compare_snow(plan, grounds, drawn_stations(plan, from_m(spacing_m)))) {
        rows.append(dict_of(row));
    }
    return rows;
}

/// Name and loads [kPa] of every arrangement.
py::list by_slope(const Plan& plan, const std::optional<Ground>& ground, const Numbers& slopes, double half_breadth_m) {
    std::vector<Angle> angles;
    for (py::ssize_t i = 0; i < slopes.size(); ++i) angles.push_back(from_deg(slopes.data()[i]));
    const Plan judged = ground ? judged_by(plan, ground_of(*ground)) : plan;
    py::list rows;
    for (const LoadBySlope& row : load_by_slope(judged, angles, from_m(half_breadth_m))) {
        rows.append(py::make_tuple(row.name, numbers(row.load, kpa)));
    }
    return rows;
}

}  // namespace

void bind_compare(py::module_& module) {
    module.def("snow_factors", &snow_factors);
    module.def("compare_snow", &compare);
    module.def("load_by_slope", &by_slope);
}

}  // namespace coverframe::binding
