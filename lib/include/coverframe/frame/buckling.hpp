// SPDX-License-Identifier: BSD-3-Clause
// How much more load until the frame buckles: load factors and shapes at a loaded state.
//
// At a state in equilibrium the tangent is K = K_e + K_g: what the members give elastically, with taut straps and
// pressed uprights as they are there, and what their present forces add when they turn. Linear buckling scales the
// forces and looks for factors at which resistance is gone:
//
//     (K_e + K_0 + lambda (K_g - K_0)) phi = 0
//
// K_0 is the part of K_g that is not scaled. Which forces grow with the load is a choice:
//   loads_only   K_0 belongs to the state without the loads, that is of the pretension: lambda multiplies what the
//                loads have added. This is the question "how much more snow", and needs that state.
//   all_forces   K_0 = 0: pretension grows with the loads. For a frame without pretension, and the textbook's case.
// Factors count from the loads as they are: lambda = 1 is the present state, which is stable if all factors are over 1.
//
// Limits. Forces are taken to grow in proportion and directions to stay (linear buckling): the further lambda is from
// 1, the rougher. The set of taut straps and pressed uprights is the one of the state: each mode tells how large it may
// grow before a taut strap goes slack or a pressed upright lifts (reach), after which there is less resistance, and
// which slack straps or lifted uprights it would take up, after which there is more. A factor of timber poles is worth
// as much as the modulus that was put in: use the 5 % value.
//
// The bow of a pole within one member is in K_g (kernel/bow.hpp): factors of poles come out too high by about 0.12/n^4,
// n the number of members in half a wave (0.05 % for four, measured). Equilibrium sees that bow by subdivision alone: a
// frame that solve() finds stable may have a factor a little under 1, by pi^2/(12 n^2) at most (1.3 % for eight).
//
// Size. Up to `dense_up_to` unknowns the problem is solved dense, for about 10 n^3 operations; beyond by subspace
// iteration on the banded factor (kernel/lowest.hpp), which costs a few hundred solutions. Either way the signs of the
// pivots count the factors once more.
//
// Source: McGuire, Gallagher and Ziemian, Matrix Structural Analysis, chapter 9 (from memory).
#pragma once

#include <limits>
#include <string>
#include <vector>

#include "coverframe/frame/solve.hpp"

namespace coverframe {

/// One way to buckle.
struct BucklingMode {
    double factor = 0;                    ///< lambda [-], over 0
    std::vector<double> shape;            ///< n_nodes by 6, row after row; largest displacement (or rotation) is 1
    std::string place;                    ///< "node "top" moves athwart": where it moves most
    /// Amplitude at which the first taut strap goes slack or the first pressed upright lifts, either way [m]
    double reach = std::numeric_limits<double>::infinity();
    std::vector<std::string> lets_go;     ///< the members that limit `reach`, within 1 % of it
    std::vector<std::string> takes_up;    ///< slack straps and lifted uprights the mode would load, either way
};

struct Buckling {
    std::vector<BucklingMode> modes;      ///< lowest factor first; empty if no factor makes the frame buckle
    std::string message;                  ///< why there is none, or that their count does not agree; empty otherwise
};

struct BucklingOptions {
    int count = 3;                        ///< most modes to give
    /// State of the same frame without the loads that are scaled, converged; nullptr scales all forces.
    const Solution* without_loads = nullptr;
    int dense_up_to = 250;                ///< unknowns; a second or so at 1000
};

/// Lowest load factors at the state of `solution`.
/// \throws StateError frame.solution.unusable if a state did not converge; InputError frame.start.size if the states
///   are not of this frame
[[nodiscard]] Buckling buckling(const Frame& frame, const FrameLoads& loads, const Solution& solution,
                                const BucklingOptions& options = {});

/// How many load factors lie below `factor`, by the signs of the pivots of K at that factor (Sylvester): a check of
/// `buckling` that shares no eigenvalue with it.
/// \throws as `buckling`
[[nodiscard]] int factors_below(const Frame& frame, const FrameLoads& loads, const Solution& solution, double factor,
                                const Solution* without_loads = nullptr);

/// An upright under its push, and what its straps can hold.
struct UprightStability {
    std::string name;
    double push = 0;      ///< [N]
    double critical = 0;  ///< stiffness of the straps at its top times its height, as they are under load; where its
                          ///< foot gives level, of both ends one behind the other [N]
    double used = 0;      ///< push/critical; infinite if nothing holds the top
};

/// Every upright that pushes. Its own bending is a check of resistance, not looked at here.
/// \throws StateError frame.solution.unusable
[[nodiscard]] std::vector<UprightStability> upright_stability(const Frame& frame, const FrameLoads& loads,
                                                              const Solution& solution);

}  // namespace coverframe
