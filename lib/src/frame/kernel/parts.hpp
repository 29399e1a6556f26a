// SPDX-License-Identifier: BSD-3-Clause
// Parts of a frame: nodes that members join to one another. A frame may be made of several, each held on its own. A
// part that nothing ties to the boat is adrift: neither a held direction, nor a spring, a foot or an elastic support of
// the loads.
#pragma once

#include <string>
#include <vector>

#include "coverframe/frame/solve.hpp"

namespace coverframe::kernel {

/// Nodes of each part that is adrift, in the order of the frame.
[[nodiscard]] std::vector<std::vector<int>> parts_adrift(const Frame& frame, const FrameLoads& loads);

/// Nodes and members of a part by name, eight of each at most: "nodes "a", "b"; members "spare pole"".
[[nodiscard]] std::string names_of_part(const Frame& frame, const std::vector<int>& part);

}  // namespace coverframe::kernel
