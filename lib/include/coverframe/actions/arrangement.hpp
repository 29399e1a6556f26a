// SPDX-License-Identifier: BSD-3-Clause
// From ground snow to loads on the cover: every arrangement of snow the cover has to be looked at under.
//
// The cover is a gable whose slope and width change along the boat, so every station gets its own factors. An
// arrangement is a load field over the plan of the cover: at each station and side a line of load from ridge to rail.
//
//   balanced             every document: snow as it falls, less what the slope sheds
//   minimum              ASCE 7: a uniform load of its own, if the cover is flatter than 15 degrees somewhere
//   unbalanced, drifted  either side heavy: ASCE 7, 7.6.1; NBC, 4.1.6.9; EN 1991-1-3, 5.3.3
//   partial              ASCE 7, 7.5, and NBC, 4.1.6.3: full and half load on the spans of the ridge between uprights,
//                        which is continuous over them; patterns that are alike are kept once
//   rain on snow         ASCE 7, 7.10, if the cover is nearly level somewhere; in NBC rain is part of every load
//   drift                against each neighbour that is higher than the cover's rail
//   slid from a roof     from each such neighbour whose roof sheds towards the boat (in EN part of the drift)
//   slid to the rail     if the plan claims that snow slides but not that it falls clear: what the slope sheds lies on
//                        the lower half of the slope
//   cleared              one side swept bare, the other under full balanced load; common practice, no source
//
// Where a document is silent about a boat cover, the safe reading is taken unless the plan chooses otherwise with a
// source, and `note` says which one was taken:
//   * unbalanced window (SnowBasis::unbalanced_window): "carried on" looks at the unbalanced case at every station as
//     soon as one of them reaches the flat end of the window of ASCE 7 (2.38 degrees), however steep the others are;
//     the surcharge falls with sqrt(tan(slope)) below the window and with C_s above it. Below the window of NBC (15
//     degrees) C_a = 1, as at its end, against an empty side. "as written" looks at the stations within it alone.
//   * gable framing: the rule for simple rafters is used only if the plan claims them, and then beside the general one.
//   * a drift lies against the rail as if the neighbour stood there, with the largest step along it, whatever the gap;
//     only a gap beyond which the document asks for nothing takes it away.
//   * snow of NBC that slides from a roof is spread over a strip along the rail, half the greatest breadth wide, for
//     the taper is not known here.
//
// The film strips are solved with one load a side, so each side also has a uniform load: the greatest of its field,
// which is on the safe side.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "coverframe/base/finding.hpp"
#include "coverframe/plan/plan.hpp"

namespace coverframe {

/// Where the cover is looked at: place along the boat and the drawn slope, half breadth and rail there.
struct CoverStation {
    Length x{};
    Angle slope{};          ///< drawn film slope, ridge to rail, 0 to pi/2
    Length half_breadth{};  ///< plan width of one side; a station without breadth carries nothing
    Length rail_z{};        ///< height of the rail
};

/// Load at a point across one side of the cover.
struct LoadPoint {
    double share = 0;  ///< of the half breadth, from the ridge (0) to the rail (1)
    PlanLoad load{};
};

/// Load across one side, straight from point to point. From share 0 to share 1; two points at one share are a step.
using LoadProfile = std::vector<LoadPoint>;

/// The load at a share; at a step, the greater one.   \param share  0 to 1   \throws InputError arrangement.share.range
[[nodiscard]] PlanLoad load_at(const LoadProfile& profile, double share);

/// One arrangement of snow, before any load factor.
struct Arrangement {
    std::string name;                    ///< "balanced", "unbalanced, heavy to port", ...; unique within a plan
    Clause clause;
    std::string note;                    ///< what was read into the document for a boat cover; may be empty
    std::vector<PlanLoad> port;          ///< one a station: the greatest load of the side
    std::vector<PlanLoad> starboard;     ///< likewise
    std::vector<LoadProfile> port_field; ///< one a station: the load across the side
    std::vector<LoadProfile> starboard_field;
    std::vector<Term> workings;          ///< for the station with the heaviest load, in the units of the document
};

/// Every arrangement of the plan's snow document and site. The first one is the balanced one.
/// \param stations  from bow to stern
/// \param workings  fill Arrangement::workings
/// \throws InputError from the rules, if a factor or slope is outside their limits; plan.key.missing and plan.choice if
///   the plan lacks what its document needs
[[nodiscard]] std::vector<Arrangement> snow_arrangements(const Plan& plan, std::span<const CoverStation> stations,
                                                         bool workings = true);

/// The slope from which the document begins to count on snow leaving the cover, or the plan's own.
///   ASCE 7             where C_s begins to fall for the plan's C_t and surface (7.4): 5 to 45 degrees
///   NBC                15 degrees, slippery and unobstructed, or 30 degrees (4.1.6.2)
///   EN 1991-1-3:2003   30 degrees, where mu_1 begins to fall (5.3.3). The text itself counts on it only if the snow is
///                      free to slide; the source says so where the plan does not claim that.
/// \throws InputError as the rule of 7.4
[[nodiscard]] Cited<Angle> shedding_threshold(const Plan& plan);

}  // namespace coverframe
