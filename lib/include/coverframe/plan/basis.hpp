// SPDX-License-Identifier: BSD-3-Clause
// By which documents and with which choices the cover is judged. Every choice carries its source.
#pragma once

#include <optional>
#include <string>

#include "coverframe/base/cited.hpp"
#include "coverframe/plan/site.hpp"
#include "coverframe/units/quantities.hpp"

namespace coverframe {

/// How much depends on the structure (NBC, Table 4.1.2.1, from memory). It sets the importance factor I_s.
enum class ImportanceCategory {
    low,            ///< "low"
    normal,         ///< "normal"
    high,           ///< "high"
    post_disaster,  ///< "post-disaster"
};

/// What carries the snow from ridge to eave, where a document has a rule of its own for narrow rafter roofs (ASCE 7).
enum class GableFraming {
    other,           ///< "other": anything else, film on straps among it
    simple_rafters,  ///< "simple rafters": simply supported straight members from ridge to eave
};

/// How far the slope window of the unbalanced case is taken for its word (ASCE 7, NBC; EN 1991-1-3 has no window).
enum class UnbalancedWindow {
    carried_on,  ///< "carried on": the case is looked at also where the slope lies outside the window
    as_written,  ///< "as written": not outside the window
};

/// Where snow goes that slides off the steep upper part of a cover.
enum class SlidSnow {
    caught,       ///< "caught": it stays on the cover, above the rail
    falls_clear,  ///< "falls clear": it leaves the cover
};

struct SnowBasis {
    SnowDocument document = SnowDocument::asce7_22;
    Cited<double> exposure_factor;  ///< C_e [-], 0.5 to 1.5; NBC: C_w, 0.5 to 1.0
    Cited<double> thermal_factor;   ///< C_t [-], 0.8 to 1.4; 1.2 for an unheated cover by ASCE 7; NBC: 1
    Cited<Surface> surface;
    std::optional<Cited<double>> winter_wind;                        ///< W_2 [-], 0 to 1; ASCE 7-22 only, demanded
    std::optional<Cited<ImportanceCategory>> importance_category{};  ///< NBC only, demanded

    // Where the documents are silent about a cover. What an empty one means is said by the functions below.
    std::optional<Cited<GableFraming>> gable_framing{};
    std::optional<Cited<UnbalancedWindow>> unbalanced_window{};
    std::optional<Cited<SlidSnow>> slid_snow{};

    bool operator==(const SnowBasis&) const = default;
};

/// The source of a choice the plan leaves open.
inline constexpr const char* choice_left_open = "the plan does not say";

/// The plan's choice; "other" if it makes none.
[[nodiscard]] inline Cited<GableFraming> gable_framing_of(const SnowBasis& basis) {
    return basis.gable_framing.value_or(Cited<GableFraming>{GableFraming::other, choice_left_open});
}

/// The plan's choice; "carried on" if it makes none.
[[nodiscard]] inline Cited<UnbalancedWindow> unbalanced_window_of(const SnowBasis& basis) {
    return basis.unbalanced_window.value_or(Cited<UnbalancedWindow>{UnbalancedWindow::carried_on, choice_left_open});
}

/// The plan's choice; "caught" if it makes none.
[[nodiscard]] inline Cited<SlidSnow> slid_snow_of(const SnowBasis& basis) {
    return basis.slid_snow.value_or(Cited<SlidSnow>{SlidSnow::caught, choice_left_open});
}

/// Factors on actions for the strength of members. Sag, drainage, clearance and shedding are judged with 1.0 on both.
struct CombinationBasis {
    Cited<double> permanent;  ///< factor on self-weight [-], 0.9 to 2
    /// Factor on snow [-]; it belongs to the document of the ground load: ASCE 7-22 1.0, ASCE 7-10 and ASCE 7-16 1.6,
    /// NBC 1.5, EN 1991-1-3 1.0 to 2 (a national choice).
    Cited<double> snow;

    bool operator==(const CombinationBasis&) const = default;
};

/// Factors on snow, leading action, for the strength of members, that may go with ground loads of a document.
struct SnowFactorRange {
    double low = 0;
    double high = 0;
    const char* clause = "";
};

/// Factor on snow that belongs to ground loads of a document. Any other one mixes two documents.
/// ASCE 7-10, ASCE 7-16: 1.6; ASCE 7-22: 1.0, its loads being at strength level; NBC: 1.5; EN 1991-1-3: 1.0 to 2.0, a
/// national choice, 1.5 recommended
/// Source: the 1.0 of ASCE 7-22 read on a page (Maguire et al., STRUCTURE magazine, Feb. 2022), as is the 1.5 of EN
/// 1990 (University of Siegen lecture script); ASCE 7-10, ASCE 7-16 and NBC from memory, sure.
[[nodiscard]] constexpr SnowFactorRange snow_factor_range(SnowDocument document) {
    switch (document) {
        case SnowDocument::asce7_10: return {1.6, 1.6, "ASCE 7-10, 2.3.2"};
        case SnowDocument::asce7_16: return {1.6, 1.6, "ASCE 7-16, 2.3.1"};
        case SnowDocument::asce7_22: return {1.0, 1.0, "ASCE 7-22, 2.3.1"};
        case SnowDocument::nbc2015: return {1.5, 1.5, "NBC 2015, table 4.1.3.2"};
        case SnowDocument::nbc2020: return {1.5, 1.5, "NBC 2020, table 4.1.3.2"};
        case SnowDocument::en1991_1_3: break;
    }
    return {1.0, 2.0, "EN 1990:2002, table A1.2(B), recommends 1.5, and a National Annex may differ"};
}

enum class TimberDocument {
    nds2018,     ///< "NDS 2018", strength design (load and resistance factor) format
    en1995_1_1,  ///< "EN 1995-1-1:2004"
};

[[nodiscard]] constexpr const char* name_of(TimberDocument document) {
    return document == TimberDocument::nds2018 ? "NDS 2018" : "EN 1995-1-1:2004";
}

struct TimberBasis {
    TimberDocument document = TimberDocument::nds2018;
    std::optional<Cited<bool>> wet_service;            ///< NDS: moisture over 19 % in service
    std::optional<Cited<double>> time_effect_factor;   ///< NDS lambda [-], 0.6 to 1.25
    std::optional<Cited<double>> modification_factor;  ///< EN 1995-1-1 k_mod [-], 0.2 to 1.1
    std::optional<Cited<double>> material_factor;      ///< EN 1995-1-1 gamma_M [-], 1 to 2

    bool operator==(const TimberBasis&) const = default;
};

struct Basis {
    SnowBasis snow;
    CombinationBasis combination;
    TimberBasis timber;
    /// slope under which the yard does not count on snow leaving by itself; empty: the document's own threshold
    std::optional<Cited<Angle>> shedding_slope;

    bool operator==(const Basis&) const = default;
};

}  // namespace coverframe
