// SPDX-License-Identifier: BSD-3-Clause
// Fitting a law to the yearly maxima of a place, and the load of a return period with a confidence interval.
//
// One maximum belongs to one winter (July to June in the north), in load, not depth: the deepest snow and the heaviest
// need not be of the same day. A winter without snow is 0 and stays in the series. Then
//
//     F(x) = p_0 + (1 - p_0) F_+(x),     p_0 = winters without snow / winters,
//
// where F_+ is fitted to the winters with snow alone. The load of T years is the one F_+ exceeds with the chance
// q = 1/(T (1 - p_0)); if q is 1 or more, T lies in the share of bare winters and the load is 0.
//
// Both laws are laws of a place and a scale: the Gumbel law of x, the lognormal law of ln x. Two methods find them:
//
//     moments    Gumbel: scale = s sqrt(6)/pi, mode = mean - 0.577216 scale;  lognormal: mean and s of ln x
//     L-moments  Gumbel: scale = l_2/ln 2, mode = mean - 0.577216 scale;      lognormal: mean and sqrt(pi) l_2 of ln x
//
// with s of n - 1 and the unbiased l_2 = 2 b_1 - mean, b_1 = sum of (i - 1)/(n - 1) x_(i) over n, x_(1) the least.
// L-moments let one great winter weigh less. Both methods for the lognormal law work on logarithms, so winters with a
// trace of snow weigh as much as great ones: a trace that does not matter for the cover is better written as 0.
//
// Fitting one Gumbel law to all winters, bare ones with the rest, is not offered: it gives negative loads in mild
// winters and bends the tail to fit them.
//
// The interval is a parametric bootstrap of the distance (estimate - truth)/fitted scale. Without bare winters that
// distance does not depend on the truth, so the interval holds its level for any number of winters. With bare winters
// the upper end holds too; the lower one is missed in up to 10 instead of 5 of 100 places if nine winters in ten are
// bare (simulated, 90 % intervals of 50-year loads). Intervals from the asymptotic variance are symmetric: their upper
// end, the one that matters, is missed in 10 to 13 instead of 5 of 100 places for 20 to 10 winters (simulated). None is
// offered.
//
// Random numbers: std::mt19937_64 from the given seed, u = ((raw >> 11) + 0.5) 2^-53. Each series takes one u for each
// winter, with snow if u < 1 - p_0 (none if no winter of the fit is bare), and then one for each winter with snow,
// whose maximum is the value exceeded with chance u. The same seed gives the same interval everywhere, but for the last
// digits of the system's logarithm.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <variant>

#include "coverframe/actions/extremes.hpp"

namespace coverframe::extremes {

/// How a law is fitted.
enum class Method { moments, l_moments };

[[nodiscard]] constexpr std::array<const char*, 2> choices_of(Method) { return {"moments", "l_moments"}; }

/// F_+(x) = exp(-exp(-(x - mode)/scale))
struct GumbelLaw {
    Pressure mode{};
    Pressure scale{};
};

/// F_+(x) = Phi(ln(x/median)/log_deviation)
struct LognormalLaw {
    Pressure median{};
    double log_deviation = 0;  ///< standard deviation of ln x [-]
};

inline constexpr int fewest_winters = 5;      ///< with snow; with fewer no law is fitted
inline constexpr int winters_for_a_law = 20;  ///< with snow; with fewer the fit carries a caution

/// A law of the yearly maxima of one place.
struct Fit {
    std::variant<GumbelLaw, LognormalLaw> law;  ///< of the winters with snow
    Method method = Method::l_moments;
    int winters = 0;  ///< all of them
    int winters_without_snow = 0;
    Pressure mean{};           ///< of the winters with snow
    double variation = 0;      ///< s/mean of the winters with snow [-]
    std::string caution = {};  ///< a sentence for whoever uses the load; empty if there is none
};

/// Share p_0 of winters without snow [-].
[[nodiscard]] double dry_share(const Fit& fit);

/// Gumbel law of the yearly maxima.
/// \param maxima  one for each winter [Pa]: 0, or 1 Pa to 100 kPa
/// Limits: at least 5 winters with snow; with fewer than 20 the fit carries a caution.
/// Source: moments read on a page (Ouranos, engineering portal, appendix A7), L-moments read on a page (manual of the
/// R package nsRFA, GUMBEL).
/// \throws InputError extremes.maxima.range (with the place of the item), extremes.maxima.no_snow,
///   extremes.maxima.few, extremes.maxima.equal
[[nodiscard]] Fit fit_gumbel(std::span<const Pressure> maxima, Method method = Method::l_moments);

/// Lognormal law of the yearly maxima.
/// Parameters, limits and errors as `fit_gumbel`.
/// Source: general statistics of the normal law; its L-scale l_2 = s/sqrt(pi) from memory, sure (Hosking 1990).
[[nodiscard]] Fit fit_lognormal(std::span<const Pressure> maxima, Method method = Method::l_moments);

/// Load of a return period.
/// Gumbel: x_T = mode - scale ln(-ln(1 - q));  lognormal: x_T = median exp(u_q log_deviation), Phi(u_q) = 1 - q;
/// q = 1/(T (1 - p_0));  0 if q >= 1
/// \param return_period  T [years], 2 to 1e6
/// \return x_T [Pa]
/// Limits: a Gumbel law with much scatter reaches below zero in mild winters. Only its upper tail is of use, and a T
/// for which it gives a negative load is refused. Far beyond the years observed the load tells about the law, not about
/// the place.
/// Source: the law itself.
/// \throws InputError extremes.return_period.range, extremes.return_period.low_tail, extremes.fit.range
[[nodiscard]] Pressure load(const Fit& fit, double return_period);

/// Random series the interval is made from.
struct Draws {
    int number = 10000;  ///< 1000 to 1000000
    std::uint64_t seed = 1;
};

/// A two-sided confidence interval: each end is missed with half of the rest.
struct Interval {
    Pressure low{};  ///< a Gumbel law may put it below zero; then it is 0, since no load is negative
    Pressure high{};
};

/// Confidence interval of the load of a return period.
/// low = estimate - scale d_(1 - (1 - level)/2), high = estimate - scale d_((1 - level)/2), d the drawn distances; for
/// the lognormal law in logarithms
/// \param return_period  T [years], 2 to 1e6
/// \param level          [-], 0.5 to 0.99
/// Limits: the law itself is taken to be right; that it may not be is not in the interval. Series that are drawn with
/// fewer than 5 winters with snow are drawn again, as no law would have been fitted.
/// Source: general statistics; for the lognormal law by moments it is the tolerance limit of a normal sample.
/// \throws InputError as `load`; extremes.level.range, extremes.draws.range; extremes.return_period.dry if T lies in
///   the share of bare winters, or so near it that it often does for the drawn series
[[nodiscard]] Interval interval(const Fit& fit, double return_period, double level = 0.9, const Draws& draws = {});

}  // namespace coverframe::extremes
