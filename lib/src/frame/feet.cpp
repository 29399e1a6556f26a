// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/feet.hpp"

namespace coverframe {

FrictionBounds solve_friction_bounds(const Frame& frame, const FrameLoads& loads, const SolveOptions& options,
                                     const std::vector<double>& start) {
    Frame smooth = frame;
    for (Foot& foot : smooth.feet) foot.friction = 0;
    return {solve(smooth, loads, options, start), solve(frame, loads, options, start)};
}

}  // namespace coverframe
