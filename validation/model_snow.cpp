// SPDX-License-Identifier: BSD-3-Clause
// Snow rules of the documents, each called with what the source of the case started from.
#include <cmath>

#include "coverframe/actions/asce7_22.hpp"
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

}  // namespace

void add_snow_models(std::map<std::string, Model>& all) {
    all["asce7_22_flat"] = asce7_22_flat;
    all["asce7_22_sloped"] = asce7_22_sloped;
    all["asce7_22_low_slope"] = asce7_22_low_slope;
    all["asce7_22_unit_weight"] = asce7_22_unit_weight;
    all["asce7_22_unbalanced"] = asce7_22_unbalanced;
    all["asce7_22_combinations"] = asce7_22_combinations;
}

}  // namespace coverframe::validation
