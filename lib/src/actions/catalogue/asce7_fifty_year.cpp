// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_fifty_year.hpp"

#include "actions/catalogue/asce7_fast.hpp"
#include "actions/catalogue/asce7_shared.hpp"

namespace coverframe::catalogue {
namespace {

using namespace asce7;
using namespace asce7::fifty_year;

void add_tables(std::vector<Rule>& rules, const Asce7Edition& edition) {
    add(rules, {edition.space, "strength_factors", edition.strength, "Factors of a strength combination with snow.",
                Read::sure, "chapter 2", us_units},
        {{"combination", "combination", "the action that leads, and what comes with it"}}, factor_results,
        [](StrengthCombination combination) {
            const CombinationFactors f = strength_factors_2_3(combination);
            return std::tuple(f.permanent, f.snow, f.live, f.wind, f.earthquake);
        });
    add(rules, {edition.space, "allowable_stress_factors", edition.allowable_stress,
                "Factors of an allowable-stress combination with snow.", Read::sure, "chapter 2", us_units},
        {{"combination", "combination", "the actions that come together"}}, factor_results,
        [](AllowableStressCombination combination) {
            const CombinationFactors f = allowable_stress_factors_2_4(combination);
            return std::tuple(f.permanent, f.snow, f.live, f.wind, f.earthquake);
        });
    add(rules, {edition.space, "importance_factor", Clause{edition.flat.document, "Table 1.5-2"},
                "Importance factor of snow.", Read::part,
                "category II on a page (O'Rourke, Guide to ASCE 7-10, Example 4-3), the others from memory, sure",
                us_units},
        {{"risk_category", "category", "of the structure"}},
        {{"importance_factor", "I_s", "I 0.8, II 1.0, III 1.1, IV 1.2"}},
        [](RiskCategory category) { return importance_factor_1_5(category); });
    add(rules, {edition.space, "thermal_factor", edition.thermal, "Thermal factor.", Read::page,
                "7-10: A. Siraj, engineeringexamples.net; 7-16: O'Rourke, STRUCTURE magazine, Snow Thermal Factors for "
                "Structural Renovations", us_units},
        {{"thermal_condition", "condition", "what warms or cools the roof"}},
        {{"thermal_factor", "C_t", "unheated or open air 1.2, below freezing 1.3, just above freezing or ventilated "
                                   "1.1, heated 1.0, greenhouse 0.85"}},
        [](ThermalCondition condition) { return thermal_factor_7_3_2(condition); });
}

void add_loads(std::vector<Rule>& rules, const Asce7Edition& edition) {
    add(rules, {edition.space, "flat_load", edition.flat, "Flat roof snow load.", Read::page,
                "Eq. 7.3-1 (O'Rourke, Guide to ASCE 7-10, Example 4-3; NFBA magazine, Sept. 2025, p. 26)", us_units},
        {ground_50_years, exposure_argument, thermal_argument, importance_argument},
        {{"flat_load_kpa", "p_f", "0.7 C_e C_t I_s p_g"}},
        [](Pressure p_g, double c_e, double c_t, double i_s) { return flat_load_7_3(p_g, c_e, c_t, i_s); },
        [](double p_g, double c_e, double c_t, double i_s) {
            return fast(fast_ground(p_g) * fast_exposure(c_e) * fast_thermal(c_t) * fast_importance(i_s),
                        0.7 * c_e * c_t * i_s * p_g);
        });
    add(rules, {edition.space, "minimum_load", edition.minimum, "Minimum snow load of a low slope, a load of its own.",
                Read::part, "the branch of 20 psf on a page (O'Rourke, Guide to ASCE 7-10, Example 4-3), the other "
                            "from memory, sure", us_units},
        {ground_50_years, importance_argument}, {{"minimum_load_kpa", "p_m", "I_s min(p_g, 20 psf)"}},
        [](Pressure p_g, double i_s) { return minimum_load_7_3_4(p_g, i_s); },
        [](double p_g, double i_s) {
            return fast(fast_ground(p_g) * fast_importance(i_s), i_s * std::min(p_g, 20.0 / psf));
        });
    add(rules, {edition.space, "narrow_gable", edition.gable,
                "Load on the lee slope of a narrow gable of simple rafters, the windward slope being empty.",
                Read::sure, "7.6.1", us_units},
        {ground_50_years, gable_slope_argument, {"eave_to_ridge_m", "W", "eave to ridge, level, up to 20 ft"},
         {"framing", "framing", "has to be simple rafters; film on straps is not", "other"}, importance_argument},
        {{"leeward_kpa", "p_lee", "I_s p_g"}},
        [](Pressure p_g, Angle slope, Length ridge, Framing framing, double i_s) {
            return narrow_gable_7_6_1(p_g, slope, ridge, framing, i_s);
        },
        [](double p_g, double slope, double ridge, Framing framing, double i_s) {
            return fast(one_if(framing == Framing::simple_rafters) * fast_ground(p_g) * fast_gable_slope(slope) *
                            within(ridge, above_zero, 6.095) * fast_importance(i_s),
                        i_s * p_g);
        });
    add(rules, {edition.space, "rain_on_snow", edition.rain, "Rain that falls on the snow, added to the balanced load.",
                Read::part, "the limit of p_g on a page (O'Rourke, Guide to ASCE 7-10, Example 4-3), the rest from "
                            "memory, sure", us_units},
        {ground_50_years, slope_argument, ridge_argument},
        {{"rain_on_snow_kpa", "p_rain", "5 psf if 0 < p_g <= 20 psf and slope < W/50 (deg, ft), else 0"}},
        [](Pressure p_g, Angle slope, Length ridge) { return rain_on_snow_7_10(p_g, slope, ridge); },
        [](double p_g, double slope, double ridge) {
            const double flat = one_if(in_deg(from_deg(slope)) < in_ft(from_m(ridge)) / 50.0);
            const double load = in_psf(from_kPa(p_g));
            const double little = one_if(load > 0.0) * one_if(load <= 20.0 * limit::rounding);
            return fast(fast_ground(p_g) * fast_slope(slope) * fast_fetch(ridge), flat * little * (5.0 / psf));
        });
}

void add_slopes(std::vector<Rule>& rules, const Asce7Edition& edition) {
    const char* source = "Fig. 7-2 or 7.4-1: 10 degrees on a page (forum thread on Fig. 7-2b of 7-05), the rest from "
                         "memory, sure";
    const std::string full = "5 (slippery) or 30 deg for C_t <= 1.0, 10 or 37.5 to 1.1, 15 or 45 above";
    add(rules, {edition.space, "full_load_slope", edition.slope, "Slope at which the slope factor begins to fall.",
                Read::part, source, us_units},
        {thermal_argument, surface_argument}, {{"full_load_slope_deg", "a", full}},
        [](double c_t, Surface surface) { return full_load_slope_7_4(c_t, surface); },
        [](double c_t, Surface surface) {
            return fast(fast_thermal(c_t), fast_full_slope(c_t <= 1.0, c_t <= 1.1, surface));
        });
    add(rules, {edition.space, "slope_factor", edition.slope, "Slope factor.", Read::part, source, us_units},
        {slope_argument, thermal_argument, surface_argument},
        {slope_factor_result(full)},
        [](Angle slope, double c_t, Surface surface) { return slope_factor_7_4(slope, c_t, surface); },
        [](double slope, double c_t, Surface surface) {
            return fast(fast_slope(slope) * fast_thermal(c_t),
                        fast_slope_factor(slope, fast_full_slope(c_t <= 1.0, c_t <= 1.1, surface)));
        });
    add(rules, {edition.space, "unbalanced_curve", edition.curve,
                "Unbalanced load of the lee half of a curved roof, the windward half being empty.", Read::sure,
                "Fig. 7-3 or 7.4-2; the rule of 3 ft from memory", us_units},
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
            return fast_curve(fast_thermal(c_t), p_f, c_e, fast_full_slope(c_t <= 1.0, c_t <= 1.1, surface), eave_slope,
                              clearance);
        });
}

}  // namespace

void add_asce7_fifty_year(std::vector<Rule>& rules, const Asce7Edition& edition) {
    add_tables(rules, edition);
    add_loads(rules, edition);
    add_slopes(rules, edition);
}

}  // namespace coverframe::catalogue
