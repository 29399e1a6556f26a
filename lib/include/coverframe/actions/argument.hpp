// SPDX-License-Identifier: BSD-3-Clause
// How a rule refuses a number it does not cover. Nothing is clamped: an argument is used as it is, or InputError is
// thrown with the code of that argument, its value and the range of the rule.
//
// "Positive" and "not negative" end at 1e15 in the unit of the message, and "positive" begins at 1e-12. Within these
// bounds no rule of the library overflows, so a finite argument never gives an infinite or undefined result.
#pragma once

#include "coverframe/units/crossing.hpp"

namespace coverframe::argument {

/// What an argument is called in the message of its InputError.
struct Name {
    const char* code;  ///< stable code: "asce7_22.slope.range"
    const char* name;  ///< in words: "slope"
    const char* unit;  ///< unit of the value in the message; "-" for a pure number
};

inline constexpr double smallest = 1e-12;
inline constexpr double largest = 1e15;
inline constexpr double right_angle = 1.5707963267948968;  ///< [rad] pi/2, rounded up to cover 90 times one degree

/// \throws InputError always, with the code of `name`, the value and the range
[[noreturn]] void refuse(const Name& name, double value, double low, double high);

/// The value itself if it lies in [low, high].   \throws InputError otherwise, and for NaN
constexpr double within(double value, double low, double high, const Name& name) {
    if (!(value >= low && value <= high)) refuse(name, value, low, high);
    return value;
}

/// The value itself if it is positive.   \throws InputError otherwise, and for NaN and infinity
constexpr double positive(double value, const Name& name) { return within(value, smallest, largest, name); }

/// The value itself if it is zero or positive.   \throws InputError otherwise, and for NaN and infinity
constexpr double not_negative(double value, const Name& name) { return within(value, 0.0, largest, name); }

/// The slope in degrees if it lies between level and upright.   \throws InputError otherwise, and for NaN
constexpr double slope_in_deg(Angle slope, const char* code) {
    if (!(in_rad(slope) >= 0.0 && in_rad(slope) <= right_angle)) {
        refuse({code, "slope", "deg"}, in_deg(slope), 0.0, 90.0);
    }
    return in_deg(slope);
}

}  // namespace coverframe::argument
