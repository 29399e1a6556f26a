// SPDX-License-Identifier: BSD-3-Clause
// Every strip of by_hand.hpp pulls on the rail with sqrt(300^2 + 105^2) = 317.844 N/m: level 300, upright
// H h/L + W/2 = -225 + 120 = -105. The film is 4 m long. Cord: 2.00475 kN, EA 60 to 600 kN.
#include "coverframe/checks/band.hpp"

#include <doctest/doctest.h>

#include "by_hand.hpp"
#include "checks/band_pulls.hpp"
#include "close.hpp"
#include "coverframe/base/error.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using by_hand::Case;
using by_hand::find;
using by_hand::term;

namespace {

const double p = std::hypot(300.0, 105.0);  // [N/m]

void belly(Case& c, std::vector<double> at, Force pretension = {}) {
    c.plan.support.band.belly_straps.clear();
    for (const double x : at) c.plan.support.band.belly_straps.push_back({from_m(x), "cord", pretension});
}

void rail_holds(Case& c, LineLoad hold) { c.plan.support.band.rub_rail_hold = Cited<LineLoad>{hold, "invented"}; }

Finding lift(const Case& c, const std::string& part) { return find(check_band(c.input()), "band.lift", part); }
Finding tension(const Case& c) { return find(check_band(c.input()), "band.tension", "band"); }

}  // namespace

// Straps at 1 and 2.5 m: the first holds from the bow to 1.75 m, the second the remaining 2.25 m.
TEST_CASE("check_band: each belly strap holds its share of the side") {
    Case c;
    c.workings = true;
    belly(c, {1.0, 2.5});
    const Finding first = lift(c, "belly strap 1");
    const Finding second = lift(c, "belly strap 2");
    CHECK(close(first.demand, 1.75 * p / 1e3, 1e-9));
    CHECK(close(second.demand, 2.25 * p / 1e3, 1e-9));
    CHECK(close(first.capacity, 2.00475, 1e-12));
    CHECK(first.unit == "kN");
    CHECK(first.x.value() == 1.0);
    CHECK(close(term(first, "length"), 1.75, 1e-12));
    CHECK(first.sentence.find("on each leg") != std::string::npos);
    CHECK(close(first.demand + second.demand, 4 * p / 1e3, 1e-9));
}

// The rub rail takes 100 N/m: 217.844 N/m are left. It takes 400 N/m: nothing is left, and the strap keeps its
// pretension.
TEST_CASE("check_band: the rub rail takes its part, the pretension stays") {
    Case c;
    belly(c, {1.0, 2.5}, 250.0_N);
    rail_holds(c, 100.0_N_per_m);
    CHECK(close(lift(c, "belly strap 1").demand, 1.75 * (p - 100) / 1e3, 1e-9));
    rail_holds(c, 400.0_N_per_m);
    CHECK(close(lift(c, "belly strap 1").demand, 0.25, 1e-12));
    CHECK(close(tension(c).demand, 0.3, 1e-12));  // the band's own pretension
}

// One strip pulls with 2000 N/m level over its metre; what the rub rail holds elsewhere does not help it.
TEST_CASE("check_band: the rub rail helps strip by strip") {
    Case c;
    belly(c, {2.0});
    rail_holds(c, 1000.0_N_per_m);
    c.hang(2, 2000, 0);  // T = 2000/0.8 = 2500 N/m
    CHECK(close(lift(c, "belly strap 1").demand, 1.5, 1e-9));
    CHECK(lift(c, "belly strap 1").sentence.find("port leg") != std::string::npos);
}

// Between straps 1.5 m apart P = 476.77 N; round the bow, from 1 m on one side to 1 m on the other, P = 635.7 N; round
// the stern 1.5 m on each side, P = 953.5 N, which governs. H^3 - 300 H^2 - 600e3 x 953.5^2/24 = 0.
TEST_CASE("check_band: the band as a cable") {
    Case c;
    c.workings = true;
    belly(c, {1.0, 2.5});
    const Finding f = tension(c);
    const double P = 3 * p;
    const double H = term(f, "H") * 1e3;
    CHECK(close(term(f, "P"), P / 1e3, 1e-9));
    CHECK(close(H * H * (H - 300), 600e3 * P * P / 24, 1e-9));
    CHECK(close(f.demand, std::hypot(H, P / 2) / 1e3, 1e-12));
    CHECK(f.x.value() == 2.5);
    CHECK(f.verdict == Verdict::exceeded);
    belly(c, {0.2, 3.8});  // now the span between governs: 3.6 m
    CHECK(close(term(tension(c), "P"), 3.6 * p / 1e3, 1e-9));
    CHECK(tension(c).x.value() == 2.0);
}

TEST_CASE("check_band: belly straps count from the bow, in whatever order they are written") {
    Case c;
    belly(c, {2.5, 1.0});
    CHECK(lift(c, "belly strap 1").x.value() == 1.0);
    CHECK(close(lift(c, "belly strap 1").demand, 1.75 * p / 1e3, 1e-9));
}

TEST_CASE("check_band: without belly straps the rub rail alone") {
    Case c;
    c.workings = true;
    rail_holds(c, 400.0_N_per_m);
    Finding f = lift(c, "band");
    CHECK(close(f.demand, p / 1e3, 1e-12));
    CHECK(close(f.capacity, 0.4, 1e-12));
    CHECK(f.unit == "kN/m");
    CHECK(f.verdict == Verdict::satisfied);
    CHECK(f.sentence.find("on both sides") != std::string::npos);
    CHECK(close(tension(c).demand, 0.3, 1e-12));
    CHECK(tension(c).verdict == Verdict::satisfied);
    rail_holds(c, 300.0_N_per_m);
    CHECK(lift(c, "band").verdict == Verdict::exceeded);
    CHECK(tension(c).check == "band.tension");
    CHECK(tension(c).verdict == Verdict::not_applicable);
    CHECK(by_hand::sound(check_band(c.input())));
}

// The film comes down to the rail under atan(105/300) = 0.336675 rad and leaves it straight down: theta = 1.234122 rad.
// Rope friction of Euler and Eytelwein with mu = 0.2: 317.844 e^(-0.246824) = 248.324 N/m reach the band.
TEST_CASE("check_band: friction on the rail keeps film off the band") {
    Case c;
    c.workings = true;
    belly(c, {1.0, 2.5});
    c.plan.film.tension_high = {100.0_N_per_m, "invented"};
    Finding f = lift(c, "belly strap 1");
    CHECK(close(term(f, "P_film"), 1.75 * 317.844 / 1e3, 1e-6));
    CHECK(close(term(f, "P_band"), term(f, "P_film"), 1e-12));  // no friction relied on
    CHECK(close(term(f, "P_rough"), 1.75 * 317.844 * std::exp(-0.4 * 1.234122) / 1e3, 1e-5));
    const double without = tension(c).demand;
    c.plan.support.band.rail_friction = Cited<double>{0.2, "invented"};
    f = lift(c, "belly strap 1");
    CHECK(close(term(f, "P_film"), 1.75 * 317.844 / 1e3, 1e-6));
    CHECK(close(term(f, "P_band"), 1.75 * 248.324 / 1e3, 1e-5));
    CHECK(close(f.demand, 1.75 * 248.324 / 1e3, 1e-5));
    CHECK(tension(c).demand < without);
    c.plan.film.tension_high = {300.0_N_per_m, "invented"};  // the film below the rail keeps what it was shrunk to
    CHECK(close(lift(c, "belly strap 1").demand, 1.75 * 0.3, 1e-9));
    c.plan.film.tension_high = {400.0_N_per_m, "invented"};
    CHECK(close(lift(c, "belly strap 1").demand, 1.75 * p / 1e3, 1e-9));
}

// The band lies 200 mm under the rail and 200 mm further out: film leaves at 45 degrees and lifts with sin 45 of it.
// 200 mm further in: 135 degrees, and a longer turn.
TEST_CASE("check_band: where the band lies under the rail") {
    Case c;
    c.workings = true;
    belly(c, {1.0, 2.5});
    c.plan.film.tension_high = {100.0_N_per_m, "invented"};
    for (const double inset : {-0.2, 0.2}) {
        c.plan.support.band.inset = from_m(inset);
        c.plan.support.band.rail_friction = {};
        Finding f = lift(c, "belly strap 1");
        CHECK(close(term(f, "lift"), 1.75 * p * std::sqrt(0.5) / 1e3, 1e-9));
        c.plan.support.band.rail_friction = Cited<double>{0.2, "invented"};
        f = lift(c, "belly strap 1");
        const double theta = (inset < 0 ? 0.25 : 0.75) * std::acos(-1.0) - std::atan2(105.0, 300.0);
        CHECK(close(term(f, "P_band"), 1.75 * p * std::exp(-0.2 * theta) / 1e3, 1e-9));
    }
    // Far out and hardly under the rail: the film runs to the band without touching the rail, and nothing holds it.
    c.plan.support.band.inset = from_m(-1.0);
    const Finding f = lift(c, "belly strap 1");
    CHECK(close(term(f, "P_band"), 1.75 * p / 1e3, 1e-9));
    CHECK(close(term(f, "lift"), 1.75 * 0.105, 1e-9));
}

TEST_CASE("check_band: nothing holds the band") {
    Case c;
    const Finding f = lift(c, "band");
    CHECK(f.verdict == Verdict::exceeded);
    CHECK(f.capacity == 0.0);
    CHECK_FALSE(f.utilisation.has_value());
    CHECK(f.sentence.find("nothing holds it down") != std::string::npos);
    CHECK(by_hand::sound(check_band(c.input())));
}

TEST_CASE("check_band: slack film does not lift the band") {
    Case c;
    for (StripState& s : c.state.strips) s = StripState{.span = 1.2, .rise = -0.9, .slack = true};
    belly(c, {2.0}, 100.0_N);
    CHECK(close(lift(c, "belly strap 1").demand, 0.1, 1e-12));
    CHECK(close(tension(c).demand, 0.3, 1e-12));
    CHECK(by_hand::sound(check_band(c.input())));
}

TEST_CASE("check_band: the side that is pulled harder governs, mirrored alike") {
    Case port;
    Case starboard;
    belly(port, {1.0, 2.5});
    belly(starboard, {1.0, 2.5});
    port.hang(2, 500, 240);
    starboard.hang(3, 500, 240);
    const Finding a = lift(port, "belly strap 1");
    const Finding b = lift(starboard, "belly strap 1");
    CHECK(a.demand > 1.75 * p / 1e3);
    CHECK(a.demand == b.demand);
    CHECK(a.sentence.find("port leg") != std::string::npos);
    CHECK(b.sentence.find("starboard leg") != std::string::npos);
    CHECK(tension(port).demand == tension(starboard).demand);
}

TEST_CASE("check_band: more film tension never lowers a demand") {
    Case c;
    belly(c, {1.0, 2.5}, 200.0_N);
    rail_holds(c, 200.0_N_per_m);
    double before = 0;
    double band_before = 0;
    for (double H = 50; H < 3000; H += 50) {
        for (int i = 0; i < 10; ++i) c.hang(i, H, 240);
        CHECK(lift(c, "belly strap 2").demand >= before);
        CHECK(tension(c).demand >= band_before);
        before = lift(c, "belly strap 2").demand;
        band_before = tension(c).demand;
    }
}

// 120 N/m over 1.2 m of transom, each side; and 90 N/m over the metre of port that the second belly strap begins on.
TEST_CASE("judge_band: film that pulls on the band across the boat, and beyond the strips") {
    Case c;
    belly(c, {1.0, 2.5});
    const checks_detail::RailPulls strips = checks_detail::rail_pulls(c.cover, c.state);
    const auto leg = [&](const checks_detail::RailPulls& pulls, int strap) {
        return find(judge_band(c.input(), pulls), "band.lift", "belly strap " + std::to_string(strap)).demand;
    };
    checks_detail::RailPulls pulls = strips;
    for (auto& side : pulls) side.push_back({4.0, 4.0, 1.2, {-72, 0, 96}});
    CHECK(close(leg(pulls, 1), leg(strips, 1), 1e-12));
    CHECK(close(leg(pulls, 2), leg(strips, 2) + 1.2 * 0.12, 1e-12));
    // Round the stern from 2.5 m on one side to the other: 3 m of sides and 2.4 m of transom.
    const Finding f = find(judge_band(c.input(), pulls), "band.tension", "band");
    const double P = 3 * p + 2.4 * 120;
    const double H = std::sqrt(f.demand * f.demand * 1e6 - P * P / 4);
    CHECK(close(H * H * (H - 300), 600e3 * P * P / 24, 1e-9));
    pulls = strips;
    pulls[0].push_back({1.25, 2.25, 1.0, {0, 0, 90}});
    CHECK(close(leg(pulls, 1), leg(strips, 1) + 0.045, 1e-12));
    CHECK(close(leg(pulls, 2), leg(strips, 2) + 0.045, 1e-12));
}

TEST_CASE("check_band: a strap kind the plan does not have") {
    Case c;
    c.plan.support.band.strap = "rope";
    rail_holds(c, 400.0_N_per_m);
    CHECK_THROWS_AS((void)check_band(c.input()), InputError);
    belly(c, {1.0});
    c.plan.support.band.belly_straps[0].strap = "rope";
    CHECK_THROWS_AS((void)check_band(c.input()), InputError);
}
