// SPDX-License-Identifier: BSD-3-Clause
// The accepted units of each quantity, and the spellings that are no unit but mean one. Factors come from
// units/literals.hpp, so that a text and a literal give the same bits.
#pragma once

#include <array>
#include <span>
#include <string_view>

#include "coverframe/units/literals.hpp"
#include "coverframe/units/text.hpp"

namespace coverframe::text {

struct Table {
    std::string_view kind;      // with its article
    std::string_view examples;  // for a sentence
    std::span<const UnitName> units;
};

inline constexpr std::array length_units{
    UnitName{"m", 1.0},           UnitName{"mm", 1e-3},         UnitName{"cm", 1e-2},        UnitName{"um", 1e-6},
    UnitName{"ft", factor::foot}, UnitName{"in", factor::inch}, UnitName{"mil", factor::mil}};
inline constexpr std::array area_units{UnitName{"m2", 1.0}, UnitName{"mm2", 1e-6}, UnitName{"cm2", 1e-4},
                                       UnitName{"ft2", factor::foot* factor::foot},
                                       UnitName{"in2", factor::inch* factor::inch}};
inline constexpr std::array force_units{UnitName{"N", 1.0}, UnitName{"kN", 1e3}, UnitName{"lbf", factor::pound_force},
                                        UnitName{"kip", 1e3 * factor::pound_force}};
inline constexpr std::array moment_units{UnitName{"N m", 1.0}, UnitName{"kN m", 1e3}, UnitName{"N mm", 1e-3},
                                         UnitName{"lbf ft", factor::pound_force* factor::foot},
                                         UnitName{"lbf in", factor::pound_force* factor::inch}};
inline constexpr std::array line_load_units{UnitName{"N/m", 1.0},
                                            UnitName{"kN/m", 1e3},
                                            UnitName{"N/mm", 1e3},
                                            UnitName{"plf", factor::plf},
                                            UnitName{"lbf/ft", factor::plf},
                                            UnitName{"lbf/in", factor::pound_force / factor::inch}};
inline constexpr std::array pressure_units{UnitName{"Pa", 1.0},
                                           UnitName{"kPa", 1e3},
                                           UnitName{"MPa", 1e6},
                                           UnitName{"GPa", 1e9},
                                           UnitName{"N/m2", 1.0},
                                           UnitName{"kN/m2", 1e3},
                                           UnitName{"N/mm2", 1e6},
                                           UnitName{"psf", factor::psf},
                                           UnitName{"psi", factor::psi},
                                           UnitName{"ksi", 1e3 * factor::psi},
                                           UnitName{"lbf/ft2", factor::psf},
                                           UnitName{"lbf/in2", factor::psi}};
inline constexpr std::array unit_weight_units{UnitName{"N/m3", 1.0}, UnitName{"kN/m3", 1e3},
                                              UnitName{"pcf", factor::pcf}, UnitName{"lbf/ft3", factor::pcf}};
inline constexpr std::array angle_units{UnitName{"rad", 1.0}, UnitName{"deg", factor::degree}};
inline constexpr std::array temperature_units{UnitName{"K", 1.0}, UnitName{"degC", 1.0}, UnitName{"degF", 5.0 / 9.0}};

inline constexpr Table length_table{"a length", R"("1.68 m", "54 in" or "5 ft 6 in")", length_units};
inline constexpr Table area_table{"an area", R"("0.75 m2" or "8 ft2")", area_units};
inline constexpr Table force_table{"a force", R"("0.6 kN" or "135 lbf")", force_units};
inline constexpr Table moment_table{"a bending moment", R"("1.2 kN m" or "900 lbf ft")", moment_units};
inline constexpr Table line_load_table{"a force per length", R"("0.15 kN/m" or "40 plf")", line_load_units};
inline constexpr Table pressure_table{"an area load or stress", R"("1.5 kPa", "30 psf" or "9 N/mm2")", pressure_units};
inline constexpr Table unit_weight_table{"a weight per volume", R"("2.8 kN/m3" or "17.9 pcf")", unit_weight_units};
inline constexpr Table angle_table{"an angle", R"("18 deg" or "0.31 rad")", angle_units};
inline constexpr Table temperature_table{"a temperature difference", R"("-12 degC" or "-12 K")", temperature_units};

inline constexpr std::array all_tables{&length_table,      &area_table,      &force_table,
                                       &moment_table,      &line_load_table, &pressure_table,
                                       &unit_weight_table, &angle_table,     &temperature_table};

template <Readable Quantity>
constexpr const Table& table_of() {
    if constexpr (std::same_as<Quantity, Length>) return length_table;
    if constexpr (std::same_as<Quantity, Area>) return area_table;
    if constexpr (std::same_as<Quantity, Force>) return force_table;
    if constexpr (std::same_as<Quantity, Moment>) return moment_table;
    if constexpr (std::same_as<Quantity, LineLoad>) return line_load_table;
    if constexpr (std::same_as<Quantity, Pressure>) return pressure_table;
    if constexpr (std::same_as<Quantity, UnitWeight>) return unit_weight_table;
    if constexpr (std::same_as<Quantity, Angle>) return angle_table;
    if constexpr (std::same_as<Quantity, TemperatureDifference>) return temperature_table;
}

/// A spelling people use and the unit they mean by it.
struct Spelling {
    std::string_view written;
    std::string_view meant;
};

inline constexpr std::array<Spelling, 62> spellings{
    {{"metre", "m"},        {"metres", "m"},      {"meter", "m"},          {"meters", "m"},     {"\"", "in"},
     {"''", "in"},          {"inch", "in"},       {"inches", "in"},        {"'", "ft"},         {"foot", "ft"},
     {"feet", "ft"},        {"mils", "mil"},      {"thou", "mil"},         {"\u00b5m", "um"},   {"\u03bcm", "um"},
     {"micron", "um"},      {"microns", "um"},    {"m\u00b2", "m2"},       {"m^2", "m2"},       {"sqm", "m2"},
     {"sq ft", "ft2"},      {"sqft", "ft2"},      {"lb", "lbf"},           {"lbs", "lbf"},      {"#", "lbf"},
     {"pounds", "lbf"},     {"kNm", "kN m"},      {"kN-m", "kN m"},        {"kN*m", "kN m"},    {"kN\u00b7m", "kN m"},
     {"Nm", "N m"},         {"ft lbf", "lbf ft"}, {"ft-lb", "lbf ft"},     {"ft lb", "lbf ft"}, {"lb-ft", "lbf ft"},
     {"lb ft", "lbf ft"},   {"in-lb", "lbf in"},  {"in lb", "lbf in"},     {"lb/ft", "plf"},    {"lbs/ft", "plf"},
     {"pli", "lbf/in"},     {"lb/in", "lbf/in"},  {"lb/ft2", "psf"},       {"lb/sqft", "psf"},  {"lb/in2", "psi"},
     {"N/m\u00b2", "N/m2"}, {"N/m^2", "N/m2"},    {"kN/m\u00b2", "kN/m2"}, {"kN/m^2", "kN/m2"}, {"N/mm\u00b2", "N/mm2"},
     {"N/mm^2", "N/mm2"},   {"lb/ft3", "pcf"},    {"kN/m\u00b3", "kN/m3"}, {"kN/m^3", "kN/m3"}, {"\u00b0", "deg"},
     {"degree", "deg"},     {"degrees", "deg"},   {"C", "degC"},           {"\u00b0C", "degC"}, {"F", "degF"},
     {"\u00b0F", "degF"},   {"kelvin", "K"}}};

}  // namespace coverframe::text
