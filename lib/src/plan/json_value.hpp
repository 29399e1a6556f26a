// SPDX-License-Identifier: BSD-3-Clause
// A JSON text as a tree that forgets nothing: members in the order of the file, so that a plan can be read strictly and
// written in a fixed order. Private to the plan layer.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "coverframe/base/error.hpp"

namespace coverframe::plan_detail {

enum class JsonKind { null, boolean, number, string, array, object };

struct JsonMember;

struct JsonValue {
    JsonKind kind = JsonKind::null;
    bool boolean = false;
    double number = 0;  ///< finite
    std::string text;   ///< of a string
    std::vector<JsonValue> items;
    std::vector<JsonMember> members;

    JsonValue();
    JsonValue(const JsonValue&);
    JsonValue(JsonValue&&) noexcept;
    JsonValue& operator=(const JsonValue&);
    JsonValue& operator=(JsonValue&&) noexcept;
    ~JsonValue();

    static JsonValue of_boolean(bool value);
    static JsonValue of_number(double value);
    static JsonValue of_text(std::string_view value);
    static JsonValue array();
    static JsonValue object();

    /// Appends a member and returns its value.
    JsonValue& add(std::string_view key, JsonValue value);

    /// The first member of that name, or nullptr.
    [[nodiscard]] const JsonValue* find(std::string_view key) const;
};

struct JsonMember {
    std::string key;
    JsonValue value;
};

/// "an object", "a number".
[[nodiscard]] std::string_view name_of(JsonKind kind);

/// The value in a few characters on one line, for a message.
[[nodiscard]] std::string short_text(const JsonValue& value);

/// The text with a blank in place of each control character.
[[nodiscard]] std::string on_one_line(std::string text);

/// Parses a whole text. Appends to `problems` what is wrong with it as JSON: size, UTF-8, syntax, trailing text, depth,
/// numbers too large for a double, duplicate keys. Empty if no tree could be made.
[[nodiscard]] std::optional<JsonValue> parse_json(std::string_view text, std::vector<Problem>& problems);

/// The tree as text: two spaces a level, an object or array without nested ones on one line where it fits in 110
/// columns, numbers in the fewest digits that read back to the same double, a line end at the end.
[[nodiscard]] std::string json_text(const JsonValue& value);

/// Shortest text that reads back to the same double. \pre finite
[[nodiscard]] std::string number_text(double value);

/// Number of code points, or nothing if the text is not UTF-8.
[[nodiscard]] std::optional<std::size_t> utf8_length(std::string_view text);

}  // namespace coverframe::plan_detail
