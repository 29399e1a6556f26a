// SPDX-License-Identifier: BSD-3-Clause
// What an assessment says in sentences: why a situation cannot stand, and what was simplified.
#pragma once

#include <string>
#include <vector>

#include "coverframe/assess/assess.hpp"

namespace coverframe::assess_detail {

/// What cannot stand, where, and what to change; empty if the state is usable.
[[nodiscard]] std::string message_of(const Solution& solution);

/// A sentence for each different message, with the situations it belongs to.
[[nodiscard]] std::vector<std::string> failures_of(const std::vector<SituationResult>& situations);

/// What the model leaves out and what was read into the documents, a sentence each.
[[nodiscard]] std::vector<std::string> assumptions_of(const Plan& plan, const std::vector<Arrangement>& arrangements);

}  // namespace coverframe::assess_detail
