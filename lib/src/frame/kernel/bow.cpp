// SPDX-License-Identifier: BSD-3-Clause
#include "bow.hpp"

#include <Eigen/Dense>

#include "frame/kernel/turn.hpp"

namespace coverframe::kernel {

using Eigen::Matrix2d;
using Eigen::Matrix3d;
using Eigen::Vector3d;

namespace {

/// C^T G C of one plane.
Matrix2d bow_of(double EI, double GA, double length, const EndSprings& springs) {
    Matrix2d G;
    G << 4, -1, -1, 4;
    G *= length / 30;
    Matrix2d rigid_in_shear;
    rigid_in_shear << 4, 2, 2, 4;
    rigid_in_shear *= EI / length;
    const Matrix2d C = rigid_in_shear.inverse() * plane_beam(EI, GA, length, springs).stiffness;
    return C.transpose() * G * C;
}

}  // namespace

Matrix12 bow_tangent(const Vector3d& from, const Vector3d& to, const Matrix3d& axes, const BendingStiffness& bending,
                     const EndSprings& springs, double axial, const Vector12& q) {
    const double length = (to - from).norm();
    const Vector3d chord = to - from + q.segment<3>(6) - q.segment<3>(0);
    const Vector3d r = chord.normalized();
    const Matrix3d across = (Matrix3d::Identity() - r * r.transpose()) / chord.norm();
    Eigen::Matrix<double, 4, 12> db = Eigen::Matrix<double, 4, 12>::Zero();  // b2 from, to; b3 from, to
    for (int end = 0; end < 2; ++end) {
        const Turn turn(q.segment<3>(6 * end + 3));
        const Matrix3d now = axes.transpose() + turn.change() * axes.transpose();  // columns A_1 A_2 A_3
        for (int plane = 0; plane < 2; ++plane) {
            const Vector3d level = plane == 0 ? Vector3d(now.col(2)) : Vector3d(-now.col(1));
            auto row = db.row(2 * plane + end);
            row.segment<3>(6) += level.transpose() * across;
            row.segment<3>(0) -= level.transpose() * across;
            row.segment<3>(6 * end + 3) -= r.cross(level).transpose() * turn.rate();
        }
    }
    Eigen::Matrix4d both = Eigen::Matrix4d::Zero();
    both.topLeftCorner<2, 2>() = bow_of(bending.EI_vertical, bending.GA_vertical, length, springs);
    both.bottomRightCorner<2, 2>() = bow_of(bending.EI_level, bending.GA_level, length, springs);
    return axial * db.transpose() * both * db;
}

}  // namespace coverframe::kernel
