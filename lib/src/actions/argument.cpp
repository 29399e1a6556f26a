// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/argument.hpp"

#include <array>
#include <charconv>
#include <string>

#include "coverframe/base/error.hpp"

namespace coverframe::argument {

namespace {

// Six significant digits, independent of the locale of the program.
std::string text_of(double value, const char* unit) {
    std::array<char, 32> digits{};
    const auto written =
        std::to_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::general, 6);
    std::string text(digits.data(), written.ptr);
    if (std::string(unit) != "-") text += std::string(" ") + unit;
    return text;
}

std::string requirement(const Name& name, double low, double high) {
    if (high == largest) {
        return low == 0.0 ? "must be a finite number, not negative" : "must be a finite, positive number";
    }
    return "must be from " + text_of(low, "-") + " to " + text_of(high, name.unit);
}

}  // namespace

void refuse(const Name& name, double value, double low, double high) {
    const std::string shown = text_of(value, name.unit);
    throw InputError(name.code, "", shown, std::string(name.name) + " " + shown + " " + requirement(name, low, high));
}

}  // namespace coverframe::argument
