// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/uk_roof.hpp"

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::en1991_1_3;
using namespace coverframe::na_uk;

TEST_CASE("na_uk NA.2.18: the loaded slope of a duopitch roof") {
    const auto mu = [](double deg) { return duopitch_drifted_NA_2_18(from_deg(deg), Sliding::free); };
    // kingspanpanels.com, basic snow loads, read on a page: 1.2 at 30 deg
    CHECK(close(mu(30.0), 1.2, 1e-12));
    // from memory, moderately sure
    CHECK(mu(0.0) == 0.8);
    CHECK(close(mu(15.0), 0.8, 1e-12));
    CHECK(close(mu(22.5), 1.0, 1e-12));
    CHECK(close(mu(45.0), 0.6, 1e-12));
    CHECK(mu(60.0) == 0.0);
    CHECK(mu(70.0) == 0.0);
    CHECK(mu(90.0) == 0.0);
    for (double deg = 0.0; deg < 90.0; deg += 0.5) {
        CAPTURE(deg);
        CHECK(close_abs(mu(deg + 1e-9), mu(deg), 1e-9));  // continuous
        CHECK(mu(deg) >= shape_coefficient_pitched_5_3_3(from_deg(deg), Sliding::free) - 1e-12);
        const double held = duopitch_drifted_NA_2_18(from_deg(deg), Sliding::prevented);
        CHECK(held >= 0.8);
        CHECK(held >= mu(deg));
    }
    CHECK(close(duopitch_drifted_NA_2_18(30_deg, Sliding::prevented), 1.2, 1e-12));
    CHECK(duopitch_drifted_NA_2_18(75_deg, Sliding::prevented) == 0.8);
    CHECK(code_of([&] { return mu(90.1); }) == "na_uk.pitch.range");
    CHECK(code_of([&] { return mu(-0.1); }) == "na_uk.pitch.range");
    for (const double bad : not_finite) CHECK(code_of([&] { return mu(bad); }) == "na_uk.pitch.range");
}

TEST_CASE("na_uk NA.2.2: case B2, two persistent situations and one accidental") {
    // New Steel Construction, AD 484, read on a page
    const DesignSituations gable = design_situations_A(exceptional_NA_2_2, false);
    CHECK((gable.undrifted && gable.drifted));
    CHECK_FALSE((gable.exceptional_fall_undrifted || gable.exceptional_fall_drifted));
    CHECK(design_situations_A(exceptional_NA_2_2, true).exceptional_drift);
}
