// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_22.hpp"

#include <algorithm>
#include <cmath>

namespace coverframe::asce7_22 {

Length drift_height_7_6(Pressure ground_load, Length fetch, double winter_wind) {
    const double gamma = in_pcf(unit_weight_7_7(ground_load));
    const double l_u = argument::within(in_ft(fetch), argument::smallest, limit::fetch_high,
                                        {"asce7_22.fetch.range", "fetch l_u", "ft"});
    argument::within(winter_wind, 0.0, 1.0, {"asce7_22.winter_wind.range", "winter wind parameter W_2", "-"});
    const double p_g = in_psf(ground_load);
    return from_ft(1.5 * std::sqrt(std::pow(p_g, 0.74) * std::pow(l_u, 0.70) * std::pow(winter_wind, 1.7) / gamma));
}

UnbalancedGable unbalanced_gable_7_6_1(const Gable& gable) {
    if (!unbalanced_applies_7_6_1(gable.slope)) {
        argument::refuse({"asce7_22.unbalanced.slope", "slope of an unbalanced gable", "deg"}, in_deg(gable.slope),
                         in_deg(unbalanced_from_7_6_1), in_deg(unbalanced_to_7_6_1));
    }
    argument::within(in_kPa(gable.sloped_load), 0.0, limit::roof_high,
                     {"asce7_22.sloped_load.range", "sloped roof snow load", "kPa"});
    argument::within(in_ft(gable.eave_to_ridge), argument::smallest, limit::fetch_high,
                     {"asce7_22.fetch.range", "distance from eave to ridge W", "ft"});

    const Length fetch = std::max(gable.eave_to_ridge, shortest_fetch_7_6_1);
    const Length h_d = drift_height_7_6(gable.ground_load, fetch, gable.winter_wind);
    const double root_run = std::sqrt(1.0 / std::tan(in_rad(gable.slope)));  // sqrt(S), S the run per unit rise
    return {.windward = 0.3 * gable.sloped_load,
            .leeward_surcharge = h_d * unit_weight_7_7(gable.ground_load) / root_run,
            .surcharge_width = std::min(8.0 / 3.0 * root_run * h_d, gable.eave_to_ridge),
            .drift_height = h_d};
}

}  // namespace coverframe::asce7_22
