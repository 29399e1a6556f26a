// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/ponding.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <vector>

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

TEST_CASE("The least fall that drains is found, also where still steeper film sags further again") {
    // 2.1 kPa on a metre of film: with a fall of 1.2 m it drains, with 2 m it would not
    PondingStrip heavy{1.0, 0.2, 36e3, 0, 2100};
    const auto drains_at = [&](double fall) {
        heavy.fall = fall;
        return ponding_of(heavy).drains;
    };
    CHECK_FALSE(drains_at(2.0));
    REQUIRE(drains_at(1.2));
    heavy.fall = 0.2;
    const auto fall = fall_to_drain(heavy);
    REQUIRE(fall.has_value());
    CHECK(drains_at(*fall * 1.001));
    CHECK_FALSE(drains_at(*fall * 0.999));
    for (double less = 0.2; less < *fall; less += 0.01) CHECK_FALSE(drains_at(less));
    // With 150 N/m of its own and 2.4 kPa it takes more fall than span.
    PondingStrip tight{1.0, 0.2, 36e3, 150, 2400};
    CHECK(fall_to_drain(tight).value() > tight.span);
    CHECK_FALSE(fall_to_drain({1.0, 0.2, 36e3, 0, 3000}).has_value());
    CHECK_FALSE(fall_to_drain({1.0, 2.5, 36e3, 0, 3000}).has_value());
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
    CHECK_THROWS_AS((void)ponding_of({1, 0, 36e3, -18e3, 500}), InputError);
    CHECK_THROWS_AS((void)ponding_of({1, 0, 36e3, 100, std::nan("")}), InputError);
}

TEST_CASE("A strip with slack sags further, and needs a steeper fall to drain") {
    const PondingStrip taut{1.4, 0.3, 36e3, 0, 600};
    PondingStrip slack = taut;
    slack.pretension = -200;
    CHECK(ponding_of(slack).sag > ponding_of(taut).sag);
    const auto with_slack = fall_to_drain(slack);
    const auto without = fall_to_drain(taut);
    REQUIRE(with_slack.has_value());
    REQUIRE(without.has_value());
    CHECK(*with_slack > *without);
    CHECK(with_slack == ponding_of(slack).fall_needed);
    slack.fall = *with_slack * 1.01;
    CHECK(fall_to_drain(slack) == slack.fall);
}

TEST_CASE("The critical tension of a span, g L^2/pi^2") {
    // Validation case PN-01.
    CHECK(close(critical_ponding_tension(1.5), 2236.41183, 1e-8));
    CHECK_THROWS_AS((void)critical_ponding_tension(0), InputError);
    CHECK_THROWS_AS((void)critical_ponding_tension(std::nan("")), InputError);
}

namespace {

/// Whether water behind the lower edge settles, by differences: the strip hangs in n pieces under its load, what lies
/// lower than the edge is filled to it, and so on. Solved piece after piece; a pivot that is not positive: no end.
bool settles_by_differences(double span, double fall, double load, double tension, std::size_t n) {
    const double step = span / static_cast<double>(n);
    std::vector<bool> wet(n - 1, false);
    for (;;) {
        std::vector<double> pivot(n - 1), z(n - 1);
        for (std::size_t i = 0; i < n - 1; ++i) {
            double at = 2 * tension / (step * step) - (wet[i] ? 9810.0 : 0.0);
            double right = -load + (i + 2 == n ? tension * fall / (step * step) : 0.0);
            if (i > 0) {
                const double share = tension / (step * step) / pivot[i - 1];
                at -= share * tension / (step * step);
                right += share * z[i - 1];
            }
            if (at <= 0) return false;
            pivot[i] = at;
            z[i] = right;
        }
        for (std::size_t i = n - 1; i-- > 0;) {
            if (i + 2 < n) z[i] += tension / (step * step) * z[i + 1];
            z[i] /= pivot[i];
        }
        bool more = false;
        for (std::size_t i = 0; i < n - 1; ++i) {
            if (z[i] >= 0 || wet[i]) continue;
            wet[i] = more = true;
        }
        if (!more) return true;
    }
}

}  // namespace

TEST_CASE("Water behind the lower edge settles from the tension on that differences find") {
    struct Strip {
        double span, fall, load;
    };
    for (const Strip& strip : {Strip{1.4, 0.2, 600.0},
                               {1.4, 0.3, 600.0},
                               {1.7, 0.65, 300.0},
                               {1.5, 0.4, 500.0},
                               {1.2, 0.9, 2000.0},
                               {2.5, 1.6, 900.0}}) {
        const double span = strip.span;
        const double fall = strip.fall;
        const double load = strip.load;
        CAPTURE(span);
        CAPTURE(fall);
        const double tension = settling_tension(span, fall, load);
        CHECK(settles_by_differences(span, fall, load, 1.001 * tension, 4000));
        CHECK_FALSE(settles_by_differences(span, fall, load, 0.999 * tension, 4000));
        CHECK(tension <= critical_ponding_tension(span));
        CHECK(tension < load * span * span / (2 * fall));  // more than this and it drains
    }
    // By differences in another program (SciPy, 2000 pieces).
    CHECK(close(settling_tension(1.7, 0.65, 300), 549.6988758, 1e-5));
    CHECK(close(settling_tension(1.5, 0.4, 500), 997.8950053, 1e-5));
}

TEST_CASE("Little fall is no better than none, and S = 2 is no step") {
    CHECK(settling_tension(1.2, 0, 900) == critical_ponding_tension(1.2));
    const double edge = 2 * 900.0 / 9810;
    CHECK(settling_tension(1.2, 0.99 * edge, 900) == critical_ponding_tension(1.2));
    CHECK(close(settling_tension(1.2, edge * (1 + 1e-9), 900), critical_ponding_tension(1.2), 1e-6));
    CHECK(close(settling_tension(1.2, 1e4, 900), 900 * 1.2 * 1.2 / 2e4, 0.01));
    double before = critical_ponding_tension(1.2);
    for (double fall = 0; fall < 3; fall += 0.01) {
        CHECK(settling_tension(1.2, fall, 900) <= before);
        before = settling_tension(1.2, fall, 900);
    }
    CHECK_THROWS_AS((void)settling_tension(1.2, -0.1, 900), InputError);
    CHECK_THROWS_AS((void)settling_tension(1.2, 0.1, 0), InputError);
    CHECK_THROWS_AS((void)settling_tension(0, 0.1, 900), InputError);
}
