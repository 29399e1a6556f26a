// SPDX-License-Identifier: BSD-3-Clause
// Cross straps and strap ridge: tension against working strength.
//
// The film also lies on a cross strap. The strip model does not carry that, so the check adds it: the strap is taken as
// a cable between its ends that carries the plan load of the strip of film over it (resistance is not increased), by
// H^3 - T0 H^2 - EA (w L)^2/24 = 0, T0 its tension in the frame. Load drawn to the strap from film further away is not in
// it.
#pragma once

#include "coverframe/checks/check.hpp"

namespace coverframe {

/// "strap.strength" for each cross strap leg, and for each bay of a strap ridge as "ridge.strap". Strength situations.
[[nodiscard]] std::vector<Finding> check_straps(const CheckInput& input);

}  // namespace coverframe
