// SPDX-License-Identifier: BSD-3-Clause
#include "require_loads.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "coverframe/base/error.hpp"

namespace coverframe::kernel {

namespace {

constexpr std::array<const char*, 6> directions{"ux", "uy", "uz", "rx", "ry", "rz"};

std::string path(const char* list, std::size_t index) {
    return std::string("/loads/") + list + "/" + std::to_string(index);
}

void require_list(const std::vector<double>& list, const char* name, std::size_t size, const char* wanted) {
    if (!list.empty() && list.size() != size) {
        throw InputError("frame.loads.size", std::string("/loads/") + name, std::to_string(list.size()),
                         std::string(name) + " must be " + wanted + ", " + std::to_string(size) + " in all");
    }
    const auto bad = std::ranges::find_if(list, [](double value) { return !std::isfinite(value); });
    if (bad == list.end()) return;
    throw InputError("frame.loads.finite", path(name, static_cast<std::size_t>(bad - list.begin())), "",
                     std::string(name) + " must be finite numbers");
}

void require_springs(const Frame& frame, const FrameLoads& loads) {
    const auto finite = [](double value) { return std::isfinite(value); };
    for (std::size_t s = 0; s < loads.springs.size(); ++s) {
        const FrameLoads::Spring& spring = loads.springs[s];
        const bool good = spring.node >= 0 && static_cast<std::size_t>(spring.node) < frame.nodes.size() &&
                          std::ranges::all_of(spring.stiffness, finite) && std::ranges::all_of(spring.force0, finite) &&
                          std::ranges::all_of(spring.u0, finite);
        if (good) continue;
        throw InputError("frame.loads.finite", path("springs", s), "",
                         "springs must be finite numbers on nodes that exist");
    }
}

void require_couples(const Frame& frame, const Assembly& assembly, const FrameLoads& loads) {
    for (std::size_t i = 0; i < loads.couple.size(); ++i) {
        const std::size_t full = i / 3 * 6 + 3 + i % 3;
        const FrameNode& node = frame.nodes[i / 3];
        if (loads.couple[i] == 0 || node.held[3 + i % 3] || assembly.unknown_at(static_cast<int>(full)) >= 0) continue;
        throw InputError("frame.loads.couple", path("couple", i), node.name,
                         "nothing at node " + node.name + " can take a couple: no pole, no arm, no turning spring");
    }
}

void require_settlements(const Frame& frame, const FrameLoads& loads) {
    for (std::size_t i = 0; i < loads.settlement.size(); ++i) {
        const FrameNode& node = frame.nodes[i / 6];
        if (loads.settlement[i] == 0 || node.held[i % 6]) continue;
        throw InputError(
            "frame.loads.settlement", path("settlement", i), node.name,
            "node " + node.name + " is not held in " + directions[i % 6] + ", so no displacement can be given there");
    }
}

}  // namespace

void require_loads(const Frame& frame, const Assembly& assembly, const FrameLoads& loads) {
    const std::size_t nodes = frame.nodes.size();
    const std::size_t members = frame.members.size();
    require_list(loads.force, "force", 3 * nodes, "3 numbers a node");
    require_list(loads.couple, "couple", 3 * nodes, "3 numbers a node");
    require_list(loads.member_load, "member_load", 3 * members, "3 numbers a member");
    require_list(loads.temperature, "temperature", members, "one number a member");
    require_list(loads.settlement, "settlement", 6 * nodes, "6 numbers a node");
    require_springs(frame, loads);
    require_couples(frame, assembly, loads);
    require_settlements(frame, loads);
}

}  // namespace coverframe::kernel
