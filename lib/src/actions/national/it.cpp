// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/it.hpp"

namespace coverframe::na_it {

namespace {

/// `low` up to 200 m, above factor [1 + (A/altitude)^2] [kN/m2].
struct Row {
    double low;
    double factor;
    double altitude;
};

Row row_of(Zone zone) {
    switch (zone) {
        case Zone::zone_1_alpine: return {1.50, 1.39, 728.0};
        case Zone::zone_1_mediterranean: return {1.50, 1.35, 602.0};
        case Zone::zone_2: return {1.00, 0.85, 481.0};
        case Zone::zone_3: return {0.60, 0.51, 481.0};
    }
    argument::refuse({"na_it.zone.unknown", "zone number", "-"}, static_cast<double>(zone), 0, 3);
}

}  // namespace

Pressure ground_load_3_4_2(Zone zone, Length altitude) {
    const Row row = row_of(zone);
    const double a = argument::within(in_m(altitude), 0.0, 1500.0, {"na_it.altitude.range", "altitude", "m"});
    if (a <= 200.0) return from_kPa(row.low);
    const double relative = a / row.altitude;
    return from_kPa(row.factor * (1.0 + relative * relative));
}

}  // namespace coverframe::na_it
