// SPDX-License-Identifier: BSD-3-Clause
// ASCE/SEI 7, 7.5: part of the snow taken off some spans of a continuous member. The same in 7-10, 7-16 and 7-22.
//
// A ridge pole or strap over several uprights is such a member. Members that are not continuous are looked at with half
// the balanced load wherever that is worse (7.5.2; from memory, sure): that depends on the member and is no table.
#pragma once

#include "coverframe/actions/asce7.hpp"

namespace coverframe::asce7 {

/// How a member runs.
enum class MemberRun {
    other,          ///< along the ridge, or anything else
    eave_to_ridge,  ///< up the slope
};

[[nodiscard]] constexpr std::array<const char*, 2> choices_of(MemberRun) { return {"other", "eave to ridge"}; }

/// Whether partial loading has to be looked at.
/// not for members from eave to ridge of gables at 2.38 deg (1/2 on 12) or steeper
/// \param slope  of the roof [rad], 0 to pi/2
/// Limits: gable roofs; ask with `other` for every other roof.
/// Source: ASCE 7, 7.5; from memory, sure.
/// \throws InputError asce7.slope.range
[[nodiscard]] constexpr bool partial_loading_applies_7_5(MemberRun run, Angle slope) {
    argument::slope_in_deg(slope, "asce7.slope.range");
    return run != MemberRun::eave_to_ridge || slope < from_deg(2.38);
}

/// \throws InputError asce7.spans.range
constexpr void check_spans(int spans) {
    argument::within(spans, 2.0, 1000.0, {"asce7.spans.range", "number of spans", "-"});
}

/// How many loadings a continuous member has.
/// n + 3: two of case 1, two of case 2, n - 1 of case 3
/// \param spans  n, a cantilever counts as one; 2 to 1000
/// Limits: with two or three spans some of them are the same.
/// Source: ASCE 7, 7.5.1; from memory, sure.
/// \throws InputError asce7.spans.range
[[nodiscard]] constexpr int partial_patterns_7_5(int spans) {
    check_spans(spans);
    return spans + 3;
}

/// Share of the balanced load on one span in one loading.
/// Pattern 1, 2: case 1, all on the first or last span, half on the others. Pattern 3, 4: case 2, half on the first or
/// last span, all on the others. Pattern 4 + k: case 3, all on spans k and k + 1, half on the others.
/// \param spans    n, a cantilever counts as one; 2 to 1000
/// \param pattern  1 to n + 3
/// \param span     1 to n
/// \return 1 or 0.5 [-]
/// Limits: the balanced load itself, all on every span, is another arrangement.
/// Source: ASCE 7, 7.5.1, Fig. 7-4 or 7.5-1; from memory, sure.
/// \throws InputError asce7.spans.range, asce7.pattern.range, asce7.span.range
[[nodiscard]] constexpr double partial_factor_7_5(int spans, int pattern, int span) {
    check_spans(spans);
    argument::within(pattern, 1.0, spans + 3.0, {"asce7.pattern.range", "number of the loading", "-"});
    argument::within(span, 1.0, spans, {"asce7.span.range", "number of the span", "-"});
    bool full = false;
    switch (pattern) {
        case 1: full = span == 1; break;
        case 2: full = span == spans; break;
        case 3: full = span != 1; break;
        case 4: full = span != spans; break;
        default: full = span == pattern - 4 || span == pattern - 3; break;
    }
    return full ? 1.0 : 0.5;
}

}  // namespace coverframe::asce7
