// SPDX-License-Identifier: BSD-3-Clause
// A validation case: one file of data that says what somebody else found, where it stands and how it was read.
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

namespace coverframe::validation {

/// A number to agree with.
struct Expected {
    std::string quantity;
    std::optional<std::string> printed;  ///< as it stands in the source; empty if nobody printed it
    double value = 0;                    ///< what is compared with: the printed number, or the unrounded one
    std::optional<double> unrounded;     ///< recomputed by somebody else without rounding
    std::string unit;
    bool relative = false;               ///< how `tolerance` is meant
    double tolerance = 0;
    std::string reason;                  ///< why the tolerance is what it is
    std::optional<std::string> disagrees;///< why we do not agree and stand by it
};

struct Case {
    std::string id;
    std::string topic;
    std::string title;
    std::string kind;
    std::string source_key;
    std::string source_place;  ///< page, table, equation
    std::string how_read;
    std::string quality;       ///< grade of the evidence, in words
    std::string note;
    std::string model;         ///< of the runner; empty for a held case
    std::string held;          ///< why no model runs it yet; empty for a case that runs
    nlohmann::json input;
    std::vector<Expected> expected;
};

/// Every case under `folder`, by topic and id. Files are checked strictly: unknown keys, a tolerance without reason, a
/// source without an entry in `bibliography`, a doubled id are refused.
/// \param held  whether these are held cases, which have "held" instead of "model"
/// \throws CaseError with every problem found
[[nodiscard]] std::vector<Case> read_cases(const std::filesystem::path& folder,
                                           const std::filesystem::path& bibliography, bool held);

}  // namespace coverframe::validation
