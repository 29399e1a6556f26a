// SPDX-License-Identifier: BSD-3-Clause
// The word somebody may have meant.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace coverframe::plan_detail {

/// The candidate nearest to `word`: at most two letters wrong, or a third of them in a long word; or the same but for
/// case, blanks, dashes and underscores. Empty if none is near.
[[nodiscard]] std::string_view nearest(std::string_view word, std::span<const std::string_view> candidates);

/// "; did you mean "thickness"?", or nothing.
[[nodiscard]] std::string did_you_mean(std::string_view word, std::span<const std::string_view> candidates);

}  // namespace coverframe::plan_detail
