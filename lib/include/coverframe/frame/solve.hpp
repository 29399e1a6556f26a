// SPDX-License-Identifier: BSD-3-Clause
// Equilibrium of a frame (frame.hpp) under node loads: the minimum of its potential energy.
//
// Method: Newton with a line search on the energy. Each step solves K d = -r with the exact tangent K of the members as
// they are now (taut or slack, pressed or lifted); where K is not positive definite it is shifted until it is. The
// energy is continuous with a continuous slope, also where a strap goes slack, and falls with every step, so the walk
// cannot return to a state it left; it ends at a point where forces balance. There the tangent is looked at again
// without any shift: if it is not positive definite the state is no equilibrium anybody can build, and says so.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "coverframe/frame/frame.hpp"

namespace coverframe {

/// What acts on the nodes. Sizes: `force` has 3 numbers a node (or is empty), `springs` any number.
struct FrameLoads {
    /// An elastic support of a node against a place in space: force on the node = force0 - stiffness (u - u0).
    struct Spring {
        int node = 0;
        std::array<double, 9> stiffness{};  ///< 3 by 3, row after row, symmetric, not negative [N/m]
        std::array<double, 3> u0{};         ///< [m]
        std::array<double, 3> force0{};     ///< [N]
    };
    std::vector<double> force;    ///< n_nodes by 3, row after row: fx fy fz [N]
    std::vector<Spring> springs;
};

enum class SolveStatus {
    not_run,          ///< nothing was computed
    converged,        ///< forces balance and the state is stable: all fields valid
    mechanism,        ///< a part can move without resistance; `message` names node and direction
    unstable,         ///< resistance is there, but compression overcomes it; `message` names node and direction
    large_rotation,   ///< a pole member bends, or an upright that pushes leans, further than the model allows
    iteration_limit,  ///< last state kept; do not check against it
};

[[nodiscard]] const char* name_of(SolveStatus status);

struct SolveOptions {
    int max_iterations = 200;         ///< Newton steps
    double force_tolerance = 1e-9;    ///< largest unbalanced force, relative to the largest force in the frame [-]
    double rotation_limit = 0.175;    ///< largest bend of a pole member, from the line between its nodes to the
                                      ///< direction of its end, and lean of a pressed upright [rad]
};

/// Forces in one member. Moments and shears in the member's own axes (BendingStiffness).
struct MemberForces {
    double axial = 0;                 ///< tension positive [N]
    double moment_vertical_from = 0;  ///< bending in the vertical plane at `from`, sagging positive [N m]
    double moment_vertical_to = 0;
    double moment_level_from = 0;     ///< bending in the level plane, positive when the starboard side is stretched [N m]
    double moment_level_to = 0;
    double shear_vertical = 0;        ///< [N]
    double shear_level = 0;           ///< [N]
    double twist = 0;                 ///< [N m]
    bool active = true;               ///< false: slack strap or lifted upright
};

struct Solution {
    SolveStatus status = SolveStatus::not_run;
    std::string message = "not run";
    std::vector<double> displacement;   ///< n_nodes by 6, row after row: ux uy uz [m], rotation vector [rad]
    std::vector<MemberForces> members;  ///< one a member
    std::vector<double> reaction;       ///< n_nodes by 6, force [N] and moment [N m] of the boat on held directions
    double unbalanced = 0;              ///< largest force left out of balance at a free direction [N]
    double energy = 0;                  ///< potential energy [N m]
    int iterations = 0;

    [[nodiscard]] bool usable() const { return status == SolveStatus::converged; }
};

/// Equilibrium of `frame` under `loads`.
/// \param start  displacements to begin from, n_nodes by 6; empty: from the drawn places
/// \throws InputError for a frame that is not sound (frame.hpp), or loads of the wrong size or not finite
/// \throws StateError frame.pole.folded for a start in which a pole's end points against the line between its nodes
[[nodiscard]] Solution solve(const Frame& frame, const FrameLoads& loads, const SolveOptions& options = {},
                             const std::vector<double>& start = {});

/// Half of each member's weight to each end, times `factor`, as vertical node forces.
[[nodiscard]] FrameLoads self_weight(const Frame& frame, double factor);

/// What keeps the top of a strut from moving sideways.
struct LateralHold {
    double stiffness = 0;              ///< the smaller principal value, level directions, without the strut [N/m]
    std::array<double, 2> direction{}; ///< level unit vector (x, y) of that principal value
};

/// Level stiffness at `node` in the state of `solution`, with the member `without` taken away and the rest as it is
/// (slack straps give nothing). The strut of height h under axial push N stays upright as long as N < stiffness * h.
/// \throws StateError "frame.solution.unusable" if the solution did not converge
[[nodiscard]] LateralHold lateral_hold(const Frame& frame, const FrameLoads& loads, const Solution& solution, int node,
                                       int without);

}  // namespace coverframe
