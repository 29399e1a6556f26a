// SPDX-License-Identifier: BSD-3-Clause
// One frame under many loads, or many frames of one topology: what solve() says of each, bit for bit, in less time.
//
// Eight take their Newton steps together, one in each lane of the machine's vector registers. Those that need more than
// plain steps are solved one by one, as are all with member loads, temperatures or settlements, with springs at other
// nodes than the first of the eight, or with arms, or with springs or feet against the boat. Solutions depend neither
// on the number of threads nor on the others. They have no estimate of the condition (Solution::condition is 0, and
// there is no caution) where solve() gives one, for it costs as much as a step.
//
// Of one topology are frames with as many nodes and members, the same directions held, members of the same kinds
// between the same nodes, and springs and feet at the same nodes. Everything else may differ: places, names,
// stiffnesses, free lengths, weights, end springs, arms, friction.
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

/// The same for many frames of one topology.
/// \param loads  one for each frame, or one for all of them
/// \throws also "frame.batch.topology" for the first frame that differs from frames[0], with what differs, and
///   "frame.batch.loads" if there are neither as many loads as frames nor one
[[nodiscard]] std::vector<Solution> solve_batch(std::span<const Frame> frames, std::span<const FrameLoads> loads,
                                                const SolveOptions& options = {}, const std::vector<double>& start = {},
                                                int threads = 1);

}  // namespace coverframe
