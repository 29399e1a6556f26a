// SPDX-License-Identifier: BSD-3-Clause
// The assessment: its tables as dictionaries of columns, its reports and drawings as text.
#include <limits>
#include <string>
#include <utility>
#include <vector>

#include "binding.hpp"
#include "coverframe/assess/assess.hpp"
#include "coverframe/report/drawing.hpp"
#include "coverframe/report/report.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe::binding {
namespace {

using namespace py::literals;

/// NaN is what NumPy and pandas call "no value".
double or_none(const std::optional<double>& value) {
    return value ? *value : std::numeric_limits<double>::quiet_NaN();
}

py::dict findings(const Assessment& a) {
    const auto& rows = a.findings;
    return py::dict("check"_a = texts(rows, [](const Finding& f) { return f.check; }),
                    "part"_a = texts(rows, [](const Finding& f) { return f.part; }),
                    "clause"_a = texts(rows, [](const Finding& f) { return text_of(f.clause); }),
                    "situation"_a = texts(rows, [](const Finding& f) { return f.situation; }),
                    "demand"_a = numbers(rows, [](const Finding& f) { return f.demand; }),
                    "capacity"_a = numbers(rows, [](const Finding& f) { return f.capacity; }),
                    "unit"_a = texts(rows, [](const Finding& f) { return f.unit; }),
                    "utilisation"_a = numbers(rows, [](const Finding& f) { return or_none(f.utilisation); }),
                    "verdict"_a = texts(rows, [](const Finding& f) { return name_of(f.verdict); }),
                    "sentence"_a = texts(rows, [](const Finding& f) { return f.sentence; }),
                    "x_m"_a = numbers(rows, [](const Finding& f) { return or_none(f.x); }));
}

/// (symbol, value, unit, formula, clause) a line.
py::list lines_of(const std::vector<Term>& terms) {
    py::list lines;
    for (const Term& t : terms) lines.append(py::make_tuple(t.symbol, t.value, t.unit, t.formula, text_of(t.clause)));
    return lines;
}

py::list workings(const Assessment& a) {
    py::list all;
    for (const Finding& f : a.findings) all.append(lines_of(f.workings));
    return all;
}

/// Index of the governing finding, -1 if there is none.
py::ssize_t governing_index(const Assessment& a) {
    const Finding* worst = governing(a.findings);
    return worst == nullptr ? -1 : worst - a.findings.data();
}

const char* name_of_limit(Limit limit) { return limit == Limit::strength ? "strength" : "service"; }
const char* name_of_bound(Bound bound) { return bound == Bound::low ? "low" : "high"; }

py::dict situations(const Assessment& a) {
    using Row = SituationResult;
    const auto& rows = a.situations;
    const auto arrangement = [&a](const Row& r) {
        const int index = r.situation.arrangement;
        return index < 0 ? std::string() : a.arrangements.at(static_cast<std::size_t>(index)).name;
    };
    return py::dict(
        "name"_a = texts(rows, [](const Row& r) { return r.situation.name; }),
        "arrangement"_a = texts(rows, arrangement),
        "limit"_a = texts(rows, [](const Row& r) { return name_of_limit(r.situation.limit); }),
        "permanent_factor"_a = numbers(rows, [](const Row& r) { return r.situation.permanent_factor; }),
        "snow_factor"_a = numbers(rows, [](const Row& r) { return r.situation.snow_factor; }),
        "film_tension"_a = texts(rows, [](const Row& r) { return name_of_bound(r.situation.film_tension); }),
        "strap_stiffness"_a = texts(rows, [](const Row& r) { return name_of_bound(r.situation.strap_stiffness); }),
        "status"_a = texts(rows, [](const Row& r) { return name_of(r.status); }),
        "message"_a = texts(rows, [](const Row& r) { return r.message; }),
        "vertical_load_n"_a = numbers(rows, [](const Row& r) { return r.vertical_load; }),
        "vertical_reaction_n"_a = numbers(rows, [](const Row& r) { return r.vertical_reaction; }),
        "ridge_sag_m"_a = numbers(rows, [](const Row& r) { return r.ridge_sag; }),
        "film_sag_m"_a = numbers(rows, [](const Row& r) { return r.film_sag; }));
}

py::dict forces(const Assessment& a) {
    using Row = ForceRange;
    const auto& rows = a.forces;
    return py::dict("part"_a = texts(rows, [](const Row& r) { return r.part; }),
                    "quantity"_a = texts(rows, [](const Row& r) { return r.quantity; }),
                    "unit"_a = texts(rows, [](const Row& r) { return r.unit; }),
                    "least"_a = numbers(rows, [](const Row& r) { return r.least; }),
                    "least_in"_a = texts(rows, [](const Row& r) { return r.least_in; }),
                    "greatest"_a = numbers(rows, [](const Row& r) { return r.greatest; }),
                    "greatest_in"_a = texts(rows, [](const Row& r) { return r.greatest_in; }));
}

py::dict stations(const Assessment& a) {
    using Row = CoverStation;
    const auto& rows = a.stations;
    return py::dict("x_m"_a = numbers(rows, [](const Row& r) { return in_m(r.x); }),
                    "slope_deg"_a = numbers(rows, [](const Row& r) { return in_deg(r.slope); }),
                    "half_breadth_m"_a = numbers(rows, [](const Row& r) { return in_m(r.half_breadth); }));
}

/// One array a station: a row for each point, its share and its load [kPa].
py::list fields(const std::vector<LoadProfile>& profiles) {
    py::list all;
    for (const LoadProfile& profile : profiles) {
        py::array_t<double> points({profile.size(), std::size_t{2}});
        double* to = points.mutable_data();
        for (const LoadPoint& point : profile) {
            *to++ = point.share;
            *to++ = in_kPa(point.load.value);
        }
        all.append(std::move(points));
    }
    return all;
}

py::list arrangements(const Assessment& a) {
    const auto kpa = [](const PlanLoad& load) { return in_kPa(load.value); };
    py::list all;
    for (const Arrangement& r : a.arrangements) {
        all.append(py::make_tuple(r.name, text_of(r.clause), r.note, numbers(r.port, kpa), numbers(r.starboard, kpa),
                                  fields(r.port_field), fields(r.starboard_field), lines_of(r.workings)));
    }
    return all;
}

void add_strip(py::dict& columns, const std::vector<StationShape>& rows, const std::string& side,
               StripState StationShape::*strip) {
    const auto add = [&](const char* name, auto get) {
        columns[py::str(side + name)] = numbers(rows, [&](const StationShape& r) { return get(r.*strip); });
    };
    add("_span_m", [](const StripState& s) { return s.span; });
    add("_rise_m", [](const StripState& s) { return s.rise; });
    add("_sag_m", [](const StripState& s) { return s.sag; });
    add("_level_force_n", [](const StripState& s) { return s.level_force; });
    add("_tension_upper_n", [](const StripState& s) { return s.tension_upper; });
    add("_tension_lower_n", [](const StripState& s) { return s.tension_lower; });
    columns[py::str(side + "_slack")] =
        numbers(rows, [&](const StationShape& r) { return (r.*strip).slack ? 1.0 : 0.0; }).attr("astype")("bool");
}

py::dict shape(const Assessment& a) {
    using Row = StationShape;
    const auto& rows = a.shape;
    py::dict columns("x_m"_a = numbers(rows, [](const Row& r) { return r.x; }),
                     "half_breadth_m"_a = numbers(rows, [](const Row& r) { return r.half_breadth; }),
                     "rail_z_m"_a = numbers(rows, [](const Row& r) { return r.rail_z; }),
                     "ridge_drawn_m"_a = numbers(rows, [](const Row& r) { return r.ridge_drawn; }),
                     "ridge_loaded_m"_a = numbers(rows, [](const Row& r) { return r.ridge_loaded; }),
                     "ridge_aside_m"_a = numbers(rows, [](const Row& r) { return r.ridge_aside; }));
    add_strip(columns, rows, "port", &Row::port);
    add_strip(columns, rows, "starboard", &Row::starboard);
    return columns;
}

/// Plans are never changed once made, so the interpreter may go on while one is assessed.
Assessment assess_plan(const Plan& plan, bool with_workings, double station_spacing_m) {
    return assess(plan, {.workings = with_workings, .station_spacing = from_m(station_spacing_m)});
}

template <std::string (*draw)(const Assessment&, const DrawingOptions&)>
std::string drawing(const Assessment& a, double width_px) {
    return draw(a, {.width = width_px});
}

}  // namespace

void bind_assessment(py::module_& module) {
    const py::call_guard<py::gil_scoped_release> unlocked;
    py::class_<Assessment>(module, "Assessment")
        .def_property_readonly("outcome", [](const Assessment& a) { return name_of(a.outcome); })
        .def_property_readonly("exit_code", [](const Assessment& a) { return exit_code(a.outcome); })
        .def_property_readonly("shape_of", [](const Assessment& a) { return a.shape_of; })
        .def("failures", [](const Assessment& a) { return texts(a.failures, [](const std::string& s) { return s; }); })
        .def("assumptions",
             [](const Assessment& a) { return texts(a.assumptions, [](const std::string& s) { return s; }); })
        .def("governing_index", &governing_index)
        .def("findings", &findings)
        .def("workings", &workings)
        .def("situations", &situations)
        .def("forces", &forces)
        .def("stations", &stations)
        .def("arrangements", &arrangements)
        .def("shape", &shape)
        .def("verdict_line", &verdict_line, unlocked)
        .def("text", &text_report, unlocked)
        .def("json", &json_report, unlocked)
        .def("job_sheet", [](const Assessment& assessment) { return job_sheet(assessment); }, unlocked)
        .def("side_view", &drawing<side_view>, py::arg("width_px"), unlocked)
        .def("plan_view", &drawing<plan_view>, py::arg("width_px"), unlocked)
        .def("section_view", &drawing<section_view>, py::arg("width_px"), unlocked);
    module.def("assess", &assess_plan, py::arg("plan"), py::arg("workings"), py::arg("station_spacing_m"), unlocked);
}

}  // namespace coverframe::binding
