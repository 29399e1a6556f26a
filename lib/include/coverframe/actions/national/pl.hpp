// SPDX-License-Identifier: BSD-3-Clause
// Poland: National Annex to PN-EN 1991-1-3:2005, ground snow load by zone and altitude.
//
// How it was read: all formulas and minima on a page (Silesian province office, Odsniezanie budynkow, for
// PN-80/B-02010/Az1:2006), which another page says are those of PN-EN 1991-1-3:2005 too (fdocuments.pl, Obciazenie
// sniegiem obiektow budowlanych). No printed example was found.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::na_pl {

inline const Clause clause_4_1{"PN-EN 1991-1-3:2005, National Annex", "4.1(1)"};

/// Snow zone of the map.
enum class Zone { zone_1, zone_2, zone_3, zone_4, zone_5 };

[[nodiscard]] constexpr std::array<const char*, 5> choices_of(Zone) { return {"1", "2", "3", "4", "5"}; }

/// Characteristic ground snow load.
/// s_k [kN/m2], A in m: zone 1 max(0.007 A - 1.4, 0.70); zone 2 0.9; zone 3 max(0.006 A - 0.6, 1.2); zone 4 1.6;
/// zone 5 max(0.93 exp(0.00134 A), 2.0)
/// \param altitude  A above sea level [m], 0 to 1500 m; a yard below the sea is entered as 0 m
/// \return s_k [Pa]
/// Limits: the altitude ends where EN 1991-1-3 does.
/// Source: National Annex to PN-EN 1991-1-3:2005, to 4.1(1); see the head of this file.
/// \throws InputError na_pl.zone.unknown, na_pl.altitude.range
[[nodiscard]] Pressure ground_load_4_1(Zone zone, Length altitude);

}  // namespace coverframe::na_pl
