// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/base/error.hpp"

#include <string>
#include <type_traits>
#include <vector>

#include <doctest/doctest.h>

using namespace coverframe;

TEST_CASE("InputError: one problem keeps code, place, value and advice") {
    const InputError error("support.upright.height", "/support/uprights/1/height", "0 mm",
                           "upright U2: height 0 mm must be positive; measure from the sole to the ridge");
    REQUIRE(error.problems().size() == 1);
    CHECK(error.code() == "support.upright.height");
    CHECK(error.where() == "/support/uprights/1/height");
    CHECK(error.problems().front().value == "0 mm");
    CHECK(error.problems().front().advice.find("U2") != std::string::npos);
}

TEST_CASE("InputError: the message lists every problem, one a line, with its place") {
    const std::vector<Problem> problems{{"site.altitude.range", "/site/altitude", "9000 m", "altitude is too high"},
                                        {"plan.empty", "", "", "the plan is empty"}};
    const InputError error(problems);
    CHECK(error.problems() == problems);
    CHECK(error.code() == "site.altitude.range");
    CHECK(std::string(error.what()) ==
          "site.altitude.range: altitude is too high (/site/altitude)\nplan.empty: the plan is empty");
}

TEST_CASE("StateError: code and advice") {
    const StateError error("assess.no_equilibrium", "no check can be made of a frame that found no equilibrium");
    CHECK(error.code() == "assess.no_equilibrium");
    CHECK(std::string(error.what()).starts_with("assess.no_equilibrium: no check"));
}

TEST_CASE("all errors are caught as Error and as std::runtime_error") {
    static_assert(std::is_base_of_v<std::runtime_error, Error>);
    CHECK_THROWS_AS(throw InputError("a.b", "", "", "c"), Error);
    CHECK_THROWS_AS(throw StateError("a.b", "c"), Error);
}
