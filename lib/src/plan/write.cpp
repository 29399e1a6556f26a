// SPDX-License-Identifier: BSD-3-Clause
#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>
#include <span>
#include <variant>

#include "coverframe/base/error.hpp"
#include "coverframe/plan/read.hpp"
#include "plan/fields.hpp"
#include "plan/fit.hpp"
#include "plan/json_value.hpp"

namespace coverframe {
namespace plan_detail {
namespace {

/// The units a value is written in, of either system, in the order of liking.
template <Readable Quantity>
std::span<const std::string_view> units_liked(UnitsShown shown) {
    static constexpr std::string_view metric_lengths[]{"m", "mm"}, us_lengths[]{"ft", "in", "mil"};
    static constexpr std::string_view metric_forces[]{"kN", "N"}, us_forces[]{"lbf"};
    static constexpr std::string_view metric_line_loads[]{"kN/m", "N/m"}, us_line_loads[]{"plf"};
    static constexpr std::string_view metric_pressures[]{"kPa", "MPa", "Pa"}, us_pressures[]{"psf", "psi"};
    static constexpr std::string_view metric_weights[]{"kN/m3", "N/m3"}, us_weights[]{"pcf"};
    static constexpr std::string_view angles[]{"deg", "rad"};
    const bool us = shown == UnitsShown::us;
    const auto either = [&](std::span<const std::string_view> metric, std::span<const std::string_view> ours) {
        return us ? ours : metric;
    };
    if constexpr (std::same_as<Quantity, Length>) return either(metric_lengths, us_lengths);
    if constexpr (std::same_as<Quantity, Force>) return either(metric_forces, us_forces);
    if constexpr (std::same_as<Quantity, LineLoad>) return either(metric_line_loads, us_line_loads);
    if constexpr (std::same_as<Quantity, Pressure>) return either(metric_pressures, us_pressures);
    if constexpr (std::same_as<Quantity, UnitWeight>) return either(metric_weights, us_weights);
    if constexpr (std::same_as<Quantity, Angle>) return either(angles, angles);
}

/// How hard a text is to read: its length, and more for a number below 0.1 or from 1000 on.
std::size_t burden(std::string_view text) {
    double number = 0;
    std::from_chars(text.data(), text.data() + text.size(), number);
    const double size = std::abs(number);
    return text.size() + (size != 0 && (size < 0.1 || size >= 1000) ? 4 : 0);
}

/// The most readable text that reads back to the same double: in the system shown, else in the other one where the
/// value came from, else in SI, in which every double can be written.
template <Readable Quantity>
std::string quantity_text(Quantity value, UnitsShown shown) {
    constexpr std::size_t readable = 13;
    std::string best;
    const auto try_units = [&](std::span<const std::string_view> units) {
        for (const std::string_view unit : units) {
            std::string text = write(value, unit);
            if (!text.ends_with(" " + std::string(unit))) continue;  // no double of this unit gives the value
            if (best.empty() || burden(text) < burden(best)) best = std::move(text);
        }
    };
    try_units(units_liked<Quantity>(shown));
    if (best.empty() || burden(best) > readable) {
        try_units(units_liked<Quantity>(shown == UnitsShown::us ? UnitsShown::si : UnitsShown::us));
    }
    return best;
}

/// Writes an object. Visitor of plan/fields.hpp.
class WriteVisitor {
public:
    WriteVisitor(JsonValue& object, UnitsShown shown) : object_(object), shown_(shown) {}

    void format() { object_.add("format", JsonValue::of_number(1)); }

    template <class Value, class Rule>
    void value(std::string_view key, const Value& x, const Rule& rule, std::string_view) {
        object_.add(key, leaf(x, rule));
    }

    template <class Value, class Rule>
    void value(std::string_view key, const std::optional<Value>& x, const Rule& rule, std::string_view about) {
        value(key, *x, rule, about);
    }

    template <class Value, class Rule>
    void maybe_value(std::string_view key, const std::optional<Value>& x, const Rule& rule, std::string_view about) {
        if (x) value(key, *x, rule, about);
    }

    void optional_text(std::string_view key, const std::string& text, const TextRule&, std::string_view) {
        if (!text.empty()) object_.add(key, JsonValue::of_text(text));
    }

    template <class Value, class Rule>
    void cited(std::string_view key, const Cited<Value>& x, const Rule& rule, std::string_view) {
        JsonValue& made = object_.add(key, JsonValue::object());
        made.add("value", leaf(x.value, rule));
        made.add("source", JsonValue::of_text(x.source));
    }

    template <class Value, class Rule>
    void cited(std::string_view key, const std::optional<Cited<Value>>& x, const Rule& rule, std::string_view about) {
        cited(key, *x, rule, about);
    }

    template <class Value, class Rule>
    void maybe_cited(std::string_view key, const std::optional<Cited<Value>>& x, const Rule& rule,
                     std::string_view about) {
        if (x) cited(key, *x, rule, about);
    }

    template <class Struct>
    void part(std::string_view key, const Struct& x, std::string_view) {
        object_.add(key, item(x));
    }

    template <class Struct>
    void part(std::string_view key, const std::optional<Struct>& x, std::string_view) {
        object_.add(key, item(*x));
    }

    template <class Item>
    void list(std::string_view key, const std::vector<Item>& x, const Count&, std::string_view) {
        JsonValue made = JsonValue::array();
        for (const Item& each : x) made.items.push_back(item(each));
        object_.add(key, std::move(made));
    }

    template <class Struct>
    void maybe_part(std::string_view key, const std::optional<Struct>& x, std::string_view about) {
        if (x) part(key, *x, about);
    }

    template <class Item>
    void maybe_list(std::string_view key, const std::vector<Item>& x, const Count& count, std::string_view about) {
        if (!x.empty()) list(key, x, count, about);
    }

    template <class Choice, std::size_t N, class Function>
    void kinds(std::string_view key, const Choice& x, const Word<Choice> (&words)[N], std::string_view, Function f) {
        object_.add(key, leaf(x, words));
        f(*this, x);
    }

    template <class... Alternatives, std::size_t N, class Function>
    void alternatives(std::string_view key, const std::variant<Alternatives...>& x, const std::string_view (&words)[N],
                      std::string_view, Function f) {
        object_.add(key, JsonValue::of_text(words[x.index()]));
        std::visit([&](const auto& alternative) { f(*this, alternative); }, x);
    }

    template <class Value>
    void absent(std::string_view, const Value&, std::string_view) {}

private:
    template <Readable Quantity>
    JsonValue leaf(Quantity x, const Limit<Quantity>&) const {
        return JsonValue::of_text(quantity_text(x, shown_));
    }
    JsonValue leaf(double x, const Limit<double>&) const { return JsonValue::of_number(x); }
    JsonValue leaf(int x, const Limit<int>&) const { return JsonValue::of_number(x); }
    JsonValue leaf(bool x, Flag) const { return JsonValue::of_boolean(x); }
    template <class Rule>
    JsonValue leaf(const std::string& x, const Rule&) const {
        return JsonValue::of_text(x);
    }
    template <class Choice, std::size_t N>
    JsonValue leaf(Choice x, const Word<Choice> (&words)[N]) const {
        const auto word =
            std::find_if(std::begin(words), std::end(words), [&](const auto& w) { return w.choice == x; });
        return JsonValue::of_text(word->text);
    }

    JsonValue item(const std::string& x) const { return JsonValue::of_text(x); }
    template <class Struct>
    JsonValue item(const Struct& x) const {
        JsonValue made = JsonValue::object();
        WriteVisitor inner(made, shown_);
        fields(inner, x);
        return made;
    }

    JsonValue& object_;
    UnitsShown shown_;
};

}  // namespace
}  // namespace plan_detail

std::string write_plan(const Plan& plan) {
    bool finite = true;
    std::vector<Problem> problems = plan_detail::value_problems(plan, finite);
    if (!problems.empty()) throw InputError(std::move(problems));
    plan_detail::JsonValue document = plan_detail::JsonValue::object();
    plan_detail::WriteVisitor visitor(document, plan.units_shown);
    plan_detail::fields(visitor, plan);
    return plan_detail::json_text(document);
}

}  // namespace coverframe
