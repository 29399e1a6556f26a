// SPDX-License-Identifier: BSD-3-Clause
// Exponential, logarithm, power, sine, cosine and arc tangent for fast forms: series without a branch or a table, which
// compilers turn into vector code, and which give the same bits on every machine. Within the ranges stated they are off
// by a few roundings, held to the standard library within 1e-15. Outside they give nonsense; the form that calls them
// covers only what lies inside.
//
//   exp(x) = 2^n exp(r),  n = x/ln 2 rounded to a whole number,  r = x - n ln 2 in two parts,  exp(r) by its series
//   ln(x) = k ln 2 + ln(m),  x = 2^k m,  sqrt(1/2) <= m < sqrt(2),  ln(m) = 2 artanh(s) by its series,  s = (m-1)/(m+1)
#pragma once

#include <array>
#include <bit>
#include <cmath>
#include <cstddef>
#include <cstdint>

namespace coverframe::catalogue {

namespace elementary {

inline constexpr double log2_e = 1.4426950408889634;
inline constexpr double ln2_high = 0x1.62e42fee00000p-1;  ///< few digits, so that n times it is exact
inline constexpr double ln2_low = 0x1.a39ef35793c76p-33;  ///< ln 2 less ln2_high
inline constexpr double half_pi = 1.5707963267948966;
inline constexpr double half_pi_low = 6.123233995736766e-17;  ///< pi/2 less half_pi

/// 2^n for whole n from -1022 to 1023, and n as a number.
struct WholePower {
    double n;
    double power;
};

/// x/ln 2 rounded to a whole number, which stands in the last bits of a number whose last bit counts one.
constexpr WholePower whole_power(double x) {
    constexpr double counts_one = 0x1.8p52;
    const double shifted = x * log2_e + counts_one;
    const std::uint64_t bits = std::bit_cast<std::uint64_t>(shifted) << 52;
    return {shifted - counts_one, std::bit_cast<double>(bits + std::bit_cast<std::uint64_t>(1.0))};
}

/// exp(r) - 1 for |r| <= ln(2)/2: r + r^2/2! + ... + r^13/13!.
constexpr double series_expm1(double r) {
    const double r2 = r * r;
    const double r4 = r2 * r2;
    const double low = 0.5 + r * (1.0 / 6) + r2 * (1.0 / 24 + r * (1.0 / 120));
    const double middle = 1.0 / 720 + r * (1.0 / 5040) + r2 * (1.0 / 40320 + r * (1.0 / 362880));
    const double high = 1.0 / 3628800 + r * (1.0 / 39916800) + r2 * (1.0 / 479001600 + r * (1.0 / 6227020800));
    return r + r2 * (low + r4 * (middle + r4 * high));
}

}  // namespace elementary

/// exp(x) - 1 for x from -700 to 700, small where x is small.
constexpr double fast_expm1(double x) {
    const auto [n, power] = elementary::whole_power(x);
    const double r = (x - n * elementary::ln2_high) - n * elementary::ln2_low;
    return power * elementary::series_expm1(r) + (power - 1.0);
}

/// exp(x) for x from -700 to 700.
constexpr double fast_exp(double x) {
    const auto [n, power] = elementary::whole_power(x);
    const double r = (x - n * elementary::ln2_high) - n * elementary::ln2_low;
    return power * elementary::series_expm1(r) + power;
}

/// ln(x) for x from 1e-300 to 1e300.
constexpr double fast_log(double x) {
    constexpr std::uint64_t root_half = 0x3fe6a09e667f3bcd;  // bits of sqrt(1/2)
    constexpr std::uint64_t one = 0x3ff0000000000000;        // bits of 1
    constexpr std::uint64_t fraction = 0x000fffffffffffff;
    const std::uint64_t bits = std::bit_cast<std::uint64_t>(x) + (one - root_half);
    const double k = std::bit_cast<double>((bits >> 52) | 0x4330000000000000) - (0x1p52 + 1023.0);
    const double m = std::bit_cast<double>((bits & fraction) + root_half);
    const double f = m - 1.0;
    const double s = f / (2.0 + f);
    const double s2 = s * s;
    const double s4 = s2 * s2;
    const double even = 1.0 / 5 + s4 * (1.0 / 9 + s4 * (1.0 / 13 + s4 * (1.0 / 17 + s4 * (1.0 / 21))));
    const double odd = 1.0 / 3 + s4 * (1.0 / 7 + s4 * (1.0 / 11 + s4 * (1.0 / 15 + s4 * (1.0 / 19))));
    const double rest = 2.0 * s * s2 * (odd + s2 * even);  // 2 artanh(s) less 2 s
    return k * elementary::ln2_high + (2.0 * s + (rest + k * elementary::ln2_low));
}

/// ln(1 + x) for x from -0.999 to 1e300, small where x is small.
constexpr double fast_log1p(double x) {
    const double u = 1.0 + x;
    return fast_log(u) - ((u - 1.0) - x) / u;
}

/// x^y for x from 1e-300 to 1e300, y ln(x) from -700 to 700; relatively off by y ln(x) roundings.
constexpr double fast_power(double x, double y) { return fast_exp(y * fast_log(x)); }

/// sin(x) for x from 0 to pi/2: x - x^3/3! + ... + x^21/21!.
constexpr double fast_sin(double x) {
    constexpr std::array<double, 10> over{6.0,         20.0,        42.0,        72.0,        110.0,
                                          156.0,       210.0,       272.0,       342.0,       420.0};
    const double x2 = x * x;
    double series = 1.0;
    for (std::size_t k = over.size(); k-- > 0;) series = 1.0 - x2 * (1.0 / over[k]) * series;
    return x * series;
}

/// cos(x) for x from 0 to pi/2, small where it nears pi/2.
constexpr double fast_cos(double x) {
    return fast_sin((elementary::half_pi - x) + elementary::half_pi_low);
}

/// atan(x) for x from 0 to 1: four times that of a quarter of the angle, t - t^3/3 + ... - t^23/23.
inline double fast_atan(double x) {
    const double half = x / (1.0 + std::sqrt(1.0 + x * x));
    const double t = half / (1.0 + std::sqrt(1.0 + half * half));
    const double t2 = t * t;
    double series = 0.0;
    for (int k = 11; k >= 1; --k) series = (1.0 / (2.0 * k + 1.0) - series) * t2;
    return 4.0 * (t - t * series);
}

}  // namespace coverframe::catalogue
