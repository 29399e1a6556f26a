// SPDX-License-Identifier: BSD-3-Clause
// Nodes that hang loose in a state: only the ends of slack straps meet there, or of a lifted upright on a lifted foot,
// and nothing acts. Nothing holds such a node, and nothing needs to: it is no mechanism of the frame.
//
// Limits. A node with a load, a spring, a pole or an upright without a foot is never loose: if nothing holds it, it is
// a mechanism.
#pragma once

#include <vector>

#include "coverframe/frame/solve.hpp"

namespace coverframe::kernel {

/// \param solution  with its member and foot forces
/// \param nothing   force that counts as none [N]
[[nodiscard]] std::vector<int> loose_nodes(const Frame& frame, const FrameLoads& loads, const Solution& solution,
                                           double nothing);

}  // namespace coverframe::kernel
