// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_sliding.hpp"

#include <algorithm>

namespace coverframe::asce7 {
namespace {

constexpr Length reach = from_ft(15.0);  // of sliding snow from the upper eave

SlidingSnow beyond(Pressure flat_load, Length eave_to_ridge, Length lower_width, Length gap) {
    SlidingSnow snow;
    snow.needed = gap < reach;
    if (!snow.needed) return snow;
    snow.per_eave = 0.4 * flat_load * eave_to_ridge;
    snow.intensity = snow.per_eave / reach;
    snow.extent = std::min(reach - gap, lower_width);
    snow.on_lower_roof = snow.intensity * snow.extent;
    return snow;
}

void check_arguments(Pressure flat_load, Length eave_to_ridge, Length lower_width) {
    check_flat_load(flat_load);
    check_eave_to_ridge(eave_to_ridge);
    argument::within(in_ft(lower_width), argument::smallest, limit::fetch_high,
                     {"asce7.roof_length.range", "width of the lower roof", "ft"});
}

}  // namespace

SlidingSnow sliding_load_7_9(Pressure flat_load, Length eave_to_ridge, Length lower_width) {
    check_arguments(flat_load, eave_to_ridge, lower_width);
    return beyond(flat_load, eave_to_ridge, lower_width, Length{});
}

SlidingSnow sliding_load_over_gap_7_9(Pressure flat_load, Length eave_to_ridge, Length lower_width, Length separation,
                                      Length height) {
    check_arguments(flat_load, eave_to_ridge, lower_width);
    argument::within(in_ft(separation), argument::smallest, limit::length_high,
                     {"asce7.gap.range", "gap between both structures", "ft"});
    argument::within(in_ft(height), argument::smallest, limit::length_high,
                     {"asce7.step.range", "height above the lower roof", "ft"});
    if (height <= separation) return {};
    return beyond(flat_load, eave_to_ridge, lower_width, separation);
}

}  // namespace coverframe::asce7
