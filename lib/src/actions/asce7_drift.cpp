// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_drift.hpp"

#include <algorithm>
#include <cmath>

namespace coverframe::asce7 {
namespace {

void check_drift_height(Length drift_height) {
    argument::within(in_ft(drift_height), 0.0, limit::length_high,
                     {"asce7.drift_height.range", "drift height h_d", "ft"});
}

void check_step(Length step) {
    argument::within(in_ft(step), argument::smallest, limit::length_high,
                     {"asce7.step.range", "height above the lower roof", "ft"});
}

void check_roof_length(Length length) {
    argument::within(in_ft(length), argument::smallest, limit::fetch_high,
                     {"asce7.roof_length.range", "length of the lower roof", "ft"});
}

}  // namespace

Length drift_height_cap_7_7_1(Pressure ground_load, Length fetch, double importance) {
    const double gamma = in_pcf(unit_weight_7_7(ground_load));
    check_fetch(fetch);
    return from_ft(std::sqrt(importance * in_psf(ground_load) * in_ft(fetch) / (4.0 * gamma)));
}

Drift drift_on_roof_7_7_1(const LowerRoof& roof, Length drift_height) {
    Drift drift;
    drift.balanced_depth = balanced_depth_7_7(roof.balanced_load, roof.ground_load);
    check_step(roof.step);
    check_roof_length(roof.length);
    check_drift_height(drift_height);

    drift.clear_height = roof.step - drift.balanced_depth;
    drift.needed = drift.clear_height > Length{} && drift.clear_height >= 0.2 * drift.balanced_depth;
    if (!drift.needed) return drift;
    drift.height = std::min(drift_height, drift.clear_height);
    drift.width = drift_height <= drift.clear_height
                      ? 4.0 * drift_height
                      : std::min(4.0 * drift_height * (drift_height / drift.clear_height), 8.0 * drift.clear_height);
    drift.peak = drift.height * unit_weight_7_7(roof.ground_load);
    drift.at_end = drift_load_at_7_7_1(drift.peak, drift.width, roof.length);
    return drift;
}

GapDrift leeward_drift_over_gap_of_height_7_7_2(const Gap& gap, Pressure ground_load, Length drift_height) {
    const double s = argument::within(in_ft(gap.separation), argument::smallest, limit::length_high,
                                      {"asce7.gap.range", "gap between both structures", "ft"});
    check_step(gap.height);
    check_roof_length(gap.lower_length);
    check_drift_height(drift_height);
    const UnitWeight gamma = unit_weight_7_7(ground_load);
    const double h = in_ft(gap.height);

    GapDrift drift;
    drift.needed = s < 20.0 && s < 6.0 * h;
    if (!drift.needed) return drift;
    drift.height = std::min(drift_height, from_ft((6.0 * h - s) / 6.0));
    drift.length = std::min(6.0 * drift_height, from_ft(6.0 * h - s));
    drift.peak = drift.height * gamma;
    drift.at_end = drift_load_at_7_7_1(drift.peak, drift.length, gap.lower_length);
    return drift;
}

}  // namespace coverframe::asce7
