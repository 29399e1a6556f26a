// SPDX-License-Identifier: BSD-3-Clause
// The uprights: as columns, as struts held sideways by straps, and on their feet.
#pragma once

#include "coverframe/checks/check.hpp"

namespace coverframe {

/// For each upright, strength situations:
///   "upright.column"  push against the column's strength between pinned ends (NDS 3.7.1 or EN 1995-1-1 6.3.2)
///   "upright.hold"    push against k h, k the sideways stiffness of straps and ridge at its top as they are under load
///   "upright.foot"    pressure under the pad against what the stand takes; an upright without a pad stands on its own
///                     section (depth fore and aft); not applicable where a found frame names no stand
/// An upright that has lifted off asks for nothing: satisfied, and its sentence says so.
/// \throws StateError as require_usable; InputError as check_ridge
[[nodiscard]] std::vector<Finding> check_uprights(const CheckInput& input);

}  // namespace coverframe
