// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/units/literals.hpp"

#include <doctest/doctest.h>

#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;

TEST_CASE("literals: metric") {
    CHECK((1.68_m).value() == 1.68);
    CHECK((1680_mm).value() == 1680 * 1e-3);
    CHECK((2_m2).value() == 2.0);
    CHECK(close((250000_mm2).value(), 0.25, 1e-15));
    CHECK((3_N).value() == 3.0);
    CHECK((0.6_kN).value() == 600.0);
    CHECK((12_N_m).value() == 12.0);
    CHECK((1.2_kN_m).value() == 1200.0);
    CHECK((5_N_per_m).value() == 5.0);
    CHECK((0.25_kN_per_m).value() == 250.0);
    CHECK((7_Pa).value() == 7.0);
    CHECK((1.5_kPa).value() == 1500.0);
    CHECK((9_N_per_mm2).value() == 9e6);
    CHECK((9_MPa).value() == 9e6);
    CHECK((11_GPa).value() == 11e9);
    CHECK((2.5_kN_per_m3).value() == 2500.0);
    CHECK((0.5_rad).value() == 0.5);
    CHECK((12_degC).value() == 12.0);
}

TEST_CASE("literals: US units against exact definitions") {
    // International foot and pound, standard gravity: exact by definition (NIST SP 811, 2008, appendix B; from memory).
    CHECK((1_ft).value() == 0.3048);
    CHECK((1_in).value() == 0.0254);
    CHECK(close((1000_mil).value(), 0.0254, 1e-15));
    CHECK(close((1_lbf).value(), 0.45359237 * 9.80665, 1e-15));
    CHECK(close((1_psi).value(), (144_psf).value(), 1e-15));
    CHECK(close((1_pcf).value() * 0.3048, (1_psf).value(), 1e-15));
    CHECK(close((1_plf).value() / 0.3048, (1_psf).value(), 1e-15));
    CHECK(close((180_deg).value(), 3.14159265358979323846, 1e-15));
}

TEST_CASE("literals: whole and decimal spelling agree") {
    CHECK(54_in == 54.0_in);
    CHECK(30_psf == 30.0_psf);
    CHECK(18_deg == 18.0_deg);
}

TEST_CASE("literals: are constants of the compiler") {
    constexpr Length height = 5_ft;
    static_assert(height.value() == 5 * 0.3048);
    CHECK(height == 5_ft);
}
