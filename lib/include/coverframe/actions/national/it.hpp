// SPDX-License-Identifier: BSD-3-Clause
// Italy: technical rules for construction (DM 17.01.2018), ground snow load by zone and altitude.
//
// How it was read: the loads up to 200 m on pages; the formula of zone I alpine and the limit of 1500 m on a page
// quoting the decree before this one (it.doczz.net document 722400, DM 14.01.2008), the other three formulas on a page
// without a date (scribd document 547144216); that 2018 kept them from memory, sure. Which province lies in which zone
// changed in 2018.
//
// At 200 m the loads are not continuous, by design of the document: the formula begins up to 0.006 kN/m2 below the
// value that holds up to there.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::na_it {

inline const Clause clause_3_4_2{"DM 17.01.2018", "3.4.2"};

/// Snow zone.
enum class Zone { zone_1_alpine, zone_1_mediterranean, zone_2, zone_3 };

[[nodiscard]] constexpr std::array<const char*, 4> choices_of(Zone) {
    return {"I alpine", "I mediterranean", "II", "III"};
}

/// Characteristic ground snow load, return period 50 years.
/// q_sk [kN/m2], A in m, up to 200 m: 1.50 I alpine and I mediterranean, 1.00 II, 0.60 III; above: I alpine
/// 1.39 [1 + (A/728)^2]; I mediterranean 1.35 [1 + (A/602)^2]; II 0.85 [1 + (A/481)^2]; III 0.51 [1 + (A/481)^2]
/// \param altitude  A above sea level [m], 0 to 1500 m; a yard below the sea is entered as 0 m
/// \return q_sk [Pa]
/// Limits: above 1500 m the local climate decides, with at least the load of 1500 m.
/// Source: DM 17.01.2018, 3.4.2; see the head of this file.
/// \throws InputError na_it.zone.unknown, na_it.altitude.range
[[nodiscard]] Pressure ground_load_3_4_2(Zone zone, Length altitude);

}  // namespace coverframe::na_it
