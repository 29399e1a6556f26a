// SPDX-License-Identifier: BSD-3-Clause
// What about a plan cannot stand: values that are not believed, and parts that do not fit one another: names that
// exist, an upright on the boat, a ridge above the rail, straps on both sides. The shape of a file and its units are
// the reader's business (plan/read.hpp), which ends with this. The codes are listed in plan/codes.hpp.
//
// A part that is too weak is no problem here but a finding of the checks, and so is a clearance that is too small.
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
