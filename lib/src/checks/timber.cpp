// SPDX-License-Identifier: BSD-3-Clause
#include "timber.hpp"

#include <algorithm>

namespace coverframe::checks_detail {
namespace {

[[noreturn]] void refuse_section(const std::string& name) {
    throw InputError("checks.section", "/support", name, "\"" + name + "\" has no section in the plan; give one");
}

Timber timber_of(const FoundMember& found) {
    if (!found.section) refuse_section(found.name);
    return {*found.section, found.grade};
}

bool by_nds(const Plan& plan) { return plan.basis.timber.document == TimberDocument::nds2018; }

}  // namespace

Timber timber_of(const Plan& plan, const FrameMember& pole) {
    if (const auto* support = std::get_if<RidgeSupport>(&plan.support.structure)) {
        if (const auto* ridge = std::get_if<PoleRidge>(&support->ridge.member)) return {ridge->section, ridge->grade};
        refuse_section(pole.name);
    }
    const auto& members = std::get<FoundFrame>(plan.support.structure).members;
    const auto found = std::ranges::find(members, pole.name, &FoundMember::name);
    if (found == members.end()) refuse_section(pole.name);
    return timber_of(*found);
}

Timber timber_of(const UprightPart& upright) {
    if (upright.drawn != nullptr) return {upright.drawn->section, upright.drawn->grade};
    if (upright.found == nullptr) refuse_section(upright.name);
    return timber_of(*upright.found);
}

bool outside_rule(const InputError& error) {
    const std::string& code = error.code();
    return code == "nds2018.thickness.range" || code == "nds2018.width.range" || code == "nds2018.bearing_length.range";
}

Clause timber_document(const Plan& plan) { return {name_of(plan.basis.timber.document), ""}; }

const TimberGrade* grade_of(const Plan& plan, const std::string& name) {
    const TimberGrade* grade = find_timber_grade(name);
    if (grade == nullptr || grade->document != plan.basis.timber.document) {
        throw InputError("checks.grade", "", name,
                         "\"" + name + "\" is no timber grade of " + name_of(plan.basis.timber.document));
    }
    return grade;
}

bool worse(const Judgement& a, const Judgement& b) {
    if (a.buckles != b.buckles) return a.buckles;
    return a.demand / a.capacity > b.demand / b.capacity;
}

PieceStrength strength_of(const Plan& plan, const Piece& piece) {
    if (by_nds(plan)) return nds::strength_of(plan, piece);
    return en::strength_of(plan, piece);
}

Judgement judge(const PieceStrength& strength, const PieceForces& forces) {
    if (const auto* nds = std::get_if<NdsPiece>(&strength)) return nds::judge(*nds, forces);
    return en::judge(std::get<EnPiece>(strength), forces);
}

std::vector<Term> terms_of(const Plan& plan, const Piece& piece, const PieceStrength& strength,
                           const PieceForces& forces) {
    if (const auto* nds = std::get_if<NdsPiece>(&strength)) return nds::terms_of(plan, piece, *nds, forces);
    return en::terms_of(plan, piece, std::get<EnPiece>(strength), forces);
}

Column column_of(const Plan& plan, const Piece& piece, bool workings) {
    return by_nds(plan) ? nds::column_of(plan, piece, workings) : en::column_of(plan, piece, workings);
}

Shear shear_of(const Plan& plan, const Piece& piece, Force force, bool workings) {
    return by_nds(plan) ? nds::shear_of(plan, piece, force, workings) : en::shear_of(plan, piece, force, workings);
}

ContactStrength contact_of(const Plan& plan, const Piece& piece, const Contact& contact, bool workings) {
    return by_nds(plan) ? nds::contact_of(plan, piece, contact, workings)
                        : en::contact_of(plan, piece, contact, workings);
}

}  // namespace coverframe::checks_detail
