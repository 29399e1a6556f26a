// SPDX-License-Identifier: BSD-3-Clause
// EN 1991-1-3:2003, Annex E: how heavy snow is.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::en1991_1_3 {

inline const Clause annex_E{"EN 1991-1-3:2003", "Annex E, Table E.1"};

/// State of the snow on the cover.
enum class SnowState {
    fresh,    ///< just fallen
    settled,  ///< hours to days after its fall
    old,      ///< weeks to months after its fall
    wet,
};

[[nodiscard]] constexpr std::array<const char*, 4> choices_of(SnowState) { return {"fresh", "settled", "old", "wet"}; }

/// Spread of the mean unit weight.
struct UnitWeightSpread {
    UnitWeight low{};   ///< [N/m3]
    UnitWeight high{};  ///< [N/m3]; the one to weigh a measured depth with
};

/// Mean unit weight of snow by its state.
/// gamma = 1.0 fresh, 2.0 settled, 2.5 to 3.5 old, 4.0 wet [kN/m3]
/// \return lower and upper value, equal but for old snow [N/m3]
/// Limits: means. Field values of a whole season are lower (1.8 to 3.65 kN/m3 in Finland from February to April);
/// pockets of slush and ice under later falls are heavier, standing water has 10 kN/m3. A depth seen from above says
/// nothing of the ice under it.
/// Source: EN 1991-1-3:2003, Annex E, Table E.1; read on a page (building inspectorate of Skierniewice).
/// \throws InputError en1991_1_3.snow_state.unknown
[[nodiscard]] constexpr UnitWeightSpread unit_weight_E_1(SnowState state) {
    switch (state) {
        case SnowState::fresh: return {from_kN_per_m3(1.0), from_kN_per_m3(1.0)};
        case SnowState::settled: return {from_kN_per_m3(2.0), from_kN_per_m3(2.0)};
        case SnowState::old: return {from_kN_per_m3(2.5), from_kN_per_m3(3.5)};
        case SnowState::wet: return {from_kN_per_m3(4.0), from_kN_per_m3(4.0)};
    }
    argument::refuse({"en1991_1_3.snow_state.unknown", "snow state number", "-"}, static_cast<double>(state), 0, 3);
}

}  // namespace coverframe::en1991_1_3
