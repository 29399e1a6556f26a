// SPDX-License-Identifier: BSD-3-Clause
#include <cmath>
#include <nlohmann/json.hpp>

#include "coverframe/base/error.hpp"
#include "coverframe/base/version.hpp"
#include "coverframe/plan/girth.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/report/cautions.hpp"
#include "coverframe/report/report.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe {
namespace {

using Json = nlohmann::ordered_json;

// A finite number without a negative zero.
Json number(double value) {
    if (!std::isfinite(value)) {
        throw StateError("report.number",
                         "the assessment holds a number that is not finite; a report is not made of it");
    }
    return value + 0.0;
}

Json number_or_null(const std::optional<double>& value) { return value ? number(*value) : Json(nullptr); }

Json clause_of(const Clause& clause) { return {{"document", clause.document}, {"number", clause.number}}; }

Json workings_of(const std::vector<Term>& terms) {
    Json rows = Json::array();
    for (const Term& term : terms) {
        rows.push_back({{"symbol", term.symbol},
                        {"value", number(term.value)},
                        {"unit", term.unit},
                        {"formula", term.formula},
                        {"clause", term.clause.document.empty() ? Json(nullptr) : clause_of(term.clause)}});
    }
    return rows;
}

Json loads_of(const std::vector<PlanLoad>& loads) {
    Json row = Json::array();
    for (const PlanLoad& load : loads) row.push_back(number(in_kPa(load.value)));
    return row;
}

/// For each station the points of a side: [share of the half breadth, load in kPa].
Json fields_of(const std::vector<LoadProfile>& profiles) {
    Json rows = Json::array();
    for (const LoadProfile& profile : profiles) {
        Json points = Json::array();
        for (const LoadPoint& point : profile)
            points.push_back({number(point.share), number(in_kPa(point.load.value))});
        rows.push_back(std::move(points));
    }
    return rows;
}

Json stations_of(const Assessment& assessment) {
    Json rows = Json::array();
    for (const CoverStation& station : assessment.stations) {
        rows.push_back({{"x_m", number(in_m(station.x))},
                        {"slope_deg", number(in_deg(station.slope))},
                        {"half_breadth_m", number(in_m(station.half_breadth))}});
    }
    return rows;
}

Json arrangements_of(const Assessment& assessment) {
    Json rows = Json::array();
    for (const Arrangement& arrangement : assessment.arrangements) {
        rows.push_back({{"name", arrangement.name},
                        {"clause", clause_of(arrangement.clause)},
                        {"note", arrangement.note},
                        {"port_kpa", loads_of(arrangement.port)},
                        {"starboard_kpa", loads_of(arrangement.starboard)},
                        {"port_field", fields_of(arrangement.port_field)},
                        {"starboard_field", fields_of(arrangement.starboard_field)},
                        {"workings", workings_of(arrangement.workings)}});
    }
    return rows;
}

// Numbers of a situation without equilibrium mean nothing: null.
Json situations_of(const Assessment& assessment) {
    Json rows = Json::array();
    for (const SituationResult& result : assessment.situations) {
        const Situation& s = result.situation;
        const bool usable = result.status == SolveStatus::converged;
        const auto value = [&](double v) { return usable ? number(v) : Json(nullptr); };
        const bool has_snow =
            s.arrangement >= 0 && static_cast<std::size_t>(s.arrangement) < assessment.arrangements.size();
        rows.push_back(
            {{"name", s.name},
             {"arrangement",
              has_snow ? Json(assessment.arrangements[static_cast<std::size_t>(s.arrangement)].name) : Json(nullptr)},
             {"limit", s.limit == Limit::strength ? "strength" : "service"},
             {"permanent_factor", number(s.permanent_factor)},
             {"snow_factor", number(s.snow_factor)},
             {"film_tension", s.film_tension == Bound::low ? "low" : "high"},
             {"strap_stiffness", s.strap_stiffness == Bound::low ? "low" : "high"},
             {"status", name_of(result.status)},
             {"message", result.message},
             {"vertical_load_n", value(result.vertical_load)},
             {"vertical_reaction_n", value(result.vertical_reaction)},
             {"ridge_sag_m", value(result.ridge_sag)},
             {"film_sag_m", value(result.film_sag)}});
    }
    return rows;
}

Json findings_of(const Assessment& assessment) {
    Json rows = Json::array();
    for (const Finding& finding : assessment.findings) {
        rows.push_back({{"check", finding.check},
                        {"part", finding.part},
                        {"clause", clause_of(finding.clause)},
                        {"situation", finding.situation},
                        {"demand", number(finding.demand)},
                        {"capacity", number(finding.capacity)},
                        {"unit", finding.unit},
                        {"utilisation", number_or_null(finding.utilisation)},
                        {"verdict", name_of(finding.verdict)},
                        {"sentence", finding.sentence},
                        {"x_m", number_or_null(finding.x)},
                        {"workings", workings_of(finding.workings)}});
    }
    return rows;
}

Json forces_of(const Assessment& assessment) {
    Json rows = Json::array();
    for (const ForceRange& force : assessment.forces) {
        rows.push_back({{"part", force.part},
                        {"quantity", force.quantity},
                        {"unit", force.unit},
                        {"least", number(force.least)},
                        {"least_in", force.least_in},
                        {"greatest", number(force.greatest)},
                        {"greatest_in", force.greatest_in}});
    }
    return rows;
}

// Null where there is no strip.
Json strip_of(const StripState& strip) {
    if (!(strip.span > 0)) return nullptr;
    return {{"span_m", number(strip.span)},
            {"rise_m", number(strip.rise)},
            {"sag_m", number(strip.sag)},
            {"level_force_n", number(strip.level_force)},
            {"tension_upper_n", number(strip.tension_upper)},
            {"tension_lower_n", number(strip.tension_lower)},
            {"slack", strip.slack}};
}

Json shape_of(const Assessment& assessment) {
    Json rows = Json::array();
    for (const StationShape& shape : assessment.shape) {
        rows.push_back({{"x_m", number(shape.x)},
                        {"half_breadth_m", number(shape.half_breadth)},
                        {"rail_z_m", number(shape.rail_z)},
                        {"ridge_drawn_m", number(shape.ridge_drawn)},
                        {"ridge_loaded_m", number(shape.ridge_loaded)},
                        {"ridge_aside_m", number(shape.ridge_aside)},
                        {"port", strip_of(shape.port)},
                        {"starboard", strip_of(shape.starboard)}});
    }
    return rows;
}

// Null where no cover is drawn.
Json film_sheet_of(const Plan& plan) {
    const auto needed = sheet_needed(plan);
    if (!needed) return nullptr;
    const auto metres_or_null = [](const std::optional<Cited<Length>>& given) {
        return given ? number(in_m(given->value)) : Json(nullptr);
    };
    return {{"needed_width_m", number(in_m(needed->width))},
            {"needed_length_m", number(in_m(needed->length))},
            {"tuck_m", number(in_m(tuck_of(plan.film).value))},
            {"widest_at_m", number(in_m(needed->widest_at))},
            {"widest_place", needed->place},
            {"given_width_m", metres_or_null(plan.film.sheet_width)},
            {"given_length_m", metres_or_null(plan.film.sheet_length)}};
}

}  // namespace

std::string json_report(const Assessment& assessment) {
    Json caution_rows = Json::array();
    for (const std::string_view caution : cautions()) caution_rows.push_back(std::string(caution));
    const Json report = {{"coverframe_version", std::string(version)},
                         {"cautions", std::move(caution_rows)},
                         {"outcome", name_of(assessment.outcome)},
                         {"verdict", verdict_line(assessment)},
                         {"failures", assessment.failures},
                         {"findings", findings_of(assessment)},
                         {"forces", forces_of(assessment)},
                         {"situations", situations_of(assessment)},
                         {"shape_of", assessment.shape_of},
                         {"shape", shape_of(assessment)},
                         {"film_sheet", film_sheet_of(assessment.plan)},
                         {"stations", stations_of(assessment)},
                         {"arrangements", arrangements_of(assessment)},
                         {"assumptions", assessment.assumptions},
                         {"plan", Json::parse(write_plan(assessment.plan))}};
    return report.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace coverframe
