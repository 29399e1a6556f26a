// SPDX-License-Identifier: BSD-3-Clause
// Entries that several editions of ASCE 7 have in common, each under the clause numbers of its own edition.
#pragma once

#include <string>
#include <tuple>
#include <vector>

#include "actions/catalogue/entry.hpp"
#include "coverframe/actions/asce7_drift.hpp"
#include "coverframe/actions/asce7_gable.hpp"

namespace coverframe::catalogue {

/// Namespace of an edition, and its clauses.
struct Asce7Edition {
    std::string space;
    Clause strength;
    Clause allowable_stress;
    Clause exposure;
    Clause thermal;
    Clause flat;
    Clause minimum;
    Clause slope;
    Clause partial;
    Clause gable;
    Clause curve;
    Clause valley;
    Clause drift;
    Clause gap;
    Clause projection;
    Clause sliding;
    Clause rain;
    Clause existing;
};

/// The rules of namespace asce7.
void add_asce7_shared(std::vector<Rule>& rules, const Asce7Edition& edition);

/// The rules of namespace asce7::fifty_year: 7-10 and 7-16.
void add_asce7_fifty_year(std::vector<Rule>& rules, const Asce7Edition& edition);

// Arguments that many rules take.
inline const Text ground_50_years{"ground_snow_kpa", "p_g", "ground snow load, 50 years, 0 to 100"};
inline const Text exposure_argument{"exposure_factor", "C_e", "exposure factor, 0.5 to 1.5"};
inline const Text thermal_argument{"thermal_factor", "C_t", "thermal factor, 0.8 to 1.4; 1.2 for an unheated cover"};
inline const Text importance_argument{"importance_factor", "I_s", "importance factor, 0.5 to 1.5"};
inline const Text flat_argument{"flat_load_kpa", "p_f", "flat roof snow load, 0 to 200"};
inline const Text sloped_argument{"sloped_load_kpa", "p_s", "sloped roof snow load of both slopes, 0 to 200"};
inline const Text slope_argument{"slope_deg", "slope", "of the roof, 0 to 90"};
inline const Text gable_slope_argument{"slope_deg", "slope", "of both slopes, 2.38 to 30.26 (7 on 12)"};
inline const Text ridge_argument{"eave_to_ridge_m", "W",
                                 "eave to ridge, level, up to 600 ft; half the breadth of a boat"};
inline const Text surface_argument{"surface", "surface",
                                   "slippery if smooth, nothing holds snow back and there is room below", "other"};
inline const Text fetch_argument{"fetch_m", "l_u", "length of the upwind surface, up to 600 ft"};
inline const Text upper_argument{"upper_length_m", "l_upper", "upper roof, square to the step, up to 600 ft"};
inline const Text higher_argument{"higher_length_m", "l_upper", "higher structure, square to the gap, up to 600 ft"};
inline const Text lower_argument{"lower_length_m", "l_lower", "lower roof, square to the step or gap, up to 600 ft"};
inline const Text balanced_argument{"balanced_load_kpa", "p_b", "balanced load of the lower roof, 0 to 200"};
inline const Text step_argument{"step_m", "h_r", "wall, parapet, projection or higher edge above the lower roof"};
inline const Text gap_argument{"gap_m", "s", "between both structures, level"};

// Results that several rules give.
inline const Text gamma_result{"unit_weight_kn_per_m3", "gamma", "min(0.13 p_g + 14, 30)"};
inline const Text balanced_depth_result{"balanced_depth_m", "h_b", "p_b/gamma"};
inline const Text clear_height_result{"clear_height_m", "h_c", "h_r - h_b"};

/// \param full_load_slope  formula of a
[[nodiscard]] inline Text slope_factor_result(const std::string& full_load_slope) {
    return {"slope_factor", "C_s", "1 up to a, (70 - slope)/(70 - a) to 70 deg, then 0; a: " + full_load_slope};
}
inline const std::vector<Text> curve_results{
    {"figure_case", "case", "1 eave under 30 deg, 2 to 70 deg, 3 above"},
    {"slope_factor_30", "C_s,30", "slope factor at the 30 degree point; at the eave in case 1"},
    {"slope_factor_eave", "C_s,eave", "slope factor at the eave"},
    {"crown_kpa", "p_crown", "0.5 p_f"},
    {"at_30_degrees_kpa", "p_30", "2 p_f C_s,30/C_e"},
    {"eave_kpa", "p_eave", "2 p_f C_s,eave/C_e; p_30 in cases 2 and 3 if c <= 3 ft"}};
inline const std::vector<Text> factor_results{{"permanent_factor", "f_D", "on self-weight D"},
                                              {"snow_factor", "f_S", "on snow S"},
                                              {"live_factor", "f_L", "on live load L"},
                                              {"wind_factor", "f_W", "on wind W"},
                                              {"earthquake_factor", "f_E", "on earthquake E"}};
/// \param drift_height  formula of h_d with l_u
[[nodiscard]] inline std::vector<Text> gable_results(const std::string& drift_height) {
    return {{"fetch_m", "l_u", "max(W, 20 ft)"},
            gamma_result,
            {"drift_height_m", "h_d", drift_height},
            {"run", "S", "1/tan(slope)"},
            {"windward_kpa", "p_windward", "0.3 p_s"},
            {"leeward_surcharge_kpa", "p_drift", "h_d gamma/sqrt(S), on top of p_s"},
            {"surcharge_width_m", "w_drift", "min(8 h_d sqrt(S)/3, W), from the ridge"}};
}

/// Results of an unbalanced gable: fetch, gamma, drift height, run, windward, surcharge, width.
using GableNumbers = std::tuple<Length, UnitWeight, Length, double, Pressure, Pressure, Length>;
[[nodiscard]] GableNumbers gable_numbers(Pressure ground, Angle slope, Length eave_to_ridge,
                                         const asce7::UnbalancedGable& load);

/// A lower roof from the arguments of an entry.
[[nodiscard]] asce7::LowerRoof asce7_roof(Pressure ground, Pressure balanced, Length step, Length lower);

/// Height, width, peak, load at the wall and end of a drift on a roof, for a drift height written as `height`.
[[nodiscard]] std::vector<Text> drift_results(const std::string& height);

/// Height, length, peak and end of a drift across a gap.
[[nodiscard]] std::vector<Text> gap_drift_results(const std::string& height, const std::string& length);

/// `first` and then `second`.
[[nodiscard]] std::vector<Text> joined(std::vector<Text> first, const std::vector<Text>& second);

}  // namespace coverframe::catalogue
