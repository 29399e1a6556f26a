// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1991_1_3_local.hpp"

#include <algorithm>

#include "actions/catalogue/elementary.hpp"
#include "actions/catalogue/en1991_1_3_parts.hpp"

namespace coverframe::catalogue {

using namespace en1991_1_3;

void add_en1991_1_3_local(std::vector<Rule>& rules) {
    const std::string space = "en1991_1_3";
    const Text roof_load{"roof_load_kpa", "s", "heaviest undrifted load of the roof, 0 to 200"};
    add(rules, {space, "projection_drift", clause_6_2, "Drift at what stands up through the cover.", Read::sure,
                "from memory, sure"},
        {{"height_m", "h", "over the cover, up to 200"},
         {"ground_snow_kpa", "s_k", "ground snow load, more than 0, to 100"}},
        {{"drift_length_m", "l_s", "2 h, from 5 to 15 m"},
         {"height_limit", "k", "gamma h/s_k, gamma = 2 kN/m3"},
         {"shape_coefficient", "mu_2", "k, from 0.8 to 2.0; 0.8 from l_s on"}},
        [](Length h, Pressure s_k) {
            const ProjectionDrift drift = projection_drift_6_2(h, s_k);
            return std::tuple{drift.length, drift.height, drift.coefficient};
        },
        [](double h, double s_k) {
            const double filled = 2.0 * h / s_k;
            return fast(within(h, argument::smallest, limit::height_high) * within(s_k, above_zero, limit::ground_high),
                        std::clamp(2.0 * h, 5.0, 15.0), filled, std::clamp(filled, 0.8, 2.0));
        });
    add(rules, {space, "overhang_applies", clause_6_3, "Whether snow that overhangs the edge has to be looked at.",
                Read::sure, "recommended altitude, from memory, sure"},
        {{"altitude_m", "A", "above sea level, -500 to 1500"}}, {{"applies", "applies", "A over 800 m"}},
        [](Length altitude) { return overhang_applies_6_3(altitude); },
        [](double altitude) { return fast(within(altitude, -500.0, 1500.0), one_if(altitude > 800.0)); });
    add(rules, {space, "overhang_depth", clause_6_3, "Depth of the snow layer where nobody has measured it.",
                Read::fair, "from memory"},
        {roof_load}, {{"depth_m", "d", "s/gamma, gamma = 3 kN/m3"}},
        [](Pressure s) { return snow_depth_6_3(s); }, [](double s) { return fast(within(s, 0.0, 200.0), s / 3.0); });
    add(rules, {space, "overhang", clause_6_3, "Line load of snow that overhangs the edge.", Read::sure,
                "Eq. 6.4, from memory, sure"},
        {roof_load, {"depth_m", "d", "depth of the snow layer, 0 to 100"}},
        {{"irregularity", "k", "min(3/d, gamma d), gamma = 3"}, {"edge_load_kn_per_m", "s_e", "k s^2/gamma"}},
        [](Pressure s, Length d) {
            const Overhang edge = overhang_6_3(s, d);
            return std::tuple{edge.irregularity, edge.load};
        },
        [](double s, double d) {
            const double k = d * d * 3.0 <= 3.0 ? d * 3.0 : 3.0 / d;
            return fast(within(s, 0.0, 200.0) * within(d, 0.0, 100.0), k, k * s * s / 3.0);
        });
    add(rules, {space, "guard_force", clause_6_4, "Force of sliding snow on a guard, along the slope.", Read::page,
                "Eq. 6.5 (University of Siegen lecture script on DIN 1055-5:2005, p. 58)"},
        {{"roof_load_kpa", "s", "heaviest undrifted load above the guard, 0 to 200"},
         {"distance_m", "b", "in plan, to the next guard above or the ridge, 0 to 1000"},
         {"slope_deg", "a", "slope of the cover, 0 to 90"}},
        {{"guard_force_kn_per_m", "F_s", "s b sin(a)"}},
        [](Pressure s, Length b, Angle a) { return guard_force_6_4(s, b, a); },
        [](double s, double b, double a) {
            return fast(within(s, 0.0, 200.0) * within(b, 0.0, limit::width_high) * within(a, 0.0, 90.0),
                        s * b * fast_sin(in_rad(from_deg(a))));
        });
}

}  // namespace coverframe::catalogue
