// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/surface.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <numeric>
#include <utility>

#include "coverframe/base/error.hpp"
#include "coverframe/film/ageing.hpp"
#include "coverframe/film/surface_survey.hpp"
#include "coverframe/frame/pretension.hpp"
#include "coverframe/units/crossing.hpp"
#include "film/kernel/filling.hpp"
#include "film/kernel/wet.hpp"
#include "film/surface_walk.hpp"

namespace coverframe {

namespace {

using Eigen::Index;
using Eigen::Vector3d;
using kernel::SurfaceSystem;

constexpr double edge_spacing = 0.025;  ///< [m]
constexpr double most_leaning = 0.01;   ///< of the plan area, of film that leans over itself [-]
constexpr double most_snow = 1e6;       ///< a hundred metres of water [Pa]
constexpr double most_stretch = 0.05;   ///< of film without snow on it (membrane.hpp) [-]

std::size_t at(int i) { return static_cast<std::size_t>(i); }

Vector3d vector_of(const std::array<double, 3>& a) { return {a[0], a[1], a[2]}; }

double area_of(const TriangleMesh& mesh, std::size_t t) {
    const auto& c = mesh.triangles[t];
    const Vector3d a = vector_of(mesh.nodes[at(c[0])]);
    return 0.5 * (vector_of(mesh.nodes[at(c[1])]) - a).cross(vector_of(mesh.nodes[at(c[2])]) - a).norm();
}

/// Weight of the film by the area of its shape, and a load by plan area, as forces on film nodes.
Eigen::VectorXd film_forces(const CoverSurface& surface, const TriangleMesh& shape, double weight_factor,
                            const std::vector<double>& snow) {
    Eigen::VectorXd force = Eigen::VectorXd::Zero(static_cast<Index>(3 * shape.nodes.size()));
    for (std::size_t t = 0; t < shape.triangles.size(); ++t) {
        double whole = weight_factor * surface.film_weight * area_of(shape, t);
        if (!snow.empty()) whole += snow[t] * plan_area(surface.cover.mesh, t);
        for (const int node : shape.triangles[t]) force(3 * node + 2) -= whole / 3;
    }
    return force;
}

std::vector<EdgeState> edges_of(const Plan& plan) {
    std::vector<EdgeState> edges;
    for (const Obstacle& obstacle : plan.boat.obstacles) {
        EdgeState& edge = edges.emplace_back();
        edge.name = obstacle.name;
        const auto place = [&](std::size_t i) -> std::array<double, 3> {
            const Point& p = obstacle.outline[i];
            return {in_m(p.x), in_m(p.y), in_m(p.z)};
        };
        if (obstacle.outline.size() == 1) edge.points.push_back({place(0), edge_spacing, 0, 0});
        for (std::size_t i = 1; i < obstacle.outline.size(); ++i) {
            const Vector3d a = vector_of(place(i - 1));
            const Vector3d b = vector_of(place(i));
            const int pieces = std::max(1, static_cast<int>(std::ceil((b - a).norm() / edge_spacing)));
            for (int p = 0; p < pieces; ++p) {
                const Vector3d middle = a + (p + 0.5) / pieces * (b - a);
                edge.points.push_back({{middle(0), middle(1), middle(2)}, (b - a).norm() / pieces, 0, 0});
            }
        }
    }
    return edges;
}

/// Keeps the points that lie under the drawn film; refuses those that come through it.
void keep_under(const CoverSurface& surface, std::vector<EdgeState>& edges) {
    const TriangleMesh& film = surface.cover.mesh;
    const Locator locator(film);
    std::vector<Problem> problems;
    for (std::size_t o = 0; o < edges.size(); ++o) {
        std::vector<EdgePoint> under;
        EdgePoint through;
        for (EdgePoint point : edges[o].points) {
            const auto found = locator.at(point.place[0], point.place[1]);
            if (!found) continue;
            point.gap = found->height(film) - point.place[2];
            if (point.gap < through.gap) through = point;
            under.push_back(point);
        }
        edges[o].points = std::move(under);
        if (through.gap < 0) {
            problems.push_back({"film.surface.obstacle", "/boat/obstacles/" + std::to_string(o), edges[o].name,
                                edges[o].name + " stands " + std::to_string(std::lround(-1000 * through.gap)) +
                                    " mm through the film as drawn " +
                                    place_on(surface, through.place[0], through.place[1]) + "; raise the ridge there"});
        }
    }
    if (!problems.empty()) throw InputError(std::move(problems));
}

/// Stresses of the film, forces of the members, and what the film pulls at the frame with.
void fill_forces(const CoverSurface& surface, const SurfaceSystem& system, SurfaceState& state) {
    state.triangles.clear();
    for (std::size_t t = 0; t < state.film.triangles.size(); ++t) {
        const kernel::SheetStress s = system.triangle(t).stress();
        state.triangles.push_back(
            {static_cast<FilmStretch>(s.stretch), s.first, s.second, {s.direction(0), s.direction(1), s.direction(2)}});
    }
    state.members.clear();
    for (std::size_t m = 0; m < surface.layout.frame.members.size(); ++m) state.members.push_back(system.member(m));
    state.film_on_frame.assign(surface.layout.frame.nodes.size(), {});
    state.film_on_boat.assign(state.film.nodes.size(), {});
    for (std::size_t n = 0; n < state.film.nodes.size(); ++n) {
        const int node = surface.cover.frame_node[n];
        if (node < 0 && !surface.cover.held[n]) continue;
        const Vector3d force = system.film_force_on(n);
        (node < 0 ? state.film_on_boat[n] : state.film_on_frame[at(node)]) = {force(0), force(1), force(2)};
    }
}

/// What the film rests on; gives the force of all obstacles [N].
double fill_bearings(const CoverSurface& surface, const SurfaceWalk& walk, SurfaceState& state) {
    const std::vector<kernel::Bearing>& bearings = walk.system().bearings();
    const std::vector<double> gaps = walk.system().gaps();
    state.obstacles = surface.obstacles;
    std::size_t next = 0;
    double on_obstacles = 0;
    for (EdgeState& obstacle : state.obstacles) {
        for (EdgePoint& point : obstacle.points) {
            const double force = bearings[next].force(gaps[next]);
            point.gap = gaps[next++];
            point.force = force / point.length;
            on_obstacles += force;
        }
    }
    state.on_straps = 0;
    for (std::size_t i = 0; i < walk.on_straps().size(); ++i, ++next) {
        state.on_straps += bearings[next].force(gaps[next]);
    }
    for (const int node : walk.loose()) {
        state.film_on_frame[at(bearings[next].frame_node)][2] = -bearings[next].force(gaps[next]);
        if (gaps[next] > 0) state.lifts.push_back({state.film.nodes[at(node)][0], gaps[next]});
        ++next;
    }
    return on_obstacles;
}

/// Everything a state tells beside status and message.
void fill(const CoverSurface& surface, const SurfaceWalk& walk, SurfaceState& state) {
    const SurfaceSystem& system = walk.system();
    state.film = walk.film();
    state.displacement = walk.frame_u();
    fill_forces(surface, system, state);
    state.vertical_reaction = fill_bearings(surface, walk, state);
    for (std::size_t n = 0; n < surface.layout.frame.nodes.size(); ++n) {
        if (surface.layout.frame.nodes[n].held[2]) {
            state.vertical_reaction += system.frame_gradient()(static_cast<Index>(6 * n + 2));
        }
    }
    for (std::size_t f = 0; f < surface.layout.frame.feet.size(); ++f) state.vertical_reaction += system.foot_push(f);
    for (std::size_t n = 0; n < state.film.nodes.size(); ++n) state.vertical_reaction += system.film_reaction(n)(2);
    state.vertical_load = kernel::water_weight * state.water.volume();
    for (Index i = 2; i < system.film_force.size(); i += 3) state.vertical_load -= system.film_force(i);
    for (std::size_t i = 2; i < system.frame_loads.force.size(); i += 3) {
        state.vertical_load -= system.frame_loads.force[i];
    }
}

void require_options(double tension, const SurfaceOptions& options) {
    std::vector<Problem> problems;
    if (!(std::isfinite(tension) && tension > 0)) {
        problems.push_back({"film.surface.range", "/film_tension", std::to_string(tension),
                            "the film must pull after shrinking; give its tension in N/m, over 0"});
    }
    const auto out_of_range = [&](const char* where, double value, const char* advice) {
        problems.push_back({"film.surface.range", where, std::to_string(value), advice});
    };
    if (!(options.spacing >= 0.02 && options.spacing <= 1)) {
        out_of_range("/options/spacing", options.spacing, "columns must stand 0.02 to 1 m apart");
    }
    if (options.rows < 2 || options.rows > 200) {
        out_of_range("/options/rows", options.rows, "give 2 to 200 rows of triangles from ridge to rail");
    }
    if (!(options.force_tolerance > 0 && options.force_tolerance <= 1e-3)) {
        out_of_range("/options/force_tolerance", options.force_tolerance, "give over 0 to 0.001 of the largest force");
    }
    if (options.max_iterations < 1) out_of_range("/options/max_iterations", options.max_iterations, "give 1 or more");
    if (!problems.empty()) throw InputError(std::move(problems));
}

bool finite(const TriangleMesh& mesh) {
    return std::all_of(mesh.nodes.begin(), mesh.nodes.end(), [](const std::array<double, 3>& p) {
        return std::isfinite(p[0]) && std::isfinite(p[1]) && std::isfinite(p[2]);
    });
}

/// A surface may have been put together or changed by hand.
void require_whole(const CoverSurface& s) {
    std::vector<Problem> problems;
    const auto wrong = [&](bool good, const char* where, double value, const char* advice) {
        if (!good) problems.push_back({"film.surface.range", where, std::to_string(value), advice});
    };
    const std::size_t nodes = s.cover.mesh.nodes.size(), in_frame = s.layout.frame.nodes.size();
    const auto size = [&](std::size_t has, std::size_t wants, const char* where) {
        wrong(has == wants, where, static_cast<double>(has), "give one for each node");
    };
    size(s.cover.held.size(), nodes, "/cover/held");
    size(s.cover.outlet.size(), nodes, "/cover/outlet");
    size(s.cover.frame_node.size(), nodes, "/cover/frame_node");
    size(s.shape.nodes.size(), nodes, "/shape/nodes");
    wrong(s.state.displacement.size() == 6 * in_frame, "/state/displacement",
          static_cast<double>(s.state.displacement.size()),
          "give six for each node of the frame; a cover that does not stand without snow has none");
    for (const int node : s.cover.frame_node) {
        wrong(node >= -1 && node < static_cast<int>(in_frame), "/cover/frame_node", node, "name a node of the frame");
    }
    for (const int node : s.loose) {
        const bool on_ridge = node >= 0 && at(node) < s.cover.frame_node.size() && s.cover.frame_node[at(node)] >= 0;
        wrong(on_ridge, "/loose", node, "name a node of the film on the ridge line");
    }
    wrong(s.shape.triangles == s.cover.mesh.triangles, "/shape/triangles",
          static_cast<double>(s.shape.triangles.size()), "the shape has the triangles of the drawn film");
    wrong(std::isfinite(s.stiffness) && s.stiffness > 0, "/stiffness", s.stiffness, "E t must be over 0");
    wrong(s.poisson >= 0 && s.poisson <= 0.5, "/poisson", s.poisson, "Poisson's ratio must be 0 to 0.5");
    wrong(std::isfinite(s.tension) && s.tension > 0, "/tension", s.tension, "the film must pull, by over 0");
    wrong(std::isfinite(s.film_weight) && s.film_weight >= 0, "/film_weight", s.film_weight, "give 0 or more");
    wrong(finite(s.shape), "/shape/nodes", 0, "places must be finite numbers");
    for (const EdgeState& edge : s.obstacles) {
        for (const EdgePoint& point : edge.points) {
            const bool good = std::isfinite(point.place[0]) && std::isfinite(point.place[1]) &&
                              std::isfinite(point.place[2]) && point.length > 0;
            wrong(good, "/obstacles", point.length, "points of an edge need a place and a length over 0");
        }
    }
    if (!problems.empty()) throw InputError(std::move(problems));
}

/// Film nodes on the ridge line close to its ends. There film that turns down over the end pulls its neighbours up:
/// looked at from the beginning it costs nothing.
std::vector<int> beside_ends(const CoverMesh& cover) {
    constexpr double close = 0.1;  // [m]
    std::vector<int> on_ridge;
    for (std::size_t n = 0; n < cover.frame_node.size(); ++n) {
        if (cover.frame_node[n] >= 0) on_ridge.push_back(static_cast<int>(n));
    }
    const auto x_of = [&](int node) { return cover.mesh.nodes[at(node)][0]; };
    const auto [bow, stern] = std::ranges::minmax(on_ridge, {}, x_of);
    std::vector<int> beside;
    for (const int node : on_ridge) {
        if (node == bow || node == stern) continue;
        if (std::min(x_of(node) - x_of(bow), x_of(stern) - x_of(node)) < close) beside.push_back(node);
    }
    return beside;
}

/// Film that must be stretched far to pull as it should is too short for the edges it has to reach.
void require_stretch(const CoverSurface& surface) {
    const double share = surface.tension * (1 - surface.poisson) / surface.stiffness;
    if (surface.stiffness > 0 && share <= most_stretch) return;
    throw InputError("film.surface.stretch", "/film_tension", std::to_string(surface.tension),
                     "to pull so hard the film is stretched by " + std::to_string(100 * share) + " %, more than the " +
                         std::to_string(std::lround(100 * most_stretch)) +
                         " % up to which it is elastic: it is too short to reach the rail and its band; ask for less "
                         "tension, or give thicker or stiffer film");
}

}  // namespace

const char* name_of(SurfaceStatus status) {
    switch (status) {
        case SurfaceStatus::not_run: return "not run";
        case SurfaceStatus::converged: return "converged";
        case SurfaceStatus::frame_fails: return "frame fails";
        case SurfaceStatus::loose: return "loose";
        case SurfaceStatus::growing: return "growing";
        case SurfaceStatus::folded: return "folded";
        case SurfaceStatus::iteration_limit: return "iteration limit";
    }
    return "";
}

double EdgeState::least_gap() const {
    double least = std::numeric_limits<double>::infinity();
    for (const EdgePoint& p : points) least = std::min(least, p.gap);
    return least;
}

double EdgeState::force() const {
    return std::accumulate(points.begin(), points.end(), 0.0,
                           [](double sum, const EdgePoint& p) { return sum + p.force * p.length; });
}

double EdgeState::greatest_force() const {
    double greatest = 0;
    for (const EdgePoint& p : points) greatest = std::max(greatest, p.force);
    return greatest;
}

CoverSurface rig_surface(const Plan& plan, double film_tension, const SurfaceOptions& options) {
    require_options(film_tension, options);
    CoverSurface surface;
    surface.options = options;
    LayoutOptions layout;
    layout.station_spacing = from_m(options.spacing);
    layout.strap_stiffness = options.strap_stiffness;
    layout.cross_strap_pieces = options.rows;
    surface.layout = lay_out(plan, layout);
    surface.cover = mesh_cover(plan, surface.layout, options.rows);
    surface.loose = beside_ends(surface.cover);
    surface.shape = surface.cover.mesh;
    surface.tension = film_tension;
    surface.stiffness = in_Pa(film_modulus(plan.film, options.film)) * in_m(plan.film.thickness.value);
    surface.poisson = plan.film.poisson.value;
    surface.strength = in_Pa(plan.film.strength.value) * in_m(plan.film.thickness.value);
    surface.film_weight = in_N_per_m3(plan.film.unit_weight.value) * in_m(plan.film.thickness.value);
    std::vector<EdgeState> obstacles = edges_of(plan);
    keep_under(surface, obstacles);
    surface.obstacles = std::move(obstacles);
    require_stretch(surface);

    const FrameLoads own = self_weight(surface.layout.frame, 1.0);
    Tensioned tensioned = tension_straps(surface.layout.frame, surface.layout.runs, own);
    surface.layout.frame = std::move(tensioned.frame);
    if (!tensioned.solution.usable()) {
        surface.state.status = SurfaceStatus::frame_fails;
        surface.state.message = tensioned.solution.message;
        return surface;
    }

    SurfaceWalk walk(surface);
    walk.begin_even(surface.cover.mesh, tensioned.solution.displacement);
    walk.load(film_forces(surface, surface.shape, 1.0, {}), own);
    if (!walk.settle(surface.state)) return surface;
    surface.shape = walk.film();
    surface.on_straps = walk.on_straps();
    surface.loose = walk.loose();
    surface.state.displacement = walk.frame_u();
    SurfaceState shrunk = load_surface(surface, std::vector<double>(surface.shape.triangles.size(), 0.0));
    shrunk.iterations += surface.state.iterations;
    surface.state = std::move(shrunk);
    return surface;
}

namespace {

/// The film as water meets it from above: where it leans over, nodes stand in plan where they were drawn.
struct Overlooked {
    TriangleMesh film;
    std::vector<bool> leaning;  ///< nodes that were put back
    int worst = -1;             ///< a triangle that leans over, -1 if none does
};

Overlooked overlooked(const TriangleMesh& drawn, const TriangleMesh& film) {
    Overlooked seen{film, std::vector<bool>(film.nodes.size(), false), folded_triangle(drawn, film)};
    for (int t = seen.worst; t >= 0; t = folded_triangle(drawn, seen.film)) {
        for (const int node : film.triangles[at(t)]) {
            seen.leaning[at(node)] = true;
            for (std::size_t d = 0; d < 2; ++d) seen.film.nodes[at(node)][d] = drawn.nodes[at(node)][d];
        }
    }
    return seen;
}

/// Whether water meets film that leans over, or so much leans over that it is no steep edge any more.
bool lies_over(const CoverSurface& surface, const Overlooked& seen, const Water& water) {
    if (seen.worst < 0) return false;
    const std::vector<double> area = plan_area_of_nodes(surface.cover.mesh);
    double leaning = 0, whole = 0;
    for (std::size_t n = 0; n < area.size(); ++n) {
        whole += area[n];
        if (!seen.leaning[n]) continue;
        leaning += area[n];
        if (!water.depth.empty() && water.depth[n] > 0) return true;
    }
    return leaning > most_leaning * whole;
}

void fill_with_water(const CoverSurface& surface, const Rain& rain, SurfaceWalk& walk, SurfaceState& state) {
    kernel::Filling filling(surface.cover.mesh, surface.cover.outlet, rain);
    while (true) {
        const Overlooked seen = overlooked(surface.cover.mesh, walk.film());
        const bool goes_on = filling.goes_on(seen.film);
        if (lies_over(surface, seen, filling.water())) {
            const auto& place = walk.film().nodes[at(walk.film().triangles[at(seen.worst)][0])];
            state.status = SurfaceStatus::folded;
            state.place = place_on(surface, place[0], place[1]);
            state.message = "the film folds over itself " + state.place + "; water on it cannot be told";
            break;
        }
        if (!goes_on) break;
        walk.flood(levels_over(seen.film, filling.water()));
        if (!walk.settle(state)) {
            state.status = SurfaceStatus::growing;
            state.message = "no shape of the film holds the water it collects";
            break;
        }
    }
    state.water = filling.water();
    state.rounds = filling.rounds();
    if (state.status == SurfaceStatus::folded) return;
    if (filling.settled()) {
        state.status = SurfaceStatus::converged;
        return;
    }
    if (state.status != SurfaceStatus::growing) {
        state.status = SurfaceStatus::growing;
        state.message = "the water grows with every round of filling";
    }
    if (state.water.ponds.empty()) return;
    const auto& deepest = walk.film().nodes[at(state.water.ponds.front().deepest)];
    state.place = place_on(surface, deepest[0], deepest[1]);
    state.message += "; most of it stands " + state.place;
}

}  // namespace

SurfaceState load_surface(const CoverSurface& surface, const std::vector<double>& snow, const Rain& rain,
                          double permanent_factor) {
    const auto require = [](bool good, const char* where, const char* advice) {
        if (!good) throw InputError("film.surface.loads", where, "", advice);
    };
    require(snow.size() == surface.cover.mesh.triangles.size() &&
                std::all_of(snow.begin(), snow.end(), [](double q) { return q >= 0 && q <= most_snow; }),
            "/snow", "give one plan load of zero to 1 MPa for each triangle");
    require(std::isfinite(rain.depth) && rain.depth >= 0, "/rain", "give a depth of rain of zero or more");
    require(std::isfinite(permanent_factor) && permanent_factor >= 0, "/permanent_factor",
            "give a factor on weight of zero or more");
    require_whole(surface);
    require_stretch(surface);
    std::vector<kernel::FreeTriangle> free;
    const double stretch = stretch_for_tension(surface.stiffness, surface.poisson, surface.tension);
    for (const auto& t : surface.shape.triangles) {
        free.push_back(kernel::free_triangle(vector_of(surface.shape.nodes[at(t[0])]),
                                             vector_of(surface.shape.nodes[at(t[1])]),
                                             vector_of(surface.shape.nodes[at(t[2])]), stretch));
    }
    SurfaceState state;
    SurfaceWalk walk(surface);
    walk.begin_elastic(surface.state.usable() ? surface.state.film : surface.shape, surface.state.displacement,
                       std::move(free));
    walk.load(film_forces(surface, surface.shape, permanent_factor, snow),
              self_weight(surface.layout.frame, permanent_factor));
    if (walk.settle(state)) {
        state.status = SurfaceStatus::converged;
        state.message.clear();
        if (rain.kind != Rain::Kind::none) fill_with_water(surface, rain, walk, state);
    }
    fill(surface, walk, state);
    return state;
}

std::vector<double> snow_by_station(const CoverSurface& surface, const std::vector<double>& x,
                                    const std::vector<double>& port, const std::vector<double>& starboard) {
    if (x.empty() || port.size() != x.size() || starboard.size() != x.size() || !std::is_sorted(x.begin(), x.end())) {
        throw InputError("film.surface.loads", "/x", std::to_string(x.size()),
                         "give one load a side for each station, from bow to stern");
    }
    std::vector<double> snow;
    const TriangleMesh& mesh = surface.cover.mesh;
    for (const auto& t : mesh.triangles) {
        const Vector3d middle =
            (vector_of(mesh.nodes[at(t[0])]) + vector_of(mesh.nodes[at(t[1])]) + vector_of(mesh.nodes[at(t[2])])) / 3;
        const std::vector<double>& side = middle(1) < 0 ? port : starboard;
        const auto after = std::lower_bound(x.begin(), x.end(), middle(0));
        if (after == x.begin() || after == x.end()) {
            snow.push_back(after == x.begin() ? side.front() : side.back());
            continue;
        }
        const auto i = static_cast<std::size_t>(after - x.begin());
        const double s = (middle(0) - x[i - 1]) / (x[i] - x[i - 1]);
        snow.push_back(side[i - 1] + s * (side[i] - side[i - 1]));
    }
    return snow;
}

}  // namespace coverframe
