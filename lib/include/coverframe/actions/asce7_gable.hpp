// SPDX-License-Identifier: BSD-3-Clause
// ASCE/SEI 7, 7.6.1: unbalanced snow on hip and gable roofs, as 7-10, 7-16 and 7-22 share it. The drift height behind
// the surcharge differs by edition and comes from there.
//
// The clause has two loadings. Narrow roofs of simple rafters take a uniform load on the lee slope, a substitute tuned
// to that framing. All other gables, and that includes film on straps and a ridge, take part of the balanced load on
// the windward slope and a surcharge beside the ridge on the lee slope.
#pragma once

#include "coverframe/actions/asce7.hpp"

namespace coverframe::asce7 {

/// What carries the slope from ridge to eave.
enum class Framing {
    other,           ///< film on straps, trusses, continuous or propped members: everything but simple rafters
    simple_rafters,  ///< simply supported prismatic members from ridge to eave
};

[[nodiscard]] constexpr std::array<const char*, 2> choices_of(Framing) { return {"other", "simple rafters"}; }

/// Flattest and steepest gable with an unbalanced case: 2.38 degrees, and 7 on 12 (30.26 degrees).
inline constexpr Angle unbalanced_from_7_6_1 = from_deg(2.38);
inline constexpr Angle unbalanced_to_7_6_1 = from_rad(0.52807444842636);  // atan(7/12), rounded up

/// Shortest fetch a gable drift is worked out with, 20 ft: a narrower slope is taken as W = l_u = 20 ft.
/// Source: ASCE 7-10 and 7-16, 7.6.1; from memory. That 7-22 keeps it is from memory, doubtful; it is the safe reading,
/// for it makes the drift of a narrow slope larger. 7-05 is remembered with 25 ft.
inline constexpr Length shortest_fetch_7_6_1 = from_ft(20.0);

/// Widest slope of the loading for simple rafters, 20 ft from eave to ridge.
inline constexpr Length narrow_to_7_6_1 = from_ft(20.0);

/// Whether a gable or hip needs the unbalanced case.
/// 2.38 deg (1/2 on 12) <= slope <= 7 on 12
/// \param slope  of the roof [rad], 0 to pi/2
/// Limits: hip and gable. The document rounds 7 on 12 to 30.2 degrees; a slope built as 7 on 12 (30.26 degrees) is
/// taken as inside.
/// Source: ASCE 7, 7.6.1; the lower end read on a page for 7-10 (O'Rourke, Guide to ASCE 7-10, Example 6-2), the upper
/// end from memory, sure.
/// \throws InputError asce7.slope.range
[[nodiscard]] constexpr bool unbalanced_applies_7_6_1(Angle slope) {
    argument::slope_in_deg(slope, "asce7.slope.range");
    return slope >= unbalanced_from_7_6_1 && slope <= unbalanced_to_7_6_1;
}

/// \throws InputError asce7.slope.range for a slope outside the window of `unbalanced_applies_7_6_1`
constexpr void check_unbalanced_slope(Angle slope) {
    if (!unbalanced_applies_7_6_1(slope)) {
        argument::refuse({"asce7.slope.range", "slope of an unbalanced gable", "deg"}, in_deg(slope),
                         in_deg(unbalanced_from_7_6_1), in_deg(unbalanced_to_7_6_1));
    }
}

/// A gable before the wind has moved its snow.
struct Gable {
    Pressure sloped_load{};  ///< p_s of both slopes [Pa], 0 to 200 kPa
    Pressure ground_load{};  ///< p_g [Pa], 0 to 100 kPa
    Angle slope{};           ///< of both slopes [rad]
    Length eave_to_ridge{};  ///< W, horizontal [m], up to 600 ft; on a boat, half the breadth at the rail
};

/// The unbalanced arrangement. The lee slope carries p_s everywhere and the surcharge beside the ridge.
struct UnbalancedGable {
    Pressure windward{};           ///< on the windward slope [Pa]
    Pressure leeward_surcharge{};  ///< on top of p_s [Pa]
    Length surcharge_width{};      ///< from the ridge, horizontal, at most W [m]
    Length drift_height{};         ///< h_d behind the surcharge [m]
};

/// Fetch of the drift on a gable.   l_u = max(W, 20 ft)   \throws InputError asce7.eave_to_ridge.range
[[nodiscard]] constexpr Length gable_fetch_7_6_1(Length eave_to_ridge) {
    check_eave_to_ridge(eave_to_ridge);
    return eave_to_ridge < shortest_fetch_7_6_1 ? shortest_fetch_7_6_1 : eave_to_ridge;
}

/// Whether the loading for simple rafters may be used: framing, slope and W as the clause wants them.
/// \throws InputError asce7.ground_load.range, asce7.slope.range, asce7.eave_to_ridge.range, asce7.framing.range
void check_narrow_gable(Pressure ground_load, Angle slope, Length eave_to_ridge, Framing framing);

/// Unbalanced load of a gable of any framing but simple rafters, for a drift height worked out elsewhere.
/// windward 0.3 p_s; leeward p_s + h_d gamma/sqrt(S) over 8 h_d sqrt(S)/3 from the ridge, S = 1/tan(slope)
/// \param drift_height  h_d of the edition, with l_u of `gable_fetch_7_6_1` [m], not negative
/// \return both slopes and the extent of the surcharge
/// Limits: slopes of `unbalanced_applies_7_6_1`. A surcharge wider than the slope is cut off at the eave.
/// Source: ASCE 7, 7.6.1; 0.3 p_s and the intensity read on a page for 7-10 (O'Rourke, Guide to ASCE 7-10, Example
/// 6-2), the length from memory, sure. 7-22 is taken to keep the shape (from memory).
/// \throws InputError asce7.slope.range, asce7.sloped_load.range, asce7.ground_load.range, asce7.eave_to_ridge.range,
///   asce7.drift_height.range
[[nodiscard]] UnbalancedGable unbalanced_gable_of_drift_7_6_1(const Gable& gable, Length drift_height);

}  // namespace coverframe::asce7
