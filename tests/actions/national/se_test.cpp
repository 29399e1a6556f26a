// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/se.hpp"

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::na_se;

TEST_CASE("na_se: mean of two zones against a printed number") {
    // boverket.se, Snolast pa mark, read on a page: 2.0 and 2.5 give 2.25
    CHECK(close(in_kPa(mean_of_zones_4_1(2.0_kPa, 2.5_kPa)), 2.25, 1e-12));
    CHECK(close(in_kPa(mean_of_zones_4_1(2.0_kPa, 2.0_kPa)), 2.0, 1e-12));
    // 1 psf = 47.88025898033584 Pa (NIST SP 811, from memory)
    CHECK(close(in_Pa(mean_of_zones_4_1(30_psf, 50_psf)), 40 * 47.88025898033584, 1e-12));
}

TEST_CASE("na_se: from the side of the higher zone there is no mean") {
    // same page: near the border in the zone of the higher load, the higher load is used
    CHECK(code_of([] { return mean_of_zones_4_1(2.5_kPa, 2.0_kPa); }) == "na_se.neighbour_zone.range");
}

TEST_CASE("na_se: arguments out of range") {
    CHECK(code_of([] { return mean_of_zones_4_1(from_kPa(0.0), 2.0_kPa); }) == "na_se.site_zone.range");
    CHECK(code_of([] { return mean_of_zones_4_1(from_kPa(-1.0), 2.0_kPa); }) == "na_se.site_zone.range");
    CHECK(code_of([] { return mean_of_zones_4_1(from_kPa(100.1), from_kPa(100.1)); }) == "na_se.site_zone.range");
    CHECK(code_of([] { return mean_of_zones_4_1(from_kPa(100.0), from_kPa(100.0)); }) == "none");
    CHECK(code_of([] { return mean_of_zones_4_1(2.0_kPa, from_kPa(100.1)); }) == "na_se.neighbour_zone.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return mean_of_zones_4_1(from_kPa(bad), 2.0_kPa); }) == "na_se.site_zone.range");
        CHECK(code_of([&] { return mean_of_zones_4_1(2.0_kPa, from_kPa(bad)); }) == "na_se.neighbour_zone.range");
    }
}
