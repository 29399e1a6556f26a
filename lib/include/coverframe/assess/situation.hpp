// SPDX-License-Identifier: BSD-3-Clause
// The situations a cover is judged in: snow arrangement, factors, film tension, strap stiffness.
#pragma once

#include <string>
#include <vector>

#include "coverframe/actions/arrangement.hpp"
#include "coverframe/frame/layout.hpp"

namespace coverframe {

enum class Limit {
    strength,  ///< factored loads: does a part give way
    service,   ///< loads as they are: sag, water, clearance, slope
};

struct Situation {
    std::string name;          ///< "balanced; factored; film loose; straps soft", unique within a plan
    int arrangement = -1;      ///< index of the arrangement; -1: no snow
    Limit limit = Limit::strength;
    double permanent_factor = 1;
    double snow_factor = 1;
    Bound film_tension = Bound::low;
    Bound strap_stiffness = Bound::low;
};

/// All situations of a plan with these arrangements: no snow and each arrangement, strength and service, film tension
/// low and high, strap stiffness low and high; in this order, the last one running fastest. Strength situations carry
/// the factors of the plan, service situations 1.0 on both. The tension of the film itself is not factored: its range
/// is looked at from both ends.
[[nodiscard]] std::vector<Situation> situations_of(const Plan& plan, const std::vector<Arrangement>& arrangements);

}  // namespace coverframe
