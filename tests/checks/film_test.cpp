// SPDX-License-Identifier: BSD-3-Clause
// Strips of by_hand.hpp: L = 1.2 m, h = -0.9 m, chord slope 0.75 (36.87 deg), f_max = L 0.75/4 = 0.225 m.
#include "coverframe/checks/film.hpp"

#include <doctest/doctest.h>

#include "by_hand.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using by_hand::Case;
using by_hand::find;
using by_hand::term;

namespace {

Finding of(const std::vector<Finding>& findings, const std::string& part) {
    return find(findings, findings.empty() ? "" : findings.front().check, part);
}

/// Hangs strip i with the sag f [m].
void sag(Case& c, int i, double f) { c.hang(i, 300, 8 * 300 * f / 1.2); }

/// Every strip sags 0.12 m.
void calm(Case& c) {
    for (int i = 0; i < 10; ++i) sag(c, i, 0.12);
}

}  // namespace

// The steepest end carries most: H = 300 N a metre, up force at the lower end H h/L + W/2 = -225 + 120 = -105, at the
// upper end -225 - 120 = -345: T = sqrt(300^2 + 345^2) = 457.2 N/m; over 0.2 mm: 2.286 N/mm2.
TEST_CASE("check_film_stress: tension over thickness") {
    Case c;
    c.workings = true;
    const Finding f = of(check_film_stress(c.input()), "film, bow to U1");
    CHECK(close(f.demand, std::hypot(300.0, 345.0) / 0.2e-3 / 1e6, 1e-12));
    CHECK(close(f.demand, 2.286, 1e-3));
    CHECK(f.capacity == 5.0);
    CHECK(f.unit == "N/mm2");
    CHECK(f.sentence.find("on both sides") != std::string::npos);
    CHECK(close(term(f, "sigma"), f.demand, 1e-12));
}

TEST_CASE("check_film_stress: the worst strip of the bay, per metre of its width") {
    Case c;
    c.hang(0, 300, 0);  // strip 0 is half a metre wide: 600 N/m level, sqrt(600^2 + 450^2) = 750 N/m
    const Finding f = of(check_film_stress(c.input()), "film, bow to U1");
    CHECK(close(f.demand, 750.0 / 0.2e-3 / 1e6, 1e-12));
    CHECK(f.x.value() == 0.0);
    CHECK(f.sentence.find("on the port side") != std::string::npos);
    CHECK(close(of(check_film_stress(c.input()), "film, U1 to stern").demand, std::hypot(300.0, 345.0) / 200, 1e-12));
}

TEST_CASE("check_film_stress: slack film carries nothing") {
    Case c;
    for (StripState& s : c.state.strips) {
        s = StripState{.span = 1.2, .rise = -0.9, .slack = true};
    }
    const Finding f = of(check_film_stress(c.input()), "film, bow to U1");
    CHECK(f.demand == 0.0);
    CHECK(f.utilisation.value() == 0.0);
    CHECK(by_hand::sound(check_film_stress(c.input())));
    CHECK(of(check_drainage(c.input()), "film, bow to U1").demand == 0.0);
}

// 4 f/L = 4 x 0.12/1.2 = 0.4 against 0.75.
TEST_CASE("check_drainage: sag against the slope of the chord") {
    Case c;
    c.workings = true;
    calm(c);
    const Finding f = of(check_drainage(c.input()), "film, bow to U1");
    CHECK(close(f.demand, 0.4, 1e-12));
    CHECK(close(f.capacity, 0.75, 1e-12));
    CHECK(f.unit == "-");
    CHECK(f.verdict == Verdict::satisfied);
    CHECK(f.sentence.find("drains") != std::string::npos);
    CHECK(f.sentence.find("225 mm") != std::string::npos);
    CHECK(close(term(f, "f"), 0.12, 1e-12));
}

TEST_CASE("check_drainage: the limit is where the film runs level into the rail") {
    Case c;
    calm(c);
    sag(c, 2, 0.2249);
    CHECK(of(check_drainage(c.input()), "film, bow to U1").verdict == Verdict::satisfied);
    CHECK(of(check_ponding(c.input()), "film, bow to U1").verdict == Verdict::not_applicable);
    CHECK(hollow_of(c.strip(2)).area == 0.0);
    sag(c, 2, 0.2251);
    CHECK(of(check_drainage(c.input()), "film, bow to U1").verdict == Verdict::exceeded);
    CHECK(of(check_ponding(c.input()), "film, bow to U1").verdict != Verdict::not_applicable);
    CHECK(hollow_of(c.strip(2)).area > 0.0);
}

// f = 0.27 m: lowest at s = 0.5 + 0.9/(8 x 0.27) = 11/12, so water stands from s = 10/12 to the rail, 4 f/12^2 = 7.5 mm
// deep and 0.2 m wide; A = 2/3 x 0.0075 x 0.2 = 0.001 m2, as (4 f/L^2) x1^3/6 with x1 = 0.2 m. Strips 2 (x = 1 m, 1 m
// wide) and 4 (x = 2 m, half of its metre in this bay): 0.001 x 1.5 = 1.5 litres.
TEST_CASE("check_drainage: water that gathers, and what lies under it") {
    Case c;
    calm(c);
    sag(c, 2, 0.27);
    sag(c, 4, 0.27);
    c.plan.boat.obstacles = {{"windshield", {{0.9_m, -1.1_m, 0.6_m}, {0.9_m, 1.1_m, 0.6_m}}, {50.0_mm, "invented"}},
                             {"console", {{1.2_m, -0.3_m, 0.6_m}}, {50.0_mm, "invented"}},
                             {"locker", {{1.2_m, 1.1_m, 0.6_m}}, {50.0_mm, "invented"}},
                             {"bow light", {{0.3_m, -1.1_m, 0.6_m}}, {50.0_mm, "invented"}}};
    const Finding f = of(check_drainage(c.input()), "film, bow to U1");
    CHECK(close(hollow_of(c.strip(2)).area, 4 * 0.27 / (1.2 * 1.2) * 0.2 * 0.2 * 0.2 / 6, 1e-9));
    CHECK(close(f.utilisation.value(), 1.2, 1e-12));
    CHECK(f.verdict == Verdict::exceeded);
    CHECK(f.x.value() == 1.0);
    CHECK(f.sentence.find("on the port side") != std::string::npos);
    CHECK(f.sentence.find("1.5 L (0.4 US gal)") != std::string::npos);
    CHECK(f.sentence.find("7.5 mm (0.3 in) deep over the windshield") != std::string::npos);
    CHECK(f.sentence.find("console") == std::string::npos);
    CHECK(f.sentence.find("locker") == std::string::npos);
    CHECK(f.sentence.find("bow light") == std::string::npos);
    const Finding aft = of(check_drainage(c.input()), "film, U1 to stern");
    CHECK(aft.sentence.find("0.5 L") != std::string::npos);  // the other half of strip 4
}

TEST_CASE("check_drainage: hollows with dry strips between are not one") {
    Case c;
    calm(c);
    sag(c, 0, 0.26);
    sag(c, 4, 0.27);
    const Finding f = of(check_drainage(c.input()), "film, bow to U1");
    CHECK(f.x.value() == 2.0);
    CHECK(f.sentence.find("0.5 L") != std::string::npos);
}

TEST_CASE("check_drainage: a ridge no higher than the rail holds water whatever the sag") {
    Case c;
    calm(c);
    for (const double rise : {0.0, 0.05}) {
        c.strip(3).rise = rise;
        const Finding f = of(check_drainage(c.input()), "film, bow to U1");
        CHECK(f.verdict == Verdict::exceeded);
        CHECK_FALSE(f.utilisation.has_value());
        CHECK(f.x.value() == 1.0);
        CHECK(f.sentence.find("no higher than the rail") != std::string::npos);
    }
}

// H = 300 N/m under W = 8 H f/L: q = 8 x 300 x 0.27/1.2^2 = 450 Pa. In truth the strip has EA 200 kN/m and L0 = 1.5 m,
// no tension before: far less sag, so the strip that stands for it drains and no help is told.
TEST_CASE("check_drainage: what would help is told only where the strip itself would not drain") {
    Case c;
    calm(c);
    sag(c, 2, 0.27);
    const Finding f = of(check_drainage(c.input()), "film, bow to U1");
    CHECK(f.sentence.find("raise the ridge or set supports closer") != std::string::npos);
}

// A strip of 20 kN, L0 = 1.215 m, between ends L = 1.2 m and h = -0.15 m apart: chord 1.20934 m, so it has slack to
// take up first. Under 480 N it holds water.
TEST_CASE("check_drainage: by how much the ridge has to be higher") {
    Case c;
    c.workings = true;
    calm(c);
    c.cover.strips[2].strip = {20e3, 1.215, 0.0};
    StripState& s = c.strip(2);
    const Strip real{20e3, 1.215, 480.0};
    s = strip_state(real, {1.0, 0.0, 0.75}, {1.0, -1.2, 0.6});
    REQUIRE(hollow_of(s).area > 0.0);
    const Finding f = of(check_drainage(c.input()), "film, bow to U1");
    CHECK(f.verdict == Verdict::exceeded);
    const double needed = term(f, "h needed");
    CHECK(needed > 0.15);
    CHECK(f.sentence.find("raise the ridge by") != std::string::npos);
    // The same strip, shrunk to the same tension, over a ridge higher by that: at the edge of draining.
    const double before = 20e3 * (std::hypot(1.2, 0.15) / 1.215 - 1);
    for (const double share : {0.999, 1.001}) {
        const std::array<double, 3> upper{0, 0, 0}, lower{0, -1.2, -needed * share};
        const Strip higher{20e3, free_length_for_tension(20e3, before, upper, lower), 480.0};
        CHECK((hollow_of(strip_state(higher, upper, lower)).area > 0.0) == (share < 1));
    }
    // Between the same ends, shrunk to that much more tension: the same.
    const double more = 1e3 * term(f, "T more") * c.cover.strips[2].width;
    CHECK(more > 0.0);
    for (const double share : {0.999, 1.001}) {
        const std::array<double, 3> upper{1.0, 0.0, 0.75}, lower{1.0, -1.2, 0.6};
        const Strip tighter{20e3, free_length_for_tension(20e3, before + more * share, upper, lower), 480.0};
        CHECK((hollow_of(strip_state(tighter, upper, lower)).area > 0.0) == (share < 1));
    }
}

// q = 8 H f/L^2 = 450 Pa, h = 0.9 m: S = sqrt(2 x 9810 x 0.9/450) = 6.26418, 2 arctan 1.21203 + sqrt(6.26418 x 4.26418)
// =
// 1.76191 + 5.16833 = 6.93024, T = 9810 x 1.44/6.93024^2 = 294.126 N/m: 300 N/m is enough. The ridge 0.4 m lower (h =
// 0.5 m): S = 4.66905, T = 488.6.
TEST_CASE("check_ponding: only where water stands, and only under the tension that would stop it") {
    Case c;
    c.workings = true;
    calm(c);
    Finding f = of(check_ponding(c.input()), "film, bow to U1");
    CHECK(f.verdict == Verdict::not_applicable);
    CHECK(f.sentence.find("drains") != std::string::npos);
    sag(c, 2, 0.27);
    f = of(check_ponding(c.input()), "film, bow to U1");
    CHECK(f.verdict == Verdict::satisfied);
    CHECK(close(f.demand, 0.294126, 1e-5));
    CHECK(close(f.capacity, 0.3, 1e-12));
    CHECK(f.unit == "kN/m");
    CHECK(f.x.value() == 1.0);
    CHECK(close(term(f, "q"), 0.45, 1e-9));
    CHECK(close(term(f, "T_crit"), 1.43130357, 1e-8));
    CHECK(f.sentence.find("on the port side") != std::string::npos);
    c.strip(2).rise = -0.5;
    f = of(check_ponding(c.input()), "film, bow to U1");
    CHECK(f.verdict == Verdict::exceeded);
    CHECK(f.demand > 0.4);
    CHECK(f.demand < 0.5);
    c.strip(2).rise = 0.0;  // no fall at all: water all over it
    f = of(check_ponding(c.input()), "film, bow to U1");
    CHECK(close(f.demand, 1.43130357, 1e-8));
    c.strip(2) = StripState{.span = 1.2, .rise = -0.1, .sag = 0.2, .slack = true};  // hangs loose and full of water
    f = of(check_ponding(c.input()), "film, bow to U1");
    CHECK(f.verdict == Verdict::exceeded);
    CHECK_FALSE(f.utilisation.has_value());
    CHECK(by_hand::sound(check_ponding(c.input())));
}

// arctan(0.75) = 36.87 deg against 45 deg (ASCE 7-22, 7.4, C_t = 1.2, other surfaces).
TEST_CASE("check_shedding: the flattest chord against the threshold") {
    Case c;
    c.workings = true;
    Finding f = of(check_shedding(c.input()), "film, bow to U1");
    CHECK(close(f.demand, 45.0, 1e-12));
    CHECK(close(f.capacity, 36.8699, 1e-6));
    CHECK(f.unit == "deg");
    CHECK(f.verdict == Verdict::exceeded);
    CHECK(text_of(f.clause) == "ASCE 7-22, 7.4");
    c.plan.basis.shedding_slope = Cited<Angle>{36.0_deg, "yard"};
    f = of(check_shedding(c.input()), "film, bow to U1");
    CHECK(f.verdict == Verdict::satisfied);
    CHECK(f.clause.document == "coverframe");
    c.strip(2).rise = -0.6;
    f = of(check_shedding(c.input()), "film, bow to U1");
    CHECK(close(f.capacity, 26.565051, 1e-6));
    CHECK(f.x.value() == 1.0);
    c.strip(2).rise = 0.1;
    f = of(check_shedding(c.input()), "film, bow to U1");
    CHECK_FALSE(f.utilisation.has_value());
    CHECK(f.verdict == Verdict::exceeded);
}

TEST_CASE("check_shedding: EN 1991-1-3 begins at 30 degrees") {
    Case c(by_hand::european_plan());
    const Finding f = of(check_shedding(c.input()), "film, U1 to stern");
    CHECK(close(f.demand, 30.0, 1e-12));
    CHECK(text_of(f.clause) == "EN 1991-1-3:2003, 5.3.3");
    CHECK(f.verdict == Verdict::satisfied);
}

TEST_CASE("check_film: port and starboard mirrored") {
    Case port;
    Case starboard;
    calm(port);
    calm(starboard);
    sag(port, 2, 0.3);
    sag(starboard, 3, 0.3);
    for (const auto check : {check_film_stress, check_drainage, check_ponding, check_shedding}) {
        std::vector<Finding> a = check(port.input());
        const std::vector<Finding> b = check(starboard.input());
        for (Finding& f : a) {
            const auto place = f.sentence.find("on the port side");
            if (place != std::string::npos) f.sentence.replace(place, 16, "on the starboard side");
        }
        CHECK(a == b);
    }
}

TEST_CASE("check_film: a bay without film has no finding") {
    Case c;
    c.cover.strips.resize(4);  // stations 0 and 1
    c.state.strips.resize(4);
    for (const auto check : {check_film_stress, check_drainage, check_ponding, check_shedding}) {
        const std::vector<Finding> findings = check(c.input());
        REQUIRE(findings.size() == 1);
        CHECK(findings[0].part == "film, bow to U1");
    }
}
