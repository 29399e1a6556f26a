// SPDX-License-Identifier: BSD-3-Clause
// ASCE/SEI 7-22, chapter 7: snow on a gabled cover; and the two combinations of chapter 2 that go with it.
//
// A ground load of this edition is a strength-level load for the risk category of the structure. There is no importance
// factor, and the factor on snow is 1.0 (strength) or 0.7 (allowable stress). A ground load of an earlier edition is a
// different thing: never put one into these functions.
//
// Every load is per horizontal area. The equations are in the units of the document (psf, ft, pcf) and convert inside.
//
// Simplifications: gable or hip shape only; no drift from a taller neighbour (7.7.2), no sliding snow from above (7.9),
// no rain on snow (7.10), no partial loading (7.5).
//
// How each rule was read stands beside it. Whoever claims conformity compares them with a licensed copy first.
#pragma once

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::asce7_22 {

inline const Clause clause_2_3_1{"ASCE 7-22", "2.3.1"};
inline const Clause clause_2_4_1{"ASCE 7-22", "2.4.1"};
inline const Clause clause_7_3{"ASCE 7-22", "7.3"};
inline const Clause clause_7_3_3{"ASCE 7-22", "7.3.3"};
inline const Clause clause_7_4{"ASCE 7-22", "7.4"};
inline const Clause clause_7_6{"ASCE 7-22", "7.6"};
inline const Clause clause_7_6_1{"ASCE 7-22", "7.6.1"};
inline const Clause clause_7_7{"ASCE 7-22", "7.7"};

/// Table 1.5-1. A cover nobody enters is category I at most; II is the usual choice where nobody has decided.
enum class RiskCategory { I, II, III, IV };

/// What 7.4 makes of the surface.
enum class Surface {
    unobstructed_slippery,  ///< smooth membrane, nothing on the slope holds snow back, and room below for what slides
    other,                  ///< everything else
};

/// Factors on self-weight and snow, snow being the leading action and wind left out.
struct CombinationFactors {
    double permanent = 0;  ///< on self-weight D [-]
    double snow = 0;       ///< on snow S [-]
};

/// 1.2 D + 1.0 S.  Source: ASCE 7-22, 2.3.1; the 1.0 read on a page (Maguire et al., STRUCTURE magazine, Feb. 2022,
/// Eq. 1), as is the 1.2.
inline constexpr CombinationFactors strength_2_3_1{1.2, 1.0};

/// D + 0.7 S.  Source: ASCE 7-22, 2.4.1, combination 3a; read on a page (STRUCTURE magazine, "ASCE 7-22 Flat Roof Snow
/// Load Versus Minimum Snow Load").
inline constexpr CombinationFactors allowable_stress_2_4_1{1.0, 0.7};

namespace limit {
inline constexpr double exposure_low = 0.5, exposure_high = 1.5;  ///< C_e [-]
inline constexpr double thermal_low = 0.8, thermal_high = 1.4;    ///< C_t [-]
inline constexpr double ground_high = 100.0;                      ///< p_g [kPa], 10 m of water: beyond any site
inline constexpr double roof_high = 200.0;                        ///< p_f and p_s [kPa]
inline constexpr double fetch_high = 600.0;                       ///< l_u [ft]
}  // namespace limit

/// Ground load that is not negative and not absurd.   \throws InputError asce7_22.ground_load.range
constexpr void check_ground_load(Pressure ground_load) {
    argument::within(in_kPa(ground_load), 0.0, limit::ground_high,
                     {"asce7_22.ground_load.range", "ground snow load", "kPa"});
}

/// Flat roof snow load.
/// p_f = 0.7 C_e C_t p_g
/// \param ground_load  p_g, strength level for the risk category [Pa], 0 to 100 kPa
/// \param exposure     C_e [-], 0.5 to 1.5 (Table 7.3-1: 0.7 to 1.2)
/// \param thermal      C_t [-], 0.8 to 1.4; 1.2 for an unheated cover (Table 7.3-2)
/// \return p_f, per horizontal area [Pa]
/// Limits: none by slope, for p_f is the base of every sloped load. No importance factor in this edition.
/// Source: ASCE 7-22, 7.3, Eq. 7.3-1; read on a page (NFBA magazine, Sept. 2025, p. 26).
/// \throws InputError asce7_22.ground_load.range, asce7_22.exposure.range, asce7_22.thermal.range
[[nodiscard]] constexpr Pressure flat_load_7_3(Pressure ground_load, double exposure, double thermal) {
    check_ground_load(ground_load);
    argument::within(exposure, limit::exposure_low, limit::exposure_high,
                     {"asce7_22.exposure.range", "exposure factor C_e", "-"});
    argument::within(thermal, limit::thermal_low, limit::thermal_high,
                     {"asce7_22.thermal.range", "thermal factor C_t", "-"});
    return 0.7 * exposure * thermal * ground_load;
}

/// Upper limit of the minimum snow load.
/// p_m,max = 25, 30, 35, 40 psf for risk category I, II, III, IV
/// \return p_m,max [Pa]
/// Limits: none.
/// Source: ASCE 7-22, Table 7.3-4; that the table exists by risk category read on a page (NFBA magazine, Sept. 2025,
/// p. 25), the four numbers from memory.
[[nodiscard]] constexpr Pressure minimum_load_limit_7_3_3(RiskCategory category) {
    switch (category) {
        case RiskCategory::I: return from_psf(25.0);
        case RiskCategory::II: return from_psf(30.0);
        case RiskCategory::III: return from_psf(35.0);
        case RiskCategory::IV: return from_psf(40.0);
    }
    argument::refuse({"asce7_22.risk_category.unknown", "risk category number", "-"}, static_cast<double>(category), 0,
                     3);
}

/// Minimum snow load of a low slope. A uniform load of its own: not added to unbalanced, drifted, partial or sliding
/// loads.
/// p_m = min(p_g, p_m,max)
/// \param ground_load  p_g [Pa], 0 to 100 kPa
/// \return p_m, per horizontal area [Pa]
/// Limits: where `minimum_applies_7_3_3` says so. How the 0.7 of allowable stress design meets p_m is an open
/// question of the sources: apply 1.0.
/// Source: ASCE 7-22, 7.3.3; that p_m stands apart from the other loads read on a page (STRUCTURE magazine, "ASCE 7-22
/// Flat Roof Snow Load Versus Minimum Snow Load"), the form from memory.
/// \throws InputError asce7_22.ground_load.range
[[nodiscard]] constexpr Pressure minimum_load_7_3_3(Pressure ground_load, RiskCategory category) {
    check_ground_load(ground_load);
    const Pressure top = minimum_load_limit_7_3_3(category);
    return ground_load < top ? ground_load : top;
}

/// Whether the minimum load has to be looked at: gable and hip slopes under 15 degrees.
/// \param slope  of the cover [rad], 0 to pi/2
/// Limits: gable and hip; curved covers go by the line from eave to crown (under 10 degrees), which is not done here.
/// Source: ASCE 7-22, 7.3.3; the 15 degrees read on a page for 7-10 (O'Rourke, Guide to ASCE 7-10, Example 4-3).
/// \throws InputError asce7_22.slope.range
[[nodiscard]] constexpr bool minimum_applies_7_3_3(Angle slope) {
    argument::slope_in_deg(slope, "asce7_22.slope.range");
    return slope < from_deg(15.0);
}

/// Slope at which the slope factor begins to fall; it reaches zero at 70 degrees.
/// a = 5 (slippery) or 30 deg for C_t < 1.1; 10 or 37.5 deg for 1.1 <= C_t < 1.2; 15 or 45 deg for C_t >= 1.2
/// \param thermal  C_t [-], 0.8 to 1.4
/// \return a [rad]
/// Limits: the slippery line of the first chart also asks for a roof insulated to R 30 (20 if ventilated).
/// Source: ASCE 7-22, 7.4, Fig. 7.4-1; the 10 deg read on a page (forum thread on Fig. 7-2b of 7-05), the rest from
/// memory, sure; the limits of C_t between the charts from memory.
/// \throws InputError asce7_22.thermal.range
[[nodiscard]] constexpr Angle full_load_slope_7_4(double thermal, Surface surface) {
    argument::within(thermal, limit::thermal_low, limit::thermal_high,
                     {"asce7_22.thermal.range", "thermal factor C_t", "-"});
    const bool slippery = surface == Surface::unobstructed_slippery;
    if (thermal < 1.1) return from_deg(slippery ? 5.0 : 30.0);
    if (thermal < 1.2) return from_deg(slippery ? 10.0 : 37.5);
    return from_deg(slippery ? 15.0 : 45.0);
}

/// Slope factor.
/// C_s = 1 up to a, (70 - slope)/(70 - a) from a to 70 deg, 0 from there; a from `full_load_slope_7_4`
/// \param slope    of the cover [rad], 0 to pi/2
/// \param thermal  C_t [-], 0.8 to 1.4
/// \param surface  slippery has to be claimed: straps that stand proud, pockets between supports, a rail or a heap that
///                 reaches the eave all make it `other` (engineering judgement, no source)
/// \return C_s [-], 0 to 1
/// Limits: plane slopes.
/// Source: ASCE 7-22, 7.4, Fig. 7.4-1 and C7.4; from memory, sure.
/// \throws InputError asce7_22.slope.range, asce7_22.thermal.range
[[nodiscard]] constexpr double slope_factor_7_4(Angle slope, double thermal, Surface surface) {
    argument::slope_in_deg(slope, "asce7_22.slope.range");
    constexpr Angle none = from_deg(70.0);
    const Angle full = full_load_slope_7_4(thermal, surface);
    if (slope <= full) return 1.0;
    if (slope >= none) return 0.0;
    return (none - slope) / (none - full);
}

/// Sloped roof (balanced) snow load.
/// p_s = C_s p_f
/// \param flat_load     p_f [Pa], 0 to 200 kPa
/// \param slope_factor  C_s [-], 0 to 1
/// \return p_s, per horizontal area [Pa]
/// Limits: both slopes alike; the unbalanced case is another arrangement.
/// Source: ASCE 7-22, 7.4, Eq. 7.4-1; read on a page for 7-05 (Beginner's Guide to ASCE 7-05, 8.4).
/// \throws InputError asce7_22.flat_load.range, asce7_22.slope_factor.range
[[nodiscard]] constexpr Pressure sloped_load_7_4(Pressure flat_load, double slope_factor) {
    argument::within(in_kPa(flat_load), 0.0, limit::roof_high,
                     {"asce7_22.flat_load.range", "flat roof snow load", "kPa"});
    argument::within(slope_factor, 0.0, 1.0, {"asce7_22.slope_factor.range", "slope factor C_s", "-"});
    return slope_factor * flat_load;
}

/// Unit weight of drifted snow.
/// gamma = 0.13 p_g + 14 <= 30 (psf, pcf)
/// \param ground_load  p_g [Pa], 0 to 100 kPa
/// \return gamma [N/m3]
/// Limits: for drifts and for turning a load into a depth; not for the snow of one day.
/// Source: ASCE 7-22, 7.7.1, Eq. 7.7-1; read on a page (O'Rourke, Guide to ASCE 7-10, Example 6-2; STRUCTURE magazine
/// on Canadian and U.S. drifts).
/// \throws InputError asce7_22.ground_load.range
[[nodiscard]] constexpr UnitWeight unit_weight_7_7(Pressure ground_load) {
    check_ground_load(ground_load);
    const double gamma = 0.13 * in_psf(ground_load) + 14.0;
    return from_pcf(gamma < 30.0 ? gamma : 30.0);
}

/// Drift height.
/// h_d = 1.5 sqrt(p_g^0.74 l_u^0.70 W_2^1.7 / gamma) (psf, ft, pcf)
/// \param ground_load  p_g [Pa], 0 to 100 kPa
/// \param fetch        l_u, length of the upwind surface [m], over 0 to 600 ft
/// \param winter_wind  W_2, share of the winter with wind over 10 mph [-], 0 to 1
/// \return h_d [m]
/// Limits: the upper end of the fetch is that of the earlier editions (from memory). The cap for short fetches that
/// 7-16 had is not applied; it bites below about 5 ft only.
/// Source: ASCE 7-22, 7.6.1, Eq. 7.6-1; the coefficient and the variables read on a page (STRUCTURE magazine on
/// Canadian and U.S. drifts), the exponents from memory, sure.
/// \throws InputError asce7_22.ground_load.range, asce7_22.fetch.range, asce7_22.winter_wind.range
[[nodiscard]] Length drift_height_7_6(Pressure ground_load, Length fetch, double winter_wind);

/// Flattest and steepest gable with an unbalanced case: 2.38 degrees, and 7 on 12 (30.26 degrees).
inline constexpr Angle unbalanced_from_7_6_1 = from_deg(2.38);
inline constexpr Angle unbalanced_to_7_6_1 = from_rad(0.52807444842636);  // atan(7/12), rounded up

/// Whether a gable or hip needs the unbalanced case.
/// 2.38 deg (1/2 on 12) <= slope <= 7 on 12
/// \param slope  of the cover [rad], 0 to pi/2
/// Limits: gable and hip. The document rounds 7 on 12 to 30.2 degrees; a slope built as 7 on 12 (30.26 degrees) is
/// taken as inside.
/// Source: ASCE 7-22, 7.6.1; the lower end read on a page for 7-10 (O'Rourke, Guide to ASCE 7-10, Example 6-2), the
/// upper end from memory, sure.
/// \throws InputError asce7_22.slope.range
[[nodiscard]] constexpr bool unbalanced_applies_7_6_1(Angle slope) {
    argument::slope_in_deg(slope, "asce7_22.slope.range");
    return slope >= unbalanced_from_7_6_1 && slope <= unbalanced_to_7_6_1;
}

/// A gable before the wind has moved its snow.
struct Gable {
    Pressure sloped_load{};  ///< p_s of both slopes [Pa]
    Pressure ground_load{};  ///< p_g [Pa]
    Angle slope{};           ///< of both slopes [rad]
    Length eave_to_ridge{};  ///< W, horizontal [m]; on a boat, half the breadth at the rail
    double winter_wind = 0;  ///< W_2 [-], 0 to 1
};

/// The unbalanced arrangement. The lee slope carries p_s everywhere and the surcharge beside the ridge.
struct UnbalancedGable {
    Pressure windward{};           ///< on the windward slope [Pa]
    Pressure leeward_surcharge{};  ///< on top of p_s [Pa]
    Length surcharge_width{};      ///< from the ridge, horizontal, at most W [m]
    Length drift_height{};         ///< h_d behind the surcharge [m]
};

/// Shortest fetch a gable drift is worked out with, 20 ft.
/// Source: from memory, doubtful: 7-10 and 7-16 are remembered with 20 ft, 7-05 with 25 ft, and that 7-22 keeps a
/// floor is not confirmed. At W = 8 ft it makes the surcharge 38 % larger than l_u = W would.
inline constexpr Length shortest_fetch_7_6_1 = from_ft(20.0);

/// Unbalanced load of a gable, for any framing but simple rafters.
/// windward 0.3 p_s; leeward p_s + h_d gamma/sqrt(S) over 8 h_d sqrt(S)/3 from the ridge, S = 1/tan(slope), h_d with
/// l_u = W
/// \return both slopes and the extent of the surcharge
/// Limits: slopes of `unbalanced_applies_7_6_1`. The substitute loading for simple rafters up to 20 ft (p_g on the lee
/// slope, none on the other) is not for film on straps and is not done here. A surcharge wider than the slope is cut
/// off at the eave. For W under 20 ft, l_u = 20 ft: see `shortest_fetch_7_6_1`.
/// Source: ASCE 7-22, 7.6.1; 0.3 p_s and the intensity read on a page for 7-10 (O'Rourke, Guide to ASCE 7-10, Example
/// 6-2), the length from memory, sure; that W_2 enters read on a page (NFBA magazine, Sept. 2025, p. 25).
/// \throws InputError asce7_22.unbalanced.slope, asce7_22.slope.range, asce7_22.sloped_load.range,
///   asce7_22.ground_load.range, asce7_22.fetch.range, asce7_22.winter_wind.range
[[nodiscard]] UnbalancedGable unbalanced_gable_7_6_1(const Gable& gable);

}  // namespace coverframe::asce7_22
