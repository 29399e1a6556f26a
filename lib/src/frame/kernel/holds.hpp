// SPDX-License-Identifier: BSD-3-Clause
// What keeps nodes of a state from moving sideways, member by member taken away, from one factor of the tangent K.
//
// Let S be the directions of the node and of both ends of the member, and G = (K^-1)_SS: |S| solutions with the factor.
// What the whole frame holds S with is C = G^-1 (the rest free to move), the member's own part of it its tangent K_m on
// S. Without the member, and with heights held (rows and columns of C - K_m left out), the level flexibility of the
// node is that of C - K_m; the hold is the inverse of its greatest principal value.
//
// Limits. Where a member is much stiffer along S than all else, digits go in C - K_m: an upright of 1e7 N/m that leans
// by 0.1 takes 1e5 N/m off level holds of 1e2, which leaves twelve.
//
// Source: static condensation, McGuire, Gallagher and Ziemian, Matrix Structural Analysis (from memory).
#pragma once

#include <Eigen/Core>
#include <vector>

#include "coverframe/frame/solve.hpp"
#include "frame/kernel/assembly.hpp"

namespace coverframe::kernel {

class Holds {
public:
    /// \throws StateError frame.solution.unusable if the solution did not converge
    Holds(const Frame& frame, const FrameLoads& loads, const Solution& solution);

    [[nodiscard]] LateralHold at(const HoldAt& place);

private:
    [[nodiscard]] std::vector<int> directions(const HoldAt& place) const;
    [[nodiscard]] Eigen::MatrixXd tangent_of(int member, const std::vector<int>& directions) const;

    const Frame& frame_;
    const FrameLoads& loads_;
    Assembly assembly_;
    Eigen::VectorXd u_;
    BandedLDLT factor_;
    bool stands_ = false;
    std::vector<int> loose_;  ///< nodes that hang loose: nothing holds them
};

}  // namespace coverframe::kernel
