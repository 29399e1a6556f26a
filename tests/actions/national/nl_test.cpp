// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/nl.hpp"

#include <doctest/doctest.h>

#include "close.hpp"
#include "coverframe/actions/rule.hpp"

using namespace coverframe;

TEST_CASE("na_nl: one load everywhere") {
    // beratung.bauforumstahl.de, column 197, read on a page
    CHECK(close(in_kPa(na_nl::ground_load_4_1()), 0.7, 1e-12));
    // a rule without arguments is called by name too
    CHECK(close(evaluate(rule_named("na_nl.ground_load"), {}).at(0), 0.7, 1e-12));
}
