// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/plan/read.hpp"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <optional>
#include <variant>

#include "coverframe/base/error.hpp"
#include "plan/fields.hpp"
#include "plan/fit.hpp"
#include "plan/json_value.hpp"
#include "plan/pointer.hpp"
#include "plan/rules.hpp"

namespace coverframe {
namespace plan_detail {
namespace {

/// What the visitors of one document share.
struct Reading {
    Pointer at;
    std::vector<Problem> problems;
    bool complete = true;  ///< every needed value could be read, though maybe out of its range

    void report(std::string code, std::string value, std::string advice) {
        problems.push_back({std::move(code), at.text(), std::move(value), std::move(advice)});
    }
    /// For a problem that leaves a hole in the plan.
    void report_hole(std::string code, std::string value, std::string advice) {
        complete = false;
        report(std::move(code), std::move(value), std::move(advice));
    }
};

std::string in_quotes(std::string_view text) { return '"' + std::string(text) + '"'; }

/// Reads the members of one object. Visitor of plan/fields.hpp.
class ReadVisitor {
public:
    ReadVisitor(Reading& reading, const JsonValue& object) : reading_(reading), object_(object) {}

    /// Reports the keys nobody asked for.
    void finish() {
        if (!kind_known_) return;
        for (const JsonMember& member : object_.members) {
            if (std::find(known_.begin(), known_.end(), member.key) == known_.end()) report_unknown(member);
        }
    }

    void format() {
        const JsonValue* found = needed("format", "the format number of the file, 1");
        if (found == nullptr || (found->kind == JsonKind::number && found->number == 1.0)) return;
        const Step step(reading_.at, std::string_view("format"));
        reading_.report_hole("plan.format", short_text(*found),
                             "this library reads format number 1; write \"format\": 1, or read the file with a library "
                             "that knows its format");
    }

    template <class Value, class Rule>
    void value(std::string_view key, Value& x, const Rule& rule, std::string_view about) {
        if (const JsonValue* found = needed(key, about)) {
            const Step step(reading_.at, key);
            leaf(*found, x, rule, about);
        }
    }

    template <class Value, class Rule>
    void value(std::string_view key, std::optional<Value>& x, const Rule& rule, std::string_view about) {
        value(key, x.emplace(), rule, about);
    }

    template <class Value, class Rule>
    void maybe_value(std::string_view key, std::optional<Value>& x, const Rule& rule, std::string_view about) {
        if (const JsonValue* found = maybe(key)) {
            const Step step(reading_.at, key);
            leaf(*found, x.emplace(), rule, about);
        }
    }

    void optional_text(std::string_view key, std::string& text, const TextRule& rule, std::string_view about) {
        if (const JsonValue* found = maybe(key)) {
            const Step step(reading_.at, key);
            leaf(*found, text, rule, about);
        }
    }

    template <class Value, class Rule>
    void cited(std::string_view key, Cited<Value>& x, const Rule& rule, std::string_view about) {
        if (const JsonValue* found = needed(key, about)) read_cited(key, *found, x, rule, about);
    }

    template <class Value, class Rule>
    void cited(std::string_view key, std::optional<Cited<Value>>& x, const Rule& rule, std::string_view about) {
        cited(key, x.emplace(), rule, about);
    }

    template <class Value, class Rule>
    void maybe_cited(std::string_view key, std::optional<Cited<Value>>& x, const Rule& rule, std::string_view about) {
        if (const JsonValue* found = maybe(key)) read_cited(key, *found, x.emplace(), rule, about);
    }

    template <class Struct>
    void part(std::string_view key, Struct& x, std::string_view about) {
        if (const JsonValue* found = needed(key, about)) {
            const Step step(reading_.at, key);
            item(*found, x, about);
        }
    }

    template <class Struct>
    void part(std::string_view key, std::optional<Struct>& x, std::string_view about) {
        part(key, x.emplace(), about);
    }

    template <class Item>
    void list(std::string_view key, std::vector<Item>& x, const Count& count, std::string_view about) {
        const JsonValue* found = needed(key, about);
        if (found == nullptr) return;
        const Step step(reading_.at, key);
        if (found->kind != JsonKind::array) return refuse_kind(*found, JsonKind::array, about);
        if (const auto fault = fault_of(found->items.size(), count)) {
            return reading_.report_hole(fault->code, fault->value, std::string(about) + ": " + fault->advice);
        }
        x.resize(found->items.size());
        for (std::size_t i = 0; i < x.size(); ++i) {
            const Step inner(reading_.at, i);
            item(found->items[i], x[i], about);
        }
    }

    template <class Struct>
    void maybe_part(std::string_view key, std::optional<Struct>& x, std::string_view about) {
        if (maybe(key) != nullptr) part(key, x, about);
    }

    template <class Item>
    void maybe_list(std::string_view key, std::vector<Item>& x, const Count& count, std::string_view about) {
        if (maybe(key) != nullptr) list(key, x, count, about);
    }

    template <class Choice, std::size_t N, class Function>
    void kinds(std::string_view key, Choice& x, const Word<Choice> (&words)[N], std::string_view about, Function f) {
        const bool sound = kind_is_read(key, x, words, about);
        if (sound) f(*this, x);
    }

    template <class... Alternatives, std::size_t N, class Function>
    void alternatives(std::string_view key, std::variant<Alternatives...>& x, const std::string_view (&words)[N],
                      std::string_view about, Function f) {
        static_assert(sizeof...(Alternatives) == N);
        std::string word;
        if (!kind_is_read(key, word, words, about)) return;
        const auto index = static_cast<std::size_t>(std::find(std::begin(words), std::end(words), word) - words);
        std::size_t i = 0;
        ((i++ == index ? f(*this, x.template emplace<Alternatives>()) : void()), ...);
    }

    template <class Value>
    void absent(std::string_view key, Value&, std::string_view why) {
        absent_.emplace_back(key, why);
    }

private:
    /// The member of that name; reported if it is missing.
    const JsonValue* needed(std::string_view key, std::string_view about) {
        const JsonValue* found = maybe(key);
        if (found == nullptr) {
            const Step step(reading_.at, key);
            reading_.report_hole("plan.key.missing", "",
                                 "the key " + in_quotes(key) + " is missing (" + std::string(about) + "); add it");
        }
        return found;
    }

    const JsonValue* maybe(std::string_view key) {
        known_.push_back(key);
        return object_.find(key);
    }

    template <class Value, class Rule>
    bool kind_is_read(std::string_view key, Value& x, const Rule& words, std::string_view about) {
        kind_known_ = false;  // until it is read, nobody can say which keys belong here
        const JsonValue* found = needed(key, about);
        if (found == nullptr) return false;
        const Step step(reading_.at, key);
        kind_known_ = leaf(*found, x, words, about);
        reading_.complete = reading_.complete && kind_known_;
        return kind_known_;
    }

    void report_unknown(const JsonMember& member) {
        const Step step(reading_.at, std::string_view(member.key));
        const auto reason =
            std::find_if(absent_.begin(), absent_.end(), [&](const auto& each) { return each.first == member.key; });
        const std::string advice = reason != absent_.end() ? ": " + std::string(reason->second) + "; remove it"
                                                           : did_you_mean(member.key, known_);
        reading_.report("plan.key.unknown", short_text(member.value),
                        "the key " + in_quotes(on_one_line(member.key)) + " does not belong here" +
                            (advice.empty() ? "; remove it" : advice));
    }

    void refuse_kind(const JsonValue& found, JsonKind due, std::string_view about) {
        reading_.report_hole("plan.type", short_text(found),
                             std::string(about) + ": " + std::string(name_of(found.kind)) + " stands where " +
                                 std::string(name_of(due)) + " is due");
    }

    bool judge(const std::optional<Fault>& fault, std::string_view about, const std::string& shown) {
        if (!fault) return true;
        reading_.report(fault->code, shown, std::string(about) + ": " + in_quotes(shown) + " " + fault->advice);
        return false;
    }

    template <Readable Quantity>
    bool leaf(const JsonValue& found, Quantity& x, const Limit<Quantity>& limit, std::string_view about) {
        if (found.kind == JsonKind::number) {
            reading_.report_hole("plan.quantity.bare", short_text(found),
                                 std::string(about) + ": " + short_text(found) + " has no unit; write " +
                                     std::string(kind_of<Quantity>()) + " as a text with its unit, such as \"" +
                                     short_text(found) + " " + std::string(limit.unit) + "\"");
            return false;
        }
        if (found.kind != JsonKind::string) {
            refuse_kind(found, JsonKind::string, about);
            return false;
        }
        if (const auto fault = fault_of(found.text, limit::note); fault && fault->code != "plan.text.empty") {
            reading_.complete = false;
            return judge(fault, about, short_text(found));
        }
        try {
            x = read<Quantity>(found.text, reading_.at.text());
        } catch (const InputError& error) {
            reading_.complete = false;
            for (Problem problem : error.problems()) {
                problem.value = short_text(found);
                problem.advice = on_one_line(std::string(about) + ": " + problem.advice);
                reading_.problems.push_back(std::move(problem));
            }
            return false;
        }
        return judge(fault_of(x, limit), about, short_text(found));
    }

    bool leaf(const JsonValue& found, double& x, const Limit<double>& limit, std::string_view about) {
        if (found.kind != JsonKind::number) {
            refuse_kind(found, JsonKind::number, about);
            return false;
        }
        x = found.number;
        return judge(fault_of(x, limit), about, short_text(found));
    }

    bool leaf(const JsonValue& found, int& x, const Limit<int>& limit, std::string_view about) {
        if (found.kind != JsonKind::number) {
            refuse_kind(found, JsonKind::number, about);
            return false;
        }
        if (found.number != std::floor(found.number)) {
            reading_.report_hole(
                "plan.type", short_text(found),
                std::string(about) + ": " + short_text(found) + " stands where a whole number is due; round it");
            return false;
        }
        if (!judge(fault_of(found.number, of_any_number(limit)), about, short_text(found))) return false;
        x = static_cast<int>(found.number);
        return true;
    }

    bool leaf(const JsonValue& found, bool& x, Flag, std::string_view about) {
        if (found.kind != JsonKind::boolean) {
            refuse_kind(found, JsonKind::boolean, about);
            return false;
        }
        x = found.boolean;
        return true;
    }

    template <class Rule>
    bool leaf(const JsonValue& found, std::string& x, const Rule& rule, std::string_view about) {
        if (found.kind != JsonKind::string) {
            refuse_kind(found, JsonKind::string, about);
            return false;
        }
        x = found.text;
        return judge(fault_of(x, rule), about, short_text(found));
    }

    template <class Choice, std::size_t N>
    bool leaf(const JsonValue& found, Choice& x, const Word<Choice> (&words)[N], std::string_view about) {
        std::string_view texts[N];
        std::transform(std::begin(words), std::end(words), texts, [](const auto& word) { return word.text; });
        std::string text;
        if (!leaf(found, text, texts, about)) {
            reading_.complete = false;
            return false;
        }
        x = std::find_if(std::begin(words), std::end(words), [&](const auto& w) { return w.text == text; })->choice;
        return true;
    }

    template <class Value, class Rule>
    void read_cited(std::string_view key, const JsonValue& found, Cited<Value>& x, const Rule& rule,
                    std::string_view about) {
        const Step step(reading_.at, key);
        if (found.kind != JsonKind::object) {
            const std::string shown = found.kind == JsonKind::string ? in_quotes(short_text(found)) : short_text(found);
            return reading_.report_hole("plan.cited.bare", short_text(found),
                                        std::string(about) + ": the value needs its source; write {\"value\": " +
                                            shown + ", \"source\": \"where it comes from\"}");
        }
        ReadVisitor inner(reading_, found);
        inner.value("value", x.value, rule, about);
        inner.value("source", x.source, limit::source, "where the value comes from");
        inner.finish();
    }

    void item(const JsonValue& found, std::string& x, std::string_view about) { leaf(found, x, limit::name, about); }

    template <class Struct>
    void item(const JsonValue& found, Struct& x, std::string_view about) {
        if (found.kind != JsonKind::object) return refuse_kind(found, JsonKind::object, about);
        ReadVisitor inner(reading_, found);
        fields(inner, x);
        inner.finish();
    }

    Reading& reading_;
    const JsonValue& object_;
    std::vector<std::string_view> known_;
    std::vector<std::pair<std::string_view, std::string_view>> absent_;
    bool kind_known_ = true;
};

/// A file that says it is of another format is not judged by this one.
bool other_format(const JsonValue& document) {
    const JsonValue* format = document.find("format");
    return format != nullptr && format->kind == JsonKind::number && format->number != 1.0;
}

Plan read_document(const JsonValue& document, std::vector<Problem> problems) {
    Reading reading;
    reading.problems = std::move(problems);
    Plan plan;
    if (document.kind != JsonKind::object) {
        reading.report_hole("plan.type", short_text(document), "a plan is a JSON object, in braces");
    } else {
        ReadVisitor visitor(reading, document);
        if (other_format(document)) {
            visitor.format();
        } else {
            fields(visitor, plan);
            visitor.finish();
        }
    }
    if (reading.complete) {
        for (Problem& problem : fit_problems(plan)) reading.problems.push_back(std::move(problem));
        in_document_order(plan, reading.problems);
    }
    if (!reading.problems.empty()) throw InputError(std::move(reading.problems));
    return plan;
}

}  // namespace
}  // namespace plan_detail

Plan read_plan(std::string_view json) {
    std::vector<Problem> problems;
    const auto document = plan_detail::parse_json(json, problems);
    if (!document) throw InputError(std::move(problems));
    return plan_detail::read_document(*document, std::move(problems));
}

Plan read_plan_file(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::string text;
    if (file) {
        // One byte more than a plan may have is enough to know that it is too long.
        constexpr std::streamsize most = (4 << 20) + 1;
        text.resize(static_cast<std::size_t>(most));
        file.read(text.data(), most);
        text.resize(static_cast<std::size_t>(file.gcount()));
    }
    if (!file.is_open() || file.bad() || (text.empty() && !file.eof())) {
        throw InputError("plan.file", "", path,
                         "the plan file \"" + path + "\" cannot be read; check its name and its rights");
    }
    return read_plan(text);
}

}  // namespace coverframe
