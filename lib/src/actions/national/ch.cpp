// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/ch.hpp"

#include <algorithm>

namespace coverframe::na_ch {

namespace {

double metres_of(Correction correction) {
    switch (correction) {
        case Correction::minus_200_m: return -200.0;
        case Correction::none: return 0.0;
        case Correction::plus_200_m: return 200.0;
        case Correction::plus_400_m: return 400.0;
        case Correction::plus_500_m: return 500.0;
    }
    argument::refuse({"na_ch.correction.unknown", "correction number", "-"}, static_cast<double>(correction), 0, 4);
}

}  // namespace

GroundLoad ground_load_5(Length altitude, Correction correction) {
    const double h = argument::within(in_m(altitude), 0.0, 2000.0, {"na_ch.altitude.range", "altitude", "m"});
    const double h_0 = h + metres_of(correction);
    const double relative = h_0 / 350.0;
    return {.reference_altitude = from_m(h_0), .load = from_kPa(std::max(0.4 * (1.0 + relative * relative), 0.9))};
}

}  // namespace coverframe::na_ch
