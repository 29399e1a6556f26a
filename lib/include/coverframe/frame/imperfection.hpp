// SPDX-License-Identifier: BSD-3-Clause
// Frames as they are built: out of plumb, bowed, or off in the shape of given displacements. Second-order solving then
// shows what the push on a crooked frame adds; a frame that is drawn perfect shows only whether it is stable.
//
// Each function gives the frame drawn anew with its nodes moved, and free of stress that was not there before: the free
// length of every member follows its drawn length, L0' = L0 l'/l, so a strap that was set keeps its strain and so its
// tension, and a pole is straight between its new nodes. Arms, springs and stiffnesses stay. With
//   x   drawn place of a node;  n  a unit vector across
//   out of plumb   x' = x + tan(angle) (z - level) n above the level, level n
//   leaning        the same for the upper node of one member alone, its lower node at the level
//   bow            x' = x + rise f(s) n for the nodes between the ends of a chain, s from 0 to 1 by drawn length;
//                  f = sin(pi s) or 4 s (1 - s)
//   shape          x' = x + amplitude u/max|u|, u the displacements of a state or of a buckling mode
//
// Limits
//   * Angles and bows as timber and lashings have them: a tenth of a length or so. Nothing is tied to that, but a frame
//     that is far from its drawing should be drawn so.
//   * A node that the boat holds against its move, in any direction in which it would move, stays where it is.
//   * A chain is bowed by its nodes: two pieces make a kink, and only four or more a bow. Rotations of a shape are left
//     out: what bends within one member is not in its nodes.
//   * Sizes are for the standards (resistance/en1995_1_1.hpp), signs and combinations for whoever asks: the worst of
//     the directions is not looked for here.
//
// Source: the usual equivalent imperfections of frames (common practice); equations as written here.
#pragma once

#include <array>
#include <vector>

#include "coverframe/frame/frame.hpp"

namespace coverframe {

/// Every node above `level` is off plumb.
/// \param level      height of what is plumb [m]
/// \param angle      from plumb [rad], over -1.2 and under 1.2
/// \param direction  x and y of the way it leans, any size but 0
/// \throws InputError frame.imperfection.level, frame.imperfection.angle, frame.imperfection.direction, and as
///   require_sound for the frame given and for what comes out
[[nodiscard]] Frame out_of_plumb(const Frame& frame, double level, double angle, std::array<double, 2> direction);

/// The upper node of one member is off plumb over its lower one, and all that meets there with it.
/// \param member  its index; its ends are not level
/// \throws as out_of_plumb; frame.imperfection.member
[[nodiscard]] Frame leaning(const Frame& frame, int member, double angle, std::array<double, 2> direction);

enum class BowShape { sine, parabola };

/// Members end to end are bowed between the ends of their chain.
/// \param members    their indices in order
/// \param rise       at mid-length, across the line between the ends of the chain [m]
/// \param direction  any that is not along that line; the part across it counts
/// \throws InputError frame.imperfection.chain, frame.imperfection.rise, frame.imperfection.direction, and as
///   require_sound
[[nodiscard]] Frame bowed(const Frame& frame, const std::vector<int>& members, double rise,
                          const std::array<double, 3>& direction, BowShape shape = BowShape::sine);

/// Off in the shape of displacements, such as Solution::displacement or BucklingMode::shape.
/// \param displacement  n_nodes by 6; turns are left out
/// \param amplitude     largest move of a node [m], either way
/// \throws InputError frame.imperfection.shape for a wrong size or a shape without moves,
///   frame.imperfection.amplitude, and as require_sound
[[nodiscard]] Frame shaped(const Frame& frame, const std::vector<double>& displacement, double amplitude);

}  // namespace coverframe
