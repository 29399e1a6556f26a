// SPDX-License-Identifier: BSD-3-Clause
#include "checks/shown.hpp"

#include <limits>

#include <doctest/doctest.h>

#include "coverframe/base/error.hpp"
#include "coverframe/units/crossing.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::checks_detail;

namespace {
constexpr UnitsShown si = UnitsShown::si;
constexpr UnitsShown us = UnitsShown::us;
}  // namespace

// 1 lbf = 4.44822 N, 1 in = 25.4 mm, 1 psf = 47.8803 Pa, 1 psi = 6894.76 Pa, 1 gal (US) = 3.78541 litres
TEST_CASE("shown: the plan's units first, the other in brackets") {
    CHECK(shown(3400.0_N, si) == "3.4 kN (764 lbf)");
    CHECK(shown(3400.0_N, us) == "764 lbf (3.4 kN)");
    CHECK(shown(640.0_N, si) == "640 N (144 lbf)");
    CHECK(shown_area_load(149.0_kPa, si) == "149 kPa (3110 psf)");
    CHECK(shown_area_load(30.0_psf, us) == "30 psf (1.44 kPa)");
    CHECK(shown_stress(7.0_N_per_mm2, si) == "7 N/mm2 (1020 psi)");
    CHECK(shown(1500.0_N_per_m, si) == "1.5 kN/m (103 plf)");
    CHECK(shown(820.0_N_m, si) == "820 N m (605 lbf ft)");
    CHECK(shown(from_m3(0.024), si) == "24 L (6.3 US gal)");
    CHECK(shown(from_m3(0.024), us) == "6.3 US gal (24 L)");
    CHECK(shown(32.14_deg) == "32.1 deg");
    CHECK(percent_text(1.336) == "134 %");
    CHECK(percent_text(0.0336) == "3.4 %");
}

TEST_CASE("shown: lengths by their size") {
    CHECK(shown(1.68_m, si) == "1.68 m (5 ft 6 1/8 in)");
    CHECK(shown(66.0_in, us) == "5 ft 6 in (1.68 m)");
    CHECK(shown(85.0_mm, si) == "85 mm (3 3/8 in)");
    CHECK(shown(3.24_mm, si) == "3.2 mm (0.13 in)");
    CHECK(shown(72.0_in, us) == "6 ft (1.83 m)");
    CHECK(shown(-12.0_mm, si) == "-12 mm (-0.47 in)");
    CHECK(shown(-66.0_in, us) == "-5 ft 6 in (-1.68 m)");
}

TEST_CASE("shown: rounding carries over into the next unit") {
    CHECK(shown(999.4_N, si) == "999 N (225 lbf)");
    CHECK(shown(999.6_N, si) == "1 kN (225 lbf)");
    CHECK(shown(999.4_mm, si) == "999 mm (3 ft 3 3/8 in)");
    CHECK(shown(999.6_mm, si) == "1 m (3 ft 3 3/8 in)");
    CHECK(shown(11.94_in, us) == "1 ft (303 mm)");
    CHECK(shown(11.96_in, us) == "1 ft (304 mm)");
    CHECK(shown(71.95_in, us) == "6 ft (1.83 m)");
    CHECK(number_text(9.996) == "10");
    CHECK(number_text(99.96) == "100");
}

TEST_CASE("shown: zero, small and large numbers") {
    CHECK(shown(Force{}, si) == "0 N (0 lbf)");
    CHECK(shown(Length{}, si) == "0 mm (0 in)");
    CHECK(shown(-Length{}, si) == "0 mm (0 in)");
    CHECK(shown(-0.01_mm, si) == "0 mm (0 in)");
    CHECK(number_text(0.012345) == "0.0123");
    CHECK(number_text(0.00001) == "0");
    CHECK(number_text(123456.0) == "123000");
    CHECK(number_text(-52.64) == "-52.6");
}

TEST_CASE("shown: a number that is none is refused") {
    const double none = std::numeric_limits<double>::quiet_NaN();
    const double endless = std::numeric_limits<double>::infinity();
    CHECK_THROWS_AS((void)number_text(none), StateError);
    CHECK_THROWS_AS((void)shown(from_N(endless), si), StateError);
    CHECK_THROWS_AS((void)percent_text(none), StateError);
}
