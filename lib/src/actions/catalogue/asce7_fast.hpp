// SPDX-License-Identifier: BSD-3-Clause
// Fast forms of ASCE 7, in metres, kPa and kN/m3: what several entries are made of.
#pragma once

#include <algorithm>
#include <cmath>

#include "actions/catalogue/elementary.hpp"
#include "actions/catalogue/entry.hpp"
#include "coverframe/actions/asce7.hpp"

namespace coverframe::catalogue {

// One unit of the catalogue in units of the document.
inline constexpr double feet = in_ft(from_m(1.0));
inline constexpr double psf = in_psf(from_kPa(1.0));
inline constexpr double pcf = in_pcf(from_kN_per_m3(1.0));

// What is covered: a little less than the limits in feet, so that no rounding puts an item outside.
constexpr Covered fast_ground(double p_g) { return within(p_g, 0.0, asce7::limit::ground_high); }
constexpr Covered fast_roof(double load) { return within(load, 0.0, asce7::limit::roof_high); }
constexpr Covered fast_exposure(double c_e) {
    return within(c_e, asce7::limit::exposure_low, asce7::limit::exposure_high);
}
constexpr Covered fast_thermal(double c_t) { return within(c_t, asce7::limit::thermal_low, asce7::limit::thermal_high); }
constexpr Covered fast_importance(double i_s) { return within(i_s, 0.5, 1.5); }
constexpr Covered fast_free_length(double length) { return within(length, 0.0, 914.39); }
constexpr Covered fast_slope(double slope) { return within(slope, 0.0, 90.0); }
constexpr Covered fast_gable_slope(double slope) { return within(slope, 2.38, 30.256); }
constexpr Covered fast_length(double length) { return within(length, above_zero, 914.39); }  // 3000 ft
constexpr Covered fast_fetch(double length) { return within(length, above_zero, 182.87); }   // 600 ft

/// Unit weight of drifted snow, 7.7.1 [kN/m3].
constexpr double fast_gamma(double p_g) { return std::min(0.13 * psf * p_g + 14.0, 30.0) / pcf; }

/// Slope factor of 7.4 where it begins to fall at `full` [deg].
constexpr double fast_slope_factor(double slope, double full) {
    return std::clamp((70.0 - slope) / (70.0 - full), 0.0, 1.0);
}

/// Where it begins to fall [deg]: charts (a), (b) and (c).
constexpr double fast_full_slope(bool warm, bool cold, asce7::Surface surface) {
    const bool slippery = surface == asce7::Surface::unobstructed_slippery;
    return warm ? (slippery ? 5.0 : 30.0) : cold ? (slippery ? 10.0 : 37.5) : (slippery ? 15.0 : 45.0);
}

/// Unbalanced load of a curved roof, 7.6.2, with C_s falling from `full` [deg]; loads as p_f.
constexpr Fast<6> fast_curve(Covered covered, double p_f, double c_e, double full, double eave_slope, double clearance) {
    const double over_30 = one_if(from_deg(eave_slope) >= from_deg(30.0));
    const double over_70 = one_if(from_deg(eave_slope) > from_deg(70.0));
    const double at_eave = fast_slope_factor(eave_slope, full);
    const double at_30 = over_30 * fast_slope_factor(30.0, full) + (1.0 - over_30) * at_eave;
    const double blocked = over_30 * one_if(in_ft(from_m(clearance)) <= 3.0 * asce7::limit::rounding);
    const double p_30 = 2.0 * at_30 / c_e * p_f;
    const double p_eave = 2.0 * at_eave / c_e * p_f;
    return fast(covered * fast_roof(p_f) * fast_exposure(c_e) * fast_slope(eave_slope) *
                    fast_free_length(clearance),
                1.0 + over_30 + over_70, at_30, at_eave, 0.5 * p_f, p_30, blocked > 0.0 ? p_30 : p_eave);
}

/// Drift height of 7-10 [m].
constexpr double fast_height_of_figure(double p_g, double l_u) {
    const double root = std::sqrt(std::sqrt(p_g * psf + 10.0));
    const double height = 0.43 * fast_power(std::max(l_u * feet, 20.0), 1.0 / 3.0) * root - 1.5;
    return one_if(p_g > 0.0) * height / feet;
}

/// What half of the snow upwind can make [m].
inline double fast_height_cap(double p_g, double l_u, double i_s) {
    return std::sqrt(i_s * (p_g * psf) * (l_u * feet) / (4.0 * pcf * fast_gamma(p_g))) / feet;
}

/// Unbalanced load of a gable, 7.6.1, with the drift height [m].
inline Fast<7> fast_gable(Covered covered, double p_s, double p_g, double slope, double ridge, double height) {
    const double angle = in_rad(from_deg(slope));
    const double run = fast_cos(angle) / fast_sin(angle);
    const double root = std::sqrt(run);
    const double gamma = fast_gamma(p_g);
    return fast(covered * fast_roof(p_s) * fast_ground(p_g) * fast_gable_slope(slope) * fast_fetch(ridge),
                std::max(ridge, 20.0 / feet), gamma, height, run, 0.3 * p_s, height * gamma / root,
                std::min(8.0 / 3.0 * root * height, ridge));
}

/// Fetch of a gable [m].
constexpr double fast_gable_fetch(double ridge) { return std::max(ridge, 20.0 / feet); }

/// Load of a triangular drift at a distance, 7.7.1.
constexpr double fast_drift_at(double peak, double width, double distance) {
    const double falling = (width - distance) / width * peak;
    return distance >= width ? 0.0 : falling;
}

/// Drift on a lower roof, 7.7.1.
struct FastDrift {
    double gamma, balanced, clear, needed, height, width, peak, at_end;
};

constexpr FastDrift fast_drift(double p_g, double p_b, double step, double lower, double height) {
    const double gamma = fast_gamma(p_g);
    const double balanced = p_b / gamma;
    const double clear = step - balanced;
    const double needed = one_if(clear > 0.0) * one_if(clear >= 0.2 * balanced);
    const double wide = std::min(4.0 * height * (height / clear), 8.0 * clear);
    const double width = height <= clear ? 4.0 * height : wide;
    const double kept = needed > 0.0 ? std::min(height, clear) : 0.0;
    const double spread = needed > 0.0 ? width : 0.0;
    const double peak = kept * gamma;
    return {gamma, balanced, clear, needed, kept, spread, peak, fast_drift_at(peak, spread, lower)};
}

constexpr Covered fast_lower_roof(double p_g, double p_b, double step, double lower) {
    return fast_ground(p_g) * fast_roof(p_b) * fast_length(step) * fast_fetch(lower);
}

/// Drift on a lower roof, the larger of both heights.
constexpr Fast<12> fast_step(Covered covered, double p_g, double p_b, double step, double lower, double leeward,
                             double windward) {
    const FastDrift d = fast_drift(p_g, p_b, step, lower, std::max(leeward, windward));
    return fast(covered * fast_lower_roof(p_g, p_b, step, lower), d.gamma, d.balanced, d.clear, leeward, windward,
                std::max(leeward, windward), d.needed, d.height, d.width, d.peak, p_b + d.peak, d.at_end);
}

/// Drift on a lower roof of one height.
constexpr Fast<10> fast_wall(Covered covered, double p_g, double p_b, double step, double lower, double height) {
    const FastDrift d = fast_drift(p_g, p_b, step, lower, height);
    return fast(covered * fast_lower_roof(p_g, p_b, step, lower), d.gamma, d.balanced, d.clear, height, d.needed,
                d.height, d.width, d.peak, p_b + d.peak, d.at_end);
}

/// Drift of the higher structure's snow across a gap, 7.7.2, with its drift height.
constexpr Fast<7> fast_leeward_gap(Covered covered, double p_g, double gap, double step, double lower, double height) {
    const double gamma = fast_gamma(p_g);
    const double s = in_ft(from_m(gap));
    const double h = in_ft(from_m(step));
    const double needed = one_if(s < 20.0) * one_if(s < 6.0 * h);
    const double reach = (6.0 * h - s) / feet;
    const double kept = needed * std::min(height, reach / 6.0);
    const double length = needed * std::min(6.0 * height, reach);
    const double peak = kept * gamma;
    return fast(covered * fast_ground(p_g) * fast_length(gap) * fast_length(step) * fast_fetch(lower), gamma, height,
                needed, kept, length, peak, fast_drift_at(peak, length, lower));
}

/// Drift of the lower structure's own snow against a higher one beyond a gap, 7.7.2, with 0.75 h_d.
constexpr Fast<9> fast_windward_gap(Covered covered, double p_g, double p_b, double gap, double step, double lower,
                                    double height) {
    const FastDrift d = fast_drift(p_g, p_b, step, lower, height);
    const double reaches = d.needed * one_if(gap < d.width);
    const double kept = reaches > 0.0 ? (1.0 - gap / d.width) * d.height : 0.0;
    const double length = reaches * (d.width - gap);
    const double peak = kept * d.gamma;
    return fast(covered * fast_lower_roof(p_g, p_b, step, lower) * fast_length(gap), d.gamma, d.balanced, d.clear,
                height, reaches, kept, length, peak, fast_drift_at(peak, length, lower));
}

}  // namespace coverframe::catalogue
