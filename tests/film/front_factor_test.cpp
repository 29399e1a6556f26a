// SPDX-License-Identifier: BSD-3-Clause
// Checked against Eigen's own sparse factor, which goes column after column.
#include "film/kernel/front_factor.hpp"

#include <doctest/doctest.h>

#include <Eigen/SparseCholesky>
#include <random>
#include <vector>

#include "close.hpp"
#include "frame/kernel/numbers.hpp"

using namespace coverframe;
using Sparse = Eigen::SparseMatrix<double>;

namespace {

/// Lower triangle of a matrix over a grid of nodes with some unknowns each, all of a node's coupled with all of its
/// neighbours', of random values and as far from singular as `over` its rows' sums.
Sparse over_grid(int wide, int high, int each, double over, unsigned seed) {
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> value(-1, 1);
    std::vector<Eigen::Triplet<double>> entries;
    std::vector<double> sum(static_cast<std::size_t>(wide * high * each), 0.0);
    const auto couple = [&](int a, int b) {
        for (int i = 0; i < each; ++i) {
            for (int j = 0; j < each; ++j) {
                const int row = a * each + i, column = b * each + j;
                if (row <= column) continue;
                const double v = value(random);
                entries.emplace_back(row, column, v);
                sum[static_cast<std::size_t>(row)] += std::abs(v);
                sum[static_cast<std::size_t>(column)] += std::abs(v);
            }
        }
    };
    for (int y = 0; y < high; ++y) {
        for (int x = 0; x < wide; ++x) {
            const int node = y * wide + x;
            couple(node, node);
            if (x > 0) couple(node, node - 1);
            if (y > 0) couple(node, node - wide);
            if (x > 0 && y > 0) couple(node, node - wide - 1);
        }
    }
    const int size = wide * high * each;
    for (int i = 0; i < size; ++i) entries.emplace_back(i, i, over * sum[static_cast<std::size_t>(i)] + 0.1);
    Sparse matrix(size, size);
    matrix.setFromTriplets(entries.begin(), entries.end());
    return matrix;
}

Eigen::VectorXd some_side(Eigen::Index size) {
    Eigen::VectorXd side(size);
    for (Eigen::Index i = 0; i < size; ++i) side(i) = std::sin(1.0 + 0.37 * static_cast<double>(i));
    return side;
}

void compare(const Sparse& matrix, double shift) {
    kernel::FrontFactor factor;
    factor.analyse(matrix);
    REQUIRE(factor.factorise(matrix, shift));
    Eigen::SimplicialLLT<Sparse> other;
    other.setShift(shift);
    other.compute(matrix);
    REQUIRE(other.info() == Eigen::Success);
    const Eigen::VectorXd side = some_side(matrix.rows());
    const Eigen::VectorXd found = factor.solve(side);
    const Eigen::VectorXd expected = other.solve(side);
    CHECK((found - expected).norm() <= 1e-12 * expected.norm());
    Eigen::VectorXd back = matrix.selfadjointView<Eigen::Lower>() * found;
    back += shift * found;
    CHECK((back - side).norm() <= 1e-12 * side.norm());
}

}  // namespace

TEST_CASE("Solutions are those of Eigen's sparse factor: grids, strips, single unknowns, parts that do not touch") {
    for (const int each : {1, 3}) {
        compare(over_grid(17, 11, each, 1, 1), 0);
        compare(over_grid(60, 2, each, 1, 2), 0);
        compare(over_grid(30, 30, each, 1, 3), 2.5);
        compare(over_grid(1, 1, each, 1, 4), 0);
    }
    const Sparse part = over_grid(9, 5, 2, 1, 5);
    std::vector<Eigen::Triplet<double>> entries;
    for (int k = 0; k < part.outerSize(); ++k) {
        for (Sparse::InnerIterator e(part, k); e; ++e) {
            for (const int copy : {0, 90, 180}) {
                entries.emplace_back(copy + static_cast<int>(e.row()), copy + static_cast<int>(e.col()), e.value());
            }
        }
    }
    Sparse apart(271, 271);
    entries.emplace_back(270, 270, 4.0);
    apart.setFromTriplets(entries.begin(), entries.end());
    compare(apart, 0);
}

TEST_CASE("With and without AVX2") {
    const bool avx2 = kernel::avx2_in_use();
    const Sparse matrix = over_grid(40, 40, 3, 1, 6);
    const Eigen::VectorXd side = some_side(matrix.rows());
    kernel::FrontFactor factor;
    factor.analyse(matrix);
    REQUIRE(factor.factorise(matrix, 0));
    const Eigen::VectorXd here = factor.solve(side);
    const double least = factor.least_pivot();
    kernel::avx2_in_use() = false;
    compare(matrix, 0);
    const bool factorised = factor.factorise(matrix, 0);
    kernel::avx2_in_use() = avx2;
    REQUIRE(factorised);
    CHECK((factor.solve(side) - here).norm() <= 1e-13 * here.norm());
    CHECK(close(factor.least_pivot(), least, 1e-12));
}

TEST_CASE("An arrow, with every unknown held by the last, and a full matrix") {
    std::vector<Eigen::Triplet<double>> arrow, full;
    for (int i = 0; i < 80; ++i) {
        arrow.emplace_back(i, i, 2.0);
        if (i < 79) arrow.emplace_back(79, i, 0.1);
        for (int j = 0; j < i; ++j) full.emplace_back(i, j, 1.0 / (1 + i + j));
        full.emplace_back(i, i, 5.0);
    }
    Sparse matrix(80, 80);
    matrix.setFromTriplets(arrow.begin(), arrow.end());
    compare(matrix, 0);
    matrix.setFromTriplets(full.begin(), full.end());
    compare(matrix, 0);
}

TEST_CASE("One analysis serves matrices of the same pattern") {
    const Sparse first = over_grid(12, 9, 3, 1, 7);
    const Sparse second = over_grid(12, 9, 3, 2, 8);
    kernel::FrontFactor factor;
    factor.analyse(first);
    REQUIRE(factor.factorise(first, 0));
    REQUIRE(factor.factorise(second, 0));
    const Eigen::VectorXd side = some_side(first.rows());
    CHECK((second.selfadjointView<Eigen::Lower>() * factor.solve(side) - side).norm() < 1e-12 * side.norm());
}

TEST_CASE("What is not positive definite is told; pivots show how near it is") {
    Sparse matrix = over_grid(10, 10, 3, 1, 9);
    kernel::FrontFactor factor;
    factor.analyse(matrix);
    REQUIRE(factor.factorise(matrix, 0));
    const double least = factor.least_pivot();
    CHECK(least > 0);
    CHECK(factor.greatest_pivot() > least);
    CHECK_FALSE(factor.factorise(matrix, -1000));
    matrix.coeffRef(150, 150) = -1;
    CHECK_FALSE(factor.factorise(matrix, 0));
    CHECK(factor.factorise(matrix, 1000));
    // A chain held at no end: rigid, so its last pivot is zero but for rounding.
    std::vector<Eigen::Triplet<double>> chain;
    for (int i = 0; i < 50; ++i) {
        chain.emplace_back(i, i, i == 0 || i == 49 ? 1.0 : 2.0);
        if (i > 0) chain.emplace_back(i, i - 1, -1.0);
    }
    Sparse loose(50, 50);
    loose.setFromTriplets(chain.begin(), chain.end());
    factor.analyse(loose);
    CHECK((!factor.factorise(loose, 0) || factor.least_pivot() < 1e-12 * factor.greatest_pivot()));
    // A diagonal has its own pivots.
    Sparse diagonal(3, 3);
    diagonal.insert(0, 0) = 4;
    diagonal.insert(1, 1) = 9;
    diagonal.insert(2, 2) = 1;
    diagonal.makeCompressed();
    factor.analyse(diagonal);
    REQUIRE(factor.factorise(diagonal, 0));
    CHECK(close(factor.least_pivot(), 1, 1e-15));
    CHECK(close(factor.greatest_pivot(), 9, 1e-15));
}

TEST_CASE("No unknowns at all") {
    kernel::FrontFactor factor;
    const Sparse none(0, 0);
    factor.analyse(none);
    CHECK(factor.factorise(none, 0));
    CHECK(factor.solve(Eigen::VectorXd(0)).size() == 0);
}
