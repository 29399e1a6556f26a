// SPDX-License-Identifier: BSD-3-Clause
// A 50-year ground load from what a yard has instead: a 50-year depth, or a load of another return period.
//
// Each relation is called by its publication; none is the usual one. At 12, 20, 30, 48 in they give 8.2, 16.4, 28.5,
// 54.0 psf (Tobiasson and Greatorex), 10.8, 18.0, 38.9, 81.4 psf (Sack and Sheikh-Taheri) and 9.4, 15.6, 23.4, 37.5 psf
// (Schmidlin): a factor of two at 48 in. Whoever uses one says which, and asks the building authority first.
//
// They link extremes: the depth passed in one winter of fifty and the load passed in one winter of fifty. They say
// nothing of the snow of one day; for that see snowpack.hpp. The deepest snow somebody remembers has no return period
// and is no argument here.
#pragma once

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::depth_relation {

inline const Clause clause_tobiasson_greatorex{"Tobiasson and Greatorex 1996", "50-year depth to 50-year load"};
inline const Clause clause_sack_sheikh_taheri{"Sack and Sheikh-Taheri 1986", "50-year depth to 50-year load"};
inline const Clause clause_schmidlin{"Schmidlin et al. 1992", "50-year depth to 50-year load"};

/// 50-year ground load from the 50-year depth, stations in the United States.
/// p_g = 0.279 h^1.36  (psf, h in inches)
/// \param depth  h, 50-year ground depth [m], 0 to 10
/// \return p_g [Pa]
/// Limits: fitted to stations of the United States; the range of depths is not known here.
/// Source: Tobiasson and Greatorex, 1996; from memory, sure.
/// \throws InputError depth_relation.depth.range
[[nodiscard]] Pressure tobiasson_greatorex_1996(Length depth);

/// 50-year ground load from the 50-year depth, Rocky Mountain sites.
/// p_g = 0.90 h for h <= 22 in, else 2.36 h - 31.9  (psf, h in inches)
/// \param depth  h, 50-year ground depth [m], 0 to 10
/// \return p_g [Pa]
/// Limits: Rocky Mountain sites. The two lines do not meet: at 22 in the load steps up from 19.8 to 20.0 psf.
/// Source: Sack and Sheikh-Taheri, Ground and Roof Snow Loads for Idaho, 1986; from memory.
/// \throws InputError depth_relation.depth.range
[[nodiscard]] constexpr Pressure sack_sheikh_taheri_1986(Length depth) {
    argument::within(in_m(depth), 0.0, 10.0, {"depth_relation.depth.range", "50-year depth", "m"});
    const double h = in_in(depth);
    return from_psf(depth <= from_in(22.0) ? 0.90 * h : 2.36 * h - 31.9);
}

/// 50-year ground load from the 50-year depth, Ohio: one density, of the packs that carried the greatest loads.
/// p_g = 0.15 gamma_w h, 0.78 psf an inch
/// \param depth  h, 50-year ground depth [m], 0 to 10
/// \return p_g [Pa]
/// Limits: Ohio. gamma_w = 62.418 pcf.
/// Source: Schmidlin et al., Design Ground Snow Loads for Ohio, J. Applied Meteorology 31 (1992), 622 to 627; abstract
/// read on a page.
/// \throws InputError depth_relation.depth.range
[[nodiscard]] constexpr Pressure schmidlin_1992(Length depth) {
    argument::within(in_m(depth), 0.0, 10.0, {"depth_relation.depth.range", "50-year depth", "m"});
    return 0.15 * from_pcf(62.418) * depth;
}

}  // namespace coverframe::depth_relation

namespace coverframe::asce7_commentary {

inline const Clause clause_C7{"ASCE 7-10", "commentary C7, other return periods"};

/// Multiplier that turns a ground load of another return period into one of 50 years.
/// p_50 = k p_T,  k = 1.82, 1.20, 1.15, 1.00, 0.82 for T = 10, 25, 30, 50, 100 years
/// \param return_period_years  T: 10, 25, 30, 50 or 100
/// \return k [-]
/// Limits: averages over the United States; a site differs with the scatter of its yearly maxima. Not for loads of ASCE
/// 7-22, which have no return period. Nothing between the printed years.
/// Source: ASCE 7-05 and 7-10, commentary C7; from memory, sure.
/// \throws InputError asce7_commentary.return_period.range
[[nodiscard]] constexpr double to_50_years_C7(double return_period_years) {
    if (return_period_years == 10.0) return 1.82;
    if (return_period_years == 25.0) return 1.20;
    if (return_period_years == 30.0) return 1.15;
    if (return_period_years == 50.0) return 1.0;
    if (return_period_years == 100.0) return 0.82;
    argument::refuse({"asce7_commentary.return_period.range", "return period (10, 25, 30, 50 or 100)", "years"},
                     return_period_years, 10.0, 100.0);
}

}  // namespace coverframe::asce7_commentary
