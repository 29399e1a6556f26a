// SPDX-License-Identifier: BSD-3-Clause
// Energy, unbalanced forces and tangent of a frame. Plain SI doubles: m, N, rad. Axes and signs: frame/frame.hpp.
//
// Order of unknowns: node after node, ux uy uz rx ry rz, without the held ones and without rotations of nodes that no
// pole touches. Displacements of the whole frame ("full") are n_nodes by 6, row after row, held ones zero.
#pragma once

#include <Eigen/Core>
#include <Eigen/SparseCore>
#include <vector>

#include "coverframe/frame/frame.hpp"
#include "coverframe/frame/solve.hpp"

namespace coverframe::kernel {

using Vector12 = Eigen::Matrix<double, 12, 1>;
using Matrix12 = Eigen::Matrix<double, 12, 12>;

/// Rows are the member's axes 1, 2, 3 at the start.
Eigen::Matrix3d member_axes(const Eigen::Vector3d& from, const Eigen::Vector3d& to);

/// 12 by 12 stiffness in the member's axes, order u1 u2 u3 r1 r2 r3 at `from`, then at `to`, without axial terms.
/// Hinged ends are condensed out.
Matrix12 bending_stiffness(const BendingStiffness& bending, double length, bool hinged_from, bool hinged_to);

class Assembly {
public:
    /// \param left_out  index of a member to leave out, or -1
    Assembly(const Frame& frame, const NodeLoads& loads, int left_out = -1);

    [[nodiscard]] int unknowns() const { return unknowns_; }
    /// Number of the unknown at a direction (node*6 + direction), or -1.
    [[nodiscard]] int unknown_at(int full) const { return number_[static_cast<std::size_t>(full)]; }
    /// Node*6 + direction of an unknown.
    [[nodiscard]] int full_of(int unknown) const { return full_[static_cast<std::size_t>(unknown)]; }

    /// Holds a further direction.
    void hold(int full);

    [[nodiscard]] double energy(const Eigen::VectorXd& u) const;

    struct State {
        Eigen::VectorXd gradient;  ///< full size: dPi/du; minus the unbalanced force, and the reaction where held
        std::vector<Eigen::Triplet<double>> K;  ///< tangent over the unknowns
        double largest_force = 0;               ///< of members, loads and springs [N]
        double rounding = 0;                    ///< unbalanced force below which nothing can be told [N]
    };
    /// \param geometric  false: leave out the terms that come from the members' present forces
    void evaluate(const Eigen::VectorXd& u, State& state, bool geometric = true) const;

    [[nodiscard]] MemberForces forces(std::size_t member, const Eigen::VectorXd& u) const;

private:
    struct Axial {
        Eigen::Vector3d direction;
        double length = 0;
        double force = 0;
        bool active = true;
    };
    [[nodiscard]] Axial axial(std::size_t member, const Eigen::VectorXd& u) const;
    [[nodiscard]] Vector12 ends(std::size_t member, const Eigen::VectorXd& u) const;
    void number_unknowns();
    void add_block(State& state, int row, int column, const Eigen::Matrix3d& block) const;
    void add_members(const Eigen::VectorXd& u, State& state, bool geometric) const;
    void add_loads(const Eigen::VectorXd& u, State& state) const;

    const Frame& frame_;
    const NodeLoads& loads_;
    int left_out_;
    int unknowns_ = 0;
    std::vector<bool> free_;         ///< full size
    std::vector<int> number_;        ///< full size
    std::vector<int> full_;          ///< one an unknown
    std::vector<Matrix12> bending_;  ///< global axes, one a member; empty matrix slots for non-poles
};

}  // namespace coverframe::kernel
