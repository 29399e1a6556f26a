// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/tightening.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "coverframe/base/error.hpp"
#include "frame/number_text.hpp"
#include "kernel/solver.hpp"
#include "strap_run.hpp"

namespace coverframe {
namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

void require_steps(const Frame& frame, const std::vector<StrapRun>& runs, const std::vector<TighteningStep>& steps,
                   const TighteningOptions& options) {
    require_runs(frame, runs, false);
    std::vector<Problem> problems;
    for (std::size_t s = 0; s < steps.size(); ++s) {
        const TighteningStep& step = steps[s];
        const std::string where = "/steps/" + std::to_string(s);
        if (step.run < 0 || index(step.run) >= runs.size()) {
            problems.push_back({"frame.step", where + "/run", std::to_string(step.run),
                                "a step pulls a strap that exists, by its index"});
            continue;
        }
        const std::string& strap = runs[index(step.run)].name;
        if (std::isfinite(step.tension) && step.tension < 0) {
            problems.push_back({"frame.strap.push", where + "/tension", text_of(step.tension),
                                "strap " + strap + " would have to push; pull it to a tension over zero"});
        } else if (!(std::isfinite(step.tension) && step.tension > 0)) {
            problems.push_back({"frame.step", where + "/tension", text_of(step.tension),
                                "strap " + strap +
                                    " is pulled to a tension over zero; give a strap that is to hang "
                                    "slack no step"});
        }
        if (!(std::isfinite(step.give) && step.give >= 0)) {
            problems.push_back({"frame.step", where + "/give", text_of(step.give),
                                "the buckle of strap " + strap + " gives back a finite length, not under zero"});
        }
    }
    if (!problems.empty()) throw InputError(std::move(problems));
    if (!std::ranges::all_of(options.held_by_hand,
                             [&](int node) { return node >= 0 && index(node) < frame.nodes.size(); })) {
        throw InputError("frame.step", "/held_by_hand", "", "hands hold nodes that exist");
    }
    if (!(std::isfinite(options.hand_stiffness) && options.hand_stiffness > 0)) {
        throw InputError("frame.step", "/hand_stiffness", text_of(options.hand_stiffness),
                         "hands hold with a stiffness over zero");
    }
}

/// Free length of the run, shared out in proportion to the drawn lengths.
void set_free_length(Frame& frame, const StrapRun& run, double total) {
    const double drawn = drawn_length(frame, run);
    for (const int m : run.members) {
        FrameMember& member = frame.members[index(m)];
        member.free_length = total * drawn_length(frame, member) / drawn;
    }
}

double free_length(const Frame& frame, const StrapRun& run) {
    double total = 0;
    for (const int m : run.members) total += frame.members[index(m)].free_length;
    return total;
}

FrameLoads with_hands(const FrameLoads& loads, const TighteningOptions& options) {
    FrameLoads held = loads;
    const double k = options.hand_stiffness;
    for (const int node : options.held_by_hand) held.springs.push_back({node, {k, 0, 0, 0, k, 0, 0, 0, 0}, {}, {}});
    return held;
}

/// Finds the argument at which a falling function is zero: outward steps to enclose it, then false position with the
/// bisection safeguard of the Illinois rule. `value` gives nothing where it cannot be evaluated.
template <class Value>
std::optional<double> zero_of_falling(const Value& value, double start, double step, double tolerance) {
    std::optional<double> at = value(start);
    if (!at) return std::nullopt;
    double low = start, high = start, f_low = *at, f_high = *at;
    for (int i = 0; i < 60 && f_low < 0; ++i, step *= 2) {
        high = low, f_high = f_low;
        low -= step;
        if (!(at = value(low))) return std::nullopt;
        f_low = *at;
    }
    for (int i = 0; i < 60 && f_high > 0; ++i, step *= 2) {
        low = high, f_low = f_high;
        high += step;
        if (!(at = value(high))) return std::nullopt;
        f_high = *at;
    }
    if (f_low < 0 || f_high > 0) return std::nullopt;
    for (int i = 0; i < 200; ++i) {
        if (std::abs(f_low) <= tolerance) return low;
        if (std::abs(f_high) <= tolerance) return high;
        const double share = f_low / (f_low - f_high);
        const double middle = low + std::clamp(share, 0.01, 0.99) * (high - low);
        if (middle <= low || middle >= high) return std::abs(f_low) < std::abs(f_high) ? low : high;
        if (!(at = value(middle))) return std::nullopt;
        if (*at > 0) {
            low = middle, f_low = *at, f_high *= 0.5;
        } else {
            high = middle, f_high = *at, f_low *= 0.5;
        }
    }
    return std::nullopt;
}

/// Pulls one run to its tension with the others as they are; false if the frame does not stand on the way.
bool pull(Frame& frame, kernel::Solver& solver, const StrapRun& run, double tension, const FrameLoads& loads,
          const SolveOptions& options, Solution& solution) {
    const auto short_of = [&](double length) -> std::optional<double> {
        if (!(length > 0)) {
            solution.status = SolveStatus::iteration_limit;
            solution.message = "all of its free length is taken up before that";
            return std::nullopt;
        }
        set_free_length(frame, run, length);
        solution = solver.solve(loads, options, solution.displacement);
        if (!solution.usable()) return std::nullopt;
        return mean_tension(frame, run, solution.members) - tension;
    };
    const double drawn = drawn_length(frame, run);
    const double stretch = tension / frame.members[index(run.members.front())].axial_stiffness * drawn;
    const std::optional<double> found = zero_of_falling(short_of, drawn, stretch, 1e-9 * tension);
    return found && short_of(*found).has_value();
}

}  // namespace

Tightened tighten_in_order(const Frame& frame, const std::vector<StrapRun>& runs,
                           const std::vector<TighteningStep>& steps, const FrameLoads& loads,
                           const TighteningOptions& options) {
    require_sound(frame);
    require_steps(frame, runs, steps, options);
    Tightened t{frame, {}, {}, {}};
    for (const StrapRun& run : runs) set_free_length(t.frame, run, 2.0 * drawn_length(frame, run));
    kernel::Solver solver(t.frame);
    const FrameLoads held = with_hands(loads, options);
    for (const TighteningStep& step : steps) {
        const StrapRun& run = runs[index(step.run)];
        if (!pull(t.frame, solver, run, step.tension, held, options.solve, t.solution)) {
            t.message = "strap " + run.name + " cannot be pulled to its tension: " + t.solution.message;
            return t;
        }
        if (step.give > 0) {
            set_free_length(t.frame, run, free_length(t.frame, run) + step.give);
            t.solution = solver.solve(held, options.solve, t.solution.displacement);
        }
        std::vector<double>& row = t.tensions.emplace_back();
        for (const StrapRun& each : runs) row.push_back(mean_tension(frame, each, t.solution.members));
    }
    t.solution = solver.solve(loads, options.solve, t.solution.displacement);
    if (!t.solution.usable()) t.message = "without the hands it does not stand: " + t.solution.message;
    return t;
}

// --------------------------------------------------------------------------------------------------------- slipping
namespace {

struct Ends {
    int top = 0;
    int first = 0;  ///< far end of the first member
    int second = 0;
};

std::optional<Ends> ends_of(const Frame& frame, const Passing& passing) {
    if (!is_strap(frame, passing.first) || !is_strap(frame, passing.second) || passing.first == passing.second) {
        return std::nullopt;
    }
    const FrameMember& a = frame.members[index(passing.first)];
    const FrameMember& b = frame.members[index(passing.second)];
    for (const int top : {a.from, a.to}) {
        if (top == b.from || top == b.to) return Ends{top, a.from + a.to - top, b.from + b.to - top};
    }
    return std::nullopt;
}

std::array<double, 3> place(const Frame& frame, const Solution& solution, int node) {
    std::array<double, 3> at = frame.nodes[index(node)].at;
    for (std::size_t d = 0; d < 3; ++d) at[d] += solution.displacement[6 * index(node) + d];
    return at;
}

double turn_of(const Frame& frame, const Solution& solution, const Ends& ends) {
    const std::array<double, 3> top = place(frame, solution, ends.top);
    const std::array<double, 3> a = place(frame, solution, ends.first);
    const std::array<double, 3> b = place(frame, solution, ends.second);
    double dot = 0, aa = 0, bb = 0;
    for (std::size_t d = 0; d < 3; ++d) {
        dot += (top[d] - a[d]) * (b[d] - top[d]);
        aa += (top[d] - a[d]) * (top[d] - a[d]);
        bb += (b[d] - top[d]) * (b[d] - top[d]);
    }
    return std::acos(std::clamp(dot / std::sqrt(aa * bb), -1.0, 1.0));
}

PassingState state_of(const Frame& frame, const Solution& solution, const Passing& passing, double slipped) {
    return {.first = solution.members[index(passing.first)].axial,
            .second = solution.members[index(passing.second)].axial,
            .turn = turn_of(frame, solution, *ends_of(frame, passing)),
            .slipped = slipped};
}

/// How far the tensions are outside the cone, as a force: positive if the first side is too taut, negative if the
/// second one is, 0 inside.
double outside(const PassingState& state, double friction) {
    const double hold = std::exp(friction * state.turn);
    if (state.first > hold * state.second) return state.first - hold * state.second;
    if (state.second > hold * state.first) return hold * state.first - state.second;
    return 0;
}

void require_passings(const Frame& frame, const std::vector<Passing>& passings, double friction) {
    for (std::size_t p = 0; p < passings.size(); ++p) {
        if (ends_of(frame, passings[p])) continue;
        throw InputError("frame.passing", "/passings/" + std::to_string(p), passings[p].name,
                         passings[p].name + " must be two straps with a node in common");
    }
    if (!(friction >= 0 && friction <= 2)) {
        throw InputError("frame.friction", "/friction", std::to_string(friction), "friction must lie between 0 and 2");
    }
}

/// Lets one passing slip to the edge of its cone, the others held.
bool let_slip(Slipped& s, kernel::Solver& solver, const Passing& passing, double friction, const FrameLoads& loads,
              const SolveOptions& options, double& slipped, double tolerance) {
    const double first = s.frame.members[index(passing.first)].free_length;
    const double second = s.frame.members[index(passing.second)].free_length;
    const double longest = 0.9 * std::min(first, second);
    const double hold = std::exp(friction * state_of(s.frame, s.solution, passing, 0).turn);
    const bool first_taut = outside(state_of(s.frame, s.solution, passing, 0), friction) > 0;
    // Free length moved to the tauter side takes tension off it: a falling function of what moves.
    const auto excess = [&](double moved) -> std::optional<double> {
        if (std::abs(moved) > longest) return std::nullopt;
        const double to_first = first_taut ? moved : -moved;
        s.frame.members[index(passing.first)].free_length = first + to_first;
        s.frame.members[index(passing.second)].free_length = second - to_first;
        s.solution = solver.solve(loads, options, s.solution.displacement);
        if (!s.solution.usable()) return std::nullopt;
        const PassingState state = state_of(s.frame, s.solution, passing, 0);
        return first_taut ? state.first - hold * state.second : state.second - hold * state.first;
    };
    const FrameMember& member = s.frame.members[index(passing.first)];
    const double step = std::abs(outside(state_of(s.frame, s.solution, passing, 0), friction)) /
                        member.axial_stiffness * std::min(first, second) / 4;
    const std::optional<double> moved = zero_of_falling(excess, 0.0, std::max(step, 1e-9 * first), tolerance);
    if (!moved || !excess(*moved)) return false;
    slipped += first_taut ? *moved : -*moved;
    return true;
}

}  // namespace

Slipped slip_over_tops(const Frame& frame, const std::vector<Passing>& passings, double friction,
                       const FrameLoads& loads, const SolveOptions& options) {
    constexpr int max_rounds = 200;
    require_sound(frame);
    require_passings(frame, passings, friction);
    Slipped s{frame, {}, {}, 0};
    kernel::Solver solver(s.frame);
    s.solution = solver.solve(loads, options, {});
    std::vector<double> slipped(passings.size(), 0.0);
    for (s.rounds = 1; s.solution.usable() && s.rounds <= max_rounds; ++s.rounds) {
        double scale = 0;
        for (const MemberForces& forces : s.solution.members) scale = std::max(scale, std::abs(forces.axial));
        const double tolerance = 1e-8 * scale;
        bool all_hold = true;
        for (std::size_t p = 0; p < passings.size(); ++p) {
            const double over = outside(state_of(s.frame, s.solution, passings[p], 0), friction);
            if (std::abs(over) <= 10 * tolerance) continue;
            all_hold = false;
            if (!let_slip(s, solver, passings[p], friction, loads, options, slipped[p], tolerance)) {
                s.solution.status = s.solution.usable() ? SolveStatus::iteration_limit : s.solution.status;
                s.solution.message = passings[p].name + " slips without coming to rest";
                return s;
            }
        }
        if (!all_hold) continue;
        for (std::size_t p = 0; p < passings.size(); ++p) {
            s.passings.push_back(state_of(s.frame, s.solution, passings[p], slipped[p]));
        }
        return s;
    }
    if (s.solution.usable()) {
        s.solution.status = SolveStatus::iteration_limit;
        s.solution.message = "the straps go on slipping over one another's tops";
    }
    return s;
}

SlippedBounds slip_over_tops_bounds(const Frame& frame, const std::vector<Passing>& passings, double greatest,
                                    const FrameLoads& loads, const SolveOptions& options) {
    return {slip_over_tops(frame, passings, 0, loads, options),
            slip_over_tops(frame, passings, greatest, loads, options)};
}

}  // namespace coverframe
