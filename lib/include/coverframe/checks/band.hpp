// SPDX-License-Identifier: BSD-3-Clause
// The perimeter band: the film pulls it up; belly straps and rub rail hold it down.
//
// Film tension at the rail goes on to the band undiminished (no friction on the rail), straight up the topside: the
// upper bound. Between belly straps the band is a cable, H^3 - T0 H^2 - EA (p a)^2/24 = 0.
#pragma once

#include "coverframe/checks/check.hpp"

namespace coverframe {

/// "band.lift" for each belly strap (pull of its share of the band on one leg, less what the rub rail takes) and
/// "band.tension" for the band itself, on the side that is pulled harder. Without belly straps, "band.lift" of the whole
/// side against the rub rail; without either, exceeded. Strength situations.
[[nodiscard]] std::vector<Finding> check_band(const CheckInput& input);

}  // namespace coverframe
