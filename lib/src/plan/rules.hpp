// SPDX-License-Identifier: BSD-3-Clause
// Whether one value keeps its rule. Used while reading a file and on plans built in code, so that both get the same
// answer.
#pragma once

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "plan/json_value.hpp"
#include "plan/limits.hpp"
#include "plan/suggest.hpp"
#include "plan/words.hpp"

namespace coverframe::plan_detail {

/// What is wrong with a value.
struct Fault {
    std::string code;
    std::string value;   ///< as text
    std::string advice;  ///< the sentence after the name of the field
};

/// "A or B or C".
template <std::size_t N>
[[nodiscard]] std::string list_of(const std::string_view (&words)[N]) {
    std::string text;
    for (const std::string_view word : words) text += (text.empty() ? "\"" : " or \"") + std::string(word) + "\"";
    return text;
}

template <class Choice, std::size_t N>
[[nodiscard]] std::string list_of(const Word<Choice> (&words)[N]) {
    std::string_view texts[N];
    std::transform(std::begin(words), std::end(words), texts, [](const auto& word) { return word.text; });
    return list_of(texts);
}

template <Readable Quantity>
[[nodiscard]] std::optional<Fault> fault_of(Quantity value, const Limit<Quantity>& limit) {
    if (value >= limit.low && value <= limit.high) return std::nullopt;
    const bool finite = std::isfinite(value / Quantity::from_value(1.0));
    return Fault{"plan.range", finite ? write(value, limit.unit) : "not a number",
                 "must be " + text_of(limit) + " (" + std::string(limit.reason) + "); check the number and its unit"};
}

[[nodiscard]] inline std::optional<Fault> fault_of(double value, const Limit<double>& limit) {
    if (value >= limit.low && value <= limit.high) return std::nullopt;
    const std::string most = limit.low == limit.high ? "" : " to " + number_text(limit.high);
    return Fault{"plan.range", std::isfinite(value) ? number_text(value) : "not a number",
                 "must be " + number_text(limit.low) + most + " (" + std::string(limit.reason) + "); check the number"};
}

/// The same limit for a number that may not be whole.
[[nodiscard]] constexpr Limit<double> of_any_number(const Limit<int>& limit) {
    return {static_cast<double>(limit.low), static_cast<double>(limit.high), limit.unit, limit.reason};
}

[[nodiscard]] inline std::optional<Fault> fault_of(int value, const Limit<int>& limit) {
    return fault_of(static_cast<double>(value), of_any_number(limit));
}

[[nodiscard]] std::optional<Fault> fault_of(const std::string& text, const TextRule& rule);

template <std::size_t N>
[[nodiscard]] std::optional<Fault> fault_of(const std::string& text, const std::string_view (&words)[N]) {
    if (std::find(std::begin(words), std::end(words), text) != std::end(words)) return std::nullopt;
    return Fault{"plan.choice", text, "must be " + list_of(words)};
}

template <class Choice, std::size_t N>
[[nodiscard]] std::optional<Fault> fault_of(Choice choice, const Word<Choice> (&words)[N]) {
    const bool known =
        std::any_of(std::begin(words), std::end(words), [&](const auto& w) { return w.choice == choice; });
    if (known) return std::nullopt;
    return Fault{"plan.choice", "not one of the choices", "must be " + list_of(words)};
}

[[nodiscard]] inline std::optional<Fault> fault_of(bool, Flag) { return std::nullopt; }

/// `items` in a list.
[[nodiscard]] std::optional<Fault> fault_of(std::size_t items, const Count& count);

}  // namespace coverframe::plan_detail
