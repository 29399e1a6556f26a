// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/buckling.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "frame/members.hpp"

using namespace coverframe;
using namespace coverframe::built;

namespace {

constexpr double pi = 3.14159265358979323846;

FrameNode node(const char* name, double x, double y, double z, std::array<bool, 6> held = {}) {
    FrameNode n;
    n.name = name;
    n.at = {x, y, z};
    n.held = held;
    return n;
}

/// An upright of 1.2 m whose top is held by four level straps with EA/L = k/2 each way, and pressed by 100 N.
Frame upright_in_straps(double k) {
    Frame f;
    f.nodes = {node("foot", 0, 0, 0, {true, true, true}), node("top", 0, 0, 1.2)};
    f.members = {member(f, "U1", MemberKind::upright, 0, 1, 1e7)};
    const std::array<std::array<double, 2>, 4> ways{{{1, 0}, {-1, 0}, {0, 1}, {0, -1}}};
    for (const auto& way : ways) {
        f.nodes.push_back(node("wall", 2 * way[0], 2 * way[1], 1.2, {true, true, true}));
        f.members.push_back(member(f, "S", MemberKind::strap, 1, static_cast<int>(f.nodes.size()) - 1, k));
        f.members.back().free_length = 2.0 / (1 + 1e-3);  // taut
    }
    return f;
}

FrameLoads press(const Frame& f, int at, double force) {
    FrameLoads loads;
    loads.force.assign(3 * f.nodes.size(), 0.0);
    loads.force[static_cast<std::size_t>(3 * at + 2)] = -force;
    return loads;
}

/// Pole of 2 m on end in n members; EI 200 N m2 level, 300 the other way. Pinned at the foot, guided at the top.
Frame column(int n, std::array<bool, 6> foot, std::array<bool, 6> top) {
    Frame f;
    for (int i = 0; i <= n; ++i) {
        f.nodes.push_back(node("n", 0, 0, 2.0 * i / n, i == 0 ? foot : i == n ? top : std::array<bool, 6>{}));
    }
    for (int i = 0; i < n; ++i) {
        FrameMember m = member(f, "column", MemberKind::pole, i, i + 1, 1e7);
        m.bending = {.EI_vertical = 300, .EI_level = 200, .GA_vertical = 0, .GA_level = 0, .GJ = 100};
        f.members.push_back(m);
    }
    return f;
}

double lowest(const Frame& f, double force) {
    const FrameLoads loads = press(f, static_cast<int>(f.nodes.size()) - 1, force);
    const Solution s = solve(f, loads);
    REQUIRE(s.usable());
    const Buckling b = buckling(f, loads, s);
    REQUIRE_FALSE(b.modes.empty());
    return b.modes.front().factor * force;
}

constexpr std::array<bool, 6> pinned{true, true, true, false, false, true};
constexpr std::array<bool, 6> fixed{true, true, true, true, true, true};
constexpr std::array<bool, 6> guided{true, true, false, false, false, false};
constexpr std::array<bool, 6> unheld{};

}  // namespace

TEST_CASE("buckling: Euler's columns, and the error falls with the fourth power of the member's length") {
    // Euler: pi^2 EI/L^2 pinned, a quarter of it for a cantilever (closed form)
    const double euler = pi * pi * 200 / 4;
    double before = 0;
    for (const int n : {1, 2, 4, 8}) {
        const double error = lowest(column(n, pinned, guided), 5) / euler - 1;
        CAPTURE(n);
        if (n > 2) CHECK(close(std::log2(before / error), 4.0, 0.05));
        CHECK(error > 0);
        before = error;
    }
    // One member: 12 EI/L^2, the value that every textbook has for the consistent geometric stiffness.
    CHECK(close(lowest(column(1, pinned, guided), 5), 12 * 200 / 4.0, 1e-3));
    CHECK(close(lowest(column(2, pinned, guided), 5) / euler - 1, 0.0075, 0.03));
    CHECK(close(lowest(column(4, fixed, unheld), 5), euler / 4, 2e-4));
}

TEST_CASE("buckling: shear and hinges of a pole are in the bow too") {
    // Engesser: 1/P = 1/P_E + 1/GA (closed form). A hinge at the foot of a clamped member makes it pinned.
    const double euler = pi * pi * 200 / 4;
    for (const double GA : {2e3, 2e4}) {
        Frame f = column(8, pinned, guided);
        for (FrameMember& m : f.members) m.bending.GA_level = m.bending.GA_vertical = GA;
        CHECK(close(lowest(f, 5), 1 / (1 / euler + 1 / GA), 3e-3));
    }
    Frame hinged = column(6, fixed, guided);
    hinged.members.front().spring_from = 0;
    CHECK(close(lowest(hinged, 5), lowest(column(6, pinned, guided), 5), 1e-4));
    Frame sprung = column(6, fixed, guided);
    sprung.members.front().spring_from = 1e9;
    CHECK(close(lowest(sprung, 5), lowest(column(6, fixed, guided), 5), 1e-4));
}

TEST_CASE("buckling: the banded way finds what the dense one finds") {
    for (const int n : {6, 16}) {
        const Frame f = column(n, pinned, guided);
        const FrameLoads loads = press(f, n, 50);
        const Solution s = solve(f, loads);
        REQUIRE(s.usable());
        const Buckling dense = buckling(f, loads, s, {.count = 4, .without_loads = nullptr});
        const Buckling banded = buckling(f, loads, s, {.count = 4, .without_loads = nullptr, .dense_up_to = 0});
        CHECK_MESSAGE(dense.message.empty(), dense.message);
        CHECK_MESSAGE(banded.message.empty(), banded.message);
        REQUIRE(dense.modes.size() == 4);
        REQUIRE(banded.modes.size() == 4);
        for (std::size_t i = 0; i < 4; ++i) {
            CHECK(close(banded.modes[i].factor, dense.modes[i].factor, 1e-8));
            CHECK(banded.modes[i].place == dense.modes[i].place);
        }
    }
    const Frame f = upright_in_straps(2000);
    const FrameLoads loads = press(f, 1, 100);
    const Solution s = solve(f, loads);
    const Buckling banded = buckling(f, loads, s, {.count = 2, .without_loads = nullptr, .dense_up_to = 0});
    REQUIRE(banded.modes.size() == 2);  // alike both ways
    CHECK(close(banded.modes[0].factor, buckling(f, loads, s).modes[0].factor, 1e-8));
    CHECK_MESSAGE(banded.message.empty(), banded.message);
}

TEST_CASE("buckling: a lifted upright is named by the mode that would make it push") {
    Frame f = upright_in_straps(2000);
    f.nodes.push_back(node("ledge", -2, 0, 0.6, {true, true, true}));
    f.members.push_back(member(f, "prop", MemberKind::upright, 6, 1, 1e6));
    f.members.back().free_length -= 0.02;  // short of the top
    const FrameLoads loads = press(f, 1, 100);
    const Solution s = solve(f, loads);
    REQUIRE(s.usable());
    REQUIRE_FALSE(s.members.back().active);
    bool named = false;
    for (const BucklingMode& mode : buckling(f, loads, s).modes) {
        for (const std::string& name : mode.takes_up) named = named || name == "prop";
    }
    CHECK(named);
}

TEST_CASE("buckling: a strut between springs, P = k h, and the straps' own tension holds it a little more") {
    // Two straps each way of EA/L = k/2: level stiffness k, plus T/L of the two that lie across; P_cr = (k + 2 T/L) h
    const double k = 2000;
    const Frame f = upright_in_straps(k);
    const double T = k * 1e-3;
    const FrameLoads loads = press(f, 1, 100);
    const Solution s = solve(f, loads);
    REQUIRE(s.usable());
    const Solution bare = solve(f, {});
    REQUIRE(bare.usable());
    const double critical = (k / 2.0 * 2.0 * (1 + 1e-3) + 2 * T / 2.0) * 1.2;
    const Buckling b = buckling(f, loads, s, {.count = 2, .without_loads = &bare});
    REQUIRE(b.modes.size() == 2);
    CHECK(close(b.modes[0].factor * 100, critical, 1e-3));
    CHECK(close(b.modes[1].factor * 100, critical, 1e-3));  // alike both ways
    CHECK(b.modes[0].place.find("node \"top\" moves") == 0);
    // a taut strap goes slack when the top has moved by its stretch of 2 mm
    CHECK(close(b.modes[0].reach, 2.0 - 2.0 / 1.001, 0.05));
    CHECK_FALSE(b.modes[0].lets_go.empty());
    CHECK(b.modes[0].takes_up.empty());
    const std::vector<UprightStability> uprights = upright_stability(f, loads, s);
    REQUIRE(uprights.size() == 1);
    CHECK(close(uprights[0].push, 100, 1e-5));
    CHECK(close(uprights[0].critical, critical, 1e-3));
    CHECK(close(uprights[0].used, 100 / critical, 1e-3));
}

TEST_CASE("buckling: a slack strap is named by the mode that would take it up") {
    Frame f = upright_in_straps(2000);
    f.nodes.push_back(node("wall", 2, 0, 1.2, {true, true, true}));
    f.members.push_back(member(f, "slack one", MemberKind::strap, 1, 6, 1e5));
    f.members.back().free_length = 2.05;
    const FrameLoads loads = press(f, 1, 100);
    const Solution s = solve(f, loads);
    REQUIRE(s.usable());
    bool named = false;
    for (const BucklingMode& mode : buckling(f, loads, s).modes) {
        for (const std::string& name : mode.takes_up) named = named || name == "slack one";
    }
    CHECK(named);
}

TEST_CASE("buckling: the signs of the pivots count the factors") {
    const Frame f = column(6, pinned, guided);
    const FrameLoads loads = press(f, 6, 50);
    const Solution s = solve(f, loads);
    const Buckling b = buckling(f, loads, s, {.count = 6, .without_loads = nullptr});
    REQUIRE(b.modes.size() == 6);
    for (std::size_t i = 0; i < b.modes.size(); ++i) {
        CHECK(factors_below(f, loads, s, b.modes[i].factor * (1 - 1e-6)) == static_cast<int>(i));
        CHECK(factors_below(f, loads, s, b.modes[i].factor * (1 + 1e-6)) == static_cast<int>(i) + 1);
    }
}

TEST_CASE("buckling: the shapes solve the problem, and turning the frame about the upright axis changes nothing") {
    const double a = 0.7;
    Frame f = upright_in_straps(2000);
    Frame turned = f;
    for (FrameNode& n : turned.nodes) {
        n.at = {std::cos(a) * n.at[0] - std::sin(a) * n.at[1], std::sin(a) * n.at[0] + std::cos(a) * n.at[1], n.at[2]};
    }
    const FrameLoads loads = press(f, 1, 300);
    const Buckling here = buckling(f, loads, solve(f, loads));
    const Buckling there = buckling(turned, loads, solve(turned, loads));
    REQUIRE(here.modes.size() == there.modes.size());
    for (std::size_t i = 0; i < here.modes.size(); ++i) {
        CHECK(close(here.modes[i].factor, there.modes[i].factor, 1e-9));
        double largest = 0;
        for (std::size_t k = 0; k < here.modes[i].shape.size(); ++k) {
            if (k % 6 < 3) largest = std::max(largest, std::abs(here.modes[i].shape[k]));
        }
        CHECK(close(largest, 1, 1e-12));
    }
}

TEST_CASE("buckling: what is only pulled does not buckle, and says so") {
    Frame f;
    f.nodes = {node("left", -1, 0, 0, {true, true, true}), node("middle", 0, 0, 0),
               node("right", 1, 0, 0, {true, true, true})};
    f.members = {member(f, "S", MemberKind::strap, 0, 1, 1e5), member(f, "S", MemberKind::strap, 1, 2, 1e5)};
    for (FrameMember& m : f.members) m.free_length = 0.99;
    const FrameLoads loads = press(f, 1, 10);
    const Solution s = solve(f, loads);
    const Solution bare = solve(f, {});
    REQUIRE(s.usable());
    REQUIRE(bare.usable());
    const Buckling b = buckling(f, loads, s, {.count = 3, .without_loads = &bare});
    CHECK(b.modes.empty());
    CHECK_FALSE(b.message.empty());
    const Buckling all = buckling(f, loads, s);
    CHECK(all.modes.empty());
    CHECK(all.message.find("does not stand") != std::string::npos);  // straight straps without tension
}

TEST_CASE("buckling: a state that is no equilibrium, or of another frame, is refused") {
    const Frame f = upright_in_straps(2000);
    const FrameLoads loads = press(f, 1, 100);
    const Solution none;
    CHECK_THROWS_AS((void)buckling(f, loads, none), StateError);
    CHECK_THROWS_AS((void)upright_stability(f, loads, none), StateError);
    const Solution s = solve(f, loads);
    CHECK_THROWS_AS((void)buckling(f, loads, s, {.count = 1, .without_loads = &none}), StateError);
    Frame more = f;
    more.nodes.push_back(node("extra", 5, 5, 5));
    CHECK(code_of([&] { return buckling(more, loads, s).modes.size(); }) == "frame.start.size");
}
