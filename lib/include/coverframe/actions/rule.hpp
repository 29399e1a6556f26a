// SPDX-License-Identifier: BSD-3-Clause
// The catalogue: every rule of every document as data, beside the function that carries it out.
//
// A rule knows its clause, how it was read, what it takes and gives, and its formula. From that one entry come the
// workings of a report, the functions of the Python package over whole arrays, and the cases of the validation suite.
// A C++ caller with typed quantities calls the function itself (`asce7_16::flat_load_7_3`); the catalogue is for
// callers that choose a rule by name.
//
// Numbers of the catalogue are in the unit the keyword ends in: `_kpa` [kPa], `_m` [m], `_deg` [deg], `_kn_per_m3`
// [kN/m3], `_kn_per_m` [kN/m], `_kn` [kN], `_years`; no ending is a pure number. A choice is the number of its word in
// `choices`, a truth is 0 or 1.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "coverframe/base/finding.hpp"

namespace coverframe {

/// How a rule came into the library. Whoever claims conformity compares it with a licensed copy first.
enum class Read {
    page,      ///< read on a page that prints it
    part,      ///< read in part, the rest from memory
    sure,      ///< from memory, sure
    fair,      ///< from memory, fairly sure
    doubtful,  ///< from memory, doubtful
    derived,   ///< arithmetic or general statistics, derived here
};

[[nodiscard]] const char* name_of(Read read);

/// What a value is, which fixes its units.
enum class Measure { number, truth, choice, length, angle, area_load, unit_weight, line_load, force };

/// One argument or one result of a rule.
struct RuleValue {
    std::string keyword;                 ///< name in Python and in cases: "ground_snow_kpa"
    std::string symbol;                  ///< as the document writes it: "p_g"
    std::string text;                    ///< of an argument, its meaning and limits; of a result, its formula
    Measure measure = Measure::number;
    std::vector<std::string> choices;    ///< words of a choice, in order
    std::optional<std::string> otherwise;///< the word taken if none is given: always the safe one
};

/// The items of one argument: `step` is 0 if a single item serves all.
struct RuleColumn {
    const double* items = nullptr;
    std::size_t step = 1;
};

/// Evaluates items 0 to count - 1 into `results[k][i]`, which overlap neither one another nor the arguments. If the
/// rule refuses an item, `at` is its number and the InputError goes on to the caller; the results are of no use then.
using RuleLoop = void (*)(const RuleColumn* arguments, std::size_t count, double* const* results, std::size_t& at);

struct Rule {
    std::string space;                  ///< namespace of the document: "asce7_16"
    std::string name;                   ///< "flat_load"
    Clause clause;
    std::string summary;                ///< one sentence
    Read read = Read::doubtful;
    std::string source;                 ///< where it was read, or what is from memory
    bool us_units = false;              ///< workings in psf, ft, pcf rather than kPa, m, kN/m3
    std::vector<RuleValue> arguments;
    std::vector<RuleValue> results;     ///< in the order somebody with a pocket calculator works them out
    RuleLoop loop = nullptr;            ///< the bits of an item do not depend on the items beside it
    RuleLoop by_item = nullptr;         ///< the same, but slowly: calls the function of the rule for each item
};

/// Every rule, by namespace and name.
[[nodiscard]] std::span<const Rule> rules();

/// "asce7_16.flat_load".
[[nodiscard]] inline std::string text_of(const Rule& rule) { return rule.space + "." + rule.name; }

/// \param name  "asce7_16.flat_load"
/// \throws InputError rule.unknown
[[nodiscard]] const Rule& rule_named(const std::string& name);

/// Unit of a value at this boundary, "" for a pure number, a choice or a truth.
[[nodiscard]] std::string unit_of(const RuleValue& value);

/// The results for one set of arguments.
/// \throws InputError rule.arguments (not as many as the rule takes, or no such choice), and as the rule does
[[nodiscard]] std::vector<double> evaluate(const Rule& rule, std::span<const double> arguments);

/// Arguments and results as lines of a working, in the units of the document.
/// \param sources  where each argument comes from, in place of its meaning; shorter or empty texts leave the meaning
/// \throws InputError as `evaluate`
[[nodiscard]] std::vector<Term> workings(const Rule& rule, std::span<const double> arguments,
                                         std::span<const std::string> sources = {});

}  // namespace coverframe
