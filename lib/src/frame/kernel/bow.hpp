// SPDX-License-Identifier: BSD-3-Clause
// What the axial force does to a pole that bows between its nodes (P-little-delta), for buckling. Plain SI doubles.
//
// Between its nodes the member's line is a cubic, v' its slope against the chord. The axial force N does work on what
// the slope shortens the chord:
//     N/2 integral of v'^2 = 1/2 N a^T G a,  G = L/30 [4, -1; -1, 4],  a the slopes of the line at both ends
// In the axes of its ends a = C b, b the turns of the nodes against the chord, C = (EI/L [4, 2; 2, 4])^-1 K: moments
// are K b and the line is that of a beam without shear which has these moments, so C brings in shear, springs and
// hinges of the ends alike. The term added to the tangent is N (db)^T C^T G C (db), in both planes, with
//     db_2 = A_3.(dr - w x r),  db_3 = -A_2.(dr - w x r)                        (pole.hpp; psi/sin psi taken as 1)
//
// With it the lowest factor of a pole in n members per half wave is too high by about 0.0075 (2/n)^4 instead of
// pi^2/(12 n^2): 0.75 % for two, 0.05 % for four (tests/frame/buckling_test.cpp). It is not in the pole's energy: the
// equilibrium sees the bow through the subdivision of poles alone.
//
// Source: McGuire, Gallagher and Ziemian, Matrix Structural Analysis (consistent geometric stiffness, from memory);
// C worked out here.
#pragma once

#include "frame/kernel/pole.hpp"

namespace coverframe::kernel {

/// The term of one pole over its twelve unknowns [N/m, N, N m].
/// \param from,to  drawn places of its ends; axes: rows, drawn axes 1, 2, 3; q: unknowns as in pole.hpp
[[nodiscard]] Matrix12 bow_tangent(const Eigen::Vector3d& from, const Eigen::Vector3d& to, const Eigen::Matrix3d& axes,
                                   const BendingStiffness& bending, const EndSprings& springs, double axial,
                                   const Vector12& q);

}  // namespace coverframe::kernel
