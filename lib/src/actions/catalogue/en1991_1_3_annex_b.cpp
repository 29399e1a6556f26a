// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1991_1_3_annex_b.hpp"

#include <algorithm>

#include "actions/catalogue/en1991_1_3_parts.hpp"

namespace coverframe::catalogue {

using namespace en1991_1_3;

namespace {

const char* const space = "en1991_1_3";
Text ground() { return {"ground_snow_kpa", "s_k", "ground snow load, more than 0, to 100"}; }
Text height_limit() { return {"height_limit", "k", "2 h/s_k"}; }
Text wall_supply() { return {"supply", "r", "2 max(b_1, b_2)/l_s"}; }

constexpr Covered fast_width(double b) { return within(b, argument::smallest, limit::width_high); }
constexpr Covered fast_height(double h) { return within(h, argument::smallest, limit::height_high); }
constexpr Covered fast_ground(double s_k) { return within(s_k, above_zero, limit::ground_high); }
constexpr double fast_wall_length(double h, double b_1) { return std::min(std::min(5.0 * h, b_1), 15.0); }
constexpr double least_of(double k, double r, double most) { return std::min(std::min(k, r), most); }

void add_valleys(std::vector<Rule>& rules) {
    add(rules, {space, "exceptional_valley_drift", annex_B_2, "Exceptional drift in a valley.", Read::fair,
                "Figure B.1, from memory"},
        {ground(),
         {"height_m", "h", "from the valley up to the ridge, up to 200"},
         {"first_width_m", "b_1", "plan width of the first slope, up to 1000"},
         {"second_width_m", "b_2", "plan width of the second slope, up to 1000"},
         {"swept_width_m", "b_3", "plan width the snow is blown from, up to 3000"}},
        {{"first_length_m", "l_s1", "b_1"},
         {"second_length_m", "l_s2", "b_2"},
         height_limit(),
         {"supply", "r", "2 b_3/(l_s1 + l_s2)"},
         {"shape_coefficient", "mu", "min(k, r, 5)"}},
        [](Pressure s_k, Length h, Length b_1, Length b_2, Length b_3) {
            const ExceptionalValleyDrift drift = valley_drift_B_2(s_k, h, b_1, b_2, b_3);
            return std::tuple{drift.first_length, drift.second_length, drift.height, drift.supply, drift.coefficient};
        },
        [](double s_k, double h, double b_1, double b_2, double b_3) {
            const double k = 2.0 * h / s_k;
            const double r = 2.0 * b_3 / (b_1 + b_2);
            return fast(fast_ground(s_k) * fast_height(h) * fast_width(b_1) * fast_width(b_2) *
                            within(b_3, argument::smallest, 3.0 * limit::width_high),
                        b_1, b_2, k, r, least_of(k, r, 5.0));
        });
    add(rules, {space, "all_valleys", annex_B_2, "Most snow in all valleys of a roof at once, per metre along them.",
                Read::fair, "from memory"},
        {{"ground_snow_kpa", "s_k", "ground snow load, 0 to 100"},
         {"length_m", "L", "of the roof across the valleys, up to 1000"}},
        {{"all_drifts_kn_per_m", "S", "s_k L"}},
        [](Pressure s_k, Length length) { return all_valleys_B_2(s_k, length); },
        [](double s_k, double length) {
            return fast(within(s_k, 0.0, limit::ground_high) * fast_width(length), s_k * length);
        });
}

void add_walls(std::vector<Rule>& rules) {
    add(rules, {space, "exceptional_parapet_drift", annex_B_4, "Exceptional drift behind a parapet.", Read::page,
                "Steel Buildings in Europe, Part 3, Appendix A, 3.5; the larger width by its second number"},
        {ground(),
         {"height_m", "h", "of the parapet, up to 200"},
         {"width_m", "b_1", "plan width of the roof along the drift, up to 1000"},
         {"other_width_m", "b_2", "the other plan width, up to 1000"}},
        {{"drift_length_m", "l_s", "min(5 h, b_1, 15 m)"},
         height_limit(),
         wall_supply(),
         {"shape_coefficient", "mu_1", "min(k, r, 8)"}},
        [](Pressure s_k, Length h, Length b_1, Length b_2) {
            const ExceptionalWallDrift drift = parapet_drift_B_4(s_k, h, b_1, b_2);
            return std::tuple{drift.length, drift.height, drift.supply, drift.coefficient};
        },
        [](double s_k, double h, double b_1, double b_2) {
            const double l_s = fast_wall_length(h, b_1);
            const double k = 2.0 * h / s_k;
            const double r = 2.0 * std::max(b_1, b_2) / l_s;
            return fast(fast_ground(s_k) * fast_height(h) * fast_width(b_1) * fast_width(b_2), l_s, k, r,
                        least_of(k, r, 8.0));
        });
    add(rules, {space, "exceptional_abutting_drift", annex_B_3,
                "Exceptional drift on a lower roof against taller works.", Read::fair,
                "Figure B.2 and Table B.1, from memory; which edge has mu_1 and which mu_2 doubtful"},
        {ground(),
         {"height_m", "h", "step down to the lower roof, up to 200"},
         {"lower_width_m", "b_1", "plan width of the lower roof, up to 1000"},
         {"upper_width_m", "b_2", "plan width of the upper roof, up to 1000"},
         {"slope_deg", "a", "of the lower roof, 0 to 90"}},
        {{"drift_length_m", "l_s", "min(5 h, b_1, 15 m)"},
         height_limit(),
         wall_supply(),
         {"level_coefficient", "mu_3", "min(k, r, 8)"},
         {"first_coefficient", "mu_1", "mu_3 up to 15 deg, mu_3 (30 - a)/15 to 30, then 0"},
         {"second_coefficient", "mu_2", "mu_3 up to 30 deg, mu_3 (60 - a)/30 to 60, then 0; safe all along the wall"}},
        [](Pressure s_k, Length h, Length b_1, Length b_2, Angle a) {
            const ExceptionalAbuttingDrift drift = abutting_drift_B_3(s_k, h, b_1, b_2, a);
            return std::tuple{drift.level.length,      drift.level.height, drift.level.supply,
                              drift.level.coefficient, drift.mu_1,         drift.mu_2};
        },
        [](double s_k, double h, double b_1, double b_2, double a) {
            const double l_s = fast_wall_length(h, b_1);
            const double k = 2.0 * h / s_k;
            const double r = 2.0 * std::max(b_1, b_2) / l_s;
            const double mu = least_of(k, r, 8.0);
            return fast(fast_ground(s_k) * fast_height(h) * fast_width(b_1) * fast_width(b_2) * within(a, 0.0, 90.0),
                        l_s, k, r, mu, mu * std::clamp((30.0 - a) / 15.0, 0.0, 1.0),
                        mu * std::clamp((60.0 - a) / 30.0, 0.0, 1.0));
        });
}

void add_obstructions(std::vector<Rule>& rules) {
    add(rules, {space, "obstruction_height", annex_B_4, "Height of an obstruction that its drift follows.", Read::fair,
                "from memory"},
        {{"obstruction_height_m", "h", "height of the obstruction, up to 200"},
         {"obstruction_width_m", "w", "across the wind; up to 2 if h is over 1"}},
        {{"height_m", "h_d", "h up to 1 m, min(h, w) above"}},
        [](Length h, Length w) { return obstruction_height_B_4(h, w); },
        [](double h, double w) {
            return fast(fast_height(h) * within(w, argument::smallest, h <= 1.0 ? limit::width_high : 2.0),
                        h <= 1.0 ? h : std::min(h, w));
        });
    add(rules, {space, "exceptional_obstruction_drift", annex_B_4,
                "Exceptional drift on one side of a local projection or obstruction.", Read::fair,
                "Figure B.3, from memory"},
        {ground(),
         {"height_m", "h", "that the drift follows, up to 200"},
         {"width_m", "b", "plan width of the roof on that side, up to 1000"}},
        {{"drift_length_m", "l_s", "min(5 h, b)"}, height_limit(), {"shape_coefficient", "mu", "min(k, 5)"}},
        [](Pressure s_k, Length h, Length b) {
            const ExceptionalObstructionDrift drift = obstruction_drift_B_4(s_k, h, b);
            return std::tuple{drift.length, drift.height, drift.coefficient};
        },
        [](double s_k, double h, double b) {
            const double k = 2.0 * h / s_k;
            return fast(fast_ground(s_k) * fast_height(h) * fast_width(b), std::min(5.0 * h, b), k, std::min(k, 5.0));
        });
}

}  // namespace

void add_en1991_1_3_annex_b(std::vector<Rule>& rules) {
    add_valleys(rules);
    add_walls(rules);
    add_obstructions(rules);
}

}  // namespace coverframe::catalogue
