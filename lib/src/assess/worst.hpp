// SPDX-License-Identifier: BSD-3-Clause
// Every check in every situation, and the worst finding for each check and part.
#pragma once

#include <vector>

#include "assess/solved.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::assess_detail {

/// Strength checks in strength situations, service checks in service situations, as far as they found equilibrium. One
/// finding for each check and part, the worst (the first of equals); the list is sorted, worst first.
/// \param workings  the findings that are kept carry them
[[nodiscard]] std::vector<Finding> worst_findings(const Plan& plan, const std::vector<Solved>& solved, bool workings);

}  // namespace coverframe::assess_detail
