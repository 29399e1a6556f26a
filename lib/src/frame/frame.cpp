// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/frame.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <utility>

#include "coverframe/base/error.hpp"

namespace coverframe {

namespace {

double distance(const std::array<double, 3>& a, const std::array<double, 3>& b) {
    return std::hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
}

bool finite(const std::array<double, 3>& a) {
    return std::isfinite(a[0]) && std::isfinite(a[1]) && std::isfinite(a[2]);
}

std::string index_path(const char* list, std::size_t index) {
    return std::string("/frame/") + list + "/" + std::to_string(index);
}

void check_nodes(const Frame& frame, std::vector<Problem>& problems) {
    std::vector<bool> used(frame.nodes.size(), false);
    const int count = static_cast<int>(frame.nodes.size());
    for (const FrameMember& member : frame.members) {
        for (const int node : {member.from, member.to}) {
            if (node >= 0 && node < count) used[static_cast<std::size_t>(node)] = true;
        }
    }
    for (std::size_t n = 0; n < frame.nodes.size(); ++n) {
        const FrameNode& node = frame.nodes[n];
        if (!finite(node.at)) {
            problems.push_back({"frame.node.finite", index_path("nodes", n), "",
                                "node " + node.name + " has a coordinate that is not a finite number"});
        }
        if (!used[n]) {
            problems.push_back({"frame.node.unused", index_path("nodes", n), node.name,
                                "node " + node.name + " has no member; remove it or connect it"});
        }
    }
}

/// Names the numbers of a member that make no sense; empty if all do.
std::string bad_number_of(const FrameMember& member) {
    const auto positive = [](double value) { return std::isfinite(value) && value > 0; };
    const auto not_negative = [](double value) { return std::isfinite(value) && value >= 0; };
    if (!positive(member.axial_stiffness)) return "axial stiffness";
    if (!positive(member.free_length)) return "free length";
    if (!not_negative(member.weight)) return "weight";
    if (!std::isfinite(member.expansion)) return "expansion";
    if (!finite(member.arm_from) || !finite(member.arm_to)) return "arm";
    if (member.kind != MemberKind::pole) return "";
    const BendingStiffness& b = member.bending;
    if (!positive(b.EI_vertical) || !positive(b.EI_level)) return "bending stiffness";
    if (!positive(b.GJ)) return "twist stiffness";
    if (!not_negative(b.GA_vertical) || !not_negative(b.GA_level)) return "shear stiffness";
    if (!(member.spring_from >= 0) || !(member.spring_to >= 0)) return "end spring";
    return "";
}

void check_members(const Frame& frame, std::vector<Problem>& problems) {
    const int count = static_cast<int>(frame.nodes.size());
    std::set<std::pair<int, int>> joined;
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        const FrameMember& member = frame.members[m];
        const std::string where = index_path("members", m);
        if (member.from < 0 || member.from >= count || member.to < 0 || member.to >= count) {
            problems.push_back({"frame.member.node", where,
                                std::to_string(member.from) + ", " + std::to_string(member.to),
                                "member " + member.name + " ends at a node that does not exist"});
            continue;
        }
        if (!(drawn_length(frame, member) > 1e-6)) {
            problems.push_back({"frame.member.length", where, member.name,
                                "both ends of member " + member.name + " lie in the same place; give it a length"});
        }
        const bool on_arm = member.arm_from != std::array<double, 3>{} || member.arm_to != std::array<double, 3>{};
        if (!on_arm && !joined.insert(std::minmax(member.from, member.to)).second) {
            problems.push_back({"frame.member.doubled", where, member.name,
                                "member " + member.name + " joins two nodes that another member joins already"});
        }
        if (const std::string bad = bad_number_of(member); !bad.empty()) {
            problems.push_back({"frame.member.stiffness", where, member.name,
                                bad + " of member " + member.name + " is no number that makes sense there"});
        }
    }
}

void check_springs(const Frame& frame, std::vector<Problem>& problems) {
    const int count = static_cast<int>(frame.nodes.size());
    for (std::size_t s = 0; s < frame.springs.size(); ++s) {
        const NodeSpring& spring = frame.springs[s];
        if (spring.node < 0 || spring.node >= count) {
            problems.push_back({"frame.spring.node", index_path("springs", s), std::to_string(spring.node),
                                "a spring is at a node that does not exist"});
        }
        if (!std::ranges::all_of(spring.stiffness, [](double k) { return std::isfinite(k) && k >= 0; })) {
            problems.push_back({"frame.spring.stiffness", index_path("springs", s), "",
                                "the stiffnesses of a spring must be finite numbers, none under zero"});
        }
    }
}

/// Names the number of a foot that makes no sense; empty if all do.
std::string bad_number_of(const Foot& foot) {
    const auto within = [](double value, double most) { return std::isfinite(value) && value >= 0 && value <= most; };
    constexpr double any = std::numeric_limits<double>::max();
    if (!within(foot.stiffness, any) || foot.stiffness == 0) return "stiffness must be a finite number over zero";
    if (!within(foot.gap, any)) return "gap must be a finite number, not under zero";
    if (!within(foot.friction, 2)) return "friction must lie between 0 and 2";
    if (!within(foot.side_stiffness, any)) return "sideways stiffness must be a finite number, not under zero";
    if (foot.friction > 0 && foot.side_stiffness == 0) return "sideways stiffness must be over zero with friction";
    return "";
}

void check_feet(const Frame& frame, std::vector<Problem>& problems) {
    for (std::size_t f = 0; f < frame.feet.size(); ++f) {
        const Foot& foot = frame.feet[f];
        const std::string where = index_path("feet", f);
        if (foot.node < 0 || foot.node >= static_cast<int>(frame.nodes.size())) {
            problems.push_back(
                {"frame.foot.node", where, std::to_string(foot.node), "a foot stands at a node that does not exist"});
            continue;
        }
        const FrameNode& node = frame.nodes[static_cast<std::size_t>(foot.node)];
        if (node.held[2]) {
            problems.push_back(
                {"frame.foot.held", where, node.name,
                 "the boat holds node " + node.name + " up already; do not hold uz where a foot stands"});
        }
        if (const std::string bad = bad_number_of(foot); !bad.empty()) {
            problems.push_back({"frame.foot.number", where, node.name, "foot at node " + node.name + ": " + bad});
        }
    }
}

}  // namespace

double drawn_length(const Frame& frame, const FrameMember& member) {
    std::array<double, 3> from = frame.nodes[static_cast<std::size_t>(member.from)].at;
    std::array<double, 3> to = frame.nodes[static_cast<std::size_t>(member.to)].at;
    for (std::size_t d = 0; d < 3; ++d) {
        from[d] += member.arm_from[d];
        to[d] += member.arm_to[d];
    }
    return distance(from, to);
}

void require_sound(const Frame& frame) {
    std::vector<Problem> problems;
    if (frame.nodes.empty() || frame.members.empty()) {
        problems.push_back({"frame.empty", "/frame", "", "the frame has no nodes or no members"});
    }
    check_nodes(frame, problems);
    check_members(frame, problems);
    check_springs(frame, problems);
    check_feet(frame, problems);
    if (!problems.empty()) throw InputError(std::move(problems));
}

}  // namespace coverframe
