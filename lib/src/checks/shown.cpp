// SPDX-License-Identifier: BSD-3-Clause
#include "shown.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "coverframe/base/error.hpp"
#include "coverframe/units/crossing.hpp"
#include "units/inches.hpp"

namespace coverframe::checks_detail {
namespace {

constexpr int most_decimals = 4;
constexpr double gallon_m3 = 231.0 * factor::inch * factor::inch * factor::inch;

// A number with so many decimals, idle zeros after the point left out, and no "-0".
std::string with_decimals(double number, int decimals) {
    if (!std::isfinite(number)) throw StateError("checks.number", "a number in the state of the cover is not finite");
    std::array<char, 400> buffer{};
    const auto end =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), number, std::chars_format::fixed, decimals);
    std::string text(buffer.data(), end.ptr);
    if (decimals > 0) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') text.pop_back();
    }
    return text == "-0" ? "0" : text;
}

// The number as so many significant digits leave it.
double to_digits(double number, int digits) {
    if (number == 0.0 || !std::isfinite(number)) return number;
    const double step = std::pow(10.0, std::floor(std::log10(std::abs(number))) + 1.0 - digits);
    return step > 0.0 ? std::round(number / step) * step : 0.0;
}

std::string both(const std::string& si, const std::string& us, UnitsShown first) {
    return first == UnitsShown::si ? si + " (" + us + ")" : us + " (" + si + ")";
}

// In `small` units below a thousand of them, in `large` ones from there on.
std::string in_small_or_large(double in_small, const char* small, const char* large) {
    const double rounded = to_digits(in_small, 3);
    return std::abs(rounded) < 1000.0 ? number_text(in_small) + ' ' + small
                                      : number_text(in_small / 1000.0) + ' ' + large;
}

std::string metric_length(double metres) {
    const double mm = metres * 1000.0;
    if (std::abs(mm) < 9.95) return with_decimals(mm, 1) + " mm";
    if (std::abs(mm) < 999.5) return with_decimals(mm, 0) + " mm";
    return with_decimals(metres, 2) + " m";
}

}  // namespace

std::string number_text(double number, int digits) {
    const double rounded = to_digits(number, digits);
    if (rounded == 0.0 || !std::isfinite(rounded)) return with_decimals(rounded, 0);
    // the small number keeps 999.6 from counting as three digits before the point and 1000 as four
    const int before_point = static_cast<int>(std::floor(std::log10(std::abs(rounded)) + 1e-12)) + 1;
    return with_decimals(rounded, std::clamp(digits - before_point, 0, most_decimals));
}

std::string percent_text(double ratio) {
    const double percent = 100.0 * ratio;
    return with_decimals(percent, std::abs(percent) < 9.95 ? 1 : 0) + " %";
}

std::string shown(Force force, UnitsShown first) {
    return both(in_small_or_large(in_N(force), "N", "kN"), number_text(in_lbf(force)) + " lbf", first);
}

std::string shown(Length length, UnitsShown first) {
    return both(metric_length(in_m(length)), detail::feet_and_inches(in_m(length)), first);
}

std::string shown(LineLoad load, UnitsShown first) {
    return both(in_small_or_large(in_N_per_m(load), "N/m", "kN/m"), number_text(in_plf(load)) + " plf", first);
}

std::string shown(Moment moment, UnitsShown first) {
    return both(in_small_or_large(in_N_m(moment), "N m", "kN m"), number_text(in_lbf_ft(moment)) + " lbf ft", first);
}

std::string shown(Volume volume, UnitsShown first) {
    return both(number_text(in_m3(volume) * 1000.0, 2) + " L", number_text(in_m3(volume) / gallon_m3, 2) + " US gal",
                first);
}

std::string shown(Angle angle) { return with_decimals(in_deg(angle), 1) + " deg"; }

std::string shown_area_load(Pressure load, UnitsShown first) {
    return both(number_text(in_kPa(load)) + " kPa", number_text(in_psf(load)) + " psf", first);
}

std::string shown_stress(Pressure stress, UnitsShown first) {
    return both(number_text(in_N_per_mm2(stress)) + " N/mm2", number_text(in_psi(stress)) + " psi", first);
}

}  // namespace coverframe::checks_detail
