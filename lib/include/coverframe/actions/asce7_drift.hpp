// SPDX-License-Identifier: BSD-3-Clause
// ASCE/SEI 7, 7.7 and 7.8: the shape of drifts on a lower roof, across a gap, and at projections and parapets, as 7-10,
// 7-16 and 7-22 share it. The drift height h_d differs by edition and comes from there, and so does what an edition
// says of windward drifts.
//
// A drift is a triangle on top of the balanced load: highest at the wall, nothing at its far end. On a boat: a cover
// beside a shed or a taller boat, a cover below a flying bridge, a dodger on a flat cover.
//
// Where two drifts overlap, 7-16 and 7-22 take the deeper at each point and not the sum (7.7.3; read on a page:
// STRUCTURE magazine, 3-D Snow Drifts). 7-10 is silent; the sum is the safe reading there.
#pragma once

#include "coverframe/actions/asce7.hpp"

namespace coverframe::asce7 {

/// Fetch that is positive and within the chapter.   \throws InputError asce7.fetch.range
constexpr void check_fetch(Length fetch) {
    argument::within(in_ft(fetch), argument::smallest, limit::fetch_high, {"asce7.fetch.range", "fetch l_u", "ft"});
}

/// Drift height that half of the snow upwind gives: no drift of 7-16 and 7-22 is higher.
/// h = sqrt(I_s p_g l_u/(4 gamma)) (psf, ft, pcf), so that a drift of 2 h^2 in section weighs 0.5 I_s p_g l_u
/// \param ground_load  p_g [Pa], 0 to 100 kPa
/// \param fetch        l_u as it is, without a least fetch [m], over 0 to 600 ft
/// \param importance   I_s [-]; 1 in 7-22, which has none
/// \return h [m]
/// Limits: 7-16 and 7-22.
/// Source: ASCE 7-16, 7-22, 7.7.1; from memory.
/// \throws InputError asce7.ground_load.range, asce7.fetch.range
[[nodiscard]] Length drift_height_cap_7_7_1(Pressure ground_load, Length fetch, double importance);

/// The roof a drift lies on, and what stands over it.
struct LowerRoof {
    Pressure ground_load{};    ///< p_g [Pa], 0 to 100 kPa
    Pressure balanced_load{};  ///< p_s, or p_f of a flat roof [Pa], 0 to 200 kPa
    Length step{};             ///< the wall, parapet or projection above this roof [m], over 0 to 3000 ft
    Length length{};           ///< from there to the far end of this roof [m], over 0 to 600 ft
};

/// A drift against a wall.
struct Drift {
    Length balanced_depth{};  ///< h_b [m]
    Length clear_height{};    ///< h_c = step - h_b [m]; negative if the balanced snow buries the step
    bool needed = false;      ///< false if h_c/h_b < 0.2; then all below is zero
    Length height{};          ///< at the wall: h_d, at most h_c [m]
    Length width{};           ///< w, to where the drift ends [m]; may be longer than the roof
    Pressure peak{};          ///< p_d, at the wall, on top of the balanced load [Pa]
    Pressure at_end{};        ///< what is left of it at the end of the roof, where the drift is cut off [Pa]
};

/// Drift of a given height on a lower roof.
/// h_b = p_s/gamma, h_c = step - h_b; none if h_c/h_b < 0.2
/// h_d <= h_c: height h_d, w = 4 h_d;  h_d > h_c: height h_c, w = min(4 h_d^2/h_c, 8 h_c);  p_d = height gamma
/// \param drift_height  h_d, or 0.75 h_d where the clause says so [m], not negative
/// \return the drift; where it is wider than the roof, it is cut off there and not squeezed
/// Limits: the width of windward drifts in 7-22 is not this one.
/// Source: ASCE 7, 7.7.1; p_d = h_d gamma read on a page (design firm's article on drifts in 7-16 and 7-22), the rest
/// from memory, sure.
/// \throws InputError asce7.ground_load.range, asce7.balanced_load.range, asce7.step.range, asce7.roof_length.range,
///   asce7.drift_height.range
[[nodiscard]] Drift drift_on_roof_7_7_1(const LowerRoof& roof, Length drift_height);

/// Load of a triangular drift at a distance from its high end, on top of the balanced load.
/// p = p_d (1 - x/w) up to w, 0 from there
/// \param peak      p_d [Pa], 0 to 10 000 kPa
/// \param width     w [m], not negative
/// \param distance  x from the wall, or from the near end across a gap [m], not negative
/// \return p [Pa]
/// Limits: none.
/// Source: ASCE 7, 7.7.1; from memory, sure.
/// \throws InputError asce7.peak.range, asce7.width.range, asce7.distance.range
[[nodiscard]] constexpr Pressure drift_load_at_7_7_1(Pressure peak, Length width, Length distance) {
    argument::within(in_kPa(peak), 0.0, 1e4, {"asce7.peak.range", "peak of the drift p_d", "kPa"});
    argument::not_negative(in_m(width), {"asce7.width.range", "width of the drift w", "m"});
    argument::not_negative(in_m(distance), {"asce7.distance.range", "distance along the drift", "m"});
    if (distance >= width) return Pressure{};
    return ((width - distance) / width) * peak;
}

/// Two structures side by side.
struct Gap {
    Length separation{};    ///< s, level, between both [m], over 0 to 3000 ft
    Length height{};        ///< h, edge of the higher roof above the lower one [m], over 0 to 3000 ft
    Length lower_length{};  ///< of the lower roof, away from the gap [m], over 0 to 600 ft
};

/// A drift on the lower structure, from its near edge on.
struct GapDrift {
    bool needed = false;  ///< false if the clause asks for none; then all below is zero
    Length height{};      ///< at the near edge [m]
    Length length{};      ///< to where the drift ends [m]; may be longer than the roof
    Pressure peak{};      ///< at the near edge, on top of the balanced load [Pa]
    Pressure at_end{};    ///< what is left of it at the far end of the lower roof [Pa]
};

/// Drift that snow of the higher structure makes on the lower one across a gap.
/// none if s >= 20 ft or s >= 6 h;  height min(h_d, (6 h - s)/6), length min(6 h_d, 6 h - s), peak = height gamma
/// \param ground_load   p_g [Pa], 0 to 100 kPa
/// \param drift_height  h_d with the length of the higher structure as fetch [m], not negative
/// \return the drift from the near edge of the lower structure on
/// Limits: touching structures are a step (7.7.1). The limit of 7-16 by the length of the lower roof is not applied
/// here, which is the safe reading.
/// Source: ASCE 7-10, 7-16, 7-22, 7.7.2; the limits of s from memory, sure, height and length from memory.
/// \throws InputError asce7.gap.range, asce7.step.range, asce7.roof_length.range, asce7.ground_load.range,
///   asce7.drift_height.range
[[nodiscard]] GapDrift leeward_drift_over_gap_of_height_7_7_2(const Gap& gap, Pressure ground_load,
                                                              Length drift_height);

/// Whether a side of a projection needs a drift.
/// side >= 15 ft and clearance < 2 ft
/// \param side       length of that side of the projection [m], over 0 to 3000 ft
/// \param clearance  from the balanced snow up to the underside of the projection [m], 0 if it stands on the roof
/// Limits: projections; a parapet always needs one.
/// Source: ASCE 7, 7.8; from memory.
/// \throws InputError asce7.side.range, asce7.clearance.range
[[nodiscard]] constexpr bool projection_needs_drift_7_8(Length side, Length clearance) {
    argument::within(in_ft(side), argument::smallest, limit::length_high,
                     {"asce7.side.range", "side of the projection", "ft"});
    argument::within(in_ft(clearance), 0.0, limit::length_high,
                     {"asce7.clearance.range", "clearance under the projection", "ft"});
    return in_ft(side) * limit::rounding >= 15.0 && clearance < from_ft(2.0);
}

/// Share of the drift height that a windward drift and a drift at a projection or parapet reach.
/// Source: ASCE 7, 7.7.1 and 7.8; from memory, sure.
inline constexpr double windward_share_7_7_1 = 0.75;

}  // namespace coverframe::asce7
