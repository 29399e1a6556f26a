// SPDX-License-Identifier: BSD-3-Clause
#include "film/kernel/wet.hpp"

#include <Eigen/Dense>
#include <cmath>

namespace coverframe::kernel {

using Eigen::Vector3d;

namespace {

/// Adds a triangle of the wet part, its corners given as shares.
void add(const Vector3d& a, const Vector3d& b, const Vector3d& c, const Vector3d& depths, WetMoments& m) {
    const Vector3d ab = b - a;
    const Vector3d ac = c - a;
    const double area = std::abs(ab(1) * ac(2) - ac(1) * ab(2));
    m.area += area;
    for (const Vector3d& middle : {Vector3d(0.5 * (a + b)), Vector3d(0.5 * (b + c)), Vector3d(0.5 * (c + a))}) {
        const double d = middle.dot(depths);
        m.depth += area / 3 * d * middle;
        m.stiffness += area / 3 * middle * middle.transpose();
        m.square += area / 3 * d * d;
    }
}

}  // namespace

WetMoments wet_moments(const Vector3d& depths) {
    std::array<Vector3d, 4> corners;
    std::size_t count = 0;
    for (int i = 0; i < 3; ++i) {
        const int j = (i + 1) % 3;
        if (depths(i) > 0) corners[count++] = Vector3d::Unit(i);
        if ((depths(i) > 0) == (depths(j) > 0)) continue;
        const double share = depths(i) / (depths(i) - depths(j));
        corners[count++] = (1 - share) * Vector3d::Unit(i) + share * Vector3d::Unit(j);
    }
    WetMoments m;
    for (std::size_t k = 2; k < count; ++k) add(corners[0], corners[k - 1], corners[k], depths, m);
    return m;
}

WetTriangle wet_triangle(const Eigen::Matrix3d& corners, double level, double unit_weight) {
    const Vector3d depths = level - corners.row(2).transpose().array();
    const WetMoments m = wet_moments(depths);
    // A = s/2 sum of x_i (y_j - y_k), s its sense.
    Eigen::Matrix<double, 2, 3> dA;
    for (int i = 0; i < 3; ++i) {
        const int j = (i + 1) % 3;
        const int k = (i + 2) % 3;
        dA.col(i) << 0.5 * (corners(1, j) - corners(1, k)), 0.5 * (corners(0, k) - corners(0, j));
    }
    const double twice = corners.row(0).dot(dA.row(0));
    const double sense = twice < 0 ? -1 : 1;
    dA *= sense;
    const double area = std::abs(twice);
    WetTriangle w;
    w.energy = -0.5 * unit_weight * area * m.square;
    w.gradient.setZero();
    w.tangent.setZero();
    for (int i = 0; i < 3; ++i) {
        w.gradient.segment<2>(3 * i) = -0.5 * unit_weight * m.square * dA.col(i);
        w.gradient(3 * i + 2) = unit_weight * area * m.depth(i);
        for (int j = 0; j < 3; ++j) {
            w.tangent(3 * i + 2, 3 * j + 2) = -unit_weight * area * m.stiffness(i, j);
            for (int d = 0; d < 2; ++d) {
                w.tangent(3 * i + d, 3 * j + 2) += unit_weight * dA(d, i) * m.depth(j);
                w.tangent(3 * j + 2, 3 * i + d) += unit_weight * dA(d, i) * m.depth(j);
            }
            if (i == j) continue;
            const double turn = (j == (i + 1) % 3 ? 0.5 : -0.5) * sense * -0.5 * unit_weight * m.square;
            w.tangent(3 * i, 3 * j + 1) += turn;
            w.tangent(3 * j + 1, 3 * i) += turn;
        }
    }
    return w;
}

}  // namespace coverframe::kernel
