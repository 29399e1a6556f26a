// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_10.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::asce7_10;

namespace {

// O'Rourke, Guide to the Snow Load Provisions of ASCE 7-10, Examples 4-3 and 6-2
Gable orourke_gable() {
    return {.sloped_load = 25_psf,
            .ground_load = 30_psf,
            .slope = from_rad(std::atan(0.5 / 12.0)),
            .eave_to_ridge = 130_ft};
}

LowerRoof lower_roof() { return {.ground_load = 30_psf, .balanced_load = 25.2_psf, .step = 8_ft, .length = 40_ft}; }

}  // namespace

TEST_CASE("asce7_10: the printed gable from ground snow to surcharge") {
    // O'Rourke, Examples 4-3 and 6-2, read on a page: 25.2 psf, C_s 1.0, 3.97 ft, 7.5 psf, 14.5 psf. The drift height
    // is 3.978 ft without rounding on the way.
    const Pressure flat = flat_load_7_3(30_psf, exposure_factor_7_3_1(Terrain::B, RoofExposure::partially_exposed),
                                        thermal_factor_7_3_2(ThermalCondition::unheated_or_open_air),
                                        importance_factor_1_5(RiskCategory::II));
    CHECK(close_abs(in_psf(flat), 25.2, 0.05));
    CHECK(slope_factor_7_4(2.39_deg, 1.2, Surface::other) == 1.0);
    CHECK(close_abs(in_ft(drift_height_7_7(30_psf, 130_ft)), 3.97, 0.01));
    const UnbalancedGable load = unbalanced_gable_7_6_1(orourke_gable());
    CHECK(close_abs(in_psf(load.windward), 7.5, 0.05));
    CHECK(close_abs(in_psf(load.leeward_surcharge), 14.5, 0.05));
    CHECK(load.drift_height == drift_height_7_7(30_psf, 130_ft));
}

TEST_CASE("asce7_10: a narrow gable drifts as one of 20 ft") {
    Gable boat = orourke_gable();
    boat.slope = 20_deg;
    boat.eave_to_ridge = 4_ft;
    const UnbalancedGable load = unbalanced_gable_7_6_1(boat);
    CHECK(load.drift_height == drift_height_7_7(30_psf, 20_ft));
    CHECK(close(load.surcharge_width, 4_ft, 1e-15));
    boat.eave_to_ridge = 21_ft;
    CHECK(unbalanced_gable_7_6_1(boat).drift_height > load.drift_height);
}

TEST_CASE("asce7_10: short fetches have no cap, importance does not count") {
    CHECK(close(drift_height_7_7(30_psf, 1_ft), drift_height_7_7(30_psf, 20_ft), 1e-14));
}

TEST_CASE("asce7_10 7.7.1: leeward of the upper roof, three quarters windward of the lower one") {
    const StepDrift lee = step_drift_7_7_1(lower_roof(), 200_ft);
    CHECK(lee.leeward == drift_height_7_7(30_psf, 200_ft));
    CHECK(close(lee.windward, 0.75 * drift_height_7_7(30_psf, 40_ft), 1e-15));
    CHECK(lee.drift.height == lee.leeward);
    LowerRoof wide = lower_roof();
    wide.length = 600_ft;
    const StepDrift wind = step_drift_7_7_1(wide, 20_ft);
    CHECK(wind.windward > wind.leeward);
    CHECK(wind.drift.height == wind.windward);
    // no limit by the length of the lower roof in this edition
    LowerRoof shelf = lower_roof();
    shelf.length = 2_ft;
    CHECK(step_drift_7_7_1(shelf, 200_ft).leeward == lee.leeward);
}

TEST_CASE("asce7_10 7.7.2 and 7.8: heights come from the right fetch") {
    const Gap gap{.separation = 5_ft, .height = 8_ft, .lower_length = 12_ft};
    CHECK(leeward_drift_over_gap_7_7_2(gap, 30_psf, 100_ft).height == drift_height_7_7(30_psf, 100_ft));
    const GapDrift wind = windward_drift_over_gap_7_7_2(lower_roof(), 1_ft);
    const double h = 0.75 * in_ft(drift_height_7_7(30_psf, 40_ft));
    CHECK(close(in_ft(wind.height), h * (1.0 - 1.0 / (4.0 * h)), 1e-12));
    CHECK(close(projection_drift_7_8(lower_roof(), 100_ft).height, 0.75 * drift_height_7_7(30_psf, 100_ft), 1e-15));
}

TEST_CASE("asce7_10: more ground snow never lowers a drift") {
    double before = 0.0;
    for (double load = 0.0; load <= 100.0; load += 2.5) {
        LowerRoof roof = lower_roof();
        roof.ground_load = from_psf(load);
        roof.balanced_load = flat_load_7_3(roof.ground_load, 1.0, 1.2, 1.0);
        const double now = in_psf(step_drift_7_7_1(roof, 100_ft).drift.peak + roof.balanced_load);
        CHECK(now >= before);
        before = now;
    }
}

TEST_CASE("asce7_10: the same answer from SI and US units") {
    const Pressure ground = from_Pa(30.0 * 47.88025898033584);  // NIST SP 811, from memory
    const LowerRoof si{.ground_load = ground,
                       .balanced_load = from_Pa(25.2 * 47.88025898033584),
                       .step = from_m(8.0 * 0.3048),
                       .length = from_m(40.0 * 0.3048)};
    CHECK(close(drift_height_7_7(ground, from_m(130.0 * 0.3048)), drift_height_7_7(30_psf, 130_ft), 1e-12));
    CHECK(close(step_drift_7_7_1(si, from_m(200.0 * 0.3048)).drift.peak,
                step_drift_7_7_1(lower_roof(), 200_ft).drift.peak, 1e-12));
}

TEST_CASE("asce7_10: arguments out of range, and clauses") {
    CHECK(code_of([] { return drift_height_7_7(from_psf(-1.0), 20_ft); }) == "asce7.ground_load.range");
    CHECK(code_of([] { return step_drift_7_7_1(lower_roof(), 0_ft); }) == "asce7.fetch.range");
    CHECK(code_of([] { return projection_drift_7_8(lower_roof(), 601_ft); }) == "asce7.fetch.range");
    CHECK(code_of([] { return leeward_drift_over_gap_7_7_2({}, 30_psf, 20_ft); }) == "asce7.gap.range");
    CHECK(code_of([] { return windward_drift_over_gap_7_7_2(lower_roof(), 0_ft); }) == "asce7.gap.range");
    Gable steep = orourke_gable();
    steep.slope = 35_deg;
    CHECK(code_of([&] { return unbalanced_gable_7_6_1(steep); }) == "asce7.slope.range");
    for (const Clause& clause :
         {clause_1_5, clause_2_3, clause_2_4, clause_7_3, clause_7_3_1, clause_7_3_2, clause_7_3_4, clause_7_4,
          clause_7_5, clause_7_6_1, clause_7_6_2, clause_7_6_3, clause_7_7_1, clause_drift_height, clause_7_7_2,
          clause_7_8, clause_7_9, clause_7_10, clause_7_12}) {
        CHECK(clause.document == "ASCE 7-10");
    }
}
