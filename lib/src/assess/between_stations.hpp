// SPDX-License-Identifier: BSD-3-Clause
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include "coverframe/actions/arrangement.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe::assess_detail {

/// A place along the boat between two stations: what is known at both goes straight from the one to the other.
struct BetweenStations {
    std::size_t before = 0;
    std::size_t after = 0;
    double share = 0;  ///< of the way

    [[nodiscard]] double of(double at_before, double at_after) const {
        return (1 - share) * at_before + share * at_after;
    }
};

/// Before the first and behind the last station it is that station. \pre at least one station, x rising
/// \param x  [m]
[[nodiscard]] inline BetweenStations between_stations(const std::vector<CoverStation>& stations, double x) {
    const auto from = [&](std::size_t i) { return in_m(stations[i].x); };
    std::size_t after = 0;
    while (after + 1 < stations.size() && from(after) < x) ++after;
    if (after == 0 || from(after) <= x) return {after, after, 0.0};
    return {after - 1, after, (x - from(after - 1)) / (from(after) - from(after - 1))};
}

}  // namespace coverframe::assess_detail
