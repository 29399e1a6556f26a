// SPDX-License-Identifier: BSD-3-Clause
// No published number of clause 6 was found: values here are worked by hand.
#include "coverframe/actions/en1991_1_3_local.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::en1991_1_3;

TEST_CASE("en1991_1_3 6.2: drift at a projection") {
    const auto drift = [](double height, double ground) {
        return projection_drift_6_2(from_m(height), from_kPa(ground));
    };
    CHECK(close(drift(0.75, 1.0).coefficient, 1.5, 1e-12));
    CHECK(drift(0.3, 1.0).coefficient == 0.8);  // the floor: 0.6
    CHECK(close(drift(0.3, 1.0).height, 0.6, 1e-12));
    CHECK(close(drift(0.4, 1.0).coefficient, 0.8, 1e-12));
    CHECK(close(drift(1.0, 1.0).coefficient, 2.0, 1e-12));
    CHECK(drift(3.0, 1.0).coefficient == 2.0);  // the ceiling
    CHECK(in_m(drift(1.0, 1.0).length) == 5.0);
    CHECK(in_m(drift(4.0, 1.0).length) == 8.0);
    CHECK(in_m(drift(9.0, 1.0).length) == 15.0);
    for (double height = 0.05; height < 9.0; height += 0.05) {
        CHECK(close_abs(drift(height + 1e-9, 1.0).coefficient, drift(height, 1.0).coefficient, 1e-8));
        CHECK(drift(height + 0.05, 1.0).coefficient >= drift(height, 1.0).coefficient);
        // more ground snow is never less at the obstruction
        CHECK(1.6 * drift(height, 1.6).coefficient >= 1.5 * drift(height, 1.5).coefficient - 1e-12);
    }
    CHECK(close(projection_drift_6_2(2_ft, 20_psf).coefficient,
                projection_drift_6_2(from_m(0.6096), from_Pa(20 * 47.88025898033584)).coefficient, 1e-12));
    CHECK(code_of([&] { return drift(0.0, 1.0); }) == "en1991_1_3.height.range");
    CHECK(code_of([&] { return drift(1.0, 0.0); }) == "en1991_1_3.ground_load.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return drift(bad, 1.0); }) == "en1991_1_3.height.range");
        CHECK(code_of([&] { return drift(1.0, bad); }) == "en1991_1_3.ground_load.range");
    }
}

TEST_CASE("en1991_1_3 6.3: snow that overhangs the edge") {
    const auto edge = [](double load, double depth) { return overhang_6_3(from_kPa(load), from_m(depth)); };
    // by hand, gamma = 3: d = 2 m, k = 3/2, s_e = 1.5 x 36/3; d = 0.5 m, k = 1.5, s_e = 1.5 x 2.25/3
    CHECK(close(edge(6.0, 2.0).irregularity, 1.5, 1e-12));
    CHECK(close(in_kN_per_m(edge(6.0, 2.0).load), 18.0, 1e-12));
    CHECK(close(edge(1.5, 0.5).irregularity, 1.5, 1e-12));
    CHECK(close(in_kN_per_m(edge(1.5, 0.5).load), 1.125, 1e-12));
    // both limits of k meet at a depth of 1 m
    CHECK(close(edge(3.0, 1.0).irregularity, 3.0, 1e-12));
    CHECK(close_abs(edge(3.0, 1.0 + 1e-9).irregularity, 3.0, 1e-8));
    CHECK(edge(0.0, 0.0).irregularity == 0.0);
    CHECK(in_kN_per_m(edge(0.0, 0.0).load) == 0.0);
    CHECK(edge(3.0, 100.0).irregularity > 0.0);
    // the depth of its own weight
    CHECK(close(in_m(snow_depth_6_3(from_kPa(1.5))), 0.5, 1e-12));
    double before = 0.0;
    for (double load = 0.0; load <= 20.0; load += 0.1) {
        const double found = in_kN_per_m(overhang_6_3(from_kPa(load), snow_depth_6_3(from_kPa(load))).load);
        CHECK(found >= before);
        before = found;
    }
    CHECK(close(overhang_6_3(30_psf, 2_ft).load, overhang_6_3(from_Pa(30 * 47.88025898033584), from_m(0.6096)).load,
                1e-12));
    CHECK_FALSE(overhang_applies_6_3(800_m));
    CHECK(overhang_applies_6_3(from_m(800.1)));
    CHECK(code_of([] { return overhang_applies_6_3(1501_m); }) == "en1991_1_3.altitude.range");
    CHECK(code_of([&] { return edge(-0.1, 1.0); }) == "en1991_1_3.roof_load.range");
    CHECK(code_of([&] { return edge(200.1, 1.0); }) == "en1991_1_3.roof_load.range");
    CHECK(code_of([&] { return edge(1.0, -0.1); }) == "en1991_1_3.depth.range");
    CHECK(code_of([&] { return edge(1.0, 100.1); }) == "en1991_1_3.depth.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return edge(bad, 1.0); }) == "en1991_1_3.roof_load.range");
        CHECK(code_of([&] { return edge(1.0, bad); }) == "en1991_1_3.depth.range");
        CHECK(code_of([&] { return snow_depth_6_3(from_kPa(bad)); }) == "en1991_1_3.roof_load.range");
        CHECK(code_of([&] { return overhang_applies_6_3(from_m(bad)); }) == "en1991_1_3.altitude.range");
    }
}

TEST_CASE("en1991_1_3 6.4: force on a snow guard") {
    const auto force = [](double load, double distance, double deg) {
        return in_kN_per_m(guard_force_6_4(from_kPa(load), from_m(distance), from_deg(deg)));
    };
    CHECK(close(force(1.2, 5.0, 30.0), 3.0, 1e-12));  // by hand
    CHECK(force(1.2, 5.0, 0.0) == 0.0);
    CHECK(close(force(1.2, 5.0, 90.0), 6.0, 1e-12));  // all of it at 90 deg
    CHECK(force(0.0, 5.0, 30.0) == 0.0);
    CHECK(force(1.2, 0.0, 30.0) == 0.0);
    double before = 0.0;
    for (double deg = 0.0; deg <= 90.0; deg += 1.0) {
        CHECK(force(1.2, 5.0, deg) >= before);
        before = force(1.2, 5.0, deg);
    }
    CHECK(close(guard_force_6_4(25_psf, 10_ft, 30_deg), from_plf(125.0), 1e-12));
    CHECK(code_of([&] { return force(-0.1, 5.0, 30.0); }) == "en1991_1_3.roof_load.range");
    CHECK(code_of([&] { return force(1.0, -5.0, 30.0); }) == "en1991_1_3.distance.range");
    CHECK(code_of([&] { return force(1.0, 5.0, 91.0); }) == "en1991_1_3.pitch.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return force(bad, 5.0, 30.0); }) == "en1991_1_3.roof_load.range");
        CHECK(code_of([&] { return force(1.0, bad, 30.0); }) == "en1991_1_3.distance.range");
        CHECK(code_of([&] { return force(1.0, 5.0, bad); }) == "en1991_1_3.pitch.range");
    }
}
