// SPDX-License-Identifier: BSD-3-Clause
// What must hold for every frame, whatever its numbers: on random supports like those of covers, with fixed seeds.
// Nothing here is compared with a stored answer: a frame is compared with itself turned, mirrored, renumbered, cut into
// more pieces or written in other units, and with the laws of statics (equilibrium, Maxwell and Betti, Clapeyron).
//
// The bending of poles is linear in their drawn axes while their axial force follows the displaced ones (frame.hpp).
// Moments about a point therefore balance to round-off for straps and uprights only; with poles they are out by shear
// times displacement, and that is the bound taken here.
//
// Every other frame of those that are turned, mirrored, renumbered or written in other units has all loads on it: along
// members, couples, warmth, settlements, and splices that give, springs against the boat, arms.
//
// Left out: poles round a corner with a free end, cut into many pieces, that swing by several hundredths of a radian.
// There solve() may end as iteration_limit, 1e-8 to 1e-4 of the load short of balance, where its energy cannot be told
// from round-off. With both ends supported, as here and in covers, it has not been seen.
#include "coverframe/frame/solve.hpp"

#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numeric>

#include "../close.hpp"
#include "changed_frame.hpp"
#include "random_frame.hpp"

using namespace coverframe;
using namespace coverframe::random_frames;

namespace {

std::vector<int> shuffled(Random& random, std::size_t size) {
    std::vector<int> order(size);
    std::iota(order.begin(), order.end(), 0);
    for (int i = static_cast<int>(size) - 1; i > 0; --i) std::swap(order[at(i)], order[at(random.whole(0, i))]);
    return order;
}

/// Force times displacement, over all nodes.
double work(const std::vector<double>& force, const Solution& s) {
    double sum = 0;
    for (std::size_t i = 0; i < force.size(); ++i) sum += force[i] * s.displacement[i / 3 * 6 + i % 3];
    return sum;
}

std::vector<double> force_at(const Example& e, int node, const Vector3d& force) {
    std::vector<double> all(e.loads.force.size(), 0.0);
    for (int i = 0; i < 3; ++i) all[at(3 * node + i)] = force(i);
    return all;
}

/// Whether every free node hangs on something. Where all straps of an unloaded node are slack its place is any of many.
bool all_held(const Example& e, const Solution& s) {
    return std::ranges::all_of(e.loose, [&](int node) {
        for (std::size_t m = 0; m < s.members.size(); ++m) {
            const FrameMember& member = e.frame.members[m];
            if (member.from != node && member.to != node) continue;
            if (member.kind == MemberKind::pole || std::abs(s.members[m].axial) > 1) return true;
        }
        return false;
    });
}

}  // namespace

TEST_CASE("frames: loads and reactions are in balance, forces and moments") {
    Count count;
    for (unsigned seed = 1; seed <= 700; ++seed) {
        CAPTURE(seed);
        Kind kind;
        kind.poles = seed % 2 == 0;
        kind.all_loads = seed % 4 < 2;
        const Example e = example(seed, kind);
        const Solution s = solve(e.frame, e.loads);
        count.add(s.usable());
        if (!s.usable()) continue;
        Vector3d force = Vector3d::Zero();
        Vector3d moment = Vector3d::Zero();
        double sizes = 0;
        double furthest = 0;
        for (int n = 0; n < static_cast<int>(e.frame.nodes.size()); ++n) {
            const Vector3d reaction(s.reaction.data() + 6 * n);
            const Vector3d all = reaction + Vector3d(e.loads.force.data() + 3 * n);
            force += all;
            moment += (place_of(e.frame, n) + moved(s, n)).cross(all) + Vector3d(s.reaction.data() + 6 * n + 3);
            if (kind.all_loads) moment += Vector3d(e.loads.couple.data() + 3 * n);
            sizes += all.norm();
            furthest = std::max(furthest, moved(s, n).norm());
        }
        for (std::size_t m = 0; kind.all_loads && m < e.frame.members.size(); ++m) {
            const FrameMember& member = e.frame.members[m];
            const Vector3d all = drawn_length(e.frame, member) * Vector3d(e.loads.member_load.data() + 3 * m);
            const auto end = [&](int node, const std::array<double, 3>& arm) -> Vector3d {
                return place_of(e.frame, node) + moved(s, node) + Vector3d(arm.data());
            };
            force += all;
            moment += 0.5 * (end(member.from, member.arm_from) + end(member.to, member.arm_to)).cross(all);
            sizes += all.norm();
        }
        CHECK(close_abs(force.norm(), 0.0, 1e-9 * sizes));
        const bool bends =
            std::ranges::any_of(e.frame.members, [](const FrameMember& m) { return m.kind == MemberKind::pole; });
        CHECK(close_abs(moment.norm(), 0.0, 1e-8 * sizes + (bends ? furthest * sizes : 0)));
    }
    CHECK(count.usable >= 0.9 * count.all);
}

TEST_CASE("frames: turned about the vertical they give the same answer, turned") {
    Count count;
    for (unsigned seed = 1001; seed <= 1300; ++seed) {
        Random random(seed);
        Change change;
        change.turn = Eigen::AngleAxisd(random.between(0, 6.28), Vector3d::UnitZ()).toRotationMatrix();
        check_changed(seed, any_example(seed), change, false, count);
    }
    CHECK(count.usable >= 0.9 * count.all);
}

TEST_CASE("frames: with straps, uprights and round poles they may be turned about any axis") {
    Count count;
    for (unsigned seed = 2001; seed <= 2300; ++seed) {
        Random random(seed);
        Kind kind;
        kind.round = true;
        const Vector3d axis =
            Vector3d{random.between(-1, 1), random.between(-1, 1), random.between(-1, 1)}.normalized();
        Change change;
        change.turn = Eigen::AngleAxisd(random.between(0.1, 6.1), axis).toRotationMatrix();
        check_changed(seed, any_example(seed, kind), change, false, count);
    }
    CHECK(count.usable >= 0.9 * count.all);
}

TEST_CASE("frames: mirrored they give the mirrored answer") {
    Count count;
    for (unsigned seed = 3001; seed <= 3250; ++seed) {
        Change change;
        change.turn.diagonal() = seed % 2 == 0 ? Vector3d(1, -1, 1) : Vector3d(-1, 1, 1);
        check_changed(seed, any_example(seed), change, false, count);
    }
    CHECK(count.usable >= 0.9 * count.all);
}

TEST_CASE("frames: the order of nodes and members, and which end comes first, does not matter") {
    Count count;
    for (unsigned seed = 4001; seed <= 4250; ++seed) {
        const Example e = any_example(seed);
        Random random(seed);
        Change change;
        change.node = shuffled(random, e.frame.nodes.size());
        change.member = shuffled(random, e.frame.members.size());
        check_changed(seed, e, change, true, count);
    }
    CHECK(count.usable >= 0.9 * count.all);
}

TEST_CASE("frames: in millimetres and kilonewtons the numbers are the same") {
    Count count;
    for (unsigned seed = 5001; seed <= 5250; ++seed) {
        Change change;
        change.length = 1e3;
        change.force = 1e-3;
        check_changed(seed, any_example(seed), change, false, count);
    }
    CHECK(count.usable >= 0.9 * count.all);
}

TEST_CASE("frames: a taut strap in several pieces is the same strap") {
    Count count;
    int cut = 0;
    for (unsigned seed = 6001; seed <= 6200; ++seed) {
        CAPTURE(seed);
        const Example e = example(seed);
        const Solution a = solve(e.frame, e.loads);
        count.add(a.usable());
        if (!a.usable()) continue;
        Random random(seed);
        Example other = e;
        for (std::size_t m = 0; m < e.frame.members.size(); ++m) {
            if (e.frame.members[m].kind != MemberKind::strap || a.members[m].axial < 20) continue;
            const FrameMember whole = other.frame.members[m];
            const double share = random.between(0.2, 0.8);
            const Vector3d from = place_of(e.frame, whole.from);
            const int knot = add_node(other, from + share * (place_of(e.frame, whole.to) - from), false);
            other.frame.members[m].to = knot;
            other.frame.members[m].free_length = share * whole.free_length;
            add_member(other, MemberKind::strap, knot, whole.to, whole.axial_stiffness, 0).free_length =
                (1 - share) * whole.free_length;
            ++cut;
        }
        const Solution b = solve(other.frame, other.loads);
        CHECK_MESSAGE(b.usable(), b.message);
        if (b.usable()) CHECK(worst_difference(e, a, b, {}) <= 1);
    }
    CHECK(count.usable >= 0.9 * count.all);
    CHECK(cut > 800);
}

TEST_CASE("frames: a pole in more pieces is the same pole while its axial force is small") {
    // With an axial force a longer piece misses its own bow, by design (frame.hpp); hence poles alone, hardly loaded.
    for (unsigned seed = 7001; seed <= 7200; ++seed) {
        CAPTURE(seed);
        Random random(seed);
        Kind kind;
        kind.load = 1e-5;
        Example e;
        add_node(e, {0, 0, 0}, true);
        e.frame.nodes[0].held = {true, true, true, true, true, true};
        const int middle =
            add_node(e, {random.between(1, 2), random.between(-0.5, 0.5), random.between(-0.5, 0.5)}, false);
        add_pole(e, random, 0, middle, kind, false);
        const int end = add_node(e, {3, random.between(-0.5, 0.5), random.between(-0.5, 0.5)}, false);
        add_pole(e, random, middle, end, kind, random.chance(0.3));
        e.frame.nodes[at(end)].held = {false, true, true, false, false, false};
        push(e, middle, 1e-3 * Vector3d{random.between(-1, 1), random.between(-1, 1), random.between(-1, 1)});
        Example other = e;
        for (std::size_t m = 0; m < e.frame.members.size(); ++m) {
            const FrameMember whole = other.frame.members[m];
            const int knot =
                add_node(other, 0.5 * (place_of(e.frame, whole.from) + place_of(e.frame, whole.to)), false);
            FrameMember& second = add_member(other, MemberKind::pole, knot, whole.to, whole.axial_stiffness, 0);
            second.bending = whole.bending;
            other.frame.members[m].to = knot;
            other.frame.members[m].free_length = drawn_length(other.frame, other.frame.members[m]);
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
    }
}

TEST_CASE("frames: small loads add up, act on each other alike, and leave half their work as energy") {
    // Small loads on a pretensioned frame far from slack: u(f) - u(-f) is linear but for the cube of f. Maxwell and
    // Betti: f . u(g) = g . u(f). Clapeyron: the potential energy of the added load is minus half its work.
    int tried = 0;
    for (unsigned seed = 8001; seed <= 8200; ++seed) {
        CAPTURE(seed);
        Kind kind;
        kind.slack = false;
        kind.load = 0.3;
        const Example e = example(seed, kind);
        const Solution rest = solve(e.frame, e.loads);
        if (!all_taut(rest, 20)) continue;
        ++tried;
        Random random(seed + 1);
        std::vector<std::vector<double>> small;
        for (int k = 0; k < 2; ++k) {
            const int node = e.loose[at(random.whole(0, static_cast<int>(e.loose.size()) - 1))];
            small.push_back(
                force_at(e, node, {random.between(-0.2, 0.2), random.between(-0.2, 0.2), random.between(-0.2, 0.2)}));
        }
        small.push_back(sum_of(small[0], 1, small[1]));
        std::vector<std::vector<double>> answer;
        for (const std::vector<double>& f : small) {
            const Solution more = solve_under(e, sum_of(e.loads.force, 1, f), rest.displacement);
            const Solution less = solve_under(e, sum_of(e.loads.force, -1, f), rest.displacement);
            REQUIRE_MESSAGE(more.usable(), more.message);
            REQUIRE_MESSAGE(less.usable(), less.message);
            std::vector<double> half = sum_of(more.displacement, -1, less.displacement);
            for (double& u : half) u *= 0.5;
            answer.push_back(half);
            const double done = work(f, more) - work(f, rest);
            const double stored = more.energy - rest.energy + work(f, rest);
            CHECK(close_abs(stored, -0.5 * done, 0.01 * std::abs(done) + 1e-12));
        }
        double largest = 0;
        for (const double u : answer[2]) largest = std::max(largest, std::abs(u));
        for (std::size_t i = 0; i < answer[2].size(); ++i) {
            CHECK(close_abs(answer[0][i] + answer[1][i], answer[2][i], 1e-4 * largest));
        }
        Solution one;
        Solution two;
        one.displacement = answer[0];
        two.displacement = answer[1];
        const double there = work(small[0], two);
        const double size = std::sqrt(std::abs(work(small[0], one) * work(small[1], two)));
        CHECK(close_abs(work(small[1], one), there, 1e-4 * size));
    }
    CHECK(tried > 100);
}

TEST_CASE("frames: which straps are slack does not depend on the way the loads came") {
    Count count;
    int slack = 0;
    for (unsigned seed = 9001; seed <= 9250; ++seed) {
        CAPTURE(seed);
        const Example e = example(seed);
        const Solution all = solve(e.frame, e.loads);
        count.add(all.usable());
        if (!all.usable()) continue;
        std::vector<double> down(e.loads.force.size(), 0.0);
        for (std::size_t i = 2; i < down.size(); i += 3) down[i] = e.loads.force[i];
        const std::vector<double> level = sum_of(e.loads.force, -1, down);
        Random random(seed + 7);
        std::vector<double> elsewhere(all.displacement.size(), 0.0);
        for (const int n : e.loose) {
            for (int i = 0; i < 3; ++i) elsewhere[at(6 * n + i)] = random.between(-0.05, 0.05);
        }
        const Solution down_first = solve_under(e, e.loads.force, solve_under(e, down).displacement);
        const Solution level_first = solve_under(e, e.loads.force, solve_under(e, level).displacement);
        const Solution from_elsewhere = solve(e.frame, e.loads, {}, elsewhere);
        for (const Solution* s : {&down_first, &level_first, &from_elsewhere}) {
            CHECK_MESSAGE(s->usable(), s->message);
            if (!s->usable()) continue;
            CHECK(worst_difference(e, all, *s, {}) <= 1);
            for (std::size_t m = 0; m < all.members.size(); ++m) {
                if (std::abs(all.members[m].axial) > 1e-3) CHECK(s->members[m].active);
                if (!all.members[m].active) CHECK(std::abs(s->members[m].axial) < 1e-3);
            }
        }
        slack += static_cast<int>(std::ranges::count_if(all.members, [](const MemberForces& f) { return !f.active; }));
    }
    CHECK(count.usable >= 0.9 * count.all);
    CHECK(slack > 100);
}

TEST_CASE("frames: the energy that a load gives up is its work, along either of two ways") {
    // d(energy)/d(share) = - f . u(share), also where straps go slack, for the energy has a continuous slope there.
    // Simpson over each leg; slack makes a kink in u, hence the tolerance. The energy is the least one, so over a step
    // df of the load it falls by no less than df . u before and no more than df . u after the step.
    int tried = 0;
    for (unsigned seed = 10001; seed <= 10060; ++seed) {
        CAPTURE(seed);
        const Example e = example(seed);
        const std::vector<double> zero(e.loads.force.size(), 0.0);
        std::vector<double> first(zero.size(), 0.0);
        for (std::size_t i = 2; i < first.size(); i += 3) first[i] = e.loads.force[i];
        const std::vector<double> second = sum_of(e.loads.force, -1, first);
        const Solution empty = solve_under(e, zero);
        const Solution full = solve(e.frame, e.loads);
        if (!empty.usable() || !full.usable() || !all_held(e, empty)) continue;
        const double rounding = 1e-11 * largest_force(e, full);
        bool usable = true;
        for (const bool swapped : {false, true}) {
            std::vector<double> base = zero;
            Solution before = empty;
            double given = 0;
            double sizes = 0;
            for (const std::vector<double>& leg : {swapped ? second : first, swapped ? first : second}) {
                constexpr int intervals = 64;
                for (int k = 0; k <= intervals && usable; ++k) {
                    Solution s =
                        solve_under(e, sum_of(base, static_cast<double>(k) / intervals, leg), before.displacement);
                    usable = s.usable();
                    const double fall = before.energy - s.energy;
                    if (k > 0 && usable) {
                        CHECK(fall >= work(leg, before) / intervals - rounding);
                        CHECK(fall <= work(leg, s) / intervals + rounding);
                    }
                    const double weight = (k == 0 || k == intervals ? 1 : (k % 2 == 1 ? 4 : 2)) / (3.0 * intervals);
                    given += weight * work(leg, s);
                    sizes += weight * std::abs(work(leg, s));
                    before = std::move(s);
                }
                base = sum_of(base, 1, leg);
            }
            if (usable) CHECK(close_abs(full.energy - empty.energy, -given, 2e-3 * sizes));
        }
        tried += usable ? 1 : 0;
    }
    CHECK(tried > 50);
}
