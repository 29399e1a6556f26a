// SPDX-License-Identifier: BSD-3-Clause
// Straps with a load along their length, in a frame; and nodes that hang loose. The strap itself: catenary_test.cpp.
#include <doctest/doctest.h>

#include <cmath>

#include "close.hpp"
#include "coverframe/frame/buckling.hpp"
#include "coverframe/frame/solve.hpp"

using namespace coverframe;

namespace {

constexpr std::array<bool, 6> fixed{true, true, true, false, false, false};

FrameMember strap(int from, int to, double EA, double L0) {
    FrameMember m;
    m.name = "strap " + std::to_string(from);
    m.kind = MemberKind::strap;
    m.from = from;
    m.to = to;
    m.axial_stiffness = EA;
    m.free_length = L0;
    return m;
}

/// A strap of free length L0 from (0, 0, 0) to (3, 0, 0.4) in pieces, with w N/m of its free length on it.
Frame line(int pieces, double L0) {
    Frame f;
    for (int i = 0; i <= pieces; ++i) {
        const double s = static_cast<double>(i) / pieces;
        const bool end = i == 0 || i == pieces;
        f.nodes.push_back({"n" + std::to_string(i), {3 * s, 0, 0.4 * s}, end ? fixed : std::array<bool, 6>{}});
    }
    for (int i = 0; i < pieces; ++i) f.members.push_back(strap(i, i + 1, 6e4, L0 / pieces));
    return f;
}

/// `w` down and `side` to starboard, per free length.
FrameLoads along(const Frame& f, double w, double side) {
    FrameLoads loads;
    for (const FrameMember& m : f.members) {
        const double share = m.free_length / drawn_length(f, m);
        loads.member_load.insert(loads.member_load.end(), {0, side * share, -w * share});
    }
    return loads;
}

/// The same by halves at the nodes.
FrameLoads lumped(const Frame& f, double w, double side) {
    FrameLoads loads;
    loads.force.assign(3 * f.nodes.size(), 0.0);
    for (const FrameMember& m : f.members) {
        for (const int node : {m.from, m.to}) {
            loads.force[static_cast<std::size_t>(3 * node + 1)] += 0.5 * side * m.free_length;
            loads.force[static_cast<std::size_t>(3 * node + 2)] -= 0.5 * w * m.free_length;
        }
    }
    return loads;
}

}  // namespace

TEST_CASE("hung strap: its reactions, tensions and sag, taut and slack") {
    for (const double L0 : {3.0, 3.2, 4.5}) {
        CAPTURE(L0);
        const Frame f = line(1, L0);
        const Solution s = solve(f, along(f, 80, 15));
        REQUIRE_MESSAGE(s.usable(), s.message);
        const MemberForces& m = s.members[0];
        CHECK(m.active);
        CHECK(close(s.reaction[2] + s.reaction[8], 80 * L0, 1e-9));
        CHECK(close(s.reaction[1] + s.reaction[7], -15 * L0, 1e-9));
        CHECK(close_abs(s.reaction[0] + s.reaction[6], 0, 1e-9 * m.axial));
        CHECK(close(std::hypot(s.reaction[0], s.reaction[1], s.reaction[2]), m.axial_at(0), 1e-9));
        CHECK(close(std::hypot(s.reaction[6], s.reaction[7], s.reaction[8]), m.axial_at(1), 1e-9));
        CHECK(m.axial_at(1) > m.axial_at(0));  // the upper end
        CHECK(m.least <= m.axial_at(0));
        CHECK(m.sag > 0);
        CHECK(m.sag < L0 / 2);
    }
}

TEST_CASE("hung strap: cut anywhere it is the same strap") {
    for (const double L0 : {3.02, 3.2, 4.5}) {
        CAPTURE(L0);
        const Frame whole = line(1, L0);
        const Solution a = solve(whole, along(whole, 80, 15));
        for (const int pieces : {2, 5}) {
            const Frame cut = line(pieces, L0);
            const Solution b = solve(cut, along(cut, 80, 15));
            REQUIRE_MESSAGE(b.usable(), b.message);
            const auto last = static_cast<std::size_t>(6 * pieces);
            for (std::size_t d = 0; d < 3; ++d) {
                CHECK(close_abs(b.reaction[d], a.reaction[d], 1e-7 * a.members[0].axial));
                CHECK(close_abs(b.reaction[last + d], a.reaction[6 + d], 1e-7 * a.members[0].axial));
            }
            CHECK(close_abs(b.energy, a.energy, 1e-9 * a.members[0].axial * L0));
        }
    }
}

TEST_CASE("hung strap: a chain of straight straps with half the load at each joint comes to it by 1/n2") {
    const double L0 = 3.2;
    const Frame f = line(1, L0);
    const Solution exact = solve(f, along(f, 80, 15));
    double before = 0;
    for (const int pieces : {10, 20, 40}) {
        CAPTURE(pieces);
        const Frame chain = line(pieces, L0);
        const Solution s = solve(chain, lumped(chain, 80, 15));
        REQUIRE_MESSAGE(s.usable(), s.message);
        const double off = std::abs(s.reaction[0] / exact.reaction[0] - 1);
        if (before > 0) CHECK(close(before / off, 4, 0.1));
        before = off;
    }
    CHECK(before < 2e-3);
}

TEST_CASE("hung strap: with its load it comes to the straight strap, warm as well") {
    Frame f = line(2, 2.99);
    for (FrameMember& m : f.members) m.expansion = 1e-5;
    FrameLoads loads = along(f, 1e-7, 0);
    loads.temperature = {30, 30};
    loads.force = {0, 0, 0, 5, 10, -40, 0, 0, 0};
    FrameLoads bare = loads;
    bare.member_load.clear();
    const Solution a = solve(f, loads);
    const Solution b = solve(f, bare);
    REQUIRE(a.usable());
    REQUIRE(b.usable());
    for (std::size_t i = 0; i < 18; ++i) CHECK(close_abs(a.displacement[i], b.displacement[i], 1e-9));
    CHECK(close(a.members[0].axial, b.members[0].axial, 1e-8));
}

TEST_CASE("hung strap: buckling takes its turning for a force and the rest for stiffness, as of a straight one") {
    Frame f;
    f.nodes = {{"foot", {0, 0, 0}, fixed}, {"top", {0, 0, 1.2}, {}}};
    FrameMember upright = strap(0, 1, 3e7, 1.2);
    upright.kind = MemberKind::upright;
    f.members = {upright};
    for (const auto& [x, y] : {std::pair{1.3, 0.0}, {-1.3, 0.0}, {0.0, 1.3}, {0.0, -1.3}}) {
        f.nodes.push_back({"eye " + std::to_string(f.nodes.size()), {x, y, 0.6}, fixed});
        f.members.push_back(strap(1, static_cast<int>(f.nodes.size()) - 1, 1e5, 1.42));
    }
    FrameLoads loads;
    loads.force = {0, 0, 0, 0, 0, -900, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0};
    const Solution bare = solve(f, loads);
    REQUIRE(bare.usable());
    const double straight = buckling(f, loads, bare).modes.at(0).factor;
    loads.member_load.assign(15, 0.0);
    for (std::size_t m = 1; m < 5; ++m) loads.member_load[3 * m + 2] = -1e-6;
    const Solution hung = solve(f, loads);
    REQUIRE(hung.usable());
    CHECK(close(buckling(f, loads, hung).modes.at(0).factor, straight, 1e-6));
    for (std::size_t m = 1; m < 5; ++m) loads.member_load[3 * m + 2] = -20;
    const Solution heavy = solve(f, loads);
    REQUIRE(heavy.usable());
    CHECK(close(buckling(f, loads, heavy).modes.at(0).factor, straight, 0.2));
}

TEST_CASE("loose: the end of slack straps is no mechanism while nothing acts there, and is named") {
    const Frame f = line(2, 3.5);
    const Solution s = solve(f, {});
    REQUIRE_MESSAGE(s.usable(), s.message);
    CHECK(s.loose == std::vector<int>{1});
    CHECK_FALSE(s.members[0].active);
    // with a load the straps catch it
    FrameLoads loads;
    loads.force = {0, 0, 0, 0, 0, -10, 0, 0, 0};
    const Solution caught = solve(f, loads);
    REQUIRE_MESSAGE(caught.usable(), caught.message);
    CHECK(caught.loose.empty());
    CHECK(caught.members[0].axial > 0);
    // taut straps leave nothing loose
    CHECK(solve(line(2, 2.9), {}).loose.empty());
    // a strap that dangles from a pole or hangs with its own weight
    Frame dangling = line(2, 2.9);
    dangling.nodes.push_back({"end", {1.5, 0.5, 0.2}, {}});
    dangling.members.push_back(strap(1, 3, 1e5, 2));
    const Solution held = solve(dangling, {});
    REQUIRE_MESSAGE(held.usable(), held.message);
    CHECK(held.loose == std::vector<int>{3});
}

TEST_CASE("loose: a node that an upright stands on or a load pulls at is a mechanism where nothing holds it") {
    Frame f;
    f.nodes = {{"foot", {0, 0, 0}, fixed}, {"top", {0, 0, 1.2}, {}}, {"eye", {1.3, 0, 0.6}, fixed}};
    FrameMember upright = strap(0, 1, 3e7, 1.2);
    upright.kind = MemberKind::upright;
    f.members = {upright, strap(1, 2, 1e5, 1.6)};
    const Solution s = solve(f, {});
    CHECK(s.status == SolveStatus::mechanism);
    CHECK(s.loose.empty());
    CHECK(s.message.find("node \"top\"") == 0);
}
