// SPDX-License-Identifier: BSD-3-Clause
// The word somebody may have meant.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace coverframe::plan_detail {

/// The candidate nearest to `word`, with at most one letter in three wrong; case, blanks, dashes and underscores do not
/// count. Empty if none is near: of "U1" and "U3" neither is what "U4" means.
[[nodiscard]] std::string_view nearest(std::string_view word, std::span<const std::string_view> candidates);

/// "; did you mean "thickness"?", or nothing.
[[nodiscard]] std::string did_you_mean(std::string_view word, std::span<const std::string_view> candidates);

}  // namespace coverframe::plan_detail
