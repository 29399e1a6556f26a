// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1991_1_3_annex_d.hpp"

#include <cmath>
#include <numbers>

namespace coverframe::en1991_1_3 {

double return_period_factor_D_1(double return_period, double variation) {
    argument::within(return_period, 5.0, 1e4,
                     {"en1991_1_3.return_period.range", "return period (EN 1991-1-3:2003, Annex D)", "years"});
    argument::within(variation, 0.0, 2.0, {"en1991_1_3.variation.range", "coefficient of variation V", "-"});
    const double reduced = std::log(-std::log1p(-1.0 / return_period)) + 0.57722;
    return (1.0 - variation * (std::sqrt(6.0) / std::numbers::pi) * reduced) / (1.0 + 2.5923 * variation);
}

ReturnPeriodLoad return_period_load_D_1(Pressure ground_load, double return_period, double variation) {
    argument::within(in_kPa(ground_load), 0.0, 100.0, {"en1991_1_3.ground_load.range", "ground snow load s_k", "kPa"});
    const double factor = return_period_factor_D_1(return_period, variation);
    return {.factor = factor, .load = factor * ground_load};
}

}  // namespace coverframe::en1991_1_3
