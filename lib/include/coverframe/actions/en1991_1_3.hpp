// SPDX-License-Identifier: BSD-3-Clause
// EN 1991-1-3:2003, snow loads on a cover of one ridge: clauses 5.2 and 5.3.3, recommended values.
//
// A National Annex may change the exposure and thermal coefficients, the shape coefficients and the arrangements. Every
// load is per horizontal area and acts straight down.
//
// Simplifications: no drift against a taller neighbour (5.3.6), no exceptional drift (Annex B), no snow overhanging the
// eave (6.3). Altitude up to 1500 m (1.1).
//
// How each rule was read stands beside it. Whoever claims conformity compares them with a licensed copy first.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::en1991_1_3 {

inline const Clause clause_5_2{"EN 1991-1-3:2003", "5.2(3)"};
inline const Clause clause_5_2_7{"EN 1991-1-3:2003", "5.2(7)"};
inline const Clause clause_5_2_8{"EN 1991-1-3:2003", "5.2(8)"};
inline const Clause clause_5_3_3{"EN 1991-1-3:2003", "5.3.3"};

/// Lie of the land, Table 5.1.
enum class Topography {
    windswept,  ///< flat and open all round, little shelter by terrain, works or trees
    normal,     ///< the wind takes no significant share of the snow off
    sheltered,  ///< much lower than the terrain, works or trees round it
};

[[nodiscard]] constexpr std::array<const char*, 3> choices_of(Topography) {
    return {"windswept", "normal", "sheltered"};
}

/// Whether snow may leave the slope.
enum class Sliding {
    free,       ///< nothing holds it, and there is room for what slides
    prevented,  ///< guards, straps that stand proud, a rail or upstand at the lower edge, pockets, a heap at the eave
};

[[nodiscard]] constexpr std::array<const char*, 2> choices_of(Sliding) { return {"free", "prevented"}; }

/// Exposure coefficient.
/// C_e = 0.8 windswept, 1.0 normal, 1.2 sheltered
/// \return C_e [-]
/// Limits: recommended values; several National Annexes fix 1.0. Think of what will be built or parked around later.
/// Source: EN 1991-1-3:2003, 5.2(7), Table 5.1; the three classes read on a page, the values from memory, sure.
[[nodiscard]] constexpr double exposure_coefficient_5_2_7(Topography topography) {
    switch (topography) {
        case Topography::windswept: return 0.8;
        case Topography::normal: return 1.0;
        case Topography::sheltered: return 1.2;
    }
    argument::refuse({"en1991_1_3.topography.unknown", "topography number", "-"}, static_cast<double>(topography), 0,
                     2);
}

/// Thermal coefficient of a cover.
/// C_t = 1.0
/// Limits: less than 1.0 is only for roofs that lose so much heat (over 1 W/m2K) that snow melts. The 2003 text has
/// nothing above 1.0 for unheated spaces; whoever wants the 20 % of older practice states it.
/// Source: EN 1991-1-3:2003, 5.2(8); read on a page (Pertermann and Puthli, KIT, on the second generation of the text).
inline constexpr double thermal_coefficient_5_2_8 = 1.0;

/// Snow load on a slope, persistent and transient situations.
/// s = mu_i C_e C_t s_k
/// \param ground_load  s_k [Pa], 0 to 100 kPa. With an exceptional ground load s_Ad it is Eq. 5.2, accidental
///                     situations
/// \param shape        mu_i [-], 0 to 4
/// \param exposure     C_e [-], 0.5 to 1.5
/// \param thermal      C_t [-], 0.8 to 1.4
/// \return s, per horizontal area [Pa]
/// Limits: altitude up to 1500 m.
/// Source: EN 1991-1-3:2003, 5.2(3), Eq. 5.1 and 5.2; read on a page (Steel Buildings in Europe, Single-storey steel
/// buildings, Part 3, Appendix A).
/// \throws InputError en1991_1_3.ground_load.range, en1991_1_3.shape.range, en1991_1_3.exposure.range,
///   en1991_1_3.thermal.range
[[nodiscard]] constexpr Pressure roof_load_5_2(Pressure ground_load, double shape, double exposure, double thermal) {
    argument::within(in_kPa(ground_load), 0.0, 100.0, {"en1991_1_3.ground_load.range", "ground snow load s_k", "kPa"});
    argument::within(shape, 0.0, 4.0, {"en1991_1_3.shape.range", "shape coefficient mu", "-"});
    argument::within(exposure, 0.5, 1.5, {"en1991_1_3.exposure.range", "exposure coefficient C_e", "-"});
    argument::within(thermal, 0.8, 1.4, {"en1991_1_3.thermal.range", "thermal coefficient C_t", "-"});
    return shape * exposure * thermal * ground_load;
}

/// Shape coefficient of a slope.
/// mu_1 = 0.8 up to 30 deg, 0.8 (60 - pitch)/30 to 60 deg, 0 from there; at least 0.8 where sliding is prevented
/// \param pitch  [rad], 0 to pi/2
/// \return mu_1 [-], 0 to 0.8
/// Limits: plane slopes, duopitch and monopitch. Amendment A1:2015 renames the coefficients and changes no recommended
/// value for a roof a few metres wide (from memory).
/// Source: EN 1991-1-3:2003, 5.3.3(2), Table 5.2; the line read on a page (University of Zagreb course notes), the
/// floor of 0.8 from memory, sure.
/// \throws InputError en1991_1_3.pitch.range
[[nodiscard]] constexpr double shape_coefficient_pitched_5_3_3(Angle pitch, Sliding sliding) {
    argument::slope_in_deg(pitch, "en1991_1_3.pitch.range");
    constexpr Angle full = from_deg(30.0);
    constexpr Angle none = from_deg(60.0);
    if (pitch <= full || sliding == Sliding::prevented) return 0.8;
    if (pitch >= none) return 0.0;
    return 0.8 * ((none - pitch) / (none - full));
}

/// One slope of a duopitch cover.
struct Slope {
    Angle pitch{};                         ///< [rad], 0 to pi/2
    Sliding sliding = Sliding::prevented;  ///< `free` has to be claimed
};

/// Shape coefficients of both slopes in one arrangement.
struct ShapePair {
    double first = 0;   ///< mu on the first slope [-]
    double second = 0;  ///< mu on the second slope [-]
};

/// The three arrangements of a duopitch cover; all are to be looked at.
struct DuopitchArrangements {
    ShapePair undrifted;      ///< case (i): mu_1 on both slopes
    ShapePair first_halved;   ///< case (ii): half of it on the first slope
    ShapePair second_halved;  ///< case (iii): half of it on the second slope
};

/// Load arrangements of a duopitch cover.
/// (i) mu_1(a1), mu_1(a2); (ii) 0.5 mu_1(a1), mu_1(a2); (iii) mu_1(a1), 0.5 mu_1(a2)
/// \return mu of both slopes in each arrangement
/// Limits: recommended arrangements; some National Annexes (the United Kingdom's from memory) load one slope alone.
/// Source: EN 1991-1-3:2003, 5.3.3(3) and (4), Figure 5.3; read on a page (Steel Buildings in Europe, Single-storey
/// steel buildings, Part 3, Appendix A).
/// \throws InputError en1991_1_3.pitch.range
[[nodiscard]] constexpr DuopitchArrangements duopitch_5_3_3(const Slope& first, const Slope& second) {
    const double mu_first = shape_coefficient_pitched_5_3_3(first.pitch, first.sliding);
    const double mu_second = shape_coefficient_pitched_5_3_3(second.pitch, second.sliding);
    return {.undrifted = {mu_first, mu_second},
            .first_halved = {0.5 * mu_first, mu_second},
            .second_halved = {mu_first, 0.5 * mu_second}};
}

}  // namespace coverframe::en1991_1_3
