// SPDX-License-Identifier: BSD-3-Clause
// ASCE/SEI 7-22, chapter 7: snow loads; and the combinations of chapter 2 that go with them.
//
// A ground load of this edition is a strength-level load for the risk category of the structure. There is no importance
// factor, and the factor on snow is 1.0 (strength) or 0.7 (allowable stress). A ground load of an earlier edition is a
// different thing: never put one into these functions.
//
// The rules that did not change are those of asce7.hpp and its family, brought in below; what is this edition's own
// follows.
//
// Not here, for it is not known here and not guessed:
//   * Table 7.3-3, the thermal factor of heated roofs by R-value and ground load (one entry was seen: R 30 and 30 psf
//     give 1.17). A cover is unheated and does not need it.
//   * The width of windward drifts. This edition is said to give them a width of their own (read on a page: notes on a
//     lecture on 7-22, findyourengineer.com), so that only their height is given, and the same goes for drifts at
//     parapets and projections and for windward drifts across a gap.
//
// How each rule was read stands beside it. Whoever claims conformity compares them with a licensed copy first.
#pragma once

#include "coverframe/actions/asce7_combinations.hpp"
#include "coverframe/actions/asce7_curved.hpp"
#include "coverframe/actions/asce7_drift.hpp"
#include "coverframe/actions/asce7_gable.hpp"
#include "coverframe/actions/asce7_partial.hpp"
#include "coverframe/actions/asce7_sliding.hpp"

namespace coverframe::asce7_22 {

inline const Clause clause_2_3_1{"ASCE 7-22", "2.3.1"};
inline const Clause clause_2_4_1{"ASCE 7-22", "2.4.1"};
inline const Clause clause_7_3{"ASCE 7-22", "7.3"};
inline const Clause clause_7_3_1{"ASCE 7-22", "7.3.1, Table 7.3-1"};
inline const Clause clause_7_3_2{"ASCE 7-22", "7.3.2, Table 7.3-2"};
inline const Clause clause_7_3_3{"ASCE 7-22", "7.3.3"};
inline const Clause clause_7_4{"ASCE 7-22", "7.4"};
inline const Clause clause_7_5{"ASCE 7-22", "7.5, Fig. 7.5-1"};
inline const Clause clause_7_6{"ASCE 7-22", "7.6"};
inline const Clause clause_7_6_1{"ASCE 7-22", "7.6.1"};
inline const Clause clause_7_6_2{"ASCE 7-22", "7.6.2, Fig. 7.4-2"};
inline const Clause clause_7_6_3{"ASCE 7-22", "7.6.3"};
inline const Clause clause_7_7{"ASCE 7-22", "7.7"};
inline const Clause clause_7_7_1{"ASCE 7-22", "7.7.1"};
inline const Clause clause_7_7_2{"ASCE 7-22", "7.7.2"};
inline const Clause clause_7_8{"ASCE 7-22", "7.8"};
inline const Clause clause_7_9{"ASCE 7-22", "7.9"};
inline const Clause clause_7_10{"ASCE 7-22", "7.10"};
inline const Clause clause_7_12{"ASCE 7-22", "7.12"};

using asce7::AllowableStressCombination;
using asce7::CircularArc;
using asce7::CombinationFactors;
using asce7::CurvedRoof;
using asce7::Drift;
using asce7::Framing;
using asce7::Gap;
using asce7::GapDrift;
using asce7::LowerRoof;
using asce7::MemberRun;
using asce7::RiskCategory;
using asce7::RoofExposure;
using asce7::RoofShape;
using asce7::SlidingSnow;
using asce7::SlopeChart;
using asce7::StrengthCombination;
using asce7::Surface;
using asce7::Terrain;
using asce7::ThermalCondition;
using asce7::UnbalancedCurve;
using asce7::UnbalancedGable;
using asce7::UnbalancedValley;

using asce7::balanced_depth_7_7;
using asce7::circular_arc_7_6_2;
using asce7::drift_load_at_7_7_1;
using asce7::existing_roof_affected_7_12;
using asce7::exposure_factor_7_3_1;
using asce7::gable_fetch_7_6_1;
using asce7::obstruction_shelters_7_3_1;
using asce7::partial_factor_7_5;
using asce7::partial_loading_applies_7_5;
using asce7::partial_patterns_7_5;
using asce7::projection_needs_drift_7_8;
using asce7::shortest_fetch_7_6_1;
using asce7::sliding_applies_7_9;
using asce7::sliding_load_7_9;
using asce7::sliding_load_over_gap_7_9;
using asce7::sloped_load_7_4;
using asce7::unbalanced_applies_7_6_1;
using asce7::unbalanced_applies_7_6_2;
using asce7::unbalanced_curve_7_6_2;
using asce7::unbalanced_from_7_6_1;
using asce7::unbalanced_to_7_6_1;
using asce7::unbalanced_valley_7_6_3;
using asce7::unit_weight_7_7;
using asce7::warm_slippery_applies_7_4_1;

/// 1.2 D + 1.0 S: snow leads, wind and live load left out.  Source: ASCE 7-22, 2.3.1; read on a page (Maguire et al.,
/// STRUCTURE magazine, Feb. 2022, Eq. 1).
inline constexpr CombinationFactors strength_2_3_1{.permanent = 1.2, .snow = 1.0};

/// D + 0.7 S.  Source: ASCE 7-22, 2.4.1, combination 3a; read on a page (STRUCTURE magazine, "ASCE 7-22 Flat Roof Snow
/// Load Versus Minimum Snow Load").
inline constexpr CombinationFactors allowable_stress_2_4_1{.permanent = 1.0, .snow = 0.7};

/// Factors of a strength combination.
/// 1.2 D + 1.0 S + (L or 0.5 W); 1.2 D + 1.6 L + 0.3 S; 1.2 D + 1.0 W + L + 0.3 S; 1.2 D + 1.0 E + L + 0.15 S;
/// 0.9 D + 1.0 W
/// \return the factors [-]
/// Limits: ground loads of this edition. Roof live load and rain do not come together with snow. L keeps its full
/// factor.
/// Source: ASCE 7-22, 2.3.1 and 2.3.6; the 1.0 on snow read on a page (Maguire et al., STRUCTURE magazine, Feb. 2022,
/// Eq. 1), the 0.3 and 0.15 from memory, the rest from memory, sure.
/// \throws InputError asce7.combination.range
[[nodiscard]] CombinationFactors strength_factors_2_3(StrengthCombination combination);

/// Factors of an allowable-stress combination.
/// D + 0.7 S; D + 0.75 L + 0.75 (0.7 S); D + 0.75 L + 0.75 (0.6 W) + 0.75 (0.7 S)
/// \return the factors [-]
/// Limits: ground loads of this edition. Whether the minimum load is taken with 0.7 is an open question of the sources:
/// take it whole.
/// Source: ASCE 7-22, 2.4.1, combinations 3a, 4a, 6a; read on a page (STRUCTURE magazine, "ASCE 7-22 Flat Roof Snow
/// Load Versus Minimum Snow Load").
/// \throws InputError asce7.combination.range
[[nodiscard]] CombinationFactors allowable_stress_factors_2_4(AllowableStressCombination combination);

/// Thermal factor.
/// C_t = 1.2 unheated, open air, or ventilated; 1.3 below freezing; 0.85 greenhouse
/// \return C_t [-]
/// Limits: heated roofs and those kept just above freezing are refused: Table 7.3-3 is not known here. Look it up and
/// go on with the number.
/// Source: ASCE 7-22, Table 7.3-2; ventilated read on a page (NFBA magazine, Sept. 2025, p. 26), the others from
/// memory.
/// \throws InputError asce7_22.thermal_condition.range
[[nodiscard]] double thermal_factor_7_3_2(ThermalCondition condition);

/// Flat roof snow load.
/// p_f = 0.7 C_e C_t p_g
/// \param ground_load  p_g, strength level for the risk category [Pa], 0 to 100 kPa
/// \param exposure     C_e [-], 0.5 to 1.5 (`exposure_factor_7_3_1`: 0.7 to 1.2)
/// \param thermal      C_t [-], 0.8 to 1.4; 1.2 for an unheated cover
/// \return p_f, per horizontal area [Pa]
/// Limits: none by slope, for p_f is the base of every sloped load. No importance factor in this edition.
/// Source: ASCE 7-22, 7.3, Eq. 7.3-1; read on a page (NFBA magazine, Sept. 2025, p. 26).
/// \throws InputError asce7.ground_load.range, asce7.exposure.range, asce7.thermal.range
[[nodiscard]] constexpr Pressure flat_load_7_3(Pressure ground_load, double exposure, double thermal) {
    asce7::check_ground_load(ground_load);
    asce7::check_exposure(exposure);
    asce7::check_thermal(thermal);
    return 0.7 * exposure * thermal * ground_load;
}

/// Upper limit of the minimum snow load.
/// p_m,max = 25, 30, 35, 40 psf for risk category I, II, III, IV
/// \return p_m,max [Pa]
/// Limits: none.
/// Source: ASCE 7-22, Table 7.3-4; that the table exists by risk category read on a page (NFBA magazine, Sept. 2025,
/// p. 25), the four numbers from memory.
/// \throws InputError asce7.risk_category.range
[[nodiscard]] constexpr Pressure minimum_load_limit_7_3_3(RiskCategory category) {
    switch (category) {
        case RiskCategory::I: return from_psf(25.0);
        case RiskCategory::II: return from_psf(30.0);
        case RiskCategory::III: return from_psf(35.0);
        case RiskCategory::IV: return from_psf(40.0);
    }
    argument::refuse({"asce7.risk_category.range", "risk category number", "-"}, static_cast<double>(category), 0, 3);
}

/// Minimum snow load of a low slope. A uniform load of its own: not added to unbalanced, drifted, partial or sliding
/// loads.
/// p_m = min(p_g, p_m,max)
/// \param ground_load  p_g [Pa], 0 to 100 kPa
/// \return p_m, per horizontal area [Pa]
/// Limits: where `minimum_applies_7_3_3` says so. How the 0.7 of allowable stress design meets p_m is an open
/// question of the sources: apply 1.0.
/// Source: ASCE 7-22, 7.3.3; that p_m stands apart from the other loads read on a page (STRUCTURE magazine, "ASCE 7-22
/// Flat Roof Snow Load Versus Minimum Snow Load"), the form from memory.
/// \throws InputError asce7.ground_load.range, asce7.risk_category.range
[[nodiscard]] constexpr Pressure minimum_load_7_3_3(Pressure ground_load, RiskCategory category) {
    asce7::check_ground_load(ground_load);
    const Pressure top = minimum_load_limit_7_3_3(category);
    return ground_load < top ? ground_load : top;
}

/// Whether the minimum load has to be looked at: `low_slope_7_3`.   \throws InputError asce7.slope.range
[[nodiscard]] constexpr bool minimum_applies_7_3_3(Angle slope, RoofShape shape = RoofShape::hip_or_gable) {
    return asce7::low_slope_7_3(slope, shape);
}

/// Chart of the slope factor.
/// warm for C_t < 1.1, cold for 1.1 <= C_t < 1.2, very cold from 1.2
/// \param thermal  C_t [-], 0.8 to 1.4
/// Limits: none.
/// Source: ASCE 7-22, 7.4, Fig. 7.4-1; from memory.
/// \throws InputError asce7.thermal.range
[[nodiscard]] constexpr SlopeChart slope_chart_7_4(double thermal) {
    asce7::check_thermal(thermal);
    if (thermal < 1.1) return SlopeChart::warm;
    return thermal < 1.2 ? SlopeChart::cold : SlopeChart::very_cold;
}

/// Slope at which the slope factor begins to fall: `full_load_slope_on_chart_7_4` for C_t.
/// \throws InputError asce7.thermal.range
[[nodiscard]] constexpr Angle full_load_slope_7_4(double thermal, Surface surface) {
    return asce7::full_load_slope_on_chart_7_4(slope_chart_7_4(thermal), surface);
}

/// Slope factor: `slope_factor_on_chart_7_4` for C_t.   \throws InputError asce7.slope.range, asce7.thermal.range
[[nodiscard]] constexpr double slope_factor_7_4(Angle slope, double thermal, Surface surface) {
    return asce7::slope_factor_on_chart_7_4(slope, slope_chart_7_4(thermal), surface);
}

/// Drift height.
/// h_d = 1.5 sqrt(p_g^0.74 l_u^0.70 W_2^1.7 / gamma), l_u at least 20 ft, but not over sqrt(p_g l_u/(4 gamma)) with l_u
/// as it is (psf, ft, pcf)
/// \param ground_load  p_g [Pa], 0 to 100 kPa
/// \param fetch        l_u, length of the upwind surface [m], over 0 to 600 ft
/// \param winter_wind  W_2, share of the winter with wind over 10 mph [-], 0 to 1
/// \return h_d [m]
/// Limits: the cap is the drift that holds half of the snow upwind; it bites for fetches of a few feet, and for little
/// snow in much wind.
/// Source: ASCE 7-22, 7.6.1, Eq. 7.6-1; the coefficient and the variables read on a page (STRUCTURE magazine on
/// Canadian and U.S. drifts), the exponents from memory, sure, the cap from memory. The least fetch and the largest are
/// those of the earlier editions: from memory, doubtful; the least is the safe reading.
/// \throws InputError asce7.ground_load.range, asce7.fetch.range, asce7_22.winter_wind.range
[[nodiscard]] Length drift_height_7_6(Pressure ground_load, Length fetch, double winter_wind);

/// A gable before the wind has moved its snow.
struct Gable {
    Pressure sloped_load{};  ///< p_s of both slopes [Pa]
    Pressure ground_load{};  ///< p_g [Pa]
    Angle slope{};           ///< of both slopes [rad]
    Length eave_to_ridge{};  ///< W, horizontal [m]; on a boat, half the breadth at the rail
    double winter_wind = 0;  ///< W_2 [-], 0 to 1
};

/// Unbalanced load of a gable of any framing but simple rafters: `unbalanced_gable_of_drift_7_6_1` with the drift
/// height of l_u = max(W, 20 ft).
/// Source: ASCE 7-22, 7.6.1; as there; that W_2 enters read on a page (NFBA magazine, Sept. 2025, p. 25).
/// \throws InputError as there, and asce7_22.winter_wind.range
[[nodiscard]] UnbalancedGable unbalanced_gable_7_6_1(const Gable& gable);

/// Unbalanced load of a narrow gable of simple rafters.
/// leeward p_g, uniform; windward 0
/// \param ground_load    p_g [Pa], 0 to 100 kPa
/// \param slope          of both slopes [rad], as `unbalanced_applies_7_6_1`
/// \param eave_to_ridge  W, horizontal [m], over 0 to 20 ft
/// \param framing        has to be `simple_rafters`; film on straps is not, see `unbalanced_gable_7_6_1`
/// \return load on the lee slope [Pa]; the windward slope is empty
/// Limits: as the parameters say. In place of the balanced load, not on top of it.
/// Source: ASCE 7-22, 7.6.1; from memory, sure.
/// \throws InputError asce7.ground_load.range, asce7.slope.range, asce7.eave_to_ridge.range, asce7.framing.range
[[nodiscard]] Pressure narrow_gable_7_6_1(Pressure ground_load, Angle slope, Length eave_to_ridge, Framing framing);

/// Leeward drift on a lower roof: h_d with l_u = the upper roof, in `drift_on_roof_7_7_1`. The windward drift is a case
/// of its own (read on a page: engineering firm's list of changes in 7-22, prose-eng.com), see
/// `windward_drift_height_7_7_1`.
/// \param upper_length  of the upper roof, square to the step [m], over 0 to 600 ft
/// \param winter_wind   W_2 [-], 0 to 1
/// Limits: as `drift_on_roof_7_7_1`. That 7-22 limits h_d by the length of the lower roof is not known and not applied.
/// Source: ASCE 7-22, 7.7.1; as there.
/// \throws InputError as `drift_on_roof_7_7_1`, and asce7.fetch.range, asce7_22.winter_wind.range
[[nodiscard]] Drift leeward_drift_7_7_1(const LowerRoof& roof, Length upper_length, double winter_wind);

/// Height of a windward drift, also at a parapet or at a projection that needs one (`projection_needs_drift_7_8`).
/// 0.75 h_d, l_u = the lower roof, or the roof upwind of the parapet or projection (the longer of both sides)
/// \param fetch        l_u [m], over 0 to 600 ft
/// \param winter_wind  W_2 [-], 0 to 1
/// \return the height, before it is limited by the clear height of the wall [m]
/// Limits: the height alone. The width of this edition is not known here; the load cannot be worked out without it.
/// Source: ASCE 7-22, 7.7.1 and 7.8; that this edition keeps the 0.75 is from memory, doubtful.
/// \throws InputError asce7.ground_load.range, asce7.fetch.range, asce7_22.winter_wind.range
[[nodiscard]] Length windward_drift_height_7_7_1(Pressure ground_load, Length fetch, double winter_wind);

/// Drift of the higher structure's snow across a gap: `leeward_drift_over_gap_of_height_7_7_2` with h_d of l_u = the
/// length of the higher structure.
/// Source: ASCE 7-22, 7.7.2; as there.
/// \throws InputError as there, and asce7.fetch.range, asce7_22.winter_wind.range
[[nodiscard]] GapDrift leeward_drift_over_gap_7_7_2(const Gap& gap, Pressure ground_load, Length higher_length,
                                                    double winter_wind);

/// Rain that falls on the snow. Added to the balanced load alone, not to the minimum, drifted, unbalanced, partial or
/// sliding loads.
/// 8 psf if 0 < p_g <= p_m,max and slope (deg) < W/50 (ft), else 0
/// \param ground_load    p_g [Pa], 0 to 100 kPa
/// \param slope          of the roof [rad], 0 to pi/2
/// \param eave_to_ridge  W, horizontal [m], over 0 to 600 ft
/// \return the surcharge [Pa]
/// Limits: at the width of a boat W/50 is a fraction of a degree, so it concerns sagging film, where ponding rules.
/// Source: ASCE 7-22, 7.10; the 8 psf read on a page (engineering firm's list of changes in 7-22, prose-eng.com;
/// another page still prints 5), the slope from memory, sure. That p_m,max is the limit of p_g is from memory,
/// doubtful; it is the safe reading, for the earlier editions stop at 20 psf.
/// \throws InputError asce7.ground_load.range, asce7.slope.range, asce7.eave_to_ridge.range, asce7.risk_category.range
[[nodiscard]] constexpr Pressure rain_on_snow_7_10(Pressure ground_load, Angle slope, Length eave_to_ridge,
                                                   RiskCategory category) {
    asce7::check_ground_load(ground_load);
    asce7::check_eave_to_ridge(eave_to_ridge);
    const bool flat = argument::slope_in_deg(slope, "asce7.slope.range") < in_ft(eave_to_ridge) / 50.0;
    const Pressure most = asce7::limit::rounding * minimum_load_limit_7_3_3(category);
    const bool little = in_psf(ground_load) > 0.0 && ground_load <= most;
    return flat && little ? from_psf(8.0) : Pressure{};
}

}  // namespace coverframe::asce7_22
