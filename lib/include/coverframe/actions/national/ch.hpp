// SPDX-License-Identifier: BSD-3-Clause
// Switzerland: SIA 261:2014, ground snow load by altitude.
//
// How it was read: the edition, the five corrections of the map and the limit of 2000 m on a page (German Wikipedia,
// Schneelast in der Schweiz), where the formula is a picture; the formula from memory, sure. The city of Winterthur
// prints 160 kg/m2 at 600 m and 250 kg/m2 at 800 m, which the formula meets to the printed ten without a correction; it
// prints 100 kg/m2 at 400 m, where the formula has 94.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::na_ch {

inline const Clause clause_5{"SIA 261:2014", "5, Annex D"};

/// Correction of the altitude, from the map.
enum class Correction { minus_200_m, none, plus_200_m, plus_400_m, plus_500_m };

[[nodiscard]] constexpr std::array<const char*, 5> choices_of(Correction) {
    return {"-200 m", "0 m", "+200 m", "+400 m", "+500 m"};
}

/// Characteristic ground snow load and the altitude it is taken at.
struct GroundLoad {
    Length reference_altitude{};  ///< h_0 [m]
    Pressure load{};              ///< s_k [Pa]
};

/// Characteristic ground snow load.
/// s_k = 0.4 [1 + (h_0/350)^2], at least 0.9 [kN/m2]; h_0 = altitude + correction, in m
/// \param altitude  of the yard above sea level [m], 0 to 2000 m
/// Limits: above 2000 m an expert report.
/// Source: SIA 261:2014, 5 and Annex D; see the head of this file.
/// \throws InputError na_ch.correction.unknown, na_ch.altitude.range
[[nodiscard]] GroundLoad ground_load_5(Length altitude, Correction correction);

}  // namespace coverframe::na_ch
