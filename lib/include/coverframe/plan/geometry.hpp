// SPDX-License-Identifier: BSD-3-Clause
// The drawn geometry a plan implies: rail line, ridge line, slopes by station. Straight between given points.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "coverframe/plan/plan.hpp"

namespace coverframe {

/// A point of a line in the centre plane.
struct ProfilePoint {
    Length x{};
    Length z{};
};

/// Rail at x, interpolated along its stations; empty outside the rail line.
[[nodiscard]] std::optional<RailStation> rail_at(const Boat& boat, Length x);

/// The ridge line as drawn, from bow to stern: its ends and the upright tops, or the nodes of `ridge_line`.
[[nodiscard]] std::vector<ProfilePoint> ridge_profile(const Support& support);

/// Height of the drawn ridge line at x; empty outside it.
[[nodiscard]] std::optional<Length> ridge_at(const Support& support, Length x);

/// Height of the drawn film over the point (x, y), straight from ridge to rail; empty where either line ends, the half
/// breadth is zero, or y is outside the rail.
[[nodiscard]] std::optional<Length> film_height_at(const Plan& plan, Length x, Length y);

/// Slope of the drawn film from ridge down to rail at x, positive where the ridge is the higher one; empty where either
/// line ends or the half breadth is zero.
[[nodiscard]] std::optional<Angle> film_slope_at(const Plan& plan, Length x);

/// The stand of that name, or nullptr.
[[nodiscard]] const Stand* find_stand(const Boat& boat, std::string_view name);

/// The strap kind of that name, or nullptr.
[[nodiscard]] const StrapKind* find_strap_kind(const Plan& plan, std::string_view name);

}  // namespace coverframe
