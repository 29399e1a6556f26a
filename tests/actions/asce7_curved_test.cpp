// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_curved.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::asce7;

namespace {

// The theatre of ASCE 7 commentary C7, Example 2 (from memory): span 80 ft, rise 15 ft, warm, not slippery, C_e 0.9,
// p_f 17 psf, eave slope 41 degrees
CurvedRoof theatre() {
    return {.flat_load = 17_psf,
            .exposure = 0.9,
            .chart = SlopeChart::warm,
            .surface = Surface::other,
            .eave_slope = 41_deg,
            .eave_clearance = 20_ft};
}

// A hooped cover of our own: unheated, slippery
CurvedRoof hoops(Angle eave_slope) {
    return {.flat_load = 25_psf,
            .exposure = 1.0,
            .chart = SlopeChart::very_cold,
            .surface = Surface::unobstructed_slippery,
            .eave_slope = eave_slope,
            .eave_clearance = 6_ft};
}

}  // namespace

TEST_CASE("asce7 7.6.2: the arc of the commentary's theatre") {
    // ASCE 7 commentary C7, Example 2, from memory: 21 deg eave to crown, 41 deg at the eave, 30 deg at 30 ft
    const CircularArc arc = circular_arc_7_6_2(40_ft, 15_ft);
    CHECK(close_abs(in_deg(arc.eave_to_crown), 21.0, 0.5));
    CHECK(close_abs(in_deg(arc.eave_slope), 41.0, 0.5));
    CHECK(close_abs(in_ft(arc.to_30_degrees), 30.0, 0.5));
    CHECK(close(in_ft(arc.radius), 1825.0 / 30.0, 1e-12));
    CHECK(close(arc.to_70_degrees, 40_ft, 1e-15));  // flatter than 70 degrees all over
}

TEST_CASE("asce7 7.6.2: a half circle, and a flat arc") {
    const CircularArc half = circular_arc_7_6_2(10_ft, 10_ft);
    CHECK(close(half.radius, 10_ft, 1e-12));
    CHECK(close(in_deg(half.eave_slope), 90.0, 1e-12));
    CHECK(close(half.to_30_degrees, 5_ft, 1e-12));
    CHECK(close(in_ft(half.to_70_degrees), 10.0 * std::sin(in_rad(70_deg)), 1e-12));
    const CircularArc flat = circular_arc_7_6_2(10_ft, 1_ft);
    CHECK(close(flat.to_30_degrees, 10_ft, 1e-15));  // it has no 30 degree point
    // the tangent at the eave is that of the circle
    CHECK(close(std::sin(in_rad(flat.eave_slope)), 10_ft / flat.radius, 1e-12));
}

TEST_CASE("asce7 7.6.2: unbalanced theatre against the commentary") {
    // ASCE 7 commentary C7, Example 2, from memory: 9 psf at the crown, 38 at 30 degrees, 27 at the eave
    const UnbalancedCurve load = unbalanced_curve_7_6_2(theatre());
    CHECK(load.figure_case == 2);
    CHECK(close_abs(in_psf(load.crown), 9.0, 0.5001));
    CHECK(close_abs(in_psf(load.at_30_degrees), 38.0, 0.5));
    CHECK(close_abs(in_psf(load.eave), 27.0, 0.5));
    CHECK(load.slope_factor_30 == 1.0);
    CHECK(close(load.slope_factor_eave, 0.725, 1e-12));
}

TEST_CASE("asce7 7.6.2: window of the unbalanced case") {
    CHECK_FALSE(unbalanced_applies_7_6_2(0_deg));
    CHECK_FALSE(unbalanced_applies_7_6_2(9.999_deg));
    CHECK(unbalanced_applies_7_6_2(10_deg));
    CHECK(unbalanced_applies_7_6_2(60_deg));
    CHECK_FALSE(unbalanced_applies_7_6_2(60.001_deg));
    CHECK_FALSE(unbalanced_applies_7_6_2(90_deg));
}

TEST_CASE("asce7 7.6.2: the three cases meet") {
    const auto at = [](double eave) { return unbalanced_curve_7_6_2(hoops(from_deg(eave))); };
    CHECK(at(29.9).figure_case == 1);
    CHECK(at(30.0).figure_case == 2);
    CHECK(at(70.0).figure_case == 2);
    CHECK(at(70.1).figure_case == 3);
    CHECK(at(90.0).figure_case == 3);
    CHECK(close(at(30.0 - 1e-9).eave, at(30.0).eave, 1e-9));
    CHECK(close(at(30.0).eave, at(30.0).at_30_degrees, 1e-12));
    CHECK(close(at(70.0 + 1e-9).at_30_degrees, at(70.0).at_30_degrees, 1e-12));
    CHECK(in_psf(at(70.0).eave) == 0.0);
    CHECK(in_psf(at(70.1).eave) == 0.0);
    CHECK(in_psf(at(0.0).eave) == 50.0 * at(0.0).slope_factor_eave);
    // by hand: case 1 with full load at the eave: 2 p_f/C_e
    CHECK(close(in_psf(at(10.0).eave), 50.0, 1e-12));
    CHECK(close(at(10.0).at_30_degrees, at(10.0).eave, 1e-15));
}

TEST_CASE("asce7 7.6.2: near the ground the load stays to the eave") {
    CurvedRoof roof = hoops(60_deg);
    const Pressure open = unbalanced_curve_7_6_2(roof).eave;
    roof.eave_clearance = from_ft(3.001);
    CHECK(unbalanced_curve_7_6_2(roof).eave == open);
    for (const Length& near : {0_ft, 3_ft, from_m(0.9144)}) {
        roof.eave_clearance = near;
        const UnbalancedCurve held = unbalanced_curve_7_6_2(roof);
        CHECK(held.eave == held.at_30_degrees);
        CHECK(held.eave > open);
    }
    roof.eave_slope = 80_deg;
    CHECK(unbalanced_curve_7_6_2(roof).eave == unbalanced_curve_7_6_2(roof).at_30_degrees);
    roof.eave_slope = 20_deg;  // case 1 knows no such rule: it runs to its own eave value anyway
    roof.eave_clearance = 0_ft;
    const UnbalancedCurve near = unbalanced_curve_7_6_2(roof);
    roof.eave_clearance = 20_ft;
    CHECK(near.eave == unbalanced_curve_7_6_2(roof).eave);
}

TEST_CASE("asce7 7.6.2: a steeper eave never carries more, more snow never less") {
    Pressure before = 1000_psf;
    for (double eave = 0.0; eave <= 90.0; eave += 1.0) {
        const Pressure now = unbalanced_curve_7_6_2(hoops(from_deg(eave))).eave;
        CHECK(now <= before);
        before = now;
    }
    for (double flat = 0.0; flat <= 100.0; flat += 5.0) {
        CurvedRoof roof = theatre();
        roof.flat_load = from_psf(flat);
        const UnbalancedCurve load = unbalanced_curve_7_6_2(roof);
        CHECK(close_abs(in_psf(load.crown), 0.5 * flat, 1e-12));
        CHECK(load.at_30_degrees >= load.crown);
    }
}

TEST_CASE("asce7 7.6.3: valley between two roofs") {
    // by hand: gamma 17.9 pcf, p_f 25 psf, C_e 1: 50 psf, or 12.5 + 17.9 z
    const UnbalancedValley deep = unbalanced_valley_7_6_3(25_psf, 1.0, 30_psf, 5_ft);
    CHECK(close(in_psf(deep.crown), 12.5, 1e-12));
    CHECK(close(in_psf(deep.valley), 50.0, 1e-12));
    const UnbalancedValley shallow = unbalanced_valley_7_6_3(25_psf, 1.0, 30_psf, 1_ft);
    CHECK(close(in_psf(shallow.valley), 30.4, 1e-12));
    const double meets = 37.5 / 17.9;
    CHECK(close(in_psf(unbalanced_valley_7_6_3(25_psf, 1.0, 30_psf, from_ft(meets)).valley), 50.0, 1e-12));
    CHECK(close(in_psf(unbalanced_valley_7_6_3(25_psf, 0.8, 30_psf, 5_ft).valley), 62.5, 1e-12));
}

TEST_CASE("asce7 7.6.2: the same answer from SI and US units") {
    CurvedRoof si = theatre();
    si.flat_load = from_Pa(17.0 * 47.88025898033584);  // NIST SP 811, from memory
    si.eave_clearance = from_m(20.0 * 0.3048);
    CHECK(close(unbalanced_curve_7_6_2(si).eave, unbalanced_curve_7_6_2(theatre()).eave, 1e-12));
    CHECK(close(circular_arc_7_6_2(from_m(12.192), from_m(4.572)).eave_slope,
                circular_arc_7_6_2(40_ft, 15_ft).eave_slope, 1e-12));
    CHECK(close(unbalanced_valley_7_6_3(si.flat_load, 1.0, si.flat_load, from_m(0.3048)).valley,
                unbalanced_valley_7_6_3(17_psf, 1.0, 17_psf, 1_ft).valley, 1e-12));
}

TEST_CASE("asce7 7.6.2 and 7.6.3: arguments out of range") {
    CHECK(code_of([] { return circular_arc_7_6_2(0_ft, 1_ft); }) == "asce7.half_span.range");
    CHECK(code_of([] { return circular_arc_7_6_2(10_ft, 0_ft); }) == "asce7.rise.range");
    CHECK(code_of([] { return circular_arc_7_6_2(10_ft, 11_ft); }) == "asce7.rise.range");
    CHECK(code_of([] { return unbalanced_applies_7_6_2(91_deg); }) == "asce7.slope.range");
    const auto code = [](auto change) {
        CurvedRoof roof = theatre();
        change(roof);
        return code_of([&] { return unbalanced_curve_7_6_2(roof); });
    };
    CHECK(code([](CurvedRoof&) {}) == "none");
    CHECK(code([](CurvedRoof& r) { r.flat_load = from_psf(-1.0); }) == "asce7.flat_load.range");
    CHECK(code([](CurvedRoof& r) { r.exposure = 0.4; }) == "asce7.exposure.range");
    CHECK(code([](CurvedRoof& r) { r.eave_slope = 91_deg; }) == "asce7.slope.range");
    CHECK(code([](CurvedRoof& r) { r.eave_clearance = from_ft(-1.0); }) == "asce7.eave_clearance.range");
    CHECK(code_of([] { return unbalanced_valley_7_6_3(from_psf(-1.0), 1.0, 30_psf, 1_ft); }) ==
          "asce7.flat_load.range");
    CHECK(code_of([] { return unbalanced_valley_7_6_3(25_psf, 0.4, 30_psf, 1_ft); }) == "asce7.exposure.range");
    CHECK(code_of([] { return unbalanced_valley_7_6_3(25_psf, 1.0, from_psf(-1.0), 1_ft); }) ==
          "asce7.ground_load.range");
    CHECK(code_of([] { return unbalanced_valley_7_6_3(25_psf, 1.0, 30_psf, 0_ft); }) == "asce7.depth.range");
    for (const double bad : not_finite) {
        CAPTURE(bad);
        CHECK(code_of([&] { return circular_arc_7_6_2(from_ft(bad), 1_ft); }) == "asce7.half_span.range");
        CHECK(code_of([&] { return circular_arc_7_6_2(10_ft, from_ft(bad)); }) == "asce7.rise.range");
        CHECK(code([&](CurvedRoof& r) { r.flat_load = from_psf(bad); }) == "asce7.flat_load.range");
        CHECK(code([&](CurvedRoof& r) { r.exposure = bad; }) == "asce7.exposure.range");
        CHECK(code([&](CurvedRoof& r) { r.eave_slope = from_deg(bad); }) == "asce7.slope.range");
        CHECK(code([&](CurvedRoof& r) { r.eave_clearance = from_ft(bad); }) == "asce7.eave_clearance.range");
        CHECK(code_of([&] { return unbalanced_valley_7_6_3(25_psf, 1.0, 30_psf, from_ft(bad)); }) ==
              "asce7.depth.range");
    }
}
