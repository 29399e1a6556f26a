// SPDX-License-Identifier: BSD-3-Clause
// Frames: solved once, in more and more pieces, brought to a limit, adjusted until a strap carries what the source
// says, or hung to a funicular.
#include <algorithm>
#include <cmath>

#include "frame_model.hpp"
#include "model.hpp"

namespace coverframe::validation {
namespace {

constexpr int halvings = 60;

Answers frame(const Input& input) {
    const FrameModel model = read_frame(input);
    return extract_all(model, solve_or_say(model), input);
}

/// "rates": {"pieces": [1, 2, 4], "exact": {"quantity": 0.5, ...}}: solves with every member in so many pieces. For
/// each exact number, named as in "results", answers "quantity: error, n pieces", relative to it, and "quantity: order,
/// n to m pieces", the power of the number of pieces by which the error falls.
Answers frame_rates(const Input& input) {
    const Input rates = input.at("rates");
    const Input exact = rates.at("exact");
    const Input results = input.at("results");
    Answers answers;
    std::map<std::string, double> last;
    double last_pieces = 0;
    for (const double pieces : rates.numbers("pieces")) {
        const FrameModel model = read_frame(input, static_cast<int>(pieces));
        const Solution solution = solve_or_say(model);
        for (const std::string& name : exact.keys()) {
            const double wanted = exact.number(name);
            const double error = std::abs(extract(model, solution, results.at(name)).si - wanted) / std::abs(wanted);
            const std::string count = std::to_string(static_cast<int>(pieces)) + " pieces";
            answers[name + ": error, " + count] = {error, Dimension::pure, "solve"};
            if (last_pieces > 0) {
                const double order = std::log(last[name] / error) / std::log(pieces / last_pieces);
                answers[name + ": order, " + std::to_string(static_cast<int>(last_pieces)) + " to " + count] = {
                    order, Dimension::pure, "solve"};
            }
            last[name] = error;
        }
        last_pieces = pieces;
    }
    return answers;
}

/// Whether a state counts as on the near side of the limit: an equilibrium, and a node not past a bound.
bool before_limit(const FrameModel& model, const Solution& solution, const Input& limit) {
    if (!solution.usable()) return false;
    if (!limit.has("beyond")) return true;
    const Input beyond = limit.at("beyond");
    const int place = node_of(model, beyond.text("node")) * 6 + direction_of(beyond.text("direction"));
    return std::abs(solution.displacement[static_cast<std::size_t>(place)]) < beyond.si<Length>("size");
}

/// "limit": {"high": 2.0, "beyond": {"node", "direction", "size"}, "halve_to": 1e-12}: the largest factor on the forces
/// that leaves an equilibrium, by halving between a thousandth of `high` and `high` until both are as close as
/// `halve_to`, each step from the last good state. The answer "limit" is that factor, so forces of the case are written
/// as one unit; with "pure" it is a coefficient instead of a force.
Answers frame_limit(const Input& input) {
    const FrameModel model = read_frame(input);
    const Input limit = input.at("limit");
    double high = limit.number("high");
    double low = 1e-3 * high;
    Solution good = solve(model.frame, factored(model.loads, low), model.options, model.start);
    if (!before_limit(model, good, limit)) {
        throw CaseError("there is no equilibrium under a small load: " + good.message);
    }
    if (before_limit(model, solve(model.frame, factored(model.loads, high), model.options, good.displacement), limit)) {
        throw CaseError("the upper bound of the limit is still an equilibrium");
    }
    for (int i = 0; i < halvings && high - low > limit.number_or("halve_to", 1e-12) * high; ++i) {
        const double middle = 0.5 * (low + high);
        Solution now = solve(model.frame, factored(model.loads, middle), model.options, good.displacement);
        if (before_limit(model, now, limit)) {
            low = middle;
            good = std::move(now);
        } else {
            high = middle;
        }
    }
    Answers answers = extract_all(model, good, input);
    const Dimension dimension = limit.flag("pure") ? Dimension::pure : Dimension::force;
    answers["limit"] = {low, dimension, "solve"};
    return answers;
}

/// "find": {"free_length_of": "strap", "from": "100 m", "to": "101 m", "makes": {...}, "equal": 5000}: halves the free
/// length of a run until the number asked for, which falls as the free length grows, takes that value in SI. All loads
/// are weight of the run and grow with its free length.
Answers frame_find(const Input& input) {
    FrameModel model = read_frame(input);
    const Input find = input.at("find");
    const Run run = run_of(model, find.text("free_length_of"));
    double low = find.si<Length>("from");
    double high = find.si<Length>("to");
    const double target = find.number("equal");
    const FrameLoads weight = model.loads;
    double written = 0;
    for (const int index : run.members) written += model.frame.members[static_cast<std::size_t>(index)].free_length;
    Solution solution;
    for (int i = 0; i < halvings && high - low > 1e-14 * high; ++i) {
        const double length = 0.5 * (low + high);
        const double piece = length / static_cast<double>(run.members.size());
        for (const int index : run.members) model.frame.members[static_cast<std::size_t>(index)].free_length = piece;
        model.loads = factored(weight, length / written);
        solution = solve_or_say(model);
        model.start = solution.displacement;
        (extract(model, solution, find.at("makes")).si > target ? low : high) = length;
    }
    return extract_all(model, solution, input);
}

/// What a funicular is brought to: a depth of one node under the first end, or a largest tension.
double stretch_wanted(const FrameModel& model, const Solution& solution, const Input& input) {
    if (input.has("depth")) {
        const Input depth = input.at("depth");
        const auto node = static_cast<std::size_t>(node_of(model, depth.text("node")));
        const double drawn = model.frame.nodes.front().at[2] - model.frame.nodes[node].at[2];
        const double now = drawn - solution.displacement[node * 6 + 2];
        return depth.si<Length>("size") / now;
    }
    double largest = 0;
    for (const MemberForces& f : solution.members) largest = std::max(largest, f.axial);
    return largest / input.si<Force>("largest_tension");
}

/// A strap with loads at given level distances: free lengths are changed, round by round, until each loaded node hangs
/// at its drawn x and the shape has the depth or tension asked for. Members in order from the first node to the last.
Answers funicular(const Input& input) {
    FrameModel model = read_frame(input);
    Solution solution;
    for (int round = 0; round < 400; ++round) {
        solution = solve_or_say(model);
        model.start = solution.displacement;
        const double stretch = stretch_wanted(model, solution, input);
        double moved = std::abs(stretch - 1.0);
        const auto& nodes = model.frame.nodes;
        const double drop = nodes.back().at[2] - nodes.front().at[2];
        const double length = nodes.back().at[0] - nodes.front().at[0];
        const auto below_chord = [&](int node) {
            const auto n = static_cast<std::size_t>(node);
            const double chord = nodes.front().at[2] + drop * (nodes[n].at[0] - nodes.front().at[0]) / length;
            return chord - nodes[n].at[2] - solution.displacement[n * 6 + 2];
        };
        for (std::size_t m = 0; m < model.frame.members.size(); ++m) {
            FrameMember& member = model.frame.members[m];
            const double dx = nodes[static_cast<std::size_t>(member.to)].at[0] -
                              nodes[static_cast<std::size_t>(member.from)].at[0];
            const double dz = drop * dx / length - stretch * (below_chord(member.to) - below_chord(member.from));
            const double wanted = std::hypot(dx, dz) / (1.0 + solution.members[m].axial / member.axial_stiffness);
            moved = std::max(moved, std::abs(wanted / member.free_length - 1.0));
            member.free_length = wanted;
        }
        if (moved < 1e-11) return extract_all(model, solution, input);
    }
    throw CaseError("the funicular did not settle");
}

}  // namespace

FrameLoads factored(const FrameLoads& loads, double factor) {
    FrameLoads more = loads;
    for (double& force : more.force) force *= factor;
    return more;
}

Solution solve_or_say(const FrameModel& model) {
    std::vector<double> start = model.start;
    for (const double share : model.soften) {
        Frame softer = model.frame;
        for (FrameMember& member : softer.members) member.axial_stiffness *= share;
        start = solve(softer, model.loads, model.options, start).displacement;
    }
    for (int step = 1; step < model.steps; ++step) {
        const double share = static_cast<double>(step) / model.steps;
        start = solve(model.frame, scaled(model.loads, share), model.options, start).displacement;
    }
    Solution solution = solve(model.frame, model.loads, model.options, start);
    if (!solution.usable()) {
        throw CaseError(std::string("the frame ends as ") + name_of(solution.status) + ": " + solution.message);
    }
    return solution;
}

void add_frame_models(std::map<std::string, Model>& all) {
    all["frame"] = frame;
    all["frame_rates"] = frame_rates;
    all["frame_limit"] = frame_limit;
    all["frame_find"] = frame_find;
    all["funicular"] = funicular;
}

}  // namespace coverframe::validation
