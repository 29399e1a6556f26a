// SPDX-License-Identifier: BSD-3-Clause
#include "units/inches.hpp"

#include <doctest/doctest.h>

using namespace coverframe::detail;

// 1 in = 25.4 mm and 1 ft = 304.8 mm exactly (NIST SP 811, 2008, appendix B.8, from memory).
TEST_CASE("inches: feet and inches to an eighth") {
    CHECK(feet_and_inches(0.0254 * 66.125) == "5 ft 6 1/8 in");
    CHECK(feet_and_inches(0.3048 * 21) == "21 ft");
    CHECK(feet_and_inches(0.0254 * 11.99) == "1 ft");
    CHECK(feet_and_inches(0.0254 * 23.97) == "2 ft");
    CHECK(feet_and_inches(0.0254 * 7.75) == "7 3/4 in");
    CHECK(feet_and_inches(0.0254) == "1 in");
    CHECK(feet_and_inches(-0.0254 * 18) == "-1 ft 6 in");
    CHECK(inches(0.0254 * 3.5) == "3 1/2");
    CHECK(inches(0.0254 * 0.625) == "5/8");
}

TEST_CASE("inches: hundredths under an inch") {
    CHECK(feet_and_inches(0.0254 * 0.43) == "0.43 in");
    CHECK(feet_and_inches(-0.0254 * 0.43) == "-0.43 in");
    CHECK(feet_and_inches(0.0254 * 0.5) == "0.5 in");
    CHECK(feet_and_inches(0.0254 * 0.999) == "1 in");
    CHECK(feet_and_inches(-1e-9) == "0 in");
    CHECK(feet_and_inches(0.0) == "0 in");
}
