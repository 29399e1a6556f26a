// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/checks/straps.hpp"

#include <algorithm>

#include "common.hpp"
#include "coverframe/base/error.hpp"
#include "coverframe/units/crossing.hpp"
#include "shown.hpp"
#include "strap_strength.hpp"

namespace coverframe {
namespace {

using namespace checks_detail;

const Clause clause_film_on_strap{"coverframe", "film on a strap"};

/// Greatest tension along a strap; 0 if it is slack [N].
double greatest_pull(const MemberForces& forces) { return std::max({forces.axial_at(0), forces.axial_at(1), 0.0}); }

/// Pulls of a strap [N].
struct Pulls {
    double frame = 0;  ///< without film on it, 0 if slack
    double end = 0;    ///< with film on it
    double load = 0;   ///< of that film
};

std::string strap_sentence(const CheckInput& input, const std::string& name, const Pulls& pulls,
                           const Finding& finding) {
    const UnitsShown units = input.plan.units_shown;
    const bool holds = pulls.frame > 0.0;
    std::string text = name + (holds ? " pulls " + shown(from_N(pulls.frame), units) : " is slack");
    if (pulls.load > 0.0)
        text += (holds ? " by itself and " : " until the film lies on it, and then pulls ") +
                shown(from_N(pulls.end), units) + (holds ? " with the film lying on it," : ",");
    else if (!holds)
        return text + ": it holds nothing; tighten it.";
    text += " where it may carry " + shown(from_kN(finding.capacity), units);
    return text + (finding.verdict == Verdict::exceeded ? "; use a stronger strap or lay a second one beside it."
                                                        : (holds ? "." : "; tighten it."));
}

void add_side_terms(const std::string& side, const FilmBeside& film, const FilmLift& lift, std::vector<Term>& terms) {
    if (film.bay == 0.0) return;
    const auto named = [&](const char* symbol) { return std::string(symbol) + ", " + side; };
    terms.push_back(term(named("a"), film.bay, "m", "to the next support along the boat"));
    terms.push_back(term(named("p"), film.load, "Pa", "load on the film of this half of the bay, square to its chord"));
    terms.push_back(term(named("e"), film.strain, "-", "strain of the film's chord since it was shrunk"));
    terms.push_back(term(named("k"), film.falls, "-", "how the film's chord falls away from the leg's"));
    terms.push_back(term(named("c"), film.curves, "1/m", "growth of k along the boat"));
    terms.push_back(term(named("T_x"), lift.along, "N/m",
                         "pull of the film along the boat: T_0 + E t/(1 - nu^2) [nu (e + 8/3 (f_m/l)^2) + 16/21 (2/a) "
                         "integral of f'/2 df from f_s to f_m], f' = sqrt[5/2 (G(f_m) - G(f))/T_x]",
                         clause_film_on_strap));
    terms.push_back(term(named("f_m"), lift.free_sag, "m",
                         "root of p + T_x c = 8 f/l^2 [T_0 + nu (T_x - T_0) + E t (e + 8/3 (f/l)^2)]",
                         clause_film_on_strap));
    terms.push_back(term(named("r"), lift.brings, "N/m",
                         "min{sqrt[8/5 T_x (G(f_m) - G(f_s))], (p + T_x c) a/2} + T_x k, with G(f) = (p + T_x c) f - 4 "
                         "[T_0 + nu (T_x - T_0) + E t e] (f/l)^2 - 16/3 E t (f/l)^4",
                         clause_film_on_strap));
}

std::vector<Term> leg_terms(const LegUnderFilm& leg, double frame, double free_length, const std::string& strap) {
    const StrapUnderFilm& carries = leg.carries;
    std::vector<Term> terms{
        term("T_frame", frame / 1e3, "kN", "tension in the frame without film on it"),
        term("EA", carries.stiffness / 1e3, "kN", strap + ", bound of this situation"),
        term("l", carries.chord, "m", "chord of the leg, with film on it"),
        term("l_0", free_length, "m", "free length of the leg"),
        term("T_s0", carries.initial / 1e3, "kN", "EA (l - l_0)/l_0, without film on it; negative: slack"),
        term("T_0", carries.shrunk, "N/m", "tension the film was shrunk to"),
        term("E t", carries.film_stiffness, "N/m", "stiffness of the film, of that tension"),
        term("nu", carries.poisson, "-", "of the film")};
    add_side_terms("fore", carries.beside[0], leg.film.beside[0], terms);
    add_side_terms("aft", carries.beside[1], leg.film.beside[1], terms);
    terms.push_back(term("r", leg.film.load, "N/m", "what the film of both sides brings, not under zero"));
    terms.push_back(
        term("f_s", leg.film.sag, "m", "root of r = 8 f_s/l^2 [T_s0 + 8/3 EA (f_s/l)^2]", clause_film_on_strap));
    terms.push_back(term("T", leg.film.tension / 1e3, "kN", "T_s0 + 8/3 EA (f_s/l)^2", clause_film_on_strap));
    terms.push_back(term("cos", leg.cosine, "-", "of the slope of the leg"));
    terms.push_back(term("W", leg.load / 1e3, "kN", "r l/cos", clause_film_on_strap));
    terms.push_back(term("T_end", leg.end / 1e3, "kN", "sqrt[(T + W sin/2)^2 + (W cos/2)^2]", clause_film_on_strap));
    return terms;
}

Finding leg_finding(const CheckInput& input, const CrossStrapPart& part, int member, const LegUnderFilm* leg) {
    const FrameMember& strap = input.cover.layout.frame.members[at(member)];
    const StrapKind& kind = strap_kind(input.plan, part.strap);
    Pulls pulls{greatest_pull(input.state.frame.members[at(member)])};
    if (leg != nullptr) {
        pulls.end = leg->end;
        pulls.load = leg->load;
    }
    const double demand = std::max(pulls.frame, pulls.end);
    Finding finding = compare("strap.strength", strap.name, strap::clause_strength, input, demand / 1e3,
                              in_kN(strap_strength(kind)), "kN");
    finding.x = middle_x(input.cover.layout.frame, strap);
    finding.sentence = strap_sentence(input, strap.name, pulls, finding);
    if (leg == nullptr) {
        finding.verdict = Verdict::exceeded;
        finding.utilisation.reset();
        finding.sentence = strap.name +
                           " cannot be judged: with the film lying on the cross straps the cover finds no " +
                           "equilibrium (" + input.state.no_legs + ").";
    }
    if (!input.workings) return finding;
    if (leg != nullptr)
        finding.workings = leg_terms(*leg, pulls.frame, strap.free_length, kind.name);
    else
        finding.workings = {term("T_frame", pulls.frame / 1e3, "kN", "tension in the frame without film on it")};
    add_strength_terms(finding.workings, kind);
    return finding;
}

/// The strap kind of a ridge member.
const StrapKind& ridge_strap_kind(const Plan& plan, const FrameMember& member) {
    if (const auto* support = std::get_if<RidgeSupport>(&plan.support.structure)) {
        if (const auto* ridge = std::get_if<StrapRidge>(&support->ridge.member)) return strap_kind(plan, ridge->strap);
        return strap_kind(plan, "");
    }
    const auto& members = std::get<FoundFrame>(plan.support.structure).members;
    const auto found = std::ranges::find(members, member.name, &FoundMember::name);
    return strap_kind(plan, found == members.end() ? std::string{} : found->strap);
}

Finding ridge_finding(const CheckInput& input, const RidgeBay& bay) {
    const Frame& frame = input.cover.layout.frame;
    const auto pull = [&](int m) { return greatest_pull(input.state.frame.members[at(m)]); };
    const int worst = *std::ranges::max_element(bay.members, {}, pull);
    const StrapKind& kind = ridge_strap_kind(input.plan, frame.members[at(worst)]);
    const std::string part = bay_part("ridge", bay);
    Finding finding = compare("ridge.strap", part, strap::clause_strength, input, pull(worst) / 1e3,
                              in_kN(strap_strength(kind)), "kN");
    finding.x = middle_x(frame, frame.members[at(worst)]);
    const Pulls leg{.frame = pull(worst)};
    finding.sentence = strap_sentence(input, opening(part), leg, finding);
    if (!input.workings) return finding;
    finding.workings = {term("T", pull(worst) / 1e3, "kN", "largest tension in the bay")};
    add_strength_terms(finding.workings, kind);
    return finding;
}

}  // namespace

std::vector<Finding> check_straps(const CheckInput& input) {
    require_usable(input);
    const Layout& layout = input.cover.layout;
    std::vector<Finding> findings;
    for (const RidgeBay& bay : layout.bays) {
        if (layout.frame.members[at(bay.members.front())].kind == MemberKind::strap)
            findings.push_back(ridge_finding(input, bay));
    }
    std::size_t legs = 0;
    for (const CrossStrapPart& part : layout.cross_straps) legs += part.members.size();
    const CoverState& state = input.state;
    if (state.legs.size() != legs && state.no_legs.empty())
        throw StateError("checks.state.unusable",
                         "in situation \"" + input.situation + "\" nobody looked at film lying on the cross straps");
    std::size_t k = 0;
    for (const CrossStrapPart& part : layout.cross_straps) {
        for (const int member : part.members) {
            findings.push_back(leg_finding(input, part, member, state.no_legs.empty() ? &state.legs[k] : nullptr));
            ++k;
        }
    }
    return findings;
}

}  // namespace coverframe
