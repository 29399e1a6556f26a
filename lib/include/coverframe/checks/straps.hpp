// SPDX-License-Identifier: BSD-3-Clause
// Cross straps and strap ridge: tension against working strength.
//
// The film also lies on a cross strap, and brings far more to it than what lies right over it: pulled across by its own
// sag, it pulls along the boat too, and climbs onto the leg, which sinks less than the film between two legs
// (film/film_on_strap.hpp). The leg then pulls the top of its upright over, and the leg on the other side tight. Both
// are in the second equilibrium of the cover (film/cover.hpp); its legs are judged here, each a cable on its chord:
//   T = T0 + 8/3 EA (f/l)^2 = r l^2/(8 f),  T_end = sqrt[(T + W sin/2)^2 + (W cos/2)^2],  W = r l/cos
// l the chord, f the sag square to it, r what the film brings, evenly spread, cos and sin of the chord's slope, T along
// it. The larger of T_end and the tension in the frame without film on the leg counts.
//
// On the four plans of the examples, with the bounds of strap and film together and without factors, the greatest pull
// on a leg of all arrangements is 0.99 to 1.33 times the one of film as a surface (assess/surface.hpp, columns 0.2 m
// apart, 12 rows); without snow, where little pulls, down to 0.94 times, and 0.83 times on a strap that is nearly
// slack.
#pragma once

#include "coverframe/checks/check.hpp"

namespace coverframe {

/// "strap.strength" for each leg of a cross strap and each other strap of a found frame ("C1 port"), and for each bay
/// of a strap ridge as "ridge.strap" ("ridge, U1 to U2"). A slack strap is satisfied, and its sentence says that it is
/// slack without film on it. Without a second equilibrium the legs are exceeded, and the sentence says why. Strength
/// situations.
/// \throws StateError as require_usable, and "checks.state.unusable" for a state without legs; InputError
/// "checks.strap" for a strap the plan does not have
[[nodiscard]] std::vector<Finding> check_straps(const CheckInput& input);

}  // namespace coverframe
