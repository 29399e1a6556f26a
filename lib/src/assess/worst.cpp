// SPDX-License-Identifier: BSD-3-Clause
#include "assess/worst.hpp"

#include <algorithm>
#include <map>
#include <span>
#include <string>
#include <utility>

#include "coverframe/checks/band.hpp"
#include "coverframe/checks/clearance.hpp"
#include "coverframe/checks/film.hpp"
#include "coverframe/checks/ridge.hpp"
#include "coverframe/checks/straps.hpp"
#include "coverframe/checks/uprights.hpp"

namespace coverframe::assess_detail {
namespace {

using Check = std::vector<Finding> (*)(const CheckInput&);

constexpr Check strength_checks[] = {check_ridge, check_uprights, check_straps, check_film_stress, check_band};
constexpr Check service_checks[] = {check_drainage, check_ponding, check_shedding, check_clearance};

std::span<const Check> checks_for(Limit limit) {
    if (limit == Limit::strength) return strength_checks;
    return service_checks;
}

/// A finding that stands, and how to make it again.
struct Kept {
    Finding finding;
    const Solved* solved = nullptr;
    Check check = nullptr;
};

/// Worse by more than rounding, so that of two mirrored situations the first one is named for all parts.
bool clearly_worse(const Finding& a, const Finding& b) {
    constexpr double rounding = 1e-9;
    const bool comparable = a.verdict == b.verdict && a.utilisation && b.utilisation;
    return comparable ? *a.utilisation > *b.utilisation * (1 + rounding) : worse(a, b);
}

std::vector<Kept> kept_findings(const Plan& plan, const std::vector<Solved>& solved) {
    std::vector<Kept> kept;
    std::map<std::pair<std::string, std::string>, std::size_t> place;
    for (const Solved& one : solved) {
        if (!one.usable()) continue;
        const CheckInput input{plan, *one.cover, one.state, one.situation->name, false};
        for (const Check check : checks_for(one.situation->limit)) {
            for (Finding& finding : check(input)) {
                const auto [at, is_new] = place.try_emplace({finding.check, finding.part}, kept.size());
                if (is_new) {
                    kept.push_back({std::move(finding), &one, check});
                } else if (clearly_worse(finding, kept[at->second].finding)) {
                    kept[at->second] = {std::move(finding), &one, check};
                }
            }
        }
    }
    return kept;
}

/// Makes the findings that stand once more, with their workings: batch runs and situations that do not govern pay
/// nothing for them.
void add_workings(const Plan& plan, std::vector<Kept>& kept) {
    std::map<std::pair<const Solved*, Check>, std::vector<Finding>> again;
    for (Kept& one : kept) {
        const auto [at, is_new] = again.try_emplace({one.solved, one.check});
        if (is_new) {
            const Solved& solved = *one.solved;
            at->second = one.check({plan, *solved.cover, solved.state, solved.situation->name, true});
        }
        const Finding* worst = nullptr;
        for (const Finding& finding : at->second) {
            const bool same = finding.check == one.finding.check && finding.part == one.finding.part;
            if (same && (worst == nullptr || clearly_worse(finding, *worst))) worst = &finding;
        }
        if (worst != nullptr) one.finding = *worst;
    }
}

}  // namespace

std::vector<Finding> worst_findings(const Plan& plan, const std::vector<Solved>& solved, bool workings) {
    std::vector<Kept> kept = kept_findings(plan, solved);
    if (workings) add_workings(plan, kept);
    std::vector<Finding> findings;
    findings.reserve(kept.size());
    for (Kept& one : kept) findings.push_back(std::move(one.finding));
    std::stable_sort(findings.begin(), findings.end(), worse);
    return findings;
}

}  // namespace coverframe::assess_detail
