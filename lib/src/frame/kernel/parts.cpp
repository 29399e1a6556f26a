// SPDX-License-Identifier: BSD-3-Clause
#include "parts.hpp"

#include <algorithm>
#include <numeric>

namespace coverframe::kernel {

namespace {

constexpr std::size_t most_names = 8;

std::size_t index(int i) { return static_cast<std::size_t>(i); }

/// The node that stands for the part of a node, by trees of nodes.
int root_of(std::vector<int>& above, int node) {
    while (above[index(node)] != node) {
        above[index(node)] = above[index(above[index(node)])];
        node = above[index(node)];
    }
    return node;
}

std::vector<int> roots_of(const Frame& frame) {
    std::vector<int> above(frame.nodes.size());
    std::iota(above.begin(), above.end(), 0);
    for (const FrameMember& member : frame.members) {
        above[index(root_of(above, member.from))] = root_of(above, member.to);
    }
    for (std::size_t n = 0; n < above.size(); ++n) above[n] = root_of(above, static_cast<int>(n));
    return above;
}

bool ties(const std::array<double, 6>& stiffness) {
    return std::ranges::any_of(stiffness, [](double k) { return k > 0; });
}

/// Each name once, in order.
std::string listed(const std::vector<std::string>& names) {
    std::vector<std::string> shown;
    for (const std::string& name : names) {
        if (std::ranges::find(shown, name) == shown.end()) shown.push_back(name);
    }
    std::string text;
    for (std::size_t i = 0; i < std::min(shown.size(), most_names); ++i) {
        text += (i == 0 ? "\"" : ", \"") + shown[i] + "\"";
    }
    return text + (shown.size() > most_names ? ", ..." : "");
}

}  // namespace

std::vector<std::vector<int>> parts_adrift(const Frame& frame, const FrameLoads& loads) {
    const std::vector<int> root = roots_of(frame);
    std::vector<bool> tied(frame.nodes.size(), false);
    const auto tie = [&](int node) { tied[index(root[index(node)])] = true; };
    for (std::size_t n = 0; n < frame.nodes.size(); ++n) {
        if (std::ranges::any_of(frame.nodes[n].held, [](bool held) { return held; })) tie(static_cast<int>(n));
    }
    for (const NodeSpring& spring : frame.springs) {
        if (ties(spring.stiffness)) tie(spring.node);
    }
    for (const Foot& foot : frame.feet) tie(foot.node);
    for (const FrameLoads::Spring& spring : loads.springs) tie(spring.node);
    std::vector<std::vector<int>> parts;
    std::vector<std::size_t> place(frame.nodes.size(), frame.nodes.size());
    for (std::size_t n = 0; n < frame.nodes.size(); ++n) {
        const std::size_t at = index(root[n]);
        if (tied[at]) continue;
        if (place[at] == frame.nodes.size()) {
            place[at] = parts.size();
            parts.emplace_back();
        }
        parts[place[at]].push_back(static_cast<int>(n));
    }
    return parts;
}

std::string names_of_part(const Frame& frame, const std::vector<int>& part) {
    std::vector<bool> within(frame.nodes.size(), false);
    std::vector<std::string> nodes;
    std::vector<std::string> members;
    for (const int node : part) {
        within[index(node)] = true;
        nodes.push_back(frame.nodes[index(node)].name);
    }
    for (const FrameMember& member : frame.members) {
        if (within[index(member.from)]) members.push_back(member.name);
    }
    return "nodes " + listed(nodes) + "; members " + listed(members);
}

}  // namespace coverframe::kernel
