// SPDX-License-Identifier: BSD-3-Clause
// Findings of a survey that is put together by hand: every number of them by the rule of assess/surface.hpp.
#include <doctest/doctest.h>

#include <algorithm>
#include <limits>
#include <string>

#include "checks/by_hand.hpp"
#include "close.hpp"
#include "coverframe/assess/surface.hpp"

using namespace coverframe;

namespace {

/// The plan of by_hand.hpp with a windshield and a cleat that the film must stay 0.2 and 0.1 m off, snow times 1.6.
Assessment assessed() {
    Assessment a;
    a.plan = by_hand::plan();
    a.plan.basis.combination.snow = {1.6, "invented"};
    for (const auto& [name, clearance] : {std::pair{"windshield", 0.2}, std::pair{"cleat", 0.1}}) {
        Obstacle obstacle;
        obstacle.name = name;
        obstacle.clearance = {from_m(clearance), "invented"};
        a.plan.boat.obstacles.push_back(obstacle);
    }
    return a;
}

SurfaceLook look(const std::string& arrangement, double windshield, double cleat, double force = 0) {
    SurfaceLook one;
    one.arrangement = arrangement;
    one.status = SurfaceStatus::converged;
    one.touches = {{"windshield", windshield, 0.2, force, force}, {"cleat", cleat, 0.1, 0, 0}};
    return one;
}

Finding check(const std::string& name, const std::string& part, double utilisation, double demand) {
    Finding f;
    f.check = name;
    f.part = part;
    f.demand = demand;
    f.capacity = demand / utilisation;
    f.utilisation = utilisation;
    f.verdict = utilisation <= 1 ? Verdict::satisfied : Verdict::exceeded;
    return f;
}

Finding named(const std::vector<Finding>& findings, const std::string& name, const std::string& part) {
    const auto found =
        std::ranges::find_if(findings, [&](const Finding& f) { return f.check == name && f.part == part; });
    REQUIRE(found != findings.end());
    return *found;
}

}  // namespace

TEST_CASE("surface_findings: the nearest look counts for the clearance of each obstacle") {
    const Assessment a = assessed();
    SurfaceSurvey survey;
    survey.looks = {look("no snow", 0.5, 0.3), look("balanced", 0.19, 0.4), look("drift", 0.3, 0.11)};
    std::vector<Finding> findings = surface_findings(a, survey);
    const Finding near = named(findings, "surface.clearance", "windshield");
    CHECK(near.demand == 0.2);
    CHECK(near.capacity == 0.19);
    CHECK(near.verdict == Verdict::exceeded);
    CHECK(near.situation.starts_with("balanced;"));
    const Finding far = named(findings, "surface.clearance", "cleat");
    CHECK(close(far.utilisation.value(), 0.1 / 0.11, 1e-12));
    CHECK(far.verdict == Verdict::satisfied);
    CHECK(far.situation.starts_with("drift;"));
    // What rests has no clearance at all, whatever is asked for; what does not lie under the film is not judged.
    survey.looks.push_back(look("storm", 0.001, std::numeric_limits<double>::infinity(), 30));
    const Finding rests = named(surface_findings(a, survey), "surface.clearance", "windshield");
    CHECK(rests.capacity == 0.0);
    CHECK_FALSE(rests.utilisation.has_value());
    CHECK(rests.verdict == Verdict::exceeded);
    survey.looks = {look("no snow", std::numeric_limits<double>::infinity(), 0.3)};
    findings = surface_findings(a, survey);
    CHECK(std::ranges::count(findings, "surface.clearance", &Finding::check) == 1);
}

TEST_CASE("surface_findings: a litre may stand, in the look that holds most") {
    const Assessment a = assessed();
    SurfaceSurvey survey;
    survey.looks = {look("no snow", 1, 1), look("balanced", 1, 1), look("drift", 1, 1)};
    for (const auto& [k, litres] : {std::pair{1, 0.4}, std::pair{1, 0.58}, std::pair{2, 0.2}}) {
        PondFlag pond;
        pond.place = "between U1 and stern, port";
        pond.volume = 1e-3 * litres;
        SurfaceLook& one = survey.looks[static_cast<std::size_t>(k)];
        one.ponds.push_back(pond);
        one.water += pond.volume;
    }
    const Finding stands = named(surface_findings(a, survey), "surface.water", "film");
    CHECK(close(stands.demand, 0.98, 1e-12));
    CHECK(stands.verdict == Verdict::satisfied);
    CHECK(stands.situation.starts_with("balanced;"));
    survey.looks[1].ponds[0].volume = 0.43e-3;
    CHECK(named(surface_findings(a, survey), "surface.water", "film").verdict == Verdict::exceeded);
}

TEST_CASE("surface_findings: the worst check of a part is raised by what the surface brings more, times the factor") {
    Assessment a = assessed();
    // 40 % of the column and 60 % of the hold at 5 kN; 1000 N more with the factor 1.6: 0.6 (1 + 1.6/5) = 0.792.
    a.findings = {check("upright.column", "U1", 0.4, 5), check("upright.hold", "U1", 0.6, 5),
                  check("upright.foot", "U2", 0.99, 5), check("strap.strength", "C1 port", 0.8, 2)};
    a.forces = {{"U1", "push", "N", -200, "a", 5000, "b"}, {"U2", "push", "N", 0, "a", 9000, "b"}};
    SurfaceSurvey survey;
    survey.forces = {{"U1", Carried::push, 3000, 4000, "balanced"}, {"C1 port", Carried::tension, 900, 1300, "drift"}};
    std::vector<Finding> findings = surface_findings(a, survey);
    CHECK(close(named(findings, "surface.upright", "U1").demand, 0.792, 1e-12));
    CHECK(named(findings, "surface.upright", "U1").verdict == Verdict::satisfied);
    // 0.8 (1 + 1.6 x 400/2000) = 1.056
    CHECK(close(named(findings, "surface.strap", "C1 port").demand, 1.056, 1e-12));
    CHECK(named(findings, "surface.strap", "C1 port").verdict == Verdict::exceeded);
    survey.forces = {{"U1", Carried::push, 4000, 3000, "balanced"}};  // nothing is lowered
    findings = surface_findings(a, survey);
    CHECK(std::ranges::count(findings, "surface.upright", &Finding::check) == 0);
}
