// SPDX-License-Identifier: BSD-3-Clause
#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <random>

#include "close.hpp"
#include "film/kernel/membrane.hpp"

using namespace coverframe;
using kernel::Matrix9;
using kernel::Vector9;

namespace {

const kernel::Sheet sheet{4e4, 0.4};

Vector9 corners_of(const Eigen::Matrix3d& places) { return Eigen::Map<const Vector9>(places.data()); }

/// Corners in columns, the free shape stretched by `along` in x and `across` in y, then turned out of the plane.
Eigen::Matrix3d stretched(double along, double across) {
    Eigen::Matrix3d places;
    places << 0, 0.3, 0.1, 0, 0.05, 0.25, 0, 0, 0;
    places = Eigen::Vector3d(along, across, 1).asDiagonal() * places;
    const Eigen::Vector3d axis = Eigen::Vector3d(0.4, 1, -0.7).normalized();
    const Eigen::Matrix3d turned = Eigen::AngleAxisd(1.1, axis).toRotationMatrix();
    places = (turned * places).eval();
    return places.colwise() + Eigen::Vector3d(3, -2, 1);
}

kernel::FreeTriangle flat() { return kernel::free_triangle({0, 0, 0}, {0.3, 0.05, 0}, {0.1, 0.25, 0}, 1); }

}  // namespace

TEST_CASE("Gradient and tangent of a film triangle are those of its energy, in every state") {
    std::mt19937 random(3);
    std::uniform_real_distribution<double> noise(-1, 1);
    const kernel::FreeTriangle free = flat();
    const std::array<std::array<double, 2>, 5> strains{
        {{1.01, 1.005}, {1.01, 0.997}, {1.02, 0.98}, {1.005, 0.9}, {0.99, 0.98}}};
    std::array<int, 3> seen{};
    for (const auto& strain : strains) {
        for (int trial = 0; trial < 40; ++trial) {
            const kernel::Sheet cloth{sheet.stiffness, sheet.poisson, trial >= 20};
            Vector9 x = corners_of(stretched(strain[0], strain[1]));
            for (int i = 0; i < 9; ++i) x(i) += 1e-4 * noise(random);
            const kernel::Triangle here(free, cloth, x);
            ++seen[static_cast<std::size_t>(here.stress().stretch)];
            const Vector9 gradient = here.gradient();
            const Matrix9 tangent = here.tangent();
            CHECK((tangent - tangent.transpose()).norm() <= 1e-12 * (1 + tangent.norm()));
            for (int i = 0; i < 9; ++i) {
                const double h = 1e-6;
                Vector9 up = x, down = x;
                up(i) += h;
                down(i) -= h;
                const kernel::Triangle a(free, cloth, up), b(free, cloth, down);
                CHECK(std::abs((a.energy() - b.energy()) / (2 * h) - gradient(i)) < 1e-5);
                const Vector9 column = (a.gradient() - b.gradient()) / (2 * h);
                CHECK((column - tangent.col(i)).norm() < 1e-5 * (1 + tangent.norm()));
            }
        }
    }
    CHECK(seen[0] > 0);
    CHECK(seen[1] > 0);
    CHECK(seen[2] > 0);
}

TEST_CASE("Film pulled in two directions and in one") {
    const kernel::FreeTriangle free = flat();
    // Two directions: D/(1 - nu) e per free width, per present width over the stretch across.
    const kernel::SheetStress both = kernel::Triangle(free, sheet, corners_of(stretched(1.01, 1.01))).stress();
    CHECK(both.stretch == kernel::Stretch::taut);
    CHECK(close(both.first, 4e4 / 0.6 * 0.01 / 1.01, 1e-10));
    CHECK(close(both.second, both.first, 1e-9));
    // One: D e as wide as it is free, as in a strip.
    const kernel::SheetStress one = kernel::Triangle(free, sheet, corners_of(stretched(1.01, 0.9))).stress();
    CHECK(one.stretch == kernel::Stretch::wrinkled);
    CHECK(close(one.first, 4e4 * 0.01, 1e-10));
    CHECK(one.second == 0);
    const kernel::SheetStress none = kernel::Triangle(free, sheet, corners_of(stretched(0.99, 0.99))).stress();
    CHECK(none.stretch == kernel::Stretch::slack);
    CHECK(none.first == 0);
}

TEST_CASE("Energy and pull have no jump where wrinkles begin and where film goes slack") {
    const kernel::FreeTriangle free = flat();
    const double edge = 1 - 0.4 * 0.01;  // e2 = -nu e1
    for (const auto& at : {std::array<double, 2>{1.01, edge}, {1.0, 0.95}}) {
        const bool wrinkles = at[0] > 1;
        const auto shifted = [&](double by) {
            return corners_of(wrinkles ? stretched(at[0], at[1] + by) : stretched(at[0] + by, at[1]));
        };
        const kernel::Triangle over(free, sheet, shifted(1e-9)), under(free, sheet, shifted(-1e-9));
        CHECK(over.stress().stretch != under.stress().stretch);
        CHECK(std::abs(over.energy() - under.energy()) < 1e-7);
        CHECK((over.gradient() - under.gradient()).norm() < 1e-3);
    }
}

TEST_CASE("Gradient and tangent of an evenly pulling triangle are those of its area; its secant is never softer") {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> noise(-1, 1);
    for (int trial = 0; trial < 40; ++trial) {
        Vector9 x = corners_of(stretched(1, 1));
        for (int i = 0; i < 9; ++i) x(i) += 0.05 * noise(random);
        const kernel::EvenTriangle here(x, 150);
        const Eigen::Vector3d ab = x.segment<3>(3) - x.segment<3>(0), ac = x.segment<3>(6) - x.segment<3>(0);
        CHECK(close(here.energy(), 150 * 0.5 * ab.cross(ac).norm(), 1e-12));
        const Vector9 gradient = here.gradient();
        const Matrix9 tangent = here.tangent();
        for (int i = 0; i < 9; ++i) {
            const double h = 1e-6;
            Vector9 up = x, down = x;
            up(i) += h;
            down(i) -= h;
            const kernel::EvenTriangle a(up, 150), b(down, 150);
            CHECK(std::abs((a.energy() - b.energy()) / (2 * h) - gradient(i)) < 1e-6);
            CHECK(((a.gradient() - b.gradient()) / (2 * h) - tangent.col(i)).norm() < 1e-5 * (1 + tangent.norm()));
        }
        // Its own energy, x K x/2, is the area here and no less elsewhere.
        CHECK((here.secant() * x - gradient).norm() < 1e-9 * gradient.norm());
        const Eigen::SelfAdjointEigenSolver<Matrix9> over(here.secant() - tangent);
        CHECK(over.eigenvalues().minCoeff() > -1e-9 * tangent.norm());
    }
}
