// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/iso4355.hpp"

#include <algorithm>
#include <cmath>

#include "actions/catalogue/elementary.hpp"
#include "actions/catalogue/entry.hpp"

namespace coverframe::catalogue {

using namespace iso4355;

void add_iso4355(std::vector<Rule>& rules) {
    const std::string space = "iso4355";
    const std::string comments = "Pertermann and Puthli (KIT), Comments on ISO 4355:2013, Part I";
    add(rules,
        {space, "characteristic_length", clause_exposure, "Characteristic length of a roof.", Read::doubtful,
         "from memory"},
        {{"width_m", "W", "smaller plan size, over 0"}, {"length_m", "L", "larger plan size, not under W"}},
        {{"characteristic_length_m", "l_c", "2 W - W^2/L"}},
        [](Length width, Length length) { return characteristic_length(width, length); },
        [](double w, double l) {
            return fast(within(w, argument::smallest, argument::largest) * within(l, w, argument::largest),
                        2.0 * w - w * (w / l));
        });
    add(rules,
        {space, "exposure_coefficient", clause_exposure, "Exposure coefficient with the size of the roof in it.",
         Read::doubtful, "the formula from memory; that it rises towards 1.25 was read (" + comments + ")"},
        {{"small_roof_coefficient", "C_e0", "of a small roof, 0.5 to 1.25"},
         {"characteristic_length_m", "l_c", "of the roof, from 0"}},
        {{"exposure_coefficient", "C_e", "C_e0 to l_c = 50 m, then 1.25 - (1.25 - C_e0) exp[-(l_c - 50)/200]"}},
        [](double small, Length length) { return exposure_coefficient(small, length); },
        [](double small, double length) {
            const double large = 1.25 - (1.25 - small) * fast_exp(std::max(-(length - 50.0) / 200.0, -700.0));
            return fast(within(small, limit::exposure_low, limit::exposure_high) *
                            within(length, 0.0, argument::largest),
                        length <= 50.0 ? small : large);
        });
    add(rules,
        {space, "slope_coefficient", clause_slope, "Slope coefficient.", Read::part,
         "C_m = 1.333 on a page (" + comments + "), the formula from memory"},
        {{"slope_deg", "slope", "of the cover, 0 to 90"},
         {"surface", "surface", "slippery means unobstructed too", "other"}},
        {{"slope_coefficient", "mu_b",
          "sqrt[cos(1.5 C_m slope)], 0 from 90/(1.5 C_m) deg; C_m = 1.333 slippery, else 1"}},
        [](Angle slope, Surface surface) { return slope_coefficient(slope, surface); },
        [](double slope, Surface surface) {
            const double turned = 1.5 * (surface == Surface::slippery ? 1.333 : 1.0) * in_rad(from_deg(slope));
            const double root = std::sqrt(fast_cos(std::min(turned, elementary::half_pi)));
            return fast(within(slope, 0.0, 90.0), one_if(turned < argument::right_angle) * root);
        });
    add(rules,
        {space, "balanced_load", clause_balanced, "Balanced load; drift and sliding are to be added.", Read::page,
         comments},
        {{"ground_snow_kpa", "s_0", "ground snow load, 0 to 100"},
         {"exposure_coefficient", "C_e", "exposure coefficient, 0.5 to 1.25"},
         {"thermal_coefficient", "C_t", "thermal coefficient, 0.5 to 1.4; not under 1.0 for a cover"},
         {"slope_coefficient", "mu_b", "slope coefficient, 0 to 1"}},
        {{"balanced_load_kpa", "s_b", "0.8 s_0 C_e C_t mu_b"}},
        [](Pressure s_0, double c_e, double c_t, double mu_b) { return balanced_load_eq_3(s_0, c_e, c_t, mu_b); },
        [](double s_0, double c_e, double c_t, double mu_b) {
            return fast(within(s_0, 0.0, 100.0) * within(c_e, limit::exposure_low, limit::exposure_high) *
                            within(c_t, limit::thermal_low, limit::thermal_high) * within(mu_b, 0.0, 1.0),
                        0.8 * c_e * c_t * mu_b * s_0);
        });
}

}  // namespace coverframe::catalogue
