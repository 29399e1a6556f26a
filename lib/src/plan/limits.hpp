// SPDX-License-Identifier: BSD-3-Clause
// Between which sizes a value of a plan is believed. Outside them it is refused as a slip of the pen or of the unit,
// not judged as engineering. This file is the table: low, high, the unit they are spoken in, and why.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "coverframe/units/crossing.hpp"
#include "coverframe/units/text.hpp"

namespace coverframe::plan_detail {

/// Both ends belong to it. A factor or share is a double with an empty unit, a number of whole things an int.
template <class Value>
struct Limit {
    Value low{};
    Value high{};
    std::string_view unit;
    std::string_view reason;
};

/// How many items a list may have.
struct Count {
    std::size_t least = 0;
    std::size_t most = 0;
};

/// What a text may be: one line of it, not blank (a name, a source), or free text of several lines (a note).
struct TextRule {
    std::size_t longest = 0;  ///< code points
    bool free_text = false;   ///< may be blank, and may have line ends and tabs
    std::string_view name;    ///< of the rule, in the schema
};

/// The rule of a value that is true or false.
struct Flag {};

namespace limit {

using namespace coverframe::literals;

// Boat and places
inline constexpr Limit<Length> along{-5.0_m, 65.0_m, "m", "a boat of at most 60 m, with something to overhang"};
inline constexpr Limit<Length> athwart{-10.0_m, 10.0_m, "m", "half the breadth of a boat of 60 m, at most 10 m"};
inline constexpr Limit<Length> half_breadth{0.0_m, 10.0_m, "m", "0 at a pointed stem; a boat of 60 m has at most 10 m"};
inline constexpr Limit<Length> height{-10.0_m, 20.0_m, "m", "the datum may be the ground under a keel or the sole"};
inline constexpr Limit<Length> boat_length{1.0_m, 60.0_m, "m", "shorter is a toy, longer is a ship"};
inline constexpr Limit<Pressure> bearing{1.0_kPa, 50000.0_kPa, "kPa", "less is no deck, more is steel"};
inline constexpr Limit<Length> clearance{0.0_m, 2.0_m, "m", "more is another cover"};

// Site and basis
inline constexpr Limit<Pressure> ground_snow{0.0_kPa, 50.0_kPa, "kPa", "50 kPa is more than 10 m of old snow"};
inline constexpr Limit<Pressure> rain{0.0_kPa, 2.0_kPa, "kPa", "2 kPa is 0.2 m of water held in the snow"};
inline constexpr Limit<int> return_period_asce7{
    50, 50, "years", "the ground loads of ASCE 7-10 and ASCE 7-16 are of 50 years, and the factor 1.6 goes with those"};
inline constexpr Limit<int> return_period_nbc{
    50, 50, "years", "S_s and S_r of the NBC are of 50 years, and the factor 1.5 goes with those"};
inline constexpr Limit<int> return_period_en{
    5, 1000, "years", "annex D of EN 1991-1-3 does not go below 5 years, and no record reaches beyond 1000"};
inline constexpr Limit<double> exposure_factor{0.5, 1.5, "", "C_e of every document lies between"};
inline constexpr Limit<double> thermal_factor{0.8, 1.4, "", "C_t of every document lies between"};
inline constexpr Limit<double> exposure_factor_nbc{0.5, 1.0, "",
                                                   "C_w of the NBC is 1, or less where wind sweeps snow off"};
inline constexpr Limit<double> thermal_factor_nbc{1.0, 1.0, "",
                                                  "the NBC has no thermal factor, heated or not; write 1"};
inline constexpr Limit<double> winter_wind{0.0, 1.0, "", "W_2 is the share of winter time with wind over 10 mph"};
inline constexpr Limit<double> action_factor{0.9, 2.0, "", "factors on actions of every document lie between"};
inline constexpr Limit<double> time_effect_factor{0.6, 1.25, "", "lambda of NDS 2018, table N3"};
inline constexpr Limit<double> modification_factor{0.2, 1.1, "", "k_mod of EN 1995-1-1, table 3.1"};
inline constexpr Limit<double> material_factor{1.0, 2.0, "", "gamma_M of EN 1995-1-1, table 2.3, and national choices"};
inline constexpr Limit<Angle> shedding_slope{5.0_deg, 80.0_deg, "deg", "flatter holds any snow, steeper is a wall"};

// Neighbours
inline constexpr Limit<Length> neighbour_gap{0.0_m, 50.0_m, "m",
                                             "0 touches the rail; from farther nothing reaches a cover"};
inline constexpr Limit<Length> neighbour_height{-30.0_m, 100.0_m, "m",
                                                "from a boat on a lower level to a tall building"};
inline constexpr Limit<Length> neighbour_length{0.001_m, 200.0_m, "m", "over 0, and no longer than a very large shed"};
inline constexpr Limit<Length> neighbour_along{-300.0_m, 300.0_m, "m",
                                               "a shed may begin before the boat and end behind it"};
inline constexpr Limit<Angle> neighbour_slope{0.0_deg, 80.0_deg, "deg", "steeper is a wall"};

// Straps
inline constexpr Limit<Force> strap_stiffness{1.0_kN, 20000.0_kN, "kN", "EA from a rubber cord to a steel rope"};
inline constexpr Limit<Force> break_strength{0.1_kN, 200.0_kN, "kN", "from a string to a lifting sling"};
inline constexpr Limit<double> share{0.05, 1.0, "", "a share of the whole; under 0.05 nothing is left"};
inline constexpr Limit<Force> pretension{0.0_kN, 20.0_kN, "kN", "0 is only laid on; a hand tensioner gives about 2 kN"};

// Timber and pads
inline constexpr Limit<Length> section{10.0_mm, 400.0_mm, "mm", "sawn timber that people can carry"};
inline constexpr Limit<Length> pad_side{20.0_mm, 1000.0_mm, "mm", "a board under a foot"};
inline constexpr Limit<Length> pad_thickness{1.0_mm, 150.0_mm, "mm", "a board under a foot"};

// Feet
inline constexpr Limit<LineLoad> foot_stiffness{1.0_kN_per_m, 1e6_kN_per_m, "kN/m",
                                                "from soft foam under a plate to a foot on bare timber"};
inline constexpr Limit<Length> foot_gap{0.0_mm, 100.0_mm, "mm", "over a larger gap the upright stands on nothing"};
inline constexpr Limit<double> foot_friction{0.05, 1.0, "", "from ice to rubber on dry timber"};

// Band
inline constexpr Limit<Length> below_rail{0.0_m, 2.0_m, "m", "the band runs on the topsides"};
inline constexpr Limit<Length> hanger_spacing{0.1_m, 5.0_m, "m", "closer is a net, wider holds nothing up"};
inline constexpr Limit<LineLoad> rub_rail_hold{0.0_kN_per_m, 20.0_kN_per_m, "kN/m", "more than any rub rail takes"};
inline constexpr Limit<Length> band_inset{-1.0_m, 1.0_m, "m", "topsides lean in or out by less than this"};
inline constexpr Limit<double> rail_friction{0.0, 1.0, "", "film on a smooth rail holds little; 1 is rubber on rubber"};

// Film
inline constexpr Limit<Length> film_thickness{0.02_mm, 1.0_mm, "mm", "household wrap to pond liner"};
inline constexpr Limit<LineLoad> film_tension{0.005_kN_per_m, 5.0_kN_per_m, "kN/m",
                                              "a shrunk film keeps some tension; 5 kN/m tears it"};
inline constexpr Limit<Pressure> film_modulus{10.0_MPa, 10000.0_MPa, "MPa", "soft vinyl to stiff polyester film"};
inline constexpr Limit<double> poisson{0.0, 0.5, "", "no plastic film lies outside"};
inline constexpr Limit<Pressure> film_strength{0.1_MPa, 300.0_MPa, "MPa", "aged film to strong polyester film"};
inline constexpr Limit<UnitWeight> film_weight{5.0_kN_per_m3, 25.0_kN_per_m3, "kN/m3", "plastics lie between"};

inline constexpr Limit<Length> sheet_width{0.5_m, 60.0_m, "m", "narrower covers no boat, wider is no cover"};
inline constexpr Limit<Length> sheet_length{1.0_m, 100.0_m, "m", "a boat of 1 m to 60 m, with what hangs down"};
inline constexpr Limit<Length> tuck{0.0_m, 1.0_m, "m", "what goes under a strap and is held by it"};

// Lists
inline constexpr Count rail{2, 200};
inline constexpr Count parts{0, 200};
inline constexpr Count at_least_one{1, 200};
inline constexpr Count line{2, 200};
inline constexpr Count frame_members{1, 1000};

// Texts
inline constexpr TextRule name{80, false, "name"};
inline constexpr TextRule title{200, false, "title"};
inline constexpr TextRule source{1000, false, "source"};
inline constexpr TextRule note{10000, true, "note"};

}  // namespace limit

/// "0.02 mm to 1 mm".
template <Readable Quantity>
[[nodiscard]] std::string text_of(const Limit<Quantity>& limit) {
    return write(limit.low, limit.unit) + " to " + write(limit.high, limit.unit);
}

}  // namespace coverframe::plan_detail
