// SPDX-License-Identifier: BSD-3-Clause
// The film over windshield, console, arch: it must not touch.
#pragma once

#include "coverframe/checks/check.hpp"

namespace coverframe {

/// "clearance" for each obstacle. Every 25 mm along its outline the film's height in the loaded shape is compared with
/// the obstacle's; demand is how far the film comes down from its drawn place, capacity how far it may come down before
/// the required clearance is used up, at the point with the largest share of it used, or where there is none to use,
/// the least margin; the sentence tells how near it comes where it is nearest. Between strips the film is straight
/// along the boat. An obstacle that reaches out from under the film is not applicable, unless the part under the film
/// is exceeded already. Service situations.
/// \throws StateError as require_usable
[[nodiscard]] std::vector<Finding> check_clearance(const CheckInput& input);

}  // namespace coverframe
