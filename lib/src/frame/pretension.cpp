// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/pretension.hpp"

#include <algorithm>
#include <cmath>

#include "coverframe/base/error.hpp"
#include "kernel/solver.hpp"

namespace coverframe {

namespace {

/// Length, mean tension and stiffness of a run. Members that are slack count with no tension.
struct RunState {
    double length = 0;
    double tension = 0;
    double stiffness = 0;
};

RunState state_of(const StrapRun& run, const Frame& frame, const std::vector<MemberForces>& forces) {
    RunState s;
    for (const int m : run.members) {
        const FrameMember& member = frame.members[static_cast<std::size_t>(m)];
        const double length = drawn_length(frame, member);
        s.length += length;
        if (!forces.empty()) s.tension += length * forces[static_cast<std::size_t>(m)].axial;
        s.stiffness = member.axial_stiffness;
    }
    s.tension /= s.length;
    return s;
}

void scale_free_lengths(const StrapRun& run, Frame& frame, double factor) {
    for (const int m : run.members) frame.members[static_cast<std::size_t>(m)].free_length *= factor;
}

void require_runs(const Frame& frame, const std::vector<StrapRun>& runs) {
    for (std::size_t r = 0; r < runs.size(); ++r) {
        bool good = !runs[r].members.empty() && std::isfinite(runs[r].tension) && runs[r].tension >= 0;
        for (const int m : runs[r].members) {
            good = good && m >= 0 && static_cast<std::size_t>(m) < frame.members.size() &&
                   frame.members[static_cast<std::size_t>(m)].kind == MemberKind::strap;
        }
        if (!good) {
            throw InputError("frame.run", "/runs/" + std::to_string(r), runs[r].name,
                             "strap " + runs[r].name + " must be made of straps and have a tension of zero or more");
        }
    }
}

}  // namespace

Tensioned tension_straps(const Frame& frame, const std::vector<StrapRun>& runs, const FrameLoads& loads,
                         const SolveOptions& options) {
    constexpr int max_rounds = 200;
    constexpr double tolerance = 1e-9;
    require_sound(frame);
    require_runs(frame, runs);
    Tensioned t{frame, {}, 0};
    for (const StrapRun& run : runs) {
        for (const int m : run.members) {
            FrameMember& member = t.frame.members[static_cast<std::size_t>(m)];
            member.free_length = drawn_length(t.frame, member) / (1 + run.tension / member.axial_stiffness);
        }
    }
    kernel::Solver solver(t.frame);
    // Tension lost for each relative lengthening of a run; the stiffness of the strap itself between rigid ends.
    std::vector<double> response(runs.size());
    std::vector<double> last_error(runs.size());
    std::vector<double> last_change(runs.size(), 0.0);
    for (t.rounds = 1; t.rounds <= max_rounds; ++t.rounds) {
        t.solution = solver.solve(loads, options, t.solution.displacement);
        if (!t.solution.usable()) return t;
        double worst = 0;
        for (std::size_t r = 0; r < runs.size(); ++r) {
            if (runs[r].tension == 0) continue;
            const RunState s = state_of(runs[r], t.frame, t.solution.members);
            const double error = s.tension - runs[r].tension;
            worst = std::max(worst, std::abs(error) / runs[r].tension);
            const double secant = last_change[r] != 0 ? (last_error[r] - error) / last_change[r] : s.stiffness;
            response[r] = std::clamp(secant, 0.02 * s.stiffness, s.stiffness);
            last_error[r] = error;
        }
        if (worst <= tolerance) return t;
        for (std::size_t r = 0; r < runs.size(); ++r) {
            if (runs[r].tension == 0) continue;
            last_change[r] = last_error[r] / response[r];
            scale_free_lengths(runs[r], t.frame, 1 + last_change[r]);
        }
    }
    t.solution.status = SolveStatus::iteration_limit;
    t.solution.message =
        "the straps do not reach their set tensions together; set them lower or hold the uprights better";
    return t;
}

}  // namespace coverframe
