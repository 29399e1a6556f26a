// SPDX-License-Identifier: BSD-3-Clause
#include "foot.hpp"

#include <Eigen/Dense>
#include <algorithm>

namespace coverframe::kernel {

FootState foot_state(const Foot& foot, const Eigen::Vector3d& u, double most) {
    FootState s;
    s.force.setZero();
    s.tangent.setZero();
    const double pressed = -(u.z() + foot.gap);
    if (pressed > 0) {
        s.push = foot.stiffness * pressed;
        s.energy = 0.5 * s.push * pressed;
        s.force.z() = s.push;
        s.tangent(2, 2) = foot.stiffness;
    }
    if (foot.friction == 0 || most <= 0) return s;
    const Eigen::Vector2d moved = u.head<2>();
    const double d = moved.norm();
    const double k = foot.side_stiffness;
    s.slips = k * d > most;
    if (!s.slips) {
        s.energy += 0.5 * k * d * d;
        s.force.head<2>() = -k * moved;
        s.tangent.topLeftCorner<2, 2>() = k * Eigen::Matrix2d::Identity();
        return s;
    }
    const Eigen::Vector2d along = moved / d;
    s.energy += most * (d - 0.5 * most / k);
    s.force.head<2>() = -most * along;
    s.tangent.topLeftCorner<2, 2>() = most / d * (Eigen::Matrix2d::Identity() - along * along.transpose());
    return s;
}

}  // namespace coverframe::kernel
