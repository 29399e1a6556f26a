// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/tightening.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "frame/members.hpp"

using namespace coverframe;
using namespace coverframe::built;

namespace {

void add_node(Frame& f, const char* name, double x, double y, double z, bool held) {
    FrameNode n;
    n.name = name;
    n.at = {x, y, z};
    if (held) n.held = {true, true, true, false, false, false};
    f.nodes.push_back(n);
}

/// One upright, a ridge strap fore and aft over it and a cross strap athwart.
Frame one_upright() {
    Frame f;
    add_node(f, "foot", 2, 0, -0.7, true);
    add_node(f, "top", 2, 0, 0.5, false);
    add_node(f, "bow", 0, 0, 0, true);
    add_node(f, "stern", 4, 0, 0, true);
    add_node(f, "port", 2, -1.2, 0, true);
    add_node(f, "starboard", 2, 1.2, 0, true);
    join(f, "U1", MemberKind::upright, 0, 1, 3e5);
    join(f, "ridge", MemberKind::strap, 2, 1, 4e5);
    join(f, "ridge", MemberKind::strap, 1, 3, 4e5);
    join(f, "C1", MemberKind::strap, 4, 1, 1e5);
    join(f, "C1", MemberKind::strap, 1, 5, 1e5);
    return f;
}

const std::vector<StrapRun> runs{{"ridge", {1, 2}, 0}, {"C1", {3, 4}, 0}};
const TighteningOptions by_hand{.held_by_hand = {1}, .hand_stiffness = 1e5, .solve = {}};

/// A strap from wall to wall over a node that slides along it only by slipping: the top is held.
Frame over_a_held_top() {
    Frame f;
    add_node(f, "left", -1, 0, 0, true);
    add_node(f, "top", 0, 0, 1, true);
    add_node(f, "right", 1, 0, 0, true);
    join(f, "S", MemberKind::strap, 0, 1, 1e5);
    join(f, "S", MemberKind::strap, 1, 2, 1e5);
    return f;
}

}  // namespace

TEST_CASE("tighten_in_order: the strap pulled last has its tension, the earlier one has lost some") {
    const Tightened t = tighten_in_order(one_upright(), runs, {{0, 900, 0}, {1, 400, 0}}, {}, by_hand);
    REQUIRE(t.solution.usable());
    CHECK(t.message.empty());
    REQUIRE(t.tensions.size() == 2);
    CHECK(close(t.tensions[0][0], 900, 1e-8));
    CHECK(t.tensions[0][1] == 0);
    CHECK(close(t.tensions[1][1], 400, 1e-8));
    CHECK(t.tensions[1][0] < 899);  // the cross strap presses the upright down, and the ridge strap with it
    CHECK(t.tensions[1][0] > 500);
    CHECK(close(t.solution.members[1].axial, t.tensions[1][0], 1e-6));  // the hands carried nothing
}

TEST_CASE(
    "tighten_in_order: the other order ends elsewhere, and pulling in turn comes near the tensions set together") {
    const Tightened other = tighten_in_order(one_upright(), runs, {{1, 400, 0}, {0, 900, 0}}, {}, by_hand);
    REQUIRE(other.solution.usable());
    CHECK(close(other.tensions[1][0], 900, 1e-8));
    CHECK(other.tensions[1][1] < 399);
    std::vector<TighteningStep> steps;
    for (int i = 0; i < 12; ++i) steps.insert(steps.end(), {{0, 900, 0}, {1, 400, 0}});
    const Tightened often = tighten_in_order(one_upright(), runs, steps, {}, by_hand);
    const Tensioned together = tension_straps(one_upright(), {{"ridge", {1, 2}, 900}, {"C1", {3, 4}, 400}}, {});
    REQUIRE(often.solution.usable());
    REQUIRE(together.solution.usable());
    for (const std::size_t m : {1u, 2u, 3u, 4u}) {
        CHECK(close(often.solution.members[m].axial, together.solution.members[m].axial, 1e-6));
        CHECK(close(often.frame.members[m].free_length, together.frame.members[m].free_length, 1e-9));
    }
}

TEST_CASE("tighten_in_order: what the buckle gives back costs EA/L times it between rigid ends") {
    // a strap of 2 x 1.3 m between rigid places, EA 1e5: 5 mm given back cost nearly 1e5 x 0.005/2.6 = 192 N (by hand)
    Frame f;
    add_node(f, "left", -1.3, 0, 0, true);
    add_node(f, "middle", 0, 0, 0, true);
    add_node(f, "right", 1.3, 0, 0, true);
    join(f, "S", MemberKind::strap, 0, 1, 1e5);
    join(f, "S", MemberKind::strap, 1, 2, 1e5);
    const Tightened t = tighten_in_order(f, {{"S", {0, 1}, 0}}, {{0, 600, 0.005}}, {});
    REQUIRE(t.solution.usable());
    const double free = 2.6 / (1 + 600 / 1e5) + 0.005;
    CHECK(close(t.tensions[0][0], 1e5 * (2.6 - free) / free, 1e-8));
    CHECK(close(600 - t.tensions[0][0], 192.0, 0.02));
    const Tightened all_lost = tighten_in_order(f, {{"S", {0, 1}, 0}}, {{0, 600, 0.05}}, {});
    CHECK(all_lost.tensions[0][0] == 0);
}

TEST_CASE("tighten_in_order: without hands an upright that only one strap holds is named") {
    const Tightened t = tighten_in_order(one_upright(), runs, {{0, 900, 0}, {1, 400, 0}}, {});
    CHECK_FALSE(t.solution.usable());
    CHECK(t.message.find("strap ridge cannot be pulled") == 0);
    CHECK(t.tensions.empty());
    // The ridge strap alone holds the top athwart with 2 T/L = 873 N/m against N/h = 364 N/m (by hand): it stands.
    CHECK(tighten_in_order(one_upright(), runs, {{0, 900, 0}}, {}, by_hand).solution.usable());
    // On a high stand, h = 0.1 m, N/h is 4370 N/m: it falls as soon as the hands let go.
    Frame stilted = one_upright();
    stilted.nodes[0].at[2] = 0.4;
    stilted.members[0].free_length = drawn_length(stilted, stilted.members[0]);
    const Tightened fallen = tighten_in_order(stilted, runs, {{0, 900, 0}}, {}, by_hand);
    CHECK_FALSE(fallen.solution.usable());
    CHECK(fallen.message.find("without the hands it does not stand") == 0);
}

TEST_CASE("tighten_in_order: nonsense is refused") {
    const auto refusal = [](const std::vector<StrapRun>& of, const std::vector<TighteningStep>& steps,
                            const TighteningOptions& options) {
        return code_of([&] { return tighten_in_order(one_upright(), of, steps, {}, options); });
    };
    CHECK(refusal({{"U1", {0}, 0}}, {}, {}) == "frame.run");
    CHECK(refusal({{"none", {}, 0}}, {}, {}) == "frame.run");
    CHECK(refusal(runs, {{2, 900, 0}}, {}) == "frame.step");
    CHECK(refusal(runs, {{0, 0, 0}}, {}) == "frame.step");
    CHECK(refusal(runs, {{0, 900, -0.001}}, {}) == "frame.step");
    CHECK(refusal(runs, {{0, not_finite[0], 0}}, {}) == "frame.step");
    CHECK(refusal(runs, {{0, 900, 0}}, {.held_by_hand = {9}, .hand_stiffness = 1e5, .solve = {}}) == "frame.step");
    for (const double stiffness : {0.0, -1.0, not_finite[0]}) {
        const TighteningOptions limp{.held_by_hand = {1}, .hand_stiffness = stiffness, .solve = {}};
        try {
            (void)tighten_in_order(one_upright(), runs, {{0, 900, 0}}, {}, limp);
            FAIL("taken");
        } catch (const InputError& error) {
            CHECK(error.where() == "/hand_stiffness");
        }
    }
}

TEST_CASE("slip_over_tops: without friction both sides carry the same, with friction the cone of Euler and Eytelwein") {
    // Straps of equal length over a held top that turns them by 90 degrees; 4 mm taken out of the left side alone.
    // By hand for mu = 0: the stretch is shared, T = EA 0.004/(2 sqrt(2) - 0.004).
    Frame f = over_a_held_top();
    f.members[0].free_length -= 0.004;
    const std::vector<Passing> over{{"S over the top", 0, 1}};
    const Slipped smooth = slip_over_tops(f, over, 0.0, {});
    REQUIRE(smooth.solution.usable());
    const double shared = 1e5 * 0.004 / (2 * std::sqrt(2.0) - 0.004);
    CHECK(close(smooth.passings[0].first, shared, 1e-6));
    CHECK(close(smooth.passings[0].second, shared, 1e-6));
    CHECK(close(smooth.passings[0].turn, std::acos(0.0), 1e-12));
    CHECK(close(smooth.passings[0].slipped, 0.002, 0.01));
    const Slipped rough = slip_over_tops(f, over, 0.4, {});
    REQUIRE(rough.solution.usable());
    CHECK(close(rough.passings[0].first / rough.passings[0].second, std::exp(0.4 * std::acos(0.0)), 1e-6));
    const double whole = f.members[0].free_length + f.members[1].free_length;
    CHECK(close(rough.frame.members[0].free_length + rough.frame.members[1].free_length, whole, 1e-14));
    // a cone wide enough: nothing moves
    Frame even = over_a_held_top();
    for (FrameMember& m : even.members) m.free_length -= 0.002;
    even.members[0].free_length -= 0.0002;
    const Slipped held = slip_over_tops(even, over, 0.4, {});
    CHECK(held.passings[0].slipped == 0);
    CHECK(held.rounds == 1);
}

TEST_CASE("slip_over_tops: on a free upright top the push is the sum of both pulls") {
    Frame f = one_upright();
    for (const std::size_t m : {1u, 2u, 3u, 4u}) f.members[m].free_length *= 0.996;
    f.members[3].free_length *= 0.999;
    const std::vector<Passing> over{{"ridge over U1", 1, 2}, {"C1 over U1", 3, 4}};
    for (const double mu : {0.0, 0.1, 0.4}) {
        CAPTURE(mu);
        const Slipped s = slip_over_tops(f, over, mu, {});
        REQUIRE(s.solution.usable());
        for (const PassingState& p : s.passings) {
            const double hold = std::exp(mu * p.turn);
            CHECK(p.first <= hold * p.second * (1 + 1e-6));
            CHECK(p.second <= hold * p.first * (1 + 1e-6));
        }
        CHECK(s.solution.members[0].axial < 0);
    }
    const Slipped smooth = slip_over_tops(f, over, 0.0, {});
    CHECK(close(smooth.passings[1].first, smooth.passings[1].second, 1e-6));
}

TEST_CASE("slip_over_tops_bounds: every friction between them gives tensions between theirs, over one top") {
    Frame f = over_a_held_top();
    f.members[0].free_length -= 0.004;
    const std::vector<Passing> over{{"S over the top", 0, 1}};
    const SlippedBounds both = slip_over_tops_bounds(f, over, 0.4, {});
    REQUIRE(both.smooth.solution.usable());
    REQUIRE(both.rough.solution.usable());
    CHECK(close(both.smooth.passings[0].first, both.smooth.passings[0].second, 1e-6));
    CHECK(close(both.rough.passings[0].first / both.rough.passings[0].second, std::exp(0.4 * std::acos(0.0)), 1e-6));
    double first = both.smooth.passings[0].first;
    for (const double mu : {0.1, 0.2, 0.3, 0.4}) {
        const Slipped s = slip_over_tops(f, over, mu, {});
        CHECK(s.passings[0].first > first);
        first = s.passings[0].first;
        CHECK(s.passings[0].second < both.smooth.passings[0].second);
        CHECK(s.passings[0].second >= both.rough.passings[0].second * (1 - 1e-9));
    }
    CHECK(code_of([&] { return slip_over_tops_bounds(f, over, 2.1, {}); }) == "frame.friction");
}

TEST_CASE("slip_over_tops: nonsense is refused") {
    const auto refusal = [](const std::vector<Passing>& passings, double mu) {
        return code_of([&] { return slip_over_tops(one_upright(), passings, mu, {}); });
    };
    CHECK(refusal({{"U1", 0, 1}}, 0.2) == "frame.passing");
    CHECK(refusal({{"same", 1, 1}}, 0.2) == "frame.passing");
    CHECK(refusal({{"none", 1, 9}}, 0.2) == "frame.passing");
    CHECK(refusal({{"ridge", 1, 2}}, -0.1) == "frame.friction");
    CHECK(refusal({{"ridge", 1, 2}}, not_finite[0]) == "frame.friction");
}
