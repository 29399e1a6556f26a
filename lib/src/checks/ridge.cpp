// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/checks/ridge.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "common.hpp"
#include "coverframe/units/crossing.hpp"
#include "shown.hpp"
#include "spans.hpp"

namespace coverframe {
namespace {

using namespace checks_detail;

PieceForces forces_at(const MemberForces& f, double share, double length) {
    return {from_N(f.axial_at(share)), from_N_m(f.moment_vertical_at(share, length)),
            from_N_m(f.moment_level_at(share, length))};
}

/// Both ends, and where a member load makes a moment greatest between them; shares of the length.
std::vector<double> sections_of(const MemberForces& f) {
    std::vector<double> shares{0, 1};
    const auto between = [&](double share) {
        if (share > 0 && share < 1) shares.push_back(share);
    };
    if (f.load[2] != 0) between(0.5 - f.shear_vertical / f.load[2]);
    if (f.load[1] != 0) between(0.5 + f.shear_level / f.load[1]);
    return shares;
}

struct Worst {
    PieceForces forces;
    Judgement judgement;
    int node = 0;
};

Worst worst_section(const CheckInput& input, const PoleSpan& span, const PieceStrength& strength) {
    std::optional<Worst> worst;
    for (const int m : span.members) {
        const Frame& frame = input.cover.layout.frame;
        const FrameMember& member = frame.members[at(m)];
        const MemberForces& f = input.state.frame.members[at(m)];
        for (const double share : sections_of(f)) {
            const PieceForces forces = forces_at(f, share, drawn_length(frame, member));
            const Worst each{forces, judge(strength, forces), share < 0.5 ? member.from : member.to};
            if (!worst || worse(each.judgement, worst->judgement)) worst = each;
        }
    }
    return *worst;
}

std::string forces_text(const PieceForces& forces, UnitsShown units) {
    constexpr double told = 1e-3;  // share of the vertical moment from which the level one is worth telling
    const double vertical = std::abs(in_N_m(forces.vertical));
    const double level = std::abs(in_N_m(forces.level));
    const bool pressed = forces.axial < Force{};
    return shown(from_N_m(vertical), units) + " up and down, " +
           (level > told * vertical ? shown(from_N_m(level), units) + " sideways, " : "") +
           shown(pressed ? -forces.axial : forces.axial, units) + (pressed ? " push" : " pull");
}

std::string bending_sentence(const CheckInput& input, const PoleSpan& span, const Worst& worst) {
    const UnitsShown units = input.plan.units_shown;
    const Judgement& j = worst.judgement;
    const std::string mend =
        span.ridge ? "; set an upright in this bay or use a thicker pole" : "; use a thicker pole or prop it";
    if (!j.slender.empty())
        return opening(span.part) + " is too slender (" + j.slender + " is " + number_text(j.demand) + " where " +
               number_text(j.capacity) + " is the most): it is " + shown(span.piece.span, units) +
               " long between supports" + mend;
    if (j.buckles) return opening(span.part) + " buckles under " + forces_text(worst.forces, units) + mend;
    return opening(span.part) + " is loaded to " + percent_text(j.demand) +
           " of what the pole carries in bending: " + forces_text(worst.forces, units) + (j.demand > 1.0 ? mend : "");
}

Finding bending_finding(const CheckInput& input, const PoleSpan& span, const PieceStrength& strength) {
    const Worst worst = worst_section(input, span, strength);
    const Judgement& j = worst.judgement;
    Finding finding =
        compare(span.ridge ? "ridge.bending" : "pole.bending", span.part, j.clause, input, j.demand, j.capacity, "-");
    if (j.buckles) {
        finding.verdict = Verdict::exceeded;
        finding.utilisation.reset();
    }
    finding.x = input.cover.layout.frame.nodes[at(worst.node)].at[0];
    finding.sentence = bending_sentence(input, span, worst) + ".";
    if (input.workings) finding.workings = terms_of(input.plan, span.piece, strength, worst.forces);
    return finding;
}

Finding shear_finding(const CheckInput& input, const PoleSpan& span) {
    double force = -1.0;
    int member = 0;
    for (const int m : span.members) {
        const MemberForces& f = input.state.frame.members[at(m)];
        const double resultant = std::max(std::hypot(f.shear_vertical_at(0), f.shear_level_at(0)),
                                          std::hypot(f.shear_vertical_at(1), f.shear_level_at(1)));
        if (resultant > force) {
            force = resultant;
            member = m;
        }
    }
    const UnitsShown units = input.plan.units_shown;
    Shear shear = shear_of(input.plan, span.piece, from_N(force), input.workings);
    Finding finding = compare(span.ridge ? "ridge.shear" : "pole.shear", span.part, shear.clause, input,
                              in_N_per_mm2(shear.stress), in_N_per_mm2(shear.strength), "N/mm2");
    finding.x = middle_x(input.cover.layout.frame, input.cover.layout.frame.members[at(member)]);
    finding.sentence = opening(span.part) + " is sheared with " + shown_stress(shear.stress, units) +
                       " where the timber takes " + shown_stress(shear.strength, units) +
                       (finding.verdict == Verdict::exceeded ? "; use a thicker pole or more uprights." : ".");
    finding.workings = std::move(shear.terms);
    return finding;
}

// The span that ends at a node, the forward one if two do.
const PoleSpan* span_at(const CheckInput& input, const std::vector<PoleSpan>& spans, int node) {
    for (const PoleSpan& span : spans) {
        const bool here = std::ranges::any_of(span.members, [&](int m) {
            const FrameMember& member = input.cover.layout.frame.members[at(m)];
            return member.from == node || member.to == node;
        });
        if (span.ridge && here) return &span;
    }
    return nullptr;
}

Contact contact_at(const CheckInput& input, const PoleSpan& span, const Section& upright, int node) {
    const Layout& layout = input.cover.layout;
    const auto station = std::ranges::find(layout.stations, node) - layout.stations.begin();
    const Beyond beyond = timber_beyond(layout, static_cast<int>(station));
    const Length half = 0.5 * upright.depth;
    return {.length = upright.depth,
            .breadth = std::min(upright.breadth, span.piece.section.breadth),
            .forward = std::max(beyond.forward - half, Length{}),
            .aft = std::max(beyond.aft - half, Length{})};
}

Finding bearing_finding(const CheckInput& input, const PoleSpan& span, const UprightPart& upright) {
    const UnitsShown units = input.plan.units_shown;
    const MemberForces& along = input.state.frame.members[at(upright.member)];
    const double push = std::max({-along.axial_at(0), -along.axial_at(1), 0.0});
    const Contact contact = contact_at(input, span, timber_of(upright).section, upright.top);
    ContactStrength strength = contact_of(input.plan, span.piece, contact, input.workings);
    Finding finding = compare("ridge.bearing", "ridge over " + upright.name, strength.clause, input, push / 1e3,
                              in_kN(strength.capacity), "kN");
    finding.x = input.cover.layout.frame.nodes[at(upright.top)].at[0];
    finding.sentence = push > 0.0 ? upright.name + " presses " + shown(from_N(push), units) +
                                        " into the ridge over it, across the grain, where the timber takes " +
                                        shown(strength.capacity, units)
                                  : upright.name + " has lifted off: it does not press on the ridge";
    finding.sentence += finding.verdict == Verdict::exceeded ? "; put a longer hardwood block between them." : ".";
    finding.workings = std::move(strength.terms);
    if (input.workings)
        finding.workings.insert(finding.workings.begin(), term("N", push / 1e3, "kN", "push of the upright"));
    return finding;
}

}  // namespace

std::vector<Finding> check_ridge(const CheckInput& input) {
    require_usable(input);
    std::vector<Finding> findings;
    // A section outside the limits of the rules is a finding of its own kind.
    const auto add = [&](const std::string& check, const std::string& part, auto make) {
        try {
            findings.push_back(make());
        } catch (const InputError& error) {
            if (!outside_rule(error)) throw;
            findings.push_back(
                not_applicable(check, part, timber_document(input.plan), input,
                               opening(part) + " is not judged: " + error.problems().front().advice + "."));
        }
    };
    const std::vector<PoleSpan> spans = pole_spans(input.plan, input.cover.layout);
    for (const PoleSpan& span : spans) {
        add(span.ridge ? "ridge.bending" : "pole.bending", span.part,
            [&] { return bending_finding(input, span, strength_of(input.plan, span.piece)); });
        add(span.ridge ? "ridge.shear" : "pole.shear", span.part, [&] { return shear_finding(input, span); });
    }
    for (const UprightPart& upright : input.cover.layout.uprights) {
        if (const PoleSpan* span = span_at(input, spans, upright.top))
            add("ridge.bearing", "ridge over " + upright.name, [&] { return bearing_finding(input, *span, upright); });
    }
    return findings;
}

}  // namespace coverframe
