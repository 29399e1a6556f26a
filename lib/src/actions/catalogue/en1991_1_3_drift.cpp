// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1991_1_3_drift.hpp"

#include <algorithm>

#include "actions/catalogue/en1991_1_3_parts.hpp"

namespace coverframe::catalogue {

using namespace en1991_1_3;

namespace {

const char* const space = "en1991_1_3";
const char* const steel_buildings = "Steel Buildings in Europe, Part 3, Appendix A";
const char* const slid =
    "half the load of the adjacent slope (Steel Buildings in Europe, Part 3, 7.2.2), the form with 0.8 (psds.cz, on "
    "change Z2 of the Czech edition)";
const char* const mu_s_formula = "0 up to 15 deg, mu b_1s/l_s above";

Text ground() { return {"ground_snow_kpa", "s_k", "ground snow load, more than 0, to 100"}; }
Text height() { return {"height_m", "h", "step down to the lower roof, up to 200"}; }
Text upper_width() { return {"upper_width_m", "b_1", "plan width of the upper roof, up to 1000"}; }
Text lower_width() { return {"lower_width_m", "b_2", "plan width of the lower roof, up to 1000"}; }
Text upper_pitch() { return {"upper_slope_deg", "a", "upper slope that falls towards the lower roof, 0 to 90"}; }
Text upper_slope() { return {"upper_slope_width_m", "b_1s", "plan width of that slope, 0 to 100"}; }
Text upper_shape() { return {"upper_shape_coefficient", "mu", "of that slope, 0 to 1; 0.8 is the safe choice"}; }

constexpr Covered fast_width(double b) { return within(b, argument::smallest, limit::width_high); }
constexpr Covered fast_height(double h) { return within(h, argument::smallest, limit::height_high); }
constexpr Covered fast_ground(double s_k) { return within(s_k, above_zero, limit::ground_high); }
constexpr double fast_length(double h) { return std::clamp(2.0 * h, 5.0, 15.0); }
constexpr double fast_wind(double supply, double filled) {
    return std::max(std::min(std::min(supply, filled), 4.0), undrifted_coefficient_5_3_6);
}
constexpr double fast_sliding(double a, double b_1s, double l_s, double mu) {
    return from_deg(a) <= from_deg(15.0) ? 0.0 : mu * (b_1s / l_s);
}
constexpr double fast_at(double wall, double l_s, double x) {
    const double falling = wall + (undrifted_coefficient_5_3_6 - wall) * (x / l_s);
    return x >= l_s ? undrifted_coefficient_5_3_6 : falling;
}

void add_parts(std::vector<Rule>& rules) {
    add(rules, {space, "drift_length", clause_5_3_6, "Length of the drift against taller works.", Read::page,
                std::string("Eq. 5.9 (") + steel_buildings + ")"},
        {height()}, {{"drift_length_m", "l_s", "2 h, from 5 to 15 m"}},
        [](Length h) { return drift_length_5_3_6(h); },
        [](double h) { return fast(fast_height(h), fast_length(h)); });
    add(rules, {space, "wind_drift", clause_5_3_6, "Shape coefficient of wind drift against taller works.", Read::page,
                std::string("Eq. 5.8 (") + steel_buildings + ")"},
        {upper_width(), lower_width(), height(), ground()},
        {{"supply", "r", "(b_1 + b_2)/(2 h)"},
         {"height_limit", "k", "gamma h/s_k, gamma = 2 kN/m3"},
         {"wind_coefficient", "mu_w", "min(r, k, 4), but at least 0.8"}},
        [](Length b_1, Length b_2, Length h, Pressure s_k) {
            const WindDrift wind = wind_drift_5_3_6(b_1, b_2, h, s_k);
            return std::tuple{wind.supply, wind.height, wind.coefficient};
        },
        [](double b_1, double b_2, double h, double s_k) {
            const double supply = (b_1 + b_2) / (2.0 * h);
            const double filled = 2.0 * h / s_k;
            return fast(fast_width(b_1) * fast_width(b_2) * fast_height(h) * fast_ground(s_k), supply, filled,
                        fast_wind(supply, filled));
        });
    add(rules, {space, "sliding_drift", clause_5_3_6, "Shape coefficient of snow that slides from the upper roof.",
                Read::page, slid},
        {upper_pitch(), upper_slope(), {"drift_length_m", "l_s", "length of the drift, 5 to 15"}, upper_shape()},
        {{"sliding_coefficient", "mu_s", mu_s_formula}},
        [](Angle a, Length b_1s, Length l_s, double mu) { return sliding_drift_5_3_6(a, b_1s, l_s, mu); },
        [](double a, double b_1s, double l_s, double mu) {
            return fast(within(a, 0.0, 90.0) * within(b_1s, 0.0, 100.0) * within(l_s, 5.0, 15.0) * within(mu, 0.0, 1.0),
                        fast_sliding(a, b_1s, l_s, mu));
        });
    add(rules, {space, "drift_coefficient_at", clause_5_3_6, "Shape coefficient at a distance from the wall.",
                Read::page, "Figure 5.7 (Steel Buildings in Europe, Part 3, Figure A.5)"},
        {{"wall_coefficient", "mu_2", "at the wall, 0.8 to 25"},
         {"drift_length_m", "l_s", "length of the drift, 5 to 15"},
         {"distance_m", "x", "level, from the wall, 0 to 1000"}},
        {{"shape_coefficient", "mu(x)", "mu_2 + (0.8 - mu_2) x/l_s up to l_s, then 0.8"}},
        [](double wall, Length l_s, Length x) { return drift_coefficient_at_5_3_6(wall, l_s, x); },
        [](double wall, double l_s, double x) {
            return fast(within(wall, undrifted_coefficient_5_3_6, limit::shape_high) * within(l_s, 5.0, 15.0) *
                            within(x, 0.0, limit::width_high),
                        fast_at(wall, l_s, x));
        });
}

}  // namespace

void add_en1991_1_3_drift(std::vector<Rule>& rules) {
    add_parts(rules);
    add(rules, {space, "taller_works", clause_5_3_6, "Drift on a lower roof against taller works.", Read::page,
                std::string("Eq. 5.7 to 5.9 (") + steel_buildings + "); mu_s: " + slid},
        {ground(), upper_width(), lower_width(), height(), upper_pitch(), upper_slope(), upper_shape()},
        {{"drift_length_m", "l_s", "2 h, from 5 to 15 m"},
         {"sliding_coefficient", "mu_s", mu_s_formula},
         {"supply", "r", "(b_1 + b_2)/(2 h)"},
         {"height_limit", "k", "gamma h/s_k, gamma = 2 kN/m3"},
         {"wind_coefficient", "mu_w", "min(r, k, 4), but at least 0.8"},
         {"wall_coefficient", "mu_2", "mu_s + mu_w"},
         {"end_coefficient", "mu_end", "mu_2 + (0.8 - mu_2) b_2/l_s if b_2 is less than l_s, else 0.8"}},
        [](Pressure s_k, Length b_1, Length b_2, Length h, Angle a, Length b_1s, double mu) {
            const WallDrift drift = taller_works_5_3_6({.ground_load = s_k,
                                                        .upper_width = b_1,
                                                        .lower_width = b_2,
                                                        .height = h,
                                                        .upper_pitch = a,
                                                        .upper_slope = b_1s,
                                                        .upper_shape = mu});
            return std::tuple{drift.length,           drift.sliding, drift.wind.supply, drift.wind.height,
                              drift.wind.coefficient, drift.wall,    drift.end};
        },
        [](double s_k, double b_1, double b_2, double h, double a, double b_1s, double mu) {
            const double l_s = fast_length(h);
            const double sliding = fast_sliding(a, b_1s, l_s, mu);
            const double supply = (b_1 + b_2) / (2.0 * h);
            const double filled = 2.0 * h / s_k;
            const double wind = fast_wind(supply, filled);
            const double wall = sliding + wind;
            return fast(fast_ground(s_k) * fast_width(b_1) * fast_width(b_2) * fast_height(h) * within(a, 0.0, 90.0) *
                            within(b_1s, 0.0, 100.0) * within(mu, 0.0, 1.0),
                        l_s, sliding, supply, filled, wind, wall, fast_at(wall, l_s, b_2));
        });
}

}  // namespace coverframe::catalogue
