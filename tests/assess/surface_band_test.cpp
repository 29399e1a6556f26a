// SPDX-License-Identifier: BSD-3-Clause
// The band under film as a surface: tests/assess/surface_rail_test.cpp holds the pulls, this what becomes of them.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "close.hpp"
#include "coverframe/assess/surface.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/report/report.hpp"
#include "coverframe/units/crossing.hpp"
#include "plans.hpp"

using namespace coverframe;

namespace {

Plan sloop() { return read_plan_file(std::string(COVERFRAME_SOURCE_FOLDER) + "/examples/plans/sloop.json"); }

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

SurfaceSurvey coarse(const Assessment& a) { return survey_surface(a, {.spacing = 0.35, .rows = 8}); }

PartForce force_of(const SurfaceSurvey& survey, const std::string& part) {
    const auto found = std::ranges::find(survey.forces, part, &PartForce::part);
    REQUIRE(found != survey.forces.end());
    return *found;
}

Finding finding_of(const std::vector<Finding>& findings, const std::string& check, const std::string& part) {
    const auto found =
        std::ranges::find_if(findings, [&](const Finding& f) { return f.check == check && f.part == part; });
    REQUIRE_MESSAGE(found != findings.end(), check, " of ", part);
    return *found;
}

bool found(const std::vector<Finding>& findings, const std::string& check, const std::string& part) {
    return std::ranges::any_of(findings, [&](const Finding& f) { return f.check == check && f.part == part; });
}

}  // namespace

TEST_CASE("survey_surface: belly straps and band carry what the check of the band makes of the surface's pull") {
    const Assessment a = assess(sloop(), {.workings = false});
    const SurfaceSurvey survey = coarse(a);
    const std::vector<Finding> findings = surface_findings(a, survey);
    int raised = 0;
    for (const std::string part : {"belly strap 1", "belly strap 2", "belly strap 3", "band"}) {
        CAPTURE(part);
        const PartForce force = force_of(survey, part);
        REQUIRE(of_band(force.carried));
        CHECK((force.carried == Carried::band_tension) == (part == "band"));
        CHECK(std::ranges::any_of(a.situations, [&](const SituationResult& r) {
            return r.situation.name == force.arrangement && r.situation.limit == Limit::strength;
        }));
        const Finding worst = finding_of(a.findings, part == "band" ? "band.tension" : "band.lift", part);
        CHECK(force.strips <= 1e3 * worst.demand * (1 + 1e-9));
        CHECK(force.strips > 0.2e3 * worst.demand);
        CHECK(force.surface < 2 * force.strips);
        // What closes bow and stern pulls on the first and the last belly strap, and on the band round the ends.
        if (part == "belly strap 2")
            CHECK(force.without_ends == force.surface);
        else
            CHECK(force.without_ends < 0.97 * force.surface);
        if (!(force.excess() > 0)) {
            CHECK_FALSE(found(findings, "surface.band", part));
            continue;
        }
        ++raised;
        const Finding f = finding_of(findings, "surface.band", part);
        CHECK(close(f.demand, *worst.utilisation * (1 + force.excess() / (1e3 * worst.demand)), 1e-12));
        CHECK(f.x == worst.x);
        CHECK(has(f.sentence, force.arrangement));
        CHECK(has(f.sentence, "without the film that closes bow and stern"));
        CHECK(f.workings.size() == 7);
    }
    CHECK(raised >= 2);
    Assessment with = a;
    add_surface_findings(with, survey);
    CHECK(has(text_report(with), "band, pull under film as a surface"));
    CHECK(has(json_report(with), "\"surface.band\""));
    CHECK(has(job_sheet(with, &survey), "pull under film as a surface"));

    // A band of half the strength is used twice as much; its straps go on to pull as they did.
    Plan weak = sloop();
    for (StrapKind& kind : weak.straps) {
        if (kind.name == weak.support.band.strap) kind.break_strength.value = 0.5 * kind.break_strength.value;
    }
    const std::vector<Finding> halved = surface_findings(assess(weak, {.workings = false}), survey);
    CHECK(close(finding_of(halved, "surface.band", "band").demand,
                2 * finding_of(findings, "surface.band", "band").demand, 1e-9));

    // Friction on the rail keeps a part of either film's pull off the band.
    Plan rough = sloop();
    rough.support.band.rail_friction = Cited<double>{0.3, "invented"};
    const Assessment kept = assess(rough, {.workings = false});
    const SurfaceSurvey over_rough = coarse(kept);
    for (const std::string part : {"belly strap 3", "band"}) {
        CAPTURE(part);
        const PartForce smooth = force_of(survey, part);
        const PartForce less = force_of(over_rough, part);
        CHECK(less.strips < 0.99 * smooth.strips);
        CHECK(less.surface < 0.95 * smooth.surface);
    }
    CHECK(finding_of(surface_findings(kept, over_rough), "surface.band", "band").demand <
          0.95 * finding_of(findings, "surface.band", "band").demand);
}

TEST_CASE("survey_surface: a level cover of one section, open at its ends, pulls its band as strips do") {
    const Assessment a = assess(plans::long_level_cover(), {.workings = false});
    const SurfaceSurvey survey = survey_surface(a, {.spacing = 0.15, .rows = 12});
    REQUIRE(survey.looks.back().usable());
    for (const std::string part : {"belly strap 1", "belly strap 2", "belly strap 3", "band"}) {
        CAPTURE(part);
        const PartForce force = force_of(survey, part);
        CHECK(force.without_ends == force.surface);
        CHECK(force.surface < 1.03 * force.strips);  // the held ends take a part
    }
    CHECK(close(force_of(survey, "belly strap 2").surface, force_of(survey, "belly strap 2").strips, 0.03));
}

TEST_CASE("survey_surface: a band that the rub rail alone holds has a lift") {
    Plan plan = sloop();
    plan.support.band.belly_straps.clear();
    plan.support.band.rub_rail_hold = Cited<LineLoad>{from_N_per_m(3000), "invented"};
    const Assessment a = assess(plan, {.workings = false});
    const SurfaceSurvey survey = coarse(a);
    const PartForce force = force_of(survey, "band");
    CHECK(force.carried == Carried::band_lift);
    CHECK(std::ranges::count_if(survey.forces, [](const PartForce& f) { return of_band(f.carried); }) == 1);
    const Finding worst = finding_of(a.findings, "band.lift", "band");
    CHECK(force.strips <= 1e3 * worst.demand * (1 + 1e-9));
    REQUIRE(force.excess() > 0);
    const Finding f = finding_of(surface_findings(a, survey), "surface.band", "band");
    CHECK(close(f.demand, (1e3 * worst.demand + force.excess()) / 3000, 1e-9));
    CHECK(has(f.sentence, "Band has a lift of "));
}

TEST_CASE("surface_findings: a raise that nobody would see is left out, one past the limit never") {
    Assessment a = assess(sloop(), {.workings = false});
    const auto check = std::ranges::find_if(
        a.findings, [](const Finding& f) { return f.check == "band.tension" && f.part == "band"; });
    REQUIRE(check != a.findings.end());
    const auto raises = [&](double used, double by) {
        check->utilisation = used;
        SurfaceSurvey survey;
        const double most = 1e3 * check->demand;
        survey.forces = {{"band", Carried::band_tension, 100, 100 + by / used * most, "balanced", 100}};
        return found(surface_findings(a, survey), "surface.band", "band");
    };
    CHECK_FALSE(raises(0.5, 0.0099));
    CHECK(raises(0.5, 0.0101));
    CHECK_FALSE(raises(3.0, 0.029));  // of its use
    CHECK(raises(3.0, 0.031));
    CHECK(raises(0.999, 0.002));
    CHECK_FALSE(raises(0.999, 0.0005));
}
