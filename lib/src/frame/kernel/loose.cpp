// SPDX-License-Identifier: BSD-3-Clause
#include "loose.hpp"

#include <algorithm>
#include <cmath>

namespace coverframe::kernel {

std::vector<int> loose_nodes(const Frame& frame, const FrameLoads& loads, const Solution& solution, double nothing) {
    const std::size_t count = frame.nodes.size();
    const auto index = [](int i) { return static_cast<std::size_t>(i); };
    std::vector<bool> loose(count);
    std::vector<bool> on_foot(count, false);
    for (std::size_t n = 0; n < count; ++n) {
        const std::array<bool, 6>& held = frame.nodes[n].held;
        loose[n] = !(held[0] && held[1] && held[2]);
    }
    for (const Foot& foot : frame.feet) on_foot[index(foot.node)] = true;
    for (std::size_t f = 0; f < frame.feet.size(); ++f) {
        if (solution.feet[f].carries) loose[index(frame.feet[f].node)] = false;
    }
    for (std::size_t i = 0; i < loads.force.size(); ++i) {
        if (loads.force[i] != 0) loose[i / 3] = false;
    }
    for (const NodeSpring& spring : frame.springs) loose[index(spring.node)] = false;
    for (const FrameLoads::Spring& spring : loads.springs) loose[index(spring.node)] = false;
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        const FrameMember& member = frame.members[m];
        const auto loaded = [&](double load) { return load != 0; };
        const bool bare = loads.member_load.empty() ||
                          std::none_of(loads.member_load.begin() + static_cast<std::ptrdiff_t>(3 * m),
                                       loads.member_load.begin() + static_cast<std::ptrdiff_t>(3 * m + 3), loaded);
        const bool idle = bare && std::abs(solution.members[m].axial) <= nothing;
        for (const int node : {member.from, member.to}) {
            const bool one_sided =
                member.kind == MemberKind::strap || (member.kind == MemberKind::upright && on_foot[index(node)]);
            if (!idle || !one_sided) loose[index(node)] = false;
        }
    }
    std::vector<int> nodes;
    for (std::size_t n = 0; n < count; ++n) {
        if (loose[n]) nodes.push_back(static_cast<int>(n));
    }
    return nodes;
}

}  // namespace coverframe::kernel
