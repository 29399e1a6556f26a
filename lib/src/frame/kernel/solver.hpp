// SPDX-License-Identifier: BSD-3-Clause
// Equilibrium of one frame under one load after another: what solve() does (frame/solve.hpp, where the method is told),
// with order, band and memory kept from one load to the next. A solution does not depend on what was solved before.
#pragma once

#include "frame/kernel/assembly.hpp"

namespace coverframe::kernel {

class Solver {
public:
    /// Keeps the frame, which must stay as it is but for the free lengths of straps and uprights.
    /// \throws InputError for a frame that is not sound (frame.hpp)
    explicit Solver(const Frame& frame);

    /// \throws InputError as coverframe::solve
    [[nodiscard]] Solution solve(const FrameLoads& loads, const SolveOptions& options,
                                 const std::vector<double>& start);

private:
    struct Walk {
        bool balanced = false;
        int iterations = 0;
        double unbalanced = 0;
        std::string reason;
    };
    [[nodiscard]] Walk walk(const FrameLoads& loads, const SolveOptions& options);
    [[nodiscard]] Walk settle(const FrameLoads& loads, const SolveOptions& options);
    [[nodiscard]] bool find_step();
    [[nodiscard]] bool take_step(const FrameLoads& loads);
    [[nodiscard]] bool positive_definite(Assembly::State& state);
    [[nodiscard]] bool positive_definite_at(const Eigen::VectorXd& u, const FrameLoads& loads);
    void fill(const FrameLoads& loads, Solution& solution) const;
    void judge(const Walk& w, const FrameLoads& loads, const SolveOptions& options, const Eigen::VectorXd& begin,
               Solution& solution);

    const Frame& frame_;
    Assembly assembly_;
    BandedLDLT factor_;
    double size_ = 0;         ///< of the frame, from corner to corner [m]
    std::vector<int> loose_;  ///< nodes that hang loose where the walk ended
    Eigen::VectorXd u_;       ///< displacements now, full size
    Assembly::State state_;   ///< at u_
    Eigen::VectorXd tried_;   ///< displacements that the line search looks at
    Assembly::State trial_;   ///< at tried_
    Eigen::VectorXd gradient_;
    Eigen::VectorXd step_;
    Eigen::VectorXd full_;  ///< step_, full size
    Eigen::VectorXd scale_;
};

/// Diagonal against which a tangent is measured: its own, but never far below the stiffest of its kind, and never below
/// what is nothing in any frame (1e-12 N/m).
void scale_of(const Band& band, const Eigen::VectorXd& K, Eigen::VectorXd& scale);

/// Factorises K + shift * scale. True if it is positive definite by a margin.
[[nodiscard]] bool factorise_positive(BandedLDLT& factor, const Eigen::VectorXd& K, const Eigen::VectorXd& scale,
                                      double shift);

}  // namespace coverframe::kernel
