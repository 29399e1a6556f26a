// SPDX-License-Identifier: BSD-3-Clause
// What came out of a run, and the table of it.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "case.hpp"
#include "values.hpp"

namespace coverframe::validation {

enum class Outcome { agrees, disagrees_as_said, misses };

/// One expected number and ours.
struct Compared {
    Expected expected;
    double ours = 0;          ///< in the unit of the case
    std::string rule;
    Outcome outcome = Outcome::misses;
};

/// One case that was run.
struct RunCase {
    Case data;
    std::string error;        ///< why the model gave no answer; empty if it did
    std::vector<Compared> numbers;

    [[nodiscard]] bool passed() const;
};

/// A number as the table prints it: six significant digits, the same for every compiler that agrees to nine.
[[nodiscard]] std::string printed_number(double value);

/// Difference in per cent of the expected number, or in its unit where that is zero.
[[nodiscard]] std::string printed_difference(const Compared& number);

/// Decimal digits in which ours and the expected number agree, at most 9.
[[nodiscard]] double digits_of_agreement(double ours, double value);

/// The whole results table in Markdown: every number, evidence by rule, held cases.
/// \param functions  every function outside the catalogue whose numbers are looked for, empty if unknown
void write_results(std::ostream& out, const std::vector<RunCase>& cases, const std::vector<Case>& held,
                   const std::vector<std::string>& functions);

/// "name" of every function and constant in the headers of `folder`, those of actions left out, whose name ends in a
/// clause number, with its namespace: "asce7_22::flat_load_7_3".
[[nodiscard]] std::vector<std::string> rules_declared(const std::filesystem::path& folder);

}  // namespace coverframe::validation
