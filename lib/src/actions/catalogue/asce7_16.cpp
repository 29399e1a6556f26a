// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_16.hpp"

#include <algorithm>
#include <cmath>

#include "actions/catalogue/asce7_fast.hpp"
#include "actions/catalogue/asce7_shared.hpp"

namespace coverframe::catalogue {
namespace {

/// Formula of the drift height for a fetch of that symbol.
std::string drift_height(const std::string& l) {
    return "sqrt(I_s) (0.43 " + l + "^(1/3) (p_g + 10)^(1/4) - 1.5), " + l + " at least 20 ft; at most sqrt(I_s p_g " +
           l + "/(4 gamma))";
}

/// As the rule of that name [m].
double fast_height(double p_g, double l_u, double i_s) {
    return std::min(std::sqrt(i_s) * fast_height_of_figure(p_g, l_u), fast_height_cap(p_g, l_u, i_s));
}

using namespace asce7_16;

const std::string space = "asce7_16";

void add_heights(std::vector<Rule>& rules) {
    add(rules, {space, "drift_height", clause_drift_height, "Drift height.", Read::part,
                "Fig. 7.6-1: the form on a page (design firm's article on drifts in 7-16 and 7-22), sqrt(I_s), least "
                "fetch and cap from memory", us_units},
        {ground_50_years, fetch_argument, importance_argument},
        {{"drift_height_m", "h_d", drift_height("l_u")}},
        [](Pressure p_g, Length l_u, double i_s) { return drift_height_7_6(p_g, l_u, i_s); },
        [](double p_g, double l_u, double i_s) {
            return fast(fast_ground(p_g) * fast_fetch(l_u) * fast_importance(i_s), fast_height(p_g, l_u, i_s));
        });
    add(
        rules,
        {space, "unbalanced_gable", clause_7_6_1, "Unbalanced load of a gable of any framing but simple rafters.",
         Read::part,
         "0.3 p_s and the intensity on a page (O'Rourke, Guide to ASCE 7-10, Example 6-2), the length from "
         "memory, sure, the least fetch from memory",
         us_units},
        {sloped_argument, ground_50_years, gable_slope_argument, ridge_argument, importance_argument},
        gable_results(drift_height("l_u")),
        [](Pressure p_s, Pressure p_g, Angle slope, Length ridge, double i_s) {
            const Gable gable{.sloped_load = p_s, .ground_load = p_g, .slope = slope, .eave_to_ridge = ridge};
            return gable_numbers(p_g, slope, ridge, unbalanced_gable_7_6_1(gable, i_s));
        },
        [](double p_s, double p_g, double slope, double ridge, double i_s) {
            return fast_gable(fast_importance(i_s), p_s, p_g, slope, ridge,
                              fast_height(p_g, fast_gable_fetch(ridge), i_s));
        });
}

void add_drifts(std::vector<Rule>& rules) {
    add(rules, {space, "step_drift", clause_7_7_1, "Drift on a lower roof, the larger of leeward and windward.",
                Read::sure, "7.7.1; 0.6 l_lower from memory", us_units},
        {ground_50_years, balanced_argument, step_argument, upper_argument, lower_argument, importance_argument},
        joined({gamma_result, balanced_depth_result, clear_height_result,
                {"leeward_height_m", "h_lee", drift_height("l_upper") + "; at most 0.6 l_lower"},
                {"windward_height_m", "h_wind", "0.75 times " + drift_height("l_lower")},
                {"drift_height_m", "h_d", "max(h_lee, h_wind)"}},
               drift_results("h_d")),
        [](Pressure p_g, Pressure p_b, Length step, Length upper, Length lower, double i_s) {
            const StepDrift all = step_drift_7_7_1(asce7_roof(p_g, p_b, step, lower), upper, i_s);
            const Drift& d = all.drift;
            return std::tuple(unit_weight_7_7(p_g), d.balanced_depth, d.clear_height, all.leeward, all.windward,
                              std::max(all.leeward, all.windward), d.needed, d.height, d.width, d.peak,
                              Pressure(p_b + d.peak), d.at_end);
        },
        [](double p_g, double p_b, double step, double upper, double lower, double i_s) {
            return fast_step(fast_fetch(upper) * fast_importance(i_s), p_g, p_b, step, lower,
                             std::min(fast_height(p_g, upper, i_s), 0.6 * lower),
                             0.75 * fast_height(p_g, lower, i_s));
        });
    add(rules, {space, "projection_drift", clause_7_8, "Drift at a parapet, or at a projection that needs one.",
                Read::sure, "7.8", us_units},
        {ground_50_years, balanced_argument, step_argument, fetch_argument, lower_argument, importance_argument},
        joined({gamma_result, balanced_depth_result, clear_height_result,
                {"windward_height_m", "h_d", "0.75 times " + drift_height("l_u")}},
               drift_results("h_d")),
        [](Pressure p_g, Pressure p_b, Length step, Length l_u, Length lower, double i_s) {
            const Drift d = projection_drift_7_8(asce7_roof(p_g, p_b, step, lower), l_u, i_s);
            const Length height = asce7::windward_share_7_7_1 * drift_height_7_6(p_g, l_u, i_s);
            return std::tuple(unit_weight_7_7(p_g), d.balanced_depth, d.clear_height, height, d.needed, d.height,
                              d.width, d.peak, Pressure(p_b + d.peak), d.at_end);
        },
        [](double p_g, double p_b, double step, double l_u, double lower, double i_s) {
            return fast_wall(fast_fetch(l_u) * fast_importance(i_s), p_g, p_b, step, lower,
                             0.75 * fast_height(p_g, l_u, i_s));
        });
}

void add_gap_drifts(std::vector<Rule>& rules) {
    add(rules, {space, "leeward_drift_over_gap", clause_7_7_2,
                "Drift that snow of the higher structure makes on the lower one across a gap.", Read::fair,
                "7.7.2; the limits of s from memory, sure", us_units},
        {ground_50_years, gap_argument, step_argument, higher_argument, lower_argument, importance_argument},
        joined({gamma_result, {"drift_height_m", "h_d", drift_height("l_upper")},
                {"needed", "needed", "s < 20 ft and s < 6 h_r"}},
               gap_drift_results("min(h_d, (6 h_r - s)/6)", "min(6 h_d, 6 h_r - s)")),
        [](Pressure p_g, Length gap, Length step, Length higher, Length lower, double i_s) {
            const GapDrift d = leeward_drift_over_gap_7_7_2({gap, step, lower}, p_g, higher, i_s);
            return std::tuple(unit_weight_7_7(p_g), drift_height_7_6(p_g, higher, i_s), d.needed, d.height, d.length,
                              d.peak, d.at_end);
        },
        [](double p_g, double gap, double step, double higher, double lower, double i_s) {
            return fast_leeward_gap(fast_fetch(higher) * fast_importance(i_s), p_g, gap, step, lower,
                                    fast_height(p_g, higher, i_s));
        });
    add(rules, {space, "windward_drift_over_gap", clause_7_7_2,
                "Drift of the lower structure's own snow against a higher one beyond a gap.", Read::fair, "7.7.2",
                us_units},
        {ground_50_years, balanced_argument, gap_argument, step_argument, lower_argument, importance_argument},
        joined({gamma_result, balanced_depth_result, clear_height_result,
                {"windward_height_m", "h_d", "0.75 times " + drift_height("l_lower")},
                {"needed", "needed",
                 "h_c/h_b >= 0.2 and s < w, w = 4 h_d up to h_c, above it min(4 h_d^2/h_c, 8 h_c)"}},
               gap_drift_results("min(h_d, h_c) (1 - s/w)", "w - s")),
        [](Pressure p_g, Pressure p_b, Length gap, Length step, Length lower, double i_s) {
            const LowerRoof roof = asce7_roof(p_g, p_b, step, lower);
            const GapDrift d = windward_drift_over_gap_7_7_2(roof, gap, i_s);
            const Length h_b = balanced_depth_7_7(p_b, p_g);
            const Length height = asce7::windward_share_7_7_1 * drift_height_7_6(p_g, lower, i_s);
            return std::tuple(unit_weight_7_7(p_g), h_b, Length(step - h_b), height, d.needed, d.height, d.length,
                              d.peak, d.at_end);
        },
        [](double p_g, double p_b, double gap, double step, double lower, double i_s) {
            return fast_windward_gap(fast_importance(i_s), p_g, p_b, gap, step, lower,
                                     0.75 * fast_height(p_g, lower, i_s));
        });
}

}  // namespace

void add_asce7_16(std::vector<Rule>& rules) {
    const Asce7Edition edition{.space = space,
                               .strength = clause_2_3,
                               .allowable_stress = clause_2_4,
                               .exposure = clause_7_3_1,
                               .thermal = clause_7_3_2,
                               .flat = clause_7_3,
                               .minimum = clause_7_3_4,
                               .slope = clause_7_4,
                               .partial = clause_7_5,
                               .gable = clause_7_6_1,
                               .curve = clause_7_6_2,
                               .valley = clause_7_6_3,
                               .drift = clause_7_7_1,
                               .gap = clause_7_7_2,
                               .projection = clause_7_8,
                               .sliding = clause_7_9,
                               .rain = clause_7_10,
                               .existing = clause_7_12};
    add_asce7_shared(rules, edition);
    add_asce7_fifty_year(rules, edition);
    add_heights(rules);
    add_drifts(rules);
    add_gap_drifts(rules);
}

}  // namespace coverframe::catalogue
