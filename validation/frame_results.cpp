// SPDX-License-Identifier: BSD-3-Clause
// What can be asked of a solved frame, one of
//   "displacement": ["A", "uz"]       of a node, also rotations "rx" ...
//   "place": ["A", "z"]               present coordinate of a node
//   "reaction": ["A", "uz"]           of the boat on a direction that is held or on a spring; a moment for "rx" ...
//   "reaction_size": "A"              length of the force of the boat on a node
//   "spring_force": ["A", "uz"]       of the springs on the node
//   "axial": "strap"                  tension positive; of the first piece. "axial_to": of the last
//   "push": "A"                       of the foot at the node
//   "least": "strap", "sag": "strap"  least tension and sag of a strap with a load along it, of the first piece
//   "moment": ["beam", "from"]        in the vertical plane, sagging positive
//   "moment_level": ["beam", "to"]
//   "twist": "beam"
//   "shear": ["beam", "from"]
//   "largest_sagging": "beam"         largest moment at the ends of its pieces and at their middles
//   "moment_along": "beam", "share"   moment in the vertical plane at a share of the run, its pieces of equal length
//   "lowest": "strap"                 how far the lowest node of the run lies under its `from` end, now
//   "chord_sag": "strap"              largest vertical distance of its nodes under the line between its ends, now
// with, beside it, "size": true (sign left out), "turned": true (sign changed), "pure": true (a coefficient: the case
// is written so that the product it belongs to is one in SI).
#include <algorithm>
#include <cmath>

#include "frame_model.hpp"

namespace coverframe::validation {
namespace {

const char* const solver = "solve";

std::size_t coordinate(const std::string& name) {
    if (name == "x") return 0;
    if (name == "y") return 1;
    if (name == "z") return 2;
    throw CaseError("a coordinate is x, y or z, not \"" + name + "\"");
}

std::pair<std::string, std::string> two(const Input& what, const std::string& key) {
    const std::vector<std::string> words = what.texts(key);
    if (words.size() != 2) throw CaseError("\"" + key + "\" needs two texts");
    return {words[0], words[1]};
}

double at_now(const FrameModel& model, const Solution& solution, int node, std::size_t axis) {
    const auto n = static_cast<std::size_t>(node);
    return model.frame.nodes[n].at[axis] + solution.displacement[n * 6 + axis] / model.scale;
}

Number displacement(const FrameModel& model, const Solution& solution, const Input& what) {
    const auto [node, direction] = two(what, "displacement");
    const int i = direction_of(direction);
    const double value = solution.displacement[static_cast<std::size_t>(node_of(model, node) * 6 + i)] / model.scale;
    return {value, i < 3 ? Dimension::length : Dimension::angle, solver};
}

Number reaction(const FrameModel& model, const Solution& solution, const Input& what) {
    const auto [node, direction] = two(what, "reaction");
    const int i = direction_of(direction);
    const double value = solution.reaction[static_cast<std::size_t>(node_of(model, node) * 6 + i)] / model.scale;
    return {value, i < 3 ? Dimension::force : Dimension::moment, solver};
}

Number spring_force(const FrameModel& model, const Solution& solution, const Input& what) {
    const auto [name, direction] = two(what, "spring_force");
    const int node = node_of(model, name);
    const auto i = static_cast<std::size_t>(direction_of(direction));
    double force = 0;
    for (const FrameLoads::Spring& spring : model.loads.springs) {
        if (spring.node != node) continue;
        const double moved = solution.displacement[static_cast<std::size_t>(node) * 6 + i] - spring.u0[i];
        force -= spring.stiffness[i * 3 + i] * moved;
    }
    return {force / model.scale, Dimension::force, solver};
}

const MemberForces& piece_at(const FrameModel& model, const Solution& solution, const std::string& run, bool to) {
    const Run& pieces = run_of(model, run);
    return solution.members[static_cast<std::size_t>(to ? pieces.members.back() : pieces.members.front())];
}

const FootForces& foot_at(const FrameModel& model, const Solution& solution, const std::string& node) {
    const auto found = std::ranges::find(model.frame.feet, node_of(model, node), &Foot::node);
    if (found == model.frame.feet.end()) throw CaseError("there is no foot at node " + node);
    return solution.feet[static_cast<std::size_t>(found - model.frame.feet.begin())];
}

bool is_to(const std::string& end) {
    if (end != "from" && end != "to") throw CaseError("an end is \"from\" or \"to\", not \"" + end + "\"");
    return end == "to";
}

Number moment(const FrameModel& model, const Solution& solution, const Input& what, bool level) {
    const auto [run, end] = two(what, level ? "moment_level" : "moment");
    const bool to = is_to(end);
    const MemberForces& f = piece_at(model, solution, run, to);
    const double value = level ? (to ? f.moment_level_to : f.moment_level_from)
                               : (to ? f.moment_vertical_to : f.moment_vertical_from);
    return {value / model.scale, Dimension::moment, solver};
}

double largest_sagging(const FrameModel& model, const Solution& solution, const Run& run) {
    double largest = 0;
    for (const int index : run.members) {
        const MemberForces& f = solution.members[static_cast<std::size_t>(index)];
        const double length = drawn_length(model.frame, model.frame.members[static_cast<std::size_t>(index)]);
        largest = std::max(
            {largest, f.moment_vertical_from, f.moment_vertical_to, f.moment_vertical_at(0.5, length)});
    }
    return largest / model.scale;
}

Number moment_along(const FrameModel& model, const Solution& solution, const Input& what) {
    const Run& run = run_of(model, what.text("moment_along"));
    const double place = what.number("share") * static_cast<double>(run.members.size());
    const std::size_t piece = std::min(static_cast<std::size_t>(place), run.members.size() - 1);
    const auto index = static_cast<std::size_t>(run.members[piece]);
    const double length = drawn_length(model.frame, model.frame.members[index]);
    const double value = solution.members[index].moment_vertical_at(place - static_cast<double>(piece), length);
    return {value / model.scale, Dimension::moment, solver};
}

double lowest(const FrameModel& model, const Solution& solution, const Run& run) {
    double deepest = 0;
    const double top = at_now(model, solution, run.nodes.front(), 2);
    for (const int node : run.nodes) deepest = std::max(deepest, top - at_now(model, solution, node, 2));
    return deepest;
}

double chord_sag(const FrameModel& model, const Solution& solution, const Run& run) {
    const int a = run.nodes.front();
    const int b = run.nodes.back();
    const double xa = at_now(model, solution, a, 0);
    const double za = at_now(model, solution, a, 2);
    const double slope = (at_now(model, solution, b, 2) - za) / (at_now(model, solution, b, 0) - xa);
    double deepest = 0;
    for (const int node : run.nodes) {
        const double chord = za + slope * (at_now(model, solution, node, 0) - xa);
        deepest = std::max(deepest, chord - at_now(model, solution, node, 2));
    }
    return deepest;
}

Number raw(const FrameModel& model, const Solution& solution, const Input& what) {
    if (what.has("displacement")) return displacement(model, solution, what);
    if (what.has("reaction")) return reaction(model, solution, what);
    if (what.has("spring_force")) return spring_force(model, solution, what);
    if (what.has("reaction_size")) {
        const auto n = static_cast<std::size_t>(node_of(model, what.text("reaction_size"))) * 6;
        const double size = std::hypot(solution.reaction[n], solution.reaction[n + 1], solution.reaction[n + 2]);
        return {size / model.scale, Dimension::force, solver};
    }
    if (what.has("moment")) return moment(model, solution, what, false);
    if (what.has("moment_level")) return moment(model, solution, what, true);
    if (what.has("moment_along")) return moment_along(model, solution, what);
    if (what.has("place")) {
        const auto [node, axis] = two(what, "place");
        return {at_now(model, solution, node_of(model, node), coordinate(axis)), Dimension::length, solver};
    }
    if (what.has("axial")) {
        const double value = piece_at(model, solution, what.text("axial"), false).axial_at(0);
        return {value / model.scale, Dimension::force, solver};
    }
    if (what.has("axial_to")) {
        const double value = piece_at(model, solution, what.text("axial_to"), true).axial_at(1);
        return {value / model.scale, Dimension::force, solver};
    }
    if (what.has("push")) {
        return {foot_at(model, solution, what.text("push")).push / model.scale, Dimension::force, solver};
    }
    if (what.has("least")) {
        return {piece_at(model, solution, what.text("least"), false).least / model.scale, Dimension::force, solver};
    }
    if (what.has("sag")) {
        return {piece_at(model, solution, what.text("sag"), false).sag, Dimension::length, solver};
    }
    if (what.has("twist")) {
        return {piece_at(model, solution, what.text("twist"), false).twist / model.scale, Dimension::moment, solver};
    }
    if (what.has("shear")) {
        const auto [run, end] = two(what, "shear");
        const bool to = is_to(end);
        const double value = piece_at(model, solution, run, to).shear_vertical_at(to ? 1 : 0) / model.scale;
        return {value, Dimension::force, solver};
    }
    if (what.has("largest_sagging")) {
        const Run& run = run_of(model, what.text("largest_sagging"));
        return {largest_sagging(model, solution, run), Dimension::moment, solver};
    }
    if (what.has("lowest")) {
        return {lowest(model, solution, run_of(model, what.text("lowest"))), Dimension::length, solver};
    }
    if (what.has("chord_sag")) {
        return {chord_sag(model, solution, run_of(model, what.text("chord_sag"))), Dimension::length, solver};
    }
    throw CaseError("a result asks for nothing the frame can give");
}

}  // namespace

int direction_of(const std::string& name) {
    static const std::array<std::string, 6> names{"ux", "uy", "uz", "rx", "ry", "rz"};
    const auto found = std::ranges::find(names, name);
    if (found == names.end()) throw CaseError("\"" + name + "\" is no direction of a node");
    return static_cast<int>(found - names.begin());
}

int node_of(const FrameModel& model, const std::string& name) {
    const auto found = model.nodes.find(name);
    if (found == model.nodes.end()) throw CaseError("there is no node called " + name);
    return found->second;
}

const Run& run_of(const FrameModel& model, const std::string& name) {
    const auto found = model.runs.find(name);
    if (found == model.runs.end()) throw CaseError("there is no member called " + name);
    return found->second;
}

Number extract(const FrameModel& model, const Solution& solution, const Input& what) {
    Number number = raw(model, solution, what);
    if (what.flag("size")) number.si = std::abs(number.si);
    if (what.flag("turned")) number.si = -number.si;
    if (what.flag("pure")) number.dimension = Dimension::pure;
    return number;
}

Answers extract_all(const FrameModel& model, const Solution& solution, const Input& input) {
    Answers answers;
    const Input results = input.at("results");
    for (const std::string& name : results.keys()) answers[name] = extract(model, solution, results.at(name));
    return answers;
}

}  // namespace coverframe::validation
