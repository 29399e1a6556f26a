// SPDX-License-Identifier: BSD-3-Clause
// Snow rules of the documents, each called with what the source of the case started from.
#include <cmath>

#include "coverframe/actions/asce7_22.hpp"
#include "coverframe/actions/en1991_1_3.hpp"
#include "model.hpp"

namespace coverframe::validation {
namespace {

asce7_22::Surface surface_of(const Input& input) {
    const std::string surface = input.text("surface");
    if (surface == "unobstructed slippery") return asce7_22::Surface::unobstructed_slippery;
    if (surface == "other") return asce7_22::Surface::other;
    throw CaseError("a surface is \"unobstructed slippery\" or \"other\"");
}

Answers asce7_22_flat(const Input& input) {
    return {{"p_f", answer(asce7_22::flat_load_7_3(input.quantity<Pressure>("ground_load"), input.number("exposure"),
                                                   input.number("thermal")),
                           "asce7_22::flat_load_7_3")}};
}

Answers asce7_22_sloped(const Input& input) {
    const double factor =
        asce7_22::slope_factor_7_4(input.quantity<Angle>("slope"), input.number("thermal"), surface_of(input));
    return {{"C_s", answer(factor, "asce7_22::slope_factor_7_4 asce7_22::full_load_slope_7_4")},
            {"p_s", answer(asce7_22::sloped_load_7_4(input.quantity<Pressure>("flat_load"), factor),
                           "asce7_22::sloped_load_7_4")}};
}

Answers asce7_22_low_slope(const Input& input) {
    const Angle slope = from_rad(std::atan(input.number("rise") / input.number("run")));
    return {{"slope", answer(slope, "from_rad")},
            {"minimum_applies", answer(asce7_22::minimum_applies_7_3_3(slope) ? 1.0 : 0.0,
                                       "asce7_22::minimum_applies_7_3_3")}};
}

Answers asce7_22_unit_weight(const Input& input) {
    return {{"gamma", answer(asce7_22::unit_weight_7_7(input.quantity<Pressure>("ground_load")),
                             "asce7_22::unit_weight_7_7")}};
}

/// The drift height of the source is of an earlier edition, so the surcharge is compared for that height: it is
/// proportional to it in every edition.
Answers asce7_22_unbalanced(const Input& input) {
    const asce7_22::UnbalancedGable gable = asce7_22::unbalanced_gable_7_6_1({
        .sloped_load = input.quantity<Pressure>("sloped_load"),
        .ground_load = input.quantity<Pressure>("ground_load"),
        .slope = from_rad(std::atan(input.number("rise") / input.number("run"))),
        .eave_to_ridge = input.quantity<Length>("eave_to_ridge"),
        .winter_wind = input.number("winter_wind")});
    const std::string rule = "asce7_22::unbalanced_gable_7_6_1";
    Answers answers{{"windward", answer(gable.windward, rule)}};
    if (input.has("drift_height_of_source")) {
        const double share = input.si<Length>("drift_height_of_source") / in_m(gable.drift_height);
        answers["surcharge"] = answer(share * gable.leeward_surcharge, rule + " asce7_22::unit_weight_7_7");
    }
    return answers;
}

Answers asce7_22_combinations(const Input&) {
    return {{"strength_D", answer(asce7_22::strength_2_3_1.permanent, "asce7_22::strength_2_3_1")},
            {"strength_S", answer(asce7_22::strength_2_3_1.snow, "asce7_22::strength_2_3_1")},
            {"allowable_S", answer(asce7_22::allowable_stress_2_4_1.snow, "asce7_22::allowable_stress_2_4_1")}};
}

en1991_1_3::Sliding sliding_of(const Input& input) {
    const std::string sliding = input.text("sliding");
    if (sliding == "free") return en1991_1_3::Sliding::free;
    if (sliding == "prevented") return en1991_1_3::Sliding::prevented;
    throw CaseError("sliding is \"free\" or \"prevented\"");
}

Answers en1991_1_3_shape(const Input& input) {
    const Angle pitch = input.quantity<Angle>("pitch");
    return {{"mu_1", answer(en1991_1_3::shape_coefficient_pitched_5_3_3(pitch, sliding_of(input)),
                            "en1991_1_3::shape_coefficient_pitched_5_3_3")}};
}

/// Load on a slope: undrifted, and halved as the lighter slope of the drifted arrangement.
Answers en1991_1_3_slope(const Input& input) {
    const en1991_1_3::Slope slope{input.quantity<Angle>("pitch"), sliding_of(input)};
    const en1991_1_3::DuopitchArrangements mu = en1991_1_3::duopitch_5_3_3(slope, slope);
    const auto load = [&](double shape) {
        return en1991_1_3::roof_load_5_2(input.quantity<Pressure>("ground_load"), shape, input.number("exposure"),
                                         input.number("thermal"));
    };
    const std::string rules =
        "en1991_1_3::roof_load_5_2 en1991_1_3::duopitch_5_3_3 en1991_1_3::shape_coefficient_pitched_5_3_3";
    return {{"undrifted", answer(load(mu.undrifted.first), rules)},
            {"lighter_slope", answer(load(mu.first_halved.first), rules)},
            {"heavier_slope", answer(load(mu.first_halved.second), rules)}};
}

}  // namespace

void add_snow_models(std::map<std::string, Model>& all) {
    all["asce7_22_flat"] = asce7_22_flat;
    all["asce7_22_sloped"] = asce7_22_sloped;
    all["asce7_22_low_slope"] = asce7_22_low_slope;
    all["asce7_22_unit_weight"] = asce7_22_unit_weight;
    all["asce7_22_unbalanced"] = asce7_22_unbalanced;
    all["asce7_22_combinations"] = asce7_22_combinations;
    all["en1991_1_3_shape"] = en1991_1_3_shape;
    all["en1991_1_3_slope"] = en1991_1_3_slope;
}

}  // namespace coverframe::validation
