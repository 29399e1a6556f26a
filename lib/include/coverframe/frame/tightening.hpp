// SPDX-License-Identifier: BSD-3-Clause
// Straps pulled on one after the other, as a crew does it, with what buckles and tops take back.
//
// tension_straps (pretension.hpp) finds free lengths with which all straps carry their set tension together. On the
// boat they are set in turn: the strap that is pulled gets its tension while the free lengths of the others stay as
// they are, so a later strap changes the tension of the earlier ones. A strap not pulled yet hangs slack. When the
// tensioner lets go, the buckle gives back some free length before it bites.
//
// Until enough straps are on, nothing holds the tops of the uprights but the crew: the nodes that are held by hand get
// level springs during the pulling, and none at the end.
//
// Over the top of an upright a strap slips when its tensions on both sides differ by more than friction holds:
//     e^(-mu theta) <= T_1/T_2 <= e^(mu theta),   theta the angle by which the strap turns over the top
// Free length then moves from the slacker to the tauter side until the tensions stand at the edge of that cone (the
// rope friction of Euler and Eytelwein). Without a measured mu look at both bounds, 0 and 0.4 (from memory):
// slip_over_tops_bounds.
#pragma once

#include <string>
#include <vector>

#include "coverframe/frame/pretension.hpp"

namespace coverframe {

/// One pull of the tensioner.
struct TighteningStep {
    int run = 0;         ///< index of the strap
    double tension = 0;  ///< mean tension of the run when the tensioner stops, over 0 [N]
    double give = 0;     ///< free length the buckle gives back when it is let go, not negative [m]
};

struct TighteningOptions {
    std::vector<int> held_by_hand;  ///< nodes held level while the straps are pulled
    double hand_stiffness = 1e5;    ///< of that hold, over 0 [N/m]
    SolveOptions solve;
};

struct Tightened {
    Frame frame;        ///< the frame with the free lengths found; a run nobody pulled hangs slack
    Solution solution;  ///< its equilibrium without the hands; usable() tells whether it stands
    /// Mean tension of every run after each step, hands on: one row a step, one number a run [N].
    std::vector<std::vector<double>> tensions;
    std::string message;  ///< which step could not be done and why; empty if all were
};

/// Pulls the straps in the order of `steps`. A run may be pulled more than once.
/// \throws InputError frame.run, frame.run.shared, frame.step, frame.strap.push for a tension under zero, and as
///   solve()
[[nodiscard]] Tightened tighten_in_order(const Frame& frame, const std::vector<StrapRun>& runs,
                                         const std::vector<TighteningStep>& steps, const FrameLoads& loads,
                                         const TighteningOptions& options = {});

/// A strap that passes over a node, as the two members on either side of it.
struct Passing {
    std::string name;  ///< "C2 over U2"
    int first = 0;     ///< index of a member; both straps, with one node in common
    int second = 0;
};

/// Where friction stands at one passing.
struct PassingState {
    double first = 0;    ///< tension [N]
    double second = 0;   ///< [N]
    double turn = 0;     ///< theta, from a straight line [rad]
    double slipped = 0;  ///< free length that moved from `second` to `first` [m]; negative the other way
};

struct Slipped {
    Frame frame;        ///< with the free lengths after slipping
    Solution solution;  ///< usable() tells whether equilibrium was found
    std::vector<PassingState> passings;
    int rounds = 0;
};

/// Equilibrium with straps that slip over the nodes they pass.
/// \param friction  mu [-], 0 to 2
/// \throws InputError frame.passing, frame.friction, and as solve()
[[nodiscard]] Slipped slip_over_tops(const Frame& frame, const std::vector<Passing>& passings, double friction,
                                     const FrameLoads& loads, const SolveOptions& options = {});

/// The two ends of what an unknown friction may do.
struct SlippedBounds {
    Slipped smooth;  ///< mu = 0
    Slipped rough;   ///< mu = greatest
};

/// Both bounds. With one passing the tensions of every mu between lie between these; with several, one strap may give
/// way to another: look at values between as well.
/// \param greatest  largest mu that may be there [-], 0 to 2
/// \throws as slip_over_tops
[[nodiscard]] SlippedBounds slip_over_tops_bounds(const Frame& frame, const std::vector<Passing>& passings,
                                                  double greatest, const FrameLoads& loads,
                                                  const SolveOptions& options = {});

}  // namespace coverframe
