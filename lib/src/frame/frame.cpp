// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/frame.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <set>
#include <utility>

#include "coverframe/base/error.hpp"
#include "frame/number_text.hpp"

namespace coverframe {

namespace {

constexpr std::array<const char*, 6> directions{"ux", "uy", "uz", "rx", "ry", "rz"};

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

/// A number of a member that makes no sense.
struct BadNumber {
    std::string field;  ///< "free_length"
    double value = 0;
    std::string wanted;  ///< "free length must be a finite number over zero"
};

std::optional<BadNumber> bad_number_of(const FrameMember& member) {
    std::optional<BadNumber> bad;
    const auto expect = [&](bool good, const char* field, double value, const char* wanted) {
        if (!good && !bad) bad = BadNumber{field, value, wanted};
    };
    const auto positive = [&](const char* field, double value, const char* wanted) {
        expect(std::isfinite(value) && value > 0, field, value, wanted);
    };
    const auto not_negative = [&](const char* field, double value, const char* wanted) {
        expect(std::isfinite(value) && value >= 0, field, value, wanted);
    };
    const auto arm = [&](const char* field, const std::array<double, 3>& arms) {
        for (const double value : arms) expect(std::isfinite(value), field, value, "arm must be finite numbers");
    };
    positive("axial_stiffness", member.axial_stiffness, "axial stiffness must be a finite number over zero");
    positive("free_length", member.free_length, "free length must be a finite number over zero");
    not_negative("weight", member.weight, "weight must be a finite number, not under zero");
    expect(std::isfinite(member.expansion), "expansion", member.expansion, "expansion must be a finite number");
    arm("arm_from", member.arm_from);
    arm("arm_to", member.arm_to);
    if (member.kind != MemberKind::pole) return bad;
    const BendingStiffness& b = member.bending;
    positive("bending/EI_vertical", b.EI_vertical, "bending stiffness must be a finite number over zero");
    positive("bending/EI_level", b.EI_level, "bending stiffness must be a finite number over zero");
    positive("bending/GJ", b.GJ, "twist stiffness must be a finite number over zero");
    not_negative("bending/GA_vertical", b.GA_vertical, "shear stiffness must be a finite number, not under zero");
    not_negative("bending/GA_level", b.GA_level, "shear stiffness must be a finite number, not under zero");
    expect(member.spring_from >= 0, "spring_from", member.spring_from, "end spring must not be under zero");
    expect(member.spring_to >= 0, "spring_to", member.spring_to, "end spring must not be under zero");
    return bad;
}

/// What is wrong with the numbers of a member, if anything.
void check_numbers(const FrameMember& member, const std::string& where, std::vector<Problem>& problems) {
    const std::optional<BadNumber> bad = bad_number_of(member);
    if (!bad) return;
    const bool pushes = member.kind == MemberKind::strap && bad->field == "free_length" && bad->value <= 0;
    if (pushes) {
        problems.push_back({"frame.strap.push", where + "/" + bad->field, text_of(bad->value),
                            "strap " + member.name +
                                " would have to push: give it a free length over zero, less than "
                                "the distance of its ends for a strap that is set, more for one that is slack"});
        return;
    }
    problems.push_back({"frame.member.stiffness", where + "/" + bad->field, text_of(bad->value),
                        "member " + member.name + ": " + bad->wanted});
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
                                "both ends of member " + member.name +
                                    ", at the ends of their arms, lie in the same place; give "
                                    "it a length, or join the two nodes in one"});
        }
        const bool on_arm = member.arm_from != std::array<double, 3>{} || member.arm_to != std::array<double, 3>{};
        if (!on_arm && !joined.insert(std::minmax(member.from, member.to)).second) {
            problems.push_back({"frame.member.doubled", where, member.name,
                                "member " + member.name + " joins two nodes that another member joins already"});
        }
        check_numbers(member, where, problems);
    }
}

void check_springs(const Frame& frame, std::vector<Problem>& problems) {
    const int count = static_cast<int>(frame.nodes.size());
    for (std::size_t s = 0; s < frame.springs.size(); ++s) {
        const NodeSpring& spring = frame.springs[s];
        if (spring.node < 0 || spring.node >= count) {
            problems.push_back({"frame.spring.node", index_path("springs", s), std::to_string(spring.node),
                                "a spring is at a node that does not exist"});
            continue;
        }
        const FrameNode& node = frame.nodes[static_cast<std::size_t>(spring.node)];
        for (std::size_t d = 0; d < 6; ++d) {
            const double k = spring.stiffness[d];
            const std::string where = index_path("springs", s) + "/stiffness/" + std::to_string(d);
            if (!(std::isfinite(k) && k >= 0)) {
                problems.push_back({"frame.spring.stiffness", where, text_of(k),
                                    "the stiffnesses of the spring at node " + node.name +
                                        " must be finite numbers, none under zero"});
            } else if (k > 0 && node.held[d]) {
                problems.push_back({"frame.spring.held", where, text_of(k),
                                    "the boat holds node " + node.name + " in " + directions[d] +
                                        " already, so a spring does nothing there; give one of the two up"});
            }
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
    std::set<int> stood_on;
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
        if (!stood_on.insert(foot.node).second) {
            problems.push_back({"frame.foot.doubled", where, node.name,
                                "node " + node.name + " stands on another foot already; make one of the two"});
        }
        if (const std::string bad = bad_number_of(foot); !bad.empty()) {
            problems.push_back({"frame.foot.number", where, node.name, "foot at node " + node.name + ": " + bad});
        } else if (node.held[0] && node.held[1] && foot.friction > 0) {
            problems.push_back({"frame.foot.friction", where + "/friction", text_of(foot.friction),
                                "the boat holds node " + node.name +
                                    " level already, so friction does nothing there; do not hold ux and uy, or leave "
                                    "friction 0"});
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
