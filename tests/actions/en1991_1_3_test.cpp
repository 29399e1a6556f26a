// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1991_1_3.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::en1991_1_3;

TEST_CASE("en1991_1_3 5.3.3: shape coefficient against printed numbers") {
    // French exercise on multi-pitch roofs (scribd document 449162340), read on a page: 0.27 at 50 deg, 0.53 at 40 deg
    CHECK(close_abs(shape_coefficient_pitched_5_3_3(50_deg, Sliding::free), 0.27, 0.005));
    CHECK(close_abs(shape_coefficient_pitched_5_3_3(40_deg, Sliding::free), 0.53, 0.005));
    // Steel Buildings in Europe, Part 3, Appendix A, read on a page: 15 % is 8.5 deg, and 0.8 there
    const Angle upper = from_rad(std::atan(0.15));
    CHECK(close_abs(in_deg(upper), 8.5, 0.05));
    CHECK(shape_coefficient_pitched_5_3_3(upper, Sliding::free) == 0.8);
}

TEST_CASE("en1991_1_3 5.3.3: shape coefficient at its corners") {
    const auto mu = [](double deg) { return shape_coefficient_pitched_5_3_3(from_deg(deg), Sliding::free); };
    CHECK(mu(0.0) == 0.8);
    CHECK(mu(15.0) == 0.8);
    CHECK(mu(30.0) == 0.8);
    CHECK(close_abs(mu(30.0 + 1e-9), 0.8, 1e-10));  // continuous
    CHECK(close(mu(45.0), 0.4, 1e-12));
    CHECK(close_abs(mu(60.0 - 1e-9), 0.0, 1e-10));  // continuous
    CHECK(mu(60.0) == 0.0);
    CHECK(mu(70.0) == 0.0);
    CHECK(mu(90.0) == 0.0);
    double before = 0.8;
    for (double deg = 0.0; deg <= 90.0; deg += 0.5) {
        CHECK(mu(deg) <= before);
        before = mu(deg);
    }
    // floor where sliding is prevented, from memory
    for (const double deg : {0.0, 15.0, 30.0, 45.0, 60.0, 70.0, 90.0}) {
        CHECK(shape_coefficient_pitched_5_3_3(from_deg(deg), Sliding::prevented) == 0.8);
    }
}

TEST_CASE("en1991_1_3 5.2: roof load against printed numbers") {
    const auto load = [](double ground, double deg) {
        return in_kPa(roof_load_5_2(from_kPa(ground), shape_coefficient_pitched_5_3_3(from_deg(deg), Sliding::free),
                                    1.0, thermal_coefficient_5_2_8));
    };
    // Steel Buildings in Europe, Part 3, Appendix A, read on a page: 0.52 kN/m2, and 1.04 for the exceptional fall
    // of 1.30
    CHECK(close_abs(load(0.65, 8.5), 0.52, 0.005));
    CHECK(close_abs(load(1.30, 8.5), 1.04, 0.005));
    // French exercise, read on a page: 0.12 and 0.24 of 0.45, 0.27 and 0.53 of the exceptional 1.00
    CHECK(close_abs(load(0.45, 50.0), 0.12, 0.005));
    CHECK(close_abs(load(0.45, 40.0), 0.24, 0.005));
    CHECK(close_abs(load(1.00, 50.0), 0.27, 0.005));
    CHECK(close_abs(load(1.00, 40.0), 0.53, 0.005));
    // French teaching site, Dax, monopitch 24 deg, read on a page: 0.36
    CHECK(close_abs(load(0.45, 24.0), 0.36, 0.005));
}

TEST_CASE("en1991_1_3 5.2: roof load takes every factor") {
    // by hand: 0.8 x 1.2 x 1.1 x 2.0
    CHECK(close(in_kPa(roof_load_5_2(from_kPa(2.0), 0.8, 1.2, 1.1)), 2.112, 1e-12));
    CHECK(in_kPa(roof_load_5_2(from_kPa(0.0), 0.8, 1.0, 1.0)) == 0.0);
    CHECK(in_kPa(roof_load_5_2(from_kPa(2.0), 0.0, 1.0, 1.0)) == 0.0);
    // 1 psf = 47.88025898033584 Pa (NIST SP 811, from memory)
    CHECK(close(roof_load_5_2(30_psf, 0.8, 1.0, 1.0), roof_load_5_2(from_Pa(30 * 47.88025898033584), 0.8, 1.0, 1.0),
                1e-12));
}

TEST_CASE("en1991_1_3 5.2(7): exposure coefficient") {
    // Table 5.1, from memory
    CHECK(exposure_coefficient_5_2_7(Topography::windswept) == 0.8);
    CHECK(exposure_coefficient_5_2_7(Topography::normal) == 1.0);
    CHECK(exposure_coefficient_5_2_7(Topography::sheltered) == 1.2);
    CHECK(thermal_coefficient_5_2_8 == 1.0);
}

TEST_CASE("en1991_1_3 5.3.3: arrangements of a duopitch cover") {
    // Steel Buildings in Europe, Part 3, Appendix A, read on a page: 0.52 on both; 0.26 and 0.52
    const Slope low{8.5_deg, Sliding::free};
    const DuopitchArrangements equal = duopitch_5_3_3(low, low);
    const auto load = [](double mu) { return in_kPa(roof_load_5_2(from_kPa(0.65), mu, 1.0, 1.0)); };
    CHECK(close_abs(load(equal.undrifted.first), 0.52, 0.005));
    CHECK(close_abs(load(equal.undrifted.second), 0.52, 0.005));
    CHECK(close_abs(load(equal.first_halved.first), 0.26, 0.005));
    CHECK(close_abs(load(equal.first_halved.second), 0.52, 0.005));
    CHECK(close_abs(load(equal.second_halved.first), 0.52, 0.005));
    CHECK(close_abs(load(equal.second_halved.second), 0.26, 0.005));
    // same, read on a page: 0.52 on the less loaded slope of the exceptional 1.30
    CHECK(close_abs(in_kPa(roof_load_5_2(from_kPa(1.30), equal.first_halved.first, 1.0, 1.0)), 0.52, 0.005));
}

TEST_CASE("en1991_1_3 5.3.3: each slope keeps its own pitch, and swapping the slopes swaps the cases") {
    const Slope steep{45_deg, Sliding::free};
    const Slope held{45_deg, Sliding::prevented};
    const DuopitchArrangements a = duopitch_5_3_3(steep, held);
    const DuopitchArrangements b = duopitch_5_3_3(held, steep);
    CHECK(close(a.undrifted.first, 0.4, 1e-12));
    CHECK(close(a.undrifted.second, 0.8, 1e-12));
    CHECK(a.undrifted.first == b.undrifted.second);
    CHECK(a.first_halved.first == b.second_halved.second);
    CHECK(a.first_halved.second == b.second_halved.first);
    CHECK(a.second_halved.first == b.first_halved.second);
    CHECK(Slope{}.sliding == Sliding::prevented);
}

TEST_CASE("en1991_1_3: arguments out of range") {
    CHECK(code_of([] { return roof_load_5_2(from_kPa(-0.1), 0.8, 1.0, 1.0); }) == "en1991_1_3.ground_load.range");
    CHECK(code_of([] { return roof_load_5_2(from_kPa(100.1), 0.8, 1.0, 1.0); }) == "en1991_1_3.ground_load.range");
    CHECK(code_of([] { return roof_load_5_2(from_kPa(1.0), -0.1, 1.0, 1.0); }) == "en1991_1_3.shape.range");
    CHECK(code_of([] { return roof_load_5_2(from_kPa(1.0), 4.1, 1.0, 1.0); }) == "en1991_1_3.shape.range");
    CHECK(code_of([] { return roof_load_5_2(from_kPa(1.0), 0.8, 0.49, 1.0); }) == "en1991_1_3.exposure.range");
    CHECK(code_of([] { return roof_load_5_2(from_kPa(1.0), 0.8, 1.51, 1.0); }) == "en1991_1_3.exposure.range");
    CHECK(code_of([] { return roof_load_5_2(from_kPa(1.0), 0.8, 1.0, 0.79); }) == "en1991_1_3.thermal.range");
    CHECK(code_of([] { return roof_load_5_2(from_kPa(1.0), 0.8, 1.0, 1.41); }) == "en1991_1_3.thermal.range");
    CHECK(code_of([] { return shape_coefficient_pitched_5_3_3(90.1_deg, Sliding::free); }) == "en1991_1_3.pitch.range");
    CHECK(code_of([] { return shape_coefficient_pitched_5_3_3(from_deg(-1.0), Sliding::prevented); }) ==
          "en1991_1_3.pitch.range");
    CHECK(code_of([] { return duopitch_5_3_3({30_deg}, {95_deg}); }) == "en1991_1_3.pitch.range");
    CHECK(code_of([] { return exposure_coefficient_5_2_7(static_cast<Topography>(5)); }) ==
          "en1991_1_3.topography.unknown");
    // both ends of a range belong to it
    CHECK(code_of([] { return roof_load_5_2(from_kPa(100.0), 4.0, 0.5, 0.8); }) == "none");
    CHECK(code_of([] { return roof_load_5_2(from_kPa(0.0), 0.0, 1.5, 1.4); }) == "none");
    for (const double bad : not_finite) {
        CAPTURE(bad);
        CHECK(code_of([&] { return roof_load_5_2(from_kPa(bad), 0.8, 1.0, 1.0); }) == "en1991_1_3.ground_load.range");
        CHECK(code_of([&] { return roof_load_5_2(from_kPa(1.0), bad, 1.0, 1.0); }) == "en1991_1_3.shape.range");
        CHECK(code_of([&] { return roof_load_5_2(from_kPa(1.0), 0.8, bad, 1.0); }) == "en1991_1_3.exposure.range");
        CHECK(code_of([&] { return roof_load_5_2(from_kPa(1.0), 0.8, 1.0, bad); }) == "en1991_1_3.thermal.range");
        CHECK(code_of([&] { return shape_coefficient_pitched_5_3_3(from_deg(bad), Sliding::prevented); }) ==
              "en1991_1_3.pitch.range");
        CHECK(code_of([&] { return duopitch_5_3_3({from_deg(bad)}, {30_deg}); }) == "en1991_1_3.pitch.range");
    }
}

TEST_CASE("en1991_1_3: clauses name this edition") {
    for (const Clause& clause : {clause_5_2, clause_5_2_7, clause_5_2_8, clause_5_3_3}) {
        CHECK(clause.document == "EN 1991-1-3:2003");
    }
    CHECK(clause_5_3_3.number == "5.3.3");
}
