// SPDX-License-Identifier: BSD-3-Clause
#include <algorithm>

#include "actions/catalogue/elementary.hpp"
#include "actions/catalogue/en1991_1_3_parts.hpp"
#include "coverframe/actions/national/german_roof.hpp"
#include "coverframe/actions/national/uk_roof.hpp"

namespace coverframe::catalogue {
namespace {

using en1991_1_3::Sliding;
using en1991_1_3::TallerWorks;
using na_de::LowerRoof;

Text ground() { return {"ground_snow_kpa", "s_k", "ground snow load, more than 0, to 100"}; }
Text lower_roof() { return {"lower_roof", "lower roof", "what the sum is limited by"}; }

constexpr Covered fast_ground(double s_k) { return within(s_k, above_zero, en1991_1_3::limit::ground_high); }
constexpr Covered fast_height(double h) { return within(h, argument::smallest, en1991_1_3::limit::height_high); }
constexpr Covered fast_limits_covered(LowerRoof roof, double s_k) {
    return fast_ground(s_k) * one_if(s_k >= (roof == LowerRoof::alpine ? 3.0 : 0.0));
}
constexpr double fast_least(LowerRoof roof) { return roof == LowerRoof::alpine ? 1.2 : 0.8; }
constexpr double fast_most(LowerRoof roof, double s_k) {
    const double elsewhere = roof == LowerRoof::canopy ? 2.0 : 2.4;
    return roof == LowerRoof::alpine ? 6.45 / fast_power(s_k, 0.9) : elsewhere;
}

void add_german_limits(std::vector<Rule>& rules) {
    add(rules, {"na_de", "capped_valley", na_de::clause_5_3_4, "Coefficient of a valley that is full.", Read::page,
                "for its predecessor (University of Siegen lecture script on DIN 1055-5:2005, p. 53)"},
        {{"valley_coefficient", "mu_v", "of EN 1991-1-3, 5.3.4, 0.8 to 1.6"},
         {"shape_coefficient", "mu", "of the slopes, the larger, 0 to 0.8"},
         {"height_m", "h", "from the valley up to the ridge, up to 200"},
         ground()},
        {{"capped_valley_coefficient", "mu_cap", "min(mu_v, gamma h/s_k + mu), gamma = 2 kN/m3"}},
        [](double valley, double slope, Length h, Pressure s_k) {
            return na_de::capped_valley_5_3_4(valley, slope, h, s_k);
        },
        [](double valley, double slope, double h, double s_k) {
            return fast(within(valley, 0.8, 1.6) * within(slope, 0.0, 0.8) *
                            fast_height(h) * fast_ground(s_k),
                        std::min(valley, 2.0 * h / s_k + slope));
        });
    add(rules, {"na_de", "drift_limits", na_de::clause_5_3_6, "Limits of the drift against taller works.", Read::part,
                "NA.5: 0.8 to 2.4 on a page (baunormenlexikon.de), canopy and Alpine region from memory"},
        {lower_roof(), ground()},
        {{"least", "least", "0.8; 1.2 alpine"}, {"most", "most", "2.4; 2.0 canopy; 6.45/s_k^0.9 alpine"}},
        [](LowerRoof roof, Pressure s_k) {
            const na_de::SumLimits limits = na_de::drift_limits_5_3_6(roof, s_k);
            return std::tuple{limits.least, limits.most};
        },
        [](LowerRoof roof, double s_k) {
            return fast(fast_limits_covered(roof, s_k), fast_least(roof), fast_most(roof, s_k));
        });
}

void add_german_wall(std::vector<Rule>& rules) {
    add(rules, {"na_de", "wall_coefficient", na_de::clause_5_3_6,
                "Coefficient at the wall of a lower roof against taller works.", Read::part,
                "NA.4 and NA.5 on a page (baunormenlexikon.de), canopy, Alpine region and the 0.8 from memory"},
        {ground(),
         {"upper_width_m", "b_1", "plan width of the upper roof, up to 1000"},
         {"lower_width_m", "b_2", "plan width of the lower roof, up to 1000"},
         {"height_m", "h", "step down to the lower roof, up to 200"},
         {"upper_slope_deg", "a", "upper slope that falls towards the lower roof, 0 to 90"},
         {"upper_slope_width_m", "b_1s", "plan width of that slope, 0 to 100"},
         lower_roof()},
        {{"drift_length_m", "l_s", "2 h, from 5 to 15 m"},
         {"sliding_coefficient", "mu_s", "0 up to 15 deg, 0.8 b_1s/l_s above"},
         {"wall_coefficient", "mu_2", "mu_s + min((b_1 + b_2)/(2 h), gamma h/s_k - mu_s) within the limits of NA.5; "
                                      "mu_w only for h over 0.5 m"}},
        [](Pressure s_k, Length b_1, Length b_2, Length h, Angle a, Length b_1s, LowerRoof roof) {
            const TallerWorks works{.ground_load = s_k,
                                    .upper_width = b_1,
                                    .lower_width = b_2,
                                    .height = h,
                                    .upper_pitch = a,
                                    .upper_slope = b_1s};
            const en1991_1_3::WallDrift drift = en1991_1_3::taller_works_5_3_6(works);
            return std::tuple{drift.length, drift.sliding, na_de::wall_coefficient_5_3_6(works, roof)};
        },
        [](double s_k, double b_1, double b_2, double h, double a, double b_1s, LowerRoof roof) {
            using en1991_1_3::limit::width_high;
            const double l_s = std::clamp(2.0 * h, 5.0, 15.0);
            const double sliding = from_deg(a) <= from_deg(15.0) ? 0.0 : 0.8 * (b_1s / l_s);
            const double room = std::max(2.0 * h / s_k - sliding, 0.0);
            const double wind = one_if(h > 0.5) * std::min((b_1 + b_2) / (2.0 * h), room);
            return fast(fast_limits_covered(roof, s_k) * within(b_1, argument::smallest, width_high) *
                            within(b_2, argument::smallest, width_high) * fast_height(h) * within(a, 0.0, 90.0) *
                            within(b_1s, 0.0, 100.0),
                        l_s, sliding, std::max(std::min(sliding + wind, fast_most(roof, s_k)), fast_least(roof)));
        });
}

}  // namespace

void add_national_roof(std::vector<Rule>& rules) {
    add_german_limits(rules);
    add_german_wall(rules);
    add(rules, {"na_uk", "duopitch_drifted", na_uk::clause_NA_2_18,
                "Loaded slope of a duopitch roof, drifted; the other is empty.", Read::part,
                "one slope alone (New Steel Construction, AD 484) and 1.2 at 30 deg (a page that goes by BS 6399-3) on "
                "pages, the line from memory"},
        {{"slope_deg", "a", "loaded slope, 0 to 90"}, {"sliding", "sliding", "whether snow may leave", "prevented"}},
        {{"shape_coefficient", "mu_1", "0.8 up to 15 deg, 0.8 + 0.4 (a - 15)/15 to 30, 1.2 (60 - a)/30 to 60, then 0; "
                                       "at least 0.8 if sliding is prevented"}},
        [](Angle a, Sliding sliding) { return na_uk::duopitch_drifted_NA_2_18(a, sliding); },
        [](double a, Sliding sliding) {
            const double rising = 0.8 + 0.4 * std::clamp((a - 15.0) / 15.0, 0.0, 1.0);
            const double mu = rising * std::clamp((60.0 - a) / 30.0, 0.0, 1.0);
            return fast(within(a, 0.0, 90.0), sliding == Sliding::prevented ? std::max(mu, 0.8) : mu);
        });
}

}  // namespace coverframe::catalogue
