// SPDX-License-Identifier: BSD-3-Clause
// What must hold for every frame that stands on feet and has loads along its straps, on random supports as in
// invariants_test.cpp.
#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "../close.hpp"
#include "changed_frame.hpp"
#include "coverframe/frame/feet.hpp"

using namespace coverframe;
using namespace coverframe::random_frames;

namespace {

Kind on_feet(unsigned seed) {
    Kind kind;
    kind.feet = true;
    kind.hung = seed % 3 != 0;
    return kind;
}

Kind rough_feet(unsigned seed) {
    Kind kind = on_feet(seed);
    kind.rough = true;
    return kind;
}

}  // namespace

TEST_CASE("feet: loads, reactions and feet are in balance") {
    Count count;
    int lifted = 0;
    int slipping = 0;
    for (unsigned seed = 20001; seed <= 20400; ++seed) {
        CAPTURE(seed);
        const Example e = example(seed, seed % 2 == 0 ? on_feet(seed) : rough_feet(seed));
        const Solution s = solve(e.frame, e.loads);
        count.add(s.usable());
        if (!s.usable()) continue;
        Vector3d force = Vector3d::Zero();
        double sizes = 0;
        for (std::size_t n = 0; n < e.frame.nodes.size(); ++n) {
            const Vector3d all = Vector3d(s.reaction.data() + 6 * n) + Vector3d(e.loads.force.data() + 3 * n);
            force += all;
            sizes += all.norm();
        }
        for (std::size_t m = 0; 3 * m < e.loads.member_load.size(); ++m) {
            const Vector3d load =
                drawn_length(e.frame, e.frame.members[m]) * Vector3d(e.loads.member_load.data() + 3 * m);
            force += load;
            sizes += load.norm();
        }
        CHECK(close_abs(force.norm(), 0.0, 2e-9 * sizes));
        for (std::size_t f = 0; f < s.feet.size(); ++f) {
            const FootForces& foot = s.feet[f];
            const double side = std::hypot(foot.side[0], foot.side[1]);
            CHECK(foot.push >= 0);
            CHECK(side <= e.frame.feet[f].friction * foot.push * (1 + 1e-6) + 1e-6);
            if (foot.slips()) CHECK(close(side, e.frame.feet[f].friction * foot.push, 1e-6));
            lifted += foot.carries ? 0 : 1;
            slipping += foot.slips() ? 1 : 0;
        }
    }
    CHECK(count.usable >= 0.85 * count.all);
    CHECK(lifted > 20);
    CHECK(slipping > 5);
}

TEST_CASE("feet: turned about the vertical, mirrored and renumbered they give the same answer") {
    Count count;
    for (unsigned seed = 21001; seed <= 21200; ++seed) {
        Random random(seed);
        Change turned;
        turned.turn = Eigen::AngleAxisd(random.between(0, 6.28), Vector3d::UnitZ()).toRotationMatrix();
        check_changed(seed, example(seed, on_feet(seed)), turned, false, count);
        Change mirrored;
        mirrored.turn.diagonal() = seed % 2 == 0 ? Vector3d(1, -1, 1) : Vector3d(-1, 1, 1);
        check_changed(seed, example(seed, on_feet(seed)), mirrored, true, count);
        Change units;
        units.length = 1e3;
        units.force = 1e-3;
        check_changed(seed, example(seed, on_feet(seed)), units, false, count);
    }
    CHECK(count.usable >= 0.9 * count.all);
}

TEST_CASE("feet: which feet are lifted and which straps hang slack does not depend on the way the loads came") {
    Count count;
    int lifted = 0;
    for (unsigned seed = 22001; seed <= 22200; ++seed) {
        CAPTURE(seed);
        const Example e = example(seed, on_feet(seed));
        const Solution all = solve(e.frame, e.loads);
        count.add(all.usable());
        if (!all.usable()) continue;
        std::vector<double> down(e.loads.force.size(), 0.0);
        for (std::size_t i = 2; i < down.size(); i += 3) down[i] = e.loads.force[i];
        const std::vector<double> level = sum_of(e.loads.force, -1, down);
        Random random(seed + 7);
        std::vector<double> elsewhere(all.displacement.size(), 0.0);
        for (const int n : e.loose) {
            for (int i = 0; i < 3; ++i) elsewhere[at(6 * n + i)] = random.between(-0.03, 0.03);
        }
        const Solution down_first = solve_under(e, e.loads.force, solve_under(e, down).displacement);
        const Solution level_first = solve_under(e, e.loads.force, solve_under(e, level).displacement);
        const Solution from_elsewhere = solve(e.frame, e.loads, {}, elsewhere);
        for (const Solution* s : {&down_first, &level_first, &from_elsewhere}) {
            CHECK_MESSAGE(s->usable(), s->message);
            if (!s->usable()) continue;
            CHECK(close_abs(s->energy, all.energy, 1e-8 * largest_force(e, all)));
            for (std::size_t m = 0; m < all.members.size(); ++m) {
                CHECK(close_abs(s->members[m].axial, all.members[m].axial, same_force * largest_force(e, all)));
            }
            for (std::size_t f = 0; f < all.feet.size(); ++f) {
                CHECK(close_abs(s->feet[f].push, all.feet[f].push, same_force * largest_force(e, all)));
                if (all.feet[f].push > 1e-3) CHECK(s->feet[f].carries);
                if (!all.feet[f].carries) CHECK(s->feet[f].push < 1e-3);
            }
        }
        lifted += static_cast<int>(std::ranges::count_if(all.feet, [](const FootForces& f) { return !f.carries; }));
    }
    CHECK(count.usable >= 0.9 * count.all);
    CHECK(lifted > 20);
}
