// SPDX-License-Identifier: BSD-3-Clause
#include "units/inches.hpp"

#include <array>
#include <charconv>
#include <cmath>

#include "coverframe/units/crossing.hpp"

namespace coverframe::detail {
namespace {

/// Under an inch: two decimals, idle zeros left out, no "-0".
std::string hundredths(double in) {
    std::array<char, 16> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), in, std::chars_format::fixed, 2);
    std::string text(buffer.data(), end.ptr);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
}

}  // namespace

std::string inches(double metres) {
    const long eighths = std::lround(metres / factor::inch * 8.0);
    const long whole = eighths / 8;
    const long rest = eighths % 8;
    if (rest == 0) return std::to_string(whole);
    const long common = rest % 4 == 0 ? 4 : (rest % 2 == 0 ? 2 : 1);
    const std::string fraction = std::to_string(rest / common) + '/' + std::to_string(8 / common);
    return whole == 0 ? fraction : std::to_string(whole) + ' ' + fraction;
}

std::string feet_and_inches(double metres) {
    const long eighths = std::lround(std::abs(metres) / factor::inch * 8.0);
    if (eighths < 8) return hundredths(metres / factor::inch) + " in";
    const std::string sign = metres < 0 ? "-" : "";
    const long feet = eighths / 96;
    const std::string rest = inches(static_cast<double>(eighths % 96) / 8.0 * factor::inch) + " in";
    if (feet == 0) return sign + rest;
    return sign + std::to_string(feet) + " ft" + (eighths % 96 == 0 ? "" : ' ' + rest);
}

}  // namespace coverframe::detail
