// SPDX-License-Identifier: BSD-3-Clause
// Setting straps with the tensioner. A strap's state is its free length; "set to 600 N" means: find the free length
// with which the assembled frame, in equilibrium, carries that tension.
#pragma once

#include <string>
#include <vector>

#include "coverframe/frame/solve.hpp"

namespace coverframe {

/// One strap as it is pulled on: the members it is made of, end to end. Its free length is shared out over them in
/// proportion to their drawn lengths, and the tension that is set is the mean along it.
struct StrapRun {
    std::string name;
    std::vector<int> members;
    double tension = 0;  ///< [N], 0 for a strap that is only laid on
};

struct Tensioned {
    Frame frame;         ///< the frame with the free lengths found
    Solution solution;   ///< its equilibrium; usable() tells whether the tensions were reached
    int rounds = 0;
};

/// Finds the free lengths of all runs together, so that in equilibrium under `loads` each run carries its tension to a
/// relative 1e-9.
/// \throws InputError frame.run for a run that is not made of straps, frame.run.shared for a member of two runs,
///   frame.strap.push for a tension under zero; and as solve()
[[nodiscard]] Tensioned tension_straps(const Frame& frame, const std::vector<StrapRun>& runs, const FrameLoads& loads,
                                       const SolveOptions& options = {});

}  // namespace coverframe
