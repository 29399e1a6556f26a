// SPDX-License-Identifier: BSD-3-Clause
// Film that turns over the rail and runs down to the band: what the band is pulled with, what lifts it, what the rail
// takes.
//
// The film arrives at the rail under the angle `arrives` below the level, pulling with T; it leaves down the hull under
// the angle `leaves` below the level, outwards positive (90 degrees: straight down; more: the hull falls in). Over the
// rail it turns by theta = leaves - arrives. Friction lets the pull differ (the rope friction of Euler and Eytelwein):
//     T e^(-mu theta) <= T_band <= T e^(mu theta)
// When snow pulls film up over the rail the band has the lesser end of that; when the film above slackens, the band may
// have kept the greater. The rail takes what is left, square to itself and along:  R = T d_in - T_band d_out  with d
// the directions of the film towards rail and band. The band is lifted by T_band sin(leaves) per length.
// With mu unknown look at 0 (the band gets all of T, nothing is relieved) and at a rough rail, 0.4 (from memory).
//
// Limits: film that bends freely over a rail of any radius; no stick of welded or taped film; nothing lost on the hull.
#pragma once

#include <array>

#include "coverframe/units/quantities.hpp"

namespace coverframe {

/// Per length along the boat.
struct RailTurn {
    double turn = 0;                         ///< theta [rad]
    std::array<double, 2> band_pull{};       ///< least and greatest T_band [N/m]
    std::array<double, 2> band_lift{};       ///< least and greatest, upwards [N/m]
    std::array<double, 2> relief{};          ///< what the rail takes off the pull, T - T_band, least and greatest [N/m]
    double rail_down = 0;                    ///< on the rail without friction, down positive [N/m]
    double rail_inwards = 0;                 ///< and inwards [N/m]
};

/// \param tension   T of the film above the rail, not negative [N/m]
/// \param arrives   -90 to 90 degrees   \param leaves  over `arrives`, up to 180 degrees
/// \param friction  mu [-], 0 to 2
/// \throws InputError film.rail.range
[[nodiscard]] RailTurn turn_over_rail(double tension, Angle arrives, Angle leaves, double friction);

}  // namespace coverframe
