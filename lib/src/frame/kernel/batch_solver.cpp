// SPDX-License-Identifier: BSD-3-Clause
#include "batch_solver.hpp"

#include <algorithm>
#include <cmath>

namespace coverframe::kernel {

namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

/// The number of one load at a place.
std::size_t at(std::size_t place, std::size_t which) { return batch * place + which; }

Support<Four> support_at(const double* s) {
    const auto four = [s](int i) { return load<Four>(s + batch * i); };
    return {.k = {four(0), four(1), four(2), four(3), four(4), four(5)},
            .u0 = {four(6), four(7), four(8)},
            .force0 = {four(9), four(10), four(11)}};
}

void put(int lane, double from, Four& to) { to.v[lane] = from; }
void put(int lane, const Vec<double>& from, Vec<Four>& to) {
    put(lane, from.x, to.x);
    put(lane, from.y, to.y);
    put(lane, from.z, to.z);
}
void put(int lane, const PoleProperties& from, PolePropertiesOf<Four>& to) {
    put(lane, from.drawn, to.drawn);
    put(lane, from.axes.c0, to.axes.c0);
    put(lane, from.axes.c1, to.axes.c1);
    put(lane, from.axes.c2, to.axes.c2);
    put(lane, from.drawn_length, to.drawn_length);
    put(lane, from.free_length, to.free_length);
    put(lane, from.axial, to.axial);
    for (int end = 0; end < 2; ++end) {
        put(lane, from.near_2[end], to.near_2[end]);
        put(lane, from.near_3[end], to.near_3[end]);
    }
    put(lane, from.far_2, to.far_2);
    put(lane, from.far_3, to.far_3);
    put(lane, from.twist, to.twist);
}
void put(int lane, const TieProperties& from, TiePropertiesOf<Four>& to) {
    put(lane, from.drawn, to.drawn);
    put(lane, from.drawn_length, to.drawn_length);
    to.pulls = from.pulls;
    to.pushes = from.pushes;
    put(lane, from.free_length, to.free_length);
    put(lane, from.stiffness, to.stiffness);
    put(lane, from.longer, to.longer);
}

bool has_arms(const Frame& frame) {
    const auto any = [](const std::array<double, 3>& arm) { return arm[0] != 0 || arm[1] != 0 || arm[2] != 0; };
    return std::any_of(frame.members.begin(), frame.members.end(),
                       [&](const FrameMember& member) { return any(member.arm_from) || any(member.arm_to); });
}

}  // namespace

BatchSolver::BatchSolver(const Frame& frame)
    : frame_(&frame),
      alone_(frame),
      alone_at_(&frame),
      assembly_(alone_.assembly()),
      factor_(assembly_.band()),
      plain_(frame.springs.empty() && frame.feet.empty() && !has_arms(frame)) {
    const FrameLoads none;
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        ties_.push_back(assembly_.parts()[m].pole ? TieProperties{} : assembly_.tie(m, none));
    }
    const std::size_t nodes = frame.nodes.size();
    const std::size_t unknowns = index(assembly_.unknowns());
    turns_.resize(nodes);
    for (std::vector<double>* all : {&force_, &couple_}) all->resize(3 * batch * nodes);
    for (std::vector<double>* all : {&u_, &tried_, &state_.gradient, &trial_.gradient}) all->resize(6 * batch * nodes);
    for (std::vector<double>* all : {&gradient_, &step_, &scale_}) all->resize(batch * unknowns);
    const std::size_t length = static_cast<std::size_t>(assembly_.band().length()) + 1;
    for (State* state : {&state_, &trial_}) state->K.resize(batch * length);
}

/// Whether loads can be worked on together with the first of them.
bool BatchSolver::fits(const FrameLoads& loads, const FrameLoads& first) const {
    const auto same = [](const FrameLoads::Spring& a, const FrameLoads::Spring& b) { return a.node == b.node; };
    return plain_ && loads.member_load.empty() && loads.temperature.empty() && loads.settlement.empty() &&
           std::equal(loads.springs.begin(), loads.springs.end(), first.springs.begin(), first.springs.end(), same);
}

/// Makes that frame the one which is solved alone.
void BatchSolver::turn_to(const Frame& frame) {
    if (alone_at_ != &frame) alone_.take(frame);
    alone_at_ = &frame;
}

/// Refuses what solve() refuses, and tells which cases can be worked on together.
void BatchSolver::look_at(std::span<const Case> cases, const std::vector<double>& start) {
    lanes_ = {};
    various_ = std::any_of(cases.begin(), cases.end(), [&](const Case& one) { return one.frame != frame_; });
    const Frame* fitting = nullptr;
    for (std::size_t which = 0; which < cases.size(); ++which) {
        const Case& one = cases[which];
        Lane& lane = lanes_[which];
        lane.stranger = various_ && !(plain_ && !has_arms(*one.frame));
        if (lane.stranger) {
            Solver(*one.frame).require(*one.loads, start);
            continue;
        }
        turn_to(*one.frame);
        alone_.require(*one.loads, start);
        lane.size = alone_.size();
        lane.fits = fits(*one.loads, *cases.front().loads);
        if (lane.fits) fitting = one.frame;
        if (lane.fits && various_) put_properties(which);
    }
    if (fitting == nullptr || !various_) return;
    turn_to(*fitting);
    for (std::size_t which = 0; which < batch; ++which) {
        if (!lanes_[which].fits) put_properties(which);
    }
}

/// Gives a lane those of the frame that is solved alone.
void BatchSolver::put_properties(std::size_t which) {
    const FrameLoads none;
    const std::size_t half = which / lanes;
    const int lane = static_cast<int>(which % lanes);
    various_ties_[half].resize(ties_.size());
    various_poles_[half].resize(ties_.size());
    for (std::size_t m = 0; m < ties_.size(); ++m) {
        const Assembly::Part& part = assembly_.parts()[m];
        if (part.pole) {
            put(lane, part.pole->properties(), various_poles_[half][m]);
        } else {
            put(lane, assembly_.tie(m, none), various_ties_[half][m]);
        }
    }
}

/// Lanes without loads of their own carry the first ones.
void BatchSolver::put_on(std::span<const Case> cases) {
    const std::vector<FrameLoads::Spring>& springs = cases.front().loads->springs;
    spring_node_.clear();
    spring_places_.clear();
    for (const FrameLoads::Spring& spring : springs) {
        spring_node_.push_back(spring.node);
        spring_places_.push_back(assembly_.places_of_support(spring.node));
    }
    springs_.resize(12 * batch * springs.size());
    for (std::size_t which = 0; which < batch; ++which) {
        const FrameLoads& here = *cases[lanes_[which].fits ? which : 0].loads;
        for (std::size_t i = 0; i < 3 * frame_->nodes.size(); ++i) {
            force_[at(i, which)] = here.force.empty() ? 0 : here.force[i];
            couple_[at(i, which)] = here.couple.empty() ? 0 : here.couple[i];
        }
        for (std::size_t s = 0; s < springs.size(); ++s) {
            const FrameLoads::Spring& spring = here.springs[s];
            const std::array<double, 9>& k = spring.stiffness;
            const std::array<double, 12> numbers{k[0],
                                                 k[3],
                                                 k[4],
                                                 k[6],
                                                 k[7],
                                                 k[8],
                                                 spring.u0[0],
                                                 spring.u0[1],
                                                 spring.u0[2],
                                                 spring.force0[0],
                                                 spring.force0[1],
                                                 spring.force0[2]};
            for (std::size_t i = 0; i < 12; ++i) springs_[at(12 * s + i, which)] = numbers[i];
        }
    }
}

COVERFRAME_INLINE void BatchSolver::add_members(int half, const double* u, Sums<Four>& sums) {
    const auto h = static_cast<std::size_t>(half);
    for (std::size_t m = 0; m < ties_.size(); ++m) {
        const Assembly::Part& part = assembly_.parts()[m];
        const int* places = part.places.data();
        if (part.pole && various_) {
            add_pole(various_poles_[h][m], part.from, part.to, places, u, turns_.data(), Terms::tangent, sums);
        } else if (part.pole) {
            add_pole(part.pole->properties(), part.from, part.to, places, u, turns_.data(), Terms::tangent, sums);
        } else if (various_) {
            add_tie(various_ties_[h][m], part.from, part.to, places, u, Terms::tangent, sums);
        } else {
            add_tie(ties_[m], part.from, part.to, places, u, Terms::tangent, sums);
        }
    }
}

/// As Assembly::evaluate, in its order.
COVERFRAME_INLINE void BatchSolver::add_half(int half, const double* u, State& state) {
    const int shift = lanes * half;
    Sums<Four> sums{.gradient = state.gradient.data() + shift, .K = state.K.data() + shift};
    u += shift;
    for (const int node : assembly_.turning()) turns_[index(node)] = turned(vec_at<Four>(u, 6 * node + 3));
    add_members(half, u, sums);
    const int nodes = static_cast<int>(frame_->nodes.size());
    for (int n = 0; n < nodes; ++n)
        add_force(vec_at<Four>(force_.data() + shift, 3 * n), 6 * n, u, Terms::tangent, sums);
    for (int n = 0; n < nodes; ++n) {
        add_force(vec_at<Four>(couple_.data() + shift, 3 * n), 6 * n + 3, u, Terms::tangent, sums);
    }
    Sums<Four> springs{.gradient = sums.gradient, .K = sums.K};
    for (std::size_t s = 0; s < spring_node_.size(); ++s) {
        add_support(support_at(springs_.data() + 12 * batch * s + shift), 6 * spring_node_[s], spring_places_[s].data(),
                    u, Terms::tangent, springs);
    }
    store(sums.energy + springs.energy, state.energy.data() + shift);
    store(larger(sums.largest_force, springs.largest_force), state.largest_force.data() + shift);
    store(sums.rounding, state.rounding.data() + shift);
    store(sums.least_fold, state.least_fold.data() + shift);
}

void BatchSolver::add_halves(const double* u, State& state) {
    add_half(0, u, state);
    add_half(1, u, state);
}

#ifdef COVERFRAME_AVX2
COVERFRAME_AVX2
#endif
void BatchSolver::add_halves_avx2(const double* u, State& state) {
    for (int half = 0; half < 2; ++half) add_half(half, u, state);
}

void BatchSolver::evaluate(const std::vector<double>& u, State& state) {
    std::fill(state.gradient.begin(), state.gradient.end(), 0.0);
    std::fill(state.K.begin(), state.K.end(), 0.0);
    if (has_avx2()) {
        add_halves_avx2(u.data(), state);
    } else {
        add_halves(u.data(), state);
    }
}

/// True while a load still walks.
bool BatchSolver::look_for_balance(const SolveOptions& options) {
    Numbers unbalanced{};
    for (int i = 0; i < assembly_.unknowns(); ++i) {
        const double* from = &state_.gradient[batch * index(assembly_.full_of(i))];
        double* to = &gradient_[batch * index(i)];
        for (std::size_t which = 0; which < batch; ++which) {
            to[which] = from[which];
            unbalanced[which] = std::max(unbalanced[which], std::abs(from[which]));
        }
    }
    bool walking = false;
    for (std::size_t which = 0; which < batch; ++which) {
        Lane& lane = lanes_[which];
        if (!lane.walking) continue;
        lane.unbalanced = unbalanced[which];
        const double enough = std::max(options.force_tolerance * state_.largest_force[which], state_.rounding[which]);
        if (unbalanced[which] <= enough) {
            lane.balanced = true;
            lane.walking = false;
        } else if (!(unbalanced[which] > enough) || lane.iterations >= options.max_iterations) {
            leave(which);
        }
        walking = walking || lane.walking;
    }
    return walking;
}

/// As scale_of() and factorise_positive().
void BatchSolver::factorise() {
    const Band& band = assembly_.band();
    Numbers largest{};
    for (int i = 0; i < band.size(); ++i) {
        const double* diagonal = &state_.K[batch * static_cast<std::size_t>(band.diagonal(i))];
        double* scale = &scale_[batch * index(i)];
        for (std::size_t which = 0; which < batch; ++which) {
            scale[which] = std::abs(diagonal[which]);
            largest[which] = std::max(largest[which], scale[which]);
        }
    }
    for (std::size_t which = 0; which < batch; ++which) largest[which] = 1e-12 * std::max(largest[which], 1.0);
    for (int i = 0; i < band.size(); ++i) {
        double* scale = &scale_[batch * index(i)];
        for (std::size_t which = 0; which < batch; ++which) scale[which] = std::max(scale[which], largest[which]);
    }
    factor_.factorise(state_.K.data(), scale_.data());
}

void BatchSolver::find_steps() {
    factorise();
    for (std::size_t i = 0; i < step_.size(); ++i) step_[i] = -gradient_[i];
    factor_.solve(step_.data());
    for (std::size_t which = 0; which < batch; ++which) {
        if (!(factor_.smallest_ratio(static_cast<int>(which)) > singular_pivot)) leave(which);
    }
}

/// The first look of Solver::take_step.
void BatchSolver::take_steps() {
    Numbers longest{};
    Numbers descent{};
    for (std::size_t i = 0; i < step_.size(); ++i) {
        longest[i % batch] = std::max(longest[i % batch], std::abs(step_[i]));
        descent[i % batch] += gradient_[i] * step_[i];
    }
    Numbers share{};
    for (std::size_t which = 0; which < batch; ++which) {
        if (!std::isfinite(longest[which])) leave(which);
        share[which] = std::min(1.0, 0.5 * lanes_[which].size / std::max(longest[which], 1e-300));
    }
    tried_ = u_;
    for (int i = 0; i < assembly_.unknowns(); ++i) {
        double* to = &tried_[batch * index(assembly_.full_of(i))];
        const double* step = &step_[batch * index(i)];
        for (std::size_t which = 0; which < batch; ++which) {
            if (lanes_[which].walking) to[which] += share[which] * step[which];
        }
    }
    evaluate(tried_, trial_);
    Numbers furthest{};
    for (std::size_t i = 0; i < tried_.size(); ++i) {
        furthest[i % batch] = std::max(furthest[i % batch], std::abs(tried_[i]));
    }
    for (std::size_t which = 0; which < batch; ++which) {
        Lane& lane = lanes_[which];
        if (!lane.walking) continue;
        ++lane.iterations;
        const double here = state_.energy[which];
        const double noise = 1e-13 * (std::abs(here) + state_.largest_force[which] * 1e-3);
        const bool falls = trial_.energy[which] <= here + 1e-4 * share[which] * descent[which] + noise;
        const bool away = furthest[which] > 10 * lane.size;
        if (!falls || away || !(trial_.least_fold[which] > fold_margin)) leave(which);
    }
    std::swap(u_, tried_);
    std::swap(state_, trial_);
}

void BatchSolver::begin(std::span<const Case> cases, const std::vector<double>& start) {
    std::fill(u_.begin(), u_.end(), 0.0);
    for (int i = 0; !start.empty() && i < assembly_.unknowns(); ++i) {
        const std::size_t full = index(assembly_.full_of(i));
        for (std::size_t which = 0; which < batch; ++which) u_[at(full, which)] = start[full];
    }
    evaluate(u_, state_);
    for (std::size_t which = 0; which < cases.size(); ++which) {
        lanes_[which].walking = lanes_[which].fits && state_.least_fold[which] > fold_margin;
    }
}

void BatchSolver::solve(std::span<const Case> cases, const SolveOptions& options, const std::vector<double>& start,
                        std::span<Solution> solutions) {
    look_at(cases, start);
    if (std::any_of(lanes_.begin(), lanes_.end(), [](const Lane& lane) { return lane.fits; })) {
        put_on(cases);
        begin(cases, start);
        while (look_for_balance(options)) {
            find_steps();
            take_steps();
        }
        // Once more in the states they ended in: whether these are stable.
        factorise();
    }
    for (std::size_t which = 0; which < cases.size(); ++which) {
        const Lane& lane = lanes_[which];
        const Case& one = cases[which];
        if (!(lane.balanced && factor_.smallest_ratio(static_cast<int>(which)) > doubtful_pivot)) {
            if (!lane.stranger) turn_to(*one.frame);
            solutions[which] = lane.stranger ? Solver(*one.frame).solve(*one.loads, options, start)
                                             : alone_.solve(*one.loads, options, start);
            // None of a batch has them, so that none depends on its neighbours.
            solutions[which].condition = 0;
            solutions[which].caution.clear();
            continue;
        }
        const Solver::Ended ended{.u = &u_[which],
                                  .gradient = &state_.gradient[which],
                                  .stride = batch,
                                  .energy = state_.energy[which],
                                  .largest_force = state_.largest_force[which],
                                  .rounding = state_.rounding[which],
                                  .iterations = lane.iterations,
                                  .unbalanced = lane.unbalanced};
        turn_to(*one.frame);
        solutions[which] = alone_.adopt(ended, *one.loads, options, start);
    }
}

}  // namespace coverframe::kernel
