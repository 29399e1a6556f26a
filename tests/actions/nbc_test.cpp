// SPDX-License-Identifier: BSD-3-Clause
// Few numbers of this code are printed where they could be read; the others are worked out here step by step.
#include "coverframe/actions/nbc.hpp"

#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using nbc::Accumulation;
using nbc::Importance;
using nbc::LimitState;
using nbc::Surface;
using nbc::WindSite;

namespace {

constexpr Surface slippery = Surface::unobstructed_slippery;
constexpr Surface other = Surface::other;

}  // namespace

TEST_CASE("nbc 4.1.6.2: importance factor") {
    // Table 4.1.6.2.-A, from memory, sure
    CHECK(nbc::importance_factor_4_1_6_2(Importance::low, LimitState::ultimate) == 0.8);
    CHECK(nbc::importance_factor_4_1_6_2(Importance::normal, LimitState::ultimate) == 1.0);
    CHECK(nbc::importance_factor_4_1_6_2(Importance::high, LimitState::ultimate) == 1.15);
    CHECK(nbc::importance_factor_4_1_6_2(Importance::post_disaster, LimitState::ultimate) == 1.25);
    for (const Importance importance :
         {Importance::low, Importance::normal, Importance::high, Importance::post_disaster}) {
        CHECK(nbc::importance_factor_4_1_6_2(importance, LimitState::serviceability) == 0.9);
    }
    const auto unknown = static_cast<Importance>(4);
    CHECK(code_of([&] { return nbc::importance_factor_4_1_6_2(unknown, LimitState::ultimate); }) ==
          "nbc.importance.unknown");
}

TEST_CASE("nbc 4.1.6.2: basic factor") {
    // by hand: 2 x 20 - 400/50 = 32 m; a square has its side
    CHECK(close(nbc::characteristic_length_4_1_6_2(20_m, 50_m), 32_m, 1e-12));
    CHECK(close(nbc::characteristic_length_4_1_6_2(20_m, 20_m), 20_m, 1e-12));
    CHECK(close(nbc::characteristic_length_4_1_6_2(10_ft, 30_ft), from_ft(20.0 - 100.0 / 30.0), 1e-12));

    CHECK(nbc::basic_factor_4_1_6_2(0_m, 1.0) == 0.8);
    CHECK(nbc::basic_factor_4_1_6_2(70_m, 1.0) == 0.8);
    // by hand: 1 - 0.2 exp(-0.3); (1 - 0.4 exp(-(112.5 - 70)/100))/0.75
    CHECK(close(nbc::basic_factor_4_1_6_2(100_m, 1.0), 0.8518363559, 1e-9));
    CHECK(close(nbc::basic_factor_4_1_6_2(200_m, 0.75), 0.9846561146, 1e-9));
    for (const double wind : {0.5, 0.75, 1.0}) {
        CAPTURE(wind);
        const double corner = 70.0 / (wind * wind);
        CHECK(close_abs(nbc::basic_factor_4_1_6_2(from_m(corner + 1e-9), wind), 0.8, 1e-9));  // continuous
        CHECK(close(nbc::basic_factor_4_1_6_2(100_m * 1e6, wind), 1.0 / wind, 1e-9));         // all of the ground snow
        double before = 0.8;
        for (double l = 0.0; l < 2000.0; l += 25.0) {
            const double now = nbc::basic_factor_4_1_6_2(from_m(l), wind);
            CHECK(now >= before);
            before = now;
        }
    }

    CHECK(code_of([] { return nbc::characteristic_length_4_1_6_2(0_m, 3_m); }) == "nbc.width.range");
    CHECK(code_of([] { return nbc::characteristic_length_4_1_6_2(5_m, 3_m); }) == "nbc.length.range");
    CHECK(code_of([] { return nbc::basic_factor_4_1_6_2(10_m, 0.4); }) == "nbc.wind.range");
    CHECK(code_of([] { return nbc::basic_factor_4_1_6_2(10_m, 1.1); }) == "nbc.wind.range");
    for (const double bad : not_finite) {
        CHECK(code_of([=] { return nbc::characteristic_length_4_1_6_2(from_m(bad), 3_m); }) == "nbc.width.range");
        CHECK(code_of([=] { return nbc::characteristic_length_4_1_6_2(3_m, from_m(bad)); }) == "nbc.length.range");
        CHECK(code_of([=] { return nbc::basic_factor_4_1_6_2(from_m(bad), 1.0); }) ==
              "nbc.characteristic_length.range");
        CHECK(code_of([=] { return nbc::basic_factor_4_1_6_2(10_m, bad); }) == "nbc.wind.range");
    }
}

TEST_CASE("nbc 4.1.6.2: the wind factor is lowered only if everything is claimed") {
    const nbc::WindExposure rural{
        .site = WindSite::rural, .open_on_all_sides = true, .unobstructed = true, .accumulation = false};
    nbc::WindExposure north = rural;
    north.site = WindSite::north_of_tree_line;
    for (const Importance importance : {Importance::low, Importance::normal}) {
        CHECK(nbc::wind_factor_4_1_6_2(importance, rural) == 0.75);
        CHECK(nbc::wind_factor_4_1_6_2(importance, north) == 0.5);
    }
    CHECK(nbc::wind_factor_4_1_6_2(Importance::high, north) == 1.0);
    CHECK(nbc::wind_factor_4_1_6_2(Importance::post_disaster, rural) == 1.0);
    CHECK(nbc::wind_factor_4_1_6_2(Importance::low, {}) == 1.0);

    std::vector<nbc::WindExposure> short_of_one(4, north);
    short_of_one[0].site = WindSite::other;
    short_of_one[1].open_on_all_sides = false;
    short_of_one[2].unobstructed = false;
    short_of_one[3].accumulation = true;
    for (const nbc::WindExposure& exposure : short_of_one) {
        CHECK(nbc::wind_factor_4_1_6_2(Importance::low, exposure) == 1.0);
    }

    nbc::WindExposure nowhere = north;
    nowhere.site = static_cast<WindSite>(3);
    CHECK(code_of([&] { return nbc::wind_factor_4_1_6_2(Importance::low, nowhere); }) == "nbc.site.unknown");

    // by hand: 10 (1 - 0.8 x 0.75 x 1.8/2.974); a buried obstruction spoils nothing
    const auto distance = [](Length height) {
        return nbc::obstruction_distance_4_1_6_2(height, 1.8_kPa, 2.974_kN_per_m3, 0.8, 0.75);
    };
    CHECK(close(in_m(distance(1_m)), 6.368527236, 1e-9));
    CHECK(in_m(distance(0.3_m)) == 0.0);
    CHECK(close(nbc::obstruction_distance_4_1_6_2(1_m, 0_kPa, 3_kN_per_m3, 0.8, 0.75), 10_m, 1e-12));
    CHECK(code_of([&] { return distance(-1_m); }) == "nbc.obstruction.range");
    CHECK(code_of([] { return nbc::obstruction_distance_4_1_6_2(1_m, 101_kPa, 3_kN_per_m3, 0.8, 0.75); }) ==
          "nbc.ground_snow.range");
    CHECK(code_of([] { return nbc::obstruction_distance_4_1_6_2(1_m, 1_kPa, 0_kN_per_m3, 0.8, 0.75); }) ==
          "nbc.unit_weight.range");
    CHECK(code_of([] { return nbc::obstruction_distance_4_1_6_2(1_m, 1_kPa, 3_kN_per_m3, 0.7, 0.75); }) ==
          "nbc.basic.range");
    CHECK(code_of([] { return nbc::obstruction_distance_4_1_6_2(1_m, 1_kPa, 3_kN_per_m3, 0.8, 0.0); }) ==
          "nbc.wind.range");
}

TEST_CASE("nbc 4.1.6.2: slope factor against printed numbers") {
    const auto factor = [](Angle slope, Surface surface) {
        return nbc::slope_factor_4_1_6_2(slope, surface, Accumulation::none);
    };
    // course notes ARC1046, quoting 4.1.6.2.(5) and (6), read on a page: 1.0 at 15 and 30, 0 at 60 and 70
    CHECK(factor(15_deg, slippery) == 1.0);
    CHECK(factor(30_deg, other) == 1.0);
    CHECK(factor(60_deg, slippery) == 0.0);
    CHECK(factor(70_deg, other) == 0.0);
    // eng-tips.com, thread 370069, read on a page: 0.625 at 45 degrees, and 0.78 with the 1.25 of the gable
    CHECK(close(factor(45_deg, other), 0.625, 1e-12));
    const double both =
        nbc::slope_factor_4_1_6_2(45_deg, other, Accumulation::gable) * nbc::downwind_accumulation_4_1_6_9(45_deg);
    CHECK(close_abs(both, 0.78, 0.005));
    // by hand: (60 - 45)/45, (60 - 30)/45, (70 - 60)/40
    CHECK(close(factor(45_deg, slippery), 1.0 / 3.0, 1e-12));
    CHECK(close(factor(30_deg, slippery), 2.0 / 3.0, 1e-12));
    CHECK(close(factor(60_deg, other), 0.25, 1e-12));
}

TEST_CASE("nbc 4.1.6.2: slope factor between its corners") {
    for (const Surface surface : {slippery, other}) {
        const double full = surface == slippery ? 15.0 : 30.0;
        const double none = surface == slippery ? 60.0 : 70.0;
        CAPTURE(full);
        const auto factor = [&](double deg) {
            return nbc::slope_factor_4_1_6_2(from_deg(deg), surface, Accumulation::none);
        };
        CHECK(factor(0.0) == 1.0);
        CHECK(close_abs(factor(full + 1e-9), 1.0, 1e-9));
        CHECK(close(factor(0.5 * (full + none)), 0.5, 1e-12));
        CHECK(close_abs(factor(none - 1e-9), 0.0, 1e-9));
        CHECK(factor(90.0) == 0.0);
        double before = 1.0;
        for (double deg = 0.0; deg <= 90.0; deg += 0.5) {
            CAPTURE(deg);
            CHECK(factor(deg) <= before);
            before = factor(deg);
            CHECK(nbc::slope_factor_4_1_6_2(from_deg(deg), surface, Accumulation::gathered) == 1.0);
            CHECK(nbc::slope_factor_4_1_6_2(from_deg(deg), surface, Accumulation::gable) == factor(deg));
        }
    }
    for (const Accumulation accumulation : {Accumulation::none, Accumulation::gable, Accumulation::gathered}) {
        CHECK(code_of([=] { return nbc::slope_factor_4_1_6_2(-1_deg, other, accumulation); }) == "nbc.slope.range");
        CHECK(code_of([=] { return nbc::slope_factor_4_1_6_2(91_deg, other, accumulation); }) == "nbc.slope.range");
        for (const double bad : not_finite) {
            CHECK(code_of([=] { return nbc::slope_factor_4_1_6_2(from_rad(bad), other, accumulation); }) ==
                  "nbc.slope.range");
        }
    }
}

TEST_CASE("nbc 4.1.6.2: specified load") {
    // by hand: 0.8 x (2/3) x 2 = 1.0667 kPa; with 0.4 rain 1.4667; 1.15 of it
    const nbc::RoofFactors factors{.basic = 0.8, .wind = 1.0, .slope = 2.0 / 3.0, .accumulation = 1.0};
    const nbc::SpecifiedLoad load = nbc::specified_load_4_1_6_2(2_kPa, 0.4_kPa, 1.15, factors);
    CHECK(close(in_kPa(load.snow), 16.0 / 15.0, 1e-12));
    CHECK(close(in_kPa(load.rain), 0.4, 1e-12));
    CHECK(close(in_kPa(load.load), 1.15 * 22.0 / 15.0, 1e-12));

    // every factor counts, and rain is no more than the snow that holds it: 0.9 x 0.75 x 0.5 x 1.25 x 1 = 0.421875 kPa
    const nbc::RoofFactors light{.basic = 0.9, .wind = 0.75, .slope = 0.5, .accumulation = 1.25};
    const nbc::SpecifiedLoad capped = nbc::specified_load_4_1_6_2(1_kPa, 0.6_kPa, 1.0, light);
    CHECK(close(in_kPa(capped.snow), 0.421875, 1e-12));
    CHECK(close(in_kPa(capped.rain), 0.421875, 1e-12));
    CHECK(close(in_kPa(capped.load), 0.84375, 1e-12));
    const nbc::SpecifiedLoad bare =
        nbc::specified_load_4_1_6_2(2_kPa, 0.4_kPa, 1.0, {.accumulation = nbc::upwind_accumulation_4_1_6_9});
    CHECK(in_kPa(bare.load) == 0.0);

    // the same in US units
    CHECK(close(in_psf(nbc::specified_load_4_1_6_2(40_psf, 8_psf, 1.0, {}).load), 40.0, 1e-12));

    double before = 0.0;
    for (double S_s = 0.0; S_s <= 10.0; S_s += 0.1) {
        const double now = in_kPa(nbc::specified_load_4_1_6_2(from_kPa(S_s), 0.4_kPa, 1.0, factors).load);
        CHECK(now >= before);
        before = now;
    }
}

TEST_CASE("nbc 4.1.6.2: specified load of nonsense") {
    const auto code = [](Pressure snow, Pressure rain, double importance, const nbc::RoofFactors& factors) {
        return code_of([&] { return nbc::specified_load_4_1_6_2(snow, rain, importance, factors); });
    };
    CHECK(code(-1_kPa, 0_kPa, 1.0, {}) == "nbc.ground_snow.range");
    CHECK(code(101_kPa, 0_kPa, 1.0, {}) == "nbc.ground_snow.range");
    CHECK(code(1_kPa, -0.1_kPa, 1.0, {}) == "nbc.rain.range");
    CHECK(code(1_kPa, 0_kPa, 0.79, {}) == "nbc.importance.range");
    CHECK(code(1_kPa, 0_kPa, 1.26, {}) == "nbc.importance.range");
    for (const double bad : not_finite) {
        CHECK(code(from_kPa(bad), 0_kPa, 1.0, {}) == "nbc.ground_snow.range");
        CHECK(code(1_kPa, from_kPa(bad), 1.0, {}) == "nbc.rain.range");
        CHECK(code(1_kPa, 0_kPa, bad, {}) == "nbc.importance.range");
        CHECK(code(1_kPa, 0_kPa, 1.0, {.basic = bad}) == "nbc.basic.range");
        CHECK(code(1_kPa, 0_kPa, 1.0, {.wind = bad}) == "nbc.wind.range");
        CHECK(code(1_kPa, 0_kPa, 1.0, {.slope = bad}) == "nbc.slope_factor.range");
        CHECK(code(1_kPa, 0_kPa, 1.0, {.accumulation = bad}) == "nbc.accumulation.range");
    }
    CHECK(code(0_kPa, 0_kPa, 0.8, {.basic = 0.8, .wind = 0.5, .slope = 0, .accumulation = 0}) == "none");
    CHECK(code(100_kPa, 100_kPa, 1.25, {.basic = 2.0, .wind = 1.0, .slope = 1, .accumulation = 1e15}) == "none");
    CHECK(code(1_kPa, 0_kPa, 1.0, {.basic = 0.45}) == "nbc.basic.range");
    CHECK(code(1_kPa, 0_kPa, 1.0, {.basic = 2.01}) == "nbc.basic.range");
    CHECK(code(1_kPa, 0_kPa, 1.0, {.wind = 0.49}) == "nbc.wind.range");
    CHECK(code(1_kPa, 0_kPa, 1.0, {.wind = 1.01}) == "nbc.wind.range");
    CHECK(code(1_kPa, 0_kPa, 1.0, {.slope = 1.01}) == "nbc.slope_factor.range");
    CHECK(code(1_kPa, 0_kPa, 1.0, {.accumulation = -0.1}) == "nbc.accumulation.range");
}

TEST_CASE("nbc 4.1.6.3 and 4.1.6.9: which cases a gable needs") {
    // Ontario code 4.1.6.3, read on a page: half on the rest, up to 15 degrees
    CHECK(nbc::partial_share_4_1_6_3 == 0.5);
    CHECK(nbc::upwind_accumulation_4_1_6_9 == 0.0);
    for (const double deg : {0.0, 10.0, 15.0}) {
        CHECK(nbc::partial_applies_4_1_6_3(from_deg(deg)));
        CHECK_FALSE(nbc::unbalanced_applies_4_1_6_9(from_deg(deg)));
    }
    for (const double deg : {15.001, 20.0, 45.0, 60.0, 90.0}) {
        CHECK_FALSE(nbc::partial_applies_4_1_6_3(from_deg(deg)));
        CHECK(nbc::unbalanced_applies_4_1_6_9(from_deg(deg)));
    }
    for (const double bad : {-1.0, 91.0, not_finite[0], not_finite[1]}) {
        CHECK(code_of([=] { return nbc::partial_applies_4_1_6_3(from_deg(bad)); }) == "nbc.slope.range");
        CHECK(code_of([=] { return nbc::unbalanced_applies_4_1_6_9(from_deg(bad)); }) == "nbc.slope.range");
    }
}

TEST_CASE("nbc 4.1.6.9: downwind side of a gable") {
    const auto C_a = [](double deg) { return nbc::downwind_accumulation_4_1_6_9(from_deg(deg)); };
    CHECK(close(C_a(15.0), 1.0, 1e-12));
    CHECK(close(C_a(17.5), 0.25 + 17.5 / 20.0, 1e-12));
    CHECK(close_abs(C_a(20.0 - 1e-9), 1.25, 1e-9));
    // eng-tips.com, thread 370069, read on a page: 1.25 above 20 degrees, there at 45
    for (const double deg : {20.0, 45.0, 60.0, 90.0}) CHECK(C_a(deg) == 1.25);
    double before = 0.0;
    for (double deg = 15.0; deg <= 90.0; deg += 0.25) {
        CHECK(C_a(deg) >= before);
        before = C_a(deg);
    }
    for (const double bad : {14.9, 0.0, -20.0, 90.1, not_finite[0], not_finite[1], not_finite[2]}) {
        CHECK(code_of([&] { return C_a(bad); }) == "nbc.unbalanced.slope");
    }
}

TEST_CASE("nbc 4.1.6.9: a steeper cover never carries more, once the gable factor is reached") {
    for (const Surface surface : {slippery, other}) {
        double before = 2.0;
        for (double deg = 20.0; deg <= 90.0; deg += 0.5) {
            const double now = nbc::slope_factor_4_1_6_2(from_deg(deg), surface, Accumulation::gable) *
                               nbc::downwind_accumulation_4_1_6_9(from_deg(deg));
            CHECK(now <= before);
            before = now;
        }
    }
}

TEST_CASE("nbc 4.1.3.2: combinations") {
    using nbc::Combination;
    using nbc::combination_4_1_3_2;
    // Table 4.1.3.2, from memory, sure
    CHECK(combination_4_1_3_2(Combination::dead) ==
          nbc::CombinationFactors{.permanent = 1.4, .permanent_favourable = 1.4});
    CHECK(combination_4_1_3_2(Combination::live_and_snow) ==
          nbc::CombinationFactors{.permanent = 1.25, .permanent_favourable = 0.9, .live = 1.5, .snow = 1.0});
    CHECK(combination_4_1_3_2(Combination::live_and_wind) ==
          nbc::CombinationFactors{.permanent = 1.25, .permanent_favourable = 0.9, .live = 1.5, .wind = 0.4});
    CHECK(combination_4_1_3_2(Combination::snow_and_live) ==
          nbc::CombinationFactors{.permanent = 1.25, .permanent_favourable = 0.9, .live = 1.0, .snow = 1.5});
    CHECK(combination_4_1_3_2(Combination::snow_and_wind) ==
          nbc::CombinationFactors{.permanent = 1.25, .permanent_favourable = 0.9, .snow = 1.5, .wind = 0.4});
    CHECK(combination_4_1_3_2(Combination::wind_and_live) ==
          nbc::CombinationFactors{.permanent = 1.25, .permanent_favourable = 0.9, .live = 0.5, .wind = 1.4});
    CHECK(combination_4_1_3_2(Combination::wind_and_snow) ==
          nbc::CombinationFactors{.permanent = 1.25, .permanent_favourable = 0.9, .snow = 0.5, .wind = 1.4});
    CHECK(combination_4_1_3_2(Combination::earthquake) ==
          nbc::CombinationFactors{
              .permanent = 1.0, .permanent_favourable = 1.0, .live = 0.5, .snow = 0.25, .earthquake = 1.0});
    CHECK(code_of([] { return combination_4_1_3_2(static_cast<Combination>(8)); }) == "nbc.combination.unknown");
}

TEST_CASE("nbc 4.1.6.14: removal is no reason for less") {
    // Commentary G of 2015, list of changes, read on a page
    CHECK_FALSE(nbc::removal_may_lower_load_4_1_6_14);
}
