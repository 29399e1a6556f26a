// SPDX-License-Identifier: BSD-3-Clause
// The ridge: a timber pole in bending about both axes with push or pull, and shear. A strap ridge: checks/straps.hpp.
#pragma once

#include "coverframe/checks/check.hpp"

namespace coverframe {

/// "ridge.bending" for each bay of a pole ridge (NDS 3.9 or EN 1995-1-1 6.2.3, 6.3.2, 6.3.3), "ridge.shear" (NDS 3.4 or
/// EN 1995-1-1 6.1.7), and "ridge.bearing" over each upright (NDS 3.10.4 or EN 1995-1-1 6.1.5). Strength situations.
[[nodiscard]] std::vector<Finding> check_ridge(const CheckInput& input);

}  // namespace coverframe
