// SPDX-License-Identifier: BSD-3-Clause
// France: National Annex to NF EN 1991-1-3, ground snow load by region and altitude, exceptional snow, low slopes.
//
// How it was read: the loads of A2, B1, B2 and which regions have exceptional snow on pages (scribd document 627038731,
// sii.gitbook.io, Charges climatiques), 0.45 in A2 with two examples; the other base loads and the altitude formulas
// from memory, sure. Edition as read, not stated there.
//
// Low slopes: one source has 0.2 kN/m2 under 5 % (the school page), another 0.2 under 3 % (solution sheet of an
// exercise); 0.1 from 3 to 5 % is from memory, sure. Under 3 % both agree.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::na_fr {

inline const Clause clause_4_1{"NF EN 1991-1-3/NA, edition as read", "4.1(1)"};
inline const Clause clause_4_3{"NF EN 1991-1-3/NA, edition as read", "4.3(1)"};
inline const Clause clause_5_2{"NF EN 1991-1-3/NA, edition as read", "5.2"};

/// Snow region of the map.
enum class Region { a1, a2, b1, b2, c1, c2, d, e };

[[nodiscard]] constexpr std::array<const char*, 8> choices_of(Region) {
    return {"A1", "A2", "B1", "B2", "C1", "C2", "D", "E"};
}

/// Characteristic ground snow load and what it is made of.
struct GroundLoad {
    Pressure base{};      ///< up to 200 m [Pa]
    Pressure addition{};  ///< for the altitude [Pa]
    Pressure load{};      ///< s_k [Pa]
};

/// Characteristic ground snow load.
/// s_k = base + addition [kN/m2]; base 0.45 A1 A2, 0.55 B1 B2, 0.65 C1 C2, 0.90 D, 1.40 E; addition with a = A/1000:
///   all but E  0 to 200 m, a - 0.20 to 500 m, 1.5 a - 0.45 to 1000 m, 3.5 a - 2.45 to 2000 m;
///   E          0 to 200 m, 1.5 a - 0.30 to 500 m, 3.5 a - 1.30 to 1000 m, 7 a - 4.80 to 2000 m
/// \param altitude  A above sea level [m], 0 to 2000 m; a yard below the sea is entered as 0 m
/// Limits: mainland and Corsica.
/// Source: NF EN 1991-1-3/NA, to 4.1(1); see the head of this file.
/// \throws InputError na_fr.region.unknown, na_fr.altitude.range
[[nodiscard]] GroundLoad ground_load_4_1(Region region, Length altitude);

/// Exceptional ground snow load, an accidental situation beside the ordinary one.
/// s_Ad = 1.00 A2 B1, 1.35 B2 C2, 1.80 D [kN/m2], at any altitude
/// \return s_Ad [Pa]
/// Limits: A1, C1 and E have no exceptional snow and are refused.
/// Source: NF EN 1991-1-3/NA, to 4.3(1); regions read on a page, 1.00 in A2 with an example, the other values in part;
/// that altitude does not matter from memory, sure.
/// \throws InputError na_fr.region.range (A1, C1, E), na_fr.region.unknown
[[nodiscard]] Pressure exceptional_load_4_3(Region region);

/// Addition to the load of a slope so low that rain and meltwater stay in the snow.
/// 0.2 kN/m2 under 3 %, 0.1 from 3 to 5 %, none above
/// \param slope  of the cover or the valley [rad], 0 to pi/2
/// \return to be added to the snow load of the slope, normal and exceptional [Pa]
/// Limits: not continuous, by design of the document.
/// Source: NF EN 1991-1-3/NA, to 5.2; see the head of this file.
/// \throws InputError na_fr.slope.range
[[nodiscard]] Pressure low_slope_addition_5_2(Angle slope);

}  // namespace coverframe::na_fr
