// SPDX-License-Identifier: BSD-3-Clause
// Pieces of sawn timber judged by the timber document of the plan. The rules themselves are in resistance/; here it is
// put together what a rule is given: grade, section, lengths, choices of the plan.
//
// Simplifications
//   * Moments come from a second-order analysis; the interaction of NDS 3.9.2 amplifies them once more. Safe side.
//   * Lateral buckling: the whole span is free to turn over between its supports, by the worst row of the tables.
//   * A cantilever is a column of 2.1 (NDS, appendix G) or 2.0 (EN) times its length.
//   * NDS: a push under a thousandth of F_c* A counts as none, so that what is left over by arithmetic does not make a
//     column of a beam.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "coverframe/base/cited.hpp"
#include "coverframe/base/error.hpp"
#include "coverframe/checks/check.hpp"
#include "coverframe/plan/timber.hpp"

namespace coverframe::checks_detail {

struct Piece {
    Section section;                     ///< depth vertical, breadth level
    const TimberGrade* grade = nullptr;  ///< of the timber document of the plan
    Length span{};                       ///< between points of support
    bool cantilever = false;             ///< one end has no support
};

/// Section and grade of a part as the plan has them.
struct Timber {
    Section section;
    std::string grade;
};
/// \pre a pole of the frame
/// \throws InputError "checks.section" if a found member has no section or is not in the plan
[[nodiscard]] Timber timber_of(const Plan& plan, const FrameMember& pole);
[[nodiscard]] Timber timber_of(const UprightPart& upright);

/// Whether a rule refused a size it does not cover, which is for the finding to say, and not a mistake of the input.
[[nodiscard]] bool outside_rule(const InputError& error);

/// The document the plan has its timber judged by, without a clause.
[[nodiscard]] Clause timber_document(const Plan& plan);

/// \throws InputError "checks.grade" for a grade that is not known or belongs to another document
[[nodiscard]] const TimberGrade* grade_of(const Plan& plan, const std::string& name);

/// Forces in one cross-section.
struct PieceForces {
    Force axial{};      ///< pull positive
    Moment vertical{};  ///< bending over the depth, either sign
    Moment level{};     ///< bending over the breadth, either sign
};

/// How a cross-section fares: an interaction sum against 1, or a slenderness against its limit.
struct Judgement {
    Clause clause;
    double demand = 0;
    double capacity = 1;
    bool buckles = false;   ///< past what buckles the piece: there is no sum; `demand` is the share of that limit
    std::string slender{};  ///< not empty where demand is a slenderness: which one, for the sentence
};

/// Whether the first is the worse one.
[[nodiscard]] bool worse(const Judgement& a, const Judgement& b);

/// NDS 2018: everything about a piece that does not depend on the forces.
struct NdsPiece {
    bool depth_is_edge = true;                                      ///< bending over the depth is edgewise
    Length d1{}, d2{};                                              ///< larger and smaller side
    Length effective{};                                             ///< l_e as a column
    Length effective_beam{};                                        ///< l_e as a beam
    double slenderness_1 = 0, slenderness_2 = 0;                    ///< l_e/d1, l_e/d2
    double beam_slenderness = 0;                                    ///< R_B
    double flat_use = 1, beam_stability = 1, column_stability = 1;  ///< C_fu, C_L, C_P; 1 where too slender
    Pressure bending{}, compression{}, tension{}, modulus_low{};    ///< F_b*, F_c*, F_t', E_min'
    Pressure critical_1{}, critical_2{}, critical_beam{};           ///< F_cE1, F_cE2, F_bE; zero where too slender
};

/// EN 1995-1-1: the same.
struct EnPiece {
    bool depth_is_strong = true;                                  ///< bending over the depth is about the strong axis y
    Length h{}, b{};                                              ///< larger and smaller side
    Length effective{};                                           ///< l_ef as a column
    Length effective_beam{};                                      ///< l_ef as a beam
    double depth_factor_y = 1, depth_factor_z = 1;                ///< k_h
    double slenderness_y = 0, slenderness_z = 0;                  ///< lambda_rel
    double slenderness_m = 0, lateral = 1;                        ///< lambda_rel,m, k_crit
    Pressure critical{};                                          ///< sigma_m,crit
    Pressure bending_y{}, bending_z{}, compression{}, tension{};  ///< design strengths
};

using PieceStrength = std::variant<NdsPiece, EnPiece>;

/// \throws InputError from the rules if the section or a choice of the plan is outside their limits
[[nodiscard]] PieceStrength strength_of(const Plan& plan, const Piece& piece);

/// Bending about both axes with push or pull.
[[nodiscard]] Judgement judge(const PieceStrength& strength, const PieceForces& forces);

/// The lines of `judge`.
[[nodiscard]] std::vector<Term> terms_of(const Plan& plan, const Piece& piece, const PieceStrength& strength,
                                         const PieceForces& forces);

/// Push a straight pinned piece can take as a column, in the weaker plane.
struct Column {
    Force capacity{};  ///< zero if too slender
    Clause clause;
    double slenderness = 0;  ///< l_e/d (NDS) or lambda_rel (EN) in the weaker plane
    double limit = 0;        ///< of the slenderness; 0: none
    std::vector<Term> terms;

    [[nodiscard]] bool too_slender() const { return limit > 0 && slenderness > limit; }
};
[[nodiscard]] Column column_of(const Plan& plan, const Piece& piece, bool workings);

/// Shear stress of a rectangular piece under a force in any one direction, and its strength.
struct Shear {
    Pressure stress{};
    Pressure strength{};
    Clause clause;
    std::vector<Term> terms;
};
[[nodiscard]] Shear shear_of(const Plan& plan, const Piece& piece, Force force, bool workings);

/// A contact across the grain of a piece, and what it takes.
struct Contact {
    Length length{};  ///< along the grain
    Length breadth{};
    Length forward{};  ///< timber beyond the contact towards the bow
    Length aft{};      ///< and towards the stern
};
struct ContactStrength {
    Force capacity{};
    Clause clause;
    std::vector<Term> terms;
};
[[nodiscard]] ContactStrength contact_of(const Plan& plan, const Piece& piece, const Contact& contact, bool workings);

// What each document does with it; used through the functions above.
namespace nds {
[[nodiscard]] NdsPiece strength_of(const Plan& plan, const Piece& piece);
[[nodiscard]] Judgement judge(const NdsPiece& strength, const PieceForces& forces);
[[nodiscard]] std::vector<Term> terms_of(const Plan& plan, const Piece& piece, const NdsPiece& strength,
                                         const PieceForces& forces);
[[nodiscard]] Column column_of(const Plan& plan, const Piece& piece, bool workings);
[[nodiscard]] Shear shear_of(const Plan& plan, const Piece& piece, Force force, bool workings);
[[nodiscard]] ContactStrength contact_of(const Plan& plan, const Piece& piece, const Contact& contact, bool workings);
}  // namespace nds

namespace en {
[[nodiscard]] EnPiece strength_of(const Plan& plan, const Piece& piece);
[[nodiscard]] Judgement judge(const EnPiece& strength, const PieceForces& forces);
[[nodiscard]] std::vector<Term> terms_of(const Plan& plan, const Piece& piece, const EnPiece& strength,
                                         const PieceForces& forces);
[[nodiscard]] Column column_of(const Plan& plan, const Piece& piece, bool workings);
[[nodiscard]] Shear shear_of(const Plan& plan, const Piece& piece, Force force, bool workings);
[[nodiscard]] ContactStrength contact_of(const Plan& plan, const Piece& piece, const Contact& contact, bool workings);
}  // namespace en

/// A choice of the plan's basis that this document needs.
/// \throws InputError "checks.choice" if the plan does not have it
template <class Value>
[[nodiscard]] const Cited<Value>& chosen(const std::optional<Cited<Value>>& choice, const char* name) {
    if (!choice) {
        throw InputError("checks.choice", std::string("/basis/timber/") + name, "",
                         std::string("the timber document of the plan needs ") + name + "; give it with its source");
    }
    return *choice;
}

}  // namespace coverframe::checks_detail
