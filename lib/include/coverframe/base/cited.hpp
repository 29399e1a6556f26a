// SPDX-License-Identifier: BSD-3-Clause
// A value somebody chose, with the reason it is allowed to be that value.
#pragma once

#include <string>

namespace coverframe {

/// A number or choice and where it comes from: a clause, a data sheet, a measurement, "common practice, no source".
template <class Value>
struct Cited {
    Value value{};
    std::string source;

    bool operator==(const Cited&) const = default;
};

}  // namespace coverframe
