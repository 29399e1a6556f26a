// SPDX-License-Identifier: BSD-3-Clause
#include "feet.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace coverframe::kernel {

bool Feet::rough() const {
    return std::ranges::any_of(feet_, [](const Foot& foot) { return foot.friction > 0; });
}

void Feet::hold_all() { most_.assign(feet_.size(), std::numeric_limits<double>::infinity()); }

Feet::Change Feet::take_pushes(const Eigen::VectorXd& u) {
    Change change;
    for (std::size_t f = 0; f < feet_.size(); ++f) {
        const double most = feet_[f].friction * state(f, u).push;
        const double moved = std::abs(most - most_[f]);
        if (feet_[f].friction > 0 && moved > change.largest) change = {moved, feet_[f].node};
        most_[f] = most;
    }
    return change;
}

FootState Feet::state(std::size_t foot, const Eigen::VectorXd& u) const {
    return foot_state(feet_[foot], u.segment<3>(6 * feet_[foot].node), most_[foot]);
}

FootForces Feet::forces(std::size_t foot, const Eigen::VectorXd& u) const {
    const FootState s = state(foot, u);
    FootForces f;
    f.push = s.push;
    f.carries = s.push > 0;
    f.side = {s.force.x(), s.force.y()};
    if (s.slips && f.carries) {
        f.slip = u.segment<2>(6 * feet_[foot].node).norm() - most_[foot] / feet_[foot].side_stiffness;
    }
    return f;
}

}  // namespace coverframe::kernel
