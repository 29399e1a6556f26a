// SPDX-License-Identifier: BSD-3-Clause
// The only file that knows the JSON library. Its event parser does not recurse, so nesting costs no stack; everything
// it would let pass silently (duplicate keys, depth, size) is refused here.
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <unordered_set>
#include <utility>

#include <nlohmann/json.hpp>

#include "plan/json_value.hpp"
#include "plan/pointer.hpp"

namespace coverframe::plan_detail {
namespace {

constexpr std::size_t largest_text = 4u << 20;  // bytes
constexpr std::size_t deepest = 32;             // a plan needs 8

struct Place {
    std::size_t line = 1;
    std::size_t column = 1;
};

Place place_of(std::string_view text, std::size_t position) {
    Place place;
    for (const char c : text.substr(0, std::min(position, text.size()))) {
        if (c == '\n') {
            ++place.line;
            place.column = 1;
        } else {
            ++place.column;
        }
    }
    return place;
}

std::string place_text(std::string_view text, std::size_t position) {
    const Place place = place_of(text, position);
    return "line " + std::to_string(place.line) + ", column " + std::to_string(place.column);
}

/// Builds the tree from the events of the parser.
class TreeBuilder {
public:
    TreeBuilder(std::string_view text, std::vector<Problem>& problems) : text_(text), problems_(problems) {}

    bool null() { return put({}); }
    bool boolean(bool value) { return put(JsonValue::of_boolean(value)); }
    bool number_integer(std::int64_t value) { return put(JsonValue::of_number(static_cast<double>(value))); }
    bool number_unsigned(std::uint64_t value) { return put(JsonValue::of_number(static_cast<double>(value))); }
    bool number_float(double value, const std::string&) { return put(JsonValue::of_number(value)); }
    bool string(std::string& value) { return put(JsonValue::of_text(value)); }
    bool binary(nlohmann::json::binary_t&) { return false; }
    bool start_object(std::size_t) { return open(JsonValue::object()); }
    bool end_object() { return close(); }
    bool start_array(std::size_t) { return open(JsonValue::array()); }
    bool end_array() { return close(); }

    bool key(std::string& name) {
        Level& level = levels_.back();
        level.key = name;
        if (level.keys.insert(name).second) return true;
        problems_.push_back({"plan.json.duplicate_key", where(), name,
                             "the key \"" + name + "\" stands twice in the same object; keep one of the two"});
        return true;
    }

    bool parse_error(std::size_t position, const std::string& token, const nlohmann::json::exception& error) {
        const std::string place = place_text(text_, position == 0 ? 0 : position - 1);
        const std::string near = token.substr(0, 40);
        if (error.id == 406) {
            problems_.push_back({"plan.json.number", where(), near,
                                 "the number at " + place + " is too large for a double; check its exponent"});
        } else if (complete_) {
            problems_.push_back({"plan.json.trailing", "", near,
                                 "something stands after the end of the plan at " + place + "; remove it"});
        } else {
            problems_.push_back({"plan.json.syntax", where(), near,
                                 "this is no JSON any more at " + place +
                                     "; look there for a missing comma, quote or bracket, or a word without quotes"});
        }
        return false;
    }

    [[nodiscard]] bool complete() const { return complete_; }
    [[nodiscard]] JsonValue take() { return std::move(root_); }

private:
    struct Level {
        JsonValue value;
        std::string key;                       // of the member being read
        std::unordered_set<std::string> keys;  // all so far
    };

    std::string where() const {
        Pointer pointer;
        for (const Level& level : levels_) {
            if (level.value.kind == JsonKind::array) {
                pointer.enter(level.value.items.size());
            } else if (!level.keys.empty()) {
                pointer.enter(level.key);
            }
        }
        return pointer.text();
    }

    bool open(JsonValue value) {
        if (levels_.size() == deepest) {
            problems_.push_back({"plan.json.depth", where(), "",
                                 "brackets are nested more than " + std::to_string(deepest) +
                                     " deep; no plan needs that, so the file is not a plan or is damaged"});
            return false;
        }
        levels_.push_back({std::move(value), {}, {}});
        return true;
    }

    bool close() {
        JsonValue value = std::move(levels_.back().value);
        levels_.pop_back();
        return put(std::move(value));
    }

    bool put(JsonValue value) {
        if (levels_.empty()) {
            root_ = std::move(value);
            complete_ = true;
        } else if (Level& level = levels_.back(); level.value.kind == JsonKind::array) {
            level.value.items.push_back(std::move(value));
        } else {
            level.value.members.push_back({level.key, std::move(value)});
        }
        return true;
    }

    std::string_view text_;
    std::vector<Problem>& problems_;
    std::vector<Level> levels_;
    JsonValue root_;
    bool complete_ = false;
};

/// Length of the UTF-8 sequence at the front of `text` (RFC 3629), 0 if there is none.
std::size_t sequence_length(std::string_view text) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char first = byte(0);
    if (first < 0x80) return 1;
    const std::size_t length = first >= 0xC2 && first <= 0xDF   ? 2
                               : first >= 0xE0 && first <= 0xEF ? 3
                               : first >= 0xF0 && first <= 0xF4 ? 4
                                                                : 0;
    if (length == 0 || text.size() < length) return 0;
    for (std::size_t i = 1; i < length; ++i) {
        if (byte(i) < 0x80 || byte(i) > 0xBF) return 0;
    }
    const unsigned char second = byte(1);
    const bool overlong = (first == 0xE0 && second < 0xA0) || (first == 0xF0 && second < 0x90);
    const bool surrogate = first == 0xED && second > 0x9F;
    const bool too_high = first == 0xF4 && second > 0x8F;
    return overlong || surrogate || too_high ? 0 : length;
}

/// Bytes of `text` that are UTF-8 from the front, and how many code points they are.
std::pair<std::size_t, std::size_t> utf8_prefix(std::string_view text) {
    std::size_t bytes = 0;
    std::size_t points = 0;
    while (bytes < text.size()) {
        const std::size_t length = sequence_length(text.substr(bytes));
        if (length == 0) break;
        bytes += length;
        ++points;
    }
    return {bytes, points};
}

}  // namespace

std::optional<std::size_t> utf8_length(std::string_view text) {
    const auto [bytes, points] = utf8_prefix(text);
    if (bytes != text.size()) return std::nullopt;
    return points;
}

std::optional<JsonValue> parse_json(std::string_view text, std::vector<Problem>& problems) {
    if (text.size() > largest_text) {
        problems.push_back({"plan.json.size", "", std::to_string(text.size()) + " bytes",
                            "a plan of more than 4 MiB is not a plan; check which file this is"});
        return std::nullopt;
    }
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
        problems.push_back({"plan.json.syntax", "", "", "the text is empty; check which file this is"});
        return std::nullopt;
    }
    if (const std::size_t bytes = utf8_prefix(text).first; bytes != text.size()) {
        problems.push_back({"plan.json.utf8", "", "",
                            "the text is not UTF-8 at " + place_text(text, bytes) + "; save the file as UTF-8"});
        return std::nullopt;
    }
    TreeBuilder builder(text, problems);
    const bool parsed = nlohmann::json::sax_parse(text.begin(), text.end(), &builder);
    if (!parsed || !builder.complete()) return std::nullopt;
    return builder.take();
}

}  // namespace coverframe::plan_detail
