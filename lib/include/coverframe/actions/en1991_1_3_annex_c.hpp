// SPDX-License-Identifier: BSD-3-Clause
// EN 1991-1-3:2003, Annex C: characteristic ground snow load of ten European climatic regions, by zone and altitude.
//
// The annex is informative. Where a country has a National Annex, that annex rules (`actions/national`); Sweden forbids
// the map of this one. The zone number is read from the map of the region by whoever knows the site; the library has no
// maps. The Czech Republic and Poland have maps of their own in the annex.
//
// How it was read: the alpine row agrees with eight altitudes printed for Austria (wissenwiki.de, Schneelastzonen), and
// its zone numbers were read on a page. The other seven formulas are from memory, sure, and no printed number was found
// to hold against them; their zone numbers are from memory, fairly sure.
#pragma once

#include <array>
#include <span>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::en1991_1_3 {

inline const Clause annex_C{"EN 1991-1-3:2003", "Annex C, Table C.1"};

/// A region with a map of its own.
enum class ClimaticRegion {
    alpine,
    central_east,
    central_west,
    greece,
    iberian_peninsula,
    mediterranean,
    sweden_finland,
    uk_ireland,
    norway,   ///< map of the national authority, no formula
    iceland,  ///< map of the national authority, no formula
};

[[nodiscard]] constexpr std::array<const char*, 10> choices_of(ClimaticRegion) {
    return {"alpine",         "central east", "central west", "greece", "iberian peninsula", "mediterranean",
            "sweden finland", "uk ireland",   "norway",       "iceland"};
}

/// The zone numbers Z on the map of a region: 1, 2, 4 in Greece and Iberia, none for Norway and Iceland, 1, 2, 3, 4.5
/// in the others.
/// \throws InputError en1991_1_3.region.unknown
[[nodiscard]] std::span<const double> map_zones(ClimaticRegion region);

/// Characteristic ground snow load of a zone at an altitude, return period 50 years.
/// s_k [kN/m2], A in m:
///   alpine (0.642 Z + 0.009)[1 + (A/728)^2];      central east (0.264 Z - 0.002)[1 + (A/256)^2];
///   Greece (0.420 Z - 0.030)[1 + (A/917)^2];      Iberia (0.190 Z - 0.095)[1 + (A/524)^2];
///   Mediterranean (0.498 Z - 0.209)[1 + (A/452)^2];
///   central west 0.164 Z - 0.082 + A/966;         Sweden and Finland 0.790 Z + 0.375 + A/336;
///   United Kingdom and Ireland 0.140 Z - 0.1 + A/501
/// \param zone      Z, one of `map_zones(region)`
/// \param altitude  of the yard above sea level [m], 0 to 1500 m (1.1); a yard below the sea is entered as 0 m
/// \return s_k [Pa]
/// Limits: no exceptional snow. Norway and Iceland have no formula and are refused.
/// Source: EN 1991-1-3:2003, Annex C, Table C.1; see the head of this file.
/// \throws InputError en1991_1_3.region.range (Norway, Iceland), en1991_1_3.region.unknown, en1991_1_3.zone.range,
///   en1991_1_3.altitude.range
[[nodiscard]] Pressure ground_load_C_1(ClimaticRegion region, double zone, Length altitude);

}  // namespace coverframe::en1991_1_3
