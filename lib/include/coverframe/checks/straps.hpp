// SPDX-License-Identifier: BSD-3-Clause
// Cross straps and strap ridge: tension against working strength.
//
// The film also lies on a cross strap. The strip model does not carry that, so the check adds it: the strap is taken as
// a cable on its chord that carries the load W of the strip of film over it (resistance is not increased),
//   T^3 - T0 T^2 - EA (W cos)^2/24 = 0,  T_end = sqrt[(T + W sin/2)^2 + (W cos/2)^2],
// T0 its tension in the frame (negative if slack: EA times what is left of the slack over its free length), cos and sin
// of the slope of its chord, T along the chord, T_end at the upper end. The strip is the one that hangs on the strap's
// end at the ridge, as wide as its share of the ridge; load drawn to the strap from film further away is not in it.
// On the four plans of the examples film as a surface (assess/surface.hpp) pulls the legs 15 to 47 % harder than that,
// without factors: a strap that is nearly used up has to be looked at there.
#pragma once

#include "coverframe/checks/check.hpp"

namespace coverframe {

/// "strap.strength" for each leg of a cross strap and each other strap of a found frame ("C1 port"), and for each bay
/// of a strap ridge as "ridge.strap" ("ridge, U1 to U2"). A slack strap is satisfied, and its sentence says that it is
/// slack. Strength situations.
/// \throws StateError as require_usable; InputError "checks.strap" for a strap the plan does not have
[[nodiscard]] std::vector<Finding> check_straps(const CheckInput& input);

}  // namespace coverframe
