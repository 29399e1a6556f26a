// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/base/version.hpp"
#include "coverframe/report/cautions.hpp"
#include "coverframe/report/drawing.hpp"
#include "coverframe/report/report.hpp"
#include "coverframe/units/crossing.hpp"
#include "report/format.hpp"
#include "report/html.hpp"
#include "report/shape.hpp"
#include "report/sheet.hpp"
#include "report/text.hpp"

namespace coverframe {
namespace {

using namespace reporting;

std::string head_html(const Assessment& assessment) {
    const Plan& plan = assessment.plan;
    const std::string title = plan.title.empty() ? "Winter cover" : plan.title;
    std::string html = tag("h1", title) + '\n' +
                       tag("p", "Boat: " + plan.boat.name + ". Place: " + plan.site.name + '.', "under") + '\n' +
                       tag("p", what_this_is(assessment)) + '\n';
    if (!plan.note.empty()) html += tag("p", plan.note) + '\n';
    return html;
}

std::string cautions_html() {
    std::vector<std::string> sentences;
    for (const std::string_view sentence : cautions()) sentences.emplace_back(sentence);
    return wrap("section", '\n' + tag("h2", "Before anything else") + '\n' + list_html(sentences), "cautions") + '\n';
}

std::string verdict_html(const Assessment& assessment) {
    std::string body =
        tag("h2", "Verdict") + '\n' + tag("p", verdict_sentence(assessment)) + '\n' + list_html(assessment.failures);
    const Finding* worst = governing(assessment.findings);
    if (worst != nullptr) body += tag("p", sentence_of(*worst), "worst") + '\n';
    return wrap("section", '\n' + body, assessment.outcome == Outcome::satisfied ? "verdict satisfied" : "verdict") +
           '\n';
}

std::string figure_html(std::string_view caption, const std::string& svg) {
    return wrap("figure", '\n' + tag("figcaption", caption) + '\n' + svg) + '\n';
}

std::string drawings_html(const Assessment& assessment) {
    const DrawingOptions options{.width = 680};
    const std::string place = both(place_of_section(assessment), "m", assessment.plan.units_shown);
    return figure_html("Side view, from port", side_view(assessment, options)) +
           figure_html("Plan, from above", plan_view(assessment, options)) +
           figure_html("Section " + place + " aft of the stem head, from astern", section_view(assessment, options));
}

std::string signs_html() {
    return table_html(
        {{"measured on the boat by", "read and judged by", "built and tensioned by", "date"}, {{"", "", "", ""}}},
        "record");
}

std::string record_html() {
    constexpr int empty_rows = 8;
    Table log{{"date", "snow on the cover", "what was found", "what was done", "by"}, {}};
    for (int i = 0; i < empty_rows; ++i) log.rows.push_back({"", "", "", "", ""});
    return signs_html() + tag("p", "Looked at after the first cold night, every snowfall and every gale:") +
           table_html(log, "record");
}

}  // namespace

std::string job_sheet(const Assessment& assessment, const SurfaceSurvey* film) {
    std::string body = head_html(assessment) + cautions_html() + verdict_html(assessment) +
                       failing_list_html(assessment);
    body += drawings_html(assessment);
    body += part_html("Setting out", setting_out_html(assessment));
    body += part_html("Record", record_html());
    if (film != nullptr) body += part_html("The film as a surface", film_html(assessment, *film));
    body += part_html("What fails", failing_html(assessment));
    body += part_html("What holds", holding_html(assessment));
    body += part_html("What was not judged", not_judged_html(assessment));
    body += part_html("What each part carries", forces_html(assessment));
    body += part_html("Snow on the cover", arrangements_html(assessment));
    body += part_html("Situations", situations_html(assessment));
    body += part_html("Choices and where they come from", choices_html(assessment));
    body += part_html("Taken as given", list_html(assessment.assumptions));
    body += part_html("Workings", workings_html(assessment), "appendix");
    body += tag("footer", "coverframe " + std::string(version)) + '\n';
    const std::string head = "<meta charset=\"utf-8\"/>\n" + tag("title", assessment.plan.title) + "\n<style>" +
                             std::string(sheet_style()) + "</style>\n";
    return "<!DOCTYPE html>\n<html lang=\"en\">\n" + wrap("head", '\n' + head) + '\n' + wrap("body", '\n' + body) +
           "\n</html>\n";
}

}  // namespace coverframe
