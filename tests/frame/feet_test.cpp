// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/feet.hpp"

#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <cmath>
#include <string>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "coverframe/frame/buckling.hpp"
#include "frame/kernel/assembly.hpp"
#include "frame/members.hpp"
#include "frame/random_frame.hpp"

using namespace coverframe;
using namespace coverframe::built;

namespace {

int add_node(Frame& f, const char* name, double x, double y, double z, const std::array<bool, 6>& held) {
    f.nodes.push_back({name, {x, y, z}, held});
    return static_cast<int>(f.nodes.size()) - 1;
}

FrameLoads force_on(const Frame& f, int node, double x, double y, double z) {
    FrameLoads loads;
    loads.force.assign(3 * f.nodes.size(), 0.0);
    const auto first = static_cast<std::size_t>(3 * node);
    loads.force[first] = x, loads.force[first + 1] = y, loads.force[first + 2] = z;
    return loads;
}

constexpr std::array<bool, 6> fixed{true, true, true, false, false, false};
constexpr std::array<bool, 6> guided{true, true, false, false, false, false};
constexpr std::array<bool, 6> in_plane{false, true, false, false, false, false};
constexpr std::array<bool, 6> free_node{};

/// An upright of 1.5 m on a pad of 400 N/mm that bears after 2 mm; foot and top can move up and down only. A strap from
/// the top to a place above keeps it from falling while it is lifted.
Frame on_a_pad() {
    Frame f;
    add_node(f, "foot", 0, 0, 0, guided);
    add_node(f, "top", 0, 0, 1.5, guided);
    add_node(f, "eye", 0, 0, 2.5, fixed);
    join(f, "U1", MemberKind::upright, 0, 1, 30e6);
    join(f, "hanger", MemberKind::strap, 2, 1, 1e5);
    f.feet = {{.node = 0, .stiffness = 4e5, .gap = 0.002, .friction = 0, .side_stiffness = 0}};
    return f;
}

/// A block on the deck: a node on a foot, tied along x by a bar of EA/L = 1e5 N/m.
Frame block(double mu) {
    Frame f;
    add_node(f, "block", 0, 0, 0, in_plane);
    add_node(f, "wall", -2, 0, 0, fixed);
    join(f, "tie", MemberKind::bar, 0, 1, 2e5);
    f.feet = {{.node = 0, .stiffness = 1e7, .gap = 0, .friction = mu, .side_stiffness = 3e5}};
    return f;
}

/// Two legs from a top at 2 m to feet 0.8 m to either side, tied to one another at the feet by a strap of 1.6 m.
Frame trestle(double mu) {
    Frame f;
    add_node(f, "top", 0, 0, 2, {true, true, false, false, false, false});
    add_node(f, "left", -0.8, 0, 0, in_plane);
    add_node(f, "right", 0.8, 0, 0, in_plane);
    join(f, "leg left", MemberKind::upright, 1, 0, 1e8);
    join(f, "leg right", MemberKind::upright, 2, 0, 1e8);
    join(f, "tie", MemberKind::strap, 1, 2, 1e7);
    for (const int node : {1, 2}) {
        f.feet.push_back({.node = node, .stiffness = 1e8, .gap = 0, .friction = mu, .side_stiffness = 1e7});
    }
    return f;
}

}  // namespace

TEST_CASE("feet: an upright on a pad sinks by the gap and by what both give; the hanger takes its share") {
    // By hand: down by s at the top, the strap pulls 1e5 s; past the gap upright and pad, one on the other, push
    // k (s - gap), 1/k = 1/4e5 + 1.5/30e6.
    const double k = 1 / (1 / 4e5 + 1.5 / 30e6);
    const Frame f = on_a_pad();
    const Solution pressed = solve(f, force_on(f, 1, 0, 0, -1000));
    REQUIRE_MESSAGE(pressed.usable(), pressed.message);
    const double s = (1000 + k * 0.002) / (1e5 + k);
    CHECK(close(-pressed.displacement[8], s, 1e-6));
    REQUIRE(pressed.feet.size() == 1);
    CHECK(pressed.feet[0].carries);
    CHECK_FALSE(pressed.feet[0].slips());
    CHECK(close(pressed.feet[0].push, k * (s - 0.002), 1e-6));
    CHECK(close(pressed.reaction[2], pressed.feet[0].push, 1e-12));
    CHECK(close(pressed.reaction[2] + pressed.reaction[14], 1000, 1e-9));
    CHECK(close(pressed.members[0].axial, -pressed.feet[0].push, 1e-9));
    CHECK(pressed.loose.empty());
    // With 150 N it does not come down to the pad.
    const Solution hangs = solve(f, force_on(f, 1, 0, 0, -150));
    REQUIRE_MESSAGE(hangs.usable(), hangs.message);
    CHECK_FALSE(hangs.feet[0].carries);
    CHECK(hangs.feet[0].push == 0);
    CHECK(close(hangs.members[1].axial, 150, 1e-9));
    CHECK(hangs.loose == std::vector<int>{0});
}

TEST_CASE("feet: a harder pad comes to a held foot as it gets hard") {
    const Frame f = on_a_pad();
    Frame held = f;
    held.feet.clear();
    held.nodes[0].held[2] = true;
    held.members[0].free_length -= 0.002;
    const Solution hard = solve(held, force_on(held, 1, 0, 0, -1000));
    double before = 1;
    for (const double k : {1e6, 1e8, 1e10}) {
        Frame soft = f;
        soft.feet[0].stiffness = k;
        const Solution s = solve(soft, force_on(soft, 1, 0, 0, -1000));
        REQUIRE(s.usable());
        const double off = std::abs(s.members[0].axial / hard.members[0].axial - 1);
        CHECK(off < before / 10);
        before = off;
    }
    CHECK(before < 1e-4);
}

TEST_CASE("feet: a block holds up to mu N, then slips and leaves the rest to its tie") {
    // By hand: pressed by 1000 N, pulled by H. It holds while k_s u < 300, u = H/(3e5 + 1e5): H < 400 N. Then u = (H -
    // 300)/1e5.
    const Frame f = block(0.3);
    for (const double H : {100.0, 399.0, 401.0, 700.0}) {
        CAPTURE(H);
        const Solution s = solve(f, force_on(f, 0, H, 0, -1000));
        REQUIRE_MESSAGE(s.usable(), s.message);
        const bool holds = H < 400;
        const double u = holds ? H / 4e5 : (H - 300) / 1e5;
        CHECK(close(s.displacement[0], u, 1e-4));  // the tie turns a little as the block sinks by 0.1 mm
        CHECK(s.feet[0].slips() != holds);
        CHECK(close(s.feet[0].side[0], holds ? -3e5 * u : -300, 1e-4));
        CHECK(close_abs(s.feet[0].side[0] + s.reaction[6], -H, 1e-6));
        CHECK(close_abs(s.reaction[0] + s.reaction[6], -H, 1e-6));
        CHECK(close_abs(s.feet[0].slip, holds ? 0 : u - 0.001, 1e-6));
    }
    const Solution smooth = solve(block(0), force_on(f, 0, 700, 0, -1000));
    REQUIRE(smooth.usable());
    CHECK(close(smooth.displacement[0], 0.007, 1e-4));
    CHECK(smooth.feet[0].side[0] == 0);
}

TEST_CASE("feet: lifted, a foot holds nothing sideways, whatever its friction") {
    const Frame f = block(0.6);
    FrameLoads loads = force_on(f, 0, 500, 0, 0);
    loads.springs.push_back({0, {0, 0, 0, 0, 0, 0, 0, 0, 1e4}, {}, {}});
    loads.force[2] = 20;
    const Solution s = solve(f, loads);
    REQUIRE_MESSAGE(s.usable(), s.message);
    CHECK_FALSE(s.feet[0].carries);
    CHECK(s.feet[0].side[0] == 0);
    CHECK(close(s.displacement[0], 0.005, 1e-3));
}

TEST_CASE("feet: without friction and tie a foot slides, and the status names it") {
    Frame f = trestle(0);
    f.members.pop_back();
    const Solution s = solve(f, force_on(f, 0, 0, 0, -1000));
    CHECK(s.status == SolveStatus::mechanism);
    const bool named = s.message.find("the foot at node \"left\" can slide fore and aft") == 0 ||
                       s.message.find("the foot at node \"right\" can slide fore and aft") == 0;
    CHECK_MESSAGE(named, s.message);
    // tan a = 0.4: with mu = 0.5 the feet hold by themselves, with 0.3 they do not.
    for (const double mu : {0.3, 0.39, 0.41, 0.5}) {
        CAPTURE(mu);
        for (Foot& foot : f.feet) foot.friction = mu;
        const Solution rough = solve(f, force_on(f, 0, 0, 0, -1000));
        CHECK_MESSAGE(rough.usable() == (mu > 0.4), rough.message);
    }
}

TEST_CASE("feet: the tie of a trestle carries what friction leaves of the thrust") {
    // By hand: each foot is pressed by P/2 and thrust outwards by P/2 tan a, tan a = 0.4. Slipping: tie = P/2 (0.4 -
    // mu).
    for (const double mu : {0.0, 0.1, 0.2, 0.3}) {
        CAPTURE(mu);
        const Frame f = trestle(mu);
        const Solution s = solve(f, force_on(f, 0, 0, 0, -2000));
        REQUIRE_MESSAGE(s.usable(), s.message);
        const double stiff = 1e7 / 0.8;  // of half the tie; against it the foot's own 1e7 N/m until it slips
        const double share = stiff / (stiff + 1e7);
        const double tie = std::max(1000 * (0.4 - mu), 400 * share);
        CHECK(close(s.members[2].axial, tie, 1e-3));
        CHECK(close(s.feet[0].push, 1000, 1e-6));
        CHECK(s.feet[0].slips() == (mu > 0 && mu < 0.17));
    }
    const FrictionBounds both = solve_friction_bounds(trestle(0.1), force_on(trestle(0.1), 0, 0, 0, -2000));
    CHECK(close(both.smooth.members[2].axial, 400, 1e-3));
    CHECK(close(both.rough.members[2].axial, 300, 1e-3));
}

TEST_CASE("feet: pushes that follow from the sideways hold settle together") {
    // A leg that leans by tan a = 0.4 presses its foot by S/0.4 when it slips with S; the other way round S = mu N. By
    // hand, with a top that a level strap of 1e5 N/m holds and a load P on it: the leg carries P, the strap 0.4 P - ...
    Frame f;
    add_node(f, "top", 0, 0, 2, in_plane);
    add_node(f, "foot", 0.8, 0, 0, in_plane);
    add_node(f, "wall", 2, 0, 2, fixed);
    add_node(f, "post", 0, 0, 4, fixed);
    join(f, "leg", MemberKind::upright, 1, 0, 1e8);
    join(f, "guy", MemberKind::strap, 0, 2, 2e5);
    join(f, "hanger", MemberKind::strap, 3, 0, 1e4);
    f.feet = {{.node = 1, .stiffness = 1e7, .gap = 0, .friction = 0.39, .side_stiffness = 1e6}};
    join(f, "spring", MemberKind::bar, 1, 2, 1e4);
    const Solution s = solve(f, force_on(f, 0, 0, 0, -1000));
    REQUIRE_MESSAGE(s.usable(), s.message);
    CHECK(s.feet[0].slips());
    CHECK(close(std::hypot(s.feet[0].side[0], s.feet[0].side[1]), 0.39 * s.feet[0].push, 1e-7));
    double z = -1000;
    double x = 0;
    for (std::size_t n = 0; n < f.nodes.size(); ++n) x += s.reaction[6 * n], z += s.reaction[6 * n + 2];
    CHECK(close_abs(z, 0, 1e-6));
    CHECK(close_abs(x, 0, 1e-6));
}

TEST_CASE("feet: energy, force and tangent of a frame with feet and hung straps agree") {
    for (unsigned seed = 1; seed <= 40; ++seed) {
        CAPTURE(seed);
        random_frames::Example e = random_frames::example(seed);
        random_frames::Random random(seed);
        for (std::size_t n = 0; n < e.frame.nodes.size(); ++n) {
            if (e.frame.nodes[n].held[2]) continue;
            e.frame.feet.push_back({static_cast<int>(n), 1e5, random.between(0, 0.01), 0.3, 4e4});
        }
        e.loads.member_load.assign(3 * e.frame.members.size(), 0.0);
        for (double& q : e.loads.member_load) q = random.between(-60, 60);
        kernel::Assembly assembly(e.frame);
        const Eigen::Index size = 6 * static_cast<Eigen::Index>(e.frame.nodes.size());
        Eigen::VectorXd u = Eigen::VectorXd::Zero(size);
        for (int i = 0; i < assembly.unknowns(); ++i) u(assembly.full_of(i)) = random.between(-0.02, 0.02);
        assembly.feet().take_pushes(u);
        kernel::Assembly::State state, more, less;
        assembly.evaluate(u, e.loads, state);
        const Eigen::MatrixXd K = assembly.band().dense(state.K);
        Eigen::VectorXd way = Eigen::VectorXd::Zero(size);
        Eigen::VectorXd d(assembly.unknowns()), slope(assembly.unknowns());
        for (int i = 0; i < assembly.unknowns(); ++i) way(assembly.full_of(i)) = d(i) = random.between(-1, 1);
        const double step = 1e-6;
        assembly.evaluate(u + step * way, e.loads, more);
        assembly.evaluate(u - step * way, e.loads, less);
        CHECK(close_abs((more.energy - less.energy) / (2 * step), state.gradient.dot(way),
                        1e-6 * state.gradient.cwiseAbs().dot(way.cwiseAbs())));
        for (int i = 0; i < assembly.unknowns(); ++i) {
            slope(i) = (more.gradient(assembly.full_of(i)) - less.gradient(assembly.full_of(i))) / (2 * step);
        }
        CHECK(close_abs((slope - K * d).norm(), 0, 2e-5 * (K.cwiseAbs() * d.cwiseAbs()).norm()));
    }
}

TEST_CASE(
    "feet: an upright whose foot gives sideways topples earlier, by the springs of both ends one behind the other") {
    // By hand: a rigid strut of height h on springs k_f below and k_t above stands up to N = h k_t k_f/(k_t + k_f).
    Frame f;
    add_node(f, "foot", 0, 0, 0, in_plane);
    add_node(f, "top", 0, 0, 1.2, in_plane);
    join(f, "U1", MemberKind::upright, 0, 1, 1e9);
    f.feet = {{.node = 0, .stiffness = 1e8, .gap = 0, .friction = 0.5, .side_stiffness = 1500}};
    FrameLoads loads = force_on(f, 1, 0, 0, -500);
    loads.springs.push_back({1, {1000, 0, 0, 0, 0, 0, 0, 0, 0}, {}, {}});
    const double critical = 1.2 / (1 / 1000.0 + 1 / 1500.0);
    const Solution s = solve(f, loads);
    REQUIRE_MESSAGE(s.usable(), s.message);
    loads.force[5] = -0.99 * critical;
    CHECK(solve(f, loads).usable());
    loads.force[5] = -1.01 * critical;
    CHECK_FALSE(solve(f, loads).usable());
    // upright_stability looks at both level directions; the same springs athwart
    f.nodes[0].held = free_node;
    f.nodes[1].held = free_node;
    loads.springs[0].stiffness = {1000, 0, 0, 0, 1000, 0, 0, 0, 0};
    loads.force[5] = -500;
    const Solution round = solve(f, loads);
    REQUIRE_MESSAGE(round.usable(), round.message);
    const std::vector<UprightStability> all = upright_stability(f, loads, round);
    REQUIRE(all.size() == 1);
    CHECK(close(all[0].critical, critical, 1e-6));
    CHECK(close(all[0].push, 500, 1e-6));
}

TEST_CASE("feet: nonsense is refused") {
    const auto refusal = [](const auto& change) {
        Frame f = on_a_pad();
        change(f.feet[0]);
        return code_of([&] { return solve(f, {}); });
    };
    CHECK(refusal([](Foot& foot) { foot.node = 7; }) == "frame.foot.node");
    CHECK(refusal([](Foot& foot) { foot.node = 2; }) == "frame.foot.held");
    CHECK(refusal([](Foot& foot) { foot.stiffness = 0; }) == "frame.foot.number");
    CHECK(refusal([](Foot& foot) { foot.gap = -0.001; }) == "frame.foot.number");
    CHECK(refusal([](Foot& foot) { foot.friction = 2.1; }) == "frame.foot.number");
    CHECK(refusal([](Foot& foot) { foot.friction = 0.3; }) == "frame.foot.number");
    for (const double bad : not_finite) {
        CHECK(refusal([&](Foot& foot) { foot.stiffness = bad; }) == "frame.foot.number");
        CHECK(refusal([&](Foot& foot) { foot.gap = bad; }) == "frame.foot.number");
        CHECK(refusal([&](Foot& foot) { foot.friction = bad; }) == "frame.foot.number");
        CHECK(refusal([&](Foot& foot) { foot.side_stiffness = bad; }) == "frame.foot.number");
    }
    CHECK(refusal([](Foot&) {}) == "none");
}
