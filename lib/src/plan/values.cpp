// SPDX-License-Identifier: BSD-3-Clause
// A plan's values against their own rules, and the order of its fields.
#include <algorithm>
#include <cmath>
#include <optional>
#include <unordered_map>
#include <variant>

#include "plan/fields.hpp"
#include "plan/fit.hpp"
#include "plan/pointer.hpp"
#include "plan/rules.hpp"

namespace coverframe::plan_detail {
namespace {

/// Walks a plan. Visitor of plan/fields.hpp.
class ValueVisitor {
public:
    explicit ValueVisitor(std::vector<std::string>* visited = nullptr) : visited_(visited) {}

    std::vector<Problem> problems;
    bool finite = true;

    void format() {
        enter_and("format", [] {});
    }

    template <class Value, class Rule>
    void value(std::string_view key, const Value& x, const Rule& rule, std::string_view about) {
        enter_and(key, [&] { leaf(x, rule, about); });
    }

    template <class Value, class Rule>
    void value(std::string_view key, const std::optional<Value>& x, const Rule& rule, std::string_view about) {
        if (has(key, x, about)) value(key, *x, rule, about);
    }

    template <class Value, class Rule>
    void maybe_value(std::string_view key, const std::optional<Value>& x, const Rule& rule, std::string_view about) {
        if (x) value(key, *x, rule, about);
    }

    void optional_text(std::string_view key, const std::string& text, const TextRule& rule, std::string_view about) {
        value(key, text, rule, about);
    }

    template <class Value, class Rule>
    void cited(std::string_view key, const Cited<Value>& x, const Rule& rule, std::string_view about) {
        enter_and(key, [&] {
            value("value", x.value, rule, about);
            value("source", x.source, limit::source, "where the value comes from");
        });
    }

    template <class Value, class Rule>
    void cited(std::string_view key, const std::optional<Cited<Value>>& x, const Rule& rule, std::string_view about) {
        if (has(key, x, about)) cited(key, *x, rule, about);
    }

    template <class Value, class Rule>
    void maybe_cited(std::string_view key, const std::optional<Cited<Value>>& x, const Rule& rule,
                     std::string_view about) {
        if (x) cited(key, *x, rule, about);
    }

    template <class Struct>
    void part(std::string_view key, const Struct& x, std::string_view) {
        enter_and(key, [&] { fields(*this, x); });
    }

    template <class Struct>
    void part(std::string_view key, const std::optional<Struct>& x, std::string_view about) {
        if (has(key, x, about)) part(key, *x, about);
    }

    template <class Item>
    void list(std::string_view key, const std::vector<Item>& x, const Count& count, std::string_view about) {
        enter_and(key, [&] {
            if (const auto fault = fault_of(x.size(), count))
                problems.push_back({fault->code, at_.text(), fault->value, std::string(about) + ": " + fault->advice});
            for (std::size_t i = 0; i < x.size(); ++i) {
                enter_and(i, [&] { item(x[i], about); });
            }
        });
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
    void kinds(std::string_view key, const Choice& x, const Word<Choice> (&words)[N], std::string_view about,
               Function f) {
        value(key, x, words, about);
        f(*this, x);
    }

    template <class... Alternatives, std::size_t N, class Function>
    void alternatives(std::string_view key, const std::variant<Alternatives...>& x, const std::string_view (&)[N],
                      std::string_view, Function f) {
        enter_and(key, [] {});
        std::visit([&](const auto& alternative) { f(*this, alternative); }, x);
    }

    template <class Value>
    void absent(std::string_view key, const std::optional<Value>& x, std::string_view why) {
        refuse_unless(!x, key, why);
    }

    void absent(std::string_view key, const std::string& x, std::string_view why) {
        refuse_unless(x.empty(), key, why);
    }

private:
    template <class Token, class Function>
    void enter_and(Token token, Function f) {
        const Step step(at_, token);
        if (visited_ != nullptr) visited_->push_back(at_.text());
        f();
    }

    template <class Value>
    bool has(std::string_view key, const std::optional<Value>& x, std::string_view about) {
        if (x) return true;
        enter_and(key, [&] {
            problems.push_back({"plan.key.missing", at_.text(), "",
                                "\"" + std::string(key) + "\" is missing (" + std::string(about) + "); set it"});
        });
        return false;
    }

    void refuse_unless(bool empty, std::string_view key, std::string_view why) {
        if (empty) return;
        enter_and(key, [&] {
            problems.push_back(
                {"plan.key.unknown", at_.text(), "",
                 "\"" + std::string(key) + "\" does not belong here: " + std::string(why) + "; leave it empty"});
        });
    }

    void report(const Fault& fault, std::string_view about) {
        problems.push_back(
            {fault.code, at_.text(), fault.value,
             std::string(about) + ": " + (fault.value.empty() ? "\"\"" : fault.value) + " " + fault.advice});
    }

    template <class Value, class Rule>
    void leaf(const Value& x, const Rule& rule, std::string_view about) {
        if constexpr (Readable<Value>) {
            finite = finite && std::isfinite(x / Value::from_value(1.0));
        } else if constexpr (std::same_as<Value, double>) {
            finite = finite && std::isfinite(x);
        }
        if (const auto fault = fault_of(x, rule)) report(*fault, about);
    }

    void item(const std::string& x, std::string_view about) { leaf(x, limit::name, about); }

    template <class Struct>
    void item(const Struct& x, std::string_view) {
        fields(*this, x);
    }

    Pointer at_;
    std::vector<std::string>* visited_;
};

}  // namespace

std::vector<Problem> value_problems(const Plan& plan, bool& finite) {
    ValueVisitor visitor;
    fields(visitor, plan);
    finite = visitor.finite;
    return std::move(visitor.problems);
}

void in_document_order(const Plan& plan, std::vector<Problem>& problems) {
    if (problems.size() < 2) return;
    std::vector<std::string> visited;
    ValueVisitor visitor(&visited);
    fields(visitor, plan);
    std::unordered_map<std::string_view, std::size_t> ranks;
    for (std::size_t i = 0; i < visited.size(); ++i) ranks.emplace(visited[i], i + 1);

    const auto rank = [&](const Problem& problem) {  // of the field, or of the nearest one around it
        std::string_view where = problem.where;
        while (!where.empty()) {
            if (const auto found = ranks.find(where); found != ranks.end()) return found->second;
            where = where.substr(0, where.rfind('/'));
        }
        return std::size_t{0};
    };
    std::stable_sort(problems.begin(), problems.end(),
                     [&](const Problem& a, const Problem& b) { return rank(a) < rank(b); });
}

}  // namespace coverframe::plan_detail
