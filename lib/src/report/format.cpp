// SPDX-License-Identifier: BSD-3-Clause
#include "report/format.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <system_error>

#include "coverframe/base/error.hpp"
#include "coverframe/units/crossing.hpp"
#include "units/inches.hpp"

namespace coverframe::reporting {
namespace {

void require_finite(double value) {
    if (!std::isfinite(value)) {
        throw StateError("report.number",
                         "the assessment holds a number that is not finite; a report is not made of it");
    }
}

std::string written(double value, std::chars_format format, int precision) {
    std::array<char, 400> buffer{};
    const std::to_chars_result end =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, format, precision);
    return {buffer.data(), end.ptr};
}

// "-07" or "+04", as an exponent is written.
int whole_number(std::string_view text) {
    if (text.starts_with('+')) text.remove_prefix(1);
    int value = 0;
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

std::string without_idle_zeros(std::string text) {
    if (text.find('.') == std::string::npos) return text;
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text;
}

enum class Kind {
    length,
    area,
    volume,
    second_moment,
    force,
    moment,
    line_load,
    area_load,
    stress,
    unit_weight,
    water
};

// Below this nothing on a boat can be measured, and a number is shown as 0 [SI unit].
double least_shown(Kind kind) {
    switch (kind) {
        case Kind::length: return 5e-6;
        case Kind::force:
        case Kind::moment:
        case Kind::line_load: return 5e-3;
        case Kind::area_load: return 5e-2;
        case Kind::stress: return 5.0;
        case Kind::water: return 5e-5;
        case Kind::area:
        case Kind::volume:
        case Kind::second_moment:
        case Kind::unit_weight: return 0.0;
    }
    return 0.0;
}

struct UnitRow {
    std::string_view name;
    Kind kind;
    double to_si;
};

constexpr std::array unit_rows{
    UnitRow{"m", Kind::length, 1.0},          UnitRow{"mm", Kind::length, 1e-3},
    UnitRow{"cm", Kind::length, 1e-2},        UnitRow{"ft", Kind::length, factor::foot},
    UnitRow{"in", Kind::length, factor::inch},
    UnitRow{"m2", Kind::area, 1.0},           UnitRow{"mm2", Kind::area, 1e-6},
    UnitRow{"m3", Kind::volume, 1.0},         UnitRow{"mm3", Kind::volume, 1e-9},
    UnitRow{"m4", Kind::second_moment, 1.0},  UnitRow{"mm4", Kind::second_moment, 1e-12},
    UnitRow{"N", Kind::force, 1.0},           UnitRow{"kN", Kind::force, 1e3},
    UnitRow{"lbf", Kind::force, factor::pound_force},
    UnitRow{"N m", Kind::moment, 1.0},        UnitRow{"kN m", Kind::moment, 1e3},
    UnitRow{"N mm", Kind::moment, 1e-3},
    UnitRow{"N/m", Kind::line_load, 1.0},     UnitRow{"kN/m", Kind::line_load, 1e3},
    UnitRow{"N/mm", Kind::line_load, 1e3},
    UnitRow{"Pa", Kind::area_load, 1.0},      UnitRow{"kPa", Kind::area_load, 1e3},
    UnitRow{"kN/m2", Kind::area_load, 1e3},   UnitRow{"N/m2", Kind::area_load, 1.0},
    UnitRow{"psf", Kind::area_load, factor::psf},
    UnitRow{"N/mm2", Kind::stress, 1e6},      UnitRow{"MPa", Kind::stress, 1e6},
    UnitRow{"GPa", Kind::stress, 1e9},        UnitRow{"psi", Kind::stress, factor::psi},
    UnitRow{"N/m3", Kind::unit_weight, 1.0},  UnitRow{"kN/m3", Kind::unit_weight, 1e3},
    UnitRow{"pcf", Kind::unit_weight, factor::pcf}, UnitRow{"plf", Kind::line_load, factor::plf},
    UnitRow{"L", Kind::water, 1e-3},
};

constexpr double inch2 = factor::inch * factor::inch;
constexpr double us_gallon = 231.0 * inch2 * factor::inch;  // 231 cubic inches

std::string with(double value, double size, std::string_view unit, int digits) {
    return rounded(value / size, digits) + ' ' + std::string(unit);
}

std::string metres(double value, int digits) {
    const double size = std::abs(value);
    if (size >= 0.9995) {
        const int decimals = digits > 3 ? digits - 1 : 3;
        std::string text = fixed(value, decimals);
        while (text.back() == '0' && text[text.size() - 3] != '.') text.pop_back();
        return text + " m";
    }
    if (size >= 0.01) return fixed(value * 1e3, digits > 3 ? 1 : 0) + " mm";
    return rounded(value * 1e3, digits > 3 ? digits : 2) + " mm";
}

// `size` is the number that decides between N and kN: the larger of those that stand side by side.
std::string in_si(double value, double size, Kind kind, int digits) {
    switch (kind) {
        case Kind::length: return metres(value, digits);
        case Kind::area: return size < 0.1 ? with(value, 1e-6, "mm2", digits) : with(value, 1, "m2", digits);
        case Kind::volume: return size < 0.1 ? with(value, 1e-9, "mm3", digits) : with(value, 1, "m3", digits);
        case Kind::second_moment: return with(value, 1e-12, "mm4", digits);
        case Kind::force: return size < 1e3 ? with(value, 1, "N", digits) : with(value, 1e3, "kN", digits);
        case Kind::moment: return size < 1e3 ? with(value, 1, "N m", digits) : with(value, 1e3, "kN m", digits);
        case Kind::line_load: return size < 1e3 ? with(value, 1, "N/m", digits) : with(value, 1e3, "kN/m", digits);
        case Kind::area_load: return with(value, 1e3, "kPa", digits);
        case Kind::stress: return with(value, 1e6, "N/mm2", digits);
        case Kind::unit_weight: return with(value, 1e3, "kN/m3", digits);
        case Kind::water: return with(value, 1e-3, "L", digits - 1);
    }
    return {};
}

std::string in_us(double value, double size, Kind kind, int digits) {
    switch (kind) {
        case Kind::length: return digits > 3 ? with(value, factor::inch, "in", digits) : detail::feet_and_inches(value);
        case Kind::area: return size < 0.1 ? with(value, inch2, "in2", digits)
                                           : with(value, factor::foot * factor::foot, "ft2", digits);
        case Kind::volume: return with(value, inch2 * factor::inch, "in3", digits);
        case Kind::second_moment: return with(value, inch2 * inch2, "in4", digits);
        case Kind::force: return with(value, factor::pound_force, "lbf", digits);
        case Kind::moment: return with(value, factor::pound_force * factor::foot, "lbf ft", digits);
        case Kind::line_load: return with(value, factor::plf, "plf", digits);
        case Kind::area_load: return with(value, factor::psf, "psf", digits);
        case Kind::stress: return with(value, factor::psi, "psi", digits);
        case Kind::unit_weight: return with(value, factor::pcf, "pcf", digits);
        case Kind::water: return with(value, us_gallon, "US gal", digits - 1);
    }
    return {};
}

std::string joined(const Shown& pair) { return pair.other.empty() ? pair.first : pair.first + " (" + pair.other + ")"; }

Shown in_order(std::string si, std::string us, UnitsShown units) {
    if (units == UnitsShown::us) return {std::move(us), std::move(si)};
    return {std::move(si), std::move(us)};
}

}  // namespace

std::string fixed(double value, int decimals) {
    require_finite(value);
    std::string text = written(value, std::chars_format::fixed, decimals);
    if (text.front() == '-' && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
    return text;
}

std::string rounded(double value, int digits) {
    require_finite(value);
    if (value == 0.0) return "0";
    const std::string text = written(value, std::chars_format::scientific, digits - 1);
    const std::size_t mark = text.find('e');
    const int exponent = whole_number(std::string_view(text).substr(mark + 1));
    if (exponent < -4 || exponent >= 7)
        return without_idle_zeros(text.substr(0, mark)) + " x 10^" + std::to_string(exponent);
    double rounded_value = 0;
    std::from_chars(text.data(), text.data() + text.size(), rounded_value);
    return without_idle_zeros(fixed(rounded_value, exponent >= digits ? 0 : digits - 1 - exponent));
}

std::string whole_percent(double share) { return fixed(100.0 * share, 0) + " %"; }

std::string percent(double share) {
    const double value = share * 100.0;
    if (value == 100.0) return "100 %";
    if (std::abs(value - 100.0) >= 5.0) return fixed(value, 0) + " %";
    int decimals = 1;
    std::string text = fixed(value, decimals);
    while (decimals < 9 && text.find_first_not_of("0.", 1) == std::string::npos) text = fixed(value, ++decimals);
    return text + " %";
}

Shown shown(double value, std::string_view unit, UnitsShown units, int digits, double beside) {
    require_finite(value);
    for (const UnitRow& row : unit_rows) {
        if (row.name != unit) continue;
        const double si = std::abs(value * row.to_si) < least_shown(row.kind) ? 0.0 : value * row.to_si;
        const double size = std::max(std::abs(si), std::abs(beside * row.to_si));
        return in_order(in_si(si, size, row.kind, digits), in_us(si, size, row.kind, digits), units);
    }
    if (unit == "deg") return {fixed(value, 1) + " deg", {}};
    const std::string number = rounded(value, digits);
    return {unit == "-" || unit.empty() ? number : number + ' ' + std::string(unit), {}};
}

std::string both(double value, std::string_view unit, UnitsShown units, int digits, double beside) {
    return joined(shown(value, unit, units, digits, beside));
}

std::string alone(double value, std::string_view unit, UnitsShown units) { return shown(value, unit, units).first; }

std::string both(Length length, UnitsShown units) { return both(in_m(length), "m", units); }
std::string both(Force force, UnitsShown units) { return both(in_N(force), "N", units); }
std::string alone(Length length, UnitsShown units) { return alone(in_m(length), "m", units); }

std::string thickness(Length length, UnitsShown units) {
    const std::string mil = rounded(in_mil(length), in_mil(length) < 10 ? 2 : 3) + " mil";
    return joined(in_order(rounded(in_mm(length)) + " mm", mil, units));
}

std::string section(const Section& section, UnitsShown units) {
    const auto millimetres = [](Length side) { return fixed(in_mm(side), 0); };
    return joined(in_order(millimetres(section.breadth) + " x " + millimetres(section.depth) + " mm",
                           detail::inches(in_m(section.breadth)) + " x " + detail::inches(in_m(section.depth)) + " in",
                           units));
}

}  // namespace coverframe::reporting
