// SPDX-License-Identifier: BSD-3-Clause
// Snow of one winter against snow of many: loads of other return periods, and chances over several winters.
//
// The yearly maximum of the snow load is a random number X; x_T is exceeded in one winter with the chance 1/T. Two laws
// are in use. EN 1991-1-3 Annex D takes the Gumbel law, North American practice the lognormal one; up to a coefficient
// of variation of 0.4 they hardly differ at 50 years, from 0.6 on they part in both directions. Nobody is given a
// reduced load by default: a caller asks for it, names the law and says where the coefficient of variation is from.
//
// The season. A yearly maximum belongs to one whole winter. A cover that stands from hauling out to launching, four to
// seven months (common practice, no source), meets the greatest load of the winter unless it is struck before the month
// of greatest load, so no load and no chance is scaled by months: winters are counted in whole numbers.
//
// A cover rigged again every winter meets a new trial every winter. Its chance over the years is
// `exceedance_in_winters`, whatever the label "temporary" says.
//
// Winters are taken to be independent and alike. A climate that changes is neither.
#pragma once

#include <array>

#include "coverframe/base/finding.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe::extremes {

inline const Clause clause_gumbel{"general statistics", "Gumbel law of yearly maxima"};
inline const Clause clause_lognormal{"general statistics", "lognormal law of yearly maxima"};
inline const Clause clause_laws{"general statistics", "laws of yearly maxima"};
inline const Clause clause_winters{"general statistics", "independent winters"};
inline const Clause clause_reliability{"EN 1990:2002", "C7"};

/// Law of the yearly maxima.
enum class Family {
    gumbel,     ///< F(x) = exp(-exp(-(x - mode)/scale)), as EN 1991-1-3 Annex D
    lognormal,  ///< the logarithm is normal, as practice in the United States
};

[[nodiscard]] constexpr std::array<const char*, 2> choices_of(Family) { return {"gumbel", "lognormal"}; }

inline constexpr double shortest_return_period = 2.0;  ///< [years] below it both laws are of no use
inline constexpr double longest_return_period = 1e6;   ///< [years]

/// Frequency factor of the Gumbel law: x_T = mean + k_T times standard deviation.
/// k_T = -(sqrt(6)/pi) (0.577216 + ln(-ln(1 - 1/T)))
/// \param return_period  T [years], 2 to 1e6
/// \return k_T [-]
/// Limits: mean and deviation of the law itself. With the mean and deviation of a short series use `fit_gumbel`, which
/// also says how far off the load may be.
/// Source: quantile and moments of the law read on a page (Ouranos, engineering portal, appendix A7).
/// \throws InputError extremes.return_period.range
[[nodiscard]] double gumbel_frequency_factor(double return_period);

/// Load of a return period as a multiple of the mean yearly maximum.
/// Gumbel: x_T/mean = 1 + V k_T;  lognormal: x_T/mean = exp(u_T s - s^2/2), s^2 = ln(1 + V^2), Phi(u_T) = 1 - 1/T
/// \param family         law of the yearly maxima
/// \param variation      V, standard deviation over mean of the yearly maxima [-], 0 to 2
/// \param return_period  T [years], 2 to 1e6
/// \return x_T/mean [-]
/// Limits: every winter has snow; for places with bare winters fit their maxima.
/// Source: definitions of the two laws; Gumbel as above, lognormal derived.
/// \throws InputError extremes.variation.range, extremes.return_period.range
[[nodiscard]] double load_over_mean(Family family, double variation, double return_period);

/// Load of a return period as a multiple of the 50-year load.
/// x_T/x_50 = (x_T/mean)/(x_50/mean)
/// \param family         law of the yearly maxima
/// \param variation      V [-], 0 to 2
/// \param return_period  T [years], 2 to 1e6
/// \return x_T/x_50 [-]; 1 if T is 50 or V is 0
/// Limits: as above. The figure of EN 1991-1-3 Annex D covers V from 0.2 to 0.6 (from memory); at V of 0.8 the laws
/// give 0.67 (Gumbel) and 0.58 (lognormal) for 10 years.
/// Source: as above.
/// \throws InputError extremes.variation.range, extremes.return_period.range
[[nodiscard]] double load_over_50_year_load(Family family, double variation, double return_period);

/// Load of a return period from the 50-year load.
/// x_T = x_50 (x_T/x_50)
/// \param load_50  x_50 [Pa], 0 to 100 kPa. Not a strength-level load of ASCE 7-22, which has no return period
/// \return x_T [Pa]
/// Limits and source: as above.
/// \throws InputError extremes.load.range, extremes.variation.range, extremes.return_period.range
[[nodiscard]] Pressure load_of_return_period(Pressure load_50, Family family, double variation, double return_period);

/// Return period of a multiple of the 50-year load, such as a 50-year load times its partial factor.
/// T = 1/(1 - F(multiple x_50))
/// \param family     law of the yearly maxima
/// \param variation  V [-], 0.05 to 2
/// \param multiple   x/x_50 [-], from that of 2 years to that of 1e6 years
/// \return T [years], 2 to 1e6
/// Limits: as above. Far beyond the years of observation T tells about the law, not about the place.
/// Source: inverse of `load_over_50_year_load`.
/// \throws InputError extremes.variation.range, extremes.multiple.range
[[nodiscard]] double return_period_of_multiple(Family family, double variation, double multiple);

/// Chance that the load of a return period is exceeded at least once in some winters.
/// P = 1 - (1 - 1/T)^N
/// \param return_period  T [years], 2 to 1e6
/// \param winters        N [-], a whole number, 1 to 1000: for how many winters the cover, or its frame, is rigged
/// \return P [-]
/// Limits: independent winters, all alike.
/// Source: read on a page (flood hazard report, weblink of the Colorado Water Conservation Board, document 54318).
/// \throws InputError extremes.return_period.range, extremes.winters.range
[[nodiscard]] double exceedance_in_winters(double return_period, double winters);

/// Yearly chance that goes with a chance over some winters.
/// p = 1 - (1 - P)^(1/N)
/// \param chance   P [-], 1e-6 to 0.999
/// \param winters  N [-], a whole number, 1 to 1000
/// \return p [-]; 1/p is the return period [years]
/// Limits: independent winters, all alike.
/// Source: inverse of `exceedance_in_winters`.
/// \throws InputError extremes.chance.range, extremes.winters.range
[[nodiscard]] double yearly_chance(double chance, double winters);

/// Return period of the load that a reliability index asks for.
/// T = 1/Phi(-alpha beta)
/// \param reliability_index  beta for one year [-], 0 to 6: EN 1990 Table B2 has 4.2, 4.7, 5.2 for RC1 to RC3
/// \param sensitivity        alpha of the load [-], 0 to 1: 0.7 where the load governs. Where snow governs a nearly
///                           weightless film 0.9 or more is realistic (our judgement, no source)
/// \return T [years], 2 or more
/// Limits: the scatter of the yearly maximum alone; that of the way from ground to cover comes on top.
/// Source: EN 1990:2002, C7, from memory, sure.
/// \throws InputError extremes.reliability_index.range, extremes.sensitivity.range
[[nodiscard]] double return_period_of_reliability_index(double reliability_index, double sensitivity);

}  // namespace coverframe::extremes
