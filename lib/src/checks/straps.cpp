// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/checks/straps.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "common.hpp"
#include "coverframe/units/crossing.hpp"
#include "shown.hpp"
#include "strap_strength.hpp"

namespace coverframe {
namespace {

using namespace checks_detail;

const Clause clause_film_on_strap{"coverframe", "film on a strap"};

/// A leg of a strap with the film lying on it.
struct Leg {
    double frame = 0;    ///< tension in the frame, 0 if slack [N]
    double initial = 0;  ///< the same, negative if slack [N]
    double load = 0;     ///< W, vertical, of the strip of film over it [N]
    double chord = 0;    ///< length as it is now [m]
    double cosine = 1;   ///< of the slope of its chord
    double sine = 0;
    double under_film = 0;  ///< T, along the chord [N]
    double end = 0;         ///< at the upper end, with the film on it [N]
};

/// Greatest tension along a strap; 0 if it is slack [N].
double greatest_pull(const MemberForces& forces) { return std::max({forces.axial_at(0), forces.axial_at(1), 0.0}); }

// The strip of film that hangs on the strap's ridge end, on the side its other end lies on.
double film_load(const CheckInput& input, const FrameMember& strap) {
    const Frame& frame = input.cover.layout.frame;
    for (std::size_t i = 0; i < input.cover.strips.size(); ++i) {
        const CoverStrip& strip = input.cover.strips[i];
        const int other = strip.node == strap.from ? strap.to : strip.node == strap.to ? strap.from : -1;
        if (other < 0) continue;
        const double y = frame.nodes[at(other)].at[1];
        if (strip.side == Side::port ? y < 0.0 : y > 0.0) return load_of(input.state.strips[i]);
    }
    return 0.0;
}

Leg leg_of(const CheckInput& input, int member) {
    const Frame& frame = input.cover.layout.frame;
    const FrameMember& strap = frame.members[at(member)];
    const std::array<double, 3> a = place_of(frame, input.state.frame, strap.from);
    const std::array<double, 3> b = place_of(frame, input.state.frame, strap.to);
    const double level = std::hypot(b[0] - a[0], b[1] - a[1]);
    Leg leg;
    leg.chord = std::hypot(level, b[2] - a[2]);
    leg.cosine = level / leg.chord;
    leg.sine = std::abs(b[2] - a[2]) / leg.chord;
    leg.initial = strap.axial_stiffness * (leg.chord - strap.free_length) / strap.free_length;
    leg.frame = greatest_pull(input.state.frame.members[at(member)]);
    leg.load = film_load(input, strap);
    leg.under_film = cable_tension(leg.initial, strap.axial_stiffness, leg.load * leg.cosine);
    leg.end = std::hypot(leg.under_film + 0.5 * leg.load * leg.sine, 0.5 * leg.load * leg.cosine);
    return leg;
}

std::string strap_sentence(const CheckInput& input, const std::string& name, const Leg& leg, const Finding& finding) {
    const UnitsShown units = input.plan.units_shown;
    std::string text = name;
    if (leg.frame > 0.0)
        text += " pulls " + shown(from_N(leg.frame), units);
    else
        text += " is slack: it holds nothing";
    if (leg.load > 0.0)
        text +=
            (leg.frame > 0.0 ? ", " : "; it pulls ") + shown(from_N(leg.end), units) + " with the film lying on it,";
    else if (leg.frame <= 0.0)
        return text + "; tighten it.";
    text += " where it may carry " + shown(from_kN(finding.capacity), units);
    return text + (finding.verdict == Verdict::exceeded ? "; use a stronger strap or lay a second one beside it."
                                                        : (leg.frame > 0.0 ? "." : "; tighten it."));
}

Finding leg_finding(const CheckInput& input, const CrossStrapPart& part, int member) {
    const FrameMember& strap = input.cover.layout.frame.members[at(member)];
    const Leg leg = leg_of(input, member);
    const StrapKind& kind = strap_kind(input.plan, part.strap);
    const double demand = std::max(leg.frame, leg.load > 0.0 ? leg.end : 0.0);
    Finding finding = compare("strap.strength", strap.name, strap::clause_strength, input, demand / 1e3,
                              in_kN(strap_strength(kind)), "kN");
    finding.x = middle_x(input.cover.layout.frame, strap);
    finding.sentence = strap_sentence(input, strap.name, leg, finding);
    if (!input.workings) return finding;
    finding.workings = {
        term("T_frame", leg.frame / 1e3, "kN", "tension in the frame"),
        term("EA", strap.axial_stiffness / 1e3, "kN", kind.name + ", bound of this situation"),
        term("T0", leg.initial / 1e3, "kN", "EA (chord - free length)/(free length); negative: slack"),
        term("W", leg.load / 1e3, "kN", "vertical load on the strip of film over it"),
        term("cos", leg.cosine, "-", "of the slope of the strap"),
        term("sin", leg.sine, "-", "of the slope of the strap"),
        term("T", leg.under_film / 1e3, "kN", "root of T^3 - T0 T^2 - EA (W cos)^2/24 = 0", clause_film_on_strap),
        term("T_end", leg.end / 1e3, "kN", "sqrt[(T + W sin/2)^2 + (W cos/2)^2]", clause_film_on_strap)};
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
    const Leg leg{.frame = pull(worst)};
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
    for (const CrossStrapPart& part : layout.cross_straps) {
        for (const int member : part.members) findings.push_back(leg_finding(input, part, member));
    }
    return findings;
}

}  // namespace coverframe
