// SPDX-License-Identifier: BSD-3-Clause
// The JSON Schema of a plan, made from the same description as the reader (plan/fields.hpp). Alternatives are if/then
// on the key that names the kind, so that a validator points at the wrong key and not at the whole object.
#include <algorithm>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "coverframe/plan/read.hpp"
#include "plan/fields.hpp"
#include "plan/json_value.hpp"
#include "plan/rules.hpp"

namespace coverframe {
namespace plan_detail {
namespace {

JsonValue text(std::string_view value) { return JsonValue::of_text(value); }

JsonValue reference(std::string_view name) {
    JsonValue made = JsonValue::object();
    made.add("$ref", text("#/$defs/" + std::string(name)));
    return made;
}

JsonValue texts(const std::vector<std::string_view>& values) {
    JsonValue made = JsonValue::array();
    for (const std::string_view value : values) made.items.push_back(text(value));
    return made;
}

// One name for each kind of quantity and object, under "$defs".
template <class Type>
constexpr std::string_view definition_name() {
    if constexpr (std::same_as<Type, Length>) return "length";
    if constexpr (std::same_as<Type, Force>) return "force";
    if constexpr (std::same_as<Type, LineLoad>) return "line_load";
    if constexpr (std::same_as<Type, Pressure>) return "pressure";
    if constexpr (std::same_as<Type, UnitWeight>) return "unit_weight";
    if constexpr (std::same_as<Type, Angle>) return "angle";
    if constexpr (std::same_as<Type, Point>) return "point";
    if constexpr (std::same_as<Type, RailStation>) return "rail_station";
    if constexpr (std::same_as<Type, Stand>) return "stand";
    if constexpr (std::same_as<Type, Obstacle>) return "obstacle";
    if constexpr (std::same_as<Type, Boat>) return "boat";
    if constexpr (std::same_as<Type, GroundSnow>) return "ground_snow";
    if constexpr (std::same_as<Type, NeighbourRoof>) return "neighbour_roof";
    if constexpr (std::same_as<Type, Neighbour>) return "neighbour";
    if constexpr (std::same_as<Type, Site>) return "site";
    if constexpr (std::same_as<Type, SnowBasis>) return "snow_basis";
    if constexpr (std::same_as<Type, CombinationBasis>) return "combination_basis";
    if constexpr (std::same_as<Type, TimberBasis>) return "timber_basis";
    if constexpr (std::same_as<Type, Basis>) return "basis";
    if constexpr (std::same_as<Type, StrapKind>) return "strap_kind";
    if constexpr (std::same_as<Type, Section>) return "section";
    if constexpr (std::same_as<Type, FootPad>) return "foot_pad";
    if constexpr (std::same_as<Type, FootFriction>) return "foot_friction";
    if constexpr (std::same_as<Type, SoftFoot>) return "soft_foot";
    if constexpr (std::same_as<Type, RidgeEnd>) return "ridge_end";
    if constexpr (std::same_as<Type, Ridge>) return "ridge";
    if constexpr (std::same_as<Type, Upright>) return "upright";
    if constexpr (std::same_as<Type, CrossStrap>) return "cross_strap";
    if constexpr (std::same_as<Type, FoundNode>) return "found_node";
    if constexpr (std::same_as<Type, FoundMember>) return "found_member";
    if constexpr (std::same_as<Type, Hangers>) return "hangers";
    if constexpr (std::same_as<Type, BellyStrap>) return "belly_strap";
    if constexpr (std::same_as<Type, Band>) return "band";
    if constexpr (std::same_as<Type, Support>) return "support";
    if constexpr (std::same_as<Type, Film>) return "film";
}

// Some regular expressions let "$" pass before a line end that closes the text; with this they do not.
constexpr const char* no_line_end = R"((?!\n))";

/// The members of an object, or of one of its kinds.
struct Members {
    JsonValue properties = JsonValue::object();
    std::vector<std::string_view> required;
};

struct Branch {
    std::string_view key;  ///< of the kind
    std::string_view word;
    Members members;
};

/// Describes an object. Visitor of plan/fields.hpp; the values it is shown do not matter.
class SchemaVisitor {
public:
    explicit SchemaVisitor(JsonValue& definitions) : definitions_(definitions) {}

    void format() {
        JsonValue made = JsonValue::object();
        made.add("description", text("the format number of the file"));
        made.add("const", JsonValue::of_number(1));
        add("format", std::move(made), true);
    }

    template <class Value, class Rule>
    void value(std::string_view key, const Value&, const Rule& rule, std::string_view about) {
        add(key, described(leaf<Value>(rule), about), true);
    }
    template <class Value, class Rule>
    void value(std::string_view key, const std::optional<Value>&, const Rule& rule, std::string_view about) {
        add(key, described(leaf<Value>(rule), about), true);
    }
    template <class Value, class Rule>
    void maybe_value(std::string_view key, const std::optional<Value>&, const Rule& rule, std::string_view about) {
        add(key, described(leaf<Value>(rule), about), false);
    }
    void optional_text(std::string_view key, const std::string&, const TextRule& rule, std::string_view about) {
        add(key, described(leaf<std::string>(rule), about), false);
    }
    template <class Value, class Rule>
    void cited(std::string_view key, const Cited<Value>&, const Rule& rule, std::string_view about) {
        add(key, cited_schema<Value>(rule, about), true);
    }
    template <class Value, class Rule>
    void cited(std::string_view key, const std::optional<Cited<Value>>&, const Rule& rule, std::string_view about) {
        add(key, cited_schema<Value>(rule, about), true);
    }
    template <class Value, class Rule>
    void maybe_cited(std::string_view key, const std::optional<Cited<Value>>&, const Rule& rule,
                     std::string_view about) {
        add(key, cited_schema<Value>(rule, about), false);
    }
    template <class Struct>
    void part(std::string_view key, const Struct&, std::string_view about) {
        add(key, described(item<Struct>(), about), true);
    }
    template <class Struct>
    void part(std::string_view key, const std::optional<Struct>&, std::string_view about) {
        add(key, described(item<Struct>(), about), true);
    }
    template <class Item>
    void list(std::string_view key, const std::vector<Item>&, const Count& count, std::string_view about) {
        add(key, list_schema<Item>(count, about), true);
    }

    template <class Struct>
    void maybe_part(std::string_view key, const std::optional<Struct>&, std::string_view about) {
        add(key, described(item<Struct>(), about), false);
    }
    template <class Item>
    void maybe_list(std::string_view key, const std::vector<Item>&, const Count& count, std::string_view about) {
        add(key, list_schema<Item>(count, about), false);
    }

    template <class Choice, std::size_t N, class Function>
    void kinds(std::string_view key, Choice& x, const Word<Choice> (&words)[N], std::string_view about, Function f) {
        value(key, x, words, about);
        for (const auto& word : words) describe_branch(key, word.text, [&](SchemaVisitor& v) { f(v, word.choice); });
    }
    template <class... Alternatives, std::size_t N, class Function>
    void alternatives(std::string_view key, const std::variant<Alternatives...>&, const std::string_view (&words)[N],
                      std::string_view about, Function f) {
        add(key, described(leaf<std::string>(words), about), true);
        std::size_t i = 0;
        const auto describe = [&]<class Alternative>(Alternative alternative) {
            describe_branch(key, words[i++], [&](SchemaVisitor& v) { f(v, alternative); });
        };
        (describe(Alternatives{}), ...);
    }
    template <class Value>
    void absent(std::string_view, const Value&, std::string_view) {}

    /// The schema of the object whose members were shown.
    JsonValue take() {
        JsonValue made = JsonValue::object();
        made.add("type", text("object"));
        if (branches_.empty()) {
            close(made, members_);
            return made;
        }
        // The outer level knows every key of every kind; which of them belong to a kind is said in its "then".
        JsonValue all = members_.properties;
        for (const Branch& branch : branches_) {
            for (const auto& [key, schema] : branch.members.properties.members) {
                if (all.find(key) == nullptr) all.add(key, JsonValue::of_boolean(true));
            }
        }
        close(made, {std::move(all), members_.required});
        JsonValue& choices = made.add("allOf", JsonValue::array());
        for (Branch& branch : branches_) choices.items.push_back(choice_of(branch));
        return made;
    }

private:
    static void close(JsonValue& made, const Members& members) {
        made.add("properties", members.properties);
        made.add("required", texts(members.required));
        made.add("additionalProperties", JsonValue::of_boolean(false));
    }

    JsonValue choice_of(Branch& branch) const {
        JsonValue word = JsonValue::object();
        word.add("const", text(branch.word));
        JsonValue condition = JsonValue::object();
        condition.add("properties", JsonValue::object()).add(branch.key, std::move(word));
        condition.add("required", texts({branch.key}));

        Members members = std::move(branch.members);
        for (const auto& [key, schema] : members_.properties.members) {
            members.properties.add(key, JsonValue::of_boolean(true));
        }
        JsonValue consequence = JsonValue::object();
        close(consequence, members);

        JsonValue made = JsonValue::object();
        made.add("if", std::move(condition));
        made.add("then", std::move(consequence));
        return made;
    }

    template <class Function>
    void describe_branch(std::string_view key, std::string_view word, Function f) {
        SchemaVisitor inner(definitions_);
        f(inner);
        branches_.push_back({key, word, std::move(inner.members_)});
    }

    void add(std::string_view key, JsonValue schema, bool required) {
        members_.properties.add(key, std::move(schema));
        if (required) members_.required.push_back(key);
    }

    /// `schema` with a description in front.
    static JsonValue described(const JsonValue& schema, std::string_view about) {
        JsonValue made = JsonValue::object();
        made.add("description", text(about));
        for (const auto& [key, value] : schema.members) made.add(key, value);
        return made;
    }

    template <class Value, class Rule>
    JsonValue cited_schema(const Rule& rule, std::string_view about) {
        Members members;
        members.properties.add("value", leaf<Value>(rule));
        members.properties.add("source", described(leaf<std::string>(limit::source), "where the value comes from"));
        members.required = {"value", "source"};
        JsonValue made = JsonValue::object();
        made.add("description", text(about));
        made.add("type", text("object"));
        close(made, members);
        return made;
    }

    template <class Item>
    JsonValue list_schema(const Count& count, std::string_view about) {
        JsonValue made = JsonValue::object();
        made.add("description", text(about));
        made.add("type", text("array"));
        made.add("minItems", JsonValue::of_number(static_cast<double>(count.least)));
        made.add("maxItems", JsonValue::of_number(static_cast<double>(count.most)));
        made.add("items", item<Item>());
        return made;
    }

    template <class Value, class Rule>
    JsonValue leaf(const Rule& rule) {
        if constexpr (Readable<Value>) {
            define(definition_name<Value>(), [] {
                JsonValue made = JsonValue::object();
                made.add("description",
                         text(std::string(kind_of<Value>()) + ", such as " + std::string(examples_of<Value>())));
                made.add("type", text("string"));
                made.add("pattern", text(pattern_of<Value>() + no_line_end));
                return made;
            });
            JsonValue made = reference(definition_name<Value>());
            made.add("$comment", text(text_of(rule) + ": " + std::string(rule.reason)));
            return made;
        } else if constexpr (std::same_as<Rule, TextRule>) {
            define(rule.name, [&] { return schema_of(rule); });
            return reference(rule.name);
        } else {
            return schema_of(rule);
        }
    }

    static JsonValue schema_of(const Limit<double>& limit) { return schema_of(limit, "number"); }
    static JsonValue schema_of(const Limit<int>& limit) { return schema_of(of_any_number(limit), "integer"); }
    static JsonValue schema_of(const Limit<double>& limit, std::string_view type) {
        JsonValue made = JsonValue::object();
        made.add("type", text(type));
        made.add("minimum", JsonValue::of_number(limit.low));
        made.add("maximum", JsonValue::of_number(limit.high));
        made.add("$comment", text(limit.reason));
        return made;
    }
    static JsonValue schema_of(Flag) {
        JsonValue made = JsonValue::object();
        made.add("type", text("boolean"));
        return made;
    }
    static JsonValue schema_of(const TextRule& rule) {
        JsonValue made = JsonValue::object();
        made.add("type", text("string"));
        made.add("maxLength", JsonValue::of_number(static_cast<double>(rule.longest)));
        const std::string all = rule.free_text ? R"(^[^\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]*$)"
                                               : R"(^[^\u0000-\u001f\u007f]*[^\u0000- \u007f][^\u0000-\u001f\u007f]*$)";
        made.add("pattern", text(rule.free_text ? all : all + no_line_end));
        return made;
    }
    template <std::size_t N>
    static JsonValue schema_of(const std::string_view (&words)[N]) {
        JsonValue made = JsonValue::object();
        made.add("enum", texts({std::begin(words), std::end(words)}));
        return made;
    }
    template <class Choice, std::size_t N>
    static JsonValue schema_of(const Word<Choice> (&words)[N]) {
        std::string_view all[N];
        std::transform(std::begin(words), std::end(words), all, [](const auto& word) { return word.text; });
        return schema_of(all);
    }

    template <class Item>
    JsonValue item() {
        if constexpr (std::same_as<Item, std::string>) {
            return leaf<std::string>(limit::name);
        } else {
            define(definition_name<Item>(), [this] {
                SchemaVisitor inner(definitions_);
                Item shown{};
                fields(inner, shown);
                return inner.take();
            });
            return reference(definition_name<Item>());
        }
    }

    template <class Function>
    void define(std::string_view name, Function make) {
        if (definitions_.find(name) != nullptr) return;
        JsonValue made = make();  // may define others first
        definitions_.add(name, std::move(made));
    }

    JsonValue& definitions_;
    Members members_;
    std::vector<Branch> branches_;
};

std::string schema_text() {
    JsonValue definitions = JsonValue::object();
    SchemaVisitor visitor(definitions);
    Plan shown;
    fields(visitor, shown);
    const JsonValue body = visitor.take();

    JsonValue schema = JsonValue::object();
    schema.add("$schema", text("https://json-schema.org/draft/2020-12/schema"));
    schema.add("$id", text("urn:coverframe:plan:1"));
    schema.add("title", text("A cover plan, format 1"));
    schema.add(
        "description",
        text("What somebody measured or decided about the winter cover of one boat. Every dimensional value is a "
             "text with its unit; every chosen value carries its source. Whether the sizes are believable and the "
             "parts fit one another is checked when the plan is read."));
    for (const auto& [key, value] : body.members) schema.add(key, value);
    schema.add("$defs", std::move(definitions));
    return json_text(schema);
}

}  // namespace
}  // namespace plan_detail

std::string_view plan_schema() {
    static const std::string schema = plan_detail::schema_text();
    return schema;
}

}  // namespace coverframe
