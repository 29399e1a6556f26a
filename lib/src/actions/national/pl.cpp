// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/pl.hpp"

#include <algorithm>
#include <cmath>

namespace coverframe::na_pl {

Pressure ground_load_4_1(Zone zone, Length altitude) {
    const double a = argument::within(in_m(altitude), 0.0, 1500.0, {"na_pl.altitude.range", "altitude", "m"});
    switch (zone) {
        case Zone::zone_1: return from_kPa(std::max(0.007 * a - 1.4, 0.70));
        case Zone::zone_2: return from_kPa(0.9);
        case Zone::zone_3: return from_kPa(std::max(0.006 * a - 0.6, 1.2));
        case Zone::zone_4: return from_kPa(1.6);
        case Zone::zone_5: return from_kPa(std::max(0.93 * std::exp(0.00134 * a), 2.0));
    }
    argument::refuse({"na_pl.zone.unknown", "zone number", "-"}, static_cast<double>(zone), 0, 4);
}

}  // namespace coverframe::na_pl
