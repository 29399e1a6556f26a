// SPDX-License-Identifier: BSD-3-Clause
// Energy, unbalanced forces and tangent of a frame. Plain SI doubles: m, N, rad. Axes and signs: frame/frame.hpp.
//
// Unknowns: node after node in the order that makes the tangent's band narrow (banded.hpp), within a node
// ux uy uz rx ry rz, without the held ones and without rotations of nodes that no pole, arm or turning spring touches.
// Displacements of the whole frame ("full") are n_nodes by 6 in the frame's own order, row after row.
//
// Members with neither arms nor loads or warmth of their own go through kernels without any memory of their own
// (assembly_kernel.hpp), the others one by one.
//
// What follows from the drawn frame alone is worked out once: the order, the band, where each member's block goes in
// it, and the stiffnesses of the poles.
#pragma once

#include <Eigen/Core>
#include <optional>
#include <vector>

#include "coverframe/frame/frame.hpp"
#include "coverframe/frame/solve.hpp"
#include "frame/kernel/arm.hpp"
#include "frame/kernel/assembly_kernel.hpp"
#include "frame/kernel/banded.hpp"
#include "frame/kernel/catenary.hpp"
#include "frame/kernel/feet.hpp"
#include "frame/kernel/member_load.hpp"
#include "frame/kernel/pole.hpp"

namespace coverframe::kernel {

/// Rows are the member's axes 1, 2, 3 at the start.
Eigen::Matrix3d member_axes(const Eigen::Vector3d& from, const Eigen::Vector3d& to);

using Vector6 = Eigen::Matrix<double, 6, 1>;

class Assembly {
public:
    /// Keeps the frame, which must stay as it is but for the free lengths of straps and uprights.
    /// \param left_out  index of a member to leave out, or -1
    explicit Assembly(const Frame& frame, int left_out = -1);

    /// Goes on with another frame of the same topology (frame/batch.hpp), which must stay as it is likewise; neither
    /// has arms.
    void take(const Frame& frame);

    [[nodiscard]] int unknowns() const { return static_cast<int>(full_.size()); }
    /// Number of the unknown at a direction (node*6 + direction), or -1.
    [[nodiscard]] int unknown_at(int full) const { return number_[static_cast<std::size_t>(full)]; }
    /// Node*6 + direction of an unknown.
    [[nodiscard]] int full_of(int unknown) const { return full_[static_cast<std::size_t>(unknown)]; }
    /// Where the entries of the tangent are.
    [[nodiscard]] const Band& band() const { return band_; }

    /// What is known of a member from the drawn frame.
    struct Part {
        int from = 0;  ///< first direction of the node: node*6
        int to = 0;
        Eigen::Vector3d drawn;
        double drawn_length = 0;
        std::optional<Pole> pole;
        std::optional<PoleLoad> pole_load;
        std::optional<Arms> arms;
        std::vector<int> places;  ///< in the tangent, lower triangle of its block row after row

        [[nodiscard]] bool turns() const { return pole || arms; }
    };
    [[nodiscard]] const std::vector<Part>& parts() const { return parts_; }
    /// Nodes at poles.
    [[nodiscard]] const std::vector<int>& turning() const { return turning_; }
    /// \param loads  their temperatures count
    [[nodiscard]] TieProperties tie(std::size_t member, const FrameLoads& loads) const;
    /// Where the stiffness of a support of a node goes in the tangent, lower triangle row after row.
    [[nodiscard]] std::array<int, 6> places_of_support(int node) const;

    /// Holds a further direction.
    void hold(int full);

    /// The feet, whose greatest sideways forces stay what they were set to.
    [[nodiscard]] Feet& feet() { return feet_; }
    [[nodiscard]] const Feet& feet() const { return feet_; }

    struct State {
        Eigen::VectorXd gradient;  ///< full size: dPi/du; minus the unbalanced force, and the reaction where held
        Eigen::VectorXd K;         ///< tangent over the unknowns, laid out by band(), and one number of no meaning
        double energy = 0;         ///< Pi [N m]
        double largest_force = 0;  ///< of members, loads and springs [N]
        double rounding = 0;       ///< unbalanced force below which nothing can be told [N]
        std::vector<Turned<double>> turns;  ///< one a node; working memory
    };
    /// \throws StateError (frame.pole.folded) as Pole
    /// \param geometric  false: leave out the terms that come from the members' present forces
    void evaluate(const Eigen::VectorXd& u, const FrameLoads& loads, State& state, bool geometric = true) const;

    /// The same without the springs of the loads, which add_springs() adds afterwards.
    void evaluate_without_springs(const Eigen::VectorXd& u, const FrameLoads& loads, State& state,
                                  bool geometric = true) const;
    void add_springs(const Eigen::VectorXd& u, const std::vector<FrameLoads::Spring>& springs, State& state) const;
    [[nodiscard]] double energy_of_springs(const Eigen::VectorXd& u,
                                           const std::vector<FrameLoads::Spring>& springs) const;

    /// The energy alone: what evaluate() says, bit for bit.
    /// \param state  working memory; what it says of another place is gone
    [[nodiscard]] double energy(const Eigen::VectorXd& u, const FrameLoads& loads, State& state) const;

    [[nodiscard]] MemberForces forces(std::size_t member, const Eigen::VectorXd& u, const FrameLoads& loads) const;

    /// The same for all members, and the bend of each.
    /// \param turns  working memory
    void forces(const Eigen::VectorXd& u, const FrameLoads& loads, std::vector<Turned<double>>& turns,
                std::vector<MemberForces>& forces, std::vector<double>& bends) const;

    /// Force of a node's spring against the boat on the node.
    [[nodiscard]] static Vector6 spring_force(const NodeSpring& spring, const Eigen::VectorXd& u);

    /// Present line from end to end of a member.
    [[nodiscard]] Eigen::Vector3d chord(std::size_t member, const Eigen::VectorXd& u) const;
    [[nodiscard]] const Eigen::Vector3d& drawn_chord(std::size_t member) const { return parts_[member].drawn; }

    /// Largest turn of a pole's end against the line between its ends [rad]; 0 for straps and uprights.
    [[nodiscard]] double bend(std::size_t member, const Eigen::VectorXd& u) const;

private:
    /// Strain by which a member is longer when it is warmer.
    [[nodiscard]] double warmth(std::size_t member, const FrameLoads& loads) const;
    [[nodiscard]] MemberForces tie_forces(std::size_t member, const Eigen::VectorXd& u, const FrameLoads& loads) const;
    [[nodiscard]] MemberForces pole_forces(std::size_t member, PoleForces own, const Eigen::VectorXd& u,
                                           const FrameLoads& loads) const;
    [[nodiscard]] TieState<double> tie_state(std::size_t member, const Eigen::VectorXd& u,
                                             const FrameLoads& loads) const;
    [[nodiscard]] std::optional<Catenary> hung_strap(std::size_t member, const TieState<double>& tie,
                                                     const FrameLoads& loads) const;
    [[nodiscard]] static Vector12 nodes(const Part& part, const Eigen::VectorXd& u);
    [[nodiscard]] static Vector12 ends(const Part& part, const Eigen::VectorXd& u);
    [[nodiscard]] std::vector<int> directions(std::size_t member) const;
    [[nodiscard]] std::vector<int> narrow_order() const;
    void number_unknowns();
    void number_in(const std::vector<int>& order);
    [[nodiscard]] Part part_of(const FrameMember& member) const;
    void free_rotations(int node);
    void add_pole(std::size_t member, const Eigen::VectorXd& u, const FrameLoads& loads, State& state,
                  bool geometric) const;
    void add_axial(std::size_t member, const Eigen::VectorXd& u, const FrameLoads& loads, State& state,
                   bool geometric) const;
    void add_ends(const Part& part, const Eigen::VectorXd& u, Vector12& gradient, Matrix12& tangent, State& state,
                  bool geometric) const;
    void add_plain(const double* u, Turned<double>* turns, Terms terms, Sums<double>& sums) const;
    void add_plain_anywhere(const double* u, Turned<double>* turns, Terms terms, Sums<double>& sums) const;
    void add_plain_avx2(const double* u, Turned<double>* turns, Terms terms, Sums<double>& sums) const;
    void add_plain_members(const Eigen::VectorXd& u, State& state, Terms terms, Sums<double>& sums) const;
    [[nodiscard]] bool plain(const FrameLoads& loads) const;
    void add_special_members(const Eigen::VectorXd& u, const FrameLoads& loads, State& state, bool geometric) const;
    void add_node_springs(const Eigen::VectorXd& u, Terms terms, Sums<double>& sums) const;
    void add_forces(const Eigen::VectorXd& u, const FrameLoads& loads, Terms terms, Sums<double>& sums) const;
    void add_springs(const Eigen::VectorXd& u, const std::vector<FrameLoads::Spring>& springs, Terms terms,
                     Sums<double>& sums) const;
    void add_feet(const Eigen::VectorXd& u, State& state) const;
    void add_stiffness(int node, const Eigen::Matrix3d& k, State& state) const;
    [[nodiscard]] int place_of(int row, int column) const;

    const Frame* frame_;
    int left_out_;
    std::vector<bool> free_;    ///< full size
    std::vector<int> number_;   ///< full size
    std::vector<int> full_;     ///< one an unknown
    std::vector<Part> parts_;   ///< one a member
    std::vector<int> turning_;  ///< nodes at poles
    Feet feet_;
    Band band_;
};

}  // namespace coverframe::kernel
