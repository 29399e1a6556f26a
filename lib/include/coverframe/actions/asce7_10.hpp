// SPDX-License-Identifier: BSD-3-Clause
// ASCE/SEI 7-10, chapter 7: snow loads; and the combinations of chapter 2 that go with them.
//
// A ground load of this edition is one of fifty years. The risk category enters by the importance factor; the factor on
// snow is 1.6 (strength) or 1.0 (allowable stress). A ground load of 7-22 does not belong here.
//
// The rules are those of asce7.hpp and its family and of asce7_fifty_year.hpp, brought in below. This edition's own are
// the drift height, which knows neither importance nor a cap for short fetches, and what follows from it. Numbers in
// function names are those of 7-16; this edition numbers tables 7-2 to 7-4, figures 7-1 to 7-9.
//
// How each rule was read stands beside it. Whoever claims conformity compares them with a licensed copy first.
#pragma once

#include "coverframe/actions/asce7_fifty_year.hpp"
#include "coverframe/actions/asce7_partial.hpp"
#include "coverframe/actions/asce7_sliding.hpp"

namespace coverframe::asce7_10 {

inline const Clause clause_1_5{"ASCE 7-10", "Table 1.5-2"};
inline const Clause clause_2_3{"ASCE 7-10", "2.3.2"};
inline const Clause clause_2_4{"ASCE 7-10", "2.4.1"};
inline const Clause clause_7_3{"ASCE 7-10", "7.3"};
inline const Clause clause_7_3_1{"ASCE 7-10", "7.3.1, Table 7-2"};
inline const Clause clause_7_3_2{"ASCE 7-10", "7.3.2, Table 7-3"};
inline const Clause clause_7_3_4{"ASCE 7-10", "7.3.4"};
inline const Clause clause_7_4{"ASCE 7-10", "7.4, Fig. 7-2"};
inline const Clause clause_7_5{"ASCE 7-10", "7.5, Fig. 7-4"};
inline const Clause clause_7_6_1{"ASCE 7-10", "7.6.1, Fig. 7-5"};
inline const Clause clause_7_6_2{"ASCE 7-10", "7.6.2, Fig. 7-3"};
inline const Clause clause_7_6_3{"ASCE 7-10", "7.6.3"};
inline const Clause clause_7_7_1{"ASCE 7-10", "7.7.1"};
inline const Clause clause_drift_height{"ASCE 7-10", "7.7.1, Fig. 7-9"};
inline const Clause clause_7_7_2{"ASCE 7-10", "7.7.2"};
inline const Clause clause_7_8{"ASCE 7-10", "7.8"};
inline const Clause clause_7_9{"ASCE 7-10", "7.9"};
inline const Clause clause_7_10{"ASCE 7-10", "7.10"};
inline const Clause clause_7_12{"ASCE 7-10", "7.12"};

using asce7::AllowableStressCombination;
using asce7::CircularArc;
using asce7::CombinationFactors;
using asce7::CurvedRoof;
using asce7::Drift;
using asce7::Framing;
using asce7::Gable;
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
using asce7::fifty_year::StepDrift;

using asce7::balanced_depth_7_7;
using asce7::circular_arc_7_6_2;
using asce7::drift_load_at_7_7_1;
using asce7::drift_on_roof_7_7_1;
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

using asce7::fifty_year::allowable_stress_2_4_1;
using asce7::fifty_year::allowable_stress_factors_2_4;
using asce7::fifty_year::flat_load_7_3;
using asce7::fifty_year::full_load_slope_7_4;
using asce7::fifty_year::importance_factor_1_5;
using asce7::fifty_year::minimum_applies_7_3_4;
using asce7::fifty_year::minimum_load_7_3_4;
using asce7::fifty_year::narrow_gable_7_6_1;
using asce7::fifty_year::rain_on_snow_7_10;
using asce7::fifty_year::slope_chart_7_4;
using asce7::fifty_year::slope_factor_7_4;
using asce7::fifty_year::strength_2_3_1;
using asce7::fifty_year::strength_factors_2_3;
using asce7::fifty_year::thermal_factor_7_3_2;

/// Drift height: `drift_height_of_figure_7_7`, without importance factor and without a cap for short fetches.
/// h_d = 0.43 l_u^(1/3) (p_g + 10)^(1/4) - 1.5 (ft, psf), l_u at least 20 ft
/// Source: ASCE 7-10, Fig. 7-9; read on a page (O'Rourke, Guide to ASCE 7-10, Example 6-2).
/// \throws InputError asce7.ground_load.range, asce7.fetch.range
[[nodiscard]] Length drift_height_7_7(Pressure ground_load, Length fetch);

/// Unbalanced load of a gable of any framing but simple rafters: `unbalanced_gable_of_drift_7_6_1` with the drift
/// height of l_u = max(W, 20 ft).
/// Source: ASCE 7-10, 7.6.1; as there.   \throws InputError as there
[[nodiscard]] UnbalancedGable unbalanced_gable_7_6_1(const Gable& gable);

/// Drift on a lower roof: the larger of h_d with l_u = the upper roof, and 0.75 h_d with l_u = the lower roof.
/// \param upper_length  of the upper roof, square to the step [m], over 0 to 600 ft
/// Limits: as `drift_on_roof_7_7_1`.
/// Source: ASCE 7-10, 7.7.1; from memory, sure.
/// \throws InputError as `drift_on_roof_7_7_1`, and asce7.fetch.range
[[nodiscard]] StepDrift step_drift_7_7_1(const LowerRoof& roof, Length upper_length);

/// Drift of the higher structure's snow across a gap: `leeward_drift_over_gap_of_height_7_7_2` with h_d of l_u = the
/// length of the higher structure.
/// Source: ASCE 7-10, 7.7.2; as there.   \throws InputError as there, and asce7.fetch.range
[[nodiscard]] GapDrift leeward_drift_over_gap_7_7_2(const Gap& gap, Pressure ground_load, Length higher_length);

/// Drift of the lower structure's own snow against the higher one beyond a gap: 0.75 h_d with l_u = the length of the
/// lower structure, in `windward_drift_over_gap_of_height_7_7_2`.
/// Source: ASCE 7-10, 7.7.2; as there.   \throws InputError as there
[[nodiscard]] GapDrift windward_drift_over_gap_7_7_2(const LowerRoof& roof, Length separation);

/// Drift at a parapet or at a projection that needs one (`projection_needs_drift_7_8`): 0.75 h_d.
/// \param roof   `step` is the height of the parapet or projection
/// \param fetch  l_u, length of the roof upwind; at a projection the longer of both sides [m], over 0 to 600 ft
/// Limits: as `drift_on_roof_7_7_1`.
/// Source: ASCE 7-10, 7.8; from memory, sure.   \throws InputError as `drift_on_roof_7_7_1`, and asce7.fetch.range
[[nodiscard]] Drift projection_drift_7_8(const LowerRoof& roof, Length fetch);

}  // namespace coverframe::asce7_10
