// SPDX-License-Identifier: BSD-3-Clause
// The standard laws: Gumbel of mode 0 and scale 1, normal of mean 0 and deviation 1. Plain numbers, no checks.
#pragma once

#include <array>
#include <charconv>
#include <cmath>
#include <numbers>
#include <string>

#include <boost/math/distributions/normal.hpp>

#include "coverframe/actions/extremes.hpp"

namespace coverframe::extremes::law {

/// In double alone, so that compilers with a wider long double give the same numbers.
using Normal =
    boost::math::normal_distribution<double,
                                     boost::math::policies::policy<boost::math::policies::promote_double<false>>>;

inline constexpr double gumbel_mean = std::numbers::egamma;
inline const double gumbel_deviation = std::numbers::pi / std::sqrt(6.0);

/// The value exceeded with chance `q`, 0 < q < 1.
inline double gumbel_exceeded(double q) { return -std::log(-std::log1p(-q)); }
inline double normal_exceeded(double q) { return boost::math::quantile(boost::math::complement(Normal(), q)); }
inline double exceeded(Family family, double q) {
    return family == Family::gumbel ? gumbel_exceeded(q) : normal_exceeded(q);
}

/// Chance of exceeding `y`.
inline double gumbel_chance_over(double y) { return -std::expm1(-std::exp(-y)); }
inline double normal_chance_over(double u) { return boost::math::cdf(boost::math::complement(Normal(), u)); }

/// Six significant digits, independent of the locale of the program.
inline std::string text_of(double value) {
    std::array<char, 32> digits{};
    const auto written =
        std::to_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::general, 6);
    return {digits.data(), written.ptr};
}

}  // namespace coverframe::extremes::law
