// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_22.hpp"

#include <algorithm>
#include <cmath>

#include "coverframe/base/error.hpp"

namespace coverframe::asce7_22 {

CombinationFactors strength_factors_2_3(StrengthCombination combination) {
    switch (combination) {
        case StrengthCombination::snow: return strength_2_3_1;
        case StrengthCombination::snow_and_live: return {.permanent = 1.2, .snow = 1.0, .live = 1.0};
        case StrengthCombination::snow_and_wind: return {.permanent = 1.2, .snow = 1.0, .wind = 0.5};
        case StrengthCombination::live: return {.permanent = 1.2, .snow = 0.3, .live = 1.6};
        case StrengthCombination::wind: return {.permanent = 1.2, .snow = 0.3, .live = 1.0, .wind = 1.0};
        case StrengthCombination::earthquake: return {.permanent = 1.2, .snow = 0.15, .live = 1.0, .earthquake = 1.0};
        case StrengthCombination::uplift: return {.permanent = 0.9, .wind = 1.0};
    }
    argument::refuse({"asce7.combination.range", "combination number", "-"}, static_cast<double>(combination), 0, 6);
}

CombinationFactors allowable_stress_factors_2_4(AllowableStressCombination combination) {
    switch (combination) {
        case AllowableStressCombination::snow: return allowable_stress_2_4_1;
        case AllowableStressCombination::snow_and_live: return {.permanent = 1.0, .snow = 0.75 * 0.7, .live = 0.75};
        case AllowableStressCombination::snow_live_and_wind:
            return {.permanent = 1.0, .snow = 0.75 * 0.7, .live = 0.75, .wind = 0.75 * 0.6};
    }
    argument::refuse({"asce7.combination.range", "combination number", "-"}, static_cast<double>(combination), 0, 2);
}

double thermal_factor_7_3_2(ThermalCondition condition) {
    constexpr const char* code = "asce7_22.thermal_condition.range";
    switch (condition) {
        case ThermalCondition::unheated_or_open_air:
        case ThermalCondition::ventilated: return 1.2;
        case ThermalCondition::below_freezing: return 1.3;
        case ThermalCondition::greenhouse: return 0.85;
        case ThermalCondition::heated:
        case ThermalCondition::just_above_freezing:
            throw InputError(code, "", choices_of(condition).at(static_cast<std::size_t>(condition)),
                             "ASCE 7-22 gives C_t of a heated roof in Table 7.3-3, by its R-value and the ground load, "
                             "and that table is not known here; look C_t up in a licensed copy and give the number");
    }
    argument::refuse({code, "thermal condition number", "-"}, static_cast<double>(condition), 0, 5);
}

Length drift_height_7_6(Pressure ground_load, Length fetch, double winter_wind) {
    const Length cap = asce7::drift_height_cap_7_7_1(ground_load, fetch, 1.0);
    argument::within(winter_wind, 0.0, 1.0, {"asce7_22.winter_wind.range", "winter wind parameter W_2", "-"});
    const double l_u = in_ft(std::max(fetch, shortest_fetch_7_6_1));
    const double gamma = in_pcf(unit_weight_7_7(ground_load));
    const double drifted = std::pow(in_psf(ground_load), 0.74) * std::pow(l_u, 0.70) * std::pow(winter_wind, 1.7);
    return std::min(from_ft(1.5 * std::sqrt(drifted / gamma)), cap);
}

UnbalancedGable unbalanced_gable_7_6_1(const Gable& gable) {
    const Length fetch = gable_fetch_7_6_1(gable.eave_to_ridge);
    const Length drift_height = drift_height_7_6(gable.ground_load, fetch, gable.winter_wind);
    return asce7::unbalanced_gable_of_drift_7_6_1({.sloped_load = gable.sloped_load,
                                                   .ground_load = gable.ground_load,
                                                   .slope = gable.slope,
                                                   .eave_to_ridge = gable.eave_to_ridge},
                                                  drift_height);
}

Pressure narrow_gable_7_6_1(Pressure ground_load, Angle slope, Length eave_to_ridge, Framing framing) {
    asce7::check_narrow_gable(ground_load, slope, eave_to_ridge, framing);
    return ground_load;
}

Drift leeward_drift_7_7_1(const LowerRoof& roof, Length upper_length, double winter_wind) {
    return asce7::drift_on_roof_7_7_1(roof, drift_height_7_6(roof.ground_load, upper_length, winter_wind));
}

Length windward_drift_height_7_7_1(Pressure ground_load, Length fetch, double winter_wind) {
    return asce7::windward_share_7_7_1 * drift_height_7_6(ground_load, fetch, winter_wind);
}

GapDrift leeward_drift_over_gap_7_7_2(const Gap& gap, Pressure ground_load, Length higher_length, double winter_wind) {
    return asce7::leeward_drift_over_gap_of_height_7_7_2(gap, ground_load,
                                                         drift_height_7_6(ground_load, higher_length, winter_wind));
}

}  // namespace coverframe::asce7_22
