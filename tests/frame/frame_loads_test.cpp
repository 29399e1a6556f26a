// SPDX-License-Identifier: BSD-3-Clause
// Loads along members, couples, temperature, settlements, springs, arms and bars, in whole frames. Values are those of
// elementary beam theory (S. Timoshenko, Strength of Materials, from memory) unless said otherwise.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <limits>
#include <string>

#include "../actions/refusal.hpp"
#include "../close.hpp"
#include "coverframe/frame/solve.hpp"

using namespace coverframe;

namespace {

constexpr double EA = 30e6;
constexpr double EI = 20e3;
constexpr double L = 2;
constexpr double w = 0.01;  // so small that the second order is out of sight [N/m]

using Held = std::array<bool, 6>;
constexpr Held fixed{true, true, true, true, true, true};
constexpr Held pinned{true, true, true, true, false, false};
constexpr Held rolling{false, true, true, false, false, false};

FrameMember member(MemberKind kind, int from, int to, double length) {
    FrameMember m;
    m.name = "m" + std::to_string(from);
    m.kind = kind;
    m.from = from;
    m.to = to;
    m.axial_stiffness = EA;
    m.free_length = length;
    m.bending = {EI, EI / 5, 0, 0, 1e3};
    return m;
}

/// A pole along x in even members.
Frame beam(const Held& from, const Held& to, int pieces = 1) {
    Frame frame;
    for (int i = 0; i <= pieces; ++i) {
        const Held held = i == 0 ? from : i == pieces ? to : Held{};
        frame.nodes.push_back({"n" + std::to_string(i), {L * i / pieces, 0, 0}, held});
    }
    for (int i = 0; i < pieces; ++i) frame.members.push_back(member(MemberKind::pole, i, i + 1, L / pieces));
    return frame;
}

FrameLoads along(const Frame& frame, const std::array<double, 3>& q) {
    FrameLoads loads;
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        loads.member_load.insert(loads.member_load.end(), q.begin(), q.end());
    }
    return loads;
}

Solution solved(const Frame& frame, const FrameLoads& loads) {
    Solution s = solve(frame, loads);
    REQUIRE_MESSAGE(s.usable(), s.message);
    return s;
}

}  // namespace

TEST_CASE("member load: a fixed-ended span of one member, both planes and along") {
    const Frame frame = beam(fixed, fixed);
    const Solution s = solved(frame, along(frame, {5, 3, -4}));
    const MemberForces& f = s.members[0];
    CHECK(close(f.moment_vertical_from, -4 * L * L / 12, 1e-12));
    CHECK(close(f.moment_vertical_to, -4 * L * L / 12, 1e-12));
    CHECK(close(f.moment_vertical_at(0.5, L), 4 * L * L / 24, 1e-12));
    CHECK(close(f.moment_level_from, -3 * L * L / 12, 1e-12));
    CHECK(close(f.moment_level_at(0.5, L), 3 * L * L / 24, 1e-12));
    CHECK(close(f.shear_vertical_at(0), 4 * L / 2, 1e-12));
    CHECK(close(f.shear_vertical_at(1), -4 * L / 2, 1e-12));
    CHECK(close(f.shear_level_at(0), 3 * L / 2, 1e-12));
    CHECK(close(f.axial_at(0), 5 * L / 2, 1e-12));
    CHECK(close(f.axial_at(1), -5 * L / 2, 1e-12));
    // The boat pushes back: up, to port, forward; couples about y (up at the start) and z.
    CHECK(close(s.reaction[0], -5 * L / 2, 1e-12));
    CHECK(close(s.reaction[1], -3 * L / 2, 1e-12));
    CHECK(close(s.reaction[2], 4 * L / 2, 1e-12));
    CHECK(close(s.reaction[4], -4 * L * L / 12, 1e-12));
    CHECK(close(s.reaction[5], -3 * L * L / 12, 1e-12));
    CHECK(close(s.reaction[10], 4 * L * L / 12, 1e-12));
}

TEST_CASE("member load: a simple span of one member turns by w L^3/(24 EI) and carries w L^2/8") {
    const Frame frame = beam(pinned, rolling);
    const Solution s = solved(frame, along(frame, {0, 0, -w}));
    CHECK(close(s.displacement[4], w * L * L * L / (24 * EI), 1e-9));
    CHECK(close(s.displacement[10], -w * L * L * L / (24 * EI), 1e-9));
    CHECK(close_abs(s.members[0].moment_vertical_from, 0, 1e-9 * w));
    CHECK(close_abs(s.members[0].moment_vertical_to, 0, 1e-9 * w));
    CHECK(close(s.members[0].moment_vertical_at(0.5, L), w * L * L / 8, 1e-9));
    CHECK(close(s.members[0].moment_vertical_at(0.25, L), w * L * L * 3 / 32, 1e-9));
    CHECK(close(s.members[0].shear_vertical_at(0), w * L / 2, 1e-9));
}

TEST_CASE("member load: a propped span has w L^2/8, and the share of shear flexibility") {
    Frame frame = beam(fixed, rolling);
    CHECK(close(solved(frame, along(frame, {0, 0, -w})).members[0].moment_vertical_from, -w * L * L / 8, 1e-9));
    CHECK(close(solved(frame, along(frame, {0, 0, -w})).reaction[8], 3 * w * L / 8, 1e-9));
    const double GA = 1e5;
    frame.members[0].bending.GA_vertical = GA;
    const double R = (L * L * L * L / (8 * EI) + L * L / (2 * GA)) / (L * L * L / (3 * EI) + L / GA);
    CHECK(close(solved(frame, along(frame, {0, 0, -w})).reaction[8], R * w, 1e-9));
}

TEST_CASE("member load: hinges and end springs get what is left to them") {
    Frame frame = beam(fixed, fixed);
    frame.members[0].spring_to = 0;
    Solution s = solved(frame, along(frame, {0, 2, -3}));
    CHECK(close(s.members[0].moment_vertical_from, -3 * L * L / 8, 1e-12));
    CHECK(close(s.members[0].moment_level_from, -2 * L * L / 8, 1e-12));
    CHECK(s.members[0].moment_vertical_to == 0);
    CHECK(close(s.reaction[8], 3 * 3 * L / 8, 1e-12));
    CHECK(close(s.reaction[2], 5 * 3 * L / 8, 1e-12));
    CHECK(close(s.reaction[1], -5 * 2 * L / 8, 1e-12));
    const double k = 7e3;  // M = w L^2/12 / (1 + 2 EI/(k L)), in the level plane with EI/5
    frame.members[0].spring_from = frame.members[0].spring_to = k;
    s = solved(frame, along(frame, {0, 2, -3}));
    CHECK(close(s.members[0].moment_vertical_from, -3 * L * L / 12 / (1 + 2 * EI / (k * L)), 1e-12));
    CHECK(close(s.members[0].moment_level_to, -2 * L * L / 12 / (1 + 2 * EI / 5 / (k * L)), 1e-12));
    CHECK(close(s.reaction[2], 3 * L / 2, 1e-12));
    CHECK(close(s.reaction[7], -2 * L / 2, 1e-12));
}

TEST_CASE("member load: a chain of any number of members gives the same nodes, moments and reactions") {
    const Frame whole = beam(fixed, rolling, 2);
    const Solution a = solved(whole, along(whole, {0, w, -2 * w}));
    for (const int pieces : {4, 10}) {
        const Frame cut = beam(fixed, rolling, pieces);
        const Solution b = solved(cut, along(cut, {0, w, -2 * w}));
        const auto middle = static_cast<std::size_t>(pieces / 2);
        for (const std::size_t d : {1U, 2U, 4U, 5U}) {  // ux and rx are of the second order
            CHECK(close_abs(b.displacement[6 * middle + d], a.displacement[6 + d], 1e-9 * std::abs(a.displacement[8])));
            CHECK(close_abs(b.reaction[d], a.reaction[d], 1e-9 * w));
        }
        CHECK(close(b.members[middle].moment_vertical_from, a.members[1].moment_vertical_from, 1e-8));
        CHECK(close(b.members[middle - 1].moment_vertical_at(0.5, L / pieces),
                    a.members[0].moment_vertical_at(1 - 1.0 / pieces, L / 2), 1e-8));
    }
}

TEST_CASE("member load: uprights and bars hand half to each end, straps refuse it") {
    Frame frame;
    frame.nodes = {{"foot", {0, 0, 0}, fixed}, {"top", {0, 0, 1.5}, {true, true, false, false, false, false}}};
    for (const MemberKind kind : {MemberKind::upright, MemberKind::bar}) {
        frame.members = {member(kind, 0, 1, 1.5)};
        const Solution s = solved(frame, along(frame, {8, 0, -10}));
        CHECK(close(s.members[0].axial, -7.5, 1e-9));
        CHECK(close(s.members[0].axial_at(0), -15, 1e-9));
        CHECK(close_abs(s.members[0].axial_at(1), 0, 1e-9));
        CHECK(close(s.reaction[2], 15, 1e-9));
        CHECK(close(s.reaction[0], -6, 1e-9));
        CHECK(close(s.reaction[6], -6, 1e-9));
    }
}

TEST_CASE("couple: at one end of a simple span it turns the ends by M L/(3 EI) and M L/(6 EI)") {
    const Frame frame = beam(pinned, rolling, 3);
    FrameLoads loads;
    loads.couple.assign(12, 0.0);
    const double M = 0.02;
    loads.couple[3 * 3 + 1] = M;
    const Solution s = solved(frame, loads);
    CHECK(close(s.displacement[6 * 3 + 4], M * L / (3 * EI), 1e-8));
    CHECK(close(s.displacement[4], -M * L / (6 * EI), 1e-8));
    CHECK(close(s.reaction[2], -M / L, 1e-8));
    // On a direction that is held it goes to the boat.
    loads.couple[0] = 5;
    CHECK(close(solved(frame, loads).reaction[3], -5, 1e-8));
}

TEST_CASE("couple: rolls a cantilever into an arc of the angle M L/EI") {
    // Both ends of the arc are those of a circle of radius EI/M, whatever the turn (pure bending).
    Frame frame = beam(fixed, {}, 40);
    for (std::size_t n = 1; n < frame.nodes.size(); ++n) frame.nodes[n].held = {false, true, false, true, false, true};
    FrameLoads loads;
    loads.couple.assign(3 * frame.nodes.size(), 0.0);
    Solution s;
    std::vector<double> start;
    for (const double angle : {0.5, 1.0, 1.5, 2.0, 2.5, 3.0}) {
        CAPTURE(angle);
        loads.couple[3 * 40 + 1] = angle * EI / L;
        s = solve(frame, loads, {.force_tolerance = 1e-7}, start);
        REQUIRE_MESSAGE(s.usable(), s.message);
        start = s.displacement;
        CHECK(close(s.displacement[6 * 40 + 4], angle, 1e-6));
        CHECK(close_abs(s.displacement[6 * 40] + L, L * std::sin(angle) / angle, 1e-3));
        CHECK(close_abs(-s.displacement[6 * 40 + 2], L * (1 - std::cos(angle)) / angle, 1e-3));
    }
}

TEST_CASE("temperature: what may grow grows, what may not pushes") {
    for (const MemberKind kind : {MemberKind::pole, MemberKind::bar}) {
        Frame frame = beam(fixed, {false, true, true, true, true, true});
        frame.members[0].kind = kind;
        frame.members[0].expansion = 2e-5;
        FrameLoads loads;
        loads.temperature = {40};
        Solution s = solved(frame, loads);
        CHECK(close(s.displacement[6], 2e-5 * 40 * L, 1e-9));
        CHECK(close_abs(s.members[0].axial, 0, 1e-6));
        frame.nodes[1].held = fixed;
        s = solved(frame, loads);
        CHECK(close(s.members[0].axial, -EA * 2e-5 * 40, 1e-12));
        CHECK(close(s.reaction[0], EA * 2e-5 * 40, 1e-12));
        CHECK(close(s.energy, 0.5 * EA * L * 8e-4 * 8e-4, 1e-12));
    }
}

TEST_CASE("temperature: a cold strap pulls more, a cold upright lets go, a hot pole buckles") {
    Frame frame;
    frame.nodes = {{"a", {0, 0, 0}, fixed}, {"b", {L, 0, 0}, fixed}};
    frame.members = {member(MemberKind::strap, 0, 1, L / 1.001)};
    frame.members[0].expansion = 1e-4;
    FrameLoads loads;
    loads.temperature = {-20};
    CHECK(close(solved(frame, loads).members[0].axial, EA * (0.001 + 0.002 / 1), 1e-9));
    loads.temperature = {20};
    CHECK_FALSE(solved(frame, loads).members[0].active);
    frame.members[0].kind = MemberKind::upright;
    CHECK(solved(frame, loads).members[0].active);
    loads.temperature = {-20};
    CHECK_FALSE(solved(frame, loads).members[0].active);
    // Euler: pinned at both ends in its weak plane, at a strain of pi^2 EI/(EA L^2).
    Frame pole = beam(pinned, pinned, 8);
    const double strain = 9.8696044 * EI / 5 / (EA * L * L);
    for (FrameMember& m : pole.members) m.expansion = 1e-5;
    loads.temperature.assign(8, 0.98 * strain / 1e-5);
    CHECK(solve(pole, loads).usable());
    loads.temperature.assign(8, 1.03 * strain / 1e-5);
    CHECK(solve(pole, loads).status == SolveStatus::unstable);
}

TEST_CASE("settlement: a fixed end that sinks makes 6 EI d/L^2, one that turns 4 EI r/L") {
    const Frame frame = beam(fixed, fixed);
    FrameLoads loads;
    const double d = 1e-6;
    loads.settlement.assign(12, 0.0);
    loads.settlement[8] = -d;
    Solution s = solved(frame, loads);
    CHECK(close(s.displacement[8], -d, 1e-15));
    CHECK(close(s.members[0].moment_vertical_from, -6 * EI * d / (L * L), 1e-6));
    CHECK(close(s.members[0].moment_vertical_to, 6 * EI * d / (L * L), 1e-6));
    CHECK(close(s.reaction[2], 12 * EI * d / (L * L * L), 1e-6));
    loads.settlement[8] = 0;
    loads.settlement[11] = d;
    s = solved(frame, loads);
    CHECK(close(s.reaction[11], 4 * EI / 5 * d / L, 1e-6));
    CHECK(close(s.reaction[5], 2 * EI / 5 * d / L, 1e-6));
    // The whole frame moved is a frame without forces.
    loads.settlement = {0.3, -0.1, 0.2, 0, 0, 0, 0.3, -0.1, 0.2, 0, 0, 0};
    CHECK(close_abs(solved(frame, loads).energy, 0, 1e-15));
}

TEST_CASE("springs of nodes: they carry, they hold what nothing else holds, and their forces are reactions") {
    // A rigid beam on two springs: each takes half. k d = w L/2; about its axis one turning spring takes a couple.
    Frame frame = beam({true, true, false, false, true, true}, {false, true, false, true, true, true});
    frame.springs = {{0, {0, 0, 300, 50, 0, 0}}, {1, {0, 0, 600, 0, 0, 0}}};
    frame.nodes[1].held[3] = false;
    frame.nodes[0].held[4] = frame.nodes[1].held[4] = false;
    FrameLoads loads = along(frame, {0, 0, -w});
    loads.couple = {0, 0, 0, 0.01, 0, 0};
    const Solution s = solved(frame, loads);
    CHECK(close(s.displacement[2], -w * L / 2 / 300, 1e-6));
    CHECK(close(s.displacement[8], -w * L / 2 / 600, 1e-6));
    CHECK(close(s.reaction[2], w * L / 2, 1e-6));
    CHECK(close(s.reaction[8], w * L / 2, 1e-6));
    CHECK(close(s.displacement[3], 0.01 / 50, 1e-6));
    CHECK(close(s.reaction[3], -0.01, 1e-6));
}

TEST_CASE("arm: a strap that pulls beside a pole bends it by force times arm") {
    // A mast of height L fixed at the foot; a strap from an arm b aft of its top pulls down with T: couple T b at the
    // top, T b L^2/(2 EI) forward or aft, the same from an arm of a pole as from a stiff piece of pole.
    constexpr double b = 0.3;
    Frame frame;
    frame.nodes = {{"foot", {0, 0, 0}, fixed}, {"top", {0, 0, L}, {}}, {"eye", {b, 0, 0}, fixed}};
    frame.members = {member(MemberKind::pole, 0, 1, L), member(MemberKind::strap, 1, 2, L)};
    frame.members[0].axial_stiffness = 1e12;
    frame.members[0].bending.EI_vertical = frame.members[0].bending.EI_level = EI;
    frame.members[1].arm_from = {b, 0, 0};
    frame.members[1].axial_stiffness = 1e3;
    CHECK(close(drawn_length(frame, frame.members[1]), L, 1e-15));
    frame.members[1].free_length = L - 0.02e-3;
    const Solution s = solved(frame, {});
    const double T = s.members[1].axial;
    CHECK(T > 0.009);
    CHECK(close(s.displacement[6], T * b * L * L / (2 * EI), 1e-4));
    CHECK(close(s.displacement[6 + 4], T * b * L / EI, 1e-4));
    CHECK(close(s.reaction[4], -T * b, 1e-4));
    CHECK(close_abs(s.reaction[2] + s.reaction[12 + 2], 0, 1e-9 * T));

    Frame stiff = frame;
    stiff.nodes.push_back({"end", {b, 0, L}, {}});
    stiff.members[1].arm_from = {};
    stiff.members[1].from = 3;
    FrameMember piece = member(MemberKind::pole, 1, 3, b);
    piece.axial_stiffness = 1e9;
    piece.bending = {1e8, 1e8, 0, 0, 1e8};
    stiff.members.push_back(piece);
    const Solution other = solved(stiff, {});
    CHECK(close(other.displacement[6], s.displacement[6], 1e-4));
    CHECK(close(other.members[1].axial, T, 1e-6));
}

TEST_CASE("arm: two poles that meet off their node are two beams joined by a rigid corner") {
    // A cantilever that steps up by an arm of 0.2 m at its middle and goes on: under a tip load P the tip comes down by
    // P L^3/(3 EI) as if there were no step, and forward by the step times the slope at the middle, P a (3/8 L^2)/EI.
    constexpr double a = 0.2;
    constexpr double P = 0.01;
    Frame frame;
    frame.nodes = {{"root", {0, 0, 0}, fixed}, {"step", {L / 2, 0, 0}, {}}, {"tip", {L, 0, a}, {}}};
    frame.members = {member(MemberKind::pole, 0, 1, L / 2), member(MemberKind::pole, 1, 2, L / 2)};
    frame.members[1].arm_from = {0, 0, a};
    FrameLoads loads;
    loads.force = {0, 0, 0, 0, 0, 0, 0, 0, -P};
    const Solution s = solved(frame, loads);
    CHECK(close(s.displacement[14], -P * L * L * L / (3 * EI), 1e-6));
    CHECK(close(s.displacement[12], a * P * 3 / 8 * L * L / EI, 1e-5));
}

TEST_CASE("bar: pulls and pushes, and is a mechanism where only bending would hold") {
    Frame frame;
    frame.nodes = {{"a", {0, 0, 0}, fixed},
                   {"b", {2, 0, 0}, fixed},
                   {"c", {1, 0, 1}, {false, true, false, true, true, true}}};
    const double l = std::sqrt(2.0);
    frame.members = {member(MemberKind::bar, 0, 2, l), member(MemberKind::bar, 1, 2, l)};
    FrameLoads loads;
    loads.force = {0, 0, 0, 0, 0, 0, 10, 0, 0};
    const Solution s = solved(frame, loads);
    CHECK(close(s.members[0].axial, 10 / l, 1e-5));
    CHECK(close(s.members[1].axial, -10 / l, 1e-5));
    frame.nodes[2].held[1] = false;
    CHECK(solve(frame, loads).status == SolveStatus::mechanism);
}

TEST_CASE("loads: refusals with code and place") {
    const Frame frame = beam(fixed, rolling);
    const auto code = [&](auto change) {
        FrameLoads loads;
        change(loads);
        return code_of([&] { return solve(frame, loads); });
    };
    CHECK(code([](FrameLoads& l) { l.couple = {1}; }) == "frame.loads.size");
    CHECK(code([](FrameLoads& l) { l.member_load = {1, 2}; }) == "frame.loads.size");
    CHECK(code([](FrameLoads& l) { l.temperature = {1, 2}; }) == "frame.loads.size");
    CHECK(code([](FrameLoads& l) { l.settlement = {1, 2, 3}; }) == "frame.loads.size");
    CHECK(code([](FrameLoads& l) { l.settlement = {0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0}; }) == "frame.loads.settlement");
    for (const double bad : not_finite) {
        CHECK(code([&](FrameLoads& l) { l.couple = {0, 0, bad, 0, 0, 0}; }) == "frame.loads.finite");
        CHECK(code([&](FrameLoads& l) { l.member_load = {0, bad, 0}; }) == "frame.loads.finite");
        CHECK(code([&](FrameLoads& l) { l.temperature = {bad}; }) == "frame.loads.finite");
        CHECK(code([&](FrameLoads& l) { l.settlement = {0, 0, bad, 0, 0, 0, 0, 0, 0, 0, 0, 0}; }) ==
              "frame.loads.finite");
    }
    Frame bars = frame;
    bars.members[0].kind = MemberKind::bar;
    bars.nodes[1].held = {false, true, true, true, true, false};
    FrameLoads loads;
    loads.couple = {0, 0, 0, 0, 0, 1};
    CHECK(code_of([&] { return solve(bars, loads); }) == "frame.loads.couple");
    loads.couple = {0, 0, 0, 0, 1, 0};  // the boat takes it
    CHECK(close(solved(bars, loads).reaction[10], -1, 1e-12));
}

TEST_CASE("frames with springs and arms: what is refused") {
    const auto code = [](auto change) {
        Frame frame = beam(fixed, rolling);
        change(frame);
        return code_of([&] { return solve(frame, {}); });
    };
    CHECK(code([](Frame&) {}) == "none");
    CHECK(code([](Frame& f) { f.springs = {{2, {}}}; }) == "frame.spring.node");
    CHECK(code([](Frame& f) { f.springs = {{1, {0, 0, -1, 0, 0, 0}}}; }) == "frame.spring.stiffness");
    CHECK(code([](Frame& f) { f.members[0].spring_to = -1; }) == "frame.member.stiffness");
    CHECK(code([](Frame& f) { f.members[0].arm_to = {-L, 0, 0}; }) == "frame.member.length");
    for (const double bad : not_finite) {
        CHECK(code([&](Frame& f) { f.members[0].expansion = bad; }) == "frame.member.stiffness");
        CHECK(code([&](Frame& f) { f.members[0].arm_to[1] = bad; }) != "none");
        CHECK(code([&](Frame& f) { f.springs = {{1, {bad, 0, 0, 0, 0, 0}}}; }) == "frame.spring.stiffness");
    }
    CHECK(code([](Frame& f) { f.members[0].spring_to = std::nan(""); }) == "frame.member.stiffness");
}
