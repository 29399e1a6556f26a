// SPDX-License-Identifier: BSD-3-Clause
// The support as a frame of nodes and members: what is in the model, and what it can and cannot carry.
//
// Axes: x aft from the stem head, y to starboard, z up. Axial force: tension positive. All numbers are coherent SI
// (m, N, N/m, N m, rad): this is the kernel's side of the boundary, made by layout.hpp from quantities.
//
// Members
//   pole     a straight beam: pushes, pulls, bends about both axes, twists. Shear flexibility included. An end may sit
//            on a turning spring (a splice); a spring of 0 is a hinge, which carries no bending moment.
//   upright  a straight strut, pinned at both ends, that pushes only; it lifts off when its ends move apart.
//   strap    a tie between two nodes that pulls only, straight, slack when its ends come closer than its free length;
//            with a load along its length it hangs between them (solve.hpp).
//   bar      straight and pinned at both ends; pulls and pushes.
//
// Arms. A member's end may lie off its node, at the end of a rigid arm a that turns with the node: the end is at
// x_node + R(t) a, t the node's rotation, and turns with it. A node with an arm has a rotation, whatever joins it.
//
// Potential energy, minimised by the solver (solve.hpp). With x_i the present place of node i, l = |x_j - x_i| and
// L0 the free (unstressed) length of a member:
//   axial    EA/(2 L0) e^2,  e = l - L0 (1 + alpha dT);  strap: only e > 0;  upright: only e < 0;  pole, bar: always.
//            alpha the expansion of the member, dT how much warmer it is than where L0 holds (solve.hpp)
//   bending  1/2 b^T K b in each plane, b the turns of the member's two ends against the line between its nodes, in
//            the axes of each end, K the Timoshenko stiffness
//            with end springs condensed out
//   twist    GJ/(2 L) phi^2, phi the turn of one end against the other about that line
//   springs  1/2 k u^2 for each direction of a node with a spring against the boat; in a turn u is the component of the
//            rotation vector, so k u is the couple about that axis while the node turns little, or about it alone
// All of it is exact in rigid turns: straps, uprights and poles may turn as far as they like, and the turning of a
// pressed member (P-delta) is in it. A node's rotation is a rotation vector: its turn from the drawn place, whichever
// way it took, as an axis times an angle.
//
// Simplifications
//   * Strains are small, and so is the bend of one pole member between its nodes: under about 10 degrees at its ends.
//     solve() reports more instead of trusting it, and likewise an upright that leans over further: the energy may
//     balance again with the upright lying down.
//   * The bow of a pressed pole within one member (P-little-delta) is not in a member's own stiffness, and does not
//     shorten it; layout.hpp cuts poles into short members, which brings both back. An upright is one member: its own
//     buckling is a check.
//     Measured against exact answers (validation, CV-01 to CV-04), the error of deflections, turns and moments falls
//     with the square of the number of members: observed orders 1.6 to 2.3 from one member to two, 1.9 to 2.2 from four
//     to eight, 2.00 from sixteen on. With eight members a cantilever that bends by 26 degrees is off by 0.04 % in its
//     deflection, one that bends by 82 degrees by 0.2 %; a pole at half its Euler load, four members to half its
//     length, by 1.3 % in its deflection and 0.7 % in its moment.
//   * A couple, as a load or as the reaction of a rotation that is held, is the one along the rotation vector, which is
//     the couple about the axis itself while the node turns little or about that axis alone.
//   * A pole is free of stress in its drawn shape but for L0 and temperature, which is the same all through a member.
//   * Loads keep their direction.
//   * No friction: a strap is one tie on each side of an upright's top and does not slip over it.
//   * Held nodes do not give. Feet do, push only and slip (feet.hpp).
//   * Nothing but an arm is rigid, and an arm ends at a member, which gives: arms cannot fight one another. Two arms
//     that meet without a member between them are refused as a member without length.
//
// Parts. A frame may be made of several parts that no member joins, each held on its own. A part that nothing holds is
// no frame to refuse, for a load may hold it (an elastic support of solve.hpp): it is a mechanism, by the names of its
// nodes and members.
//
// Sources: McGuire, Gallagher and Ziemian, Matrix Structural Analysis (beam stiffness, from memory); Crisfield, A
// consistent co-rotational formulation for non-linear three-dimensional beam elements, 1990 (from memory; the turns
// measured here are not quite his); Kanno, Nonsmooth Mechanics and Convex Optimization (unilateral members as energies,
// from memory).
#pragma once

#include <array>
#include <limits>
#include <string>
#include <vector>

namespace coverframe {

struct FrameNode {
    std::string name;
    std::array<double, 3> at{};    ///< place before any force acts [m]
    std::array<bool, 6> held{};    ///< ux uy uz rx ry rz held by the boat
};

/// Of an end without a spring.
inline constexpr double rigid_end = std::numeric_limits<double>::infinity();

enum class MemberKind { pole, upright, strap, bar };

/// Stiffness of a pole against bending, shear and twist. Local axes: 1 along the member from `from` to `to`; 2 level
/// and across it (to starboard for a member that runs aft); 3 upwards. For a vertical member 2 is the global y.
struct BendingStiffness {
    double EI_vertical = 0;    ///< bending in the plane of 1 and 3: sag [N m2]
    double EI_level = 0;       ///< bending in the plane of 1 and 2 [N m2]
    double GA_vertical = 0;    ///< shear stiffness in direction 3, 5/6 G A for a rectangle [N]; 0: rigid in shear
    double GA_level = 0;       ///< shear stiffness in direction 2 [N]; 0: rigid in shear
    double GJ = 0;             ///< twist [N m2]
};

struct FrameMember {
    std::string name;              ///< of the part it belongs to: "ridge", "U2", "C2 port"
    MemberKind kind = MemberKind::pole;
    int from = 0;                  ///< index of a node
    int to = 0;
    double axial_stiffness = 0;    ///< EA [N]
    double free_length = 0;        ///< L0 [m]
    double weight = 0;             ///< self-weight per length [N/m], given to the nodes by self_weight()
    BendingStiffness bending;      ///< poles only
    /// Poles only: turning stiffness between the node and this end, in both planes [N m/rad]; infinite: rigid, 0: hinge
    double spring_from = rigid_end;
    double spring_to = rigid_end;
    double expansion = 0;              ///< alpha, strain for a rise of temperature [1/K]
    std::array<double, 3> arm_from{};  ///< from the node to this end of the member in the drawn place [m]
    std::array<double, 3> arm_to{};
};

/// What ties a node to the boat and gives. Its force on the node is minus stiffness times displacement.
struct NodeSpring {
    int node = 0;
    std::array<double, 6> stiffness{};  ///< along x y z [N/m], about x y z [N m/rad]; none under 0
};

/// Where a node stands on the boat without being tied to it (feet.hpp).
struct Foot {
    int node = 0;
    double stiffness = 0;       ///< of the pad or sole, upwards [N/m]
    double gap = 0;             ///< how far the node sinks before it bears, not negative [m]
    double friction = 0;        ///< mu, 0 to 2 [-]
    double side_stiffness = 0;  ///< of the pad or sole, level, until the foot slips; over 0 with friction [N/m]
};

struct Frame {
    std::vector<FrameNode> nodes;
    std::vector<FrameMember> members;
    std::vector<NodeSpring> springs;
    std::vector<Foot> feet;
};

/// Distance between the drawn places of a member's ends, at the ends of its arms [m].
[[nodiscard]] double drawn_length(const Frame& frame, const FrameMember& member);

/// Everything wrong with a frame as such, as codes and sentences, with the place and the number: member ends that do
/// not exist or coincide, lengths or stiffnesses that are not positive, a strap that would have to push
/// (frame.strap.push), springs under 0 or at no node, numbers that are not finite; and supports that fight: a spring in
/// a direction that is held (frame.spring.held), a foot that stands on a node held up (frame.foot.held) or rubs on one
/// held level (frame.foot.friction), two feet at a node (frame.foot.doubled).
/// \throws InputError with every problem, if there is any
void require_sound(const Frame& frame);

}  // namespace coverframe
