// SPDX-License-Identifier: BSD-3-Clause
// The rules are tested in nbc_test.cpp; here, that this edition brings them in under its own name.
#include "coverframe/actions/nbc2020.hpp"

#include <array>
#include <vector>

#include <doctest/doctest.h>

#include "close.hpp"
#include "coverframe/actions/rule.hpp"

using namespace coverframe;
using namespace coverframe::literals;

TEST_CASE("nbc2020: clauses carry the edition, and the rules are there") {
    for (const Clause& clause :
         {nbc2020::clause_4_1_3_2, nbc2020::clause_4_1_6_2, nbc2020::clause_4_1_6_3, nbc2020::clause_4_1_6_5,
          nbc2020::clause_4_1_6_6, nbc2020::clause_4_1_6_7, nbc2020::clause_4_1_6_9, nbc2020::clause_4_1_6_11,
          nbc2020::clause_4_1_6_13, nbc2020::clause_4_1_6_14}) {
        CAPTURE(clause.number);
        CHECK(clause.document == "NBC 2020");
        CHECK(clause.number.starts_with("4.1."));
    }
    // by hand: a slippery cover of 30 degrees, 2.0 kPa and 0.4 kPa of rain, normal importance: 0.8 (2/3) 2.0 + 0.4
    const double slope =
        nbc2020::slope_factor_4_1_6_2(30_deg, nbc2020::Surface::unobstructed_slippery, nbc2020::Accumulation::none);
    CHECK(
        close(in_kPa(nbc2020::specified_load_4_1_6_2(2_kPa, 0.4_kPa, 1.0, {.slope = slope}).load), 22.0 / 15.0, 1e-12));
    CHECK(nbc2020::combination_4_1_3_2(nbc2020::Combination::snow_and_wind).snow == 1.5);
    CHECK_FALSE(nbc2020::removal_may_lower_load_4_1_6_14);
}

TEST_CASE("nbc2020: the catalogue hands arguments on in their order") {
    // the step of nbc_drift_test.cpp, worked out there by hand
    const std::vector<double> step =
        evaluate(rule_named("nbc2020.step_drift"), std::array{1.8, 2.974, 2.5, 0.8, 0.0, 18.0, 0.6, 1.0});
    REQUIRE(step.size() == 4);
    CHECK(close(step[0], 0.1158036315, 1e-9));
    CHECK(close(step[1], 2.677753534, 1e-9));
    CHECK(close(step[2], 3.347191917, 1e-9));
    CHECK(close(step[3], 5.682509013, 1e-9));
    // by hand: 1.15 (2 x 0.9 x 0.75 x 0.5 x 1.25 + 0.4)
    const std::vector<double> load =
        evaluate(rule_named("nbc2020.specified_load"), std::array{2.0, 0.4, 1.15, 0.9, 0.75, 0.5, 1.25});
    CHECK(close(load.back(), 1.15 * 1.24375, 1e-12));
    // a gap of 4 m and a place 1.5 m from the edge
    CHECK(
        close(evaluate(rule_named("nbc2020.adjacent_accumulation"), std::array{3.0, 6.0, 4.0, 1.5}).at(0), 2.5, 1e-12));
    CHECK(close(evaluate(rule_named("nbc2020.obstruction_distance"), std::array{1.0, 1.8, 2.974, 0.8, 0.75}).at(0),
                6.368527236, 1e-9));
    CHECK(close(evaluate(rule_named("nbc2020.projection_drift"), std::array{1.8, 2.974, 1.2, 4.0, 0.8}).at(1),
                8.0 / 3.0, 1e-12));
    CHECK(evaluate(rule_named("nbc2020.wind_factor"), std::array{0.0, 1.0, 1.0, 1.0, 0.0}).at(0) == 0.75);
    CHECK(evaluate(rule_named("nbc2020.wind_factor"), std::array{0.0, 1.0, 1.0, 0.0, 0.0}).at(0) == 1.0);
    for (const Rule& rule : rules()) {
        if (rule.space == "nbc2020") CHECK(rule.clause.document == "NBC 2020");
    }
}
