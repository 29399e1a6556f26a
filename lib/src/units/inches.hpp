// SPDX-License-Identifier: BSD-3-Clause
// A length as a tape of feet and inches reads it.
#pragma once

#include <string>

namespace coverframe::detail {

/// Whole inches and eighths, without a unit: "3 1/2", "5/8", "0".
/// \param metres  not negative [m]
[[nodiscard]] std::string inches(double metres);

/// "24 ft 5 3/4 in": to an eighth of an inch, under one inch to a hundredth; "-1 ft 6 in" under zero.
/// \param metres  finite [m]
[[nodiscard]] std::string feet_and_inches(double metres);

}  // namespace coverframe::detail
