// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_22.hpp"

#include <algorithm>
#include <cmath>

#include "actions/catalogue/asce7_fast.hpp"
#include "actions/catalogue/asce7_shared.hpp"

namespace coverframe::catalogue {
namespace {

/// Formula of the drift height for a fetch of that symbol.
std::string drift_height(const std::string& l) {
    return "1.5 sqrt(p_g^0.74 " + l + "^0.70 W_2^1.7/gamma), " + l + " at least 20 ft; at most sqrt(p_g " + l +
           "/(4 gamma))";
}

/// As the rule of that name [m]. A load or a share of zero gives zero.
double fast_height(double p_g, double l_u, double w_2) {
    const double exponent = 0.74 * fast_log(std::max(p_g * psf, 1e-200)) + 0.70 * fast_log(std::max(l_u * feet, 20.0)) +
                            1.7 * fast_log(std::max(w_2, 1e-200));
    const double drifted = one_if(p_g > 0.0) * one_if(w_2 > 0.0) * fast_exp(0.5 * exponent);
    return std::min(1.5 * drifted / std::sqrt(pcf * fast_gamma(p_g)) / feet, fast_height_cap(p_g, l_u, 1.0));
}

Covered fast_wind(double w_2) { return within(w_2, 0.0, 1.0); }

double fast_minimum_limit(asce7::RiskCategory category) { return (25.0 + 5.0 * static_cast<double>(category)) / psf; }

using namespace asce7_22;

const std::string space = "asce7_22";
const Text ground{"ground_snow_kpa", "p_g", "ground snow load, strength level for the risk category, 0 to 100"};
const Text wind{"winter_wind", "W_2", "share of the winter with wind over 10 mph, 0 to 1"};
const Text category{"risk_category", "category", "of the structure"};

void add_tables(std::vector<Rule>& rules) {
    add(rules, {space, "strength_factors", clause_2_3_1, "Factors of a strength combination with snow.", Read::part,
                "1.2 D + 1.0 S on a page (Maguire et al., STRUCTURE magazine, Feb. 2022, Eq. 1); 0.3 and 0.15 from "
                "memory, the rest from memory, sure", us_units},
        {{"combination", "combination", "the action that leads, and what comes with it"}}, factor_results,
        [](StrengthCombination combination) {
            const CombinationFactors f = strength_factors_2_3(combination);
            return std::tuple(f.permanent, f.snow, f.live, f.wind, f.earthquake);
        });
    add(rules, {space, "allowable_stress_factors", clause_2_4_1,
                "Factors of an allowable-stress combination with snow.", Read::page,
                "3a, 4a, 6a (STRUCTURE magazine, ASCE 7-22 Flat Roof Snow Load Versus Minimum Snow Load)", us_units},
        {{"combination", "combination", "the actions that come together"}}, factor_results,
        [](AllowableStressCombination combination) {
            const CombinationFactors f = allowable_stress_factors_2_4(combination);
            return std::tuple(f.permanent, f.snow, f.live, f.wind, f.earthquake);
        });
    add(rules, {space, "thermal_factor", clause_7_3_2, "Thermal factor.", Read::part,
                "ventilated on a page (NFBA magazine, Sept. 2025, p. 26), the others from memory; Table 7.3-3 is not "
                "known here, so heated and just above freezing are refused", us_units},
        {{"thermal_condition", "condition", "what warms or cools the roof"}},
        {{"thermal_factor", "C_t", "unheated, open air or ventilated 1.2, below freezing 1.3, greenhouse 0.85"}},
        [](ThermalCondition condition) { return thermal_factor_7_3_2(condition); });
}

void add_loads(std::vector<Rule>& rules) {
    add(rules, {space, "flat_load", clause_7_3, "Flat roof snow load.", Read::page,
                "Eq. 7.3-1 (NFBA magazine, Sept. 2025, p. 26)", us_units},
        {ground, exposure_argument, thermal_argument}, {{"flat_load_kpa", "p_f", "0.7 C_e C_t p_g"}},
        [](Pressure p_g, double c_e, double c_t) { return flat_load_7_3(p_g, c_e, c_t); },
        [](double p_g, double c_e, double c_t) {
            return fast(fast_ground(p_g) * fast_exposure(c_e) * fast_thermal(c_t), 0.7 * c_e * c_t * p_g);
        });
    add(rules, {space, "minimum_load_limit", clause_7_3_3, "Upper limit of the minimum snow load.", Read::fair,
                "Table 7.3-4; that it exists on a page (NFBA magazine, Sept. 2025, p. 25)", us_units},
        {category}, {{"minimum_load_limit_kpa", "p_m,max", "I 25, II 30, III 35, IV 40 psf"}},
        [](RiskCategory risk) { return minimum_load_limit_7_3_3(risk); });
    add(rules, {space, "minimum_load", clause_7_3_3, "Minimum snow load of a low slope, a load of its own.", Read::fair,
                "7.3.3; that it stands apart on a page (STRUCTURE magazine, ASCE 7-22 Flat Roof Snow Load Versus "
                "Minimum Snow Load)", us_units},
        {ground, category}, {{"minimum_load_kpa", "p_m", "min(p_g, p_m,max); p_m,max I 25, II 30, III 35, IV 40 psf"}},
        [](Pressure p_g, RiskCategory risk) { return minimum_load_7_3_3(p_g, risk); },
        [](double p_g, RiskCategory risk) {
            return fast(fast_ground(p_g), std::min(p_g, fast_minimum_limit(risk)));
        });
    add(rules, {space, "narrow_gable", clause_7_6_1,
                "Load on the lee slope of a narrow gable of simple rafters, the windward slope being empty.",
                Read::sure, "7.6.1", us_units},
        {ground, gable_slope_argument, {"eave_to_ridge_m", "W", "eave to ridge, level, up to 20 ft"},
         {"framing", "framing", "has to be simple rafters; film on straps is not", "other"}},
        {{"leeward_kpa", "p_lee", "p_g"}},
        [](Pressure p_g, Angle slope, Length ridge, Framing framing) {
            return narrow_gable_7_6_1(p_g, slope, ridge, framing);
        },
        [](double p_g, double slope, double ridge, Framing framing) {
            return fast(one_if(framing == Framing::simple_rafters) * fast_ground(p_g) * fast_gable_slope(slope) *
                            within(ridge, above_zero, 6.095),
                        p_g);
        });
    add(rules, {space, "rain_on_snow", clause_7_10, "Rain that falls on the snow, added to the balanced load.",
                Read::doubtful, "the 8 psf on a page (engineering firm's list of changes in 7-22), the slope from "
                                "memory, sure, p_m,max as limit from memory, doubtful", us_units},
        {ground, slope_argument, ridge_argument, category},
        {{"rain_on_snow_kpa", "p_rain", "8 psf if 0 < p_g <= p_m,max and slope < W/50 (deg, ft), else 0"}},
        [](Pressure p_g, Angle slope, Length ridge, RiskCategory risk) {
            return rain_on_snow_7_10(p_g, slope, ridge, risk);
        },
        [](double p_g, double slope, double ridge, RiskCategory risk) {
            const double flat = one_if(in_deg(from_deg(slope)) < in_ft(from_m(ridge)) / 50.0);
            const Pressure most = asce7::limit::rounding * from_psf(25.0 + 5.0 * static_cast<double>(risk));
            const double little = one_if(in_psf(from_kPa(p_g)) > 0.0) * one_if(from_kPa(p_g) <= most);
            return fast(fast_ground(p_g) * fast_slope(slope) * fast_fetch(ridge), flat * little * (8.0 / psf));
        });
}

void add_slopes(std::vector<Rule>& rules) {
    const char* source = "Fig. 7.4-1: 10 degrees on a page (forum thread on Fig. 7-2b of 7-05), the rest from memory, "
                         "sure; the limits of C_t from memory";
    const std::string full = "5 (slippery) or 30 deg for C_t < 1.1, 10 or 37.5 below 1.2, 15 or 45 from 1.2";
    add(rules, {space, "full_load_slope", clause_7_4, "Slope at which the slope factor begins to fall.", Read::part,
                source, us_units},
        {thermal_argument, surface_argument},
        {{"full_load_slope_deg", "a", full}},
        [](double c_t, Surface surface) { return full_load_slope_7_4(c_t, surface); },
        [](double c_t, Surface surface) {
            return fast(fast_thermal(c_t), fast_full_slope(c_t < 1.1, c_t < 1.2, surface));
        });
    add(rules, {space, "slope_factor", clause_7_4, "Slope factor.", Read::part, source, us_units},
        {slope_argument, thermal_argument, surface_argument}, {slope_factor_result(full)},
        [](Angle slope, double c_t, Surface surface) { return slope_factor_7_4(slope, c_t, surface); },
        [](double slope, double c_t, Surface surface) {
            return fast(fast_slope(slope) * fast_thermal(c_t),
                        fast_slope_factor(slope, fast_full_slope(c_t < 1.1, c_t < 1.2, surface)));
        });
    add(rules, {space, "unbalanced_curve", clause_7_6_2,
                "Unbalanced load of the lee half of a curved roof, the windward half being empty.", Read::sure,
                "Fig. 7.4-2; the rule of 3 ft from memory", us_units},
        {flat_argument, exposure_argument, thermal_argument, surface_argument,
         {"eave_slope_deg", "slope_eave", "tangent at the eave, 0 to 90"},
         {"eave_clearance_m", "c", "eave to the ground or another roof"}},
        curve_results,
        [](Pressure p_f, double c_e, double c_t, Surface surface, Angle eave_slope, Length clearance) {
            const UnbalancedCurve curve = unbalanced_curve_7_6_2({.flat_load = p_f,
                                                                  .exposure = c_e,
                                                                  .chart = slope_chart_7_4(c_t),
                                                                  .surface = surface,
                                                                  .eave_slope = eave_slope,
                                                                  .eave_clearance = clearance});
            return std::tuple(static_cast<double>(curve.figure_case), curve.slope_factor_30, curve.slope_factor_eave,
                              curve.crown, curve.at_30_degrees, curve.eave);
        },
        [](double p_f, double c_e, double c_t, Surface surface, double eave_slope, double clearance) {
            return fast_curve(fast_thermal(c_t), p_f, c_e, fast_full_slope(c_t < 1.1, c_t < 1.2, surface), eave_slope,
                              clearance);
        });
}

void add_heights(std::vector<Rule>& rules) {
    const char* source = "Eq. 7.6-1: coefficient and variables on a page (STRUCTURE magazine on Canadian and U.S. "
                         "drifts), exponents from memory, sure, cap and least fetch from memory";
    add(rules, {space, "drift_height", clause_7_6, "Drift height.", Read::part, source, us_units},
        {ground, fetch_argument, wind},
        {{"drift_height_m", "h_d", drift_height("l_u")}},
        [](Pressure p_g, Length l_u, double w_2) { return drift_height_7_6(p_g, l_u, w_2); },
        [](double p_g, double l_u, double w_2) {
            return fast(fast_ground(p_g) * fast_fetch(l_u) * fast_wind(w_2), fast_height(p_g, l_u, w_2));
        });
    add(rules, {space, "windward_drift_height", clause_7_7_1,
                "Height of a windward drift, also at a parapet or projection; its width is not known here.",
                Read::doubtful, "that 7-22 keeps the 0.75 from memory, doubtful", us_units},
        {ground, fetch_argument, wind}, {{"windward_height_m", "h_wind", "0.75 times " + drift_height("l_u")}},
        [](Pressure p_g, Length l_u, double w_2) { return windward_drift_height_7_7_1(p_g, l_u, w_2); },
        [](double p_g, double l_u, double w_2) {
            return fast(fast_ground(p_g) * fast_fetch(l_u) * fast_wind(w_2), 0.75 * fast_height(p_g, l_u, w_2));
        });
    add(rules, {space, "unbalanced_gable", clause_7_6_1,
                "Unbalanced load of a gable of any framing but simple rafters.", Read::part,
                "0.3 p_s and the intensity on a page (O'Rourke, Guide to ASCE 7-10, Example 6-2), the length from "
                "memory, sure, the least fetch from memory, doubtful", us_units},
        {sloped_argument, ground, gable_slope_argument, ridge_argument, wind}, gable_results(drift_height("l_u")),
        [](Pressure p_s, Pressure p_g, Angle slope, Length ridge, double w_2) {
            return gable_numbers(p_g, slope, ridge, unbalanced_gable_7_6_1({p_s, p_g, slope, ridge, w_2}));
        },
        [](double p_s, double p_g, double slope, double ridge, double w_2) {
            return fast_gable(fast_wind(w_2), p_s, p_g, slope, ridge, fast_height(p_g, fast_gable_fetch(ridge), w_2));
        });
}

void add_drifts(std::vector<Rule>& rules) {
    add(rules, {space, "leeward_drift", clause_7_7_1,
                "Leeward drift on a lower roof; the windward drift is a case of its own.", Read::part,
                "p_d = h gamma on a page (design firm's article on drifts in 7-16 and 7-22), the rest from memory, "
                "sure, the drift height as drift_height", us_units},
        {ground, balanced_argument, step_argument, upper_argument, lower_argument, wind},
        joined({gamma_result, balanced_depth_result, clear_height_result,
                {"drift_height_m", "h_d", drift_height("l_upper")}},
               drift_results("h_d")),
        [](Pressure p_g, Pressure p_b, Length step, Length upper, Length lower, double w_2) {
            const Drift d = leeward_drift_7_7_1(asce7_roof(p_g, p_b, step, lower), upper, w_2);
            return std::tuple(unit_weight_7_7(p_g), d.balanced_depth, d.clear_height, drift_height_7_6(p_g, upper, w_2),
                              d.needed, d.height, d.width, d.peak, Pressure(p_b + d.peak), d.at_end);
        },
        [](double p_g, double p_b, double step, double upper, double lower, double w_2) {
            return fast_wall(fast_fetch(upper) * fast_wind(w_2), p_g, p_b, step, lower, fast_height(p_g, upper, w_2));
        });
    add(rules, {space, "leeward_drift_over_gap", clause_7_7_2,
                "Drift that snow of the higher structure makes on the lower one across a gap.", Read::fair,
                "7.7.2; the limits of s from memory, sure", us_units},
        {ground, gap_argument, step_argument, higher_argument, lower_argument, wind},
        joined({gamma_result, {"drift_height_m", "h_d", drift_height("l_upper")},
                {"needed", "needed", "s < 20 ft and s < 6 h_r"}},
               gap_drift_results("min(h_d, (6 h_r - s)/6)", "min(6 h_d, 6 h_r - s)")),
        [](Pressure p_g, Length gap, Length step, Length higher, Length lower, double w_2) {
            const GapDrift d = leeward_drift_over_gap_7_7_2({gap, step, lower}, p_g, higher, w_2);
            return std::tuple(unit_weight_7_7(p_g), drift_height_7_6(p_g, higher, w_2), d.needed, d.height, d.length,
                              d.peak, d.at_end);
        },
        [](double p_g, double gap, double step, double higher, double lower, double w_2) {
            return fast_leeward_gap(fast_fetch(higher) * fast_wind(w_2), p_g, gap, step, lower,
                                    fast_height(p_g, higher, w_2));
        });
}

}  // namespace

void add_asce7_22(std::vector<Rule>& rules) {
    add_asce7_shared(rules, {.space = space,
                             .strength = clause_2_3_1,
                             .allowable_stress = clause_2_4_1,
                             .exposure = clause_7_3_1,
                             .thermal = clause_7_3_2,
                             .flat = clause_7_3,
                             .minimum = clause_7_3_3,
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
                             .existing = clause_7_12});
    add_tables(rules);
    add_loads(rules);
    add_slopes(rules);
    add_heights(rules);
    add_drifts(rules);
}

}  // namespace coverframe::catalogue
