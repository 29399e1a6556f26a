// SPDX-License-Identifier: BSD-3-Clause
// Loads along members and the other loads beside node forces, on random frames: a frame in more pieces is the same
// frame, and small loads add up. Turning, mirroring and renumbering them is in invariants_test.cpp.
#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>

#include "../close.hpp"
#include "changed_frame.hpp"
#include "coverframe/frame/solve.hpp"

using namespace coverframe;
using namespace coverframe::random_frames;

TEST_CASE("frames: a loaded pole in more pieces is the same pole while its load is small") {
    // In first order the load of a member is exact, also through splices, shear and arms.
    for (unsigned seed = 11001; seed <= 11150; ++seed) {
        CAPTURE(seed);
        Random random(seed);
        Kind kind;
        kind.load = 1e-5;
        kind.all_loads = true;
        Example e;
        add_node(e, {0, 0, 0}, true);
        e.frame.nodes[0].held = {true, true, true, true, true, true};
        const int middle = add_node(e, Vector3d{1.5, 0, 0} + any(random, 0.5), false);
        add_pole(e, random, 0, middle, kind, false);
        const int end = add_node(e, Vector3d{3, 0, 0} + any(random, 0.5), false);
        add_pole(e, random, middle, end, kind, random.chance(0.3));
        e.frame.nodes[at(end)].held = {false, true, true, false, false, false};
        add_all_loads(e, random, kind);
        Example other = e;
        for (std::size_t m = 0; m < e.frame.members.size(); ++m) {
            FrameMember& first = other.frame.members[m];
            FrameMember second = first;
            const Vector3d from = place_of(e.frame, first.from) + Vector3d(first.arm_from.data());
            const Vector3d to = place_of(e.frame, first.to) + Vector3d(first.arm_to.data());
            const double share = random.between(0.3, 0.7);
            first.to = second.from = add_node(other, from + share * (to - from), false);
            first.spring_to = second.spring_from = rigid_end;
            first.arm_to = second.arm_from = {};
            first.free_length = drawn_length(other.frame, first);
            second.free_length = drawn_length(other.frame, second);
            other.frame.members.push_back(second);
            const Vector3d q(e.loads.member_load.data() + 3 * m);
            for (int i = 0; i < 3; ++i) other.loads.member_load.push_back(q(i));
            other.loads.temperature.push_back(e.loads.temperature[m]);
            other.loads.couple.resize(3 * other.frame.nodes.size(), 0.0);
            other.loads.settlement.resize(6 * other.frame.nodes.size(), 0.0);
        }
        const Solution a = solve(e.frame, e.loads);
        const Solution b = solve(other.frame, other.loads);
        REQUIRE_MESSAGE(a.usable(), a.message);
        REQUIRE_MESSAGE(b.usable(), b.message);
        double largest = 0;
        for (const double u : a.displacement) largest = std::max(largest, std::abs(u));
        for (std::size_t i = 0; i < a.displacement.size(); ++i) {
            CHECK(close_abs(b.displacement[i], a.displacement[i], 1e-5 * largest));
        }
        for (std::size_t m = 0; m < a.members.size(); ++m) {
            const MemberForces& first = b.members[m];
            const MemberForces& second = b.members[a.members.size() + m];
            const double share =
                drawn_length(other.frame, other.frame.members[m]) / drawn_length(e.frame, e.frame.members[m]);
            const double size = 1e-4 * kind.load * 100;
            const double length = drawn_length(e.frame, e.frame.members[m]);
            CHECK(close_abs(first.moment_vertical_to, a.members[m].moment_vertical_at(share, length), size));
            CHECK(close_abs(second.moment_level_from, a.members[m].moment_level_at(share, length), size));
            CHECK(close_abs(first.shear_vertical_at(1), a.members[m].shear_vertical_at(share), size));
            CHECK(close_abs(second.axial_at(0), a.members[m].axial_at(share), size));
        }
    }
}

TEST_CASE("frames: small loads of every kind add up") {
    // u(load) - u(-load) is linear but for the cube of the load, on a pretensioned frame far from slack.
    int tried = 0;
    for (unsigned seed = 12001; seed <= 12060; ++seed) {
        CAPTURE(seed);
        Kind kind;
        kind.slack = false;
        kind.load = 0.1;
        kind.all_loads = true;
        const Example e = example(seed, kind);
        FrameLoads rest;
        rest.force = e.loads.force;
        if (!all_taut(solve(e.frame, rest), 50)) continue;
        const double small = 1e-3 / kind.load;
        const auto both_ways = [&](const FrameLoads& more) {
            std::array<Solution, 2> s;
            for (std::size_t way = 0; way < 2; ++way) {
                const double factor = way == 0 ? small : -small;
                FrameLoads loads = more;
                for (std::vector<double>* list : {&loads.couple, &loads.member_load, &loads.temperature,
                                                  &loads.settlement}) {
                    for (double& value : *list) value *= factor;
                }
                loads.force = rest.force;
                s[way] = solve(e.frame, loads, {.force_tolerance = 1e-12});
            }
            std::vector<double> u = s[0].displacement;
            for (std::size_t i = 0; i < u.size(); ++i) u[i] -= s[1].displacement[i];
            return u;
        };
        const std::vector<double> all = both_ways(e.loads);
        std::vector<double> sum(all.size(), 0.0);
        for (int k = 0; k < 4; ++k) {
            FrameLoads one;
            if (k == 0) one.couple = e.loads.couple;
            if (k == 1) one.member_load = e.loads.member_load;
            if (k == 2) one.temperature = e.loads.temperature;
            if (k == 3) one.settlement = e.loads.settlement;
            sum = sum_of(sum, 1, both_ways(one));
        }
        double largest = 0;
        for (const double u : all) largest = std::max(largest, std::abs(u));
        for (std::size_t i = 0; i < all.size(); ++i) CHECK(close_abs(sum[i], all[i], 1e-3 * largest));
        ++tried;
    }
    CHECK(tried > 20);
}
