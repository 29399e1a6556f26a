// SPDX-License-Identifier: BSD-3-Clause
// Legs of cross straps with film on them (CoverState::legs), against film as a surface.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <string>

#include "close.hpp"
#include "coverframe/film/cover.hpp"
#include "coverframe/film/surface.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/units/crossing.hpp"
#include "film/cover_solver.hpp"

using namespace coverframe;

namespace {

Plan demo(const std::string& name) {
    return read_plan_file(std::string(COVERFRAME_SOURCE_FOLDER) + "/examples/plans/" + name + ".json");
}

/// The greatest pull on each leg of a surface; legs are in pieces there.
std::map<std::string, double> pulls_of(const CoverSurface& surface, const SurfaceState& state) {
    std::map<std::string, double> pulls;
    for (const CrossStrapPart& strap : surface.layout.cross_straps) {
        for (const int m : strap.members) {
            const auto i = static_cast<std::size_t>(m);
            double& pull = pulls[surface.layout.frame.members[i].name];
            pull = std::max(pull, state.members[i].axial_at(0));
        }
    }
    return pulls;
}

/// Each side with its own snow.
StripLoads snow_on(const Cover& cover, double port, double starboard) {
    StripLoads snow;
    for (const CoverStrip& strip : cover.strips) snow.push_back(strip.side == Side::port ? port : starboard);
    return snow;
}

}  // namespace

// The light leg of a pair is pulled tight by the heavy one, through the top of the upright: with stiff straps to about
// twice what it has without film on the legs.
TEST_CASE("legs under film: as film as a surface has them, on both sides of an uneven load") {
    for (const char* name : {"motor_boat", "open_boat"}) {
        for (const Bound straps : {Bound::low, Bound::high}) {
            const Plan plan = demo(name);
            const double tension = in_N_per_m(plan.film.tension_low.value);
            SurfaceOptions options;
            options.strap_stiffness = straps;
            options.film = Bound::low;
            const CoverSurface surface = rig_surface(plan, tension, options);
            const Rigged rigged = rig(build_cover(plan, {.strap_stiffness = straps}, Bound::low), tension);
            for (const double light : {0.0, 500.0}) {
                const CoverState strips = load_cover(rigged.cover, snow_on(rigged.cover, 500, light));
                REQUIRE(strips.usable());
                CHECK(strips.no_legs.empty());
                const SurfaceState state = load_surface(surface, snow_by_station(surface, {0.0}, {500.0}, {light}));
                REQUIRE(state.usable());
                const std::map<std::string, double> pulls = pulls_of(surface, state);
                REQUIRE(strips.legs.size() == pulls.size());
                for (const LegUnderFilm& leg : strips.legs) {
                    const auto m = static_cast<std::size_t>(leg.member);
                    CAPTURE(name);
                    CAPTURE(light);
                    CAPTURE(rigged.cover.layout.frame.members[m].name);
                    const double pull = pulls.at(rigged.cover.layout.frame.members[m].name);
                    const double ours = std::max(leg.end, strips.frame.members[m].axial_at(0));
                    CHECK(ours > 0.97 * pull);
                    CHECK(ours < 1.4 * pull);
                }
            }
        }
    }
}

TEST_CASE("legs under film: the first equilibrium does not know of them") {
    const Plan plan = demo("motor_boat");
    const Rigged rigged = rig(build_cover(plan), 300);
    const StripLoads snow = snow_on(rigged.cover, 700, 200);
    CoverSolver solver(rigged.cover);
    const CoverState with = solver.load(snow, 1.2, {}, &rigged.state);
    const CoverState without = solver.load(snow, 1.2, {}, &rigged.state, false);
    CHECK(with.legs.size() == 6);
    CHECK(without.legs.empty());
    CHECK(with.frame.displacement == without.frame.displacement);
    CHECK(with.vertical_load == without.vertical_load);
    CHECK(solver.load(snow, 1.2, {}, &rigged.state).legs[3].end == with.legs[3].end);
}

TEST_CASE("legs under film: snow to the other side is the mirror") {
    const Plan plan = demo("sloop");
    const Rigged rigged = rig(build_cover(plan), 200);
    const CoverState one = load_cover(rigged.cover, snow_on(rigged.cover, 600, 100));
    const CoverState other = load_cover(rigged.cover, snow_on(rigged.cover, 100, 600));
    REQUIRE(one.legs.size() == 6);
    for (const LegUnderFilm& leg : one.legs) {
        // Statics of a leg under an even load W with the tension T along its chord: both ends hold half of W.
        const double W = leg.film.load * leg.carries.chord / leg.cosine;
        const double sine = std::sqrt(1 - leg.cosine * leg.cosine);
        CHECK(W > 0);
        CHECK(close(leg.load, W, 1e-12));
        CHECK(close(leg.end, std::hypot(leg.film.tension + 0.5 * W * sine, 0.5 * W * leg.cosine), 1e-12));
    }
    for (std::size_t k = 0; k < 6; k += 2) {
        CHECK(close(one.legs[k].end, other.legs[k + 1].end, 1e-4));
        CHECK(close(one.legs[k + 1].load, other.legs[k].load, 1e-3));
    }
}

// A frame with feet that rub cannot be walked in one with its film: the same equilibrium is found in rounds.
TEST_CASE("legs under film: in one walk as in rounds") {
    std::vector<CoverState> states;
    for (const bool rough : {false, true}) {
        Plan plan = demo("motor_boat");
        for (Upright& upright : std::get<RidgeSupport>(plan.support.structure).uprights) {
            SoftFoot& foot = upright.foot.emplace();
            foot.stiffness = {from_N_per_m(2e5), "invented"};
            const Cited<double> friction{1, "invented"};
            if (rough) foot.friction = FootFriction{friction, friction, {from_N_per_m(1e9), "invented"}};
        }
        const Rigged rigged = rig(build_cover(plan), 200);
        states.push_back(load_cover(rigged.cover, snow_on(rigged.cover, 700, 200)));
        REQUIRE(states.back().legs.size() == 6);
    }
    for (std::size_t k = 0; k < 6; ++k) {
        CHECK(close(states[0].legs[k].end, states[1].legs[k].end, 2e-5));
        CHECK(close(states[0].legs[k].load, states[1].legs[k].load, 5e-5));
    }
}

TEST_CASE("legs under film: covers of all kinds have legs, and each holds what lies on it") {
    for (const std::string name : {"motor_boat", "sloop", "open_boat", "as_found"}) {
        for (const double stiffer : {0.2, 1.0, 5.0}) {
            for (const double tension : {100.0, 200.0, 600.0}) {
                Plan plan = demo(name);
                for (StrapKind& strap : plan.straps) strap.stiffness_low.value = strap.stiffness_low.value * stiffer;
                const Rigged rigged = rig(build_cover(plan), tension);
                REQUIRE(rigged.state.usable());
                for (const double snow : {50.0, 500.0, 2000.0}) {
                    CAPTURE(name);
                    CAPTURE(stiffer);
                    CAPTURE(tension);
                    CAPTURE(snow);
                    const CoverState state = load_cover(rigged.cover, snow_on(rigged.cover, snow, 0.5 * snow));
                    if (!state.usable()) continue;
                    CHECK(state.no_legs.empty());
                    for (const LegUnderFilm& leg : state.legs) {
                        const double l = leg.carries.chord;
                        CHECK(close_abs(8 * leg.film.sag * leg.film.tension / (l * l), leg.film.load,
                                        1e-6 * (1 + leg.film.load)));
                        CHECK(leg.film.tension >= leg.carries.initial);
                    }
                }
            }
        }
    }
}
