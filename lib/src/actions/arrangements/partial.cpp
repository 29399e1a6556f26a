// SPDX-License-Identifier: BSD-3-Clause
// Partial loading of a ridge that is continuous over its uprights: full balanced load on some spans, half on the rest.
#include <algorithm>
#include <set>

#include "actions/arrangements/common.hpp"
#include "coverframe/actions/asce7_partial.hpp"

namespace coverframe::arranging {
namespace {

/// An end of a span of the ridge.
struct SpanEnd {
    Length x{};
    std::string name;
};

bool carried(const FoundFrame& found, const FoundNode& node) {
    return node.held || std::ranges::any_of(found.members, [&](const FoundMember& member) {
               return member.kind == FoundKind::upright && (member.from == node.name || member.to == node.name);
           });
}

/// Places between bow and stern where something carries the ridge.
std::vector<SpanEnd> inner_ends(const Support& support) {
    std::vector<SpanEnd> ends;
    if (const auto* ridge = std::get_if<RidgeSupport>(&support.structure)) {
        for (const Upright& upright : ridge->uprights) ends.push_back({upright.x, upright.name});
        return ends;
    }
    const auto& found = std::get<FoundFrame>(support.structure);
    for (const std::string& name : found.ridge_line) {
        const auto node = std::ranges::find(found.nodes, name, &FoundNode::name);
        if (node != found.nodes.end() && carried(found, *node)) ends.push_back({node->at.x, node->name});
    }
    return ends;
}

std::vector<SpanEnd> span_ends(const Plan& plan, Stations stations) {
    const SpanEnd bow{stations.front().x, "bow"};
    const SpanEnd stern{stations.back().x, "stern"};
    std::vector<SpanEnd> ends{bow};
    for (SpanEnd& end : inner_ends(plan.support)) {
        if (end.x > ends.back().x && end.x < stern.x) ends.push_back(std::move(end));
    }
    ends.push_back(stern);
    return ends;
}

/// First and last span under full load, counted from 1. In every pattern of 7.5 they are neighbours.
using FullSpans = std::pair<int, int>;

std::set<FullSpans> patterns_of(int spans) {
    std::set<FullSpans> patterns;
    for (int pattern = 1; pattern <= asce7::partial_patterns_7_5(spans); ++pattern) {
        FullSpans full{0, 0};
        for (int span = 1; span <= spans; ++span) {
            if (asce7::partial_factor_7_5(spans, pattern, span) < 1.0) continue;
            if (full.first == 0) full.first = span;
            full.second = span;
        }
        if (full != FullSpans{1, spans}) patterns.insert(full);
    }
    return patterns;
}

}  // namespace

std::vector<Arrangement> partial(const Plan& plan, const DocumentSnow& snow, Stations stations, bool workings) {
    const Clause clause = snow.partial_clause(stations);
    if (clause.document.empty()) return {};
    const std::vector<SpanEnd> ends = span_ends(plan, stations);
    const int spans = static_cast<int>(ends.size()) - 1;
    if (spans < 2) return {};

    std::vector<Arrangement> all;
    for (const FullSpans& full : patterns_of(spans)) {
        const SpanEnd& from = ends[static_cast<std::size_t>(full.first - 1)];
        const SpanEnd& to = ends[static_cast<std::size_t>(full.second)];
        const auto share = [&](const CoverStation& s) { return s.x >= from.x && s.x <= to.x ? 1.0 : 0.5; };
        const auto field = [&](const CoverStation& s) { return both(share(s) * snow.balanced(s)); };
        const auto terms = [&](const CoverStation& s) {
            std::vector<Term> lines = snow.balanced_workings(s);
            lines.push_back({"share", share(s), "-", "1 on the spans under full load, 0.5 on the others", clause});
            return lines;
        };
        all.push_back(over_stations({"partial, full from " + from.name + " to " + to.name, clause,
                                     "Partial loading puts full balanced snow on the spans named and half of it on the "
                                     "rest of the ridge, which is taken as continuous over its uprights."},
                                    stations, field, workings ? WorkingsRule(terms) : nullptr));
    }
    return all;
}

}  // namespace coverframe::arranging
