// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/solve.hpp"

#include <Eigen/Eigenvalues>

#include "coverframe/base/error.hpp"
#include "kernel/require_loads.hpp"
#include "kernel/solver.hpp"

namespace coverframe {

const char* name_of(SolveStatus status) {
    switch (status) {
        case SolveStatus::not_run: return "not run";
        case SolveStatus::converged: return "converged";
        case SolveStatus::mechanism: return "mechanism";
        case SolveStatus::unstable: return "unstable";
        case SolveStatus::large_rotation: return "large rotation";
        case SolveStatus::ill_conditioned: return "ill-conditioned";
        case SolveStatus::iteration_limit: return "iteration limit";
        case SolveStatus::cycling: return "cycling";
    }
    return "";
}

Solution solve(const Frame& frame, const FrameLoads& loads, const SolveOptions& options,
               const std::vector<double>& start) {
    return kernel::Solver(frame).solve(loads, options, start);
}

FrameLoads scaled(FrameLoads loads, double share) {
    for (std::vector<double>* all :
         {&loads.force, &loads.couple, &loads.member_load, &loads.temperature, &loads.settlement}) {
        for (double& value : *all) value *= share;
    }
    for (FrameLoads::Spring& spring : loads.springs) {
        for (double& value : spring.u0) value *= share;
        for (double& value : spring.force0) value *= share;
    }
    return loads;
}

FrameLoads self_weight(const Frame& frame, double factor) {
    FrameLoads loads;
    loads.force.assign(3 * frame.nodes.size(), 0.0);
    for (const FrameMember& member : frame.members) {
        const double half = 0.5 * factor * member.weight * drawn_length(frame, member);
        for (const int node : {member.from, member.to}) loads.force[static_cast<std::size_t>(3 * node + 2)] -= half;
    }
    return loads;
}

LateralHold lateral_hold(const Frame& frame, const FrameLoads& loads, const Solution& solution, int node, int without) {
    if (!solution.usable()) {
        throw StateError("frame.solution.unusable", "the frame is not in equilibrium; its stiffness says nothing");
    }
    kernel::Assembly assembly(frame, without);
    kernel::require_loads(frame, assembly, loads);
    assembly.hold(6 * node + 2);
    if (without >= 0) {  // the member holds its ends apart
        assembly.hold(6 * frame.members.at(static_cast<std::size_t>(without)).from + 2);
        assembly.hold(6 * frame.members.at(static_cast<std::size_t>(without)).to + 2);
    }
    const Eigen::VectorXd u = Eigen::Map<const Eigen::VectorXd>(
        solution.displacement.data(), static_cast<Eigen::Index>(solution.displacement.size()));
    assembly.feet().take_pushes(u);
    kernel::Assembly::State state;
    assembly.evaluate(u, loads, state);
    Eigen::VectorXd scale;
    kernel::scale_of(assembly.band(), state.K, scale);
    kernel::BandedLDLT factor(assembly.band());
    const std::array<int, 2> level{assembly.unknown_at(6 * node), assembly.unknown_at(6 * node + 1)};
    if (level[0] < 0 || level[1] < 0 || !kernel::factorise_positive(factor, state.K, scale, 0)) return {};
    kernel::BandedLDLT::Sides moved = kernel::BandedLDLT::Sides::Zero(assembly.unknowns(), 2);
    for (int j = 0; j < 2; ++j) moved(level[static_cast<std::size_t>(j)], j) = 1;
    factor.solve(moved);
    Eigen::Matrix2d flexibility;
    for (int i = 0; i < 2; ++i) flexibility.row(i) = moved.row(level[static_cast<std::size_t>(i)]);
    const Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d> eigen(0.5 * (flexibility + flexibility.transpose()));
    LateralHold hold;
    hold.stiffness = 1 / eigen.eigenvalues()(1);
    hold.direction = {eigen.eigenvectors()(0, 1), eigen.eigenvectors()(1, 1)};
    return hold;
}

}  // namespace coverframe
