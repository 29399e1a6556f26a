// SPDX-License-Identifier: BSD-3-Clause
#include <variant>

#include "coverframe/plan/geometry.hpp"
#include "coverframe/units/crossing.hpp"
#include "report/film_sheet.hpp"
#include "report/format.hpp"
#include "report/html.hpp"
#include "report/sheet.hpp"
#include "report/text.hpp"

namespace coverframe::reporting {
namespace {

std::string text(std::string_view words) { return tag("span", words); }
std::string name_html(std::string_view name) { return tag("span", name, "strong"); }

std::string hold_text(Hold hold) {
    switch (hold) {
        case Hold::pinned: return "pinned to the boat";
        case Hold::sliding: return "held down and sideways, slides fore and aft";
        case Hold::free: return "held by nothing but the ridge";
    }
    return {};
}

std::string pad_text(const FootPad& pad, UnitsShown units) {
    return alone(pad.length, units) + " fore and aft, " + alone(pad.breadth, units) + " across, " +
           alone(pad.thickness, units) + " thick";
}

/// What the crew has to know of a foot that gives: the gap, and what keeps it from sliding.
std::string foot_text(const std::optional<SoftFoot>& foot, UnitsShown units) {
    if (!foot) return {};
    std::string text = "; soft foot";
    if (foot->gap && *foot->gap > Length{}) text += ", bears after " + alone(*foot->gap, units);
    return text + (foot->friction ? ", may slide: held level by friction alone" : ", held level by a step or stringer");
}

std::string sides_text(Sides sides) {
    switch (sides) {
        case Sides::both: return "from rail to rail";
        case Sides::port: return "to the port rail only";
        case Sides::starboard: return "to the starboard rail only";
    }
    return {};
}

std::string ridge_html(const Ridge& ridge, UnitsShown units) {
    std::string what;
    if (const auto* pole = std::get_if<PoleRidge>(&ridge.member)) {
        what = "Timber pole, " + section(pole->section, units) + " (breadth by depth), " + pole->grade + '.';
    } else if (const auto* strap = std::get_if<StrapRidge>(&ridge.member)) {
        what = "Strap, " + strap->strap + ", set to " + both(strap->pretension, units) + '.';
    }
    Table table{{"ridge end", "aft of stem head", "level", "how it is held"}, {}};
    for (const auto& [name, end] : {std::pair{"bow", &ridge.bow}, std::pair{"stern", &ridge.stern}}) {
        table.rows.push_back(
            {name_html(name), value_html(end->x, units), value_html(end->z, units), text(hold_text(end->hold))});
    }
    return tag("h3", "Ridge") + tag("p", what) + table_html(table);
}

std::string uprights_html(const Plan& plan, const RidgeSupport& support) {
    const UnitsShown units = plan.units_shown;
    Table table{{"upright", "aft of stem head", "stands on", "level there", "ridge line over it", "timber", "pad"}, {}};
    for (const Upright& upright : support.uprights) {
        const Stand* stand = find_stand(plan.boat, upright.stands_on);
        table.rows.push_back({name_html(upright.name), value_html(upright.x, units), text(upright.stands_on),
                              stand == nullptr ? "" : value_html(stand->z, units), value_html(upright.top, units),
                              text(section(upright.section, units) + ", " + upright.grade),
                              text(pad_text(upright.pad, units) + foot_text(upright.foot, units))});
    }
    return tag("h3", "Uprights, on the centreline") + table_html(table, "compact");
}

std::string cross_straps_html(const Plan& plan, const RidgeSupport& support) {
    Table table{{"strap", "over", "runs", "kind", "set to"}, {}};
    for (const CrossStrap& strap : support.cross_straps) {
        table.rows.push_back({name_html(strap.name), text(strap.over), text(sides_text(strap.sides)), text(strap.strap),
                              value_html(strap.pretension, plan.units_shown)});
    }
    return table.rows.empty() ? "" : tag("h3", "Cross straps") + table_html(table, "compact");
}

std::string found_html(const FoundFrame& found, UnitsShown units) {
    Table nodes{{"node", "aft of stem head", "to starboard", "level", "held by the boat"}, {}};
    for (const FoundNode& node : found.nodes) {
        nodes.rows.push_back({name_html(node.name), value_html(node.at.x, units), value_html(node.at.y, units),
                              value_html(node.at.z, units), text(node.held ? "yes" : "no")});
    }
    Table members{{"member", "kind", "from", "to", "made of", "set to"}, {}};
    for (const FoundMember& member : found.members) {
        const char* kind = member.kind == FoundKind::pole      ? "pole"
                           : member.kind == FoundKind::upright ? "upright"
                                                               : "strap";
        std::string made = member.section ? section(*member.section, units) + ", " + member.grade : member.strap;
        if (!member.stands_on.empty()) made += "; on " + member.stands_on;
        if (member.pad) made += "; pad " + pad_text(*member.pad, units);
        made += foot_text(member.foot, units);
        members.rows.push_back({name_html(member.name), text(kind), text(member.from), text(member.to), text(made),
                                member.pretension ? value_html(*member.pretension, units) : ""});
    }
    std::string line;
    for (const std::string& name : found.ridge_line) line += (line.empty() ? "" : ", ") + name;
    return tag("p", "The support as it was found. The film lies over " + line + ", from bow to stern.") +
           tag("h3", "Nodes") + table_html(nodes, "compact") + tag("h3", "Members") + table_html(members, "compact");
}

std::string band_html(const Band& band, UnitsShown units) {
    Table table{{"band", "where", "kind", "set to"}, {}};
    table.rows.push_back({name_html("band"), value_html(band.below_rail, units) + text(" below the rail, all round"),
                          text(band.strap), value_html(band.pretension, units)});
    for (const BellyStrap& strap : band.belly_straps) {
        table.rows.push_back({name_html("belly strap"),
                              value_html(strap.x, units) + text(" aft of the stem head, under the hull"),
                              text(strap.strap), value_html(strap.pretension, units)});
    }
    table.rows.push_back({name_html("hangers"), text("every ") + value_html(band.hangers.spacing, units), "", ""});
    return tag("h3", "Band") + table_html(table, "compact");
}

}  // namespace

std::string setting_out_html(const Assessment& assessment) {
    const Plan& plan = assessment.plan;
    const UnitsShown units = plan.units_shown;
    std::string html;
    if (const auto* built = std::get_if<RidgeSupport>(&plan.support.structure)) {
        html = ridge_html(built->ridge, units) + uprights_html(plan, *built) + cross_straps_html(plan, *built);
    } else if (const auto* found = std::get_if<FoundFrame>(&plan.support.structure)) {
        html = found_html(*found, units);
    }
    html += band_html(plan.support.band, units);
    html += tag("h3", "Film") + tag("p", "Film " + thickness(plan.film.thickness.value, units) + " thick.");
    for (const std::string& sentence : film_sheet_sentences(plan)) html += tag("p", sentence);
    return html + tag("p", "Levels are from the datum of the plan; straps are set before the film goes on.");
}

}  // namespace coverframe::reporting
