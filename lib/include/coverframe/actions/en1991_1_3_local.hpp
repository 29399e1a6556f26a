// SPDX-License-Identifier: BSD-3-Clause
// EN 1991-1-3:2003, clause 6, local effects: drift at what stands up through the cover (6.2), snow that overhangs the
// edge (6.3), snow held back by a guard (6.4). They are for the parts they hit, not for the cover as a whole.
#pragma once

#include <algorithm>
#include <cmath>

#include "coverframe/actions/en1991_1_3_drift.hpp"

namespace coverframe::en1991_1_3 {

inline const Clause clause_6_2{"EN 1991-1-3:2003", "6.2"};
inline const Clause clause_6_3{"EN 1991-1-3:2003", "6.3"};
inline const Clause clause_6_4{"EN 1991-1-3:2003", "6.4"};

/// Drift at an obstruction, falling in a straight line to 0.8 at its end.
struct ProjectionDrift {
    Length length{};         ///< l_s on each side [m]
    double height = 0;       ///< gamma h/s_k [-], what the height fills
    double coefficient = 0;  ///< mu_2 at the obstruction [-], 0.8 to 2
};

/// Drift at a projection or obstruction: stump of a mast, wheelhouse, radar arch, upstand.
/// mu_2 = gamma h/s_k, from 0.8 to 2.0, gamma = 2 kN/m3; mu_1 = 0.8 away from it; l_s = 2 h, from 5 to 15 m
/// \param height       h over the cover [m], up to 200 m
/// \param ground_load  s_k [Pa], more than 0, to 100 kPa
/// \return mu_2 and l_s; between them `drift_coefficient_at_5_3_6`, whose line is the same
/// Limits: nearly level roofs.
/// Source: EN 1991-1-3:2003, 6.2(2), Eq. 6.1 to 6.3; from memory, sure.
/// \throws InputError en1991_1_3.height.range, en1991_1_3.ground_load.range
[[nodiscard]] constexpr ProjectionDrift projection_drift_6_2(Length height, Pressure ground_load) {
    const double filled =
        in_kN_per_m3(drift_weight_5_3_6) * height_in_m(height) / drifting_ground_load_in_kPa(ground_load);
    return {.length = drift_length_5_3_6(height), .height = filled, .coefficient = std::clamp(filled, 0.8, 2.0)};
}

/// Weight density of snow that overhangs an edge.   Source: EN 1991-1-3:2003, 6.3(2); from memory, sure, and read on a
/// page in the Italian code of 2012's predecessor (course notes, yumpu.com 19100021, p. 84).
inline constexpr UnitWeight overhang_weight_6_3 = from_kN_per_m3(3.0);

/// Whether snow that overhangs the edge has to be looked at.
/// altitude over 800 m
/// \param altitude  of the yard above sea level [m], -500 to 1500 m
/// Limits: the recommended altitude; a National Annex may say otherwise.
/// Source: EN 1991-1-3:2003, 6.3(1); from memory, sure.
/// \throws InputError en1991_1_3.altitude.range
[[nodiscard]] constexpr bool overhang_applies_6_3(Length altitude) {
    return argument::within(in_m(altitude), -500.0, 1500.0, {"en1991_1_3.altitude.range", "altitude", "m"}) > 800.0;
}

/// Depth of the snow layer where nobody has measured it.
/// d = s/gamma, gamma = 3 kN/m3
/// \param roof_load  s, the heaviest undrifted load of the roof [Pa], 0 to 200 kPa
/// \return d [m]
/// Source: EN 1991-1-3:2003, 6.3(2); from memory, moderately sure.
/// \throws InputError en1991_1_3.roof_load.range
[[nodiscard]] constexpr Length snow_depth_6_3(Pressure roof_load) {
    argument::within(in_kPa(roof_load), 0.0, 200.0, {"en1991_1_3.roof_load.range", "roof snow load s", "kPa"});
    return from_m(in_kPa(roof_load) / in_kN_per_m3(overhang_weight_6_3));
}

/// Snow that overhangs an edge.
struct Overhang {
    double irregularity = 0;  ///< k [-], 0 to 3
    LineLoad load{};          ///< s_e along the edge [N/m]
};

/// Line load of snow that overhangs the edge of a roof.
/// s_e = k s^2/gamma, k = 3/d but at most d gamma (d in m, gamma = 3 kN/m3)
/// \param roof_load  s, the heaviest undrifted load of the roof [Pa], 0 to 200 kPa
/// \param depth      d, of the snow layer [m], 0 to 100 m; `snow_depth_6_3` where nobody has measured it
/// \return k and s_e, at the edge and beside the snow on the slope above it
/// Limits: where `overhang_applies_6_3` says so. An old Italian code took k = 1 (read on a page), which is less between
/// depths of 1/3 and 3 m.
/// Source: EN 1991-1-3:2003, 6.3(2), Eq. 6.4; from memory, sure.
/// \throws InputError en1991_1_3.roof_load.range, en1991_1_3.depth.range
[[nodiscard]] constexpr Overhang overhang_6_3(Pressure roof_load, Length depth) {
    const double s = argument::within(in_kPa(roof_load), 0.0, 200.0,
                                      {"en1991_1_3.roof_load.range", "roof snow load s", "kPa"});
    const double d = argument::within(in_m(depth), 0.0, 100.0, {"en1991_1_3.depth.range", "depth of snow d", "m"});
    const double gamma = in_kN_per_m3(overhang_weight_6_3);
    const double k = d * d * gamma <= 3.0 ? d * gamma : 3.0 / d;
    return {.irregularity = k, .load = from_kN_per_m(k * s * s / gamma)};
}

/// Force of sliding snow on a guard or another obstacle, along the slope.
/// F_s = s b sin(pitch)
/// \param roof_load  s, the heaviest undrifted load between the guard and what holds next above it [Pa], 0 to 200 kPa
/// \param distance   b, in plan, to the next guard above or the ridge [m], 0 to 1000 m
/// \param pitch      of the slope [rad], 0 to pi/2
/// \return F_s along the slope, per metre of guard [N/m]
/// Limits: friction between snow and roof is left out.
/// Source: EN 1991-1-3:2003, 6.4(1), Eq. 6.5; read on a page (University of Siegen lecture script on DIN 1055-5:2005,
/// p. 58, and Italian course notes, yumpu.com 19100021, p. 84).
/// \throws InputError en1991_1_3.roof_load.range, en1991_1_3.distance.range, en1991_1_3.pitch.range
[[nodiscard]] inline LineLoad guard_force_6_4(Pressure roof_load, Length distance, Angle pitch) {
    argument::within(in_kPa(roof_load), 0.0, 200.0, {"en1991_1_3.roof_load.range", "roof snow load s", "kPa"});
    argument::within(in_m(distance), 0.0, limit::width_high,
                     {"en1991_1_3.distance.range", "distance to the next guard or the ridge", "m"});
    argument::slope_in_deg(pitch, "en1991_1_3.pitch.range");
    return roof_load * distance * std::sin(in_rad(pitch));
}

}  // namespace coverframe::en1991_1_3
