// SPDX-License-Identifier: BSD-3-Clause
// What every rule of the catalogue has to do, whatever it is about: give finite numbers for what it accepts, and refuse
// what is no number. Arguments are drawn, with fixed seeds, from values at which rules bend and from ranges around
// them.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <optional>
#include <random>
#include <span>
#include <vector>

#include "actions/refusal.hpp"
#include "coverframe/actions/rule.hpp"

using namespace coverframe;

namespace {

using Generator = std::mt19937_64;

double uniform(Generator& bits, double low, double high) {
    return low + (high - low) * static_cast<double>(bits() >> 11) * 0x1.0p-53;
}

template <std::size_t count>
double one_of(Generator& bits, const std::array<double, count>& values) {
    return values[bits() % count];
}

double drawn(Generator& bits, const RuleValue& value) {
    const bool bend = bits() % 2 == 0;
    if (value.keyword.ends_with("_years")) return one_of(bits, std::array{1.0, 2.0, 5.0, 10.0, 50.0, 100.0, 1000.0});
    switch (value.measure) {
        case Measure::choice: return static_cast<double>(bits() % value.choices.size());
        case Measure::truth: return static_cast<double>(bits() % 2);
        case Measure::angle:
            return bend ? one_of(bits, std::array{0.0, 2.38, 5.0, 10.0, 15.0, 20.0, 30.0, 37.5, 45.0, 60.0, 70.0, 90.0})
                        : uniform(bits, 0.0, 90.0);
        case Measure::length:
            return bend ? one_of(bits, std::array{0.0, 0.3, 1.0, 2.0, 5.0, 15.0, 100.0, 200.0, 1000.0, 1500.0})
                        : uniform(bits, 0.0, 20.0);
        case Measure::area_load:
            return bend ? one_of(bits, std::array{0.0, 0.2, 0.5, 0.9, 1.0, 1.5, 3.0, 10.0}) : uniform(bits, 0.0, 5.0);
        case Measure::unit_weight: return bend ? one_of(bits, std::array{1.0, 2.0, 3.0, 4.0}) : uniform(bits, 1.0, 9.0);
        case Measure::line_load:
        case Measure::force: return bend ? one_of(bits, std::array{0.0, 1.0, 5.0}) : uniform(bits, 0.0, 10.0);
        case Measure::number: break;
    }
    switch (bits() % 4) {
        case 0: return one_of(bits, std::array{0.0, 0.1, 0.2, 0.25, 0.5, 0.8, 1.0, 1.2, 2.0, 3.0, 4.0, 10.0, 50.0});
        case 1: return uniform(bits, 0.0, 1.0);
        case 2: return uniform(bits, 0.5, 1.5);
        default: return uniform(bits, 0.0, 10.0);
    }
}

std::vector<double> drawn_arguments(Generator& bits, const Rule& rule) {
    std::vector<double> arguments;
    for (const RuleValue& value : rule.arguments) arguments.push_back(drawn(bits, value));
    return arguments;
}

std::optional<std::vector<double>> answer(const Rule& rule, std::span<const double> arguments) {
    try {
        return evaluate(rule, arguments);
    } catch (const InputError&) {
        return std::nullopt;
    }
}

bool is_number(const RuleValue& value) { return value.measure != Measure::choice && value.measure != Measure::truth; }

}  // namespace

TEST_CASE("every rule: what it accepts gives finite numbers, and it accepts something") {
    for (const Rule& rule : rules()) {
        CAPTURE(text_of(rule));
        Generator bits(20260101);
        int accepted = 0;
        for (int i = 0; i < 4000; ++i) {
            const std::vector<double> arguments = drawn_arguments(bits, rule);
            const auto results = answer(rule, arguments);
            if (!results) continue;
            ++accepted;
            for (std::size_t k = 0; k < results->size(); ++k) {
                if (std::isfinite((*results)[k])) continue;
                CAPTURE(rule.results[k].keyword);
                CHECK(std::isfinite((*results)[k]));
            }
        }
        CHECK(accepted > 0);
    }
}

TEST_CASE("every rule: what is no number is refused in every argument") {
    for (const Rule& rule : rules()) {
        CAPTURE(text_of(rule));
        Generator bits(7);
        int tried = 0;
        for (int i = 0; i < 4000 && tried < 5; ++i) {
            const std::vector<double> arguments = drawn_arguments(bits, rule);
            if (!answer(rule, arguments)) continue;
            ++tried;
            for (std::size_t k = 0; k < arguments.size(); ++k) {
                if (!is_number(rule.arguments[k])) continue;
                CAPTURE(rule.arguments[k].keyword);
                for (const double nonsense : not_finite) {
                    std::vector<double> changed = arguments;
                    changed[k] = nonsense;
                    CHECK_FALSE(answer(rule, changed).has_value());
                }
            }
        }
    }
}

TEST_CASE("every rule: negative loads and unit weights are refused") {
    for (const Rule& rule : rules()) {
        CAPTURE(text_of(rule));
        Generator bits(11);
        int tried = 0;
        for (int i = 0; i < 4000 && tried < 5; ++i) {
            const std::vector<double> arguments = drawn_arguments(bits, rule);
            if (!answer(rule, arguments)) continue;
            ++tried;
            for (std::size_t k = 0; k < arguments.size(); ++k) {
                const Measure measure = rule.arguments[k].measure;
                if (measure != Measure::area_load && measure != Measure::unit_weight) continue;
                CAPTURE(rule.arguments[k].keyword);
                std::vector<double> changed = arguments;
                changed[k] = -0.01;
                CHECK_FALSE(answer(rule, changed).has_value());
            }
        }
    }
}

TEST_CASE("every rule: its workings end in what it answers, line by line") {
    for (const Rule& rule : rules()) {
        CAPTURE(text_of(rule));
        Generator bits(3);
        for (int i = 0; i < 4000; ++i) {
            const std::vector<double> arguments = drawn_arguments(bits, rule);
            const auto results = answer(rule, arguments);
            if (!results) continue;
            const std::vector<Term> terms = workings(rule, arguments);
            REQUIRE(terms.size() >= results->size());
            for (std::size_t k = 0; k < results->size(); ++k) {
                const Term& term = terms[terms.size() - results->size() + k];
                CHECK(term.symbol == rule.results[k].symbol);
                CHECK_FALSE(term.formula.empty());
                CHECK_FALSE(term.unit.empty());
                if (!rule.us_units) CHECK(term.value == (*results)[k]);
            }
            break;
        }
    }
}

TEST_CASE("every rule: no formula sends the reader to another rule") {
    for (const Rule& rule : rules()) {
        for (const RuleValue& result : rule.results) {
            for (const Rule& other : rules()) {
                if (other.name.find('_') == std::string::npos) continue;
                CAPTURE(text_of(rule));
                CAPTURE(result.text);
                CHECK(result.text.find(other.name) == std::string::npos);
            }
        }
    }
}
