// SPDX-License-Identifier: BSD-3-Clause
// ASCE/SEI 7, chapter 7: the rules of snow that are the same in 7-10, 7-16 and 7-22, and the words they are put in.
//
// Each edition is a namespace of its own (asce7_10, asce7_16, asce7_22) that brings these rules in and adds what
// differs. What 7-10 and 7-16 share and 7-22 gave up (ground loads of fifty years with an importance factor) stands in
// asce7_fifty_year.hpp. Longer families have headers of their own: asce7_curved.hpp, asce7_gable.hpp, asce7_drift.hpp,
// asce7_sliding.hpp, asce7_partial.hpp, asce7_combinations.hpp.
//
// Every load is per horizontal area. The equations are in the units of the document (psf, ft, pcf) and convert inside.
//
// Clauses without a function, for they give nothing to compute:
//   * 7.11, ponding: bays of low slope that can hold meltwater or rain are to be stable under the full snow load with
//     blocked drains, by the rules of chapter 8. No figure of chapter 7 applies; for film the library's own hollows and
//     ponds do (film/cover.hpp).
//   * 7.13, open frames (new in 7-16): snow on the top level of open equipment frames, little or none on gratings
//     below. From memory, doubtful; a cover is no such frame.
//   * 7.4.5, ice along the eaves of heated roofs: a cover is not heated.
//   * 7.6.4, domes.
//
// How each rule was read stands beside it. Whoever claims conformity compares them with a licensed copy first.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::asce7 {

/// Table 1.5-1. A cover nobody enters is category I at most; II is the usual choice where nobody has decided.
enum class RiskCategory { I, II, III, IV };

/// What 7.4 makes of the surface.
enum class Surface {
    unobstructed_slippery,  ///< smooth membrane, nothing on the slope holds snow back, and room below for what slides
    other,                  ///< everything else
};

/// Roughness of the land round the yard, as Table 7.3-1 (7-10: Table 7-2) divides it.
enum class Terrain {
    B,                ///< town, suburb, wood
    C,                ///< open country with scattered obstructions
    D,                ///< open water or flat unbroken land upwind
    above_tree_line,  ///< windswept mountains above the trees
    alaska_treeless,  ///< Alaska, no trees within 2 miles
};

/// How the wind reaches the roof.
enum class RoofExposure {
    partially_exposed,  ///< neither of the others; a boat among boats or between sheds
    fully_exposed,      ///< no shelter on any side: nothing within ten times its height above the roof
    sheltered,          ///< tight among conifers
};

/// What warms or cools the roof, as Table 7.3-2 (7-10: Table 7-3) divides it.
enum class ThermalCondition {
    unheated_or_open_air,  ///< the winter cover over a laid-up boat
    below_freezing,        ///< kept below freezing on purpose; freezer building
    just_above_freezing,   ///< kept just above freezing
    ventilated,            ///< cold ventilated roof, over R 25 (US units) between the vented space and the heated one
    heated,                ///< all other structures
    greenhouse,            ///< heated all the time, roof under R 2 (US units)
};

/// What 7.3 makes of the shape of a roof.
enum class RoofShape { hip_or_gable, monoslope, curved };

/// The three charts of the slope factor. Which value of C_t belongs to which differs by edition.
enum class SlopeChart {
    warm,       ///< (a)
    cold,       ///< (b), about C_t = 1.1
    very_cold,  ///< (c), C_t from 1.2; every unheated cover
};

[[nodiscard]] constexpr std::array<const char*, 4> choices_of(RiskCategory) { return {"I", "II", "III", "IV"}; }
[[nodiscard]] constexpr std::array<const char*, 2> choices_of(Surface) { return {"slippery", "other"}; }
[[nodiscard]] constexpr std::array<const char*, 5> choices_of(Terrain) {
    return {"B", "C", "D", "above tree line", "Alaska, treeless"};
}
[[nodiscard]] constexpr std::array<const char*, 3> choices_of(RoofExposure) {
    return {"partially exposed", "fully exposed", "sheltered"};
}
[[nodiscard]] constexpr std::array<const char*, 6> choices_of(ThermalCondition) {
    return {"unheated or open air", "below freezing", "just above freezing", "ventilated", "heated", "greenhouse"};
}
[[nodiscard]] constexpr std::array<const char*, 3> choices_of(RoofShape) {
    return {"hip or gable", "monoslope", "curved"};
}

namespace limit {
inline constexpr double exposure_low = 0.5, exposure_high = 1.5;  ///< C_e [-]
inline constexpr double thermal_low = 0.8, thermal_high = 1.4;    ///< C_t [-]
inline constexpr double ground_high = 100.0;                      ///< p_g [kPa], 10 m of water: beyond any site
inline constexpr double roof_high = 200.0;                        ///< p_f and p_s [kPa]
inline constexpr double length_high = 3000.0;                     ///< any other length [ft]
/// A limit in feet or psf that is met exactly is still met when it was written in metres or kPa.
inline constexpr double rounding = 1.0 + 1e-12;
inline constexpr double fetch_high = 600.0 * rounding;  ///< l_u and W [ft]
}  // namespace limit

/// Ground load that is not negative and not absurd.   \throws InputError asce7.ground_load.range
constexpr void check_ground_load(Pressure ground_load) {
    argument::within(in_kPa(ground_load), 0.0, limit::ground_high,
                     {"asce7.ground_load.range", "ground snow load p_g", "kPa"});
}

/// Flat roof load that is not negative and not absurd.   \throws InputError asce7.flat_load.range
constexpr void check_flat_load(Pressure flat_load) {
    argument::within(in_kPa(flat_load), 0.0, limit::roof_high,
                     {"asce7.flat_load.range", "flat roof snow load p_f", "kPa"});
}

/// \throws InputError asce7.exposure.range
constexpr void check_exposure(double exposure) {
    argument::within(exposure, limit::exposure_low, limit::exposure_high,
                     {"asce7.exposure.range", "exposure factor C_e", "-"});
}

/// \throws InputError asce7.thermal.range
constexpr void check_thermal(double thermal) {
    argument::within(thermal, limit::thermal_low, limit::thermal_high,
                     {"asce7.thermal.range", "thermal factor C_t", "-"});
}

/// Distance from eave to ridge that is positive and within the chapter.   \throws InputError asce7.eave_to_ridge.range
constexpr void check_eave_to_ridge(Length eave_to_ridge) {
    argument::within(in_ft(eave_to_ridge), argument::smallest, limit::fetch_high,
                     {"asce7.eave_to_ridge.range", "distance from eave to ridge W", "ft"});
}

/// Exposure factor.
/// C_e: B 0.9, 1.0, 1.2; C 0.9, 1.0, 1.1; D 0.8, 0.9, 1.0; above the tree line and treeless Alaska 0.7, 0.8, none
/// (fully exposed, partially exposed, sheltered)
/// \return C_e [-]
/// Limits: the two treeless terrains have no sheltered value, and none is given. The terrain and the exposure are those
/// expected over the life of the cover: think of what will be parked beside it.
/// Source: ASCE 7-10 Table 7-2, 7-16 and 7-22 Table 7.3-1; B, partially exposed, read on a page (O'Rourke, Guide to
/// ASCE 7-10, Example 4-3), the rest from memory, sure.
/// \throws InputError asce7.roof_exposure.range, asce7.terrain.range
[[nodiscard]] double exposure_factor_7_3_1(Terrain terrain, RoofExposure exposure);

/// Whether an obstruction shelters a roof, so that it is not fully exposed.
/// distance <= 10 h_o
/// \param distance  from the roof to the obstruction, level [m], not negative
/// \param height    h_o, top of the obstruction above the roof [m], over 0 to 3000 ft
/// Limits: says that a roof is not fully exposed, and not that it is sheltered: that is for roofs tight among conifers.
/// Source: ASCE 7-10 Table 7-2, 7-16 and 7-22 Table 7.3-1, notes; the ten heights read on a page (O'Rourke, Guide to
/// ASCE 7-10, Example 4-3), the rest from memory, sure.
/// \throws InputError asce7.distance.range, asce7.obstruction.range
[[nodiscard]] constexpr bool obstruction_shelters_7_3_1(Length distance, Length height) {
    argument::within(in_ft(distance), 0.0, 10.0 * limit::length_high,
                     {"asce7.distance.range", "distance of the obstruction", "ft"});
    argument::within(in_ft(height), argument::smallest, limit::length_high,
                     {"asce7.obstruction.range", "obstruction above the roof h_o", "ft"});
    return in_ft(distance) <= 10.0 * in_ft(height) * limit::rounding;
}

/// Whether a roof is of low slope, so that the minimum load has to be looked at.
/// slope < 15 deg (hip, gable, monoslope); the line from eave to crown < 10 deg (curved)
/// \param slope  of the roof, or of the line from eave to crown of a curved one [rad], 0 to pi/2
/// Limits: none.
/// Source: ASCE 7-10 and 7-16, 7.3.4; 7-22, 7.3.3; the 15 degrees read on a page for 7-10 (O'Rourke, Guide to ASCE
/// 7-10, Example 4-3), the 10 degrees from memory, sure.
/// \throws InputError asce7.slope.range
[[nodiscard]] constexpr bool low_slope_7_3(Angle slope, RoofShape shape) {
    argument::slope_in_deg(slope, "asce7.slope.range");
    return slope < from_deg(shape == RoofShape::curved ? 10.0 : 15.0);
}

/// Slope at which the slope factor of a chart begins to fall; it reaches zero at 70 degrees.
/// a = 5 or 30 deg (warm), 10 or 37.5 deg (cold), 15 or 45 deg (very cold): slippery or other
/// \return a [rad]
/// Limits: the slippery line of the warm chart also asks for insulation, see `warm_slippery_applies_7_4_1`.
/// Source: ASCE 7, 7.4, Fig. 7-2 or 7.4-1 and C7.4; the 10 deg read on a page (forum thread on Fig. 7-2b of 7-05, whose
/// first printing is drawn wrongly), the rest from memory, sure.
[[nodiscard]] constexpr Angle full_load_slope_on_chart_7_4(SlopeChart chart, Surface surface) {
    const bool slippery = surface == Surface::unobstructed_slippery;
    if (chart == SlopeChart::warm) return from_deg(slippery ? 5.0 : 30.0);
    if (chart == SlopeChart::cold) return from_deg(slippery ? 10.0 : 37.5);
    return from_deg(slippery ? 15.0 : 45.0);
}

/// Slope factor on one chart.
/// C_s = 1 up to a, (70 - slope)/(70 - a) from a to 70 deg, 0 from there; a from `full_load_slope_on_chart_7_4`
/// \param slope    of the roof [rad], 0 to pi/2
/// \param surface  slippery has to be claimed: straps that stand proud, pockets between supports, a rail or a heap that
///                 reaches the eave all make it `other` (engineering judgement, no source)
/// \return C_s [-], 0 to 1
/// Limits: plane slopes, or the local slope of a curve. Multiple folded plate, sawtooth and barrel vault roofs have
/// C_s = 1 (7.4.4; from memory, sure).
/// Source: ASCE 7, 7.4, Fig. 7-2 or 7.4-1 and C7.4; from memory, sure.
/// \throws InputError asce7.slope.range
[[nodiscard]] constexpr double slope_factor_on_chart_7_4(Angle slope, SlopeChart chart, Surface surface) {
    argument::slope_in_deg(slope, "asce7.slope.range");
    constexpr Angle none = from_deg(70.0);
    const Angle full = full_load_slope_on_chart_7_4(chart, surface);
    if (slope <= full) return 1.0;
    if (slope >= none) return 0.0;
    return (none - slope) / (none - full);
}

/// Whether a warm roof is insulated well enough for the slippery line of chart (a).
/// R >= 30 (not ventilated) or R >= 20 (ventilated)
/// \param r_value  thermal resistance in US units [deg F h ft2/Btu], not negative
/// Limits: warm roofs only; the other charts ask for nothing.
/// Source: ASCE 7, 7.4.1; from memory, sure.
/// \throws InputError asce7.r_value.range
[[nodiscard]] constexpr bool warm_slippery_applies_7_4_1(double r_value, bool ventilated) {
    argument::not_negative(r_value, {"asce7.r_value.range", "R-value", "deg F h ft2/Btu"});
    return r_value >= (ventilated ? 20.0 : 30.0);
}

/// Sloped roof (balanced) snow load.
/// p_s = C_s p_f
/// \param flat_load     p_f [Pa], 0 to 200 kPa
/// \param slope_factor  C_s [-], 0 to 1
/// \return p_s, per horizontal area [Pa]
/// Limits: both slopes alike; the unbalanced case is another arrangement.
/// Source: ASCE 7, 7.4, Eq. 7.4-1; read on a page for 7-05 (Beginner's Guide to ASCE 7-05, 8.4).
/// \throws InputError asce7.flat_load.range, asce7.slope_factor.range
[[nodiscard]] constexpr Pressure sloped_load_7_4(Pressure flat_load, double slope_factor) {
    check_flat_load(flat_load);
    argument::within(slope_factor, 0.0, 1.0, {"asce7.slope_factor.range", "slope factor C_s", "-"});
    return slope_factor * flat_load;
}

/// Unit weight of drifted snow.
/// gamma = 0.13 p_g + 14 <= 30 (psf, pcf)
/// \param ground_load  p_g [Pa], 0 to 100 kPa
/// \return gamma [N/m3]
/// Limits: for drifts and for turning a load into a depth; not for the snow of one day.
/// Source: ASCE 7, 7.7.1, Eq. 7.7-1; read on a page (O'Rourke, Guide to ASCE 7-10, Example 6-2; for 7-22, STRUCTURE
/// magazine on Canadian and U.S. drifts).
/// \throws InputError asce7.ground_load.range
[[nodiscard]] constexpr UnitWeight unit_weight_7_7(Pressure ground_load) {
    check_ground_load(ground_load);
    const double gamma = 0.13 * in_psf(ground_load) + 14.0;
    return from_pcf(gamma < 30.0 ? gamma : 30.0);
}

/// Depth of the balanced snow.
/// h_b = p_s/gamma
/// \param balanced_load  p_s (p_f on a flat roof) [Pa], 0 to 200 kPa
/// \param ground_load    p_g [Pa], 0 to 100 kPa
/// \return h_b [m]
/// Limits: for drifts only.
/// Source: ASCE 7, 7.7.1; from memory, sure.
/// \throws InputError asce7.balanced_load.range, asce7.ground_load.range
[[nodiscard]] constexpr Length balanced_depth_7_7(Pressure balanced_load, Pressure ground_load) {
    argument::within(in_kPa(balanced_load), 0.0, limit::roof_high,
                     {"asce7.balanced_load.range", "balanced snow load", "kPa"});
    return balanced_load / unit_weight_7_7(ground_load);
}

/// Whether an existing lower roof has to be checked again, and its owner told, because a higher one comes up beside it.
/// gap <= 20 ft
/// \param gap  level distance between both [m], not negative
/// Limits: says that there is something to check; the loads are those of drift and slide (7.7, 7.9).
/// Source: ASCE 7, 7.12; from memory, sure.
/// \throws InputError asce7.gap.range
[[nodiscard]] constexpr bool existing_roof_affected_7_12(Length gap) {
    argument::within(in_ft(gap), 0.0, limit::length_high, {"asce7.gap.range", "gap between roofs", "ft"});
    return in_ft(gap) <= 20.0 * limit::rounding;
}

}  // namespace coverframe::asce7
