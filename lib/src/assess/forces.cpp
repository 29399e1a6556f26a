// SPDX-License-Identifier: BSD-3-Clause
#include "assess/forces.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace coverframe::assess_detail {
namespace {

/// A number to be read in every state.
enum class Reading { push, tension, moment_vertical, moment_level, reaction };

struct Probe {
    Reading reading;
    std::string part;
    const char* quantity;
    const char* unit;
    std::vector<int> members;        ///< all but reactions
    std::size_t reaction_index = 0;  ///< into Solution::reaction
};

struct Extent {
    double least = 0;
    double greatest = 0;
};

Extent extent_in(const Probe& probe, const Solution& solution) {
    if (probe.reading == Reading::reaction) {
        const double reaction = solution.reaction[probe.reaction_index];
        return {reaction, reaction};
    }
    Extent extent;
    bool first = true;
    const auto take = [&](double value) {
        extent = first ? Extent{value, value} : Extent{std::min(extent.least, value), std::max(extent.greatest, value)};
        first = false;
    };
    for (const int index : probe.members) {
        const MemberForces& forces = solution.members[static_cast<std::size_t>(index)];
        switch (probe.reading) {
            case Reading::push:
                take(-forces.axial_at(0));
                take(-forces.axial_at(1));
                break;
            case Reading::tension:
                take(forces.axial_at(0));
                take(forces.axial_at(1));
                break;
            case Reading::moment_vertical:
                take(forces.moment_vertical_from);
                take(forces.moment_vertical_to);
                break;
            case Reading::moment_level:
                take(forces.moment_level_from);
                take(forces.moment_level_to);
                break;
            case Reading::reaction: break;
        }
    }
    return extent;
}

void add_ridge_end(const FrameNode& node, int index, const char* end, std::vector<Probe>& probes) {
    constexpr std::array<const char*, 3> quantities{"reaction, aft", "reaction, to starboard", "reaction, up"};
    for (const std::size_t direction : {std::size_t{2}, std::size_t{0}, std::size_t{1}}) {
        if (!node.held[direction]) continue;
        probes.push_back({Reading::reaction, std::string("ridge at the ") + end, quantities[direction], "N", {},
                          6 * static_cast<std::size_t>(index) + direction});
    }
}

std::vector<Probe> probes_of(const Layout& layout) {
    const Frame& frame = layout.frame;
    std::vector<Probe> probes;
    for (const UprightPart& upright : layout.uprights) {
        probes.push_back({Reading::push, upright.name, "push", "N", {upright.member}});
    }
    for (const CrossStrapPart& strap : layout.cross_straps) {
        for (const int leg : strap.members) {
            const std::string& part = frame.members[static_cast<std::size_t>(leg)].name;
            probes.push_back({Reading::tension, part, "tension", "N", {leg}});
        }
    }
    for (const RidgeBay& bay : layout.bays) {
        const std::string part = "ridge, " + bay.name;
        const MemberKind kind = frame.members[static_cast<std::size_t>(bay.members.front())].kind;
        if (kind == MemberKind::pole) {
            probes.push_back({Reading::moment_vertical, part, "bending moment, sagging", "N m", bay.members});
            probes.push_back({Reading::moment_level, part, "bending moment, sideways", "N m", bay.members});
            probes.push_back({Reading::tension, part, "axial force, tension positive", "N", bay.members});
        } else {
            probes.push_back({Reading::tension, part, "tension", "N", bay.members});
        }
    }
    const auto node = [&](int index) -> const FrameNode& { return frame.nodes[static_cast<std::size_t>(index)]; };
    add_ridge_end(node(layout.stations.front()), layout.stations.front(), "bow", probes);
    add_ridge_end(node(layout.stations.back()), layout.stations.back(), "stern", probes);
    return probes;
}

/// Greater by more than rounding, so that of two mirrored situations the first one is named.
bool clearly_greater(double a, double b) {
    constexpr double rounding = 1e-9;  // [-]
    constexpr double nothing = 1e-6;   // [N] or [N m]
    return a - b > rounding * (std::abs(a) + std::abs(b)) + nothing;
}

ForceRange range_of(const Probe& probe, const std::vector<Solved>& solved) {
    ForceRange range{probe.part, probe.quantity, probe.unit, 0, "", 0, ""};
    for (const Solved& one : solved) {
        if (!one.usable()) continue;
        const Extent extent = extent_in(probe, one.state.frame);
        if (range.least_in.empty() || clearly_greater(range.least, extent.least)) {
            range.least = extent.least;
            range.least_in = one.situation->name;
        }
        if (range.greatest_in.empty() || clearly_greater(extent.greatest, range.greatest)) {
            range.greatest = extent.greatest;
            range.greatest_in = one.situation->name;
        }
    }
    return range;
}

}  // namespace

std::vector<ForceRange> force_ranges(const std::vector<Solved>& solved) {
    const auto usable = std::find_if(solved.begin(), solved.end(), [](const Solved& one) { return one.usable(); });
    std::vector<ForceRange> ranges;
    if (usable == solved.end()) return ranges;
    for (const Probe& probe : probes_of(usable->cover->layout)) ranges.push_back(range_of(probe, solved));
    return ranges;
}

}  // namespace coverframe::assess_detail
