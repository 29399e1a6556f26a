// SPDX-License-Identifier: BSD-3-Clause
#include "actions/catalogue/asce7_shared.hpp"

#include <cmath>

#include "actions/catalogue/asce7_fast.hpp"
#include "coverframe/actions/asce7_curved.hpp"
#include "coverframe/actions/asce7_drift.hpp"
#include "coverframe/actions/asce7_gable.hpp"
#include "coverframe/actions/asce7_partial.hpp"
#include "coverframe/actions/asce7_sliding.hpp"

namespace coverframe::catalogue {
namespace {

/// 1 if `number` lies in [low, high], else 0.
constexpr double from_to(double number, double low, double high) {
    return one_if(number >= low) * one_if(number <= high);
}

using namespace asce7;

/// A whole number.   \throws InputError with the code of `name` if it is none
int whole(double number, const argument::Name& name) {
    argument::within(number, 0.0, 1e6, name);
    if (number != std::floor(number)) argument::refuse(name, number, 0.0, 1e6);
    return static_cast<int>(number);
}

void add_factors(std::vector<Rule>& rules, const Asce7Edition& edition) {
    add(rules, {edition.space, "exposure_factor", edition.exposure, "Exposure factor.", Read::part,
                "terrain B, partially exposed, on a page (O'Rourke, Guide to ASCE 7-10, Example 4-3); the rest from "
                "memory, sure", us_units},
        {{"terrain", "terrain", "roughness of the land round the yard"},
         {"roof_exposure", "exposure", "how the wind reaches the roof"}},
        {{"exposure_factor", "C_e", "fully, partially exposed, sheltered: B 0.9, 1.0, 1.2; C 0.9, 1.0, 1.1; D 0.8, "
                                    "0.9, 1.0; treeless 0.7, 0.8, none"}},
        [](Terrain terrain, RoofExposure exposure) { return exposure_factor_7_3_1(terrain, exposure); });
    add(rules, {edition.space, "obstruction_shelters", edition.exposure,
                "Whether an obstruction shelters a roof, so that it is not fully exposed.", Read::part,
                "the ten heights on a page (O'Rourke, Guide to ASCE 7-10, Example 4-3), the rest from memory, sure",
                us_units},
        {{"distance_m", "d", "from the roof to the obstruction, level"},
         {"obstruction_m", "h_o", "top of the obstruction above the roof"}},
        {{"obstruction_shelters", "shelters", "d <= 10 h_o"}},
        [](Length distance, Length height) { return obstruction_shelters_7_3_1(distance, height); },
        [](double distance, double height) {
            const double in_reach = in_ft(from_m(height)) * 10.0 * limit::rounding;
            return fast(within(distance, 0.0, 9143.9) * fast_length(height),
                        one_if(in_ft(from_m(distance)) <= in_reach));
        });
    add(rules, {edition.space, "minimum_applies", edition.minimum, "Whether the minimum load has to be looked at.",
                Read::part, "15 degrees on a page (O'Rourke, Guide to ASCE 7-10, Example 4-3), 10 degrees from memory, "
                            "sure", us_units},
        {{"slope_deg", "slope", "of the roof, or from eave to crown of a curved one, 0 to 90"},
         {"roof_shape", "shape", "of the roof", "hip or gable"}},
        {{"minimum_applies", "applies", "slope < 15 deg; 10 deg for a curved roof"}},
        [](Angle slope, RoofShape shape) { return low_slope_7_3(slope, shape); },
        [](double slope, RoofShape shape) {
            const Angle low = from_deg(shape == RoofShape::curved ? 10.0 : 15.0);
            return fast(fast_slope(slope), one_if(from_deg(slope) < low));
        });
    add(rules, {edition.space, "warm_slippery_applies", edition.slope,
                "Whether a warm roof is insulated well enough for the slippery line.", Read::sure, "7.4.1", us_units},
        {{"r_value", "R", "thermal resistance in US units (deg F h ft2/Btu)"},
         {"ventilated", "ventilated", "whether air passes between roof and insulation"}},
        {{"warm_slippery_applies", "applies", "R >= 30, or 20 if ventilated"}},
        [](double r_value, bool ventilated) { return warm_slippery_applies_7_4_1(r_value, ventilated); },
        [](double r_value, bool ventilated) {
            return fast(within(r_value, 0.0, argument::largest), one_if(r_value >= (ventilated ? 20.0 : 30.0)));
        });
    add(rules, {edition.space, "sloped_load", edition.slope, "Sloped roof (balanced) snow load.", Read::page,
                "Eq. 7.4-1 (Beginner's Guide to ASCE 7-05, 8.4)", us_units},
        {flat_argument, {"slope_factor", "C_s", "slope factor, 0 to 1"}}, {{"sloped_load_kpa", "p_s", "C_s p_f"}},
        [](Pressure flat, double factor) { return sloped_load_7_4(flat, factor); },
        [](double flat, double factor) { return fast(fast_roof(flat) * within(factor, 0.0, 1.0), factor * flat); });
    add(rules, {edition.space, "existing_roof_affected", edition.existing,
                "Whether an existing lower roof has to be checked again for a higher one beside it.", Read::sure,
                "7.12", us_units},
        {gap_argument}, {{"existing_roof_affected", "affected", "s <= 20 ft"}},
        [](Length gap) { return existing_roof_affected_7_12(gap); },
        [](double gap) {
            return fast(fast_free_length(gap), one_if(in_ft(from_m(gap)) <= 20.0 * limit::rounding));
        });
}

void add_depths(std::vector<Rule>& rules, const Asce7Edition& edition) {
    const Text ground{"ground_snow_kpa", "p_g", "ground snow load, 0 to 100"};
    const char* source = "Eq. 7.7-1 (O'Rourke, Guide to ASCE 7-10, Example 6-2; STRUCTURE magazine on Canadian and "
                         "U.S. drifts)";
    add(rules, {edition.space, "unit_weight", edition.drift, "Unit weight of drifted snow.", Read::page, source,
                us_units},
        {ground}, {gamma_result}, [](Pressure p_g) { return unit_weight_7_7(p_g); },
        [](double p_g) { return fast(fast_ground(p_g), fast_gamma(p_g)); });
    add(rules, {edition.space, "balanced_depth", edition.drift, "Depth of the balanced snow.", Read::part,
                std::string(source) + "; the depth from memory, sure", us_units},
        {balanced_argument, ground}, {gamma_result, balanced_depth_result},
        [](Pressure p_b, Pressure p_g) { return std::tuple(unit_weight_7_7(p_g), balanced_depth_7_7(p_b, p_g)); },
        [](double p_b, double p_g) {
            return fast(fast_roof(p_b) * fast_ground(p_g), fast_gamma(p_g), p_b / fast_gamma(p_g));
        });
    add(rules, {edition.space, "drift_load_at", edition.drift,
                "Load of a triangular drift at a distance from its high end, on top of the balanced load.", Read::sure,
                "7.7.1", us_units},
        {{"peak_kpa", "p_d", "peak of the drift"}, {"width_m", "w", "width of the drift"},
         {"distance_m", "x", "from the wall, or from the near end across a gap"}},
        {{"drift_load_kpa", "p", "p_d (1 - x/w) up to w, then 0"}},
        [](Pressure peak, Length width, Length distance) { return drift_load_at_7_7_1(peak, width, distance); },
        [](double peak, double width, double distance) {
            return fast(within(peak, 0.0, 1e4) * within(width, 0.0, argument::largest) *
                            within(distance, 0.0, argument::largest),
                        fast_drift_at(peak, width, distance));
        });
    add(rules, {edition.space, "projection_needs_drift", edition.projection,
                "Whether a side of a projection needs a drift.", Read::fair, "7.8", us_units},
        {{"side_m", "l", "length of that side of the projection"},
         {"clearance_m", "c", "balanced snow to underside of the projection, 0 if it stands on the roof"}},
        {{"projection_needs_drift", "needed", "l >= 15 ft and c < 2 ft"}},
        [](Length side, Length clearance) { return projection_needs_drift_7_8(side, clearance); },
        [](double side, double clearance) {
            return fast(fast_length(side) * fast_free_length(clearance),
                        one_if(in_ft(from_m(side)) * limit::rounding >= 15.0) *
                            one_if(from_m(clearance) < from_ft(2.0)));
        });
}

void add_unbalanced(std::vector<Rule>& rules, const Asce7Edition& edition) {
    add(rules, {edition.space, "unbalanced_applies", edition.gable, "Whether a gable or hip needs the unbalanced case.",
                Read::part, "the lower end on a page (O'Rourke, Guide to ASCE 7-10, Example 6-2), the upper from "
                            "memory, sure", us_units},
        {slope_argument}, {{"unbalanced_applies", "applies", "2.38 deg (1/2 on 12) <= slope <= 7 on 12 (30.26 deg)"}},
        [](Angle slope) { return unbalanced_applies_7_6_1(slope); },
        [](double slope) {
            return fast(fast_slope(slope), from_to(in_rad(from_deg(slope)), in_rad(unbalanced_from_7_6_1),
                                                   in_rad(unbalanced_to_7_6_1)));
        });
    add(rules, {edition.space, "curve_unbalanced_applies", edition.curve,
                "Whether a curved roof needs the unbalanced case.", Read::sure, "7.6.2", us_units},
        {{"eave_to_crown_deg", "slope", "line from eave (or 70 degree point) to crown, 0 to 90"}},
        {{"curve_unbalanced_applies", "applies", "10 deg <= slope <= 60 deg"}},
        [](Angle slope) { return unbalanced_applies_7_6_2(slope); },
        [](double slope) {
            return fast(fast_slope(slope),
                        from_to(in_rad(from_deg(slope)), in_rad(from_deg(10.0)), in_rad(from_deg(60.0))));
        });
    add(rules, {edition.space, "circular_arc", edition.curve, "Slopes of a roof that is part of a circle.",
                Read::derived, "geometry", us_units},
        {{"half_span_m", "b", "crown to eave, level, up to 3000 ft"}, {"rise_m", "f", "crown above eaves, up to b"}},
        {{"radius_m", "R", "(b^2 + f^2)/(2 f)"},
         {"eave_to_crown_deg", "slope_chord", "atan(f/b)"},
         {"eave_slope_deg", "slope_eave", "2 atan(f/b)"},
         {"to_30_degrees_m", "x_30", "min(R sin(30 deg), b)"},
         {"to_70_degrees_m", "x_70", "min(R sin(70 deg), b)"}},
        [](Length half_span, Length rise) {
            const CircularArc arc = circular_arc_7_6_2(half_span, rise);
            return std::tuple(arc.radius, arc.eave_to_crown, arc.eave_slope, arc.to_30_degrees, arc.to_70_degrees);
        },
        [](double b, double f) {
            constexpr double sin_70 = 0.9396926207859084;
            const double radius = (b * b + f * f) / (2.0 * f);
            const double chord = in_deg(from_rad(1.0)) * fast_atan(f / b);
            return fast(fast_length(b) * within(f, above_zero, b), radius, chord, 2.0 * chord,
                        std::min(0.5 * radius, b), std::min(sin_70 * radius, b));
        });
    add(rules, {edition.space, "unbalanced_valley", edition.valley,
                "Unbalanced load between the ridges or crowns of several roofs side by side.", Read::sure, "7.6.3",
                us_units},
        {flat_argument, exposure_argument, {"ground_snow_kpa", "p_g", "ground snow load, 0 to 100"},
         {"depth_m", "z", "ridge or crown above the bottom of the valley"}},
        {gamma_result, {"crown_kpa", "p_crown", "0.5 p_f"},
         {"valley_kpa", "p_valley", "min(2 p_f/C_e, 0.5 p_f + gamma z)"}},
        [](Pressure flat, double exposure, Pressure ground, Length depth) {
            const UnbalancedValley load = unbalanced_valley_7_6_3(flat, exposure, ground, depth);
            return std::tuple(unit_weight_7_7(ground), load.crown, load.valley);
        },
        [](double flat, double exposure, double ground, double depth) {
            const double gamma = fast_gamma(ground);
            return fast(fast_roof(flat) * fast_exposure(exposure) * fast_ground(ground) * fast_length(depth), gamma,
                        0.5 * flat, std::min(2.0 / exposure * flat, 0.5 * flat + gamma * depth));
        });
}

std::tuple<bool, LineLoad, Pressure, Length, LineLoad> given(const SlidingSnow& snow) {
    return {snow.needed, snow.per_eave, snow.intensity, snow.extent, snow.on_lower_roof};
}

/// Sliding snow if `needed` is 1, across a gap.
constexpr Fast<5> fast_sliding(Covered covered, double needed, double flat, double ridge, double lower, double gap) {
    constexpr double reach = in_m(from_ft(15.0));
    const double per_eave = needed * (0.4 * flat * ridge);
    const double intensity = per_eave / reach;
    const double extent = needed * std::min(reach - gap, lower);
    return fast(covered * fast_roof(flat) * fast_fetch(ridge) * fast_fetch(lower), needed, per_eave, intensity, extent,
                intensity * extent);
}

void add_sliding(std::vector<Rule>& rules, const Asce7Edition& edition) {
    const Text width{"lower_width_m", "b", "lower roof, away from the eave, up to 600 ft"};
    const std::vector<Text> results{{"needed", "needed", "whether snow can slide so far"},
                                    {"per_eave_kn_per_m", "q", "0.4 p_f W; 0 if not needed"},
                                    {"intensity_kpa", "p_slide", "q/15 ft"},
                                    {"extent_m", "x", "min(15 ft, b)"},
                                    {"on_lower_roof_kn_per_m", "q_lower", "p_slide x"}};
    add(rules, {edition.space, "sliding_applies", edition.sliding,
                "Whether snow of an upper roof has to be taken as sliding.", Read::sure, "7.9", us_units},
        {slope_argument, {"surface", "surface", "of the upper roof", "slippery"}},
        {{"sliding_applies", "applies", "steeper than 1/4 on 12 if slippery, than 2 on 12 if not"}},
        [](Angle slope, Surface surface) { return sliding_applies_7_9(slope, surface); },
        [](double slope, Surface surface) {
            constexpr double quarter_on_12 = 0.020830320362;  // as the rule has it
            constexpr double two_on_12 = 0.165148677414;
            const double flattest = surface == Surface::unobstructed_slippery ? quarter_on_12 : two_on_12;
            return fast(fast_slope(slope), one_if(in_rad(from_deg(slope)) > flattest));
        });
    add(rules, {edition.space, "sliding_load", edition.sliding,
                "Sliding snow on a lower roof that touches the upper one.", Read::sure, "7.9", us_units},
        {flat_argument, ridge_argument, width}, results, [](Pressure flat, Length ridge, Length lower) {
            return given(sliding_load_7_9(flat, ridge, lower));
        },
        [](double flat, double ridge, double lower) { return fast_sliding(1.0, 1.0, flat, ridge, lower, 0.0); });
    std::vector<Text> over_gap = results;
    over_gap[0].text = "s < 15 ft and h_r > s";
    over_gap[3].text = "min(15 ft - s, b)";
    add(rules, {edition.space, "sliding_load_over_gap", edition.sliding,
                "Sliding snow that reaches a lower structure across a gap.", Read::fair, "7.9", us_units},
        {flat_argument, ridge_argument, width, gap_argument, step_argument}, over_gap,
        [](Pressure flat, Length ridge, Length lower, Length gap, Length height) {
            return given(sliding_load_over_gap_7_9(flat, ridge, lower, gap, height));
        },
        [](double flat, double ridge, double lower, double gap, double height) {
            const double needed = one_if(height > gap) * one_if(from_m(gap) < from_ft(15.0));
            return fast_sliding(fast_length(gap) * fast_length(height), needed, flat, ridge, lower, gap);
        });
}

void add_partial(std::vector<Rule>& rules, const Asce7Edition& edition) {
    const Text spans{"spans", "n", "number of spans, a cantilever counts as one, from 2"};
    add(rules, {edition.space, "partial_loading_applies", edition.partial,
                "Whether partial loading has to be looked at.", Read::sure, "7.5", us_units},
        {{"member_run", "member", "how it runs", "other"}, slope_argument},
        {{"partial_loading_applies", "applies", "not from eave to ridge at 2.38 deg (1/2 on 12) or steeper"}},
        [](MemberRun run, Angle slope) { return partial_loading_applies_7_5(run, slope); },
        [](MemberRun run, double slope) {
            const double flat = one_if(from_deg(slope) < from_deg(2.38));
            return fast(fast_slope(slope), run == MemberRun::eave_to_ridge ? flat : 1.0);
        });
    add(rules, {edition.space, "partial_patterns", edition.partial,
                "How many partial loadings a continuous member has.", Read::sure, "7.5.1", us_units},
        {spans}, {{"patterns", "N", "n + 3"}}, [](double n) {
            return static_cast<double>(partial_patterns_7_5(whole(n, {"asce7.spans.range", "number of spans", "-"})));
        });
    add(rules, {edition.space, "partial_factor", edition.partial,
                "Share of the balanced load on one span in one partial loading.", Read::sure, "7.5.1", us_units},
        {spans,
         {"pattern", "k",
          "1, 2: all on the first or last span; 3, 4: half on the first or last; 4 + i: all on i and i + 1"},
         {"span", "i", "number of the span, from 1"}},
        {{"partial_factor", "factor", "1 where all of the balanced load lies, 0.5 where half of it does"}},
        [](double n, double pattern, double span) {
            return partial_factor_7_5(whole(n, {"asce7.spans.range", "number of spans", "-"}),
                                      whole(pattern, {"asce7.pattern.range", "number of the loading", "-"}),
                                      whole(span, {"asce7.span.range", "number of the span", "-"}));
        });
}

}  // namespace

std::vector<Text> joined(std::vector<Text> first, const std::vector<Text>& second) {
    first.insert(first.end(), second.begin(), second.end());
    return first;
}

asce7::LowerRoof asce7_roof(Pressure ground, Pressure balanced, Length step, Length lower) {
    return {.ground_load = ground, .balanced_load = balanced, .step = step, .length = lower};
}

GableNumbers gable_numbers(Pressure ground, Angle slope, Length eave_to_ridge, const asce7::UnbalancedGable& load) {
    return {gable_fetch_7_6_1(eave_to_ridge), unit_weight_7_7(ground), load.drift_height,
            1.0 / std::tan(in_rad(slope)), load.windward, load.leeward_surcharge, load.surcharge_width};
}

std::vector<Text> drift_results(const std::string& height) {
    return {{"needed", "needed", "h_c/h_b >= 0.2"},
            {"height_m", "h", "min(" + height + ", h_c); 0 if not needed"},
            {"width_m", "w", "4 " + height + " up to h_c, above it min(4 " + height + "^2/h_c, 8 h_c)"},
            {"peak_kpa", "p_d", "h gamma, at the wall"},
            {"at_wall_kpa", "p_wall", "p_b + p_d"},
            {"at_end_kpa", "p_end", "p_d (1 - l_lower/w) where the roof ends first, else 0"}};
}

std::vector<Text> gap_drift_results(const std::string& height, const std::string& length) {
    return {{"height_m", "h", height + "; 0 if not needed"},
            {"length_m", "l", length},
            {"peak_kpa", "p_d", "h gamma, at the near edge"},
            {"at_end_kpa", "p_end", "p_d (1 - l_lower/l) where the roof ends first, else 0"}};
}

void add_asce7_shared(std::vector<Rule>& rules, const Asce7Edition& edition) {
    add_factors(rules, edition);
    add_depths(rules, edition);
    add_unbalanced(rules, edition);
    add_sliding(rules, edition);
    add_partial(rules, edition);
}

}  // namespace coverframe::catalogue
