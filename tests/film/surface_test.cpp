// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/surface.hpp"

#include <doctest/doctest.h>

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <string>
#include <utility>

#include "close.hpp"
#include "coverframe/base/error.hpp"
#include "coverframe/film/locator.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/units/crossing.hpp"

using namespace coverframe;

namespace {

Plan demo(const std::string& name) {
    return read_plan_file(std::string(COVERFRAME_SOURCE_FOLDER) + "/examples/plans/" + name + ".json");
}

SurfaceOptions coarse() { return {.spacing = 0.35, .rows = 6}; }

std::vector<double> even(const CoverSurface& surface, double load) {
    return std::vector<double>(surface.cover.mesh.triangles.size(), load);
}

/// The node of the other side, by its drawn place.
std::vector<std::size_t> mirror_of(const TriangleMesh& mesh) {
    std::vector<std::size_t> other(mesh.nodes.size());
    for (std::size_t n = 0; n < mesh.nodes.size(); ++n) {
        const auto& a = mesh.nodes[n];
        other[n] = static_cast<std::size_t>(
            std::min_element(mesh.nodes.begin(), mesh.nodes.end(),
                             [&](const auto& b, const auto& c) {
                                 return std::hypot(b[0] - a[0], b[1] + a[1], b[2] - a[2]) <
                                        std::hypot(c[0] - a[0], c[1] + a[1], c[2] - a[2]);
                             }) -
            mesh.nodes.begin());
    }
    return other;
}

std::vector<double> on_side(const CoverSurface& surface, double load, int side) {
    std::vector<double> snow;
    for (const auto& t : surface.cover.mesh.triangles) {
        double y = 0;
        for (const int n : t) y += surface.cover.mesh.nodes[static_cast<std::size_t>(n)][1];
        snow.push_back(y * side > 0 ? load : 0);
    }
    return snow;
}

}  // namespace

TEST_CASE("Mesh of a cover: its own mirror, the area of the plan, rails held") {
    for (const char* name : {"motor_boat", "sloop", "open_boat", "as_found"}) {
        CAPTURE(name);
        const Plan plan = demo(name);
        const Layout layout = lay_out(plan, {.station_spacing = from_m(0.3)});
        const CoverMesh cover = mesh_cover(plan, layout, 8);
        double area = 0;
        for (std::size_t t = 0; t < cover.mesh.triangles.size(); ++t) area += plan_area(cover.mesh, t);
        double expected = 0;  // between the rails, as the columns see them
        for (std::size_t i = 1; i < plan.boat.rail.size(); ++i) {
            const auto& a = plan.boat.rail[i - 1];
            const auto& b = plan.boat.rail[i];
            expected += in_m(b.x - a.x) * (in_m(a.half_breadth) + in_m(b.half_breadth));
        }
        CHECK(close(area, expected, 0.01));
        const std::vector<std::size_t> other = mirror_of(cover.mesh);
        for (std::size_t n = 0; n < other.size(); ++n) {
            const auto& a = cover.mesh.nodes[n];
            const auto& b = cover.mesh.nodes[other[n]];
            CHECK(std::hypot(a[0] - b[0], a[1] + b[1], a[2] - b[2]) < 1e-12);
            CHECK(cover.held[n] == cover.held[other[n]]);
        }
        const std::vector<bool> border = border_of(cover.mesh);
        for (std::size_t n = 0; n < border.size(); ++n) {
            CHECK(cover.outlet[n] == border[n]);
            if (cover.held[n]) CHECK(border[n]);
        }
        std::set<std::array<std::size_t, 3>> here, there;
        for (const auto& t : cover.mesh.triangles) {
            std::array<std::size_t, 3> own{}, mirrored{};
            for (std::size_t k = 0; k < 3; ++k) {
                own[k] = static_cast<std::size_t>(t[k]);
                mirrored[k] = other[own[k]];
            }
            std::ranges::sort(own);
            std::ranges::sort(mirrored);
            here.insert(own);
            there.insert(mirrored);
        }
        CHECK(here == there);
    }
}

TEST_CASE("A fine mesh has no slivers where its fans come together") {
    for (const char* name : {"motor_boat", "sloop", "open_boat", "as_found"}) {
        CAPTURE(name);
        const Plan plan = demo(name);
        const Layout layout = lay_out(plan, {.station_spacing = from_m(0.06)});
        const CoverMesh cover = mesh_cover(plan, layout, 30);
        double least = 1;  // height over the longest side
        for (const auto& t : cover.mesh.triangles) {
            double longest = 0;
            std::array<Eigen::Vector3d, 3> corner;
            for (std::size_t k = 0; k < 3; ++k)
                corner[k] = Eigen::Vector3d(cover.mesh.nodes[static_cast<std::size_t>(t[k])].data());
            for (std::size_t k = 0; k < 3; ++k)
                longest = std::max(longest, (corner[k] - corner[(k + 1) % 3]).squaredNorm());
            least = std::min(least, (corner[1] - corner[0]).cross(corner[2] - corner[0]).norm() / longest);
        }
        CHECK(least > 0.05);
    }
}

TEST_CASE("Every demo plan with film as a surface: loads are carried, the film is shrunk as asked") {
    for (const char* name : {"motor_boat", "sloop", "open_boat", "as_found"}) {
        CAPTURE(name);
        const Plan plan = demo(name);
        const CoverSurface s = rig_surface(plan, 200, coarse());
        REQUIRE_MESSAGE(s.state.usable(), s.state.message);
        CHECK(close(s.state.vertical_reaction, s.state.vertical_load, 1e-6));
        double pull = 0, area = 0;
        for (std::size_t t = 0; t < s.state.triangles.size(); ++t) {
            const double share = plan_area(s.state.film, t);
            pull += share * 0.5 * (s.state.triangles[t].first + s.state.triangles[t].second);
            area += share;
        }
        // A coarse mesh finds its shape by height alone; sliding within it then evens out a few per cent.
        CHECK(close(pull / area, 200, 0.05));
        const SurfaceState loaded = load_surface(s, even(s, 500));
        REQUIRE_MESSAGE(loaded.usable(), loaded.message);
        CHECK(close(loaded.vertical_reaction, loaded.vertical_load, 1e-6));
        CHECK(loaded.vertical_load > s.state.vertical_load + 500 * 0.99 * area);
    }
}

TEST_CASE("Snow on one side mirrors, on both sides is the same on both") {
    const Plan plan = demo("motor_boat");
    const CoverSurface s = rig_surface(plan, 200, coarse());
    REQUIRE(s.state.usable());
    const std::vector<std::size_t> other = mirror_of(s.cover.mesh);
    const SurfaceState port = load_surface(s, on_side(s, 600, -1));
    const SurfaceState starboard = load_surface(s, on_side(s, 600, 1));
    const SurfaceState both = load_surface(s, even(s, 600));
    REQUIRE(port.usable());
    REQUIRE(starboard.usable());
    REQUIRE(both.usable());
    for (std::size_t n = 0; n < other.size(); ++n) {
        CHECK(std::abs(port.film.nodes[n][2] - starboard.film.nodes[other[n]][2]) < 1e-5);
        CHECK(std::abs(port.film.nodes[n][1] + starboard.film.nodes[other[n]][1]) < 1e-5);
        CHECK(std::abs(both.film.nodes[n][2] - both.film.nodes[other[n]][2]) < 1e-5);
    }
}

TEST_CASE("Film presses on the ridge and never pulls it up: over an upright that is too low it lifts off") {
    Plan plan = demo("motor_boat");
    const auto greatest_lift = [](const SurfaceState& state) {
        double greatest = 0;
        for (const RidgeLift& lift : state.lifts) greatest = std::max(greatest, lift.gap);
        return greatest;
    };
    const auto require_pressed = [](const CoverSurface& s, const SurfaceState& state) {
        for (const int node : s.cover.frame_node) {
            if (node >= 0) CHECK(state.film_on_frame[static_cast<std::size_t>(node)][2] <= 0.01);
        }
        CHECK(close(state.vertical_reaction, state.vertical_load, 1e-6));
    };
    const CoverSurface straight = rig_surface(plan, 150);
    REQUIRE(straight.state.usable());
    CHECK(straight.loose.empty());
    CHECK(load_surface(straight, on_side(straight, 900, 1)).lifts.empty());

    Upright& low = std::get<RidgeSupport>(plan.support.structure).uprights[1];
    low.top = from_m(1.3);  // some 0.7 m lower than its neighbours
    const CoverSurface s = rig_surface(plan, 150);
    REQUIRE_MESSAGE(s.state.usable(), s.state.message);
    CHECK_FALSE(s.loose.empty());
    require_pressed(s, s.state);
    double before = greatest_lift(s.state);
    CHECK(before > 0.05);
    for (const RidgeLift& lift : s.state.lifts) CHECK(std::abs(lift.x - in_m(low.x)) < 0.5);
    for (const double snow : {300.0, 900.0, 2000.0}) {
        CAPTURE(snow);
        const SurfaceState state = load_surface(s, even(s, snow));
        REQUIRE_MESSAGE(state.usable(), state.message);
        require_pressed(s, state);
        CHECK(greatest_lift(state) < before);  // snow presses the film back
        before = greatest_lift(state);
        require_pressed(s, load_surface(s, on_side(s, snow, 1)));
    }
    CoverSurface wrong = s;
    wrong.loose.push_back(-1);
    CHECK_THROWS_AS((void)load_surface(wrong, even(s, 100)), InputError);
    wrong.loose.back() = static_cast<int>(s.cover.mesh.nodes.size()) - 1;
    CHECK_THROWS_AS((void)load_surface(wrong, even(s, 100)), InputError);
}

TEST_CASE("Under snow of the high mountains a fan snaps over and a ridge buckles; what follows is told") {
    for (const auto& heavy : {std::pair{"motor_boat", 6000.0}, std::pair{"as_found", 12000.0}}) {
        const char* name = heavy.first;
        const double snow = heavy.second;
        CAPTURE(name);
        const Plan plan = demo(name);
        const CoverSurface s = rig_surface(plan, 150);
        REQUIRE(s.state.usable());
        CHECK(s.state.snaps.empty());
        CHECK(load_surface(s, even(s, 900)).snaps.empty());
        const SurfaceState state = load_surface(s, even(s, snow));
        REQUIRE_MESSAGE(state.usable(), state.message);
        CHECK_FALSE(state.snaps.empty());
        CHECK(close(state.vertical_reaction, state.vertical_load, 1e-6));
    }
}

TEST_CASE("More snow never lifts the film off and never lightens an upright") {
    const Plan plan = demo("open_boat");
    const CoverSurface s = rig_surface(plan, 200, coarse());
    REQUIRE(s.state.usable());
    double push = 0, sag = 0;
    for (const double load : {100.0, 300.0, 600.0, 1200.0}) {
        const SurfaceState state = load_surface(s, even(s, load));
        REQUIRE(state.usable());
        const double now = -state.members[static_cast<std::size_t>(s.layout.uprights[0].member)].axial;
        CHECK(now > push);
        push = now;
        double deepest = 0;
        for (std::size_t n = 0; n < state.film.nodes.size(); ++n) {
            deepest = std::max(deepest, s.state.film.nodes[n][2] - state.film.nodes[n][2]);
        }
        CHECK(deepest > sag);
        sag = deepest;
    }
}

TEST_CASE("Film that comes down on an obstacle rests on it, and no lower") {
    const Plan plan = demo("sloop");
    const CoverSurface s = rig_surface(plan, 200, coarse());
    REQUIRE(s.state.usable());
    for (const EdgeState& edge : s.state.obstacles) CHECK(edge.force() == 0);
    const SurfaceState state = load_surface(s, even(s, 900));
    REQUIRE(state.usable());
    const EdgeState& hatch = state.obstacles.front();
    CHECK(hatch.name == "companionway hatch");
    CHECK(hatch.force() > 0);
    CHECK(hatch.least_gap() > -0.02);
    for (const EdgePoint& point : hatch.points) {
        CHECK((point.force > 0) == (point.gap < 0));
        CHECK(close_abs(point.force * point.length, std::max(0.0, -1e5 * point.gap), 1e-6));
    }
    CHECK(close(state.vertical_reaction, state.vertical_load, 1e-6));
}

TEST_CASE("An obstacle bears on the film that is over it now, not on what was drawn there") {
    const Plan plan = demo("sloop");
    const CoverSurface s = rig_surface(plan, 200, coarse());
    const SurfaceState state = load_surface(s, even(s, 900));
    REQUIRE(state.usable());
    const Locator now(state.film);
    const Locator drawn(s.cover.mesh);
    double slid = 0;
    for (const EdgeState& edge : state.obstacles) {
        for (const EdgePoint& point : edge.points) {
            const auto over = now.at(point.place[0], point.place[1]);
            REQUIRE(over.has_value());
            // Within a millimetre in plan, on film not steeper than 60 degrees.
            CHECK(close_abs(point.gap, over->height(state.film) - point.place[2], 0.0018));
            const auto then = drawn.at(point.place[0], point.place[1])->place(state.film);
            slid = std::max(slid, std::hypot(then[0] - point.place[0], then[1] - point.place[1]));
        }
    }
    CHECK(slid > 0.005);
}

TEST_CASE("Film that has shrunk lies on its cross straps, each point over the point it shrank on to") {
    for (const char* name : {"motor_boat", "sloop", "as_found"}) {
        CAPTURE(name);
        const Plan plan = demo(name);
        const CoverSurface s = rig_surface(plan, 200, coarse());
        REQUIRE(s.state.usable());
        REQUIRE(!s.on_straps.empty());
        CHECK(s.state.on_straps > 0);
        for (const StrapRest& rest : s.on_straps) {
            const auto n = static_cast<std::size_t>(rest.frame_node);
            std::array<double, 3> node = s.layout.frame.nodes[n].at;
            for (std::size_t d = 0; d < 3; ++d) node[d] += s.state.displacement[6 * n + d];
            const std::array<double, 3> film = rest.film.place(s.state.film);
            CHECK(std::hypot(film[0] - node[0], film[1] - node[1]) < 0.003);
            CHECK(film[2] - node[2] > -0.001);
        }
    }
}

TEST_CASE("Water stays where the film is flat, adds its weight, and limited water adds no more than fell") {
    const Plan plan = demo("sloop");
    const CoverSurface s = rig_surface(plan, 200, coarse());
    REQUIRE(s.state.usable());
    const SurfaceState dry = load_surface(s, even(s, 900));
    const SurfaceState full = load_surface(s, even(s, 900), {Rain::Kind::to_the_brim, 0});
    const SurfaceState some = load_surface(s, even(s, 900), {Rain::Kind::depth, 1e-4});
    REQUIRE(full.usable());
    REQUIRE(some.usable());
    CHECK(full.water.volume() > 0);
    CHECK(close(full.vertical_load - dry.vertical_load, 9810 * full.water.volume(), 1e-3));
    CHECK(close(full.vertical_reaction, full.vertical_load, 1e-4));
    double area = 0;
    for (std::size_t t = 0; t < s.cover.mesh.triangles.size(); ++t) area += plan_area(s.cover.mesh, t);
    CHECK(close(some.water.volume() + some.water.run_off, 1e-4 * area, 1e-9));
    CHECK(some.water.volume() <= full.water.volume() * (1 + 1e-3));
}

TEST_CASE("What cannot be a surface is refused, what does not stand is said") {
    const Plan plan = demo("open_boat");
    CHECK_THROWS_AS((void)rig_surface(plan, 0), InputError);
    CHECK_THROWS_AS((void)rig_surface(plan, 200, {.spacing = 5}), InputError);
    CHECK_THROWS_AS((void)rig_surface(plan, 200, {.rows = 1}), InputError);
    const CoverSurface s = rig_surface(plan, 200, coarse());
    CHECK_THROWS_AS((void)load_surface(s, {1.0}), InputError);
    CHECK_THROWS_AS((void)load_surface(s, even(s, -1)), InputError);
    // Aft of the ridge the plan draws no film; the fan of the surface is there.
    Plan high = demo("sloop");
    high.boat.obstacles.front().name = "tiller head";
    high.boat.obstacles.front().outline = {{from_m(10.5), from_m(0), from_m(3)}};
    try {
        (void)rig_surface(high, 200, coarse());
        FAIL("an obstacle through the film was taken");
    } catch (const InputError& error) {
        CHECK(error.code() == "film.surface.obstacle");
        CHECK(std::string(error.what()).find("tiller head") != std::string::npos);
        CHECK(std::string(error.what()).find("aft of the ridge, on the centreline") != std::string::npos);
    }
}

TEST_CASE("A plan that no cover can be made of is refused with code, path and place") {
    struct Bad {
        const char* code;
        const char* path;
        const char* place;
        void (*spoil)(Plan&);
        double tension = 200;
    };
    const std::vector<Bad> all{
        {"boat.rail.breadth", "/boat/rail/1/half_breadth",
         "at x = ", [](Plan& p) { p.boat.rail[1].half_breadth = Length{}; }},
        {"plan.range", "/boat/rail/1/half_breadth", "half_breadth",
         [](Plan& p) { p.boat.rail[1].half_breadth = from_m(-0.5); }},
        {"support.ridge.below_rail", "/support/ridge/bow/z",
         "at x = ", [](Plan& p) { std::get<RidgeSupport>(p.support.structure).ridge.bow.z = from_m(-1); }},
        {"support.ridge.off_boat", "/support/ridge/stern/x", "x",
         [](Plan& p) { std::get<RidgeSupport>(p.support.structure).ridge.stern.x = from_m(40); }},
        {"plan.range", "/film/thickness/value", "thickness", [](Plan& p) { p.film.thickness.value = Length{}; }},
        {"film.surface.stretch", "/film_tension", "too short to reach the rail", [](Plan&) {}, 1e5},
        {"film.surface.range", "/film_tension", "over 0", [](Plan&) {}, std::numeric_limits<double>::quiet_NaN()},
    };
    for (const Bad& bad : all) {
        CAPTURE(bad.code);
        Plan plan = demo("open_boat");
        bad.spoil(plan);
        try {
            (void)rig_surface(plan, bad.tension, coarse());
            FAIL("taken");
        } catch (const InputError& error) {
            const auto& problems = error.problems();
            const auto named = std::find_if(problems.begin(), problems.end(), [&](const Problem& p) {
                return p.code == bad.code && p.where == bad.path;
            });
            CHECK_MESSAGE(named != problems.end(), problems.front().code << " at " << problems.front().where);
            CHECK_MESSAGE(std::string(error.what()).find(bad.place) != std::string::npos, error.what());
        }
    }
    // A surface put together by hand.
    CoverSurface s = rig_surface(demo("open_boat"), 200, coarse());
    s.stiffness = 0;
    CHECK_THROWS_AS((void)load_surface(s, even(s, 100)), InputError);
    s.stiffness = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS((void)load_surface(s, even(s, 100)), InputError);
}

TEST_CASE("A surface changed by hand is refused where it is wrong, never solved to a NaN") {
    struct Bad {
        const char* path;
        void (*spoil)(CoverSurface&);
    };
    const std::vector<Bad> all{
        {"/stiffness", [](CoverSurface& s) { s.stiffness = std::numeric_limits<double>::infinity(); }},
        {"/poisson", [](CoverSurface& s) { s.poisson = 1; }},
        {"/poisson", [](CoverSurface& s) { s.poisson = std::numeric_limits<double>::quiet_NaN(); }},
        {"/tension", [](CoverSurface& s) { s.tension = -1000; }},
        {"/film_weight", [](CoverSurface& s) { s.film_weight = std::numeric_limits<double>::quiet_NaN(); }},
        {"/cover/held", [](CoverSurface& s) { s.cover.held.pop_back(); }},
        {"/cover/outlet", [](CoverSurface& s) { s.cover.outlet.clear(); }},
        {"/cover/frame_node", [](CoverSurface& s) { s.cover.frame_node[3] = 9999; }},
        {"/shape/nodes", [](CoverSurface& s) { s.shape.nodes.pop_back(); }},
        {"/shape/nodes", [](CoverSurface& s) { s.shape.nodes[5][2] = std::numeric_limits<double>::quiet_NaN(); }},
        {"/shape/triangles", [](CoverSurface& s) { s.cover.mesh.triangles[0][0] = 99999; }},
        {"/state/displacement", [](CoverSurface& s) { s.state.displacement.clear(); }},
        {"/obstacles",
         [](CoverSurface& s) { s.obstacles[0].points[0].place[2] = std::numeric_limits<double>::quiet_NaN(); }},
    };
    const Plan plan = demo("open_boat");
    const CoverSurface sound = rig_surface(plan, 200, coarse());
    REQUIRE(sound.state.usable());
    for (const Bad& bad : all) {
        CAPTURE(bad.path);
        CoverSurface s = sound;
        bad.spoil(s);
        try {
            (void)load_surface(s, even(sound, 100));
            FAIL("taken");
        } catch (const InputError& error) {
            CHECK(error.problems().front().where == bad.path);
            CHECK(error.code() == "film.surface.range");
        }
    }
}

TEST_CASE("Options that make no sense are named, and snow no boat ever carried ends in words") {
    const Plan plan = demo("open_boat");
    const auto refused_at = [&](const SurfaceOptions& options) {
        try {
            (void)rig_surface(plan, 200, options);
        } catch (const InputError& error) {
            return error.problems().front().where;
        }
        return std::string("taken");
    };
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(refused_at({.spacing = nan}) == "/options/spacing");
    CHECK(refused_at({.rows = 0}) == "/options/rows");
    CHECK(refused_at({.rows = 201}) == "/options/rows");
    CHECK(refused_at({.force_tolerance = nan}) == "/options/force_tolerance");
    CHECK(refused_at({.force_tolerance = 0}) == "/options/force_tolerance");
    CHECK(refused_at({.force_tolerance = 1}) == "/options/force_tolerance");
    CHECK(refused_at({.max_iterations = 0}) == "/options/max_iterations");
    const CoverSurface s = rig_surface(plan, 200, coarse());
    REQUIRE(s.state.usable());
    const auto unloaded_at = [&](const std::vector<double>& snow, double rain, double factor) {
        try {
            (void)load_surface(s, snow, {Rain::Kind::depth, rain}, factor);
        } catch (const InputError& error) {
            return error.code() == "film.surface.loads" ? error.where() : error.code();
        }
        return std::string("taken");
    };
    CHECK(unloaded_at(even(s, 1e9), 0, 1) == "/snow");
    CHECK(unloaded_at({100}, 0, 1) == "/snow");
    CHECK(unloaded_at(even(s, 100), -0.1, 1) == "/rain");
    CHECK(unloaded_at(even(s, 100), nan, 1) == "/rain");
    CHECK(unloaded_at(even(s, 100), 0, -1) == "/permanent_factor");
    CHECK(unloaded_at(even(s, 100), 0, nan) == "/permanent_factor");
    const SurfaceState state = load_surface(s, even(s, 1e6));
    CHECK((state.usable() || !state.message.empty()));
    for (const auto& node : state.film.nodes) CHECK(std::isfinite(node[2]));
}

TEST_CASE("A steep stern fan that leans over by millimetres sheds: the water is still told") {
    Plan plan = demo("sloop");
    std::get<RidgeSupport>(plan.support.structure).ridge.stern.x = from_m(10.55);  // 50 mm forward of the transom
    const CoverSurface s = rig_surface(plan, 200, {.spacing = 0.3, .rows = 10});
    REQUIRE(s.state.usable());
    const SurfaceState dry = load_surface(s, even(s, 900));
    REQUIRE(dry.usable());
    REQUIRE(folded_triangle(s.cover.mesh, dry.film) >= 0);
    const SurfaceState wet = load_surface(s, even(s, 900), {Rain::Kind::to_the_brim, 0});
    REQUIRE_MESSAGE(wet.usable(), wet.message);
    CHECK(wet.water.volume() > 0);
    CHECK(close(wet.vertical_reaction, wet.vertical_load, 1e-4));
}

TEST_CASE("A status that is no equilibrium names the place") {
    const Plan plan = demo("open_boat");
    CoverSurface s = rig_surface(plan, 200, coarse());
    REQUIRE(s.state.usable());
    s.options.max_iterations = 1;
    const SurfaceState state = load_surface(s, even(s, 900));
    if (!state.usable()) {
        CHECK(state.status == SurfaceStatus::iteration_limit);
        CHECK_FALSE(state.place.empty());
        CHECK(state.message.find(state.place) != std::string::npos);
    }
}
