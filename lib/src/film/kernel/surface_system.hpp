// SPDX-License-Identifier: BSD-3-Clause
// Film, frame, water and what the film touches as one energy. Plain SI doubles.
//
//   Pi = frame (frame/kernel/assembly.hpp) + film (membrane.hpp) + water (wet.hpp) + contact - work of the film's loads
//   contact   k/2 <-g>^2,  g = height of the film over the point - height of what lies under it
// Film nodes on the ridge line are nodes of the frame: they share its displacements; loose ones only sideways, and rest
// on a bearing. What lies under the film is a fixed point of the boat, over which the film slides, or a node of the
// frame, such as one of a cross strap, to which the same point of the film keeps. k is the stiffness of the bearing;
// the film sinks into it by force over k.
//
// Unknowns: those of the frame in its own order, then three for each other free film node; or one, its height, where
// the film only looks for its shape: sliding within it changes nothing, and would crowd the nodes.
//
// Film that only looks for its shape pulls with the same force T per width in all directions (EvenTriangle
// in membrane.hpp), which is what shrinking it leaves before it is asked to carry.
#pragma once

#include <Eigen/Core>
#include <array>
#include <optional>
#include <vector>

#include "coverframe/film/locator.hpp"
#include "coverframe/frame/solve.hpp"
#include "film/kernel/membrane.hpp"
#include "film/kernel/sparse_tangent.hpp"
#include "frame/kernel/assembly.hpp"

namespace coverframe::kernel {

/// Something under the film.
struct Bearing {
    std::optional<Located> film;    ///< point of the film over it; empty where none is
    int frame_node = -1;            ///< what is under the film: a node of the frame, or
    std::array<double, 3> place{};  ///< a fixed point [m]
    double stiffness = 1e5;         ///< k [N/m]

    /// Of the film on it [N].
    [[nodiscard]] double force(double gap) const { return gap < 0 ? -stiffness * gap : 0.0; }
};

class SurfaceSystem {
public:
    /// Keeps what it is given; all of it must stay.
    /// \param frame_node  of each film node the frame node it lies on, or -1
    /// \param loose       film nodes on frame nodes that rest on a bearing; the others are fixed to theirs
    /// \param held        film nodes that do not move
    /// \param upright     other film nodes move up and down only
    SurfaceSystem(const Frame& frame, const TriangleMesh& film, const std::vector<int>& frame_node,
                  const std::vector<bool>& loose, const std::vector<bool>& held, const Sheet& sheet,
                  std::vector<Bearing> bearings, bool upright);

    /// Film of these free shapes, one a triangle.
    void let_stretch(std::vector<FreeTriangle> free);
    /// Film of the same pull in all directions.
    /// \param secant  give its secant for its tangent
    void pull_evenly(double tension, bool secant = false);

    FrameLoads frame_loads;
    Eigen::VectorXd film_force;  ///< three a film node [N]
    std::vector<double> level;   ///< of the water over each triangle, -infinity where dry; empty: no water [m]
    double water_weight = 0;     ///< [N/m3]

    // What SparseNewton asks for.
    /// Looks again which points of the film are over the fixed points that it has slid over.
    void follow();
    void evaluate(const Eigen::VectorXd& at, bool with_tangent);
    [[nodiscard]] const Eigen::SparseMatrix<double>& tangent() const { return tangent_.matrix(); }
    [[nodiscard]] double longest_step() const { return 0.1 * size_; }
    Eigen::VectorXd unknowns;
    Eigen::VectorXd gradient;
    double energy = 0;
    double largest_force = 0;

    /// Sets the unknowns from displacements of the frame (six a node) and of the film (three a node).
    void start_from(const std::vector<double>& frame, const std::vector<std::array<double, 3>>& film_places);

    // Of the last evaluate.
    [[nodiscard]] const Eigen::VectorXd& frame_displacement() const { return frame_u_; }
    [[nodiscard]] TriangleMesh film() const;
    [[nodiscard]] Triangle triangle(std::size_t t) const;
    /// Height of the film over each bearing; infinite where there is no film [m].
    [[nodiscard]] std::vector<double> gaps() const;
    [[nodiscard]] const std::vector<Bearing>& bearings() const { return bearings_; }
    [[nodiscard]] MemberForces member(std::size_t m) const { return assembly_.forces(m, frame_u_, frame_loads); }
    /// How hard a foot of the frame stands on the boat [N].
    [[nodiscard]] double foot_push(std::size_t foot) const { return assembly_.feet().forces(foot, frame_u_).push; }
    /// What the boat holds up: at the frame's nodes (six each), at the film's held nodes (three each).
    [[nodiscard]] const Eigen::VectorXd& frame_gradient() const { return frame_gradient_; }
    [[nodiscard]] Eigen::Vector3d film_reaction(std::size_t node) const;
    /// Force of the film, its load included, on what a film node is fixed to.
    [[nodiscard]] Eigen::Vector3d film_force_on(std::size_t node) const {
        return -film_gradient_.segment<3>(static_cast<Eigen::Index>(3 * node));
    }
    /// Node of the film, or of the frame as -1 - node, with the least resistance of its own.
    [[nodiscard]] int loosest() const;
    /// The same with the largest unbalanced force.
    [[nodiscard]] int least_balanced() const;
    /// The same that an unknown moves.
    [[nodiscard]] int node_of(Eigen::Index unknown) const;

private:
    [[nodiscard]] Vector9 corners(std::size_t t) const;
    [[nodiscard]] double gap(const Bearing& bearing) const;
    [[nodiscard]] double drift(const Bearing& bearing) const;
    void place_all(const Eigen::VectorXd& at);
    void add_frame(bool with_tangent);
    void add_film(bool with_tangent);
    void add_triangle(std::size_t t, double its_energy, const Vector9& its_gradient);
    void add_water(bool with_tangent);
    void add_bearings(bool with_tangent);
    void add_loads();
    void add_to_film(int node, const Eigen::Vector3d& force) { film_gradient_.segment<3>(3 * node) += force; }

    const Frame& frame_;
    const TriangleMesh& film_;
    const Sheet& sheet_;
    std::vector<Bearing> bearings_;
    Assembly assembly_;
    Assembly::State frame_state_;
    int count_ = 0;
    std::vector<int> number_;  ///< three a film node: its unknown, of its own or of the frame; -1
    SparseTangent tangent_;
    double size_ = 0;
    bool even_ = false;
    bool secant_ = false;
    double tension_ = 0;
    std::vector<FreeTriangle> free_;
    Eigen::VectorXd frame_u_;         ///< six a node
    Eigen::VectorXd places_;          ///< three a film node
    Eigen::VectorXd frame_gradient_;  ///< six a node
    Eigen::VectorXd film_gradient_;   ///< three a film node
};

}  // namespace coverframe::kernel
