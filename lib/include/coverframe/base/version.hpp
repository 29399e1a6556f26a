// SPDX-License-Identifier: BSD-3-Clause
// The version of the library. Before 1.0 a new minor version may change names and results, afterwards only a new major.
#pragma once

#include <string_view>

namespace coverframe {

inline constexpr int version_major = 0;
inline constexpr int version_minor = 1;
inline constexpr int version_patch = 0;
inline constexpr std::string_view version = "0.1.0";

}  // namespace coverframe
