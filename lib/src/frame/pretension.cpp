// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/pretension.hpp"

#include <algorithm>
#include <cmath>

#include "coverframe/base/error.hpp"
#include "kernel/solver.hpp"
#include "strap_run.hpp"

namespace coverframe {

namespace {

void scale_free_lengths(const StrapRun& run, Frame& frame, double factor) {
    for (const int m : run.members) frame.members[static_cast<std::size_t>(m)].free_length *= factor;
}

}  // namespace

Tensioned tension_straps(const Frame& frame, const std::vector<StrapRun>& runs, const FrameLoads& loads,
                         const SolveOptions& options) {
    constexpr int max_rounds = 200;
    constexpr double tolerance = 1e-9;
    require_sound(frame);
    require_runs(frame, runs, true);
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
            const double stiffness = t.frame.members[static_cast<std::size_t>(runs[r].members.back())].axial_stiffness;
            const double error = mean_tension(t.frame, runs[r], t.solution.members) - runs[r].tension;
            worst = std::max(worst, std::abs(error) / runs[r].tension);
            const double secant = last_change[r] != 0 ? (last_error[r] - error) / last_change[r] : stiffness;
            response[r] = std::clamp(secant, 0.02 * stiffness, stiffness);
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
