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

/// Stresses along the principal directions from the principal strains of engineering.
struct Principal {
    Stretch stretch = Stretch::slack;
    double energy = 0;                   ///< W
    Vector2d stress = Vector2d::Zero();  ///< s_i
};

Principal principal(const Sheet& sheet, const Vector2d& e) {
    const double nu = sheet.poisson;
    Principal p;
    if (e(1) + nu * e(0) >= 0) {
        const double k = sheet.stiffness / (1 - nu * nu);
        p.stretch = Stretch::taut;
        p.energy = 0.5 * k * (e(0) * e(0) + e(1) * e(1) + 2 * nu * e(0) * e(1));
        p.stress << k * (e(0) + nu * e(1)) / (1 + e(0)), k * (e(1) + nu * e(0)) / (1 + e(1));
    } else if (e(0) > 0) {
        p.stretch = Stretch::wrinkled;
        p.energy = 0.5 * sheet.stiffness * e(0) * e(0);
        p.stress(0) = sheet.stiffness * e(0) / (1 + e(0));
    }
    return p;
}

/// How those stresses change.
struct PrincipalChange {
    Matrix2d stress = Matrix2d::Zero();  ///< ds_i/dE_j
    double turning = 0;                  ///< (s1 - s2)/(E1 - E2)
};

PrincipalChange principal_change(const Sheet& sheet, const Vector2d& e, Stretch stretch) {
    const double nu = sheet.poisson;
    const double l1 = 1 + e(0), l2 = 1 + e(1);
    PrincipalChange c;
    if (stretch == Stretch::taut) {
        const double k = sheet.stiffness / (1 - nu * nu);
        c.stress << k * (1 - nu * e(1)) / (l1 * l1 * l1), k * nu / (l1 * l2), k * nu / (l1 * l2),
            k * (1 - nu * e(0)) / (l2 * l2 * l2);
        c.turning = 2 * k * (1 - nu * (1 + e(0) + e(1))) / (l1 * l2 * (l1 + l2));
    } else if (stretch == Stretch::wrinkled) {
        c.stress(0, 0) = sheet.stiffness / (l1 * l1 * l1);
        c.turning = 2 * sheet.stiffness * e(0) / l1 / ((e(0) - e(1)) * (l1 + l2));
    }
    return c;
}

/// Direction of the greater principal strain, of half the difference of the strains along the axes and half the shear;
/// radius is the length of the two.
Vector2d direction_of(double half, double shear, double radius) {
    if (!(radius > 0)) return Vector2d::UnitX();
    const double longer = std::sqrt(0.5 * (1 + std::abs(half) / radius));
    const double shorter = 0.5 * shear / (radius * longer);
    return half >= 0 ? Vector2d(longer, shorter) : Vector2d(shorter, longer);
}

Vector2d across(const Vector2d& n) { return {-n(1), n(0)}; }

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
    if (sheet.net) {
        pull_net();
        return;
    }
    const double middle = 0.5 * (strain_(0) + strain_(1));
    const double half = 0.5 * (strain_(0) - strain_(1));
    const double shear = 0.5 * strain_(2);
    const double radius = std::sqrt(half * half + shear * shear);
    n_ = direction_of(half, shear, radius);
    // e = 2 E/(1 + l): no difference of numbers near 1. A side longer than nothing is all that is asked of a triangle.
    const auto engineering = [](double E) { return 2 * E / (1 + std::sqrt(std::max(0.0, 1 + 2 * E))); };
    e_ << engineering(middle + radius), engineering(middle - radius);
    const Principal p = principal(sheet, e_);
    stretch_ = p.stretch;
    energy_ = p.energy;
    force_ = p.stress(0) * dyad(n_, n_) + p.stress(1) * dyad(across(n_), across(n_));
}

Matrix3d Triangle::stiffness() const {
    if (sheet_.net) return sheet_.stiffness * Vector3d(force_(0) > 0, force_(1) > 0, 0).asDiagonal().toDenseMatrix();
    const PrincipalChange c = principal_change(sheet_, e_, stretch_);
    const Vector3d first = dyad(n_, n_);
    const Vector3d second = dyad(across(n_), across(n_));
    const Vector3d turning = dyad(n_, across(n_));
    return c.stress(0, 0) * first * first.transpose() + c.stress(1, 1) * second * second.transpose() +
           c.stress(0, 1) * (first * second.transpose() + second * first.transpose()) +
           2 * c.turning * turning * turning.transpose();
}

void Triangle::pull_net() {
    force_ << sheet_.stiffness * std::max(0.0, strain_(0)), sheet_.stiffness * std::max(0.0, strain_(1)), 0;
    energy_ = 0.5 * force_.squaredNorm() / sheet_.stiffness;
    n_ = force_(0) >= force_(1) ? Vector2d::UnitX() : Vector2d::UnitY();
    if (force_(0) > 0 && force_(1) > 0) {
        stretch_ = Stretch::taut;
    } else if (force_(0) > 0 || force_(1) > 0) {
        stretch_ = Stretch::wrinkled;
    }
}

double Triangle::energy() const { return free_.area * energy_; }

Vector9 Triangle::gradient() const {
    Matrix2d S;
    S << force_(0), force_(2), force_(2), force_(1);
    const Eigen::Matrix<double, 3, 3> by_corner = free_.area * F_ * S * free_.gradient.transpose();
    return Eigen::Map<const Vector9>(by_corner.data());
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
    const Vector2d m = across(n_);
    const auto pull = [&](const Vector2d& d) {
        return d(0) * (force_(0) * d(0) + force_(2) * d(1)) + d(1) * (force_(2) * d(0) + force_(1) * d(1));
    };
    const double along = (F_ * n_).norm();
    const double sideways = (F_ * m).norm();
    s.direction = F_ * n_ / along;
    s.first = pull(n_) * along;
    if (stretch_ == Stretch::taut) {
        s.first /= sideways;
        s.second = pull(m) * sideways / along;
    }
    return s;
}

EvenTriangle::EvenTriangle(const Vector9& x, double tension) : tension_(tension) {
    const Vector3d ab = x.segment<3>(3) - x.segment<3>(0);
    const Vector3d ac = x.segment<3>(6) - x.segment<3>(0);
    opposite_ << ac - ab, -ac, ab;
    const Vector3d n = ab.cross(ac);
    twice_ = n.norm();
    normal_ = n / twice_;
}

namespace {

Matrix3d cross(const Vector3d& v) {
    Matrix3d m;
    m << 0, -v(2), v(1), v(2), 0, -v(0), -v(1), v(0), 0;
    return m;
}

}  // namespace

/// With n = a x b + b x c + c x a:  dn = (c - b) x da + (a - c) x db + (b - a) x dc, and area = |n|/2.
Eigen::Matrix<double, 3, 9> EvenTriangle::normal_change() const {
    Eigen::Matrix<double, 3, 9> dn;
    for (int i = 0; i < 3; ++i) dn.middleCols<3>(3 * i) = cross(opposite_.col(i));
    return dn;
}

Vector9 EvenTriangle::gradient() const {
    Vector9 gradient;
    for (int i = 0; i < 3; ++i) {
        gradient.segment<3>(3 * i) = 0.5 * tension_ * normal_.cross(Vector3d(opposite_.col(i)));
    }
    return gradient;
}

Matrix9 EvenTriangle::tangent() const {
    const Eigen::Matrix<double, 3, 9> dn = normal_change();
    Matrix9 K = dn.transpose() * (Matrix3d::Identity() - normal_ * normal_.transpose()) * dn / twice_;
    for (int i = 0; i < 3; ++i) {
        const int j = (i + 1) % 3;
        K.block<3, 3>(3 * i, 3 * j) -= cross(normal_);
        K.block<3, 3>(3 * j, 3 * i) += cross(normal_);
    }
    return 0.5 * tension_ * K;
}

Matrix9 EvenTriangle::secant() const {
    const Matrix3d pull = tension_ / (2 * twice_) * opposite_.transpose() * opposite_;
    Matrix9 K = Matrix9::Zero();
    for (int a = 0; a < 3; ++a) {
        for (int b = 0; b < 3; ++b) K.block<3, 3>(3 * a, 3 * b).diagonal().setConstant(pull(a, b));
    }
    return K;
}

}  // namespace coverframe::kernel
