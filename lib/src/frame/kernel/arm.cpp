// SPDX-License-Identifier: BSD-3-Clause
#include "arm.hpp"

#include <Eigen/Dense>

namespace coverframe::kernel {

using Eigen::Matrix3d;
using Eigen::Vector3d;

Lever lever(const Turn& turn, const Vector3d& turned, const Vector3d& f) {
    const Vector3d moment = turned.cross(f);
    const Matrix3d change = turned * f.transpose() - turned.dot(f) * Matrix3d::Identity();
    const Matrix3d rate = turn.rate();
    return {rate.transpose() * moment, rate.transpose() * change * rate + turn.rate_change(moment)};
}

Eigen::Matrix<double, 12, 1> Arms::ends(const Eigen::Matrix<double, 12, 1>& nodes) const {
    Eigen::Matrix<double, 12, 1> d = nodes;
    for (int i = 0; i < 2; ++i) {
        const Vector3d& arm = arm_[static_cast<std::size_t>(i)];
        if (arm.squaredNorm() > 0) d.segment<3>(6 * i) += Turn(nodes.segment<3>(6 * i + 3)).change() * arm;
    }
    return d;
}

void Arms::carry(const Eigen::Matrix<double, 12, 1>& nodes, bool geometric, Eigen::Matrix<double, 12, 1>& gradient,
                 Eigen::Matrix<double, 12, 12>& hessian) const {
    for (int i = 0; i < 2; ++i) {
        const Vector3d& arm = arm_[static_cast<std::size_t>(i)];
        if (!(arm.squaredNorm() > 0)) continue;
        const int u = 6 * i;
        const int t = u + 3;
        const Turn turn(nodes.segment<3>(t));
        const Vector3d turned = arm + turn.change() * arm;
        const Matrix3d J = -cross(turned) * turn.rate();
        const Lever own = lever(turn, turned, gradient.segment<3>(u));
        gradient.segment<3>(t) += own.gradient;
        hessian.middleCols<3>(t) += (hessian.middleCols<3>(u) * J).eval();
        hessian.middleRows<3>(t) += (J.transpose() * hessian.middleRows<3>(u)).eval();
        if (geometric) hessian.block<3, 3>(t, t) += own.hessian;
    }
}

}  // namespace coverframe::kernel
