// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/cz.hpp"

#include "coverframe/base/error.hpp"

namespace coverframe::na_cz {

Pressure ground_load_4_1(Zone zone) {
    switch (zone) {
        case Zone::zone_1: return from_kPa(0.7);
        case Zone::zone_2: return from_kPa(1.0);
        case Zone::zone_3: return from_kPa(1.5);
        case Zone::zone_4: return from_kPa(2.0);
        case Zone::zone_5: return from_kPa(2.5);
        case Zone::zone_6: return from_kPa(3.0);
        case Zone::zone_7: return from_kPa(4.0);
        case Zone::zone_8:
            throw InputError("na_cz.zone.range", "", "VIII",
                             "zone VIII has more than 4.0 kN/m2 by a local study (CSN EN 1991-1-3/Z1): ask the Czech "
                             "weather service for the load of the place");
    }
    argument::refuse({"na_cz.zone.unknown", "zone number", "-"}, static_cast<double>(zone), 0, 7);
}

}  // namespace coverframe::na_cz
