// SPDX-License-Identifier: BSD-3-Clause
// The support as a frame of nodes and members: what is in the model, and what it can and cannot carry.
//
// Axes: x aft from the stem head, y to starboard, z up. Axial force: tension positive. All numbers are coherent SI
// (m, N, N/m, N m, rad): this is the kernel's side of the boundary, made by layout.hpp from quantities.
//
// Members
//   pole     a straight beam: pushes, pulls, bends about both axes, twists. Shear flexibility included. An end may be
//            hinged (a splice): it then carries no bending moment there.
//   upright  a straight strut, pinned at both ends, that pushes only; it lifts off when its ends move apart.
//   strap    a straight tie between two nodes that pulls only; slack when its ends come closer than its free length.
//
// Potential energy, minimised by the solver (solve.hpp). With x_i the present place of node i, l = |x_j - x_i| and
// L0 the free (unstressed) length of a member:
//   axial    EA/(2 L0) e^2,  e = l - L0;  strap: only e > 0;  upright: only e < 0;  pole: always
//   bending  1/2 b^T K b in each plane, b the turns of the member's two ends against the line between its nodes, in
//            the axes of each end, K the Timoshenko stiffness
//   twist    GJ/(2 L) phi^2, phi the turn of one end against the other about that line
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
//   * A couple on a rotation that is held only about some axes is the one along the rotation vector, which is the
//     couple about the axis itself while the node turns little or about that axis alone.
//   * A pole is free of stress in its drawn shape.
//   * Loads act at nodes and keep their direction.
//   * No friction: a strap is one tie on each side of an upright's top and does not slip over it.
//   * Feet and held nodes do not give.
//
// Sources: McGuire, Gallagher and Ziemian, Matrix Structural Analysis (beam stiffness, from memory); Crisfield, A
// consistent co-rotational formulation for non-linear three-dimensional beam elements, 1990 (from memory; the turns
// measured here are not quite his); Kanno, Nonsmooth Mechanics and Convex Optimization (unilateral members as energies,
// from memory).
#pragma once

#include <array>
#include <string>
#include <vector>

namespace coverframe {

struct FrameNode {
    std::string name;
    std::array<double, 3> at{};    ///< place before any force acts [m]
    std::array<bool, 6> held{};    ///< ux uy uz rx ry rz held by the boat
};

enum class MemberKind { pole, upright, strap };

/// Stiffness of a pole against bending, shear and twist. Local axes: 1 along the member from `from` to `to`; 2 level and
/// across it (to starboard for a member that runs aft); 3 upwards. For a vertical member 2 is the global y.
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
    bool hinged_from = false;      ///< poles only: no bending moment at this end
    bool hinged_to = false;
};

struct Frame {
    std::vector<FrameNode> nodes;
    std::vector<FrameMember> members;
};

/// Distance between the drawn places of a member's ends [m].
[[nodiscard]] double drawn_length(const Frame& frame, const FrameMember& member);

/// Everything wrong with a frame as such, as codes and sentences: member ends that do not exist or coincide, lengths or
/// stiffnesses that are not positive, numbers that are not finite.
/// \throws InputError with every problem, if there is any
void require_sound(const Frame& frame);

}  // namespace coverframe
