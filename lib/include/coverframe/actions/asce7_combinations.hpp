// SPDX-License-Identifier: BSD-3-Clause
// ASCE/SEI 7, chapter 2: the words of the combinations with snow. The factors differ by edition and stand there; a
// factor of one edition with a ground load of another is wrong by more than half: 1.6 belongs to a load of fifty years
// (7-10, 7-16), 1.0 to a load at strength level (7-22).
#pragma once

#include <array>

namespace coverframe::asce7 {

/// Factors on the actions of one combination.
struct CombinationFactors {
    double permanent = 0;   ///< on self-weight D [-]
    double snow = 0;        ///< on snow S [-]
    double live = 0;        ///< on live load L [-]
    double wind = 0;        ///< on wind W, at strength level in all three editions [-]
    double earthquake = 0;  ///< on earthquake E, at strength level [-]

    bool operator==(const CombinationFactors&) const = default;
};

/// Strength combinations that have to do with snow.
enum class StrengthCombination {
    snow,           ///< snow leads, nothing with it
    snow_and_live,  ///< snow leads, live load with it
    snow_and_wind,  ///< snow leads, wind with it
    live,           ///< live load leads, snow with it
    wind,           ///< wind leads, live load and snow with it
    earthquake,     ///< earthquake leads, live load and snow with it
    uplift,         ///< wind lifts the empty cover
};

/// Allowable-stress combinations that have to do with snow.
enum class AllowableStressCombination {
    snow,                ///< snow alone
    snow_and_live,       ///< snow and live load
    snow_live_and_wind,  ///< snow, live load and wind
};

[[nodiscard]] constexpr std::array<const char*, 7> choices_of(StrengthCombination) {
    return {"snow", "snow and live", "snow and wind", "live", "wind", "earthquake", "uplift"};
}
[[nodiscard]] constexpr std::array<const char*, 3> choices_of(AllowableStressCombination) {
    return {"snow", "snow and live", "snow, live and wind"};
}

}  // namespace coverframe::asce7
