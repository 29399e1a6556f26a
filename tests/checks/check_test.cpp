// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/checks/check.hpp"

#include <array>
#include <limits>

#include <doctest/doctest.h>

#include "by_hand.hpp"
#include "close.hpp"
#include "coverframe/base/error.hpp"
#include "coverframe/checks/band.hpp"
#include "coverframe/checks/clearance.hpp"
#include "coverframe/checks/film.hpp"
#include "coverframe/checks/ridge.hpp"
#include "coverframe/checks/straps.hpp"
#include "coverframe/checks/uprights.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {

const Clause clause{"coverframe", "a rule"};

using Check = std::vector<Finding> (*)(const CheckInput&);
constexpr std::array<Check, 8> every_check{check_ridge,    check_uprights, check_straps,    check_film_stress,
                                           check_drainage, check_shedding, check_clearance, check_band};

std::string code_of(const CheckInput& input, Check check) {
    try {
        (void)check(input);
    } catch (const StateError& error) {
        return error.code();
    }
    return "";
}

}  // namespace

TEST_CASE("compare: utilisation and verdict from demand and capacity") {
    const by_hand::Case c;
    const Finding f = compare("upright.foot", "U2", clause, c.input(), 90.0, 120.0, "kPa");
    CHECK(f.check == "upright.foot");
    CHECK(f.part == "U2");
    CHECK(f.clause == clause);
    CHECK(f.situation == "by hand");
    CHECK(f.unit == "kPa");
    REQUIRE(f.utilisation.has_value());
    CHECK(close(*f.utilisation, 0.75, 1e-15));
    CHECK(f.verdict == Verdict::satisfied);
}

TEST_CASE("compare: exactly used up is satisfied, the next number is not") {
    const by_hand::Case c;
    CHECK(compare("a", "b", clause, c.input(), 2.0, 2.0, "kN").verdict == Verdict::satisfied);
    const double more = std::nextafter(2.0, 3.0);
    CHECK(compare("a", "b", clause, c.input(), more, 2.0, "kN").verdict == Verdict::exceeded);
}

TEST_CASE("compare: no capacity is exceeded and has no utilisation") {
    const by_hand::Case c;
    for (const double capacity : {0.0, -1.0}) {
        for (const double demand : {0.0, 3.0, -3.0}) {
            const Finding f = compare("a", "b", clause, c.input(), demand, capacity, "kN");
            CHECK(f.verdict == Verdict::exceeded);
            CHECK_FALSE(f.utilisation.has_value());
        }
    }
    const Finding tiny = compare("a", "b", clause, c.input(), 1.0, 1e-310, "kN");
    CHECK(tiny.verdict == Verdict::exceeded);
    CHECK_FALSE(tiny.utilisation.has_value());
}

TEST_CASE("compare: a demand below zero is kept as it is") {
    const by_hand::Case c;
    const Finding f = compare("a", "b", clause, c.input(), -1.0, 2.0, "m");
    CHECK(f.verdict == Verdict::satisfied);
    CHECK(close(f.utilisation.value(), -0.5, 1e-15));
}

TEST_CASE("compare: a number that is none is refused") {
    const by_hand::Case c;
    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    constexpr double endless = std::numeric_limits<double>::infinity();
    for (const double bad : {none, endless, -endless}) {
        CHECK_THROWS_AS((void)compare("a", "b", clause, c.input(), bad, 1.0, "kN"), StateError);
        CHECK_THROWS_AS((void)compare("a", "b", clause, c.input(), 1.0, bad, "kN"), StateError);
    }
}

TEST_CASE("checks: every check speaks in full, with and without workings") {
    by_hand::Case c;
    c.plan.boat.obstacles = {{"windshield", {{1.4_m, -0.5_m, 0.9_m}, {1.4_m, 0.5_m, 0.9_m}}, {50.0_mm, "invented"}}};
    c.forces(by_hand::upright_member).axial = -3e3;
    c.forces(by_hand::strap_port).axial = 500;
    c.forces(1).moment_vertical_to = -300;
    for (const bool workings : {false, true}) {
        c.workings = workings;
        for (const Check check : every_check) {
            const std::vector<Finding> findings = check(c.input());
            CHECK_FALSE(findings.empty());
            CHECK(by_hand::sound(findings));
            for (const Finding& f : findings)
                CHECK(f.workings.empty() == (!workings || f.verdict == Verdict::not_applicable));
        }
    }
}

TEST_CASE("checks: every check refuses a state that is no equilibrium") {
    by_hand::Case c;
    for (const SolveStatus status : {SolveStatus::not_run, SolveStatus::mechanism, SolveStatus::unstable,
                                     SolveStatus::large_rotation, SolveStatus::iteration_limit}) {
        c.state.frame.status = status;
        for (const Check check : every_check) CHECK(code_of(c.input(), check) == "checks.state.unusable");
    }
}

TEST_CASE("checks: every check refuses the state of another cover") {
    by_hand::Case strips;
    strips.state.strips.pop_back();
    by_hand::Case members;
    members.state.frame.members.pop_back();
    by_hand::Case nodes;
    nodes.state.frame.displacement.pop_back();
    for (const Check check : every_check) {
        CHECK(code_of(strips.input(), check) == "checks.state.unusable");
        CHECK(code_of(members.input(), check) == "checks.state.unusable");
        CHECK(code_of(nodes.input(), check) == "checks.state.unusable");
    }
}
