// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_16.hpp"

#include <algorithm>
#include <cmath>

namespace coverframe::asce7_16 {

using asce7::windward_share_7_7_1;

Length drift_height_7_6(Pressure ground_load, Length fetch, double importance) {
    asce7::fifty_year::check_importance(importance);
    const Length figure = asce7::fifty_year::drift_height_of_figure_7_7(ground_load, fetch);
    return std::min(std::sqrt(importance) * figure, asce7::drift_height_cap_7_7_1(ground_load, fetch, importance));
}

UnbalancedGable unbalanced_gable_7_6_1(const Gable& gable, double importance) {
    const Length fetch = gable_fetch_7_6_1(gable.eave_to_ridge);
    return asce7::unbalanced_gable_of_drift_7_6_1(gable, drift_height_7_6(gable.ground_load, fetch, importance));
}

StepDrift step_drift_7_7_1(const LowerRoof& roof, Length upper_length, double importance) {
    const Length leeward = std::min(drift_height_7_6(roof.ground_load, upper_length, importance), 0.6 * roof.length);
    const Length windward = windward_share_7_7_1 * drift_height_7_6(roof.ground_load, roof.length, importance);
    return asce7::fifty_year::step_drift_of_heights_7_7_1(roof, leeward, windward);
}

GapDrift leeward_drift_over_gap_7_7_2(const Gap& gap, Pressure ground_load, Length higher_length, double importance) {
    return asce7::leeward_drift_over_gap_of_height_7_7_2(gap, ground_load,
                                                         drift_height_7_6(ground_load, higher_length, importance));
}

GapDrift windward_drift_over_gap_7_7_2(const LowerRoof& roof, Length separation, double importance) {
    const Length height = windward_share_7_7_1 * drift_height_7_6(roof.ground_load, roof.length, importance);
    return asce7::fifty_year::windward_drift_over_gap_of_height_7_7_2(roof, separation, height);
}

Drift projection_drift_7_8(const LowerRoof& roof, Length fetch, double importance) {
    const Length height = windward_share_7_7_1 * drift_height_7_6(roof.ground_load, fetch, importance);
    return asce7::drift_on_roof_7_7_1(roof, height);
}

}  // namespace coverframe::asce7_16
