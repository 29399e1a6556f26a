// SPDX-License-Identifier: BSD-3-Clause
#include "frame/kernel/foot.hpp"

#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <cmath>
#include <limits>

#include "close.hpp"
#include "frame/random_frame.hpp"

using namespace coverframe;
using coverframe::kernel::foot_state;
using coverframe::kernel::FootState;
using Eigen::Vector3d;

namespace {

Foot pad() { return {.node = 0, .stiffness = 2e5, .gap = 0.003, .friction = 0.3, .side_stiffness = 5e4}; }

}  // namespace

TEST_CASE("foot: pushes up by k times what it is pressed, not before the gap is closed and never down") {
    const FootState pressed = foot_state(pad(), {0, 0, -0.005}, 0);
    CHECK(close(pressed.push, 2e5 * 0.002, 1e-12));
    CHECK(close(pressed.force.z(), 400, 1e-12));
    CHECK(close(pressed.energy, 0.5 * 400 * 0.002, 1e-12));
    for (const double uz : {-0.003, -0.001, 0.0, 0.1}) {
        const FootState lifted = foot_state(pad(), {0.01, 0, uz}, 0);
        CHECK(lifted.push == 0);
        CHECK(lifted.force.norm() == 0);
        CHECK(lifted.energy == 0);
        CHECK(lifted.tangent.norm() == 0);
    }
}

TEST_CASE("foot: holds sideways like a spring up to mu N, then with mu N towards where it was drawn") {
    const double most = 120;  // reached at 2.4 mm
    const FootState holds = foot_state(pad(), {0.0012, -0.0016, -0.005}, most);
    CHECK_FALSE(holds.slips);
    CHECK(close(holds.force.x(), -5e4 * 0.0012, 1e-12));
    CHECK(close(holds.force.y(), 5e4 * 0.0016, 1e-12));
    const FootState slips = foot_state(pad(), {0.006, -0.008, -0.005}, most);
    CHECK(slips.slips);
    CHECK(close(slips.force.x(), -0.6 * most, 1e-12));
    CHECK(close(slips.force.y(), 0.8 * most, 1e-12));
    CHECK_FALSE(foot_state(pad(), {0.006, -0.008, 0}, std::numeric_limits<double>::infinity()).slips);
    Foot smooth = pad();
    smooth.friction = 0;
    CHECK(foot_state(smooth, {0.006, -0.008, 0}, most).force.norm() == 0);
    // no step in energy or force where it begins to slip
    const FootState before = foot_state(pad(), {0.0024 * (1 - 1e-12), 0, 0}, most);
    const FootState after = foot_state(pad(), {0.0024 * (1 + 1e-12), 0, 0}, most);
    CHECK(close(before.energy, after.energy, 1e-11));
    CHECK(close(before.force.x(), after.force.x(), 1e-11));
}

TEST_CASE("foot: force and tangent are the slopes of the energy, and it is convex") {
    int slips = 0;
    int pushes = 0;
    for (unsigned seed = 1; seed <= 200; ++seed) {
        CAPTURE(seed);
        random_frames::Random random(seed);
        const Foot foot{0, random.between(1e4, 1e6), random.between(0, 0.004), random.between(0.1, 0.6),
                        random.between(1e4, 1e6)};
        const Vector3d u{random.between(-0.01, 0.01), random.between(-0.01, 0.01), random.between(-0.01, 0.005)};
        const double most = random.between(0, 3000);
        const FootState s = foot_state(foot, u, most);
        slips += s.slips ? 1 : 0;
        pushes += s.push > 0 ? 1 : 0;
        CHECK(Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d>(s.tangent).eigenvalues()(0) >= -1e-6);
        const double step = 1e-7;
        if (std::abs(u.z() + foot.gap) < 2 * step) continue;
        for (int i = 0; i < 3; ++i) {
            const Vector3d d = step * Vector3d::Unit(i);
            const FootState more = foot_state(foot, u + d, most);
            const FootState less = foot_state(foot, u - d, most);
            if (more.slips != less.slips) continue;
            CHECK(close_abs((less.energy - more.energy) / (2 * step), s.force(i), 1e-4 + 1e-6 * s.force.norm()));
            const Vector3d slope = (less.force - more.force) / (2 * step);
            CHECK(close_abs((slope - s.tangent.col(i)).norm(), 0, 1e-5 * (foot.stiffness + foot.side_stiffness)));
        }
    }
    CHECK(slips > 50);
    CHECK(pushes > 50);
}
