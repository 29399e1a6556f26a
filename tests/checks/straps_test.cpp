// SPDX-License-Identifier: BSD-3-Clause
// Strength of the cord of by_hand.hpp: 9 kN x 0.75 x 0.9 x 0.33 = 2.00475 kN.
#include "coverframe/checks/straps.hpp"

#include <doctest/doctest.h>

#include "by_hand.hpp"
#include "checks/common.hpp"
#include "close.hpp"
#include "coverframe/base/error.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using by_hand::Case;
using by_hand::find;
using by_hand::term;

namespace {

Finding port(const Case& c) { return find(check_straps(c.input()), "strap.strength", "C1 port"); }
Finding starboard(const Case& c) { return find(check_straps(c.input()), "strap.strength", "C1 starboard"); }

/// Sets a leg so that it carries `tension` where it is; negative: slack by as much strain.
void set(Case& c, int leg, double tension) {
    FrameMember& strap = c.member(leg);
    strap.free_length = 1.5 / (1 + tension / strap.axial_stiffness);
    c.forces(leg).axial = tension > 0 ? tension : 0.0;
    c.forces(leg).active = tension > 0;
}

/// No load on the strips over the strap.
void bare(Case& c) {
    c.hang(4, 300, 0);
    c.hang(5, 300, 0);
}

}  // namespace

TEST_CASE("cable_tension: root of the cubic") {
    using checks_detail::cable_tension;
    // T0 = 0: T = cbrt(EA W^2/24), here cbrt(60e3 x 400 x 400/24) = cbrt(4e8) = 736.806
    CHECK(close(cable_tension(0, 60e3, 400), std::cbrt(4e8), 1e-12));
    // by choice of W: T = 900, T0 = 600, EA = 60e3 gives W^2 = 24 x 900^2 x 300/60e3, W = 311.769
    CHECK(close(cable_tension(600, 60e3, std::sqrt(24 * 900.0 * 900.0 * 300.0 / 60e3)), 900.0, 1e-12));
    CHECK(close(cable_tension(-600, 60e3, std::sqrt(24 * 300.0 * 300.0 * 900.0 / 60e3)), 300.0, 1e-12));
    CHECK(cable_tension(600, 60e3, 0) == 600.0);
    CHECK(cable_tension(-600, 60e3, 0) == 0.0);
    for (const double T0 : {-1e6, -1e3, 0.0, 1.0, 1e3, 1e6}) {
        for (const double W : {1e-3, 1.0, 1e3, 1e6}) {
            const double T = cable_tension(T0, 60e3, W);
            CAPTURE(T0);
            CAPTURE(W);
            CHECK(T > 0.0);
            CHECK(close(T * T * T - T0 * T * T, 60e3 * W * W / 24,
                        T0 > 0 ? 1e-9 * (1 + T0 * T * T / (60e3 * W * W / 24)) : 1e-9));
        }
    }
}

// CB-21 to CB-24 of the validation cases: not printed anywhere, computed apart from the library (roots of the cubic,
// and of the exact length of an elastic parabola, which the cubic stays within 0.3 % of).
TEST_CASE("cable_tension: against roots and exact lengths found elsewhere") {
    struct Row {
        double span, EA, T0, q, cubic, exact;
    };
    for (const Row& r :
         {Row{2.5, 400e3, 500, 200, 1794.2557, 1791.00001}, Row{2.5, 400e3, 0, 200, 1609.14897, 1605.05194},
          Row{1.2, 400e3, 1000, 600, 2445.13445, 2440.5906}, Row{3.0, 600e3, 300, 100, 1418.38792, 1416.85139}}) {
        const double T = checks_detail::cable_tension(r.T0, r.EA, r.q * r.span);
        CHECK(close(T, r.cubic, 1e-8));
        CHECK(close(T, r.exact, 3e-3));
    }
}

// The strap on its slope, by the shallow formula of the check, against a strip of the same free length and load with
// the exact length of film/strip.hpp.
TEST_CASE("check_straps: the strap under film against an exact elastic cable") {
    for (const double T0 : {-200.0, 0.0, 300.0, 600.0, 1500.0}) {
        for (const double W : {50.0, 240.0, 500.0}) {
            Case c;
            set(c, by_hand::strap_port, T0);
            c.hang(4, 300, W);
            const FrameMember& strap = c.member(by_hand::strap_port);
            const StripState exact =
                strip_state({strap.axial_stiffness, strap.free_length, W}, {2.0, 0.0, 1.5}, {2.0, -1.2, 0.6});
            CAPTURE(T0);
            CAPTURE(W);
            CHECK(close(port(c).demand * 1e3, std::max(exact.tension_upper, T0), 0.03));
        }
    }
}

TEST_CASE("check_straps: tension of the frame against the working strength") {
    Case c;
    c.workings = true;
    bare(c);
    set(c, by_hand::strap_port, 1200);
    set(c, by_hand::strap_starboard, 2500);
    const Finding p = port(c);
    CHECK(close(p.demand, 1.2, 1e-12));
    CHECK(close(p.capacity, 2.00475, 1e-12));
    CHECK(p.unit == "kN");
    CHECK(p.verdict == Verdict::satisfied);
    CHECK(text_of(p.clause) == "common practice, no source, strap strength");
    CHECK(close(term(p, "T_d"), 2.00475, 1e-12));
    CHECK(p.sentence == "C1 port pulls 1.2 kN (270 lbf) where it may carry 2 kN (451 lbf).");
    CHECK(starboard(c).verdict == Verdict::exceeded);
    CHECK(close(starboard(c).utilisation.value(), 2500 / 2004.75, 1e-12));
}

// W = 240 N on the strip over it, cos 0.8, sin 0.6. T0 = 600 N, EA = 60 kN: T^3 - 600 T^2 - 60e3 x 192^2/24 = 0:
// T = 759.67 N, for 759.67^2 x 159.67 = 9.215e7 and 60e3 x 192^2/24 = 9.216e7. At the upper end: along the strap
// 759.7 + 240 x 0.6/2 = 831.7 N, across it 240 x 0.8/2 = 96 N: 837.2 N.
TEST_CASE("check_straps: the film lying on a strap pulls it tighter") {
    Case c;
    c.workings = true;
    set(c, by_hand::strap_port, 600);
    set(c, by_hand::strap_starboard, 600);
    const Finding f = port(c);
    const double T = term(f, "T") * 1e3;
    CHECK(close(T, 759.7, 1e-4));
    CHECK(close(T * T * (T - 600), 60e3 * 192 * 192 / 24, 1e-9));
    CHECK(close(term(f, "W"), 0.24, 1e-12));
    CHECK(close(f.demand, std::hypot(T + 72, 96) / 1e3, 1e-12));
    CHECK(close(f.demand, 0.8372, 1e-3));
    CHECK(f.sentence.find("with the film lying on it") != std::string::npos);
    CHECK(close(starboard(c).demand, f.demand, 1e-12));
}

TEST_CASE("check_straps: each leg carries the film of its own side") {
    Case c;
    set(c, by_hand::strap_port, 600);
    set(c, by_hand::strap_starboard, 600);
    c.hang(4, 300, 0);
    CHECK(close(port(c).demand, 0.6, 1e-12));
    CHECK(starboard(c).demand > 0.8);
}

// Slack by a strain of 100/60e3 and 192 N across it: T^3 + 100 T^2 = 9.216e7: T = 420.7 (420.7^2 x 520.7 = 9.216e7).
TEST_CASE("check_straps: a slack strap says so, and tightens under the film") {
    Case c;
    c.workings = true;
    set(c, by_hand::strap_port, -100);
    const Finding f = port(c);
    CHECK(term(f, "T_frame") == 0.0);
    CHECK(close(term(f, "T0"), -0.1, 1e-9));
    CHECK(close(term(f, "T"), 0.4207, 1e-3));
    CHECK(f.verdict == Verdict::satisfied);
    CHECK(f.sentence.find("is slack") != std::string::npos);
    bare(c);
    CHECK(port(c).demand == 0.0);
    CHECK(port(c).utilisation.value() == 0.0);
    CHECK(port(c).sentence.find("is slack") != std::string::npos);
    CHECK(by_hand::sound(check_straps(c.input())));
}

TEST_CASE("check_straps: more film load never lowers the demand") {
    Case c;
    set(c, by_hand::strap_port, 600);
    double before = 0;
    for (double W = 0; W < 3000; W += 50) {
        c.hang(4, 300, W);
        const double now = port(c).demand;
        CHECK(now >= before);
        before = now;
    }
}

// The ridge end of the strap has come down 100 mm: l = sqrt(1.2^2 + 0.8^2) = 1.44222 m.
TEST_CASE("check_straps: the strap is taken where it is now") {
    Case c;
    c.workings = true;
    c.member(by_hand::strap_port).free_length = 1.43;
    c.move(2, 2, -0.1);
    const Finding f = port(c);
    CHECK(close(term(f, "cos"), 1.2 / std::sqrt(2.08), 1e-12));
    CHECK(close(term(f, "T0"), 60.0 * (std::sqrt(2.08) - 1.43) / 1.43, 1e-9));
}

TEST_CASE("check_straps: port and starboard mirrored") {
    Case one;
    set(one, by_hand::strap_port, 500);
    set(one, by_hand::strap_starboard, 300);
    one.hang(4, 300, 100);
    one.move(2, 1, 0.02);
    Case other;
    set(other, by_hand::strap_port, 300);
    set(other, by_hand::strap_starboard, 500);
    other.hang(5, 300, 100);
    other.move(2, 1, -0.02);
    CHECK(close(port(one).demand, starboard(other).demand, 1e-12));
    CHECK(close(starboard(one).demand, port(other).demand, 1e-12));
}

TEST_CASE("check_straps: a strap ridge bay by bay") {
    Case c;
    c.workings = true;
    c.support().ridge.member = StrapRidge{"cord", 600.0_N};
    for (int m = 0; m < by_hand::ridge_members; ++m) c.member(m).kind = MemberKind::strap;
    c.forces(0).axial = 1500;
    c.forces(1).axial = 1600;
    c.forces(2).axial = 2100;
    const std::vector<Finding> findings = check_straps(c.input());
    const Finding forward = find(findings, "ridge.strap", "ridge, bow to U1");
    CHECK(close(forward.demand, 1.6, 1e-12));
    CHECK(close(forward.capacity, 2.00475, 1e-12));
    CHECK(forward.x.value() == 1.5);
    CHECK(find(findings, "ridge.strap", "ridge, U1 to stern").verdict == Verdict::exceeded);
    CHECK(findings.size() == 4);
    CHECK(by_hand::sound(findings));
}

TEST_CASE("check_straps: a strap kind the plan does not have") {
    Case c;
    c.cover.layout.cross_straps[0].strap = "rope";
    CHECK_THROWS_AS((void)check_straps(c.input()), InputError);
}
