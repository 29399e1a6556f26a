// SPDX-License-Identifier: BSD-3-Clause
// The perimeter band: the film pulls it up; belly straps and rub rail hold it down.
//
// Strip by strip, per metre of the boat, with T the tension at the lower end of the strip over its width:
//   pull on the band    T e^(-mu theta), not under the tension the film was shrunk to (film/rail.hpp); all of T unless
//                       the plan gives a friction mu that can be relied on. theta is the turn over the rail, from the
//                       film as it hangs to the line from rail to band
//   relief by the rail  T less the pull on the band
//   lift of the band    the upward part of the pull on it
//   net                 lift less what the rub rail takes; none of that can be carried over to another strip
// The workings give what a rough rail would leave beside it: between the two lies the truth.
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
