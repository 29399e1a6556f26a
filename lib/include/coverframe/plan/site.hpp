// SPDX-License-Identifier: BSD-3-Clause
// Where the boat stands for the winter, and how much snow lies on the ground there.
#pragma once

#include <string>

#include "coverframe/units/quantities.hpp"

namespace coverframe {

/// The document, with its edition, that a snow load or rule belongs to. Never mixed within one plan.
enum class SnowDocument {
    asce7_22,    ///< "ASCE 7-22": ground load at strength level for the risk category
    en1991_1_3,  ///< "EN 1991-1-3:2003": characteristic ground load, 50 years
};

[[nodiscard]] constexpr const char* name_of(SnowDocument document) {
    return document == SnowDocument::asce7_22 ? "ASCE 7-22" : "EN 1991-1-3:2003";
}

/// A ground snow load together with what it means. A load without its document is no load: a strength-level value of
/// one edition and a 50-year value of another differ by a factor that depends on the site.
struct GroundSnow {
    Pressure load{};             ///< [Pa] p_g or s_k
    SnowDocument document = SnowDocument::asce7_22;
    std::string risk_category;   ///< ASCE 7-22 only: "I", "II", "III", "IV"; empty otherwise
    std::string source;          ///< who gave the value: authority, map, data set, yard record

    bool operator==(const GroundSnow&) const = default;
};

struct Site {
    std::string name;
    GroundSnow ground_snow;

    bool operator==(const Site&) const = default;
};

}  // namespace coverframe
