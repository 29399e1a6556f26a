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

/// Film with the load W on a leg that then pulls with `end` at its upper end.
void lay_film(Case& c, std::size_t leg, double W, double end) {
    c.state.legs[leg].load = W;
    c.state.legs[leg].end = end;
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

TEST_CASE("check_straps: tension of the frame against the working strength") {
    Case c;
    c.workings = true;
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

TEST_CASE("check_straps: the film lying on a strap pulls it tighter") {
    Case c;
    c.workings = true;
    set(c, by_hand::strap_port, 600);
    set(c, by_hand::strap_starboard, 600);
    lay_film(c, 0, 240, 837.2);
    LegUnderFilm& leg = c.state.legs[0];
    leg.carries.initial = 580;
    leg.carries.beside[1] = {2.0, 400, -0.001, 0.05, 0.01};
    leg.film.beside[1] = {500, 0.1, 160, 150, 0.2};
    const Finding f = port(c);
    CHECK(close(f.demand, 0.8372, 1e-12));
    CHECK(f.sentence.find("C1 port pulls 600 N (135 lbf) by itself and 837 N (188 lbf) with") == 0);
    CHECK(close(term(f, "T_frame"), 0.6, 1e-12));
    CHECK(close(term(f, "T_s0"), 0.58, 1e-12));
    CHECK(close(term(f, "W"), 0.24, 1e-12));
    CHECK(close(term(f, "T_x, aft"), 500, 1e-12));
    CHECK(close(term(f, "r, aft"), 160, 1e-12));
    CHECK(std::isnan(term(f, "T_x, fore")));  // there is no film on that side
    // Each leg carries the film of its own side.
    CHECK(close(starboard(c).demand, 0.6, 1e-12));
    CHECK(by_hand::sound(check_straps(c.input())));
}

TEST_CASE("check_straps: a strap that pulls less with film on it is judged without") {
    Case c;
    set(c, by_hand::strap_port, 600);
    lay_film(c, 0, 10, 550);
    CHECK(close(port(c).demand, 0.6, 1e-12));
}

TEST_CASE("check_straps: a slack strap says so, and tightens under the film") {
    Case c;
    c.workings = true;
    set(c, by_hand::strap_port, -100);
    lay_film(c, 0, 240, 480);
    const Finding f = port(c);
    CHECK(term(f, "T_frame") == 0.0);
    CHECK(close(f.demand, 0.48, 1e-12));
    CHECK(f.verdict == Verdict::satisfied);
    CHECK(f.sentence.find("is slack until the film lies on it, and then pulls 480 N") != std::string::npos);
    lay_film(c, 0, 0, 0);
    CHECK(port(c).demand == 0.0);
    CHECK(port(c).utilisation.value() == 0.0);
    CHECK(port(c).sentence.find("is slack") != std::string::npos);
    CHECK(by_hand::sound(check_straps(c.input())));
}

TEST_CASE("check_straps: legs that stand without film on them only are exceeded, and nobody's number is taken for it") {
    Case c;
    c.workings = true;
    set(c, by_hand::strap_port, 600);
    c.state.legs.clear();
    CHECK_THROWS_AS((void)check_straps(c.input()), StateError);
    c.state.no_legs = "upright \"U1\" leans";
    const Finding f = port(c);
    CHECK(f.verdict == Verdict::exceeded);
    CHECK_FALSE(f.utilisation.has_value());
    CHECK(f.sentence.find("upright \"U1\" leans") != std::string::npos);
    CHECK(close(term(f, "T_frame"), 0.6, 1e-12));
    CHECK(by_hand::sound(check_straps(c.input())));
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
