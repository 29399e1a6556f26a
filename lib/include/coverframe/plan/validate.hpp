// SPDX-License-Identifier: BSD-3-Clause
// What about a plan cannot stand. Shape and units are the reader's business (plan/read.hpp); here it is whether the
// parts fit one another: names that exist, an upright on the boat, a ridge above the rail, straps on both sides.
#pragma once

#include <vector>

#include "coverframe/base/error.hpp"
#include "coverframe/plan/plan.hpp"

namespace coverframe {

/// Every problem of the plan, in the order of the document; empty if it can be laid out.
[[nodiscard]] std::vector<Problem> problems_of(const Plan& plan);

/// \throws InputError with every problem, if there is any
void require_valid(const Plan& plan);

}  // namespace coverframe
