// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/units/text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numeric>
#include <optional>
#include <system_error>
#include <vector>

#include "coverframe/base/error.hpp"
#include "units/unit_tables.hpp"

namespace coverframe {
namespace text {
namespace {

// ---- characters and words ------------------------------------------------------------------------------------------

constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }
constexpr bool is_space(char c) { return c == ' ' || c == '\t'; }
constexpr char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

std::string_view without_leading_spaces(std::string_view text) {
    while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
    return text;
}

std::string_view trimmed(std::string_view text) {
    text = without_leading_spaces(text);
    while (!text.empty() && is_space(text.back())) text.remove_suffix(1);
    return text;
}

// At most 40 bytes of a text, cut between characters of UTF-8.
std::string shortened(std::string_view text) {
    constexpr std::size_t longest = 40;
    if (text.size() <= longest) return std::string(text);
    std::size_t end = longest;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
    return std::string(text.substr(0, end)) + "...";
}

std::string quoted(std::string_view text) { return '"' + shortened(text) + '"'; }

bool equal_but_for_case(std::string_view a, std::string_view b) {
    return std::ranges::equal(a, b, [](char x, char y) { return lower(x) == lower(y); });
}

// Levenshtein distance of two short words.
std::size_t distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t changed = diagonal + (lower(a[i - 1]) == lower(b[j - 1]) ? 0U : 1U);
            diagonal = row[j];
            row[j] = std::min({row[j] + 1, row[j - 1] + 1, changed});
        }
    }
    return row.back();
}

// ---- units ---------------------------------------------------------------------------------------------------------

const UnitName* find_unit(const Table& table, std::string_view name) {
    const auto found = std::ranges::find(table.units, name, &UnitName::name);
    return found == table.units.end() ? nullptr : &*found;
}

const Table* table_with(std::string_view name) {
    const auto found = std::ranges::find_if(all_tables, [&](const Table* t) { return find_unit(*t, name) != nullptr; });
    return found == all_tables.end() ? nullptr : *found;
}

// The unit of the table that was probably meant; empty if none is near.
std::string_view nearest_unit(const Table& table, std::string_view name) {
    for (const Spelling& spelling : spellings) {
        if (equal_but_for_case(spelling.written, name) && find_unit(table, spelling.meant) != nullptr)
            return spelling.meant;
    }
    std::string_view nearest;
    if (name.size() > 12) return nearest;
    std::size_t least = name.size() < 4 ? 2 : 3;  // one slip in a short word, two in a longer one
    for (const UnitName& unit : table.units) {
        const std::size_t slips = distance(unit.name, name);
        if (slips < std::min(least, unit.name.size())) {
            least = slips;
            nearest = unit.name;
        }
    }
    return nearest;
}

std::string list_of(const Table& table) {
    std::string list;
    for (const UnitName& unit : table.units) {
        if (!list.empty()) list += ", ";
        list += unit.name;
    }
    return list;
}

// ---- errors --------------------------------------------------------------------------------------------------------

struct Reading {
    const Table& table;
    std::string_view whole;  // the text as it was given
    std::string_view where;

    [[noreturn]] void refuse(std::string code, const std::string& what_is_wrong) const {
        throw InputError(
            std::move(code), std::string(where), shortened(whole),
            what_is_wrong + "; " + std::string(table.kind) + " is expected, such as " + std::string(table.examples));
    }
};

[[noreturn]] void refuse_dimension(const Reading& reading, std::string_view unit, const Table& other) {
    reading.refuse("quantity.dimension", quoted(unit) + " is a unit of " + std::string(other.kind));
}

// For a unit that the table does not hold.
[[noreturn]] void refuse_unit(const Reading& reading, std::string_view unit) {
    if (const Table* other = table_with(unit)) refuse_dimension(reading, unit, *other);
    std::string advice = quoted(unit) + " is not a known unit";
    const std::string_view meant = nearest_unit(reading.table, unit);
    if (!meant.empty()) advice += ", did you mean " + quoted(meant) + '?';
    if (unit == "kg" || unit.starts_with("kg/")) advice += ", and a mass is not a force: one kilogram weighs 9.80665 N";
    advice += " (units: " + list_of(reading.table) + ')';
    reading.refuse("quantity.unit.unknown", advice);
}

// ---- numbers -------------------------------------------------------------------------------------------------------

// Length of the unsigned decimal number at the start of the text, 0 if there is none.
std::size_t decimal_length(std::string_view text, bool with_exponent) {
    std::size_t at = 0;
    std::size_t digits = 0;
    const auto take_digits = [&] {
        for (; at < text.size() && is_digit(text[at]); ++at) ++digits;
    };
    take_digits();
    if (at < text.size() && text[at] == '.') {
        ++at;
        take_digits();
    }
    if (digits == 0) return 0;
    if (!with_exponent || at == text.size() || lower(text[at]) != 'e') return at;
    std::size_t end = at + 1;
    if (end < text.size() && (text[end] == '+' || text[end] == '-')) ++end;
    if (end == text.size() || !is_digit(text[end])) return at;
    while (end < text.size() && is_digit(text[end])) ++end;
    return end;
}

// The value of an unsigned decimal number that `decimal_length` has measured.
double value_of(std::string_view number, const Reading& reading) {
    double value = 0;
    const auto result = std::from_chars(number.data(), number.data() + number.size(), value);
    if (result.ec == std::errc::result_out_of_range)
        reading.refuse("quantity.range", quoted(number) + " is too large or too small to be held");
    return value;
}

// What is wrong with a text whose number ends where neither a space nor a letter follows, or that has no number.
[[noreturn]] void refuse_number(const Reading& reading, std::string_view after) {
    std::string advice = quoted(reading.whole) + " does not start with one plain decimal number";
    if (trimmed(reading.whole).empty())
        advice = "nothing stands here";
    else if (!after.empty() && after.front() == ',')
        advice = quoted(reading.whole) +
                 " has a comma in the number: use a point for decimals, and nothing between thousands";
    else if (!after.empty() && lower(after.front()) == 'x')
        advice = quoted(reading.whole) + " looks hexadecimal: use a decimal number";
    reading.refuse("quantity.number", advice);
}

// "6 in" of "5 ft 6 in": inches of a decimal number below 12 and nothing after them.
std::optional<double> inches_after_feet(std::string_view text, const Reading& reading) {
    const std::size_t length = decimal_length(text, false);
    if (length == 0 || trimmed(text.substr(length)) != "in") return std::nullopt;
    const double inches = value_of(text.substr(0, length), reading);
    if (inches < 12.0) return inches;
    reading.refuse("quantity.number", quoted(reading.whole) + " has " + std::string(text.substr(0, length)) +
                                          " inches beside the feet: they must be below 12");
}

bool all_digits(std::string_view text) { return std::ranges::all_of(text, is_digit); }

// Feet and inches in metres, if `after_number` reads "ft … in"; nothing if it is no compound at all.
std::optional<double> compound_in_m(std::string_view number, std::string_view after_number, const Reading& reading) {
    if (!after_number.starts_with("ft ") && !after_number.starts_with("ft\t")) return std::nullopt;
    const std::optional<double> inches = inches_after_feet(without_leading_spaces(after_number.substr(2)), reading);
    if (!inches) return std::nullopt;
    if (&reading.table != &length_table) refuse_dimension(reading, "ft and in", length_table);
    if (!all_digits(number))
        reading.refuse("quantity.number", quoted(reading.whole) + " has a fraction of a foot beside inches");
    return (value_of(number, reading) * 12.0 + *inches) * factor::inch;
}

// A second number after the first: "1 000 m", "5 ft 6", "2 m 30 cm". Units hold digits too, but never after a space.
bool holds_second_number(std::string_view unit) {
    for (std::size_t i = 0; i < unit.size(); ++i) {
        const bool begins = i == 0 || is_space(unit[i - 1]);
        const std::size_t sign = unit[i] == '-' || unit[i] == '+' ? 1 : 0;
        if (begins && decimal_length(unit.substr(i + sign), false) > 0) return true;
    }
    return false;
}

[[noreturn]] void refuse_second_number(const Reading& reading, std::string_view unit) {
    const std::size_t feet = unit.find("ft ");
    if (feet == 0 && &reading.table == &length_table && all_digits(trimmed(unit.substr(3))))
        reading.refuse("quantity.unit.missing", quoted(reading.whole) + " ends in a number without a unit");
    reading.refuse("quantity.number",
                   quoted(reading.whole) + " holds more than one number: only whole feet and inches stand together");
}

double checked(double magnitude, double number, const Reading& reading) {
    if (!std::isfinite(magnitude) || (magnitude == 0.0 && number != 0.0))
        reading.refuse("quantity.range", quoted(reading.whole) + " is too large or too small to be held");
    return magnitude;
}

double read_si(const Reading& reading) {
    std::string_view rest = trimmed(reading.whole);
    const bool negative = rest.starts_with('-');
    if (negative || rest.starts_with('+')) rest.remove_prefix(1);
    const std::string_view number = rest.substr(0, decimal_length(rest, true));
    rest.remove_prefix(number.size());
    const bool hexadecimal = number == "0" && !rest.empty() && lower(rest.front()) == 'x';
    const bool runs_on = !rest.empty() && (rest.front() == '.' || rest.front() == ',' || rest.front() == '+' ||
                                           rest.front() == '-' || rest.front() == '_');
    if (number.empty() || hexadecimal || runs_on) refuse_number(reading, rest);

    const std::string_view unit = without_leading_spaces(rest);
    if (unit.empty()) reading.refuse("quantity.unit.missing", quoted(reading.whole) + " has no unit");
    const double sign = negative ? -1.0 : 1.0;
    if (const UnitName* known = find_unit(reading.table, unit)) {
        const double value = value_of(number, reading);
        return sign * checked(value * known->to_si, value, reading);
    }
    if (const std::optional<double> metres = compound_in_m(number, unit, reading))
        return sign * checked(*metres, *metres, reading);
    if (holds_second_number(unit)) refuse_second_number(reading, unit);
    refuse_unit(reading, unit);
}

// ---- writing -------------------------------------------------------------------------------------------------------

// The shortest text of a number, without an exponent where that stays readable.
std::string shortest(double number) {
    const double size = std::abs(number);
    const bool plain = size == 0.0 || (size >= 1e-5 && size < 1e15);
    std::array<char, 64> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), number,
                                   plain ? std::chars_format::fixed : std::chars_format::scientific);
    return {buffer.data(), end.ptr};
}

// `number` to so many significant digits.
double rounded(double number, int digits) {
    std::array<char, 64> buffer{};
    const auto end =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), number, std::chars_format::scientific, digits - 1);
    double result = 0;
    std::from_chars(buffer.data(), end.ptr, result);
    return result;
}

// The number of fewest digits that, times `to_si`, is exactly `si`; nothing if no double is.
std::optional<double> number_in_unit(double si, double to_si) {
    const double number = si / to_si;
    if (!std::isfinite(number)) return std::nullopt;
    for (int digits = 1; digits <= 17; ++digits) {
        const double candidate = rounded(number, digits);
        if (candidate * to_si == si) return candidate;
    }
    for (const double toward : {-HUGE_VAL, HUGE_VAL}) {
        const double neighbour = std::nextafter(number, toward);
        if (neighbour * to_si == si) return neighbour;
    }
    return std::nullopt;
}

std::string write_si(double si, std::string_view unit, const Table& table) {
    const Reading writing{table, unit, ""};
    const UnitName* known = find_unit(table, unit);
    if (known == nullptr) refuse_unit(writing, unit);
    if (!std::isfinite(si)) writing.refuse("quantity.range", "a value that is not a finite number cannot be written");
    if (const std::optional<double> number = number_in_unit(si, known->to_si))
        return shortest(*number) + ' ' + std::string(known->name);
    return shortest(si) + ' ' + std::string(table.units.front().name);
}

std::string pattern(const Table& table) {
    std::string units;
    for (const UnitName& unit : table.units) {
        if (!units.empty()) units += '|';
        units += unit.name;  // no unit holds a character that means something in a pattern
    }
    const std::string single = R"(([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+-]?[0-9]+)?[ \t]*()" + units + ')';
    const std::string feet_and_inches = R"([0-9]+[ \t]*ft[ \t]+(0*([0-9]|1[01])(\.[0-9]*)?|\.[0-9]+)[ \t]*in)";
    const std::string body = &table == &length_table ? '(' + single + '|' + feet_and_inches + ')' : single;
    return R"(^[ \t]*[+-]?)" + body + R"([ \t]*$)";
}

}  // namespace
}  // namespace text

template <Readable Quantity>
std::span<const UnitName> units_of() {
    return text::table_of<Quantity>().units;
}

template <Readable Quantity>
std::string_view kind_of() {
    return text::table_of<Quantity>().kind;
}

template <Readable Quantity>
std::string_view examples_of() {
    return text::table_of<Quantity>().examples;
}

template <Readable Quantity>
std::string pattern_of() {
    return text::pattern(text::table_of<Quantity>());
}

template <Readable Quantity>
Quantity read(std::string_view text, std::string_view where) {
    return Quantity::from_value(text::read_si({text::table_of<Quantity>(), text, where}));
}

template <Readable Quantity>
std::string write(Quantity quantity, std::string_view unit) {
    return text::write_si(quantity.value(), unit, text::table_of<Quantity>());
}

#define COVERFRAME_READABLE(Quantity)                                     \
    template std::span<const UnitName> units_of<Quantity>();              \
    template std::string_view kind_of<Quantity>();                        \
    template std::string_view examples_of<Quantity>();                    \
    template std::string pattern_of<Quantity>();                          \
    template Quantity read<Quantity>(std::string_view, std::string_view); \
    template std::string write<Quantity>(Quantity, std::string_view);

COVERFRAME_READABLE(Length)
COVERFRAME_READABLE(Area)
COVERFRAME_READABLE(Force)
COVERFRAME_READABLE(Moment)
COVERFRAME_READABLE(LineLoad)
COVERFRAME_READABLE(Pressure)
COVERFRAME_READABLE(UnitWeight)
COVERFRAME_READABLE(Angle)
COVERFRAME_READABLE(TemperatureDifference)

}  // namespace coverframe
