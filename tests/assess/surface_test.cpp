// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/assess/surface.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "assess/film_pull.hpp"
#include "close.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/report/report.hpp"
#include "coverframe/units/crossing.hpp"

using namespace coverframe;

namespace {

Plan demo(const std::string& name) {
    return read_plan_file(std::string(COVERFRAME_SOURCE_FOLDER) + "/examples/plans/" + name + ".json");
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("snow_over: the field of an arrangement, with its side, its stations and its place across") {
    const Assessment a = assess(demo("motor_boat"), {.workings = false});
    const CoverSurface s = rig_surface(a.plan, 150, {.spacing = 0.4, .rows = 6});
    const auto total = [&](const Arrangement& arrangement) {
        const std::vector<double> snow = snow_over(s, a.stations, arrangement);
        double sum = 0;
        for (std::size_t t = 0; t < snow.size(); ++t) sum += snow[t] * plan_area(s.cover.mesh, t);
        return sum;
    };
    const auto named = [&](const std::string& part) {
        return *std::find_if(a.arrangements.begin(), a.arrangements.end(),
                             [&](const Arrangement& one) { return has(one.name, part); });
    };
    const Arrangement& balanced = a.arrangements.front();
    // The strips see the greatest load of a side, the surface the field: never more in all.
    double by_strips = 0;
    for (std::size_t i = 1; i < a.stations.size(); ++i) {
        const double length = in_m(a.stations[i].x - a.stations[i - 1].x);
        for (const std::size_t k : {i - 1, i}) {
            const double half = in_m(a.stations[k].half_breadth);
            by_strips += 0.5 * length * half * (in_Pa(balanced.port[k].value) + in_Pa(balanced.starboard[k].value));
        }
    }
    CHECK(total(balanced) < 1.1 * by_strips);
    CHECK(total(balanced) > 0.5 * by_strips);
    // Cleared to port is the mirror of cleared to starboard, and each about half of balanced.
    CHECK(close(total(named("cleared to port")), total(named("cleared to starboard")), 1e-9));
    CHECK(close(2 * total(named("cleared to port")), total(balanced), 1e-6));
}

// Between stations of 1 and 2 m half breadth, 200 + 600 s Pa to port at the first and 400 + 600 s at the second, s the
// share of each one's own half breadth: by hand at the middle of a triangle.
TEST_CASE("snow_over: straight between two stations, each at its own share across") {
    CoverSurface s;
    s.cover.mesh.nodes = {{1, -0.3, 0}, {1.6, -0.3, 0}, {1.3, -0.9, 0}, {1, 0.3, 0}, {1.6, 0.3, 0}, {1.3, 0.9, 0}};
    s.cover.mesh.triangles = {{0, 1, 2}, {3, 4, 5}};  // middles at x = 1.3 m, y = -0.5 and 0.5 m
    const auto station = [](double x, double half) {
        return CoverStation{from_m(x), from_deg(40), from_m(half), from_m(1)};
    };
    const auto profile = [](double at_ridge, double at_rail) {
        return LoadProfile{{0, {from_Pa(at_ridge)}}, {1, {from_Pa(at_rail)}}};
    };
    Arrangement arrangement;
    arrangement.port_field = {profile(200, 800), profile(400, 1000)};
    arrangement.starboard_field = {profile(0, 0), profile(100, 100)};
    const std::vector<double> snow = snow_over(s, {station(1, 1), station(2, 2)}, arrangement);
    REQUIRE(snow.size() == 2);
    CHECK(close(snow[0], 0.7 * (200 + 600 * 0.5) + 0.3 * (400 + 600 * 0.25), 1e-12));  // 515 Pa
    CHECK(close(snow[1], 0.3 * 100, 1e-12));
}

TEST_CASE("survey_surface: every arrangement looked at, the worst one pictured") {
    const Assessment a = assess(demo("sloop"), {.workings = false});
    const SurfaceSurvey survey = survey_surface(a, {.spacing = 0.35, .rows = 8});
    REQUIRE(survey.looks.size() == a.arrangements.size() + 1);
    CHECK(survey.looks.front().arrangement == "no snow");
    const SurfaceLook& worst = survey.looks[static_cast<std::size_t>(survey.worst)];
    for (const SurfaceLook& look : survey.looks) {
        CAPTURE(look.arrangement);
        REQUIRE(look.usable());
        CHECK(close(look.slopes.sheds + look.slopes.partly + look.slopes.holds, 1, 1e-12));
        CHECK(look.touches.size() == a.plan.boat.obstacles.size());
        CHECK(std::floor(1000 * look.water) <= std::floor(1000 * worst.water));
    }
    CHECK(close(survey.pictured.water.volume(), worst.water, 1e-12));
    const SlopeShares shares = slope_shares(survey.pictured, survey.shedding / 2, survey.shedding);
    CHECK(close(worst.slopes.holds, shares.holds, 1e-12));
    CHECK(close(worst.slopes.sheds, shares.sheds, 1e-12));
    CHECK(worst.touches.front().force > 0);  // the strips of the assessment find the film too near the hatch as well
    REQUIRE(!survey.touched.empty());
    for (const TouchLoad& first : survey.touched) {
        CAPTURE(first.touch.obstacle);
        CHECK(*first.touch.share > 0);
        CHECK(*first.touch.share <= 1);
        CHECK(first.load > 0);
        // told under the snow that rests hardest
        const auto force_in = [&](const SurfaceLook& look) {
            const auto touch = std::ranges::find(look.touches, first.touch.obstacle, &SurfaceTouch::obstacle);
            REQUIRE(touch != look.touches.end());
            return touch->force;
        };
        const auto told = std::ranges::find(survey.looks, first.arrangement, &SurfaceLook::arrangement);
        REQUIRE(told != survey.looks.end());
        for (const SurfaceLook& look : survey.looks) CHECK(force_in(look) <= force_in(*told));
    }
    CHECK(has(job_sheet(a, &survey), "It first touches the companionway hatch with"));
    const bool near = std::any_of(a.findings.begin(), a.findings.end(), [](const Finding& f) {
        return f.check == "clearance" && has(f.part, "companionway hatch") && f.verdict == Verdict::exceeded;
    });
    CHECK(near);
}

TEST_CASE("surface_findings: water, touch and what parts carry more join the findings of the strips") {
    Assessment a = assess(demo("sloop"), {.workings = false});
    SurfaceSurvey survey = survey_surface(a, {.spacing = 0.35, .rows = 8});
    REQUIRE(survey.looks.size() > 2);
    PondFlag pond;  // as if water stood there
    pond.place = "between U2 and U3, port";
    pond.volume = 0.02;
    survey.looks[2].ponds.insert(survey.looks[2].ponds.begin(), pond);
    survey.looks[2].water = 0.02;
    const std::vector<Finding> findings = surface_findings(a, survey);
    const auto named = [&](const std::string& check, const std::string& part) {
        const auto found = std::find_if(findings.begin(), findings.end(),
                                        [&](const Finding& f) { return f.check == check && f.part == part; });
        REQUIRE(found != findings.end());
        return *found;
    };
    const Finding water = named("surface.water", "film");
    CHECK(water.verdict == Verdict::exceeded);
    CHECK(water.demand >= 20.0);
    CHECK(water.capacity == 1.0);
    CHECK(has(water.situation, survey.looks[2].arrangement));
    CHECK(has(water.sentence, "between U2 and U3, port"));
    survey.looks[2].ponds.clear();
    survey.looks[2].water = 0;
    const std::vector<Finding> dry = surface_findings(a, survey);
    CHECK(std::any_of(dry.begin(), dry.end(),
                      [](const Finding& f) { return f.check == "surface.water" && f.verdict == Verdict::satisfied; }));
    const Finding hatch = named("surface.clearance", "companionway hatch");
    CHECK(hatch.verdict == Verdict::exceeded);
    CHECK(has(hatch.sentence, "rests on the companionway hatch"));
    CHECK(survey.forces.size() ==
          3 + 4 + 6 + 4 + 4);  // uprights, bays of ridge, legs, bays of film, belly straps and band
    std::size_t raised = 0;
    for (const PartForce& force : survey.forces) {
        CAPTURE(force.part);
        CHECK(force.surface > 0);
        if (of_band(force.carried)) continue;  // tests/assess/surface_band_test.cpp
        if (force.carried == Carried::film_pull) {
            CHECK(force.surface < 2.5 * force.strips);
            continue;  // its raising is held below
        }
        if (!(force.excess() > 0)) continue;
        const bool upright = force.carried == Carried::push;
        // The same snow on the same supports, by two models: not far from each other.
        CHECK(force.surface < (upright ? 1.6 : 2.5) * force.strips);
        // Film on cross straps is in their check: hardly anything is left for the surface to add.
        if (force.part.starts_with("C")) CHECK(force.excess() < 0.05 * force.strips);
        const Finding* worst = nullptr;
        for (const Finding& f : a.findings) {
            if (f.part != force.part || !f.utilisation) continue;
            if (!(upright ? f.check.starts_with("upright.") : f.check == "strap.strength" || f.check == "ridge.strap"))
                continue;
            if (worst == nullptr || *f.utilisation > *worst->utilisation) worst = &f;
        }
        REQUIRE(worst != nullptr);
        const auto range = std::find_if(a.forces.begin(), a.forces.end(), [&](const ForceRange& r) {
            return r.part == force.part && r.quantity == "push";
        });
        const double most = upright ? range->greatest : 1e3 * worst->demand;
        const double factor = a.plan.basis.combination.snow.value;
        const char* check = upright                           ? "surface.upright"
                            : force.part.starts_with("ridge") ? "surface.ridge"
                                                              : "surface.strap";
        const double used = *worst->utilisation * (1 + factor * force.excess() / most);
        if (used - *worst->utilisation < 0.01 * std::max(1.0, *worst->utilisation)) continue;
        ++raised;
        CHECK(close(named(check, force.part).demand, used, 1e-12));
    }
    CHECK(raised >= 3);
    CHECK(static_cast<std::size_t>(std::count_if(findings.begin(), findings.end(), [](const Finding& f) {
              return f.check == "surface.upright" || f.check == "surface.ridge" || f.check == "surface.strap";
          })) == raised);
    for (const Finding& f : findings) {
        CHECK(f.sentence.back() == '.');
        CHECK_FALSE(has(f.sentence, "nan"));
    }
    const std::size_t before = a.findings.size();
    add_surface_findings(a, survey);
    CHECK(a.findings.size() == before + findings.size());
    CHECK(a.outcome == Outcome::exceeded);
    for (std::size_t i = 1; i < a.findings.size(); ++i) CHECK_FALSE(worse(a.findings[i], a.findings[i - 1]));
}

// The greatest pull of single triangles over the tops of uprights grows with the mesh, the mean over a disc does not.
TEST_CASE("survey_surface: the pull of the film settles as the mesh is refined") {
    const Assessment a = assess(demo("open_boat"), {.workings = false});
    std::vector<double> pulls;
    std::vector<double> single;
    for (const int rows : {12, 24}) {
        const CoverSurface surface =
            rig_surface(a.plan, 100, {.spacing = 2.4 / rows, .rows = rows, .film = Bound::low});
        const SurfaceState state =
            load_surface(surface, std::vector<double>(surface.cover.mesh.triangles.size(), 400.0));
        REQUIRE(state.usable());
        pulls.push_back(assess_detail::FilmPull(surface, state).greatest(0, 10));
        single.push_back(std::ranges::max_element(state.triangles, {}, &FilmForces::first)->first);
    }
    CHECK(close(pulls[0], pulls[1], 0.02));
    CHECK(single[1] > 1.03 * single[0]);
    CHECK(pulls[1] < single[1]);
}

TEST_CASE("surface_findings: the stress of the film is raised by what the surface pulls more, and only then") {
    Assessment a = assess(demo("sloop"), {.workings = false});
    SurfaceSurvey survey;
    survey.forces = {{"film, U1 to U2", Carried::film_pull, 400, 600, "balanced"},
                     {"film, U2 to U3", Carried::film_pull, 400, 300, "balanced"}};
    const std::vector<Finding> findings = surface_findings(a, survey);
    const auto stress = std::ranges::find_if(
        a.findings, [](const Finding& f) { return f.check == "film.stress" && f.part == "film, U1 to U2"; });
    REQUIRE(stress != a.findings.end());
    const double most = stress->demand * 1e6 * in_m(a.plan.film.thickness.value);
    const double factor = a.plan.basis.combination.snow.value;
    const auto raised = std::ranges::find(findings, "surface.film", &Finding::check);
    REQUIRE(raised != findings.end());
    CHECK(raised->part == "film, U1 to U2");
    CHECK(close(raised->demand, *stress->utilisation * (1 + factor * 200 / most), 1e-9));
    CHECK(has(raised->sentence, "pull of "));
    CHECK(std::ranges::count(findings, "surface.film", &Finding::check) == 1);
}

TEST_CASE("surface_findings: a cover the surface cannot find is exceeded, however well it did as strips") {
    Assessment a = assess(demo("open_boat"), {.workings = false});
    REQUIRE(a.outcome == Outcome::satisfied);
    SurfaceSurvey survey = survey_surface(a, {.spacing = 0.5, .rows = 6});
    add_surface_findings(a, survey);
    CHECK(a.outcome == Outcome::satisfied);
    survey.looks.back().status = SurfaceStatus::growing;
    survey.looks.back().message = "water goes on sinking the film between U1 and U2, port";
    add_surface_findings(a, survey);
    CHECK(a.outcome == Outcome::exceeded);
    CHECK(a.findings.front().check == "surface.stands");
}

TEST_CASE("surface_findings: what buckles or snaps over before it comes to rest does not stand") {
    const Assessment a = assess(demo("open_boat"), {.workings = false});
    SurfaceSurvey survey = survey_surface(a, {.spacing = 0.5, .rows = 6});
    CHECK(std::ranges::count(surface_findings(a, survey), "surface.stands", &Finding::check) == 0);
    survey.looks[1].snaps = "between U1 and U2, port";
    const std::vector<Finding> findings = surface_findings(a, survey);
    const auto stands = std::ranges::find(findings, "surface.stands", &Finding::check);
    REQUIRE(stands != findings.end());
    CHECK(stands->verdict == Verdict::exceeded);
    CHECK(has(stands->sentence, "snaps over between U1 and U2, port before the cover comes to rest"));
    CHECK(has(stands->situation, survey.looks[1].arrangement));
}

TEST_CASE("job_sheet: where the film lifts off a ridge that is too low") {
    const Assessment a = assess(demo("motor_boat"), {.workings = false});
    SurfaceSurvey survey = survey_surface(a, {.spacing = 0.4, .rows = 6});
    CHECK_FALSE(has(job_sheet(a, &survey), "lifts off"));
    survey.looks[static_cast<std::size_t>(survey.worst)].lifts = {{4.0, 0.02}, {4.5, 0.08}};
    CHECK(has(job_sheet(a, &survey), "The film lifts off the ridge, by"));
    CHECK(has(job_sheet(a, &survey), "the ridge is too low there"));
}

TEST_CASE("job_sheet with film as a surface: picture, water, touch, slopes and the usual height behind a windshield") {
    const Assessment a = assess(demo("motor_boat"), {.workings = false});
    const SurfaceSurvey survey = survey_surface(a, {.spacing = 0.4, .rows = 6});
    const std::string sheet = job_sheet(a, &survey);
    for (const char* part : {"The film as a surface", "Film from above", "clear of the windshield",
                             "Behind the windshield, U2", "common practice, no source", "Flattest film",
                             "says nothing about film without its span", "cleared to port"}) {
        CAPTURE(part);
        CHECK(has(sheet, part));
    }
    CHECK_FALSE(has(sheet, "nan"));
    CHECK_FALSE(has(job_sheet(a), "The film as a surface"));
}
