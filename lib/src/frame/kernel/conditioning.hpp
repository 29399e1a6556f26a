// SPDX-License-Identifier: BSD-3-Clause
// How many digits a tangent leaves, and which members take the others.
//
// Condition. With D the diagonal of K (scale_of), the estimate is ||S||_1 ||S^-1||_1 of S = D^(-1/2) K D^(-1/2): the
// first by adding up, the second by Hager's climb on the unit ball of the 1-norm with Higham's end (a vector of
// alternating signs), at most five solutions with the factor. It is never over the true number, and hardly ever under a
// third of it.
//
// Who causes it. v is the softest shape of S as displacements, K = sum of K_m over all that holds the frame: members,
// springs, feet, elastic supports. Digits go where diagonals cancel in v^T K v:
//     own_m = sum D_m v^2     what the diagonal of m would store alone
//     held_m = v^T K_m v      what m stores: nearly nothing where v moves m without straining it; under 1e-13 own_m
//                             it is rounding and counts as nothing
// Stiffest is what has the largest own_m; softest, the largest held_m.
//
// Strained. In a mechanism nothing is strained: held_m is nothing, against own_m and against what the stiffest of m
// would store if v moved its nodes as far along it (the rest of v there is rounding), for all that moves with v. Where
// something is strained, the shape is held, however softly against the rest.
//
// Source: N. J. Higham, FORTRAN codes for estimating the one-norm of a real or complex matrix, with applications to
// condition estimation, ACM TOMS 14 (1988), algorithm 2.4 (from memory).
#pragma once

#include <string>

#include "frame/kernel/assembly.hpp"

namespace coverframe::kernel {

/// From here on the digits left are told.
inline constexpr double ill_conditioned = 1e12;
/// From here on a mechanism may hide behind rounding.
inline constexpr double suspicious = 1e14;
/// From here on no digit is left.
inline constexpr double no_digit_left = 1e16;

/// Estimate of the condition number, see above; 1 without unknowns.
/// \param factor  of K
[[nodiscard]] double condition_of(BandedLDLT& factor, const Eigen::VectorXd& K, const Eigen::VectorXd& scale);

/// Where a frame is, and how it would move: what the sentences below look at.
struct Shape {
    const Frame& frame;
    const Assembly& assembly;
    const Eigen::VectorXd& u;  ///< full size
    const FrameLoads& loads;
    Eigen::VectorXd v;  ///< over the unknowns
};

/// The softest shape of a tangent, by powers of S^-1.
[[nodiscard]] Eigen::VectorXd softest_shape(BandedLDLT& factor, const Eigen::VectorXd& scale);

/// Whether something that moves with a shape is strained by it, see above.
[[nodiscard]] bool strained(const Shape& shape);

/// "stiffnesses lie so far apart that only the first 3 digits can be trusted: "a" is stiffest, "b" softest". All names
/// whose part is half of the largest or more.
[[nodiscard]] std::string conditioning_text(const Shape& shape, double condition);

}  // namespace coverframe::kernel
