// SPDX-License-Identifier: BSD-3-Clause
// The snow of several documents on one cover, side by side.
//
// Each document starts from a ground load of its own, for they do not mean the same: a 50-year value, a value at
// strength level, snow and rain apart. What can be compared is what comes out at the end: the load on the cover and,
// for the strength of members, that load times the document's factor on snow.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "coverframe/actions/arrangement.hpp"

namespace coverframe {

/// The greatest loads of one arrangement over the whole cover.
struct ComparedArrangement {
    std::string name;
    Clause clause;
    PlanLoad port{};
    PlanLoad starboard{};
};

/// One document's snow on the cover.
struct ComparedDocument {
    Plan plan;                 ///< the plan as it is judged by the document, with the source of every choice
    std::vector<ComparedArrangement> arrangements;
    PlanLoad balanced{};       ///< greatest balanced load
    PlanLoad greatest{};       ///< greatest load of any arrangement
    std::string greatest_in;   ///< the arrangement it belongs to
    PlanLoad factored{};       ///< `greatest` times the factor on snow for the strength of members
    Cited<Angle> shedding{};   ///< slope from which the document counts on snow leaving
    std::vector<std::string> notes;  ///< what was read into the document, each once
};

/// The plan judged by the document of another ground load. What the plan says for its own family of documents is kept;
/// what the other document needs and the plan does not say is the safe choice for a cover, and its source says so:
/// C_e (C_w) = 1.0; C_t = 1.2 by ASCE 7, 1.0 by the others; W_2 = 0.65, the upper end of the map's range (from memory);
/// importance category normal; the document's own factor on snow for strength, 1.5 in EN.
[[nodiscard]] Plan judged_by(const Plan& plan, const GroundSnow& ground);

/// Stations of the drawn cover from bow to stern where rail and ridge both run, at most `spacing` apart.
/// \throws InputError compare.stations if the two have no stretch in common
[[nodiscard]] std::vector<CoverStation> drawn_stations(const Plan& plan, Length spacing = Length::from_value(0.25));

/// The plan's own document first, then one for each of the other ground loads, in their order.
/// \throws InputError as `snow_arrangements`
[[nodiscard]] std::vector<ComparedDocument> compare_snow(const Plan& plan, std::span<const GroundSnow> others,
                                                         std::span<const CoverStation> stations);

/// Greatest load of each arrangement over a range of slopes, everything else being the plan's.
struct LoadBySlope {
    std::string name;               ///< of the arrangement
    std::vector<PlanLoad> load;     ///< one for each slope; nothing where the arrangement is not asked for
};

/// \param half_breadth  of the cover [m]
/// \throws InputError as `snow_arrangements`
[[nodiscard]] std::vector<LoadBySlope> load_by_slope(const Plan& plan, std::span<const Angle> slopes,
                                                     Length half_breadth);

}  // namespace coverframe
