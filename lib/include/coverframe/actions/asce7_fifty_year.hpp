// SPDX-License-Identifier: BSD-3-Clause
// ASCE/SEI 7-10 and 7-16: the rules of chapter 7 that both share and 7-22 gave up, with the combinations of chapter 2.
//
// A ground load of these editions is one of fifty years, the same for every structure; the risk category enters by the
// importance factor I_s, and the factor on snow is 1.6 (strength) or 1.0 (allowable stress). A ground load of 7-22 is a
// different thing: never put one into these functions.
//
// Callers name an edition (asce7_10::flat_load_7_3); this header is what both bring in. Table 7-3 of 7-10 is Table
// 7.3-2 of 7-16, Fig. 7-9 of 7-10 is Fig. 7.6-1 of 7-16.
#pragma once

#include "coverframe/actions/asce7_combinations.hpp"
#include "coverframe/actions/asce7_curved.hpp"
#include "coverframe/actions/asce7_drift.hpp"
#include "coverframe/actions/asce7_gable.hpp"

namespace coverframe::asce7::fifty_year {

/// 1.2 D + 1.6 S: snow leads, wind and live load left out.   Source: ASCE 7-10, 7-16, 2.3; from memory, sure.
inline constexpr CombinationFactors strength_2_3_1{.permanent = 1.2, .snow = 1.6};

/// D + S.   Source: ASCE 7-10, 7-16, 2.4.1; from memory, sure.
inline constexpr CombinationFactors allowable_stress_2_4_1{.permanent = 1.0, .snow = 1.0};

/// Factors of a strength combination.
/// 1.2 D + 1.6 S + (L or 0.5 W); 1.2 D + 1.6 L + 0.5 S; 1.2 D + 1.0 W + L + 0.5 S; 1.2 D + 1.0 E + L + 0.2 S;
/// 0.9 D + 1.0 W
/// \return the factors [-]
/// Limits: ground loads of fifty years. Roof live load and rain do not come together with snow. L keeps its full
/// factor. In 7-16 the combination with earthquake stands in 2.3.6.
/// Source: ASCE 7-10, 2.3.2; 7-16, 2.3.1 and 2.3.6; from memory, sure.
/// \throws InputError asce7.combination.range
[[nodiscard]] CombinationFactors strength_factors_2_3(StrengthCombination combination);

/// Factors of an allowable-stress combination.
/// D + S; D + 0.75 L + 0.75 S; D + 0.75 L + 0.75 (0.6 W) + 0.75 S
/// \return the factors [-]
/// Limits: ground loads of fifty years.
/// Source: ASCE 7-10, 7-16, 2.4.1; from memory, sure.
/// \throws InputError asce7.combination.range
[[nodiscard]] CombinationFactors allowable_stress_factors_2_4(AllowableStressCombination combination);

/// Importance factor of snow.
/// I_s = 0.8, 1.0, 1.1, 1.2 for risk category I, II, III, IV
/// \return I_s [-]
/// Limits: none.
/// Source: ASCE 7-10, 7-16, Table 1.5-2; category II read on a page (O'Rourke, Guide to ASCE 7-10, Example 4-3), the
/// others from memory, sure.
/// \throws InputError asce7.risk_category.range
[[nodiscard]] double importance_factor_1_5(RiskCategory category);

/// Thermal factor.
/// C_t = 1.2 unheated or open air, 1.3 below freezing, 1.1 just above freezing or ventilated, 1.0 heated, 0.85
/// greenhouse
/// \return C_t [-]
/// Limits: none.
/// Source: ASCE 7-10, Table 7-3, read on a page (A. Siraj, engineeringexamples.net, on thermal factors per 7-10); 7-16,
/// Table 7.3-2, read on a page (O'Rourke, STRUCTURE magazine, Snow Thermal Factors for Structural Renovations).
/// \throws InputError asce7.thermal_condition.range
[[nodiscard]] double thermal_factor_7_3_2(ThermalCondition condition);

/// Importance factor within what the editions give.   \throws InputError asce7.importance.range
constexpr void check_importance(double importance) {
    argument::within(importance, 0.5, 1.5, {"asce7.importance.range", "importance factor I_s", "-"});
}

/// Flat roof snow load.
/// p_f = 0.7 C_e C_t I_s p_g
/// \param ground_load  p_g, 50 years [Pa], 0 to 100 kPa
/// \param exposure     C_e [-], 0.5 to 1.5 (`exposure_factor_7_3_1`: 0.7 to 1.2)
/// \param thermal      C_t [-], 0.8 to 1.4; 1.2 for an unheated cover
/// \param importance   I_s [-], 0.5 to 1.5
/// \return p_f, per horizontal area [Pa]
/// Limits: none by slope, for p_f is the base of every sloped load.
/// Source: ASCE 7-10, 7-16, 7.3, Eq. 7.3-1; read on a page (O'Rourke, Guide to ASCE 7-10, Example 4-3; NFBA magazine,
/// Sept. 2025, p. 26).
/// \throws InputError asce7.ground_load.range, asce7.exposure.range, asce7.thermal.range, asce7.importance.range
[[nodiscard]] constexpr Pressure flat_load_7_3(Pressure ground_load, double exposure, double thermal,
                                               double importance) {
    check_ground_load(ground_load);
    check_exposure(exposure);
    check_thermal(thermal);
    check_importance(importance);
    return 0.7 * exposure * thermal * importance * ground_load;
}

/// Minimum snow load of a low slope. A uniform load of its own: not added to drifted, unbalanced, partial or sliding
/// loads.
/// p_m = I_s min(p_g, 20 psf)
/// \param ground_load  p_g, 50 years [Pa], 0 to 100 kPa
/// \param importance   I_s [-], 0.5 to 1.5
/// \return p_m, per horizontal area [Pa]
/// Limits: where `minimum_applies_7_3_4` says so.
/// Source: ASCE 7-10, 7-16, 7.3.4; the branch of 20 psf read on a page (O'Rourke, Guide to ASCE 7-10, Example 4-3), the
/// other from memory, sure.
/// \throws InputError asce7.ground_load.range, asce7.importance.range
[[nodiscard]] constexpr Pressure minimum_load_7_3_4(Pressure ground_load, double importance) {
    check_ground_load(ground_load);
    check_importance(importance);
    const Pressure top = from_psf(20.0);
    return importance * (ground_load < top ? ground_load : top);
}

/// Whether the minimum load has to be looked at: `low_slope_7_3`.   \throws InputError asce7.slope.range
[[nodiscard]] constexpr bool minimum_applies_7_3_4(Angle slope, RoofShape shape = RoofShape::hip_or_gable) {
    return low_slope_7_3(slope, shape);
}

/// Chart of the slope factor.
/// warm for C_t <= 1.0, cold for 1.0 < C_t <= 1.1, very cold above
/// \param thermal  C_t [-], 0.8 to 1.4
/// Limits: the tables give nothing between 1.0, 1.1 and 1.2; a value in between takes the chart with more snow.
/// Source: ASCE 7-10, 7-16, 7.4.1 and 7.4.2; from memory, sure.
/// \throws InputError asce7.thermal.range
[[nodiscard]] constexpr SlopeChart slope_chart_7_4(double thermal) {
    check_thermal(thermal);
    if (thermal <= 1.0) return SlopeChart::warm;
    return thermal <= 1.1 ? SlopeChart::cold : SlopeChart::very_cold;
}

/// Slope at which the slope factor begins to fall: `full_load_slope_on_chart_7_4` for C_t.
/// \throws InputError asce7.thermal.range
[[nodiscard]] constexpr Angle full_load_slope_7_4(double thermal, Surface surface) {
    return full_load_slope_on_chart_7_4(slope_chart_7_4(thermal), surface);
}

/// Slope factor: `slope_factor_on_chart_7_4` for C_t.   \throws InputError asce7.slope.range, asce7.thermal.range
[[nodiscard]] constexpr double slope_factor_7_4(Angle slope, double thermal, Surface surface) {
    return slope_factor_on_chart_7_4(slope, slope_chart_7_4(thermal), surface);
}

/// Unbalanced load of a narrow gable of simple rafters.
/// leeward I_s p_g, uniform; windward 0
/// \param ground_load    p_g, 50 years [Pa], 0 to 100 kPa
/// \param slope          of both slopes [rad], as `unbalanced_applies_7_6_1`
/// \param eave_to_ridge  W, horizontal [m], over 0 to 20 ft
/// \param framing        has to be `simple_rafters`; film on straps is not, see `unbalanced_gable_7_6_1`
/// \param importance     I_s [-], 0.5 to 1.5
/// \return load on the lee slope [Pa]; the windward slope is empty
/// Limits: as the parameters say. In place of the balanced load, not on top of it.
/// Source: ASCE 7-10, 7-16, 7.6.1; from memory, sure.
/// \throws InputError asce7.ground_load.range, asce7.slope.range, asce7.eave_to_ridge.range, asce7.framing.range,
///   asce7.importance.range
[[nodiscard]] Pressure narrow_gable_7_6_1(Pressure ground_load, Angle slope, Length eave_to_ridge, Framing framing,
                                          double importance);

/// Rain that falls on the snow. Added to the balanced load alone, not to the minimum, drifted, unbalanced, partial or
/// sliding loads.
/// 5 psf if 0 < p_g <= 20 psf and slope (deg) < W/50 (ft), else 0
/// \param ground_load    p_g, 50 years [Pa], 0 to 100 kPa
/// \param slope          of the roof [rad], 0 to pi/2
/// \param eave_to_ridge  W, horizontal [m], over 0 to 600 ft
/// \return the surcharge [Pa]
/// Limits: at the width of a boat W/50 is a fraction of a degree, so it concerns sagging film, where ponding rules.
/// Source: ASCE 7-10, 7-16, 7.10; the limit of p_g read on a page (O'Rourke, Guide to ASCE 7-10, Example 4-3), the rest
/// from memory, sure.
/// \throws InputError asce7.ground_load.range, asce7.slope.range, asce7.eave_to_ridge.range
[[nodiscard]] constexpr Pressure rain_on_snow_7_10(Pressure ground_load, Angle slope, Length eave_to_ridge) {
    check_ground_load(ground_load);
    check_eave_to_ridge(eave_to_ridge);
    const bool flat = argument::slope_in_deg(slope, "asce7.slope.range") < in_ft(eave_to_ridge) / 50.0;
    const bool little = in_psf(ground_load) > 0.0 && in_psf(ground_load) <= 20.0 * limit::rounding;
    return flat && little ? from_psf(5.0) : Pressure{};
}

/// Drift height of the figure, before what an edition does to it.
/// h_d = 0.43 l_u^(1/3) (p_g + 10)^(1/4) - 1.5 (ft, psf), l_u at least 20 ft; 0 without ground snow
/// \param ground_load  p_g, 50 years [Pa], 0 to 100 kPa
/// \param fetch        l_u, length of the upwind surface [m], over 0 to 600 ft
/// \return h_d [m]
/// Limits: the equation does not fall to nothing with the load (0.58 ft for a trace of snow and the shortest fetch);
/// where there is no ground snow at all, there is no drift.
/// The metric form that circulates with 0.12 and 100 p_g + 50 is about 15 % low and not used.
/// Source: ASCE 7-10, Fig. 7-9; 7-16, Fig. 7.6-1; read on a page (O'Rourke, Guide to ASCE 7-10, Example 6-2); the least
/// fetch from memory.
/// \throws InputError asce7.ground_load.range, asce7.fetch.range
[[nodiscard]] Length drift_height_of_figure_7_7(Pressure ground_load, Length fetch);

/// Drift on a lower roof, the larger of leeward and windward.
struct StepDrift {
    Length leeward{};   ///< drift height of snow from the upper roof [m]
    Length windward{};  ///< drift height of snow from the lower roof, 0.75 h_d [m]
    Drift drift{};      ///< of the larger one
};

/// The larger of two drift heights on a lower roof.   \throws InputError as `drift_on_roof_7_7_1`
[[nodiscard]] StepDrift step_drift_of_heights_7_7_1(const LowerRoof& roof, Length leeward, Length windward);

/// Drift that snow of the lower structure makes against a higher one beyond a gap, with the part over the gap left out.
/// the drift of `drift_on_roof_7_7_1` against the higher structure; height (1 - s/w) and length w - s from the near
/// edge
/// \param roof           `step` from its surface up to the edge of the higher structure, `length` from its near edge on
/// \param separation     s, level, between both [m], over 0 to 3000 ft
/// \param drift_height   0.75 h_d of the edition, the length of the lower structure as fetch [m], not negative
/// \return the drift from the near edge of the lower structure on
/// Limits: no limit of the gap but the drift's own width, which is the safe reading.
/// Source: ASCE 7-10, 7-16, 7.7.2; from memory.
/// \throws InputError as `drift_on_roof_7_7_1`, and asce7.gap.range
[[nodiscard]] GapDrift windward_drift_over_gap_of_height_7_7_2(const LowerRoof& roof, Length separation,
                                                               Length drift_height);

}  // namespace coverframe::asce7::fifty_year
