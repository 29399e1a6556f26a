// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/german_roof.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::en1991_1_3;
using namespace coverframe::na_de;

namespace {

constexpr TallerWorks works(double ground, double height) {
    return {.ground_load = from_kPa(ground),
            .upper_width = from_m(12.0),
            .lower_width = from_m(8.0),
            .height = from_m(height),
            .upper_pitch = from_deg(25.0),
            .upper_slope = from_m(3.0)};
}

}  // namespace

TEST_CASE("na_de 5.3.4: the valley holds no more than it is deep") {
    CHECK(capped_valley_5_3_4(1.6, 0.8, 2_m, from_kPa(1.0)) == 1.6);
    CHECK(close(capped_valley_5_3_4(1.6, 0.8, 0.3_m, from_kPa(1.0)), 1.4, 1e-12));  // by hand: 2 x 0.3/1 + 0.8
    CHECK(close(capped_valley_5_3_4(1.6, 0.4, 0.3_m, from_kPa(1.0)), 1.0, 1e-12));
    CHECK(close_abs(capped_valley_5_3_4(1.6, 0.8, from_m(0.4 - 1e-9), from_kPa(1.0)), 1.6, 1e-8));  // continuous
    CHECK(close(capped_valley_5_3_4(1.6, 0.4, 1_ft, 30_psf),
                capped_valley_5_3_4(1.6, 0.4, from_m(0.3048), from_Pa(30 * 47.88025898033584)), 1e-12));
    CHECK(code_of([] { return capped_valley_5_3_4(0.7, 0.8, 1_m, from_kPa(1.0)); }) == "na_de.valley.range");
    CHECK(code_of([] { return capped_valley_5_3_4(1.6, 0.9, 1_m, from_kPa(1.0)); }) == "na_de.slope.range");
    CHECK(code_of([] { return capped_valley_5_3_4(1.6, 0.8, 0_m, from_kPa(1.0)); }) == "en1991_1_3.height.range");
    CHECK(code_of([] { return capped_valley_5_3_4(1.6, 0.8, 1_m, from_kPa(0.0)); }) == "en1991_1_3.ground_load.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return capped_valley_5_3_4(bad, 0.8, 1_m, from_kPa(1.0)); }) == "na_de.valley.range");
        CHECK(code_of([&] { return capped_valley_5_3_4(1.6, bad, 1_m, from_kPa(1.0)); }) == "na_de.slope.range");
    }
}

TEST_CASE("na_de 5.3.6: limits of the sum") {
    // baunormenlexikon.de, extract of p. 10, read on a page: 0.8 to 2.4
    CHECK(drift_limits_5_3_6(LowerRoof::general, from_kPa(1.0)).least == 0.8);
    CHECK(drift_limits_5_3_6(LowerRoof::general, from_kPa(1.0)).most == 2.4);
    // from memory, moderately sure
    CHECK(drift_limits_5_3_6(LowerRoof::canopy, from_kPa(1.0)).most == 2.0);
    CHECK(drift_limits_5_3_6(LowerRoof::alpine, from_kPa(3.0)).least == 1.2);
    // the Alpine limit begins where the general one ends
    CHECK(close_abs(drift_limits_5_3_6(LowerRoof::alpine, from_kPa(3.0)).most, 2.40, 0.005));
    CHECK(close(drift_limits_5_3_6(LowerRoof::alpine, from_kPa(5.0)).most, 1.5152584, 1e-7));
    CHECK(code_of([] { return drift_limits_5_3_6(LowerRoof::alpine, from_kPa(2.9)); }) ==
          "en1991_1_3.ground_load.range");
    CHECK(code_of([] { return drift_limits_5_3_6(static_cast<LowerRoof>(3), from_kPa(1.0)); }) ==
          "na_de.lower_roof.unknown");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return drift_limits_5_3_6(LowerRoof::general, from_kPa(bad)); }) ==
              "en1991_1_3.ground_load.range");
    }
}

TEST_CASE("na_de 5.3.6: the wall of a lower roof") {
    const auto mu = [](double ground, double height, LowerRoof roof = LowerRoof::general) {
        return wall_coefficient_5_3_6(works(ground, height), roof);
    };
    // by hand: mu_s = 0.8 x 3/8 = 0.3, mu_w = 20/8 = 2.5, limited to 2.4 and 2.0
    CHECK(mu(1.0, 4.0) == 2.4);
    CHECK(mu(1.0, 4.0, LowerRoof::canopy) == 2.0);
    // mu_s = 0.8 x 3/10 = 0.24, mu_w = 20/10 = 2, over no limit
    CHECK(close(mu(1.0, 5.0), 2.24, 1e-12));
    // a step that is full: the sum is 2 x 0.8/1.5
    CHECK(close(mu(1.5, 0.8), 1.6 / 1.5, 1e-12));
    // no wind drift at 0.5 m, then what fills the step
    CHECK(close(mu(0.5, 0.5), 0.8, 1e-12));
    CHECK(close(mu(0.9, 0.5 + 1e-9), 1.0 / 0.9, 1e-6));
    // above the crossing of the Alpine limits the least counts
    CHECK(close(mu(4.0, 4.0, LowerRoof::alpine), 6.45 / std::pow(4.0, 0.9), 1e-12));
    CHECK(mu(9.0, 4.0, LowerRoof::alpine) == 1.2);
    // more ground snow is never less on the roof
    for (const LowerRoof roof : {LowerRoof::general, LowerRoof::canopy, LowerRoof::alpine}) {
        for (const double height : {0.3, 0.8, 2.0, 6.0, 12.0}) {
            double before = 0.0;
            for (double ground = roof == LowerRoof::alpine ? 3.0 : 0.1; ground <= 20.0; ground *= 1.05) {
                CAPTURE(ground);
                CHECK(ground * mu(ground, height, roof) >= before - 1e-12);
                before = ground * mu(ground, height, roof);
            }
        }
    }
    CHECK(code_of([&] { return mu(0.0, 4.0); }) == "en1991_1_3.ground_load.range");
    CHECK(code_of([&] { return mu(1.0, 0.0); }) == "en1991_1_3.height.range");
}
