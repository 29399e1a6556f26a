// SPDX-License-Identifier: BSD-3-Clause
#include "strap_strength.hpp"

#include "common.hpp"
#include "coverframe/base/error.hpp"
#include "coverframe/plan/geometry.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe::checks_detail {

const StrapKind& strap_kind(const Plan& plan, const std::string& name) {
    if (const StrapKind* kind = find_strap_kind(plan, name)) return *kind;
    throw InputError("checks.strap", "/straps", name, "\"" + name + "\" is no strap of the plan");
}

Force strap_strength(const StrapKind& kind) {
    return strap::design_strength({.break_strength = kind.break_strength.value,
                                   .buckle_efficiency = kind.buckle_efficiency.value,
                                   .ageing = kind.ageing.value,
                                   .working_share = kind.working_share.value});
}

void add_strength_terms(std::vector<Term>& terms, const StrapKind& kind) {
    terms.push_back(term("break strength", in_kN(kind.break_strength.value), "kN", kind.break_strength.source));
    terms.push_back(term("buckle efficiency", kind.buckle_efficiency.value, "-", kind.buckle_efficiency.source));
    terms.push_back(term("ageing", kind.ageing.value, "-", kind.ageing.source));
    terms.push_back(term("working share", kind.working_share.value, "-", kind.working_share.source));
    terms.push_back(term("T_d", in_kN(strap_strength(kind)), "kN", "product of the four", strap::clause_strength));
}

}  // namespace coverframe::checks_detail
