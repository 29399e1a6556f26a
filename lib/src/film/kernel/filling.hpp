// SPDX-License-Identifier: BSD-3-Clause
// Filling hollows of a film that sinks under the water: find the water on the shape, find the shape under the water,
// and so on.
//
// The tangent of the film under water holds what the water takes away while its level stays (wet.hpp), so each round is
// left with the little that the level itself moves; it ends when the volume does not change by more than a share of
// 1e-4 and a millilitre. Near the tension at which a pond grows without end the rounds get many, beyond it the shape
// under the water is not found or the volume grows on: both are told apart from an end.
#pragma once

#include <cmath>
#include <vector>

#include "coverframe/film/ponds.hpp"

namespace coverframe::kernel {

class Filling {
public:
    /// Keeps drawn shape and outlets.
    Filling(const TriangleMesh& drawn, const std::vector<bool>& outlet, const Rain& rain)
        : drawn_(drawn), outlet_(outlet), rain_(rain) {}

    /// Looks at the water on a shape. False if it has settled, or if the rounds are used up.
    bool goes_on(const TriangleMesh& film) {
        if (rain_.kind == Rain::Kind::none) {
            settled_ = true;
            return false;
        }
        ++rounds_;
        water_ = water_after(film, drawn_, outlet_, rain_);
        const double volume = water_.volume();
        settled_ = std::abs(volume - before_) <= share * volume + negligible;
        before_ = volume;
        return !settled_ && rounds_ < most;
    }

    [[nodiscard]] const Water& water() const { return water_; }
    [[nodiscard]] bool settled() const { return settled_; }
    [[nodiscard]] int rounds() const { return rounds_; }

private:
    static constexpr int most = 100;
    static constexpr double share = 1e-4;
    static constexpr double negligible = 1e-6;  ///< [m3]

    const TriangleMesh& drawn_;
    const std::vector<bool>& outlet_;
    const Rain& rain_;
    Water water_;
    double before_ = 0;
    bool settled_ = false;
    int rounds_ = 0;
};

}  // namespace coverframe::kernel
