// SPDX-License-Identifier: BSD-3-Clause
// EN 1991-1-3:2003 with amendment A1:2015, snow on plane slopes: ground load of exceptional falls (4.3), design
// situations (Annex A), roof load (5.2), monopitch, duopitch and multi-span shapes (5.3.2 to 5.3.4). Recommended
// values.
//
// Further headers of the same namespace: en1991_1_3_curved.hpp (5.3.5), en1991_1_3_drift.hpp (5.3.6),
// en1991_1_3_local.hpp (clause 6), en1991_1_3_annex_b.hpp (exceptional drifts).
//
// A National Annex may change the exposure and thermal coefficients, the shape coefficients and the arrangements. Every
// load is per horizontal area and acts straight down. Altitude up to 1500 m (1.1).
//
// What A1:2015 changes, from memory, moderately sure: tables and figures of 5.3 are issued again, the coefficients get
// symbols of their own (mono mu_1, duopitch mu_2, valleys mu_3, cylinders mu_4), so a "mu_2" printed before 2015 is a
// valley and one printed after it a gable; the coefficient of a level roof, mu(0), is at least 0.8 and may be raised by
// a National Annex for large roofs, the line from 30 to 60 degrees falling from there. Recommended numbers for a roof a
// few metres wide stay as they were. Names here follow the meaning and never the number.
//
// How each rule was read stands beside it. Whoever claims conformity compares them with a licensed copy first.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::en1991_1_3 {

inline const Clause clause_4_3{"EN 1991-1-3:2003", "4.3"};
inline const Clause clause_5_2{"EN 1991-1-3:2003", "5.2(3)"};
inline const Clause clause_5_2_7{"EN 1991-1-3:2003", "5.2(7)"};
inline const Clause clause_5_2_8{"EN 1991-1-3:2003", "5.2(8)"};
inline const Clause clause_5_3_2{"EN 1991-1-3:2003", "5.3.2"};
inline const Clause clause_5_3_3{"EN 1991-1-3:2003", "5.3.3"};
inline const Clause clause_5_3_4{"EN 1991-1-3:2003", "5.3.4"};
inline const Clause annex_A{"EN 1991-1-3:2003", "Annex A"};

namespace limit {
inline constexpr double ground_high = 100.0;                   ///< s_k and s_Ad [kPa], 10 m of water: beyond any site
inline constexpr double shape_high = 25.0;                     ///< mu [-], beyond any drift of 5.3.6 and Annex B
inline constexpr double exposure_low = 0.5, exposure_high = 1.5;  ///< C_e [-]
inline constexpr double thermal_low = 0.8, thermal_high = 1.4;    ///< C_t [-]
inline constexpr double level_low = 0.8, level_high = 1.25;       ///< mu of a level roof [-]
inline constexpr double width_high = 1000.0;                   ///< plan width of a roof [m]
inline constexpr double height_high = 200.0;                   ///< step between roofs, obstruction [m]
}  // namespace limit

/// Ground load that is not negative and not absurd.   \throws InputError en1991_1_3.ground_load.range
constexpr void check_ground_load(Pressure ground_load) {
    argument::within(in_kPa(ground_load), 0.0, limit::ground_high,
                     {"en1991_1_3.ground_load.range", "ground snow load s_k", "kPa"});
}

/// Recommended factor on the ground load of an exceptional fall, C_esl [-].
/// Source: EN 1991-1-3:2003, 4.3(1); read on a page (Steel Buildings in Europe, Single-storey steel buildings, Part 3,
/// Appendix A).
inline constexpr double exceptional_factor_4_3 = 2.0;

/// Ground load of an exceptional fall, for accidental situations.
/// s_Ad = C_esl s_k
/// \param ground_load         s_k [Pa], 0 to 100 kPa
/// \param exceptional_factor  C_esl [-], 1 to 4; recommended 2.0
/// \return s_Ad [Pa]
/// Limits: only where the National Annex counts on exceptional falls (cases B1 and B3 of Annex A); some annexes print
/// s_Ad by region instead.
/// Source: EN 1991-1-3:2003, 4.3(1), Eq. 4.1; read on a page (Steel Buildings in Europe, as above).
/// \throws InputError en1991_1_3.ground_load.range, en1991_1_3.exceptional_factor.range
[[nodiscard]] constexpr Pressure exceptional_ground_load_4_3(Pressure ground_load,
                                                             double exceptional_factor = exceptional_factor_4_3) {
    check_ground_load(ground_load);
    argument::within(exceptional_factor, 1.0, 4.0,
                     {"en1991_1_3.exceptional_factor.range", "factor of an exceptional fall C_esl", "-"});
    return exceptional_factor * ground_load;
}

/// Which exceptional snow the National Annex counts on, Table A.1.
enum class ExceptionalSnow {
    none,              ///< case A
    falls,             ///< case B1
    drifts,            ///< case B2
    falls_and_drifts,  ///< case B3
};

[[nodiscard]] constexpr std::array<const char*, 4> choices_of(ExceptionalSnow) {
    return {"none", "falls", "drifts", "falls and drifts"};
}

/// The load arrangements to look at, each with the equation of 5.2(3) that gives its load.
struct DesignSituations {
    bool undrifted = false;                   ///< persistent and transient, undrifted shape of 5.3, Eq. 5.1
    bool drifted = false;                     ///< persistent and transient, drifted shape of 5.3, Eq. 5.1
    bool exceptional_fall_undrifted = false;  ///< accidental, undrifted shape of 5.3, Eq. 5.2
    bool exceptional_fall_drifted = false;    ///< accidental, drifted shape of 5.3, Eq. 5.2
    bool exceptional_drift = false;           ///< accidental, shape of Annex B, Eq. 5.3
};

/// Load arrangements of a site.
/// A: undrifted, drifted; B1: these and both with the exceptional fall; B2: undrifted, and drifted or, for a shape of
/// Annex B, the exceptional drift instead; B3: as B2 and undrifted with the exceptional fall
/// \param exceptional    what the National Annex counts on
/// \param annex_b_shape  whether Annex B gives a coefficient for the roof: a valley, a lower roof against a taller
///                       structure, an obstruction or parapet
/// \return the five arrangements, true where they are to be looked at
/// Limits: B3 has no drifted exceptional fall; whoever wants one adds it.
/// Source: EN 1991-1-3:2003, Annex A, Table A.1; the four cases read on a page (Steel Buildings in Europe, Part 3,
/// 7.2.1), that B2 leaves two persistent cases and one accidental one read on a page (New Steel Construction, AD 484),
/// the rest of the table from memory, moderately sure.
/// \throws InputError en1991_1_3.exceptional.unknown
[[nodiscard]] constexpr DesignSituations design_situations_A(ExceptionalSnow exceptional, bool annex_b_shape) {
    switch (exceptional) {
        case ExceptionalSnow::none: return {.undrifted = true, .drifted = true};
        case ExceptionalSnow::falls:
            return {.undrifted = true,
                    .drifted = true,
                    .exceptional_fall_undrifted = true,
                    .exceptional_fall_drifted = true};
        case ExceptionalSnow::drifts:
            return {.undrifted = true, .drifted = !annex_b_shape, .exceptional_drift = annex_b_shape};
        case ExceptionalSnow::falls_and_drifts:
            return {.undrifted = true,
                    .drifted = !annex_b_shape,
                    .exceptional_fall_undrifted = true,
                    .exceptional_drift = annex_b_shape};
    }
    argument::refuse({"en1991_1_3.exceptional.unknown", "number of the case of Annex A", "-"},
                     static_cast<double>(exceptional), 0, 3);
}

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
/// \throws InputError en1991_1_3.topography.unknown
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
/// \param ground_load  s_k [Pa], 0 to 100 kPa
/// \param shape        mu_i [-], 0 to 25
/// \param exposure     C_e [-], 0.5 to 1.5
/// \param thermal      C_t [-], 0.8 to 1.4
/// \return s, per horizontal area [Pa]
/// Limits: altitude up to 1500 m.
/// Source: EN 1991-1-3:2003, 5.2(3), Eq. 5.1; read on a page (Steel Buildings in Europe, Single-storey steel buildings,
/// Part 3, Appendix A).
/// \throws InputError en1991_1_3.ground_load.range, en1991_1_3.shape.range, en1991_1_3.exposure.range,
///   en1991_1_3.thermal.range
[[nodiscard]] constexpr Pressure roof_load_5_2(Pressure ground_load, double shape, double exposure, double thermal) {
    check_ground_load(ground_load);
    argument::within(shape, 0.0, limit::shape_high, {"en1991_1_3.shape.range", "shape coefficient mu", "-"});
    argument::within(exposure, limit::exposure_low, limit::exposure_high,
                     {"en1991_1_3.exposure.range", "exposure coefficient C_e", "-"});
    argument::within(thermal, limit::thermal_low, limit::thermal_high,
                     {"en1991_1_3.thermal.range", "thermal coefficient C_t", "-"});
    return shape * exposure * thermal * ground_load;
}

/// Snow load on a slope after an exceptional fall, accidental situations.
/// s = mu_i C_e C_t s_Ad
/// \param exceptional_ground_load  s_Ad [Pa], 0 to 100 kPa
/// \param shape                    mu_i [-], 0 to 25
/// \param exposure                 C_e [-], 0.5 to 1.5
/// \param thermal                  C_t [-], 0.8 to 1.4
/// \return s, per horizontal area [Pa]
/// Limits: partial factors of accidental situations go with it, not those of Eq. 5.1.
/// Source: EN 1991-1-3:2003, 5.2(3), Eq. 5.2; read on a page (Steel Buildings in Europe, Single-storey steel buildings,
/// Part 3, Appendix A).
/// \throws InputError as `roof_load_5_2`
[[nodiscard]] constexpr Pressure exceptional_fall_load_5_2(Pressure exceptional_ground_load, double shape,
                                                           double exposure, double thermal) {
    return roof_load_5_2(exceptional_ground_load, shape, exposure, thermal);
}

/// Snow load of an exceptional drift, accidental situations: neither exposure nor heat lessens it.
/// s = mu_i s_k
/// \param ground_load  s_k [Pa], 0 to 100 kPa: the characteristic one, never s_Ad
/// \param shape        mu_i of Annex B [-], 0 to 8
/// \return s, per horizontal area [Pa]
/// Limits: the drift stands alone, with no snow on the rest of the roof (from memory, sure).
/// Source: EN 1991-1-3:2003, 5.2(3), Eq. 5.3; read on a page (Steel Buildings in Europe, Single-storey steel buildings,
/// Part 3, Appendix A).
/// \throws InputError en1991_1_3.ground_load.range, en1991_1_3.shape.range
[[nodiscard]] constexpr Pressure exceptional_drift_load_5_2(Pressure ground_load, double shape) {
    check_ground_load(ground_load);
    argument::within(shape, 0.0, 8.0, {"en1991_1_3.shape.range", "shape coefficient mu", "-"});
    return shape * ground_load;
}

/// Shape coefficient of a slope.
/// mu = level up to 30 deg, level (60 - pitch)/30 to 60 deg, 0 from there; level at every pitch where sliding is
/// prevented; level = 0.8
/// \param pitch  [rad], 0 to pi/2
/// \param level  coefficient of a level roof, mu(0) [-], 0.8 to 1.25; 0.8 unless a National Annex raises it
/// \return mu [-], 0 to level
/// Limits: plane slopes. Where sliding is prevented the text asks for 0.8; a raised level is kept in full there.
/// Source: EN 1991-1-3:2003, 5.3.2(2) and 5.3.3(2), Table 5.2; the line read on a page (University of Zagreb course
/// notes), the floor of 0.8 from memory, sure, the raised level of A1:2015 from memory, moderately sure.
/// \throws InputError en1991_1_3.pitch.range, en1991_1_3.level.range
[[nodiscard]] constexpr double shape_coefficient_pitched_5_3_3(Angle pitch, Sliding sliding, double level = 0.8) {
    argument::slope_in_deg(pitch, "en1991_1_3.pitch.range");
    argument::within(level, limit::level_low, limit::level_high,
                     {"en1991_1_3.level.range", "shape coefficient of a level roof", "-"});
    constexpr Angle full = from_deg(30.0);
    constexpr Angle none = from_deg(60.0);
    if (pitch <= full || sliding == Sliding::prevented) return level;
    if (pitch >= none) return 0.0;
    return level * ((none - pitch) / (none - full));
}

/// One slope of a cover.
struct Slope {
    Angle pitch{};                         ///< [rad], 0 to pi/2
    Sliding sliding = Sliding::prevented;  ///< `free` has to be claimed
    double level = 0.8;                    ///< coefficient of a level roof [-], 0.8 to 1.25
};

/// Shape coefficient of a slope, all of it in one structure.   \throws InputError as above
[[nodiscard]] constexpr double shape_coefficient_pitched_5_3_3(const Slope& slope) {
    return shape_coefficient_pitched_5_3_3(slope.pitch, slope.sliding, slope.level);
}

/// Load arrangement of a monopitch cover, one for undrifted and drifted snow alike.
/// mu(a) all over
/// \return mu [-], 0 to level
/// Source: EN 1991-1-3:2003, 5.3.2, Figure 5.2; from memory, sure.
/// \throws InputError en1991_1_3.pitch.range, en1991_1_3.level.range
[[nodiscard]] constexpr double monopitch_5_3_2(const Slope& slope) { return shape_coefficient_pitched_5_3_3(slope); }

/// Shape coefficients of both slopes in one arrangement.
struct ShapePair {
    double first = 0;   ///< mu on the first slope [-]
    double second = 0;  ///< mu on the second slope [-]
};

/// The three arrangements of a duopitch cover; all are to be looked at.
struct DuopitchArrangements {
    ShapePair undrifted;      ///< case (i): mu on both slopes
    ShapePair first_halved;   ///< case (ii): half of it on the first slope
    ShapePair second_halved;  ///< case (iii): half of it on the second slope
};

/// Load arrangements of a duopitch cover.
/// (i) mu(a1), mu(a2); (ii) 0.5 mu(a1), mu(a2); (iii) mu(a1), 0.5 mu(a2)
/// \return mu of both slopes in each arrangement
/// Limits: recommended arrangements; the United Kingdom's annex loads one slope alone (national/uk_roof.hpp).
/// Source: EN 1991-1-3:2003, 5.3.3(3) and (4), Figure 5.3; read on a page (Steel Buildings in Europe, Single-storey
/// steel buildings, Part 3, Appendix A).
/// \throws InputError en1991_1_3.pitch.range, en1991_1_3.level.range
[[nodiscard]] constexpr DuopitchArrangements duopitch_5_3_3(const Slope& first, const Slope& second) {
    const double mu_first = shape_coefficient_pitched_5_3_3(first);
    const double mu_second = shape_coefficient_pitched_5_3_3(second);
    return {.undrifted = {mu_first, mu_second},
            .first_halved = {0.5 * mu_first, mu_second},
            .second_halved = {mu_first, 0.5 * mu_second}};
}

/// Shape coefficient at the bottom of a valley.
/// mu = 0.8 + 0.8 pitch/30 up to 30 deg, 1.6 to 60 deg
/// \param mean_pitch  mean of the two slopes that meet in the valley [rad], 0 to 60 deg
/// \return mu [-], 0.8 to 1.6
/// Limits: the table ends at 60 deg. Germany caps it (national/german_roof.hpp).
/// Source: EN 1991-1-3:2003, 5.3.4(3), Table 5.2; read on a page (Istruzioni per l'applicazione delle Norme tecniche,
/// 2008, Table C3.4.I, which repeats it, and University of Zagreb course notes).
/// \throws InputError en1991_1_3.valley_pitch.range
[[nodiscard]] constexpr double valley_coefficient_5_3_4(Angle mean_pitch) {
    constexpr Angle full = from_deg(30.0);
    if (!(in_rad(mean_pitch) >= 0.0 && mean_pitch <= from_deg(60.0))) {
        argument::refuse({"en1991_1_3.valley_pitch.range", "pitch of a valley", "deg"}, in_deg(mean_pitch), 0, 60);
    }
    return mean_pitch >= full ? 1.6 : 0.8 + 0.8 * (mean_pitch / full);
}

/// Shape coefficients of the two slopes that meet in a valley; both arrangements are to be looked at.
struct ValleyArrangements {
    ShapePair slopes;   ///< case (i): mu all over the first and the second slope; case (ii): mu at their ridges
    double valley = 0;  ///< case (ii): mu at the bottom of the valley; straight lines from there to the ridges
};

/// Load arrangements of a valley between two slopes of a multi-span cover.
/// (i) mu(a1), mu(a2); (ii) valley coefficient of (a1 + a2)/2 at the bottom, mu(a1) and mu(a2) at the ridges
/// \param first, second  the slopes that meet in the valley, pitch 0 to 60 deg each
/// \return mu of both arrangements
/// Limits: a slope steeper than 60 deg asks for a study of its own (5.3.4(4), from memory, sure) and is refused. Outer
/// slopes keep mu(a).
/// Source: EN 1991-1-3:2003, 5.3.4, Figure 5.4; read on a page (Steel Buildings in Europe, Single-storey steel
/// buildings, Part 3, Figure 7.3).
/// \throws InputError en1991_1_3.valley_pitch.range, en1991_1_3.pitch.range, en1991_1_3.level.range
[[nodiscard]] constexpr ValleyArrangements multi_span_5_3_4(const Slope& first, const Slope& second) {
    static_cast<void>(valley_coefficient_5_3_4(first.pitch));
    static_cast<void>(valley_coefficient_5_3_4(second.pitch));
    return {.slopes = {shape_coefficient_pitched_5_3_3(first), shape_coefficient_pitched_5_3_3(second)},
            .valley = valley_coefficient_5_3_4(0.5 * (first.pitch + second.pitch))};
}

}  // namespace coverframe::en1991_1_3
