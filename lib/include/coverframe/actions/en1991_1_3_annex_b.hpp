// SPDX-License-Identifier: BSD-3-Clause
// EN 1991-1-3:2003, Annex B: exceptional drifts, for accidental situations (cases B2 and B3 of Annex A). Only where the
// National Annex takes the annex up; the United Kingdom's does.
//
// Every drift is a triangle: its coefficient at the wall or the bottom of the valley, nothing at the end of its length
// and nowhere else on the roof. The load is that of `exceptional_drift_load_5_2`, without exposure and heat.
//
// Each coefficient is the least of what the height holds (2 h/s_k, h in m and s_k in kN/m2), what the roof supplies
// (twice the swept width over the length of the drift) and a ceiling.
#pragma once

#include <algorithm>

#include "coverframe/actions/en1991_1_3_drift.hpp"

namespace coverframe::en1991_1_3 {

inline const Clause annex_B_2{"EN 1991-1-3:2003", "B.2"};
inline const Clause annex_B_3{"EN 1991-1-3:2003", "B.3"};
inline const Clause annex_B_4{"EN 1991-1-3:2003", "B.4"};

/// What the height of an obstacle holds.
/// 2 h/s_k
/// \param height       h [m], up to 200 m
/// \param ground_load  s_k [Pa], more than 0, to 100 kPa
/// \return [-]
/// Source: EN 1991-1-3:2003, B.4; read on a page (Steel Buildings in Europe, Part 3, Appendix A, 3.5).
/// \throws InputError en1991_1_3.height.range, en1991_1_3.ground_load.range
[[nodiscard]] constexpr double held_by_height_B(Length height, Pressure ground_load) {
    return 2.0 * height_in_m(height) / drifting_ground_load_in_kPa(ground_load);
}

/// An exceptional drift in a valley.
struct ExceptionalValleyDrift {
    Length first_length{};   ///< l_s1, up the first slope [m]
    Length second_length{};  ///< l_s2, up the second slope [m]
    double height = 0;       ///< 2 h/s_k [-]
    double supply = 0;       ///< 2 b_3/(l_s1 + l_s2) [-]
    double coefficient = 0;  ///< mu at the bottom of the valley [-], at most 5
};

/// Exceptional drift in the valley of a multi-span roof.
/// mu = min(2 h/s_k, 2 b_3/(l_s1 + l_s2), 5), l_s1 = b_1, l_s2 = b_2
/// \param ground_load    s_k [Pa], more than 0, to 100 kPa
/// \param height         h, from the valley up to the ridge [m], up to 200 m
/// \param first_slope    b_1, plan width of the first slope [m], up to 1000 m
/// \param second_slope   b_2, plan width of the second slope [m], up to 1000 m
/// \param swept_width    b_3, plan width the snow is blown from [m], up to 3000 m: the whole roof of two spans; three
///                       slopes of a roof of more equal spans
/// \return mu, the lengths and what they came from
/// Limits: ridges of very different height and uneven spans ask for judgement. Drifts in several valleys at once stay
/// under `all_valleys_B_2`.
/// Source: EN 1991-1-3:2003, B.2, Figure B.1; from memory, moderately sure.
/// \throws InputError en1991_1_3.ground_load.range, en1991_1_3.height.range, en1991_1_3.width.range,
///   en1991_1_3.swept_width.range
[[nodiscard]] constexpr ExceptionalValleyDrift valley_drift_B_2(Pressure ground_load, Length height,
                                                                Length first_slope, Length second_slope,
                                                                Length swept_width) {
    const double length = width_in_m(first_slope) + width_in_m(second_slope);
    const double swept = argument::within(in_m(swept_width), argument::smallest, 3.0 * limit::width_high,
                                          {"en1991_1_3.swept_width.range", "swept width b_3", "m"});
    const double held = held_by_height_B(height, ground_load);
    const double supply = 2.0 * swept / length;
    return {.first_length = first_slope,
            .second_length = second_slope,
            .height = held,
            .supply = supply,
            .coefficient = std::min({held, supply, 5.0})};
}

/// Ceiling of all drifts that lie in the valleys of a roof at once, per metre along the valleys.
/// s_k times the length of the roof across the valleys
/// \param ground_load  s_k [Pa], 0 to 100 kPa
/// \param length       of the roof across the valleys [m], up to 1000 m
/// \return the most snow in all valleys together [N/m]
/// Source: EN 1991-1-3:2003, B.2; from memory, moderately sure.
/// \throws InputError en1991_1_3.ground_load.range, en1991_1_3.width.range
[[nodiscard]] constexpr LineLoad all_valleys_B_2(Pressure ground_load, Length length) {
    check_ground_load(ground_load);
    return ground_load * from_m(width_in_m(length));
}

/// An exceptional drift against a wall.
struct ExceptionalWallDrift {
    Length length{};         ///< l_s [m]
    double height = 0;       ///< 2 h/s_k [-]
    double supply = 0;       ///< 2 b/l_s [-], b the larger of b_1 and b_2
    double coefficient = 0;  ///< mu at the wall [-], at most 8
};

/// Exceptional drift behind a parapet.
/// mu = min(2 h/s_k, 2 b/l_s, 8), b the larger of b_1 and b_2; l_s = min(5 h, b_1, 15 m)
/// \param ground_load  s_k [Pa], more than 0, to 100 kPa
/// \param height       h, of the parapet [m], up to 200 m
/// \param width        b_1, plan width of the roof from the parapet along the drift [m], up to 1000 m
/// \param other_width  b_2, the other plan width in the figure [m], up to 1000 m
/// \return mu, l_s and what they came from
/// Limits: along a valley that ends at a gable parapet the drift falls to nothing over the length of the ridges beside
/// it if the parapet stands no more than 300 mm over the ridge (from memory, moderately sure); not done here.
/// Source: EN 1991-1-3:2003, B.4(4), Figure B.4; read on a page (Steel Buildings in Europe, Part 3, Appendix A, 3.5).
/// That page labels the supply 2 b_2/l_s, but its second number is that of the larger width.
/// \throws InputError en1991_1_3.ground_load.range, en1991_1_3.height.range, en1991_1_3.width.range
[[nodiscard]] constexpr ExceptionalWallDrift parapet_drift_B_4(Pressure ground_load, Length height, Length width,
                                                               Length other_width) {
    const double b_1 = width_in_m(width);
    const double length = std::min({5.0 * height_in_m(height), b_1, 15.0});
    const double held = held_by_height_B(height, ground_load);
    const double supply = 2.0 * std::max(b_1, width_in_m(other_width)) / length;
    return {.length = from_m(length),
            .height = held,
            .supply = supply,
            .coefficient = std::min({held, supply, 8.0})};
}

/// An exceptional drift on a lower roof against taller works.
struct ExceptionalAbuttingDrift {
    ExceptionalWallDrift level;  ///< drift on a level roof, mu_3
    double mu_1 = 0;             ///< [-], gone from 30 deg
    double mu_2 = 0;             ///< [-], gone from 60 deg; never less than mu_1
};

/// Exceptional drift on a lower roof that abuts taller works or lies close to them.
/// mu_3 = min(2 h/s_k, 2 b/l_s, 8), b the larger of b_1 and b_2; l_s = min(5 h, b_1, 15 m)
/// mu_1 = mu_3 up to 15 deg, mu_3 (30 - pitch)/15 to 30 deg, 0 from there; mu_2 = mu_3 up to 30 deg, mu_3 (60 -
/// pitch)/30 to 60 deg, 0 from there
/// \param ground_load  s_k [Pa], more than 0, to 100 kPa
/// \param height       h, step down to the lower roof [m], up to 200 m
/// \param lower_width  b_1, plan width of the lower roof from the wall [m], up to 1000 m
/// \param upper_width  b_2, plan width of the upper roof [m], up to 1000 m
/// \param pitch        of the lower roof [rad], 0 to pi/2
/// \return mu_1, mu_2 and what they came from
/// Limits: mu_1 and mu_2 lie at the wall at the two edges of a slope that falls along it (mu_2 at the lower edge: from
/// memory, doubtful); mu_2 all along the wall is the safe choice.
/// Source: EN 1991-1-3:2003, B.3, Figure B.2, Table B.1; from memory, moderately sure, the pitch table included.
/// \throws InputError en1991_1_3.ground_load.range, en1991_1_3.height.range, en1991_1_3.width.range,
///   en1991_1_3.pitch.range
[[nodiscard]] constexpr ExceptionalAbuttingDrift abutting_drift_B_3(Pressure ground_load, Length height,
                                                                    Length lower_width, Length upper_width,
                                                                    Angle pitch) {
    argument::slope_in_deg(pitch, "en1991_1_3.pitch.range");
    const ExceptionalWallDrift level = parapet_drift_B_4(ground_load, height, lower_width, upper_width);
    const auto falling = [&](Angle full, Angle none) {
        const double share = (none - pitch) / (none - full);
        return level.coefficient * std::clamp(share, 0.0, 1.0);
    };
    return {.level = level,
            .mu_1 = falling(from_deg(15.0), from_deg(30.0)),
            .mu_2 = falling(from_deg(30.0), from_deg(60.0))};
}

/// Smallest face of an obstruction that counts.   Source: EN 1991-1-3:2003, B.4(1); from memory, moderately sure.
inline constexpr Area least_face_B_4 = from_m2(1.0);

/// Height of an obstruction that its drift follows.
/// h up to 1 m; above, the smaller of h and the width across the wind
/// \param height  [m], up to 200 m
/// \param width   across the wind [m], up to 2 m if the obstruction is higher than 1 m
/// \return h for `obstruction_drift_B_4` [m], up to 2 m
/// Limits: an obstruction both higher than 1 m and wider than 2 m is a wall: `abutting_drift_B_3`. Canopies that reach
/// out no more than 5 m over a door count with their full height, whatever it is.
/// Source: EN 1991-1-3:2003, B.4(2); from memory, moderately sure.
/// \throws InputError en1991_1_3.height.range, en1991_1_3.obstruction_width.range
[[nodiscard]] constexpr Length obstruction_height_B_4(Length height, Length width) {
    const double h = height_in_m(height);
    const double w = argument::within(in_m(width), argument::smallest, h <= 1.0 ? limit::width_high : 2.0,
                                      {"en1991_1_3.obstruction_width.range", "width of the obstruction", "m"});
    return h <= 1.0 ? height : from_m(std::min(h, w));
}

/// An exceptional drift on one side of an obstruction.
struct ExceptionalObstructionDrift {
    Length length{};         ///< l_s [m]
    double height = 0;       ///< 2 h/s_k [-]
    double coefficient = 0;  ///< mu at the obstruction [-], at most 5
};

/// Exceptional drift on one side of a local projection or obstruction.
/// mu = min(2 h/s_k, 5); l_s = min(5 h, b)
/// \param ground_load  s_k [Pa], more than 0, to 100 kPa
/// \param height       h on that side [m], up to 200 m; of a slender or high one `obstruction_height_B_4`
/// \param width        b, plan width of the roof on that side, from the obstruction to the edge [m], up to 1000 m
/// \return mu, l_s and what they came from; each side by itself
/// Limits: faces smaller than `least_face_B_4` are left out.
/// Source: EN 1991-1-3:2003, B.4(3), Figure B.3; from memory, moderately sure.
/// \throws InputError en1991_1_3.ground_load.range, en1991_1_3.height.range, en1991_1_3.width.range
[[nodiscard]] constexpr ExceptionalObstructionDrift obstruction_drift_B_4(Pressure ground_load, Length height,
                                                                          Length width) {
    const double held = held_by_height_B(height, ground_load);
    return {.length = from_m(std::min(5.0 * height_in_m(height), width_in_m(width))),
            .height = held,
            .coefficient = std::min(held, 5.0)};
}

}  // namespace coverframe::en1991_1_3
