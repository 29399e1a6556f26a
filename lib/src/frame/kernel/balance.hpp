// SPDX-License-Identifier: BSD-3-Clause
// What acts on a frame from outside, added up: forces, and moments about the origin of the axes.
//
// With x the present place of a node, t its rotation vector and T the derivative of its rotation (turn.hpp):
//   force f at the node         f,  x x f
//   couple m along t            T^-T m: work m.dt is (T^-T m).w with w = T dt
//   member load                 as the forces and couples that its energy (solve.hpp) puts on the nodes
//
// A member load's potential and forces are what goes when the loads are taken off while nothing moves.
#pragma once

#include "frame/kernel/assembly.hpp"

namespace coverframe::kernel {

/// Fills in the balance and both parts of the energy; the reactions and the energy are there.
void add_up(const Frame& frame, const Assembly& assembly, const Eigen::VectorXd& u, const FrameLoads& loads,
            Solution& solution);

}  // namespace coverframe::kernel
