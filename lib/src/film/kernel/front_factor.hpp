// SPDX-License-Identifier: BSD-3-Clause
// Cholesky factor L of a sparse symmetric positive definite matrix, worked out in small dense matrices.
//
// Columns of L that hold the same rows are kept together. Each such group has a front: a dense matrix of its own
// columns and of the rows they hold. In it are added up the entries of the matrix and what the groups below leave over;
// its own columns are factorised, and what is left of the rest goes up to the next group (Duff and Reid, The
// multifrontal solution of indefinite sparse symmetric linear equations, 1983, from memory). All work on numbers is
// that of Eigen's dense Cholesky, triangular solve and product, which is some three times faster than column after
// column.
//
// Groups are joined where that adds few zeros: small matrices cost more for their calls than for their numbers.
//
// DEVELOPERS.md has how long libraries take for the same matrices.
#pragma once

#include <Eigen/Core>
#include <Eigen/SparseCore>
#include <vector>

namespace coverframe::kernel {

class FrontFactor {
public:
    /// Works out order and groups; values do not matter.
    /// \param lower  lower triangle, every entry of the diagonal among it, compressed
    void analyse(const Eigen::SparseMatrix<double>& lower);

    /// Factorises `lower` with `shift` added to its diagonal. False if it is not positive definite.
    /// \param lower  of the pattern of analyse()
    [[nodiscard]] bool factorise(const Eigen::SparseMatrix<double>& lower, double shift);

    // Of the last factorise() that was true.
    [[nodiscard]] double least_pivot() const { return least_pivot_; }
    [[nodiscard]] double greatest_pivot() const { return greatest_pivot_; }
    [[nodiscard]] Eigen::VectorXd solve(const Eigen::VectorXd& right) const;

private:
    using Index = Eigen::Index;

    /// Columns begin to begin + columns of L, in the order of elimination.
    struct Group {
        Index begin = 0;
        Index columns = 0;
        std::vector<int> rows;   ///< below its columns, in rising order
        std::vector<int> place;  ///< of each of `rows` in the front of `parent`
        int parent = -1;
        std::vector<int> children;
        std::size_t numbers = 0;  ///< where its columns of L begin

        [[nodiscard]] Index height() const { return columns + static_cast<Index>(rows.size()); }
    };
    /// An entry of the matrix in the columns of its group.
    struct Entry {
        std::size_t from = 0;  ///< in the values of the matrix
        std::size_t to = 0;    ///< in the numbers of L
    };

    void find_rows(const Eigen::SparseMatrix<double>& ordered);
    void place_entries(const Eigen::SparseMatrix<double>& lower);
    void add_child(const Group& group, const Group& child, const double* left_over);
    bool eliminate(const Group& group);

    std::vector<int> place_;  ///< of each unknown in the order of elimination
    std::vector<Group> groups_;
    std::vector<Entry> entries_;
    std::vector<std::size_t> diagonal_;  ///< where the diagonal stands in the numbers of L
    std::vector<double> numbers_;        ///< columns of L, group after group
    std::vector<double> rest_;           ///< of the front in hand
    std::vector<double> stack_;          ///< what groups leave over for those above
    double least_pivot_ = 0;
    double greatest_pivot_ = 0;
};

}  // namespace coverframe::kernel
