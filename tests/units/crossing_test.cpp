// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/units/crossing.hpp"

#include <doctest/doctest.h>

#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;

TEST_CASE("crossing: a number leaves in the unit of the function's name") {
    CHECK(close(in_mm(1.68_m), 1680.0, 1e-15));
    CHECK(close(in_ft(3.048_m), 10.0, 1e-15));
    CHECK(close(in_in(5_ft), 60.0, 1e-15));
    CHECK(close(in_mil(0.1778_mm), 7.0, 1e-15));
    CHECK(close(in_mm2(1_m2), 1e6, 1e-15));
    CHECK(close(in_mm4(100_mm * (100_mm * 100_mm * 100_mm) / 12.0), 100.0 * 1e6 / 12.0, 1e-14));
    CHECK(close(in_kN(1000_lbf), 4.4482216152605, 1e-15));
    CHECK(close(in_psf(1_kPa), 20.885434, 1e-7));  // NIST SP 811 (2008), B.8: 1 psf = 47.88026 Pa; from memory
    CHECK(close(in_psi(1_MPa), 145.03774, 1e-7));  // same table: 1 psi = 6894.757 Pa; from memory
    CHECK(close(in_pcf(9.80665_kN_per_m3), 62.42796, 1e-7));  // same table, through 16.01846 kg/m3; from memory
    CHECK(close(in_lbf_ft(1_kN_m), 737.56215, 1e-7));         // same table: 1 lbf ft = 1.355818 N m; from memory
    CHECK(close(in_plf(1_kN_per_m), 68.521766, 1e-7));        // same table: 1 lbf/ft = 14.59390 N/m; from memory
    CHECK(close(in_deg(0.5_rad), 28.64788975654116, 1e-15));
}

TEST_CASE("crossing: in_… undoes from_…") {
    for (const double number : {0.0, 1.0, -2.5, 0.1, 1e-9, 123456.789}) {
        CAPTURE(number);
        CHECK(in_m(from_m(number)) == number);
        CHECK(close(in_mm(from_mm(number)), number, 3e-16));
        CHECK(close(in_ft(from_ft(number)), number, 3e-16));
        CHECK(close(in_mm4(from_mm4(number)), number, 3e-16));
        CHECK(close(in_lbf(from_lbf(number)), number, 3e-16));
        CHECK(close(in_psf(from_psf(number)), number, 3e-16));
        CHECK(close(in_N_per_mm2(from_N_per_mm2(number)), number, 3e-16));
        CHECK(close(in_pcf(from_pcf(number)), number, 3e-16));
        CHECK(close(in_deg(from_deg(number)), number, 3e-16));
    }
}

TEST_CASE("crossing: from_… gives the bits of the literal") {
    CHECK(from_in(54) == 54_in);
    CHECK(from_psf(30) == 30_psf);
    CHECK(from_kPa(1.5) == 1.5_kPa);
    CHECK(from_mil(7) == 7_mil);
    CHECK(from_deg(18) == 18_deg);
    CHECK(from_lbf(135) == 135_lbf);
}

TEST_CASE("crossing: two names of one unit agree") {
    CHECK(in_MPa(9_N_per_mm2) == in_N_per_mm2(9_MPa));
    CHECK(from_MPa(9) == from_N_per_mm2(9));
}
