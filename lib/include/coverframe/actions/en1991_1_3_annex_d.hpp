// SPDX-License-Identifier: BSD-3-Clause
// EN 1991-1-3:2003, Annex D: ground snow load of another return period than 50 years.
//
// The annual maxima of snow are taken as Gumbel-distributed with one number, the coefficient of variation V. V belongs
// to the place and comes from the weather service, not from a table: remembered values are 0.3 to 0.4 in the high Alps
// and inland in the North, 0.6 to 0.8 in the lowlands of Central Europe, 1.0 and more on mild coasts. Figure D.1 of the
// document covers 0.2 to 0.6 (from memory, fairly sure); beyond that the choice of distribution decides the result and
// the library's factor is no better than the assumption.
//
// A shorter return period is a decision, not a property of a cover. A frame that is put up again every winter meets
// another maximum every winter: see `en1991_1_6`.
#pragma once

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::en1991_1_3 {

inline const Clause annex_D{"EN 1991-1-3:2003", "Annex D, Eq. D.1"};

/// Factor from the 50-year ground load to that of another return period.
/// s_n/s_k = {1 - V (sqrt(6)/pi) [ln(-ln(1 - P_n)) + 0.57722]} / (1 + 2.5923 V), P_n = 1/n
/// \param return_period  n [years], 5 to 10000: P_n at most 0.2 (from memory, sure); the upper end is that of the
///                       longest period anybody was found to use, for accidental snow in Slovakia
/// \param variation      V [-], 0 to 2
/// \return s_n/s_k [-]; 1 at 50 years but for the rounding of the document's constant (1e-5)
/// Limits: Gumbel-distributed annual maxima, every winter with snow. Figure D.1: V of 0.2 to 0.6.
/// Source: EN 1991-1-3:2003, Annex D, Eq. D.1; from memory, sure. About 0.70 for 10 years, which is V = 0.6, read on a
/// page (Ingenio, on the Italian Circolare 2019, C3.4.1).
/// \throws InputError en1991_1_3.return_period.range, en1991_1_3.variation.range
[[nodiscard]] double return_period_factor_D_1(double return_period, double variation);

/// Ground load of another return period, and the factor to it.
struct ReturnPeriodLoad {
    double factor = 0;  ///< s_n/s_k [-]
    Pressure load{};    ///< s_n [Pa]
};

/// Ground load of another return period.
/// s_n = (s_n/s_k) s_k
/// \param ground_load    s_k, of 50 years [Pa], 0 to 100 kPa
/// \param return_period  n [years], 5 to 10000
/// \param variation      V [-], 0 to 2
/// Limits and source: those of `return_period_factor_D_1`.
/// \throws InputError en1991_1_3.ground_load.range, en1991_1_3.return_period.range, en1991_1_3.variation.range
[[nodiscard]] ReturnPeriodLoad return_period_load_D_1(Pressure ground_load, double return_period, double variation);

}  // namespace coverframe::en1991_1_3
