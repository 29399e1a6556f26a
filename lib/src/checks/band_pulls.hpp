// SPDX-License-Identifier: BSD-3-Clause
// The law of the band (checks/band.hpp) for any film that pulls on the rail: strips, or a surface.
#pragma once

#include <array>
#include <vector>

#include "coverframe/checks/check.hpp"

namespace coverframe::checks_detail {

/// Film on a piece of the rail.
struct RailPull {
    double from = 0;                ///< x [m]
    double to = 0;                  ///< not before `from`; the same where the rail runs across the boat
    double length = 0;              ///< of the band that it pulls on [m]
    std::array<double, 3> force{};  ///< of the film on the rail, per length [N/m]
};

/// From bow to stern or not, to port and to starboard.
using RailPulls = std::array<std::vector<RailPull>, 2>;

/// Of strips, each over its width.
[[nodiscard]] RailPulls rail_pulls(const Cover& cover, const CoverState& state);

/// What check_band() finds where the film pulls like this; cover and state of the input are not looked at. The whole
/// pull counts, also that along the rail.
[[nodiscard]] std::vector<Finding> judge_band(const CheckInput& input, const RailPulls& rails);

}  // namespace coverframe::checks_detail
