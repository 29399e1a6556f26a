// SPDX-License-Identifier: BSD-3-Clause
// Rigid arms between nodes and the ends of members. Plain SI doubles: m, N, rad.
//
// An arm a turns with its node: the end of the member is at x + R(t) a and turns by t. Along the node's unknowns
//   du_end = du + J dt,  J = -[R a]x T,   T as in turn.hpp
// A member's energy E(u_end, t) with the gradient (f, m) at an end becomes one of the node's (u, t):
//   gradient (f, m + J^T f);   Hessian  M^T H M, M = [I, J; 0, I], and the second derivative of f.(R a) along t
//
// Exact for any turn of the node.
// Source: chain rule, worked out here.
#pragma once

#include <Eigen/Core>
#include <array>

#include "frame/kernel/turn.hpp"

namespace coverframe::kernel {

/// Derivatives along t of the energy f.(R a) with f fixed.
struct Lever {
    Eigen::Vector3d gradient;
    Eigen::Matrix3d hessian;
};
/// \param turned  R a
[[nodiscard]] Lever lever(const Turn& turn, const Eigen::Vector3d& turned, const Eigen::Vector3d& f);

class Arms {
public:
    /// \param arm  of `from` and `to` as drawn [m]
    explicit Arms(const std::array<Eigen::Vector3d, 2>& arm) : arm_(arm) {}

    /// Displacements and rotations of a member's ends from those of its nodes.
    [[nodiscard]] Eigen::Matrix<double, 12, 1> ends(const Eigen::Matrix<double, 12, 1>& nodes) const;

    /// Makes gradient and Hessian along a member's ends those along its nodes, in place.
    /// \param geometric  false: leave out the second derivative of the arms' turning
    void carry(const Eigen::Matrix<double, 12, 1>& nodes, bool geometric, Eigen::Matrix<double, 12, 1>& gradient,
               Eigen::Matrix<double, 12, 12>& hessian) const;

private:
    std::array<Eigen::Vector3d, 2> arm_;
};

}  // namespace coverframe::kernel
