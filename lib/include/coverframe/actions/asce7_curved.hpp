// SPDX-License-Identifier: BSD-3-Clause
// ASCE/SEI 7, 7.4.3 and 7.6.2: curved roofs, which hooped covers are; and 7.6.3, the valleys between several roofs. The
// same in 7-10, 7-16 and 7-22.
//
// Balanced, every part of a curved roof carries p_f times the slope factor of its own slope: `sloped_load_7_4`. Parts
// steeper than 70 degrees carry nothing.
#pragma once

#include "coverframe/actions/asce7.hpp"

namespace coverframe::asce7 {

/// A roof that is part of a circle, eave to eave.
struct CircularArc {
    Length radius{};         ///< R [m]
    Angle eave_to_crown{};   ///< slope of the line from eave to crown [rad]
    Angle eave_slope{};      ///< tangent at the eave [rad]
    Length to_30_degrees{};  ///< from the crown to where the slope is 30 degrees, horizontal, or to the eave [m]
    Length to_70_degrees{};  ///< the same for 70 degrees [m]
};

/// Slopes of a circular arc.
/// R = (b^2 + f^2)/(2 f), eave to crown atan(f/b), eave slope 2 atan(f/b), x = min(R sin(slope), b)
/// \param half_span  b, crown to eave, horizontal [m], over 0 to 3000 ft
/// \param rise       f, crown above the eaves [m], over 0 to b
/// Limits: arcs up to a half circle. Geometry; nothing of the document but which slopes it asks for.
/// Source: derived; the example it is needed for is ASCE 7 commentary C7, Example 2.
/// \throws InputError asce7.half_span.range, asce7.rise.range
[[nodiscard]] CircularArc circular_arc_7_6_2(Length half_span, Length rise);

/// Whether a curved roof needs the unbalanced case.
/// 10 deg <= eave_to_crown <= 60 deg
/// \param eave_to_crown  slope of the line from the eave, or from the 70 degree point if there is one, to the crown
///                       [rad], 0 to pi/2
/// Limits: none.
/// Source: ASCE 7, 7.6.2; from memory, sure.
/// \throws InputError asce7.slope.range
[[nodiscard]] constexpr bool unbalanced_applies_7_6_2(Angle eave_to_crown) {
    argument::slope_in_deg(eave_to_crown, "asce7.slope.range");
    return eave_to_crown >= from_deg(10.0) && eave_to_crown <= from_deg(60.0);
}

/// The lee half of a curved roof, and what lies below its eave.
struct CurvedRoof {
    Pressure flat_load{};  ///< p_f [Pa], 0 to 200 kPa
    double exposure = 0;   ///< C_e [-], 0.5 to 1.5
    SlopeChart chart = SlopeChart::very_cold;
    Surface surface = Surface::other;
    Angle eave_slope{};       ///< tangent at the eave [rad], 0 to pi/2
    Length eave_clearance{};  ///< from the eave down or across to the ground or another roof [m], not negative
};

/// The unbalanced arrangement. The windward half is empty; between the points of the lee half the load runs straight.
struct UnbalancedCurve {
    int figure_case = 0;           ///< 1, 2 or 3 of Fig. 7-3 or 7.4-2
    double slope_factor_30 = 0;    ///< C_s at the 30 degree point; at the eave if the roof is flatter (case 1) [-]
    double slope_factor_eave = 0;  ///< C_s at the eave [-], 0 in case 3
    Pressure crown{};              ///< at the crown [Pa]
    Pressure at_30_degrees{};      ///< at the 30 degree point; at the eave in case 1 [Pa]
    Pressure eave{};               ///< at the eave; in case 3 from the 70 degree point on [Pa]
};

/// Unbalanced load of a curved roof.
/// crown 0.5 p_f; 30 degree point 2 p_f C_s,30/C_e; eave 2 p_f C_s,eave/C_e; windward 0
/// Case 1, eave flatter than 30 deg: crown to eave in one line. Case 2, 30 to 70 deg: over the 30 degree point. Case 3,
/// steeper than 70 deg: 0 from the 70 degree point on. With the ground or another roof within 3 ft of the eave, cases 2
/// and 3 keep the value of the 30 degree point down to the eave.
/// \param roof  the chart follows from C_t in the edition's own `slope_chart_7_4`
/// \return the points of the lee half
/// Limits: where `unbalanced_applies_7_6_2` says so, which is not asked here. Exactly 3 ft counts as within.
/// Source: ASCE 7, 7.6.2, Fig. 7-3 or 7.4-2; from memory, sure; the rule of 3 ft from memory.
/// \throws InputError asce7.flat_load.range, asce7.exposure.range, asce7.slope.range, asce7.eave_clearance.range
[[nodiscard]] UnbalancedCurve unbalanced_curve_7_6_2(const CurvedRoof& roof);

/// Unbalanced load between the ridges or crowns of several roofs side by side.
struct UnbalancedValley {
    Pressure crown{};   ///< at ridge or crown [Pa]
    Pressure valley{};  ///< at the bottom of the valley [Pa]
};

/// Unbalanced load of folded plate, sawtooth and barrel vault roofs, and of two covers whose rails meet.
/// crown 0.5 p_f; valley min(2 p_f/C_e, 0.5 p_f + gamma z)
/// \param flat_load    p_f; balanced, C_s = 1 for such roofs (7.4.4) [Pa], 0 to 200 kPa
/// \param exposure     C_e [-], 0.5 to 1.5
/// \param ground_load  p_g, for gamma [Pa], 0 to 100 kPa
/// \param depth        z, ridge or crown above the bottom of the valley [m], over 0 to 3000 ft: the snow in the valley
///                     stands no higher than the snow on the ridge
/// Limits: slopes over 3/8 on 12 (1.79 deg). Straight from crown to valley.
/// Source: ASCE 7, 7.6.3; from memory, sure.
/// \throws InputError asce7.flat_load.range, asce7.exposure.range, asce7.ground_load.range, asce7.depth.range
[[nodiscard]] UnbalancedValley unbalanced_valley_7_6_3(Pressure flat_load, double exposure, Pressure ground_load,
                                                       Length depth);

}  // namespace coverframe::asce7
