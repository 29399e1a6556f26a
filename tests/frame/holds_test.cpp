// SPDX-License-Identifier: BSD-3-Clause
// Holds of many uprights from one factor, against a frame without the upright, assembled and factored for each.
#include "frame/kernel/holds.hpp"

#include <doctest/doctest.h>

#include <Eigen/Dense>

#include "close.hpp"
#include "coverframe/frame/buckling.hpp"
#include "frame/kernel/assembly.hpp"
#include "frame/members.hpp"
#include "random_frame.hpp"

using namespace coverframe;
using namespace coverframe::random_frames;

namespace {

/// Least level stiffness at a node of the frame without a member, by a dense inverse; 0 where it does not stand.
double without_it(const Frame& frame, const FrameLoads& loads, const Solution& solution, int node, int without) {
    kernel::Assembly assembly(frame, without);
    assembly.hold(6 * node + 2);
    assembly.hold(6 * frame.members[at(without)].from + 2);
    assembly.hold(6 * frame.members[at(without)].to + 2);
    const Eigen::VectorXd u = Eigen::Map<const Eigen::VectorXd>(
        solution.displacement.data(), static_cast<Eigen::Index>(solution.displacement.size()));
    assembly.feet().take_pushes(u);
    kernel::Assembly::State state;
    assembly.evaluate(u, loads, state);
    const Eigen::MatrixXd K = assembly.band().dense(state.K);
    const Eigen::VectorXd root = K.diagonal().cwiseAbs().cwiseMax(1e-300).cwiseSqrt().cwiseInverse();
    const Eigen::LDLT<Eigen::MatrixXd> ldlt(root.asDiagonal() * K * root.asDiagonal());
    if (ldlt.vectorD().minCoeff() < 1e-9) return 0;
    const Eigen::MatrixXd F = root.asDiagonal() * ldlt.solve(Eigen::MatrixXd(root.asDiagonal()));
    const int x = assembly.unknown_at(6 * node);
    const int y = assembly.unknown_at(6 * node + 1);
    if (x < 0 || y < 0) return 0;
    Eigen::Matrix2d level;
    level << F(x, x), F(x, y), F(y, x), F(y, y);
    return 1 / Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d>(level).eigenvalues()(1);
}

}  // namespace

TEST_CASE("lateral_holds: from one factor as from a frame without the upright, on random frames") {
    int compared = 0;
    for (unsigned seed = 20001; seed <= 20240; ++seed) {
        CAPTURE(seed);
        Kind kind;
        kind.feet = seed % 3 == 0;
        kind.rough = seed % 6 == 0;
        kind.hung = seed % 4 == 0;
        kind.all_loads = seed % 5 == 0 && !kind.feet;
        kind.slack = false;
        const Example e = example(seed, kind);
        const Solution s = solve(e.frame, e.loads);
        if (!s.usable() || !s.loose.empty()) continue;  // the reference does not hold what hangs loose
        std::vector<HoldAt> places;
        for (std::size_t m = 0; m < e.frame.members.size(); ++m) {
            if (e.frame.members[m].kind != MemberKind::upright) continue;
            places.push_back({e.frame.members[m].to, static_cast<int>(m)});
            places.push_back({e.frame.members[m].from, static_cast<int>(m)});
        }
        const std::vector<LateralHold> holds = lateral_holds(e.frame, e.loads, s, places);
        REQUIRE(holds.size() == places.size());
        for (std::size_t i = 0; i < places.size(); ++i) {
            const double expected = without_it(e.frame, e.loads, s, places[i].node, places[i].without);
            CHECK(close_abs(holds[i].stiffness, expected, 1e-7 * (1 + expected)));
            const LateralHold one = lateral_hold(e.frame, e.loads, s, places[i].node, places[i].without);
            CHECK(one.stiffness == holds[i].stiffness);
            compared += expected > 0 ? 1 : 0;
        }
    }
    CHECK(compared > 200);
}

TEST_CASE("lateral_holds: nothing where nothing holds the top, whatever else the frame has") {
    // A post between a foot and a top that only a strap fore and aft touches: athwart nothing but its tension.
    Frame f;
    f.nodes = {{"foot", {0, 0, 0}, {true, true, true}},    {"top", {0, 0, 1.2}, {}},
               {"bow", {-2, 0, 1.2}, {true, true, true}},  {"stern", {2, 0, 1.2}, {true, true, true}},
               {"port", {0, -2, 0.8}, {true, true, true}}, {"starboard", {0, 2, 0.8}, {true, true, true}}};
    const auto join = [&](const char* name, MemberKind kind, int from, int to, double EA, double shorter) {
        built::join(f, name, kind, from, to, EA);
        f.members.back().free_length -= shorter;
    };
    join("U1", MemberKind::upright, 0, 1, 20e6, 0);
    join("fore", MemberKind::strap, 1, 2, 1e5, 0.01);
    join("aft", MemberKind::strap, 1, 3, 1e5, 0.01);
    join("C1 port", MemberKind::strap, 1, 4, 1e5, 0.002);
    join("C1 starboard", MemberKind::strap, 1, 5, 1e5, 0.002);
    Solution s = solve(f, {});
    REQUIRE_MESSAGE(s.usable(), s.message);
    CHECK(lateral_hold(f, {}, s, 1, 0).stiffness > 1e4);
    // The same place without the straps athwart: their tension pressed the upright, the ridge holds by T/l alone.
    f.members.resize(3);
    f.nodes.resize(4);
    s = solve(f, {});
    REQUIRE_MESSAGE(s.usable(), s.message);
    const double T = s.members[1].axial;
    CHECK(close(lateral_hold(f, {}, s, 1, 0).stiffness, 2 * T / 2.0, 1e-3));
    CHECK(lateral_hold(f, {}, s, 0, 0).stiffness == 0);  // the foot is held
}
