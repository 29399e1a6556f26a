// SPDX-License-Identifier: BSD-3-Clause
// The film. Its tension after shrinking is a range, never a number: low tension governs sag and water, high tension
// governs band, ridge and uprights.
#pragma once

#include <optional>

#include "coverframe/base/cited.hpp"
#include "coverframe/units/quantities.hpp"

namespace coverframe {

struct Film {
    Cited<Length> thickness;         ///< t [m]
    Cited<LineLoad> tension_low;     ///< after relaxation and on a warm day [N/m]
    Cited<LineLoad> tension_high;    ///< just after cooling or on a cold day [N/m]
    Cited<Pressure> modulus;         ///< E, secant, for the duration of a snow load [Pa]
    Cited<double> poisson;           ///< nu [-], 0 to 0.5; a wide strip has the stiffness E t/(1 - nu^2)
    Cited<Pressure> strength;        ///< stress it may carry at design loads [Pa]
    Cited<UnitWeight> unit_weight;   ///< [N/m3]
    /// Creep modulus: E after the snow has lain as long as it may. Film at its low tension has this one [Pa].
    std::optional<Cited<Pressure>> creep_modulus{};
    std::optional<Cited<Length>> sheet_width{};   ///< of the sheet as it is laid, across the boat [m]
    std::optional<Cited<Length>> sheet_length{};  ///< the same, from bow to stern [m]
    std::optional<Cited<Length>> tuck{};          ///< film under the band, past it, all round [m]

    bool operator==(const Film&) const = default;
};

/// Film tucked under the band, past it: the plan's, or 150 mm where it says nothing.
[[nodiscard]] inline Cited<Length> tuck_of(const Film& film) {
    return film.tuck.value_or(Cited<Length>{Length::from_value(0.15), "common practice, no source"});
}

}  // namespace coverframe
