// SPDX-License-Identifier: BSD-3-Clause
// United Kingdom: National Annex to BS EN 1991-1-3, ground snow load by zone and altitude.
//
// How it was read: the formula in a public copy of the annex, of which no address was kept. Its first print (December
// 2005) and a textbook extract (eurocode.us, variable actions, snow loads) have A + 100; corrigendum 1 of 29 June 2007
// changed Eq. NA.1 to A - 100, which stands on the annex's own first page. A - 100 returns the load of the map, drawn
// for 100 m, at 100 m; A + 100 does not. The zone numbers are from memory, fairly sure.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::na_uk {

inline const Clause clause_NA_2_8{"NA to BS EN 1991-1-3:2003, corrigendum 1", "NA.2.8, Eq. NA.1"};

/// Snow zone of the map, Figure NA.1.
enum class Zone { zone_1, zone_2, zone_3, zone_4, zone_5 };

[[nodiscard]] constexpr std::array<const char*, 5> choices_of(Zone) { return {"1", "2", "3", "4", "5"}; }

/// Characteristic ground snow load.
/// s_k = 0.15 + (0.1 Z + 0.05) + (A - 100)/525 [kN/m2], A in m
/// \param altitude  A above sea level [m], 0 to 1500 m; a yard below the sea is entered as 0 m
/// \return s_k [Pa]
/// Limits: below 100 m the load is smaller than the map's.
/// Source: NA to BS EN 1991-1-3:2003 with corrigendum 1, NA.2.8; see the head of this file.
/// \throws InputError na_uk.zone.unknown, na_uk.altitude.range
[[nodiscard]] constexpr Pressure ground_load_NA_2_8(Zone zone, Length altitude) {
    const double index = static_cast<double>(zone);
    argument::within(index, 0.0, 4.0, {"na_uk.zone.unknown", "zone number", "-"});
    const double a = argument::within(in_m(altitude), 0.0, 1500.0, {"na_uk.altitude.range", "altitude", "m"});
    const double z = index + 1.0;
    return from_kPa(0.15 + (0.1 * z + 0.05) + (a - 100.0) / 525.0);
}

}  // namespace coverframe::na_uk
