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
    for (const char* name : {"pole_ridge", "strap_ridge", "found_frame", "beside_a_shed"}) {
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

TEST_CASE("problems_of: sizes are believed up to both ends of their range, and not a bit further") {
    const struct {
        const char* where;
        double low, high;
        double& (*number)(Plan&);  // of a factor
    } factors[]{
        {"/basis/snow/exposure_factor/value", 0.5, 1.5,
         [](Plan& p) -> double& { return p.basis.snow.exposure_factor.value; }},
        {"/basis/snow/thermal_factor/value", 0.8, 1.4,
         [](Plan& p) -> double& { return p.basis.snow.thermal_factor.value; }},
        {"/basis/snow/winter_wind/value", 0, 1, [](Plan& p) -> double& { return p.basis.snow.winter_wind->value; }},
        {"/basis/combination/permanent/value", 0.9, 2,
         [](Plan& p) -> double& { return p.basis.combination.permanent.value; }},
        {"/basis/timber/time_effect_factor/value", 0.6, 1.25,
         [](Plan& p) -> double& { return p.basis.timber.time_effect_factor->value; }},
        {"/straps/0/buckle_efficiency/value", 0.05, 1,
         [](Plan& p) -> double& { return p.straps[0].buckle_efficiency.value; }},
        {"/straps/0/ageing/value", 0.05, 1, [](Plan& p) -> double& { return p.straps[0].ageing.value; }},
        {"/straps/0/working_share/value", 0.05, 1, [](Plan& p) -> double& { return p.straps[0].working_share.value; }},
        {"/film/poisson/value", 0, 0.5, [](Plan& p) -> double& { return p.film.poisson.value; }},
    };
    for (const auto& each : factors) {
        CAPTURE(each.where);
        Plan plan = good_plan("pole_ridge");
        for (const double end : {each.low, each.high}) {
            each.number(plan) = end;
            CHECK(problems_of(plan).empty());
            each.number(plan) = std::nextafter(end, end == each.low ? -10.0 : 10.0);
            CHECK(found_in(plan) == Expected{{"plan.range", each.where}});
        }
    }
    Plan european = good_plan("strap_ridge");
    for (const auto& [bad, good] : {std::pair{0.199, 0.2}, std::pair{1.101, 1.1}}) {
        european.basis.timber.modification_factor->value = bad;
        CHECK(found_in(european) == Expected{{"plan.range", "/basis/timber/modification_factor/value"}});
        european.basis.timber.modification_factor->value = good;
    }
    for (const auto& [bad, good] : {std::pair{0.999, 1.0}, std::pair{2.001, 2.0}}) {
        european.basis.timber.material_factor->value = bad;
        CHECK(found_in(european) == Expected{{"plan.range", "/basis/timber/material_factor/value"}});
        european.basis.timber.material_factor->value = good;
    }
}

TEST_CASE("problems_of: quantities are believed inside their range") {
    const struct {
        const char* text;  // key and value as they stand in the good plan
        const char* where;
        std::vector<std::string> believed, refused;
    } rows[]{
        {R"("load": "28 psf")", "/site/ground_snow/load", {"0 psf", "50 kPa"}, {"-0.01 psf", "50.01 kPa"}},
        {R"("value": "30 psi")", "/boat/stands/0/bearing/value", {"1 kPa", "50 MPa"}, {"0.9 kPa", "51 MPa"}},
        {R"("value": "4 in")", "/boat/obstacles/0/clearance/value", {"0 in", "2 m"}, {"-1 mm", "2.01 m"}},
        {R"("value": "60 kN")", "/straps/0/stiffness_low/value", {"1 kN"}, {"0.99 kN", "0 N"}},
        {R"("value": "600 kN")", "/straps/0/stiffness_high/value", {"20000 kN"}, {"20001 kN"}},
        {R"("value": "9 kN")", "/straps/0/break_strength/value", {"100 N", "200 kN"}, {"99 N", "201 kN"}},
        {R"("below_rail": "8 in")", "/support/band/below_rail", {"0 m", "2 m"}, {"-1 in", "2.01 m"}},
        {R"("spacing": "30 in")", "/support/band/hangers/spacing", {"0.1 m", "5 m"}, {"0 m", "5.01 m"}},
        {R"("pretension": "200 lbf")", "/support/band/pretension", {"0 N", "20 kN"}, {"-1 N", "20.1 kN"}},
        {R"("value": "7 mil")", "/film/thickness/value", {"0.02 mm", "1 mm"}, {"0.019 mm", "1.01 mm", "0 mm"}},
        {R"("value": "0.1 kN/m")", "/film/tension_low/value", {"5 N/m"}, {"4.9 N/m", "0 N/m", "-1 N/m"}},
        {R"("value": "0.4 kN/m")", "/film/tension_high/value", {"5 kN/m"}, {"5.1 kN/m"}},
        {R"("value": "250 MPa")", "/film/modulus/value", {"10 MPa", "10 GPa"}, {"9 MPa", "11 GPa"}},
        {R"("value": "4.5 MPa")", "/film/strength/value", {"0.1 MPa", "300 MPa"}, {"0.09 MPa", "301 MPa"}},
        {R"("value": "9.02 kN/m3")", "/film/unit_weight/value", {"5 kN/m3", "25 kN/m3"}, {"4.9 kN/m3", "26 kN/m3"}},
    };
    const std::string good = good_plan_text("pole_ridge");
    for (const auto& row : rows) {
        const std::string sought = row.text;
        const std::size_t at = good.find(sought);
        REQUIRE(at != std::string::npos);
        const std::string key = sought.substr(0, sought.find(':'));
        const auto with = [&](const std::string& value) {
            std::string text = good;
            return text.replace(at, sought.size(), key + ": \"" + value + '"');
        };
        CAPTURE(row.where);
        for (const std::string& value : row.believed) {
            CAPTURE(value);
            CHECK(codes_and_places(problems_of_text(with(value))).empty());
        }
        for (const std::string& value : row.refused) {
            CAPTURE(value);
            CHECK(codes_and_places(problems_of_text(with(value))) == Expected{{"plan.range", row.where}});
        }
    }
}
