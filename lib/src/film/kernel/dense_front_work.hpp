// SPDX-License-Identifier: BSD-3-Clause
// What eliminate_front() does, for whatever instruction set and under whatever name of Eigen's namespace the file is
// compiled that includes it.
#pragma once

#include <Eigen/Cholesky>
#include <Eigen/Core>

#include "film/kernel/dense_front.hpp"

namespace coverframe::kernel {

static FrontPivots work_on_front(double* columns, std::ptrdiff_t height, std::ptrdiff_t own, double* rest) {
    using Matrix = Eigen::Map<Eigen::MatrixXd>;
    const Eigen::Index below = height - own;
    Matrix all(columns, height, own);
    Eigen::Ref<Eigen::MatrixXd> top = all.topRows(own);
    const Eigen::LLT<Eigen::Ref<Eigen::MatrixXd>> factor(top);
    if (factor.info() != Eigen::Success) return {};
    const double least = top.diagonal().minCoeff();
    const double greatest = top.diagonal().maxCoeff();
    if (below > 0) {
        auto held = all.bottomRows(below);
        top.triangularView<Eigen::Lower>().adjoint().solveInPlace<Eigen::OnTheRight>(held);
        Matrix(rest, below, below).selfadjointView<Eigen::Lower>().rankUpdate(held, -1);
    }
    return {true, least * least, greatest * greatest};
}

}  // namespace coverframe::kernel
