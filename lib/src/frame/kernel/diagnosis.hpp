// SPDX-License-Identifier: BSD-3-Clause
// Why a state is none to build on, in words.
#pragma once

#include <string>

#include "frame/kernel/assembly.hpp"

namespace coverframe::kernel {

/// A pivot below this share of its diagonal is no resistance at all. One above it may be rounding all the same: the
/// condition tells (conditioning.hpp).
inline constexpr double singular_pivot = 1e-13;
/// From here on down it is looked at.
inline constexpr double doubtful_pivot = 1e-9;

/// Diagonal against which a tangent is measured: its own, but never far below the stiffest of its kind, and never below
/// what is nothing in any frame (1e-12 N/m).
void scale_of(const Band& band, const Eigen::VectorXd& K, Eigen::VectorXd& scale);

/// Factorises K + shift * scale. True if it is positive definite by a margin.
[[nodiscard]] bool factorise_positive(BandedLDLT& factor, const Eigen::VectorXd& K, const Eigen::VectorXd& scale,
                                      double shift);

/// K v
[[nodiscard]] Eigen::VectorXd product(const Band& band, const Eigen::VectorXd& K, const Eigen::VectorXd& v);

/// Size of a move of a direction (node*6 + direction): a turn counts like a move at an arm of 0.1 m, so that a bow is
/// named by where it moves most [m].
[[nodiscard]] double move_of(int full, double displacement);

/// Status and message of a state whose tangent is not positive definite: a part is free to move, compression pushes
/// it over, or its stiffnesses lie so far apart that nobody can tell. Names what is slack, lifted or missing there; a
/// part that is adrift (parts.hpp) before anything else.
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

}  // namespace coverframe::kernel
