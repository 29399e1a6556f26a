// SPDX-License-Identifier: BSD-3-Clause
#include "balance.hpp"

#include <Eigen/Dense>

#include "frame/kernel/turn.hpp"

namespace coverframe::kernel {

namespace {

using Eigen::Index;
using Eigen::Vector3d;
using Eigen::VectorXd;

/// Adds generalised forces on all nodes, n_nodes by 6, to a force and a moment about the origin.
void sum_of(const Frame& frame, const VectorXd& u, const VectorXd& on_nodes, std::array<double, 3>& force,
            std::array<double, 3>& moment) {
    Vector3d forces = Vector3d::Zero();
    Vector3d moments = Vector3d::Zero();
    for (std::size_t n = 0; n < frame.nodes.size(); ++n) {
        const auto first = static_cast<Index>(6 * n);
        const Vector3d f = on_nodes.segment<3>(first);
        const Vector3d m = on_nodes.segment<3>(first + 3);
        const Vector3d place = Vector3d(frame.nodes[n].at.data()) + u.segment<3>(first);
        forces += f;
        moments += place.cross(f);
        if (m.isZero(0)) continue;
        moments += Turn(u.segment<3>(first + 3)).rate().transpose().fullPivLu().solve(m);
    }
    Vector3d::Map(force.data()) = forces;
    Vector3d::Map(moment.data()) = moments;
}

struct LoadsNow {
    VectorXd on_nodes;     ///< n_nodes by 6 [N], [N m]
    double potential = 0;  ///< [N m]
};

LoadsNow loads_at_nodes(const VectorXd& u, const FrameLoads& loads) {
    LoadsNow now{VectorXd::Zero(u.size()), 0};
    const auto add = [&](const std::vector<double>& forces, Index first) {
        for (std::size_t i = 0; i < forces.size(); ++i) {
            const auto full = static_cast<Index>(6 * (i / 3) + i % 3) + first;
            now.on_nodes(full) += forces[i];
            now.potential -= forces[i] * u(full);
        }
    };
    add(loads.force, 0);
    add(loads.couple, 3);
    for (const FrameLoads::Spring& spring : loads.springs) {
        const Vector3d moved = u.segment<3>(6 * spring.node) - Vector3d(spring.u0.data());
        const Vector3d back = Eigen::Matrix3d(spring.stiffness.data()) * moved;
        const Vector3d force0(spring.force0.data());
        now.on_nodes.segment<3>(6 * spring.node) += force0 - back;
        now.potential += 0.5 * moved.dot(back) - force0.dot(moved);
    }
    return now;
}

LoadsNow loads_now(const Assembly& assembly, const VectorXd& u, const FrameLoads& loads) {
    LoadsNow now = loads_at_nodes(u, loads);
    if (loads.member_load.empty()) return now;
    FrameLoads bare;
    bare.temperature = loads.temperature;
    FrameLoads along = bare;
    along.member_load = loads.member_load;
    Assembly::State with;
    Assembly::State without;
    assembly.evaluate(u, along, with);
    assembly.evaluate(u, bare, without);
    now.on_nodes += without.gradient - with.gradient;
    now.potential += with.energy - without.energy;
    return now;
}

}  // namespace

void add_up(const Frame& frame, const Assembly& assembly, const VectorXd& u, const FrameLoads& loads,
            Solution& solution) {
    const LoadsNow now = loads_now(assembly, u, loads);
    FrameBalance& balance = solution.balance;
    sum_of(frame, u, now.on_nodes, balance.load_force, balance.load_moment);
    sum_of(frame, u, VectorXd::Map(solution.reaction.data(), u.size()), balance.reaction_force,
           balance.reaction_moment);
    solution.load_potential = now.potential;
    solution.strain_energy = solution.energy - now.potential;
}

}  // namespace coverframe::kernel
