// SPDX-License-Identifier: BSD-3-Clause
#include "film/surface_walk.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "coverframe/film/surface_survey.hpp"
#include "film/kernel/relaxation.hpp"
#include "film/kernel/wet.hpp"

namespace coverframe {

namespace {

using Eigen::Vector3d;
using kernel::SurfaceSystem;

constexpr double drift_limit = 0.001;  ///< of film over what it rests on before it is looked at again [m]

std::size_t at(int i) { return static_cast<std::size_t>(i); }

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
            point += were.bearings[i].point.share[k] * Vector3d(film.nodes[at(node)].data());
        }
        most = std::max(most, std::hypot(point(0) - now.place[i][0], point(1) - now.place[i][1]));
    }
    return most;
}

}  // namespace

void SurfaceWalk::begin_even(const TriangleMesh& film, const std::vector<double>& frame_u) {
    even_ = true;
    begin(film, frame_u);
}

void SurfaceWalk::begin_elastic(const TriangleMesh& film, const std::vector<double>& frame_u,
                                std::vector<kernel::FreeTriangle> free) {
    even_ = false;
    free_ = std::move(free);
    begin(film, frame_u);
}

void SurfaceWalk::begin(const TriangleMesh& film, const std::vector<double>& frame_u) {
    film_ = film;
    frame_u_ = frame_u;
    rebuild(rests_under(surface_, film_, frame_u_));
}

void SurfaceWalk::load(Eigen::VectorXd film_force, FrameLoads frame_loads) {
    film_force_ = std::move(film_force);
    frame_loads_ = std::move(frame_loads);
}

bool SurfaceWalk::settle(SurfaceState& state) {
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

/// Obstacles where they are under the film now, straps as they were.
Rests SurfaceWalk::obstacles_moved(Rests now) const {
    const auto straps = rests_.bearings.begin() + static_cast<std::ptrdiff_t>(rests_.edge.size());
    now.bearings.resize(now.edge.size());
    now.bearings.insert(now.bearings.end(), straps, rests_.bearings.end());
    return now;
}

void SurfaceWalk::rebuild(Rests rests) {
    newton_.reset();
    rests_ = std::move(rests);
    system_ = std::make_unique<SurfaceSystem>(surface_.layout.frame, surface_.cover.mesh, surface_.cover.frame_node,
                                              surface_.cover.held, sheet_, rests_.bearings, even_);
    system_->start_from(frame_u_, film_.nodes);
    newton_ = std::make_unique<kernel::SparseNewton<SurfaceSystem>>(*system_);
}

bool SurfaceWalk::solve(SurfaceState& state) {
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
    if (end.balanced && end.stable) return true;
    const int node = end.balanced ? system_->loosest() : system_->least_balanced();
    const std::array<double, 3> place = place_of(node);
    state.place = place_on(surface_, place[0], place[1]);
    if (end.balanced) {
        state.status = SurfaceStatus::loose;
        state.message = node < 0 ? "node \"" + surface_.layout.frame.nodes[at(-1 - node)].name + "\" of the frame"
                                 : "the film";
        state.message += " " + state.place + ", is held by nothing";
    } else {
        state.status = SurfaceStatus::iteration_limit;
        state.message = end.reason + "; furthest from balance " + state.place;
    }
    return false;
}

std::array<double, 3> SurfaceWalk::place_of(int node) const {
    if (node >= 0) return film_.nodes[at(node)];
    std::array<double, 3> place = surface_.layout.frame.nodes[at(-1 - node)].at;
    for (std::size_t d = 0; d < 3; ++d) place[d] += frame_u_[6 * at(-1 - node) + d];
    return place;
}

}  // namespace coverframe
