// SPDX-License-Identifier: BSD-3-Clause
// Whether a strip of film drains, and whether water on it would grow: the two criteria of ponding, and what would help.
//
// First, by shape: a strip drains as long as its sag takes away less slope at the lower edge than its chord has,
//     4 f/L < tan(beta)
// Second, by stability: water that follows the film, T w'' + g w + q = 0 over L, sags by
//     w = q/g (sec(L sqrt(g/T)/2) - 1),   without bound at  T_crit = g L^2/pi^2
// so under that tension any water grows until stretch stops it; the longest span that holds is pi sqrt(T/g). Snow that
// does not flow does not follow the film; wet snow in rain does.
//
// Help against the first is looked for with the whole strip (strip.hpp), one change at a time: the slope with which
// this strip would drain, the tension to shrink it to, or the span between supports.
//
// Source: closed forms derived from equilibrium of a taut strip; validation cases PN-01 and PN-03.
#pragma once

#include <optional>

namespace coverframe {

/// A strip a metre wide between two supports.
struct PondingStrip {
    double span = 0;        ///< level distance L [m]
    double fall = 0;        ///< of the lower support under the upper one, not negative [m]
    double stiffness = 0;   ///< E t/(1 - nu^2) [N/m]
    double pretension = 0;  ///< [N/m]
    double load = 0;        ///< per plan area [Pa]
};

struct Ponding {
    double sag = 0;                           ///< under the chord at the middle [m]
    double tension = 0;                       ///< level part, loaded [N/m]
    bool drains = false;                      ///< first criterion
    double critical_tension = 0;              ///< T_crit [N/m]
    double longest_span = 0;                  ///< pi sqrt(T/g) [m]
    bool holds_water = false;                 ///< second criterion: tension over T_crit
    std::optional<double> fall_needed;        ///< fall over L with which it would drain [m]; empty: not within 2 L
    std::optional<double> pretension_needed;  ///< with which it would drain [N/m]; empty: not under 20 times as much
    std::optional<double> span_needed;        ///< of the same slope that would drain [m]; empty: none over 0.05 m
};

/// \throws InputError film.ponding.range for numbers that are not finite or not over zero (fall and pretension:
/// negative)
[[nodiscard]] Ponding ponding_of(const PondingStrip& strip);

}  // namespace coverframe
