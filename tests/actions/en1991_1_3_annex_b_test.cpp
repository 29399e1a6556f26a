// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1991_1_3_annex_b.hpp"

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::en1991_1_3;

TEST_CASE("en1991_1_3 B.4: parapets against printed numbers") {
    // Steel Buildings in Europe, Part 3, Appendix A, 3.5, read on p. 53: h = 3 m, s_k = 0.65 kN/m2
    const ExceptionalWallDrift eaves = parapet_drift_B_4(from_kPa(0.65), 3_m, 12.5_m, 25_m);
    CHECK(close_abs(in_m(eaves.length), 12.50, 0.005));
    CHECK(close_abs(eaves.height, 9.23, 0.005));
    CHECK(close_abs(eaves.coefficient, 4.00, 0.005));
    CHECK(close_abs(in_kPa(exceptional_drift_load_5_2(from_kPa(0.65), eaves.coefficient)), 2.60, 0.005));
    const ExceptionalWallDrift gable = parapet_drift_B_4(from_kPa(0.65), 3_m, 40_m, 25_m);
    CHECK(close_abs(in_m(gable.length), 15.00, 0.005));
    CHECK(close_abs(gable.supply, 5.33, 0.005));
    CHECK(close_abs(gable.coefficient, 5.33, 0.005));
    // printed 3.46 from the rounded 5.33
    CHECK(close_abs(in_kPa(exceptional_drift_load_5_2(from_kPa(0.65), gable.coefficient)), 3.46, 0.01));
}

TEST_CASE("en1991_1_3 B.4: each limit of a parapet drift governs somewhere") {
    const auto mu = [](double ground, double height, double width, double other) {
        return parapet_drift_B_4(from_kPa(ground), from_m(height), from_m(width), from_m(other));
    };
    CHECK(close(mu(1.0, 0.5, 20.0, 20.0).coefficient, 1.0, 1e-12));  // 2 h/s_k
    CHECK(close(mu(0.2, 4.0, 20.0, 20.0).coefficient, 40.0 / 15.0, 1e-12));  // 2 b/l_s
    CHECK(mu(0.2, 1.0, 60.0, 20.0).coefficient == 8.0);  // the ceiling: 10 and 24
    CHECK(in_m(mu(1.0, 0.5, 20.0, 20.0).length) == 2.5);  // 5 h
    CHECK(in_m(mu(1.0, 2.0, 6.0, 20.0).length) == 6.0);   // b_1
    CHECK(in_m(mu(1.0, 9.0, 60.0, 20.0).length) == 15.0);
    // the larger width supplies, whichever it is
    CHECK(close(mu(0.1, 4.0, 10.0, 30.0).supply, 6.0, 1e-12));
    CHECK(close(mu(0.1, 4.0, 30.0, 10.0).supply, 4.0, 1e-12));
    for (double height = 0.05; height < 10.0; height += 0.05) {
        CAPTURE(height);
        CHECK(close_abs(mu(0.6, height + 1e-9, 12.0, 20.0).coefficient, mu(0.6, height, 12.0, 20.0).coefficient, 1e-6));
        double before = 0.0;
        for (double ground = 0.05; ground <= 10.0; ground *= 1.3) {  // more ground snow is never less on the roof
            const double load = in_kPa(
                exceptional_drift_load_5_2(from_kPa(ground), mu(ground, height, 12.0, 20.0).coefficient));
            CHECK(load >= before - 1e-12);
            before = load;
        }
    }
    CHECK(close(parapet_drift_B_4(20_psf, 3_ft, 30_ft, 60_ft).coefficient,
                parapet_drift_B_4(from_Pa(20 * 47.88025898033584), from_m(0.9144), from_m(9.144), from_m(18.288))
                    .coefficient,
                1e-12));
}

TEST_CASE("en1991_1_3 B.3: a lower roof and its pitch") {
    // Table B.1, from memory, moderately sure
    const auto drift = [](double deg) {
        return abutting_drift_B_3(from_kPa(0.65), 3_m, 12.5_m, 25_m, from_deg(deg));
    };
    for (const double deg : {0.0, 10.0, 15.0}) {
        CHECK(close(drift(deg).mu_1, 4.0, 1e-12));
        CHECK(close(drift(deg).mu_2, 4.0, 1e-12));
    }
    CHECK(close(drift(22.5).mu_1, 2.0, 1e-12));
    CHECK(close(drift(22.5).mu_2, 4.0, 1e-12));
    CHECK(drift(30.0).mu_1 == 0.0);
    CHECK(close(drift(30.0).mu_2, 4.0, 1e-12));
    CHECK(close(drift(45.0).mu_2, 2.0, 1e-12));
    for (const double deg : {60.0, 70.0, 90.0}) {
        CHECK(drift(deg).mu_1 == 0.0);
        CHECK(drift(deg).mu_2 == 0.0);
    }
    ExceptionalAbuttingDrift before = drift(0.0);
    for (double deg = 0.0; deg <= 90.0; deg += 0.5) {
        const ExceptionalAbuttingDrift found = drift(deg);
        CHECK(found.mu_1 <= before.mu_1);
        CHECK(found.mu_2 <= before.mu_2);
        CHECK(found.mu_1 <= found.mu_2);
        CHECK(found.mu_2 <= found.level.coefficient);
        if (deg < 90.0) {
            CHECK(close_abs(drift(deg + 1e-9).mu_1, found.mu_1, 1e-8));
            CHECK(close_abs(drift(deg + 1e-9).mu_2, found.mu_2, 1e-8));
        }
        before = found;
    }
    // the drift itself is the one behind a parapet
    CHECK(drift(0.0).level.coefficient == parapet_drift_B_4(from_kPa(0.65), 3_m, 12.5_m, 25_m).coefficient);
    CHECK(code_of([&] { return drift(91.0); }) == "en1991_1_3.pitch.range");
    for (const double bad : not_finite) CHECK(code_of([&] { return drift(bad); }) == "en1991_1_3.pitch.range");
}

TEST_CASE("en1991_1_3 B.2: a valley") {
    // from memory, moderately sure; worked by hand
    const auto drift = [](double ground, double height, double slope, double swept) {
        return valley_drift_B_2(from_kPa(ground), from_m(height), from_m(slope), from_m(slope), from_m(swept));
    };
    CHECK(close(drift(1.0, 1.2, 6.0, 40.0).coefficient, 2.4, 1e-12));  // 2 h/s_k
    CHECK(close(drift(0.2, 1.2, 6.0, 18.0).coefficient, 3.0, 1e-12));  // 2 b_3/(l_s1 + l_s2)
    CHECK(drift(0.2, 1.2, 6.0, 60.0).coefficient == 5.0);              // the ceiling
    // three slopes of a roof of equal spans give 3 at most
    CHECK(close(drift(0.01, 1.2, 6.0, 18.0).coefficient, 3.0, 1e-12));
    const ExceptionalValleyDrift uneven = valley_drift_B_2(from_kPa(0.5), 1.5_m, 4_m, 7_m, 20_m);
    CHECK(uneven.first_length == 4_m);
    CHECK(uneven.second_length == 7_m);
    CHECK(close(uneven.supply, 40.0 / 11.0, 1e-12));
    CHECK(close(uneven.height, 6.0, 1e-12));
    CHECK(close(in_kN_per_m(all_valleys_B_2(from_kPa(0.5), 36_m)), 18.0, 1e-12));
    CHECK(in_kN_per_m(all_valleys_B_2(from_kPa(0.0), 36_m)) == 0.0);
    CHECK(code_of([&] { return drift(0.0, 1.0, 6.0, 18.0); }) == "en1991_1_3.ground_load.range");
    CHECK(code_of([&] { return drift(1.0, 0.0, 6.0, 18.0); }) == "en1991_1_3.height.range");
    CHECK(code_of([&] { return drift(1.0, 1.0, 0.0, 18.0); }) == "en1991_1_3.width.range");
    CHECK(code_of([&] { return drift(1.0, 1.0, 6.0, 3000.1); }) == "en1991_1_3.swept_width.range");
    CHECK(code_of([] { return all_valleys_B_2(from_kPa(-1.0), 36_m); }) == "en1991_1_3.ground_load.range");
    CHECK(code_of([] { return all_valleys_B_2(from_kPa(1.0), 0_m); }) == "en1991_1_3.width.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return drift(bad, 1.0, 6.0, 18.0); }) == "en1991_1_3.ground_load.range");
        CHECK(code_of([&] { return drift(1.0, bad, 6.0, 18.0); }) == "en1991_1_3.height.range");
        CHECK(code_of([&] { return drift(1.0, 1.0, bad, 18.0); }) == "en1991_1_3.width.range");
        CHECK(code_of([&] { return drift(1.0, 1.0, 6.0, bad); }) == "en1991_1_3.swept_width.range");
    }
}

TEST_CASE("en1991_1_3 B.4: obstructions") {
    // from memory, moderately sure; worked by hand
    const auto drift = [](double ground, double height, double width) {
        return obstruction_drift_B_4(from_kPa(ground), from_m(height), from_m(width));
    };
    CHECK(close(drift(1.0, 0.9, 3.0).coefficient, 1.8, 1e-12));
    CHECK(drift(0.2, 0.9, 3.0).coefficient == 5.0);
    CHECK(close_abs(drift(0.4 + 1e-12, 1.0, 3.0).coefficient, 5.0, 1e-10));
    CHECK(in_m(drift(1.0, 0.9, 3.0).length) == 3.0);  // cut at the edge
    CHECK(close(in_m(drift(1.0, 0.5, 3.0).length), 2.5, 1e-12));
    CHECK(in_m2(least_face_B_4) == 1.0);
    // height that the drift follows
    CHECK(obstruction_height_B_4(0.8_m, 30_m) == 0.8_m);  // low: any width
    CHECK(obstruction_height_B_4(1_m, 0.2_m) == 1_m);
    CHECK(obstruction_height_B_4(3_m, 1.5_m) == 1.5_m);  // slender: the smaller
    CHECK(obstruction_height_B_4(1.2_m, 1.5_m) == 1.2_m);
    CHECK(obstruction_height_B_4(3_m, 2_m) == 2_m);
    CHECK(code_of([] { return obstruction_height_B_4(1.01_m, 2.01_m); }) == "en1991_1_3.obstruction_width.range");
    CHECK(code_of([] { return obstruction_height_B_4(0_m, 1_m); }) == "en1991_1_3.height.range");
    CHECK(code_of([&] { return drift(0.0, 1.0, 3.0); }) == "en1991_1_3.ground_load.range");
    CHECK(code_of([&] { return drift(1.0, 0.0, 3.0); }) == "en1991_1_3.height.range");
    CHECK(code_of([&] { return drift(1.0, 1.0, 0.0); }) == "en1991_1_3.width.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return drift(bad, 1.0, 3.0); }) == "en1991_1_3.ground_load.range");
        CHECK(code_of([&] { return drift(1.0, bad, 3.0); }) == "en1991_1_3.height.range");
        CHECK(code_of([&] { return drift(1.0, 1.0, bad); }) == "en1991_1_3.width.range");
        CHECK(code_of([&] { return obstruction_height_B_4(from_m(bad), 1_m); }) == "en1991_1_3.height.range");
        CHECK(code_of([&] { return obstruction_height_B_4(0.5_m, from_m(bad)); }) ==
              "en1991_1_3.obstruction_width.range");
        CHECK(code_of([&] { return parapet_drift_B_4(from_kPa(bad), 1_m, 5_m, 5_m); }) ==
              "en1991_1_3.ground_load.range");
        CHECK(code_of([&] { return parapet_drift_B_4(from_kPa(1.0), 1_m, from_m(bad), 5_m); }) ==
              "en1991_1_3.width.range");
        CHECK(code_of([&] { return parapet_drift_B_4(from_kPa(1.0), 1_m, 5_m, from_m(bad)); }) ==
              "en1991_1_3.width.range");
    }
}
