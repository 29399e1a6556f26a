// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/strip.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "../close.hpp"
#include "coverframe/base/error.hpp"

using namespace coverframe;

namespace {

using P = std::array<double, 3>;

Strip strip_of(double EA, double tension, double load, const P& upper, const P& lower) {
    return {EA, free_length_for_tension(EA, tension, upper, lower), load};
}

}  // namespace

TEST_CASE("strip_state: level strap, uniform load: exact length (computed elsewhere for a span of 2.5 m)") {
    // EA 400 kN, T0 500 N, 200 N/m over 2.5 m: H 1791.00 N from the exact length integral, 1794.26 N from the cubic.
    const P a{0, 0, 0};
    const P b{0, 2.5, 0};
    const StripState s = strip_state(strip_of(400e3, 500, 200 * 2.5, a, b), a, b);
    CHECK(close(s.level_force, 1791.00, 1e-5));
    CHECK(close(s.sag, 200 * 2.5 * 2.5 / (8 * 1791.00), 1e-5));
}

TEST_CASE("strip_state: a steep tight strip pulls the ridge down with far more than half its load") {
    const P ridge{3, 0, 1};
    const P rail{3, 1.3, 0};
    const StripState s = strip_state(strip_of(12.5e3, 150 * 0.25, 900 * 1.3 * 0.25, ridge, rail), ridge, rail);
    CHECK(-s.pull_upper[2] > 1.5 * (900 * 1.3 * 0.25 / 2));
    CHECK(s.pull_upper[1] > 0);
    // Forces and moments of the strip itself balance.
    const double W = 900 * 1.3 * 0.25;
    CHECK(close(-(s.pull_upper[2] + s.pull_lower[2]), W, 1e-12));
    CHECK(close(-s.pull_lower[2] * 1.3 - s.pull_lower[1] * 1.0, W * 0.65, 1e-9));
}

TEST_CASE("strip_state: no load is a straight tie, too long is slack") {
    const P a{0, 0, 1};
    const P b{0, 1, 0};
    const double l = std::sqrt(2.0);
    const StripState tight = strip_state({1e4, l / 1.01, 0}, a, b);
    CHECK(close(tight.tension_upper, 1e4 * 0.01, 1e-9));
    CHECK(tight.sag == 0);
    const StripState slack = strip_state({1e4, l * 1.01, 0}, a, b);
    CHECK(slack.slack);
    CHECK(slack.level_force == 0);
    CHECK(strip_state({1e4, l * 1.01, 5}, a, b).level_force > 0);
}

TEST_CASE("strip_state: the stiffness is the derivative of the pull up to the small part that is averaged away") {
    const P lower{3, 1.3, 0};
    const P upper{3, 0, 1};
    const Strip strip = strip_of(12.5e3, 40, 200, upper, lower);
    const StripState s = strip_state(strip, upper, lower);
    const double step = 1e-6;
    for (std::size_t j = 0; j < 3; ++j) {
        P up = upper;
        P down = upper;
        up[j] += step;
        down[j] -= step;
        const StripState a = strip_state(strip, up, lower);
        const StripState b = strip_state(strip, down, lower);
        for (std::size_t i = 0; i < 3; ++i) {
            CAPTURE(i);
            CAPTURE(j);
            const double measured = -(a.pull_upper[i] - b.pull_upper[i]) / (2 * step);
            CHECK(close_abs(s.stiffness[3 * i + j], measured, 0.05 * s.stiffness[8]));
        }
    }
}

TEST_CASE("strip_state: scale, mirror and turn") {
    const P upper{1, 0, 0.8};
    const P lower{1, 1.4, 0};
    const StripState s = strip_state(strip_of(1e4, 30, 150, upper, lower), upper, lower);
    const P mirror{1, -1.4, 0};
    const StripState m = strip_state(strip_of(1e4, 30, 150, upper, mirror), upper, mirror);
    CHECK(close(m.pull_upper[1], -s.pull_upper[1], 1e-12));
    CHECK(close(m.pull_upper[2], s.pull_upper[2], 1e-12));
    const P big_upper{1, 0, 8};
    const P big_lower{1, 14, 0};
    const StripState b = strip_state(strip_of(1e4, 30, 150, big_upper, big_lower), big_upper, big_lower);
    CHECK(close(b.level_force, s.level_force, 1e-12));
    CHECK(close(b.sag, 10 * s.sag, 1e-12));
}

TEST_CASE("hollow_of: a level strip holds 2/3 f L, a steep one drains") {
    const P a{0, 0, 0};
    const P b{0, 1.2, 0};
    const StripState level = strip_state(strip_of(36e3, 100, 500 * 1.2, a, b), a, b);
    const Hollow h = hollow_of(level);
    CHECK(close(h.area, 2.0 / 3.0 * level.sag * 1.2, 1e-12));
    CHECK(close(h.depth, level.sag, 1e-12));
    const P high{0, 0, 1};
    CHECK(hollow_of(strip_state(strip_of(36e3, 100, 500 * 1.2, high, b), high, b)).area == 0);
}

TEST_CASE("hollow_of: agrees with the closed form for an inclined strip") {
    // From the low edge inwards to x1 = L - L^2 tan(beta)/(4 f); area (4 f/L^2) x1^3/6.
    const P upper{0, 0, 0.1};
    const P lower{0, 1.2, 0};
    const StripState s = strip_state(strip_of(36e3, 100, 500 * 1.2, upper, lower), upper, lower);
    const Hollow h = hollow_of(s);
    const double tangent = 0.1 / 1.2;
    const double x1 = 1.2 - 1.2 * 1.2 * tangent / (4 * s.sag);
    CHECK(close(h.to - h.from, x1, 1e-9));
    CHECK(close(h.area, 4 * s.sag / (1.2 * 1.2) * x1 * x1 * x1 / 6, 1e-9));
}

TEST_CASE("strip_state: refuses ends over one another and nonsense") {
    const P a{0, 0, 1};
    CHECK_THROWS_AS((void)strip_state({1e4, 1, 1}, a, P{0, 0, 0}), InputError);
    CHECK_THROWS_AS((void)strip_state({0, 1, 1}, a, P{0, 1, 0}), InputError);
    CHECK_THROWS_AS((void)strip_state({1e4, 1, std::nan("")}, a, P{0, 1, 0}), InputError);
}
