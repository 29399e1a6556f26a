// SPDX-License-Identifier: BSD-3-Clause
// One frame under many loads: what solve() says of each, bit for bit, in less time.
//
// Eight loads take their Newton steps together, one in each lane of the machine's vector registers; loads that need
// more than plain steps are solved one by one, as are all loads that carry member loads, temperatures or settlements,
// and all loads of a frame with arms, or with springs or feet against the boat. Solutions depend neither on the number of threads nor
// on the other loads.
#pragma once

#include <span>
#include <vector>

#include "coverframe/frame/solve.hpp"

namespace coverframe {

/// \param start    displacements from which each walk begins, n_nodes by 6; empty: from the drawn places
/// \param threads  that work on it, 1 or more; 0: as many as the machine has
/// \returns one solution for each of the loads, in their order
/// \throws as solve(), for the first of the loads that it refuses; "frame.threads" if there are to be fewer than none
[[nodiscard]] std::vector<Solution> solve_batch(const Frame& frame, std::span<const FrameLoads> loads,
                                                const SolveOptions& options = {}, const std::vector<double>& start = {},
                                                int threads = 1);

}  // namespace coverframe
