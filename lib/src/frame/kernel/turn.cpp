// SPDX-License-Identifier: BSD-3-Clause
#include "turn.hpp"

#include <Eigen/Dense>
#include <cmath>

namespace coverframe::kernel {

using Eigen::Matrix3d;
using Eigen::Vector3d;

Matrix3d cross(const Vector3d& v) {
    Matrix3d m;
    m << 0, -v(2), v(1), v(2), 0, -v(0), -v(1), v(0), 0;
    return m;
}

Turn::Coefficients Turn::coefficients(double s) {
    Coefficients k;
    if (s < 1) {
        k = {0, 0, 0, 0, 0};
        double term = 1;  // (-s)^n/(2n + 1)!
        for (int n = 0; n < 11; ++n) {
            const double next = term / ((2 * n + 2) * (2 * n + 3));  // (-s)^n/(2n + 3)!
            k.a += term;
            k.b += term / (2 * n + 2);
            k.c += next;
            // of the next term of b and c, -(n + 1) (-s)^n/(2n + 4)! and .../(2n + 5)!
            k.db -= (n + 1) * next / (2 * n + 4);
            k.dc -= (n + 1) * next / ((2 * n + 4) * (2 * n + 5));
            term = -s * next;
        }
        return k;
    }
    const double t = std::sqrt(s);
    k.a = std::sin(t) / t;
    k.b = (1 - std::cos(t)) / s;
    k.c = (1 - k.a) / s;
    k.db = (k.a - 2 * k.b) / (2 * s);
    k.dc = (k.b - 3 * k.c) / (2 * s);
    return k;
}

Turn::Turn(const Vector3d& t) : t_(t), s_(t.squaredNorm()), k_(coefficients(s_)) {}

Matrix3d Turn::change() const { return k_.a * cross(t_) + k_.b * cross(t_) * cross(t_); }

Matrix3d Turn::rate() const { return Matrix3d::Identity() + k_.b * cross(t_) + k_.c * cross(t_) * cross(t_); }

Matrix3d Turn::rate_change(const Vector3d& g) const {
    const double along = t_.dot(g);
    return -2 * k_.db * t_.cross(g) * t_.transpose() + k_.b * cross(g) +
           2 * k_.dc * (along * t_ - s_ * g) * t_.transpose() +
           k_.c * (along * Matrix3d::Identity() + t_ * g.transpose() - 2 * g * t_.transpose());
}

}  // namespace coverframe::kernel
