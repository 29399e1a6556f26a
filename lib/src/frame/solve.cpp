// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/solve.hpp"

#include <Eigen/Dense>
#include <Eigen/SparseCholesky>
#include <algorithm>
#include <cmath>

#include "coverframe/base/error.hpp"
#include "kernel/assembly.hpp"

namespace coverframe {

namespace {

using Eigen::Index;
using Eigen::VectorXd;
using kernel::Assembly;
using Sparse = Eigen::SparseMatrix<double>;

/// A pivot below this share of its diagonal is no resistance at all.
constexpr double singular_pivot = 1e-11;
/// A shape whose stiffness is below this share of the diagonal is a free motion.
constexpr double free_motion = 1e-9;

void require_loads(const Frame& frame, const NodeLoads& loads, const std::vector<double>& start) {
    const std::size_t nodes = frame.nodes.size();
    if (!loads.force.empty() && loads.force.size() != 3 * nodes) {
        throw InputError("frame.loads.size", "/loads/force", std::to_string(loads.force.size()),
                         "node forces must be 3 numbers a node");
    }
    if (!start.empty() && start.size() != 6 * nodes) {
        throw InputError("frame.start.size", "/start", std::to_string(start.size()),
                         "start displacements must be 6 numbers a node");
    }
    const auto finite = [](double value) { return std::isfinite(value); };
    bool good =
        std::all_of(loads.force.begin(), loads.force.end(), finite) && std::all_of(start.begin(), start.end(), finite);
    for (const NodeLoads::Spring& spring : loads.springs) {
        good = good && spring.node >= 0 && static_cast<std::size_t>(spring.node) < nodes &&
               std::all_of(spring.stiffness.begin(), spring.stiffness.end(), finite) &&
               std::all_of(spring.force0.begin(), spring.force0.end(), finite) &&
               std::all_of(spring.u0.begin(), spring.u0.end(), finite);
    }
    if (!good) throw InputError("frame.loads.finite", "/loads", "", "loads must be finite numbers on nodes that exist");
}

Sparse matrix_of(const Assembly& assembly, const Assembly::State& state) {
    Sparse K(assembly.unknowns(), assembly.unknowns());
    K.setFromTriplets(state.K.begin(), state.K.end());
    return K;
}

/// The unknowns' part of a full vector.
VectorXd free_part(const Assembly& assembly, const VectorXd& full) {
    VectorXd part(assembly.unknowns());
    for (int i = 0; i < assembly.unknowns(); ++i) part(i) = full(assembly.full_of(i));
    return part;
}

/// Diagonal against which stiffness is measured: of the matrix itself, but never far below the stiffest of its kind,
/// and never below what is nothing in any frame (1e-12 N/m).
VectorXd scale_of(const Sparse& K) {
    VectorXd scale = K.diagonal().cwiseAbs();
    const double floor = 1e-12 * std::max(scale.size() > 0 ? scale.maxCoeff() : 0.0, 1.0);
    return scale.cwiseMax(floor);
}

/// LDL^T of a symmetric matrix that tells whether it is positive definite.
class Factor {
public:
    void analyse(const Sparse& K) { ldlt_.analyzePattern(K); }
    /// True if K + shift * scale is positive definite by a margin.
    bool factorise(const Sparse& K, const VectorXd& scale, double shift) {
        Sparse shifted = K;
        if (shift > 0) {
            for (Index i = 0; i < scale.size(); ++i) shifted.coeffRef(i, i) += shift * scale(i);
        }
        ldlt_.factorize(shifted);
        if (ldlt_.info() != Eigen::Success) return false;
        const VectorXd pivots = ldlt_.vectorD();
        const VectorXd diagonal = ldlt_.permutationP() * scale;
        return ((pivots.array() / diagonal.array()) > singular_pivot).all();
    }
    [[nodiscard]] VectorXd solve(const VectorXd& b) const { return ldlt_.solve(b); }

private:
    Eigen::SimplicialLDLT<Sparse> ldlt_;
};

/// Stiffness pattern with every diagonal entry present, so that a shift never changes it.
void keep_diagonal(const Assembly& assembly, Assembly::State& state) {
    for (int i = 0; i < assembly.unknowns(); ++i) state.K.emplace_back(i, i, 0.0);
}

const char* direction_name(int direction) {
    static constexpr std::array<const char*, 6> names{
        "fore and aft", "athwart", "up and down", "about its length axis", "about athwart axis", "about upright axis"};
    return names[static_cast<std::size_t>(direction)];
}

std::string place_text(const Frame& frame, const Assembly& assembly, const VectorXd& shape) {
    // A turn counts like a move at an arm of 0.1 m, so that a bow is named by where it moves most.
    VectorXd size = shape.cwiseAbs();
    for (Index i = 0; i < size.size(); ++i) {
        if (assembly.full_of(static_cast<int>(i)) % 6 >= 3) size(i) *= 0.1;
    }
    Index worst = 0;
    size.maxCoeff(&worst);
    const int full = assembly.full_of(static_cast<int>(worst));
    const std::string& name = frame.nodes[static_cast<std::size_t>(full / 6)].name;
    const int direction = full % 6;
    return direction < 3 ? "node \"" + name + "\" can move " + direction_name(direction)
                         : "node \"" + name + "\" can turn " + direction_name(direction);
}

struct Diagnosis {
    SolveStatus status = SolveStatus::not_run;
    std::string message;
};

bool positive_definite(const Assembly& assembly, const VectorXd& u) {
    Assembly::State state;
    assembly.evaluate(u, state);
    keep_diagonal(assembly, state);
    const Sparse K = matrix_of(assembly, state);
    Factor factor;
    factor.analyse(K);
    return factor.factorise(K, scale_of(K), 0);
}

/// Why a walk ended in a state whose tangent is not positive definite: a part is free to move, or compression pushes it
/// over. A part that is free from the start is looked at there: by the end it has fallen, and leans on something.
Diagnosis diagnose(const Frame& frame, const Assembly& assembly, const VectorXd& start, const VectorXd& end) {
    const VectorXd& u = positive_definite(assembly, start) ? end : start;
    Assembly::State whole;
    Assembly::State elastic;
    assembly.evaluate(u, whole);
    assembly.evaluate(u, elastic, false);
    const Sparse K = matrix_of(assembly, whole);
    const VectorXd root = scale_of(K).cwiseSqrt();
    const Eigen::MatrixXd scaled =
        root.cwiseInverse().asDiagonal() * Eigen::MatrixXd(K) * root.cwiseInverse().asDiagonal();
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(scaled);
    Diagnosis d;
    const VectorXd shape = root.cwiseInverse().asDiagonal() * eigen.eigenvectors().col(0);
    const VectorXd held = root.cwiseProduct(shape);
    const double resistance = shape.dot(matrix_of(assembly, elastic) * shape) / held.squaredNorm();
    const std::string place = place_text(frame, assembly, shape);
    if (resistance < free_motion) {
        d.status = SolveStatus::mechanism;
        d.message = place + ": nothing holds it there";
    } else {
        d.status = SolveStatus::unstable;
        d.message = place + ": the push on it is more than its straps and poles can hold there";
    }
    return d;
}

/// Newton with a line search; leaves the last state in `u`.
struct Walk {
    bool balanced = false;
    int iterations = 0;
    double unbalanced = 0;
    std::string reason;
};

double frame_size(const Frame& frame) {
    Eigen::Vector3d low = Eigen::Vector3d(frame.nodes.front().at.data());
    Eigen::Vector3d high = low;
    for (const FrameNode& node : frame.nodes) {
        low = low.cwiseMin(Eigen::Vector3d(node.at.data()));
        high = high.cwiseMax(Eigen::Vector3d(node.at.data()));
    }
    return (high - low).norm();
}

VectorXd spread(const Assembly& assembly, const VectorXd& step, Index size) {
    VectorXd full = VectorXd::Zero(size);
    for (int i = 0; i < assembly.unknowns(); ++i) full(assembly.full_of(i)) = step(i);
    return full;
}

/// Newton direction with the smallest shift that makes the tangent positive definite; empty if there is none.
VectorXd direction_of(Factor& factor, const Sparse& K, const VectorXd& gradient) {
    const VectorXd scale = scale_of(K);
    for (double shift = 0; shift<1e6; shift = shift> 0 ? 10 * shift : 1e-8) {
        if (!factor.factorise(K, scale, shift)) continue;
        const VectorXd step = -factor.solve(gradient);
        if (step.allFinite()) return step;
    }
    return {};
}

Walk walk(const Frame& frame, const Assembly& assembly, const SolveOptions& options, VectorXd& u) {
    Walk w;
    Assembly::State state;
    Factor factor;
    const double size = frame_size(frame);
    const double limit = 10 * size;
    for (w.iterations = 0; w.iterations <= options.max_iterations; ++w.iterations) {
        assembly.evaluate(u, state);
        keep_diagonal(assembly, state);
        const VectorXd gradient = free_part(assembly, state.gradient);
        w.unbalanced = gradient.size() > 0 ? gradient.cwiseAbs().maxCoeff() : 0;
        if (w.unbalanced <= std::max(options.force_tolerance * state.largest_force, state.rounding)) {
            w.balanced = true;
            return w;
        }
        if (w.iterations == options.max_iterations) break;
        const Sparse K = matrix_of(assembly, state);
        if (w.iterations == 0) factor.analyse(K);
        const VectorXd step = direction_of(factor, K, gradient);
        if (step.size() == 0) {
            w.reason = "the stiffness cannot be solved";
            return w;
        }
        const VectorXd full = spread(assembly, step, u.size());
        const double here = assembly.energy(u);
        const double descent = gradient.dot(step);
        const double noise = 1e-13 * (std::abs(here) + state.largest_force * 1e-3);
        // Nothing moves further than half the frame in one step, however soft it is at the start.
        double share = std::min(1.0, 0.5 * size / std::max(full.cwiseAbs().maxCoeff(), 1e-300));
        while (share > 1e-30 && !(assembly.energy(u + share * full) <= here + 1e-4 * share * descent + noise))
            share /= 2;
        if (share <= 1e-30) {
            w.reason = "the energy stops falling before the forces balance";
            return w;
        }
        u += share * full;
        if (u.cwiseAbs().maxCoeff() > limit) {
            w.reason = "a part moves away without end";
            return w;
        }
    }
    w.reason = "no balance after " + std::to_string(options.max_iterations) + " steps";
    return w;
}

/// The part that turned furthest: a node of a pole, or an upright that pushes.
struct Turn {
    double angle = 0;  ///< [rad]
    std::string part;
};

Turn largest_turn(const Frame& frame, const VectorXd& u) {
    Turn turn;
    for (std::size_t n = 0; n < frame.nodes.size(); ++n) {
        const double angle = u.segment<3>(static_cast<Index>(6 * n + 3)).norm();
        if (angle > turn.angle) turn = {angle, "the pole at node \"" + frame.nodes[n].name + "\""};
    }
    for (const FrameMember& member : frame.members) {
        if (member.kind != MemberKind::upright) continue;
        const Eigen::Vector3d drawn = Eigen::Vector3d(frame.nodes[static_cast<std::size_t>(member.to)].at.data()) -
                                      Eigen::Vector3d(frame.nodes[static_cast<std::size_t>(member.from)].at.data());
        const Eigen::Vector3d now = drawn + u.segment<3>(6 * member.to) - u.segment<3>(6 * member.from);
        if (now.norm() > member.free_length) continue;  // lifted off
        const double angle = std::atan2(drawn.cross(now).norm(), drawn.dot(now));
        if (angle > turn.angle) turn = {angle, "upright \"" + member.name + "\""};
    }
    return turn;
}

void fill(const Frame& frame, const Assembly& assembly, const VectorXd& u, Solution& solution) {
    Assembly::State state;
    assembly.evaluate(u, state);
    solution.displacement.assign(u.data(), u.data() + u.size());
    solution.members.clear();
    for (std::size_t m = 0; m < frame.members.size(); ++m) solution.members.push_back(assembly.forces(m, u));
    solution.reaction.assign(static_cast<std::size_t>(u.size()), 0.0);
    for (std::size_t n = 0; n < frame.nodes.size(); ++n) {
        for (std::size_t d = 0; d < 6; ++d) {
            if (frame.nodes[n].held[d]) solution.reaction[6 * n + d] = state.gradient(static_cast<Index>(6 * n + d));
        }
    }
    solution.energy = assembly.energy(u);
}

}  // namespace

const char* name_of(SolveStatus status) {
    switch (status) {
        case SolveStatus::not_run: return "not run";
        case SolveStatus::converged: return "converged";
        case SolveStatus::mechanism: return "mechanism";
        case SolveStatus::unstable: return "unstable";
        case SolveStatus::large_rotation: return "large rotation";
        case SolveStatus::iteration_limit: return "iteration limit";
    }
    return "";
}

Solution solve(const Frame& frame, const NodeLoads& loads, const SolveOptions& options,
               const std::vector<double>& start) {
    require_sound(frame);
    require_loads(frame, loads, start);
    const Assembly assembly(frame, loads);
    const auto size = static_cast<Index>(6 * frame.nodes.size());
    VectorXd u = VectorXd::Zero(size);
    if (!start.empty()) {
        for (int i = 0; i < assembly.unknowns(); ++i) {
            u(assembly.full_of(i)) = start[static_cast<std::size_t>(assembly.full_of(i))];
        }
    }
    const VectorXd begin = u;
    const Walk w = walk(frame, assembly, options, u);
    Solution solution;
    solution.iterations = w.iterations;
    solution.unbalanced = w.unbalanced;
    fill(frame, assembly, u, solution);
    const Turn turn = largest_turn(frame, u);
    const bool fallen = w.balanced && turn.angle > options.rotation_limit;
    if (!positive_definite(assembly, u) || (fallen && !positive_definite(assembly, begin))) {
        const Diagnosis diagnosis = diagnose(frame, assembly, begin, u);
        solution.status = diagnosis.status;
        solution.message = diagnosis.message;
    } else if (!w.balanced) {
        solution.status = SolveStatus::iteration_limit;
        solution.message = w.reason;
    } else if (fallen) {
        solution.status = SolveStatus::large_rotation;
        solution.message = turn.part + " turns further than the model allows";
    } else {
        solution.status = SolveStatus::converged;
        solution.message.clear();
    }
    return solution;
}

NodeLoads self_weight(const Frame& frame, double factor) {
    NodeLoads loads;
    loads.force.assign(3 * frame.nodes.size(), 0.0);
    for (const FrameMember& member : frame.members) {
        const double half = 0.5 * factor * member.weight * drawn_length(frame, member);
        for (const int node : {member.from, member.to}) loads.force[static_cast<std::size_t>(3 * node + 2)] -= half;
    }
    return loads;
}

LateralHold lateral_hold(const Frame& frame, const NodeLoads& loads, const Solution& solution, int node, int without) {
    if (!solution.usable()) {
        throw StateError("frame.solution.unusable", "the frame is not in equilibrium; its stiffness says nothing");
    }
    Assembly assembly(frame, loads, without);
    assembly.hold(6 * node + 2);
    const VectorXd u =
        Eigen::Map<const VectorXd>(solution.displacement.data(), static_cast<Index>(solution.displacement.size()));
    Assembly::State state;
    assembly.evaluate(u, state);
    keep_diagonal(assembly, state);
    const Sparse K = matrix_of(assembly, state);
    Factor factor;
    factor.analyse(K);
    const std::array<int, 2> level{assembly.unknown_at(6 * node), assembly.unknown_at(6 * node + 1)};
    if (level[0] < 0 || level[1] < 0 || !factor.factorise(K, scale_of(K), 0)) return {};
    Eigen::Matrix2d flexibility;
    for (int j = 0; j < 2; ++j) {
        VectorXd unit = VectorXd::Zero(assembly.unknowns());
        unit(level[static_cast<std::size_t>(j)]) = 1;
        const VectorXd moved = factor.solve(unit);
        for (int i = 0; i < 2; ++i) flexibility(i, j) = moved(level[static_cast<std::size_t>(i)]);
    }
    const Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d> eigen(0.5 * (flexibility + flexibility.transpose()));
    LateralHold hold;
    hold.stiffness = 1 / eigen.eigenvalues()(1);
    hold.direction = {eigen.eigenvectors()(0, 1), eigen.eigenvectors()(1, 1)};
    return hold;
}

}  // namespace coverframe
