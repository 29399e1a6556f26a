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
#include "coverframe/frame/pretension.hpp"
#include "coverframe/units/crossing.hpp"
#include "film/kernel/filling.hpp"
#include "film/kernel/relaxation.hpp"
#include "film/kernel/sparse_newton.hpp"
#include "film/kernel/surface_system.hpp"
#include "film/kernel/wet.hpp"

namespace coverframe {

namespace {

using Eigen::Index;
using Eigen::Vector3d;
using kernel::Bearing;
using kernel::SurfaceSystem;

constexpr double bearing_stiffness = 1e5;  ///< [N/m]
constexpr double edge_spacing = 0.025;     ///< [m]
constexpr double drift_limit = 0.001;      ///< of film over what it rests on before it is looked at again [m]

std::size_t at(int i) { return static_cast<std::size_t>(i); }

Vector3d vector_of(const std::array<double, 3>& a) { return {a[0], a[1], a[2]}; }

/// What the film can rest on, in one list: points of obstacles, then nodes of cross straps.
struct Rests {
    std::vector<Bearing> bearings;
    std::vector<std::array<double, 2>> place;               ///< of each, seen from above
    std::vector<std::pair<std::size_t, std::size_t>> edge;  ///< obstacle and point of those that are points
};

Rests rests_under(const CoverSurface& surface, const TriangleMesh& film, const std::vector<double>& frame_u) {
    Rests rests;
    const Locator locator(film);
    for (std::size_t o = 0; o < surface.obstacles.size(); ++o) {
        for (std::size_t p = 0; p < surface.obstacles[o].points.size(); ++p) {
            const auto& place = surface.obstacles[o].points[p].place;
            if (const auto found = locator.at(place[0], place[1])) {
                rests.bearings.push_back({*found, -1, place[2], bearing_stiffness});
                rests.place.push_back({place[0], place[1]});
                rests.edge.emplace_back(o, p);
            }
        }
    }
    for (const CrossStrapPart& strap : surface.layout.cross_straps) {
        for (const int m : strap.members) {
            const FrameMember& member = surface.layout.frame.members[at(m)];
            const int node = member.to;
            if (surface.layout.frame.nodes[at(node)].held[2]) continue;
            const auto& drawn = surface.layout.frame.nodes[at(node)].at;
            const double x = drawn[0] + frame_u[at(6 * node)];
            const double y = drawn[1] + frame_u[at(6 * node + 1)];
            if (const auto found = locator.at(x, y)) {
                rests.bearings.push_back({*found, node, 0, bearing_stiffness});
                rests.place.push_back({x, y});
            }
        }
    }
    return rests;
}

/// How far points of the film have moved, seen from above, over the obstacles they rest on; infinite if there are more
/// or fewer. On a strap, which gives way with the film, a point stays where it was.
double drift(const Rests& were, const Rests& now, const TriangleMesh& film) {
    if (were.edge.size() != now.edge.size()) return std::numeric_limits<double>::infinity();
    double most = 0;
    for (std::size_t i = 0; i < were.edge.size(); ++i) {
        Vector3d point = Vector3d::Zero();
        for (std::size_t k = 0; k < 3; ++k) {
            const int node = film.triangles[at(were.bearings[i].point.triangle)][k];
            point += were.bearings[i].point.share[k] * vector_of(film.nodes[at(node)]);
        }
        most = std::max(most, std::hypot(point(0) - now.place[i][0], point(1) - now.place[i][1]));
    }
    return most;
}

/// One equilibrium after another of a surface, with its system rebuilt where the film has moved over what it rests on.
class SurfaceWalk {
public:
    explicit SurfaceWalk(const CoverSurface& surface)
        : surface_(surface), sheet_{surface.stiffness, surface.poisson, surface.net} {}

    /// Begins at given places, with film of one pull in all directions as it is shaped then and later.
    void begin_even(const TriangleMesh& film, const std::vector<double>& frame_u) {
        even_ = true;
        begin(film, frame_u);
    }

    /// Begins at given places, with elastic film.
    void begin_elastic(const TriangleMesh& film, const std::vector<double>& frame_u,
                       std::vector<kernel::FreeTriangle> free) {
        even_ = false;
        free_ = std::move(free);
        begin(film, frame_u);
    }

    /// Sets loads: dead forces on the film's nodes and the frame's own weight.
    void load(Eigen::VectorXd film_force, FrameLoads frame_loads) {
        film_force_ = std::move(film_force);
        frame_loads_ = std::move(frame_loads);
    }
    void flood(std::vector<double> level) { level_ = std::move(level); }

    /// Finds the equilibrium from where it is. False with status and message in `state` if there is none.
    bool settle(SurfaceState& state) {
        constexpr int most = 8;
        for (int round = 0; round < most; ++round) {
            if (round > 0) rebuild(obstacles_moved(rests_under(surface_, film_, frame_u_)));
            if (!solve(state)) return false;
            if (drift(rests_, rests_under(surface_, film_, frame_u_), film_) <= drift_limit) return true;
        }
        state.status = SurfaceStatus::iteration_limit;
        state.message = "the film keeps sliding over what it rests on";
        return false;
    }

    [[nodiscard]] const TriangleMesh& film() const { return film_; }
    [[nodiscard]] const std::vector<double>& frame_u() const { return frame_u_; }
    [[nodiscard]] const SurfaceSystem& system() const { return *system_; }
    [[nodiscard]] const Rests& rests() const { return rests_; }

private:
    void begin(const TriangleMesh& film, const std::vector<double>& frame_u) {
        film_ = film;
        frame_u_ = frame_u;
        rebuild(rests_under(surface_, film_, frame_u_));
    }

    /// Obstacles where they are under the film now, straps as they were.
    [[nodiscard]] Rests obstacles_moved(Rests now) const {
        const auto straps = rests_.bearings.begin() + static_cast<std::ptrdiff_t>(rests_.edge.size());
        now.bearings.resize(now.edge.size());
        now.bearings.insert(now.bearings.end(), straps, rests_.bearings.end());
        return now;
    }

    void rebuild(Rests rests) {
        newton_.reset();
        rests_ = std::move(rests);
        system_ = std::make_unique<SurfaceSystem>(surface_.layout.frame, surface_.cover.mesh, surface_.cover.frame_node,
                                                  surface_.cover.held, sheet_, rests_.bearings, even_);
        system_->start_from(frame_u_, film_.nodes);
        newton_ = std::make_unique<kernel::SparseNewton<SurfaceSystem>>(*system_);
    }

    bool solve(SurfaceState& state) {
        system_->film_force = film_force_;
        system_->frame_loads = frame_loads_;
        system_->level = level_;
        system_->water_weight = kernel::water_weight;
        even_ ? system_->pull_evenly(surface_.tension) : system_->let_stretch(free_);
        kernel::NewtonEnd end = newton_->run(surface_.options.force_tolerance, surface_.options.max_iterations);
        state.iterations += end.iterations;
        if (!end.balanced) {
            // Many small steps may lead out of where the long ones of Newton turn back.
            constexpr int most = 2000;
            state.iterations += kernel::Relaxation(*system_).run(1e-4, most).iterations;
            end = newton_->run(surface_.options.force_tolerance, surface_.options.max_iterations);
            state.iterations += end.iterations;
        }
        state.unbalanced = end.unbalanced;
        film_ = system_->film();
        const Eigen::VectorXd& u = system_->frame_displacement();
        frame_u_.assign(u.data(), u.data() + u.size());
        if (!end.balanced) {
            state.status = SurfaceStatus::iteration_limit;
            state.message = end.reason;
        } else if (!end.stable) {
            state.status = SurfaceStatus::loose;
            const int node = system_->loosest();
            state.message = node < 0 ? "node \"" + surface_.layout.frame.nodes[at(-1 - node)].name + "\" of the frame"
                                     : "the film near x = " + std::to_string(film_.nodes[at(node)][0]) + " m";
            state.message += " is held by nothing";
        }
        return end.balanced && end.stable;
    }

    const CoverSurface& surface_;
    kernel::Sheet sheet_;
    TriangleMesh film_;
    std::vector<double> frame_u_;
    Rests rests_;
    std::unique_ptr<SurfaceSystem> system_;
    std::unique_ptr<kernel::SparseNewton<SurfaceSystem>> newton_;
    Eigen::VectorXd film_force_;
    FrameLoads frame_loads_;
    std::vector<double> level_;
    bool even_ = true;
    std::vector<kernel::FreeTriangle> free_;
};

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
void keep_under(const TriangleMesh& film, std::vector<EdgeState>& edges) {
    const Locator locator(film);
    std::vector<Problem> problems;
    for (std::size_t o = 0; o < edges.size(); ++o) {
        std::vector<EdgePoint> under;
        double through = 0;
        for (EdgePoint point : edges[o].points) {
            const auto found = locator.at(point.place[0], point.place[1]);
            if (!found) continue;
            point.gap = found->height(film) - point.place[2];
            through = std::min(through, point.gap);
            under.push_back(point);
        }
        edges[o].points = std::move(under);
        if (through < 0) {
            problems.push_back({"film.surface.obstacle", "/boat/obstacles/" + std::to_string(o), edges[o].name,
                                edges[o].name + " stands " + std::to_string(std::lround(-1000 * through)) +
                                    " mm through the film as drawn; raise the ridge there"});
        }
    }
    if (!problems.empty()) throw InputError(std::move(problems));
}

/// Everything a state tells beside status and message.
void fill(const CoverSurface& surface, const SurfaceWalk& walk, bool elastic, SurfaceState& state) {
    const SurfaceSystem& system = walk.system();
    state.film = walk.film();
    state.displacement = walk.frame_u();
    state.triangles.clear();
    for (std::size_t t = 0; t < state.film.triangles.size(); ++t) {
        if (!elastic) {
            state.triangles.push_back({FilmStretch::taut, surface.tension, surface.tension, {1, 0, 0}});
            continue;
        }
        const kernel::SheetStress s = system.triangle(t).stress();
        state.triangles.push_back(
            {static_cast<FilmStretch>(s.stretch), s.first, s.second, {s.direction(0), s.direction(1), s.direction(2)}});
    }
    state.members.clear();
    for (std::size_t m = 0; m < surface.layout.frame.members.size(); ++m) state.members.push_back(system.member(m));
    state.film_on_frame.assign(surface.layout.frame.nodes.size(), {});
    for (std::size_t n = 0; n < state.film.nodes.size(); ++n) {
        const int node = surface.cover.frame_node[n];
        if (node < 0) continue;
        const Vector3d force = system.film_force_on(n);
        state.film_on_frame[at(node)] = {force(0), force(1), force(2)};
    }
    state.obstacles = surface.obstacles;
    state.on_straps = 0;
    state.vertical_reaction = 0;
    const Rests& rests = walk.rests();
    for (std::size_t i = 0; i < rests.bearings.size(); ++i) {
        const double gap = system.gap(rests.bearings[i]);
        const double force = std::max(0.0, -gap * bearing_stiffness);
        if (i >= rests.edge.size()) {
            state.on_straps += force;
            continue;
        }
        EdgePoint& point = state.obstacles[rests.edge[i].first].points[rests.edge[i].second];
        point.gap = gap;
        point.force = force / point.length;
        state.vertical_reaction += force;
    }
    for (std::size_t n = 0; n < surface.layout.frame.nodes.size(); ++n) {
        if (surface.layout.frame.nodes[n].held[2]) {
            state.vertical_reaction += system.frame_gradient()(static_cast<Index>(6 * n + 2));
        }
    }
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
    if (!(options.spacing >= 0.02 && options.spacing <= 1)) {
        problems.push_back({"film.surface.range", "/options/spacing", std::to_string(options.spacing),
                            "columns must stand 0.02 to 1 m apart"});
    }
    if (!problems.empty()) throw InputError(std::move(problems));
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
    surface.shape = surface.cover.mesh;
    surface.tension = film_tension;
    surface.stiffness = in_Pa(film_modulus(plan.film, options.film)) * in_m(plan.film.thickness.value);
    surface.poisson = plan.film.poisson.value;
    surface.film_weight = in_N_per_m3(plan.film.unit_weight.value) * in_m(plan.film.thickness.value);
    surface.obstacles = edges_of(plan);
    keep_under(surface.cover.mesh, surface.obstacles);

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
    surface.state.displacement = walk.frame_u();
    SurfaceState shrunk = load_surface(surface, std::vector<double>(surface.shape.triangles.size(), 0.0));
    shrunk.iterations += surface.state.iterations;
    surface.state = std::move(shrunk);
    return surface;
}

namespace {

void fill_with_water(const CoverSurface& surface, const Rain& rain, SurfaceWalk& walk, SurfaceState& state) {
    kernel::Filling filling(surface.cover.mesh, surface.cover.outlet, rain);
    const auto folds = [&] {
        const int t = folded_triangle(surface.cover.mesh, walk.film());
        if (t < 0) return false;
        const auto& place = walk.film().nodes[at(walk.film().triangles[at(t)][0])];
        state.status = SurfaceStatus::folded;
        state.message = "the film folds over itself near x = " + std::to_string(place[0]) +
                        " m, y = " + std::to_string(place[1]) + " m; water on it cannot be told";
        return true;
    };
    while (!folds() && filling.goes_on(walk.film())) {
        walk.flood(levels_over(walk.film(), filling.water()));
        if (!walk.settle(state)) {
            state.status = SurfaceStatus::growing;
            state.message = "no shape of the film holds the water it collects: " + state.message;
            break;
        }
    }
    state.water = filling.water();
    state.rounds = filling.rounds();
    if (state.status == SurfaceStatus::folded) return;
    if (filling.settled()) {
        state.status = SurfaceStatus::converged;
    } else if (state.status != SurfaceStatus::growing) {
        state.status = SurfaceStatus::growing;
        state.message = "the water grows with every round of filling";
    }
}

}  // namespace

SurfaceState load_surface(const CoverSurface& surface, const std::vector<double>& snow, const Rain& rain,
                          double permanent_factor) {
    const bool good = snow.size() == surface.cover.mesh.triangles.size() &&
                      std::all_of(snow.begin(), snow.end(), [](double q) { return std::isfinite(q) && q >= 0; }) &&
                      std::isfinite(rain.depth) && rain.depth >= 0 && std::isfinite(permanent_factor) &&
                      permanent_factor >= 0;
    if (!good) {
        throw InputError("film.surface.loads", "/snow", "",
                         "give one finite plan load of zero or more for each triangle, and rain of zero or more");
    }
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
    fill(surface, walk, true, state);
    return state;
}

std::vector<double> snow_by_station(const CoverSurface& surface, const std::vector<double>& x,
                                    const std::vector<double>& port, const std::vector<double>& starboard) {
    if (x.empty() || port.size() != x.size() || starboard.size() != x.size() || !std::is_sorted(x.begin(), x.end())) {
        throw InputError("film.surface.loads", "/stations", std::to_string(x.size()),
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
