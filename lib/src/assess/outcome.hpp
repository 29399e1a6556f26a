// SPDX-License-Identifier: BSD-3-Clause
#pragma once

#include "coverframe/assess/assess.hpp"

namespace coverframe::assess_detail {

/// Of what the assessment has found and could not find.
[[nodiscard]] Outcome outcome_of(const Assessment& assessment);

}  // namespace coverframe::assess_detail
