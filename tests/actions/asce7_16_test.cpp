// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_16.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "coverframe/actions/asce7_10.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::asce7_16;

namespace {

// Step of the design firm's article on drifts in 7-16 and 7-22: Washington, 25 psf, p_f 17.5 psf, 4 ft high, 30 ft long
LowerRoof washington() { return {.ground_load = 25_psf, .balanced_load = 17.5_psf, .step = 4_ft, .length = 30_ft}; }

Gable boat_gable() { return {.sloped_load = 25.2_psf, .ground_load = 30_psf, .slope = 20_deg, .eave_to_ridge = 4_ft}; }

}  // namespace

TEST_CASE("asce7_16: the printed step") {
    // design firm's article, read on a page: h_d 2.08 ft, 35.8 psf, 53.3 psf with the balanced load; fetch 40 ft
    const StepDrift step = step_drift_7_7_1(washington(), 40_ft, 1.0);
    CHECK(close_abs(in_ft(step.leeward), 2.08, 0.005));
    CHECK(close_abs(in_psf(step.drift.peak), 35.8, 0.05));
    CHECK(close_abs(in_psf(step.drift.peak) + 17.5, 53.3, 0.05));
}

TEST_CASE("asce7_16: drift height beside that of 7-10") {
    for (const double fetch : {6.0, 20.0, 130.0, 600.0}) {
        CAPTURE(fetch);
        CHECK(close(drift_height_7_6(30_psf, from_ft(fetch), 1.0), asce7_10::drift_height_7_7(30_psf, from_ft(fetch)),
                    1e-12));
        CHECK(close(drift_height_7_6(30_psf, from_ft(fetch), 1.2),
                    std::sqrt(1.2) * asce7_10::drift_height_7_7(30_psf, from_ft(fetch)), 1e-12));
    }
    // the cap bites below about 5 ft: sqrt(30 x 2/(4 x 17.9)) = 0.91542 ft
    CHECK(close(in_ft(drift_height_7_6(30_psf, 2_ft, 1.0)), 0.91542, 1e-5));
    CHECK(in_ft(drift_height_7_6(0_psf, 20_ft, 1.0)) == 0.0);
}

TEST_CASE("asce7_16: the cap and the figure meet without a step, and never fall") {
    double before = 0.0;
    for (double fetch = 0.25; fetch <= 60.0; fetch += 0.25) {
        const double now = in_ft(drift_height_7_6(30_psf, from_ft(fetch), 1.1));
        CHECK(now >= before * (1 - 1e-14));  // flat up to 20 ft but for rounding
        CHECK(now - before <= 0.6);
        before = now;
    }
    // where both are equal: 1.4352^2 x 4 x 17.9/30 ft
    const double figure = in_ft(asce7_10::drift_height_7_7(30_psf, 5_ft));
    const double meets = figure * figure * 4.0 * 17.9 / 30.0;
    CHECK(close(drift_height_7_6(30_psf, from_ft(meets - 1e-9), 1.0),
                drift_height_7_6(30_psf, from_ft(meets + 1e-9), 1.0), 1e-9));
    before = 0.0;
    for (double load = 0.0; load <= 200.0; load += 1.0) {
        const double now = in_ft(drift_height_7_6(from_psf(load), 4_ft, 1.0));
        CHECK(now >= before);
        before = now;
    }
}

TEST_CASE("asce7_16 7.7.1: the lower roof limits the leeward drift") {
    LowerRoof shelf = washington();
    shelf.length = 2_ft;
    const StepDrift step = step_drift_7_7_1(shelf, 200_ft, 1.0);
    CHECK(close(step.leeward, 0.6 * shelf.length, 1e-15));
    CHECK(close(step.drift.height, std::max(step.leeward, step.windward), 1e-15));
    shelf.length = 200_ft;
    CHECK(step_drift_7_7_1(shelf, 200_ft, 1.0).leeward == drift_height_7_6(25_psf, 200_ft, 1.0));
    CHECK(close(step_drift_7_7_1(shelf, 200_ft, 1.0).windward, 0.75 * drift_height_7_6(25_psf, 200_ft, 1.0), 1e-15));
}

TEST_CASE("asce7_16: importance raises every drift") {
    const Gap gap{.separation = 5_ft, .height = 8_ft, .lower_length = 12_ft};
    const double root = std::sqrt(1.2);
    CHECK(close(leeward_drift_over_gap_7_7_2(gap, 25_psf, 100_ft, 1.2).height,
                root * leeward_drift_over_gap_7_7_2(gap, 25_psf, 100_ft, 1.0).height, 1e-12));
    CHECK(close(projection_drift_7_8(washington(), 50_ft, 1.2).peak,
                root * projection_drift_7_8(washington(), 50_ft, 1.0).peak, 1e-12));
    CHECK(close(unbalanced_gable_7_6_1(boat_gable(), 1.2).leeward_surcharge,
                root * unbalanced_gable_7_6_1(boat_gable(), 1.0).leeward_surcharge, 1e-12));
    CHECK(unbalanced_gable_7_6_1(boat_gable(), 1.0).drift_height == drift_height_7_6(30_psf, 20_ft, 1.0));
    CHECK(windward_drift_over_gap_7_7_2(washington(), 1_ft, 1.2).peak >
          windward_drift_over_gap_7_7_2(washington(), 1_ft, 1.0).peak);
    CHECK(close(projection_drift_7_8(washington(), 50_ft, 1.0).height, 0.75 * drift_height_7_6(25_psf, 50_ft, 1.0),
                1e-15));
}

TEST_CASE("asce7_16: the same answer from SI and US units") {
    const Pressure ground = from_Pa(25.0 * 47.88025898033584);  // NIST SP 811, from memory
    const LowerRoof si{.ground_load = ground,
                       .balanced_load = from_Pa(17.5 * 47.88025898033584),
                       .step = from_m(4.0 * 0.3048),
                       .length = from_m(30.0 * 0.3048)};
    for (const double fetch : {2.0, 40.0}) {
        CHECK(close(drift_height_7_6(ground, from_m(fetch * 0.3048), 1.1),
                    drift_height_7_6(25_psf, from_ft(fetch), 1.1), 1e-12));
        CHECK(close(step_drift_7_7_1(si, from_m(fetch * 0.3048), 1.1).drift.peak,
                    step_drift_7_7_1(washington(), from_ft(fetch), 1.1).drift.peak, 1e-12));
    }
}

TEST_CASE("asce7_16: arguments out of range, and clauses") {
    CHECK(code_of([] { return drift_height_7_6(30_psf, 601_ft, 1.0); }) == "asce7.fetch.range");
    CHECK(code_of([] { return drift_height_7_6(from_psf(-1.0), 20_ft, 1.0); }) == "asce7.ground_load.range");
    CHECK(code_of([] { return drift_height_7_6(30_psf, 20_ft, 0.4); }) == "asce7.importance.range");
    CHECK(code_of([] { return step_drift_7_7_1(washington(), 0_ft, 1.0); }) == "asce7.fetch.range");
    CHECK(code_of([] { return step_drift_7_7_1(washington(), 40_ft, 2.0); }) == "asce7.importance.range");
    CHECK(code_of([] { return projection_drift_7_8(washington(), 40_ft, 2.0); }) == "asce7.importance.range");
    CHECK(code_of([] { return unbalanced_gable_7_6_1(boat_gable(), 2.0); }) == "asce7.importance.range");
    CHECK(code_of([] { return windward_drift_over_gap_7_7_2(washington(), 1_ft, 2.0); }) == "asce7.importance.range");
    for (const double bad : not_finite) {
        CAPTURE(bad);
        CHECK(code_of([&] { return drift_height_7_6(30_psf, 20_ft, bad); }) == "asce7.importance.range");
        CHECK(code_of([&] { return drift_height_7_6(30_psf, from_ft(bad), 1.0); }) == "asce7.fetch.range");
    }
    for (const Clause& clause :
         {clause_1_5, clause_2_3, clause_2_4, clause_7_3, clause_7_3_1, clause_7_3_2, clause_7_3_4, clause_7_4,
          clause_7_5, clause_7_6_1, clause_7_6_2, clause_7_6_3, clause_7_7_1, clause_drift_height, clause_7_7_2,
          clause_7_8, clause_7_9, clause_7_10, clause_7_12}) {
        CHECK(clause.document == "ASCE 7-16");
    }
}
