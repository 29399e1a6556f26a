// SPDX-License-Identifier: BSD-3-Clause
// NDS 2018, National Design Specification for Wood Construction: sawn lumber, strength design (LRFD) format.
//
// The same equations serve allowable stress design; only the factors of `adjusted_4_3_1` are those of strength design,
// to be used with strength-level actions. Reference values come in as arguments.
//
// Words: "edgewise" is bending about the strong axis (depth d1 in the plane of bending), "flatwise" about the weak
// one (d2). Stresses are in Pa whatever the unit they were read in.
//
// Simplifications: solid rectangular sections; single members, so no repetitive member factor (C_r = 1); not incised
// (C_i = 1); sustained temperature up to 100 F (C_t = 1); no notches.
//
// How each rule was read stands beside it. Whoever claims conformity compares them with a licensed copy first.
#pragma once

#include <optional>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::nds2018 {

inline const Clause clause_3_3_3{"NDS 2018", "3.3.3"};
inline const Clause clause_3_4_2{"NDS 2018", "3.4.2"};
inline const Clause clause_3_7_1{"NDS 2018", "3.7.1"};
inline const Clause clause_3_9_1{"NDS 2018", "3.9.1"};
inline const Clause clause_3_9_2{"NDS 2018", "3.9.2"};
inline const Clause clause_3_10_2{"NDS 2018", "3.10.2"};
inline const Clause clause_3_10_4{"NDS 2018", "3.10.4"};
inline const Clause clause_4_3_1{"NDS 2018", "4.3.1"};
inline const Clause clause_4_3_3{"NDS 2018", "4.3.3"};
inline const Clause clause_4_3_6{"NDS 2018", "4.3.6"};
inline const Clause clause_4_3_7{"NDS 2018", "4.3.7"};
inline const Clause clause_N_3{"NDS 2018", "N.3"};

/// Reference design values of the Supplement.
enum class Property {
    bending,             ///< F_b
    tension,             ///< F_t, parallel to grain
    shear,               ///< F_v, parallel to grain
    compression,         ///< F_c, parallel to grain
    compression_across,  ///< F_c,perp
    modulus,             ///< E, for deflection
    modulus_low,         ///< E_min, for stability
};

/// Grades as the size factors tell them apart (Supplement, Table 4A).
enum class GradeGroup {
    no3_and_better,  ///< Select Structural, No.1 and Better, No.1, No.2, No.3
    stud,            ///< Stud
};

/// Section of a piece, dry dressed size.
struct Lumber {
    Length thickness{};  ///< the smaller dimension [m], 1.4 to 3.6 in (nominal 2 to 4 in)
    Length width{};      ///< the larger dimension [m], up to 16 in
};

/// What turns reference values into adjusted design values.
struct Conditions {
    GradeGroup group = GradeGroup::no3_and_better;
    Lumber lumber{};
    bool wet_service = true;  ///< moisture over 19 % in service: a cover in winter unless measured
    double time_effect = 0;   ///< lambda [-], 0.6 to 1.25; see `time_effect_snow_N_3_3`
};

/// Time effect factor where snow leads the combination.
/// lambda = 0.8
/// Limits: the document is written for 1.2 D + 1.6 S of ASCE 7-10 and 7-16; the same duration of snow lies behind the
/// 1.0 S of 7-22. 0.6 where self-weight acts alone.
/// Source: NDS 2018, N.3.3, Table N3; from memory, sure.
inline constexpr double time_effect_snow_N_3_3 = 0.8;

/// Format conversion factor from allowable stress to strength design.
/// K_F = 2.54 (F_b), 2.70 (F_t), 2.88 (F_v), 2.40 (F_c), 1.67 (F_c,perp), 1.76 (E_min), 1.0 (E, which has none)
/// \return K_F [-]
/// Limits: sawn lumber.
/// Source: NDS 2018, N.3.1, Table N1; from memory, sure. That K_F = 2.16/phi for bending read on a page (American Wood
/// Council, frequently asked questions).
[[nodiscard]] double format_conversion_N_3_1(Property property);

/// Resistance factor.
/// phi = 0.85 (F_b), 0.80 (F_t), 0.75 (F_v), 0.90 (F_c), 0.90 (F_c,perp), 0.85 (E_min), 1.0 (E, which has none)
/// \return phi [-]
/// Limits: sawn lumber.
/// Source: NDS 2018, N.3.2, Table N2; from memory, sure.
[[nodiscard]] double resistance_factor_N_3_2(Property property);

/// Wet service factor of dimension lumber.
/// C_M = 0.85 (F_b; 1.0 if F_b C_F <= 1150 psi), 1.0 (F_t), 0.97 (F_v), 0.8 (F_c; 1.0 if F_c C_F <= 750 psi),
/// 0.67 (F_c,perp), 0.9 (E, E_min)
/// \param reference    reference value of the Supplement [Pa]; matters for F_b and F_c
/// \param size_factor  C_F [-]
/// \return C_M [-]
/// Limits: nominal 2 to 4 in thick, not Southern Pine.
/// Source: NDS Supplement, Table 4A; F_b with its exception, F_t and F_v read on a page (CE 479, Fall 2006, wood design
/// example), the rest from memory, sure.
/// \throws InputError nds2018.reference.range, nds2018.size_factor.range
[[nodiscard]] double wet_service_4_3_3(Property property, Pressure reference, double size_factor);

/// Size factor of dimension lumber, by the wide face.
/// No.3 and better: F_b and F_t 1.5, 1.4, 1.3, 1.2, 1.1, 1.0, 0.9 and F_c 1.15, 1.1, 1.1, 1.05, 1.0, 1.0, 0.9 for
/// nominal 2 to 4, 5, 6, 8, 10, 12, 14 in and wider; 0.1 more on F_b for nominal 4 in thick from 8 in on. Stud: 1.1,
/// 1.1, 1.05 up to 4 in, 1.0 for 5 and 6 in
/// \return C_F [-]; 1.0 for the other properties
/// Limits: nominal 2 to 4 in thick, not Southern Pine. A width between two dressed sizes takes the row of the larger.
/// Stud up to nominal 6 in wide: beyond, the document wants the reference values of No.3 too.
/// Source: NDS Supplement, Table 4A; the 2x4 rows read as coded in an open-source library (xcfem/xc), the rest from
/// memory, sure.
/// \throws InputError nds2018.thickness.range, nds2018.width.range
[[nodiscard]] double size_factor_4_3_6(Property property, GradeGroup group, const Lumber& lumber);

/// Flat use factor on F_b for a piece bent about its weak axis (load on the wide face).
/// C_fu = 1.0, 1.1, 1.1, 1.15, 1.15, 1.2 for nominal 2 and 3, 4, 5, 6, 8, 10 in and wider; nominal 4 in thick: 1.0 up
/// to 4 in, 1.05 for 5 to 8 in, 1.1 beyond
/// \return C_fu [-]
/// Limits: nominal 2 to 4 in thick; never on edgewise bending.
/// Source: NDS Supplement, Table 4A; 1.1 for a 2x4 read as coded in an open-source library (xcfem/xc), the rest from
/// memory, sure.
/// \throws InputError nds2018.thickness.range, nds2018.width.range
[[nodiscard]] double flat_use_4_3_7(const Lumber& lumber);

/// Adjusted design value for strength design, before C_L, C_P, C_fu and C_b.
/// F' = F C_M C_F K_F phi lambda; F_c,perp' and E_min' without lambda; E' = E C_M
/// \param reference  reference value of the Supplement [Pa], positive
/// \return adjusted value [Pa]
/// Limits: of the factors.
/// Source: NDS 2018, 4.3.1, Table 4.3.1; from memory, sure. That lambda left F_c,perp with the 2012 edition agrees
/// with its factor: 1.67 x 0.90 = 1.5 = 1.875 x 0.8, of which the 1.875 was read on a page (American Wood Council,
/// frequently asked questions).
/// \throws InputError nds2018.reference.range, nds2018.thickness.range, nds2018.width.range, nds2018.time_effect.range
[[nodiscard]] Pressure adjusted_4_3_1(Property property, Pressure reference, const Conditions& conditions);

/// Largest slenderness of a column in service, l_e/d <= 50.   Source: NDS 2018, 3.7.1.4; from memory, sure (as the 75
/// it allows while building is).
inline constexpr double slenderness_limit_3_7_1 = 50.0;

/// Slenderness of a column in one plane.
/// l_e/d
/// \param effective_length  l_e = K_e l [m], positive
/// \param depth             d of the section in that plane [m], positive
/// \return [-]; over `slenderness_limit_3_7_1` the column is not allowed, which is for the caller to report
/// Limits: rectangular sections.
/// Source: NDS 2018, 3.7.1.2 and 3.7.1.3; read on a page (J. Filler, Wood Column Design Using the 2005
/// NDS LRFD Provisions).
/// \throws InputError nds2018.effective_length.range, nds2018.depth.range
[[nodiscard]] constexpr double slenderness_3_7_1(Length effective_length, Length depth) {
    return argument::positive(in_m(effective_length), {"nds2018.effective_length.range", "effective length", "m"}) /
           argument::positive(in_m(depth), {"nds2018.depth.range", "depth", "m"});
}

/// Critical buckling design value of a column in one plane.
/// F_cE = 0.822 E_min'/(l_e/d)^2
/// \param modulus_low  E_min', adjusted [Pa], positive
/// \param slenderness  l_e/d [-], over 0 to 50
/// \return F_cE [Pa]
/// Limits: slenderness up to 50.
/// Source: NDS 2018, 3.7.1.5; read on a page (J. Filler, Wood Column Design Using the 2005
/// NDS LRFD Provisions).
/// \throws InputError nds2018.modulus_low.range, nds2018.column.slenderness
[[nodiscard]] constexpr Pressure critical_column_stress_3_7_1(Pressure modulus_low, double slenderness) {
    argument::positive(in_Pa(modulus_low), {"nds2018.modulus_low.range", "E_min'", "Pa"});
    argument::within(slenderness, 1e-3, slenderness_limit_3_7_1,
                     {"nds2018.column.slenderness", "slenderness l_e/d of a column", "-"});
    return 0.822 / (slenderness * slenderness) * modulus_low;
}

/// Column stability factor.
/// C_P = (1 + F_cE/F_c*)/(2c) - sqrt{[(1 + F_cE/F_c*)/(2c)]^2 - (F_cE/F_c*)/c}
/// \param critical     F_cE, the smaller of both planes [Pa], positive
/// \param compression  F_c*, adjusted by all but C_P [Pa], positive
/// \param c            0.8 sawn lumber, 0.85 round poles, 0.9 glued laminated [-], 0.5 to 1
/// \return C_P [-], over 0 to 1
/// Limits: 1.0 for a member held against buckling all along, which the caller knows.
/// Source: NDS 2018, 3.7.1.5, Eq. 3.7-1; read on a page (J. Filler, Wood Column Design Using the 2005
/// NDS LRFD Provisions).
/// \throws InputError nds2018.critical.range, nds2018.compression.range, nds2018.c.range
[[nodiscard]] double column_stability_3_7_1(Pressure critical, Pressure compression, double c = 0.8);

/// How a single span is loaded, for its effective length as a beam.
enum class SpanLoad {
    uniform,    ///< uniformly distributed
    mid_point,  ///< one force at midspan, no lateral support there
    other,      ///< any other: the upper bound of the table
};

/// Effective length of a single span beam against lateral buckling.
/// uniform 2.06 l_u (l_u/d < 7) or 1.63 l_u + 3 d; mid_point 1.80 l_u (l_u/d < 7) or 1.37 l_u + 3 d;
/// other 2.06 l_u (l_u/d < 7), 1.63 l_u + 3 d (to 14.3), 1.84 l_u
/// \param unsupported  l_u, between points held sideways [m], positive
/// \param depth        d [m], positive
/// \return l_e [m]
/// Limits: single spans, ends held against turning over. Not cantilevers.
/// Source: NDS 2018, 3.3.3.5, Table 3.3.3; 1.37 l_u + 3 d read as used in AWC solved example E1.2a, the rest from
/// memory, sure.
/// \throws InputError nds2018.unsupported.range, nds2018.depth.range
[[nodiscard]] Length effective_length_3_3_3(SpanLoad load, Length unsupported, Length depth);

/// Slenderness of a beam.
/// R_B = sqrt(l_e d/b^2)
/// \param effective_length  l_e of `effective_length_3_3_3` [m], positive
/// \param depth, breadth    d and b [m], positive
/// \return R_B [-]; over 50 the beam is not allowed (3.3.3.7), which is for the caller to report
/// Limits: rectangular sections.
/// Source: NDS 2018, 3.3.3.6, Eq. 3.3-5; read as used in AWC solved example E1.2a.
/// \throws InputError nds2018.effective_length.range, nds2018.depth.range, nds2018.breadth.range
[[nodiscard]] double beam_slenderness_3_3_3(Length effective_length, Length depth, Length breadth);

/// Critical buckling design value of a beam.
/// F_bE = 1.20 E_min'/R_B^2
/// \param modulus_low  E_min', adjusted [Pa], positive
/// \param slenderness  R_B [-], over 0 to 50
/// \return F_bE [Pa]
/// Limits: R_B up to 50.
/// Source: NDS 2018, 3.3.3.8; read as used in AWC solved example E1.2a.
/// \throws InputError nds2018.modulus_low.range, nds2018.beam.slenderness
[[nodiscard]] constexpr Pressure critical_beam_stress_3_3_3(Pressure modulus_low, double slenderness) {
    argument::positive(in_Pa(modulus_low), {"nds2018.modulus_low.range", "E_min'", "Pa"});
    argument::within(slenderness, 1e-3, 50.0, {"nds2018.beam.slenderness", "slenderness R_B of a beam", "-"});
    return 1.20 / (slenderness * slenderness) * modulus_low;
}

/// Beam stability factor.
/// C_L = (1 + F_bE/F_b*)/1.9 - sqrt{[(1 + F_bE/F_b*)/1.9]^2 - (F_bE/F_b*)/0.95}
/// \param critical  F_bE [Pa], positive
/// \param bending   F_b*, adjusted by all but C_L and C_fu [Pa], positive
/// \return C_L [-], over 0 to 1
/// Limits: C_L = 1 where the depth is not larger than the breadth (3.3.3.1) or the compression edge is held all along
/// (3.3.3.3), which the caller knows. Edgewise bending only.
/// Source: NDS 2018, 3.3.3.8, Eq. 3.3-6; read as used in AWC solved example E1.2a.
/// \throws InputError nds2018.critical.range, nds2018.bending.range
[[nodiscard]] double beam_stability_3_3_3(Pressure critical, Pressure bending);

/// Shear stress of a rectangular section.
/// f_v = 3 V/(2 b d)
/// \param force  V, its size counts [N]
/// \return f_v, not negative [Pa]
/// Limits: no notches, no loads closer to the support than d left out.
/// Source: NDS 2018, 3.4.2, Eq. 3.4-2; from memory, sure.
/// \throws InputError nds2018.force.range, nds2018.breadth.range, nds2018.depth.range
[[nodiscard]] Pressure shear_stress_3_4_2(Force force, Length breadth, Length depth);

/// Stresses and design values of a member in bending and compression. Stresses are sizes, not negative.
struct BendingCompression {
    Pressure compression{};         ///< f_c
    Pressure edgewise{};            ///< f_b1
    Pressure flatwise{};            ///< f_b2
    Pressure compression_design{};  ///< F_c', with C_P
    Pressure edgewise_design{};     ///< F_b1', with C_L
    Pressure flatwise_design{};     ///< F_b2', with C_fu
    Pressure critical_edgewise{};   ///< F_cE1, l_e1/d1: buckling in the plane of edgewise bending
    Pressure critical_flatwise{};   ///< F_cE2, l_e2/d2
    Pressure critical_beam{};       ///< F_bE
};

/// The parts of the interaction sum of 3.9.2.
struct BendingCompressionResult {
    /// false if f_c >= F_cE1, f_c >= F_cE2, f_b1 >= F_bE or f_c/F_cE2 + (f_b1/F_bE)^2 >= 1: the member buckles and
    /// there is no sum
    bool stable = false;
    double compression_part = 0;  ///< (f_c/F_c')^2
    double edgewise_part = 0;     ///< the term of f_b1, zero if not stable
    double flatwise_part = 0;     ///< the term of f_b2, zero if not stable
    std::optional<double> sum;    ///< of the three, satisfied up to 1; empty if not stable
};

/// Bending and axial compression.
/// (f_c/F_c')^2 + f_b1/[F_b1'(1 - f_c/F_cE1)] + f_b2/[F_b2'(1 - f_c/F_cE2 - (f_b1/F_bE)^2)] <= 1, and
/// f_c/F_cE2 + (f_b1/F_bE)^2 < 1
/// \return the sum, or that the member is not stable
/// Limits: moments of first order: the denominators bring the second order in. Moments of a second-order analysis
/// count it twice, which is on the safe side. Without f_b2 the limit f_b1 < F_bE is not demanded by the document but
/// cannot be reached either, for C_L keeps F_b1' below F_bE.
/// Source: NDS 2018, 3.9.2, Eq. 3.9-3 and 3.9-4; the sum read as used in AWC solved example E1.8, the second from
/// memory, sure.
/// \throws InputError nds2018.stress.range, nds2018.design_value.range
[[nodiscard]] BendingCompressionResult bending_compression_3_9_2(const BendingCompression& member);

/// Stresses and design values of a member in bending and tension. Stresses are sizes, not negative.
struct BendingTension {
    Pressure tension{};                 ///< f_t
    Pressure edgewise{};                ///< f_b1
    Pressure flatwise{};                ///< f_b2
    Pressure tension_design{};          ///< F_t'
    Pressure edgewise_design{};         ///< F_b1*, without C_L
    Pressure edgewise_design_stable{};  ///< F_b1**, with C_L
    Pressure flatwise_design{};         ///< F_b2*
};

/// Both sums of 3.9.1; each is satisfied up to 1.
struct BendingTensionResult {
    double tension_face = 0;      ///< Eq. 3.9-1
    double compression_face = 0;  ///< Eq. 3.9-2; negative if tension outweighs bending
};

/// Bending and axial tension.
/// f_t/F_t' + f_b/F_b* <= 1 and (f_b - f_t)/F_b** <= 1
/// \return both sums
/// Limits: the document has bending about one axis. The term of f_b2 is added to both sums as well: no less safe than
/// Eq. 3.9-3 without compression, engineering judgement, no source.
/// Source: NDS 2018, 3.9.1, Eq. 3.9-1 and 3.9-2; read as used in AWC solved example E1.6.
/// \throws InputError nds2018.stress.range, nds2018.design_value.range
[[nodiscard]] BendingTensionResult bending_tension_3_9_1(const BendingTension& member);

/// Bearing area factor for compression across the grain.
/// C_b = (l_b + 0.375 in)/l_b for l_b < 6 in and at least 3 in from the end, else 1.0
/// \param bearing_length  l_b along the grain [m], positive
/// \param to_end          from the bearing to the nearer end of the piece [m], not negative
/// \return C_b [-], 1 to 1.75 from l_b = 0.5 in up
/// Limits: bearings across the full breadth; l_b of at least 0.5 in, below which the document gives no value.
/// Source: NDS 2018, 3.10.4, Eq. 3.10-2; from memory, sure.
/// \throws InputError nds2018.bearing_length.range, nds2018.to_end.range
[[nodiscard]] constexpr double bearing_area_factor_3_10_4(Length bearing_length, Length to_end) {
    const double l_b = argument::within(in_in(bearing_length), 0.5 * (1.0 - 1e-9), argument::largest,
                                        {"nds2018.bearing_length.range", "bearing length", "in"});
    argument::not_negative(in_in(to_end), {"nds2018.to_end.range", "distance to the end", "in"});
    return bearing_length < from_in(6.0) && to_end >= from_in(3.0) ? (l_b + 0.375) / l_b : 1.0;
}

/// Force a bearing across the grain can take.
/// P = F_c,perp' C_b b l_b
/// \param across          F_c,perp', adjusted by all but C_b [Pa], positive
/// \param bearing_length  l_b along the grain [m], positive
/// \param breadth         b across the grain [m], positive
/// \param area_factor     C_b [-], 1 to 2
/// \return [N]
/// Limits: deformation, not rupture, is behind F_c,perp: a bearing over this force crushes slowly.
/// Source: NDS 2018, 3.10.2 and 3.10.4; from memory, sure.
/// \throws InputError nds2018.across.range, nds2018.bearing_length.range, nds2018.breadth.range,
///   nds2018.area_factor.range
[[nodiscard]] constexpr Force bearing_strength_3_10_2(Pressure across, Length bearing_length, Length breadth,
                                                      double area_factor) {
    argument::positive(in_Pa(across), {"nds2018.across.range", "F_c,perp'", "Pa"});
    argument::positive(in_in(bearing_length), {"nds2018.bearing_length.range", "bearing length", "in"});
    argument::positive(in_in(breadth), {"nds2018.breadth.range", "breadth", "in"});
    argument::within(area_factor, 1.0, 2.0, {"nds2018.area_factor.range", "bearing area factor C_b", "-"});
    return area_factor * across * bearing_length * breadth;
}

}  // namespace coverframe::nds2018
