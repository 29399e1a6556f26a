// SPDX-License-Identifier: BSD-3-Clause
#include "plan/json_value.hpp"

#include <algorithm>
#include <charconv>
#include <cstdio>
#include <utility>

namespace coverframe::plan_detail {
namespace {

constexpr std::size_t line_width = 110;

std::string quoted(std::string_view text) {
    std::string out = "\"";
    for (const char c : text) {
        switch (c) {
            case '"': out += "\\\""; break;
            case '\\': out += "\\\\"; break;
            case '\n': out += "\\n"; break;
            case '\r': out += "\\r"; break;
            case '\t': out += "\\t"; break;
            default:
                if (static_cast<unsigned char>(c) < 0x20) {
                    char code[8];
                    std::snprintf(code, sizeof code, "\\u%04x", static_cast<unsigned>(static_cast<unsigned char>(c)));
                    out += code;
                } else {
                    out += c;
                }
        }
    }
    return out + '"';
}

bool is_plain(const JsonValue& value) { return value.kind != JsonKind::array && value.kind != JsonKind::object; }

std::string plain_text(const JsonValue& value) {
    switch (value.kind) {
        case JsonKind::boolean: return value.boolean ? "true" : "false";
        case JsonKind::number: return number_text(value.number);
        case JsonKind::string: return quoted(value.text);
        default: return "null";
    }
}

/// `value` on one line, or nothing if it has nested parts or gets too long.
std::optional<std::string> compact(const JsonValue& value, std::size_t room) {
    if (is_plain(value)) return plain_text(value);
    const bool object = value.kind == JsonKind::object;
    std::string line(1, object ? '{' : '[');
    const auto append = [&](const JsonValue& part) {
        line += plain_text(part);
        return is_plain(part) && line.size() < room;
    };
    for (const JsonValue& item : value.items) {
        if (line.size() > 1) line += ", ";
        if (!append(item)) return std::nullopt;
    }
    for (const auto& [key, member] : value.members) {
        if (line.size() > 1) line += ", ";
        line += quoted(key) + ": ";
        if (!append(member)) return std::nullopt;
    }
    return line + (object ? '}' : ']');
}

void append_text(std::string& out, const JsonValue& value, std::size_t indent, std::size_t used) {
    const std::size_t room = line_width > used ? line_width - used : 0;
    if (const auto line = compact(value, room)) {
        out += *line;
        return;
    }
    const bool object = value.kind == JsonKind::object;
    out += object ? "{\n" : "[\n";
    const std::string margin(indent + 2, ' ');
    bool first = true;
    const auto begin_part = [&] {
        if (!first) out += ",\n";
        first = false;
        out += margin;
    };
    for (const JsonValue& item : value.items) {
        begin_part();
        append_text(out, item, indent + 2, indent + 2);
    }
    for (const auto& [key, member] : value.members) {
        begin_part();
        const std::string name = quoted(key) + ": ";
        out += name;
        append_text(out, member, indent + 2, indent + 2 + name.size());
    }
    out += '\n' + std::string(indent, ' ') + (object ? '}' : ']');
}

}  // namespace

JsonValue::JsonValue() = default;
JsonValue::JsonValue(const JsonValue&) = default;
JsonValue::JsonValue(JsonValue&&) noexcept = default;
JsonValue& JsonValue::operator=(const JsonValue&) = default;
JsonValue& JsonValue::operator=(JsonValue&&) noexcept = default;
JsonValue::~JsonValue() = default;

JsonValue JsonValue::of_boolean(bool value) {
    JsonValue made;
    made.kind = JsonKind::boolean;
    made.boolean = value;
    return made;
}

JsonValue JsonValue::of_number(double value) {
    JsonValue made;
    made.kind = JsonKind::number;
    made.number = value;
    return made;
}

JsonValue JsonValue::of_text(std::string_view value) {
    JsonValue made;
    made.kind = JsonKind::string;
    made.text = value;
    return made;
}

JsonValue JsonValue::array() {
    JsonValue made;
    made.kind = JsonKind::array;
    return made;
}

JsonValue JsonValue::object() {
    JsonValue made;
    made.kind = JsonKind::object;
    return made;
}

JsonValue& JsonValue::add(std::string_view key, JsonValue value) {
    members.push_back({std::string(key), std::move(value)});
    return members.back().value;
}

const JsonValue* JsonValue::find(std::string_view key) const {
    const auto found = std::find_if(members.begin(), members.end(), [&](const JsonMember& m) { return m.key == key; });
    return found == members.end() ? nullptr : &found->value;
}

std::string_view name_of(JsonKind kind) {
    switch (kind) {
        case JsonKind::null: return "null";
        case JsonKind::boolean: return "true or false";
        case JsonKind::number: return "a number";
        case JsonKind::string: return "a text";
        case JsonKind::array: return "a list";
        case JsonKind::object: return "an object";
    }
    return "";
}

std::string short_text(const JsonValue& value) {
    if (!is_plain(value)) return std::string(name_of(value.kind));
    std::string text = value.kind == JsonKind::string ? on_one_line(value.text) : plain_text(value);
    if (text.size() <= 60) return text;
    std::size_t cut = 57;
    while (cut > 0 && (static_cast<unsigned char>(text[cut]) & 0xC0) == 0x80) --cut;  // not inside a code point
    return text.substr(0, cut) + "...";
}

std::string on_one_line(std::string text) {
    for (char& c : text) {
        if (static_cast<unsigned char>(c) < 0x20) c = ' ';
    }
    return text;
}

std::string json_text(const JsonValue& value) {
    std::string out;
    append_text(out, value, 0, 0);
    return out + '\n';
}

std::string number_text(double value) {
    char buffer[32];
    const auto end = std::to_chars(buffer, buffer + sizeof buffer, value);
    return {buffer, end.ptr};
}

}  // namespace coverframe::plan_detail
