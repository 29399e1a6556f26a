// SPDX-License-Identifier: BSD-3-Clause
// The lowest positive factors lambda with (A + lambda B) phi = 0, A positive definite, both in one band.
//
// The number of factors below lambda is that of the negative pivots of A + lambda B (banded.hpp), which brackets the
// lowest one within a tenth. At the lower end s of that bracket A + s B is positive definite, so its factor needs no
// pivoting, and
//     -B phi = nu (A + s B) phi,  nu = 1/(lambda - s):
// the wanted lambda have the largest nu. Subspace iteration with Rayleigh and Ritz's best shapes in each round.
//
// Cost. Each round solves 2 count + 6 right-hand sides; the dense way costs about 10 n^3.
//
// Source: Bathe, Finite Element Procedures, chapter 11 (subspace iteration, from memory).
#pragma once

#include "frame/kernel/banded.hpp"

namespace coverframe::kernel {

struct LowestFactors {
    Eigen::VectorXd factors;  ///< lowest first, at most `count`
    Eigen::MatrixXd shapes;   ///< a column each
};

/// How many factors lie below one, by the signs of the pivots.
[[nodiscard]] int count_below(const Band& band, const Eigen::VectorXd& A, const Eigen::VectorXd& B, double factor);

/// By the dense eigenvalue problem.
[[nodiscard]] LowestFactors lowest_dense(const Band& band, const Eigen::VectorXd& A, const Eigen::VectorXd& B,
                                         int count);

/// By subspace iteration.
[[nodiscard]] LowestFactors lowest_banded(const Band& band, const Eigen::VectorXd& A, const Eigen::VectorXd& B,
                                          int count);

}  // namespace coverframe::kernel
