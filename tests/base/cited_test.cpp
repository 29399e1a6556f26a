// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/base/cited.hpp"

#include <doctest/doctest.h>

using namespace coverframe;

TEST_CASE("Cited: the value and where it comes from travel together") {
    const Cited<double> thermal{1.0, "EN 1991-1-3:2003, 5.2(8), recommended"};
    CHECK(thermal.value == 1.0);
    CHECK(thermal.source == "EN 1991-1-3:2003, 5.2(8), recommended");
}

TEST_CASE("Cited: two are equal only if value and source are") {
    const Cited<int> a{2, "measured"};
    CHECK(a == Cited<int>{2, "measured"});
    CHECK(a != Cited<int>{3, "measured"});
    CHECK(a != Cited<int>{2, "guessed"});
}

TEST_CASE("Cited: starts at zero with no source, so that a missing source is seen") {
    const Cited<double> nothing;
    CHECK(nothing.value == 0.0);
    CHECK(nothing.source.empty());
}
