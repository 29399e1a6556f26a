// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/base/finding.hpp"

#include <cmath>
#include <limits>

namespace coverframe {
namespace {

int rank_of(Verdict verdict) {
    switch (verdict) {
        case Verdict::exceeded: return 2;
        case Verdict::satisfied: return 1;
        case Verdict::not_applicable: return 0;
    }
    return 0;
}

// Port and starboard of a symmetric cover differ by rounding, or by what an equilibrium is found to.
constexpr double told_apart = 1e-4;

// Utilisation on a scale on which every finding of one verdict has a place. An exceeded finding with nothing to divide
// by, or with a number that is none, stands above all others; a satisfied one without a utilisation stands below.
double severity_of(const Finding& finding) {
    constexpr double infinite = std::numeric_limits<double>::infinity();
    if (!finding.utilisation) return finding.verdict == Verdict::exceeded ? infinite : -infinite;
    return std::isnan(*finding.utilisation) ? infinite : std::round(*finding.utilisation / told_apart);
}

}  // namespace

bool worse(const Finding& a, const Finding& b) {
    const int rank_a = rank_of(a.verdict);
    const int rank_b = rank_of(b.verdict);
    if (rank_a != rank_b) return rank_a > rank_b;
    return severity_of(a) > severity_of(b);
}

const Finding* governing(std::span<const Finding> findings) {
    const Finding* worst = nullptr;
    for (const Finding& finding : findings) {
        if (worst == nullptr || worse(finding, *worst)) worst = &finding;
    }
    return worst;
}

}  // namespace coverframe
