// SPDX-License-Identifier: BSD-3-Clause
// Feet: where a frame stands on the boat without being tied to it. A foot pushes upwards only, on a pad or a sole that
// gives; it lifts off; and it holds sideways by friction alone.
//
// A foot (frame.hpp) belongs to a node that is free to move up and down. With u the node's displacement and
// d = |(ux, uy)| how far it stands from its drawn place:
//
//   push      N = k <-(uz + gap)>          k stiffness, gap how far the node sinks before it bears; N = 0: lifted
//   sideways  S = min(k_s d, mu N)         towards the drawn place; S = mu N: the foot slips, slip = d - mu N/k_s
//
// An upright that stands on the node of a foot is a push-only upright with a soft foot. Where the foot stands in a step
// or against a stringer, hold the node level (held ux uy) and leave friction 0.
//
// Energy and friction. The push is an energy, 1/2 k <-(uz + gap)>^2. Friction is none: what it can take depends on the
// push. solve() splits it: for given pushes N' the sideways hold is the energy 1/2 k_s d^2, from k_s d = mu N' on
// mu N' d - (mu N')^2/(2 k_s); after each equilibrium N' is set to the pushes found, until no foot's mu N' moves by
// more than the solver's tolerance. It begins with feet that hold whatever comes.
//   * Converges where a change of the sideways hold of feet that slip changes their pushes by less than itself over mu:
//     mu |dN/dS| < 1. An upright that leans by the angle a from the vertical has dN/dS = 1/tan a and slips only where
//     tan a > mu, so there it converges, slowly near that limit.
//   * Where it does not settle in 200 rounds the status is iteration_limit and the message says so and names the foot.
//   * Where feet that slip leave a part free to move, the status is mechanism and names it.
//   * Without friction, or where nothing slips, the state does not depend on the way the loads came. Where feet slip,
//     several states may balance; what is found is the one for loads that grow from nothing in proportion, each foot
//     pulled back towards its drawn place. Creeping by loads that come and go is not followed.
//
// Limits. The pad gives in proportion: take the stiffness at the push that comes. It does not turn, so a foot carries
// no moment. Up is up: a sole that slopes more than a few degrees is another case. The push acts at the node.
//
// What is known of the numbers. Stiffness of pads and soles: no published value was found; a measured one, or two
// bounds. Friction: wood on wet gelcoat 0.1 to 0.3, on carpet 0.4 to 0.6 (from memory): look at both bounds,
// solve_friction_bounds. Feet that slide are looked for with the low one.
//
// Sources: Coulomb's law; the split into given pushes and an energy after Duvaut and Lions, Inequalities in Mechanics
// and Physics (from memory); Kanno, Nonsmooth Mechanics and Convex Optimization (unilateral contact as an energy, from
// memory).
#pragma once

#include <vector>

#include "coverframe/frame/solve.hpp"

namespace coverframe {

/// The two ends of what an unknown friction may do.
struct FrictionBounds {
    Solution smooth;  ///< no foot has friction: may be a mechanism, and then says so
    Solution rough;   ///< each has the friction written at it
};

/// Equilibrium without friction, and with that of each foot taken as the greatest it may be. What a friction between
/// gives need not lie between: a frame may hold by one foot because another slips.
/// \throws as solve()
[[nodiscard]] FrictionBounds solve_friction_bounds(const Frame& frame, const FrameLoads& loads,
                                                   const SolveOptions& options = {},
                                                   const std::vector<double>& start = {});

}  // namespace coverframe
