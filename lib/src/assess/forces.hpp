// SPDX-License-Identifier: BSD-3-Clause
// The smallest and largest force in every part over all situations.
#pragma once

#include <vector>

#include "assess/solved.hpp"
#include "coverframe/assess/assess.hpp"

namespace coverframe::assess_detail {

/// Push of uprights, tension of straps, ridge bays (poles: bending moments and axial force; straps: tension), and what
/// the boat gives to the ridge ends; over the situations with equilibrium. Empty if there is none.
[[nodiscard]] std::vector<ForceRange> force_ranges(const std::vector<Solved>& solved);

}  // namespace coverframe::assess_detail
