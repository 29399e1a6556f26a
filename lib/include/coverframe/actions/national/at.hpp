// SPDX-License-Identifier: BSD-3-Clause
// Austria: OENORM B 1991-1-3, ground snow load by zone and altitude.
//
// How it was read: inferred. A page prints, for each of four zones, the altitudes at which the load reaches 3.25 and
// 4.0 kN/m2 (wissenwiki.de, Schneelastzonen); all eight are met by the alpine row of EN 1991-1-3, Annex C, with
// Z = 1.6, 2, 3, 4.5. Two of the four Z were chosen to fit, so six of the eight numbers speak for the formula.
//
// The edition of 2022 replaced zones and place list by a hazard map in the net (handwerkundbau.at), which this does not
// know. Edition of the zones as read, not stated.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::na_at {

inline const Clause clause_4_1{"OENORM B 1991-1-3, before 2022", "4.1(1)"};

/// Snow zone of the map.
enum class Zone { zone_2_star, zone_2, zone_3, zone_4 };

[[nodiscard]] constexpr std::array<const char*, 4> choices_of(Zone) { return {"2*", "2", "3", "4"}; }

/// Characteristic ground snow load.
/// s_k = (0.642 Z + 0.009)[1 + (A/728)^2] [kN/m2], A in m; Z = 1.6 in zone 2*, 2 in 2, 3 in 3, 4.5 in 4
/// \param altitude  A above sea level [m], 0 to 1500 m
/// \return s_k [Pa]
/// Limits: the list of places comes before the formula.
/// Source: OENORM B 1991-1-3; see the head of this file.
/// \throws InputError na_at.zone.unknown, na_at.altitude.range
[[nodiscard]] Pressure ground_load_4_1(Zone zone, Length altitude);

}  // namespace coverframe::na_at
