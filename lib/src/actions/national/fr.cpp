// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/fr.hpp"

#include <cmath>

#include "coverframe/base/error.hpp"

namespace coverframe::na_fr {

namespace {

[[noreturn]] void refuse_unknown(Region region) {
    argument::refuse({"na_fr.region.unknown", "region number", "-"}, static_cast<double>(region), 0, 7);
}

Pressure base_of(Region region) {
    switch (region) {
        case Region::a1:
        case Region::a2: return from_kPa(0.45);
        case Region::b1:
        case Region::b2: return from_kPa(0.55);
        case Region::c1:
        case Region::c2: return from_kPa(0.65);
        case Region::d: return from_kPa(0.90);
        case Region::e: return from_kPa(1.40);
    }
    refuse_unknown(region);
}

/// [kN/m2], `a` the altitude [km].
double addition_of(Region region, double a) {
    const bool e = region == Region::e;
    if (a <= 0.2) return 0.0;
    if (a <= 0.5) return e ? 1.5 * a - 0.30 : a - 0.20;
    if (a <= 1.0) return e ? 3.5 * a - 1.30 : 1.5 * a - 0.45;
    return e ? 7.0 * a - 4.80 : 3.5 * a - 2.45;
}

}  // namespace

GroundLoad ground_load_4_1(Region region, Length altitude) {
    const Pressure base = base_of(region);
    const double a = argument::within(in_m(altitude), 0.0, 2000.0, {"na_fr.altitude.range", "altitude", "m"});
    const Pressure addition = from_kPa(addition_of(region, a / 1000.0));
    return {.base = base, .addition = addition, .load = base + addition};
}

Pressure exceptional_load_4_3(Region region) {
    switch (region) {
        case Region::a2:
        case Region::b1: return from_kPa(1.00);
        case Region::b2:
        case Region::c2: return from_kPa(1.35);
        case Region::d: return from_kPa(1.80);
        case Region::a1:
        case Region::c1:
        case Region::e:
            throw InputError("na_fr.region.range", "", choices_of(region)[static_cast<std::size_t>(region)],
                             "the regions A1, C1 and E have no exceptional snow (NF EN 1991-1-3/NA, 4.3): leave the "
                             "accidental situation out");
    }
    refuse_unknown(region);
}

Pressure low_slope_addition_5_2(Angle slope) {
    argument::slope_in_deg(slope, "na_fr.slope.range");
    if (in_rad(slope) < std::atan(0.03)) return from_kPa(0.2);
    if (in_rad(slope) <= std::atan(0.05)) return from_kPa(0.1);
    return from_kPa(0.0);
}

}  // namespace coverframe::na_fr
