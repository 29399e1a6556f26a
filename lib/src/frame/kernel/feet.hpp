// SPDX-License-Identifier: BSD-3-Clause
// The feet of a frame, with the greatest sideways force of each: mu times the push it had in a given state. Plain SI
// doubles. The method is told in frame/feet.hpp.
#pragma once

#include <Eigen/Core>
#include <vector>

#include "coverframe/frame/solve.hpp"
#include "frame/kernel/foot.hpp"

namespace coverframe::kernel {

class Feet {
public:
    explicit Feet(const Frame& frame) : feet_(frame.feet) { hold_all(); }

    /// Whether any has friction.
    [[nodiscard]] bool rough() const;
    /// Feet with friction hold whatever comes, until their pushes are taken.
    void hold_all();
    /// What taking the pushes has changed.
    struct Change {
        double largest = 0;  ///< of a greatest sideways force [N]; infinite for the first time
        int node = 0;        ///< of that foot
    };
    /// Takes the pushes that the feet have where the frame's displacements are u.
    Change take_pushes(const Eigen::VectorXd& u);

    [[nodiscard]] FootState state(std::size_t foot, const Eigen::VectorXd& u) const;
    [[nodiscard]] FootForces forces(std::size_t foot, const Eigen::VectorXd& u) const;

private:
    std::vector<Foot> feet_;
    std::vector<double> most_;  ///< greatest sideways force of each [N]
};

}  // namespace coverframe::kernel
