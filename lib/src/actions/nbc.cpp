// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/nbc.hpp"

#include <algorithm>
#include <cmath>

namespace coverframe::nbc {
namespace {

double wind_of(double wind) {
    return argument::within(wind, limit::wind_low, limit::wind_high,
                            {"nbc.wind.range", "wind exposure factor C_w", "-"});
}

double basic_of(double basic) {
    return argument::within(basic, limit::basic_low, limit::basic_high,
                            {"nbc.basic.range", "basic roof snow load factor C_b", "-"});
}

double ground_in_kPa(Pressure ground_snow, double low) {
    return argument::within(in_kPa(ground_snow), low, limit::ground_high,
                            {"nbc.ground_snow.range", "ground snow load S_s", "kPa"});
}

double weight_in_kN_per_m3(UnitWeight unit_weight) {
    return argument::within(in_kN_per_m3(unit_weight), limit::weight_low, limit::weight_high,
                            {"nbc.unit_weight.range", "unit weight of snow", "kN/m3"});
}

double length_in_m(Length length, const argument::Name& name) { return argument::not_negative(in_m(length), name); }

}  // namespace

Length characteristic_length_4_1_6_2(Length width, Length length) {
    const double w = argument::positive(in_m(width), {"nbc.width.range", "smaller plan size w", "m"});
    const double l =
        argument::within(in_m(length), w, argument::largest, {"nbc.length.range", "larger plan size l", "m"});
    return from_m(2.0 * w - w * (w / l));
}

double basic_factor_4_1_6_2(Length characteristic_length, double wind) {
    const double l_c =
        length_in_m(characteristic_length, {"nbc.characteristic_length.range", "characteristic length l_c", "m"});
    const double C_w = wind_of(wind);
    const double beyond = l_c * C_w * C_w - 70.0;
    return beyond <= 0.0 ? 0.8 : (1.0 - (1.0 - 0.8 * C_w) * std::exp(-beyond / 100.0)) / C_w;
}

Length obstruction_distance_4_1_6_2(Length height, Pressure ground_snow, UnitWeight unit_weight, double basic,
                                    double wind) {
    const double h_o = length_in_m(height, {"nbc.obstruction.range", "height of an obstruction", "m"});
    const double S_s = ground_in_kPa(ground_snow, 0.0);
    const double gamma = weight_in_kN_per_m3(unit_weight);
    return from_m(10.0 * std::max(0.0, h_o - basic_of(basic) * wind_of(wind) * S_s / gamma));
}

SpecifiedLoad specified_load_4_1_6_2(Pressure ground_snow, Pressure rain, double importance,
                                     const RoofFactors& factors) {
    ground_in_kPa(ground_snow, 0.0);
    argument::within(in_kPa(rain), 0.0, limit::ground_high, {"nbc.rain.range", "rain load S_r", "kPa"});
    argument::within(importance, limit::importance_low, limit::importance_high,
                     {"nbc.importance.range", "importance factor I_s", "-"});
    argument::within(factors.slope, 0.0, 1.0, {"nbc.slope_factor.range", "slope factor C_s", "-"});
    argument::not_negative(factors.accumulation, {"nbc.accumulation.range", "accumulation factor C_a", "-"});
    const Pressure snow =
        basic_of(factors.basic) * wind_of(factors.wind) * factors.slope * factors.accumulation * ground_snow;
    const Pressure held = std::min(rain, snow);
    return {.snow = snow, .rain = held, .load = importance * (snow + held)};
}

StepDrift step_drift_4_1_6_5(const Step& step) {
    const double S_s = ground_in_kPa(step.ground_snow, argument::smallest);
    const double gamma = weight_in_kN_per_m3(step.unit_weight);
    const double h = length_in_m(step.height, {"nbc.height.range", "height of the step", "m"});
    const double C_b = basic_of(step.basic);
    const double l_cs =
        length_in_m(step.source_length, {"nbc.characteristic_length.range", "characteristic length l_cs", "m"});
    const double h_p = length_in_m(step.parapet, {"nbc.parapet.range", "height of the parapet", "m"});
    const bool windswept = wind_of(step.source_wind) < 1.0;

    const double beta = step.source == StepCase::I ? 1.0 : 0.67;
    const double standing = std::clamp(h_p - 0.8 * S_s / gamma, 0.0, l_cs / 5.0);
    // l_cs - 5 (l_cs/5) may leave a rounding error below zero.
    const double trapped = std::max(0.0, l_cs - 5.0 * standing);
    const double unlimited = 0.35 * beta * std::sqrt(gamma * trapped / S_s) + C_b;
    const double F = windswept ? unlimited : std::min(unlimited, 5.0);
    const double C_a0 = std::max(1.0, std::min(beta * gamma * h / (C_b * S_s), F / C_b));
    return {.parapet = from_m(standing),
            .fetch = F,
            .drift = {.peak = C_a0, .length = from_m(5.0 * (C_b * S_s / gamma) * (C_a0 - 1.0))}};
}

Drift projection_drift_4_1_6_7(Pressure ground_snow, UnitWeight unit_weight, Length height, Length longest,
                               double basic) {
    const double S_s = ground_in_kPa(ground_snow, argument::smallest);
    const double gamma = weight_in_kN_per_m3(unit_weight);
    const double h = length_in_m(height, {"nbc.height.range", "height of the projection", "m"});
    const double l_0 = length_in_m(longest, {"nbc.projection.range", "length of a projection l_0", "m"});
    const double snow = basic_of(basic) * S_s;
    const double C_a0 = std::min(0.67 * gamma * h / snow, gamma * l_0 / (7.5 * snow) + 1.0);
    return {.peak = std::max(1.0, C_a0), .length = from_m(std::min(3.35 * h, 2.0 * l_0 / 3.0))};
}

CombinationFactors combination_4_1_3_2(Combination combination) {
    switch (combination) {
        case Combination::dead: return {.permanent = 1.4, .permanent_favourable = 1.4};
        case Combination::live_and_snow:
            return {.permanent = 1.25, .permanent_favourable = 0.9, .live = 1.5, .snow = 1.0};
        case Combination::live_and_wind:
            return {.permanent = 1.25, .permanent_favourable = 0.9, .live = 1.5, .wind = 0.4};
        case Combination::snow_and_live:
            return {.permanent = 1.25, .permanent_favourable = 0.9, .live = 1.0, .snow = 1.5};
        case Combination::snow_and_wind:
            return {.permanent = 1.25, .permanent_favourable = 0.9, .snow = 1.5, .wind = 0.4};
        case Combination::wind_and_live:
            return {.permanent = 1.25, .permanent_favourable = 0.9, .live = 0.5, .wind = 1.4};
        case Combination::wind_and_snow:
            return {.permanent = 1.25, .permanent_favourable = 0.9, .snow = 0.5, .wind = 1.4};
        case Combination::earthquake:
            return {.permanent = 1.0, .permanent_favourable = 1.0, .live = 0.5, .snow = 0.25, .earthquake = 1.0};
    }
    argument::refuse({"nbc.combination.unknown", "combination number", "-"}, static_cast<double>(combination), 0, 7);
}

}  // namespace coverframe::nbc
