// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_10.hpp"

namespace coverframe::asce7_10 {

using asce7::windward_share_7_7_1;

Length drift_height_7_7(Pressure ground_load, Length fetch) {
    return asce7::fifty_year::drift_height_of_figure_7_7(ground_load, fetch);
}

UnbalancedGable unbalanced_gable_7_6_1(const Gable& gable) {
    const Length fetch = gable_fetch_7_6_1(gable.eave_to_ridge);
    return asce7::unbalanced_gable_of_drift_7_6_1(gable, drift_height_7_7(gable.ground_load, fetch));
}

StepDrift step_drift_7_7_1(const LowerRoof& roof, Length upper_length) {
    const Length leeward = drift_height_7_7(roof.ground_load, upper_length);
    const Length windward = windward_share_7_7_1 * drift_height_7_7(roof.ground_load, roof.length);
    return asce7::fifty_year::step_drift_of_heights_7_7_1(roof, leeward, windward);
}

GapDrift leeward_drift_over_gap_7_7_2(const Gap& gap, Pressure ground_load, Length higher_length) {
    return asce7::leeward_drift_over_gap_of_height_7_7_2(gap, ground_load,
                                                         drift_height_7_7(ground_load, higher_length));
}

GapDrift windward_drift_over_gap_7_7_2(const LowerRoof& roof, Length separation) {
    const Length height = windward_share_7_7_1 * drift_height_7_7(roof.ground_load, roof.length);
    return asce7::fifty_year::windward_drift_over_gap_of_height_7_7_2(roof, separation, height);
}

Drift projection_drift_7_8(const LowerRoof& roof, Length fetch) {
    return asce7::drift_on_roof_7_7_1(roof, windward_share_7_7_1 * drift_height_7_7(roof.ground_load, fetch));
}

}  // namespace coverframe::asce7_10
