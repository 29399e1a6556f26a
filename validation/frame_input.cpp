// SPDX-License-Identifier: BSD-3-Clause
#include <algorithm>
#include <cmath>
#include <sstream>
#include <utility>

#include "frame_model.hpp"

namespace coverframe::validation {
namespace {

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
    if (name == "bar") return MemberKind::bar;
    throw CaseError("a member is a pole, an upright, a strap or a bar, not \"" + name + "\"");
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

/// Turning stiffness of an end of a run.
double end_spring(const Input& member, const std::string& end) {
    const std::string hinged = member.text_or("hinged", "");
    if (hinged == end || hinged == "both") return 0;
    const std::string key = "spring_" + end;
    return member.has(key) ? member.si<Moment>(key) : rigid_end;
}

std::array<double, 3> arm(const Input& member, const std::string& key) {
    return member.has(key) ? member.triple<Length>(key) : std::array<double, 3>{};
}

std::array<double, 3> sum(const std::array<double, 3>& a, const std::array<double, 3>& b) {
    return {a[0] + b[0], a[1] + b[1], a[2] + b[2]};
}

/// \param asked  pieces instead of the member's own number; 0: its own
void read_member(FrameModel& model, const Input& input, const std::array<bool, 6>& everywhere, int asked) {
    FrameMember piece;
    piece.name = input.text("name");
    piece.kind = kind_named(input.text("kind"));
    piece.axial_stiffness = axial_stiffness(input);
    if (piece.kind == MemberKind::pole) piece.bending = bending_of(input);
    piece.expansion = input.number_or("expansion", 0);
    const int from = node_of(model, input.text("from"));
    const int to = node_of(model, input.text("to"));
    const int pieces = asked > 0 ? asked : input.count_or("pieces", 1);
    const std::array<double, 3> arm_from = arm(input, "arm_from");
    const std::array<double, 3> arm_to = arm(input, "arm_to");
    const std::array<double, 3> a = sum(model.frame.nodes[static_cast<std::size_t>(from)].at, arm_from);
    const std::array<double, 3> b = sum(model.frame.nodes[static_cast<std::size_t>(to)].at, arm_to);
    const double drawn = std::hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
    piece.free_length = drawn * free_share(input, drawn, piece.axial_stiffness) / pieces;
    Run run;
    run.nodes.push_back(from);
    for (int k = 1; k <= pieces; ++k) {
        const double s = static_cast<double>(k) / pieces;
        const std::array<double, 3> at{a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1]), a[2] + s * (b[2] - a[2])};
        piece.from = run.nodes.back();
        piece.to = k == pieces ? to : add_node(model, piece.name + " " + std::to_string(k), at, everywhere);
        piece.spring_from = k == 1 ? end_spring(input, "from") : rigid_end;
        piece.spring_to = k == pieces ? end_spring(input, "to") : rigid_end;
        piece.arm_from = k == 1 ? arm_from : std::array<double, 3>{};
        piece.arm_to = k == pieces ? arm_to : std::array<double, 3>{};
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

/// Puts a load and a warmth on every piece of a run.
void fill_pieces(FrameModel& model, const Input& member, const Run& run) {
    const std::size_t count = model.frame.members.size();
    if (member.has("even_load")) {
        model.loads.member_load.resize(3 * count, 0.0);
        const std::array<double, 3> q = member.triple<LineLoad>("even_load");
        for (const int piece : run.members) {
            std::ranges::copy(q, model.loads.member_load.begin() + 3 * piece);
        }
    }
    if (member.has("warmer_by")) {
        model.loads.temperature.resize(count, 0.0);
        for (const int piece : run.members) {
            model.loads.temperature[static_cast<std::size_t>(piece)] = member.number("warmer_by");
        }
    }
}

void read_member_loads(FrameModel& model, const Input& input) {
    for (const Input& member : input.list("members")) {
        const Run& run = run_of(model, member.text("name"));
        if (member.has("load")) load_pieces(model, run, member.triple<LineLoad>("load"), false);
        if (member.has("load_per_free_length")) {
            load_pieces(model, run, member.triple<LineLoad>("load_per_free_length"), true);
        }
        fill_pieces(model, member, run);
        read_start(model, member);
    }
}

/// Adds three numbers a node to `list`, `width` numbers a node, from its number `first` on.
template <class Read>
void read_at_nodes(const FrameModel& model, const Input& input, const std::string& key, std::vector<double>& list,
                   std::size_t width, std::size_t first, Read read) {
    if (!input.has(key)) return;
    list.resize(width * model.frame.nodes.size(), 0.0);
    const Input nodes = input.at(key);
    for (const std::string& name : nodes.keys()) {
        const auto values = read(nodes, name);
        for (std::size_t i = 0; i < 3; ++i) {
            list[width * static_cast<std::size_t>(node_of(model, name)) + first + i] += values[i];
        }
    }
}

std::array<double, 3> three_numbers(const Input& nodes, const std::string& name) {
    const std::vector<double> given = nodes.numbers(name);
    if (given.size() != 3) throw CaseError("a turn is three numbers");
    return {given[0], given[1], given[2]};
}

void read_feet(FrameModel& model, const Input& input) {
    if (!input.has("feet")) return;
    for (const Input& item : input.list("feet")) {
        Foot foot;
        foot.node = node_of(model, item.text("node"));
        foot.stiffness = item.si<LineLoad>("stiffness");
        if (item.has("gap")) foot.gap = item.si<Length>("gap");
        foot.friction = item.number_or("friction", 0);
        if (item.has("side_stiffness")) foot.side_stiffness = item.si<LineLoad>("side_stiffness");
        model.frame.feet.push_back(foot);
    }
}

void read_boat_springs(FrameModel& model, const Input& input) {
    if (!input.has("boat_springs")) return;
    for (const Input& item : input.list("boat_springs")) {
        NodeSpring spring;
        spring.node = node_of(model, item.text("node"));
        if (item.has("along")) std::ranges::copy(item.triple<LineLoad>("along"), spring.stiffness.begin());
        if (item.has("about")) std::ranges::copy(item.triple<Moment>("about"), spring.stiffness.begin() + 3);
        model.frame.springs.push_back(spring);
    }
}

void read_frame_loads(FrameModel& model, const Input& input) {
    FrameLoads& loads = model.loads;
    read_at_nodes(model, input, "forces", loads.force, 3, 0,
                  [](const Input& nodes, const std::string& name) { return nodes.triple<Force>(name); });
    read_at_nodes(model, input, "couples", loads.couple, 3, 0,
                  [](const Input& nodes, const std::string& name) { return nodes.triple<Moment>(name); });
    read_at_nodes(model, input, "settled", loads.settlement, 6, 0,
                  [](const Input& nodes, const std::string& name) { return nodes.triple<Length>(name); });
    read_at_nodes(model, input, "turned", loads.settlement, 6, 3, three_numbers);
    if (input.has("springs")) {
        for (const Input& item : input.list("springs")) {
            FrameLoads::Spring spring;
            spring.node = node_of(model, item.text("node"));
            const std::array<double, 3> stiffness = item.triple<LineLoad>("stiffness");
            spring.stiffness = {stiffness[0], 0, 0, 0, stiffness[1], 0, 0, 0, stiffness[2]};
            spring.u0 = item.triple<Length>("at");
            loads.springs.push_back(spring);
        }
    }
}

}  // namespace

FrameModel read_frame(const Input& input, int pieces) {
    FrameModel model;
    const std::array<bool, 6> everywhere = directions_in(input.text_or("held_everywhere", ""));
    read_nodes(model, input, everywhere);
    for (const Input& member : input.list("members")) read_member(model, member, everywhere, pieces);
    model.loads.force.resize(model.frame.nodes.size() * 3, 0.0);
    read_member_loads(model, input);
    read_frame_loads(model, input);
    read_boat_springs(model, input);
    read_feet(model, input);
    if (!model.start.empty()) model.start.resize(model.frame.nodes.size() * 6, 0.0);
    model.scale = input.number_or("load_scale", 1.0);
    model.options.force_tolerance = input.number_or("force_tolerance", model.options.force_tolerance);
    model.options.rotation_limit = input.number_or("rotation_limit", model.options.rotation_limit);
    if (input.has("soften")) model.soften = input.numbers("soften");
    model.loads = scaled(std::move(model.loads), model.scale);
    model.steps = input.count_or("load_steps", 1);
    return model;
}

}  // namespace coverframe::validation
