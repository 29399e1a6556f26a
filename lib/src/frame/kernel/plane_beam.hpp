// SPDX-License-Identifier: BSD-3-Clause
// Bending of a pole in one of its planes: stiffness and load over the turns of its two nodes, in first order.
//
// Shear-flexible beam of length L between its ends, b the turns of its own ends against the line between them:
//   energy = 1/2 b^T K b - q L^2 c^T s,   K = EI/(L (1 + f)) [4 + f, 2 - f; 2 - f, 4 + f],  f = 12 EI/(GA L^2)
// q is an even load across the member and s the slopes of its ends towards it. The work of the load is q times the area
// under the bow, and the mean bow is L/12 (s_from - s_to): c = (1/12, -1/12), with any shear stiffness, because an even
// part of the shear strain moves no area.
//
// Ends. A spring of stiffness k sits between a node and the end of the member: moment = k * relative rotation. The turn
// of the end itself has no force on it but those, so it is condensed out, end by end, with K_i the column of that end:
//   K - K_i K_i^T/(K_ii + k),   c - K_i c_i/(K_ii + k)
// What is left speaks of the turns of the nodes. k infinite is rigid, 0 is a hinge: c = (0, -1/8) and (1/8, 0) for one
// hinge without shear. A term without any turn, the bow between held ends, is left out (frame/solve.hpp).
//
// Source: the textbook's beam (Przemieniecki, Theory of Matrix Structural Analysis, from memory); condensed here.
#pragma once

#include <Eigen/Core>
#include <limits>

namespace coverframe::kernel {

/// Springs at the ends of a pole [N m/rad]: infinite is rigid, 0 is a hinge.
struct EndSprings {
    double from = std::numeric_limits<double>::infinity();
    double to = std::numeric_limits<double>::infinity();
};

struct PlaneBeam {
    Eigen::Matrix2d stiffness;  ///< K [N m]
    Eigen::Vector2d load;       ///< c [-]
};

[[nodiscard]] PlaneBeam plane_beam(double EI, double GA, double length, const EndSprings& springs);

}  // namespace coverframe::kernel
