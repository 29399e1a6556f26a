// SPDX-License-Identifier: BSD-3-Clause
// From ground snow to loads on the cover: the arrangements a document asks for, station by station along the boat.
//
// The cover is a gable whose slope and width change along the boat, so every station gets its own slope factor. Where
// the document is silent about a boat cover, the safe reading is taken and said in `note`:
//   * ASCE 7-22, 7.6.1: if any station lies in the slope window of the unbalanced case, all stations get it; the narrow
//     rule for simple rafters is not used (film on straps is no simple rafter); a drift that ends before the rail is
//     carried on to the rail.
//   * EN 1991-1-3, 5.3.3: snow is free to slide only if the plan claims it.
// Port and starboard are both taken as the sheltered side in turn.
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
    Angle slope{};         ///< drawn film slope, ridge to rail
    Length half_breadth{}; ///< plan width of one side
};

/// One arrangement of snow, before any load factor.
struct Arrangement {
    std::string name;                 ///< "balanced", "unbalanced, heavy to port", ...
    Clause clause;
    std::string note;                 ///< what was read into the document for a boat cover; may be empty
    std::vector<PlanLoad> port;       ///< one a station
    std::vector<PlanLoad> starboard;  ///< one a station
    std::vector<Term> workings;       ///< for the station with the heaviest load
};

/// Every arrangement the plan's snow document asks for. The first one is the balanced one.
/// \throws InputError from the rules, if a factor or slope is outside their limits
[[nodiscard]] std::vector<Arrangement> snow_arrangements(const Plan& plan, std::span<const CoverStation> stations);

/// The slope from which the document begins to count on snow leaving the cover, or the plan's own.
[[nodiscard]] Cited<Angle> shedding_threshold(const Plan& plan);

}  // namespace coverframe
