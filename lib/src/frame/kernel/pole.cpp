// SPDX-License-Identifier: BSD-3-Clause
#include "pole.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "coverframe/base/error.hpp"
#include "frame/kernel/turn.hpp"

namespace coverframe::kernel {

using Eigen::Matrix2d;
using Eigen::Matrix3d;
using Eigen::Vector2d;
using Eigen::Vector3d;

namespace {

using Matrix39 = Eigen::Matrix<double, 3, 9>;
using Matrix9 = Eigen::Matrix<double, 9, 9>;
using Vector9 = Eigen::Matrix<double, 9, 1>;

std::size_t index(int i) { return static_cast<std::size_t>(i); }

/// psi/sin psi as a function of c = cos psi, with two derivatives.
struct Swing {
    double value = 0, d = 0, dd = 0;
};

Swing swing(double c) {
    const double x = 1 - c;
    Swing g;
    if (x < 0.2) {
        double term = 1;  // (n!)^2 2^n x^n/(2n + 1)!
        for (int n = 0; n < 20; ++n) {
            g.value += term;
            const double next = term * (n + 1) / (2 * n + 3);  // of x^(n+1), less one x
            g.d -= (n + 1) * next;
            g.dd += (n + 1) * (n + 2) * next * (n + 2) / (2 * n + 5);
            term = next * x;
        }
        return g;
    }
    const double sine_squared = 1 - c * c;
    g.value = std::acos(c) / std::sqrt(sine_squared);
    g.d = (c * g.value - 1) / sine_squared;
    g.dd = (g.value + 3 * c * g.d) / sine_squared;
    return g;
}

}  // namespace

struct PoleMeasures {
    Vector3d r;
    double length = 0;
    double stretch = 0;
    std::array<Turn, 2> turn;
    std::array<Matrix3d, 2> axes;  ///< columns A_k, then B_k
    std::array<Vector3d, 2> s;     ///< r.A_k, r.B_k
    std::array<Swing, 2> swing{};
    std::array<Vector2d, 2> b;  ///< b2, b3, each at from and to
    double phi = 0;
};

Pole::Pole(const Vector3d& from, const Vector3d& to, const Matrix3d& axes, double EA, double free_length,
           const BendingStiffness& bending, const EndSprings& springs)
    : drawn_(to - from),
      axes_(axes.transpose()),
      drawn_length_(drawn_.norm()),
      axial_(EA / free_length),
      free_length_(free_length),
      bending_{plane_beam(bending.EI_vertical, bending.GA_vertical, drawn_length_, springs).stiffness,
               plane_beam(bending.EI_level, bending.GA_level, drawn_length_, springs).stiffness},
      twist_(bending.GJ / drawn_length_),
      rigid_{!std::isfinite(springs.from), !std::isfinite(springs.to)} {}

// Every small number is made of changes from the drawn shape, never as a difference of numbers near 1: a stiff member
// would drown in rounding.
PoleMeasures Pole::measure(const Vector12& q) const {
    PoleMeasures m{.r = {}, .turn = {Turn(q.segment<3>(3)), Turn(q.segment<3>(9))}, .axes = {}, .s = {}, .b = {}};
    const Vector3d moved = q.segment<3>(6) - q.segment<3>(0);
    const Vector3d chord = drawn_ + moved;
    m.length = chord.norm();
    if (!(m.length > 0)) throw StateError("frame.pole.folded", "the ends of a pole meet");
    m.r = chord / m.length;
    const double longer = moved.dot(2 * drawn_ + moved) / (m.length + drawn_length_);
    m.stretch = (drawn_length_ - free_length_) + longer;
    const Vector3d chord_change = (moved - longer * axes_.col(0)) / m.length;
    std::array<Matrix3d, 2> change;
    for (std::size_t i = 0; i < 2; ++i) {
        change[i] = m.turn[i].change() * axes_;
        m.axes[i] = axes_ + change[i];
        m.s[i] = axes_.transpose() * chord_change + change[i].transpose() * m.r;
        m.s[i](0) = m.r.dot(m.axes[i].col(0));
        if (!(1 + m.s[i](0) > 1e-9)) {
            throw StateError("frame.pole.folded", "an end of a pole points against the line between its ends");
        }
        m.swing[i] = swing(m.s[i](0));
        m.b[0](static_cast<Eigen::Index>(i)) = m.swing[i].value * m.s[i](2);
        m.b[1](static_cast<Eigen::Index>(i)) = -m.swing[i].value * m.s[i](1);
    }
    const auto dot = [&](int j, int k) {  // A_j.B_k for j, k that differ
        return change[0].col(j).dot(m.axes[1].col(k)) + axes_.col(j).dot(change[1].col(k));
    };
    const Vector3d part_a = m.s[0] / (1 + m.s[0](0));
    const Vector3d part_b = m.s[1] / (1 + m.s[1](0));
    const double sum = m.axes[0].col(0).dot(m.axes[1].col(0)) + m.s[0](0) + m.s[1](0) + 1;
    const auto carried = [&](int j, double product) {  // A_j.B_2 after both were brought to r
        return product - part_b(1) * (m.axes[0].col(j).dot(m.axes[1].col(0)) + m.s[0](j)) -
               part_a(j) * (m.axes[0].col(0).dot(m.axes[1].col(1)) + m.s[1](1)) + part_a(j) * part_b(1) * sum;
    };
    m.phi = std::atan2(carried(2, dot(2, 1)), carried(1, m.axes[0].col(1).dot(m.axes[1].col(1))));
    return m;
}

double Pole::energy(const Vector12& q) const { return energy_of(measure(q)); }

double Pole::energy_of(const PoleMeasures& m) const {
    return 0.5 * (axial_ * m.stretch * m.stretch + m.b[0].dot(bending_[0] * m.b[0]) + m.b[1].dot(bending_[1] * m.b[1]) +
                  twist_ * m.phi * m.phi);
}

PoleForces Pole::forces(const Vector12& q) const {
    const PoleMeasures m = measure(q);
    const Vector2d moment_2 = bending_[0] * m.b[0];
    const Vector2d moment_3 = bending_[1] * m.b[1];
    PoleForces f;
    f.axial = axial_ * m.stretch;
    f.moment_2 = {moment_2(0), moment_2(1)};
    f.moment_3 = {moment_3(0), moment_3(1)};
    f.twist = twist_ * m.phi;
    f.length = m.length;
    for (int i = 0; i < 2; ++i) {
        if (rigid_[index(i)]) f.bend = std::max(f.bend, std::hypot(m.b[0](i), m.b[1](i)));
    }
    return f;
}

namespace {

/// Gradient and Hessian over (dr, w_A, w_B), then over (moved end minus moved end, t_A, t_B).
struct Nine {
    Vector9 gradient = Vector9::Zero();
    Matrix9 change = Matrix9::Zero();
};

/// First and second derivatives of b2 and b3 of one end along s = (r.A_1, r.A_2, r.A_3).
struct Angles {
    Vector3d d2, d3;
    Matrix3d dd2, dd3;
};

Angles angles(const Swing& g, const Vector3d& s) {
    Angles a;
    a.d2 << g.d * s(2), 0, g.value;
    a.d3 << -g.d * s(1), -g.value, 0;
    a.dd2 << g.dd * s(2), 0, g.d, 0, 0, 0, g.d, 0, 0;
    a.dd3 << -g.dd * s(1), -g.d, 0, -g.d, 0, 0, 0, 0, 0;
    return a;
}

/// dr - w x r over (dr, w_A, w_B) for the end `i`.
Matrix39 seen_from(int i, const Vector3d& r) {
    Matrix39 v = Matrix39::Zero();
    v.leftCols<3>().setIdentity();
    v.middleCols<3>(3 + 3 * i) = cross(r);
    return v;
}

/// Bending: end i pulls r along F_i = sum of dE/d(r.A_k) A_k, and turns its node by F_i x r.
void add_bending(const PoleMeasures& m, const std::array<Matrix2d, 2>& k, bool geometric, Nine& sum) {
    const Matrix3d r = cross(m.r);
    const std::array<Angles, 2> a{angles(m.swing[0], m.s[0]), angles(m.swing[1], m.s[1])};
    const Vector2d moment_2 = k[0] * m.b[0];
    const Vector2d moment_3 = k[1] * m.b[1];
    for (int i = 0; i < 2; ++i) {
        const Matrix3d& axes = m.axes[index(i)];
        const Angles& here = a[index(i)];
        const Vector3d F = axes * (moment_2(i) * here.d2 + moment_3(i) * here.d3);
        sum.gradient.head<3>() += F;
        sum.gradient.segment<3>(3 + 3 * i) += F.cross(m.r);
        Matrix39 dF = Matrix39::Zero();
        for (int j = 0; j < 2; ++j) {
            Matrix3d h =
                k[0](i, j) * here.d2 * a[index(j)].d2.transpose() + k[1](i, j) * here.d3 * a[index(j)].d3.transpose();
            if (geometric && i == j) h += moment_2(i) * here.dd2 + moment_3(i) * here.dd3;
            dF += axes * h * m.axes[index(j)].transpose() * seen_from(j, m.r);
        }
        if (geometric) {
            dF.middleCols<3>(3 + 3 * i) -= cross(F);
            sum.change.block<3, 3>(3 + 3 * i, 0) += cross(F);
        }
        sum.change.topRows<3>() += dF;
        sum.change.middleRows<3>(3 + 3 * i) -= r * dF;
    }
}

void add_twist(const PoleMeasures& m, double k, bool geometric, Nine& sum) {
    std::array<Vector3d, 2> lever;
    std::array<Matrix39, 2> change;
    for (int i = 0; i < 2; ++i) {
        const Vector3d along = m.axes[index(i)].col(0);
        const double below = 1 + m.s[index(i)](0);
        lever[index(i)] = (along + m.r) / below;
        Matrix39 top = Matrix39::Zero();
        top.leftCols<3>().setIdentity();
        top.middleCols<3>(3 + 3 * i) = -cross(along);
        change[index(i)] = (top - lever[index(i)] * (along.transpose() * seen_from(i, m.r))) / below;
    }
    const Vector3d apart = lever[0] - lever[1];
    Vector9 slope;
    slope << apart.cross(m.r), -lever[0], lever[1];
    sum.gradient += k * m.phi * slope;
    sum.change += k * slope * slope.transpose();
    if (!geometric) return;
    const double torque = k * m.phi;
    sum.change.topRows<3>() -= torque * cross(m.r) * (change[0] - change[1]);
    sum.change.middleRows<3>(3) -= torque * change[0];
    sum.change.middleRows<3>(6) += torque * change[1];
}

}  // namespace

Pole::State Pole::evaluate(const Vector12& q, bool geometric) const {
    const PoleMeasures m = measure(q);
    Nine spins;
    add_bending(m, bending_, geometric, spins);
    add_twist(m, twist_, geometric, spins);

    const Matrix3d across = Matrix3d::Identity() - m.r * m.r.transpose();
    Matrix9 rate = Matrix9::Zero();
    rate.block<3, 3>(0, 0) = across / m.length;
    rate.block<3, 3>(3, 3) = m.turn[0].rate();
    rate.block<3, 3>(6, 6) = m.turn[1].rate();
    const double force = axial_ * m.stretch;
    Vector9 gradient = rate.transpose() * spins.gradient;
    gradient.head<3>() += force * m.r;
    Matrix9 hessian = rate.transpose() * spins.change * rate;
    hessian.block<3, 3>(0, 0) += axial_ * m.r * m.r.transpose();
    if (geometric) {
        const Vector3d f = spins.gradient.head<3>();
        const Matrix3d tilt = across * f * m.r.transpose();
        hessian.block<3, 3>(0, 0) +=
            force / m.length * across - (tilt + tilt.transpose() + m.r.dot(f) * across) / (m.length * m.length);
        hessian.block<3, 3>(3, 3) += m.turn[0].rate_change(spins.gradient.segment<3>(3));
        hessian.block<3, 3>(6, 6) += m.turn[1].rate_change(spins.gradient.segment<3>(6));
    }

    // The moved end counts plus at `to`, minus at `from`.
    Eigen::Matrix<double, 9, 12> ends = Eigen::Matrix<double, 9, 12>::Zero();
    ends.block<3, 3>(0, 0) = -Matrix3d::Identity();
    ends.block<3, 3>(0, 6).setIdentity();
    ends.block<3, 3>(3, 3).setIdentity();
    ends.block<3, 3>(6, 9).setIdentity();
    State state;
    state.energy = energy_of(m);
    state.axial = force;
    state.gradient = ends.transpose() * gradient;
    state.tangent = ends.transpose() * hessian * ends;
    return state;
}

}  // namespace coverframe::kernel
