// SPDX-License-Identifier: BSD-3-Clause
// The boat as far as the cover needs it. Axes: x aft from the stem head, y to starboard, z up from the datum of the
// plan (say which: cockpit sole, waterline, ground). The rail line is taken as the same on both sides.
#pragma once

#include <string>
#include <vector>

#include "coverframe/base/cited.hpp"
#include "coverframe/units/quantities.hpp"

namespace coverframe {

struct Point {
    Length x{};
    Length y{};
    Length z{};

    bool operator==(const Point&) const = default;
};

/// One station of the rail line, where the film turns over the edge of the deck.
struct RailStation {
    Length x{};
    Length half_breadth{};  ///< [m], centreline to rail; 0 at a pointed stem
    Length z{};

    bool operator==(const RailStation&) const = default;
};

/// A place where uprights may stand: a sole, a deck, a hatch-free part of a cabin top.
struct Stand {
    std::string name;
    Length from{};                   ///< x of its forward end
    Length to{};                     ///< x of its after end
    Length half_breadth{};           ///< it reaches this far to both sides of the centreline
    Length z{};
    Cited<Pressure> bearing;         ///< pressure it takes under a foot pad at design loads [Pa]

    bool operator==(const Stand&) const = default;
};

/// Something the film must not touch.
struct Obstacle {
    std::string name;                ///< "windshield", "console", "arch", "outboard", "companionway hatch"
    std::vector<Point> outline;      ///< its upper edge as a line of points, at least one
    Cited<Length> clearance;         ///< least vertical distance the film must keep from it [m]

    bool operator==(const Obstacle&) const = default;
};

struct Boat {
    std::string name;
    std::vector<RailStation> rail;   ///< from stem to stern, x strictly rising, at least two
    std::vector<Stand> stands;
    std::vector<Obstacle> obstacles;

    bool operator==(const Boat&) const = default;
};

}  // namespace coverframe
