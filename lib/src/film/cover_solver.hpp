// SPDX-License-Identifier: BSD-3-Clause
// One rigged cover under one snow after another (film/cover.hpp), with order, band and memory of its frame kept.
#pragma once

#include <optional>
#include <vector>

#include "coverframe/film/cover.hpp"
#include "frame/kernel/solver.hpp"

namespace coverframe {

class CoverSolver {
public:
    /// Keeps the cover, which must stay as it is.
    explicit CoverSolver(const Cover& rigged);

    /// As load_cover(). The state does not depend on what was solved before.
    /// \param near  a usable state of the same cover, or nullptr. With one, film and frame are walked together from
    ///   there; where that does not end in a state to use, or there is none, the answer is that from the drawn shape.
    ///   Both agree to the tolerance of the options.
    [[nodiscard]] CoverState load(const StripLoads& snow, double permanent_factor, const SolveOptions& options,
                                  const CoverState* near = nullptr);

private:
    void put_on(const StripLoads& snow, double share, double permanent_factor);
    [[nodiscard]] CoverState settle(const FrameLoads& own, const SolveOptions& options,
                                    const std::vector<double>& start);
    [[nodiscard]] std::optional<CoverState> settle_near(const FrameLoads& own, const SolveOptions& options,
                                                        const CoverState& near);

    const Cover& rigged_;
    std::vector<CoverStrip> strips_;  ///< with the load of now
    kernel::Solver solver_;
    FrameLoads weight_;              ///< of the frame, without factor
    std::vector<double> film_load_;  ///< weight of each strip [N]
    std::vector<double> plan_area_;  ///< of each strip, drawn [m2]
};

}  // namespace coverframe
