// SPDX-License-Identifier: BSD-3-Clause
// Comparison of numbers and quantities in tests. Relative means relative to the expected value alone, with no hidden
// absolute part, so that it stays honest for a second moment of area of 1e-7 m4.
#pragma once

#include <cmath>
#include <limits>
#include <ostream>

/// What a comparison found; true if it holds. Printed by a failing CHECK, so that the numbers are seen.
struct Closeness {
    bool holds = false;
    double value = 0;
    double expected = 0;
    double allowed = 0;  ///< largest difference that passes, in the unit of the values

    explicit operator bool() const { return holds; }

    friend std::ostream& operator<<(std::ostream& out, const Closeness& c) {
        const auto before = out.precision(std::numeric_limits<double>::max_digits10);
        out << c.value << " for " << c.expected << ", off by " << std::abs(c.value - c.expected) << ", allowed "
            << c.allowed;
        out.precision(before);
        return out;
    }
};

/// |value - expected| <= allowed, in the unit of the values. False for anything that is not finite.
[[nodiscard]] inline Closeness close_abs(double value, double expected, double allowed) {
    return {std::isfinite(value) && std::isfinite(expected) && std::abs(value - expected) <= allowed, value, expected,
            allowed};
}

/// |value - expected| <= rel * |expected|. With 0 expected only 0 passes: say `close_abs` and what "near 0" means
/// there.
[[nodiscard]] inline Closeness close(double value, double expected, double rel) {
    return close_abs(value, expected, rel * std::abs(expected));
}

/// The same for two quantities of one kind, compared in SI.
template <class Quantity>
requires requires(Quantity quantity) { quantity.value(); }
[[nodiscard]] Closeness close(Quantity value, Quantity expected, double rel) {
    return close(value.value(), expected.value(), rel);
}

/// The same for two quantities of one kind; `allowed` is a quantity of that kind too.
template <class Quantity>
requires requires(Quantity quantity) { quantity.value(); }
[[nodiscard]] Closeness close_abs(Quantity value, Quantity expected, Quantity allowed) {
    return close_abs(value.value(), expected.value(), allowed.value());
}
