// SPDX-License-Identifier: BSD-3-Clause
#include "pole.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "coverframe/base/error.hpp"

namespace coverframe::kernel {

using Eigen::Matrix2d;
using Eigen::Matrix3d;
using Eigen::Vector3d;

namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

Vec<double> vec(const Vector3d& v) { return {v(0), v(1), v(2)}; }

Vector3d eigen(const Vec<double>& v) { return {v.x, v.y, v.z}; }

Matrix3d eigen(const Mat<double>& m) {
    Matrix3d matrix;
    matrix << eigen(m.c0), eigen(m.c1), eigen(m.c2);
    return matrix;
}

Matrix3d eigen(const Sym<double>& m) {
    Matrix3d matrix;
    matrix << m.xx, m.yx, m.zx, m.yx, m.yy, m.zy, m.zx, m.zy, m.zz;
    return matrix;
}

/// The ends' turns and what is measured between them.
struct Measured {
    Turned<double> from, to;
    PoleMeasures<double> m;

    Measured(const PoleProperties& pole, const Vector12& q)
        : from(turned(vec(q.segment<3>(3)))),
          to(turned(vec(q.segment<3>(9)))),
          m(measure(pole, vec(q.segment<3>(6)) - vec(q.segment<3>(0)), from, to)) {
        require_not_folded(m);
    }
};

PoleProperties properties_of(const Vector3d& drawn, const Matrix3d& axes, double EA, double free_length,
                             const BendingStiffness& bending, const EndSprings& springs) {
    const double length = drawn.norm();
    const Matrix2d two = plane_beam(bending.EI_vertical, bending.GA_vertical, length, springs).stiffness;
    const Matrix2d three = plane_beam(bending.EI_level, bending.GA_level, length, springs).stiffness;
    return {.drawn = vec(drawn),
            .axes = {vec(axes.row(0)), vec(axes.row(1)), vec(axes.row(2))},
            .drawn_length = length,
            .free_length = free_length,
            .axial = EA / free_length,
            .near_2 = {two(0, 0), two(1, 1)},
            .far_2 = two(1, 0),
            .near_3 = {three(0, 0), three(1, 1)},
            .far_3 = three(1, 0),
            .twist = bending.GJ / length};
}

}  // namespace

double swing_value(double c) {
    const double x = 1 - c;
    if (x < SwingSeries::reach_of_few) return sum_of<SwingSeries::few>(swing_series.value, x);
    if (x < SwingSeries::reach) return sum_of<SwingSeries::terms>(swing_series.value, x);
    return std::acos(c) / std::sqrt(1 - c * c);
}

Swing<double> swing_all(double c) {
    Swing<double> g{swing_value(c), 0, 0};
    const double x = 1 - c;
    if (x < SwingSeries::reach_of_few) {
        g.d = sum_of<SwingSeries::few>(swing_series.d, x);
        g.dd = sum_of<SwingSeries::few>(swing_series.dd, x);
    } else if (x < SwingSeries::reach) {
        g.d = sum_of<SwingSeries::terms>(swing_series.d, x);
        g.dd = sum_of<SwingSeries::terms>(swing_series.dd, x);
    } else {
        const double sine_squared = 1 - c * c;
        g.d = (c * g.value - 1) / sine_squared;
        g.dd = (g.value + 3 * c * g.d) / sine_squared;
    }
    return g;
}

double angle_of(double y, double x) {
    if (!(std::abs(y) < AngleSeries::reach * x)) return std::atan2(y, x);
    const double q = y / x;
    return q * sum_of<AngleSeries::terms>(angle_series.series, q * q);
}

void require_not_folded(const PoleMeasures<double>& m) {
    if (least_fold(m) > fold_margin) return;
    throw StateError("frame.pole.folded", m.length > 0 ? "an end of a pole points against the line between its ends"
                                                       : "the ends of a pole meet");
}

Pole::Pole(const Vector3d& from, const Vector3d& to, const Matrix3d& axes, double EA, double free_length,
           const BendingStiffness& bending, const EndSprings& springs)
    : properties_(properties_of(to - from, axes, EA, free_length, bending, springs)),
      rigid_{!std::isfinite(springs.from), !std::isfinite(springs.to)} {}

double Pole::energy(const Vector12& q) const {
    const Measured now(properties_, q);
    return energy_of(now.m, carried(properties_, now.m));
}

PoleForces Pole::forces(const Vector12& q) const {
    const Measured now(properties_, q);
    return forces(now.m);
}

PoleForces Pole::forces(const Vec<double>& moved, const Turned<double>& from, const Turned<double>& to) const {
    const PoleMeasures<double> m = measure(properties_, moved, from, to);
    require_not_folded(m);
    return forces(m);
}

PoleForces Pole::forces(const PoleMeasures<double>& m) const {
    const PoleCarries<double> carries = carried(properties_, m);
    PoleForces f;
    f.axial = carries.axial;
    f.moment_2 = {carries.moment_2[0], carries.moment_2[1]};
    f.moment_3 = {carries.moment_3[0], carries.moment_3[1]};
    f.twist = carries.torque;
    f.length = m.length;
    for (int i = 0; i < 2; ++i) {
        if (rigid_[index(i)]) f.bend = std::max(f.bend, std::hypot(m.end[i].b2, m.end[i].b3));
    }
    return f;
}

Pole::State Pole::evaluate(const Vector12& q, bool geometric) const {
    const Measured now(properties_, q);
    const PoleCarries<double> f = carried(properties_, now.m);
    PoleBlocks<double> blocks;
    derive(properties_, now.m, f, now.from, now.to, geometric, blocks);
    State state;
    state.energy = energy_of(now.m, f);
    state.axial = f.axial;
    // The moved end counts plus at `to`, minus at `from`.
    state.gradient << -eigen(blocks.d), eigen(blocks.t[0]), eigen(blocks.d), eigen(blocks.t[1]);
    const Matrix3d dd = eigen(blocks.dd);
    const Matrix3d ad = eigen(blocks.td[0]);
    const Matrix3d bd = eigen(blocks.td[1]);
    const Matrix3d ba = eigen(blocks.ba);
    state.tangent << dd, -ad.transpose(), -dd, -bd.transpose(),  //
        -ad, eigen(blocks.tt[0]), ad, ba.transpose(),            //
        -dd, ad.transpose(), dd, bd.transpose(),                 //
        -bd, ba, bd, eigen(blocks.tt[1]);
    return state;
}

}  // namespace coverframe::kernel
