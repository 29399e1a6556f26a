// SPDX-License-Identifier: BSD-3-Clause
// By which documents and with which choices the cover is judged. Every choice carries its source.
#pragma once

#include <optional>
#include <string>

#include "coverframe/base/cited.hpp"
#include "coverframe/plan/site.hpp"
#include "coverframe/units/quantities.hpp"

namespace coverframe {

/// Whether snow may slide off. "Unobstructed and slippery" has to be claimed with a reason; straps that stand proud,
/// pockets between supports, a rail or a neighbour that stops the slide all speak against it.
enum class Surface {
    other,     ///< "other": the safe choice (EN 1991-1-3: sliding prevented)
    slippery,  ///< "slippery": smooth, unobstructed, with room for the snow to land (EN 1991-1-3: free to slide)
};

struct SnowBasis {
    SnowDocument document = SnowDocument::asce7_22;
    Cited<double> exposure_factor;               ///< C_e [-], 0.5 to 1.5
    Cited<double> thermal_factor;                ///< C_t [-], 0.8 to 1.4; 1.2 for an unheated cover by ASCE 7
    Cited<Surface> surface;
    std::optional<Cited<double>> winter_wind;    ///< W_2 [-], 0 to 1; demanded by ASCE 7-22, unknown to EN 1991-1-3

    bool operator==(const SnowBasis&) const = default;
};

/// Factors on actions for the strength of members. Sag, drainage, clearance and shedding are judged with 1.0 on both.
struct CombinationBasis {
    Cited<double> permanent;  ///< factor on self-weight [-], 0.9 to 2
    Cited<double> snow;       ///< factor on snow [-], 0.9 to 2

    bool operator==(const CombinationBasis&) const = default;
};

enum class TimberDocument {
    nds2018,      ///< "NDS 2018", strength design (load and resistance factor) format
    en1995_1_1,   ///< "EN 1995-1-1:2004"
};

[[nodiscard]] constexpr const char* name_of(TimberDocument document) {
    return document == TimberDocument::nds2018 ? "NDS 2018" : "EN 1995-1-1:2004";
}

struct TimberBasis {
    TimberDocument document = TimberDocument::nds2018;
    std::optional<Cited<bool>> wet_service;          ///< NDS: moisture over 19 % in service
    std::optional<Cited<double>> time_effect_factor; ///< NDS lambda [-], 0.6 to 1.25
    std::optional<Cited<double>> modification_factor;///< EN 1995-1-1 k_mod [-], 0.2 to 1.1
    std::optional<Cited<double>> material_factor;    ///< EN 1995-1-1 gamma_M [-], 1 to 2

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
