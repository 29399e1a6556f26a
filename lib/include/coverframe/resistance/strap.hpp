// SPDX-License-Identifier: BSD-3-Clause
// What a strap may carry for months. No code covers woven cord straps on covers: everything here is common practice, no
// source, and every share is a number somebody has to give.
#pragma once

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::strap {

inline const Clause clause_strength{"common practice, no source", "strap strength"};

/// What is known about a strap and how it is used.
struct Strength {
    Force break_strength{};        ///< of the strap itself, catalogue or test [N]
    double buckle_efficiency = 0;  ///< share of it the buckle or knot holds [-]; 0.7 to 0.9 for a wire buckle, 0.4 to
                                   ///< 0.6 for a knot (common practice)
    double ageing = 0;             ///< share left after sun and wear [-]; 0.85 to 0.95 for one winter (from memory)
    double working_share = 0;      ///< share of that used for a load of months [-]; at most 1/3 (project choice)
};

/// Force a single run of strap may carry under design actions.
/// T_d = break strength x buckle efficiency x ageing x working share
/// \param strength  break strength positive [N], shares over 0 to 1 [-]
/// \return [N]
/// Limits: one run. A closed loop over a ridge has two, and is not assumed. Straps are not bent over sharp edges.
/// Source: common practice, no source.
/// \throws InputError strap.break_strength.range, strap.buckle_efficiency.range, strap.ageing.range,
///   strap.working_share.range
[[nodiscard]] constexpr Force design_strength(const Strength& strength) {
    argument::positive(in_N(strength.break_strength), {"strap.break_strength.range", "break strength", "N"});
    argument::within(strength.buckle_efficiency, argument::smallest, 1.0,
                     {"strap.buckle_efficiency.range", "buckle efficiency", "-"});
    argument::within(strength.ageing, argument::smallest, 1.0, {"strap.ageing.range", "share left by ageing", "-"});
    argument::within(strength.working_share, argument::smallest, 1.0,
                     {"strap.working_share.range", "working share", "-"});
    return strength.buckle_efficiency * strength.ageing * strength.working_share * strength.break_strength;
}

}  // namespace coverframe::strap
