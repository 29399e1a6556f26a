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

constexpr double drift_limit = 0.001;  ///< of film over straps before it is looked at again [m]

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

/// Bearings in the order of CoverSurface::obstacles and their points, then of the nodes of straps.
void SurfaceWalk::rebuild() {
    std::vector<kernel::Bearing> bearings;
    for (const EdgeState& obstacle : surface_.obstacles) {
        for (const EdgePoint& point : obstacle.points) bearings.push_back({std::nullopt, -1, point.place});
    }
    for (const StrapRest& rest : on_straps_) bearings.push_back({rest.film, rest.frame_node, {}});
    newton_.reset();
    system_ = std::make_unique<SurfaceSystem>(surface_.layout.frame, surface_.cover.mesh, surface_.cover.frame_node,
                                              surface_.cover.held, sheet_, std::move(bearings), even_);
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

bool SurfaceWalk::settle(SurfaceState& state) {
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
    film_ = system_->film();
    const Eigen::VectorXd& u = system_->frame_displacement();
    frame_u_.assign(u.data(), u.data() + u.size());
    if (end.balanced && end.stable) return true;
    const int node = end.balanced ? system_->loosest() : system_->least_balanced();
    const std::array<double, 3> place = place_of(node);
    state.place = place_on(surface_, place[0], place[1]);
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
