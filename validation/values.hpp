// SPDX-License-Identifier: BSD-3-Clause
// Numbers of the validation runner: what a model answers, with its dimension and the rule of the library behind it.
#pragma once

#include <map>
#include <stdexcept>
#include <string>

#include "coverframe/units/quantities.hpp"

namespace coverframe::validation {

/// A case file that cannot be used, or a model that gave no answer.
class CaseError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

enum class Dimension {
    pure,
    length,
    area,
    second_moment,
    force,
    moment,
    line_load,
    pressure,
    unit_weight,
    angle
};

/// One answer of a model.
struct Number {
    double si = 0;                          ///< in the coherent SI unit of `dimension`
    Dimension dimension = Dimension::pure;
    /// Public functions of the library on its way, with spaces between: "asce7_22::flat_load_7_3"
    std::string rule;
};

/// Answers of a model by the name of the quantity.
using Answers = std::map<std::string, Number>;

[[nodiscard]] Number answer(double value, std::string rule);
[[nodiscard]] Number answer(Length value, std::string rule);
[[nodiscard]] Number answer(Force value, std::string rule);
[[nodiscard]] Number answer(Moment value, std::string rule);
[[nodiscard]] Number answer(LineLoad value, std::string rule);
[[nodiscard]] Number answer(Area value, std::string rule);
[[nodiscard]] Number answer(Pressure value, std::string rule);
[[nodiscard]] Number answer(UnitWeight value, std::string rule);
[[nodiscard]] Number answer(Angle value, std::string rule);

/// Size of a unit in the coherent SI unit of the dimension.
/// \throws CaseError for a unit of another dimension or no unit at all
[[nodiscard]] double size_of_unit(Dimension dimension, const std::string& unit);

}  // namespace coverframe::validation
