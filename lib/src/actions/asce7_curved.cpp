// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_curved.hpp"

#include <algorithm>
#include <cmath>

namespace coverframe::asce7 {

CircularArc circular_arc_7_6_2(Length half_span, Length rise) {
    const double b = argument::within(in_ft(half_span), argument::smallest, limit::length_high,
                                      {"asce7.half_span.range", "half span of the arc", "ft"});
    const double f =
        argument::within(in_ft(rise), argument::smallest, b, {"asce7.rise.range", "rise of the arc", "ft"});
    const double radius = (b * b + f * f) / (2.0 * f);
    const double chord = std::atan2(f, b);
    const auto out_to = [&](double degrees) {
        return from_ft(std::min(radius * std::sin(in_rad(from_deg(degrees))), b));
    };
    return {.radius = from_ft(radius),
            .eave_to_crown = from_rad(chord),
            .eave_slope = from_rad(2.0 * chord),
            .to_30_degrees = out_to(30.0),
            .to_70_degrees = out_to(70.0)};
}

UnbalancedCurve unbalanced_curve_7_6_2(const CurvedRoof& roof) {
    check_flat_load(roof.flat_load);
    check_exposure(roof.exposure);
    argument::slope_in_deg(roof.eave_slope, "asce7.slope.range");
    argument::within(in_ft(roof.eave_clearance), 0.0, limit::length_high,
                     {"asce7.eave_clearance.range", "clearance below the eave", "ft"});

    const auto factor_at = [&](Angle slope) { return slope_factor_on_chart_7_4(slope, roof.chart, roof.surface); };
    const auto load_of = [&](double factor) { return 2.0 * factor / roof.exposure * roof.flat_load; };
    UnbalancedCurve curve;
    curve.figure_case = roof.eave_slope < from_deg(30.0) ? 1 : roof.eave_slope <= from_deg(70.0) ? 2 : 3;
    curve.slope_factor_eave = factor_at(roof.eave_slope);
    curve.slope_factor_30 = curve.figure_case == 1 ? curve.slope_factor_eave : factor_at(from_deg(30.0));
    curve.crown = 0.5 * roof.flat_load;
    curve.at_30_degrees = load_of(curve.slope_factor_30);
    const bool blocked = curve.figure_case != 1 && in_ft(roof.eave_clearance) <= 3.0 * limit::rounding;
    curve.eave = blocked ? curve.at_30_degrees : load_of(curve.slope_factor_eave);
    return curve;
}

UnbalancedValley unbalanced_valley_7_6_3(Pressure flat_load, double exposure, Pressure ground_load, Length depth) {
    check_flat_load(flat_load);
    check_exposure(exposure);
    argument::within(in_ft(depth), argument::smallest, limit::length_high,
                     {"asce7.depth.range", "depth of the valley", "ft"});
    const Pressure crown = 0.5 * flat_load;
    const Pressure level = crown + unit_weight_7_7(ground_load) * depth;  // as high as the snow on the ridge
    return {.crown = crown, .valley = std::min(2.0 / exposure * flat_load, level)};
}

}  // namespace coverframe::asce7
