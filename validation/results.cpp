// SPDX-License-Identifier: BSD-3-Clause
#include "results.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <map>
#include <ostream>
#include <regex>
#include <set>
#include <sstream>

#include "coverframe/actions/rule.hpp"

namespace coverframe::validation {
namespace {

/// A cell of a Markdown table.
std::string cell(std::string text) {
    std::string safe;
    for (const char c : text) {
        if (c == '|') safe += "\\|";
        else safe += c == '\n' ? ' ' : c;
    }
    return safe;
}

std::string tolerance_text(const Expected& expected) {
    if (expected.relative) return printed_number(100.0 * expected.tolerance) + " %";
    return printed_number(expected.tolerance) + (expected.unit == "-" ? "" : " " + expected.unit);
}

/// The letter before the colon of "A: printed value read on the page", if there is one.
std::string grade_of(const Case& one) {
    const std::size_t colon = one.quality.find(':');
    return colon <= 2 ? one.quality.substr(0, colon) : "";
}

std::string outcome_text(const Compared& number) {
    switch (number.outcome) {
        case Outcome::agrees: return "agrees";
        case Outcome::disagrees_as_said: return "**disagrees**";
        case Outcome::misses: return "**MISSES**";
    }
    return "";
}

void write_numbers(std::ostream& out, const std::vector<RunCase>& cases) {
    std::string topic;
    for (const RunCase& run : cases) {
        if (run.data.topic != topic) {
            topic = run.data.topic;
            out << "\n## " << topic << "\n\n"
                << "| case | title | source | how read | grade | quantity | printed | unrounded | ours | difference | "
                   "tolerance | reason | outcome |\n|---|---|---|---|---|---|---:|---:|---:|---:|---:|---|---|\n";
        }
        for (const Compared& number : run.numbers) {
            const Expected& e = number.expected;
            out << "| " << run.data.id << " | " << cell(run.data.title) << " | " << run.data.source_key << ", "
                << cell(run.data.source_place) << " | " << run.data.how_read << " | " << grade_of(run.data) << " | "
                << cell(e.quantity)
                << (e.unit == "-" ? "" : " [" + e.unit + "]") << " | " << (e.printed ? cell(*e.printed) : "") << " | "
                << (e.unrounded ? printed_number(*e.unrounded) : "") << " | " << printed_number(number.ours) << " | "
                << printed_difference(number) << " | " << tolerance_text(e) << " | " << cell(e.reason) << " | "
                << outcome_text(number) << " |\n";
        }
    }
}

void write_disagreements(std::ostream& out, const std::vector<RunCase>& cases) {
    out << "\n## Where we disagree and stand by it\n\n";
    bool any = false;
    for (const RunCase& run : cases) {
        for (const Compared& number : run.numbers) {
            if (number.outcome != Outcome::disagrees_as_said) continue;
            any = true;
            out << "* **" << run.data.id << "**, " << number.expected.quantity << ": "
                << (number.expected.printed ? "printed " + *number.expected.printed
                                            : "found " + printed_number(number.expected.value))
                << ", ours " << printed_number(number.ours) << ". " << *number.expected.disagrees << "\n";
        }
    }
    if (!any) out << "Nowhere.\n";
}

/// How many numbers stand behind one rule.
struct Evidence {
    std::set<std::string> cases;
    int printed = 0, remembered = 0, other = 0;
};

using EvidenceByRule = std::map<std::string, Evidence>;

EvidenceByRule evidence_of(const std::vector<RunCase>& cases) {
    EvidenceByRule by_rule;
    for (const RunCase& run : cases) {
        for (const Compared& number : run.numbers) {
            std::istringstream stream(number.rule);
            const std::set<std::string> names{std::istream_iterator<std::string>(stream), {}};
            for (const std::string& name : names) {
                Evidence& evidence = by_rule[name];
                evidence.cases.insert(run.data.id);
                if (number.expected.printed && run.data.how_read == "read on the page") ++evidence.printed;
                else if (number.expected.printed && run.data.how_read == "from memory") ++evidence.remembered;
                else ++evidence.other;
            }
        }
    }
    return by_rule;
}

std::string counts_of(const Evidence& evidence) {
    return " | " + std::to_string(evidence.cases.size()) + " | " + std::to_string(evidence.printed) + " | " +
           std::to_string(evidence.remembered) + " | " + std::to_string(evidence.other) + " |\n";
}

/// Takes the rules of the catalogue out of `by_rule`.
void write_clauses(std::ostream& out, EvidenceByRule& by_rule) {
    std::size_t printed = 0;
    std::ostringstream table;
    for (const Rule& rule : rules()) {
        const Evidence evidence = by_rule[text_of(rule)];
        by_rule.erase(text_of(rule));
        if (evidence.printed + evidence.remembered > 0) ++printed;
        table << "| `" << text_of(rule) << "` | " << cell(text_of(rule.clause)) << " | " << name_of(rule.read) << " | "
              << cell(rule.source) << counts_of(evidence);
    }
    out << "\n## Evidence by clause\n\n"
        << "Every rule of the catalogue, how it was read and where, and how many numbers stand behind it: printed and "
           "read where it is printed, printed but remembered, and neither (closed form or independent program). A "
           "number counts for every rule on its way. Of "
        << rules().size() << " rules, " << printed << " have a printed number and " << rules().size() - printed
        << " have none: those are tested by hand-computed values, limits and invariants only.\n\n"
        << "| rule | clause | how read | where | cases | printed, read | printed, from memory | not printed |\n"
        << "|---|---|---|---|---:|---:|---:|---:|\n"
        << table.str();
}

void write_evidence(std::ostream& out, const std::vector<RunCase>& cases, const std::vector<std::string>& functions) {
    EvidenceByRule by_rule = evidence_of(cases);
    write_clauses(out, by_rule);
    for (const std::string& function : functions) by_rule[function];
    out << "\n## Evidence by function\n\n"
           "The same for functions outside the catalogue.\n\n"
        << "| function | cases | printed, read | printed, from memory | not printed |\n"
        << "|---|---:|---:|---:|---:|\n";
    for (const auto& [function, evidence] : by_rule) out << "| `" << function << '`' << counts_of(evidence);
}

void write_held(std::ostream& out, const std::vector<Case>& held) {
    out << "\n## Held cases\n\nCases whose rule or model is not written yet, or that a public function of the library "
           "does not answer. Their numbers are kept in `held/`.\n\n"
        << "| case | title | source | how read | why held |\n|---|---|---|---|---|\n";
    for (const Case& one : held) {
        out << "| " << one.id << " | " << cell(one.title) << " | " << one.source_key << ", " << cell(one.source_place)
            << " | " << one.how_read << " | " << cell(one.held) << " |\n";
    }
}

}  // namespace

bool RunCase::passed() const {
    return error.empty() &&
           std::ranges::none_of(numbers, [](const Compared& n) { return n.outcome == Outcome::misses; });
}

std::string printed_number(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.6g", std::abs(value) < 1e-12 ? 0.0 : value);
    return text;
}

std::string printed_difference(const Compared& number) {
    const double shown = std::stod(printed_number(number.ours));
    const double value = number.expected.value;
    char text[32];
    if (value == 0) {
        std::snprintf(text, sizeof text, "%.1e", std::abs(shown));
        return shown == 0 ? "0" : text;
    }
    const double percent = 100.0 * (shown - value) / std::abs(value);
    if (std::abs(percent) < 5e-4) return "0";
    std::snprintf(text, sizeof text, "%+.3f %%", percent);
    return text;
}

double digits_of_agreement(double ours, double value) {
    const double difference = std::abs(ours - value) / (value == 0 ? 1.0 : std::abs(value));
    return difference <= 1e-9 ? 9.0 : std::max(0.0, -std::log10(difference));
}

void write_results(std::ostream& out, const std::vector<RunCase>& cases, const std::vector<Case>& held,
                   const std::vector<std::string>& functions) {
    std::size_t numbers = 0;
    for (const RunCase& run : cases) numbers += run.numbers.size();
    out << "# Validation results\n\nWritten by `coverframe_validation --results`; do not edit. " << cases.size()
        << " cases, " << numbers << " numbers, " << held.size() << " held cases. Source keys are in `sources.bib`.\n"
        << "*Printed* is what the source prints, *unrounded* what it would print with more digits, *difference* ours "
           "against the printed number, or against the unrounded one where nothing is printed. *Grade* of the "
           "evidence: A printed and read on its page; B printed, read as quoted in the tests of an open-source "
           "library; C read in part, or from a re-run; D printed, from memory; E closed form; F another program. "
           "`README.md` says more.\n";
    write_disagreements(out, cases);
    write_evidence(out, cases, functions);
    write_numbers(out, cases);
    write_held(out, held);
}

std::vector<std::string> rules_declared(const std::filesystem::path& folder) {
    static const std::regex space("^namespace coverframe::([a-z0-9_]+)");
    static const std::regex rule(
        "(?:^\\[\\[nodiscard\\]\\][^(]*\\s|^inline constexpr [A-Za-z]+ )"
        "([a-z][A-Za-z0-9_]*(?:_[A-Z0-9][0-9]*)(?:_[0-9]+)*)(?=[({ ])");
    std::set<std::string> names;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
        const bool in_catalogue = std::ranges::count(entry.path(), "actions") > 0;
        if (entry.path().extension() != ".hpp" || in_catalogue) continue;
        std::ifstream stream(entry.path());
        std::string inside;
        for (std::string line; std::getline(stream, line);) {
            std::smatch found;
            if (std::regex_search(line, found, space)) inside = found[1].str() + "::";
            if (std::regex_search(line, found, rule)) names.insert(inside + found[1].str());
        }
    }
    return {names.begin(), names.end()};
}

}  // namespace coverframe::validation
