// SPDX-License-Identifier: BSD-3-Clause
// Plans as JSON, format number 1. Every dimensional value is a string with its unit ("5 ft 6 in", "30 psf"); a bare
// number there is refused. Unknown and duplicate keys, non-finite and absurd values and deep nesting are refused; all
// problems of a file are reported together. The codes are listed in plan/codes.hpp.
#pragma once

#include <string>
#include <string_view>

#include "coverframe/plan/plan.hpp"

namespace coverframe {

/// The plan in a JSON text, validated.
/// \throws InputError with every problem of the text: shape, units, and then whether the parts fit
[[nodiscard]] Plan read_plan(std::string_view json);

/// The plan in a file.
/// \throws InputError as read_plan; "plan.file" if the file cannot be read
[[nodiscard]] Plan read_plan_file(const std::string& path);

/// The plan as JSON, indented, keys in a fixed order, each value in a unit in which it reads back to the same number:
/// read_plan(write_plan(p)) == p for every p without problems.
/// \throws InputError with every value that a plan file may not hold (problems_of() tells more: whether the parts fit)
[[nodiscard]] std::string write_plan(const Plan& plan);

/// The JSON Schema (2020-12) of format 1, as text; published as lib/schema/plan-1.schema.json.
[[nodiscard]] std::string_view plan_schema();

}  // namespace coverframe
