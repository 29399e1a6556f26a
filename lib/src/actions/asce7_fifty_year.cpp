// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_fifty_year.hpp"

#include <algorithm>
#include <cmath>

namespace coverframe::asce7::fifty_year {

CombinationFactors strength_factors_2_3(StrengthCombination combination) {
    switch (combination) {
        case StrengthCombination::snow: return strength_2_3_1;
        case StrengthCombination::snow_and_live: return {.permanent = 1.2, .snow = 1.6, .live = 1.0};
        case StrengthCombination::snow_and_wind: return {.permanent = 1.2, .snow = 1.6, .wind = 0.5};
        case StrengthCombination::live: return {.permanent = 1.2, .snow = 0.5, .live = 1.6};
        case StrengthCombination::wind: return {.permanent = 1.2, .snow = 0.5, .live = 1.0, .wind = 1.0};
        case StrengthCombination::earthquake: return {.permanent = 1.2, .snow = 0.2, .live = 1.0, .earthquake = 1.0};
        case StrengthCombination::uplift: return {.permanent = 0.9, .wind = 1.0};
    }
    argument::refuse({"asce7.combination.range", "combination number", "-"}, static_cast<double>(combination), 0, 6);
}

CombinationFactors allowable_stress_factors_2_4(AllowableStressCombination combination) {
    switch (combination) {
        case AllowableStressCombination::snow: return allowable_stress_2_4_1;
        case AllowableStressCombination::snow_and_live: return {.permanent = 1.0, .snow = 0.75, .live = 0.75};
        case AllowableStressCombination::snow_live_and_wind:
            return {.permanent = 1.0, .snow = 0.75, .live = 0.75, .wind = 0.75 * 0.6};
    }
    argument::refuse({"asce7.combination.range", "combination number", "-"}, static_cast<double>(combination), 0, 2);
}

double importance_factor_1_5(RiskCategory category) {
    switch (category) {
        case RiskCategory::I: return 0.8;
        case RiskCategory::II: return 1.0;
        case RiskCategory::III: return 1.1;
        case RiskCategory::IV: return 1.2;
    }
    argument::refuse({"asce7.risk_category.range", "risk category number", "-"}, static_cast<double>(category), 0, 3);
}

double thermal_factor_7_3_2(ThermalCondition condition) {
    switch (condition) {
        case ThermalCondition::unheated_or_open_air: return 1.2;
        case ThermalCondition::below_freezing: return 1.3;
        case ThermalCondition::just_above_freezing:
        case ThermalCondition::ventilated: return 1.1;
        case ThermalCondition::heated: return 1.0;
        case ThermalCondition::greenhouse: return 0.85;
    }
    argument::refuse({"asce7.thermal_condition.range", "thermal condition number", "-"}, static_cast<double>(condition),
                     0, 5);
}

Pressure narrow_gable_7_6_1(Pressure ground_load, Angle slope, Length eave_to_ridge, Framing framing,
                            double importance) {
    check_importance(importance);
    check_narrow_gable(ground_load, slope, eave_to_ridge, framing);
    return importance * ground_load;
}

Length drift_height_of_figure_7_7(Pressure ground_load, Length fetch) {
    check_ground_load(ground_load);
    check_fetch(fetch);
    if (ground_load == Pressure{}) return Length{};
    const double l_u = in_ft(std::max(fetch, shortest_fetch_7_6_1));
    return from_ft(0.43 * std::cbrt(l_u) * std::pow(in_psf(ground_load) + 10.0, 0.25) - 1.5);
}

StepDrift step_drift_of_heights_7_7_1(const LowerRoof& roof, Length leeward, Length windward) {
    return {.leeward = leeward, .windward = windward, .drift = drift_on_roof_7_7_1(roof, std::max(leeward, windward))};
}

GapDrift windward_drift_over_gap_of_height_7_7_2(const LowerRoof& roof, Length separation, Length drift_height) {
    argument::within(in_ft(separation), argument::smallest, limit::length_high,
                     {"asce7.gap.range", "gap between both structures", "ft"});
    const Drift whole = drift_on_roof_7_7_1(roof, drift_height);
    GapDrift drift;
    drift.needed = whole.needed && separation < whole.width;
    if (!drift.needed) return drift;
    drift.height = (1.0 - separation / whole.width) * whole.height;
    drift.length = whole.width - separation;
    drift.peak = drift.height * unit_weight_7_7(roof.ground_load);
    drift.at_end = drift_load_at_7_7_1(drift.peak, drift.length, roof.length);
    return drift;
}

}  // namespace coverframe::asce7::fifty_year
