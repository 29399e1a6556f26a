// SPDX-License-Identifier: BSD-3-Clause
#include <algorithm>

#include "coverframe/units/crossing.hpp"
#include "report/format.hpp"
#include "report/html.hpp"
#include "report/sheet.hpp"
#include "report/text.hpp"

namespace coverframe::reporting {
namespace {

std::vector<const Finding*> with_verdict(const Assessment& assessment, Verdict verdict) {
    std::vector<const Finding*> rows;
    for (const Finding& finding : assessment.findings) {
        if (finding.verdict == verdict) rows.push_back(&finding);
    }
    return rows;
}

std::string used_html(const Finding& finding) {
    if (finding.utilisation) return tag("span", percent(*finding.utilisation), "n strong");
    return tag("span", finding.verdict == Verdict::exceeded ? "FAILS" : "none", "n strong");
}

std::string demand_html(const Finding& f, UnitsShown units) {
    return value_html(f.demand, f.unit, units, 3, f.capacity);
}
std::string capacity_html(const Finding& f, UnitsShown units) {
    return value_html(f.capacity, f.unit, units, 3, f.demand);
}

std::string where_html(const Assessment& assessment, const Finding& finding) {
    if (!finding.x) return {};
    return wrap("span", escaped("; at ") + value_html(*finding.x, "m", assessment.plan.units_shown) + escaped(" aft"),
                "small");
}

std::string situation_html(const Assessment& assessment, const std::string& name) {
    const std::string number = situation_number(assessment, name);
    return number == one_line(name) ? tag("span", name, "small") : tag("span", number + ": " + name, "small");
}

std::string part_name_html(const Finding& finding) {
    return tag("span", one_line(finding.part), "strong") + "<br/>" + tag("span", plain_name(finding.check));
}

/// Smallest and greatest load where the cover has any breadth.
std::string range_html(const std::vector<PlanLoad>& all, const std::vector<CoverStation>& stations, UnitsShown units) {
    std::vector<PlanLoad> loads;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (i >= stations.size() || stations[i].half_breadth > Length{}) loads.push_back(all[i]);
    }
    if (loads.empty()) return {};
    const auto [least, most] = std::ranges::minmax(loads, {}, [](const PlanLoad& load) { return in_kPa(load.value); });
    const std::string low = value_html(in_kPa(least.value), "kPa", units);
    return least.value == most.value ? low : low + " to " + value_html(in_kPa(most.value), "kPa", units);
}

std::string named(std::string_view name, const std::string& html) {
    return tag("span", name, "small") + "<br/>" + html;
}

}  // namespace

std::string failing_html(const Assessment& assessment) {
    const std::vector<const Finding*> rows = with_verdict(assessment, Verdict::exceeded);
    if (rows.empty()) return {};
    const UnitsShown units = assessment.plan.units_shown;
    std::string html;
    for (const Finding* finding : rows) {
        const std::string cells = wrap("td", part_name_html(*finding)) +
                                  wrap("td", named("demand", demand_html(*finding, units))) +
                                  wrap("td", named("capacity", capacity_html(*finding, units))) +
                                  wrap("td", named("used", used_html(*finding))) +
                                  wrap("td", named("rule", tag("span", text_of(finding->clause), "small")));
        html += wrap("div",
                     wrap("table", wrap("tr", cells)) + '\n' + tag("p", sentence_of(*finding), "strong") + '\n' +
                         wrap("p", situation_html(assessment, finding->situation) + where_html(assessment, *finding)),
                     "fail") +
                '\n';
    }
    return html;
}

std::string failing_list_html(const Assessment& assessment) {
    constexpr std::size_t most = 7;
    const std::vector<const Finding*> rows = with_verdict(assessment, Verdict::exceeded);
    if (rows.size() < 2) return {};
    std::vector<std::string> lines;
    for (std::size_t i = 0; i < std::min(rows.size(), most); ++i) {
        const std::string share = rows[i]->utilisation ? percent(*rows[i]->utilisation) : "fails outright";
        lines.push_back(subject(*rows[i]) + ": " + share);
    }
    if (rows.size() > most) lines.push_back("and " + std::to_string(rows.size() - most) + " more");
    return tag("p", "What fails, worst first:") + '\n' + list_html(lines);
}

std::string holding_html(const Assessment& assessment) {
    const UnitsShown units = assessment.plan.units_shown;
    Table table{{"part", "demand", "capacity", "used", "rule", "in"}, {}};
    for (const Finding* finding : with_verdict(assessment, Verdict::satisfied)) {
        std::string part = tag("span", subject(*finding), "strong") + "<br/>" + tag("span", sentence_of(*finding));
        const std::string number = situation_number(assessment, finding->situation);
        const bool numbered = number != one_line(finding->situation);
        if (!numbered) part += "<br/>" + tag("span", finding->situation, "small");
        table.rows.push_back({part, demand_html(*finding, units), capacity_html(*finding, units), used_html(*finding),
                              tag("span", text_of(finding->clause)), numbered ? tag("span", number) : ""});
    }
    return table_html(table, "compact holding");
}

std::string not_judged_html(const Assessment& assessment) {
    Table table{{"part", "why not", "rule"}, {}};
    for (const Finding* finding : with_verdict(assessment, Verdict::not_applicable)) {
        table.rows.push_back({tag("span", subject(*finding)), tag("span", sentence_of(*finding)),
                              tag("span", text_of(finding->clause))});
    }
    return table_html(table, "compact");
}

std::string forces_html(const Assessment& assessment) {
    const UnitsShown units = assessment.plan.units_shown;
    Table table{{"part", "carries", "least", "in", "greatest", "in"}, {}};
    for (const ForceRange& force : assessment.forces) {
        const auto [least, greatest] = ends_shown(force);
        table.rows.push_back({tag("span", force.part, "strong"), tag("span", force.quantity),
                              value_html(least, force.unit, units),
                              tag("span", situation_number(assessment, force.least_in)),
                              value_html(greatest, force.unit, units),
                              tag("span", situation_number(assessment, force.greatest_in))});
    }
    const std::string note = forces_note(assessment);
    return (note.empty() ? "" : tag("p", note) + '\n') + table_html(table, "compact");
}

std::string situations_html(const Assessment& assessment) {
    const UnitsShown units = assessment.plan.units_shown;
    Table table{{"", "situation", "ridge down", "film sag", "pressing down", "held up by"}, {}};
    for (const SituationResult& result : assessment.situations) {
        std::vector<std::string> row{tag("span", situation_number(assessment, result.situation.name), "n"),
                                     tag("span", result.situation.name)};
        if (result.status == SolveStatus::converged) {
            row.insert(row.end(), {value_html(result.ridge_sag, "m", units), value_html(result.film_sag, "m", units),
                                   value_html(result.vertical_load, "N", units),
                                   value_html(result.vertical_reaction, "N", units)});
        } else {
            row.back() +=
                "<br/>" +
                tag("span", std::string("No balance (") + name_of(result.status) + "): " + result.message, "strong");
            row.insert(row.end(), 4, tag("span", "none"));
        }
        table.rows.push_back(std::move(row));
    }
    return table_html(table, "compact");
}

std::string arrangements_html(const Assessment& assessment) {
    const UnitsShown units = assessment.plan.units_shown;
    Table table{{"snow", "on port", "on starboard", "rule", "read for a boat cover as"}, {}};
    for (const Arrangement& arrangement : assessment.arrangements) {
        table.rows.push_back({tag("span", arrangement.name, "strong"),
                              range_html(arrangement.port, assessment.stations, units),
                              range_html(arrangement.starboard, assessment.stations, units),
                              tag("span", text_of(arrangement.clause)), tag("span", arrangement.note)});
    }
    const std::string note = depth_note(assessment);
    return table_html(table, "compact") + (note.empty() ? "" : '\n' + tag("p", note));
}

}  // namespace coverframe::reporting
