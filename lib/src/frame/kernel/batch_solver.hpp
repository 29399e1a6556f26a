// SPDX-License-Identifier: BSD-3-Clause
// Equilibrium of one frame under up to `batch` loads at once, each bit for bit what Solver gives it alone.
//
// Layout. Every array is the one of Solver with `batch` numbers at each place, one a load: u[batch*i + which]. Members,
// forces and springs go through the same kernels with N = Four (assembly_kernel.hpp), first the one half of the loads,
// then the other; the factor takes all of them (banded_batch.hpp).
//
// The loads take their Newton steps together. One that is balanced stands still until all are. One that needs more than
// a whole step along a positive definite tangent (a shift, a second look along the step) or ends in a state that needs
// to be judged leaves the batch and is solved by Solver from the start; so does any load with terms that the kernels do
// not have (member loads, temperatures, settlements) and every load of a frame with arms, springs or feet.
#pragma once

#include <array>
#include <span>
#include <vector>

#include "frame/kernel/banded_batch.hpp"
#include "frame/kernel/solver.hpp"

namespace coverframe::kernel {

class BatchSolver {
public:
    /// Keeps the frame, which must stay as it is.
    /// \throws InputError for a frame that is not sound (frame.hpp)
    explicit BatchSolver(const Frame& frame);

    /// Solutions of up to `batch` loads, in their order.
    /// \throws InputError as coverframe::solve
    void solve(std::span<const FrameLoads> loads, const SolveOptions& options, const std::vector<double>& start,
               std::span<Solution> solutions);

private:
    /// Per load.
    using Numbers = std::array<double, batch>;
    struct State {
        std::vector<double> gradient, K;
        Numbers energy{}, largest_force{}, rounding{}, least_fold{};
    };
    struct Lane {
        bool walking = false;
        bool balanced = false;
        int iterations = 0;
        double unbalanced = 0;
    };
    [[nodiscard]] bool fits(const FrameLoads& loads, const FrameLoads& first) const;
    void put_on(std::span<const FrameLoads> loads);
    void evaluate(const std::vector<double>& u, State& state);
    void add_half(int half, const double* u, State& state);
    void add_halves(const double* u, State& state);
    void add_halves_avx2(const double* u, State& state);
    [[nodiscard]] bool look_for_balance(const SolveOptions& options);
    void factorise();
    void find_steps();
    void take_steps();
    void leave(std::size_t which) { lanes_[which].walking = lanes_[which].balanced = false; }

    const Frame& frame_;
    Solver alone_;
    const Assembly& assembly_;
    BatchLDLT factor_;
    std::vector<TieProperties> ties_;     ///< one a member, of poles nothing
    std::vector<Turned<Four>> turns_;     ///< one a node
    std::vector<double> force_, couple_;  ///< 3 a node
    std::vector<int> spring_node_;
    std::vector<std::array<int, 6>> spring_places_;
    std::vector<double> springs_;  ///< 12 a spring: k lower triangle, u0, force0
    std::vector<double> u_, tried_, gradient_, step_, scale_;
    State state_, trial_;
    std::array<Lane, batch> lanes_{};
    bool plain_ = true;  ///< whether the kernels have all that the frame has
};

}  // namespace coverframe::kernel
