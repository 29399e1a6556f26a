// SPDX-License-Identifier: BSD-3-Clause
// NDS 2018, strength design.
#include <algorithm>
#include <array>
#include <cmath>

#include "common.hpp"
#include "coverframe/resistance/nds2018.hpp"
#include "coverframe/units/crossing.hpp"
#include "timber.hpp"

namespace coverframe::checks_detail::nds {
namespace {

using namespace coverframe::nds2018;

constexpr double beam_slenderness_limit = 50.0;  // 3.3.3.7
constexpr double cantilever_factor = 2.1;        // appendix G, recommended K_e; from memory, sure
constexpr double no_push = 1e-3;

Conditions conditions_of(const Plan& plan, const Piece& piece) {
    Conditions conditions;
    conditions.group = piece.grade->name.ends_with("Stud") ? GradeGroup::stud : GradeGroup::no3_and_better;
    conditions.lumber = {std::min(piece.section.breadth, piece.section.depth),
                         std::max(piece.section.breadth, piece.section.depth)};
    conditions.wet_service = chosen(plan.basis.timber.wet_service, "wet_service").value;
    conditions.time_effect = chosen(plan.basis.timber.time_effect_factor, "time_effect_factor").value;
    return conditions;
}

Pressure critical_or_zero(Pressure modulus_low, double slenderness) {
    return slenderness <= slenderness_limit_3_7_1 ? critical_column_stress_3_7_1(modulus_low, slenderness) : Pressure{};
}

struct Stresses {
    Pressure axial{};  ///< pull positive
    Pressure edgewise{}, flatwise{};
};

Stresses stresses_of(const NdsPiece& s, const PieceForces& forces) {
    const double area = in_m2(s.d1 * s.d2);
    const double edge = std::abs(in_N_m(s.depth_is_edge ? forces.vertical : forces.level));
    const double flat = std::abs(in_N_m(s.depth_is_edge ? forces.level : forces.vertical));
    return {from_Pa(in_N(forces.axial) / area), from_Pa(6.0 * edge / (area * in_m(s.d1))),
            from_Pa(6.0 * flat / (area * in_m(s.d2)))};
}

bool is_pressed(const NdsPiece& s, const Stresses& stress) { return -stress.axial > no_push * s.compression; }

BendingCompression bending_compression_of(const NdsPiece& s, const Stresses& stress, bool pressed) {
    // A piece that is not pressed may be too slender for a column: F_cE then meets a push of zero and only has to be
    // there.
    const auto or_any = [&](Pressure critical) { return critical > Pressure{} ? critical : s.compression; };
    return {.compression = pressed ? -stress.axial : Pressure{},
            .edgewise = stress.edgewise,
            .flatwise = stress.flatwise,
            .compression_design = s.column_stability * s.compression,
            .edgewise_design = s.beam_stability * s.bending,
            .flatwise_design = s.flat_use * s.bending,
            .critical_edgewise = or_any(s.critical_1),
            .critical_flatwise = or_any(s.critical_2),
            .critical_beam = or_any(s.critical_beam)};
}

// How far the member is over what buckles it: one or more where 3.9.2 calls it not stable.
double share_of_buckling(const BendingCompression& m) {
    const double beam = m.edgewise / m.critical_beam;
    const double edgewise = m.compression / m.critical_edgewise;
    const double flatwise = m.compression / m.critical_flatwise;
    return std::max({edgewise, beam, flatwise + beam * beam});
}

BendingTension bending_tension_of(const NdsPiece& s, const Stresses& stress) {
    return {.tension = stress.axial,
            .edgewise = stress.edgewise,
            .flatwise = stress.flatwise,
            .tension_design = s.tension,
            .edgewise_design = s.bending,
            .edgewise_design_stable = s.beam_stability * s.bending,
            .flatwise_design = s.flat_use * s.bending};
}

Term stress_term(std::string symbol, Pressure value, std::string formula, Clause clause = {}) {
    return term(std::move(symbol), in_N_per_mm2(value), "N/mm2", std::move(formula), std::move(clause));
}

// Reference value, factors and adjusted value of one property. `name` without its prime or star: "F_b".
void add_adjusted(std::vector<Term>& terms, const Piece& piece, const Conditions& conditions, Property property,
                  Pressure reference, const std::string& name, const std::string& adjusted) {
    const bool with_time = property != Property::modulus_low && property != Property::compression_across;
    const double size = size_factor_4_3_6(property, conditions.group, conditions.lumber);
    const double wet = conditions.wet_service ? wet_service_4_3_3(property, reference, size) : 1.0;
    const std::string of = " (" + name + ")";
    terms.push_back(
        stress_term(name, reference, std::string(piece.grade->name) + "; " + std::string(piece.grade->source)));
    terms.push_back(term("C_F" + of, size, "-", "by the wide face", clause_4_3_6));
    terms.push_back(term("C_M" + of, wet, "-", conditions.wet_service ? "wet service" : "dry service", clause_4_3_3));
    terms.push_back(term("K_F" + of, format_conversion_N_3_1(property), "-", "Table N1", clause_N_3));
    terms.push_back(term("phi" + of, resistance_factor_N_3_2(property), "-", "Table N2", clause_N_3));
    terms.push_back(stress_term(adjusted, adjusted_4_3_1(property, reference, conditions),
                                name + " C_M C_F K_F phi" + (with_time ? " lambda" : ""), clause_4_3_1));
}

void add_sizes(std::vector<Term>& terms, const Plan& plan, const NdsPiece& s) {
    terms.push_back(term("d1", in_mm(s.d1), "mm", "larger side of the section"));
    terms.push_back(term("d2", in_mm(s.d2), "mm", "smaller side of the section"));
    const Cited<double>& lambda = chosen(plan.basis.timber.time_effect_factor, "time_effect_factor");
    terms.push_back(term("lambda", lambda.value, "-", lambda.source, clause_N_3));
}

void add_column(std::vector<Term>& terms, const Piece& piece, const Conditions& conditions, const NdsPiece& s) {
    terms.push_back(term("l_e", in_m(s.effective), "m",
                         piece.cantilever ? "2.1 times the overhang" : "1.0 times the length", clause_3_7_1));
    terms.push_back(term("l_e/d1", s.slenderness_1, "-", "at most 50", clause_3_7_1));
    terms.push_back(term("l_e/d2", s.slenderness_2, "-", "at most 50", clause_3_7_1));
    add_adjusted(terms, piece, conditions, Property::compression, piece.grade->compression, "F_c", "F_c*");
    add_adjusted(terms, piece, conditions, Property::modulus_low, piece.grade->modulus_low, "E_min", "E_min'");
    if (s.critical_1 > Pressure{})
        terms.push_back(stress_term("F_cE1", s.critical_1, "0.822 E_min'/(l_e/d1)^2", clause_3_7_1));
    if (s.critical_2 > Pressure{}) {
        terms.push_back(stress_term("F_cE2", s.critical_2, "0.822 E_min'/(l_e/d2)^2", clause_3_7_1));
        terms.push_back(
            term("C_P", s.column_stability, "-",
                 "(1 + F_cE/F_c*)/1.6 - sqrt{[(1 + F_cE/F_c*)/1.6]^2 - (F_cE/F_c*)/0.8}, F_cE the smaller one",
                 clause_3_7_1));
        terms.push_back(stress_term("F_c'", s.column_stability * s.compression, "C_P F_c*", clause_3_7_1));
    }
}

void add_beam(std::vector<Term>& terms, const NdsPiece& s) {
    terms.push_back(term("C_fu", s.flat_use, "-", "bent flatwise", clause_4_3_7));
    if (s.d1 > s.d2) {
        terms.push_back(
            term("l_e (beam)", in_m(s.effective_beam), "m", "Table 3.3.3, any load, for the whole span", clause_3_3_3));
        terms.push_back(term("R_B", s.beam_slenderness, "-", "sqrt(l_e d1/d2^2), at most 50", clause_3_3_3));
    }
    if (s.critical_beam > Pressure{})
        terms.push_back(stress_term("F_bE", s.critical_beam, "1.20 E_min'/R_B^2", clause_3_3_3));
    terms.push_back(term("C_L", s.beam_stability, "-",
                         s.d1 > s.d2 ? "(1 + F_bE/F_b*)/1.9 - sqrt{[(1 + F_bE/F_b*)/1.9]^2 - (F_bE/F_b*)/0.95}"
                                     : "the section is square",
                         clause_3_3_3));
    terms.push_back(stress_term("F_b1'", s.beam_stability * s.bending, "C_L F_b*", clause_3_3_3));
    terms.push_back(stress_term("F_b2'", s.flat_use * s.bending, "C_fu F_b*", clause_4_3_7));
}

void add_compression_sum(std::vector<Term>& terms, const NdsPiece& s, const Stresses& stress, bool pressed) {
    const BendingCompressionResult result = bending_compression_3_9_2(bending_compression_of(s, stress, pressed));
    terms.push_back(term("part of push", result.compression_part, "-", "(f_c/F_c')^2", clause_3_9_2));
    if (!result.stable) {
        terms.push_back(term("stable", 0.0, "-",
                             "f_c < F_cE1, f_c < F_cE2, f_b1 < F_bE and f_c/F_cE2 + (f_b1/F_bE)^2 < 1", clause_3_9_2));
        return;
    }
    terms.push_back(
        term("part of edgewise bending", result.edgewise_part, "-", "f_b1/[F_b1' (1 - f_c/F_cE1)]", clause_3_9_2));
    terms.push_back(term("part of flatwise bending", result.flatwise_part, "-",
                         "f_b2/[F_b2' (1 - f_c/F_cE2 - (f_b1/F_bE)^2)]", clause_3_9_2));
    terms.push_back(term("sum", result.sum.value_or(0.0), "-", "of the three, at most 1", clause_3_9_2));
}

}  // namespace

NdsPiece strength_of(const Plan& plan, const Piece& piece) {
    const Conditions conditions = conditions_of(plan, piece);
    NdsPiece s;
    s.depth_is_edge = piece.section.depth >= piece.section.breadth;
    s.d1 = conditions.lumber.width;
    s.d2 = conditions.lumber.thickness;
    s.bending = adjusted_4_3_1(Property::bending, piece.grade->bending, conditions);
    s.compression = adjusted_4_3_1(Property::compression, piece.grade->compression, conditions);
    s.tension = adjusted_4_3_1(Property::tension, piece.grade->tension, conditions);
    s.modulus_low = adjusted_4_3_1(Property::modulus_low, piece.grade->modulus_low, conditions);
    s.flat_use = flat_use_4_3_7(conditions.lumber);
    s.effective = (piece.cantilever ? cantilever_factor : 1.0) * piece.span;
    s.slenderness_1 = slenderness_3_7_1(s.effective, s.d1);
    s.slenderness_2 = slenderness_3_7_1(s.effective, s.d2);
    s.critical_1 = critical_or_zero(s.modulus_low, s.slenderness_1);
    s.critical_2 = critical_or_zero(s.modulus_low, s.slenderness_2);
    if (s.critical_2 > Pressure{}) s.column_stability = column_stability_3_7_1(s.critical_2, s.compression);
    s.effective_beam = effective_length_3_3_3(SpanLoad::other, piece.span, s.d1);
    s.beam_slenderness = beam_slenderness_3_3_3(s.effective_beam, s.d1, s.d2);
    if (s.beam_slenderness <= beam_slenderness_limit) {
        s.critical_beam = critical_beam_stress_3_3_3(s.modulus_low, s.beam_slenderness);
        if (s.d1 > s.d2) s.beam_stability = beam_stability_3_3_3(s.critical_beam, s.bending);
    }
    return s;
}

Judgement judge(const NdsPiece& s, const PieceForces& forces) {
    const Stresses stress = stresses_of(s, forces);
    const bool pressed = is_pressed(s, stress);
    if (s.d1 > s.d2 && s.beam_slenderness > beam_slenderness_limit && stress.edgewise > Pressure{})
        return {clause_3_3_3, s.beam_slenderness, beam_slenderness_limit, false, "as a beam, R_B"};
    if (pressed && s.slenderness_2 > slenderness_limit_3_7_1)
        return {clause_3_7_1, s.slenderness_2, slenderness_limit_3_7_1, false, "as a column, length over thickness"};
    if (!pressed && stress.axial > Pressure{}) {
        const BendingTensionResult pulled = bending_tension_3_9_1(bending_tension_of(s, stress));
        return {clause_3_9_1, std::max(pulled.tension_face, pulled.compression_face)};
    }
    const BendingCompression member = bending_compression_of(s, stress, pressed);
    const BendingCompressionResult result = bending_compression_3_9_2(member);
    if (result.sum) return {clause_3_9_2, *result.sum};
    return {clause_3_9_2, share_of_buckling(member), 1.0, true};
}

std::vector<Term> terms_of(const Plan& plan, const Piece& piece, const NdsPiece& s, const PieceForces& forces) {
    const Conditions conditions = conditions_of(plan, piece);
    const Stresses stress = stresses_of(s, forces);
    const bool pressed = is_pressed(s, stress);
    const bool pulled = !pressed && stress.axial > Pressure{};
    std::vector<Term> terms;
    add_sizes(terms, plan, s);
    terms.push_back(term("N", in_kN(forces.axial), "kN", "axial force, pull positive"));
    terms.push_back(term("M1", in_N_m(s.depth_is_edge ? forces.vertical : forces.level), "N m", "edgewise bending"));
    terms.push_back(term("M2", in_N_m(s.depth_is_edge ? forces.level : forces.vertical), "N m", "flatwise bending"));
    terms.push_back(stress_term(pulled ? "f_t" : "f_c",
                                pulled    ? stress.axial
                                : pressed ? -stress.axial
                                          : Pressure{},
                                pulled ? "N/(d1 d2)" : "-N/(d1 d2); 0 under a thousandth of F_c*"));
    terms.push_back(stress_term("f_b1", stress.edgewise, "6 M1/(d2 d1^2)"));
    terms.push_back(stress_term("f_b2", stress.flatwise, "6 M2/(d1 d2^2)"));
    add_adjusted(terms, piece, conditions, Property::bending, piece.grade->bending, "F_b", "F_b*");
    add_column(terms, piece, conditions, s);
    add_beam(terms, s);
    if (pulled) {
        add_adjusted(terms, piece, conditions, Property::tension, piece.grade->tension, "F_t", "F_t'");
        const BendingTensionResult sums = bending_tension_3_9_1(bending_tension_of(s, stress));
        terms.push_back(
            term("sum, stretched face", sums.tension_face, "-", "f_t/F_t' + f_b1/F_b* + f_b2/F_b2'", clause_3_9_1));
        terms.push_back(
            term("sum, pressed face", sums.compression_face, "-", "(f_b1 - f_t)/F_b1' + f_b2/F_b2'", clause_3_9_1));
    } else {
        add_compression_sum(terms, s, stress, pressed);
    }
    return terms;
}

Column column_of(const Plan& plan, const Piece& piece, bool workings) {
    const NdsPiece s = nds::strength_of(plan, piece);
    Column column;
    column.clause = clause_3_7_1;
    column.slenderness = s.slenderness_2;
    column.limit = slenderness_limit_3_7_1;
    if (!column.too_slender()) column.capacity = s.column_stability * s.compression * (s.d1 * s.d2);
    if (!workings) return column;
    add_sizes(column.terms, plan, s);
    add_column(column.terms, piece, conditions_of(plan, piece), s);
    column.terms.push_back(term("P'", in_kN(column.capacity), "kN",
                                column.too_slender() ? "none: l_e/d2 over 50" : "F_c' d1 d2", clause_3_7_1));
    return column;
}

Shear shear_of(const Plan& plan, const Piece& piece, Force force, bool workings) {
    const Conditions conditions = conditions_of(plan, piece);
    Shear shear;
    shear.clause = clause_3_4_2;
    shear.stress = shear_stress_3_4_2(force, piece.section.breadth, piece.section.depth);
    shear.strength = adjusted_4_3_1(Property::shear, piece.grade->shear, conditions);
    if (!workings) return shear;
    shear.terms = {
        term("V", in_kN(force), "kN", "resultant of both directions"),
        term("b", in_mm(piece.section.breadth), "mm", "section"),
        term("d", in_mm(piece.section.depth), "mm", "section"),
        stress_term("f_v", shear.stress, "3 V/(2 b d)", clause_3_4_2),
        term("lambda", conditions.time_effect, "-", plan.basis.timber.time_effect_factor->source, clause_N_3)};
    add_adjusted(shear.terms, piece, conditions, Property::shear, piece.grade->shear, "F_v", "F_v'");
    return shear;
}

ContactStrength contact_of(const Plan& plan, const Piece& piece, const Contact& contact, bool workings) {
    const Conditions conditions = conditions_of(plan, piece);
    const Pressure across = adjusted_4_3_1(Property::compression_across, piece.grade->compression_across, conditions);
    const Length to_end = std::min(contact.forward, contact.aft);
    const double factor = bearing_area_factor_3_10_4(contact.length, to_end);
    ContactStrength result;
    result.clause = clause_3_10_4;
    result.capacity = bearing_strength_3_10_2(across, contact.length, contact.breadth, factor);
    if (!workings) return result;
    result.terms = {
        term("l_b", in_mm(contact.length), "mm", "contact along the ridge: depth of the upright, fore and aft"),
        term("b", in_mm(contact.breadth), "mm", "contact across: the narrower of ridge and upright"),
        term("to end", in_mm(to_end), "mm", "from the contact to the nearer end or splice of the ridge")};
    add_adjusted(result.terms, piece, conditions, Property::compression_across, piece.grade->compression_across,
                 "F_c,perp", "F_c,perp'");
    result.terms.push_back(term(
        "C_b", factor, "-", "(l_b + 9.525 mm)/l_b under 152.4 mm and from 76.2 mm off the end, else 1", clause_3_10_4));
    result.terms.push_back(term("P", in_kN(result.capacity), "kN", "F_c,perp' C_b b l_b", clause_3_10_2));
    return result;
}

}  // namespace coverframe::checks_detail::nds
