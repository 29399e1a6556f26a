// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1991_1_3.hpp"

#include <array>
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

TEST_CASE("en1991_1_3 4.3: ground load of an exceptional fall") {
    // Steel Buildings in Europe, Part 3, Appendix A, read on a page: 1.30 of 0.65 with C_esl = 2
    CHECK(exceptional_factor_4_3 == 2.0);
    CHECK(close_abs(in_kPa(exceptional_ground_load_4_3(from_kPa(0.65))), 1.30, 0.005));
    CHECK(close(in_kPa(exceptional_ground_load_4_3(from_kPa(0.65), 2.3)), 1.495, 1e-12));
    CHECK(in_kPa(exceptional_ground_load_4_3(from_kPa(0.0))) == 0.0);
    CHECK(close(exceptional_ground_load_4_3(30_psf), from_psf(60.0), 1e-12));
    CHECK(code_of([] { return exceptional_ground_load_4_3(from_kPa(1.0), 0.99); }) ==
          "en1991_1_3.exceptional_factor.range");
    CHECK(code_of([] { return exceptional_ground_load_4_3(from_kPa(1.0), 4.01); }) ==
          "en1991_1_3.exceptional_factor.range");
    CHECK(code_of([] { return exceptional_ground_load_4_3(from_kPa(-0.1)); }) == "en1991_1_3.ground_load.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return exceptional_ground_load_4_3(from_kPa(bad)); }) == "en1991_1_3.ground_load.range");
        CHECK(code_of([&] { return exceptional_ground_load_4_3(from_kPa(1.0), bad); }) ==
              "en1991_1_3.exceptional_factor.range");
    }
}

TEST_CASE("en1991_1_3 Annex A: situations of the four cases") {
    // Table A.1, from memory, moderately sure; rows: undrifted, drifted, fall undrifted, fall drifted, drift of Annex B
    struct Row {
        ExceptionalSnow exceptional;
        bool annex_b_shape;
        std::array<bool, 5> expected;
    };
    for (const Row& row : {Row{ExceptionalSnow::none, false, {true, true, false, false, false}},
                           Row{ExceptionalSnow::none, true, {true, true, false, false, false}},
                           Row{ExceptionalSnow::falls, false, {true, true, true, true, false}},
                           Row{ExceptionalSnow::falls, true, {true, true, true, true, false}},
                           Row{ExceptionalSnow::drifts, false, {true, true, false, false, false}},
                           Row{ExceptionalSnow::drifts, true, {true, false, false, false, true}},
                           Row{ExceptionalSnow::falls_and_drifts, false, {true, true, true, false, false}},
                           Row{ExceptionalSnow::falls_and_drifts, true, {true, false, true, false, true}}}) {
        CAPTURE(static_cast<int>(row.exceptional));
        CAPTURE(row.annex_b_shape);
        const DesignSituations found = design_situations_A(row.exceptional, row.annex_b_shape);
        const std::array<bool, 5> got{found.undrifted, found.drifted, found.exceptional_fall_undrifted,
                                      found.exceptional_fall_drifted, found.exceptional_drift};
        CHECK(got == row.expected);
        // drifted snow is looked at one way or the other
        CHECK((found.drifted || found.exceptional_drift));
    }
    CHECK(code_of([] { return design_situations_A(static_cast<ExceptionalSnow>(4), true); }) ==
          "en1991_1_3.exceptional.unknown");
}

TEST_CASE("en1991_1_3 5.2: the three equations") {
    // Eq. 5.2 is Eq. 5.1 with s_Ad; Steel Buildings in Europe, as above: 1.04
    CHECK(close_abs(in_kPa(exceptional_fall_load_5_2(exceptional_ground_load_4_3(from_kPa(0.65)), 0.8, 1.0, 1.0)), 1.04,
                    0.005));
    CHECK(close(in_kPa(exceptional_fall_load_5_2(from_kPa(2.0), 0.8, 1.2, 1.1)), 2.112, 1e-12));
    // Eq. 5.3, same source, p. 53: 2.60 of 4.00, without C_e and C_t
    CHECK(close_abs(in_kPa(exceptional_drift_load_5_2(from_kPa(0.65), 4.0)), 2.60, 0.005));
    CHECK(in_kPa(exceptional_drift_load_5_2(from_kPa(0.0), 8.0)) == 0.0);
    CHECK(close(exceptional_drift_load_5_2(30_psf, 2.0), from_psf(60.0), 1e-12));
    CHECK(code_of([] { return exceptional_drift_load_5_2(from_kPa(1.0), 8.01); }) == "en1991_1_3.shape.range");
    CHECK(code_of([] { return exceptional_drift_load_5_2(from_kPa(1.0), -0.01); }) == "en1991_1_3.shape.range");
    CHECK(code_of([] { return exceptional_drift_load_5_2(from_kPa(101.0), 1.0); }) == "en1991_1_3.ground_load.range");
    CHECK(code_of([] { return exceptional_fall_load_5_2(from_kPa(1.0), 1.0, 0.4, 1.0); }) ==
          "en1991_1_3.exposure.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return exceptional_drift_load_5_2(from_kPa(bad), 1.0); }) ==
              "en1991_1_3.ground_load.range");
        CHECK(code_of([&] { return exceptional_drift_load_5_2(from_kPa(1.0), bad); }) == "en1991_1_3.shape.range");
    }
}

TEST_CASE("en1991_1_3 5.3.3: a raised coefficient of a level roof scales the line") {
    // A1:2015, from memory, moderately sure
    for (double deg = 0.0; deg <= 90.0; deg += 2.5) {
        CAPTURE(deg);
        const double usual = shape_coefficient_pitched_5_3_3(from_deg(deg), Sliding::free);
        CHECK(shape_coefficient_pitched_5_3_3(from_deg(deg), Sliding::free, 0.8) == usual);
        CHECK(close_abs(shape_coefficient_pitched_5_3_3(from_deg(deg), Sliding::free, 1.0), usual / 0.8, 1e-15));
        CHECK(shape_coefficient_pitched_5_3_3(from_deg(deg), Sliding::prevented, 1.0) == 1.0);
        CHECK(shape_coefficient_pitched_5_3_3(Slope{from_deg(deg), Sliding::free, 1.0}) ==
              shape_coefficient_pitched_5_3_3(from_deg(deg), Sliding::free, 1.0));
        CHECK(monopitch_5_3_2(Slope{from_deg(deg), Sliding::free}) == usual);
    }
    CHECK(code_of([] { return monopitch_5_3_2({30_deg, Sliding::free, 0.79}); }) == "en1991_1_3.level.range");
    CHECK(code_of([] { return monopitch_5_3_2({30_deg, Sliding::free, 1.26}); }) == "en1991_1_3.level.range");
    CHECK(code_of([] { return monopitch_5_3_2({91_deg}); }) == "en1991_1_3.pitch.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return monopitch_5_3_2({30_deg, Sliding::free, bad}); }) == "en1991_1_3.level.range");
    }
}

TEST_CASE("en1991_1_3 5.3.4: coefficient of a valley") {
    // Istruzioni per l'applicazione delle Norme tecniche, 2008, Table C3.4.I, read on a page: 0.8 + 0.8 a/30, then 1.6
    const auto mu = [](double deg) { return valley_coefficient_5_3_4(from_deg(deg)); };
    CHECK(mu(0.0) == 0.8);
    CHECK(close(mu(15.0), 1.2, 1e-12));
    CHECK(close_abs(mu(30.0 - 1e-9), 1.6, 1e-10));  // continuous
    CHECK(mu(30.0) == 1.6);
    CHECK(mu(45.0) == 1.6);
    CHECK(mu(60.0) == 1.6);
    double before = 0.8;
    for (double deg = 0.0; deg <= 60.0; deg += 0.5) {
        CHECK(mu(deg) >= before);
        before = mu(deg);
        // a valley never carries less than its slopes
        CHECK(mu(deg) >= shape_coefficient_pitched_5_3_3(from_deg(deg), Sliding::prevented));
    }
    CHECK(code_of([&] { return mu(60.1); }) == "en1991_1_3.valley_pitch.range");
    CHECK(code_of([&] { return mu(-0.1); }) == "en1991_1_3.valley_pitch.range");
    for (const double bad : not_finite) CHECK(code_of([&] { return mu(bad); }) == "en1991_1_3.valley_pitch.range");
}

TEST_CASE("en1991_1_3 5.3.4: arrangements of a valley") {
    // French exercise "Exo2-2", read on a page: slopes of 50 and 40 deg, 0.27 and 0.53 at the ridges, 1.6 in the valley
    const ValleyArrangements valley = multi_span_5_3_4({50_deg, Sliding::free}, {40_deg, Sliding::free});
    CHECK(close_abs(valley.slopes.first, 0.27, 0.005));
    CHECK(close_abs(valley.slopes.second, 0.53, 0.005));
    CHECK(close_abs(valley.valley, 1.6, 0.05));
    // 0.72 kN/m2 of 0.45 in the valley
    CHECK(close_abs(in_kPa(roof_load_5_2(from_kPa(0.45), valley.valley, 1.0, 1.0)), 0.72, 0.005));
    // swapping the slopes swaps the ridges
    const ValleyArrangements swapped = multi_span_5_3_4({40_deg, Sliding::free}, {50_deg, Sliding::free});
    CHECK(swapped.slopes.first == valley.slopes.second);
    CHECK(swapped.valley == valley.valley);
    // the mean pitch counts, and both ends of the range belong to it
    CHECK(close(multi_span_5_3_4({10_deg}, {20_deg}).valley, 1.2, 1e-12));
    CHECK(multi_span_5_3_4({0_deg}, {0_deg}).valley == 0.8);
    CHECK(multi_span_5_3_4({60_deg}, {60_deg}).valley == 1.6);
    // a steep slope is refused though the mean would pass
    CHECK(code_of([] { return multi_span_5_3_4({61_deg}, {10_deg}); }) == "en1991_1_3.valley_pitch.range");
    CHECK(code_of([] { return multi_span_5_3_4({10_deg}, {61_deg}); }) == "en1991_1_3.valley_pitch.range");
    CHECK(code_of([] { return multi_span_5_3_4({from_deg(-1.0)}, {30_deg}); }) == "en1991_1_3.valley_pitch.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return multi_span_5_3_4({from_deg(bad)}, {30_deg}); }) == "en1991_1_3.valley_pitch.range");
    }
}

TEST_CASE("en1991_1_3: arguments out of range") {
    CHECK(code_of([] { return roof_load_5_2(from_kPa(-0.1), 0.8, 1.0, 1.0); }) == "en1991_1_3.ground_load.range");
    CHECK(code_of([] { return roof_load_5_2(from_kPa(100.1), 0.8, 1.0, 1.0); }) == "en1991_1_3.ground_load.range");
    CHECK(code_of([] { return roof_load_5_2(from_kPa(1.0), -0.1, 1.0, 1.0); }) == "en1991_1_3.shape.range");
    CHECK(code_of([] { return roof_load_5_2(from_kPa(1.0), 25.1, 1.0, 1.0); }) == "en1991_1_3.shape.range");
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
    CHECK(code_of([] { return roof_load_5_2(from_kPa(100.0), 25.0, 0.5, 0.8); }) == "none");
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
    for (const Clause& clause : {clause_4_3, clause_5_2, clause_5_2_7, clause_5_2_8, clause_5_3_2, clause_5_3_3,
                                 clause_5_3_4, annex_A}) {
        CHECK(clause.document == "EN 1991-1-3:2003");
    }
    CHECK(clause_5_3_3.number == "5.3.3");
}
