// SPDX-License-Identifier: BSD-3-Clause
// From ground snow to loads on the cover: the arrangements a document asks for, station by station along the boat.
//
// The cover is a gable whose slope and width change along the boat, so every station gets its own slope factor. Where
// the document is silent about a boat cover, the safe reading is taken and said in `note`:
//   * ASCE 7-22, 7.3.3: if the cover is flatter than 15 degrees anywhere, the minimum load lies on all of it, as an
//     arrangement of its own.
//   * ASCE 7-22, 7.6.1: if the slopes of the cover reach into the window of the unbalanced case anywhere, all stations
//     get it; the narrow rule for simple rafters is not used (film on straps is no simple rafter); a drift that ends
//     before the rail is carried on to the rail. The surcharge h_d gamma/sqrt(S) falls with sqrt(tan(slope)) to zero on
//     a flat station; on a station steeper than the window it is the one of the window's end, less by the slope factor:
//     times C_s(slope)/C_s(end), which is zero from 70 degrees.
//   * EN 1991-1-3, 5.3.3: snow is free to slide only if the plan claims it.
// Port and starboard are both taken as the sheltered side in turn. A station without breadth carries nothing.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "coverframe/base/finding.hpp"
#include "coverframe/plan/plan.hpp"

namespace coverframe {

/// Where the cover is looked at: place along the boat and the drawn slope and half breadth there.
struct CoverStation {
    Length x{};
    Angle slope{};         ///< drawn film slope, ridge to rail, 0 to pi/2
    Length half_breadth{}; ///< plan width of one side
};

/// One arrangement of snow, before any load factor.
struct Arrangement {
    std::string name;                 ///< "balanced", "unbalanced, heavy to port", ...
    Clause clause;
    std::string note;                 ///< what was read into the document for a boat cover; may be empty
    std::vector<PlanLoad> port;       ///< one a station
    std::vector<PlanLoad> starboard;  ///< one a station
    std::vector<Term> workings;       ///< for the station with the heaviest load, in the units of the document
};

/// Every arrangement the plan's snow document asks for. The first one is the balanced one.
///   ASCE 7-22          balanced; minimum (flatter than 15 degrees); unbalanced heavy to port and to starboard (in the
///                      window)
///   EN 1991-1-3:2003   balanced (i); drifted heavy to starboard (ii), heavy to port (iii)
/// \param stations  from bow to stern
/// \param workings  fill Arrangement::workings
/// \throws InputError from the rules, if a factor or slope is outside their limits; plan.key.missing (no W_2) and
///   plan.choice (no risk category) if ASCE 7-22 lacks what it needs
[[nodiscard]] std::vector<Arrangement> snow_arrangements(const Plan& plan, std::span<const CoverStation> stations,
                                                         bool workings = true);

/// The slope from which the document begins to count on snow leaving the cover, or the plan's own.
///   ASCE 7-22          where C_s begins to fall for the plan's C_t and surface (7.4): 5 to 45 degrees
///   EN 1991-1-3:2003   30 degrees, where mu_1 begins to fall (5.3.3). The text itself counts on it only if the snow is
///                      free to slide; the source says so where the plan does not claim that.
/// \throws InputError as the rule of 7.4
[[nodiscard]] Cited<Angle> shedding_threshold(const Plan& plan);

}  // namespace coverframe
