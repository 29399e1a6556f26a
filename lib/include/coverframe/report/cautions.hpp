// SPDX-License-Identifier: BSD-3-Clause
// The cautions that stand on top of every report.
#pragma once

#include <span>
#include <string_view>

namespace coverframe {

/// A sentence each, in the order they are shown.
[[nodiscard]] std::span<const std::string_view> cautions();

}  // namespace coverframe
