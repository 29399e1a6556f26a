// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/plan/read.hpp"

#include <cmath>
#include <random>

#include <doctest/doctest.h>

#include "close.hpp"
#include "coverframe/plan/validate.hpp"
#include "coverframe/units/crossing.hpp"
#include "plan/plan_files.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {

constexpr const char* good_names[]{"pole_ridge", "strap_ridge", "found_frame", "beside_a_shed"};
constexpr const char* demo_names[]{"motor_boat", "sloop", "open_boat", "as_found"};

/// A number that is no round one in any unit, between two bounds.
double odd_number(std::mt19937_64& source, double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(source);
}

}  // namespace

TEST_CASE("read_plan: values arrive in SI with their sources") {
    const Plan plan = good_plan("pole_ridge");
    CHECK(plan.units_shown == UnitsShown::us);
    CHECK(plan.site.ground_snow.load == 28.0_psf);
    CHECK(plan.site.ground_snow.document == SnowDocument::asce7_22);
    CHECK(plan.site.ground_snow.risk_category == "II");
    CHECK(plan.basis.snow.winter_wind->value == 0.45);
    CHECK(plan.basis.timber.wet_service->value);
    CHECK_FALSE(plan.basis.timber.material_factor.has_value());
    CHECK_FALSE(plan.basis.shedding_slope.has_value());
    REQUIRE(plan.boat.rail.size() == 6);
    CHECK(close(plan.boat.rail[1].half_breadth, from_in(29.0), 1e-15));
    CHECK(plan.boat.stands[0].half_breadth == 18.0_in);
    CHECK(plan.film.thickness.value == 7.0_mil);
    CHECK(plan.film.thickness.source == "nominal, as ordered");
    const auto& support = std::get<RidgeSupport>(plan.support.structure);
    CHECK(std::get<PoleRidge>(support.ridge.member).section == Section{1.5_in, 3.5_in});
    CHECK(support.uprights[0].top == from_in(82.0));
    CHECK(support.cross_straps[2].over == "U3");
    CHECK(plan.support.band.belly_straps.size() == 4);
}

TEST_CASE("read_plan: a strap ridge and a found frame") {
    const Plan strap = good_plan("strap_ridge");
    const auto& ridge = std::get<RidgeSupport>(strap.support.structure).ridge;
    CHECK(std::get<StrapRidge>(ridge.member).pretension == 1.2_kN);
    CHECK(strap.basis.timber.modification_factor->value == 0.7);

    const Plan found = good_plan("found_frame");
    const auto& frame = std::get<FoundFrame>(found.support.structure);
    CHECK(frame.nodes[6].at == Point{2.3_m, -1.02_m, 0.91_m});
    CHECK(frame.nodes[6].held);
    CHECK(frame.members[3].kind == FoundKind::upright);
    CHECK(frame.members[3].stands_on == "sole");
    CHECK(frame.members[5].pretension == 0.5_kN);
    CHECK_FALSE(frame.members[5].section.has_value());
}

TEST_CASE("read_plan_file: the demo plans are valid, and say that they are invented") {
    for (const char* name : demo_names) {
        CAPTURE(name);
        const Plan plan = read_plan_file(std::string(COVERFRAME_SOURCE_FOLDER) + "/examples/plans/" + name + ".json");
        CHECK(problems_of(plan).empty());
        CHECK(plan.note.find("invented") != std::string::npos);
        CHECK(read_plan(write_plan(plan)) == plan);
    }
}

TEST_CASE("read_plan: every bad plan is refused for what is wrong with it, all at once and in order") {
    const auto plans = bad_plans();
    CHECK(plans.size() >= 220);
    for (const BadPlan& bad : plans) {
        CAPTURE(bad.name);
        CHECK_FALSE(bad.problems.empty());
        CHECK(codes_and_places(problems_of_text(bad.text)) == bad.problems);
    }
}

TEST_CASE("read_plan: the order of keys in the file does not matter") {
    for (const char* name : good_names) {
        CAPTURE(name);
        const auto sorted = nlohmann::json::parse(good_plan_text(name));  // sorts its keys
        CHECK(read_plan(sorted.dump()) == good_plan(name));
    }
}

TEST_CASE("read_plan: the unit a value is written in does not matter") {
    std::string text = good_plan_text("strap_ridge");
    const std::string in_m = "\"x\": \"5.5 m\"";
    const std::size_t at = text.find(in_m);
    REQUIRE(at != std::string::npos);
    text.replace(at, in_m.size(), "\"x\": \"550 cm\"");
    CHECK(read_plan(text) == good_plan("strap_ridge"));
}

TEST_CASE("read_plan: a byte order mark and blanks around the plan are let pass, text is not") {
    const std::string text = good_plan_text("pole_ridge");
    CHECK(read_plan("\xef\xbb\xbf" + text) == good_plan("pole_ridge"));
    CHECK(read_plan("\n\t " + text + " \r\n") == good_plan("pole_ridge"));
    CHECK(problems_of_text(text + "x").at(0).code == "plan.json.trailing");
}

TEST_CASE("read_plan: a plan of nearly 4 MiB is read, a byte more is not") {
    std::string text = good_plan_text("pole_ridge");
    text.append((4u << 20) - text.size(), ' ');
    CHECK(read_plan(text) == good_plan("pole_ridge"));
    CHECK(problems_of_text(text + ' ').at(0).code == "plan.json.size");
}

TEST_CASE("read_plan: a damaged file is refused, never misread or worse") {
    const std::string good = good_plan_text("found_frame");
    std::mt19937 random(20240112);
    int refused = 0;
    for (int i = 0; i < 1500; ++i) {
        std::string text = good;
        for (int k = 0; k < 3; ++k) {
            const std::size_t at = random() % text.size();
            switch (random() % 3) {
                case 0: text[at] = static_cast<char>(random() % 256); break;
                case 1: text.erase(at, 1 + random() % 20); break;
                default: text.insert(at, 1, "{}[]\",:-0e\\"[random() % 11]);
            }
        }
        try {
            const Plan plan = read_plan(text);
            CHECK(problems_of(plan).empty());  // a letter of a note, a digit of a size
            CHECK(read_plan(write_plan(plan)) == plan);
        } catch (const InputError& error) {
            ++refused;
            CHECK_FALSE(error.problems().empty());
        }
    }
    CHECK(refused > 1000);
}

TEST_CASE("read_plan_file: a file that is not there, or is no file") {
    for (const char* path : {"no such folder/plan.json", COVERFRAME_SOURCE_FOLDER, ""}) {
        CAPTURE(path);
        try {
            (void)read_plan_file(path);
            FAIL("read");
        } catch (const InputError& error) {
            CHECK(error.code() == "plan.file");
            CHECK(error.problems()[0].value == path);
        }
    }
}

TEST_CASE("write_plan: reads back to the same plan, and writes the same text again") {
    for (const char* name : good_names) {
        CAPTURE(name);
        const Plan plan = good_plan(name);
        const std::string text = write_plan(plan);
        CHECK(read_plan(text) == plan);
        CHECK(write_plan(read_plan(text)) == text);
        CHECK(text.ends_with("}\n"));
    }
}

TEST_CASE("write_plan: in the units shown, as short as they go") {
    const std::string us = write_plan(good_plan("pole_ridge"));
    CHECK(us.find("\"load\": \"28 psf\"") != std::string::npos);
    CHECK(us.find("{\"breadth\": \"1.5 in\", \"depth\": \"3.5 in\"}") != std::string::npos);
    CHECK(us.find("\"value\": \"7 mil\"") != std::string::npos);
    const std::string si = write_plan(good_plan("strap_ridge"));
    CHECK(si.find("\"load\": \"1.2 kPa\"") != std::string::npos);
    CHECK(si.find("{\"breadth\": \"70 mm\", \"depth\": \"70 mm\"}") != std::string::npos);
    CHECK(si.find("\"value\": \"0.178 mm\"") != std::string::npos);
    CHECK(si.find(" ft\"") == std::string::npos);
}

TEST_CASE("write_plan: numbers that are not round read back to the last bit") {
    std::mt19937_64 random(7);
    for (int i = 0; i < 300; ++i) {
        Plan plan = good_plan(i % 2 == 0 ? "pole_ridge" : "strap_ridge");
        plan.site.ground_snow.load = from_Pa(odd_number(random, 0, 50e3));
        plan.basis.snow.exposure_factor.value = odd_number(random, 0.5, 1.5);
        plan.basis.shedding_slope = Cited<Angle>{from_rad(odd_number(random, 0.1, 1.3)), "x"};
        plan.boat.rail[3].half_breadth += from_m(odd_number(random, 0, 1e-3));
        plan.straps[0].stiffness_low.value = from_N(odd_number(random, 1e3, 1e4));
        plan.film.thickness.value = from_m(odd_number(random, 2e-5, 1e-3));
        plan.film.tension_low.value = from_N_per_m(odd_number(random, 5, 100));
        plan.film.unit_weight.value = from_N_per_m3(odd_number(random, 5e3, 25e3));
        plan.film.poisson.value = odd_number(random, 0, 0.5);
        plan.support.band.pretension = from_N(std::ldexp(1.0, -1060));  // no double of kN or lbf gives it
        plan.units_shown = i % 3 == 0 ? UnitsShown::us : UnitsShown::si;
        CHECK(read_plan(write_plan(plan)) == plan);
    }
}

TEST_CASE("write_plan: texts with everything a text may hold") {
    Plan plan = good_plan("pole_ridge");
    plan.title = "\"quoted\" \\ / ~1 \xc3\xa9 \xe2\x80\x94 \xf0\x9f\x9a\xa4 <b>";
    plan.note = "line one\n\tline two\r\n\"end\"";
    CHECK(read_plan(write_plan(plan)) == plan);
    plan.note.clear();
    CHECK(write_plan(plan).find("\"note\"") == std::string::npos);
    CHECK(read_plan(write_plan(plan)) == plan);
}

TEST_CASE("write_plan: what cannot be read back is not written") {
    Plan plan = good_plan("pole_ridge");
    plan.film.thickness.value = from_m(std::nan(""));
    plan.basis.snow.winter_wind.reset();
    plan.title = "\xff";
    try {
        (void)write_plan(plan);
        FAIL("written");
    } catch (const InputError& error) {
        CHECK(codes_and_places(error.problems()) == Expected{{"plan.text.utf8", "/title"},
                                                             {"plan.key.missing", "/basis/snow/winter_wind"},
                                                             {"plan.range", "/film/thickness/value"}});
    }
}

TEST_CASE("plan_schema: is JSON, and the published file is the same to the byte") {
    CHECK(plan_schema() == file_text("lib/schema/plan-1.schema.json"));
    const auto schema = nlohmann::json::parse(plan_schema());
    CHECK(schema.at("$schema") == "https://json-schema.org/draft/2020-12/schema");
    CHECK(schema.at("$defs").size() >= 30);
}

TEST_CASE("plan_schema: every object is closed, and nothing is an alternative without a name") {
    const auto schema = nlohmann::json::parse(plan_schema());
    int objects = 0;
    const auto walk = [&](const auto& self, const nlohmann::json& node) -> void {
        if (node.is_object()) {
            CHECK_FALSE(node.contains("oneOf"));
            CHECK_FALSE(node.contains("anyOf"));
            if (node.value("type", nlohmann::json()) == "object") {
                ++objects;
                CHECK(node.at("additionalProperties") == false);
            }
        }
        if (node.is_structured()) {
            for (const auto& child : node) self(self, child);
        }
    };
    walk(walk, schema);
    CHECK(objects > 40);
}
