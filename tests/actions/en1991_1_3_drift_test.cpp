// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1991_1_3_drift.hpp"

#include <array>
#include <cmath>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::en1991_1_3;

namespace {

// Steel Buildings in Europe, Part 3, Appendix A, read on pages 46 and 50: b_1 + b_2 = 10 + 40 m, s_k = 0.65 kN/m2, step
// of 3 m at the ridge and 4.25 m at the eaves of the lower roof, upper pitch 8.5 deg
constexpr TallerWorks example(Length height) {
    return {.ground_load = from_kPa(0.65),
            .upper_width = from_m(10.0),
            .lower_width = from_m(40.0),
            .height = height,
            .upper_pitch = from_deg(8.5),
            .upper_slope = from_m(10.0)};
}

// A boat beside a shed with a steep roof: a drift in which every part counts.
constexpr TallerWorks shed{.ground_load = from_kPa(1.5),
                           .upper_width = from_m(8.0),
                           .lower_width = from_m(3.0),
                           .height = from_m(2.5),
                           .upper_pitch = from_deg(25.0),
                           .upper_slope = from_m(4.0)};

double load_at_wall(TallerWorks works, double ground_kPa) {
    works.ground_load = from_kPa(ground_kPa);
    return in_kPa(roof_load_5_2(works.ground_load, taller_works_5_3_6(works).wall, 1.0, 1.0));
}

}  // namespace

TEST_CASE("en1991_1_3 5.3.6: drift against printed numbers") {
    const WallDrift ridge = taller_works_5_3_6(example(3_m));
    CHECK(close_abs(ridge.wind.supply, 8.3, 0.05));
    CHECK(close_abs(ridge.wind.height, 9.2, 0.05));
    CHECK(ridge.wind.coefficient == 4.0);
    CHECK(ridge.sliding == 0.0);
    CHECK(ridge.wall == 4.0);
    CHECK(close_abs(in_m(ridge.length), 6.00, 0.005));
    CHECK(close_abs(in_kPa(roof_load_5_2(from_kPa(0.65), ridge.wall, 1.0, 1.0)), 2.60, 0.005));
    const WallDrift eaves = taller_works_5_3_6(example(4.25_m));
    CHECK(close_abs(eaves.wind.supply, 5.9, 0.05));
    CHECK(close_abs(eaves.wind.height, 13.1, 0.05));
    CHECK(eaves.wind.coefficient == 4.0);
    CHECK(close_abs(in_m(eaves.length), 8.50, 0.005));
    // the roof is longer than the drift
    CHECK(ridge.end == 0.8);
    CHECK(undrifted_coefficient_5_3_6 == 0.8);
}

TEST_CASE("en1991_1_3 5.3.6: length of the drift at its limits") {
    const auto length = [](double height) { return in_m(drift_length_5_3_6(from_m(height))); };
    CHECK(length(0.1) == 5.0);
    CHECK(length(2.5) == 5.0);
    CHECK(close_abs(length(2.5 + 1e-9), 5.0, 1e-8));  // continuous
    CHECK(length(4.0) == 8.0);
    CHECK(close_abs(length(7.5 - 1e-9), 15.0, 1e-8));
    CHECK(length(7.5) == 15.0);
    CHECK(length(200.0) == 15.0);
    CHECK(close(drift_length_5_3_6(10_ft), from_ft(20.0), 1e-12));
    CHECK(code_of([&] { return length(0.0); }) == "en1991_1_3.height.range");
    CHECK(code_of([&] { return length(200.1); }) == "en1991_1_3.height.range");
    for (const double bad : not_finite) CHECK(code_of([&] { return length(bad); }) == "en1991_1_3.height.range");
}

TEST_CASE("en1991_1_3 5.3.6: wind drift and the order of its limits") {
    const auto wind = [](double width, double height, double ground) {
        return wind_drift_5_3_6(from_m(width), from_m(width), from_m(height), from_kPa(ground));
    };
    CHECK(close(wind(4.0, 2.0, 1.0).coefficient, 2.0, 1e-12));   // by hand: 8/4, under 2 x 2/1
    CHECK(close(wind(9.0, 1.5, 2.0).coefficient, 1.5, 1e-12));   // the step is full: 2 x 1.5/2, though 18/3
    CHECK(wind(40.0, 3.0, 0.65).coefficient == 4.0);             // the ceiling
    CHECK(wind(1.0, 3.0, 1.0).coefficient == 0.8);               // the floor: 2/6
    CHECK(wind(40.0, 0.1, 2.0).coefficient == 0.8);              // the floor after gamma h/s_k = 0.1
    // continuous where one limit takes over from another
    for (double height = 0.05; height < 10.0; height += 0.05) {
        CAPTURE(height);
        CHECK(close_abs(wind(8.0, height + 1e-9, 1.5).coefficient, wind(8.0, height, 1.5).coefficient, 1e-6));
    }
    // the widths count by their sum
    CHECK(wind_drift_5_3_6(10_m, 40_m, 3_m, from_kPa(0.65)).supply ==
          wind_drift_5_3_6(40_m, 10_m, 3_m, from_kPa(0.65)).supply);
    // US input
    CHECK(close(wind_drift_5_3_6(20_ft, 12_ft, 8_ft, 30_psf).coefficient,
                wind_drift_5_3_6(from_m(20 * 0.3048), from_m(12 * 0.3048), from_m(8 * 0.3048),
                                 from_Pa(30 * 47.88025898033584)).coefficient,
                1e-12));
}

TEST_CASE("en1991_1_3 5.3.6: sliding snow is half the load of the upper slope") {
    // by hand: 0.5 x 0.8 s_k 6 m = 0.5 mu_s s_k 5 m
    const double mu = sliding_drift_5_3_6(20_deg, 6_m, 5_m);
    CHECK(close(mu, 0.96, 1e-12));
    CHECK(close(0.5 * 0.8 * 6.0, 0.5 * mu * 5.0, 1e-12));
    CHECK(sliding_drift_5_3_6(0_deg, 6_m, 5_m) == 0.0);
    CHECK(sliding_drift_5_3_6(15_deg, 6_m, 5_m) == 0.0);
    CHECK(close(sliding_drift_5_3_6(from_deg(15.0 + 1e-9), 6_m, 5_m), 0.96, 1e-12));  // the jump of the text
    CHECK(close(sliding_drift_5_3_6(90_deg, 6_m, 5_m), 0.96, 1e-12));
    CHECK(sliding_drift_5_3_6(20_deg, 0_m, 5_m) == 0.0);
    CHECK(close(sliding_drift_5_3_6(45_deg, 6_m, 5_m, 0.4), 0.48, 1e-12));
    CHECK(code_of([] { return sliding_drift_5_3_6(91_deg, 6_m, 5_m); }) == "en1991_1_3.pitch.range");
    CHECK(code_of([] { return sliding_drift_5_3_6(20_deg, 101_m, 5_m); }) == "en1991_1_3.upper_slope.range");
    CHECK(code_of([] { return sliding_drift_5_3_6(20_deg, from_m(-1.0), 5_m); }) == "en1991_1_3.upper_slope.range");
    CHECK(code_of([] { return sliding_drift_5_3_6(20_deg, 6_m, 4.9_m); }) == "en1991_1_3.drift_length.range");
    CHECK(code_of([] { return sliding_drift_5_3_6(20_deg, 6_m, 15.1_m); }) == "en1991_1_3.drift_length.range");
    CHECK(code_of([] { return sliding_drift_5_3_6(20_deg, 6_m, 5_m, 1.01); }) == "en1991_1_3.upper_shape.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return sliding_drift_5_3_6(from_deg(bad), 6_m, 5_m); }) == "en1991_1_3.pitch.range");
        CHECK(code_of([&] { return sliding_drift_5_3_6(20_deg, from_m(bad), 5_m); }) == "en1991_1_3.upper_slope.range");
        CHECK(code_of([&] { return sliding_drift_5_3_6(20_deg, 6_m, from_m(bad)); }) ==
              "en1991_1_3.drift_length.range");
        CHECK(code_of([&] { return sliding_drift_5_3_6(20_deg, 6_m, 5_m, bad); }) == "en1991_1_3.upper_shape.range");
    }
}

TEST_CASE("en1991_1_3 5.3.6: a short roof cuts the drift") {
    const WallDrift drift = taller_works_5_3_6(shed);
    CHECK(in_m(drift.length) == 5.0);
    CHECK(close(drift.sliding, 0.8 * 4.0 / 5.0, 1e-12));
    CHECK(close(drift.wind.coefficient, 11.0 / 5.0, 1e-12));
    CHECK(close(drift.wall, 0.64 + 2.2, 1e-12));
    CHECK(close(drift.end, 2.84 - 2.04 * 3.0 / 5.0, 1e-12));  // 3 of 5 m down the line to 0.8
    // the line: its ends, its middle, and nothing more beyond
    const auto at = [&](double x) { return drift_coefficient_at_5_3_6(drift.wall, drift.length, from_m(x)); };
    CHECK(at(0.0) == drift.wall);
    CHECK(close(at(2.5), 0.5 * (drift.wall + 0.8), 1e-12));
    CHECK(close_abs(at(5.0 - 1e-9), 0.8, 1e-8));
    CHECK(at(5.0) == 0.8);
    CHECK(at(1000.0) == 0.8);
    double before = drift.wall;
    for (double x = 0.0; x <= 8.0; x += 0.1) {
        CHECK(at(x) <= before);
        before = at(x);
    }
    CHECK(code_of([&] { return at(-0.1); }) == "en1991_1_3.distance.range");
    CHECK(code_of([] { return drift_coefficient_at_5_3_6(0.79, 5_m, 1_m); }) == "en1991_1_3.wall_coefficient.range");
    CHECK(code_of([] { return drift_coefficient_at_5_3_6(25.1, 5_m, 1_m); }) == "en1991_1_3.wall_coefficient.range");
    CHECK(code_of([] { return drift_coefficient_at_5_3_6(2.0, 4_m, 1_m); }) == "en1991_1_3.drift_length.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return at(bad); }) == "en1991_1_3.distance.range");
        CHECK(code_of([&] { return drift_coefficient_at_5_3_6(bad, 5_m, 1_m); }) ==
              "en1991_1_3.wall_coefficient.range");
    }
}

TEST_CASE("en1991_1_3 5.3.6: more ground snow is never less on the roof, and the drift never less than no drift") {
    for (const Length& height : {0.2_m, 1_m, 2.5_m, 7.5_m, 20_m}) {
        TallerWorks works = shed;
        works.height = height;
        double before = 0.0;
        for (double ground = 0.05; ground <= 20.0; ground *= 1.1) {
            CAPTURE(ground);
            const double load = load_at_wall(works, ground);
            CHECK(load >= before);
            CHECK(load >= 0.8 * ground - 1e-12);
            before = load;
        }
    }
}

TEST_CASE("en1991_1_3 5.3.6: the largest works stay within the coefficient the load takes") {
    const TallerWorks huge{.ground_load = from_kPa(1.0),
                           .upper_width = 1000_m,
                           .lower_width = 1000_m,
                           .height = 2.5_m,
                           .upper_pitch = 90_deg,
                           .upper_slope = 100_m,
                           .upper_shape = 1.0};
    CHECK(close(taller_works_5_3_6(huge).wall, 24.0, 1e-12));
    CHECK(code_of([&] { return roof_load_5_2(huge.ground_load, taller_works_5_3_6(huge).wall, 1.0, 1.0); }) == "none");
}

TEST_CASE("en1991_1_3 5.3.6: arguments out of range") {
    const auto code = [](auto change) {
        TallerWorks works = shed;
        change(works);
        return code_of([&] { return taller_works_5_3_6(works); });
    };
    CHECK(code([](TallerWorks&) {}) == "none");
    CHECK(code([](TallerWorks& w) { w.ground_load = from_kPa(0.0); }) == "en1991_1_3.ground_load.range");
    CHECK(code([](TallerWorks& w) { w.ground_load = from_kPa(100.1); }) == "en1991_1_3.ground_load.range");
    CHECK(code([](TallerWorks& w) { w.upper_width = from_m(0.0); }) == "en1991_1_3.width.range");
    CHECK(code([](TallerWorks& w) { w.lower_width = from_m(1000.1); }) == "en1991_1_3.width.range");
    CHECK(code([](TallerWorks& w) { w.height = from_m(-1.0); }) == "en1991_1_3.height.range");
    CHECK(code([](TallerWorks& w) { w.upper_pitch = 91_deg; }) == "en1991_1_3.pitch.range");
    CHECK(code([](TallerWorks& w) { w.upper_slope = from_m(-1.0); }) == "en1991_1_3.upper_slope.range");
    CHECK(code([](TallerWorks& w) { w.upper_shape = -0.1; }) == "en1991_1_3.upper_shape.range");
    for (const double bad : not_finite) {
        CAPTURE(bad);
        CHECK(code([&](TallerWorks& w) { w.ground_load = from_kPa(bad); }) == "en1991_1_3.ground_load.range");
        CHECK(code([&](TallerWorks& w) { w.upper_width = from_m(bad); }) == "en1991_1_3.width.range");
        CHECK(code([&](TallerWorks& w) { w.lower_width = from_m(bad); }) == "en1991_1_3.width.range");
        CHECK(code([&](TallerWorks& w) { w.height = from_m(bad); }) == "en1991_1_3.height.range");
        CHECK(code([&](TallerWorks& w) { w.upper_pitch = from_deg(bad); }) == "en1991_1_3.pitch.range");
        CHECK(code([&](TallerWorks& w) { w.upper_slope = from_m(bad); }) == "en1991_1_3.upper_slope.range");
        CHECK(code([&](TallerWorks& w) { w.upper_shape = bad; }) == "en1991_1_3.upper_shape.range");
    }
}
