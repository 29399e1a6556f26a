// SPDX-License-Identifier: BSD-3-Clause
// One equilibrium of a cover with film as a surface after another, from where the last one is.
#pragma once

#include <Eigen/Core>
#include <array>
#include <memory>
#include <utility>
#include <vector>

#include "coverframe/film/surface.hpp"
#include "film/kernel/sparse_newton.hpp"
#include "film/kernel/surface_system.hpp"

namespace coverframe {

/// What holds film up beside its edges gives way by force over this [N/m].
inline constexpr double bearing_stiffness = 1e5;

/// What the film can rest on, in one list: points of obstacles, then nodes of cross straps.
struct Rests {
    std::vector<kernel::Bearing> bearings;
    std::vector<std::array<double, 2>> place;               ///< of each, seen from above
    std::vector<std::pair<std::size_t, std::size_t>> edge;  ///< obstacle and point of those that are points
};

/// Rebuilds its system where the film has moved over what it rests on.
class SurfaceWalk {
public:
    /// Keeps the surface.
    explicit SurfaceWalk(const CoverSurface& surface)
        : surface_(surface), sheet_{surface.stiffness, surface.poisson, surface.net} {}

    /// Begins at given places, with film of one pull in all directions as it is shaped then and later.
    void begin_even(const TriangleMesh& film, const std::vector<double>& frame_u);
    /// Begins at given places, with elastic film.
    void begin_elastic(const TriangleMesh& film, const std::vector<double>& frame_u,
                       std::vector<kernel::FreeTriangle> free);

    /// Sets loads: dead forces on the film's nodes and the frame's own weight.
    void load(Eigen::VectorXd film_force, FrameLoads frame_loads);
    void flood(std::vector<double> level) { level_ = std::move(level); }

    /// Finds the equilibrium from where it is. False with status, message and place in `state` if there is none.
    bool settle(SurfaceState& state);

    [[nodiscard]] const TriangleMesh& film() const { return film_; }
    [[nodiscard]] const std::vector<double>& frame_u() const { return frame_u_; }
    [[nodiscard]] const kernel::SurfaceSystem& system() const { return *system_; }
    [[nodiscard]] const Rests& rests() const { return rests_; }

private:
    void begin(const TriangleMesh& film, const std::vector<double>& frame_u);
    [[nodiscard]] Rests obstacles_moved(Rests now) const;
    void rebuild(Rests rests);
    bool solve(SurfaceState& state);
    /// Where a node of the film is, or of the frame as -1 - node.
    [[nodiscard]] std::array<double, 3> place_of(int node) const;

    const CoverSurface& surface_;
    kernel::Sheet sheet_;
    TriangleMesh film_;
    std::vector<double> frame_u_;
    Rests rests_;
    std::unique_ptr<kernel::SurfaceSystem> system_;
    std::unique_ptr<kernel::SparseNewton<kernel::SurfaceSystem>> newton_;
    Eigen::VectorXd film_force_;
    FrameLoads frame_loads_;
    std::vector<double> level_;
    bool even_ = true;
    std::vector<kernel::FreeTriangle> free_;
};

}  // namespace coverframe
