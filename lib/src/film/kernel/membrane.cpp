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

/// Stresses along the principal directions and how they change, from the principal strains of engineering.
struct Principal {
    Stretch stretch = Stretch::slack;
    double energy = 0;                   ///< W
    Vector2d stress = Vector2d::Zero();  ///< s_i
    Matrix2d change = Matrix2d::Zero();  ///< ds_i/dE_j
    double turning = 0;                  ///< (s1 - s2)/(E1 - E2)
};

Principal principal(const Sheet& sheet, double e1, double e2) {
    const double nu = sheet.poisson;
    const double l1 = 1 + e1;
    const double l2 = 1 + e2;
    Principal p;
    if (e2 + nu * e1 >= 0) {
        const double k = sheet.stiffness / (1 - nu * nu);
        p.stretch = Stretch::taut;
        p.energy = 0.5 * k * (e1 * e1 + e2 * e2 + 2 * nu * e1 * e2);
        p.stress << k * (e1 + nu * e2) / l1, k * (e2 + nu * e1) / l2;
        p.change << k * (1 - nu * e2) / (l1 * l1 * l1), k * nu / (l1 * l2), k * nu / (l1 * l2),
            k * (1 - nu * e1) / (l2 * l2 * l2);
        p.turning = 2 * k * (1 - nu * (1 + e1 + e2)) / (l1 * l2 * (l1 + l2));
    } else if (e1 > 0) {
        p.stretch = Stretch::wrinkled;
        p.energy = 0.5 * sheet.stiffness * e1 * e1;
        p.stress(0) = sheet.stiffness * e1 / l1;
        p.change(0, 0) = sheet.stiffness / (l1 * l1 * l1);
        p.turning = 2 * p.stress(0) / ((e1 - e2) * (l1 + l2));
    }
    return p;
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
    if (sheet.net) {
        pull_net();
        return;
    }
    const double middle = 0.5 * (strain_(0) + strain_(1));
    const double half = 0.5 * (strain_(0) - strain_(1));
    const double radius = std::hypot(half, 0.5 * strain_(2));
    const double angle = 0.5 * std::atan2(0.5 * strain_(2), half);
    n_ << std::cos(angle), std::sin(angle);
    // e = 2 E/(1 + l): no difference of numbers near 1. A side longer than nothing is all that is asked of a triangle.
    const auto engineering = [](double E) { return 2 * E / (1 + std::sqrt(std::max(0.0, 1 + 2 * E))); };
    const Principal p = principal(sheet, engineering(middle + radius), engineering(middle - radius));
    const Vector2d m(-n_(1), n_(0));
    const Vector3d first = dyad(n_, n_);
    const Vector3d second = dyad(m, m);
    const Vector3d turning = dyad(n_, m);
    stretch_ = p.stretch;
    energy_ = p.energy;
    force_ = p.stress(0) * first + p.stress(1) * second;
    stiffness_ = p.change(0, 0) * first * first.transpose() + p.change(1, 1) * second * second.transpose() +
                 p.change(0, 1) * (first * second.transpose() + second * first.transpose()) +
                 2 * p.turning * turning * turning.transpose();
}

void Triangle::pull_net() {
    force_ << sheet_.stiffness * std::max(0.0, strain_(0)), sheet_.stiffness * std::max(0.0, strain_(1)), 0;
    energy_ = 0.5 * force_.squaredNorm() / sheet_.stiffness;
    stiffness_ = sheet_.stiffness * Vector3d(force_(0) > 0, force_(1) > 0, 0).asDiagonal().toDenseMatrix();
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
    Matrix9 K = free_.area * B.transpose() * (stiffness_ * B);
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
