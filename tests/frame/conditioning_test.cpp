// SPDX-License-Identifier: BSD-3-Clause
// Stiffnesses far apart, by each way of getting them so: what the solution says and whom it names. Statics by hand; the
// exact displacements are those of springs in a row. No source is needed.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "../close.hpp"
#include "coverframe/frame/solve.hpp"
#include "frame/members.hpp"

using namespace coverframe;

namespace {

using Held = std::array<bool, 6>;
constexpr Held clamped{true, true, true, true, true, true};

FrameMember member(const Frame& f, const std::string& name, MemberKind kind, int from, int to, double EA, double EI) {
    FrameMember m = built::member(f, name, kind, from, to, EA);
    m.bending = {EI, EI, 0, 0, EI};
    return m;
}

/// Nodes 1 m apart along x, the first and the last clamped.
Frame row(int nodes, Held between) {
    Frame f;
    for (int i = 0; i < nodes; ++i) {
        const bool end = i == 0 || i + 1 == nodes;
        f.nodes.push_back({"n" + std::to_string(i), {1.0 * i, 0, 0}, end ? clamped : between});
    }
    return f;
}

struct Case {
    const char* way;
    Frame frame;
    int node;       ///< that is loaded
    int direction;  ///< in which
    double force;
    const char* stiffest;  ///< as the sentence has it
    const char* softest;
};

/// One thing `c` times as stiff as its neighbours, between nodes that only the soft ones hold.
std::vector<Case> ways(double c) {
    std::vector<Case> all;
    Frame f = row(4, {false, true, true});
    f.members = {member(f, "a", MemberKind::bar, 0, 1, 1, 0), member(f, "b", MemberKind::bar, 1, 2, c, 0),
                 member(f, "c", MemberKind::bar, 2, 3, 1, 0)};
    all.push_back({"EA", f, 1, 0, 1e-3, "\"b\" stiffest", "\"a\" and \"c\" softest"});

    f = row(4, {});
    f.members = {member(f, "a", MemberKind::pole, 0, 1, 1e3, 1), member(f, "b", MemberKind::pole, 1, 2, 1e3, c),
                 member(f, "c", MemberKind::pole, 2, 3, 1e3, 1)};
    f.members[1].axial_stiffness = 1e3 * std::sqrt(c);
    all.push_back({"EI", f, 1, 2, -1e-3, "\"b\" stiffest", "\"a\" and \"c\" softest"});

    f = row(3, {false, true, true});
    f.nodes[2].held = {false, true, true};
    f.nodes[0].held = {false, true, true};
    f.members = {member(f, "a", MemberKind::bar, 0, 1, c, 0), member(f, "b", MemberKind::bar, 1, 2, c, 0)};
    f.springs = {{0, {1, 0, 0, 0, 0, 0}}};
    all.push_back({"spring", f, 2, 0, 1e-3, "\"a\" and \"b\" stiffest", "the spring at node \"n0\" softest"});

    f = Frame{};
    f.nodes = {{"foot", {0, 0, 0}, {true, true}}, {"top", {0, 0, 1}, {true, true}}};
    f.members = {member(f, "U1", MemberKind::upright, 0, 1, c, 0)};
    f.feet = {{0, 1, 0, 0, 0}};
    all.push_back({"foot pad", f, 1, 2, -1e-3, "\"U1\" stiffest", "the foot at node \"foot\" softest"});

    // Two bars on arms of 1 m, up and down, hold the two inner nodes against turning and moving apart.
    f = row(4, {false, true, false, true, false, true});
    f.members = {member(f, "a", MemberKind::pole, 0, 1, 1, 1), member(f, "b", MemberKind::pole, 1, 2, 1, 1),
                 member(f, "c", MemberKind::pole, 2, 3, 1, 1), member(f, "on arms", MemberKind::bar, 1, 2, c, 0)};
    f.members[3].arm_from = f.members[3].arm_to = {0, 0, 1};
    all.push_back({"arm", f, 1, 0, 1e-4, "\"on arms\" stiffest", "softest"});
    return all;
}

Solution solved(const Case& one) {
    FrameLoads loads;
    loads.force.assign(3 * one.frame.nodes.size(), 0.0);
    loads.force[static_cast<std::size_t>(3 * one.node + one.direction)] = one.force;
    return solve(one.frame, loads);
}

bool says(const std::string& text, const char* words) { return text.find(words) != std::string::npos; }

}  // namespace

TEST_CASE("conditioning: up to a million times no caution, and the answer") {
    for (const Case& one : ways(1e6)) {
        CAPTURE(one.way);
        const Solution s = solved(one);
        REQUIRE_MESSAGE(s.usable(), s.message);
        CHECK(s.condition > 1e5);
        CHECK(s.condition < 1e12);
        CHECK(s.caution.empty());
    }
    // Two springs of 1 N/m side by side behind a stiff one; one of 1 N/m under a stiff upright.
    CHECK(close(solved(ways(1e6)[0]).displacement[6], 0.5e-3, 1e-5));
    CHECK(close(solved(ways(1e6)[3]).displacement[2], -1e-3, 1e-5));
}

TEST_CASE("conditioning: a million million times is said with its members, by every way") {
    for (const double c : {1e12, 3e12}) {
        for (const Case& one : ways(c)) {
            CAPTURE(one.way);
            CAPTURE(c);
            const Solution s = solved(one);
            const std::string& text = s.usable() ? s.caution : s.message;
            REQUIRE((s.usable() || s.status == SolveStatus::ill_conditioned));
            CHECK_MESSAGE(says(text, one.stiffest), text);
            CHECK_MESSAGE(says(text, one.softest), text);
            CHECK_MESSAGE(says(text, "stiffnesses lie so far apart that"), text);
            if (s.usable()) CHECK(s.condition >= 1e12);
            if (s.usable()) CHECK(says(text, "digit"));
        }
    }
    CHECK(solved(ways(1e12)[0]).usable());
    CHECK(close(solved(ways(1e12)[0]).displacement[6], 0.5e-3, 1e-3));  // the first three digits
    CHECK(close(solved(ways(1e12)[3]).displacement[2], -1e-3, 1e-3));
}

TEST_CASE("conditioning: where no digit is left there is a status with the members, and no answer") {
    for (const double c : {1e16, 1e18, 1e20}) {
        for (const Case& one : ways(c)) {
            CAPTURE(one.way);
            CAPTURE(c);
            const Solution s = solved(one);
            CHECK(s.status == SolveStatus::ill_conditioned);
            CHECK_MESSAGE(says(s.message, "no digit can be trusted"), s.message);
            CHECK_MESSAGE(says(s.message, one.stiffest), s.message);
            CHECK(says(s.message, "bring them closer together"));
            CHECK(s.load_steps == 0);
        }
    }
}

TEST_CASE("conditioning: stiff beside soft costs nothing where neither holds the other") {
    // Two parts, 1e14 apart in stiffness: each has its own measure.
    Frame f = row(3, {false, true, true});
    f.members = {member(f, "a", MemberKind::bar, 0, 1, 1e-3, 0), member(f, "b", MemberKind::bar, 1, 2, 1e-3, 0)};
    f.nodes.push_back({"far", {0, 5, 0}, clamped});
    f.nodes.push_back({"mid", {1, 5, 0}, {false, true, true}});
    f.members.push_back(member(f, "c", MemberKind::bar, 3, 4, 1e8, 0));
    FrameLoads loads;
    loads.force.assign(15, 0.0);
    loads.force[3] = 1e-6;
    loads.force[12] = 1;
    const Solution s = solve(f, loads);
    REQUIRE_MESSAGE(s.usable(), s.message);
    CHECK(s.condition < 10);
    CHECK(s.caution.empty());
    CHECK(close(s.displacement[6], 0.5e-3, 1e-6));
    CHECK(close(s.displacement[24], 1e-8, 1e-6));
}

TEST_CASE("conditioning: a mechanism stays one, in however many pieces and however it lies") {
    // A pole on two pinned ends that is free to twist: no pivot shows it, for no axis of the boat lies along it.
    int found = 0;
    for (const int pieces : {1, 2, 4, 8, 16, 64, 128}) {
        for (int turn = 0; turn < 12; ++turn) {
            CAPTURE(pieces);
            CAPTURE(turn);
            const double a = 0.1 + 2 * std::numbers::pi * turn / 12;
            const double b = 0.9 * std::sin(3 * a);
            Frame f;
            for (int i = 0; i <= pieces; ++i) {
                const double s = 3.0 * i / pieces;
                f.nodes.push_back({"n" + std::to_string(i),
                                   {s * std::cos(a) * std::cos(b), s * std::sin(a) * std::cos(b), s * std::sin(b)},
                                   i == 0 || i == pieces ? Held{true, true, true} : Held{}});
            }
            for (int i = 0; i < pieces; ++i) {
                f.members.push_back(member(f, "pole", MemberKind::pole, i, i + 1, 1e7, 20e3));
            }
            const Solution s = solve(f, {});
            CHECK_MESSAGE(s.status == SolveStatus::mechanism, s.message);
            found += s.status == SolveStatus::mechanism ? 1 : 0;
        }
    }
    CHECK(found == 84);
}
