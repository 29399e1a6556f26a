// SPDX-License-Identifier: BSD-3-Clause
// Czech Republic: CSN EN 1991-1-3, change Z1 of 11/2006, ground snow load by zone.
//
// How it was read: the loads on a page (snihnastrese.cz, Mapa snehovych oblasti). The map has the altitude in it.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::na_cz {

inline const Clause clause_4_1{"CSN EN 1991-1-3/Z1 (11/2006)", "4.1(1)"};

/// Snow zone of the map.
enum class Zone { zone_1, zone_2, zone_3, zone_4, zone_5, zone_6, zone_7, zone_8 };

[[nodiscard]] constexpr std::array<const char*, 8> choices_of(Zone) {
    return {"I", "II", "III", "IV", "V", "VI", "VII", "VIII"};
}

/// Characteristic ground snow load.
/// s_k = 0.7, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0 kN/m2 in zones I to VII
/// \return s_k [Pa]
/// Limits: zone VIII is over 4.0 kN/m2 by a local study of the weather service and is refused.
/// Source: CSN EN 1991-1-3/Z1, map; see the head of this file.
/// \throws InputError na_cz.zone.range (VIII), na_cz.zone.unknown
[[nodiscard]] Pressure ground_load_4_1(Zone zone);

}  // namespace coverframe::na_cz
