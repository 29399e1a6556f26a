// SPDX-License-Identifier: BSD-3-Clause
// Plans made in code: no reader has looked at them, so everything is looked at here. What the bad plans of
// tests/plans/bad show is tested in read_test.cpp.
#include "coverframe/plan/validate.hpp"

#include <cmath>
#include <limits>

#include <doctest/doctest.h>

#include "coverframe/units/crossing.hpp"
#include "plan/plan_files.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {

RidgeSupport& ridge_support(Plan& plan) { return std::get<RidgeSupport>(plan.support.structure); }
FoundFrame& found_frame(Plan& plan) { return std::get<FoundFrame>(plan.support.structure); }

Expected found_in(const Plan& plan) { return codes_and_places(problems_of(plan)); }

}  // namespace

TEST_CASE("problems_of: nothing wrong with the good plans") {
    for (const char* name : {"pole_ridge", "strap_ridge", "found_frame"}) {
        CAPTURE(name);
        CHECK(problems_of(good_plan(name)).empty());
        CHECK_NOTHROW(require_valid(good_plan(name)));
    }
}

TEST_CASE("problems_of: an empty plan is refused in every part, and quietly") {
    const auto problems = problems_of(Plan{});
    CHECK(problems.size() > 30);
    CHECK_THROWS_AS(require_valid(Plan{}), InputError);
}

TEST_CASE("problems_of: numbers that are none") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double infinity = std::numeric_limits<double>::infinity();
    for (const double bad : {nan, infinity, -infinity}) {
        Plan plan = good_plan("pole_ridge");
        plan.site.ground_snow.load = from_Pa(bad);
        plan.basis.combination.snow.value = bad;
        ridge_support(plan).uprights[1].top = from_m(bad);
        CHECK(found_in(plan) == Expected{{"plan.range", "/site/ground_snow/load"},
                                         {"plan.range", "/basis/combination/snow/value"},
                                         {"plan.range", "/support/uprights/1/top"}});
    }
}

TEST_CASE("problems_of: choices that are none") {
    Plan plan = good_plan("pole_ridge");
    plan.basis.snow.surface.value = static_cast<Surface>(7);
    ridge_support(plan).ridge.bow.hold = static_cast<Hold>(-1);
    CHECK(found_in(plan) ==
          Expected{{"plan.choice", "/basis/snow/surface/value"}, {"plan.choice", "/support/ridge/bow/hold"}});
}

TEST_CASE("problems_of: what a document or kind needs and what it does not have") {
    Plan plan = good_plan("pole_ridge");
    plan.basis.snow.winter_wind.reset();
    plan.basis.timber.material_factor = Cited<double>{1.3, "x"};
    CHECK(found_in(plan) == Expected{{"plan.key.missing", "/basis/snow/winter_wind"},
                                     {"plan.key.unknown", "/basis/timber/material_factor"}});

    Plan found = good_plan("found_frame");
    found.site.ground_snow.risk_category = "II";
    found_frame(found).members[0].pad = FootPad{0.2_m, 0.2_m, 0.02_m};
    found_frame(found).members[3].section.reset();
    found_frame(found).members[5].grade = "C16";
    found_frame(found).members[6].pretension.reset();
    CHECK(found_in(found) == Expected{{"plan.key.unknown", "/site/ground_snow/risk_category"},
                                      {"plan.key.unknown", "/support/members/0/pad"},
                                      {"plan.key.missing", "/support/members/3/section"},
                                      {"plan.key.unknown", "/support/members/5/grade"},
                                      {"plan.key.missing", "/support/members/6/pretension"}});
}

TEST_CASE("problems_of: a text that is not UTF-8 cannot stand in a file") {
    Plan plan = good_plan("pole_ridge");
    plan.note = "caf\xe9";
    plan.straps[0].ageing.source = "\xc0\xaf";
    CHECK(found_in(plan) == Expected{{"plan.text.utf8", "/note"}, {"plan.text.utf8", "/straps/0/ageing/source"}});
}

TEST_CASE("problems_of: an upright may be 50 times its thinner side long, and no more") {
    Plan plan = good_plan("pole_ridge");
    Upright& upright = ridge_support(plan).uprights[1];
    const Length foot = plan.boat.stands[1].z + upright.pad.thickness;
    upright.top = foot + 49.999 * upright.section.breadth;
    CHECK(problems_of(plan).empty());
    upright.top = foot + 50.001 * upright.section.breadth;
    CHECK(found_in(plan) == Expected{{"support.upright.slender", "/support/uprights/1/top"}});
    upright.section.breadth = 90.0_mm;  // now the other side is the thinner one
    CHECK(problems_of(plan).empty());
}

TEST_CASE("problems_of: an upright within half a metre holds a free end") {
    Plan plan = good_plan("pole_ridge");
    RidgeSupport& support = ridge_support(plan);
    support.ridge.stern.hold = Hold::free;
    support.uprights[2].x = support.ridge.stern.x - 0.499_m;
    support.uprights[2].pad.length = 50.0_mm;
    plan.boat.stands[1].to = plan.boat.rail.back().x;
    CHECK(problems_of(plan).empty());
    support.uprights[2].x = support.ridge.stern.x - 0.501_m;
    CHECK(found_in(plan) == Expected{{"support.ridge.free_end", "/support/ridge/stern/hold"}});
}

TEST_CASE("problems_of: an obstacle may come up to the drawn film, whatever clearance it asks for") {
    Plan plan = good_plan("strap_ridge");
    Obstacle& hatch = plan.boat.obstacles[0];
    hatch.clearance.value = 2.0_m;  // too little room is a finding, not a mistake
    CHECK(problems_of(plan).empty());
    const Length over_it = 1.86_m + (1.88_m - 1.86_m) * ((6.3 - 4.9) / (7.8 - 4.9));
    hatch.outline = {{6.3_m, 0.0_m, over_it}};
    CHECK(problems_of(plan).empty());
    hatch.outline[0].z = over_it + 2.0_mm;
    CHECK(found_in(plan) == Expected{{"boat.obstacle.through_film", "/boat/obstacles/0/outline"}});
}

TEST_CASE("problems_of: a cover without uprights and without obstacles can stand") {
    Plan plan = good_plan("pole_ridge");
    ridge_support(plan).uprights.clear();
    ridge_support(plan).cross_straps.clear();
    plan.boat.obstacles.clear();
    plan.boat.stands.clear();
    plan.support.band.belly_straps.clear();
    CHECK(problems_of(plan).empty());
}

TEST_CASE("problems_of: straps to port and to starboard may be two") {
    Plan plan = good_plan("pole_ridge");
    auto& straps = ridge_support(plan).cross_straps;
    straps[1].sides = Sides::port;
    straps.push_back(straps[1]);
    straps.back().name = "C2 starboard";
    straps.back().sides = Sides::starboard;
    CHECK(problems_of(plan).empty());
}

TEST_CASE("problems_of: a snow factor of 1.5 is right for a 50-year load and wrong for a strength-level one") {
    Plan plan = good_plan("pole_ridge");
    plan.basis.combination.snow.value = 1.5;
    CHECK(found_in(plan) == Expected{{"basis.combination.mixed", "/basis/combination/snow/value"}});
    plan.basis.combination.snow.value = 1.0;
    CHECK(problems_of(plan).empty());
    Plan european = good_plan("strap_ridge");
    CHECK(european.basis.combination.snow.value == 1.5);
    CHECK(problems_of(european).empty());
}

TEST_CASE("problems_of: the same to port and to starboard") {
    for (const BadPlan& bad : bad_plans()) {
        if (bad.text.size() > 1000000 || bad.problems.empty()) continue;
        nlohmann::ordered_json document = nlohmann::ordered_json::parse(bad.text, nullptr, false);
        if (!document.is_object() || !document.contains("boat")) continue;
        bool mirrored = false;
        const auto mirror = [&](nlohmann::ordered_json& point) {
            if (!point.is_object() || !point.contains("y") || !point["y"].is_string()) return;
            std::string y = point["y"];
            point["y"] = y.starts_with("-") ? y.substr(1) : "-" + y;
            mirrored = true;
        };
        for (nlohmann::ordered_json& obstacle : document["boat"]["obstacles"]) {
            for (nlohmann::ordered_json& point : obstacle["outline"]) mirror(point);
        }
        if (document["support"].contains("nodes")) {
            for (nlohmann::ordered_json& node : document["support"]["nodes"]) mirror(node);
        }
        if (!mirrored) continue;
        CAPTURE(bad.name);
        CHECK(codes_and_places(problems_of_text(document.dump())) == bad.problems);
    }
}

TEST_CASE("problems_of: every problem says what to change, and names the part") {
    for (const BadPlan& bad : bad_plans()) {
        for (const Problem& problem : problems_of_text(bad.text)) {
            CAPTURE(bad.name);
            CAPTURE(problem.advice);
            CHECK(problem.advice.size() > 20);
            CHECK(problem.advice.find('\n') == std::string::npos);
            CHECK(problem.value.find('\n') == std::string::npos);
        }
    }
    Plan plan = good_plan("pole_ridge");
    ridge_support(plan).cross_straps[1].sides = Sides::port;
    const auto problems = problems_of(plan);
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].advice.find("U2") != std::string::npos);
    CHECK(problems[0].advice.find("add a cross strap to starboard") != std::string::npos);
}
