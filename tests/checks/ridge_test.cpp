// SPDX-License-Identifier: BSD-3-Clause
// The rules are tested against printed numbers in tests/resistance; here it is that they are given the right sizes,
// lengths and factors. Arithmetic by hand in the comments.
#include "coverframe/checks/ridge.hpp"

#include <doctest/doctest.h>

#include "by_hand.hpp"
#include "checks/spans.hpp"
#include "close.hpp"
#include "coverframe/base/error.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using by_hand::Case;
using by_hand::find;
using by_hand::term;

namespace {

Finding bending(const Case& c, const std::string& part = "ridge, bow to U1") {
    return find(check_ridge(c.input()), "ridge.bending", part);
}

std::string code_of(const Case& c) {
    try {
        (void)check_ridge(c.input());
    } catch (const InputError& error) {
        return error.code();
    }
    return "";
}

}  // namespace

// 38 x 89 mm: S1 = 38 x 89^2/6 = 50166 mm3, f_b1 = 500 N m/S1 = 9.967 N/mm2. F_b = 875 psi = 6.033 N/mm2, C_F = 1.5,
// 1312 psi > 1150 psi so C_M = 0.85, K_F = 2.54, phi = 0.85, lambda = 0.8: F_b* = 13.286 N/mm2. l_u = 2 m, l_u/d = 22:
// l_e = 1.84 x 2 = 3.68 m, R_B = sqrt(3680 x 89)/38 = 15.06; E_min' = 510 ksi x 0.9 x 1.76 x 0.85 = 4734 N/mm2,
// F_bE = 1.2 x 4734/15.06^2 = 25.05; a = 1.8854, C_L = 1.5186 - sqrt(2.3062 - 1.9846) = 0.9515;
// sum 9.967/12.642 = 0.788.
TEST_CASE("check_ridge: bending of one bay by NDS") {
    Case c;
    c.workings = true;
    c.forces(1).moment_vertical_to = -500;
    const Finding f = bending(c);
    CHECK(close(f.demand, 0.788422, 1e-5));
    CHECK(close(f.utilisation.value(), f.demand, 1e-15));
    CHECK(f.capacity == 1.0);
    CHECK(f.unit == "-");
    CHECK(f.verdict == Verdict::satisfied);
    CHECK(text_of(f.clause) == "NDS 2018, 3.9.2");
    CHECK(f.x.value() == 2.0);
    CHECK(close(term(f, "f_b1"), 9.96684, 1e-5));
    CHECK(close(term(f, "F_b*"), 13.28556, 1e-5));
    CHECK(close(term(f, "R_B"), 15.0604, 1e-5));
    CHECK(close(term(f, "C_L"), 0.951523, 1e-5));
    CHECK(close(term(f, "sum"), f.demand, 1e-12));
    CHECK(bending(c, "ridge, U1 to stern").demand == 0.0);
}

// C24: k_h = (150/89)^0.2 = 1.1101, f_m,d = 1.1101 x 24 x 0.7/1.3 = 14.345 N/mm2. l_ef = 2 + 2 x 0.089 = 2.178 m,
// sigma_m,crit = 0.78 x 38^2 x 7400/(89 x 2178) = 43.0, lambda_rel,m = sqrt(24/43.0) = 0.747: k_crit = 1.
// 9.967/14.345 = 0.6948.
TEST_CASE("check_ridge: bending of one bay by EN 1995-1-1") {
    Case c(by_hand::european_plan());
    c.workings = true;
    c.forces(2).moment_vertical_from = 500;
    const Finding f = bending(c, "ridge, U1 to stern");
    CHECK(close(f.demand, 9.966844 / (24 * 0.7 / 1.3 * std::pow(150.0 / 89.0, 0.2)), 1e-6));
    CHECK(close(f.demand, 0.6948, 1e-4));
    CHECK(text_of(f.clause) == "EN 1995-1-1:2004, 6.3.2");
    CHECK(close(term(f, "sigma_m,crit"), 0.78 * 38 * 38 * 7400 / (89 * 2178.0), 1e-9));
    CHECK(term(f, "k_crit") == 1.0);
}

TEST_CASE("check_ridge: the worst member and the worst end govern, whatever the sign") {
    Case c;
    c.forces(0).moment_vertical_to = 200;
    c.forces(1).moment_vertical_from = -410;
    c.forces(1).moment_vertical_to = 400;
    CHECK(bending(c).x.value() == 1.0);
    const double worst = bending(c).demand;
    c.forces(1).moment_vertical_from = 410;
    CHECK(bending(c).demand == worst);
    c.forces(1).moment_vertical_from = 0;
    CHECK(bending(c).demand < worst);
    CHECK(bending(c).x.value() == 2.0);
}

// Pull: f_t = 3382 N/3382 mm2 = 1 N/mm2. F_t' = 450 psi x 1.5 x 1.0 x 2.70 x 0.80 x 0.8 = 3.10264 x 2.592 = 8.042
// N/mm2. Stretched face: 1/8.042 + 9.967/13.286 = 0.8745; pressed face: (9.967 - 1)/12.642 = 0.709.
TEST_CASE("check_ridge: pull adds to the stretched face") {
    Case c;
    c.forces(1).moment_vertical_to = 500;
    c.forces(1).axial = 3382;
    const Finding f = bending(c);
    CHECK(close(f.demand, 1 / 8.0421 + 9.966844 / 13.285560, 1e-4));
    CHECK(text_of(f.clause) == "NDS 2018, 3.9.1");
    CHECK(f.sentence.find("pull") != std::string::npos);
}

// l_e/d = 2000/38 = 52.6 over 50 (3.7.1.4): no column at all as soon as it is pressed.
TEST_CASE("check_ridge: a pressed pole over the slenderness limit is exceeded, not an exception") {
    Case c;
    c.workings = true;
    c.forces(0).axial = -500;
    const Finding f = bending(c);
    CHECK(f.verdict == Verdict::exceeded);
    CHECK(close(f.demand, 2.0 / 0.038, 1e-9));
    CHECK(f.capacity == 50.0);
    CHECK(text_of(f.clause) == "NDS 2018, 3.7.1");
    CHECK(f.sentence.find("too slender") != std::string::npos);
    c.forces(0).axial = -1e-6;  // what arithmetic leaves over
    CHECK(bending(c).verdict == Verdict::satisfied);
}

// 63 x 89 mm: l_e/d2 = 31.7, F_cE2 = 0.822 x 4734/31.7^2 = 3.86 N/mm2; 25 kN on 5607 mm2 is 4.46 N/mm2.
TEST_CASE("check_ridge: a pole that buckles is exceeded without a utilisation") {
    Case c;
    c.workings = true;
    std::get<PoleRidge>(c.support().ridge.member).section = {63.0_mm, 89.0_mm};
    c.forces(0).axial = -25e3;
    const Finding f = bending(c);
    CHECK(f.verdict == Verdict::exceeded);
    CHECK_FALSE(f.utilisation.has_value());
    CHECK(close(f.demand, 25e3 / 5607 / (0.822 * 4734.3816 / (2000.0 / 63 * 2000 / 63)), 1e-5));
    CHECK(f.sentence.find("buckles") != std::string::npos);
    CHECK(by_hand::sound({f}));
}

// Over the breadth of 38 mm: W_z = 89 x 38^2/6 = 21419 mm3, k_h = min{(150/38)^0.2, 1.3} = 1.3 (1.316),
// f_m,d = 1.3 x 24 x 0.7/1.3 = 16.8 N/mm2: 100 N m give 4.669/16.8 = 0.2779.
TEST_CASE("check_ridge: sideways bending by EN 1995-1-1") {
    Case c(by_hand::european_plan());
    c.forces(0).moment_level_to = -100;
    CHECK(close(bending(c).demand, 100e3 / (89 * 38.0 * 38 / 6) / 16.8, 1e-9));
}

// f_t,0,d = k_h 14 x 0.7/1.3, k_h = (150/89)^0.2; 3382 N on 3382 mm2; and bending as above.
TEST_CASE("check_ridge: bending and pull by EN 1995-1-1") {
    Case c(by_hand::european_plan());
    c.workings = true;
    c.forces(1).moment_vertical_to = 500;
    c.forces(1).axial = 3382;
    const double k_h = std::pow(150.0 / 89, 0.2);
    const Finding f = bending(c);
    CHECK(close(f.demand, 1 / (k_h * 14 * 0.7 / 1.3) + 9.966844 / (k_h * 24 * 0.7 / 1.3), 1e-6));
    CHECK(text_of(f.clause) == "EN 1995-1-1:2004, 6.2.3");
}

// 38 x 235 mm over 2 m: l_ef = 2.47 m, sigma_m,crit = 0.78 x 38^2 x 7400/(235 x 2470) = 14.36 N/mm2,
// lambda_rel,m = sqrt(24/14.36) = 1.293, k_crit = 1.56 - 0.75 x 1.293 = 0.590; W_y = 38 x 235^2/6 = 349758 mm3;
// k_h = 1; 1 kN m: 2.859/(0.590 x 12.923) = 0.375.
TEST_CASE("check_ridge: a deep thin pole turns over first, by EN 1995-1-1") {
    Case c(by_hand::european_plan());
    c.workings = true;
    std::get<PoleRidge>(c.support().ridge.member).section = {38.0_mm, 235.0_mm};
    c.forces(1).moment_vertical_to = 1000;
    const Finding f = bending(c);
    const double k_crit = 1.56 - 0.75 * std::sqrt(24 / (0.78 * 38 * 38 * 7400 / (235 * 2470.0)));
    CHECK(close(k_crit, 0.590, 1e-3));
    CHECK(close(f.demand, 1e6 / (38 * 235.0 * 235 / 6) / (k_crit * 24 * 0.7 / 1.3), 1e-9));
    CHECK(text_of(f.clause) == "EN 1995-1-1:2004, 6.3.3");
    CHECK(close(term(f, "k_crit"), k_crit, 1e-12));
}

// A pressed overhang of 2 m is a column of 4 m: lambda_rel,z = 4000 sqrt(12)/38/pi sqrt(21/7400) = 6.183.
TEST_CASE("check_ridge: an overhang counts twice as a column by EN 1995-1-1") {
    Case c(by_hand::european_plan());
    c.workings = true;
    c.cover.layout.frame.nodes[0].held = {};
    c.forces(0).axial = -100;
    CHECK(close(term(bending(c), "lambda_rel,z"), 4000 * std::sqrt(12.0) / 38 / 3.14159265 * std::sqrt(21.0 / 7400),
                1e-6));
}

// Stud: F_b = 675 psi = 4.654 N/mm2, C_F = 1.1, 742 psi < 1150 psi so C_M = 1.0: F_b* = 4.654 x 1.1 x 2.54 x 0.85 x 0.8
// = 8.842 N/mm2. (As No.3 and better it would have had C_F = 1.5.)
TEST_CASE("check_ridge: the grade Stud has size factors of its own") {
    Case c;
    c.workings = true;
    std::get<PoleRidge>(c.support().ridge.member).grade = "Spruce-Pine-Fir Stud";
    c.forces(1).moment_vertical_to = 100;
    CHECK(close(term(bending(c), "F_b*"), 675 * 6.894757e-3 * 1.1 * 2.54 * 0.85 * 0.8, 1e-6));
}

TEST_CASE("check_ridge: more push never lowers the demand, up to buckling") {
    for (const bool european : {false, true}) {
        Case c(european ? by_hand::european_plan() : by_hand::plan());
        std::get<PoleRidge>(c.support().ridge.member).section = {63.0_mm, 89.0_mm};
        c.forces(1).moment_vertical_to = 200;
        c.forces(1).moment_level_to = 40;
        Finding before = bending(c);
        for (double push = 250; push < 40e3; push += 250) {
            c.forces(1).axial = -push;
            const Finding now = bending(c);
            CHECK_FALSE(worse(before, now));
            before = now;
        }
    }
}

// Laid flat, the vertical moment bends over the weak side: S2 = 89 x 38^2/6 = 21419 mm3, C_fu = 1.1:
// (100 N m/21419 mm3)/(1.1 x 13.286) = 0.3195.
TEST_CASE("check_ridge: a pole laid flat bends over its thickness") {
    Case c;
    std::get<PoleRidge>(c.support().ridge.member).section = {89.0_mm, 38.0_mm};
    c.forces(0).moment_vertical_to = 100;
    CHECK(close(bending(c).demand, 100e3 / (89 * 38.0 * 38 / 6) / (1.1 * 13.285560), 1e-6));
    Case upright;
    upright.forces(0).moment_level_to = 100;
    CHECK(close(bending(upright).demand, bending(c).demand, 1e-12));
}

// V = sqrt(600^2 + 800^2) = 1000 N: f_v = 1.5 x 1000/3382 = 0.4435 N/mm2. F_v' = 135 psi x 0.97 x 2.88 x 0.75 x 0.8
// = 0.93079 x 1.67616 = 1.5602 N/mm2.
TEST_CASE("check_ridge: shear of both directions together") {
    Case c;
    c.workings = true;
    c.forces(0).shear_vertical = -600;
    c.forces(0).shear_level = 800;
    const Finding f = find(check_ridge(c.input()), "ridge.shear", "ridge, bow to U1");
    CHECK(close(f.demand, 1500.0 / 3382, 1e-12));
    CHECK(close(f.capacity, 1.56016, 1e-5));
    CHECK(f.unit == "N/mm2");
    CHECK(text_of(f.clause) == "NDS 2018, 3.4.2");
    CHECK(f.x.value() == 0.5);
}

// EN: tau = 3 V/(2 x 0.67 b h) = 1500/(0.67 x 3382) = 0.66198; f_v,d = 4.0 x 0.7/1.3 = 2.1538.
TEST_CASE("check_ridge: shear by EN 1995-1-1 with the crack factor") {
    Case c(by_hand::european_plan());
    c.forces(0).shear_vertical = 1000;
    const Finding f = find(check_ridge(c.input()), "ridge.shear", "ridge, bow to U1");
    CHECK(close(f.demand, 1500.0 / (0.67 * 3382), 1e-12));
    CHECK(close(f.capacity, 4.0 * 0.7 / 1.3, 1e-12));
}

// Contact 89 mm fore and aft, 38 mm athwart. F_c,perp' = 425 psi x 0.67 x 1.67 x 0.90 = 2.93027 x 1.00701 =
// 2.95081 N/mm2. Under 152.4 mm and far from the ends: C_b = (89 + 9.525)/89 = 1.10702. P = 2.95081 x 1.10702 x 3382 =
// 11.048 kN.
TEST_CASE("check_ridge: the upright on the ridge, across the grain") {
    Case c;
    c.workings = true;
    c.forces(by_hand::upright_member).axial = -5e3;
    const Finding f = find(check_ridge(c.input()), "ridge.bearing", "ridge over U1");
    CHECK(f.demand == 5.0);
    CHECK(close(f.capacity, 2.95081 * (89 + 9.525) / 89 * 3.382, 1e-5));
    CHECK(f.unit == "kN");
    CHECK(f.x.value() == 2.0);
    CHECK(close(term(f, "to end"), 2000 - 44.5, 1e-12));
    c.member(2).spring_from = 0;  // spliced over the upright: no timber beyond the contact
    CHECK(close(find(check_ridge(c.input()), "ridge.bearing", "ridge over U1").capacity, 2.95081 * 3.382, 1e-5));
}

// EN: l_ef = 89 + 30 + 30 mm, f_c,90,d = 2.5 x 0.7/1.3 = 1.34615 N/mm2: 1.34615 x 38 x 149 = 7.622 kN.
TEST_CASE("check_ridge: the upright on the ridge by EN 1995-1-1, narrower upright, splice close by") {
    Case c(by_hand::european_plan());
    CHECK(close(find(check_ridge(c.input()), "ridge.bearing", "ridge over U1").capacity, 2.5 * 0.7 / 1.3 * 38 * 149e-3,
                1e-9));
    c.support().uprights[0].section.breadth = 30.0_mm;
    CHECK(close(find(check_ridge(c.input()), "ridge.bearing", "ridge over U1").capacity, 2.5 * 0.7 / 1.3 * 30 * 149e-3,
                1e-9));
    c.cover.layout.frame.nodes[1].at[0] = 1.93;  // a splice 70 mm before the upright: 70 - 44.5 = 25.5 mm beyond
    c.member(1).spring_from = 0;
    CHECK(close(find(check_ridge(c.input()), "ridge.bearing", "ridge over U1").capacity,
                2.5 * 0.7 / 1.3 * 30 * 144.5e-3, 1e-9));
}

TEST_CASE("check_ridge: a lifted upright does not press on the ridge") {
    Case c;
    c.forces(by_hand::upright_member).active = false;
    const Finding f = find(check_ridge(c.input()), "ridge.bearing", "ridge over U1");
    CHECK(f.demand == 0.0);
    CHECK(f.verdict == Verdict::satisfied);
    CHECK(f.sentence.find("lifted off") != std::string::npos);
}

TEST_CASE("check_ridge: mirrored forces give the same findings") {
    Case port;
    port.forces(0).moment_level_to = 30;
    port.forces(0).shear_level = 90;
    port.forces(0).moment_vertical_to = 200;
    Case starboard;
    starboard.forces(0).moment_level_to = -30;
    starboard.forces(0).shear_level = -90;
    starboard.forces(0).moment_vertical_to = 200;
    CHECK(check_ridge(port.input()) == check_ridge(starboard.input()));
}

TEST_CASE("check_ridge: a strap ridge is not its business") {
    Case c;
    c.support().ridge.member = StrapRidge{"cord", 600.0_N};
    for (int m = 0; m < by_hand::ridge_members; ++m) c.member(m).kind = MemberKind::strap;
    c.cover.layout.ridge_is_pole = false;
    CHECK(check_ridge(c.input()).empty());
}

// NDS dimension lumber starts at 1.4 in (35.6 mm).
TEST_CASE("check_ridge: a section the document does not cover is not applicable, with the reason") {
    Case c;
    std::get<PoleRidge>(c.support().ridge.member).section = {25.0_mm, 89.0_mm};
    const std::vector<Finding> findings = check_ridge(c.input());
    const Finding f = find(findings, "ridge.bending", "ridge, bow to U1");
    CHECK(f.check == "ridge.bending");
    CHECK(f.verdict == Verdict::not_applicable);
    CHECK(f.sentence.find("thickness") != std::string::npos);
    CHECK(by_hand::sound(findings));
}

TEST_CASE("pole_spans: a free end makes a cantilever, an unsupported point no support") {
    Case c;
    const auto spans = checks_detail::pole_spans(c.plan, c.cover.layout);
    REQUIRE(spans.size() == 2);
    CHECK(close(in_m(spans[0].piece.span), 2.0, 1e-12));
    CHECK_FALSE(spans[0].piece.cantilever);
    c.cover.layout.frame.nodes[0].held = {};
    CHECK(checks_detail::pole_spans(c.plan, c.cover.layout)[0].piece.cantilever);
    Case bare;  // neither upright nor straps at the middle: one span of 4 m in two bays
    bare.cover.layout.frame.members.resize(by_hand::ridge_members);
    const auto longer = checks_detail::pole_spans(bare.plan, bare.cover.layout);
    CHECK(close(in_m(longer[0].piece.span), 4.0, 1e-12));
    CHECK(close(in_m(longer[1].piece.span), 4.0, 1e-12));
    CHECK_FALSE(longer[0].piece.cantilever);
}

// The overhang is a column of 2.1 l by NDS: 2.1 x 0.8/0.038 = 44.2 of 50 is allowed, 2.1 x 2/0.038 is not.
TEST_CASE("check_ridge: an overhang counts 2.1 times as a column") {
    Case c;
    c.workings = true;
    c.cover.layout.frame.nodes[0].held = {};
    c.forces(0).axial = -500;
    CHECK(close(bending(c).demand, 2.1 * 2.0 / 0.038, 1e-9));
}

TEST_CASE("check_ridge: other poles of a found frame are judged too") {
    Case c;
    FoundFrame found;
    const Section section{38.0_mm, 89.0_mm};
    const std::string grade = "Spruce-Pine-Fir No.1/No.2";
    found.members = {{"R", FoundKind::pole, "a", "b", section, grade, "", {}, "", {}},
                     {"P1", FoundKind::pole, "b", "c", section, grade, "", {}, "", {}}};
    c.plan.support.structure = found;
    for (int m = 0; m < by_hand::ridge_members; ++m) c.member(m).name = "R";
    c.cover.layout.uprights.clear();
    c.member(by_hand::strap_port).kind =
        MemberKind::pole;  // from the ridge to the port rail, sqrt(1.2^2 + 0.9^2) = 1.5 m
    c.member(by_hand::strap_port).name = "P1";
    c.forces(by_hand::strap_port).moment_vertical_from = 500;
    const Finding f = find(check_ridge(c.input()), "pole.bending", "pole P1");
    // l_u/d = 16.9: l_e = 1.84 x 1.5 = 2.76 m, R_B^2 = 2760 x 89/38^2 = 170.1, F_bE = 33.40, a = 2.514, C_L = 0.9696
    const double a = 1.2 * 4734.3816 / (2760 * 89 / (38.0 * 38)) / 13.285560;
    const double C_L = (1 + a) / 1.9 - std::sqrt((1 + a) / 1.9 * (1 + a) / 1.9 - a / 0.95);
    CHECK(close(C_L, 0.9696, 1e-4));
    CHECK(close(f.demand, 9.966844 / (C_L * 13.285560), 1e-6));
    CHECK(find(check_ridge(c.input()), "ridge.bending", "ridge, bow to U1").demand == 0.0);
}

TEST_CASE("check_ridge: a plan that does not say what the document needs") {
    Case no_time;
    no_time.plan.basis.timber.time_effect_factor.reset();
    CHECK(code_of(no_time) == "checks.choice");
    Case no_moisture;
    no_moisture.plan.basis.timber.wet_service.reset();
    CHECK(code_of(no_moisture) == "checks.choice");
    Case no_k_mod(by_hand::european_plan());
    no_k_mod.plan.basis.timber.modification_factor.reset();
    CHECK(code_of(no_k_mod) == "checks.choice");
    Case other_grade;
    std::get<PoleRidge>(other_grade.support().ridge.member).grade = "C24";
    CHECK(code_of(other_grade) == "checks.grade");
    Case absurd;
    absurd.plan.basis.timber.time_effect_factor->value = 3.0;
    CHECK(code_of(absurd) == "nds2018.time_effect.range");
}
