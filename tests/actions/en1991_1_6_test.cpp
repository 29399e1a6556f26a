// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1991_1_6.hpp"

#include <doctest/doctest.h>

#include "actions/refusal.hpp"

using namespace coverframe;
using namespace coverframe::en1991_1_6;

TEST_CASE("en1991_1_6 3.1: return period by duration") {
    // Table 3.1, from memory
    CHECK(return_period_3_1(Duration::up_to_3_days, Erection::once) == 2.0);
    CHECK(return_period_3_1(Duration::up_to_3_months, Erection::once) == 5.0);
    CHECK(return_period_3_1(Duration::up_to_1_year, Erection::once) == 10.0);
    CHECK(return_period_3_1(Duration::longer, Erection::once) == 50.0);
}

TEST_CASE("en1991_1_6 3.1: a frame that comes back every winter is not temporary") {
    CHECK(return_period_3_1(Duration::longer, Erection::again) == 50.0);
    for (const Duration duration : {Duration::up_to_3_days, Duration::up_to_3_months, Duration::up_to_1_year}) {
        CHECK(code_of([&] { return return_period_3_1(duration, Erection::again); }) == "en1991_1_6.duration.range");
    }
}

TEST_CASE("en1991_1_6 3.1: no other choice") {
    const auto no_duration = static_cast<Duration>(4);
    const auto no_erection = static_cast<Erection>(2);
    CHECK(code_of([&] { return return_period_3_1(no_duration, Erection::once); }) == "en1991_1_6.duration.unknown");
    CHECK(code_of([&] { return return_period_3_1(Duration::longer, no_erection); }) == "en1991_1_6.erection.unknown");
    CHECK(clause_3_1.document == "EN 1991-1-6:2005");
}
