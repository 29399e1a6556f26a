// SPDX-License-Identifier: BSD-3-Clause
// Rules of the catalogue, called by name.
//
// "rule": one of them. The input holds its name under "rule" and its arguments under their keywords:
//     { "rule": "en1991_1_3.shape_coefficient", "slope_deg": "40 deg", "sliding": "free" }
// "rules": several in turn. An argument may be the result of an earlier step, "=exposure_coefficient", and a step may
// be given a name that its results carry in front, "upper.roof_load_kpa":
//     { "steps": [ { "rule": ... }, { "rule": ..., "as": "upper", "shape_coefficient": "=shape_coefficient" } ] }
// Quantities are texts with their unit, pure numbers are numbers, truths true or false, choices their word. A slope may
// be { "rise": 0.5, "run": 12 }. Every result is answered under its keyword.
#include <cmath>
#include <map>

#include "coverframe/actions/rule.hpp"
#include "coverframe/units/crossing.hpp"
#include "model.hpp"

namespace coverframe::validation {
namespace {

Angle slope_of(const Input& input, const std::string& key) {
    return from_rad(std::atan(input.at(key).number("rise") / input.at(key).number("run")));
}

double choice_of(const RuleValue& value, const std::string& word) {
    for (std::size_t i = 0; i < value.choices.size(); ++i) {
        if (value.choices[i] == word) return static_cast<double>(i);
    }
    throw CaseError(value.keyword + " has no choice \"" + word + "\"");
}

double argument_of(const RuleValue& value, const Input& input) {
    const std::string& key = value.keyword;
    switch (value.measure) {
        case Measure::number: return input.number(key);
        case Measure::truth: return input.flag(key) ? 1.0 : 0.0;
        case Measure::choice: return choice_of(value, input.text(key));
        case Measure::length: return in_m(input.quantity<Length>(key));
        case Measure::angle:
            return in_deg(input.is_object(key) ? slope_of(input, key) : input.quantity<Angle>(key));
        case Measure::area_load: return in_kPa(input.quantity<Pressure>(key));
        case Measure::unit_weight: return in_kN_per_m3(input.quantity<UnitWeight>(key));
        case Measure::line_load: return in_kN_per_m(input.quantity<LineLoad>(key));
        case Measure::force: return in_kN(input.quantity<Force>(key));
    }
    throw CaseError("unknown measure");
}

Number number_of(const RuleValue& value, double result, const std::string& rule) {
    switch (value.measure) {
        case Measure::number:
        case Measure::truth:
        case Measure::choice: return answer(result, rule);
        case Measure::length: return answer(from_m(result), rule);
        case Measure::angle: return answer(from_deg(result), rule);
        case Measure::area_load: return answer(from_kPa(result), rule);
        case Measure::unit_weight: return answer(from_kN_per_m3(result), rule);
        case Measure::line_load: return answer(from_kN_per_m(result), rule);
        case Measure::force: return answer(from_kN(result), rule);
    }
    throw CaseError("unknown measure");
}

/// A result of an earlier step, with the rules on its way.
struct Earlier {
    double value = 0;
    std::string rules;
};

/// Runs one step and enters its results into `earlier`, under `prefix` and the keyword.
void run_step(const Input& input, const std::string& prefix, std::map<std::string, Earlier>& earlier,
              Answers& answers) {
    const Rule& rule = rule_named(input.text("rule"));
    std::vector<double> arguments;
    std::string behind = text_of(rule);
    for (const RuleValue& value : rule.arguments) {
        const std::string text = input.is_text(value.keyword) ? input.text(value.keyword) : "";
        if (text.starts_with("=")) {
            const auto found = earlier.find(text.substr(1));
            if (found == earlier.end()) throw CaseError("no earlier step answers " + text.substr(1));
            arguments.push_back(found->second.value);
            behind += " " + found->second.rules;
        } else {
            arguments.push_back(argument_of(value, input));
        }
    }
    const std::vector<double> results = evaluate(rule, arguments);
    for (std::size_t k = 0; k < results.size(); ++k) {
        const std::string key = prefix + rule.results[k].keyword;
        if (!earlier.insert({key, {results[k], behind}}).second) {
            throw CaseError("two steps answer " + key + "; give one of them a name with \"as\"");
        }
        answers[key] = number_of(rule.results[k], results[k], behind);
    }
}

Answers one_rule(const Input& input) {
    std::map<std::string, Earlier> earlier;
    Answers answers;
    run_step(input, "", earlier, answers);
    return answers;
}

Answers several_rules(const Input& input) {
    std::map<std::string, Earlier> earlier;
    Answers answers;
    for (const Input& step : input.list("steps")) {
        run_step(step, step.has("as") ? step.text("as") + "." : "", earlier, answers);
    }
    return answers;
}

}  // namespace

void add_rule_models(std::map<std::string, Model>& all) {
    all["rule"] = one_rule;
    all["rules"] = several_rules;
}

}  // namespace coverframe::validation
