// SPDX-License-Identifier: BSD-3-Clause
// Quantities as people write them: "1.68 m", "54 in", "5 ft 6 in", "30 psf", "7 mil", "1.5 kPa".
//
// A quantity is one decimal number and one unit, with or without spaces between. The only compound is feet and inches:
// whole feet, then inches below 12; a leading minus belongs to the whole of it. The decimal mark is a point whatever
// the locale says, there is no mark between thousands, and case counts, for "mm" is not "Mm". A temperature is a
// difference: "-12 degC" is twelve kelvin down.
#pragma once

#include <concepts>
#include <span>
#include <string>
#include <string_view>

#include "coverframe/units/quantities.hpp"

namespace coverframe {

/// A quantity that has a table of units, below.
template <class Quantity>
concept Readable = std::same_as<Quantity, Length> || std::same_as<Quantity, Area> || std::same_as<Quantity, Force> ||
    std::same_as<Quantity, Moment> || std::same_as<Quantity, LineLoad> || std::same_as<Quantity, Pressure> ||
    std::same_as<Quantity, UnitWeight> || std::same_as<Quantity, Angle> ||
    std::same_as<Quantity, TemperatureDifference>;

/// A unit as it may be written.
struct UnitName {
    std::string_view name;  ///< "kPa"
    double to_si = 1;       ///< the size of the unit in the SI unit of its dimension
};

/// Every accepted unit of a quantity, the SI unit first. The texts live as long as the program.
///   Length                 m mm cm um ft in mil
///   Area                   m2 mm2 cm2 ft2 in2
///   Force                  N kN lbf kip
///   Moment                 N m, kN m, N mm, lbf ft, lbf in
///   LineLoad               N/m kN/m N/mm plf lbf/ft lbf/in
///   Pressure               Pa kPa MPa GPa N/m2 kN/m2 N/mm2 psf psi ksi lbf/ft2 lbf/in2
///   UnitWeight             N/m3 kN/m3 pcf lbf/ft3
///   Angle                  rad deg
///   TemperatureDifference  K degC degF (a difference of 1 degF is 5/9 K)
template <Readable Quantity>
[[nodiscard]] std::span<const UnitName> units_of();

/// What the quantity is, with its article, for a sentence: "a length", "an area load or stress".
template <Readable Quantity>
[[nodiscard]] std::string_view kind_of();

/// How it may be written, for a sentence: `"1.68 m" or "5 ft 6 in"`.
template <Readable Quantity>
[[nodiscard]] std::string_view examples_of();

/// A regular expression (ECMA-262, as JSON Schema wants it) that matches what `read` accepts. Only a number too large
/// or too small for a double passes the pattern and is refused by `read`.
template <Readable Quantity>
[[nodiscard]] std::string pattern_of();

/// The quantity a text stands for; the same bits as the literal gives: read<Length>("54 in") == 54_in.
/// \param text   number and unit
/// \param where  JSON pointer of the field, for the error; may be empty
/// \throws InputError with one problem, whose advice says what was expected:
///   quantity.number        no decimal number, or more than one thing that could be it
///   quantity.unit.missing  a number alone
///   quantity.unit.unknown  not a unit of any quantity; the advice names the nearest one if there is one
///   quantity.dimension     a unit of another quantity
///   quantity.range         too large or too small for a double
template <Readable Quantity>
[[nodiscard]] Quantity read(std::string_view text, std::string_view where = {});

/// The shortest text in `unit` that `read` turns into the same double, such as "54 in". Not every double is some
/// number of inches; where none is, the text is in the SI unit of the quantity, in which one always is.
/// \throws InputError quantity.unit.unknown or quantity.dimension for a unit that is not one of `units_of`,
///   quantity.range for a value that is not finite
template <Readable Quantity>
[[nodiscard]] std::string write(Quantity quantity, std::string_view unit);

}  // namespace coverframe
