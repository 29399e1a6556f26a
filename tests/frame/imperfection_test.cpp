// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/imperfection.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "../actions/refusal.hpp"
#include "../close.hpp"
#include "coverframe/frame/buckling.hpp"

using namespace coverframe;
using std::numbers::pi;

namespace {

constexpr double EI = 20e3;
constexpr double L = 3;

/// A mast of `pieces` members, its foot pinned or fixed, its top held athwart and fore and aft or free.
Frame mast(int pieces, bool fixed_foot, bool held_top) {
    Frame frame;
    for (int i = 0; i <= pieces; ++i) {
        FrameNode node{"n" + std::to_string(i), {0, 0, L * i / pieces}, {}};
        if (i == 0) node.held = {true, true, true, fixed_foot, fixed_foot, true};
        if (i == pieces && held_top) node.held = {true, true, false, false, false, true};
        frame.nodes.push_back(node);
    }
    for (int i = 0; i < pieces; ++i) {
        FrameMember m;
        m.name = "mast";
        m.from = i;
        m.to = i + 1;
        m.axial_stiffness = 30e6;
        m.free_length = L / pieces;
        m.bending = {EI, EI, 0, 0, EI};
        frame.members.push_back(m);
    }
    return frame;
}

FrameLoads push_down(const Frame& frame, double force) {
    FrameLoads loads;
    loads.force.assign(3 * frame.nodes.size(), 0.0);
    loads.force.back() = -force;
    return loads;
}

std::vector<int> all_members(const Frame& frame) {
    std::vector<int> all;
    for (std::size_t m = 0; m < frame.members.size(); ++m) all.push_back(static_cast<int>(m));
    return all;
}

const FrameNode& node(const Frame& frame, int n) { return frame.nodes[static_cast<std::size_t>(n)]; }

}  // namespace

TEST_CASE("imperfection: a bowed column bows out by e/(1 - P/P_E)") {
    // Initial sine bow e: total bow e/(1 - P/P_E) (Timoshenko and Gere, Theory of Elastic Stability, from memory),
    // exact in second-order theory. 16 pieces: the tangent of each misses its own bow, a share of pi^2/(12 * 16^2) of
    // P_E.
    const double euler = pi * pi * EI / (L * L);
    const double e = 1e-3;
    const Frame bow = bowed(mast(16, false, true), all_members(mast(16, false, true)), e, {0.6, -0.8, 0});
    CHECK(close(node(bow, 8).at[0], 0.6 * e, 1e-12));
    CHECK(close(node(bow, 8).at[1], -0.8 * e, 1e-12));
    for (const double share : {0.2, 0.5, 0.7}) {
        CAPTURE(share);
        const Solution s = solve(bow, push_down(bow, share * euler));
        REQUIRE_MESSAGE(s.usable(), s.message);
        const double out = std::hypot(s.displacement[6 * 8], s.displacement[6 * 8 + 1]);
        CHECK(close(out, e * share / (1 - share), 0.005 / (1 - share)));
    }
}

TEST_CASE("imperfection: a cantilever out of plumb has at its foot P phi times tan(kL)/k") {
    // Cantilever leaning by phi under P: moment at the foot P phi tan(kL)/k, k = sqrt(P/EI) (Timoshenko and Gere, from
    // memory; the lean is a side force P phi in first order).
    const double P = 0.4 * pi * pi * EI / (4 * L * L);
    const double k = std::sqrt(P / EI);
    const double phi = 0.005;
    const Frame lean = out_of_plumb(mast(16, true, false), 0, phi, {0, 3});
    CHECK(close(node(lean, 16).at[1], L * std::tan(phi), 1e-12));
    CHECK(node(lean, 16).at[0] == 0);
    CHECK(close(node(lean, 4).at[1], L / 4 * std::tan(phi), 1e-12));
    const Solution s = solve(lean, push_down(lean, P));
    REQUIRE_MESSAGE(s.usable(), s.message);
    CHECK(close(std::abs(s.reaction[3]), P * phi * std::tan(k * L) / k, 2e-3));
}

TEST_CASE("imperfection: a new drawing is free of stress, and a set strap keeps its strain") {
    Frame frame = mast(4, true, false);
    frame.nodes.push_back({"eye", {-2, 0, 0}, {true, true, true, false, false, false}});
    FrameMember strap = frame.members[0];
    strap.kind = MemberKind::strap;
    strap.from = 4;
    strap.to = 5;
    strap.free_length = std::hypot(2.0, L) / 1.002;
    frame.members.push_back(strap);
    for (const Frame& other : {out_of_plumb(frame, 0.2, 0.02, {1, 1}), leaning(frame, 3, -0.1, {1, 0}),
                               bowed(frame, {0, 1, 2, 3}, 0.02, {0, 1, 1}, BowShape::parabola),
                               shaped(frame, std::vector<double>(36, 0.3), 0.01)}) {
        for (std::size_t m = 0; m < frame.members.size(); ++m) {
            const double before = drawn_length(frame, frame.members[m]) / frame.members[m].free_length;
            CHECK(close(drawn_length(other, other.members[m]) / other.members[m].free_length, before, 1e-14));
        }
        CHECK(other.nodes[5].at == frame.nodes[5].at);  // held
    }
    Frame plain = mast(4, true, false);
    const Solution s = solve(bowed(plain, all_members(plain), 0.05, {1, 0, 0}), {});
    REQUIRE(s.usable());
    CHECK(close_abs(s.energy, 0, 1e-12));
}

TEST_CASE("imperfection: shapes of bows, and either order of a chain") {
    const Frame frame = mast(4, true, false);
    const Frame sine = bowed(frame, {0, 1, 2, 3}, 0.02, {0, 0.5, 7});
    const Frame parabola = bowed(frame, {3, 2, 1, 0}, 0.02, {0, 0.5, 7}, BowShape::parabola);
    CHECK(close(node(sine, 1).at[1], 0.02 * std::sin(pi / 4), 1e-12));
    CHECK(close(node(parabola, 1).at[1], 0.02 * 0.75, 1e-12));
    CHECK(close(node(parabola, 2).at[1], 0.02, 1e-12));
    CHECK(node(parabola, 2).at[2] == frame.nodes[2].at[2]);
    CHECK(node(sine, 0).at == frame.nodes[0].at);
    CHECK(node(sine, 4).at == frame.nodes[4].at);
}

TEST_CASE("imperfection: the top of one member leans, the rest stays") {
    const Frame frame = mast(4, true, false);
    const Frame lean = leaning(frame, 3, 0.01, {1, 0});
    CHECK(close(node(lean, 4).at[0], L / 4 * std::tan(0.01), 1e-12));
    for (int n = 0; n < 4; ++n) CHECK(node(lean, n).at == node(frame, n).at);
}

TEST_CASE("imperfection: off in its own buckling mode a column bows by the same law") {
    Frame frame = mast(16, false, true);
    for (FrameNode& n : frame.nodes) n.held[0] = true;  // one plane, or two modes are alike
    const double euler = pi * pi * EI / (L * L);
    const FrameLoads loads = push_down(frame, 0.5 * euler);
    const Solution straight = solve(frame, loads);
    REQUIRE(straight.usable());
    const Buckling modes = buckling(frame, loads, straight);
    REQUIRE_FALSE(modes.modes.empty());
    const Frame off = shaped(frame, modes.modes[0].shape, -2e-3);
    CHECK(close(std::abs(node(off, 8).at[1]), 2e-3, 1e-9));
    const Solution s = solve(off, loads);
    REQUIRE(s.usable());
    CHECK(close(std::abs(s.displacement[6 * 8 + 1]), 2e-3 * 0.5 / 0.5, 0.012));
}

TEST_CASE("imperfection: refusals") {
    const Frame frame = mast(4, true, false);
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return out_of_plumb(frame, bad, 0.01, {1, 0}); }) == "frame.imperfection.level");
        CHECK(code_of([&] { return out_of_plumb(frame, 0, bad, {1, 0}); }) == "frame.imperfection.angle");
        CHECK(code_of([&] { return out_of_plumb(frame, 0, 0.1, {bad, 0}); }) == "frame.imperfection.direction");
        CHECK(code_of([&] { return leaning(frame, 0, bad, {1, 0}); }) == "frame.imperfection.angle");
        CHECK(code_of([&] { return bowed(frame, {0, 1}, bad, {1, 0, 0}); }) == "frame.imperfection.rise");
        CHECK(code_of([&] { return bowed(frame, {0, 1}, 1, {bad, 0, 0}); }) == "frame.imperfection.direction");
        CHECK(code_of([&] { return shaped(frame, std::vector<double>(30, 1.0), bad); }) ==
              "frame.imperfection.amplitude");
        CHECK(code_of([&] { return shaped(frame, std::vector<double>(30, bad), 1); }) == "frame.imperfection.shape");
    }
    CHECK(code_of([&] { return out_of_plumb(frame, 0, 1.3, {1, 0}); }) == "frame.imperfection.angle");
    CHECK(code_of([&] { return out_of_plumb(frame, 0, 0.1, {0, 0}); }) == "frame.imperfection.direction");
    CHECK(code_of([&] { return leaning(frame, 4, 0.1, {1, 0}); }) == "frame.imperfection.member");
    CHECK(code_of([&] { return leaning(frame, -1, 0.1, {1, 0}); }) == "frame.imperfection.member");
    CHECK(code_of([&] { return bowed(frame, {0}, 0.1, {1, 0, 0}); }) == "frame.imperfection.chain");
    CHECK(code_of([&] { return bowed(frame, {0, 2}, 0.1, {1, 0, 0}); }) == "frame.imperfection.chain");
    CHECK(code_of([&] { return bowed(frame, {0, 9}, 0.1, {1, 0, 0}); }) == "frame.imperfection.chain");
    CHECK(code_of([&] { return bowed(frame, {0, 1, 1}, 0.1, {1, 0, 0}); }) == "frame.imperfection.chain");
    CHECK(code_of([&] { return bowed(frame, {0, 1}, 0.1, {0, 0, 1}); }) == "frame.imperfection.direction");
    CHECK(code_of([&] { return shaped(frame, {1, 2}, 0.1); }) == "frame.imperfection.shape");
    CHECK(code_of([&] { return shaped(frame, std::vector<double>(30, 0.0), 0.1); }) == "frame.imperfection.shape");
}
