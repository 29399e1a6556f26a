// SPDX-License-Identifier: BSD-3-Clause
// EN 1995-1-1:2004 with A1:2008, timber: solid timber members of rectangular section, ultimate limit states.
//
// Axes: y is the strong axis of the section (moment M_y bends over the depth h), z the weak one. Characteristic
// values come in as arguments; design values are made by `design_strength_2_4_1`.
//
// Simplifications: solid softwood; straight members of constant rectangular section; no system factor k_sys; no
// notches.
//
// How each rule was read stands beside it. Whoever claims conformity compares them with a licensed copy first.
#pragma once

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::en1995_1_1 {

inline const Clause clause_2_4_1{"EN 1995-1-1:2004", "2.4.1"};
inline const Clause clause_3_1_3{"EN 1995-1-1:2004", "3.1.3"};
inline const Clause clause_3_2{"EN 1995-1-1:2004", "3.2"};
inline const Clause clause_5_4_4{"EN 1995-1-1:2004", "5.4.4"};
inline const Clause clause_6_1_5{"EN 1995-1-1:2004", "6.1.5"};
inline const Clause clause_6_1_7{"EN 1995-1-1:2004", "6.1.7"};
inline const Clause clause_6_2_3{"EN 1995-1-1:2004", "6.2.3"};
inline const Clause clause_6_3_2{"EN 1995-1-1:2004", "6.3.2"};
inline const Clause clause_6_3_3{"EN 1995-1-1:2004", "6.3.3"};

/// How moist the timber is in service, 2.3.1.3.
enum class ServiceClass {
    one,    ///< indoors, heated
    two,    ///< under cover, about 20 % moisture at most
    three,  ///< wetter: a cover in winter unless measured
};

/// How long the action lasts in all, 2.3.1.2. Snow is short-term in most national annexes, medium-term in the Nordic
/// countries and above 1000 m (from memory).
enum class Duration {
    permanent,      ///< over 10 years
    long_term,      ///< 6 months to 10 years
    medium_term,    ///< a week to 6 months
    short_term,     ///< less than a week
    instantaneous,  ///< moments
};

/// Modification factor of solid timber.
/// permanent to instantaneous: 0.60, 0.70, 0.80, 0.90, 1.10 in service class 1 and 2; 0.50, 0.55, 0.65, 0.70, 0.90 in 3
/// \return k_mod [-]
/// Limits: solid timber. Where actions of several durations act, the shortest of them counts (3.1.3(2)).
/// Source: EN 1995-1-1:2004, 3.1.3, Table 3.1; read on a page but for the last column (scribd document 59450731,
/// basic data of a design sheet after EC5), that column from memory, sure.
[[nodiscard]] double modification_factor_3_1_3(ServiceClass service, Duration duration);

/// Material factor of solid timber, fundamental combinations, recommended value.
/// Source: EN 1995-1-1:2004, 2.4.1, Table 2.3; read on a page (eurocode.us, Structural timber design).
inline constexpr double material_factor_2_4_1 = 1.3;

/// Design strength.
/// X_d = k_mod X_k/gamma_M
/// \param characteristic       X_k [Pa], positive
/// \param modification_factor  k_mod [-], 0.2 to 1.1
/// \param material_factor      gamma_M [-], 1 to 2
/// \return X_d [Pa]
/// Limits: strengths; stiffness for second order takes no k_mod.
/// Source: EN 1995-1-1:2004, 2.4.1, Eq. 2.14; read on a page (scribd document 59450731).
/// \throws InputError en1995_1_1.characteristic.range, en1995_1_1.modification_factor.range,
///   en1995_1_1.material_factor.range
[[nodiscard]] constexpr Pressure design_strength_2_4_1(Pressure characteristic, double modification_factor,
                                                       double material_factor) {
    argument::positive(in_Pa(characteristic), {"en1995_1_1.characteristic.range", "characteristic value", "Pa"});
    argument::within(modification_factor, 0.2, 1.1,
                     {"en1995_1_1.modification_factor.range", "modification factor k_mod", "-"});
    argument::within(material_factor, 1.0, 2.0, {"en1995_1_1.material_factor.range", "material factor gamma_M", "-"});
    return modification_factor / material_factor * characteristic;
}

/// Depth factor on the bending strength (depth in bending) and tension strength (width) of solid timber.
/// k_h = min{(150 mm/h)^0.2, 1.3} for h < 150 mm, else 1.0
/// \param depth  h [m], positive
/// \return k_h [-], 1 to 1.3
/// Limits: rectangular solid timber of at most 700 kg/m3.
/// Source: EN 1995-1-1:2004, 3.2(3), Eq. 3.1; from memory, sure.
/// \throws InputError en1995_1_1.depth.range
[[nodiscard]] double depth_factor_3_2(Length depth);

/// Relative slenderness of a column in one plane.
/// lambda_rel = (lambda/pi) sqrt(f_c,0,k/E_0,05), lambda = l_ef sqrt(12)/depth
/// \param effective_length  l_ef in that plane [m], positive
/// \param depth             of the section in that plane [m], positive
/// \param compression       f_c,0,k [Pa], positive
/// \param modulus_low       E_0,05 [Pa], positive
/// \return lambda_rel [-]
/// Limits: rectangular sections.
/// Source: EN 1995-1-1:2004, 6.3.2(1), Eq. 6.21 and 6.22; read on a page (eurocode.us, Structural timber design).
/// \throws InputError en1995_1_1.effective_length.range, en1995_1_1.depth.range, en1995_1_1.compression.range,
///   en1995_1_1.modulus_low.range
[[nodiscard]] double relative_slenderness_6_3_2(Length effective_length, Length depth, Pressure compression,
                                                Pressure modulus_low);

/// Straightness factor of solid timber, Eq. 6.29; 0.1 for glued laminated timber.
inline constexpr double straightness_solid_6_3_2 = 0.2;

/// Instability factor of a column in one plane.
/// k_c = 1/(k + sqrt(k^2 - lambda_rel^2)), k = 0.5 [1 + beta_c (lambda_rel - 0.3) + lambda_rel^2]; 1.0 up to 0.3
/// \param relative_slenderness  lambda_rel [-], not negative
/// \param straightness          beta_c [-], 0 to 0.5
/// \return k_c [-], over 0 to 1
/// Limits: bow of the member up to l/300 (10.2).
/// Source: EN 1995-1-1:2004, 6.3.2(3), Eq. 6.25 to 6.29; read on a page (C. Mense, master's thesis, Berliner
/// Hochschule fuer Technik 2022, notebook on columns).
/// \throws InputError en1995_1_1.relative_slenderness.range, en1995_1_1.straightness.range
[[nodiscard]] double instability_factor_6_3_2(double relative_slenderness,
                                              double straightness = straightness_solid_6_3_2);

/// Redistribution factor of a rectangular section, 6.1.6(2).
inline constexpr double redistribution_6_1_6 = 0.7;

/// Stresses and strengths of a member in bending and compression. Stresses are sizes, not negative.
struct BendingCompression {
    Pressure compression{};           ///< sigma_c,0,d
    Pressure bending_y{};             ///< sigma_m,y,d
    Pressure bending_z{};             ///< sigma_m,z,d
    Pressure compression_strength{};  ///< f_c,0,d
    Pressure bending_y_strength{};    ///< f_m,y,d
    Pressure bending_z_strength{};    ///< f_m,z,d
    double slenderness_y = 0;         ///< lambda_rel,y: buckling over the depth h [-]
    double slenderness_z = 0;         ///< lambda_rel,z: buckling over the breadth b [-]
};

/// Both sums of 6.3.2(3); each is satisfied up to 1.
struct BendingCompressionResult {
    double factor_y = 1;  ///< k_c,y [-]
    double factor_z = 1;  ///< k_c,z [-]
    bool stocky = false;  ///< both slendernesses up to 0.3: Eq. 6.19 and 6.20 instead of 6.23 and 6.24
    double about_y = 0;   ///< Eq. 6.23 (6.19): full bending about y
    double about_z = 0;   ///< Eq. 6.24 (6.20): full bending about z
};

/// Bending and axial compression of solid timber.
/// sigma_c/(k_c,y f_c) + sigma_m,y/f_m,y + 0.7 sigma_m,z/f_m,z <= 1 and the same with k_c,z and the 0.7 on y; if both
/// lambda_rel <= 0.3: (sigma_c/f_c)^2 + ...
/// \return both sums
/// Limits: moments of first order. Lateral buckling of the beam is `lateral_buckling_6_3_3`.
/// Source: EN 1995-1-1:2004, 6.3.2(2) and (3), Eq. 6.19, 6.20, 6.23, 6.24; read on a page (C. Mense, as above).
/// \throws InputError en1995_1_1.stress.range, en1995_1_1.strength.range, en1995_1_1.relative_slenderness.range
[[nodiscard]] BendingCompressionResult bending_compression_6_3_2(const BendingCompression& member);

/// How a span is loaded, Table 6.1.
enum class SpanLoad {
    constant_moment,     ///< simply supported, constant moment
    uniform,             ///< simply supported, uniformly distributed
    mid_point,           ///< simply supported, one force at midspan
    cantilever_uniform,  ///< cantilever, uniformly distributed
    cantilever_point,    ///< cantilever, one force at the free end
};

/// Where on the section the load acts.
enum class LoadedEdge { compression, centre, tension };

/// Effective length of a beam against lateral buckling.
/// l_ef = 1.0, 0.9, 0.8, 0.5, 0.8 times the span by `SpanLoad`; + 2 h if loaded at the compression edge, - 0.5 h if
/// at the tension edge
/// \param span   between points held against turning over [m], positive
/// \param depth  h [m], positive
/// \return l_ef [m]
/// Limits: l_ef has to stay positive: a span of a depth or so loaded at the tension edge is refused.
/// Source: EN 1995-1-1:2004, 6.3.3(3), Table 6.1; 0.9 and 2 h read on a page (eurocode.us, Structural timber design),
/// the rest from memory, sure.
/// \throws InputError en1995_1_1.span.range, en1995_1_1.depth.range, en1995_1_1.effective_length.range
[[nodiscard]] Length effective_length_6_3_3(SpanLoad load, Length span, Length depth, LoadedEdge edge);

/// Critical bending stress of a softwood beam.
/// sigma_m,crit = 0.78 b^2 E_0,05/(h l_ef)
/// \param breadth, depth    b and h [m], positive
/// \param effective_length  l_ef [m], positive
/// \param modulus_low       E_0,05 [Pa], positive
/// \return sigma_m,crit [Pa]
/// Limits: solid softwood, rectangular, bent about the strong axis.
/// Source: EN 1995-1-1:2004, 6.3.3(3), Eq. 6.32; read as coded in an open-source test of an example of Benoit,
/// Legrand and Tastet, Calcul de structures en bois, 2008 (xcfem/xc).
/// \throws InputError en1995_1_1.breadth.range, en1995_1_1.depth.range, en1995_1_1.effective_length.range,
///   en1995_1_1.modulus_low.range
[[nodiscard]] Pressure critical_bending_6_3_3(Length breadth, Length depth, Length effective_length,
                                              Pressure modulus_low);

/// Relative slenderness of a beam.
/// lambda_rel,m = sqrt(f_m,k/sigma_m,crit)
/// \return [-]
/// Limits: as `critical_bending_6_3_3`.
/// Source: EN 1995-1-1:2004, 6.3.3(2), Eq. 6.30; from memory, sure.
/// \throws InputError en1995_1_1.bending.range, en1995_1_1.critical.range
[[nodiscard]] double relative_slenderness_6_3_3(Pressure bending, Pressure critical);

/// Lateral buckling factor of a beam.
/// k_crit = 1 up to 0.75; 1.56 - 0.75 lambda_rel,m up to 1.4; 1/lambda_rel,m^2 beyond
/// \param relative_slenderness  lambda_rel,m [-], not negative
/// \return k_crit [-], over 0 to 1
/// Limits: 1.0 where the compression edge is held all along (6.3.3(5)), which the caller knows. The document's own
/// steps are 0.0025 at 0.75 and 0.0002 at 1.4.
/// Source: EN 1995-1-1:2004, 6.3.3(3), Eq. 6.34; read on a page (eurocode.us, Structural timber design, k_crit).
/// \throws InputError en1995_1_1.relative_slenderness.range
[[nodiscard]] constexpr double lateral_factor_6_3_3(double relative_slenderness) {
    const double slenderness = argument::not_negative(
        relative_slenderness, {"en1995_1_1.relative_slenderness.range", "relative slenderness", "-"});
    if (slenderness <= 0.75) return 1.0;
    return slenderness <= 1.4 ? 1.56 - 0.75 * slenderness : 1.0 / (slenderness * slenderness);
}

/// A member bent about its strong axis, pressed or not. Stresses are sizes, not negative.
struct LateralBuckling {
    Pressure bending{};               ///< sigma_m,d, about y
    Pressure compression{};           ///< sigma_c,0,d
    Pressure bending_strength{};      ///< f_m,d
    Pressure compression_strength{};  ///< f_c,0,d
    double lateral_factor = 1;        ///< k_crit [-]
    double instability_factor_z = 1;  ///< k_c,z [-]
};

/// Lateral buckling of a beam, with or without compression; satisfied up to 1.
/// sigma_m/(k_crit f_m) without compression; [sigma_m/(k_crit f_m)]^2 + sigma_c/(k_c,z f_c) with it
/// \return the sum [-]
/// Limits: bending about y alone. The larger of both sums is returned: the verdict is that of the document, and a
/// little compression never lowers the number.
/// Source: EN 1995-1-1:2004, 6.3.3(3) and (6), Eq. 6.33 and 6.35; read on a page (eurocode.us, Structural timber
/// design, names of the equations), the form from memory, sure.
/// \throws InputError en1995_1_1.stress.range, en1995_1_1.strength.range, en1995_1_1.factor.range
[[nodiscard]] double lateral_buckling_6_3_3(const LateralBuckling& member);

/// Stresses and strengths of a member in bending and tension. Stresses are sizes, not negative.
struct BendingTension {
    Pressure tension{};             ///< sigma_t,0,d
    Pressure bending_y{};           ///< sigma_m,y,d
    Pressure bending_z{};           ///< sigma_m,z,d
    Pressure tension_strength{};    ///< f_t,0,d
    Pressure bending_y_strength{};  ///< f_m,y,d
    Pressure bending_z_strength{};  ///< f_m,z,d
};

/// Both sums of 6.2.3; each is satisfied up to 1.
struct BendingTensionResult {
    double about_y = 0;  ///< Eq. 6.17
    double about_z = 0;  ///< Eq. 6.18
};

/// Bending and axial tension.
/// sigma_t/f_t + sigma_m,y/f_m,y + 0.7 sigma_m,z/f_m,z <= 1, and the same with the 0.7 on y
/// \return both sums
/// Limits: rectangular sections.
/// Source: EN 1995-1-1:2004, 6.2.3(1), Eq. 6.17 and 6.18; from memory, sure.
/// \throws InputError en1995_1_1.stress.range, en1995_1_1.strength.range
[[nodiscard]] BendingTensionResult bending_tension_6_2_3(const BendingTension& member);

/// Shear stress of a rectangular section.
/// tau = 3 V/(2 k_cr b h)
/// \param force         V, its size counts [N]
/// \param crack_factor  k_cr [-], 0.5 to 1; 0.67 recommended for solid timber
/// \return tau_d, not negative [Pa]; to be at most f_v,d
/// Limits: no notches.
/// Source: EN 1995-1-1:2004 with A1:2008, 6.1.7, Eq. 6.13 and 6.13a; from memory, sure.
/// \throws InputError en1995_1_1.force.range, en1995_1_1.breadth.range, en1995_1_1.depth.range,
///   en1995_1_1.crack_factor.range
[[nodiscard]] Pressure shear_stress_6_1_7(Force force, Length breadth, Length depth, double crack_factor);

/// Effective length of a contact across the grain.
/// l_ef = l + c_1 + c_2, each c the smallest of 30 mm, l and the free timber on that side
/// \param contact      l, along the grain [m], positive
/// \param beyond_one   free timber beyond one end of the contact [m], not negative: to the end of the member, or half
///                     the clear distance to the next contact
/// \param beyond_two   the same on the other side
/// \return l_ef [m]
/// Limits: contacts across the full breadth.
/// Source: EN 1995-1-1:2004 with A1:2008, 6.1.5(1); the 30 mm from memory, sure, the other limits from memory.
/// \throws InputError en1995_1_1.contact.range, en1995_1_1.beyond.range
[[nodiscard]] Length effective_contact_6_1_5(Length contact, Length beyond_one, Length beyond_two);

/// Force a contact across the grain can take.
/// F_90,d = k_c,90 f_c,90,d b l_ef
/// \param across             f_c,90,d [Pa], positive
/// \param breadth            b of the contact [m], positive
/// \param effective_contact  l_ef [m], positive
/// \param factor             k_c,90 [-], 1 to 1.75; 1.0 unless the conditions of 6.1.5(3) or (4) are shown to hold
/// \return [N]
/// Limits: crushing, not rupture, is behind it.
/// Source: EN 1995-1-1:2004 with A1:2008, 6.1.5, Eq. 6.3 and 6.4; from memory, sure.
/// \throws InputError en1995_1_1.strength.range, en1995_1_1.breadth.range, en1995_1_1.contact.range,
///   en1995_1_1.factor.range
[[nodiscard]] constexpr Force compression_across_6_1_5(Pressure across, Length breadth, Length effective_contact,
                                                       double factor) {
    argument::positive(in_Pa(across), {"en1995_1_1.strength.range", "f_c,90,d", "Pa"});
    argument::positive(in_m(breadth), {"en1995_1_1.breadth.range", "breadth", "m"});
    argument::positive(in_m(effective_contact), {"en1995_1_1.contact.range", "effective contact length", "m"});
    argument::within(factor, 1.0, 1.75, {"en1995_1_1.factor.range", "factor k_c,90", "-"});
    return factor * across * breadth * effective_contact;
}

/// Angle from plumb of a frame as built, for the internal forces of second order.
/// phi = 0.005 for h <= 5 m, 0.005 sqrt(5/h) for h > 5 m
/// \param height  h of the frame or of the member [m], positive
/// \return phi, the least to be taken [rad]
/// Limits: plane frames and arches; together with the bow of `bow_5_4_4`, in the most unfavourable shape.
/// Source: EN 1995-1-1:2004, 5.4.4(2), Eq. 5.1; from memory.
/// \throws InputError en1995_1_1.height.range
[[nodiscard]] Angle out_of_plumb_5_4_4(Length height);

/// Bow of a member as built, between the nodes of the frame, for the internal forces of second order.
/// e = 0.0025 l
/// \param length  l of the member [m], positive
/// \return e at mid-length, the least to be taken [m]
/// Limits: as `out_of_plumb_5_4_4`.
/// Source: EN 1995-1-1:2004, 5.4.4(2), Eq. 5.2; from memory.
/// \throws InputError en1995_1_1.length.range
[[nodiscard]] constexpr Length bow_5_4_4(Length length) {
    argument::positive(in_m(length), {"en1995_1_1.length.range", "length", "m"});
    return 0.0025 * length;
}

}  // namespace coverframe::en1995_1_1
