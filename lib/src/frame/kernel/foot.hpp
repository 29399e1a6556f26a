// SPDX-License-Identifier: BSD-3-Clause
// One foot on a pad or a sole that gives: pushes upwards only, and holds sideways by friction. Plain SI doubles: m, N.
// Axes: frame/frame.hpp.
//
// u is the displacement of the foot's node, d = |(ux, uy)|, k and k_s the stiffnesses upwards and sideways, g the gap.
//
//   upwards    1/2 k p^2,  p = <-(uz + g)>: push N = k p, none while it is lifted
//   sideways   1/2 k_s d^2           while k_s d <= F:  it holds
//              F d - F^2/(2 k_s)     beyond: it slips, and holds back with F, towards its drawn place
//   F = mu N' is given: N' is the push of the round before (frame/feet.hpp). Both are convex, with a continuous slope.
//
// Limits: frame/feet.hpp.
//
// Source: Coulomb's friction with a push that is given (Tresca's problem) as an energy, Duvaut and Lions, Inequalities
// in Mechanics and Physics, from memory; the elastic start regularises it as a spring under the sole would.
#pragma once

#include <Eigen/Core>

#include "coverframe/frame/frame.hpp"

namespace coverframe::kernel {

struct FootState {
    double energy = 0;        ///< [N m]
    Eigen::Vector3d force;    ///< of the foot on its node: minus the gradient [N]
    Eigen::Matrix3d tangent;  ///< Hessian [N/m]
    double push = 0;          ///< N [N]
    bool slips = false;
};

/// \param u     displacement of the node [m]
/// \param most  F, the greatest sideways force [N]; infinite: it holds whatever comes
[[nodiscard]] FootState foot_state(const Foot& foot, const Eigen::Vector3d& u, double most);

}  // namespace coverframe::kernel
