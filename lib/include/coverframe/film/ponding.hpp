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
// Water behind the lower edge of a strip that falls by h wets only a length b of it. With T constant and k = sqrt(g/T),
// q the load without the water, the wet part hangs between two points at the height of the edge, the dry part (a = L -
// b) is a parabola, and both have the same slope where they meet:  (q/g) k tan(k b/2) = h/a - q a/(2 T).  Without a
// root b the water sinks the strip without end. The last root goes where both sides touch, and with S = sqrt(2 g h/q)
// that is
//     T_settle = g L^2/(2 atan sqrt(S/(S-2)) + sqrt(S(S-2)))^2   for S > 2,   T_crit for S <= 2
// no more than T_crit and less than q L^2/(2h), with which the strip drains. That T grows as the strip sinks is left
// out: the safe side.
//
// Help against the first is looked for with the whole strip (strip.hpp), one change at a time: the slope with which
// this strip would drain, the tension to shrink it to, or the span between supports.
//
// Limits: shallow strips (the level force carries, slopes small against 1).
//
// Source: closed forms derived from equilibrium of a taut strip; validation cases PN-01 and PN-03.
#pragma once

#include <optional>

namespace coverframe {

/// T_crit: level tension under which water over the whole span sinks the film without end [N/m].
/// \param span  level, over 0 [m]
/// \throws InputError film.ponding.range
[[nodiscard]] double critical_ponding_tension(double span);

/// T_settle: least level tension with which water behind the lower edge of a strip settles, or does not gather [N/m].
/// \param span  L, over 0 [m]   \param fall  h, not negative [m]   \param load  q without the water, over 0 [Pa]
/// \throws InputError film.ponding.range
[[nodiscard]] double settling_tension(double span, double fall, double load);

/// A strip a metre wide between two supports.
struct PondingStrip {
    double span = 0;        ///< level distance L [m]
    double fall = 0;        ///< of the lower support under the upper one, not negative [m]
    double stiffness = 0;   ///< E t/(1 - nu^2) [N/m]
    double pretension = 0;  ///< negative where there is slack to take up first, over -stiffness/2 [N/m]
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

/// \throws InputError film.ponding.range for numbers that are not finite, not over zero (fall: negative), or a
/// pretension out of its range
[[nodiscard]] Ponding ponding_of(const PondingStrip& strip);

/// `fall_needed` alone: the fall over L with which the strip drains, its own if it does; empty: not within 2 L.
/// \throws InputError as ponding_of
[[nodiscard]] std::optional<double> fall_to_drain(const PondingStrip& strip);

}  // namespace coverframe
