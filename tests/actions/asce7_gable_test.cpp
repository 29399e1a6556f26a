// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_gable.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::asce7;

namespace {

// O'Rourke, Guide to the Snow Load Provisions of ASCE 7-10, Example 6-2: 1/2 on 12, W = 130 ft, p_g = 30 psf
Gable orourke_gable() {
    return {.sloped_load = 25_psf,
            .ground_load = 30_psf,
            .slope = from_rad(std::atan(0.5 / 12.0)),
            .eave_to_ridge = 130_ft};
}

}  // namespace

TEST_CASE("asce7 7.6.1: window of the unbalanced case") {
    CHECK_FALSE(unbalanced_applies_7_6_1(0_deg));
    CHECK_FALSE(unbalanced_applies_7_6_1(2.379_deg));
    CHECK(unbalanced_applies_7_6_1(2.38_deg));
    CHECK(unbalanced_applies_7_6_1(from_rad(std::atan(0.5 / 12.0))));  // O'Rourke, Example 6-2, read on a page
    CHECK(unbalanced_applies_7_6_1(15_deg));
    CHECK(unbalanced_applies_7_6_1(30.2_deg));
    CHECK(unbalanced_applies_7_6_1(from_rad(std::atan(7.0 / 12.0))));
    CHECK_FALSE(unbalanced_applies_7_6_1(30.26_deg));
    CHECK_FALSE(unbalanced_applies_7_6_1(45_deg));
    CHECK_FALSE(unbalanced_applies_7_6_1(90_deg));
}

TEST_CASE("asce7 7.6.1: surcharge against the printed example") {
    // O'Rourke, Example 6-2, read on a page: windward 7.5 psf, surcharge 14.5 psf for h_d = 3.97 ft
    const UnbalancedGable load = unbalanced_gable_of_drift_7_6_1(orourke_gable(), 3.97_ft);
    CHECK(close_abs(in_psf(load.windward), 7.5, 0.05));
    CHECK(close_abs(in_psf(load.leeward_surcharge), 14.5, 0.05));
    CHECK(load.drift_height == 3.97_ft);
    // by hand: 8 x 3.97 x sqrt(24)/3 = 51.864 ft
    CHECK(close(in_ft(load.surcharge_width), 51.864, 1e-5));
}

TEST_CASE("asce7 7.6.1: the surcharge is a heap of 8/3 h_d^2, cut off at the eave") {
    const Gable gable = orourke_gable();
    const UnbalancedGable load = unbalanced_gable_of_drift_7_6_1(gable, 3_ft);
    const Length depth = load.leeward_surcharge / unit_weight_7_7(gable.ground_load);
    CHECK(close(in_m2(depth * load.surcharge_width), 8.0 / 3.0 * in_m2(3_ft * 3_ft), 1e-12));
    // the width grows with the drift until it meets the eave, and stays there
    const double meets = 130.0 * 3.0 / (8.0 * std::sqrt(24.0));
    CHECK(close(unbalanced_gable_of_drift_7_6_1(gable, from_ft(meets - 1e-9)).surcharge_width, 130_ft, 1e-9));
    CHECK(close(unbalanced_gable_of_drift_7_6_1(gable, from_ft(meets + 1.0)).surcharge_width, 130_ft, 1e-15));
    CHECK(in_psf(unbalanced_gable_of_drift_7_6_1(gable, 0_ft).leeward_surcharge) == 0.0);
}

TEST_CASE("asce7 7.6.1: a higher drift and a steeper slope never lower the surcharge") {
    Pressure before = 0_psf;
    for (double height = 0.0; height <= 12.0; height += 0.25) {
        const Pressure now = unbalanced_gable_of_drift_7_6_1(orourke_gable(), from_ft(height)).leeward_surcharge;
        CHECK(now >= before);
        before = now;
    }
    before = 0_psf;
    for (double slope = 2.4; slope <= 30.2; slope += 0.4) {
        Gable gable = orourke_gable();
        gable.slope = from_deg(slope);
        const Pressure now = unbalanced_gable_of_drift_7_6_1(gable, 3_ft).leeward_surcharge;
        CHECK(now > before);
        before = now;
    }
}

TEST_CASE("asce7 7.6.1: the fetch of a gable is at least 20 ft") {
    CHECK(gable_fetch_7_6_1(4_ft) == 20_ft);
    CHECK(gable_fetch_7_6_1(20_ft) == 20_ft);
    CHECK(gable_fetch_7_6_1(21_ft) == 21_ft);
    CHECK(gable_fetch_7_6_1(from_m(182.88)) == from_m(182.88));  // 600 ft
}

TEST_CASE("asce7 7.6.1: the loading for simple rafters is for simple rafters") {
    const auto code = [](Pressure ground, Angle slope, Length width, Framing framing) {
        return code_of([&] {
            check_narrow_gable(ground, slope, width, framing);
            return 0;
        });
    };
    CHECK(code(30_psf, 20_deg, 12_ft, Framing::simple_rafters) == "none");
    CHECK(code(30_psf, 20_deg, 20_ft, Framing::simple_rafters) == "none");
    CHECK(code(30_psf, 20_deg, from_m(6.096), Framing::simple_rafters) == "none");
    CHECK(code(30_psf, 20_deg, from_ft(20.001), Framing::simple_rafters) == "asce7.eave_to_ridge.range");
    CHECK(code(30_psf, 20_deg, 12_ft, Framing::other) == "asce7.framing.range");
    CHECK(code(30_psf, 35_deg, 12_ft, Framing::simple_rafters) == "asce7.slope.range");
    CHECK(code(from_psf(-1.0), 20_deg, 12_ft, Framing::simple_rafters) == "asce7.ground_load.range");
}

TEST_CASE("asce7 7.6.1: the same answer from SI and US units") {
    Gable si = orourke_gable();
    si.sloped_load = from_Pa(25.0 * 47.88025898033584);  // NIST SP 811, from memory
    si.ground_load = from_Pa(30.0 * 47.88025898033584);
    si.eave_to_ridge = from_m(130.0 * 0.3048);
    const UnbalancedGable a = unbalanced_gable_of_drift_7_6_1(si, from_m(3.97 * 0.3048));
    const UnbalancedGable b = unbalanced_gable_of_drift_7_6_1(orourke_gable(), 3.97_ft);
    CHECK(close(a.windward, b.windward, 1e-12));
    CHECK(close(a.leeward_surcharge, b.leeward_surcharge, 1e-12));
    CHECK(close(a.surcharge_width, b.surcharge_width, 1e-12));
}

TEST_CASE("asce7 7.6.1: arguments out of range") {
    const auto code = [](auto change, Length height) {
        Gable gable = orourke_gable();
        change(gable);
        return code_of([&] { return unbalanced_gable_of_drift_7_6_1(gable, height); });
    };
    CHECK(code([](Gable& g) { g.slope = 35_deg; }, 3_ft) == "asce7.slope.range");
    CHECK(code([](Gable& g) { g.slope = 0_deg; }, 3_ft) == "asce7.slope.range");
    CHECK(code([](Gable& g) { g.slope = 91_deg; }, 3_ft) == "asce7.slope.range");
    CHECK(code([](Gable& g) { g.sloped_load = from_psf(-1.0); }, 3_ft) == "asce7.sloped_load.range");
    CHECK(code([](Gable& g) { g.eave_to_ridge = 0_ft; }, 3_ft) == "asce7.eave_to_ridge.range");
    CHECK(code([](Gable& g) { g.eave_to_ridge = 601_ft; }, 3_ft) == "asce7.eave_to_ridge.range");
    CHECK(code([](Gable& g) { g.ground_load = from_psf(-1.0); }, 3_ft) == "asce7.ground_load.range");
    CHECK(code([](Gable&) {}, from_ft(-0.1)) == "asce7.drift_height.range");
    for (const double bad : not_finite) {
        CAPTURE(bad);
        CHECK(code([&](Gable& g) { g.slope = from_deg(bad); }, 3_ft) == "asce7.slope.range");
        CHECK(code([&](Gable& g) { g.sloped_load = from_psf(bad); }, 3_ft) == "asce7.sloped_load.range");
        CHECK(code([&](Gable& g) { g.eave_to_ridge = from_ft(bad); }, 3_ft) == "asce7.eave_to_ridge.range");
        CHECK(code([&](Gable& g) { g.ground_load = from_psf(bad); }, 3_ft) == "asce7.ground_load.range");
        CHECK(code([](Gable&) {}, from_ft(bad)) == "asce7.drift_height.range");
    }
}
