// SPDX-License-Identifier: BSD-3-Clause
// A frame as somebody found it: nodes, members, and the line the film lies on.
#include <algorithm>
#include <cmath>
#include <numeric>
#include <unordered_map>

#include "coverframe/plan/geometry.hpp"
#include "coverframe/units/crossing.hpp"
#include "plan/fit.hpp"

namespace coverframe::plan_detail {
namespace {

using namespace coverframe::literals;

constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

/// Member ends as indices of nodes; `nowhere` for a name that is none.
struct Ends {
    std::size_t from = nowhere;
    std::size_t to = nowhere;

    [[nodiscard]] bool known() const { return from != nowhere && to != nowhere; }
    [[nodiscard]] bool join(std::size_t a, std::size_t b) const {
        return (from == a && to == b) || (from == b && to == a);
    }
};

Length distance(const Point& a, const Point& b) {
    return from_m(std::hypot(in_m(b.x - a.x), in_m(b.y - a.y), in_m(b.z - a.z)));
}

class FoundFit {
public:
    FoundFit(Fit& fit, const FoundFrame& found) : fit_(fit), found_(found) {
        for (std::size_t i = 0; i < found.nodes.size(); ++i) index_.emplace(found.nodes[i].name, i);
        for (const FoundNode& node : found.nodes) names_.push_back(node.name);
        for (const FoundMember& member : found.members) ends_.push_back({index_of(member.from), index_of(member.to)});
    }

    void run() {
        nodes();
        for (std::size_t i = 0; i < found_.members.size(); ++i) member(i);
        doubled_members();
        member_names();
        ridge_line();
        connections();
    }

private:
    std::size_t index_of(const std::string& name) const {
        const auto found = index_.find(name);
        return found == index_.end() ? nowhere : found->second;
    }

    void nodes() {
        std::vector<std::string> names;
        for (const FoundNode& node : found_.nodes) names.push_back(node.name);
        fit_names(fit_, names, "/support/nodes", "node", "support.found.node_duplicate");
        for (std::size_t i = 0; i < found_.nodes.size(); ++i) {
            for (std::size_t k = 0; k < i; ++k) {
                if (distance(found_.nodes[i].at, found_.nodes[k].at) >= 1.0_mm) continue;
                fit_.add("support.found.node_coincident", at("/support/nodes", i), found_.nodes[i].name,
                         "node " + found_.nodes[i].name + " lies at the same place as " + found_.nodes[k].name +
                             "; use one node for both, or correct the place");
                break;
            }
        }
    }

    void unknown_end(const std::string& name, const std::string& where, const std::string& member) {
        fit_.add("support.found.end_unknown", where, name,
                 "member " + member + " ends at \"" + name + "\", which is no node" + help_with(name, names_));
    }

    void member(std::size_t i) {
        const FoundMember& member = found_.members[i];
        const std::string where = at("/support/members", i);
        if (ends_[i].from == nowhere) unknown_end(member.from, where + "/from", member.name);
        if (ends_[i].to == nowhere) unknown_end(member.to, where + "/to", member.name);
        if (ends_[i].known() && ends_[i].from == ends_[i].to) {
            fit_.add("support.found.no_length", where + "/to", member.to,
                     "member " + member.name + " begins and ends at node " + member.from + "; name its other end");
        }
        if (member.kind == FoundKind::strap) {
            fit_strap_name(fit_, member.strap, where + "/strap", "member " + member.name);
        } else {
            fit_grade_name(fit_, member.grade, where + "/grade", "member " + member.name);
        }
        if (member.kind == FoundKind::upright) upright(i);
    }

    void upright(std::size_t i) {
        const FoundMember& member = found_.members[i];
        const std::string where = at("/support/members", i);
        const Stand* stand = fit_stand_name(fit_, member.stands_on, where + "/stands_on", "upright " + member.name);
        if (!ends_[i].known()) return;
        const FoundNode& foot = found_.nodes[ends_[i].from];
        const FoundNode& top = found_.nodes[ends_[i].to];
        if (!foot.held) {
            fit_.add("support.found.foot_loose", where + "/from", member.from,
                     "the foot of upright " + member.name + ", node " + foot.name +
                         ", is not held; say \"held\": true there, or name the foot first and the top second");
        }
        if (stand != nullptr) foot_on_stand(member, foot, *stand, where);
        if (member.foot) soft_foot(i, where);
        if (!member.section) return;
        const Length rise = top.at.z - foot.at.z;
        const bool upside_down = rise <= Length{} && ends_[i].from != ends_[i].to;
        fit_upright_length(fit_, upside_down ? rise : distance(foot.at, top.at), *member.section, where,
                           "upright " + member.name);
    }

    /// A soft foot takes the node off the boat: whatever else ends there would hang in the air.
    void soft_foot(std::size_t i, const std::string& where) {
        const FoundMember& member = found_.members[i];
        fit_friction(fit_, member.foot, where, "upright " + member.name);
        for (std::size_t other = 0; other < found_.members.size(); ++other) {
            if (other == i || (ends_[other].from != ends_[i].from && ends_[other].to != ends_[i].from)) continue;
            fit_.add("support.found.foot_shared", where + "/from", member.from,
                     "the soft foot of upright " + member.name + " stands on node " + member.from +
                         ", where member " + found_.members[other].name +
                         " ends too; give that member a held node of its own");
            return;
        }
    }

    void foot_on_stand(const FoundMember& member, const FoundNode& foot, const Stand& stand, const std::string& where) {
        constexpr Length reading = 20.0_mm;  // how well a foot is measured
        const auto apart = [](Length a, Length b) { return a < b ? b - a : a - b; };
        const bool over = foot.at.x >= stand.from - reading && foot.at.x <= stand.to + reading &&
                          apart(foot.at.y, Length{}) <= stand.half_breadth + reading;
        if (over && apart(foot.at.z, stand.z) <= reading) return;
        fit_.add("support.found.foot_off_stand", where + "/stands_on", member.stands_on,
                 "the foot of upright " + member.name + " (node " + foot.name + " at x = " + fit_.say(foot.at.x) +
                     ", y = " + fit_.say(foot.at.y) + ", z = " + fit_.say(foot.at.z) + ") is not on \"" + stand.name +
                     "\" (x from " + fit_.say(stand.from) + " to " + fit_.say(stand.to) + ", " +
                     fit_.say(stand.half_breadth) + " to each side, z = " + fit_.say(stand.z) +
                     "); correct the node or name the right stand");
    }

    void doubled_members() {
        for (std::size_t i = 0; i < ends_.size(); ++i) {
            for (std::size_t k = 0; k < i && ends_[i].known(); ++k) {
                if (!ends_[k].join(ends_[i].from, ends_[i].to)) continue;
                fit_.add("support.found.doubled", at("/support/members", i), found_.members[i].name,
                         "member " + found_.members[i].name + " joins the same two nodes as " + found_.members[k].name +
                             "; remove one, or give the stronger one the section of both");
                break;
            }
        }
    }

    void member_names() {
        std::vector<std::string> names;
        for (const FoundMember& member : found_.members) names.push_back(member.name);
        fit_names(fit_, names, "/support/members", "member", "support.found.member_duplicate");
    }

    void ridge_line() {
        std::size_t before = nowhere;
        for (std::size_t i = 0; i < found_.ridge_line.size(); ++i) {
            const std::string where = at("/support/ridge_line", i);
            const std::string& name = found_.ridge_line[i];
            const std::size_t here = index_of(name);
            if (here == nowhere) {
                fit_.add("support.found.ridge_unknown", where, name,
                         "the ridge line names \"" + name + "\", which is no node" + help_with(name, names_));
            } else {
                ridge_node(found_.nodes[here], where);
                if (before != nowhere) ridge_piece(before, here, where);
            }
            before = here;
        }
    }

    void ridge_node(const FoundNode& node, const std::string& where) {
        constexpr Length off_centre = 1.0_mm;
        if (node.at.y <= off_centre && node.at.y >= -off_centre) return;
        fit_.add("support.found.ridge_off_centre", where, fit_.say(node.at.y),
                 "node " + node.name + " of the ridge line lies " + fit_.say(node.at.y) +
                     " off the centreline; the film is computed from a ridge at y = 0, so set the node there");
    }

    void ridge_piece(std::size_t before, std::size_t here, const std::string& where) {
        const FoundNode& a = found_.nodes[before];
        const FoundNode& b = found_.nodes[here];
        if (!(b.at.x > a.at.x)) {
            fit_.add("support.found.ridge_order", where, fit_.say(b.at.x),
                     "node " + b.name + " of the ridge line at x = " + fit_.say(b.at.x) + " does not lie aft of " +
                         a.name + " at " + fit_.say(a.at.x) + "; list the line from bow to stern");
        }
        for (std::size_t i = 0; i < ends_.size(); ++i) {
            if (ends_[i].join(before, here) && found_.members[i].kind != FoundKind::upright) return;
        }
        fit_.add("support.found.ridge_gap", where, b.name,
                 "no pole or strap joins " + a.name + " and " + b.name +
                     " of the ridge line, so the film has nothing to lie on; add the member or leave the node out");
    }

    /// Follows the members; nodes held by the boat count as joined through it.
    void connections() {
        const std::size_t count = found_.nodes.size();
        std::vector<bool> has_member(count, false);
        std::vector<std::size_t> group(count + 1);  // the last one is the boat
        std::iota(group.begin(), group.end(), std::size_t{0});
        const auto root = [&](std::size_t i) {
            while (group[i] != i) i = group[i] = group[group[i]];
            return i;
        };
        for (const Ends& ends : ends_) {
            if (ends.from != nowhere) has_member[ends.from] = true;
            if (ends.to != nowhere) has_member[ends.to] = true;
            if (ends.known()) group[root(ends.from)] = root(ends.to);
        }
        const bool all_ends_known = std::all_of(ends_.begin(), ends_.end(), [](const Ends& e) { return e.known(); });
        bool any_held = false;
        for (std::size_t i = 0; i < count; ++i) {
            if (found_.nodes[i].held) group[root(i)] = root(count);
            any_held = any_held || found_.nodes[i].held;
        }
        if (!any_held) {
            fit_.add(
                "support.found.nothing_held", "/support/nodes", "",
                "no node is held by the boat, so the frame would fall; say \"held\": true where it stands or is tied");
        }
        std::vector<bool> reported(count + 1, false);
        for (std::size_t i = 0; i < count; ++i) {
            const std::string& name = found_.nodes[i].name;
            if (index_of(name) != i) continue;  // the second of a double name has been spoken of
            if (!has_member[i]) {
                if (!all_ends_known) continue;  // perhaps the member that was meant
                fit_.add("support.found.node_unused", at("/support/nodes", i), name,
                         "node " + name + " has no member; remove it or connect it");
            } else if (any_held && all_ends_known && root(i) != root(count) && !reported[root(i)]) {
                reported[root(i)] = true;
                fit_.add("support.found.disconnected", at("/support/nodes", i), name,
                         "node " + name +
                             " and what is joined to it hang in the air: no member leads from there to a held "
                             "node; add the missing member or hold one of the nodes");
            }
        }
    }

    Fit& fit_;
    const FoundFrame& found_;
    std::unordered_map<std::string, std::size_t> index_;
    std::vector<std::string_view> names_;
    std::vector<Ends> ends_;
};

}  // namespace

void fit_found_frame(Fit& fit, const FoundFrame& found) { FoundFit(fit, found).run(); }

}  // namespace coverframe::plan_detail
