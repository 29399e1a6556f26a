// SPDX-License-Identifier: BSD-3-Clause
// EN 1991-1-3:2003, 5.3.6: a lower roof that abuts taller works or lies close to them. A covered boat beside a boat
// shed or under the side of a larger hull is this case; the shortest drift (5 m) mostly spans its whole breadth.
//
//   mu_2 = mu_s + mu_w at the wall, falling in a straight line to 0.8 at l_s from it
//
// mu_s is snow that slides down from the upper roof, mu_w snow that the wind brings. Symbols of the clause:
//   b_1  width of the upper roof          h    step from the upper edge down to the lower roof
//   b_2  width of the lower roof          b_1s plan width of the upper slope that falls towards the lower roof
//
// The lower roof is taken as level; on a slope the direction of the fall asks for a study of its own. German limits on
// the sum: national/german_roof.hpp.
#pragma once

#include <algorithm>

#include "coverframe/actions/en1991_1_3.hpp"

namespace coverframe::en1991_1_3 {

inline const Clause clause_5_3_6{"EN 1991-1-3:2003", "5.3.6"};

/// Weight density of drifted snow.
/// Source: EN 1991-1-3:2003, 5.3.6(1); read on a page (Steel Buildings in Europe, Part 3, 7.2.2 and Appendix A).
inline constexpr UnitWeight drift_weight_5_3_6 = from_kN_per_m3(2.0);

/// Shape coefficient of the lower roof away from the drift, and all over it in the undrifted arrangement (i).
/// Source: EN 1991-1-3:2003, 5.3.6(1), Eq. 5.6, level lower roof; read on a page (Steel Buildings in Europe, as above).
inline constexpr double undrifted_coefficient_5_3_6 = 0.8;

/// Ground load a drift is compared with: more than nothing.   \throws InputError en1991_1_3.ground_load.range
constexpr double drifting_ground_load_in_kPa(Pressure ground_load) {
    return argument::within(in_kPa(ground_load), argument::smallest, limit::ground_high,
                            {"en1991_1_3.ground_load.range", "ground snow load s_k", "kPa"});
}

/// Height of what the drift lies against.   \throws InputError en1991_1_3.height.range
constexpr double height_in_m(Length height) {
    return argument::within(in_m(height), argument::smallest, limit::height_high,
                            {"en1991_1_3.height.range", "height h", "m"});
}

/// Plan width of a roof.   \throws InputError en1991_1_3.width.range
constexpr double width_in_m(Length width) {
    return argument::within(in_m(width), argument::smallest, limit::width_high,
                            {"en1991_1_3.width.range", "plan width b", "m"});
}

/// Length of the drift from the wall.
/// l_s = 2 h, from 5 to 15 m
/// \param height  h, step down to the lower roof [m], up to 200 m
/// \return l_s [m]
/// Limits: recommended range.
/// Source: EN 1991-1-3:2003, 5.3.6(1), Eq. 5.9; read on a page (Steel Buildings in Europe, Part 3, Appendix A).
/// \throws InputError en1991_1_3.height.range
[[nodiscard]] constexpr Length drift_length_5_3_6(Length height) {
    return from_m(std::clamp(2.0 * height_in_m(height), 5.0, 15.0));
}

/// What the wind brings.
struct WindDrift {
    double supply = 0;       ///< (b_1 + b_2)/(2 h) [-]
    double height = 0;       ///< gamma h/s_k [-], what fills the step
    double coefficient = 0;  ///< mu_w [-], 0.8 to 4
};

/// Shape coefficient of wind drift.
/// mu_w = (b_1 + b_2)/(2 h), at most gamma h/s_k, at most 4, at least 0.8; gamma = 2 kN/m3
/// \param upper_width  b_1 [m], up to 1000 m
/// \param lower_width  b_2 [m], up to 1000 m
/// \param height       h [m], up to 200 m
/// \param ground_load  s_k [Pa], more than 0, to 100 kPa
/// \return mu_w and what it came from
/// Limits: recommended range 0.8 to 4. Which limit comes last where gamma h/s_k is less than 0.8 is not stated; the
/// floor does here, which is the safe order.
/// Source: EN 1991-1-3:2003, 5.3.6(1), Eq. 5.8; read on a page (Steel Buildings in Europe, Part 3, Appendix A).
/// \throws InputError en1991_1_3.width.range, en1991_1_3.height.range, en1991_1_3.ground_load.range
[[nodiscard]] constexpr WindDrift wind_drift_5_3_6(Length upper_width, Length lower_width, Length height,
                                                   Pressure ground_load) {
    const double h = height_in_m(height);
    const double supply = (width_in_m(upper_width) + width_in_m(lower_width)) / (2.0 * h);
    const double filled = in_kN_per_m3(drift_weight_5_3_6) * h / drifting_ground_load_in_kPa(ground_load);
    return {.supply = supply, .height = filled, .coefficient = std::max(std::min({supply, filled, 4.0}), 0.8)};
}

/// Shape coefficient of snow that slides from the upper roof.
/// mu_s = 0 up to 15 deg, mu b_1s/l_s above: half the largest load of the upper slope as a triangle over l_s
/// \param upper_pitch  of the upper slope that falls towards the lower roof [rad], 0 to pi/2
/// \param upper_slope  b_1s, plan width of that slope [m], 0 to 100 m; 0 where none falls towards the lower roof
/// \param length       l_s [m], 5 to 15 m
/// \param upper_shape  largest mu of that slope by 5.3.2 or 5.3.3 [-], 0 to 1; 0.8 at any pitch is the safe choice
/// \return mu_s [-]
/// Limits: a jump at 15 deg is in the text. Not half of the coefficient of the upper slope: that reading is a known
/// mistake.
/// Source: EN 1991-1-3:2003, 5.3.6(1); read on a page (Steel Buildings in Europe, Part 3, 7.2.2: half the load of the
/// adjacent slope), the form mu b_1s/l_s with 0.8 for mu read on a page (psds.cz, on change Z2 of the Czech edition).
/// \throws InputError en1991_1_3.pitch.range, en1991_1_3.upper_slope.range, en1991_1_3.drift_length.range,
///   en1991_1_3.upper_shape.range
[[nodiscard]] constexpr double sliding_drift_5_3_6(Angle upper_pitch, Length upper_slope, Length length,
                                                   double upper_shape = 0.8) {
    argument::slope_in_deg(upper_pitch, "en1991_1_3.pitch.range");
    argument::within(in_m(upper_slope), 0.0, 100.0,
                     {"en1991_1_3.upper_slope.range", "plan width of the upper slope", "m"});
    argument::within(in_m(length), 5.0, 15.0, {"en1991_1_3.drift_length.range", "length of the drift l_s", "m"});
    argument::within(upper_shape, 0.0, 1.0,
                     {"en1991_1_3.upper_shape.range", "shape coefficient of the upper slope", "-"});
    if (upper_pitch <= from_deg(15.0)) return 0.0;
    return upper_shape * (upper_slope / length);
}

/// A lower roof and the taller works beside it.
struct TallerWorks {
    Pressure ground_load{};    ///< s_k [Pa], more than 0, to 100 kPa
    Length upper_width{};      ///< b_1 [m], up to 1000 m
    Length lower_width{};      ///< b_2 [m], up to 1000 m
    Length height{};           ///< h [m], up to 200 m
    Angle upper_pitch{};       ///< of the upper slope that falls towards the lower roof [rad], 0 to pi/2
    Length upper_slope{};      ///< b_1s, its plan width [m], 0 to 100 m
    double upper_shape = 0.8;  ///< its largest mu [-], 0 to 1
};

/// Shape coefficients of the drifted arrangement (ii) of the lower roof.
struct WallDrift {
    Length length{};     ///< l_s [m]
    double sliding = 0;  ///< mu_s [-]
    WindDrift wind;      ///< mu_w
    double wall = 0;     ///< mu_2 = mu_s + mu_w at the wall [-]
    double end = 0;      ///< at the far end of the lower roof [-]: 0.8, or more where the roof ends within the drift
};

/// Shape coefficient at a distance from the wall.
/// mu(x) = mu_2 + (0.8 - mu_2) x/l_s up to l_s, 0.8 from there
/// \param wall      mu_2 [-], 0.8 to 25
/// \param length    l_s [m], 5 to 15 m
/// \param distance  x, level, from the wall [m], 0 to 1000 m
/// \return mu [-]
/// Limits: the drift is cut where the roof ends: look at no x beyond b_2.
/// Source: EN 1991-1-3:2003, 5.3.6, Figure 5.7; read on a page (Steel Buildings in Europe, Part 3, Figure A.5), that a
/// short roof cuts it from memory, sure.
/// \throws InputError en1991_1_3.wall_coefficient.range, en1991_1_3.drift_length.range, en1991_1_3.distance.range
[[nodiscard]] constexpr double drift_coefficient_at_5_3_6(double wall, Length length, Length distance) {
    argument::within(wall, undrifted_coefficient_5_3_6, limit::shape_high,
                     {"en1991_1_3.wall_coefficient.range", "shape coefficient at the wall", "-"});
    argument::within(in_m(length), 5.0, 15.0, {"en1991_1_3.drift_length.range", "length of the drift l_s", "m"});
    argument::within(in_m(distance), 0.0, limit::width_high,
                     {"en1991_1_3.distance.range", "distance from the wall", "m"});
    if (distance >= length) return undrifted_coefficient_5_3_6;
    return wall + (undrifted_coefficient_5_3_6 - wall) * (distance / length);
}

/// Drift on a lower roof against taller works; the undrifted arrangement (i) is 0.8 all over.
/// mu_2 = mu_s + mu_w
/// \return the coefficients; the load is that of `roof_load_5_2`
/// Limits: those of `wind_drift_5_3_6` and `sliding_drift_5_3_6`. The text gives no distance at which works are no
/// longer close.
/// Source: EN 1991-1-3:2003, 5.3.6(1), Eq. 5.7; read on a page (Steel Buildings in Europe, Part 3, Appendix A).
/// \throws InputError en1991_1_3.width.range, en1991_1_3.height.range, en1991_1_3.ground_load.range,
///   en1991_1_3.pitch.range, en1991_1_3.upper_slope.range, en1991_1_3.upper_shape.range
[[nodiscard]] constexpr WallDrift taller_works_5_3_6(const TallerWorks& works) {
    const Length length = drift_length_5_3_6(works.height);
    const WindDrift wind =
        wind_drift_5_3_6(works.upper_width, works.lower_width, works.height, works.ground_load);
    const double sliding = sliding_drift_5_3_6(works.upper_pitch, works.upper_slope, length, works.upper_shape);
    const double wall = sliding + wind.coefficient;
    return {.length = length,
            .sliding = sliding,
            .wind = wind,
            .wall = wall,
            .end = drift_coefficient_at_5_3_6(wall, length, works.lower_width)};
}

}  // namespace coverframe::en1991_1_3
