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

class SurfaceWalk {
public:
    /// Keeps the surface.
    explicit SurfaceWalk(const CoverSurface& surface)
        : surface_(surface),
          sheet_{surface.stiffness, surface.poisson, surface.net},
          loose_(surface.cover.mesh.nodes.size(), false) {
        for (const int node : surface.loose) loose_[static_cast<std::size_t>(node)] = true;
    }

    /// Begins at given places, with film of one pull in all directions that slides over cross straps.
    void begin_even(const TriangleMesh& film, const std::vector<double>& frame_u);
    /// Begins at given places, with elastic film that keeps to the points of the cross straps it shrunk on to.
    void begin_elastic(const TriangleMesh& film, const std::vector<double>& frame_u,
                       std::vector<kernel::FreeTriangle> free);

    /// Sets loads: dead forces on the film's nodes and the frame's own weight.
    void load(Eigen::VectorXd film_force, FrameLoads frame_loads);
    void flood(std::vector<double> level) { level_ = std::move(level); }

    /// Finds the equilibrium from where it is. False with status, message and place in `state` if there is none.
    bool settle(SurfaceState& state);

    [[nodiscard]] const TriangleMesh& film() const { return film_; }
    [[nodiscard]] const std::vector<double>& frame_u() const { return frame_u_; }
    [[nodiscard]] const std::vector<StrapRest>& on_straps() const { return on_straps_; }
    /// Film nodes that may lift off the ridge.
    [[nodiscard]] std::vector<int> loose() const;
    [[nodiscard]] const kernel::SurfaceSystem& system() const { return *system_; }

private:
    void rebuild();
    bool settle_as_fixed(SurfaceState& state);
    bool loosen();
    [[nodiscard]] Located corner_at(int node) const;
    void give_loads();
    void approach(SurfaceState& state);
    bool solve(SurfaceState& state);
    [[nodiscard]] std::vector<StrapRest> straps_under() const;
    [[nodiscard]] double drift(const StrapRest& rest) const;
    /// Where a node of the film is, or of the frame as -1 - node.
    [[nodiscard]] std::array<double, 3> place_of(int node) const;

    const CoverSurface& surface_;
    kernel::Sheet sheet_;
    TriangleMesh film_;
    std::vector<double> frame_u_;
    std::vector<StrapRest> on_straps_;
    std::vector<bool> loose_;
    std::unique_ptr<kernel::SurfaceSystem> system_;
    std::unique_ptr<kernel::SparseNewton<kernel::SurfaceSystem>> newton_;
    Eigen::VectorXd film_force_;
    FrameLoads frame_loads_;
    std::vector<double> level_;
    bool even_ = true;
    std::vector<kernel::FreeTriangle> free_;
};

}  // namespace coverframe
