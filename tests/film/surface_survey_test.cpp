// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/surface_survey.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include "close.hpp"
#include "coverframe/base/error.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/units/crossing.hpp"

using namespace coverframe;

namespace {

Plan demo(const std::string& name) {
    return read_plan_file(std::string(COVERFRAME_SOURCE_FOLDER) + "/examples/plans/" + name + ".json");
}

std::vector<double> even(const CoverSurface& surface, double load) {
    return std::vector<double>(surface.cover.mesh.triangles.size(), load);
}

}  // namespace

TEST_CASE("Places are named by bay, side and what is near") {
    const Plan plan = demo("motor_boat");
    const CoverSurface s = rig_surface(plan, 200, {.spacing = 0.5, .rows = 4});
    // Uprights at 9, 15 and 21 ft; the windshield reaches from 10 ft 6 in to 12 ft 6 in (3.81 m).
    CHECK(place_on(s, 4.21, -0.4) == "between U1 and U2, port, 0.4 m aft of the windshield");
    CHECK(place_on(s, 3.5, 0.4) == "between U1 and U2, starboard, beside the windshield");
    CHECK(place_on(s, 0.2, 0) == "forward of the ridge, on the centreline");
    CHECK(place_on(s, 8.2, 0.5) == "aft of the ridge, starboard");
}

TEST_CASE("A hollow is told by place, litres, weight and what it reaches") {
    const PondFlag flag{.place = "between U2 and U3, port, 0.4 m aft of the windshield",
                        .volume = 0.0234,
                        .weight = 9810 * 0.0234,
                        .spills = {},
                        .reaches = {"windshield"},
                        .outline = {}};
    CHECK(flag.sentence() ==
          "hollow between U2 and U3, port, 0.4 m aft of the windshield, 23 L, 0.23 kN, reaches the windshield");
}

TEST_CASE("Ponds of a flat cover are found with place, outline and what they reach") {
    const Plan plan = demo("sloop");
    const CoverSurface s = rig_surface(plan, 200, {.spacing = 0.25, .rows = 10});
    const SurfaceState state = load_surface(s, even(s, 900), {Rain::Kind::to_the_brim, 0});
    REQUIRE(state.usable());
    const std::vector<PondFlag> flags = pond_flags(s, state);
    REQUIRE_FALSE(flags.empty());
    double sum = 0;
    for (const PondFlag& flag : flags) {
        CHECK(flag.volume >= 1e-4);
        CHECK_FALSE(flag.outline.empty());
        CHECK(flag.depth > 0);
        sum += flag.volume;
    }
    CHECK(sum <= state.water.volume());
    CHECK(flags.front().volume >= flags.back().volume);
}

TEST_CASE("Slopes by plan area: all of it counted, and the least slope where it is") {
    SurfaceState state;
    // Two triangles at 45 degrees and two level ones of half the area each.
    state.film.nodes = {{0, 0, 0}, {1, 0, 0}, {1, 1, 1}, {0, 1, 1}, {0, 2, 1}, {1, 2, 1}};
    state.film.triangles = {{0, 1, 2}, {0, 2, 3}, {3, 2, 5}, {3, 5, 4}};
    const double degree = std::numbers::pi / 180;
    const SlopeShares s = slope_shares(state, 15 * degree, 40 * degree);
    CHECK(close(s.sheds, 0.5, 1e-12));
    CHECK(close(s.holds, 0.5, 1e-12));
    CHECK(s.partly == 0);
    CHECK(s.least == 0);
    CHECK(s.least_at[1] > 1);
    CHECK(close(slope_shares(state, 15 * degree, 60 * degree).partly, 0.5, 1e-12));
    CHECK_THROWS_AS((void)slope_shares(state, 0.5, 0.4), InputError);
}

TEST_CASE("The ridge of an even fall has no dip until it sags, and dips by less than it sags") {
    const Plan plan = demo("open_boat");
    const CoverSurface s = rig_surface(plan, 200, {.spacing = 0.3, .rows = 6});
    const SurfaceState state = load_surface(s, even(s, 900));
    REQUIRE(state.usable());
    double sag = 0;
    for (const int node : s.layout.stations) {
        sag = std::max(sag, -state.displacement[6 * static_cast<std::size_t>(node) + 2]);
    }
    for (const RidgeDip& dip : ridge_dips(s, state, 0)) CHECK(dip.depth <= sag);
    const std::vector<RidgeFall> falls = ridge_falls(s, state);
    REQUIRE(falls.size() == 3);
    CHECK(falls.front().slope < 0);  // rises from the bow to U1
    CHECK(falls.back().slope > 0);
}

TEST_CASE("How far the support behind a windshield stands over a tight strap") {
    const Plan plan = demo("motor_boat");
    const CoverSurface s = rig_surface(plan, 200, {.spacing = 0.5, .rows = 4});
    const std::vector<SupportOverStrap> over = supports_over_straps(s);
    REQUIRE(over.size() == 1);
    CHECK(over[0].obstacle == "windshield");
    CHECK(over[0].upright == "U2");
    // In feet: the windshield's top at 10.5, 5; the ridge's stern end at 26.75, 5; U2 at 15 stands 6 ft 8 in high.
    CHECK(std::abs(over[0].height - (6 + 8.0 / 12 - 5) * 0.3048) < 0.01);
}

TEST_CASE("The snow at which film first touches lies between none and enough") {
    const Plan plan = demo("sloop");
    const CoverSurface s = rig_surface(plan, 200, {.spacing = 0.4, .rows = 6});
    const std::vector<FirstTouch> touches = first_touches(s, even(s, 600));
    REQUIRE(touches.size() == s.obstacles.size());
    REQUIRE(touches[0].share.has_value());
    const double share = *touches[0].share;
    CHECK(load_surface(s, even(s, 600 * share)).obstacles[0].force() > 0);
    CHECK(load_surface(s, even(s, 600 * (share - 0.02))).obstacles[0].force() == 0);
    CHECK(touches[0].place.find("U2") != std::string::npos);
}

TEST_CASE("How much snow film holds: less strength less, none at all, and no shape where water has no end") {
    const Plan plan = demo("sloop");
    const CoverSurface s = rig_surface(plan, 200, {.spacing = 0.4, .rows = 6});
    REQUIRE(s.state.usable());
    CHECK(close(s.strength, in_Pa(plan.film.strength.value) * in_m(plan.film.thickness.value), 1e-12));
    const auto greatest = [](const SurfaceState& state) {
        double pull = 0;
        for (const FilmForces& f : state.triangles) pull = std::max(pull, f.first);
        return pull;
    };
    const double unloaded = greatest(s.state);
    const double loaded = greatest(load_surface(s, even(s, 600)));
    REQUIRE(loaded > 1.5 * unloaded);

    const FilmLimit strong = film_limit(s, even(s, 600), 1.001 * loaded);
    CHECK(strong.end == FilmLimit::End::none);
    CHECK(strong.held == 1);
    CHECK_FALSE(strong.share.has_value());

    const double strength = 0.5 * (unloaded + loaded);
    const FilmLimit torn = film_limit(s, even(s, 600), strength);
    REQUIRE(torn.end == FilmLimit::End::torn);
    CHECK(torn.status == SurfaceStatus::converged);
    CHECK(*torn.share - torn.held <= 0.01);
    CHECK(greatest(load_surface(s, even(s, 600 * torn.held))) < strength);
    CHECK(greatest(load_surface(s, even(s, 600 * *torn.share))) >= strength);
    CHECK(torn.sentence.find("film " + torn.place + ", tears at 0.") == 0);
    CHECK_FALSE(torn.place.empty());
    CHECK(film_limit(s, even(s, 600), 0.5 * (unloaded + strength)).held <= torn.held);

    const FilmLimit none = film_limit(s, even(s, 600), 0.5 * unloaded);
    CHECK(none.end == FilmLimit::End::torn);
    CHECK(none.held == 0);
    CHECK(*none.share == 0);

    CHECK_THROWS_AS((void)film_limit(s, even(s, 600), 0), InputError);
    CHECK_THROWS_AS((void)film_limit(s, even(s, 600), std::numeric_limits<double>::infinity()), InputError);
    CHECK_THROWS_AS((void)film_limit(s, even(s, 600), 1000, {}, 0), InputError);
    CHECK_THROWS_AS((void)film_limit(s, even(s, -1), 1000), InputError);
}

TEST_CASE("Water that has no end is told with its place and the share of the snow that still has an equilibrium") {
    const Plan plan = demo("sloop");
    CoverSurface s = rig_surface(plan, 50, {.spacing = 0.4, .rows = 6});
    REQUIRE(s.state.usable());
    s.stiffness *= 0.1;
    s.tension = 5;
    const Rain endless{Rain::Kind::to_the_brim, 0};
    const SurfaceState whole = load_surface(s, even(s, 200), endless);
    CHECK(whole.status == SurfaceStatus::growing);
    CHECK(whole.place.find("between bow and U1") == 0);
    CHECK(whole.message.find(whole.place) != std::string::npos);
    const FilmLimit limit = film_limit(s, even(s, 200), 1e6, endless);
    REQUIRE(limit.end == FilmLimit::End::no_shape);
    CHECK(limit.status != SurfaceStatus::converged);
    CHECK_FALSE(limit.place.empty());
    CHECK(limit.sentence.find("no equilibrium at ") == 0);
    CHECK(*limit.share - limit.held <= 0.01);
    CHECK(load_surface(s, even(s, 200 * limit.held), endless).usable());
    CHECK_FALSE(load_surface(s, even(s, 200 * *limit.share), endless).usable());
}
