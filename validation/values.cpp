// SPDX-License-Identifier: BSD-3-Clause
#include "values.hpp"

#include <utility>

#include "coverframe/units/crossing.hpp"
#include "coverframe/units/text.hpp"

namespace coverframe::validation {
namespace {

template <class Quantity>
double size_among(const std::string& unit) {
    for (const UnitName& known : units_of<Quantity>()) {
        if (known.name == unit) return known.to_si;
    }
    throw CaseError("unit \"" + unit + "\" is no unit of " + std::string(kind_of<Quantity>()));
}

double size_of_second_moment(const std::string& unit) {
    if (unit == "m4") return 1.0;
    if (unit == "mm4") return 1e-12;
    if (unit == "in4") return factor::inch * factor::inch * factor::inch * factor::inch;
    throw CaseError("unit \"" + unit + "\" is no unit of a second moment of area");
}

}  // namespace

Number answer(double value, std::string rule) { return {value, Dimension::pure, std::move(rule)}; }
Number answer(Length value, std::string rule) { return {in_m(value), Dimension::length, std::move(rule)}; }
Number answer(Force value, std::string rule) { return {in_N(value), Dimension::force, std::move(rule)}; }
Number answer(Moment value, std::string rule) { return {in_N_m(value), Dimension::moment, std::move(rule)}; }
Number answer(LineLoad value, std::string rule) {
    return {in_N_per_m(value), Dimension::line_load, std::move(rule)};
}
Number answer(Area value, std::string rule) { return {in_m2(value), Dimension::area, std::move(rule)}; }
Number answer(Pressure value, std::string rule) { return {in_Pa(value), Dimension::pressure, std::move(rule)}; }
Number answer(UnitWeight value, std::string rule) {
    return {in_N_per_m3(value), Dimension::unit_weight, std::move(rule)};
}
Number answer(Angle value, std::string rule) { return {in_rad(value), Dimension::angle, std::move(rule)}; }

double size_of_unit(Dimension dimension, const std::string& unit) {
    switch (dimension) {
        case Dimension::pure:
            if (unit == "-") return 1.0;
            throw CaseError("unit \"" + unit + "\" stands at a pure number, whose unit is \"-\"");
        case Dimension::length: return size_among<Length>(unit);
        case Dimension::area: return size_among<Area>(unit);
        case Dimension::second_moment: return size_of_second_moment(unit);
        case Dimension::force: return size_among<Force>(unit);
        case Dimension::moment:
            return unit == "kip in" ? 1e3 * size_among<Moment>("lbf in") : size_among<Moment>(unit);
        case Dimension::line_load: return size_among<LineLoad>(unit);
        case Dimension::pressure: return size_among<Pressure>(unit);
        case Dimension::unit_weight: return size_among<UnitWeight>(unit);
        case Dimension::angle: return size_among<Angle>(unit);
    }
    throw CaseError("unknown dimension");
}

}  // namespace coverframe::validation
