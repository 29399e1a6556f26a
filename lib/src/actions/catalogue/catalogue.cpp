// SPDX-License-Identifier: BSD-3-Clause
#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <stdexcept>
#include <string_view>

#include "actions/catalogue/entry.hpp"
#include "coverframe/base/error.hpp"

namespace coverframe {
namespace {

/// Units of a measure: at the boundary, how keywords in it end, and in workings of a document in US units.
struct Units {
    const char* unit;
    const char* ending;
    const char* us_unit;
    double us_per_unit;  // so many US units in one
};

Units units_of(Measure measure) {
    switch (measure) {
        case Measure::length: return {"m", "_m", "ft", in_ft(from_m(1.0))};
        case Measure::angle: return {"deg", "_deg", "deg", 1.0};
        case Measure::area_load: return {"kPa", "_kpa", "psf", in_psf(from_kPa(1.0))};
        case Measure::unit_weight: return {"kN/m3", "_kn_per_m3", "pcf", in_pcf(from_kN_per_m3(1.0))};
        case Measure::line_load: return {"kN/m", "_kn_per_m", "plf", in_plf(from_kN_per_m(1.0))};
        case Measure::force: return {"kN", "_kn", "lbf", in_lbf(from_kN(1.0))};
        case Measure::number:
        case Measure::truth:
        case Measure::choice: break;
    }
    return {"", "", "-", 1.0};
}

bool ends_in_unit(std::string_view keyword) {
    constexpr std::array endings{"_m", "_deg", "_kpa", "_kn_per_m3", "_kn_per_m", "_kn"};
    return std::ranges::any_of(endings, [&](std::string_view ending) { return keyword.ends_with(ending); });
}

std::string joined(const std::vector<std::string>& words) {
    std::string text;
    for (const std::string& word : words) text += (text.empty() ? "" : ", ") + word;
    return text;
}

void check_arguments(const Rule& rule, std::span<const double> arguments) {
    if (arguments.size() != rule.arguments.size()) {
        throw InputError("rule.arguments", "", std::to_string(arguments.size()),
                         text_of(rule) + " takes " + std::to_string(rule.arguments.size()) + " arguments");
    }
    for (std::size_t k = 0; k < arguments.size(); ++k) {
        const RuleValue& value = rule.arguments[k];
        if (value.measure != Measure::choice) continue;
        const double number = arguments[k];
        if (!(number >= 0 && number < static_cast<double>(value.choices.size()) && number == std::floor(number))) {
            throw InputError("rule.arguments", "/" + value.keyword, std::to_string(number),
                             value.keyword + " is the number of one of: " + joined(value.choices));
        }
    }
}

/// "0 to 100; ...", "up to 200", "over 0 to 600 ft".
bool starts_with_limit(std::string_view text) {
    constexpr std::array begins{"over 0", "up to ", "more than ", "from 0"};
    if (std::ranges::any_of(begins, [&](std::string_view begin) { return text.starts_with(begin); })) return true;
    return !text.empty() && text.front() >= '0' && text.front() <= '9' && text.find(" to ") < text.find_first_of(",;");
}

/// The meaning without the limits behind it, which are in units of the catalogue: "ground snow load" of "ground snow
/// load, 50 years, 0 to 100" is cut before ", 0 to 100".
std::string meaning_of(const RuleValue& value) {
    for (std::size_t at = value.text.find(", "); at != std::string::npos; at = value.text.find(", ", at + 2)) {
        if (starts_with_limit(std::string_view(value.text).substr(at + 2))) return value.text.substr(0, at);
    }
    return value.text;
}

Term term_of(const Rule& rule, const RuleValue& value, double number, std::string formula, const Clause& clause) {
    const Units units = units_of(value.measure);
    const bool years = value.keyword.ends_with("_years");
    const std::string unit = years ? "years" : rule.us_units ? units.us_unit : *units.unit ? units.unit : "-";
    return {value.symbol, rule.us_units ? number * units.us_per_unit : number, unit, std::move(formula), clause};
}

std::vector<Rule> all_rules() {
    std::vector<Rule> all;
    using Add = void (*)(std::vector<Rule>&);
    using namespace catalogue;
    constexpr std::array<Add, 13> documents{
        add_asce7_10, add_asce7_16, add_asce7_22, add_en1990,
        add_en1991_1_3, add_en1991_1_3_ground, add_en1991_1_6, add_extremes,
        add_iso4355, add_national, add_nbc2015, add_nbc2020,
        add_snowpack};
    for (const Add add : documents) add(all);
    std::ranges::sort(all, {}, [](const Rule& rule) { return text_of(rule); });
    return all;
}

}  // namespace

const char* name_of(Read read) {
    switch (read) {
        case Read::page: return "read on a page";
        case Read::part: return "read in part";
        case Read::sure: return "from memory, sure";
        case Read::fair: return "from memory";
        case Read::doubtful: return "from memory, doubtful";
        case Read::derived: return "derived here";
    }
    return "";
}

std::span<const Rule> rules() {
    static const std::vector<Rule> all = all_rules();
    return all;
}

const Rule& rule_named(const std::string& name) {
    const auto all = rules();
    const auto found = std::ranges::lower_bound(all, name, {}, [](const Rule& rule) { return text_of(rule); });
    if (found == all.end() || text_of(*found) != name) {
        throw InputError("rule.unknown", "", name, "there is no rule called " + name);
    }
    return *found;
}

std::string unit_of(const RuleValue& value) { return units_of(value.measure).unit; }

std::vector<double> evaluate(const Rule& rule, std::span<const double> arguments) {
    check_arguments(rule, arguments);
    std::vector<RuleColumn> columns;
    for (const double& argument : arguments) columns.push_back({&argument, 0});
    std::vector<double> results(rule.results.size());
    std::vector<double*> to;
    for (double& result : results) to.push_back(&result);
    std::size_t at = 0;
    rule.loop(columns.data(), 1, to.data(), at);
    return results;
}

std::vector<Term> workings(const Rule& rule, std::span<const double> arguments, std::span<const std::string> sources) {
    const std::vector<double> results = evaluate(rule, arguments);
    std::vector<Term> terms;
    std::string choices;
    for (std::size_t k = 0; k < arguments.size(); ++k) {
        const RuleValue& value = rule.arguments[k];
        const bool told = k < sources.size() && !sources[k].empty();
        if (value.measure == Measure::choice) {
            choices += "; " + value.symbol + ": " + value.choices[static_cast<std::size_t>(arguments[k])];
            if (told) choices += " (" + sources[k] + ")";
        } else {
            terms.push_back(term_of(rule, value, arguments[k], told ? sources[k] : meaning_of(value), {}));
        }
    }
    for (std::size_t k = 0; k < results.size(); ++k) {
        const RuleValue& value = rule.results[k];
        terms.push_back(term_of(rule, value, results[k], value.text + (k == 0 ? choices : ""), rule.clause));
    }
    return terms;
}

namespace catalogue {

Rule rule_of(const Head& head, const std::vector<Text>& arguments, const std::vector<Text>& results,
             std::size_t argument_count, std::size_t result_count) {
    if (arguments.size() != argument_count || results.size() != result_count) {
        throw std::logic_error(head.space + "." + head.name + ": texts and types do not go together");
    }
    Rule rule{.space = head.space, .name = head.name, .clause = head.clause, .summary = head.summary,
              .read = head.read, .source = head.source, .us_units = head.us, .arguments = {}, .results = {},
              .loop = nullptr};
    const auto value_of = [](const Text& text) {
        RuleValue value{text.keyword, text.symbol, text.text, Measure::number, {}, {}};
        if (!text.otherwise.empty()) value.otherwise = text.otherwise;
        return value;
    };
    for (const Text& text : arguments) rule.arguments.push_back(value_of(text));
    for (const Text& text : results) rule.results.push_back(value_of(text));
    return rule;
}

void check(const Rule& rule) {
    std::set<std::string> keywords;
    const auto check_value = [&](const RuleValue& value, bool argument) {
        const std::string_view ending = units_of(value.measure).ending;
        const bool fits = ending.empty() ? !ends_in_unit(value.keyword) : value.keyword.ends_with(ending);
        const bool known = !value.otherwise || std::ranges::count(value.choices, *value.otherwise) == 1;
        const bool meant = !starts_with_limit(value.text);
        if (!fits || !known || value.symbol.empty() || value.text.empty() || (argument && !meant)) {
            throw std::logic_error(text_of(rule) + ": " + value.keyword + " is not well described");
        }
    };
    for (const RuleValue& value : rule.arguments) {
        check_value(value, true);
        if (!keywords.insert(value.keyword).second) {
            throw std::logic_error(text_of(rule) + ": " + value.keyword + " twice");
        }
    }
    for (const RuleValue& value : rule.results) check_value(value, false);
    if (rule.summary.empty() || rule.source.empty() || rule.clause.document.empty()) {
        throw std::logic_error(text_of(rule) + ": summary, source or clause is missing");
    }
}

}  // namespace catalogue
}  // namespace coverframe
