// SPDX-License-Identifier: BSD-3-Clause
// One pole, a straight beam between two nodes, exact in rigid rotations of any size: energy, forces, tangent. Plain SI
// doubles: m, N, rad. Axes and signs: frame/frame.hpp.
//
// Unknowns q: displacement u and total rotation vector t of `from`, then of `to`, in global axes. A node is turned by
// R = exp([t]x), whatever turned it there, so the energy is a function of q, the unbalanced forces are its gradient
// and the tangent is its Hessian: symmetric in every state, balanced or not. The gradient along t is T^T g with g the
// moment on the node and T the derivative of the rotation, w = T dt (a moment in the plain sense only while t is small
// or about one axis).
//
// What follows the member. e1 e2 e3 are the drawn axes, L the drawn length, L0 the free length.
//   r    unit vector from the present place of `from` to that of `to`, l their distance
//   A_k  e_k as turned by `from`;  B_k  e_k as turned by `to`
// No single turned frame is chosen. Each end is measured in its own axes against r, and the two ends against one
// another, so only inner products of r, A_k and B_k enter: a rigid turn changes none of them.
//
// What is measured
//   stretch  e = l - L0
//   bending  the smallest rotation that brings r to A_1, in the axes of that end:
//            b2 = psi/sin(psi) r.A_3,  b3 = -psi/sin(psi) r.A_2,  psi the angle between r and A_1; same for B
//   twist    phi, the angle about r from A_2 to B_2 after each end's axes were brought to r by their smallest rotation
//
//   energy = EA/(2 L0) e^2 + 1/2 b2^T K2 b2 + 1/2 b3^T K3 b3 + GJ/(2 L) phi^2
//   K = EI/(L (1 + f)) [4 + f, 2 - f; 2 - f, 4 + f],  f = 12 EI/(GA L^2),  b2 and b3 of (from, to)
//
// Variations, with w_A, w_B the turning and dr the change of r:  d(r.A_k) = A_k.(dr - w_A x r)  and
//   dphi = k_B.(w_B - r x dr) - k_A.(w_A - r x dr),  k_A = (A_1 + r)/(1 + A_1.r)
//
// Ends. A spring of stiffness k sits between a node and the end of the member: moment = k * relative rotation, in both
// planes, condensed out (plane_beam.hpp). k infinite is rigid, 0 is a hinge. Springs pass twist, shear and axial force.
//
// Exact: axial energy; rigid turns of any size; bending in one plane at any rotation of the ends, as far as the
// member's own bow is small. Small rotations: the linear Timoshenko member.
// Limits
//   * Strains are small, and so is the rotation of an end against the chord, 0.2 rad or so: the bow of a member neither
//     shortens its chord (psi^2/6 of it for an even bend) nor adds to its stiffness under axial force (P-little-delta).
//     Cutting a pole into pieces brings both back. An end on a hinge may turn further.
//   * A rotation against the chord of a half turn is refused: its direction cannot be told.
//   * T is singular at |t| = 2 pi. Below a half turn, as in any frame that stands, this plays no part; past a whole
//     turn about more than one axis the rotations of nodes would have to be counted afresh.
//   * Section axes are those of the ends: principal, with centroid and shear centre on the line between the nodes. No
//     warping.
//
// Sources: Crisfield, A consistent co-rotational formulation for non-linear three-dimensional beam elements (1990);
// Felippa and Haugen, A unified formulation of small-strain corotational finite elements (2005); Bergou and others,
// Discrete elastic rods (2008), for the twist between carried axes; all from memory, derivatives worked out here.
#pragma once

#include <Eigen/Core>
#include <array>

#include "coverframe/frame/frame.hpp"
#include "frame/kernel/plane_beam.hpp"
#include "frame/kernel/pole_kernel.hpp"

namespace coverframe::kernel {

using Vector12 = Eigen::Matrix<double, 12, 1>;
using Matrix12 = Eigen::Matrix<double, 12, 12>;

/// What a pole carries, in the axes of its ends.
struct PoleForces {
    double axial = 0;                  ///< tension positive [N]
    std::array<double, 2> moment_2{};  ///< on the ends `from` and `to` about axis 2, in the sense of the axis [N m]
    std::array<double, 2> moment_3{};  ///< about axis 3 [N m]
    double twist = 0;                  ///< on `to` about axis 1 [N m]
    double length = 0;                 ///< present distance of the ends [m]
    double bend = 0;                   ///< largest turn of an end rigid to its node, against the chord [rad]
};

/// \throws StateError (frame.pole.folded) if an end points against the chord
void require_not_folded(const PoleMeasures<double>& m);

class Pole {
public:
    /// \param from,to     drawn places of the ends [m]
    /// \param axes        rows: drawn axes 1, 2, 3
    /// \param EA          axial stiffness [N]
    /// \param free_length [m]
    Pole(const Eigen::Vector3d& from, const Eigen::Vector3d& to, const Eigen::Matrix3d& axes, double EA,
         double free_length, const BendingStiffness& bending, const EndSprings& springs = {});

    /// [N m]. \throws StateError (frame.pole.folded) if an end points against the chord.
    [[nodiscard]] double energy(const Vector12& q) const;

    [[nodiscard]] PoleForces forces(const Vector12& q) const;
    /// The same with the turns of both ends.
    /// \param moved  displacement of the one end minus that of the other
    [[nodiscard]] PoleForces forces(const Vec<double>& moved, const Turned<double>& from,
                                    const Turned<double>& to) const;

    struct State {
        double energy = 0;  ///< [N m]
        double axial = 0;   ///< tension positive [N]
        Vector12 gradient;  ///< of the energy [N, N m]
        Matrix12 tangent;   ///< its Hessian
    };
    /// \param geometric  false: leave out the terms that come from the present forces
    [[nodiscard]] State evaluate(const Vector12& q, bool geometric = true) const;

    /// For the kernels (pole_kernel.hpp).
    [[nodiscard]] const PoleProperties& properties() const { return properties_; }
    [[nodiscard]] PoleForces forces(const PoleMeasures<double>& m) const;

private:
    PoleProperties properties_;
    std::array<bool, 2> rigid_;  ///< ends without a spring
};

}  // namespace coverframe::kernel
