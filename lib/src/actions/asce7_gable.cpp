// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_gable.hpp"

#include <algorithm>
#include <cmath>

#include "coverframe/base/error.hpp"

namespace coverframe::asce7 {

void check_narrow_gable(Pressure ground_load, Angle slope, Length eave_to_ridge, Framing framing) {
    check_ground_load(ground_load);
    check_unbalanced_slope(slope);
    argument::within(in_ft(eave_to_ridge), argument::smallest, in_ft(narrow_to_7_6_1) * limit::rounding,
                     {"asce7.eave_to_ridge.range", "distance from eave to ridge W of a narrow gable", "ft"});
    if (framing != Framing::simple_rafters) {
        throw InputError("asce7.framing.range", "", "other",
                         "the uniform unbalanced load is for simply supported rafters from ridge to eave; film on "
                         "straps and every other framing take the load with a surcharge beside the ridge");
    }
}

UnbalancedGable unbalanced_gable_of_drift_7_6_1(const Gable& gable, Length drift_height) {
    check_unbalanced_slope(gable.slope);
    check_eave_to_ridge(gable.eave_to_ridge);
    argument::within(in_kPa(gable.sloped_load), 0.0, limit::roof_high,
                     {"asce7.sloped_load.range", "sloped roof snow load p_s", "kPa"});
    argument::within(in_ft(drift_height), 0.0, limit::length_high,
                     {"asce7.drift_height.range", "drift height h_d", "ft"});

    const double root_run = std::sqrt(1.0 / std::tan(in_rad(gable.slope)));  // sqrt(S), S the run per unit rise
    return {.windward = 0.3 * gable.sloped_load,
            .leeward_surcharge = drift_height * unit_weight_7_7(gable.ground_load) / root_run,
            .surcharge_width = std::min(8.0 / 3.0 * root_run * drift_height, gable.eave_to_ridge),
            .drift_height = drift_height};
}

}  // namespace coverframe::asce7
