// SPDX-License-Identifier: BSD-3-Clause
#include <algorithm>

#include "coverframe/base/version.hpp"
#include "coverframe/report/cautions.hpp"
#include "coverframe/report/report.hpp"
#include "report/film_sheet.hpp"
#include "report/format.hpp"
#include "report/text.hpp"

namespace coverframe {
namespace {

using namespace reporting;

constexpr std::size_t page_width = 100;

// Paragraph with the first line set off by `lead` and the others under its text.
void paragraph(std::string& out, std::string_view lead, std::string_view text, std::size_t indent = 0) {
    const std::string blank(indent + characters(lead), ' ');
    bool first = true;
    for (const std::string& line : wrapped(text, page_width - blank.size())) {
        out += first ? std::string(indent, ' ') + std::string(lead) : blank;
        out += line + '\n';
        first = false;
    }
}

void heading(std::string& out, std::string_view text) {
    out += '\n' + std::string(text) + '\n' + std::string(characters(text), '-') + '\n';
}

std::string padded(std::string text, std::size_t width) {
    const std::size_t length = characters(text);
    return length < width ? std::string(width - length, ' ') + text : text;
}

std::string share_of(const Finding& finding) {
    if (finding.utilisation) return percent(*finding.utilisation);
    return finding.verdict == Verdict::exceeded ? "FAILS" : "-";
}

void add_finding(std::string& out, const Assessment& assessment, const Finding& finding) {
    const UnitsShown units = assessment.plan.units_shown;
    constexpr std::size_t share_width = 9;
    paragraph(out, padded(share_of(finding), share_width) + "  ", subject(finding));
    const std::string blank(share_width + 2, ' ');
    if (finding.verdict != Verdict::not_applicable) {
        paragraph(out, blank,
                  "demand " + both(finding.demand, finding.unit, units, 3, finding.capacity) + ", capacity " +
                      both(finding.capacity, finding.unit, units, 3, finding.demand) + "; " + text_of(finding.clause));
        if (!finding.situation.empty()) paragraph(out, blank, "in " + finding.situation);
    } else {
        paragraph(out, blank, text_of(finding.clause));
    }
    paragraph(out, blank, sentence_of(finding));
    out += '\n';
}

void add_findings(std::string& out, const Assessment& assessment, Verdict verdict, std::string_view title) {
    if (std::ranges::count(assessment.findings, verdict, &Finding::verdict) == 0) return;
    heading(out, title);
    for (const Finding& finding : assessment.findings) {
        if (finding.verdict == verdict) add_finding(out, assessment, finding);
    }
    out.pop_back();
}

void add_forces(std::string& out, const Assessment& assessment) {
    if (assessment.forces.empty()) return;
    heading(out, "What each part carries");
    paragraph(out, "", forces_note(assessment));
    const UnitsShown units = assessment.plan.units_shown;
    for (const ForceRange& force : assessment.forces) {
        const auto [least, greatest] = ends_shown(force);
        paragraph(out, "",
                  one_line(force.part) + ", " + one_line(force.quantity) + ": " + both(least, force.unit, units) +
                      " (" + situation_number(assessment, force.least_in) + ") to " +
                      both(greatest, force.unit, units) + " (" + situation_number(assessment, force.greatest_in) + ")");
    }
}

void add_depths(std::string& out, const Assessment& assessment) {
    const std::string note = depth_note(assessment);
    if (note.empty()) return;
    heading(out, "How deep that snow lies");
    paragraph(out, "", note);
}

void add_situations(std::string& out, const Assessment& assessment) {
    if (assessment.situations.empty()) return;
    heading(out, "Situations");
    for (const SituationResult& result : assessment.situations) {
        const std::string number = situation_number(assessment, result.situation.name);
        const bool usable = result.status == SolveStatus::converged;
        const std::string state = usable ? "" : std::string(": NO BALANCE (") + name_of(result.status) + ")";
        paragraph(out, padded(number, 4) + "  ", result.situation.name + state);
    }
}

void add_list(std::string& out, std::string_view title, const std::vector<std::string>& sentences) {
    if (sentences.empty()) return;
    heading(out, title);
    for (const std::string& sentence : sentences) paragraph(out, "- ", sentence);
}

}  // namespace

std::string verdict_line(const Assessment& assessment) {
    const std::string outcome = one_line(name_of(assessment.outcome));
    if (assessment.outcome == Outcome::no_equilibrium) {
        return outcome + ": " +
               (assessment.failures.empty() ? "the cover cannot stand" : one_line(assessment.failures.front()));
    }
    const Finding* worst = governing(assessment.findings);
    if (worst == nullptr) return outcome + ": no part was judged";
    std::string line = outcome + ": " + subject(*worst) + ", ";
    line += worst->utilisation ? percent(*worst->utilisation)
                               : (worst->verdict == Verdict::exceeded ? "fails outright" : name_of(worst->verdict));
    if (!worst->situation.empty()) line += " (" + one_line(worst->situation) + ")";
    return line;
}

std::string text_report(const Assessment& assessment) {
    std::string out;
    paragraph(out, "", assessment.plan.title.empty() ? "Winter cover" : assessment.plan.title);
    paragraph(out, "", what_this_is(assessment));
    if (!assessment.plan.note.empty()) paragraph(out, "", assessment.plan.note);
    heading(out, "Before anything else");
    for (const std::string_view caution : cautions()) paragraph(out, "! ", caution);
    heading(out, "Verdict");
    paragraph(out, "", verdict_sentence(assessment));
    for (const std::string& failure : assessment.failures) paragraph(out, "* ", failure);
    add_findings(out, assessment, Verdict::exceeded, "What fails");
    add_findings(out, assessment, Verdict::satisfied, "What holds");
    add_findings(out, assessment, Verdict::not_applicable, "What was not judged");
    add_forces(out, assessment);
    add_list(out, "Film to lay out", film_sheet_sentences(assessment.plan));
    add_depths(out, assessment);
    add_situations(out, assessment);
    add_list(out, "Taken as given", assessment.assumptions);
    out += "\ncoverframe " + std::string(version) + '\n';
    return out;
}

}  // namespace coverframe
