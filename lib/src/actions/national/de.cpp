// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/de.hpp"

#include <algorithm>

#include "coverframe/base/error.hpp"

namespace coverframe::na_de {

namespace {

/// times max(constant + factor q, minimum) [kN/m2].
struct Row {
    double times;
    double constant;
    double factor;
    double minimum;
};

Row row_of(Zone zone) {
    switch (zone) {
        case Zone::zone_1: return {1.0, 0.19, 0.91, 0.65};
        case Zone::zone_1a: return {1.25, 0.19, 0.91, 0.65};
        case Zone::zone_2: return {1.0, 0.25, 1.91, 0.85};
        case Zone::zone_2a: return {1.25, 0.25, 1.91, 0.85};
        case Zone::zone_3: return {1.0, 0.31, 2.91, 1.10};
    }
    argument::refuse({"na_de.zone.unknown", "zone number", "-"}, static_cast<double>(zone), 0, 4);
}

}  // namespace

Pressure ground_load_4_1(Zone zone, Length altitude) {
    const Row row = row_of(zone);
    const double a = argument::within(in_m(altitude), 0.0, 1500.0, {"na_de.altitude.range", "altitude", "m"});
    const double relative = (a + 140.0) / 760.0;
    return from_kPa(row.times * std::max(row.constant + row.factor * relative * relative, row.minimum));
}

Pressure exceptional_load_lowland_4_3(Zone zone, Length altitude) {
    const Pressure characteristic = ground_load_4_1(zone, altitude);
    if (zone != Zone::zone_1 && zone != Zone::zone_2) {
        throw InputError("na_de.zone.range", "", choices_of(zone)[static_cast<std::size_t>(zone)],
                         "the exceptional snow of the North German lowland is for zones 1 and 2 "
                         "(DIN EN 1991-1-3/NA, 4.3)");
    }
    return 2.3 * characteristic;
}

}  // namespace coverframe::na_de
