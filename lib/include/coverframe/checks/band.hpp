// SPDX-License-Identifier: BSD-3-Clause
// The perimeter band: the film pulls it up; belly straps and rub rail hold it down.
//
// Film tension at the rail goes on to the band undiminished (no friction on the rail), straight up the topside: the
// upper bound. Its pull per metre, p, is the tension at the lower end of a strip over the strip's width; the rub rail
// takes its share of that strip by strip, and none can be carried over to another strip.
//
// A belly strap holds the band from halfway to the one before it to halfway to the one behind it; the first and the
// last hold everything to the end of the boat. Between belly straps, and round the ends of the boat,
// the band is a cable,
//   H^3 - T0 H^2 - EA P^2/24 = 0,  T = sqrt(H^2 + (P/2)^2),
// T0 its pretension, P the pull on the span, EA the upper bound of its stiffness (the stiffer, the higher the tension).
//
// Simplifications: the topside gives no friction; the tension a belly strap was set to and the pull of the film are not
// added up, the larger one counts (hull and film are far stiffer than the strap); hangers hold nothing down.
#pragma once

#include "coverframe/checks/check.hpp"

namespace coverframe {

/// "band.lift" for each belly strap, counted from the bow as "belly strap 1" (the larger of its pretension and the pull
/// of its share of the band, less what the rub rail takes, on the leg that is pulled harder), and "band.tension" for
/// the band itself. Without belly straps, "band.lift" of the band is the largest pull per metre against the rub rail,
/// and exceeded without a rub rail either; "band.tension" is then the pretension, or not applicable where the band
/// lifts. Strength situations.
/// \throws StateError as require_usable; InputError "checks.strap" for a strap the plan does not have
[[nodiscard]] std::vector<Finding> check_band(const CheckInput& input);

}  // namespace coverframe
