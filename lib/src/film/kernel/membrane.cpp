// SPDX-License-Identifier: BSD-3-Clause
#include "film/kernel/membrane.hpp"

#include <Eigen/Dense>
#include <array>
#include <cmath>

namespace coverframe::kernel {

using Eigen::Matrix2d;
using Eigen::Matrix3d;
using Eigen::Vector2d;
using Eigen::Vector3d;

namespace {

/// C of taut film, for strains E11, E22, 2 E12.
Matrix3d taut_stiffness(const Sheet& sheet) {
    const double nu = sheet.poisson;
    Matrix3d c;
    c << 1, nu, 0, nu, 1, 0, 0, 0, 0.5 * (1 - nu);
    return sheet.stiffness / (1 - nu * nu) * c;
}

/// a b, made symmetric, as it multiplies strains E11, E22, 2 E12.
Vector3d dyad(const Vector2d& a, const Vector2d& b) {
    return {a(0) * b(0), a(1) * b(1), 0.5 * (a(0) * b(1) + a(1) * b(0))};
}

}  // namespace

FreeTriangle free_triangle(const Vector3d& a, const Vector3d& b, const Vector3d& c, double stretch) {
    const Vector3d ab = (b - a) / stretch;
    const Vector3d ac = (c - a) / stretch;
    const Vector3d normal = ab.cross(ac).normalized();
    Vector3d along = Vector3d::UnitX() - normal(0) * normal;
    along = along.norm() > 1e-6 ? along.normalized() : Vector3d(ab.normalized());
    const Vector3d across = normal.cross(along);
    const Vector2d p(along.dot(ab), across.dot(ab));
    const Vector2d q(along.dot(ac), across.dot(ac));
    const double twice = p(0) * q(1) - p(1) * q(0);
    FreeTriangle free;
    free.area = 0.5 * twice;
    free.gradient.row(1) << q(1) / twice, -q(0) / twice;
    free.gradient.row(2) << -p(1) / twice, p(0) / twice;
    free.gradient.row(0) = -free.gradient.row(1) - free.gradient.row(2);
    return free;
}

Triangle::Triangle(const FreeTriangle& free, const Sheet& sheet, const Vector9& x) : free_(free), sheet_(sheet) {
    // Differences of places first: far from the origin the strains would drown in rounding.
    const Vector3d ab = x.segment<3>(3) - x.segment<3>(0);
    const Vector3d ac = x.segment<3>(6) - x.segment<3>(0);
    F_ = ab * free.gradient.row(1) + ac * free.gradient.row(2);
    strain_ << 0.5 * (F_.col(0).squaredNorm() - 1), 0.5 * (F_.col(1).squaredNorm() - 1), F_.col(0).dot(F_.col(1));
    const double middle = 0.5 * (strain_(0) + strain_(1));
    const double half = 0.5 * (strain_(0) - strain_(1));
    const double radius = std::hypot(half, 0.5 * strain_(2));
    e1_ = middle + radius;
    e2_ = middle - radius;
    const double angle = 0.5 * std::atan2(0.5 * strain_(2), half);
    n_ << std::cos(angle), std::sin(angle);
    if (sheet.net) {
        force_ << sheet.stiffness * std::max(0.0, strain_(0)), sheet.stiffness * std::max(0.0, strain_(1)), 0;
        if (force_(0) > 0 && force_(1) > 0) {
            stretch_ = Stretch::taut;
        } else if (force_(0) > 0 || force_(1) > 0) {
            stretch_ = Stretch::wrinkled;
        }
    } else if (e2_ + sheet.poisson * e1_ >= 0) {
        stretch_ = Stretch::taut;
        force_ = taut_stiffness(sheet) * strain_;
    } else if (e1_ > 0) {
        stretch_ = Stretch::wrinkled;
        force_ = sheet.stiffness * e1_ * dyad(n_, n_);
    } else {
        force_.setZero();
    }
}

double Triangle::energy() const {
    if (sheet_.net) return 0.5 * free_.area * force_.squaredNorm() / sheet_.stiffness;
    if (stretch_ == Stretch::wrinkled) return 0.5 * free_.area * sheet_.stiffness * e1_ * e1_;
    return 0.5 * free_.area * force_.dot(strain_);
}

Vector9 Triangle::gradient() const {
    Matrix2d S;
    S << force_(0), force_(2), force_(2), force_(1);
    const Eigen::Matrix<double, 3, 3> by_corner = free_.area * F_ * S * free_.gradient.transpose();
    return Eigen::Map<const Vector9>(by_corner.data());
}

Matrix3d Triangle::stiffness() const {
    if (sheet_.net) return sheet_.stiffness * Vector3d(force_(0) > 0, force_(1) > 0, 0).asDiagonal().toDenseMatrix();
    switch (stretch_) {
        case Stretch::taut: return taut_stiffness(sheet_);
        case Stretch::slack: return Matrix3d::Zero();
        case Stretch::wrinkled: break;
    }
    const Vector2d m(-n_(1), n_(0));
    const Vector3d along = dyad(n_, n_);
    const Vector3d turning = dyad(n_, m);
    return sheet_.stiffness * (along * along.transpose() + 2 * e1_ / (e1_ - e2_) * turning * turning.transpose());
}

Matrix9 Triangle::tangent() const {
    Eigen::Matrix<double, 3, 9> B;
    Matrix2d S;
    S << force_(0), force_(2), force_(2), force_(1);
    for (int a = 0; a < 3; ++a) {
        const double g1 = free_.gradient(a, 0);
        const double g2 = free_.gradient(a, 1);
        B.block<1, 3>(0, 3 * a) = g1 * F_.col(0).transpose();
        B.block<1, 3>(1, 3 * a) = g2 * F_.col(1).transpose();
        B.block<1, 3>(2, 3 * a) = g2 * F_.col(0).transpose() + g1 * F_.col(1).transpose();
    }
    Matrix9 K = free_.area * B.transpose() * (stiffness() * B);
    const Matrix3d turning = free_.area * free_.gradient * S * free_.gradient.transpose();
    for (int a = 0; a < 3; ++a) {
        for (int b = 0; b < 3; ++b) K.block<3, 3>(3 * a, 3 * b).diagonal().array() += turning(a, b);
    }
    return K;
}

SheetStress Triangle::stress() const {
    SheetStress s;
    s.stretch = stretch_;
    if (stretch_ == Stretch::slack) return s;
    // The pull of a piece as wide as it is free, times how much longer it is; for taut film its present width counts.
    const Vector2d m(-n_(1), n_(0));
    const auto pull = [&](const Vector2d& d) {
        return d(0) * (force_(0) * d(0) + force_(2) * d(1)) + d(1) * (force_(2) * d(0) + force_(1) * d(1));
    };
    const double along = (F_ * n_).norm();
    const double across = (F_ * m).norm();
    s.direction = F_ * n_ / along;
    s.first = pull(n_) * along;
    if (stretch_ == Stretch::taut) {
        s.first /= across;
        s.second = pull(m) * across / along;
    }
    return s;
}

// With n = a x b + b x c + c x a:  dn = (c - b) x da + (a - c) x db + (b - a) x dc, and area = |n|/2.
EvenPull even_pull(const Vector9& x, double tension) {
    const Vector3d ab = x.segment<3>(3) - x.segment<3>(0);
    const Vector3d ac = x.segment<3>(6) - x.segment<3>(0);
    const std::array<Vector3d, 3> opposite{ac - ab, -ac, ab};
    const auto cross = [](const Vector3d& v) {
        Matrix3d m;
        m << 0, -v(2), v(1), v(2), 0, -v(0), -v(1), v(0), 0;
        return m;
    };
    const Vector3d n = ab.cross(ac);
    const double twice = n.norm();
    const Vector3d normal = n / twice;
    Eigen::Matrix<double, 3, 9> dn;
    for (int i = 0; i < 3; ++i) dn.middleCols<3>(3 * i) = cross(opposite[static_cast<std::size_t>(i)]);
    EvenPull pull;
    pull.energy = 0.5 * tension * twice;
    pull.gradient = 0.5 * tension * dn.transpose() * normal;
    pull.tangent = dn.transpose() * (Matrix3d::Identity() - normal * normal.transpose()) * dn / twice;
    for (int i = 0; i < 3; ++i) {
        const int j = (i + 1) % 3;
        pull.tangent.block<3, 3>(3 * i, 3 * j) -= cross(normal);
        pull.tangent.block<3, 3>(3 * j, 3 * i) += cross(normal);
    }
    pull.tangent *= 0.5 * tension;
    return pull;
}

}  // namespace coverframe::kernel
