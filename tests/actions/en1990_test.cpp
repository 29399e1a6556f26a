// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1990.hpp"

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

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
    CHECK(tipping_permanent_A1_3_1.permanent == 1.1);
    CHECK(tipping_permanent_A1_3_1.variable == 1.5);
    CHECK(holding_permanent_A1_3_1.permanent == 0.9);
    CHECK(holding_permanent_A1_3_1.variable == 1.5);
    CHECK(wind_psi_A1_2_2.combination == 0.6);
    CHECK(wind_psi_A1_2_2.frequent == 0.2);
    CHECK(wind_psi_A1_2_2.quasi_permanent == 0.0);
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

namespace {

constexpr Psi lowland{0.5, 0.2, 0.0};
constexpr Psi nordic{0.7, 0.5, 0.2};

bool is(const Combination& combination, double permanent, double snow, double wind) {
    const auto same = [](double value, double expected) { return bool(close_abs(value, expected, 1e-12)); };
    return same(combination.permanent, permanent) && same(combination.snow, snow) && same(combination.wind, wind);
}

}  // namespace

TEST_CASE("en1990 6.4.3.2: strength of members") {
    // by hand from Table A1.2(B): 1.35 and 1.5 on pages as above, xi and psi_0 of wind from memory
    using enum SelfWeight;
    CHECK(is(strength_6_10(Leading::snow, worsens, lowland), 1.35, 1.5, 0.9));
    CHECK(is(strength_6_10(Leading::wind, worsens, lowland), 1.35, 0.75, 1.5));
    CHECK(is(strength_6_10(Leading::snow, helps, nordic), 1.0, 1.5, 0.9));
    CHECK(is(strength_6_10(Leading::wind, helps, nordic), 1.0, 1.05, 1.5));
    CHECK(is(strength_a_6_10(worsens, lowland), 1.35, 0.75, 0.9));
    CHECK(is(strength_a_6_10(helps, nordic), 1.0, 1.05, 0.9));
    CHECK(is(strength_b_6_10(Leading::snow, worsens, lowland), 1.1475, 1.5, 0.9));
    CHECK(is(strength_b_6_10(Leading::wind, worsens, nordic), 1.1475, 1.05, 1.5));
    CHECK(is(strength_b_6_10(Leading::snow, helps, lowland), 1.0, 1.5, 0.9));
    CHECK(is(strength_6_10(Leading::snow, worsens, lowland, {.combination = 0.0}), 1.35, 1.5, 0.0));
    CHECK(reduction_A1_3_1 == 0.85);
}

TEST_CASE("en1990 6.4.3.2: neither of 6.10a and 6.10b asks for more than 6.10") {
    for (const Leading leading : {Leading::snow, Leading::wind}) {
        for (const SelfWeight weight : {SelfWeight::worsens, SelfWeight::helps}) {
            const Combination whole = strength_6_10(leading, weight, nordic);
            for (const Combination& part :
                 {strength_a_6_10(weight, nordic), strength_b_6_10(leading, weight, nordic)}) {
                CHECK(part.permanent <= whole.permanent);
                CHECK(part.snow <= whole.snow);
                CHECK(part.wind <= whole.wind);
            }
        }
    }
}

TEST_CASE("en1990 6.4.3.2: balance of the whole") {
    // by hand from Table A1.2(A), from memory
    CHECK(is(equilibrium_6_10(Leading::snow, SelfWeight::worsens, lowland), 1.1, 1.5, 0.9));
    CHECK(is(equilibrium_6_10(Leading::wind, SelfWeight::helps, lowland), 0.9, 0.75, 1.5));
}

TEST_CASE("en1990 6.4.3.3: exceptional snow") {
    // by hand, from memory
    CHECK(is(exceptional_snow_6_11(Accompanying::frequent), 1.0, 1.0, 0.2));
    CHECK(is(exceptional_snow_6_11(Accompanying::quasi_permanent), 1.0, 1.0, 0.0));
}

TEST_CASE("en1990 6.5.3: serviceability") {
    // by hand, from memory
    CHECK(is(characteristic_6_14(Leading::snow, lowland), 1.0, 1.0, 0.6));
    CHECK(is(characteristic_6_14(Leading::wind, nordic), 1.0, 0.7, 1.0));
    CHECK(is(frequent_6_15(Leading::snow, nordic), 1.0, 0.5, 0.0));
    CHECK(is(frequent_6_15(Leading::wind, nordic), 1.0, 0.2, 0.2));
    CHECK(is(quasi_permanent_6_16(nordic), 1.0, 0.2, 0.0));
    CHECK(is(quasi_permanent_6_16(lowland), 1.0, 0.0, 0.0));
}

TEST_CASE("en1990: combinations refuse what they do not know") {
    const auto no_leading = static_cast<Leading>(2);
    const auto no_weight = static_cast<SelfWeight>(2);
    CHECK(code_of([&] { return strength_6_10(no_leading, SelfWeight::helps, lowland); }) == "en1990.leading.unknown");
    CHECK(code_of([&] { return equilibrium_6_10(no_leading, SelfWeight::helps, lowland); }) ==
          "en1990.leading.unknown");
    CHECK(code_of([&] { return strength_b_6_10(Leading::snow, no_weight, lowland); }) == "en1990.self_weight.unknown");
    CHECK(code_of([&] { return strength_a_6_10(no_weight, lowland); }) == "en1990.self_weight.unknown");
    CHECK(code_of([&] { return frequent_6_15(no_leading, lowland); }) == "en1990.leading.unknown");
    CHECK(code_of([] { return exceptional_snow_6_11(static_cast<Accompanying>(2)); }) ==
          "en1990.accompanying.unknown");
    for (const double bad : {-0.1, 1.1, not_finite[0], not_finite[1]}) {
        for (const Psi& psi : {Psi{bad, 0, 0}, Psi{0, bad, 0}, Psi{0, 0, bad}}) {
            CHECK(code_of([&] { return strength_6_10(Leading::snow, SelfWeight::helps, psi); }) ==
                  "en1990.snow_psi.range");
            CHECK(code_of([&] { return strength_a_6_10(SelfWeight::helps, psi); }) == "en1990.snow_psi.range");
            CHECK(code_of([&] { return characteristic_6_14(Leading::snow, psi); }) == "en1990.snow_psi.range");
            CHECK(code_of([&] { return quasi_permanent_6_16(lowland, psi); }) == "en1990.wind_psi.range");
            CHECK(code_of([&] { return exceptional_snow_6_11(Accompanying::frequent, psi); }) ==
                  "en1990.wind_psi.range");
        }
    }
}

TEST_CASE("en1990: arguments out of range") {
    CHECK(code_of([] { return snow_psi_A1_2_2(CountryGroup::other, 1500.1_m); }) == "en1990.altitude.range");
    CHECK(code_of([] { return snow_psi_A1_2_2(CountryGroup::nordic, from_m(-500.1)); }) == "en1990.altitude.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return snow_psi_A1_2_2(CountryGroup::nordic, from_m(bad)); }) == "en1990.altitude.range");
    }
    CHECK(code_of([] { return snow_psi_A1_2_2(static_cast<CountryGroup>(2), 0_m); }) == "en1990.country.unknown");
    CHECK(clause_A1_3_1.document == "EN 1990:2002");
    CHECK(clause_A1_2_2.number == "A1.2.2");
    CHECK(clause_6_4_3_2.number == "6.4.3.2");
}
