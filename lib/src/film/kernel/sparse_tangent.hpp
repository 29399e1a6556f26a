// SPDX-License-Identifier: BSD-3-Clause
// A symmetric matrix whose entries are known beforehand: each group of unknowns, such as the corners of a triangle, is
// coupled with itself. Lower triangle only, as Eigen's SimplicialLDLT takes it; where each entry of a group stands is
// worked out once.
#pragma once

#include <Eigen/Core>
#include <Eigen/SparseCore>
#include <vector>

namespace coverframe::kernel {

class SparseTangent {
public:
    /// \param size    number of unknowns
    /// \param groups  unknowns of each group; -1 for one that is held
    SparseTangent(int size, const std::vector<std::vector<int>>& groups);

    void set_zero();

    /// Adds a symmetric block to a group.
    template <class Block>
    void add(std::size_t group, const Block& block) {
        const int* place = places_.data() + first_[group];
        double* values = matrix_.valuePtr();
        for (Eigen::Index i = 0; i < block.rows(); ++i) {
            for (Eigen::Index j = 0; j <= i; ++j, ++place) {
                if (*place >= 0) values[*place] += block(i, j);
            }
        }
    }

    /// Adds to the entry of two unknowns, which must stand in one group.
    void add(int row, int column, double value);

    [[nodiscard]] const Eigen::SparseMatrix<double>& matrix() const { return matrix_; }

private:
    [[nodiscard]] int place_of(int row, int column) const;

    Eigen::SparseMatrix<double> matrix_;
    std::vector<std::size_t> first_;
    std::vector<int> places_;
};

}  // namespace coverframe::kernel
