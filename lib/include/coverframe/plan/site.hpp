// SPDX-License-Identifier: BSD-3-Clause
// Where the boat stands for the winter, how much snow lies on the ground there, and what stands beside the boat and may
// throw snow on its cover.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "coverframe/units/quantities.hpp"

namespace coverframe {

/// The document, with its edition, that a snow load or rule belongs to. Never mixed within one plan.
enum class SnowDocument {
    asce7_10,    ///< "ASCE 7-10"
    asce7_16,    ///< "ASCE 7-16"
    asce7_22,    ///< "ASCE 7-22"
    nbc2015,     ///< "NBC 2015": National Building Code of Canada, Division B, part 4
    nbc2020,     ///< "NBC 2020"
    en1991_1_3,  ///< "EN 1991-1-3:2003"
};

[[nodiscard]] constexpr const char* name_of(SnowDocument document) {
    switch (document) {
        case SnowDocument::asce7_10: return "ASCE 7-10";
        case SnowDocument::asce7_16: return "ASCE 7-16";
        case SnowDocument::asce7_22: return "ASCE 7-22";
        case SnowDocument::nbc2015: return "NBC 2015";
        case SnowDocument::nbc2020: return "NBC 2020";
        case SnowDocument::en1991_1_3: return "EN 1991-1-3:2003";
    }
    return "";
}

[[nodiscard]] constexpr bool is_asce7(SnowDocument document) {
    return document == SnowDocument::asce7_10 || document == SnowDocument::asce7_16 ||
           document == SnowDocument::asce7_22;
}

[[nodiscard]] constexpr bool is_nbc(SnowDocument document) {
    return document == SnowDocument::nbc2015 || document == SnowDocument::nbc2020;
}

/// What a ground load of a document means, and so which factor on snow belongs to it.
enum class Level {
    strength,        ///< factored already, for the risk category: the factor on snow is 1.0
    characteristic,  ///< with a return period, 50 years in the documents' maps: the factor on snow is still to come
};

[[nodiscard]] constexpr Level level_of(SnowDocument document) {
    return document == SnowDocument::asce7_22 ? Level::strength : Level::characteristic;
}

/// A ground snow load together with what it means. A load without its document is no load: a strength-level value of
/// one edition and a 50-year value of another differ by a factor that depends on the site.
struct GroundSnow {
    Pressure load{};  ///< [Pa] p_g, S_s or s_k
    SnowDocument document = SnowDocument::asce7_22;
    std::string risk_category;       ///< ASCE 7, demanded: "I", "II", "III", "IV"; empty otherwise
    std::string source;              ///< who gave the value: authority, map, data set, yard record
    std::optional<Pressure> rain{};  ///< S_r, rain that goes with the snow [Pa]; NBC only, demanded
    /// Of `load` [years]; empty says 50. ASCE 7-10, ASCE 7-16, NBC: nothing but 50. EN 1991-1-3: 5 to 1000 (annex D).
    /// ASCE 7-22: always empty, its loads are set by risk and have none.
    std::optional<int> return_period_years{};

    bool operator==(const GroundSnow&) const = default;
};

/// Whether snow may slide off. "Unobstructed and slippery" has to be claimed with a reason; straps that stand proud,
/// pockets between supports, a rail or a neighbour that stops the slide all speak against it.
enum class Surface {
    other,     ///< "other": the safe choice for a cover (EN 1991-1-3: sliding prevented)
    slippery,  ///< "slippery": smooth, unobstructed, with room for the snow to land (EN 1991-1-3: free to slide)
};

/// On which side of the boat something stands.
enum class NeighbourSide { port, starboard, bow, stern };

/// A roof that slopes towards the boat and can shed its snow on the cover. Here "slippery" is the heavier choice.
struct NeighbourRoof {
    Angle slope{};
    Surface surface = Surface::slippery;
    Length run{};  ///< level, eave to ridge

    bool operator==(const NeighbourRoof&) const = default;
};

/// A building, wall or covered boat beside the cover. From a higher one snow drifts and may slide on the cover; a lower
/// one brings none.
struct Neighbour {
    std::string name;
    NeighbourSide side = NeighbourSide::port;
    Length gap{};     ///< level distance from the rail of the cover to the face of the neighbour, from 0
    Length eave_z{};  ///< z of its eave or parapet, or of the rail of a covered boat; may lie below the cover
    Length fetch{};   ///< length of its roof or cover across the eave, from one eave to the other, over 0
    std::optional<Length> from{};         ///< x of its forward end; port and starboard only; empty: as far as the boat
    std::optional<Length> to{};           ///< x of its after end; likewise
    std::optional<NeighbourRoof> roof{};  ///< empty if nothing can slide from it towards the boat
    std::string source{};                 ///< who measured or chose it

    bool operator==(const Neighbour&) const = default;
};

struct Site {
    std::string name;
    GroundSnow ground_snow;
    std::vector<Neighbour> neighbours{};  ///< names unique

    bool operator==(const Site&) const = default;
};

}  // namespace coverframe
