// SPDX-License-Identifier: BSD-3-Clause
// How a number stands on paper: the plan's units first, the other system beside. Plain numbers come in with the name of
// their unit, as findings and forces carry them.
#pragma once

#include <string>
#include <string_view>

#include "coverframe/plan/plan.hpp"

namespace coverframe::reporting {

/// A decimal number with a fixed count of decimals; never "-0", never an exponent.
/// \throws StateError "report.number" if it is not finite
[[nodiscard]] std::string fixed(double value, int decimals);

/// `digits` significant digits without idle zeros; below 1e-4 and from 1e7 on with a power of ten.
[[nodiscard]] std::string rounded(double value, int digits = 3);

/// "82 %", whole per cent: for shares that have no limit to pass.
[[nodiscard]] std::string whole_percent(double share);

/// "82 %". Never reads "100 %" for a share that is not exactly one.
[[nodiscard]] std::string percent(double share);

/// Two texts for one value: in the plan's units, and in the other system (empty if that says nothing new).
struct Shown {
    std::string first;
    std::string other;
};

/// \param unit  "m", "mm", "N", "kN", "N m", "N/m", "kPa", "N/mm2", "N/m3", "m3", "deg", "-", ...; a unit that is not
///              known is printed as it is
/// \param digits  significant digits; more than 3 also turns feet and inches into decimal inches, to be worked with
/// \param beside  another number in `unit` it stands next to; both are then shown in the unit that suits the larger
[[nodiscard]] Shown shown(double value, std::string_view unit, UnitsShown units, int digits = 3, double beside = 0);

/// "1.68 m (5 ft 6 1/8 in)".
[[nodiscard]] std::string both(double value, std::string_view unit, UnitsShown units, int digits = 3,
                               double beside = 0);

/// In the plan's units alone, for drawings.
[[nodiscard]] std::string alone(double value, std::string_view unit, UnitsShown units);

[[nodiscard]] std::string both(Length length, UnitsShown units);
[[nodiscard]] std::string both(Force force, UnitsShown units);
[[nodiscard]] std::string alone(Length length, UnitsShown units);

/// Thickness of film: "0.18 mm (7 mil)".
[[nodiscard]] std::string thickness(Length length, UnitsShown units);

/// Breadth by depth: "38 x 89 mm (1 1/2 x 3 1/2 in)".
[[nodiscard]] std::string section(const Section& section, UnitsShown units);

}  // namespace coverframe::reporting
