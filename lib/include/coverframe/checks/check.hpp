// SPDX-License-Identifier: BSD-3-Clause
// What a check is given, and the parts every check shares.
//
// A check looks at one situation and gives one finding for each part it judges; assess/ keeps the worst over all
// situations. A check refuses a state that is not in equilibrium.
#pragma once

#include <string>
#include <vector>

#include "coverframe/base/finding.hpp"
#include "coverframe/film/cover.hpp"
#include "coverframe/plan/plan.hpp"

namespace coverframe {

struct CheckInput {
    const Plan& plan;
    const Cover& cover;       ///< rigged
    const CoverState& state;  ///< usable
    std::string situation;    ///< name, copied into the findings
    bool workings = false;    ///< fill Finding::workings
};

/// \throws StateError "checks.state.unusable" unless the state is in equilibrium and is one of this cover
void require_usable(const CheckInput& input);

/// A finding with utilisation demand/capacity and the verdict that follows. A capacity of zero or less is exceeded, and
/// has no utilisation; so has one too small to divide by.
/// \throws StateError "checks.number" for a demand or capacity that is not finite
[[nodiscard]] Finding compare(std::string check, std::string part, Clause clause, const CheckInput& input,
                              double demand, double capacity, std::string unit);

}  // namespace coverframe
