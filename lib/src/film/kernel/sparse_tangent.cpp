// SPDX-License-Identifier: BSD-3-Clause
#include "film/kernel/sparse_tangent.hpp"

#include <algorithm>

namespace coverframe::kernel {

namespace {

Eigen::SparseMatrix<double> pattern_of(int size, const std::vector<std::vector<int>>& groups) {
    std::vector<Eigen::Triplet<double>> entries;
    for (int i = 0; i < size; ++i) entries.emplace_back(i, i, 0.0);
    for (const std::vector<int>& group : groups) {
        for (const int a : group) {
            for (const int b : group) {
                if (a >= b && b >= 0) entries.emplace_back(a, b, 0.0);
            }
        }
    }
    Eigen::SparseMatrix<double> matrix(size, size);
    matrix.setFromTriplets(entries.begin(), entries.end());
    return matrix;
}

}  // namespace

SparseTangent::SparseTangent(int size, const std::vector<std::vector<int>>& groups)
    : matrix_(pattern_of(size, groups)) {
    first_.reserve(groups.size());
    for (const std::vector<int>& group : groups) {
        first_.push_back(places_.size());
        for (std::size_t i = 0; i < group.size(); ++i) {
            for (std::size_t j = 0; j <= i; ++j) places_.push_back(place_of(group[i], group[j]));
        }
    }
}

void SparseTangent::set_zero() { std::fill_n(matrix_.valuePtr(), matrix_.nonZeros(), 0.0); }

int SparseTangent::place_of(int row, int column) const {
    if (row < 0 || column < 0) return -1;
    if (row < column) std::swap(row, column);
    const int* begin = matrix_.innerIndexPtr() + matrix_.outerIndexPtr()[column];
    const int* end = matrix_.innerIndexPtr() + matrix_.outerIndexPtr()[column + 1];
    return static_cast<int>(std::lower_bound(begin, end, row) - matrix_.innerIndexPtr());
}

void SparseTangent::add(int row, int column, double value) { matrix_.valuePtr()[place_of(row, column)] += value; }

}  // namespace coverframe::kernel
