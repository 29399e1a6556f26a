// SPDX-License-Identifier: BSD-3-Clause
// A number of a frame in an error.
#pragma once

#include <array>
#include <cstdio>
#include <string>

namespace coverframe {

inline std::string text_of(double number) {
    std::array<char, 32> text{};
    (void)std::snprintf(text.data(), text.size(), "%.6g", number);
    return text.data();
}

}  // namespace coverframe
