// SPDX-License-Identifier: BSD-3-Clause
// ISO 4355:2013, bases for the determination of snow loads on roofs: the balanced load, as far as it is known here.
//
// The text was not readable; what stands here comes from published comments on it and from memory, and the clauses have
// no numbers but that of one equation. Use it beside a national code, not in place of one.
//
// Left out because it is not known here: drift and sliding loads, which this document adds to the balanced load rather
// than multiplying it; the table of C_e,0 by terrain and of C_t by heat loss; the statistics of the ground load. A
// balanced load alone is no design of a cover.
//
// Every load is per horizontal area. How each rule was read stands beside it.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::iso4355 {

inline const Clause clause_balanced{"ISO 4355:2013", "Eq. (3)"};
inline const Clause clause_exposure{"ISO 4355:2013", "exposure coefficient of large roofs"};
inline const Clause clause_slope{"ISO 4355:2013", "slope coefficient"};

/// What the surface does to the snow.
enum class Surface {
    slippery,  ///< slippery and unobstructed: C_m = 1.333
    other,     ///< everything else: C_m = 1.0
};

[[nodiscard]] constexpr std::array<const char*, 2> choices_of(Surface) { return {"slippery", "other"}; }

namespace limit {
inline constexpr double exposure_low = 0.5, exposure_high = 1.25;  ///< C_e [-]
inline constexpr double thermal_low = 0.5, thermal_high = 1.4;     ///< C_t [-]
}  // namespace limit

/// Characteristic length of a roof.
/// l_c = 2 W - W^2/L
/// \param width   W, smaller plan size [m], over 0
/// \param length  L, larger plan size [m], not under W
/// \return l_c [m]
/// Limits: none.
/// Source: ISO 4355:2013; from memory, doubtful.
/// \throws InputError iso4355.width.range, iso4355.length.range
[[nodiscard]] Length characteristic_length(Length width, Length length);

/// Exposure coefficient with the size of the roof in it.
/// C_e = C_e0 for l_c <= 50 m, else 1.25 - (1.25 - C_e0) exp[-(l_c - 50)/200]
/// \param small                  C_e0, of a small roof [-], 0.5 to 1.25
/// \param characteristic_length  l_c [m], from 0
/// \return C_e [-], C_e0 to 1.25; C_e0 for every boat
/// Limits: none.
/// Source: ISO 4355:2013; that C_e rises towards 1.25 for large roofs read on a page (Pertermann and Puthli, KIT,
/// Comments on ISO 4355:2013, Part I), the formula from memory, doubtful.
/// \throws InputError iso4355.exposure.range, iso4355.characteristic_length.range
[[nodiscard]] double exposure_coefficient(double small, Length characteristic_length);

/// Slope coefficient.
/// mu_b = sqrt[cos(1.5 C_m slope)], 0 from 90/(1.5 C_m) deg on; C_m = 1.333 slippery, 1.0 other
/// \param slope  [rad], 0 to pi/2
/// \return mu_b [-], 0 to 1; slippery roofs are clear at 45.01 degrees, others at 60
/// Limits: plane slopes.
/// Source: ISO 4355:2013; the 1.333 read on a page (Pertermann and Puthli, KIT, Comments on ISO 4355:2013, Part I), the
/// formula from memory.
/// \throws InputError iso4355.slope.range
[[nodiscard]] double slope_coefficient(Angle slope, Surface surface);

/// Balanced load.
/// s_b = 0.8 s_0 C_e C_t mu_b
/// \param ground_snow  s_0 [Pa], 0 to 100 kPa
/// \param exposure     C_e [-], 0.5 to 1.25
/// \param thermal      C_t [-], 0.5 to 1.4; a cover loses no heat, so nothing under 1.0 for it
/// \param slope        mu_b [-], 0 to 1
/// \return s_b, per horizontal area [Pa]
/// Limits: no drift, no sliding; they are added.
/// Source: ISO 4355:2013, Eq. (3); read on a page (Pertermann and Puthli, KIT, Comments on ISO 4355:2013, Part I).
/// \throws InputError iso4355.ground_snow.range, iso4355.exposure.range, iso4355.thermal.range,
///   iso4355.slope_coefficient.range
[[nodiscard]] constexpr Pressure balanced_load_eq_3(Pressure ground_snow, double exposure, double thermal,
                                                    double slope) {
    argument::within(in_kPa(ground_snow), 0.0, 100.0, {"iso4355.ground_snow.range", "ground snow load s_0", "kPa"});
    argument::within(exposure, limit::exposure_low, limit::exposure_high,
                     {"iso4355.exposure.range", "exposure coefficient C_e", "-"});
    argument::within(thermal, limit::thermal_low, limit::thermal_high,
                     {"iso4355.thermal.range", "thermal coefficient C_t", "-"});
    argument::within(slope, 0.0, 1.0, {"iso4355.slope_coefficient.range", "slope coefficient mu_b", "-"});
    return 0.8 * exposure * thermal * slope * ground_snow;
}

}  // namespace coverframe::iso4355
