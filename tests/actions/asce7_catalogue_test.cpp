// SPDX-License-Identifier: BSD-3-Clause
// The entries of asce7_10, asce7_16 and asce7_22 as a caller by name sees them.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "coverframe/actions/asce7_10.hpp"
#include "coverframe/actions/asce7_16.hpp"
#include "coverframe/actions/asce7_22.hpp"
#include "coverframe/actions/rule.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {

using Numbers = std::map<std::string, double>;

const std::vector<std::string> editions{"asce7_10", "asce7_16", "asce7_22"};

/// A set of arguments that every rule takes; a rule picks its own. In the units of the catalogue, choices by number.
Numbers usual() {
    return {{"ground_snow_kpa", in_kPa(30_psf)},
            {"exposure_factor", 1.0},
            {"thermal_factor", 1.2},
            {"importance_factor", 1.0},
            {"winter_wind", 0.5},
            {"flat_load_kpa", in_kPa(25_psf)},
            {"sloped_load_kpa", in_kPa(25_psf)},
            {"balanced_load_kpa", in_kPa(25_psf)},
            {"slope_factor", 0.8},
            {"slope_deg", 20.0},
            {"eave_to_ridge_m", in_m(4_ft)},
            {"surface", 1},
            {"terrain", 0},
            {"roof_exposure", 0},
            {"roof_shape", 0},
            {"obstruction_m", 1.0},
            {"r_value", 25},
            {"ventilated", 1},
            {"gap_m", in_m(5_ft)},
            {"step_m", in_m(8_ft)},
            {"fetch_m", in_m(50_ft)},
            {"upper_length_m", in_m(50_ft)},
            {"higher_length_m", in_m(50_ft)},
            {"lower_length_m", in_m(20_ft)},
            {"lower_width_m", in_m(12_ft)},
            {"peak_kpa", 1.0},
            {"width_m", 3.0},
            {"distance_m", 1.0},
            {"side_m", 6.0},
            {"clearance_m", 0.0},
            {"eave_to_crown_deg", 25.0},
            {"half_span_m", 2.0},
            {"rise_m", 1.0},
            {"depth_m", 1.0},
            {"eave_slope_deg", 55.0},
            {"eave_clearance_m", 2.0},
            {"member_run", 0},
            {"spans", 4},
            {"pattern", 5},
            {"span", 2},
            {"risk_category", 1},
            {"thermal_condition", 0},
            {"combination", 0},
            {"framing", 1}};
}

/// Results by keyword.
Numbers results_of(const std::string& name, const Numbers& changed = {}) {
    const Rule& rule = rule_named(name);
    const Numbers all = usual();
    std::vector<double> arguments;
    for (const RuleValue& value : rule.arguments) {
        CAPTURE(value.keyword);
        const auto found = changed.find(value.keyword);
        if (found == changed.end()) REQUIRE(all.contains(value.keyword));
        arguments.push_back(found != changed.end() ? found->second : all.at(value.keyword));
    }
    const std::vector<double> values = evaluate(rule, arguments);
    Numbers results;
    for (std::size_t k = 0; k < values.size(); ++k) results[rule.results[k].keyword] = values[k];
    return results;
}

/// One result against one argument.
struct Curve {
    std::string rule;
    std::string argument;
    double low, high;             // range walked through
    std::vector<double> corners;  // where the rule changes its branch, without a step
    std::string result;
    int direction;  // +1 never falls, -1 never rises
};

constexpr double psf = 0.04788025898033584;  // kPa
constexpr double ft = 0.3048;

/// Curves of every edition.
const std::vector<Curve> common{
    {"slope_factor", "slope_deg", 0, 90, {45, 70}, "slope_factor", -1},
    {"unit_weight", "ground_snow_kpa", 0, 10, {16.0 / 0.13 * psf}, "unit_weight_kn_per_m3", +1},
    {"unbalanced_curve", "eave_slope_deg", 0, 90, {30, 45, 70}, "eave_kpa", -1},
    {"unbalanced_curve", "flat_load_kpa", 0, 10, {}, "at_30_degrees_kpa", +1},
    {"unbalanced_valley", "depth_m", 0.01, 3, {37.5 / 17.9 * ft}, "valley_kpa", +1},
    {"drift_load_at", "distance_m", 0, 5, {3}, "drift_load_kpa", -1},
    {"unbalanced_gable", "slope_deg", 2.38, 30.2, {}, "leeward_surcharge_kpa", +1},
    {"unbalanced_gable", "eave_to_ridge_m", 0.5, 60, {20 * ft}, "leeward_surcharge_kpa", +1},
    {"unbalanced_gable", "eave_to_ridge_m", 0.5, 60, {20 * ft}, "surcharge_width_m", +1},
    {"unbalanced_gable", "sloped_load_kpa", 0, 10, {}, "windward_kpa", +1},
    {"unbalanced_gable", "ground_snow_kpa", 0.01, 10, {16.0 / 0.13 * psf}, "leeward_surcharge_kpa", +1},
    {"drift_height", "fetch_m", 0.1, 180, {20 * ft}, "drift_height_m", +1},
    {"drift_height", "ground_snow_kpa", 0.01, 10, {16.0 / 0.13 * psf}, "drift_height_m", +1},
    {"leeward_drift_over_gap", "gap_m", 0.1, 6, {}, "peak_kpa", -1},
    {"leeward_drift_over_gap", "higher_length_m", 1, 180, {20 * ft}, "peak_kpa", +1},
    {"sliding_load", "lower_width_m", 0.1, 12, {15 * ft}, "on_lower_roof_kn_per_m", +1},
    {"sliding_load", "flat_load_kpa", 0, 10, {}, "intensity_kpa", +1},
    {"sliding_load_over_gap", "gap_m", 0.1, 2.4, {3 * ft}, "on_lower_roof_kn_per_m", -1},
    {"flat_load", "ground_snow_kpa", 0, 10, {}, "flat_load_kpa", +1},
    {"flat_load", "thermal_factor", 0.8, 1.4, {}, "flat_load_kpa", +1},
    {"flat_load", "exposure_factor", 0.5, 1.5, {}, "flat_load_kpa", +1},
    {"narrow_gable", "ground_snow_kpa", 0, 10, {}, "leeward_kpa", +1},
};

/// Curves of 7-10 and 7-16.
const std::vector<Curve> fifty_year{
    {"minimum_load", "ground_snow_kpa", 0, 10, {20 * psf}, "minimum_load_kpa", +1},
    {"step_drift", "upper_length_m", 1, 180, {20 * ft}, "peak_kpa", +1},
    {"step_drift", "lower_length_m", 1, 180, {20 * ft}, "peak_kpa", +1},
    {"projection_drift", "fetch_m", 1, 180, {20 * ft}, "peak_kpa", +1},
    {"windward_drift_over_gap", "gap_m", 0.01, 4, {}, "peak_kpa", -1},
};

/// Curves of 7-22.
const std::vector<Curve> strength_level{
    {"minimum_load", "ground_snow_kpa", 0, 10, {30 * psf}, "minimum_load_kpa", +1},
    {"drift_height", "winter_wind", 0, 1, {}, "drift_height_m", +1},
    {"windward_drift_height", "winter_wind", 0, 1, {}, "windward_height_m", +1},
    {"leeward_drift", "upper_length_m", 1, 180, {20 * ft}, "peak_kpa", +1},
    {"unbalanced_gable", "winter_wind", 0, 1, {}, "leeward_surcharge_kpa", +1},
};

void check_curve(const std::string& edition, const Curve& curve) {
    CAPTURE(edition);
    CAPTURE(curve.rule);
    CAPTURE(curve.argument);
    CAPTURE(curve.result);
    const auto at = [&](double x) {
        return results_of(edition + "." + curve.rule, {{curve.argument, x}}).at(curve.result);
    };
    constexpr int steps = 200;
    double before = at(curve.low);
    double largest = std::abs(before);
    for (int i = 1; i <= steps; ++i) {
        const double now = at(curve.low + (curve.high - curve.low) * i / steps);
        CHECK(std::isfinite(now));
        CHECK(curve.direction * (now - before) >= -1e-12 * std::abs(before));
        before = now;
        largest = std::max(largest, std::abs(now));
    }
    for (const double corner : curve.corners) {
        CAPTURE(corner);
        CHECK(close_abs(at(corner * (1 - 1e-9)), at(corner * (1 + 1e-9)), 1e-6 * largest));
        CHECK(close_abs(at(corner), at(corner * (1 + 1e-9)), 1e-6 * largest));
    }
}

}  // namespace

TEST_CASE("asce7 catalogue: every edition has the rules of the chapter") {
    const std::vector<std::string> shared{"allowable_stress_factors",
                                          "balanced_depth",
                                          "circular_arc",
                                          "curve_unbalanced_applies",
                                          "drift_height",
                                          "drift_load_at",
                                          "existing_roof_affected",
                                          "exposure_factor",
                                          "flat_load",
                                          "full_load_slope",
                                          "leeward_drift_over_gap",
                                          "minimum_applies",
                                          "minimum_load",
                                          "narrow_gable",
                                          "obstruction_shelters",
                                          "partial_factor",
                                          "partial_loading_applies",
                                          "partial_patterns",
                                          "projection_needs_drift",
                                          "rain_on_snow",
                                          "sliding_applies",
                                          "sliding_load",
                                          "sliding_load_over_gap",
                                          "slope_factor",
                                          "sloped_load",
                                          "strength_factors",
                                          "thermal_factor",
                                          "unbalanced_applies",
                                          "unbalanced_curve",
                                          "unbalanced_gable",
                                          "unbalanced_valley",
                                          "unit_weight",
                                          "warm_slippery_applies"};
    const std::map<std::string, std::vector<std::string>> own{
        {"asce7_10", {"importance_factor", "projection_drift", "step_drift", "windward_drift_over_gap"}},
        {"asce7_16", {"importance_factor", "projection_drift", "step_drift", "windward_drift_over_gap"}},
        {"asce7_22", {"leeward_drift", "minimum_load_limit", "windward_drift_height"}}};
    for (const std::string& edition : editions) {
        std::set<std::string> wanted(shared.begin(), shared.end());
        wanted.insert(own.at(edition).begin(), own.at(edition).end());
        std::set<std::string> found;
        for (const Rule& rule : rules()) {
            if (rule.space != edition) continue;
            found.insert(rule.name);
            CHECK(rule.us_units);
            CHECK(rule.clause.document == "ASCE 7-" + edition.substr(6));
        }
        CHECK(found == wanted);
    }
}

TEST_CASE("asce7 catalogue: every rule answers with finite numbers") {
    for (const Rule& rule : rules()) {
        if (!std::ranges::count(editions, rule.space)) continue;
        CAPTURE(text_of(rule));
        for (const auto& result : results_of(text_of(rule))) {
            CAPTURE(result.first);
            CHECK(std::isfinite(result.second));
        }
    }
}

TEST_CASE("asce7 catalogue: curves run on over their corners and in one direction") {
    for (const std::string& edition : editions) {
        for (const Curve& curve : common) check_curve(edition, curve);
        for (const Curve& curve : edition == "asce7_22" ? strength_level : fifty_year) check_curve(edition, curve);
    }
}

TEST_CASE("asce7 catalogue: slopes at the usual edges") {
    // by hand, C_t 1.2, other surfaces: 1 to 45 deg, (70 - slope)/25, 0 from 70
    const std::vector<std::pair<double, double>> edges{{0, 1}, {15, 1}, {30, 1}, {45, 1}, {60, 0.4}, {70, 0}, {90, 0}};
    for (const std::string& edition : editions) {
        for (const auto& edge : edges) {
            const double factor = results_of(edition + ".slope_factor", {{"slope_deg", edge.first}}).at("slope_factor");
            CHECK(close_abs(factor, edge.second, 1e-12));
        }
    }
}

TEST_CASE("asce7 catalogue: the entries call the functions of their edition") {
    CHECK(close(results_of("asce7_10.drift_height").at("drift_height_m"),
                in_m(asce7_10::drift_height_7_7(30_psf, 50_ft)), 1e-12));
    CHECK(close(results_of("asce7_16.drift_height", {{"importance_factor", 1.2}}).at("drift_height_m"),
                in_m(asce7_16::drift_height_7_6(30_psf, 50_ft, 1.2)), 1e-12));
    CHECK(close(results_of("asce7_22.drift_height").at("drift_height_m"),
                in_m(asce7_22::drift_height_7_6(30_psf, 50_ft, 0.5)), 1e-12));
    const Numbers gable = results_of("asce7_16.unbalanced_gable");
    CHECK(close(gable.at("fetch_m"), in_m(20_ft), 1e-12));
    CHECK(close(gable.at("run"), 1.0 / std::tan(in_rad(20_deg)), 1e-12));
    CHECK(close(gable.at("leeward_surcharge_kpa"),
                gable.at("drift_height_m") * gable.at("unit_weight_kn_per_m3") / std::sqrt(gable.at("run")), 1e-12));
    const asce7_10::StepDrift step = asce7_10::step_drift_7_7_1(
        {.ground_load = 30_psf, .balanced_load = 25_psf, .step = 8_ft, .length = 20_ft}, 50_ft);
    const Numbers drift = results_of("asce7_10.step_drift");
    CHECK(close(drift.at("peak_kpa"), in_kPa(step.drift.peak), 1e-12));
    CHECK(close(drift.at("leeward_height_m"), in_m(step.leeward), 1e-12));
    CHECK(close(drift.at("drift_height_m"), in_m(std::max(step.leeward, step.windward)), 1e-12));
    CHECK(drift.at("needed") == 1.0);
    CHECK(close(drift.at("at_wall_kpa"), drift.at("peak_kpa") + in_kPa(25_psf), 1e-12));
    for (const char* edition : {"asce7_10", "asce7_16"}) {
        const Numbers wind = results_of(std::string(edition) + ".windward_drift_over_gap", {{"gap_m", in_m(1_ft)}});
        CHECK(close(wind.at("clear_height_m"), in_m(8_ft) - wind.at("balanced_depth_m"), 1e-12));
        CHECK(close(wind.at("height_m"), wind.at("windward_height_m") - in_m(1_ft) / 4.0, 1e-12));
    }
    CHECK(close(results_of("asce7_22.allowable_stress_factors", {{"combination", 1}}).at("snow_factor"), 0.525, 1e-12));
    CHECK(close(results_of("asce7_16.strength_factors", {{"combination", 1}}).at("snow_factor"), 1.6, 1e-12));
}

TEST_CASE("asce7 catalogue: refusals keep their codes") {
    CHECK(code_of([] { return results_of("asce7_16.partial_factor", {{"spans", 2.5}}); }) == "asce7.spans.range");
    CHECK(code_of([] { return results_of("asce7_16.partial_factor", {{"pattern", 1.5}}); }) == "asce7.pattern.range");
    CHECK(code_of([] {
              return results_of("asce7_16.partial_patterns", {{"spans", not_finite[0]}});
          }) == "asce7.spans.range");
    CHECK(code_of([] {
              return results_of("asce7_22.thermal_factor", {{"thermal_condition", 4}});
          }) == "asce7_22.thermal_condition.range");
    CHECK(code_of([] { return results_of("asce7_10.narrow_gable", {{"framing", 0}}); }) == "asce7.framing.range");
    CHECK(code_of([] {
              return results_of("asce7_10.exposure_factor", {{"terrain", 3}, {"roof_exposure", 2}});
          }) == "asce7.roof_exposure.range");
}

TEST_CASE("asce7 catalogue: workings are in the units of the document") {
    const Rule& rule = rule_named("asce7_16.flat_load");
    const std::vector<Term> terms = workings(rule, std::vector{in_kPa(30_psf), 1.0, 1.2, 1.0});
    REQUIRE(terms.size() == 5);
    CHECK(terms[0].symbol == "p_g");
    CHECK(terms[0].unit == "psf");
    CHECK(close(terms[0].value, 30.0, 1e-12));
    CHECK(terms[4].symbol == "p_f");
    CHECK(terms[4].formula == "0.7 C_e C_t I_s p_g");
    CHECK(close(terms[4].value, 25.2, 1e-12));
    CHECK(text_of(terms[4].clause) == "ASCE 7-16, 7.3");
}
