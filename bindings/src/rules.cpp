// SPDX-License-Identifier: BSD-3-Clause
// The catalogue of rules over whole arrays. A rule goes by its number in the catalogue. The interpreter lock is
// released around the loop only.
#include <string>
#include <tuple>
#include <vector>

#include "arrays.hpp"
#include "coverframe/actions/rule.hpp"

namespace coverframe::binding {
namespace {

const Rule& rule_at(std::size_t number) {
    expect(number < rules().size(), "number of a rule");
    return rules()[number];
}

using Facts = std::tuple<std::string, std::string, std::string, std::string, std::string, std::vector<std::string>,
                         std::optional<std::string>>;

/// Keyword, symbol, text, unit, kind, choices, choice taken if none is given.
std::vector<Facts> facts_of(const std::vector<RuleValue>& values) {
    std::vector<Facts> all;
    for (const RuleValue& value : values) {
        const char* kind = value.measure == Measure::choice  ? "choice"
                           : value.measure == Measure::truth ? "truth"
                                                             : "number";
        all.emplace_back(value.keyword, value.symbol, value.text, unit_of(value), kind, value.choices, value.otherwise);
    }
    return all;
}

/// Namespace, name, clause, summary, how and where read, arguments, results; in order of the numbers.
py::list all_rules() {
    py::list all;
    for (const Rule& rule : rules()) {
        all.append(py::make_tuple(rule.space, rule.name, text_of(rule.clause), rule.summary, name_of(rule.read),
                                  rule.source, facts_of(rule.arguments), facts_of(rule.results)));
    }
    return all;
}

/// One array for each result.
py::list evaluate_rule(std::size_t number, const Shape& shape, const std::vector<Numbers>& arguments) {
    const Rule& rule = rule_at(number);
    expect(arguments.size() == rule.arguments.size(), "number of arguments");
    const std::size_t size = size_of(shape);
    std::vector<RuleColumn> columns;
    for (const Numbers& values : arguments) {
        expect(values.size() == 1 || static_cast<std::size_t>(values.size()) == size, "size of a column");
        columns.push_back({values.data(), values.size() == 1 ? std::size_t{0} : std::size_t{1}});
    }
    py::list results;
    std::vector<double*> to;
    for (std::size_t k = 0; k < rule.results.size(); ++k) {
        py::array_t<double> result(shape);
        to.push_back(result.mutable_data());
        results.append(std::move(result));
    }
    {
        const py::gil_scoped_release unlocked;
        std::size_t at = 0;
        try {
            rule.loop(columns.data(), size, to.data(), at);
        } catch (const InputError& error) {
            throw at_item(error, at, shape);
        }
    }
    return results;
}

std::vector<std::tuple<std::string, double, std::string, std::string, std::string>> lines(
    std::size_t number, const std::vector<double>& arguments) {
    std::vector<std::tuple<std::string, double, std::string, std::string, std::string>> all;
    for (const Term& term : workings(rule_at(number), arguments)) {
        const std::string clause = term.clause.document.empty() ? "" : text_of(term.clause);
        all.emplace_back(term.symbol, term.value, term.unit, term.formula, clause);
    }
    return all;
}

}  // namespace

void bind_rules(py::module_& module) {
    module.def("rules", &all_rules);
    module.def("evaluate_rule", &evaluate_rule);
    module.def("rule_workings", &lines);
}

}  // namespace coverframe::binding
