// SPDX-License-Identifier: BSD-3-Clause
// The sheet of film to lay out, for text and job sheet.
#pragma once

#include <string>
#include <vector>

#include "coverframe/plan/plan.hpp"

namespace coverframe::reporting {

/// How large a sheet the cover takes, where it is widest, how the plan's own compares. Empty where no cover is drawn.
[[nodiscard]] std::vector<std::string> film_sheet_sentences(const Plan& plan);

}  // namespace coverframe::reporting
