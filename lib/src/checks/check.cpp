// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/checks/check.hpp"

#include <cmath>
#include <utility>

#include "coverframe/base/error.hpp"

namespace coverframe {

void require_usable(const CheckInput& input) {
    const CoverState& state = input.state;
    if (!state.usable()) {
        throw StateError("checks.state.unusable", "the cover found no equilibrium in situation \"" + input.situation +
                                                      "\", so nothing can be checked in it: " + state.frame.message);
    }
    const Frame& frame = input.cover.layout.frame;
    if (state.strips.size() != input.cover.strips.size() || state.frame.members.size() != frame.members.size() ||
        state.frame.displacement.size() != 6 * frame.nodes.size()) {
        throw StateError("checks.state.unusable",
                         "the state of situation \"" + input.situation + "\" belongs to another cover");
    }
}

Finding compare(std::string check, std::string part, Clause clause, const CheckInput& input, double demand,
                double capacity, std::string unit) {
    if (!std::isfinite(demand) || !std::isfinite(capacity)) {
        throw StateError("checks.number", check + " of " + part + " in situation \"" + input.situation +
                                              "\" came to a number that is not finite");
    }
    Finding finding;
    finding.check = std::move(check);
    finding.part = std::move(part);
    finding.clause = std::move(clause);
    finding.situation = input.situation;
    finding.demand = demand;
    finding.capacity = capacity;
    finding.unit = std::move(unit);
    finding.verdict = capacity > 0.0 && demand <= capacity ? Verdict::satisfied : Verdict::exceeded;
    const double ratio = capacity > 0.0 ? demand / capacity : 0.0;
    if (capacity > 0.0 && std::isfinite(ratio)) finding.utilisation = ratio;
    return finding;
}

}  // namespace coverframe
