// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/checks/uprights.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "common.hpp"
#include "coverframe/plan/geometry.hpp"
#include "coverframe/resistance/bearing.hpp"
#include "coverframe/units/crossing.hpp"
#include "shown.hpp"
#include "timber.hpp"

namespace coverframe {
namespace {

using namespace checks_detail;

const Clause clause_hold{"coverframe", "held strut"};

/// What the three checks of an upright share.
struct Pushed {
    const UprightPart& part;
    Force push{};     ///< zero if lifted
    Length length{};  ///< as drawn
    double x = 0;     ///< of its top [m]

    [[nodiscard]] bool lifted() const { return !(push > Force{}); }
};

Pushed pushed(const CheckInput& input, const UprightPart& part) {
    const Frame& frame = input.cover.layout.frame;
    const MemberForces& along = input.state.frame.members[at(part.member)];
    const double push = -std::min(along.axial_at(0), along.axial_at(1));
    return {part, from_N(push > 0.0 ? push : 0.0), from_m(drawn_length(frame, frame.members[at(part.member)])),
            frame.nodes[at(part.top)].at[0]};
}

std::string pushes(const CheckInput& input, const Pushed& upright) {
    return upright.part.name + " pushes " + shown(upright.push, input.plan.units_shown);
}

/// What the soft foot of an upright does; nothing if it has none.
const FootForces* soft_foot(const CheckInput& input, const UprightPart& part) {
    const std::vector<coverframe::Foot>& feet = input.cover.layout.frame.feet;
    for (std::size_t f = 0; f < feet.size(); ++f) {
        if (feet[f].node == part.foot) return &input.state.frame.feet[f];
    }
    return nullptr;
}

/// How far a soft foot has settled, and whether it slides, as sentences after another.
std::string settled_text(const CheckInput& input, const UprightPart& part) {
    const FootForces* foot = soft_foot(input, part);
    if (foot == nullptr || !foot->carries) return "";
    const UnitsShown units = input.plan.units_shown;
    const double down = -input.state.frame.displacement[6 * at(part.foot) + 2];
    std::string text = " The foot settles by " + shown(from_m(down), units) + ".";
    if (foot->slips()) text += " It slides by " + shown(from_m(foot->slip), units) + "; fix it level.";
    return text;
}

// An upright that has lifted off asks for nothing, whatever there is to give.
void say_lifted(Finding& finding, const Pushed& upright) {
    if (!upright.lifted()) return;
    finding.verdict = Verdict::satisfied;
    finding.utilisation = 0.0;
    finding.sentence = upright.part.name + " has lifted off and carries nothing; see that it cannot fall.";
}

void lead_workings(const CheckInput& input, const Pushed& upright, Finding& finding) {
    if (input.workings)
        finding.workings.insert(finding.workings.begin(), term("N", in_kN(upright.push), "kN", "push of the upright"));
}

Finding column_finding(const CheckInput& input, const Pushed& upright) {
    const UnitsShown units = input.plan.units_shown;
    const Timber timber = timber_of(upright.part);
    Column column =
        column_of(input.plan, {timber.section, grade_of(input.plan, timber.grade), upright.length}, input.workings);
    Finding finding = compare("upright.column", upright.part.name, column.clause, input, in_kN(upright.push),
                              in_kN(column.capacity), "kN");
    finding.x = upright.x;
    const std::string mend = "; use a thicker upright, or brace it both ways at mid height.";
    finding.sentence =
        column.too_slender()
            ? upright.part.name + " is too slender for a column (length over thickness is " +
                  number_text(column.slenderness) + " where " + number_text(column.limit) + " is the most)" + mend
            : pushes(input, upright) + " and takes " + shown(column.capacity, units) + " as a column " +
                  shown(upright.length, units) + " long" + (finding.verdict == Verdict::exceeded ? mend : ".");
    finding.workings = std::move(column.terms);
    lead_workings(input, upright, finding);
    say_lifted(finding, upright);
    return finding;
}

/// \param hold  at its top
/// \param foot  at its foot, where the foot is not held level: both ends move, their springs act one behind the other
Finding hold_finding(const CheckInput& input, const Pushed& upright, const LateralHold& hold,
                     const std::optional<LateralHold>& foot) {
    const UnitsShown units = input.plan.units_shown;
    const FrameNode& top = input.cover.layout.frame.nodes[at(upright.part.top)];
    if (top.held[0] && top.held[1])
        return not_applicable("upright.hold", upright.part.name, clause_hold, input,
                              "The top of " + upright.part.name + " is held by the boat itself: it cannot go over.");
    const bool both = hold.stiffness > 0.0 && (!foot || foot->stiffness > 0.0);
    const double stiffness = !both ? 0.0 : foot ? 1.0 / (1.0 / hold.stiffness + 1.0 / foot->stiffness) : hold.stiffness;
    const double capacity = stiffness * in_m(upright.length);
    Finding finding =
        compare("upright.hold", upright.part.name, clause_hold, input, in_kN(upright.push), capacity / 1e3, "kN");
    finding.x = upright.x;
    const bool held = capacity > 0.0;
    const std::string way = std::abs(hold.direction[0]) > std::abs(hold.direction[1]) ? "fore and aft" : "athwart";
    const std::string mend = way == "athwart" ? "; fit or tighten straps from its top to both rails."
                                              : "; fit straps fore and aft from its top.";
    finding.sentence = pushes(input, upright) +
                       (held ? " and stands, as its top is held, up to " + shown(from_N(capacity), units)
                             : " and nothing holds its top") +
                       (finding.verdict == Verdict::exceeded ? ": it goes over " + way + mend
                                                             : "; beyond that it would go over " + way + ".");
    if (input.workings)
        finding.workings = {
            term("N", in_kN(upright.push), "kN", "push of the upright"),
            term("k", stiffness, "N/m",
                 (foot ? "least sideways stiffness at its top and foot, one behind the other, without it, "
                       : "least sideways stiffness at its top without it, ") +
                     way),
            term("h", in_m(upright.length), "m", "length of the upright"),
            term("N_cr", capacity / 1e3, "kN", "k h", clause_hold)};
    say_lifted(finding, upright);
    return finding;
}

/// Pad and stand of an upright, as far as the plan has them.
struct Foot {
    const Stand* stand = nullptr;
    std::optional<FootPad> pad;
};

Foot foot_of(const Plan& plan, const UprightPart& part) {
    if (part.drawn != nullptr) return {find_stand(plan.boat, part.drawn->stands_on), part.drawn->pad};
    return {find_stand(plan.boat, part.found->stands_on), part.found->pad};
}

std::vector<Term> foot_terms(const bearing::Foot& foot, const Stand& stand, const Pushed& upright, Pressure pressure) {
    const Clause clause = bearing::clause_foot_pad;
    return {term("N", in_kN(upright.push), "kN", "push of the upright"),
            term("post, fore and aft", in_mm(foot.post_length), "mm", "depth of the upright"),
            term("post, athwart", in_mm(foot.post_breadth), "mm", "breadth of the upright"),
            term("pad, fore and aft", in_mm(foot.pad_length), "mm", "as drawn"),
            term("pad, athwart", in_mm(foot.pad_breadth), "mm", "as drawn"),
            term("t", in_mm(foot.pad_thickness), "mm", "thickness of the pad"),
            term("A", in_mm2(bearing::foot_area(foot)), "mm2",
                 "min(post + 2 t, pad) fore and aft times the same athwart", clause),
            term("p", in_kPa(pressure), "kPa", "N/A", clause),
            term("p, allowed", in_kPa(stand.bearing.value), "kPa", stand.bearing.source)};
}

Finding foot_finding(const CheckInput& input, const Pushed& upright) {
    const UnitsShown units = input.plan.units_shown;
    const Timber timber = timber_of(upright.part);
    const Foot foot = foot_of(input.plan, upright.part);
    if (foot.stand == nullptr)
        return not_applicable("upright.foot", upright.part.name, bearing::clause_foot_pad, input,
                              "The foot of " + upright.part.name +
                                  " is not judged: the plan does not say which part of the boat it stands on.");
    const Section& section = timber.section;
    const FootPad pad = foot.pad.value_or(FootPad{section.depth, section.breadth, Length{}});
    const bearing::Foot on{section.depth, section.breadth, pad.length, pad.breadth, pad.thickness};
    const Pressure pressure = bearing::foot_pressure(upright.push, on);
    Finding finding = compare("upright.foot", upright.part.name, bearing::clause_foot_pad, input, in_kPa(pressure),
                              in_kPa(foot.stand->bearing.value), "kPa");
    finding.x = input.cover.layout.frame.nodes[at(upright.part.foot)].at[0];
    finding.sentence =
        pushes(input, upright) + (foot.pad ? " on its foot pad: " : " on its bare foot: ") +
        shown_area_load(pressure, units) + " on the " + foot.stand->name + ", where " +
        shown_area_load(foot.stand->bearing.value, units) + " is the most" +
        (finding.verdict == Verdict::exceeded ? "; use a thicker and larger pad, or set it over a bulkhead." : ".");
    finding.sentence += settled_text(input, upright.part);
    if (input.workings) finding.workings = foot_terms(on, *foot.stand, upright, pressure);
    say_lifted(finding, upright);
    return finding;
}

}  // namespace

std::vector<Finding> check_uprights(const CheckInput& input) {
    require_usable(input);
    std::vector<Finding> findings;
    std::vector<HoldAt> places;
    for (const UprightPart& part : input.cover.layout.uprights) places.push_back({part.top, part.member});
    for (const UprightPart& part : input.cover.layout.uprights) places.push_back({part.foot, part.member});
    const std::vector<LateralHold> holds =
        lateral_holds(input.cover.layout.frame, input.state.frame_loads, input.state.frame, places);
    const std::size_t count = input.cover.layout.uprights.size();
    for (std::size_t i = 0; i < count; ++i) {
        const UprightPart& part = input.cover.layout.uprights[i];
        const std::array<bool, 6>& held = input.cover.layout.frame.nodes[at(part.foot)].held;
        const bool level = held[0] && held[1];
        const Pushed upright = pushed(input, part);
        try {
            findings.push_back(column_finding(input, upright));
        } catch (const InputError& error) {
            if (!outside_rule(error)) throw;
            findings.push_back(
                not_applicable("upright.column", part.name, timber_document(input.plan), input,
                               part.name + " is not judged as a column: " + error.problems().front().advice + "."));
        }
        findings.push_back(
            hold_finding(input, upright, holds[i], level ? std::nullopt : std::optional(holds[count + i])));
        findings.push_back(foot_finding(input, upright));
    }
    return findings;
}

}  // namespace coverframe
