// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/layout.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "coverframe/actions/argument.hpp"
#include "coverframe/plan/geometry.hpp"
#include "coverframe/plan/timber.hpp"
#include "coverframe/plan/validate.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe {

namespace {

constexpr double splice_angle = 0.5 * factor::degree;

std::string at_text(double x) {
    const long millimetres = std::lround(x * 1000);
    return std::to_string(millimetres) + " mm aft";
}

/// Torsion constant of a rectangle; Timoshenko and Goodier, Theory of Elasticity, from memory (error under 0.5 %).
double torsion_constant(double a, double b) {
    const double s = std::min(a, b);
    const double l = std::max(a, b);
    const double r = s / l;
    return l * s * s * s * (1.0 / 3.0 - 0.21 * r * (1 - r * r * r * r / 12));
}

/// A member of timber, without its ends.
FrameMember timber_member(const std::string& name, MemberKind kind, const Section& section,
                          const std::string& grade_name) {
    const TimberGrade& grade = *find_timber_grade(grade_name);
    const double b = in_m(section.breadth);
    const double d = in_m(section.depth);
    const double E = in_Pa(grade.modulus);
    const double G = in_Pa(grade.shear_modulus);
    FrameMember member;
    member.name = name;
    member.kind = kind;
    member.axial_stiffness = E * b * d;
    member.weight = in_N_per_m3(grade.unit_weight) * b * d;
    member.bending.EI_vertical = E * b * d * d * d / 12;
    member.bending.EI_level = E * d * b * b * b / 12;
    member.bending.GA_vertical = member.bending.GA_level = 5.0 / 6.0 * G * b * d;
    member.bending.GJ = G * torsion_constant(b, d);
    return member;
}

FrameMember strap_member(const std::string& name, const Plan& plan, const std::string& kind, Bound bound) {
    const StrapKind& strap = *find_strap_kind(plan, kind);
    FrameMember member;
    member.name = name;
    member.kind = MemberKind::strap;
    member.axial_stiffness = in_N(bound == Bound::low ? strap.stiffness_low.value : strap.stiffness_high.value);
    return member;
}

std::array<double, 3> coordinates(const Point& p) { return {in_m(p.x), in_m(p.y), in_m(p.z)}; }

class Builder {
public:
    Builder(const Plan& plan, const LayoutOptions& options) : plan_(plan), options_(options) {}

    Layout build() {
        if (const auto* ridge = std::get_if<RidgeSupport>(&plan_.support.structure)) {
            lay_ridge(*ridge);
        } else {
            lay_found(std::get<FoundFrame>(plan_.support.structure));
        }
        return std::move(layout_);
    }

private:
    /// A node the ridge line passes through.
    struct Key {
        std::string name;
        int node = 0;
    };

    int add_node(const std::string& name, const std::array<double, 3>& at, bool held) {
        FrameNode node;
        node.name = name;
        node.at = at;
        if (held) node.held = {true, true, true, false, false, false};
        layout_.frame.nodes.push_back(node);
        return static_cast<int>(layout_.frame.nodes.size()) - 1;
    }

    int add_member(FrameMember member, int from, int to) {
        member.from = from;
        member.to = to;
        member.free_length = drawn_length(layout_.frame, member);
        layout_.frame.members.push_back(std::move(member));
        return static_cast<int>(layout_.frame.members.size()) - 1;
    }

    FrameNode& node(int index) { return layout_.frame.nodes[static_cast<std::size_t>(index)]; }

    /// Cuts the straight from `from` to `to` into equal members no longer than the spacing; returns the nodes passed.
    std::vector<int> add_chain(const FrameMember& pattern, const std::string& node_name, int from, int to,
                               std::vector<int>& members) {
        const std::array<double, 3> a = node(from).at;
        const std::array<double, 3> b = node(to).at;
        const double length = std::hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
        const int pieces = std::max(1, static_cast<int>(std::ceil(length / in_m(options_.station_spacing) - 1e-9)));
        return add_pieces(pattern, node_name, from, to, pieces, members);
    }

    std::vector<int> add_pieces(const FrameMember& pattern, const std::string& node_name, int from, int to, int pieces,
                                std::vector<int>& members) {
        const std::array<double, 3> a = node(from).at;
        const std::array<double, 3> b = node(to).at;
        std::vector<int> nodes{from};
        for (int i = 1; i <= pieces; ++i) {
            const double s = static_cast<double>(i) / pieces;
            const std::array<double, 3> at{a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1]),
                                           a[2] + s * (b[2] - a[2])};
            const int next = i == pieces ? to : add_node(node_name + " at " + at_text(at[0]), at, false);
            members.push_back(add_member(pattern, nodes.back(), next));
            nodes.push_back(next);
        }
        return nodes;
    }

    void add_bay(const FrameMember& pattern, const Key& from, const Key& to) {
        RidgeBay bay;
        bay.name = from.name + " to " + to.name;
        bay.stations = add_chain(pattern, "ridge", from.node, to.node, bay.members);
        if (layout_.stations.empty()) layout_.stations.push_back(from.node);
        layout_.stations.insert(layout_.stations.end(), bay.stations.begin() + 1, bay.stations.end());
        layout_.bays.push_back(std::move(bay));
    }

    /// Hinges where two pole pieces of the ridge meet at an angle.
    void splice_at_angles() {
        for (std::size_t i = 1; i < layout_.bays.size(); ++i) {
            const FrameMember& before = member(layout_.bays[i - 1].members.back());
            FrameMember& after = member(layout_.bays[i].members.front());
            if (before.kind != MemberKind::pole || after.kind != MemberKind::pole) continue;
            if (angle_between(before, after) > splice_angle) after.spring_from = 0;
        }
    }

    FrameMember& member(int index) { return layout_.frame.members[static_cast<std::size_t>(index)]; }

    double angle_between(const FrameMember& a, const FrameMember& b) {
        std::array<double, 3> u{};
        std::array<double, 3> v{};
        double dot = 0;
        for (std::size_t d = 0; d < 3; ++d) {
            u[d] = node(a.to).at[d] - node(a.from).at[d];
            v[d] = node(b.to).at[d] - node(b.from).at[d];
            dot += u[d] * v[d];
        }
        return std::acos(
            std::clamp(dot / (drawn_length(layout_.frame, a) * drawn_length(layout_.frame, b)), -1.0, 1.0));
    }

    Key add_ridge_end(const char* name, const RidgeEnd& end) {
        const int index = add_node(std::string("ridge at the ") + name, {in_m(end.x), 0, in_m(end.z)}, false);
        if (end.hold != Hold::free) node(index).held = {end.hold == Hold::pinned, true, true, false, false, false};
        return {name, index};
    }

    Key add_upright(const Upright& upright) {
        const double x = in_m(upright.x);
        const int top = add_node(upright.name + " top", {x, 0, in_m(upright.top)}, false);
        const int foot =
            add_node(upright.name + " foot", {x, 0, in_m(find_stand(plan_.boat, upright.stands_on)->z)}, true);
        UprightPart part;
        part.name = upright.name;
        part.foot = foot;
        part.top = top;
        part.member =
            add_member(timber_member(upright.name, MemberKind::upright, upright.section, upright.grade), foot, top);
        part.drawn = &upright;
        layout_.uprights.push_back(part);
        if (upright.foot) add_foot(*upright.foot, foot);
        return {upright.name, top};
    }

    void add_foot(const SoftFoot& soft, int at) {
        Foot foot;
        foot.node = at;
        foot.stiffness = in_N_per_m(soft.stiffness.value);
        foot.gap = soft.gap ? in_m(*soft.gap) : 0.0;
        node(at).held[2] = false;
        if (soft.friction) {
            const bool low = options_.strap_stiffness == Bound::low;
            foot.friction = low ? soft.friction->low.value : soft.friction->high.value;
            foot.side_stiffness = in_N_per_m(soft.friction->side_stiffness.value);
            node(at).held[0] = node(at).held[1] = false;
        }
        layout_.frame.feet.push_back(foot);
    }

    void add_cross_strap(const CrossStrap& strap) {
        const auto over = std::find_if(layout_.uprights.begin(), layout_.uprights.end(),
                                       [&](const UprightPart& u) { return u.name == strap.over; });
        const int top = over->top;
        const double x = node(top).at[0];
        const RailStation rail = *rail_at(plan_.boat, from_m(x));
        CrossStrapPart part{strap.name, strap.strap, {}};
        for (const Sides side : {Sides::port, Sides::starboard}) {
            if (strap.sides != Sides::both && strap.sides != side) continue;
            const double y = (side == Sides::port ? -1 : 1) * in_m(rail.half_breadth);
            const std::string name = strap.name + (side == Sides::port ? " port" : " starboard");
            const int end = add_node(name + " at the rail", {x, y, in_m(rail.z)}, true);
            add_pieces(strap_member(name, plan_, strap.strap, options_.strap_stiffness), name, top, end,
                       options_.cross_strap_pieces, part.members);
        }
        layout_.runs.push_back({strap.name, part.members, in_N(strap.pretension)});
        layout_.cross_straps.push_back(std::move(part));
    }

    void lay_ridge(const RidgeSupport& support) {
        std::vector<Key> keys{add_ridge_end("bow", support.ridge.bow)};
        for (const Upright& upright : support.uprights) keys.push_back(add_upright(upright));
        keys.push_back(add_ridge_end("stern", support.ridge.stern));
        const auto* pole = std::get_if<PoleRidge>(&support.ridge.member);
        const auto* strap = std::get_if<StrapRidge>(&support.ridge.member);
        layout_.ridge_is_pole = pole != nullptr;
        const FrameMember pattern = pole ? timber_member("ridge", MemberKind::pole, pole->section, pole->grade)
                                         : strap_member("ridge", plan_, strap->strap, options_.strap_stiffness);
        for (std::size_t i = 1; i < keys.size(); ++i) {
            // An upright close under a ridge end stands in for it.
            if (std::abs(node(keys[i].node).at[0] - node(keys[i - 1].node).at[0]) < 1e-6) continue;
            add_bay(pattern, keys[i - 1], keys[i]);
        }
        if (pole) {
            splice_at_angles();
            // The ends cannot twist: they are lashed to the boat.
            node(keys.front().node).held[3] = node(keys.back().node).held[3] = true;
        } else {
            StrapRun run{"ridge", {}, in_N(strap->pretension)};
            for (const RidgeBay& bay : layout_.bays)
                run.members.insert(run.members.end(), bay.members.begin(), bay.members.end());
            layout_.runs.push_back(std::move(run));
        }
        for (const CrossStrap& cross : support.cross_straps) add_cross_strap(cross);
    }

    FrameMember pattern_of(const FoundMember& m) {
        if (m.kind == FoundKind::strap) return strap_member(m.name, plan_, m.strap, options_.strap_stiffness);
        return timber_member(m.name, m.kind == FoundKind::pole ? MemberKind::pole : MemberKind::upright, *m.section,
                             m.grade);
    }

    /// The members of the plan that carry the ridge line, in its order.
    std::vector<const FoundMember*> ridge_members(const FoundFrame& found) {
        std::vector<const FoundMember*> ridge;
        for (std::size_t i = 1; i < found.ridge_line.size(); ++i) {
            const std::string& a = found.ridge_line[i - 1];
            const std::string& b = found.ridge_line[i];
            for (const FoundMember& m : found.members) {
                if (m.kind != FoundKind::upright && ((m.from == a && m.to == b) || (m.from == b && m.to == a))) {
                    ridge.push_back(&m);
                    break;
                }
            }
        }
        return ridge;
    }

    void add_found_member(const FoundMember& m, const std::map<std::string, int>& nodes) {
        const int from = nodes.at(m.from);
        const int to = nodes.at(m.to);
        if (m.kind == FoundKind::pole) {
            std::vector<int> members;
            add_chain(pattern_of(m), m.name, from, to, members);
            return;
        }
        if (m.kind == FoundKind::strap) {
            std::vector<int> members;
            add_pieces(pattern_of(m), m.name, from, to, options_.cross_strap_pieces, members);
            layout_.runs.push_back({m.name, members, m.pretension ? in_N(*m.pretension) : 0.0});
            layout_.cross_straps.push_back({m.name, m.strap, members});
            return;
        }
        const int index = add_member(pattern_of(m), from, to);
        if (m.kind == FoundKind::upright) {
            UprightPart part;
            part.name = m.name;
            part.member = index;
            part.foot = from;
            part.top = to;
            part.found = &m;
            layout_.uprights.push_back(part);
            if (m.foot) add_foot(*m.foot, from);
        }
    }

    /// A pole that ends on a held node cannot twist there; the held direction is the axis nearest to the pole's own.
    void hold_twist(const FoundFrame& found, const std::map<std::string, int>& nodes) {
        for (const FoundMember& m : found.members) {
            if (m.kind != FoundKind::pole) continue;
            const std::array<double, 3> a = node(nodes.at(m.from)).at;
            const std::array<double, 3> b = node(nodes.at(m.to)).at;
            std::size_t axis = 0;
            for (std::size_t d = 1; d < 3; ++d) {
                if (std::abs(b[d] - a[d]) > std::abs(b[axis] - a[axis])) axis = d;
            }
            for (const std::string& end : {m.from, m.to}) {
                if (node(nodes.at(end)).held[0]) node(nodes.at(end)).held[3 + axis] = true;
            }
        }
    }

    void lay_found(const FoundFrame& found) {
        std::map<std::string, int> nodes;
        for (const FoundNode& n : found.nodes) nodes[n.name] = add_node(n.name, coordinates(n.at), n.held);
        const std::vector<const FoundMember*> ridge = ridge_members(found);
        layout_.ridge_is_pole =
            std::all_of(ridge.begin(), ridge.end(), [](const FoundMember* m) { return m->kind == FoundKind::pole; });
        for (std::size_t i = 0; i < ridge.size(); ++i) {
            const std::string& a = found.ridge_line[i];
            const std::string& b = found.ridge_line[i + 1];
            add_bay(pattern_of(*ridge[i]), {a, nodes.at(a)}, {b, nodes.at(b)});
            if (ridge[i]->kind == FoundKind::strap) {
                const double tension = ridge[i]->pretension ? in_N(*ridge[i]->pretension) : 0.0;
                layout_.runs.push_back({ridge[i]->name, layout_.bays.back().members, tension});
            }
        }
        for (const FoundMember& m : found.members) {
            if (std::find(ridge.begin(), ridge.end(), &m) == ridge.end()) add_found_member(m, nodes);
        }
        splice_at_angles();
        hold_twist(found, nodes);
    }

    const Plan& plan_;
    const LayoutOptions& options_;
    Layout layout_;
};

}  // namespace

Layout lay_out(const Plan& plan, const LayoutOptions& options) {
    argument::within(in_m(options.station_spacing), 0.01, 10.0,
                     {"layout.station_spacing.range", "spacing of the stations", "m"});
    argument::within(options.cross_strap_pieces, 1, 200,
                     {"layout.cross_strap_pieces.range", "pieces of a cross strap's leg", ""});
    require_valid(plan);
    return Builder(plan, options).build();
}

}  // namespace coverframe
