// SPDX-License-Identifier: BSD-3-Clause
// ASCE/SEI 7, 7.9: snow that slides from a higher roof onto a lower one. The same in 7-10, 7-16 and 7-22.
//
// The load is static. What a mass of snow does that falls onto a cover is not in the rule: decks were broken by it
// (read on a page: structural engineers' mailing list, 2004). Do not park a boat under a sliding roof on this rule
// alone.
//
// Sliding snow is added to the balanced load of the lower roof and to nothing else: not to drift, unbalanced, partial
// or rain-on-snow loads (read on a page: Gupta, Principles of Structural Design, abstract of the snow chapter).
#pragma once

#include "coverframe/actions/asce7.hpp"

namespace coverframe::asce7 {

/// Whether snow of an upper roof has to be taken as sliding.
/// slippery: steeper than 1/4 on 12;  other: steeper than 2 on 12
/// \param slope    of the upper roof [rad], 0 to pi/2
/// \param surface  of the upper roof; here slippery is the unsafe claim to leave out
/// Limits: none.
/// Source: ASCE 7, 7.9; from memory, sure.
/// \throws InputError asce7.slope.range
[[nodiscard]] constexpr bool sliding_applies_7_9(Angle slope, Surface surface) {
    argument::slope_in_deg(slope, "asce7.slope.range");
    constexpr Angle quarter_on_12 = from_rad(0.020830320362);  // atan(1/48), rounded down
    constexpr Angle two_on_12 = from_rad(0.165148677414);      // atan(1/6), rounded down
    return slope > (surface == Surface::unobstructed_slippery ? quarter_on_12 : two_on_12);
}

/// Snow that has slid onto a lower roof.
struct SlidingSnow {
    bool needed = false;       ///< false if nothing can slide so far; then all below is zero
    LineLoad per_eave{};       ///< all that leaves the upper roof, by length of its eave [N/m]
    Pressure intensity{};      ///< on the lower roof, on top of its balanced load [Pa]
    Length extent{};           ///< of the loaded strip from the near edge of the lower roof [m]
    LineLoad on_lower_roof{};  ///< what of it the lower roof carries, by length of the eave [N/m]
};

/// Sliding snow on a lower roof that touches the upper one.
/// per eave 0.4 p_f W, spread evenly over 15 ft from the upper eave; a narrower roof takes its share
/// \param flat_load      p_f of the upper roof [Pa], 0 to 200 kPa
/// \param eave_to_ridge  W of the upper roof, horizontal [m], over 0 to 600 ft
/// \param lower_width    of the lower roof, away from the eave [m], over 0 to 600 ft
/// \return the strip and its load
/// Limits: where `sliding_applies_7_9` says so, which is not asked here. Snow that is held back because the heap below
/// reaches the eave may be left out; that is not done here.
/// Source: ASCE 7, 7.9; from memory, sure.
/// \throws InputError asce7.flat_load.range, asce7.eave_to_ridge.range, asce7.roof_length.range
[[nodiscard]] SlidingSnow sliding_load_7_9(Pressure flat_load, Length eave_to_ridge, Length lower_width);

/// Sliding snow that reaches a lower structure across a gap.
/// none unless h/s > 1 and s < 15 ft;  on the lower structure 0.4 p_f W (15 - s)/15 over 15 - s (ft)
/// \param separation  s, level, between both [m], over 0 to 3000 ft
/// \param height      h, edge of the higher roof above the lower one [m], over 0 to 3000 ft
/// \return the strip and its load
/// Limits: as `sliding_load_7_9`. A lower roof narrower than 15 ft - s takes its share.
/// Source: ASCE 7-10, 7-16, 7-22, 7.9; from memory.
/// \throws InputError as `sliding_load_7_9`, and asce7.gap.range, asce7.step.range
[[nodiscard]] SlidingSnow sliding_load_over_gap_7_9(Pressure flat_load, Length eave_to_ridge, Length lower_width,
                                                    Length separation, Length height);

}  // namespace coverframe::asce7
