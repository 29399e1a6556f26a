// SPDX-License-Identifier: BSD-3-Clause
// Why a state is none to build on, in words; and what a factor of its tangent tells of its conditioning.
//
// Conditioning. With D the diagonal of K (scale_of), the estimate is ||S||_1 ||S^-1||_1 of S = D^(-1/2) K D^(-1/2): the
// first by adding up, the second by Hager's climb on the unit ball of the 1-norm with Higham's end (a vector of
// alternating signs), at most five solutions with the factor. It is never over the true number, and hardly ever under a
// third of it. Stiffest and softest shape: by powers of S and of S^-1.
//
// Source: N. J. Higham, FORTRAN codes for estimating the one-norm of a real or complex matrix, with applications to
// condition estimation, ACM TOMS 14 (1988), algorithm 2.4 (from memory).
#pragma once

#include <string>

#include "frame/kernel/assembly.hpp"

namespace coverframe::kernel {

/// A pivot below this share of its diagonal is no resistance at all.
inline constexpr double singular_pivot = 1e-11;

/// Diagonal against which a tangent is measured: its own, but never far below the stiffest of its kind, and never below
/// what is nothing in any frame (1e-12 N/m).
void scale_of(const Band& band, const Eigen::VectorXd& K, Eigen::VectorXd& scale);

/// Factorises K + shift * scale. True if it is positive definite by a margin.
[[nodiscard]] bool factorise_positive(BandedLDLT& factor, const Eigen::VectorXd& K, const Eigen::VectorXd& scale,
                                      double shift);

/// K v
[[nodiscard]] Eigen::VectorXd product(const Band& band, const Eigen::VectorXd& K, const Eigen::VectorXd& v);

/// Status and message of a state whose tangent is not positive definite: a part is free to move, or compression pushes
/// it over. Names what is slack, lifted or missing there.
void diagnose(const Frame& frame, const Assembly& assembly, const Eigen::VectorXd& u, const FrameLoads& loads,
              const std::vector<int>& loose, Solution& solution);

/// The part that turned furthest.
struct Furthest {
    double angle = 0;  ///< [rad]
    std::string part;  ///< "upright "U1" leans"
};
/// Bend of the poles between two nodes, or the lean of an upright that pushes if that is larger.
/// \param bends  of each member
[[nodiscard]] Furthest largest_turn(const Frame& frame, const Assembly& assembly, const Eigen::VectorXd& u,
                                    const std::vector<double>& bends);

/// Holds nodes that hang loose (loose.hpp), which nothing else does and nothing needs to.
void hold_loose(const Assembly& assembly, const std::vector<int>& loose, Eigen::VectorXd& K);

/// Estimate of the condition number, see above; 1 without unknowns.
/// \param factor  of K
[[nodiscard]] double condition_of(BandedLDLT& factor, const Eigen::VectorXd& K, const Eigen::VectorXd& scale);

/// The members with the largest shares in the stiffest and the softest shape, as a sentence.
[[nodiscard]] std::string conditioning_text(const Frame& frame, BandedLDLT& factor, const Eigen::VectorXd& u,
                                            const FrameLoads& loads, const Eigen::VectorXd& K,
                                            const Eigen::VectorXd& scale);

}  // namespace coverframe::kernel
