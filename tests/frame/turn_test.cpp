// SPDX-License-Identifier: BSD-3-Clause
#include "frame/kernel/turn.hpp"

#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <cmath>
#include <random>
#include <vector>

#include "../close.hpp"

using namespace coverframe;
using Eigen::Matrix3d;
using Eigen::Vector3d;
using kernel::Turn;

namespace {

/// Eigen's rotation by |t| about t.
Matrix3d rotation(const Vector3d& t) {
    return t.norm() > 0 ? Eigen::AngleAxisd(t.norm(), t.normalized()).toRotationMatrix() : Matrix3d::Identity();
}

std::vector<Vector3d> turns() {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> number(-1, 1);
    std::vector<Vector3d> all;
    for (const double angle : {0.0, 1e-9, 1e-3, 0.1, 0.5, 0.999999, 1.000001, 2.0, 3.1, 5.0}) {
        all.push_back(angle * Vector3d(number(random), number(random), number(random)).normalized());
    }
    return all;
}

}  // namespace

TEST_CASE("turn: the rotation is Eigen's") {
    for (const Vector3d& t : turns()) {
        const Matrix3d change = rotation(t) - Matrix3d::Identity();
        CHECK(close_abs((Turn(t).change() - change).cwiseAbs().maxCoeff(), 0, 1e-15));
    }
}

TEST_CASE("turn: the rate is the derivative of the rotation, and the rate's change that of its transpose") {
    const double h = 1e-3;
    const Vector3d g(0.3, -1.2, 0.7);
    for (const Vector3d& t : turns()) {
        CAPTURE(t.norm());
        const Matrix3d rate = Turn(t).rate();
        const Matrix3d change = Turn(t).rate_change(g);
        for (int i = 0; i < 3; ++i) {
            const auto at = [&](double step) { return Turn(t + step * h * Vector3d::Unit(i)); };
            // Central differences of fourth order. dR = [w]x R.
            const Matrix3d dR = (8 * (at(1).change() - at(-1).change()) - at(2).change() + at(-2).change()) / (12 * h);
            const Matrix3d w = dR * rotation(t).transpose();
            CHECK(close_abs((kernel::cross(rate.col(i)) - w).cwiseAbs().maxCoeff(), 0, 1e-11));
            const Vector3d slope =
                (8 * (at(1).rate() - at(-1).rate()) - at(2).rate() + at(-2).rate()).transpose() * g / (12 * h);
            CHECK(close_abs((slope - change.col(i)).cwiseAbs().maxCoeff(), 0, 1e-11));
        }
    }
}

TEST_CASE("turn: the symmetric part is what the rate's change has but 1/2 T^T [g]x T") {
    const Vector3d g(0.3, -1.2, 0.7);
    for (const Vector3d& t : turns()) {
        const Matrix3d rate = Turn(t).rate();
        const Matrix3d expected = Turn(t).rate_change(g) - 0.5 * rate.transpose() * kernel::cross(g) * rate;
        kernel::Sym<double> sum{};
        kernel::add_rate_change(kernel::turned<double>({t(0), t(1), t(2)}), {g(0), g(1), g(2)}, sum);
        Matrix3d symmetric;
        symmetric << sum.xx, sum.yx, sum.zx, sum.yx, sum.yy, sum.zy, sum.zx, sum.zy, sum.zz;
        CHECK(close_abs((symmetric - expected).cwiseAbs().maxCoeff(), 0, 2e-14));
    }
}
