// SPDX-License-Identifier: BSD-3-Clause
// EN 1995-1-1:2004.
#include <algorithm>
#include <cmath>

#include "common.hpp"
#include "coverframe/resistance/en1995_1_1.hpp"
#include "coverframe/units/crossing.hpp"
#include "timber.hpp"

namespace coverframe::checks_detail::en {
namespace {

using namespace coverframe::en1995_1_1;

constexpr double crack_factor = 0.67;   // 6.1.7(2), recommended for solid timber
constexpr double contact_factor = 1.0;  // k_c,90: the conditions of 6.1.5(3) and (4) are not shown to hold
constexpr double cantilever_factor = 2.0;

double k_mod(const Plan& plan) { return chosen(plan.basis.timber.modification_factor, "modification_factor").value; }
double gamma_m(const Plan& plan) { return chosen(plan.basis.timber.material_factor, "material_factor").value; }

Pressure design(const Plan& plan, Pressure characteristic) {
    return design_strength_2_4_1(characteristic, k_mod(plan), gamma_m(plan));
}

struct Stresses {
    Pressure axial{};  ///< pull positive
    Pressure about_y{}, about_z{};
};

Stresses stresses_of(const EnPiece& s, const PieceForces& forces) {
    const double area = in_m2(s.b * s.h);
    const double y = std::abs(in_N_m(s.depth_is_strong ? forces.vertical : forces.level));
    const double z = std::abs(in_N_m(s.depth_is_strong ? forces.level : forces.vertical));
    return {from_Pa(in_N(forces.axial) / area), from_Pa(6.0 * y / (area * in_m(s.h))),
            from_Pa(6.0 * z / (area * in_m(s.b)))};
}

BendingCompressionResult compression_sums(const EnPiece& s, const Stresses& stress) {
    return bending_compression_6_3_2({.compression = std::max(-stress.axial, Pressure{}),
                                      .bending_y = stress.about_y,
                                      .bending_z = stress.about_z,
                                      .compression_strength = s.compression,
                                      .bending_y_strength = s.bending_y,
                                      .bending_z_strength = s.bending_z,
                                      .slenderness_y = s.slenderness_y,
                                      .slenderness_z = s.slenderness_z});
}

BendingTensionResult tension_sums(const EnPiece& s, const Stresses& stress) {
    return bending_tension_6_2_3({.tension = stress.axial,
                                  .bending_y = stress.about_y,
                                  .bending_z = stress.about_z,
                                  .tension_strength = s.tension,
                                  .bending_y_strength = s.bending_y,
                                  .bending_z_strength = s.bending_z});
}

double lateral_sum(const EnPiece& s, const Stresses& stress, double instability_z) {
    return lateral_buckling_6_3_3({.bending = stress.about_y,
                                   .compression = std::max(-stress.axial, Pressure{}),
                                   .bending_strength = s.bending_y,
                                   .compression_strength = s.compression,
                                   .lateral_factor = s.lateral,
                                   .instability_factor_z = instability_z});
}

Term stress_term(std::string symbol, Pressure value, std::string formula, Clause clause = {}) {
    return term(std::move(symbol), in_N_per_mm2(value), "N/mm2", std::move(formula), std::move(clause));
}

void add_sizes(std::vector<Term>& terms, const Plan& plan, const EnPiece& s) {
    terms.push_back(term("h", in_mm(s.h), "mm", "larger side of the section"));
    terms.push_back(term("b", in_mm(s.b), "mm", "smaller side of the section"));
    terms.push_back(term("k_mod", k_mod(plan), "-", plan.basis.timber.modification_factor->source, clause_3_1_3));
    terms.push_back(term("gamma_M", gamma_m(plan), "-", plan.basis.timber.material_factor->source, clause_2_4_1));
}

// "f_c,0": characteristic and design value.
void add_strength(std::vector<Term>& terms, const Piece& piece, const std::string& name, Pressure characteristic,
                  Pressure design_value, const std::string& factor) {
    terms.push_back(stress_term(name + ",k", characteristic,
                                std::string(piece.grade->name) + "; " + std::string(piece.grade->source)));
    terms.push_back(stress_term(name + ",d", design_value, "k_mod " + factor + name + ",k/gamma_M", clause_2_4_1));
}

void add_column(std::vector<Term>& terms, const Piece& piece, const EnPiece& s) {
    terms.push_back(term("l_ef", in_m(s.effective), "m",
                         piece.cantilever ? "2.0 times the overhang" : "1.0 times the length", clause_6_3_2));
    add_strength(terms, piece, "f_c,0", piece.grade->compression, s.compression, "");
    terms.push_back(stress_term("E_0,05", piece.grade->modulus_low, std::string(piece.grade->name)));
    terms.push_back(
        term("lambda_rel,y", s.slenderness_y, "-", "(l_ef sqrt(12)/h)/pi sqrt(f_c,0,k/E_0,05)", clause_6_3_2));
    terms.push_back(
        term("lambda_rel,z", s.slenderness_z, "-", "(l_ef sqrt(12)/b)/pi sqrt(f_c,0,k/E_0,05)", clause_6_3_2));
    const char* formula = "1/(k + sqrt(k^2 - lambda_rel^2)), k = 0.5 [1 + 0.2 (lambda_rel - 0.3) + lambda_rel^2]";
    terms.push_back(term("k_c,y", instability_factor_6_3_2(s.slenderness_y), "-", formula, clause_6_3_2));
    terms.push_back(term("k_c,z", instability_factor_6_3_2(s.slenderness_z), "-", formula, clause_6_3_2));
}

void add_beam(std::vector<Term>& terms, const EnPiece& s) {
    terms.push_back(
        term("l_ef (beam)", in_m(s.effective_beam), "m", "span + 2 h, constant moment, loaded on top", clause_6_3_3));
    terms.push_back(stress_term("sigma_m,crit", s.critical, "0.78 b^2 E_0,05/(h l_ef)", clause_6_3_3));
    terms.push_back(term("lambda_rel,m", s.slenderness_m, "-", "sqrt(f_m,k/sigma_m,crit)", clause_6_3_3));
    terms.push_back(term("k_crit", s.lateral, "-", "1; from 0.75: 1.56 - 0.75 lambda_rel,m; from 1.4: 1/lambda_rel,m^2",
                         clause_6_3_3));
}

void add_sums(std::vector<Term>& terms, const EnPiece& s, const Stresses& stress) {
    if (stress.axial > Pressure{}) {
        const BendingTensionResult sums = tension_sums(s, stress);
        terms.push_back(term("sum, Eq. 6.17", sums.about_y, "-",
                             "sigma_t/f_t,0,d + sigma_m,y/f_m,y,d + 0.7 sigma_m,z/f_m,z,d", clause_6_2_3));
        terms.push_back(term("sum, Eq. 6.18", sums.about_z, "-",
                             "sigma_t/f_t,0,d + 0.7 sigma_m,y/f_m,y,d + sigma_m,z/f_m,z,d", clause_6_2_3));
        terms.push_back(
            term("sum, Eq. 6.33", lateral_sum(s, stress, 1.0), "-", "sigma_m,y/(k_crit f_m,y,d)", clause_6_3_3));
        return;
    }
    const BendingCompressionResult sums = compression_sums(s, stress);
    const std::string push_y = sums.stocky ? "(sigma_c/f_c,0,d)^2" : "sigma_c/(k_c,y f_c,0,d)";
    const std::string push_z = sums.stocky ? "(sigma_c/f_c,0,d)^2" : "sigma_c/(k_c,z f_c,0,d)";
    terms.push_back(term(sums.stocky ? "sum, Eq. 6.19" : "sum, Eq. 6.23", sums.about_y, "-",
                         push_y + " + sigma_m,y/f_m,y,d + 0.7 sigma_m,z/f_m,z,d", clause_6_3_2));
    terms.push_back(term(sums.stocky ? "sum, Eq. 6.20" : "sum, Eq. 6.24", sums.about_z, "-",
                         push_z + " + 0.7 sigma_m,y/f_m,y,d + sigma_m,z/f_m,z,d", clause_6_3_2));
    terms.push_back(term("sum, Eq. 6.33 or 6.35", lateral_sum(s, stress, sums.factor_z), "-",
                         "larger of r and r^2 + sigma_c/(k_c,z f_c,0,d), r = sigma_m,y/(k_crit f_m,y,d)",
                         clause_6_3_3));
}

}  // namespace

EnPiece strength_of(const Plan& plan, const Piece& piece) {
    const TimberGrade& grade = *piece.grade;
    EnPiece s;
    s.depth_is_strong = piece.section.depth >= piece.section.breadth;
    s.h = std::max(piece.section.depth, piece.section.breadth);
    s.b = std::min(piece.section.depth, piece.section.breadth);
    s.depth_factor_y = depth_factor_3_2(s.h);
    s.depth_factor_z = depth_factor_3_2(s.b);
    s.bending_y = s.depth_factor_y * design(plan, grade.bending);
    s.bending_z = s.depth_factor_z * design(plan, grade.bending);
    s.tension = s.depth_factor_y * design(plan, grade.tension);
    s.compression = design(plan, grade.compression);
    s.effective = (piece.cantilever ? cantilever_factor : 1.0) * piece.span;
    s.slenderness_y = relative_slenderness_6_3_2(s.effective, s.h, grade.compression, grade.modulus_low);
    s.slenderness_z = relative_slenderness_6_3_2(s.effective, s.b, grade.compression, grade.modulus_low);
    s.effective_beam = effective_length_6_3_3(SpanLoad::constant_moment, piece.span, s.h, LoadedEdge::compression);
    s.critical = critical_bending_6_3_3(s.b, s.h, s.effective_beam, grade.modulus_low);
    s.slenderness_m = relative_slenderness_6_3_3(grade.bending, s.critical);
    s.lateral = lateral_factor_6_3_3(s.slenderness_m);
    return s;
}

Judgement judge(const EnPiece& s, const PieceForces& forces) {
    const Stresses stress = stresses_of(s, forces);
    double sum = 0.0;
    double lateral = 0.0;
    const bool pulled = stress.axial > Pressure{};
    if (pulled) {
        const BendingTensionResult sums = tension_sums(s, stress);
        sum = std::max(sums.about_y, sums.about_z);
        lateral = lateral_sum(s, stress, 1.0);
    } else {
        const BendingCompressionResult sums = compression_sums(s, stress);
        sum = std::max(sums.about_y, sums.about_z);
        lateral = lateral_sum(s, stress, sums.factor_z);
    }
    if (lateral > sum) return {clause_6_3_3, lateral};
    return {pulled ? clause_6_2_3 : clause_6_3_2, sum};
}

std::vector<Term> terms_of(const Plan& plan, const Piece& piece, const EnPiece& s, const PieceForces& forces) {
    const Stresses stress = stresses_of(s, forces);
    const bool pulled = stress.axial > Pressure{};
    std::vector<Term> terms;
    add_sizes(terms, plan, s);
    terms.push_back(term("N", in_kN(forces.axial), "kN", "axial force, pull positive"));
    terms.push_back(
        term("M_y", in_N_m(s.depth_is_strong ? forces.vertical : forces.level), "N m", "about the strong axis"));
    terms.push_back(
        term("M_z", in_N_m(s.depth_is_strong ? forces.level : forces.vertical), "N m", "about the weak axis"));
    terms.push_back(stress_term(pulled ? "sigma_t" : "sigma_c", pulled ? stress.axial : -stress.axial,
                                pulled ? "N/(b h)" : "-N/(b h)"));
    terms.push_back(stress_term("sigma_m,y", stress.about_y, "6 M_y/(b h^2)"));
    terms.push_back(stress_term("sigma_m,z", stress.about_z, "6 M_z/(h b^2)"));
    terms.push_back(term("k_h,y", s.depth_factor_y, "-", "min{(150 mm/h)^0.2, 1.3}", clause_3_2));
    terms.push_back(term("k_h,z", s.depth_factor_z, "-", "min{(150 mm/b)^0.2, 1.3}", clause_3_2));
    add_strength(terms, piece, "f_m,y", piece.grade->bending, s.bending_y, "k_h,y ");
    add_strength(terms, piece, "f_m,z", piece.grade->bending, s.bending_z, "k_h,z ");
    if (pulled) add_strength(terms, piece, "f_t,0", piece.grade->tension, s.tension, "k_h,y ");
    add_column(terms, piece, s);
    add_beam(terms, s);
    add_sums(terms, s, stress);
    return terms;
}

Column column_of(const Plan& plan, const Piece& piece, bool workings) {
    const EnPiece s = en::strength_of(plan, piece);
    const double k_c = instability_factor_6_3_2(s.slenderness_z);
    Column column;
    column.clause = clause_6_3_2;
    column.slenderness = s.slenderness_z;
    column.capacity = k_c * s.compression * (s.b * s.h);
    if (!workings) return column;
    add_sizes(column.terms, plan, s);
    add_column(column.terms, piece, s);
    column.terms.push_back(term("N_d", in_kN(column.capacity), "kN", "k_c,z f_c,0,d b h", clause_6_3_2));
    return column;
}

Shear shear_of(const Plan& plan, const Piece& piece, Force force, bool workings) {
    Shear shear;
    shear.clause = clause_6_1_7;
    shear.stress = shear_stress_6_1_7(force, piece.section.breadth, piece.section.depth, crack_factor);
    shear.strength = design(plan, piece.grade->shear);
    if (!workings) return shear;
    shear.terms = {term("V", in_kN(force), "kN", "resultant of both directions"),
                   term("b", in_mm(piece.section.breadth), "mm", "section"),
                   term("h", in_mm(piece.section.depth), "mm", "section"),
                   term("k_cr", crack_factor, "-", "recommended for solid timber", clause_6_1_7),
                   stress_term("tau_d", shear.stress, "3 V/(2 k_cr b h)", clause_6_1_7),
                   term("k_mod", k_mod(plan), "-", plan.basis.timber.modification_factor->source, clause_3_1_3),
                   term("gamma_M", gamma_m(plan), "-", plan.basis.timber.material_factor->source, clause_2_4_1)};
    add_strength(shear.terms, piece, "f_v", piece.grade->shear, shear.strength, "");
    return shear;
}

ContactStrength contact_of(const Plan& plan, const Piece& piece, const Contact& contact, bool workings) {
    const Pressure across = design(plan, piece.grade->compression_across);
    const Length effective = effective_contact_6_1_5(contact.length, contact.forward, contact.aft);
    ContactStrength result;
    result.clause = clause_6_1_5;
    result.capacity = compression_across_6_1_5(across, contact.breadth, effective, contact_factor);
    if (!workings) return result;
    result.terms = {
        term("l", in_mm(contact.length), "mm", "contact along the ridge: depth of the upright, fore and aft"),
        term("b", in_mm(contact.breadth), "mm", "contact across: the narrower of ridge and upright"),
        term("beyond, forward", in_mm(contact.forward), "mm", "timber from the contact to an end or splice"),
        term("beyond, aft", in_mm(contact.aft), "mm", "timber from the contact to an end or splice"),
        term("l_ef", in_mm(effective), "mm", "l + min(30 mm, l, beyond) on each side", clause_6_1_5),
        term("k_c,90", contact_factor, "-", "taken as 1", clause_6_1_5),
        term("k_mod", k_mod(plan), "-", plan.basis.timber.modification_factor->source, clause_3_1_3),
        term("gamma_M", gamma_m(plan), "-", plan.basis.timber.material_factor->source, clause_2_4_1)};
    add_strength(result.terms, piece, "f_c,90", piece.grade->compression_across, across, "");
    result.terms.push_back(term("F_90,d", in_kN(result.capacity), "kN", "k_c,90 f_c,90,d b l_ef", clause_6_1_5));
    return result;
}

}  // namespace coverframe::checks_detail::en
