// SPDX-License-Identifier: BSD-3-Clause
// The rotation of a node, R = exp([t]x), from its rotation vector t, with its first and second derivatives.
//
//   R = I + a [t]x + b [t]x^2             a = sin t/t, b = (1 - cos t)/t^2, c = (t - sin t)/t^3
//   w = T dt,  T = I + b [t]x + c [t]x^2  w the turning that a change of t makes, in global axes
//
// An energy that depends on the node through w with moment g has the gradient T^T g along t, and where g is fixed the
// derivative of that along t is rate_change(g). T is singular at |t| = 2 pi.
#pragma once

#include <Eigen/Core>

namespace coverframe::kernel {

/// [v]x, with cross(v) w = v x w.
[[nodiscard]] Eigen::Matrix3d cross(const Eigen::Vector3d& v);

class Turn {
public:
    explicit Turn(const Eigen::Vector3d& t);

    /// R - I
    [[nodiscard]] Eigen::Matrix3d change() const;

    /// T in w = T dt
    [[nodiscard]] Eigen::Matrix3d rate() const;

    /// Derivative along t of T^T g with g fixed.
    [[nodiscard]] Eigen::Matrix3d rate_change(const Eigen::Vector3d& g) const;

private:
    /// a, b, c and the derivatives of b and c along s = t.t.
    struct Coefficients {
        double a = 1, b = 0.5, c = 1.0 / 6, db = -1.0 / 24, dc = -1.0 / 120;
    };
    [[nodiscard]] static Coefficients coefficients(double s);

    Eigen::Vector3d t_;
    double s_;
    Coefficients k_;
};

}  // namespace coverframe::kernel
