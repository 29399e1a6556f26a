// SPDX-License-Identifier: BSD-3-Clause
#include "report/format.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "coverframe/base/error.hpp"
#include "coverframe/units/literals.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::reporting;

// Sizes of units: NIST SP 811 (2008), appendix B.8, from memory: 1 lbf = 4.448222 N, 1 lbf/ft2 = 47.88026 Pa, 1 lbf/ft
// =
// 14.59390 N/m, 1 lbf/in2 = 6894.757 Pa, 1 US gallon = 3.785412 L, 1 lbf ft = 1.355818 N m; 1 ft = 0.3048 m exactly.
TEST_CASE("format: both systems") {
    CHECK(both(1e3 * 4.448222, "N", UnitsShown::us) == "1000 lbf (4.45 kN)");
    CHECK(both(47.88026 * 30, "Pa", UnitsShown::us) == "30 psf (1.44 kPa)");
    CHECK(both(14.59390 * 12, "N/m", UnitsShown::si) == "175 N/m (12 plf)");
    CHECK(both(6.894757, "N/mm2", UnitsShown::si) == "6.89 N/mm2 (1000 psi)");
    CHECK(both(37.85412, "L", UnitsShown::us) == "10 US gal (38 L)");
    CHECK(both(135.5818, "N m", UnitsShown::si) == "136 N m (100 lbf ft)");
    CHECK(both(0.3048 * 5.5, "m", UnitsShown::us) == "5 ft 6 in (1.676 m)");
    CHECK(both(30.0, "deg", UnitsShown::us) == "30.0 deg");
    CHECK(both(0.7, "-", UnitsShown::us) == "0.7");
    CHECK(both(3.0, "furlong", UnitsShown::us) == "3 furlong");
}

TEST_CASE("format: sections and film") {
    CHECK(section({38.1_mm, 88.9_mm}, UnitsShown::us) == "1 1/2 x 3 1/2 in (38 x 89 mm)");
    CHECK(thickness(7.0_mil, UnitsShown::us) == "7 mil (0.178 mm)");
}

TEST_CASE("format: significant digits") {
    CHECK(rounded(9.996) == "10");
    CHECK(rounded(6487) == "6490");
    CHECK(rounded(0.04567) == "0.0457");
    CHECK(rounded(5.017e-5, 4) == "5.017 x 10^-5");
    CHECK(rounded(1.2e10) == "1.2 x 10^10");
    CHECK(rounded(-0.0) == "0");
    CHECK(fixed(-0.0004, 2) == "0.00");
}

TEST_CASE("format: numbers that stand side by side share a unit") {
    CHECK(both(240, "N", UnitsShown::si, 3, 1340) == "0.24 kN (54 lbf)");
    CHECK(both(240, "N", UnitsShown::si) == "240 N (54 lbf)");
}

TEST_CASE("format: what nobody can measure is nothing") {
    CHECK(both(-2.6e-13, "N m", UnitsShown::si) == "0 N m (0 lbf ft)");
    CHECK(both(1e-9, "m", UnitsShown::us) == "0 in (0 mm)");
}

TEST_CASE("format: a share reads 100 % only if it is one") {
    CHECK(percent(1.0) == "100 %");
    CHECK(percent(0.823) == "82 %");
    CHECK(percent(1.336) == "134 %");
    CHECK(percent(1.004) == "100.4 %");
    CHECK(percent(1.00003) == "100.003 %");
    CHECK(percent(0.9999) == "99.99 %");
    CHECK(whole_percent(0.966) == "97 %");
}

TEST_CASE("format: a number that is none is refused") {
    for (const double bad : {std::nan(""), HUGE_VAL, -HUGE_VAL}) {
        CHECK_THROWS_AS((void)fixed(bad, 1), StateError);
        CHECK_THROWS_AS((void)rounded(bad), StateError);
        CHECK_THROWS_AS((void)both(bad, "N", UnitsShown::si), StateError);
        CHECK_THROWS_AS((void)percent(bad), StateError);
    }
}
