// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1991_1_3_annex_e.hpp"

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::en1991_1_3;

TEST_CASE("en1991_1_3 annex E: unit weights of snow") {
    // Table E.1, read on a page (building inspectorate of Skierniewice)
    const auto low = [](SnowState state) { return in_kN_per_m3(unit_weight_E_1(state).low); };
    const auto high = [](SnowState state) { return in_kN_per_m3(unit_weight_E_1(state).high); };
    for (const double side : {low(SnowState::fresh), high(SnowState::fresh)}) CHECK(close(side, 1.0, 1e-12));
    for (const double side : {low(SnowState::settled), high(SnowState::settled)}) CHECK(close(side, 2.0, 1e-12));
    for (const double side : {low(SnowState::wet), high(SnowState::wet)}) CHECK(close(side, 4.0, 1e-12));
    CHECK(close(low(SnowState::old), 2.5, 1e-12));
    CHECK(close(high(SnowState::old), 3.5, 1e-12));
}

TEST_CASE("en1991_1_3 annex E: depths that weigh 0.7 kN/m2 on the roof of a Czech zone") {
    // snihnastrese.cz, table of depths after CSN EN 1991-1-3/Z1, read on a page: 0.56 kN/m2 are 56 cm of fresh snow, 28
    // of settled, 19 of old (which it counts 3.0 kN/m3), 14 of wet
    const auto depth = [](UnitWeight weight) { return 0.56 / in_kN_per_m3(weight); };
    CHECK(close_abs(depth(unit_weight_E_1(SnowState::fresh).high), 0.56, 0.005));
    CHECK(close_abs(depth(unit_weight_E_1(SnowState::settled).high), 0.28, 0.005));
    CHECK(depth(unit_weight_E_1(SnowState::old).high) < 0.19);
    CHECK(depth(unit_weight_E_1(SnowState::old).low) > 0.19);
    CHECK(close_abs(depth(unit_weight_E_1(SnowState::wet).high), 0.14, 0.005));
}

TEST_CASE("en1991_1_3 annex E: no other state") {
    CHECK(code_of([] { return unit_weight_E_1(static_cast<SnowState>(4)); }) == "en1991_1_3.snow_state.unknown");
    CHECK(annex_E.document == "EN 1991-1-3:2003");
}
