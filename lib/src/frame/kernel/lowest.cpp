// SPDX-License-Identifier: BSD-3-Clause
#include "lowest.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "frame/kernel/diagnosis.hpp"

namespace coverframe::kernel {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

namespace {

constexpr double highest_factor = 1e9;

/// A factor with none below it, and no further under the lowest than a tenth; 0 if there is none.
double just_below(const Band& band, const VectorXd& A, const VectorXd& B) {
    double high = 1;
    while (count_below(band, A, B, high) == 0) {
        high *= 8;
        if (high > highest_factor) return 0;
    }
    double low = high / 8;
    while (count_below(band, A, B, low) > 0) low /= 8;
    while (high > 1.1 * low) {
        const double middle = 0.5 * (low + high);
        (count_below(band, A, B, middle) > 0 ? high : low) = middle;
    }
    return low;
}

MatrixXd product_of(const Band& band, const VectorXd& K, const MatrixXd& X) {
    MatrixXd Y(X.rows(), X.cols());
    for (Index j = 0; j < X.cols(); ++j) Y.col(j) = product(band, K, X.col(j));
    return Y;
}

/// Shapes with no symmetry of any frame.
MatrixXd start_shapes(Index rows, Index columns) {
    MatrixXd X(rows, columns);
    for (Index j = 0; j < columns; ++j) {
        for (Index i = 0; i < rows; ++i) {
            X(i, j) = std::sin(1.0 + static_cast<double>(i) * (0.37 + 0.61 * static_cast<double>(j)));
        }
    }
    return X;
}

}  // namespace

int count_below(const Band& band, const VectorXd& A, const VectorXd& B, double factor) {
    BandedLDLT ldlt(band);
    const VectorXd scale = VectorXd::Ones(band.size());
    // A factor that hits a pivot of zero is a hair off.
    for (double off = 0; off < 1e-6; off = std::max(4 * off, 1e-13)) {
        const VectorXd K = A + factor * (1 + off) * B;
        if (ldlt.factorise(K, scale)) break;
    }
    return ldlt.negative();
}

LowestFactors lowest_dense(const Band& band, const VectorXd& A, const VectorXd& B, int count) {
    // B phi = mu A phi, lambda = -1/mu: the most negative mu is the lowest factor.
    const Eigen::GeneralizedSelfAdjointEigenSolver<MatrixXd> eigen(band.dense(B), band.dense(A));
    const VectorXd& mu = eigen.eigenvalues();
    const double smallest = 1e-12 * mu.cwiseAbs().maxCoeff();
    Index found = 0;
    while (found < std::min<Index>(mu.size(), count) && mu(found) < -smallest) ++found;
    return {-mu.head(found).cwiseInverse(), eigen.eigenvectors().leftCols(found)};
}

LowestFactors lowest_banded(const Band& band, const VectorXd& A, const VectorXd& B, int count) {
    constexpr int most_rounds = 500;
    const double shift = just_below(band, A, B);
    if (shift == 0) return {VectorXd(0), MatrixXd(band.size(), 0)};
    const VectorXd shifted = A + shift * B;
    BandedLDLT ldlt(band);
    VectorXd scale;
    scale_of(band, shifted, scale);
    (void)ldlt.factorise(shifted, scale);  // positive definite, by the count of its pivots
    const Index wanted = std::min<Index>(band.size(), count);
    MatrixXd X = start_shapes(band.size(), std::min<Index>(band.size(), 2 * wanted + 6));
    VectorXd nu = VectorXd::Zero(wanted);
    for (int round = 0; round < most_rounds; ++round) {
        BandedLDLT::Sides Y = -product_of(band, B, X);
        ldlt.solve(Y);
        const MatrixXd y = MatrixXd(Y).colwise().normalized();
        const Eigen::GeneralizedSelfAdjointEigenSolver<MatrixXd> ritz(-y.transpose() * product_of(band, B, y),
                                                                      y.transpose() * product_of(band, shifted, y));
        X = y * ritz.eigenvectors().rowwise().reverse();
        const VectorXd now = ritz.eigenvalues().reverse().head(wanted);
        const double change = (now - nu).cwiseAbs().maxCoeff();
        nu = now;
        if (change <= 1e-13 * nu.cwiseAbs().maxCoeff()) break;
    }
    Index found = 0;
    while (found < wanted && nu(found) > 1e-12 * nu(0)) ++found;
    return {(nu.head(found).cwiseInverse().array() + shift).matrix(), X.leftCols(found)};
}

}  // namespace coverframe::kernel
