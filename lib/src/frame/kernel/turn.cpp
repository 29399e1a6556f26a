// SPDX-License-Identifier: BSD-3-Clause
#include "turn.hpp"

#include <Eigen/Dense>
#include <cmath>

namespace coverframe::kernel {

using Eigen::Matrix3d;
using Eigen::Vector3d;

namespace {

Vector3d eigen(const Vec<double>& v) { return {v.x, v.y, v.z}; }

Matrix3d eigen(const Mat<double>& m) {
    Matrix3d matrix;
    matrix << eigen(m.c0), eigen(m.c1), eigen(m.c2);
    return matrix;
}

}  // namespace

TurnCoefficients turn_coefficients(double s) {
    TurnCoefficients k{};
    if (s < 1) {
        constexpr int terms = TurnSeries::terms;
        k.c = sum_of<terms>(turn_series.c, s);
        k.db = sum_of<terms>(turn_series.db, s);
        k.dc = sum_of<terms>(turn_series.dc, s);
        k.a = 1 - s * k.c;
        k.b = 0.5 * k.a - s * k.db;
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

Matrix3d cross(const Vector3d& v) {
    Matrix3d m;
    m << 0, -v(2), v(1), v(2), 0, -v(0), -v(1), v(0), 0;
    return m;
}

Matrix3d Turn::change() const { return eigen(turn_.change); }

Matrix3d Turn::rate() const { return eigen(rate_of(turn_)); }

Matrix3d Turn::rate_change(const Vector3d& g) const {
    const Vector3d t = eigen(turn_.t);
    const double along = t.dot(g);
    return -2 * turn_.db * t.cross(g) * t.transpose() + turn_.b * cross(g) +
           2 * turn_.dc * (along * t - turn_.s * g) * t.transpose() +
           turn_.c * (along * Matrix3d::Identity() + t * g.transpose() - 2 * g * t.transpose());
}

}  // namespace coverframe::kernel
