// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/at.hpp"

namespace coverframe::na_at {

namespace {

double number_of(Zone zone) {
    switch (zone) {
        case Zone::zone_2_star: return 1.6;
        case Zone::zone_2: return 2.0;
        case Zone::zone_3: return 3.0;
        case Zone::zone_4: return 4.5;
    }
    argument::refuse({"na_at.zone.unknown", "zone number", "-"}, static_cast<double>(zone), 0, 3);
}

}  // namespace

Pressure ground_load_4_1(Zone zone, Length altitude) {
    const double z = number_of(zone);
    const double a = argument::within(in_m(altitude), 0.0, 1500.0, {"na_at.altitude.range", "altitude", "m"});
    const double relative = a / 728.0;
    return from_kPa((0.642 * z + 0.009) * (1.0 + relative * relative));
}

}  // namespace coverframe::na_at
