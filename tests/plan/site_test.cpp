// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/plan/site.hpp"

#include <cmath>
#include <set>

#include <doctest/doctest.h>

#include "coverframe/plan/validate.hpp"
#include "coverframe/units/crossing.hpp"
#include "plan/plan_files.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {

Expected found_in(const Plan& plan) { return codes_and_places(problems_of(plan)); }

}  // namespace

TEST_CASE("snow documents: a name each, one family at most, and strength level in one edition only") {
    std::set<std::string> names;
    for (const SnowDocument document : snow_documents) {
        const std::string name = name_of(document);
        CHECK(names.insert(name).second);
        CHECK(is_asce7(document) == name.starts_with("ASCE 7-"));
        CHECK(is_nbc(document) == name.starts_with("NBC "));
        CHECK((level_of(document) == Level::strength) == (name == "ASCE 7-22"));
    }
    CHECK(names ==
          std::set<std::string>{"ASCE 7-10", "ASCE 7-16", "ASCE 7-22", "NBC 2015", "NBC 2020", "EN 1991-1-3:2003"});
}

TEST_CASE("ground snow: what each document demands and refuses") {
    for (const SnowDocument document : snow_documents) {
        CAPTURE(name_of(document));
        Plan without = plan_by(document);
        without.site.ground_snow.risk_category.clear();
        without.site.ground_snow.rain.reset();
        Expected missing;
        if (is_asce7(document)) missing = {{"plan.choice", "/site/ground_snow/risk_category"}};
        if (is_nbc(document)) missing = {{"plan.key.missing", "/site/ground_snow/rain"}};
        CHECK(found_in(without) == missing);

        Plan with = plan_by(document);
        with.site.ground_snow.risk_category = "IV";
        with.site.ground_snow.rain = 0.4_kPa;
        Expected unknown;
        if (!is_asce7(document)) unknown.emplace_back("plan.key.unknown", "/site/ground_snow/risk_category");
        if (!is_nbc(document)) unknown.emplace_back("plan.key.unknown", "/site/ground_snow/rain");
        CHECK(found_in(with) == unknown);
    }
}

TEST_CASE("ground snow: rain between its bounds") {
    Plan plan = plan_by(SnowDocument::nbc2015);
    for (const Pressure& rain : {0.0_kPa, 0.4_kPa, 2.0_kPa}) {
        plan.site.ground_snow.rain = rain;
        CHECK(found_in(plan) == Expected{});
        CHECK(read_plan(write_plan(plan)) == plan);
    }
    for (const Pressure& rain : {from_kPa(-0.001), from_kPa(2.001), from_kPa(std::nan(""))}) {
        plan.site.ground_snow.rain = rain;
        CHECK(found_in(plan) == Expected{{"plan.range", "/site/ground_snow/rain"}});
    }
}

// ASCE 7-10, ASCE 7-16, NBC: ground loads of 50 years, from memory, sure. EN 1991-1-3, annex D: not for probabilities
// over 0.2 a year, from memory, sure. ASCE 7-22: loads by target risk, read on a page (STRUCTURE magazine, Feb. 2022).
TEST_CASE("ground snow: return period, as far as the document has one") {
    for (const SnowDocument document : snow_documents) {
        CAPTURE(name_of(document));
        for (const int years : {-50, 0, 1, 4, 5, 49, 50, 51, 1000, 1001, 2000000000}) {
            CAPTURE(years);
            Plan plan = plan_by(document);
            plan.site.ground_snow.return_period_years = years;
            const bool believed = document == SnowDocument::en1991_1_3 ? years >= 5 && years <= 1000 : years == 50;
            const char* code = document == SnowDocument::asce7_22 ? "plan.key.unknown" : "plan.range";
            const bool right = believed && document != SnowDocument::asce7_22;
            const Expected wrong{{code, "/site/ground_snow/return_period_years"}};
            CHECK(found_in(plan) == (right ? Expected{} : wrong));
            if (right) CHECK(read_plan(write_plan(plan)) == plan);
        }
    }
}

TEST_CASE("ground snow: the sentence says why a return period does not stand") {
    const auto advice_by = [](SnowDocument document, int years) {
        Plan plan = plan_by(document);
        plan.site.ground_snow.return_period_years = years;
        return problems_of(plan).at(0).advice;
    };
    CHECK(advice_by(SnowDocument::asce7_22, 50).find("set by risk") != std::string::npos);
    CHECK(advice_by(SnowDocument::asce7_16, 100).find("must be 50 (the ground loads of ASCE 7-10") !=
          std::string::npos);
    CHECK(advice_by(SnowDocument::nbc2015, 30).find("S_s and S_r of the NBC are of 50 years") != std::string::npos);
    CHECK(advice_by(SnowDocument::en1991_1_3, 2).find("annex D") != std::string::npos);
}

TEST_CASE("ground snow: a return period is written as a whole number, and read as one") {
    Plan plan = plan_by(SnowDocument::en1991_1_3);
    CHECK(write_plan(plan).find("return_period_years") == std::string::npos);
    plan.site.ground_snow.return_period_years = 100;
    std::string text = write_plan(plan);
    const std::string written = "\"return_period_years\": 100";
    const std::size_t at = text.find(written);
    REQUIRE(at != std::string::npos);
    for (const char* same : {"100.0", "1e2", "1000e-1"}) {
        std::string other = text;
        CHECK(read_plan(other.replace(at, written.size(), "\"return_period_years\": " + std::string(same))) == plan);
    }
    for (const auto& [value, code] : {std::pair{"100.5", "plan.type"}, std::pair{"\"100\"", "plan.type"},
                                      std::pair{"null", "plan.type"}, std::pair{"1e18", "plan.range"}}) {
        std::string other = text;
        other.replace(at, written.size(), "\"return_period_years\": " + std::string(value));
        CHECK(codes_and_places(problems_of_text(other)) == Expected{{code, "/site/ground_snow/return_period_years"}});
    }
}
