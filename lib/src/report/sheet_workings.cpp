// SPDX-License-Identifier: BSD-3-Clause
#include <map>
#include <span>

#include "report/html.hpp"
#include "report/sheet.hpp"
#include "report/text.hpp"

namespace coverframe::reporting {
namespace {

// Long explanations that come again and again, such as the source of a strength, stand once, under a number.
class Notes {
public:
    explicit Notes(const Assessment& assessment) {
        for (const Arrangement& arrangement : assessment.arrangements) count(arrangement.workings);
        for (const Finding& finding : assessment.findings) count(finding.workings);
        for (const std::string& text : in_order_) {
            if (times_[text] > 1) numbered_.push_back(text);
        }
        for (std::size_t i = 0; i < numbered_.size(); ++i) number_[numbered_[i]] = i + 1;
    }

    [[nodiscard]] std::string said(const std::string& text) const {
        const auto found = number_.find(text);
        return found == number_.end() ? text : "note " + std::to_string(found->second);
    }

    [[nodiscard]] std::string html() const {
        if (numbered_.empty()) return {};
        std::string items;
        for (const std::string& text : numbered_) items += tag("li", text) + '\n';
        return tag("h3", "Notes to the workings") + wrap("ol", '\n' + items, "notes") + '\n';
    }

private:
    void count(std::span<const Term> terms) {
        constexpr std::size_t is_long = 64;
        for (const Term& term : terms) {
            if (characters(term.formula) > is_long && ++times_[term.formula] == 1) in_order_.push_back(term.formula);
        }
    }

    std::map<std::string, int> times_;
    std::vector<std::string> in_order_;
    std::vector<std::string> numbered_;
    std::map<std::string, std::size_t> number_;
};

std::string terms_html(const std::vector<Term>& terms, const Notes& notes, UnitsShown units) {
    Table table{{"", "value", "how"}, {}};
    for (const Term& term : terms) {
        std::string how = tag("span", notes.said(term.formula));
        if (!term.clause.document.empty()) how += ' ' + tag("span", '[' + text_of(term.clause) + ']', "o");
        table.rows.push_back({tag("span", term.symbol), value_html(term.value, term.unit, units, 4), how});
    }
    return table_html(table);
}

}  // namespace

std::string workings_html(const Assessment& assessment) {
    const UnitsShown units = assessment.plan.units_shown;
    const Notes notes(assessment);
    std::string html;
    for (const Arrangement& arrangement : assessment.arrangements) {
        if (arrangement.workings.empty()) continue;
        html +=
            wrap("div", tag("h3", "Snow, " + arrangement.name) + terms_html(arrangement.workings, notes, units)) + '\n';
    }
    for (const Finding& finding : assessment.findings) {
        if (finding.workings.empty()) continue;
        const std::string where =
            finding.situation.empty() ? "" : " (" + situation_number(assessment, finding.situation) + ")";
        html += wrap("div", tag("h3", subject(finding) + where) + terms_html(finding.workings, notes, units)) + '\n';
    }
    return html.empty() ? html : notes.html() + wrap("div", '\n' + html, "workings");
}

}  // namespace coverframe::reporting
