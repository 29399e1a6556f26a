// SPDX-License-Identifier: BSD-3-Clause
// Strap kinds of the plan and what they carry.
#pragma once

#include <string>
#include <vector>

#include "coverframe/plan/plan.hpp"
#include "coverframe/resistance/strap.hpp"

namespace coverframe::checks_detail {

/// \throws InputError "checks.strap" if the plan has no such kind
[[nodiscard]] const StrapKind& strap_kind(const Plan& plan, const std::string& name);

[[nodiscard]] Force strap_strength(const StrapKind& kind);

void add_strength_terms(std::vector<Term>& terms, const StrapKind& kind);

}  // namespace coverframe::checks_detail
