// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/rail.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "close.hpp"
#include "coverframe/base/error.hpp"
#include "coverframe/units/crossing.hpp"

using namespace coverframe;

TEST_CASE("Film over a rail without friction: the band has all of its pull") {
    const RailTurn r = turn_over_rail(500, from_deg(30), from_deg(90), 0);
    CHECK(close(in_deg(from_rad(r.turn)), 60, 1e-12));
    CHECK(r.band_pull[0] == 500);
    CHECK(r.band_pull[1] == 500);
    CHECK(close(r.band_lift[0], 500, 1e-12));
    CHECK(r.relief[0] == 0);
    // Two pulls of 500 N/m, one up and in under 30 degrees, one straight down: their sum by hand.
    CHECK(close(r.rail_down, 500 * (1 - 0.5), 1e-12));
    CHECK(close(r.rail_inwards, 500 * std::sqrt(3) / 2, 1e-12));
    CHECK(close(std::hypot(r.rail_down, r.rail_inwards), 2 * 500 * std::sin(std::acos(-1) / 6), 1e-12));
}

TEST_CASE("Friction takes from the band or leaves it more, by the rope friction of the turn") {
    // e^(0.4 pi/2) = 1.8745: a quarter turn over a rough rail.
    const RailTurn r = turn_over_rail(1000, from_deg(0), from_deg(90), 0.4);
    CHECK(close(r.band_pull[0], 1000 / 1.8744561, 1e-6));
    CHECK(close(r.band_pull[1], 1000 * 1.8744561, 1e-6));
    CHECK(close(r.relief[1], 1000 - 1000 / 1.8744561, 1e-6));
    CHECK(r.relief[0] < 0);
    CHECK(turn_over_rail(1000, from_deg(40), from_deg(40), 0.4).band_pull[0] == 1000);  // no turn, no friction
}

TEST_CASE("A hull that falls in lifts the band less; steeper film turns less") {
    CHECK(turn_over_rail(100, from_deg(20), from_deg(120), 0).band_lift[1] <
          turn_over_rail(100, from_deg(20), from_deg(90), 0).band_lift[1]);
    CHECK(turn_over_rail(100, from_deg(40), from_deg(90), 0.3).band_pull[0] >
          turn_over_rail(100, from_deg(20), from_deg(90), 0.3).band_pull[0]);
}

TEST_CASE("What is no turn over a rail is refused") {
    CHECK_THROWS_AS((void)turn_over_rail(-1, from_deg(20), from_deg(90), 0.3), InputError);
    CHECK_THROWS_AS((void)turn_over_rail(1, from_deg(95), from_deg(100), 0.3), InputError);
    CHECK_THROWS_AS((void)turn_over_rail(1, from_deg(60), from_deg(50), 0.3), InputError);
    CHECK_THROWS_AS((void)turn_over_rail(1, from_deg(20), from_deg(90), -0.1), InputError);
    CHECK_THROWS_AS((void)turn_over_rail(std::nan(""), from_deg(20), from_deg(90), 0.1), InputError);
}
