// SPDX-License-Identifier: BSD-3-Clause
// Quantities as a sentence shows them: the plan's units first, the other system in brackets, no more digits than
// anybody on a boat can use. "3.4 kN (764 lbf)", "5 ft 6 in (1.68 m)", "149 kPa (3110 psf)".
//
// Numbers carry three significant digits, water two; lengths are whole millimetres from 10 mm to 1 m and centimetres
// beyond, or eighths of an inch as on a tape, hundredths under one inch. 1 US gallon = 231 cubic inches (exact).
#pragma once

#include <string>

#include "coverframe/plan/plan.hpp"
#include "coverframe/units/quantities.hpp"

namespace coverframe::checks_detail {

/// Significant digits without an exponent and without idle zeros; 0 under 0.00005.
/// \throws StateError "checks.number" for a number that is not finite
[[nodiscard]] std::string number_text(double number, int digits = 3);

/// 134 % for 1.336: whole per cent, tenths under 10 %.
[[nodiscard]] std::string percent_text(double ratio);

[[nodiscard]] std::string shown(Force force, UnitsShown first);              ///< N or kN, lbf
[[nodiscard]] std::string shown(Length length, UnitsShown first);            ///< mm or m, in or ft in
[[nodiscard]] std::string shown(LineLoad load, UnitsShown first);            ///< N/m or kN/m, plf
[[nodiscard]] std::string shown(Moment moment, UnitsShown first);            ///< N m or kN m, lbf ft
[[nodiscard]] std::string shown(Volume volume, UnitsShown first);            ///< litres, US gallons
[[nodiscard]] std::string shown(Angle angle);                                ///< degrees and tenths
[[nodiscard]] std::string shown_area_load(Pressure load, UnitsShown first);  ///< kPa, psf
[[nodiscard]] std::string shown_stress(Pressure stress, UnitsShown first);   ///< N/mm2, psi

}  // namespace coverframe::checks_detail
