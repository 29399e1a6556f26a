// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1990.hpp"

#include <doctest/doctest.h>

#include "actions/refusal.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::en1990;

TEST_CASE("en1990 A1.3.1: partial factors") {
    // 1.35: eurocode.us, Structural timber design, read on a page; 1.5: same, and University of Siegen lecture script
    CHECK(unfavourable_A1_3_1.permanent == 1.35);
    CHECK(unfavourable_A1_3_1.variable == 1.5);
    // from memory
    CHECK(favourable_permanent_A1_3_1.permanent == 1.0);
    CHECK(favourable_permanent_A1_3_1.variable == 1.5);
    CHECK(accidental_A1_3_2.permanent == 1.0);
    CHECK(accidental_A1_3_2.variable == 1.0);
}

TEST_CASE("en1990 A1.2.2: combination factors of snow") {
    // Table A1.1, read on a page (scribd document 627038731)
    for (const Length& altitude : {0_m, 1000_m, 1500_m}) {
        const Psi psi = snow_psi_A1_2_2(CountryGroup::nordic, altitude);
        CHECK(psi.combination == 0.7);
        CHECK(psi.frequent == 0.5);
        CHECK(psi.quasi_permanent == 0.2);
    }
    const Psi low = snow_psi_A1_2_2(CountryGroup::other, 1000_m);
    CHECK(low.combination == 0.5);
    CHECK(low.frequent == 0.2);
    CHECK(low.quasi_permanent == 0.0);
    const Psi high = snow_psi_A1_2_2(CountryGroup::other, 1000.1_m);
    CHECK(high.combination == 0.7);
    CHECK(high.frequent == 0.5);
    CHECK(high.quasi_permanent == 0.2);
    CHECK(snow_psi_A1_2_2(CountryGroup::other, from_m(-7.0)).combination == 0.5);  // a yard behind a dike
}

TEST_CASE("en1990: arguments out of range") {
    CHECK(code_of([] { return snow_psi_A1_2_2(CountryGroup::other, 1500.1_m); }) == "en1990.altitude.range");
    CHECK(code_of([] { return snow_psi_A1_2_2(CountryGroup::nordic, from_m(-500.1)); }) == "en1990.altitude.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return snow_psi_A1_2_2(CountryGroup::nordic, from_m(bad)); }) == "en1990.altitude.range");
    }
    CHECK(clause_A1_3_1.document == "EN 1990:2002");
    CHECK(clause_A1_2_2.number == "A1.2.2");
    CHECK(clause_6_4_3_2.number == "6.4.3.2");
}
