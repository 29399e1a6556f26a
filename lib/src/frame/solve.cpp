// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/solve.hpp"

#include "kernel/holds.hpp"
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
    return lateral_holds(frame, loads, solution, {{node, without}}).front();
}

std::vector<LateralHold> lateral_holds(const Frame& frame, const FrameLoads& loads, const Solution& solution,
                                       const std::vector<HoldAt>& places) {
    kernel::Holds holds(frame, loads, solution);
    std::vector<LateralHold> all;
    all.reserve(places.size());
    for (const HoldAt& place : places) all.push_back(holds.at(place));
    return all;
}

}  // namespace coverframe
