// SPDX-License-Identifier: BSD-3-Clause
// Equilibrium of up to `batch` cases at once, one frame under many loads or frames of one topology (frame/batch.hpp)
// each under its own, bit for bit what Solver gives each alone.
//
// Layout. Every array is the one of Solver with `batch` numbers at each place, one a case: u[batch*i + which]. Members,
// forces and springs go through the same kernels with N = Four (assembly_kernel.hpp), first the one half of the cases,
// then the other; the factor takes all of them (banded_batch.hpp). Where frames differ, so do the properties of the
// members from lane to lane.
//
// The cases take their Newton steps together. One that is balanced stands still until all are. One that needs more than
// a whole step along a positive definite tangent (a shift, a second look along the step) or ends in a state that needs
// to be judged leaves the batch and is solved by Solver from the start; so does any case with terms that the kernels do
// not have (member loads, temperatures, settlements, arms, springs against the boat, feet).
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

    struct Case {
        const Frame* frame;  ///< the one kept, or another of its topology
        const FrameLoads* loads;
    };
    /// Solutions of up to `batch` cases, in their order.
    /// \throws InputError as coverframe::solve
    void solve(std::span<const Case> cases, const SolveOptions& options, const std::vector<double>& start,
               std::span<Solution> solutions);

private:
    /// Per case.
    using Numbers = std::array<double, batch>;
    struct State {
        std::vector<double> gradient, K;
        Numbers energy{}, largest_force{}, rounding{}, least_fold{};
    };
    struct Lane {
        double size = 0;        ///< of the frame, from corner to corner [m]
        bool stranger = false;  ///< its frame needs a Solver of its own
        bool fits = false;
        bool walking = false;
        bool balanced = false;
        int iterations = 0;
        double unbalanced = 0;
    };
    [[nodiscard]] bool fits(const FrameLoads& loads, const FrameLoads& first) const;
    void turn_to(const Frame& frame);
    void look_at(std::span<const Case> cases, const std::vector<double>& start);
    void put_on(std::span<const Case> cases);
    void put_properties(std::size_t which);
    void begin(std::span<const Case> cases, const std::vector<double>& start);
    void evaluate(const std::vector<double>& u, State& state);
    void add_members(int half, const double* u, Sums<Four>& sums);
    void add_half(int half, const double* u, State& state);
    void add_halves(const double* u, State& state);
    void add_halves_avx2(const double* u, State& state);
    [[nodiscard]] bool look_for_balance(const SolveOptions& options);
    void factorise();
    void find_steps();
    void take_steps();
    void leave(std::size_t which) { lanes_[which].walking = lanes_[which].balanced = false; }

    const Frame* frame_;
    Solver alone_;
    const Frame* alone_at_;  ///< whose frame it is now
    const Assembly& assembly_;
    BatchLDLT factor_;
    bool various_ = false;             ///< whether the frames differ
    std::vector<TieProperties> ties_;  ///< one a member, of poles nothing
    /// The same lane by lane where frames differ, for each half, and that of the poles.
    std::array<std::vector<TiePropertiesOf<Four>>, 2> various_ties_;
    std::array<std::vector<PolePropertiesOf<Four>>, 2> various_poles_;
    std::vector<Turned<Four>> turns_;     ///< one a node
    std::vector<double> force_, couple_;  ///< 3 a node
    std::vector<int> spring_node_;
    std::vector<std::array<int, 6>> spring_places_;
    std::vector<double> springs_;  ///< 12 a spring: k lower triangle, u0, force0
    std::vector<double> u_, tried_, gradient_, step_, scale_;
    State state_, trial_;
    std::array<Lane, batch> lanes_{};
    bool plain_;  ///< whether the kernels have all that the frame has
};

}  // namespace coverframe::kernel
