// SPDX-License-Identifier: BSD-3-Clause
// What is 7-22's own; what it shares with the earlier editions is tested with asce7.hpp and its family.
#include "coverframe/actions/asce7_22.hpp"

#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::asce7_22;

namespace {

constexpr Surface slippery = Surface::unobstructed_slippery;
constexpr Surface other = Surface::other;

// A boat of our own invention: 20 degrees, 4 ft from rail to ridge.
Gable boat_gable() {
    return {.sloped_load = 25.2_psf, .ground_load = 30_psf, .slope = 20_deg, .eave_to_ridge = 4_ft, .winter_wind = 0.5};
}

// Step of the design firm's article on drifts in 7-16 and 7-22: Washington, 63 psf, W_2 0.45, 4 ft high, 30 ft long
LowerRoof washington() { return {.ground_load = 63_psf, .balanced_load = 44.1_psf, .step = 4_ft, .length = 30_ft}; }

}  // namespace

// ------------------------------------------------------------------------------------------------------------ value

TEST_CASE("asce7_22 7.3: flat load") {
    // by hand: 0.7 x 1.0 x 1.2 x 30 and 0.7 x 1.1 x 1.2 x 50; no printed number of this edition is at hand
    CHECK(close(in_psf(flat_load_7_3(30_psf, 1.0, 1.2)), 25.2, 1e-12));
    CHECK(close(in_psf(flat_load_7_3(50_psf, 1.1, 1.2)), 46.2, 1e-12));
    CHECK(in_psf(flat_load_7_3(0_psf, 1.0, 1.2)) == 0.0);
}

TEST_CASE("asce7_22 7.3.2: thermal factors, and the table that is not known") {
    CHECK(thermal_factor_7_3_2(ThermalCondition::unheated_or_open_air) == 1.2);
    CHECK(thermal_factor_7_3_2(ThermalCondition::below_freezing) == 1.3);
    // NFBA magazine, Sept. 2025, p. 26, read on a page: 1.2 for a ventilated roof
    CHECK(thermal_factor_7_3_2(ThermalCondition::ventilated) == 1.2);
    CHECK(thermal_factor_7_3_2(ThermalCondition::greenhouse) == 0.85);
    for (const ThermalCondition unknown : {ThermalCondition::heated, ThermalCondition::just_above_freezing}) {
        CHECK(code_of([&] { return thermal_factor_7_3_2(unknown); }) == "asce7_22.thermal_condition.range");
    }
}

TEST_CASE("asce7_22 7.3.3: minimum load") {
    // p_m,max from memory: 25, 30, 35, 40 psf
    CHECK(close(in_psf(minimum_load_7_3_3(100_psf, RiskCategory::I)), 25.0, 1e-12));
    CHECK(close(in_psf(minimum_load_7_3_3(100_psf, RiskCategory::II)), 30.0, 1e-12));
    CHECK(close(in_psf(minimum_load_7_3_3(100_psf, RiskCategory::III)), 35.0, 1e-12));
    CHECK(close(in_psf(minimum_load_7_3_3(100_psf, RiskCategory::IV)), 40.0, 1e-12));
    CHECK(close(in_psf(minimum_load_7_3_3(20_psf, RiskCategory::IV)), 20.0, 1e-12));
    CHECK(close(minimum_load_7_3_3(30_psf, RiskCategory::II), 30_psf, 1e-15));
    CHECK(minimum_applies_7_3_3(14.999_deg));
    CHECK_FALSE(minimum_applies_7_3_3(15_deg));
    CHECK_FALSE(minimum_applies_7_3_3(10_deg, RoofShape::curved));
}

TEST_CASE("asce7_22 7.6: drift height") {
    // Step by step from Eq. 7.6-1:
    // 30^0.74 = 12.38995, 20^0.70 = 8.14181, 0.5^1.7 = 0.307786; their product over 17.9 = 1.73455; 1.5 sqrt = 1.97553
    CHECK(close(in_ft(drift_height_7_6(30_psf, 20_ft, 0.5)), 1.97553, 5e-6));
    // powers: four times the fetch is 4^0.35; twice the wind is 2^0.85; the load enters with its own unit weight
    const Length h = drift_height_7_6(30_psf, 20_ft, 0.3);
    CHECK(close(drift_height_7_6(30_psf, 80_ft, 0.3) / h, std::pow(4.0, 0.35), 1e-12));
    CHECK(close(drift_height_7_6(30_psf, 20_ft, 0.6) / h, std::pow(2.0, 0.85), 1e-12));
    CHECK(close(drift_height_7_6(60_psf, 20_ft, 0.3) / h, std::pow(2.0, 0.37) * std::sqrt(17.9 / 21.8), 1e-12));
    // limits
    CHECK(in_ft(drift_height_7_6(0_psf, 20_ft, 0.5)) == 0.0);
    CHECK(in_ft(drift_height_7_6(30_psf, 20_ft, 0.0)) == 0.0);
    CHECK(std::isfinite(in_ft(drift_height_7_6(from_kPa(100.0), 600_ft, 1.0))));
}

TEST_CASE("asce7_22 7.7.1: the printed step") {
    // design firm's article, read on a page: about 89 psf with the balanced load, fetch 40 ft. The drift fills the
    // step.
    CHECK(close(flat_load_7_3(63_psf, 1.0, 1.0), washington().balanced_load, 1e-12));
    const Drift drift = leeward_drift_7_7_1(washington(), 40_ft, 0.45);
    CHECK(close_abs(in_psf(drift.peak + washington().balanced_load), 89.0, 0.5));
    CHECK(drift.height == drift.clear_height);
    CHECK(drift_height_7_6(63_psf, 40_ft, 0.45) > drift.clear_height);
    CHECK(close(windward_drift_height_7_7_1(63_psf, 30_ft, 0.45), 0.75 * drift_height_7_6(63_psf, 30_ft, 0.45), 1e-15));
}

TEST_CASE("asce7_22 7.7.2: leeward drift across a gap") {
    const Gap gap{.separation = 5_ft, .height = 8_ft, .lower_length = 12_ft};
    CHECK(leeward_drift_over_gap_7_7_2(gap, 30_psf, 100_ft, 0.5).height == drift_height_7_6(30_psf, 100_ft, 0.5));
}

TEST_CASE("asce7_22 7.10: rain on snow") {
    const auto rain = [](double load, RiskCategory category) {
        return in_psf(rain_on_snow_7_10(from_psf(load), 0.05_deg, 4_ft, category));
    };
    // 8 psf read on a page (engineering firm's list of changes in 7-22)
    CHECK(close(rain(20.0, RiskCategory::II), 8.0, 1e-12));
    CHECK(close(rain(30.0, RiskCategory::II), 8.0, 1e-12));
    CHECK(rain(30.01, RiskCategory::II) == 0.0);
    CHECK(close(rain(40.0, RiskCategory::IV), 8.0, 1e-12));
    CHECK(rain(0.0, RiskCategory::II) == 0.0);
    CHECK(in_psf(rain_on_snow_7_10(20_psf, 0.08_deg, 4_ft, RiskCategory::II)) == 0.0);  // W/50 = 0.08
    CHECK(in_psf(rain_on_snow_7_10(20_psf, 20_deg, 4_ft, RiskCategory::II)) == 0.0);
}

TEST_CASE("asce7_22: combinations") {
    // Maguire et al., STRUCTURE magazine, Feb. 2022, Eq. 1, read on a page: 1.2 D + 1.0 S
    CHECK(strength_2_3_1 == CombinationFactors{1.2, 1.0, 0, 0, 0});
    // STRUCTURE magazine, ASCE 7-22 Flat Roof Snow Load Versus Minimum Snow Load, read on a page: 3a, 4a, 6a
    CHECK(allowable_stress_2_4_1 == CombinationFactors{1.0, 0.7, 0, 0, 0});
    CHECK(allowable_stress_factors_2_4(AllowableStressCombination::snow) == allowable_stress_2_4_1);
    const CombinationFactors live = allowable_stress_factors_2_4(AllowableStressCombination::snow_and_live);
    CHECK(close(live.snow, 0.525, 1e-12));
    CHECK(live.live == 0.75);
    const CombinationFactors wind = allowable_stress_factors_2_4(AllowableStressCombination::snow_live_and_wind);
    CHECK(close(wind.snow, 0.525, 1e-12));
    CHECK(close(wind.wind, 0.45, 1e-12));
    // the companions, from memory
    CHECK(strength_factors_2_3(StrengthCombination::snow) == strength_2_3_1);
    CHECK(strength_factors_2_3(StrengthCombination::snow_and_live) == CombinationFactors{1.2, 1.0, 1.0, 0, 0});
    CHECK(strength_factors_2_3(StrengthCombination::snow_and_wind) == CombinationFactors{1.2, 1.0, 0, 0.5, 0});
    CHECK(strength_factors_2_3(StrengthCombination::live) == CombinationFactors{1.2, 0.3, 1.6, 0, 0});
    CHECK(strength_factors_2_3(StrengthCombination::wind) == CombinationFactors{1.2, 0.3, 1.0, 1.0, 0});
    CHECK(strength_factors_2_3(StrengthCombination::earthquake) == CombinationFactors{1.2, 0.15, 1.0, 0, 1.0});
    CHECK(strength_factors_2_3(StrengthCombination::uplift) == CombinationFactors{0.9, 0, 0, 1.0, 0});
}

// ------------------------------------------------------------------------------------------------------------ limit

TEST_CASE("asce7_22 7.4: which chart belongs to which thermal factor") {
    CHECK(slope_chart_7_4(0.85) == SlopeChart::warm);
    CHECK(slope_chart_7_4(1.0) == SlopeChart::warm);
    CHECK(slope_chart_7_4(1.09) == SlopeChart::warm);
    CHECK(slope_chart_7_4(1.1) == SlopeChart::cold);
    CHECK(slope_chart_7_4(1.19) == SlopeChart::cold);
    CHECK(slope_chart_7_4(1.2) == SlopeChart::very_cold);
    CHECK(slope_chart_7_4(1.3) == SlopeChart::very_cold);
    CHECK(close(in_deg(full_load_slope_7_4(1.2, slippery)), 15.0, 1e-12));
    CHECK(close(in_deg(full_load_slope_7_4(1.1, other)), 37.5, 1e-12));
    CHECK(close(slope_factor_7_4(30_deg, 1.2, slippery), 40.0 / 55.0, 1e-12));
    CHECK(slope_factor_7_4(70_deg, 1.2, other) == 0.0);
}

TEST_CASE("asce7_22 7.6: the least fetch, and the cap for short fetches") {
    CHECK(drift_height_7_6(30_psf, 15_ft, 0.5) == drift_height_7_6(30_psf, 20_ft, 0.5));
    CHECK(drift_height_7_6(30_psf, 21_ft, 0.5) > drift_height_7_6(30_psf, 20_ft, 0.5));
    // by hand: sqrt(30 x 4/(4 x 17.9)) = 1.29459 ft
    CHECK(close(in_ft(drift_height_7_6(30_psf, 4_ft, 0.5)), 1.29459, 1e-5));
    double before = 0.0;
    for (double fetch = 0.25; fetch <= 60.0; fetch += 0.25) {
        const double now = in_ft(drift_height_7_6(30_psf, from_ft(fetch), 0.5));
        CHECK(now >= before);
        before = now;
    }
}

TEST_CASE("asce7_22 7.6.1: a narrow gable drifts as one of 20 ft, and the surcharge ends at the rail") {
    const UnbalancedGable boat = unbalanced_gable_7_6_1(boat_gable());
    CHECK(boat.drift_height == drift_height_7_6(30_psf, 20_ft, 0.5));
    CHECK(close(boat.surcharge_width, 4_ft, 1e-15));
    CHECK(close(in_psf(boat.windward), 0.3 * 25.2, 1e-12));
    // by hand: 1.97553 ft x 17.9 pcf x sqrt(tan 20 deg) = 21.334 psf
    CHECK(close(in_psf(boat.leeward_surcharge), 21.334, 5e-5));
    // 20 ft is where the fetch begins to count
    Gable at_floor = boat_gable();
    at_floor.eave_to_ridge = 20_ft;
    CHECK(unbalanced_gable_7_6_1(at_floor).drift_height == boat.drift_height);
    at_floor.eave_to_ridge = 21_ft;
    CHECK(unbalanced_gable_7_6_1(at_floor).drift_height > boat.drift_height);
    // simple rafters, for comparison: p_g on the lee slope
    CHECK(close(in_psf(narrow_gable_7_6_1(30_psf, 20_deg, 4_ft, Framing::simple_rafters)), 30.0, 1e-12));
    CHECK(code_of([] { return narrow_gable_7_6_1(30_psf, 20_deg, 4_ft, Framing::other); }) == "asce7.framing.range");
}

// -------------------------------------------------------------------------------------------------------- invariant

TEST_CASE("asce7_22 7.6.1: more wind, more snow and more slope never lower the surcharge") {
    Pressure before = 0_psf;
    const auto grows = [&](const Gable& gable) {
        const Pressure now = unbalanced_gable_7_6_1(gable).leeward_surcharge;
        CHECK(now >= before);
        before = now;
    };
    Gable gable = boat_gable();
    for (double wind = 0.0; wind <= 1.0; wind += 0.05) {
        gable.winter_wind = wind;
        grows(gable);
    }
    gable = boat_gable();
    before = 0_psf;
    for (double load = 0.0; load <= 300.0; load += 5.0) {
        gable.ground_load = from_psf(load);
        grows(gable);
    }
    gable = boat_gable();
    before = 0_psf;
    for (double slope = 2.4; slope <= 30.2; slope += 0.4) {
        gable.slope = from_deg(slope);
        grows(gable);
    }
}

TEST_CASE("asce7_22: the same answer from SI and US units") {
    // 1 psf = 47.88025898033584 Pa, 1 ft = 0.3048 m (NIST SP 811, from memory)
    const Pressure ground = from_Pa(30.0 * 47.88025898033584);
    CHECK(close(flat_load_7_3(ground, 1.0, 1.2), flat_load_7_3(30_psf, 1.0, 1.2), 1e-12));
    CHECK(close(minimum_load_7_3_3(ground, RiskCategory::IV), minimum_load_7_3_3(30_psf, RiskCategory::IV), 1e-12));
    for (const double fetch : {4.0, 130.0}) {
        CHECK(close(drift_height_7_6(ground, from_m(fetch * 0.3048), 0.5),
                    drift_height_7_6(30_psf, from_ft(fetch), 0.5), 1e-12));
    }
    const Gable si{.sloped_load = from_Pa(25.2 * 47.88025898033584),
                   .ground_load = ground,
                   .slope = 20_deg,
                   .eave_to_ridge = from_m(4.0 * 0.3048),
                   .winter_wind = 0.5};
    const UnbalancedGable a = unbalanced_gable_7_6_1(si);
    const UnbalancedGable b = unbalanced_gable_7_6_1(boat_gable());
    CHECK(close(a.windward, b.windward, 1e-12));
    CHECK(close(a.leeward_surcharge, b.leeward_surcharge, 1e-12));
    CHECK(close(a.surcharge_width, b.surcharge_width, 1e-12));
}

// ------------------------------------------------------------------------------------------------------------ error

TEST_CASE("asce7_22: clauses name this edition") {
    for (const Clause& clause :
         {clause_2_3_1, clause_2_4_1, clause_7_3, clause_7_3_1, clause_7_3_2, clause_7_3_3, clause_7_4, clause_7_5,
          clause_7_6, clause_7_6_1, clause_7_6_2, clause_7_6_3, clause_7_7, clause_7_7_1, clause_7_7_2, clause_7_8,
          clause_7_9, clause_7_10, clause_7_12}) {
        CHECK(clause.document == "ASCE 7-22");
    }
    CHECK(text_of(clause_7_6_1) == "ASCE 7-22, 7.6.1");
}

TEST_CASE("asce7_22: arguments out of range") {
    CHECK(code_of([] { return flat_load_7_3(from_psf(-1.0), 1.0, 1.2); }) == "asce7.ground_load.range");
    CHECK(code_of([] { return flat_load_7_3(from_kPa(100.1), 1.0, 1.2); }) == "asce7.ground_load.range");
    CHECK(code_of([] { return flat_load_7_3(30_psf, 0.49, 1.2); }) == "asce7.exposure.range");
    CHECK(code_of([] { return flat_load_7_3(30_psf, 1.51, 1.2); }) == "asce7.exposure.range");
    CHECK(code_of([] { return flat_load_7_3(30_psf, 1.0, 0.79); }) == "asce7.thermal.range");
    CHECK(code_of([] { return flat_load_7_3(30_psf, 1.0, 1.41); }) == "asce7.thermal.range");
    CHECK(code_of([] { return slope_factor_7_4(90.1_deg, 1.2, other); }) == "asce7.slope.range");
    CHECK(code_of([] { return slope_factor_7_4(30_deg, 1.5, other); }) == "asce7.thermal.range");
    CHECK(code_of([] { return drift_height_7_6(30_psf, 601_ft, 0.5); }) == "asce7.fetch.range");
    CHECK(code_of([] { return drift_height_7_6(30_psf, 0_ft, 0.5); }) == "asce7.fetch.range");
    CHECK(code_of([] { return drift_height_7_6(30_psf, 20_ft, 1.01); }) == "asce7_22.winter_wind.range");
    CHECK(code_of([] { return drift_height_7_6(30_psf, 20_ft, -0.01); }) == "asce7_22.winter_wind.range");
    CHECK(code_of([] { return leeward_drift_7_7_1(washington(), 0_ft, 0.5); }) == "asce7.fetch.range");
    CHECK(code_of([] { return windward_drift_height_7_7_1(30_psf, 20_ft, 2.0); }) == "asce7_22.winter_wind.range");
    CHECK(code_of([] { return leeward_drift_over_gap_7_7_2({}, 30_psf, 20_ft, 0.5); }) == "asce7.gap.range");
    CHECK(code_of([] { return rain_on_snow_7_10(30_psf, 91_deg, 4_ft, RiskCategory::II); }) == "asce7.slope.range");
    CHECK(code_of([] { return rain_on_snow_7_10(30_psf, 1_deg, 0_ft, RiskCategory::II); }) ==
          "asce7.eave_to_ridge.range");
    CHECK(code_of([] { return minimum_load_7_3_3(30_psf, static_cast<RiskCategory>(7)); }) ==
          "asce7.risk_category.range");
    CHECK(code_of([] { return rain_on_snow_7_10(30_psf, 1_deg, 4_ft, static_cast<RiskCategory>(7)); }) ==
          "asce7.risk_category.range");
    CHECK(code_of([] { return strength_factors_2_3(static_cast<StrengthCombination>(9)); }) ==
          "asce7.combination.range");
    CHECK(code_of([] { return allowable_stress_factors_2_4(static_cast<AllowableStressCombination>(9)); }) ==
          "asce7.combination.range");
    CHECK(code_of([] { return thermal_factor_7_3_2(static_cast<ThermalCondition>(9)); }) ==
          "asce7_22.thermal_condition.range");

    // both ends of a range belong to it
    CHECK(code_of([] { return flat_load_7_3(from_kPa(100.0), 0.5, 0.8); }) == "none");
    CHECK(code_of([] { return flat_load_7_3(30_psf, 1.5, 1.4); }) == "none");
    CHECK(code_of([] { return drift_height_7_6(30_psf, 600_ft, 1.0); }) == "none");
    CHECK(code_of([] { return drift_height_7_6(30_psf, from_m(182.88), 1.0); }) == "none");

    const auto code = [](auto change) {
        Gable gable = boat_gable();
        change(gable);
        return code_of([&] { return unbalanced_gable_7_6_1(gable); });
    };
    CHECK(code([](Gable&) {}) == "none");
    CHECK(code([](Gable& g) { g.sloped_load = 0_psf; }) == "none");
    CHECK(code([](Gable& g) { g.slope = 35_deg; }) == "asce7.slope.range");
    CHECK(code([](Gable& g) { g.slope = 0_deg; }) == "asce7.slope.range");
    CHECK(code([](Gable& g) { g.sloped_load = from_psf(-1.0); }) == "asce7.sloped_load.range");
    CHECK(code([](Gable& g) { g.eave_to_ridge = 0_ft; }) == "asce7.eave_to_ridge.range");
    CHECK(code([](Gable& g) { g.ground_load = from_psf(-1.0); }) == "asce7.ground_load.range");
    CHECK(code([](Gable& g) { g.winter_wind = 2.0; }) == "asce7_22.winter_wind.range");
}

TEST_CASE("asce7_22: an argument that is not finite is refused") {
    for (const double bad : not_finite) {
        CAPTURE(bad);
        CHECK(code_of([&] { return flat_load_7_3(from_psf(bad), 1.0, 1.2); }) == "asce7.ground_load.range");
        CHECK(code_of([&] { return flat_load_7_3(30_psf, bad, 1.2); }) == "asce7.exposure.range");
        CHECK(code_of([&] { return flat_load_7_3(30_psf, 1.0, bad); }) == "asce7.thermal.range");
        CHECK(code_of([&] { return minimum_load_7_3_3(from_psf(bad), RiskCategory::II); }) ==
              "asce7.ground_load.range");
        CHECK(code_of([&] { return minimum_applies_7_3_3(from_deg(bad)); }) == "asce7.slope.range");
        CHECK(code_of([&] { return full_load_slope_7_4(bad, other); }) == "asce7.thermal.range");
        CHECK(code_of([&] { return slope_factor_7_4(from_deg(bad), 1.2, other); }) == "asce7.slope.range");
        CHECK(code_of([&] { return drift_height_7_6(from_psf(bad), 20_ft, 0.5); }) == "asce7.ground_load.range");
        CHECK(code_of([&] { return drift_height_7_6(30_psf, from_ft(bad), 0.5); }) == "asce7.fetch.range");
        CHECK(code_of([&] { return drift_height_7_6(30_psf, 20_ft, bad); }) == "asce7_22.winter_wind.range");
        Gable gable = boat_gable();
        gable.eave_to_ridge = from_ft(bad);
        CHECK(code_of([&] { return unbalanced_gable_7_6_1(gable); }) == "asce7.eave_to_ridge.range");
    }
}
