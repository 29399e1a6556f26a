// SPDX-License-Identifier: BSD-3-Clause
// The rotation of one node (turn_kernel.hpp, where the symbols are told) in Eigen's types.
#pragma once

#include <Eigen/Core>

#include "frame/kernel/turn_kernel.hpp"

namespace coverframe::kernel {

/// [v]x, with cross(v) w = v x w.
[[nodiscard]] Eigen::Matrix3d cross(const Eigen::Vector3d& v);

class Turn {
public:
    explicit Turn(const Eigen::Vector3d& t) : turn_(turned<double>({t(0), t(1), t(2)})) {}

    /// R - I
    [[nodiscard]] Eigen::Matrix3d change() const;

    /// T in w = T dt
    [[nodiscard]] Eigen::Matrix3d rate() const;

    /// Derivative along t of T^T g with g fixed.
    [[nodiscard]] Eigen::Matrix3d rate_change(const Eigen::Vector3d& g) const;

private:
    Turned<double> turn_;
};

}  // namespace coverframe::kernel
