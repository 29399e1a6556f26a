// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/iso4355.hpp"

#include <cmath>

namespace coverframe::iso4355 {

Length characteristic_length(Length width, Length length) {
    const double W = argument::positive(in_m(width), {"iso4355.width.range", "smaller plan size W", "m"});
    const double L =
        argument::within(in_m(length), W, argument::largest, {"iso4355.length.range", "larger plan size L", "m"});
    return from_m(2.0 * W - W * (W / L));
}

double exposure_coefficient(double small, Length characteristic_length) {
    const double C_e0 = argument::within(small, limit::exposure_low, limit::exposure_high,
                                         {"iso4355.exposure.range", "exposure coefficient C_e0", "-"});
    const double l_c = argument::not_negative(
        in_m(characteristic_length), {"iso4355.characteristic_length.range", "characteristic length l_c", "m"});
    return l_c <= 50.0 ? C_e0 : 1.25 - (1.25 - C_e0) * std::exp(-(l_c - 50.0) / 200.0);
}

double slope_coefficient(Angle slope, Surface surface) {
    argument::slope_in_deg(slope, "iso4355.slope.range");
    const double C_m = surface == Surface::slippery ? 1.333 : 1.0;
    const double turned = 1.5 * C_m * in_rad(slope);
    const double cosine = std::cos(turned);
    return turned < argument::right_angle && cosine > 0.0 ? std::sqrt(cosine) : 0.0;
}

}  // namespace coverframe::iso4355
