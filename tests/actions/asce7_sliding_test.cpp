// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_sliding.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::asce7;

TEST_CASE("asce7 7.9: slopes from which snow slides") {
    const auto slides = [](double rise, Surface surface) {
        return sliding_applies_7_9(from_rad(std::atan(rise / 12.0)), surface);
    };
    // 1/4 on 12 and 2 on 12, from memory
    CHECK_FALSE(slides(0.24, Surface::unobstructed_slippery));
    CHECK(slides(0.26, Surface::unobstructed_slippery));
    CHECK_FALSE(slides(1.99, Surface::other));
    CHECK(slides(2.01, Surface::other));
    for (const double deg : {0.0, 1.0}) CHECK_FALSE(sliding_applies_7_9(from_deg(deg), Surface::unobstructed_slippery));
    for (const double deg : {15.0, 30.0, 70.0, 90.0}) CHECK(sliding_applies_7_9(from_deg(deg), Surface::other));
}

TEST_CASE("asce7 7.9: sliding snow on a lower roof") {
    // by hand: 0.4 x 25 psf x 30 ft = 300 plf over 15 ft = 20 psf
    const SlidingSnow wide = sliding_load_7_9(25_psf, 30_ft, 40_ft);
    CHECK(wide.needed);
    CHECK(close(in_plf(wide.per_eave), 300.0, 1e-12));
    CHECK(close(in_psf(wide.intensity), 20.0, 1e-12));
    CHECK(close(in_ft(wide.extent), 15.0, 1e-12));
    CHECK(close(wide.on_lower_roof, wide.per_eave, 1e-12));
    const SlidingSnow narrow = sliding_load_7_9(25_psf, 30_ft, 6_ft);
    CHECK(close(in_ft(narrow.extent), 6.0, 1e-12));
    CHECK(close(in_psf(narrow.intensity), 20.0, 1e-12));  // no denser for being narrow
    CHECK(close(in_plf(narrow.on_lower_roof), 120.0, 1e-12));
    CHECK(close(sliding_load_7_9(25_psf, 30_ft, 15_ft).on_lower_roof, wide.per_eave, 1e-12));
}

TEST_CASE("asce7 7.9: sliding snow across a gap") {
    // by hand: 300 plf (15 - 5)/15 = 200 plf over 10 ft
    const SlidingSnow snow = sliding_load_over_gap_7_9(25_psf, 30_ft, 40_ft, 5_ft, 8_ft);
    CHECK(snow.needed);
    CHECK(close(in_ft(snow.extent), 10.0, 1e-12));
    CHECK(close(in_plf(snow.on_lower_roof), 200.0, 1e-12));
    CHECK(close(in_psf(snow.intensity), 20.0, 1e-12));
    // it runs out at 15 ft, and needs more height than gap
    CHECK(close_abs(in_plf(sliding_load_over_gap_7_9(25_psf, 30_ft, 40_ft, from_ft(15 - 1e-9), 80_ft).on_lower_roof),
                    0.0, 1e-6));
    CHECK_FALSE(sliding_load_over_gap_7_9(25_psf, 30_ft, 40_ft, 15_ft, 80_ft).needed);
    CHECK_FALSE(sliding_load_over_gap_7_9(25_psf, 30_ft, 40_ft, 5_ft, 5_ft).needed);
    CHECK(sliding_load_over_gap_7_9(25_psf, 30_ft, 40_ft, 5_ft, 5.01_ft).needed);
    CHECK(in_psf(sliding_load_over_gap_7_9(25_psf, 30_ft, 40_ft, 5_ft, 5_ft).intensity) == 0.0);
    // with no gap to speak of it is the load on a roof that touches
    CHECK(close(sliding_load_over_gap_7_9(25_psf, 30_ft, 40_ft, from_ft(1e-9), 8_ft).on_lower_roof,
                sliding_load_7_9(25_psf, 30_ft, 40_ft).on_lower_roof, 1e-9));
}

TEST_CASE("asce7 7.9: more snow above and a wider roof never slide less, a wider gap never more") {
    LineLoad before{};
    for (double width = 0.5; width <= 30.0; width += 0.5) {
        const LineLoad now = sliding_load_7_9(25_psf, 30_ft, from_ft(width)).on_lower_roof;
        CHECK(now >= before);
        CHECK(in_plf(now) <= 300.0 * (1.0 + 1e-12));
        before = now;
    }
    before = {};
    for (double flat = 0.0; flat <= 60.0; flat += 5.0) {
        const LineLoad now = sliding_load_7_9(from_psf(flat), 30_ft, 20_ft).on_lower_roof;
        CHECK(now >= before);
        before = now;
    }
    before = from_plf(1e6);
    for (double gap = 0.5; gap <= 20.0; gap += 0.5) {
        const LineLoad now = sliding_load_over_gap_7_9(25_psf, 30_ft, 40_ft, from_ft(gap), 30_ft).on_lower_roof;
        CHECK(now <= before);
        before = now;
    }
}

TEST_CASE("asce7 7.9: the same answer from SI and US units") {
    const Pressure flat = from_Pa(25.0 * 47.88025898033584);  // NIST SP 811, from memory
    CHECK(close(
        sliding_load_over_gap_7_9(flat, from_m(9.144), from_m(12.192), from_m(1.524), from_m(2.4384)).on_lower_roof,
        sliding_load_over_gap_7_9(25_psf, 30_ft, 40_ft, 5_ft, 8_ft).on_lower_roof, 1e-12));
}

TEST_CASE("asce7 7.9: arguments out of range") {
    CHECK(code_of([] { return sliding_applies_7_9(91_deg, Surface::other); }) == "asce7.slope.range");
    CHECK(code_of([] { return sliding_load_7_9(from_psf(-1.0), 30_ft, 40_ft); }) == "asce7.flat_load.range");
    CHECK(code_of([] { return sliding_load_7_9(25_psf, 0_ft, 40_ft); }) == "asce7.eave_to_ridge.range");
    CHECK(code_of([] { return sliding_load_7_9(25_psf, 30_ft, 0_ft); }) == "asce7.roof_length.range");
    CHECK(code_of([] { return sliding_load_over_gap_7_9(25_psf, 30_ft, 40_ft, 0_ft, 8_ft); }) == "asce7.gap.range");
    CHECK(code_of([] { return sliding_load_over_gap_7_9(25_psf, 30_ft, 40_ft, 5_ft, 0_ft); }) == "asce7.step.range");
    for (const double bad : not_finite) {
        CAPTURE(bad);
        CHECK(code_of([&] { return sliding_applies_7_9(from_deg(bad), Surface::other); }) == "asce7.slope.range");
        CHECK(code_of([&] { return sliding_load_7_9(from_psf(bad), 30_ft, 40_ft); }) == "asce7.flat_load.range");
        CHECK(code_of([&] { return sliding_load_7_9(25_psf, from_ft(bad), 40_ft); }) == "asce7.eave_to_ridge.range");
        CHECK(code_of([&] { return sliding_load_7_9(25_psf, 30_ft, from_ft(bad)); }) == "asce7.roof_length.range");
        CHECK(code_of([&] { return sliding_load_over_gap_7_9(25_psf, 30_ft, 40_ft, from_ft(bad), 8_ft); }) ==
              "asce7.gap.range");
        CHECK(code_of([&] { return sliding_load_over_gap_7_9(25_psf, 30_ft, 40_ft, 5_ft, from_ft(bad)); }) ==
              "asce7.step.range");
    }
}
