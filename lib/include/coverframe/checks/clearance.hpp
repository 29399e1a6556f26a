// SPDX-License-Identifier: BSD-3-Clause
// The film over windshield, console, arch: it must not touch.
#pragma once

#include "coverframe/checks/check.hpp"

namespace coverframe {

/// "clearance" for each obstacle. Along its outline the film's height in the loaded shape is compared with the obstacle's;
/// demand is how far the film comes down from its drawn place where it is closest, capacity how far it may come down
/// before the required clearance is used up. Service situations.
[[nodiscard]] std::vector<Finding> check_clearance(const CheckInput& input);

}  // namespace coverframe
