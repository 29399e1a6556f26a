// SPDX-License-Identifier: BSD-3-Clause
// National Building Code of Canada 2020, Division B: snow on a cover. The rules stand in nbc.hpp, with what is left
// out. The articles and formulas are taken to be those of 2015, from memory; 2020 was not read on its own.
#pragma once

#include "coverframe/actions/nbc.hpp"

namespace coverframe::nbc2020 {

inline const Clause clause_4_1_3_2{"NBC 2020", "4.1.3.2"};
inline const Clause clause_4_1_6_2{"NBC 2020", "4.1.6.2"};
inline const Clause clause_4_1_6_3{"NBC 2020", "4.1.6.3"};
inline const Clause clause_4_1_6_5{"NBC 2020", "4.1.6.5"};
inline const Clause clause_4_1_6_6{"NBC 2020", "4.1.6.6"};
inline const Clause clause_4_1_6_7{"NBC 2020", "4.1.6.7"};
inline const Clause clause_4_1_6_9{"NBC 2020", "4.1.6.9"};
inline const Clause clause_4_1_6_11{"NBC 2020", "4.1.6.11"};
inline const Clause clause_4_1_6_13{"NBC 2020", "4.1.6.13"};
inline const Clause clause_4_1_6_14{"NBC 2020", "4.1.6.14"};  // removal of snow lowers no design load

using nbc::Accumulation;
using nbc::Combination;
using nbc::CombinationFactors;
using nbc::Drift;
using nbc::Importance;
using nbc::LimitState;
using nbc::RoofFactors;
using nbc::SpecifiedLoad;
using nbc::Step;
using nbc::StepCase;
using nbc::StepDrift;
using nbc::Surface;
using nbc::WindExposure;
using nbc::WindSite;

using nbc::accumulation_4_1_6_5;
using nbc::adjacent_accumulation_4_1_6_6;
using nbc::basic_factor_4_1_6_2;
using nbc::characteristic_length_4_1_6_2;
using nbc::combination_4_1_3_2;
using nbc::downwind_accumulation_4_1_6_9;
using nbc::importance_factor_4_1_6_2;
using nbc::obstruction_distance_4_1_6_2;
using nbc::partial_applies_4_1_6_3;
using nbc::partial_share_4_1_6_3;
using nbc::projection_counts_4_1_6_7;
using nbc::projection_drift_4_1_6_7;
using nbc::removal_may_lower_load_4_1_6_14;
using nbc::slope_factor_4_1_6_2;
using nbc::sliding_total_4_1_6_11;
using nbc::specified_load_4_1_6_2;
using nbc::step_drift_4_1_6_5;
using nbc::unbalanced_applies_4_1_6_9;
using nbc::unit_weight_4_1_6_13;
using nbc::upwind_accumulation_4_1_6_9;
using nbc::widest_gap_4_1_6_6;
using nbc::wind_factor_4_1_6_2;

}  // namespace coverframe::nbc2020
