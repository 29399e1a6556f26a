// SPDX-License-Identifier: BSD-3-Clause
#include "film/surface_walk.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "coverframe/base/error.hpp"
#include "coverframe/film/surface_survey.hpp"
#include "film/kernel/relaxation.hpp"
#include "film/kernel/wet.hpp"

namespace coverframe {

namespace {

using Eigen::Vector3d;
using kernel::SurfaceSystem;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double drift_limit = 0.001;   ///< of film over straps before it is looked at again [m]
constexpr double seat_stiffness = 1e6;  ///< of the ridge under film that may lift off it [N/m]
constexpr double least_lift = 0.01;     ///< pull at which film lifts off the ridge [N]

}  // namespace

void SurfaceWalk::begin_even(const TriangleMesh& film, const std::vector<double>& frame_u) {
    even_ = true;
    film_ = film;
    frame_u_ = frame_u;
    on_straps_ = straps_under();
    rebuild();
}

void SurfaceWalk::begin_elastic(const TriangleMesh& film, const std::vector<double>& frame_u,
                                std::vector<kernel::FreeTriangle> free) {
    even_ = false;
    film_ = film;
    frame_u_ = frame_u;
    free_ = std::move(free);
    on_straps_ = surface_.on_straps;
    rebuild();
}

/// Bearings in the order of CoverSurface::obstacles and their points, then of the nodes of straps, then of loose nodes.
void SurfaceWalk::rebuild() {
    std::vector<kernel::Bearing> bearings;
    for (const EdgeState& obstacle : surface_.obstacles) {
        for (const EdgePoint& point : obstacle.points) bearings.push_back({std::nullopt, -1, point.place});
    }
    for (const StrapRest& rest : on_straps_) bearings.push_back({rest.film, rest.frame_node, {}});
    for (const int node : loose()) {
        bearings.push_back({corner_at(node), surface_.cover.frame_node[at(node)], {}, seat_stiffness});
    }
    newton_.reset();
    system_ = std::make_unique<SurfaceSystem>(surface_.layout.frame, surface_.cover.mesh, surface_.cover.frame_node,
                                              loose_, surface_.cover.held, sheet_, std::move(bearings), even_);
    system_->start_from(frame_u_, film_.nodes);
    newton_ = std::make_unique<kernel::SparseNewton<SurfaceSystem>>(*system_);
}

std::vector<StrapRest> SurfaceWalk::straps_under() const {
    std::vector<StrapRest> rests;
    const Locator locator(film_);
    for (const CrossStrapPart& strap : surface_.layout.cross_straps) {
        for (const int m : strap.members) {
            const int node = surface_.layout.frame.members[at(m)].to;
            if (surface_.layout.frame.nodes[at(node)].held[2]) continue;
            const std::array<double, 3> place = place_of(-1 - node);
            if (const auto over = locator.at(place[0], place[1])) rests.push_back({node, *over});
        }
    }
    return rests;
}

/// How far the point of the film is from over the node, seen from above.
double SurfaceWalk::drift(const StrapRest& rest) const {
    const std::array<double, 3> node = place_of(-1 - rest.frame_node);
    const std::array<double, 3> film = rest.film.place(film_);
    return std::hypot(film[0] - node[0], film[1] - node[1]);
}

void SurfaceWalk::load(Eigen::VectorXd film_force, FrameLoads frame_loads) {
    film_force_ = std::move(film_force);
    frame_loads_ = std::move(frame_loads);
}

std::vector<int> SurfaceWalk::loose() const {
    std::vector<int> nodes;
    for (std::size_t n = 0; n < loose_.size(); ++n) {
        if (loose_[n]) nodes.push_back(static_cast<int>(n));
    }
    return nodes;
}

/// A node of the film as the corner of a triangle.
Located SurfaceWalk::corner_at(int node) const {
    const auto& triangles = surface_.cover.mesh.triangles;
    const auto has_it = [&](const std::array<int, 3>& t) { return std::ranges::find(t, node) != t.end(); };
    const auto found = std::ranges::find_if(triangles, has_it);
    Located corner;
    corner.triangle = static_cast<int>(found - triangles.begin());
    for (std::size_t k = 0; k < 3; ++k) corner.share[k] = (*found)[k] == node ? 1 : 0;
    return corner;
}

/// Lets go of nodes that pull the ridge up, and of those beside them. False if none does.
bool SurfaceWalk::loosen() {
    const std::vector<int>& under = surface_.cover.frame_node;
    std::vector<bool> lifts(under.size(), false);
    bool any = false;
    for (std::size_t n = 0; n < under.size(); ++n) {
        lifts[n] = under[n] >= 0 && !loose_[n] && system_->film_force_on(n)(2) > least_lift;
        any = any || lifts[n];
    }
    for (const auto& t : surface_.cover.mesh.triangles) {
        if (std::ranges::none_of(t, [&](int n) { return lifts[at(n)]; })) continue;
        for (const int n : t) loose_[at(n)] = loose_[at(n)] || under[at(n)] >= 0;
    }
    return any;
}

bool SurfaceWalk::settle(SurfaceState& state) {
    constexpr int most = 50;
    for (int round = 0; round < most; ++round) {
        if (!settle_as_fixed(state)) return false;
        if (!loosen()) return true;
        rebuild();
    }
    state.status = SurfaceStatus::iteration_limit;
    state.message = "the film keeps lifting off more of the ridge";
    return false;
}

bool SurfaceWalk::settle_as_fixed(SurfaceState& state) {
    if (!even_) return solve(state);
    constexpr int most = 8;
    for (int round = 0; round < most; ++round) {
        if (round == 0) approach(state);
        if (!solve(state)) return false;
        if (std::ranges::all_of(on_straps_, [&](const StrapRest& rest) { return drift(rest) <= drift_limit; }))
            return true;
        on_straps_ = straps_under();
        rebuild();
    }
    state.status = SurfaceStatus::iteration_limit;
    state.message = "the film keeps sliding over cross straps while it shrinks";
    return false;
}

/// A few steps of film that pulls evenly from where it is drawn: there its true tangent would let steep panels run away
/// in their own plane.
void SurfaceWalk::approach(SurfaceState& state) {
    give_loads();
    system_->pull_evenly(surface_.tension, true);
    state.iterations += newton_->run(surface_.options.force_tolerance, 1).iterations;
}

void SurfaceWalk::give_loads() {
    system_->film_force = film_force_;
    system_->frame_loads = frame_loads_;
    system_->level = level_;
    system_->water_weight = kernel::water_weight;
}

bool SurfaceWalk::solve(SurfaceState& state) {
    give_loads();
    even_ ? system_->pull_evenly(surface_.tension) : system_->let_stretch(free_);
    kernel::NewtonEnd end;
    try {
        end = newton_->run(surface_.options.force_tolerance, surface_.options.max_iterations);
        state.iterations += end.iterations;
        if (!end.balanced) {
            // Many small steps may lead out of where the long ones of Newton turn back.
            constexpr int most = 2000;
            state.iterations += kernel::Relaxation(*system_).run(1e-4, most).iterations;
            end = newton_->run(surface_.options.force_tolerance, surface_.options.max_iterations);
            state.iterations += end.iterations;
        }
    } catch (const StateError& error) {
        end = {};
        end.reason = error.what();  // a pole is folded where the loads have driven it
    }
    state.unbalanced = end.unbalanced;
    const auto tell_place = [&](int node) {
        const std::array<double, 3> place = place_of(node);
        return place_on(surface_, place[0], place[1]);
    };
    film_ = system_->film();
    const Eigen::VectorXd& u = system_->frame_displacement();
    frame_u_.assign(u.data(), u.data() + u.size());
    if (end.departed >= 0) state.snaps = tell_place(system_->node_of(end.departed));
    if (end.balanced && end.stable) return true;
    const int node = end.balanced ? system_->loosest() : system_->least_balanced();
    state.place = tell_place(node);
    if (end.balanced) {
        state.status = SurfaceStatus::loose;
        state.message =
            node < 0 ? "node \"" + surface_.layout.frame.nodes[at(-1 - node)].name + "\" of the frame" : "the film";
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
