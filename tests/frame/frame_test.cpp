// SPDX-License-Identifier: BSD-3-Clause
// Frames that cannot be, named with code, place, number and what to do; parts that nothing joins. No source is needed.
#include "coverframe/frame/frame.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "../actions/refusal.hpp"
#include "../close.hpp"
#include "coverframe/frame/pretension.hpp"
#include "coverframe/frame/tightening.hpp"
#include "frame/members.hpp"

using namespace coverframe;

namespace {

constexpr std::array<bool, 6> pinned{true, true, true, false, false, false};

FrameMember member(const Frame& f, const std::string& name, MemberKind kind, int from, int to, double EA) {
    FrameMember m = built::member(f, name, kind, from, to, EA);
    m.bending = {100, 100, 0, 0, 10};
    return m;
}

/// An upright of 1.2 m held by four straps that are set.
Frame support() {
    Frame f;
    f.nodes = {{"foot", {0, 0, 0}, pinned},        {"top", {0, 0, 1.2}, {}},      {"port", {0, -2, 0.9}, pinned},
               {"starboard", {0, 2, 0.9}, pinned}, {"bow", {-2, 0, 0.9}, pinned}, {"stern", {2, 0, 0.9}, pinned}};
    f.members = {member(f, "U1", MemberKind::upright, 0, 1, 20e6)};
    for (const auto& [name, end] : {std::pair{"C1 port", 2}, {"C1 starboard", 3}, {"fore", 4}, {"aft", 5}}) {
        f.members.push_back(member(f, name, MemberKind::strap, 1, end, 1e5));
        f.members.back().free_length -= 0.01;
    }
    return f;
}

/// A pole of 1 m beside it that nothing joins to it.
Frame with_spare_pole(std::array<bool, 6> held_from) {
    Frame f = support();
    f.nodes.push_back({"far", {0, 3, 0}, held_from});
    f.nodes.push_back({"end", {1, 3, 0}, {}});
    f.members.push_back(member(f, "spare pole", MemberKind::pole, 6, 7, 1e6));
    return f;
}

/// The only problem of a call that is refused.
template <class Call>
Problem problem_of(const Call& call) {
    try {
        static_cast<void>(call());
    } catch (const InputError& error) {
        REQUIRE(error.problems().size() == 1);
        return error.problems().front();
    }
    FAIL("not refused");
    return {};
}

template <class Change>
Problem refused(const Change& change) {
    Frame f = support();
    change(f);
    return problem_of([&] { return (require_sound(f), 0); });
}

bool says(const std::string& text, const char* words) { return text.find(words) != std::string::npos; }

}  // namespace

TEST_CASE("frame: supports that fight are named with place and number") {
    Problem p = refused([](Frame& f) { f.springs = {{0, {0, 0, 2e4, 0, 0, 0}}}; });
    CHECK(p.code == "frame.spring.held");
    CHECK(p.where == "/frame/springs/0/stiffness/2");
    CHECK(p.value == "20000");
    CHECK(says(p.advice, "foot in uz already"));
    // A spring about an axis that is free, or of no stiffness, fights nobody.
    Frame f = support();
    f.springs = {{0, {0, 0, 0, 0, 0, 50}}};
    CHECK(code_of([&] { return (require_sound(f), 0); }) == "none");

    p = refused([](Frame& g) { g.feet = {{0, 1e5, 0, 0, 0}}; });
    CHECK(p.code == "frame.foot.held");
    CHECK(p.where == "/frame/feet/0");
    CHECK(p.value == "foot");
    p = refused([](Frame& g) { g.feet = {{0, 1e5, 0.01, 0, 0}}; });  // a gap under a node that is held
    CHECK(p.code == "frame.foot.held");

    p = refused([](Frame& g) {
        g.nodes[0].held[2] = false;
        g.feet = {{0, 1e5, 0, 0.3, 1e5}};
    });
    CHECK(p.code == "frame.foot.friction");
    CHECK(p.where == "/frame/feet/0/friction");
    CHECK(p.value == "0.3");
    // In a groove it slides one way, and rubs.
    f.springs.clear();
    f.nodes[0].held = {true, false, false, false, false, false};
    f.feet = {{0, 1e5, 0, 0.3, 1e5}};
    CHECK(code_of([&] { return (require_sound(f), 0); }) == "none");

    p = refused([](Frame& g) {
        g.nodes[0].held[2] = false;
        g.feet = {{0, 1e5, 0, 0, 0}, {0, 2e5, 0.002, 0, 0}};
    });
    CHECK(p.code == "frame.foot.doubled");
    CHECK(p.where == "/frame/feet/1");
    CHECK(p.value == "foot");
}

TEST_CASE("frame: arms that meet leave a member without length") {
    const Problem p = refused([](Frame& f) {
        f.members.push_back(member(f, "link", MemberKind::bar, 4, 5, 1e6));
        f.members.back().arm_from = {2, 0, 0};
        f.members.back().arm_to = {-2, 0, 0};
    });
    CHECK(p.code == "frame.member.length");
    CHECK(p.where == "/frame/members/5");
    CHECK(says(p.advice, "at the ends of their arms"));
}

TEST_CASE("frame: a number that makes no sense is named with its field and value") {
    Problem p = refused([](Frame& f) { f.members[0].axial_stiffness = -2e6; });
    CHECK(p.code == "frame.member.stiffness");
    CHECK(p.where == "/frame/members/0/axial_stiffness");
    CHECK(p.value == "-2e+06");
    CHECK(says(p.advice, "member U1: axial stiffness must be"));
    p = refused([](Frame& f) { f.springs = {{1, {0, -3, 0, 0, 0, 0}}}; });
    CHECK(p.code == "frame.spring.stiffness");
    CHECK(p.where == "/frame/springs/0/stiffness/1");
    CHECK(p.value == "-3");
}

TEST_CASE("frame: a settlement of a free direction is named") {
    const Frame f = support();
    FrameLoads loads;
    loads.settlement.assign(36, 0.0);
    loads.settlement[6 + 2] = -0.01;
    const Problem p = problem_of([&] { return solve(f, loads); });
    CHECK(p.code == "frame.loads.settlement");
    CHECK(p.where == "/loads/settlement/8");
    CHECK(p.value == "top");
    CHECK(says(p.advice, "not held in uz"));
}

TEST_CASE("frame: a strap asked to push is named, however it is asked") {
    for (const double length : {0.0, -0.5}) {
        const Problem p = refused([&](Frame& f) { f.members[2].free_length = length; });
        CHECK(p.code == "frame.strap.push");
        CHECK(p.where == "/frame/members/2/free_length");
        CHECK(p.value == (length < 0 ? "-0.5" : "0"));
        CHECK(says(p.advice, "strap C1 starboard would have to push"));
    }
    // An upright of no length is another matter.
    CHECK(refused([](Frame& f) { f.members[0].free_length = -1; }).code == "frame.member.stiffness");
    CHECK(refused([](Frame& f) { f.members[1].free_length = std::nan(""); }).code == "frame.member.stiffness");

    const Frame f = support();
    const std::vector<StrapRun> runs{{"C1", {1, 2}, 400}, {"ridge", {3, 4}, -150}};
    Problem p = problem_of([&] { return tension_straps(f, runs, {}); });
    CHECK(p.code == "frame.strap.push");
    CHECK(p.where == "/runs/1/tension");
    CHECK(p.value == "-150");
    CHECK(says(p.advice, "strap ridge would have to push"));
    p = problem_of([&] { return tighten_in_order(f, {runs[0]}, {{0, 400, 0}, {0, -90, 0}}, {}); });
    CHECK(p.code == "frame.strap.push");
    CHECK(p.where == "/steps/1/tension");
    CHECK(p.value == "-90");
    // A strap that is to hang slack gets no step, rather than one with a tension of nothing.
    p = problem_of([&] { return tighten_in_order(f, {runs[0]}, {{0, 0, 0}}, {}); });
    CHECK(p.code == "frame.step");
    CHECK(p.where == "/steps/0/tension");
    CHECK(says(p.advice, "slack"));
    p = problem_of([&] { return tension_straps(f, {{"C1", {1, 2}, not_finite[1]}}, {}); });
    CHECK(p.code == "frame.run");
    CHECK(p.where == "/runs/0/tension");
}

TEST_CASE("frame: a member in two straps, or twice in one, is named") {
    const Frame f = support();
    Problem p = problem_of([&] { return tension_straps(f, {{"C1", {1, 2}, 400}, {"ridge", {3, 2}, 300}}, {}); });
    CHECK(p.code == "frame.run.shared");
    CHECK(p.where == "/runs/1/members/1");
    CHECK(p.value == "C1 starboard");
    CHECK(says(p.advice, "strap C1 already"));
    p = problem_of([&] { return tension_straps(f, {{"C1", {1, 2, 1}, 400}}, {}); });
    CHECK(p.code == "frame.run.shared");
    CHECK(p.where == "/runs/0/members/2");
}

TEST_CASE("frame: a strap of which nothing is left is pulled to no tension") {
    // EA of 100 N: at 900 N it would be nine times as long as free; the crew has 2 m between top and rail.
    Frame f = support();
    f.members[1].axial_stiffness = f.members[2].axial_stiffness = 100;
    const Tightened t = tighten_in_order(f, {{"C1", {1, 2}, 0}, {"ridge", {3, 4}, 0}}, {{1, 400, 0}, {0, 1e6, 0}}, {},
                                         {.held_by_hand = {1}, .hand_stiffness = 1e5, .solve = {}});
    CHECK_FALSE(t.message.empty());
    CHECK(says(t.message, "strap C1 cannot be pulled to its tension"));
}

TEST_CASE("frame: a part that nothing holds is a mechanism by the names of its nodes and members") {
    const Frame adrift = with_spare_pole({});
    CHECK(code_of([&] { return (require_sound(adrift), 0); }) == "none");
    const Solution s = solve(adrift, {});
    CHECK(s.status == SolveStatus::mechanism);
    CHECK_MESSAGE(says(s.message, "nothing ties its part to the boat (nodes \"far\", \"end\"; members \"spare pole\")"),
                  s.message);
    CHECK(says(s.message, "join it to the rest or hold it"));
    CHECK_FALSE(says(s.message, "U1"));

    // Two such parts are both named, and a strap on the floor is one of them, though it hangs slack.
    Frame two = adrift;
    two.nodes.push_back({"hook", {0, 4, 0}, {}});
    two.nodes.push_back({"eye", {1, 4, 0}, {}});
    two.members.push_back(member(two, "spare strap", MemberKind::strap, 8, 9, 1e5));
    const Solution both = solve(two, {});
    CHECK(both.status == SolveStatus::mechanism);
    CHECK_MESSAGE((says(both.message, "\"spare pole\"") && says(both.message, "\"spare strap\"")), both.message);
    two.members[5] = two.members.back();
    two.members.pop_back();
    two.members[5].from = 6;
    two.members[5].to = 7;
    two.nodes.resize(8);
    const Solution slack = solve(two, {});
    CHECK(slack.status == SolveStatus::mechanism);
    CHECK_MESSAGE(says(slack.message, "members \"spare strap\""), slack.message);

    // With a load on it as well.
    FrameLoads loads;
    loads.force.assign(3 * adrift.nodes.size(), 0.0);
    loads.force[3 * 7 + 2] = -50;
    const Solution pushed = solve(adrift, loads);
    CHECK(pushed.status == SolveStatus::mechanism);
    CHECK_MESSAGE(says(pushed.message, "members \"spare pole\""), pushed.message);
}

TEST_CASE("frame: parts that are each held on their own stand, and change nothing for one another") {
    const Frame alone = support();
    FrameLoads loads;
    loads.force.assign(18, 0.0);
    loads.force[3 + 2] = -300;
    const Solution one = solve(alone, loads);
    REQUIRE(one.usable());
    const Frame f = with_spare_pole({true, true, true, true, true, true});
    loads.force.resize(24, 0.0);
    loads.force[3 * 7 + 2] = -1;
    const Solution both = solve(f, loads);
    REQUIRE_MESSAGE(both.usable(), both.message);
    CHECK(close(both.members[0].axial, one.members[0].axial, 1e-9));
    CHECK(close(-both.displacement[6 * 7 + 2], 1.0 / (3 * 100), 1e-4));  // P L^3/(3 EI)
    // Held by a foot, a spring or an elastic support of the loads it is no part adrift.
    Frame sprung = with_spare_pole({});
    sprung.springs = {{6, {1e3, 1e3, 1e3, 1e3, 1e3, 1e3}}};
    CHECK(solve(sprung, loads).usable());
    sprung.springs = {{6, {0, 0, 0, 0, 0, 0}}};
    CHECK(solve(sprung, loads).status == SolveStatus::mechanism);
    sprung.springs.clear();
    for (const int node : {6, 7}) loads.springs.push_back({node, {1e3, 0, 0, 0, 1e3, 0, 0, 0, 1e3}, {}, {}});
    const Solution hung = solve(sprung, loads);
    CHECK_FALSE(says(hung.message, "nothing ties"));  // but it can turn about its own axis
    CHECK(says(hung.message, "turn"));
}
