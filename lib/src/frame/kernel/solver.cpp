// SPDX-License-Identifier: BSD-3-Clause
#include "solver.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

#include "coverframe/base/error.hpp"
#include "frame/kernel/balance.hpp"
#include "frame/kernel/conditioning.hpp"
#include "frame/kernel/loose.hpp"
#include "frame/kernel/parts.hpp"
#include "frame/kernel/require_loads.hpp"

namespace coverframe::kernel {

namespace {

using Eigen::Index;
using Eigen::VectorXd;

/// Further whole steps until the energy has to have fallen.
constexpr int most_ahead = 6;
/// How closely the share of the loads that has a usable state is looked for.
constexpr double share_known_to = 0.01;
constexpr int most_load_steps = 60;

void require_start(const Frame& frame, const std::vector<double>& start) {
    if (!start.empty() && start.size() != 6 * frame.nodes.size()) {
        throw InputError("frame.start.size", "/start", std::to_string(start.size()),
                         "start displacements must be 6 numbers a node");
    }
    if (!std::all_of(start.begin(), start.end(), [](double value) { return std::isfinite(value); })) {
        throw InputError("frame.loads.finite", "/start", "", "start displacements must be finite numbers");
    }
}

const Frame& sound(const Frame& frame) {
    require_sound(frame);
    return frame;
}

double frame_size(const Frame& frame) {
    Eigen::Vector3d low = Eigen::Vector3d(frame.nodes.front().at.data());
    Eigen::Vector3d high = low;
    for (const FrameNode& node : frame.nodes) {
        low = low.cwiseMin(Eigen::Vector3d(node.at.data()));
        high = high.cwiseMax(Eigen::Vector3d(node.at.data()));
    }
    return (high - low).norm();
}

/// Largest rotation of a node.
double largest_node_turn(const VectorXd& u) {
    double largest = 0;
    for (Index i = 3; i < u.size(); i += 6) largest = std::max(largest, u.segment<3>(i).norm());
    return largest;
}

}  // namespace

Solver::Solver(const Frame& frame)
    : frame_(&sound(frame)),
      assembly_(frame),
      factor_(assembly_.band()),
      size_(frame_size(frame)),
      adrift_(!parts_adrift(frame, {}).empty()),
      full_(VectorXd::Zero(static_cast<Index>(6 * frame.nodes.size()))) {}

void Solver::take(const Frame& frame) {
    frame_ = &sound(frame);
    assembly_.take(frame);
    size_ = frame_size(frame);
    adrift_ = !parts_adrift(frame, {}).empty();
}

bool Solver::positive_definite(Assembly::State& state) {
    hold_loose(assembly_, loose_, state.K);
    scale_of(assembly_.band(), state.K, scale_);
    return factorise_positive(factor_, state.K, scale_, 0);
}

bool Solver::positive_definite_at(const VectorXd& u, const FrameLoads& loads) {
    assembly_.evaluate(u, loads, trial_);
    return positive_definite(trial_);
}

/// Newton direction with the smallest shift that makes the tangent positive definite; false if there is none.
bool Solver::find_step() {
    scale_of(assembly_.band(), state_.K, scale_);
    for (double shift = 0; shift < 1e6; shift = std::max(10 * shift, 1e-8)) {
        if (!factorise_positive(factor_, state_.K, scale_, shift)) continue;
        step_ = -gradient_;
        factor_.solve(step_);
        if (!step_.allFinite()) continue;
        for (int i = 0; i < assembly_.unknowns(); ++i) full_(assembly_.full_of(i)) = step_(i);
        return true;
    }
    return false;
}

/// Share of the step in which nothing moves further than half the frame, however soft it is at the start.
double Solver::longest_share() const {
    return std::min(1.0, 0.5 * size_ / std::max(full_.cwiseAbs().maxCoeff(), 1e-300));
}

/// Goes on by whole steps, whatever the energy does on the way, until it is down to `enough`; true then. Where it is
/// not after a few, everything is put back.
bool Solver::look_ahead(const FrameLoads& loads, const SolveOptions& options, double enough, Walk& w) {
    kept_u_ = u_;
    kept_full_ = full_;
    kept_ = state_;
    const int most = std::min(most_ahead, options.max_iterations - w.iterations - 1);
    for (int steps = 0; steps <= most; ++steps) {
        tried_ = u_ + longest_share() * full_;
        try {
            assembly_.evaluate(tried_, loads, trial_);
        } catch (const StateError&) {
            break;  // a pole is folded there
        }
        std::swap(u_, tried_);
        std::swap(state_, trial_);
        if (state_.energy <= enough) {
            w.iterations += steps;
            return true;
        }
        take_gradient();
        if (!find_step()) break;
    }
    std::swap(u_, kept_u_);
    std::swap(full_, kept_full_);
    std::swap(state_, kept_);
    return false;
}

/// Goes along the step as far as the energy falls enough; false if it does nowhere.
/// \param following  the springs' energy counts, but state_ is left without them; there is no looking ahead, nor
///   without poles
bool Solver::take_step(const FrameLoads& loads, const SolveOptions& options, bool following, Walk& w) {
    const double here = state_.energy;
    double descent = 0;  // one after the other, as a batch does it
    for (int i = 0; i < assembly_.unknowns(); ++i) descent += gradient_(i) * step_(i);
    const double noise = 1e-13 * (std::abs(here) + state_.largest_force * 1e-3);
    double share = longest_share();
    // The whole step is nearly always taken, so the forces there are worked out with the energy; else the energy first.
    for (bool first = true; share > 1e-30; share /= 2, first = false) {
        tried_ = u_ + share * full_;
        const double enough = here + 1e-4 * share * descent + noise;
        try {
            if (!first && !(assembly_.energy(tried_, loads, trial_) <= enough)) continue;
            if (following) {
                assembly_.evaluate_without_springs(tried_, loads, trial_);
            } else {
                assembly_.evaluate(tried_, loads, trial_);
            }
        } catch (const StateError&) {
            continue;  // a pole is folded there: not a place to go to, look nearer
        }
        const double springs = following ? assembly_.energy_of_springs(tried_, loads.springs) : 0;
        if (trial_.energy + springs <= enough) {
            std::swap(u_, tried_);
            std::swap(state_, trial_);
            return true;
        }
        if (!first || following || assembly_.turning().empty()) continue;
        if (++w.refused < w.patience) continue;
        w.refused = 0;
        const bool found = look_ahead(loads, options, enough, w);
        w.patience = found ? 1 : 2 * w.patience;
        if (found) return true;
    }
    return false;
}

/// The unbalanced forces of state_ over the unknowns.
void Solver::take_gradient() {
    gradient_.resize(assembly_.unknowns());
    for (int i = 0; i < assembly_.unknowns(); ++i) gradient_(i) = state_.gradient(assembly_.full_of(i));
}

/// Newton with a line search from u_ with springs that follow; false if it does not end.
bool Solver::follow_springs(FrameLoads& loads, const Follow& set_springs, const SolveOptions& options, Walk& w) {
    constexpr int most_steps = 40;
    constexpr double closer = 1e-3;
    assembly_.evaluate_without_springs(u_, loads, state_);
    for (w.iterations = 0; w.iterations <= most_steps; ++w.iterations) {
        const bool settled = set_springs(u_, loads);
        assembly_.add_springs(u_, loads.springs, state_);
        take_gradient();
        w.unbalanced = gradient_.size() > 0 ? gradient_.cwiseAbs().maxCoeff() : 0;
        const double enough = closer * options.force_tolerance * state_.largest_force;
        w.balanced = w.unbalanced <= std::max(enough, state_.rounding);
        if (w.balanced && settled) return true;
        if (!find_step() || !take_step(loads, options, true, w)) return false;
    }
    return false;
}

std::optional<Solution> Solver::follow(FrameLoads& loads, const Follow& set_springs, const SolveOptions& options,
                                       const std::vector<double>& start) {
    require_start(*frame_, start);
    Feet& feet = assembly_.feet();
    feet.hold_all();
    if (feet.rough()) return std::nullopt;
    u_ = Eigen::Map<const VectorXd>(start.data(), static_cast<Index>(start.size()));
    const VectorXd begin = u_;
    Walk w;
    w.wants_condition = false;
    try {
        if (!follow_springs(loads, set_springs, options, w)) return std::nullopt;
        Solution solution = conclude(w, loads, options, begin);
        if (solution.usable()) return solution;
    } catch (const StateError&) {  // a pole is folded on the way
    }
    return std::nullopt;
}

/// Newton with a line search; leaves the last place and its state in u_ and state_.
Solver::Walk Solver::walk(const FrameLoads& loads, const SolveOptions& options) {
    Walk w;
    const double limit = 10 * size_;
    assembly_.evaluate(u_, loads, state_);
    for (w.iterations = 0; w.iterations <= options.max_iterations; ++w.iterations) {
        take_gradient();
        w.unbalanced = gradient_.size() > 0 ? gradient_.cwiseAbs().maxCoeff() : 0;
        if (w.unbalanced <= std::max(options.force_tolerance * state_.largest_force, state_.rounding)) {
            w.balanced = true;
            return w;
        }
        if (w.iterations == options.max_iterations) break;
        if (!find_step()) {
            w.reason = "the stiffness cannot be solved";
            return w;
        }
        if (!take_step(loads, options, false, w)) {
            w.reason = "the energy stops falling before the forces balance";
            return w;
        }
        if (u_.cwiseAbs().maxCoeff() > limit) {
            w.reason = "a part moves away without end";
            return w;
        }
    }
    w.reason = "no balance after " + std::to_string(options.max_iterations) + " steps";
    return w;
}

/// Walks, and walks again with the pushes found, until what the feet can take sideways has settled (frame/feet.hpp).
Solver::Walk Solver::settle(const FrameLoads& loads, const SolveOptions& options) {
    constexpr int most_rounds = 200;
    Feet& feet = assembly_.feet();
    feet.hold_all();
    Walk w = walk(loads, options);
    if (!feet.rough()) return w;
    for (int round = 0; w.balanced; ++round) {
        const Feet::Change change = feet.take_pushes(u_);
        if (change.largest <= std::max(options.force_tolerance * state_.largest_force, state_.rounding)) return w;
        if (round == most_rounds) {
            const std::string& name = frame_->nodes[static_cast<std::size_t>(change.node)].name;
            w.balanced = false;
            w.cycles = true;
            w.reason = "what the foot at node \"" + name + "\" carries and what it holds sideways do not settle";
            return w;
        }
        const int before = w.iterations;
        w = walk(loads, options);
        w.iterations += before;
    }
    return w;
}

void Solver::fill(const Walk& w, const FrameLoads& loads, Solution& solution) {
    solution.iterations = w.iterations;
    solution.unbalanced = w.unbalanced;
    for (int i = 0; i < assembly_.unknowns(); ++i) {
        const int full = assembly_.full_of(i);
        if (full % 6 < 3) continue;
        solution.unbalanced_moment = std::max(solution.unbalanced_moment, std::abs(state_.gradient(full)));
    }
    solution.displacement.assign(u_.data(), u_.data() + u_.size());
    assembly_.forces(u_, loads, turns_, solution.members, bends_);
    solution.reaction.assign(static_cast<std::size_t>(u_.size()), 0.0);
    for (std::size_t n = 0; n < frame_->nodes.size(); ++n) {
        for (std::size_t d = 0; d < 6; ++d) {
            if (frame_->nodes[n].held[d]) solution.reaction[6 * n + d] = state_.gradient(static_cast<Index>(6 * n + d));
        }
    }
    for (const NodeSpring& spring : frame_->springs) {
        const Vector6 force = Assembly::spring_force(spring, u_);
        for (int d = 0; d < 6; ++d) solution.reaction[static_cast<std::size_t>(6 * spring.node + d)] += force(d);
    }
    for (std::size_t f = 0; f < frame_->feet.size(); ++f) {
        const auto node = static_cast<std::size_t>(frame_->feet[f].node);
        const FootForces forces = assembly_.feet().forces(f, u_);
        solution.feet.push_back(forces);
        solution.reaction[6 * node] += forces.side[0];
        solution.reaction[6 * node + 1] += forces.side[1];
        solution.reaction[6 * node + 2] += forces.push;
    }
    solution.energy = state_.energy;
    add_up(*frame_, assembly_, u_, loads, solution);
}

/// Whether anybody can build the state that the walk ended in, and if not, why.
void Solver::judge(const Walk& w, const FrameLoads& loads, const SolveOptions& options, const VectorXd& begin,
                   bool known_stable, Solution& solution) {
    loose_ = loose_nodes(*frame_, loads, solution,
                         std::max(options.force_tolerance * state_.largest_force, state_.rounding));
    solution.loose = loose_;
    const Furthest turn = largest_turn(*frame_, assembly_, u_, bends_);
    const bool beyond = w.balanced && turn.angle > options.rotation_limit;
    // A pole that was free from the start may have swung down and hang there, which is an equilibrium too.
    const bool fallen = beyond || (w.balanced && largest_node_turn(u_) > options.rotation_limit);
    const bool adrift = adrift_ && !parts_adrift(*frame_, loads).empty();
    bool stable = !adrift && (known_stable || positive_definite(state_));
    const bool doubtful = !known_stable && factor_.smallest_ratio() < doubtful_pivot;
    if (stable && (w.wants_condition || doubtful)) stable = look_at_condition(loads, solution);
    if (!stable || (fallen && !positive_definite_at(begin, loads))) {
        // A part that is free from the start is looked at there: by the end it has fallen, and leans on something.
        diagnose(*frame_, assembly_, u_, loads, loose_, solution);
        const bool told =
            !stable && (solution.status == SolveStatus::ill_conditioned || positive_definite_at(begin, loads));
        if (!told) diagnose(*frame_, assembly_, begin, loads, loose_, solution);
    } else if (solution.condition >= no_digit_left) {
        solution.status = SolveStatus::ill_conditioned;
        solution.message = solution.caution + "; bring them closer together";
    } else if (!w.balanced) {
        solution.status = w.cycles ? SolveStatus::cycling : SolveStatus::iteration_limit;
        solution.message = w.reason;
    } else if (beyond) {
        solution.status = SolveStatus::large_rotation;
        solution.message = turn.part + " further than the model allows";
    } else {
        solution.status = SolveStatus::converged;
        solution.message.clear();
        solution.load_share = 1;
    }
}

/// After factor_ has become that of state_, and scale_ its scale. False for a mechanism that its pivots do not show.
bool Solver::look_at_condition(const FrameLoads& loads, Solution& solution) {
    solution.condition = condition_of(factor_, state_.K, scale_);
    if (solution.condition < ill_conditioned) return true;
    const Shape shape{*frame_, assembly_, u_, loads, softest_shape(factor_, scale_)};
    if (solution.condition >= suspicious && !strained(shape)) return false;
    solution.caution = conditioning_text(shape, solution.condition);
    return true;
}

void Solver::require(const FrameLoads& loads, const std::vector<double>& start) const {
    const bool good = std::all_of(frame_->members.begin(), frame_->members.end(), [](const FrameMember& member) {
        return std::isfinite(member.free_length) && member.free_length > 0;
    });
    if (!good) require_sound(*frame_);
    require_loads(*frame_, assembly_, loads);
    require_start(*frame_, start);
}

/// Sets u_ to the start, held directions to where they settle.
void Solver::begin_at(const FrameLoads& loads, const std::vector<double>& start) {
    u_.setZero(static_cast<Index>(6 * frame_->nodes.size()));
    for (std::size_t i = 0; i < loads.settlement.size(); ++i) u_(static_cast<Index>(i)) = loads.settlement[i];
    if (start.empty()) return;
    for (int i = 0; i < assembly_.unknowns(); ++i) {
        u_(assembly_.full_of(i)) = start[static_cast<std::size_t>(assembly_.full_of(i))];
    }
}

Solution Solver::attempt(const FrameLoads& loads, const SolveOptions& options, const std::vector<double>& start) {
    begin_at(loads, start);
    const VectorXd begin = u_;
    return conclude(settle(loads, options), loads, options, begin);
}

/// Looks for the largest share of the loads that has a usable state. If that is all of them, it is the solution.
void Solver::approach(const FrameLoads& loads, const SolveOptions& options, Solution& solution) {
    double low = 0;
    double high = 1;
    int iterations = solution.iterations;
    int steps = 0;
    const auto at_share = [&](double share, const std::vector<double>& start) {
        Solution next = attempt(scaled(loads, share), options, start);
        iterations += next.iterations;
        ++steps;
        return next;
    };
    Solution held = at_share(0, {});
    while (held.usable() && low < 1 && steps < most_load_steps) {
        // The last look goes up to what failed before: from so near it may be another matter.
        const bool last = high - low <= share_known_to;
        const double share = last ? high : 0.5 * (low + high);
        Solution next = at_share(share, held.displacement);
        if (next.usable()) {
            held = std::move(next);
            low = share;
            high = last ? 1 : high;
        } else if (last) {
            break;
        } else {
            high = share;
        }
    }
    if (low == 1) {
        solution = std::move(held);
    } else if (held.usable()) {
        std::array<char, 48> text{};
        (void)std::snprintf(text.data(), text.size(), "; it holds %.2f of the load", std::floor(100 * low) / 100);
        solution.message += text.data();
    } else if (solution.status != SolveStatus::mechanism) {
        solution.message += "; without any load it does not stand either";
    }
    solution.load_share = low;
    solution.load_steps = steps;
    solution.iterations = iterations;
}

Solution Solver::solve(const FrameLoads& loads, const SolveOptions& options, const std::vector<double>& start) {
    require(loads, start);
    Solution solution = attempt(loads, options, start);
    const bool hopeless = solution.status == SolveStatus::ill_conditioned;
    if (!solution.usable() && !hopeless && options.approach) approach(loads, options, solution);
    return solution;
}

Solution Solver::adopt(const Ended& ended, const FrameLoads& loads, const SolveOptions& options,
                       const std::vector<double>& start) {
    begin_at(loads, start);
    const VectorXd begin = u_;
    state_.gradient.resize(u_.size());
    for (Index i = 0; i < u_.size(); ++i) {
        u_(i) = ended.u[ended.stride * i];
        state_.gradient(i) = ended.gradient[ended.stride * i];
    }
    state_.energy = ended.energy;
    state_.largest_force = ended.largest_force;
    state_.rounding = ended.rounding;
    Walk w;
    w.balanced = true;
    w.iterations = ended.iterations;
    w.unbalanced = ended.unbalanced;
    w.wants_condition = false;
    return conclude(w, loads, options, begin, true);
}

/// What the walk ended in, as a solution.
Solution Solver::conclude(const Walk& w, const FrameLoads& loads, const SolveOptions& options, const VectorXd& begin,
                          bool known_stable) {
    Solution solution;
    fill(w, loads, solution);
    judge(w, loads, options, begin, known_stable, solution);
    return solution;
}

}  // namespace coverframe::kernel
