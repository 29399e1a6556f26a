// SPDX-License-Identifier: BSD-3-Clause
// The shape of a cover as drawings need it: cut at any place along the boat, closest to an obstacle, holding water.
// Plain SI numbers.
#pragma once

#include <optional>
#include <vector>

#include "coverframe/assess/assess.hpp"

namespace coverframe::reporting {

/// A point of a cross section: y to starboard, z up [m].
struct Across {
    double y = 0;
    double z = 0;
};

/// The film across the boat at one place, as a line from the port rail over the ridge to the starboard rail.
struct Cut {
    double x = 0;                  ///< [m]
    double half_breadth = 0;
    double rail_z = 0;
    double ridge_drawn = 0;        ///< z [m]
    std::vector<Across> drawn;     ///< three points
    std::vector<Across> loaded;    ///< empty if the cover has no loaded shape here
    std::size_t ridge_index = 0;   ///< of the ridge in `loaded`
};

/// The cut at x; empty where rail or ridge line ends.
[[nodiscard]] std::optional<Cut> cut_at(const Assessment& assessment, double x);

/// Height of the film over y, loaded if there is a loaded shape; empty outside the rails.
[[nodiscard]] std::optional<double> film_height(const Cut& cut, double y);

/// Where the film comes closest to an obstacle.
struct Closest {
    const Obstacle* obstacle = nullptr;
    double x = 0;
    double y = 0;
    double z = 0;    ///< of the obstacle
    double gap = 0;  ///< film over obstacle; negative if the film would have to go through it
};

/// For one obstacle; empty if no point of it lies under the film.
[[nodiscard]] std::optional<Closest> closest_to(const Assessment& assessment, const Obstacle& obstacle);

/// The place the section is cut at: the closest one of all obstacles, or that of the largest sag, or the middle of the
/// ridge.
[[nodiscard]] double place_of_section(const Assessment& assessment);

/// The largest drop of the ridge from its drawn place, and where.
struct RidgeDrop {
    double x = 0;
    double z = 0;     ///< loaded
    double drop = 0;  ///< [m]
};
[[nodiscard]] std::optional<RidgeDrop> ridge_drop(const Assessment& assessment);

/// Water that would lie on one side of the cover, over neighbouring stations.
struct Pocket {
    struct Edge {
        double x = 0;
        double inner = 0;   ///< y of the edge nearer the ridge
        double outer = 0;   ///< y of the edge nearer the rail
    };
    std::vector<Edge> edges;  ///< from bow to stern; the first and last have no breadth
    double volume = 0;        ///< [m3]
    double depth = 0;         ///< deepest [m]
};
[[nodiscard]] std::vector<Pocket> pockets(const Assessment& assessment);

}  // namespace coverframe::reporting
