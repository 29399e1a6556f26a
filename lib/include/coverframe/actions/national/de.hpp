// SPDX-License-Identifier: BSD-3-Clause
// Germany: National Annex to DIN EN 1991-1-3 of 2010, ground snow load by zone and altitude.
//
// How it was read: the formulas on a page (mauerwerksbau-lehre.de, lecture 3.2.4), where zone 2 stands with 0.91. The
// tables of two county building offices (Traunstein, after DIN EN 1991-1-3 of 12/2010; Forchheim) decide for 1.91: 36
// printed loads agree, and 0.91 misses 1.60 kN/m2 at 500 m by 0.70. A later edition of the annex is not known here.
//
// One county uses a zone "3a", which its numbers show to be 1.25 times zone 3, and asks for 12 and 15 % more in two of
// its villages. In zone 3 ask the authority.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::na_de {

inline const Clause clause_4_1{"DIN EN 1991-1-3/NA:2010", "NDP to 4.1(1)"};
inline const Clause clause_4_3{"DIN EN 1991-1-3/NA:2010", "NDP to 4.3(1)"};

/// Snow zone of the map.
enum class Zone { zone_1, zone_1a, zone_2, zone_2a, zone_3 };

[[nodiscard]] constexpr std::array<const char*, 5> choices_of(Zone) { return {"1", "1a", "2", "2a", "3"}; }

/// Characteristic ground snow load.
/// s_k [kN/m2], q = ((A + 140)/760)^2: zone 1 max(0.19 + 0.91 q, 0.65); zone 2 max(0.25 + 1.91 q, 0.85);
/// zone 3 max(0.31 + 2.91 q, 1.10); zones 1a and 2a 1.25 times zones 1 and 2, minimum too
/// \param altitude  A above sea level [m], 0 to 1500 m; a yard below the sea is entered as 0 m
/// \return s_k [Pa]
/// Limits: the minima of 1a and 2a are printed rounded, as 0.81 and 1.06.
/// Source: DIN EN 1991-1-3/NA:2010, to 4.1(1); see the head of this file.
/// \throws InputError na_de.zone.unknown, na_de.altitude.range
[[nodiscard]] Pressure ground_load_4_1(Zone zone, Length altitude);

/// Exceptional ground snow load in the North German lowland, an accidental situation beside the ordinary one.
/// s_Ad = 2.3 s_k
/// \param zone  1 or 2; the lowland has no other
/// \return s_Ad [Pa]
/// Limits: that the yard lies in the lowland is for the caller to know: roughly north of 52 degrees.
/// Source: DIN EN 1991-1-3/NA:2010, to 4.3(1), as DIN 1055-5:2005-07 had it; factor and partial factors of 1.0 read on
/// a page (din1055.de, Norddeutsches Tiefland), the zones and the clause number from memory, sure.
/// \throws InputError na_de.zone.range, na_de.zone.unknown, na_de.altitude.range
[[nodiscard]] Pressure exceptional_load_lowland_4_3(Zone zone, Length altitude);

}  // namespace coverframe::na_de
