// SPDX-License-Identifier: BSD-3-Clause
// Equilibrium of a frame (frame.hpp) under loads: the minimum of its potential energy.
//
// Method: Newton with a line search on the energy. Each step solves K d = -r with the exact tangent K of the members as
// they are now (taut or slack, pressed or lifted); where K is not positive definite it is shifted until it is, so that
// d always leads down. A share s of the step is taken, the first of s0, s0/2, s0/4, ... with
//     Pi(u + s d) <= Pi(u) + 1e-4 s r.d                                                                (1)
// but for what rounding leaves of Pi; s0 = 1, less where a node would move by more than half the frame. The walk ends
// where no unbalanced force is more than `force_tolerance` times the largest force in the frame.
//
// Why it ends, and cannot cycle. Call a pattern which straps are taut and which uprights push. Pi is continuous with a
// continuous slope across all patterns, for each one-sided member adds half its stiffness times the square of a stretch
// that is cut off at zero. d leads down in every state out of balance, so (1) holds for some s > 0, and each step
// leaves a strictly lower Pi. Hence no state, and no pattern with its state, comes back; a pattern may be visited again
// at lower energy only. With small displacements Pi is convex and quadratic on each of finitely many patterns, the
// whole step on the right one is its minimum, and the walk ends after finitely many steps (Kanno, from memory). With
// large ones r tends to zero, as long as the frame stays in reach and K is bounded; `max_iterations` bounds what is
// left. Friction at feet has no energy: it is found in rounds of such walks (feet.hpp), and only those rounds can come
// back to where they were; the status `cycling` is theirs.
//
// Looking ahead. A slender and stiff pole in small pieces moves along a curve, and a straight step stretches it: Pi
// rises although the next whole steps would bring it far down, and (1) lets only short steps pass. With poles in the
// frame the walk therefore, after three refused whole steps, goes on by up to seven whole ones, each along d of its own
// place, whatever Pi does, and stays where Pi is first down to what (1) asked of the first of them. If it nowhere is,
// all of them are put back and not counted, the step is halved as ever, and twice as many refused ones must pass before
// the next look; after a look that helped, one. Of the places where the walk stays each has a lower Pi than the one
// before, so all that is said above holds; between two of them lie no more than seven steps and the halvings of one.
//
// What it ended in. The tangent is looked at again without any shift: if it is not positive definite the state is no
// equilibrium anybody can build, and the status says so, with the node, the direction, and the straps that are slack or
// the uprights that have lifted there. A node that hangs on slack straps alone and carries nothing is no such case: it
// hangs anywhere, takes part in nothing, and is listed in Solution::loose.
//
// Stiffness. Stiffnesses far apart cost digits: the condition of the tangent tells how many at most. From 1e12 on the
// solution carries a caution with what is stiffest and softest in the shape that loses them (kernel/conditioning.hpp):
// members, springs, feet or elastic supports, by name. Where no digit is left, because a pivot is under 1e-13 of its
// diagonal or the condition is 1e16, the status is ill_conditioned and there is no answer; and nothing strained in that
// shape is a mechanism, however the pivots came out.
//
// If there is no usable state, the same loads are approached from none, pretension and free lengths as they are
// (`scaled`), each state from the one before, halving the way until it is 1 % of the loads. If that gets to the loads
// themselves the solution stands and tells the number of states solved (load_steps). If not, load_share is the largest
// share with a usable state, known to 1 %, and the message says it. That share is one of all FrameLoads, the weight
// among them.
//
// Balance. At a converged state, x the place of a node as displaced, m its couple, R its reaction:
//     sum of forces  sum f + sum R = 0,   sum of moments  sum (x x f + m) + sum (x x R + M) = 0
// (both hold exactly, for no member's energy depends on where or how turned the frame is). Solution::balance has both
// sides. Energy:  energy = strain_energy + load_potential. The strain energy is the sum over the members of
//     N^2 L0/(2 EA) + integral of M^2/(2 EI) + V^2/(2 GA) + integral of T^2/(2 GJ)
// (end springs M^2/(2 k), and for a pole under member load without what its ends do not see, see below) plus the
// springs' and feet's. A strap that hangs under a load counts in it as the straight one between the same ends. The
// loads keep their direction, so their work from the drawn place, along whichever path, is minus
// load_potential; strain_energy less that of the state without loads is the work of the loads as they grow:
//     d(strain_energy)/d(share) = f . du/d(share),   d(energy)/d(share) = -f . u
//
// Energy of the loads, u and t the displacement and rotation vector of a node, L the drawn length of a member:
//   force, couple   -f.u, -m.t
//   member load     q per drawn length, in a direction that stays, evenly spread. Upright, bar: -q L.(u_from + u_to)/2.
//                   Strap: likewise, evenly over its free length, and with it the strap hangs as an elastic catenary
//                   instead of being straight; it is then never slack. With its load going to 0 it becomes the straight
//                   strap without a step (kernel/catenary.hpp).
//                   Pole: also -q L.(mean bow), the bow that of the beam whose ends the nodes turn. With A_1 and B_1
//                   the member's axis as turned by `from` and `to` and rigid ends it is L/12 (A_1 - B_1), whatever the
//                   shear stiffness; on hinges and springs see kernel/member_load.hpp. In first order that is exact:
//                   moments, shears and nodes do not depend on the number of pieces. A load along the pole gets with it
//                   a couple of the second order, q L^2/24 times the bend squared, of the kind of the bow that a pole
//                   leaves out. The bow of the loaded pole between ends that are held is not in the energy: it is the
//                   same whatever the nodes do, (q L)^2 L^3/(1440 EI) for rigid ends.
//   temperature     in e of the members (frame.hpp)
//   settlement      the given displacement of a held direction; in a turn, of the rotation vector
#pragma once

#include <array>
#include <string>
#include <vector>

#include "coverframe/frame/frame.hpp"

namespace coverframe {

/// What acts on the frame. Every list but `springs` is either empty or has all its numbers.
struct FrameLoads {
    /// An elastic support of a node against a place in space: force on the node = force0 - stiffness (u - u0).
    struct Spring {
        int node = 0;
        std::array<double, 9> stiffness{};  ///< 3 by 3, row after row, symmetric, not negative [N/m]
        std::array<double, 3> u0{};         ///< [m]
        std::array<double, 3> force0{};     ///< [N]
    };
    std::vector<double> force;        ///< n_nodes by 3, row after row: fx fy fz [N]
    std::vector<Spring> springs;
    std::vector<double> couple;       ///< n_nodes by 3: along the rotation vector (frame.hpp) [N m]
    std::vector<double> member_load;  ///< n_members by 3: in global axes, per drawn length [N/m]
    std::vector<double> temperature;  ///< n_members: rise over the state in which free lengths hold [K]
    std::vector<double> settlement;   ///< n_nodes by 6: displacement of held directions [m, rad]; 0 elsewhere
};

enum class SolveStatus {
    not_run,          ///< nothing was computed
    converged,        ///< forces balance and the state is stable: all fields valid
    mechanism,        ///< a part can move without resistance; `message` names node, direction and what is missing
    unstable,         ///< resistance is there, but compression overcomes it; `message` names node and direction
    ill_conditioned,  ///< stiffnesses lie so far apart that no digit is left; `message` names the parts
    large_rotation,   ///< a pole member bends, or an upright that pushes leans, further than the model allows
    iteration_limit,  ///< last state kept; do not check against it
    cycling,          ///< what feet carry and what friction holds there come round and round (feet.hpp); likewise
};

[[nodiscard]] const char* name_of(SolveStatus status);

struct SolveOptions {
    int max_iterations = 200;         ///< Newton steps, without those that were put back
    double force_tolerance = 1e-9;    ///< largest unbalanced force, relative to the largest force in the frame [-]
    double rotation_limit = 0.175;    ///< largest bend of a pole member, from the line between its nodes to the
                                      ///< direction of its end, and lean of a pressed upright [rad]
    bool approach = true;             ///< without a usable state: look for the share of the loads that has one
};

/// All loads times `share`: forces, couples, member loads, temperatures, settlements; of elastic supports the pull and
/// the place they hang from, but not the stiffness.
[[nodiscard]] FrameLoads scaled(FrameLoads loads, double share);

/// Forces in one member. Moments and shears in the member's own axes (BendingStiffness). Under a member load axial
/// force and shear vary evenly along the member, and moments as a parabola. Of a strap that carries a load along its
/// length axial_at(0) and axial_at(1) are the tensions at its ends; the greater one is the greatest along it.
struct MemberForces {
    double axial = 0;                 ///< tension positive, mean of both ends [N]
    double moment_vertical_from = 0;  ///< bending in the vertical plane at `from`, sagging positive [N m]
    double moment_vertical_to = 0;
    double moment_level_from = 0;     ///< bending in the level plane, positive when the starboard side is stretched [N m]
    double moment_level_to = 0;
    double shear_vertical = 0;        ///< slope of the moment, mean of both ends [N]
    double shear_level = 0;           ///< likewise [N]
    double twist = 0;                 ///< [N m]
    bool active = true;               ///< false: slack strap or lifted upright
    std::array<double, 3> load{};     ///< the whole member load along the member's axes 1, 2, 3 [N]; of a strap only by
                                      ///< how much the tension is less at `to`
    double least = 0;                 ///< of a loaded strap, the least tension along it [N]
    double sag = 0;                   ///< of a loaded strap, greatest distance from the line between its ends, square to
                                      ///< it; with both ends in one place how far it hangs from there [m]

    /// At a share of the length from `from`, 0 to 1 [N].
    [[nodiscard]] constexpr double axial_at(double share) const { return axial + (0.5 - share) * load[0]; }
    [[nodiscard]] constexpr double shear_vertical_at(double share) const {
        return shear_vertical - (0.5 - share) * load[2];
    }
    [[nodiscard]] constexpr double shear_level_at(double share) const { return shear_level + (0.5 - share) * load[1]; }

    /// At a share of a member of that length [N m].
    [[nodiscard]] constexpr double moment_vertical_at(double share, double length) const {
        return (1 - share) * moment_vertical_from + share * moment_vertical_to -
               0.5 * share * (1 - share) * load[2] * length;
    }
    [[nodiscard]] constexpr double moment_level_at(double share, double length) const {
        return (1 - share) * moment_level_from + share * moment_level_to +
               0.5 * share * (1 - share) * load[1] * length;
    }
};

/// What one foot does (feet.hpp).
struct FootForces {
    double push = 0;               ///< on the node, upwards [N]
    std::array<double, 2> side{};  ///< on the node, along x and y [N]
    double slip = 0;               ///< how far it has slipped [m]; 0 while it holds or is lifted
    bool carries = false;          ///< false: lifted

    [[nodiscard]] bool slips() const { return slip > 0; }
};

/// Both sides of the balance of a whole frame; moments about the origin of the axes.
struct FrameBalance {
    std::array<double, 3> load_force{};       ///< of all FrameLoads [N]
    std::array<double, 3> load_moment{};      ///< [N m]
    std::array<double, 3> reaction_force{};   ///< of the boat, and of its NodeSprings [N]
    std::array<double, 3> reaction_moment{};  ///< [N m]
};

struct Solution {
    SolveStatus status = SolveStatus::not_run;
    std::string message = "not run";
    std::vector<double> displacement;   ///< n_nodes by 6, row after row: ux uy uz [m], rotation vector [rad]
    std::vector<MemberForces> members;  ///< one a member
    std::vector<double> reaction;       ///< n_nodes by 6, force [N] and moment [N m] of the boat on directions that are
                                        ///< held or have a NodeSpring, and through feet
    std::vector<FootForces> feet;       ///< one a foot
    /// Nodes that hang loose: only the ends of slack straps meet there, or of a lifted upright on a lifted foot, and no
    /// force acts. They make no mechanism; their place is one of many.
    std::vector<int> loose;
    double unbalanced = 0;              ///< largest force left out of balance at a free direction [N]
    double unbalanced_moment = 0;       ///< likewise [N m]
    FrameBalance balance;
    double energy = 0;                  ///< potential energy, the sum of the next two [N m]
    double strain_energy = 0;           ///< of members and NodeSprings [N m]
    double load_potential = 0;          ///< of FrameLoads, zero in the drawn place [N m]
    double load_share = 0;              ///< of the loads, with a usable state: 1 if converged [-]
    int load_steps = 0;                 ///< states solved to approach the loads; 0: they were taken at once
    /// Of the tangent, each unknown in the measure of its own stiffness: in the 1-norm, estimated from below, so 1 or
    /// more [-]; digits lost are its logarithm, at most. 0: not estimated, as without a stable state and in a batch
    /// (batch.hpp), which gives no caution either.
    double condition = 0;
    std::string caution;                ///< what to know about a usable state; empty if there is nothing
    int iterations = 0;                 ///< Newton steps, those of all shares included

    [[nodiscard]] bool usable() const { return status == SolveStatus::converged; }
};

/// Equilibrium of `frame` under `loads`.
/// \param start  displacements to begin from, n_nodes by 6; empty: from the drawn places
/// \throws InputError for a frame that is not sound (frame.hpp), for loads of the wrong size or not finite
///   (frame.loads.size, frame.loads.finite), a couple on a node without a rotation (frame.loads.couple) or a settlement
///   where nothing is held (frame.loads.settlement)
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

/// Where to look: a node, and the member to take away there, or -1.
struct HoldAt {
    int node = 0;
    int without = -1;
};

/// Level stiffness at a node in the state of `solution`, with a member taken away and the rest as it is (slack straps
/// give nothing); the ends of the member and the node stay at their heights. The strut of height h under axial push N
/// stays upright as long as N < stiffness * h. Nothing where a node could move without resistance.
/// \throws StateError "frame.solution.unusable" if the solution did not converge
[[nodiscard]] LateralHold lateral_hold(const Frame& frame, const FrameLoads& loads, const Solution& solution, int node,
                                       int without);

/// The same at many places of one state, from one factor of its tangent.
[[nodiscard]] std::vector<LateralHold> lateral_holds(const Frame& frame, const FrameLoads& loads,
                                                     const Solution& solution, const std::vector<HoldAt>& places);

}  // namespace coverframe
