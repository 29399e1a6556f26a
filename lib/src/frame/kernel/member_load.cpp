// SPDX-License-Identifier: BSD-3-Clause
#include "member_load.hpp"

#include <Eigen/Dense>

#include "frame/kernel/arm.hpp"
#include "frame/kernel/turn.hpp"

namespace coverframe::kernel {

using Eigen::Matrix3d;
using Eigen::Vector3d;

namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

/// Derivatives over the change of r and the turning w of one end: along w, and along r and w.
struct Six {
    Vector3d along_r = Vector3d::Zero();
    Vector3d along_w = Vector3d::Zero();
    Matrix3d r_w = Matrix3d::Zero();  ///< of along_r
    Matrix3d w_w = Matrix3d::Zero();  ///< of along_w
};

/// Adds those of factor (q.X)(r.X), X turning with the end.
void add_product(double factor, const Vector3d& q, const Vector3d& r, const Vector3d& X, Six& sum) {
    const Vector3d of_q = X.cross(q);
    const Vector3d of_r = X.cross(r);
    const double a = q.dot(X);
    const double b = r.dot(X);
    const Matrix3d one = Matrix3d::Identity();
    sum.along_r += factor * a * X;
    sum.along_w += factor * (b * of_q + a * of_r);
    sum.r_w += factor * (X * of_q.transpose() - a * cross(X));
    sum.w_w += factor * (of_q * of_r.transpose() + of_r * of_q.transpose() + b * (X * q.transpose() - a * one) +
                         a * (X * r.transpose() - b * one));
}

}  // namespace

PoleLoad::PoleLoad(const Vector3d& from, const Vector3d& to, const Matrix3d& axes, const BendingStiffness& bending,
                   const EndSprings& springs)
    : drawn_(to - from), axes_(axes.transpose()), length_(drawn_.norm()), share_{}, uneven_{}, by_chord_(false) {
    const PlaneBeam up = plane_beam(bending.EI_vertical, bending.GA_vertical, length_, springs);
    const PlaneBeam level = plane_beam(bending.EI_level, bending.GA_level, length_, springs);
    for (int i = 0; i < 2; ++i) {
        share_[index(i)] = 0.5 * (up.load(i) + level.load(i));
        uneven_[index(i)] = 0.5 * (up.load(i) - level.load(i));
    }
    by_chord_ = share_[0] + share_[1] != 0 || uneven_[0] != 0 || uneven_[1] != 0;
}

void PoleLoad::add(const Vector3d& q, const Vector12& d, bool geometric, Pole::State& state) const {
    const Vector3d half = 0.5 * length_ * q;
    state.energy -= half.dot(d.segment<3>(0) + d.segment<3>(6));
    for (int i = 0; i < 2; ++i) {
        const Turn turn(d.segment<3>(6 * i + 3));
        const Vector3d f = -length_ * length_ * share_[index(i)] * q;
        const Vector3d change = turn.change() * axes_.col(0);
        const Lever own = lever(turn, axes_.col(0) + change, f);
        state.energy += f.dot(change);
        state.gradient.segment<3>(6 * i) -= half;
        state.gradient.segment<3>(6 * i + 3) += own.gradient;
        if (geometric) state.tangent.block<3, 3>(6 * i + 3, 6 * i + 3) += own.hessian;
        if (by_chord_) add_chord(i, q, d, geometric, state);
    }
}

void PoleLoad::add_chord(int end, const Vector3d& q, const Vector12& d, bool geometric, Pole::State& state) const {
    const Vector3d moved = d.segment<3>(6) - d.segment<3>(0);
    const Vector3d chord = drawn_ + moved;
    const double l = chord.norm();
    const Vector3d r = chord / l;
    const double longer = moved.dot(2 * drawn_ + moved) / (l + length_);
    const Turn turn(d.segment<3>(6 * end + 3));
    const Matrix3d X = axes_ + turn.change() * axes_;
    const double even = length_ * length_ * share_[index(end)];
    const double uneven = length_ * length_ * uneven_[index(end)];
    Six six;
    six.along_r = even * q;
    add_product(uneven, q, r, X.col(2), six);
    add_product(-uneven, q, r, X.col(1), six);
    state.energy += even * q.dot(moved - longer * axes_.col(0)) / l +
                    uneven * (q.dot(X.col(2)) * r.dot(X.col(2)) - q.dot(X.col(1)) * r.dot(X.col(1)));

    const Matrix3d across = Matrix3d::Identity() - r * r.transpose();
    const Matrix3d rate = turn.rate();
    const Vector3d pull = across * six.along_r / l;
    const int t = 6 * end + 3;
    state.gradient.segment<3>(0) -= pull;
    state.gradient.segment<3>(6) += pull;
    state.gradient.segment<3>(t) += rate.transpose() * six.along_w;
    if (!geometric) return;
    const Matrix3d tilt = across * six.along_r * r.transpose();
    const Matrix3d own = -(tilt + tilt.transpose() + r.dot(six.along_r) * across) / (l * l);
    const Matrix3d mixed = across * six.r_w * rate / l;
    for (const int i : {0, 6}) {
        const double sign = i == 0 ? -1 : 1;
        state.tangent.block<3, 3>(i, i) += own;
        state.tangent.block<3, 3>(i, 6 - i) -= own;
        state.tangent.block<3, 3>(i, t) += sign * mixed;
        state.tangent.block<3, 3>(t, i) += sign * mixed.transpose();
    }
    state.tangent.block<3, 3>(t, t) += rate.transpose() * six.w_w * rate + turn.rate_change(six.along_w);
}

Vector3d PoleLoad::add(const Vector3d& q, const Vector12& d, PoleForces& forces) const {
    Vector3d along = Vector3d::Zero();
    for (int i = 0; i < 2; ++i) {
        const Matrix3d X = axes_ + Turn(d.segment<3>(6 * i + 3)).change() * axes_;
        const Vector3d here = X.transpose() * q;
        forces.moment_2[index(i)] += length_ * length_ * (share_[index(i)] + uneven_[index(i)]) * here(2);
        forces.moment_3[index(i)] -= length_ * length_ * (share_[index(i)] - uneven_[index(i)]) * here(1);
        along += 0.5 * length_ * here;
    }
    along(0) = length_ * q.dot((drawn_ + d.segment<3>(6) - d.segment<3>(0)).normalized());
    return along;
}

void add_warmth(double EA, double free_length, double a, const Vector3d& chord, bool geometric, Pole::State& state) {
    const double push = EA * a;
    state.energy += (0.5 * push - state.axial) * a * free_length;
    state.axial -= push;
    const double l = chord.norm();
    const Vector3d r = chord / l;
    state.gradient.segment<3>(0) += push * r;
    state.gradient.segment<3>(6) -= push * r;
    if (!geometric) return;
    const Matrix3d across = push / l * (Matrix3d::Identity() - r * r.transpose());
    for (const int i : {0, 6}) {
        state.tangent.block<3, 3>(i, i) -= across;
        state.tangent.block<3, 3>(i, 6 - i) += across;
    }
}

}  // namespace coverframe::kernel
