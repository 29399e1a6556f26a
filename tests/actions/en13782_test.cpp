// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en13782.hpp"

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "coverframe/actions/en1991_1_3_annex_e.hpp"
#include "coverframe/actions/rule.hpp"

using namespace coverframe;
using namespace coverframe::en13782;

TEST_CASE("en13782: the reduced snow load has to be claimed") {
    // from memory
    CHECK(close(in_kPa(reduced_snow_load(Clearing::depth_to_8_cm)), 0.2, 1e-12));
    CHECK(code_of([] { return reduced_snow_load(Clearing::none); }) == "en13782.clearing.range");
    CHECK(code_of([] { return reduced_snow_load(static_cast<Clearing>(2)); }) == "en13782.clearing.unknown");
    // whoever says nothing is refused
    CHECK(rule_named("en13782.reduced_snow_load").arguments.at(0).otherwise == "none");
}

TEST_CASE("en13782: 8 cm weigh 0.2 kN/m2 as old snow of the lower unit weight, and more when wet") {
    using en1991_1_3::SnowState;
    using en1991_1_3::unit_weight_E_1;
    const double reduced = in_kPa(reduced_snow_load(Clearing::depth_to_8_cm));
    CHECK(close(0.08 * in_kN_per_m3(unit_weight_E_1(SnowState::old).low), reduced, 1e-12));
    CHECK(0.08 * in_kN_per_m3(unit_weight_E_1(SnowState::wet).high) > reduced);
}

TEST_CASE("en13782: simplified partial factors") {
    // from memory
    CHECK(simplified_factors(VariableActions::one).permanent == 1.35);
    CHECK(simplified_factors(VariableActions::one).variable == 1.5);
    CHECK(simplified_factors(VariableActions::several).permanent == 1.35);
    CHECK(simplified_factors(VariableActions::several).variable == 1.35);
    CHECK(code_of([] { return simplified_factors(static_cast<VariableActions>(2)); }) ==
          "en13782.variable_actions.unknown");
}
