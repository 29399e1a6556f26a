// SPDX-License-Identifier: BSD-3-Clause
#include "spans.hpp"

#include <algorithm>

#include "common.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe::checks_detail {
namespace {

std::vector<bool> in_ridge(const Layout& layout) {
    std::vector<bool> ridge(layout.frame.members.size(), false);
    for (const RidgeBay& bay : layout.bays) {
        for (const int m : bay.members) ridge[at(m)] = true;
    }
    return ridge;
}

// Nodes that are held up by the boat, or to which a member is fixed that `own` does not count.
std::vector<bool> supported_nodes(const Layout& layout, const std::vector<bool>& own) {
    std::vector<bool> supported(layout.frame.nodes.size(), false);
    for (std::size_t n = 0; n < supported.size(); ++n) supported[n] = layout.frame.nodes[n].held[2];
    for (std::size_t m = 0; m < own.size(); ++m) {
        if (own[m]) continue;
        supported[at(layout.frame.members[m].from)] = true;
        supported[at(layout.frame.members[m].to)] = true;
    }
    return supported;
}

Piece piece_of(const Plan& plan, const FrameMember& pole, double span, bool cantilever) {
    const Timber timber = timber_of(plan, pole);
    return {timber.section, grade_of(plan, timber.grade), from_m(span), cantilever};
}

bool is_pole(const Layout& layout, const RidgeBay& bay) {
    return layout.frame.members[at(bay.members.front())].kind == MemberKind::pole;
}

void add_bays(const Plan& plan, const Layout& layout, std::vector<PoleSpan>& spans) {
    const std::vector<bool> supported = supported_nodes(layout, in_ridge(layout));
    const auto starts = [&](std::size_t b) { return supported[at(layout.bays[b].stations.front())]; };
    const auto ends = [&](std::size_t b) { return supported[at(layout.bays[b].stations.back())]; };
    for (std::size_t i = 0; i < layout.bays.size(); ++i) {
        const RidgeBay& bay = layout.bays[i];
        if (!is_pole(layout, bay)) continue;
        std::size_t first = i;
        while (!starts(first) && first > 0) --first;
        std::size_t last = i;
        while (!ends(last) && last + 1 < layout.bays.size()) ++last;
        double length = 0.0;
        for (std::size_t b = first; b <= last; ++b) length += length_of(layout.frame, layout.bays[b]);
        const FrameMember& member = layout.frame.members[at(bay.members.front())];
        spans.push_back(
            {bay_part("ridge", bay), true, bay.members, piece_of(plan, member, length, !starts(first) || !ends(last))});
    }
}

// Poles away from the ridge line: members of one name, end to end.
void add_other_poles(const Plan& plan, const Layout& layout, std::vector<PoleSpan>& spans) {
    const std::vector<bool> ridge = in_ridge(layout);
    const std::vector<FrameMember>& members = layout.frame.members;
    std::size_t first = 0;
    while (first < members.size()) {
        std::size_t end = first + 1;
        if (ridge[first] || members[first].kind != MemberKind::pole) {
            first = end;
            continue;
        }
        while (end < members.size() && !ridge[end] && members[end].kind == MemberKind::pole &&
               members[end].name == members[first].name)
            ++end;
        std::vector<bool> own(members.size(), false);
        PoleSpan span{"pole " + members[first].name, false, {}, {}};
        double length = 0.0;
        for (std::size_t m = first; m < end; ++m) {
            own[m] = true;
            span.members.push_back(static_cast<int>(m));
            length += drawn_length(layout.frame, members[m]);
        }
        const std::vector<bool> supported = supported_nodes(layout, own);
        const bool held = supported[at(members[first].from)] && supported[at(members[end - 1].to)];
        span.piece = piece_of(plan, members[first], length, !held);
        spans.push_back(std::move(span));
        first = end;
    }
}

bool spliced_between(const FrameMember& before, const FrameMember& after) {
    return before.kind != MemberKind::pole || after.kind != MemberKind::pole || before.spring_to == 0 ||
           after.spring_from == 0;
}

}  // namespace

std::vector<PoleSpan> pole_spans(const Plan& plan, const Layout& layout) {
    std::vector<PoleSpan> spans;
    add_bays(plan, layout, spans);
    add_other_poles(plan, layout, spans);
    return spans;
}

Beyond timber_beyond(const Layout& layout, int station) {
    std::vector<const FrameMember*> ridge;  // member i lies between stations i and i + 1
    for (const RidgeBay& bay : layout.bays) {
        for (const int m : bay.members) ridge.push_back(&layout.frame.members[at(m)]);
    }
    const std::size_t here = at(station);
    const auto spliced_at = [&](std::size_t s) {
        return s == 0 || s >= ridge.size() || spliced_between(*ridge[s - 1], *ridge[s]);
    };
    if (here > 0 && here < ridge.size() && spliced_at(here)) return {};
    double forward = 0.0;
    for (std::size_t s = here; s > 0; --s) {
        forward += drawn_length(layout.frame, *ridge[s - 1]);
        if (spliced_at(s - 1)) break;
    }
    double aft = 0.0;
    for (std::size_t s = here; s < ridge.size(); ++s) {
        aft += drawn_length(layout.frame, *ridge[s]);
        if (spliced_at(s + 1)) break;
    }
    return {from_m(forward), from_m(aft)};
}

}  // namespace coverframe::checks_detail
