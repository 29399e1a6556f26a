// SPDX-License-Identifier: BSD-3-Clause
// How a rule is entered into the catalogue:
//
//     add(rules, {"asce7_16", "flat_load", asce7_16::clause_7_3, "Flat roof snow load.", Read::page, "...", us_units},
//         {{"ground_snow_kpa", "p_g", "ground snow load, 50 years, 0 to 100"}, ...},
//         {{"flat_load_kpa", "p_f", "0.7 C_e C_t I_s p_g"}},
//         [](Pressure p_g, double c_e, double c_t, double i_s) { return asce7_16::flat_load_7_3(p_g, c_e, c_t, i_s);
//         });
//
// A rule of plain arithmetic may be followed by a fast form of it for arrays, see fast.hpp:
//
//         [](double p_g, double c_e, double c_t, double i_s) {
//             return fast(within(p_g, 0.0, 100.0) * within(c_e, 0.5, 1.5) * ..., 0.7 * c_e * c_t * i_s * p_g);
//         });
//
// The lambdas capture nothing. The measure of each value follows from its type; an enumeration needs a function
// `choices_of(Enumeration)` beside it that gives the words of its values from 0 on, as an array of const char*. A rule
// with several results gives a std::tuple. `add` checks the entry (keyword endings, number of texts) and throws
// std::logic_error at the first look at the catalogue, so a wrong entry fails every test.
#pragma once

#include <array>
#include <cstddef>
#include <tuple>
#include <type_traits>
#include <utility>
#include <vector>

#include "actions/catalogue/fast.hpp"
#include "coverframe/actions/rule.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe::catalogue {

/// From a number of the catalogue to a type, and back.
template <class T>
struct Slot;

template <>
struct Slot<double> {
    static constexpr Measure measure = Measure::number;
    static double from(double number) { return number; }
    static double to(double value) { return value; }
};

template <>
struct Slot<bool> {
    static constexpr Measure measure = Measure::truth;
    static bool from(double number) { return number != 0.0; }
    static double to(bool value) { return value ? 1.0 : 0.0; }
};

template <class T>
    requires std::is_enum_v<T>
struct Slot<T> {
    static constexpr Measure measure = Measure::choice;
    static T from(double number) { return static_cast<T>(static_cast<int>(number)); }
    static double to(T value) { return static_cast<double>(value); }
};

#define COVERFRAME_SLOT(Quantity, kind, unit)                            \
    template <>                                                          \
    struct Slot<Quantity> {                                              \
        static constexpr Measure measure = Measure::kind;                \
        static Quantity from(double number) { return from_##unit(number); } \
        static double to(Quantity value) { return in_##unit(value); }    \
    };

COVERFRAME_SLOT(Length, length, m)
COVERFRAME_SLOT(Angle, angle, deg)
COVERFRAME_SLOT(Pressure, area_load, kPa)
COVERFRAME_SLOT(UnitWeight, unit_weight, kN_per_m3)
COVERFRAME_SLOT(LineLoad, line_load, kN_per_m)
COVERFRAME_SLOT(Force, force, kN)

#undef COVERFRAME_SLOT

/// Writes the results of one item.
template <class T>
struct Give {
    static constexpr std::size_t count = 1;
    static std::vector<RuleValue> described(std::vector<RuleValue> values) {
        values.at(0).measure = Slot<T>::measure;
        return values;
    }
    static void put(double* const* results, std::size_t i, T value) { results[0][i] = Slot<T>::to(value); }
};

template <class... T>
struct Give<std::tuple<T...>> {
    static constexpr std::size_t count = sizeof...(T);
    static std::vector<RuleValue> described(std::vector<RuleValue> values) {
        std::size_t k = 0;
        ((values.at(k++).measure = Slot<T>::measure), ...);
        return values;
    }
    static void put(double* const* results, std::size_t i, const std::tuple<T...>& values) {
        std::apply([&](const T&... value) { std::size_t k = 0; ((results[k++][i] = Slot<T>::to(value)), ...); }, values);
    }
};

template <class Call, class Result, class... Argument, std::size_t... k>
void loop(const RuleColumn* arguments, std::size_t count, double* const* results, std::size_t& at,
          std::index_sequence<k...>) {
    [[maybe_unused]] const std::array<RuleColumn, sizeof...(Argument) + 1> column{arguments[k]..., RuleColumn{}};
    std::size_t i = 0;
    try {
        for (; i < count; ++i) {
            Give<Result>::put(results, i, Call{}(Slot<Argument>::from(column[k].items[i * column[k].step])...));
        }
    } catch (...) {
        at = i;
        throw;
    }
}

template <class Call, class Result, class... Argument>
constexpr RuleLoop loop_of(Result (*)(Argument...)) {
    return [](const RuleColumn* columns, std::size_t count, double* const* out, std::size_t& at) {
        loop<Call, Result, Argument...>(columns, count, out, at, std::index_sequence_for<Argument...>{});
    };
}

template <class T>
void describe(RuleValue& value) {
    value.measure = Slot<T>::measure;
    if constexpr (std::is_enum_v<T>) {
        for (const char* word : choices_of(T{})) value.choices.emplace_back(word);
    }
}

inline constexpr bool us_units = true;  ///< workings in psf, ft, pcf
inline constexpr bool si_units = false;

/// The head of an entry.
struct Head {
    std::string space;
    std::string name;
    Clause clause;
    std::string summary;
    Read read = Read::doubtful;
    std::string source;
    bool us = si_units;
};

/// An argument or result as the entry writes it; `otherwise` is the word of a choice that is taken if none is given.
struct Text {
    std::string keyword;
    std::string symbol;
    std::string text;
    std::string otherwise = {};
};

/// The entry without what the types of the function say.   \throws std::logic_error if it is not sound
Rule rule_of(const Head& head, const std::vector<Text>& arguments, const std::vector<Text>& results,
             std::size_t argument_count, std::size_t result_count);

/// \throws std::logic_error if keywords and measures do not fit
void check(const Rule& rule);

template <class Call, class Result, class... Argument>
void add_call(std::vector<Rule>& rules, const Head& head, const std::vector<Text>& arguments,
              const std::vector<Text>& results, Result (*call)(Argument...)) {
    Rule rule = rule_of(head, arguments, results, sizeof...(Argument), Give<Result>::count);
    std::size_t k = 0;
    (describe<Argument>(rule.arguments[k++]), ...);
    rule.results = Give<Result>::described(std::move(rule.results));
    rule.loop = rule.by_item = loop_of<Call>(call);
    check(rule);
    rules.push_back(std::move(rule));
}

/// Enters one rule.
template <class Call>
void add(std::vector<Rule>& rules, const Head& head, const std::vector<Text>& arguments,
         const std::vector<Text>& results, Call call) {
    add_call<Call>(rules, head, arguments, results, +call);
}

template <class Form, class Call, std::size_t result_count, class... Argument, class Result, class... Taken>
RuleLoop fast_loop(Fast<result_count> (*)(Argument...), Result (*)(Taken...)) {
    static_assert(sizeof...(Argument) == sizeof...(Taken), "a fast form takes what its rule takes");
    static_assert(result_count == Give<Result>::count, "a fast form gives what its rule gives");
    static_assert((std::is_same_v<Argument, std::conditional_t<std::is_enum_v<Taken> || std::is_same_v<Taken, bool>,
                                                               Taken, double>> && ...),
                  "a fast form takes numbers, and choices and truths as its rule does");
    return [](const RuleColumn* columns, std::size_t count, double* const* out, std::size_t& at) {
        constexpr RuleLoop by_item = loop_of<Call>(static_cast<Result (*)(Taken...)>(nullptr));
        FastLoop<Form, result_count, Argument...>::run(columns, count, out, at, by_item);
    };
}

/// Enters one rule with a fast form.
template <class Call, class Form>
void add(std::vector<Rule>& rules, const Head& head, const std::vector<Text>& arguments,
         const std::vector<Text>& results, Call call, Form form) {
    add_call<Call>(rules, head, arguments, results, +call);
    rules.back().loop = fast_loop<Form, Call>(+form, +call);
}

// One function a document, in the file of its name.
void add_asce7_10(std::vector<Rule>& rules);
void add_asce7_16(std::vector<Rule>& rules);
void add_asce7_22(std::vector<Rule>& rules);
void add_en1990(std::vector<Rule>& rules);
void add_en1991_1_3(std::vector<Rule>& rules);
void add_en1991_1_3_ground(std::vector<Rule>& rules);
void add_en1991_1_6(std::vector<Rule>& rules);
void add_extremes(std::vector<Rule>& rules);
void add_iso4355(std::vector<Rule>& rules);
void add_national(std::vector<Rule>& rules);
void add_nbc2015(std::vector<Rule>& rules);
void add_nbc2020(std::vector<Rule>& rules);
void add_snowpack(std::vector<Rule>& rules);

}  // namespace coverframe::catalogue
