// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/ponding.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "close.hpp"
#include "coverframe/base/error.hpp"

using namespace coverframe;

TEST_CASE("Critical tension and span of water that follows the film") {
    // Validation cases PN-01 (1.5 m: 2236.41 N/m) and reference (1.2 m: 1.43 kN/m), closed form.
    CHECK(close(ponding_of({1.5, 0, 45e3, 300, 500}).critical_tension, 2236.41183, 1e-8));
    const Ponding p = ponding_of({1.2, 0, 36e3, 100, 500});
    CHECK(close(p.critical_tension, 1431.30357, 1e-8));
    CHECK_FALSE(p.holds_water);
    CHECK(p.longest_span < 1.2);
    CHECK(close(9810 * p.longest_span * p.longest_span / (std::acos(-1) * std::acos(-1)), p.tension, 1e-12));
}

TEST_CASE("A level strip never drains, a steep one does, and what is needed makes it drain") {
    CHECK_FALSE(ponding_of({1.2, 0, 36e3, 100, 500}).drains);
    CHECK(ponding_of({1.2, 0.8, 36e3, 100, 500}).drains);
    const PondingStrip flat{1.4, 0.2, 36e3, 150, 600};
    const Ponding p = ponding_of(flat);
    CHECK_FALSE(p.drains);
    REQUIRE(p.fall_needed.has_value());
    REQUIRE(p.pretension_needed.has_value());
    REQUIRE(p.span_needed.has_value());
    for (const double share : {1.001, 0.999}) {
        PondingStrip other = flat;
        other.fall = *p.fall_needed * share;
        CHECK(ponding_of(other).drains == (share > 1));
        other = flat;
        other.pretension = *p.pretension_needed * share;
        CHECK(ponding_of(other).drains == (share > 1));
        other = flat;
        other.span = *p.span_needed / share;
        other.fall = flat.fall * other.span / flat.span;
        CHECK(ponding_of(other).drains == (share > 1));
    }
    // Shallow theory: sag = q L^2/(8 T) and 4 f/L = fall/L give T = q L^2/(2 fall).
    PondingStrip tight = flat;
    tight.pretension = *p.pretension_needed;
    CHECK(close(ponding_of(tight).tension, 600 * 1.4 * 1.4 / (2 * 0.2), 0.02));
}

TEST_CASE("No tension helps a level strip, and no shorter span does") {
    const Ponding p = ponding_of({1.2, 0, 36e3, 100, 500});
    CHECK_FALSE(p.pretension_needed.has_value());
    CHECK_FALSE(p.span_needed.has_value());
    CHECK(p.fall_needed.has_value());
}

TEST_CASE("What is no strip is refused") {
    CHECK_THROWS_AS((void)ponding_of({0, 0, 36e3, 100, 500}), InputError);
    CHECK_THROWS_AS((void)ponding_of({1, -0.1, 36e3, 100, 500}), InputError);
    CHECK_THROWS_AS((void)ponding_of({1, 0, 0, 100, 500}), InputError);
    CHECK_THROWS_AS((void)ponding_of({1, 0, 36e3, -1, 500}), InputError);
    CHECK_THROWS_AS((void)ponding_of({1, 0, 36e3, 100, std::nan("")}), InputError);
}
