// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/plan/geometry.hpp"

#include <cmath>
#include <limits>

#include <doctest/doctest.h>

#include "close.hpp"
#include "coverframe/units/crossing.hpp"
#include "plan/plan_files.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {

/// A boat of 4 m with a pointed stem, and a ridge over one upright.
Plan small_plan() {
    Plan plan;
    plan.boat.rail = {{0.0_m, 0.0_m, 1.2_m}, {1.0_m, 0.8_m, 1.0_m}, {4.0_m, 1.0_m, 0.9_m}};
    RidgeSupport support;
    support.ridge.bow = {.x = 0.5_m, .z = 1.6_m};
    support.ridge.stern = {.x = 4.0_m, .z = 1.9_m};
    support.uprights.resize(1);
    support.uprights[0].x = 2.5_m;
    support.uprights[0].top = 2.0_m;
    plan.support.structure = support;
    return plan;
}

}  // namespace

TEST_CASE("rail_at: straight between stations, exact at them") {
    const Boat boat = small_plan().boat;
    const auto middle = rail_at(boat, 2.5_m);
    REQUIRE(middle.has_value());
    CHECK(close(middle->x, 2.5_m, 0));
    CHECK(close(middle->half_breadth, 0.9_m, 1e-15));
    CHECK(close(middle->z, 0.95_m, 1e-15));
    for (const RailStation& station : boat.rail) CHECK(rail_at(boat, station.x) == station);
}

TEST_CASE("rail_at: nothing outside the rail line, nor without one") {
    const Boat boat = small_plan().boat;
    CHECK_FALSE(rail_at(boat, -1e-9_m).has_value());
    CHECK_FALSE(rail_at(boat, from_m(std::nextafter(4.0, 5.0))).has_value());
    CHECK_FALSE(rail_at(boat, from_m(std::numeric_limits<double>::quiet_NaN())).has_value());
    CHECK_FALSE(rail_at(Boat{}, 0.0_m).has_value());
}

TEST_CASE("ridge_profile and ridge_at: ends and tops from bow to stern") {
    const Plan plan = small_plan();
    const auto profile = ridge_profile(plan.support);
    REQUIRE(profile.size() == 3);
    CHECK(close(profile[1].x, 2.5_m, 0));
    CHECK(close(profile[1].z, 2.0_m, 0));
    CHECK(close(ridge_at(plan.support, 1.5_m).value(), 1.8_m, 1e-15));
    CHECK(close(ridge_at(plan.support, 0.5_m).value(), 1.6_m, 0));
    CHECK(close(ridge_at(plan.support, 4.0_m).value(), 1.9_m, 0));
    CHECK_FALSE(ridge_at(plan.support, 0.49_m).has_value());
    CHECK_FALSE(ridge_at(plan.support, 4.01_m).has_value());
}

TEST_CASE("ridge_profile: of a found frame, by the names of the ridge line") {
    const Plan plan = good_plan("found_frame");
    const auto profile = ridge_profile(plan.support);
    REQUIRE(profile.size() == 4);
    CHECK(close(profile[1].x, 2.3_m, 0));
    CHECK(close(profile[1].z, 1.75_m, 0));
    CHECK(close(profile[3].x, 6.3_m, 0));

    Support unknown = plan.support;
    std::get<FoundFrame>(unknown.structure).ridge_line[1] = "nowhere";
    CHECK(ridge_profile(unknown).size() == 3);
}

TEST_CASE("film_slope_at and film_height_at: the plane from ridge to rail") {
    const Plan plan = small_plan();
    // At 2.5 m the ridge is 1.05 m over a rail 0.9 m off the centreline.
    CHECK(close(in_rad(film_slope_at(plan, 2.5_m).value()), std::atan(1.05 / 0.9), 1e-14));
    CHECK(close(film_height_at(plan, 2.5_m, 0.0_m).value(), 2.0_m, 0));
    CHECK(close(film_height_at(plan, 2.5_m, 0.9_m).value(), 0.95_m, 1e-15));
    CHECK(close(film_height_at(plan, 2.5_m, -0.45_m).value(), 1.475_m, 1e-15));
}

TEST_CASE("film_slope_at: 45 degrees where rise and half breadth are equal") {
    Plan plan = small_plan();
    auto& support = std::get<RidgeSupport>(plan.support.structure);
    support.uprights[0].top = 0.95_m + 0.9_m;
    CHECK(close(in_deg(film_slope_at(plan, 2.5_m).value()), 45.0, 1e-13));
}

TEST_CASE("film_slope_at: a ridge below the rail slopes the other way") {
    Plan plan = small_plan();
    std::get<RidgeSupport>(plan.support.structure).ridge.stern.z = 0.4_m;
    CHECK(close(in_rad(film_slope_at(plan, 4.0_m).value()), std::atan2(-0.5, 1.0), 1e-14));
}

TEST_CASE("film_slope_at and film_height_at: nothing where there is no film") {
    Plan plan = small_plan();
    CHECK_FALSE(film_slope_at(plan, 0.2_m).has_value());           // ahead of the ridge
    CHECK_FALSE(film_height_at(plan, 2.5_m, 0.91_m).has_value());  // outside the rail
    std::get<RidgeSupport>(plan.support.structure).ridge.bow.x = 0.0_m;
    CHECK_FALSE(film_slope_at(plan, 0.0_m).has_value());  // no breadth at the stem
    CHECK_FALSE(film_height_at(plan, 0.0_m, 0.0_m).has_value());
    CHECK(film_slope_at(plan, 0.01_m).has_value());
}

TEST_CASE("geometry: port and starboard are the same, and the datum does not matter") {
    const Plan plan = good_plan("strap_ridge");
    Plan raised = plan;
    const Length up = 3.25_m;
    for (RailStation& station : raised.boat.rail) station.z += up;
    auto& support = std::get<RidgeSupport>(raised.support.structure);
    support.ridge.bow.z += up;
    support.ridge.stern.z += up;
    for (Upright& upright : support.uprights) upright.top += up;
    for (double x = 0.35; x < 10.4; x += 0.37) {
        CAPTURE(x);
        CHECK(close(film_slope_at(raised, from_m(x)).value(), film_slope_at(plan, from_m(x)).value(), 1e-12));
        const Length y = 0.4 * rail_at(plan.boat, from_m(x))->half_breadth;
        CHECK(film_height_at(plan, from_m(x), y) == film_height_at(plan, from_m(x), -y));
    }
}

TEST_CASE("find_stand and find_strap_kind: by their exact names") {
    const Plan plan = good_plan("pole_ridge");
    REQUIRE(find_stand(plan.boat, "cockpit sole") != nullptr);
    CHECK(find_stand(plan.boat, "cockpit sole") == &plan.boat.stands[1]);
    CHECK(find_stand(plan.boat, "Cockpit sole") == nullptr);
    CHECK(find_strap_kind(plan, "3/4 in woven polyester") == &plan.straps[0]);
    CHECK(find_strap_kind(plan, "") == nullptr);
}
