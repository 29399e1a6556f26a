// SPDX-License-Identifier: BSD-3-Clause
#include <doctest/doctest.h>

#include <cmath>

#include "close.hpp"
#include "coverframe/base/error.hpp"
#include "coverframe/film/strip.hpp"

using namespace coverframe;

TEST_CASE("A load per area needs a span: where the thinnest film holds what is said of it") {
    // Said in the trade (common practice, no source): even the thinnest film holds about 256 lb per square foot, 12.3
    // kPa. Film of 0.15 mm with E = 200 MPa and nu = 0.45 that may carry 10 MPa, 1.5 kN/m (numbers of the demo plans'
    // kind): shallow limit T^3 = E' t (q L)^2/24, so L = sqrt(24 T^3/(E' t))/q.
    const double stiffness = 200e6 * 0.15e-3 / (1 - 0.45 * 0.45);
    const double limit = 10e6 * 0.15e-3;
    const double span = span_at_limit(stiffness, 0, limit, 12.3e3);
    const double shallow = std::sqrt(24 * std::pow(limit, 3) / stiffness) / 12.3e3;
    CHECK(close(span, shallow, 0.15));  // at 4 % of stretch the sag is no longer shallow
    CHECK(span < 0.15);  // true for a strip narrower than a hand's breadth and a half, not for a bay of a cover
    // At a metre, the same film carries a tenth of that.
    CHECK(span_at_limit(stiffness, 0, limit, 1.23e3) > 9.9 * span);
    CHECK(close(span_at_limit(stiffness, 0, limit, 1.23e3), 10 * span, 1e-9));  // only load times span counts
}

TEST_CASE("The span at the limit is the one at which a strip has that pull") {
    for (const double pretension : {0.0, 150.0, 400.0}) {
        for (const double load : {200.0, 900.0, 4000.0}) {
            const double span = span_at_limit(45e3, pretension, 2000, load);
            const Strip strip{45e3, span / (1 + pretension / 45e3), load * span};
            CHECK(close(strip_state(strip, {0, 0, 0}, {span, 0, 0}).tension_upper, 2000.0, 1e-9));
        }
    }
    CHECK_THROWS_AS((void)span_at_limit(45e3, 2000, 2000, 900), InputError);
    CHECK_THROWS_AS((void)span_at_limit(45e3, 0, 2000, 0), InputError);
    CHECK_THROWS_AS((void)span_at_limit(0, 0, 2000, 900), InputError);
}
