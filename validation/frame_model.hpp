// SPDX-License-Identifier: BSD-3-Clause
// A frame as a case writes it down, node by node and member by member, made into the library's frame and read out
// again.
//
// Input of every frame model
//   nodes     {"A": ["0 m", "0 m", "0 m"]}                       x, y, z
//   held      {"A": "ux uy uz rx ry rz"}                         directions held
//   held_everywhere  "uy rx rz"                                  for a plane frame; optional
//   members   [{"name", "kind": pole | upright | strap | bar, "from", "to", "pieces"}] and
//               "EA": "4 MN" as force, or "E" and "A"
//               poles: "E", "I_vertical", "I_level" (same as vertical if left out), "G", "J" and, for a pole soft in
//               shear, "shear_area": "G" times it is GA of both planes; "hinged": "from" | "to" | "both";
//               "spring_from", "spring_to": "5 kN m", a turning spring at that end of the run, per radian
//               "arm_from", "arm_to": ["0 m", "0 m", "0.1 m"], rigid, from the node to that end of the run
//               "free_length", or "shortened_by", or "set_to" (tension in the drawn shape); drawn length otherwise
//               "load": ["0 N/m", "0 N/m", "-1 N/m"] per drawn length, or "load_per_free_length"; to the nodes by
//               halves. "even_load": the same as a load of the members
//               "expansion": 1e-5 per kelvin, "warmer_by": 20 in kelvin
//               "start_sag": "1 m": the walk of the solver starts from a parabola of that sag under the chord, cut into
//               pieces of equal length
//   forces    {"A": ["0 N", "0 N", "-10 N"]}
//   couples   {"A": ["0 N m", "5 N m", "0 N m"]}, along the rotation vector
//   settled   {"A": ["0 m", "0 m", "-5 mm"]}: displacement of what is held; "turned": {"A": [0, 0.01, 0]} in radians
//   feet      [{"node", "stiffness": "..N/m", "gap": "..m", "friction": 0.2, "side_stiffness": "..N/m"}]; all but node and
//             stiffness may be left out
//   boat_springs  [{"node", "along": ["..N/m" x 3], "about": ["..N m" x 3]}], per radian, either may be left out
//   springs   [{"node", "stiffness": ["..N/m" x 3], "at": ["..m" x 3]}]
//   load_scale  1e-6: all that acts is multiplied, displacements and forces divided by it. Cases of first-order theory
//               are run so, because the library's frame is always of second order.
//   force_tolerance  of the solver, relative; for chains of short stiff pieces, whose round-off is over its own 1e-9
//   rotation_limit  of the solver in radians; for cases that measure how wrong a coarse frame is
//   soften    [0.01, 0.1]: axial stiffnesses are multiplied by these first, each state being the start of the next, for
//               long chains that are next to inextensible
//   load_steps  16: what acts grows in so many even steps, each state being the start of the next
//   results   {"quantity": {...}}, see frame_results.cpp
#pragma once

#include <map>
#include <string>
#include <vector>

#include "coverframe/frame/solve.hpp"
#include "input.hpp"
#include "values.hpp"

namespace coverframe::validation {

/// A member of the case: one or more members of the library's frame, end to end.
struct Run {
    std::vector<int> members;
    std::vector<int> nodes;  ///< one more than members
};

struct FrameModel {
    Frame frame;
    FrameLoads loads;
    std::vector<double> start;          ///< displacements to begin from; empty: drawn places
    std::map<std::string, int> nodes;
    std::map<std::string, Run> runs;
    double scale = 1;
    SolveOptions options;
    std::vector<double> soften;
    int steps = 1;
};

/// \param pieces  of every member instead of its own number; 0: its own
[[nodiscard]] FrameModel read_frame(const Input& input, int pieces = 0);

/// Forces multiplied by `factor`; the rest as it is.
[[nodiscard]] FrameLoads factored(const FrameLoads& loads, double factor);

/// The equilibrium. \throws CaseError with the solver's message if there is none
[[nodiscard]] Solution solve_or_say(const FrameModel& model);

/// One number out of a solution.
[[nodiscard]] Number extract(const FrameModel& model, const Solution& solution, const Input& what);

/// Every number of "results".
[[nodiscard]] Answers extract_all(const FrameModel& model, const Solution& solution, const Input& input);

/// Index of "ux" "uy" "uz" "rx" "ry" "rz". \throws CaseError
[[nodiscard]] int direction_of(const std::string& name);

/// Node or run of that name. \throws CaseError
[[nodiscard]] int node_of(const FrameModel& model, const std::string& name);
[[nodiscard]] const Run& run_of(const FrameModel& model, const std::string& name);

}  // namespace coverframe::validation
