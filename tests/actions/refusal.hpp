// SPDX-License-Identifier: BSD-3-Clause
// What a rule says to an argument it does not cover.
#pragma once

#include <array>
#include <limits>
#include <string>

#include "coverframe/base/error.hpp"

/// Code of the InputError a call throws; "none" if it returns.
template <class Call>
[[nodiscard]] std::string code_of(Call&& call) {
    try {
        static_cast<void>(call());
    } catch (const coverframe::InputError& error) {
        return error.code();
    }
    return "none";
}

/// Numbers no rule may take.
inline constexpr std::array<double, 3> not_finite{std::numeric_limits<double>::quiet_NaN(),
                                                  std::numeric_limits<double>::infinity(),
                                                  -std::numeric_limits<double>::infinity()};
