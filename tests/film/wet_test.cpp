// SPDX-License-Identifier: BSD-3-Clause
#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <random>

#include "close.hpp"
#include "film/kernel/wet.hpp"

using namespace coverframe;

TEST_CASE("Water over a triangle: gradient and tangent are those of its energy, dry, half wet and drowned") {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> noise(-1, 1);
    for (int trial = 0; trial < 200; ++trial) {
        CAPTURE(trial);
        Eigen::Matrix3d corners;
        corners << 0, 0.3, 0.1, 0, 0.05, 0.25, 0, 0, 0;
        if (trial % 2 == 0) corners.col(1).swap(corners.col(2));
        for (int i = 0; i < 3; ++i) {
            for (int d = 0; d < 2; ++d) corners(d, i) += 0.02 * noise(random);
            corners(2, i) = 0.1 * noise(random);
        }
        const kernel::WetTriangle here = kernel::wet_triangle(corners, 0.03, 9810);
        CHECK((here.tangent - here.tangent.transpose()).norm() <= 1e-12 * (1 + here.tangent.norm()));
        for (int i = 0; i < 9; ++i) {
            const double h = 1e-6;
            Eigen::Matrix3d up = corners, down = corners;
            up(i % 3, i / 3) += h;
            down(i % 3, i / 3) -= h;
            const kernel::WetTriangle a = kernel::wet_triangle(up, 0.03, 9810);
            const kernel::WetTriangle b = kernel::wet_triangle(down, 0.03, 9810);
            CHECK(std::abs((a.energy - b.energy) / (2 * h) - here.gradient(i)) < 1e-5);
            CHECK(((a.gradient - b.gradient) / (2 * h) - here.tangent.col(i)).norm() < 2e-3);
        }
    }
}

TEST_CASE("Water over a slope pushes square to it") {
    // All under water: force = pressure at the middle of area, along the upward normal reversed; moments aside.
    Eigen::Matrix3d corners;
    corners << 0, 1, 0, 0, 0, 1, 0, 0.2, 0.1;
    const kernel::WetTriangle w = kernel::wet_triangle(corners, 1.0, 10.0);
    Eigen::Vector3d force = Eigen::Vector3d::Zero();
    for (int i = 0; i < 3; ++i) force -= w.gradient.segment<3>(3 * i);
    const Eigen::Vector3d area = 0.5 * (corners.col(1) - corners.col(0)).cross(corners.col(2) - corners.col(0));
    const double pressure = 10.0 * (1 - 0.1);
    // Along z exactly; sideways the sum over a closed body would be exact, over one triangle its edges take part.
    CHECK(close(force(2), -pressure * area(2), 1e-12));
}
