// SPDX-License-Identifier: BSD-3-Clause
// L D L^T of a symmetric matrix with a narrow band, and the order of nodes that makes it narrow.
//
//   K = L D L^T,  L lower triangular with ones on its diagonal, D diagonal, no pivoting:
//   d_t = k_tt - sum_k l_tk^2 d_k,  l_it = (k_it - sum_k l_ik d_k l_tk)/d_t,  i > t > k
//
// Storage. Column after column, each from its diagonal down to the last row it reaches, then three zeros, so that four
// rows are always worked on together. The last row reached never falls from one column to the next; within that stepped
// band the factor has no entries that the matrix has not, so matrix and factor share one layout.
//
// Order. Reverse Cuthill-McKee from an end of the graph (a node of least degree on the furthest level, looked for again
// until it gets no further), or the order given where that costs less. A ridge of single file gets the width of two
// nodes, a closed ring of three. A node that is tied to all others would make the band as wide as the matrix: right
// answers, at the cost of a dense one.
//
// Signs. K has as many negative eigenvalues as D has negative pivots (Sylvester's law of inertia). Without pivoting the
// factor of an indefinite matrix can lose digits where a pivot comes out small against its diagonal; `smallest_ratio`
// tells. A positive definite matrix needs no pivoting. A pivot of zero, or one that is not finite, ends the work.
//
// Cost. n w^2 multiplications and as many subtractions for the factor, 2 n w for a right-hand side; n unknowns, w the
// half width. Memory is taken when the band is set, and by the first set of several right-hand sides of a size.
//
// Every sum is made in one fixed order, with four rows or four partial sums side by side, and the library is compiled
// without contraction to fused operations: machines with and without AVX2 give the same bits.
//
// Sources: George and Liu, Computer Solution of Large Sparse Positive Definite Systems (ordering, envelope), from
// memory; Golub and Van Loan, Matrix Computations (banded L D L^T), from memory.
#pragma once

#include <Eigen/Core>
#include <array>
#include <limits>
#include <vector>

namespace coverframe::kernel {

/// Nodes in the order of reverse Cuthill-McKee. Links name two nodes each; equal degrees go by index.
[[nodiscard]] std::vector<int> reverse_cuthill_mckee(int nodes, const std::vector<std::array<int, 2>>& links);

/// Which entries of a symmetric matrix are stored, and where.
class Band {
public:
    Band() = default;
    /// \param last  for each column the last row with an entry, its own index if there is none below the diagonal
    explicit Band(const std::vector<int>& last);

    [[nodiscard]] int size() const { return static_cast<int>(reach_.size()); }
    /// Length of the array that holds a matrix, the zeros between the columns included.
    [[nodiscard]] Eigen::Index length() const { return length_; }
    /// Last row of a column.
    [[nodiscard]] int reach(int column) const { return reach_[static_cast<std::size_t>(column)]; }
    /// First column that reaches a row.
    [[nodiscard]] int first(int row) const { return first_[static_cast<std::size_t>(row)]; }
    /// Place of a diagonal entry; the rows below it follow.
    [[nodiscard]] Eigen::Index diagonal(int column) const { return start_[static_cast<std::size_t>(column)]; }
    /// Place of an entry of the band, from either triangle.
    [[nodiscard]] Eigen::Index at(int row, int column) const {
        return row >= column ? diagonal(column) + (row - column) : diagonal(row) + (column - row);
    }
    /// Most entries below the diagonal in a column.
    [[nodiscard]] int half_width() const;
    /// Multiplications of a factorisation.
    [[nodiscard]] double work() const;
    /// The matrix in full, for what needs it in full.
    [[nodiscard]] Eigen::MatrixXd dense(const Eigen::VectorXd& values) const;

private:
    std::vector<int> reach_;
    std::vector<int> first_;
    std::vector<Eigen::Index> start_;
    Eigen::Index length_ = 0;
};

class BandedLDLT {
public:
    /// Right-hand sides side by side, one in each column.
    using Sides = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

    BandedLDLT() = default;
    explicit BandedLDLT(Band band);

    [[nodiscard]] const Band& band() const { return band_; }
    /// Factorises K + shift * diag(scale).
    /// \param values  the entries of K, laid out by band()
    /// \param scale   what each pivot is measured against, positive
    /// \returns false if a pivot is zero or not finite: there is no factor then, and no inertia
    bool factorise(const Eigen::VectorXd& values, const Eigen::VectorXd& scale, double shift = 0);
    /// Number of negative pivots, which is that of negative eigenvalues.
    [[nodiscard]] int negative() const { return negative_; }
    /// Smallest pivot over its scale, sign included; infinity for no unknowns.
    [[nodiscard]] double smallest_ratio() const { return smallest_ratio_; }

    /// Puts the solution of K x = b in the place of b. After a factorisation that returned true.
    void solve(Eigen::VectorXd& b);
    /// The same for every column, bit for bit what it would be alone.
    void solve(Sides& b);

private:
    Band band_;
    Eigen::VectorXd factor_;   ///< L below the diagonal, laid out by band_
    Eigen::VectorXd pivot_;    ///< D
    Eigen::VectorXd inverse_;  ///< 1/D
    Eigen::VectorXd side_;     ///< a right-hand side and the zeros after it
    int negative_ = 0;
    double smallest_ratio_ = std::numeric_limits<double>::infinity();
};

}  // namespace coverframe::kernel
