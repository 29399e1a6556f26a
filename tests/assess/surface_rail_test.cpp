// SPDX-License-Identifier: BSD-3-Clause
#include "assess/surface_rail.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <utility>

#include "close.hpp"
#include "coverframe/film/cover.hpp"
#include "coverframe/frame/pretension.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/units/crossing.hpp"
#include "plans.hpp"

using namespace coverframe;
using assess_detail::between_ends;
using assess_detail::on_top;
using assess_detail::rail_pulls;
using checks_detail::RailPull;
using checks_detail::RailPulls;

namespace {

Plan demo(const std::string& name) {
    return read_plan_file(std::string(COVERFRAME_SOURCE_FOLDER) + "/examples/plans/" + name + ".json");
}

std::size_t at(int i) { return static_cast<std::size_t>(i); }

double size(const std::array<double, 3>& force) { return std::hypot(force[0], force[1], force[2]); }

std::array<double, 3> sum_of(const RailPulls& pulls) {
    std::array<double, 3> sum{};
    for (const auto& side : pulls) {
        for (const RailPull& p : side) {
            for (std::size_t d = 0; d < 3; ++d) sum[d] += p.force[d] * p.length;
        }
    }
    return sum;
}

double greatest(const RailPulls& pulls) {
    double most = 0;
    for (const auto& side : pulls) {
        for (const RailPull& p : side) most = std::max(most, size(p.force));
    }
    return most;
}

/// More on one side than on the other, and more aft.
std::vector<double> uneven(const CoverSurface& surface, int heavy) {
    std::vector<double> snow;
    for (const auto& t : surface.cover.mesh.triangles) {
        double x = 0, y = 0;
        for (const int n : t) {
            x += surface.cover.mesh.nodes[at(n)][0] / 3;
            y += surface.cover.mesh.nodes[at(n)][1] / 3;
        }
        snow.push_back(500 * (heavy * y > 0 ? 1 : 0.4) * (0.5 + 0.05 * x));
    }
    return snow;
}

CoverSurface rigged(const Plan& plan, int rows) {
    return rig_surface(plan, in_N_per_m(plan.film.tension_low.value),
                       {.spacing = 2.4 / rows, .rows = rows, .film = Bound::low});
}

}  // namespace

TEST_CASE("rail_pulls: all that the film pulls at the rail, which with the rest of what holds it bears the load") {
    for (const char* name : {"motor_boat", "sloop"}) {  // the sloop's film rests on straps and on its hatch
        CAPTURE(name);
        const Plan plan = demo(name);
        const CoverSurface s = rigged(plan, 8);
        const SurfaceState state = load_surface(s, uneven(s, 1), {Rain::Kind::to_the_brim, 0});
        REQUIRE_MESSAGE(state.usable(), state.message);
        const std::array<double, 3> at_rail = sum_of(rail_pulls(s, state));
        std::array<double, 3> on_boat{};
        for (const auto& force : state.film_on_boat) {
            for (std::size_t d = 0; d < 3; ++d) on_boat[d] += force[d];
        }
        for (std::size_t d = 0; d < 3; ++d) CHECK(close_abs(at_rail[d], on_boat[d], 1e-9 * state.vertical_load));
        // What the rail does not bear goes into the frame, with the frame's own weight, or on to obstacles.
        double other = state.on_straps;
        for (const auto& force : state.film_on_frame) other -= force[2];
        const FrameLoads weight = self_weight(s.layout.frame, 1.0);
        for (std::size_t i = 2; i < weight.force.size(); i += 3) other -= weight.force[i];
        for (const EdgeState& edge : state.obstacles) other += edge.force();
        CHECK(close(other - at_rail[2], state.vertical_reaction, 1e-6));
        CHECK(close(other - at_rail[2], state.vertical_load, 1e-6));
        CHECK(std::abs(at_rail[2]) > 0.01 * state.vertical_load);
        CHECK(size(at_rail) > 0.1 * state.vertical_load);
    }
}

TEST_CASE("rail_pulls: the pieces cover the rail once, whatever the mesh") {
    const Plan plan = demo("open_boat");
    const double stem = in_m(plan.boat.rail.front().x);
    const double transom = in_m(plan.boat.rail.back().x);
    for (const int rows : {6, 12, 24}) {
        CAPTURE(rows);
        const CoverSurface s = rigged(plan, rows);
        REQUIRE(s.cover.rails.size() == 1);
        REQUIRE(s.cover.rails[0].front() == s.cover.rails[0].back());
        const RailPulls pulls = rail_pulls(s, s.state);
        for (const auto& side : pulls) {
            std::vector<RailPull> pieces = side;
            std::ranges::stable_sort(pieces, {}, &RailPull::from);
            double x = stem, across = 0;
            for (const RailPull& p : pieces) {
                CHECK(close_abs(p.from, x, 1e-9));
                CHECK(p.length <= 0.45);
                x = p.to;
                if (p.from == p.to)
                    across += p.length;
                else
                    CHECK(close(p.length, p.to - p.from, 1e-12));
            }
            CHECK(close(x, transom, 1e-9));
            CHECK(close(across, in_m(plan.boat.rail.back().half_breadth), 1e-9));
        }
        CHECK(pulls[0].size() == 20);  // 1 forward of the ridge, 16 beside it, 1 aft of it, 2 across the transom
        CHECK(between_ends(s, pulls)[0].size() == 16);
        // Neighbours on the rail are neighbours in the film.
        std::set<std::pair<int, int>> edges;
        for (const auto& t : s.cover.mesh.triangles) {
            for (std::size_t i = 0; i < 3; ++i) edges.insert(std::minmax(t[i], t[(i + 1) % 3]));
        }
        const std::vector<int>& line = s.cover.rails[0];
        for (std::size_t i = 1; i < line.size(); ++i) CHECK(edges.contains(std::minmax(line[i - 1], line[i])));
    }
}

TEST_CASE("rail_pulls: snow mirrored, pulls mirrored") {
    const CoverSurface s = rigged(demo("motor_boat"), 8);
    const SurfaceState starboard = load_surface(s, uneven(s, 1));
    const SurfaceState port = load_surface(s, uneven(s, -1));
    REQUIRE(starboard.usable());
    REQUIRE(port.usable());
    const RailPulls a = rail_pulls(s, starboard);
    const RailPulls b = rail_pulls(s, port);
    CHECK(size(sum_of(a)) > 0);
    double uneven_by = 0;
    for (const std::size_t side : {0U, 1U}) {
        std::vector<RailPull> here = a[side], there = b[1 - side];
        for (auto* pieces : {&here, &there}) {
            std::ranges::stable_sort(*pieces, {}, [](const RailPull& p) { return std::pair{p.from, size(p.force)}; });
        }
        REQUIRE(here.size() == there.size());
        for (std::size_t i = 0; i < here.size(); ++i) {
            CHECK(close_abs(here[i].from, there[i].from, 1e-9));
            CHECK(close_abs(here[i].force[0], there[i].force[0], 0.01));
            CHECK(close_abs(here[i].force[1], -there[i].force[1], 0.01));
            CHECK(close_abs(here[i].force[2], there[i].force[2], 0.01));
        }
        for (std::size_t i = 0; i < a[side].size(); ++i) {
            uneven_by = std::max(uneven_by, std::abs(size(a[side][i].force) - size(b[side][i].force)));
        }
    }
    CHECK(uneven_by > 100);  // otherwise the mirror shows nothing
}

// Measured at 12, 24 and 48 rows: pieces 532, 550, 548 N/m, single nodes 569, 632, 667.
TEST_CASE("rail_pulls: the greatest pull settles as the mesh is refined, that of single nodes does not") {
    const Plan plan = demo("open_boat");
    std::vector<double> pieces, nodes;
    for (const int rows : {12, 24}) {
        const CoverSurface s = rigged(plan, rows);
        const SurfaceState state = load_surface(s, std::vector<double>(s.cover.mesh.triangles.size(), 400));
        REQUIRE(state.usable());
        pieces.push_back(greatest(rail_pulls(s, state)));
        const std::vector<int>& line = s.cover.rails.front();
        double most = 0;
        for (std::size_t i = 1; i + 1 < line.size(); ++i) {
            const auto length = [&](std::size_t k) {
                const auto& a = s.cover.mesh.nodes[at(line[k])];
                const auto& b = s.cover.mesh.nodes[at(line[k + 1])];
                return std::hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
            };
            most = std::max(most, size(state.film_on_boat[at(line[i])]) / (0.5 * (length(i - 1) + length(i))));
        }
        nodes.push_back(most);
    }
    CHECK(close(pieces[0], pieces[1], 0.04));
    CHECK(nodes[1] > 1.08 * nodes[0]);
}

// Film over a rail and a ridge that are level and straight is a row of strips: stiffer by 1/(1 - nu^2), for it cannot
// narrow along the boat (the plate of elasticity, plane strain), which the strips leave out.
TEST_CASE("rail_pulls: away from the ends of a long level cover the surface pulls as strips do") {
    const Plan plan = plans::long_level_cover();
    const CoverSurface s = rigged(plan, 16);
    REQUIRE(s.cover.rails.size() == 2);  // held along both ends
    const SurfaceState state = load_surface(s, std::vector<double>(s.cover.mesh.triangles.size(), 400));
    REQUIRE_MESSAGE(state.usable(), state.message);
    const Rigged strips = rig(build_cover(plan, {}, Bound::low), in_N_per_m(plan.film.tension_low.value));
    const CoverState loaded = load_cover(strips.cover, StripLoads(strips.cover.strips.size(), 400));
    REQUIRE(loaded.usable());
    const RailPulls by_surface = rail_pulls(s, state);
    const RailPulls by_strips = checks_detail::rail_pulls(strips.cover, loaded);
    int compared = 0;
    for (const std::size_t side : {0U, 1U}) {
        for (const RailPull& p : by_surface[side]) {
            const double middle = 0.5 * (p.from + p.to);
            if (middle < 3 || middle > 6) continue;
            const auto strip = std::ranges::find_if(
                by_strips[side], [&](const RailPull& one) { return one.from <= middle && one.to > middle; });
            REQUIRE(strip != by_strips[side].end());
            CAPTURE(middle);
            CHECK(close(size(p.force), size(strip->force), 0.05));
            CHECK(std::abs(p.force[0]) < 0.03 * size(p.force));
            ++compared;
        }
    }
    CHECK(compared == 20);
    CHECK(between_ends(s, by_surface)[1].size() == by_surface[1].size());
}

TEST_CASE("on_top: the strips of the situation, and the factor times what the surface pulls more") {
    const RailPulls surface{
        {{{0, 1, 1, {0, 60, 80}}, {1, 2, 1, {0, 30, 40}}, {2, 2, 1, {-9, 0, 0}}, {0, 2, 2, {}}}, {}}};
    const RailPulls strips{{{{0, 0.4, 0.4, {0, 0, 90}}, {0.4, 1.5, 1.1, {0, 0, 90}}, {1.5, 2, 0.5, {0, 0, 90}}}, {}}};
    const RailPulls judged{
        {{{0, 0.4, 0.4, {0, 120, 0}}, {0.4, 1.5, 1.1, {0, 120, 0}}, {1.5, 2, 0.5, {0, 200, 0}}}, {}}};
    const RailPulls raised = on_top(surface, {strips, judged, 1.5, 7});
    CHECK(close(size(raised[0][0].force), 120 + 1.5 * (100 - 90), 1e-12));
    CHECK(close(raised[0][0].force[1] / raised[0][0].force[2], 0.75, 1e-12));  // its own direction
    CHECK(close(size(raised[0][1].force), 160 + 1.5 * (50 - 90), 1e-12));
    CHECK(close(size(raised[0][2].force), 1.5 * 9 + 7, 1e-12));  // no strips across the boat
    CHECK(size(raised[0][3].force) == 0);
    // Never less than it pulls under the snow as it is.
    const RailPulls light = on_top(surface, {strips, strips, 1.5, 7});
    CHECK(close(size(light[0][1].force), 50, 1e-12));
}
