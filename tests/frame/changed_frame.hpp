// SPDX-License-Identifier: BSD-3-Clause
// A random frame turned, mirrored, renumbered or in other units, and how far its answer is from the changed one.
#pragma once

#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>
#include <utility>
#include <vector>

#include "../close.hpp"
#include "random_frame.hpp"

namespace coverframe::random_frames {

using Eigen::Matrix3d;

inline double largest_force(const Example& e, const Solution& s) {
    double largest = 1;
    for (const MemberForces& f : s.members) largest = std::max(largest, std::abs(f.axial));
    for (const double f : e.loads.force) largest = std::max(largest, std::abs(f));
    return largest;
}

inline Vector3d moved(const Solution& s, int node) { return Vector3d(s.displacement.data() + 6 * node); }
inline Vector3d turned(const Solution& s, int node) { return Vector3d(s.displacement.data() + 6 * node + 3); }

/// How a frame became another one.
struct Change {
    Matrix3d turn = Matrix3d::Identity();  ///< of places and forces; a reflection has determinant -1
    double length = 1;                     ///< numbers of lengths are multiplied by this
    double force = 1;
    std::vector<int> node;  ///< number of each node in the other frame; empty: as it was
    std::vector<int> member;
};

inline constexpr double same_place = 2e-8;  // of displacements [m] and turns [rad]
inline constexpr double same_force = 1e-7;  // of forces, relative to the largest

/// Largest difference between `b` and the changed `a`, as a share of what is allowed.
inline double worst_difference(const Example& e, const Solution& a, const Solution& b, const Change& change) {
    double worst = 0;
    for (int n = 0; n < static_cast<int>(e.frame.nodes.size()); ++n) {
        if (std::ranges::count(a.loose, n) > 0) continue;  // its place is one of many
        const int other = change.node.empty() ? n : change.node[at(n)];
        const Vector3d place = change.length * (change.turn * moved(a, n)) - moved(b, other);
        const Vector3d turn = change.turn.determinant() * (change.turn * turned(a, n)) - turned(b, other);
        worst = std::max({worst, place.norm() / (same_place * change.length), turn.norm() / same_place});
    }
    const double allowed = same_force * largest_force(e, a);
    for (std::size_t m = 0; m < a.members.size(); ++m) {
        const MemberForces& other = b.members[change.member.empty() ? m : at(change.member[m])];
        worst = std::max(worst, std::abs(other.axial / change.force - a.members[m].axial) / allowed);
    }
    return worst;
}

inline std::array<double, 3> triple(const Vector3d& v) { return {v.x(), v.y(), v.z()}; }

/// Three numbers of `list` from `first` on, turned and scaled; nothing if there is no list.
inline void carry(const std::vector<double>& list, std::size_t first, const Matrix3d& turn, std::vector<double>& to,
           std::size_t there) {
    if (!list.empty()) put(to, there, turn * Vector3d(list.data() + first));
}

inline FrameMember changed(const FrameMember& given, const Change& change, bool swap_ends) {
    FrameMember member = given;
    const double bend = change.force * change.length * change.length;
    if (!change.node.empty()) {
        member.from = change.node[at(member.from)];
        member.to = change.node[at(member.to)];
    }
    member.arm_from = triple(change.length * (change.turn * Vector3d(given.arm_from.data())));
    member.arm_to = triple(change.length * (change.turn * Vector3d(given.arm_to.data())));
    if (swap_ends) {
        std::swap(member.from, member.to);
        std::swap(member.spring_from, member.spring_to);
        std::swap(member.arm_from, member.arm_to);
    }
    member.spring_from *= change.force * change.length;
    member.spring_to *= change.force * change.length;
    member.axial_stiffness *= change.force;
    member.free_length *= change.length;
    BendingStiffness& b = member.bending;
    b = {b.EI_vertical * bend, b.EI_level * bend, b.GA_vertical * change.force, b.GA_level * change.force, b.GJ * bend};
    return member;
}

/// Turns, scales, renumbers and turns round the members of an example.
inline Example changed(const Example& e, const Change& change, bool swap_ends = false) {
    Example other = e;
    const Matrix3d about = change.turn.determinant() * change.turn;
    for (std::size_t n = 0; n < e.frame.nodes.size(); ++n) {
        const std::size_t to = change.node.empty() ? n : at(change.node[n]);
        other.frame.nodes[to] = e.frame.nodes[n];
        other.frame.nodes[to].at = triple(change.length * (change.turn * place_of(e.frame, static_cast<int>(n))));
        carry(e.loads.force, 3 * n, change.force * change.turn, other.loads.force, 3 * to);
        carry(e.loads.couple, 3 * n, change.force * change.length * about, other.loads.couple, 3 * to);
        carry(e.loads.settlement, 6 * n, change.length * change.turn, other.loads.settlement, 6 * to);
        carry(e.loads.settlement, 6 * n + 3, about, other.loads.settlement, 6 * to + 3);
    }
    for (std::size_t m = 0; m < e.frame.members.size(); ++m) {
        const std::size_t to = change.member.empty() ? m : at(change.member[m]);
        other.frame.members[to] = changed(e.frame.members[m], change, swap_ends && m % 2 == 0);
        carry(e.loads.member_load, 3 * m, change.force / change.length * change.turn, other.loads.member_load, 3 * to);
        if (!e.loads.temperature.empty()) other.loads.temperature[to] = e.loads.temperature[m];
    }
    for (Foot& foot : other.frame.feet) {
        if (!change.node.empty()) foot.node = change.node[at(foot.node)];
        foot.stiffness *= change.force / change.length;
        foot.side_stiffness *= change.force / change.length;
        foot.gap *= change.length;
    }
    for (NodeSpring& spring : other.frame.springs) {  // alike in all directions
        if (!change.node.empty()) spring.node = change.node[at(spring.node)];
        for (std::size_t d = 0; d < 6; ++d) {
            spring.stiffness[d] *= change.force * (d < 3 ? 1 / change.length : change.length);
        }
    }
    return other;
}

/// Every other frame has all loads on it.
inline Example any_example(unsigned seed, Kind kind = {}) {
    kind.all_loads = seed % 2 == 1;
    return example(seed, kind);
}

/// How many of a batch of frames were in equilibrium, so that a test cannot pass by solving nothing.
struct Count {
    int all = 0;
    int usable = 0;
    void add(bool good) { ++all, usable += good ? 1 : 0; }
};

inline void check_changed(unsigned seed, const Example& e, const Change& change, bool swap_ends, Count& count) {
    CAPTURE(seed);
    const Solution a = solve(e.frame, e.loads);
    const Example other = changed(e, change, swap_ends);
    const Solution b = solve(other.frame, other.loads);
    CHECK_MESSAGE(a.status == b.status, a.message, " / ", b.message);
    count.add(a.usable());
    if (!a.usable() || !b.usable()) return;
    CHECK(worst_difference(e, a, b, change) <= 1);
    CHECK(close_abs(b.energy / (change.force * change.length), a.energy, 1e-9 * largest_force(e, a)));
}

inline Solution solve_under(const Example& e, const std::vector<double>& force, const std::vector<double>& start = {}) {
    FrameLoads loads = e.loads;
    loads.force = force;
    return solve(e.frame, loads, {}, start);
}

inline std::vector<double> sum_of(const std::vector<double>& a, double factor, const std::vector<double>& b) {
    std::vector<double> sum = a;
    for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += factor * b[i];
    return sum;
}

inline bool all_taut(const Solution& s, double margin) {
    return s.usable() &&
           std::ranges::all_of(s.members, [&](const MemberForces& f) { return std::abs(f.axial) > margin; });
}

}  // namespace coverframe::random_frames
