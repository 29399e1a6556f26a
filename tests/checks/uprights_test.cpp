// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/checks/uprights.hpp"

#include <doctest/doctest.h>

#include "by_hand.hpp"
#include "close.hpp"
#include "coverframe/base/error.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using by_hand::Case;
using by_hand::find;
using by_hand::term;

namespace {

Finding of(const Case& c, const std::string& check) { return find(check_uprights(c.input()), check, "U1"); }

/// A found frame with one upright of that name, standing where `stands_on` says.
FoundFrame found_upright(const std::string& stands_on, std::optional<FootPad> pad) {
    FoundFrame found;
    found.members = {{"U1",
                      FoundKind::upright,
                      "foot",
                      "top",
                      Section{38.0_mm, 89.0_mm},
                      "Spruce-Pine-Fir No.1/No.2",
                      "",
                      {},
                      stands_on,
                      pad}};
    return found;
}

void take(Case& c, const FoundFrame& found) {
    c.plan.support.structure = found;
    c.cover.layout.uprights[0].drawn = nullptr;
    c.cover.layout.uprights[0].found = &std::get<FoundFrame>(c.plan.support.structure).members[0];
}

}  // namespace

// l_e/d = 1500/38 = 39.47. F_c* = 1150 psi x 1.15 x 0.8 (1322 psi > 750 psi) x 2.40 x 0.90 x 0.8 = 12.605 N/mm2.
// E_min' = 4734 N/mm2 (ridge_test.cpp), F_cE = 0.822 x 4734/39.47^2 = 2.4976, a = 0.19814,
// C_P = 0.74884 - sqrt(0.56076 - 0.24768) = 0.1893; P' = 0.1893 x 12.605 x 3382 = 8.070 kN.
TEST_CASE("check_uprights: column by NDS") {
    Case c;
    c.workings = true;
    c.forces(by_hand::upright_member).axial = -3.4e3;
    const Finding f = of(c, "upright.column");
    CHECK(close(f.demand, 3.4, 1e-12));
    CHECK(close(f.capacity, 8.06995, 1e-5));
    CHECK(f.unit == "kN");
    CHECK(f.verdict == Verdict::satisfied);
    CHECK(text_of(f.clause) == "NDS 2018, 3.7.1");
    CHECK(close(term(f, "C_P"), 0.189299, 1e-5));
    CHECK(close(term(f, "F_cE2"), 2.49758, 1e-5));
    CHECK(f.sentence.find("3.4 kN (764 lbf)") != std::string::npos);
}

// C24: f_c,0,d = 21 x 0.7/1.3 = 11.308; lambda_z = 1500 sqrt(12)/38 = 136.7, lambda_rel = 136.7/pi sqrt(21/7400)
// = 2.319, k = 0.5 (1 + 0.2 x 2.019 + 5.376) = 3.390, k_c = 1/(3.390 + sqrt(11.49 - 5.376)) = 0.1706; 0.1706 x 11.308 x
// 3382 = 6.52 kN.
TEST_CASE("check_uprights: column by EN 1995-1-1") {
    Case c(by_hand::european_plan());
    c.forces(by_hand::upright_member).axial = -7e3;
    const Finding f = of(c, "upright.column");
    CHECK(close(f.capacity, 6.523, 1e-3));
    CHECK(f.verdict == Verdict::exceeded);
    CHECK(text_of(f.clause) == "EN 1995-1-1:2004, 6.3.2");
}

// 2000 mm long: l_e/d = 52.6 over 50 (NDS 3.7.1.4).
TEST_CASE("check_uprights: too slender a column has no capacity") {
    Case c;
    c.cover.layout.frame.nodes[5].at[2] = -0.5;
    c.forces(by_hand::upright_member).axial = -100;
    const Finding f = of(c, "upright.column");
    CHECK(f.verdict == Verdict::exceeded);
    CHECK(f.capacity == 0.0);
    CHECK_FALSE(f.utilisation.has_value());
    CHECK(f.sentence.find("too slender") != std::string::npos);
}

// Sideways at the middle of the ridge: the pole over 4 m as a beam on two supports, 48 EI/L^3 (EI = 4 kN m2, rigid in
// shear) = 3000 N/m, and each strap EA/L0 cos^2 + T/l sin^2 with cos 0.8, sin 0.6, l = 1.5 m. Set to T = 600 N:
// L0 = 1.5/1.01, EA/L0 = 40400; 2 (40400 x 0.64 + 400 x 0.36) = 52000 N/m. Together 55000 N/m; h = 1.5 m: 82.5 kN.
// Fore and aft the pole alone: its bow end is fixed, the other slides: 30 MN/2 m = 15 MN/m and more.
TEST_CASE("check_uprights: held by straps and ridge") {
    Case c;
    c.workings = true;
    for (const int m : {by_hand::strap_port, by_hand::strap_starboard}) {
        c.member(m).free_length = 1.5 / 1.01;
        c.forces(m).axial = 600;
    }
    c.forces(by_hand::upright_member).axial = -3e3;
    const Finding f = of(c, "upright.hold");
    CHECK(close(f.capacity, 82.5, 1e-6));
    CHECK(f.demand == 3.0);
    CHECK(f.unit == "kN");
    CHECK(close(term(f, "k"), 55000.0, 1e-6));
    CHECK(f.sentence.find("athwart") != std::string::npos);
}

// Both straps slack: what the pole's bending gives is left, 3000 N/m x 1.5 m = 4.5 kN.
TEST_CASE("check_uprights: slack straps hold nothing") {
    Case c;
    for (const int m : {by_hand::strap_port, by_hand::strap_starboard}) c.member(m).free_length = 1.6;
    c.forces(by_hand::upright_member).axial = -5e3;
    const Finding f = of(c, "upright.hold");
    CHECK(close(f.capacity, 4.5, 1e-6));
    CHECK(f.verdict == Verdict::exceeded);
    CHECK(f.sentence.find("goes over athwart") != std::string::npos);
}

// A strap ridge without stiffness sideways, slack cross straps: nothing at all.
TEST_CASE("check_uprights: nothing holds the top") {
    Case c;
    c.cover.layout.uprights[0].drawn = &c.support().uprights[0];
    for (int m = 0; m < by_hand::ridge_members; ++m) c.member(m).kind = MemberKind::strap;
    for (const int m : {0, 1, 2, 3, by_hand::strap_port, by_hand::strap_starboard}) c.member(m).free_length = 3.0;
    c.forces(by_hand::upright_member).axial = -10;
    const Finding f = of(c, "upright.hold");
    CHECK(f.verdict == Verdict::exceeded);
    CHECK(f.capacity <= 0.0);
    CHECK_FALSE(f.utilisation.has_value());
    CHECK(f.sentence.find("nothing holds its top") != std::string::npos);
}

TEST_CASE("check_uprights: a top that the boat holds cannot go over") {
    Case c;
    c.cover.layout.frame.nodes[2].held = {true, true, true, false, false, false};
    const Finding f = of(c, "upright.hold");
    CHECK(f.check == "upright.hold");
    CHECK(f.verdict == Verdict::not_applicable);
}

// 45 degrees through 18 mm: (89 + 36) x (38 + 36) = 125 x 74 = 9250 mm2; 3400/9250 = 367.6 kPa against 120 kPa.
TEST_CASE("check_uprights: pressure under the pad") {
    Case c;
    c.workings = true;
    c.forces(by_hand::upright_member).axial = -3400;
    const Finding f = of(c, "upright.foot");
    CHECK(close(f.demand, 3400.0 / 9250 * 1e3, 1e-12));
    CHECK(f.capacity == 120.0);
    CHECK(f.unit == "kPa");
    CHECK(f.verdict == Verdict::exceeded);
    CHECK(close(term(f, "A"), 9250.0, 1e-12));
    CHECK(f.sentence.find("368 kPa (7680 psf) on the cockpit sole, where 120 kPa (2510 psf) is the most") !=
          std::string::npos);
    c.support().uprights[0].pad = {200.0_mm, 200.0_mm, 80.0_mm};  // thick enough for all of it: 200 x 198 mm
    CHECK(close(of(c, "upright.foot").demand, 3400.0 / (200 * 198) * 1e3, 1e-12));
    CHECK(of(c, "upright.foot").verdict == Verdict::satisfied);
}

TEST_CASE("check_uprights: a lifted upright asks for nothing") {
    Case c;
    c.workings = true;
    c.forces(by_hand::upright_member).active = false;
    const std::vector<Finding> findings = check_uprights(c.input());
    CHECK(findings.size() == 3);
    CHECK(by_hand::sound(findings));
    for (const Finding& f : findings) {
        CHECK(f.demand == 0.0);
        CHECK(f.verdict == Verdict::satisfied);
        CHECK(f.utilisation.value() == 0.0);
        CHECK(f.sentence.find("lifted off") != std::string::npos);
    }
}

TEST_CASE("check_uprights: demands go with the push") {
    Case c;
    c.forces(by_hand::upright_member).axial = -1e3;
    const std::vector<Finding> once = check_uprights(c.input());
    c.forces(by_hand::upright_member).axial = -2e3;
    const std::vector<Finding> twice = check_uprights(c.input());
    for (std::size_t i = 0; i < once.size(); ++i) CHECK(close(twice[i].demand, 2 * once[i].demand, 1e-12));
}

TEST_CASE("check_uprights: a found upright stands where the plan says, or is not judged") {
    Case c;
    c.forces(by_hand::upright_member).axial = -3382;
    take(c, found_upright("cockpit sole", {}));
    CHECK(close(of(c, "upright.foot").demand, 1000.0, 1e-12));  // on its bare section of 3382 mm2
    CHECK(of(c, "upright.foot").sentence.find("bare foot") != std::string::npos);
    CHECK(close(of(c, "upright.column").capacity, 8.06995, 1e-5));
    take(c, found_upright("cockpit sole", FootPad{200.0_mm, 200.0_mm, 18.0_mm}));
    CHECK(close(of(c, "upright.foot").demand, 3382.0 / 9250 * 1e3, 1e-12));
    take(c, found_upright("", {}));
    CHECK(of(c, "upright.foot").check == "upright.foot");
    CHECK(of(c, "upright.foot").verdict == Verdict::not_applicable);
    CHECK(by_hand::sound(check_uprights(c.input())));
}

TEST_CASE("check_uprights: a section the document does not cover is not applicable as a column, the rest is judged") {
    Case c;
    c.support().uprights[0].section = {30.0_mm, 89.0_mm};
    c.forces(by_hand::upright_member).axial = -1e3;
    CHECK(of(c, "upright.column").check == "upright.column");
    CHECK(of(c, "upright.column").verdict == Verdict::not_applicable);
    CHECK(of(c, "upright.foot").demand > 0.0);
}

TEST_CASE("check_uprights: a grade of another document is an error") {
    Case c;
    c.support().uprights[0].grade = "C24";
    CHECK_THROWS_AS((void)check_uprights(c.input()), InputError);
}
