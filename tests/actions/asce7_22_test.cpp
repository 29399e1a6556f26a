// SPDX-License-Identifier: BSD-3-Clause
// Published numbers of 7-10 and 7-16 are used where the equation did not change and their importance factor is 1.0.
#include "coverframe/actions/asce7_22.hpp"

#include <cmath>
#include <numbers>
#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using asce7_22::Gable;
using asce7_22::RiskCategory;
using asce7_22::Surface;

namespace {

constexpr Surface slippery = Surface::unobstructed_slippery;
constexpr Surface other = Surface::other;

// The gable of O'Rourke, Guide to the Snow Load Provisions of ASCE 7-10, Examples 4-3 and 6-2: 1/2 on 12, W = 130 ft,
// p_g = 30 psf. The winter wind is ours; that edition has none.
Gable orourke_gable() {
    return {.sloped_load = 25_psf,
            .ground_load = 30_psf,
            .slope = from_rad(std::atan(0.5 / 12.0)),
            .eave_to_ridge = 130_ft,
            .winter_wind = 0.5};
}

// A boat of our own invention: 20 degrees, 4 ft from rail to ridge.
Gable boat_gable() {
    return {.sloped_load = 25.2_psf, .ground_load = 30_psf, .slope = 20_deg, .eave_to_ridge = 4_ft, .winter_wind = 0.5};
}

}  // namespace

TEST_CASE("asce7_22 7.3: flat load") {
    // O'Rourke, Guide to ASCE 7-10, Example 4-3, read on a page: 25.2 psf unheated
    CHECK(close_abs(in_psf(asce7_22::flat_load_7_3(30_psf, 1.0, 1.2)), 25.2, 0.05));
    // Udoeyo, Structural Analysis, chapter 2 example, read on a page (relayed): 21 psf heated
    CHECK(close_abs(in_psf(asce7_22::flat_load_7_3(30_psf, 1.0, 1.0)), 21.0, 0.05));
    // by hand, for the exposure factor: 0.7 x 1.1 x 1.2 x 50
    CHECK(close(in_psf(asce7_22::flat_load_7_3(50_psf, 1.1, 1.2)), 46.2, 1e-12));
    CHECK(in_psf(asce7_22::flat_load_7_3(0_psf, 1.0, 1.2)) == 0.0);
}

TEST_CASE("asce7_22 7.3.3: minimum load") {
    // p_m,max from memory: 25, 30, 35, 40 psf
    CHECK(close(in_psf(asce7_22::minimum_load_7_3_3(100_psf, RiskCategory::I)), 25.0, 1e-12));
    CHECK(close(in_psf(asce7_22::minimum_load_7_3_3(100_psf, RiskCategory::II)), 30.0, 1e-12));
    CHECK(close(in_psf(asce7_22::minimum_load_7_3_3(100_psf, RiskCategory::III)), 35.0, 1e-12));
    CHECK(close(in_psf(asce7_22::minimum_load_7_3_3(100_psf, RiskCategory::IV)), 40.0, 1e-12));
    CHECK(close(in_psf(asce7_22::minimum_load_7_3_3(20_psf, RiskCategory::IV)), 20.0, 1e-12));
    CHECK(close(asce7_22::minimum_load_7_3_3(30_psf, RiskCategory::II), 30_psf, 1e-15));

    // 15 degrees: O'Rourke, Guide to ASCE 7-10, Example 4-3, read on a page
    CHECK(asce7_22::minimum_applies_7_3_3(0_deg));
    CHECK(asce7_22::minimum_applies_7_3_3(2.86_deg));  // Udoeyo, read on a page (relayed): low slope
    CHECK(asce7_22::minimum_applies_7_3_3(14.999_deg));
    CHECK_FALSE(asce7_22::minimum_applies_7_3_3(15_deg));
    CHECK_FALSE(asce7_22::minimum_applies_7_3_3(90_deg));
}

TEST_CASE("asce7_22 7.4: slope factor against printed numbers") {
    // ASCE 7 commentary C7, Example 1, from memory: 8 on 12 (33.7 deg), warm, shingles: 0.91, and 19 psf of 21
    const double warm = asce7_22::slope_factor_7_4(33.7_deg, 1.0, other);
    CHECK(close_abs(warm, 0.91, 0.005));
    CHECK(close_abs(in_psf(asce7_22::sloped_load_7_4(21_psf, warm)), 19.0, 0.5));
    // commentary C7, Example 2, from memory: 41 deg at the eaves, warm: 0.72 (0.725 unrounded)
    CHECK(close_abs(asce7_22::slope_factor_7_4(41_deg, 1.0, other), 0.72, 0.0051));
    // forum thread on Fig. 7-2b of 7-05, read on a page: the equation gives 0.72 at 26.6 deg, cold (C_t = 1.1),
    // slippery
    CHECK(close_abs(asce7_22::slope_factor_7_4(26.6_deg, 1.1, slippery), 0.72, 0.005));
    // O'Rourke, Example 4-3, read on a page: 1.0 at 2.39 deg whatever the surface
    CHECK(asce7_22::slope_factor_7_4(2.39_deg, 1.2, slippery) == 1.0);
    CHECK(asce7_22::slope_factor_7_4(2.39_deg, 1.2, other) == 1.0);
}

TEST_CASE("asce7_22 7.4: the three charts at their corners") {
    struct Row {
        double thermal;
        Surface surface;
        double full;  // degrees
    };
    const std::vector<Row> rows{{1.0, slippery, 5.0},  {1.0, other, 30.0}, {1.09, slippery, 5.0},  {1.09, other, 30.0},
                                {1.1, slippery, 10.0}, {1.1, other, 37.5}, {1.19, slippery, 10.0}, {1.19, other, 37.5},
                                {1.2, slippery, 15.0}, {1.2, other, 45.0}, {1.3, slippery, 15.0},  {1.3, other, 45.0}};
    for (const Row& row : rows) {
        CAPTURE(row.thermal);
        CAPTURE(row.full);
        const auto factor = [&](double deg) {
            return asce7_22::slope_factor_7_4(from_deg(deg), row.thermal, row.surface);
        };
        CHECK(close(in_deg(asce7_22::full_load_slope_7_4(row.thermal, row.surface)), row.full, 1e-12));
        CHECK(factor(0.0) == 1.0);
        CHECK(factor(row.full) == 1.0);
        CHECK(close_abs(factor(row.full + 1e-9), 1.0, 1e-9));       // continuous
        CHECK(close(factor(0.5 * (row.full + 70.0)), 0.5, 1e-12));  // straight
        CHECK(close(factor(0.25 * row.full + 0.75 * 70.0), 0.25, 1e-12));
        CHECK(close_abs(factor(70.0 - 1e-9), 0.0, 1e-9));  // continuous
        CHECK(factor(70.0) == 0.0);
        CHECK(factor(90.0) == 0.0);
        double before = 1.0;
        for (double deg = 0.0; deg <= 90.0; deg += 0.5) {
            CHECK(factor(deg) <= before);
            before = factor(deg);
        }
    }
}

TEST_CASE("asce7_22 7.4: a cold slippery cover at the usual slopes") {
    // by hand: (70 - slope)/55
    const auto factor = [](Angle slope) { return asce7_22::slope_factor_7_4(slope, 1.2, slippery); };
    CHECK(factor(15_deg) == 1.0);
    CHECK(close(factor(30_deg), 40.0 / 55.0, 1e-12));
    CHECK(close(factor(45_deg), 25.0 / 55.0, 1e-12));
    CHECK(close(factor(60_deg), 10.0 / 55.0, 1e-12));
}

TEST_CASE("asce7_22 7.7: unit weight") {
    // O'Rourke, Example 6-2, read on a page: 17.9 pcf at 30 psf
    CHECK(close_abs(in_pcf(asce7_22::unit_weight_7_7(30_psf)), 17.9, 0.05));
    CHECK(close(in_pcf(asce7_22::unit_weight_7_7(0_psf)), 14.0, 1e-12));
    // the cap is met at (30 - 14)/0.13 psf, without a step
    const double corner = 16.0 / 0.13;
    CHECK(close(in_pcf(asce7_22::unit_weight_7_7(from_psf(corner - 1e-6))), 30.0, 1e-8));
    CHECK(close(in_pcf(asce7_22::unit_weight_7_7(from_psf(corner + 1e-6))), 30.0, 1e-12));
    CHECK(close(in_pcf(asce7_22::unit_weight_7_7(300_psf)), 30.0, 1e-12));
    // SI form with the constants converted, rounded there: 0.426 p_g + 2.2 kN/m3
    CHECK(close(in_kN_per_m3(asce7_22::unit_weight_7_7(from_kPa(2.0))), 0.426 * 2.0 + 2.2, 2e-3));
}

TEST_CASE("asce7_22 7.6: drift height") {
    // No published number of this edition is at hand. Step by step from Eq. 7.6-1:
    // 30^0.74 = 12.38995, 20^0.70 = 8.14181, 0.5^1.7 = 0.307786; their product over 17.9 = 1.73455; 1.5 sqrt = 1.97553
    CHECK(close(in_ft(asce7_22::drift_height_7_6(30_psf, 20_ft, 0.5)), 1.97553, 5e-6));
    // powers: four times the fetch is 4^0.35; twice the wind is 2^0.85; the load enters with its own unit weight
    const Length h = asce7_22::drift_height_7_6(30_psf, 20_ft, 0.3);
    CHECK(close(asce7_22::drift_height_7_6(30_psf, 80_ft, 0.3) / h, std::pow(4.0, 0.35), 1e-12));
    CHECK(close(asce7_22::drift_height_7_6(30_psf, 20_ft, 0.6) / h, std::pow(2.0, 0.85), 1e-12));
    CHECK(
        close(asce7_22::drift_height_7_6(60_psf, 20_ft, 0.3) / h, std::pow(2.0, 0.37) * std::sqrt(17.9 / 21.8), 1e-12));
    // limits
    CHECK(in_ft(asce7_22::drift_height_7_6(0_psf, 20_ft, 0.5)) == 0.0);
    CHECK(in_ft(asce7_22::drift_height_7_6(30_psf, 20_ft, 0.0)) == 0.0);
    CHECK(std::isfinite(in_ft(asce7_22::drift_height_7_6(from_kPa(100.0), 600_ft, 1.0))));
}

TEST_CASE("asce7_22 7.6.1: window of the unbalanced case") {
    CHECK_FALSE(asce7_22::unbalanced_applies_7_6_1(0_deg));
    CHECK_FALSE(asce7_22::unbalanced_applies_7_6_1(2.379_deg));
    CHECK(asce7_22::unbalanced_applies_7_6_1(2.38_deg));
    CHECK(
        asce7_22::unbalanced_applies_7_6_1(from_rad(std::atan(0.5 / 12.0))));  // O'Rourke, Example 6-2, read on a page
    CHECK(asce7_22::unbalanced_applies_7_6_1(15_deg));
    CHECK(asce7_22::unbalanced_applies_7_6_1(30.2_deg));
    CHECK(asce7_22::unbalanced_applies_7_6_1(from_rad(std::atan(7.0 / 12.0))));
    CHECK_FALSE(asce7_22::unbalanced_applies_7_6_1(30.26_deg));
    CHECK_FALSE(asce7_22::unbalanced_applies_7_6_1(45_deg));
    CHECK_FALSE(asce7_22::unbalanced_applies_7_6_1(90_deg));
}

TEST_CASE("asce7_22 7.6.1: unbalanced gable") {
    const auto wide = asce7_22::unbalanced_gable_7_6_1(orourke_gable());
    // O'Rourke, Example 6-2, read on a page: windward 7.5 psf of 25
    CHECK(close_abs(in_psf(wide.windward), 7.5, 0.05));
    // same, read on a page: 14.5 psf for h_d = 3.97 ft, 17.9 pcf, S = 24; here per foot of h_d, which this edition
    // changed
    CHECK(close_abs(in_psf(wide.leeward_surcharge) / in_ft(wide.drift_height) * 3.97, 14.5, 0.05));
    CHECK(close(wide.drift_height, asce7_22::drift_height_7_6(30_psf, 130_ft, 0.5), 1e-15));
    // the surcharge is a heap of 8/3 h_d^2 in section, as long as it does not reach the eave
    const Length depth = wide.leeward_surcharge / asce7_22::unit_weight_7_7(30_psf);
    CHECK(close(in_m2(depth * wide.surcharge_width), 8.0 / 3.0 * in_m2(wide.drift_height * wide.drift_height), 1e-12));
    CHECK(wide.surcharge_width < 130_ft);

    // narrow: the fetch is 20 ft and the surcharge ends at the rail
    const auto boat = asce7_22::unbalanced_gable_7_6_1(boat_gable());
    CHECK(close(boat.drift_height, asce7_22::drift_height_7_6(30_psf, 20_ft, 0.5), 1e-15));
    CHECK(close(boat.surcharge_width, 4_ft, 1e-15));
    CHECK(close(in_psf(boat.windward), 0.3 * 25.2, 1e-12));
    // by hand: 1.97553 ft x 17.9 pcf x sqrt(tan 20 deg) = 21.334 psf
    CHECK(close(in_psf(boat.leeward_surcharge), 21.334, 5e-5));
    // 20 ft is where the fetch begins to count
    Gable at_floor = boat_gable();
    at_floor.eave_to_ridge = 20_ft;
    CHECK(close(asce7_22::unbalanced_gable_7_6_1(at_floor).drift_height, boat.drift_height, 1e-15));
    at_floor.eave_to_ridge = 21_ft;
    CHECK(asce7_22::unbalanced_gable_7_6_1(at_floor).drift_height > boat.drift_height);
}

TEST_CASE("asce7_22 7.6.1: more wind, more snow and more slope never lower the surcharge") {
    Pressure before = 0_psf;
    for (double wind = 0.0; wind <= 1.0; wind += 0.05) {
        Gable gable = boat_gable();
        gable.winter_wind = wind;
        const Pressure now = asce7_22::unbalanced_gable_7_6_1(gable).leeward_surcharge;
        CHECK(now >= before);
        before = now;
    }
    before = 0_psf;
    for (double load = 0.0; load <= 300.0; load += 5.0) {
        Gable gable = boat_gable();
        gable.ground_load = from_psf(load);
        const Pressure now = asce7_22::unbalanced_gable_7_6_1(gable).leeward_surcharge;
        CHECK(now >= before);
        before = now;
    }
    before = 0_psf;
    for (double slope = 2.4; slope <= 30.2; slope += 0.4) {
        Gable gable = boat_gable();
        gable.slope = from_deg(slope);
        const Pressure now = asce7_22::unbalanced_gable_7_6_1(gable).leeward_surcharge;
        CHECK(now > before);
        before = now;
    }
}

TEST_CASE("asce7_22: combinations") {
    // Maguire et al., STRUCTURE magazine, Feb. 2022, Eq. 1, read on a page: 1.2 D + 1.0 S
    CHECK(asce7_22::strength_2_3_1.permanent == 1.2);
    CHECK(asce7_22::strength_2_3_1.snow == 1.0);
    // STRUCTURE magazine, ASCE 7-22 Flat Roof Snow Load Versus Minimum Snow Load, read on a page: combination 3a, 0.7 S
    CHECK(asce7_22::allowable_stress_2_4_1.permanent == 1.0);
    CHECK(asce7_22::allowable_stress_2_4_1.snow == 0.7);
}

TEST_CASE("asce7_22: the same answer from SI and US units") {
    // 1 psf = 47.88025898033584 Pa, 1 ft = 0.3048 m (NIST SP 811, from memory)
    const Pressure ground = from_Pa(30.0 * 47.88025898033584);
    const Length fetch = from_m(130.0 * 0.3048);
    CHECK(close(asce7_22::flat_load_7_3(ground, 1.0, 1.2), asce7_22::flat_load_7_3(30_psf, 1.0, 1.2), 1e-12));
    CHECK(close(asce7_22::unit_weight_7_7(ground), asce7_22::unit_weight_7_7(30_psf), 1e-12));
    CHECK(
        close(asce7_22::drift_height_7_6(ground, fetch, 0.5), asce7_22::drift_height_7_6(30_psf, 130_ft, 0.5), 1e-12));
    CHECK(close(asce7_22::slope_factor_7_4(from_rad(50.0 * std::numbers::pi / 180.0), 1.2, other),
                asce7_22::slope_factor_7_4(50_deg, 1.2, other), 1e-12));
    Gable si = orourke_gable();
    si.ground_load = ground;
    si.sloped_load = from_Pa(25.0 * 47.88025898033584);
    si.eave_to_ridge = fetch;
    const auto a = asce7_22::unbalanced_gable_7_6_1(si);
    const auto b = asce7_22::unbalanced_gable_7_6_1(orourke_gable());
    CHECK(close(a.windward, b.windward, 1e-12));
    CHECK(close(a.leeward_surcharge, b.leeward_surcharge, 1e-12));
    CHECK(close(a.surcharge_width, b.surcharge_width, 1e-12));
}

TEST_CASE("asce7_22: clauses name this edition") {
    for (const Clause& clause :
         {asce7_22::clause_2_3_1, asce7_22::clause_2_4_1, asce7_22::clause_7_3, asce7_22::clause_7_3_3,
          asce7_22::clause_7_4, asce7_22::clause_7_6, asce7_22::clause_7_6_1, asce7_22::clause_7_7}) {
        CHECK(clause.document == "ASCE 7-22");
    }
    CHECK(text_of(asce7_22::clause_7_6_1) == "ASCE 7-22, 7.6.1");
}

TEST_CASE("asce7_22: arguments out of range") {
    using namespace asce7_22;
    CHECK(code_of([] { return flat_load_7_3(from_psf(-1.0), 1.0, 1.2); }) == "asce7.ground_load.range");
    CHECK(code_of([] { return flat_load_7_3(from_kPa(100.1), 1.0, 1.2); }) == "asce7.ground_load.range");
    CHECK(code_of([] { return flat_load_7_3(30_psf, 0.49, 1.2); }) == "asce7.exposure.range");
    CHECK(code_of([] { return flat_load_7_3(30_psf, 1.51, 1.2); }) == "asce7.exposure.range");
    CHECK(code_of([] { return flat_load_7_3(30_psf, 1.0, 0.79); }) == "asce7.thermal.range");
    CHECK(code_of([] { return flat_load_7_3(30_psf, 1.0, 1.41); }) == "asce7.thermal.range");
    CHECK(code_of([] { return slope_factor_7_4(90.1_deg, 1.2, other); }) == "asce7.slope.range");
    CHECK(code_of([] { return slope_factor_7_4(from_deg(-0.1), 1.2, other); }) == "asce7.slope.range");
    CHECK(code_of([] { return slope_factor_7_4(30_deg, 1.5, other); }) == "asce7.thermal.range");
    CHECK(code_of([] { return sloped_load_7_4(from_kPa(200.1), 1.0); }) == "asce7.flat_load.range");
    CHECK(code_of([] { return sloped_load_7_4(25_psf, 1.01); }) == "asce7.slope_factor.range");
    CHECK(code_of([] { return sloped_load_7_4(25_psf, -0.01); }) == "asce7.slope_factor.range");
    CHECK(code_of([] { return drift_height_7_6(30_psf, 601_ft, 0.5); }) == "asce7.fetch.range");
    CHECK(code_of([] { return drift_height_7_6(30_psf, 0_ft, 0.5); }) == "asce7.fetch.range");
    CHECK(code_of([] { return drift_height_7_6(30_psf, 20_ft, 1.01); }) == "asce7_22.winter_wind.range");
    CHECK(code_of([] { return drift_height_7_6(30_psf, 20_ft, -0.01); }) == "asce7_22.winter_wind.range");
    CHECK(code_of([] { return minimum_load_7_3_3(30_psf, static_cast<RiskCategory>(7)); }) ==
          "asce7.risk_category.range");

    // both ends of a range belong to it
    CHECK(code_of([] { return flat_load_7_3(from_kPa(100.0), 0.5, 0.8); }) == "none");
    CHECK(code_of([] { return flat_load_7_3(30_psf, 1.5, 1.4); }) == "none");
    CHECK(code_of([] { return sloped_load_7_4(from_kPa(200.0), 1.0); }) == "none");

    const auto code = [](auto change) {
        Gable gable = boat_gable();
        change(gable);
        return code_of([&] { return unbalanced_gable_7_6_1(gable); });
    };
    CHECK(code([](Gable&) {}) == "none");
    CHECK(code([](Gable& g) { g.sloped_load = 0_psf; }) == "none");
    CHECK(code([](Gable& g) { g.slope = 35_deg; }) == "asce7.slope.range");
    CHECK(code([](Gable& g) { g.slope = 0_deg; }) == "asce7.slope.range");
    CHECK(code([](Gable& g) { g.slope = 91_deg; }) == "asce7.slope.range");
    CHECK(code([](Gable& g) { g.sloped_load = from_psf(-1.0); }) == "asce7.sloped_load.range");
    CHECK(code([](Gable& g) { g.eave_to_ridge = 0_ft; }) == "asce7.eave_to_ridge.range");
    CHECK(code([](Gable& g) { g.eave_to_ridge = 601_ft; }) == "asce7.eave_to_ridge.range");
    CHECK(code([](Gable& g) { g.ground_load = from_psf(-1.0); }) == "asce7.ground_load.range");
    CHECK(code([](Gable& g) { g.winter_wind = 2.0; }) == "asce7_22.winter_wind.range");
}

TEST_CASE("asce7_22: an argument that is not finite is refused") {
    using namespace asce7_22;
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
        CHECK(code_of([&] { return sloped_load_7_4(from_psf(bad), 0.5); }) == "asce7.flat_load.range");
        CHECK(code_of([&] { return sloped_load_7_4(25_psf, bad); }) == "asce7.slope_factor.range");
        CHECK(code_of([&] { return unit_weight_7_7(from_psf(bad)); }) == "asce7.ground_load.range");
        CHECK(code_of([&] { return drift_height_7_6(from_psf(bad), 20_ft, 0.5); }) == "asce7.ground_load.range");
        CHECK(code_of([&] { return drift_height_7_6(30_psf, from_ft(bad), 0.5); }) == "asce7.fetch.range");
        CHECK(code_of([&] { return drift_height_7_6(30_psf, 20_ft, bad); }) == "asce7_22.winter_wind.range");
        CHECK(code_of([&] { return unbalanced_applies_7_6_1(from_deg(bad)); }) == "asce7.slope.range");
        Gable gable = boat_gable();
        gable.eave_to_ridge = from_ft(bad);
        CHECK(code_of([&] { return unbalanced_gable_7_6_1(gable); }) == "asce7.eave_to_ridge.range");
    }
}
