// SPDX-License-Identifier: BSD-3-Clause
#include <algorithm>
#include <cmath>
#include <sstream>

#include "frame_model.hpp"

namespace coverframe::validation {
namespace {

constexpr double arm_length = 1.0;  // of a couple [m]

std::array<bool, 6> directions_in(const std::string& words) {
    std::array<bool, 6> held{};
    std::istringstream stream(words);
    for (std::string word; stream >> word;) held[static_cast<std::size_t>(direction_of(word))] = true;
    return held;
}

int add_node(FrameModel& model, const std::string& name, const std::array<double, 3>& at,
             const std::array<bool, 6>& held) {
    model.frame.nodes.push_back({name, at, held});
    return static_cast<int>(model.frame.nodes.size()) - 1;
}

void read_nodes(FrameModel& model, const Input& input, const std::array<bool, 6>& everywhere) {
    const Input nodes = input.at("nodes");
    for (const std::string& name : nodes.keys()) {
        model.nodes[name] = add_node(model, name, nodes.triple<Length>(name), everywhere);
    }
    const Input held = input.at("held");
    for (const std::string& name : held.keys()) {
        const std::array<bool, 6> more = directions_in(held.text(name));
        std::array<bool, 6>& now = model.frame.nodes[static_cast<std::size_t>(node_of(model, name))].held;
        for (std::size_t i = 0; i < 6; ++i) now[i] = now[i] || more[i];
    }
}

MemberKind kind_named(const std::string& name) {
    if (name == "pole") return MemberKind::pole;
    if (name == "upright") return MemberKind::upright;
    if (name == "strap") return MemberKind::strap;
    throw CaseError("a member is a pole, an upright or a strap, not \"" + name + "\"");
}

double axial_stiffness(const Input& member) {
    if (member.has("EA")) return member.si<Force>("EA");
    return member.si<Pressure>("E") * member.si<Area>("A");
}

BendingStiffness bending_of(const Input& member) {
    const double E = member.si<Pressure>("E");
    const double G = member.si<Pressure>("G");
    BendingStiffness b;
    b.EI_vertical = E * member.second_moment("I_vertical");
    b.EI_level = member.has("I_level") ? E * member.second_moment("I_level") : b.EI_vertical;
    b.GJ = G * member.second_moment("J");
    if (member.has("shear_area")) b.GA_vertical = b.GA_level = G * member.si<Area>("shear_area");
    return b;
}

double free_share(const Input& member, double drawn, double EA) {
    if (member.has("free_length")) return member.si<Length>("free_length") / drawn;
    if (member.has("shortened_by")) return (drawn - member.si<Length>("shortened_by")) / drawn;
    if (member.has("set_to")) return 1.0 / (1.0 + member.si<Force>("set_to") / EA);
    return 1.0;
}

/// Puts half of the load on a piece to each of its nodes.
void load_pieces(FrameModel& model, const Run& run, const std::array<double, 3>& per_length, bool free) {
    for (const int index : run.members) {
        const FrameMember& piece = model.frame.members[static_cast<std::size_t>(index)];
        const double length = free ? piece.free_length : drawn_length(model.frame, piece);
        for (const int node : {piece.from, piece.to}) {
            for (std::size_t i = 0; i < 3; ++i) {
                model.loads.force[static_cast<std::size_t>(node) * 3 + i] += 0.5 * length * per_length[i];
            }
        }
    }
}

void read_member(FrameModel& model, const Input& input, const std::array<bool, 6>& everywhere) {
    FrameMember piece;
    piece.name = input.text("name");
    piece.kind = kind_named(input.text("kind"));
    piece.axial_stiffness = axial_stiffness(input);
    if (piece.kind == MemberKind::pole) piece.bending = bending_of(input);
    const std::string hinged = input.text_or("hinged", "");
    const int from = node_of(model, input.text("from"));
    const int to = node_of(model, input.text("to"));
    const int pieces = input.count_or("pieces", 1);
    const std::array<double, 3> a = model.frame.nodes[static_cast<std::size_t>(from)].at;
    const std::array<double, 3> b = model.frame.nodes[static_cast<std::size_t>(to)].at;
    const double drawn = std::hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
    piece.free_length = drawn * free_share(input, drawn, piece.axial_stiffness) / pieces;
    Run run;
    run.nodes.push_back(from);
    for (int k = 1; k <= pieces; ++k) {
        const double s = static_cast<double>(k) / pieces;
        const std::array<double, 3> at{a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1]), a[2] + s * (b[2] - a[2])};
        piece.from = run.nodes.back();
        piece.to = k == pieces ? to : add_node(model, piece.name + " " + std::to_string(k), at, everywhere);
        piece.spring_from = k == 1 && (hinged == "from" || hinged == "both") ? 0 : rigid_end;
        piece.spring_to = k == pieces && (hinged == "to" || hinged == "both") ? 0 : rigid_end;
        run.nodes.push_back(piece.to);
        run.members.push_back(static_cast<int>(model.frame.members.size()));
        model.frame.members.push_back(piece);
    }
    if (!model.runs.emplace(piece.name, run).second) throw CaseError("two members are called " + piece.name);
}

/// Fractions of the plan length at which a parabola of this sag is cut into pieces of equal length.
std::vector<double> equal_pieces(double length, double drop, double sag, std::size_t pieces) {
    constexpr int steps = 20000;
    std::vector<double> along(steps + 1, 0.0);
    const auto height = [&](double s) { return -drop * s - 4.0 * sag * s * (1.0 - s); };
    for (int i = 1; i <= steps; ++i) {
        const double s = static_cast<double>(i) / steps;
        along[static_cast<std::size_t>(i)] = along[static_cast<std::size_t>(i - 1)] +
                                             std::hypot(length / steps, height(s) - height(s - 1.0 / steps));
    }
    std::vector<double> fractions;
    for (std::size_t k = 0; k <= pieces; ++k) {
        const double wanted = along.back() * static_cast<double>(k) / static_cast<double>(pieces);
        const auto found = std::ranges::lower_bound(along, wanted);
        fractions.push_back(static_cast<double>(found - along.begin()) / steps);
    }
    return fractions;
}

void read_start(FrameModel& model, const Input& member) {
    if (!member.has("start_sag")) return;
    const double sag = member.si<Length>("start_sag");
    const Run& run = run_of(model, member.text("name"));
    model.start.resize(model.frame.nodes.size() * 6, 0.0);
    const std::array<double, 3> from = model.frame.nodes[static_cast<std::size_t>(run.nodes.front())].at;
    const std::array<double, 3> to = model.frame.nodes[static_cast<std::size_t>(run.nodes.back())].at;
    const double length = to[0] - from[0];
    const double drop = from[2] - to[2];
    const std::vector<double> fractions = equal_pieces(length, drop, sag, run.members.size());
    for (std::size_t k = 0; k < run.nodes.size(); ++k) {
        const auto n = static_cast<std::size_t>(run.nodes[k]);
        const double s = fractions[k];
        model.start[n * 6] = from[0] + length * s - model.frame.nodes[n].at[0];
        model.start[n * 6 + 2] = from[2] - drop * s - 4.0 * sag * s * (1.0 - s) - model.frame.nodes[n].at[2];
    }
}

void read_member_loads(FrameModel& model, const Input& input) {
    for (const Input& member : input.list("members")) {
        const Run& run = run_of(model, member.text("name"));
        if (member.has("load")) load_pieces(model, run, member.triple<LineLoad>("load"), false);
        if (member.has("load_per_free_length")) {
            load_pieces(model, run, member.triple<LineLoad>("load_per_free_length"), true);
        }
        read_start(model, member);
    }
}

/// Two arms from the node, one each way, and equal and opposite forces on their ends.
void add_couple(FrameModel& model, int node, std::size_t axis, double moment) {
    if (moment == 0) return;
    const std::size_t along = axis == 0 ? 1 : 0;             // arms lie along y for x, along x for y and z
    const std::size_t push = axis == 2 ? 1 : 2;              // forces act along y for z, along z for x and y
    const double sign = axis == 1 ? -1.0 : 1.0;              // M_y = z F_x - x F_z
    double stiffest = 0;
    for (const FrameMember& member : model.frame.members) stiffest = std::max(stiffest, member.bending.EI_vertical);
    for (const double way : {1.0, -1.0}) {
        std::array<double, 3> at = model.frame.nodes[static_cast<std::size_t>(node)].at;
        at[along] += way * arm_length;
        FrameMember arm;
        arm.name = "arm of a couple";
        arm.from = node;
        arm.to = add_node(model, arm.name, at, {});
        arm.axial_stiffness = stiffest / (arm_length * arm_length);
        arm.free_length = arm_length;
        arm.bending = {stiffest, stiffest, 0, 0, stiffest};
        model.frame.members.push_back(arm);
        model.loads.force.resize(model.frame.nodes.size() * 3, 0.0);
        model.loads.force[static_cast<std::size_t>(arm.to) * 3 + push] += sign * way * moment / (2.0 * arm_length);
    }
}

void read_frame_loads(FrameModel& model, const Input& input) {
    if (input.has("forces")) {
        const Input forces = input.at("forces");
        for (const std::string& name : forces.keys()) {
            const std::array<double, 3> force = forces.triple<Force>(name);
            for (std::size_t i = 0; i < 3; ++i) {
                model.loads.force[static_cast<std::size_t>(node_of(model, name)) * 3 + i] += force[i];
            }
        }
    }
    if (input.has("springs")) {
        for (const Input& item : input.list("springs")) {
            FrameLoads::Spring spring;
            spring.node = node_of(model, item.text("node"));
            const std::array<double, 3> stiffness = item.triple<LineLoad>("stiffness");
            spring.stiffness = {stiffness[0], 0, 0, 0, stiffness[1], 0, 0, 0, stiffness[2]};
            spring.u0 = item.triple<Length>("at");
            model.loads.springs.push_back(spring);
        }
    }
    if (input.has("couples")) {
        const Input couples = input.at("couples");
        for (const std::string& name : couples.keys()) {
            const std::array<double, 3> moment = couples.triple<Moment>(name);
            for (std::size_t axis = 0; axis < 3; ++axis) add_couple(model, node_of(model, name), axis, moment[axis]);
        }
    }
}

}  // namespace

FrameModel read_frame(const Input& input) {
    FrameModel model;
    const std::array<bool, 6> everywhere = directions_in(input.text_or("held_everywhere", ""));
    read_nodes(model, input, everywhere);
    for (const Input& member : input.list("members")) read_member(model, member, everywhere);
    model.loads.force.resize(model.frame.nodes.size() * 3, 0.0);
    read_member_loads(model, input);
    read_frame_loads(model, input);
    if (!model.start.empty()) model.start.resize(model.frame.nodes.size() * 6, 0.0);
    model.scale = input.number_or("load_scale", 1.0);
    model.options.force_tolerance = input.number_or("force_tolerance", model.options.force_tolerance);
    if (input.has("soften")) model.soften = input.numbers("soften");
    for (double& force : model.loads.force) force *= model.scale;
    for (FrameLoads::Spring& spring : model.loads.springs) {
        for (double& place : spring.u0) place *= model.scale;
    }
    return model;
}

}  // namespace coverframe::validation
