// SPDX-License-Identifier: BSD-3-Clause
#include "solver.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "coverframe/base/error.hpp"
#include "frame/kernel/loose.hpp"
#include "frame/kernel/require_loads.hpp"

namespace coverframe::kernel {

namespace {

using Eigen::Index;
using Eigen::VectorXd;

/// A shape whose stiffness is below this share of the diagonal is a free motion.
constexpr double free_motion = 1e-9;

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

const char* direction_name(int direction) {
    static constexpr std::array<const char*, 6> names{
        "fore and aft", "athwart", "up and down", "about its length axis", "about athwart axis", "about upright axis"};
    return names[static_cast<std::size_t>(direction)];
}

/// Where a shape of the unknowns moves most.
std::string place_text(const Frame& frame, const Assembly& assembly, const VectorXd& shape) {
    // A turn counts like a move at an arm of 0.1 m, so that a bow is named by where it moves most.
    VectorXd size = VectorXd::Zero(static_cast<Index>(6 * frame.nodes.size()));
    for (int i = 0; i < assembly.unknowns(); ++i) {
        const int full = assembly.full_of(i);
        size(full) = std::abs(shape(i)) * (full % 6 >= 3 ? 0.1 : 1.0);
    }
    Index worst = 0;
    size.maxCoeff(&worst);
    const std::string& name = frame.nodes[static_cast<std::size_t>(worst / 6)].name;
    const int direction = static_cast<int>(worst % 6);
    const bool slides = direction < 2 && std::ranges::any_of(frame.feet, [&](const Foot& foot) {
                            return foot.node == static_cast<int>(worst / 6);
                        });
    if (slides) return "the foot at node \"" + name + "\" can slide " + direction_name(direction);
    return direction < 3 ? "node \"" + name + "\" can move " + direction_name(direction)
                         : "node \"" + name + "\" can turn " + direction_name(direction);
}

/// Holds nodes that hang loose, which nothing else does and nothing needs to.
void hold_loose(const Assembly& assembly, const std::vector<int>& loose, VectorXd& K) {
    const Index length = assembly.band().length();
    const double firm = std::max(length > 0 ? K.head(length).maxCoeff() : 0, 1.0);
    for (const int node : loose) {
        for (int full = 6 * node; full < 6 * node + 3; ++full) {
            const int unknown = assembly.unknown_at(full);
            if (unknown >= 0) K(assembly.band().diagonal(unknown)) += firm;
        }
    }
}

/// Why a walk ended in a state whose tangent is not positive definite: a part is free to move, or compression pushes it
/// over.
void diagnose(const Frame& frame, const Assembly& assembly, const VectorXd& u, const FrameLoads& loads,
              const std::vector<int>& loose, Solution& solution) {
    Assembly::State whole;
    Assembly::State elastic;
    assembly.evaluate(u, loads, whole);
    assembly.evaluate(u, loads, elastic, false);
    hold_loose(assembly, loose, whole.K);
    hold_loose(assembly, loose, elastic.K);
    VectorXd root;
    scale_of(assembly.band(), whole.K, root);
    root = root.cwiseSqrt();
    const Eigen::MatrixXd scaled =
        root.cwiseInverse().asDiagonal() * assembly.band().dense(whole.K) * root.cwiseInverse().asDiagonal();
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(scaled);
    const VectorXd shape = root.cwiseInverse().asDiagonal() * eigen.eigenvectors().col(0);
    const VectorXd held = root.cwiseProduct(shape);
    const double resistance = shape.dot(assembly.band().dense(elastic.K) * shape) / held.squaredNorm();
    const std::string place = place_text(frame, assembly, shape);
    if (resistance < free_motion) {
        solution.status = SolveStatus::mechanism;
        solution.message = place + ": nothing holds it there";
    } else {
        solution.status = SolveStatus::unstable;
        solution.message = place + ": the push on it is more than its straps and poles can hold there";
    }
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

/// The part that turned furthest.
struct Furthest {
    double angle = 0;  ///< [rad]
    std::string part;
};

/// Lean of the uprights that push.
Furthest largest_lean(const Frame& frame, const Assembly& assembly, const VectorXd& u) {
    Furthest turn;
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        const FrameMember& member = frame.members[m];
        if (member.kind != MemberKind::upright) continue;
        const Eigen::Vector3d& drawn = assembly.drawn_chord(m);
        const Eigen::Vector3d now = assembly.chord(m, u);
        if (now.norm() > member.free_length) continue;  // lifted off
        const double angle = std::atan2(drawn.cross(now).norm(), drawn.dot(now));
        if (angle > turn.angle) turn = {angle, "upright \"" + member.name + "\" leans"};
    }
    return turn;
}

/// Bend of the poles between two nodes, or the lean of an upright if that is larger.
Furthest largest_turn(const Frame& frame, const Assembly& assembly, const VectorXd& u) {
    Furthest turn = largest_lean(frame, assembly, u);
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        const double angle = assembly.bend(m, u);
        const std::string& node = frame.nodes[static_cast<std::size_t>(frame.members[m].from)].name;
        if (angle > turn.angle) turn = {angle, "the pole at node \"" + node + "\" bends"};
    }
    return turn;
}

/// Largest rotation of a node.
double largest_node_turn(const VectorXd& u) {
    double largest = 0;
    for (Index i = 3; i < u.size(); i += 6) largest = std::max(largest, u.segment<3>(i).norm());
    return largest;
}

}  // namespace

void scale_of(const Band& band, const VectorXd& K, VectorXd& scale) {
    scale.resize(band.size());
    double largest = 0;
    for (int i = 0; i < band.size(); ++i) {
        scale(i) = std::abs(K(band.diagonal(i)));
        largest = std::max(largest, scale(i));
    }
    scale = scale.cwiseMax(1e-12 * std::max(largest, 1.0));
}

bool factorise_positive(BandedLDLT& factor, const VectorXd& K, const VectorXd& scale, double shift) {
    return factor.factorise(K, scale, shift) && factor.smallest_ratio() > singular_pivot;
}

Solver::Solver(const Frame& frame)
    : frame_(sound(frame)),
      assembly_(frame),
      factor_(assembly_.band()),
      size_(frame_size(frame)),
      full_(VectorXd::Zero(static_cast<Index>(6 * frame.nodes.size()))) {}

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
        if (step_.allFinite()) return true;
    }
    return false;
}

/// Goes along the step as far as the energy falls enough; false if it does nowhere.
/// \param following  the springs' energy counts, but state_ is left without them
bool Solver::take_step(const FrameLoads& loads, bool following) {
    for (int i = 0; i < assembly_.unknowns(); ++i) full_(assembly_.full_of(i)) = step_(i);
    const double here = state_.energy;
    double descent = 0;  // one after the other, as a batch does it
    for (int i = 0; i < assembly_.unknowns(); ++i) descent += gradient_(i) * step_(i);
    const double noise = 1e-13 * (std::abs(here) + state_.largest_force * 1e-3);
    // Nothing moves further than half the frame in one step, however soft it is at the start.
    double share = std::min(1.0, 0.5 * size_ / std::max(full_.cwiseAbs().maxCoeff(), 1e-300));
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
        if (!find_step() || !take_step(loads, true)) return false;
    }
    return false;
}

std::optional<Solution> Solver::follow(FrameLoads& loads, const Follow& set_springs, const SolveOptions& options,
                                       const std::vector<double>& start) {
    require_start(frame_, start);
    Feet& feet = assembly_.feet();
    feet.hold_all();
    if (feet.rough()) return std::nullopt;
    u_ = Eigen::Map<const VectorXd>(start.data(), static_cast<Index>(start.size()));
    const VectorXd begin = u_;
    Walk w;
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
        if (!take_step(loads, false)) {
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
            const std::string& name = frame_.nodes[static_cast<std::size_t>(change.node)].name;
            w.balanced = false;
            w.reason = "what the foot at node \"" + name + "\" carries and what it holds sideways do not settle";
            return w;
        }
        const int before = w.iterations;
        w = walk(loads, options);
        w.iterations += before;
    }
    return w;
}

void Solver::fill(const FrameLoads& loads, Solution& solution) const {
    solution.displacement.assign(u_.data(), u_.data() + u_.size());
    solution.members.reserve(frame_.members.size());
    for (std::size_t m = 0; m < frame_.members.size(); ++m) {
        solution.members.push_back(assembly_.forces(m, u_, loads));
    }
    solution.reaction.assign(static_cast<std::size_t>(u_.size()), 0.0);
    for (std::size_t n = 0; n < frame_.nodes.size(); ++n) {
        for (std::size_t d = 0; d < 6; ++d) {
            if (frame_.nodes[n].held[d]) solution.reaction[6 * n + d] = state_.gradient(static_cast<Index>(6 * n + d));
        }
    }
    for (const NodeSpring& spring : frame_.springs) {
        const Vector6 force = Assembly::spring_force(spring, u_);
        for (int d = 0; d < 6; ++d) solution.reaction[static_cast<std::size_t>(6 * spring.node + d)] += force(d);
    }
    for (std::size_t f = 0; f < frame_.feet.size(); ++f) {
        const auto node = static_cast<std::size_t>(frame_.feet[f].node);
        const FootForces forces = assembly_.feet().forces(f, u_);
        solution.feet.push_back(forces);
        solution.reaction[6 * node] += forces.side[0];
        solution.reaction[6 * node + 1] += forces.side[1];
        solution.reaction[6 * node + 2] += forces.push;
    }
    solution.energy = state_.energy;
}

/// Whether anybody can build the state that the walk ended in, and if not, why.
void Solver::judge(const Walk& w, const FrameLoads& loads, const SolveOptions& options, const VectorXd& begin,
                   bool known_stable, Solution& solution) {
    loose_ =
        loose_nodes(frame_, loads, solution, std::max(options.force_tolerance * state_.largest_force, state_.rounding));
    solution.loose = loose_;
    const Furthest turn = largest_turn(frame_, assembly_, u_);
    const bool beyond = w.balanced && turn.angle > options.rotation_limit;
    // A pole that was free from the start may have swung down and hang there, which is an equilibrium too.
    const bool fallen = beyond || (w.balanced && largest_node_turn(u_) > options.rotation_limit);
    const bool stable = known_stable || positive_definite(state_);
    if (!stable || (fallen && !positive_definite_at(begin, loads))) {
        // A part that is free from the start is looked at there: by the end it has fallen, and leans on something.
        const bool stable_at_start = !stable && positive_definite_at(begin, loads);
        diagnose(frame_, assembly_, stable_at_start ? u_ : begin, loads, loose_, solution);
    } else if (!w.balanced) {
        solution.status = SolveStatus::iteration_limit;
        solution.message = w.reason;
    } else if (beyond) {
        solution.status = SolveStatus::large_rotation;
        solution.message = turn.part + " further than the model allows";
    } else {
        solution.status = SolveStatus::converged;
        solution.message.clear();
    }
}

void Solver::require(const FrameLoads& loads, const std::vector<double>& start) const {
    const bool good = std::all_of(frame_.members.begin(), frame_.members.end(), [](const FrameMember& member) {
        return std::isfinite(member.free_length) && member.free_length > 0;
    });
    if (!good) require_sound(frame_);
    require_loads(frame_, assembly_, loads);
    require_start(frame_, start);
}

/// Sets u_ to the start, held directions to where they settle.
void Solver::begin_at(const FrameLoads& loads, const std::vector<double>& start) {
    u_.setZero(static_cast<Index>(6 * frame_.nodes.size()));
    for (std::size_t i = 0; i < loads.settlement.size(); ++i) u_(static_cast<Index>(i)) = loads.settlement[i];
    if (start.empty()) return;
    for (int i = 0; i < assembly_.unknowns(); ++i) {
        u_(assembly_.full_of(i)) = start[static_cast<std::size_t>(assembly_.full_of(i))];
    }
}

Solution Solver::solve(const FrameLoads& loads, const SolveOptions& options, const std::vector<double>& start) {
    require(loads, start);
    begin_at(loads, start);
    const VectorXd begin = u_;
    return conclude(settle(loads, options), loads, options, begin);
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
    return conclude({true, ended.iterations, ended.unbalanced, {}}, loads, options, begin, true);
}

/// What the walk ended in, as a solution.
Solution Solver::conclude(const Walk& w, const FrameLoads& loads, const SolveOptions& options, const VectorXd& begin,
                          bool known_stable) {
    Solution solution;
    solution.iterations = w.iterations;
    solution.unbalanced = w.unbalanced;
    fill(loads, solution);
    judge(w, loads, options, begin, known_stable, solution);
    return solution;
}

}  // namespace coverframe::kernel
