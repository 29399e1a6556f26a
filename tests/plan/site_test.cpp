// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/plan/site.hpp"

#include <algorithm>
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

/// Beside it: "shed" to starboard from -2 m to 8 m, with a roof; "motor boat" to port; "yard wall" at the stern.
Plan between_neighbours() { return good_plan("beside_a_shed"); }

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

TEST_CASE("neighbours: arrive as they are written") {
    const Plan plan = between_neighbours();
    REQUIRE(plan.site.neighbours.size() == 3);
    CHECK(plan.site.neighbours[0] == Neighbour{.name = "shed",
                                               .side = NeighbourSide::starboard,
                                               .gap = 1.5_m,
                                               .eave_z = 3.6_m,
                                               .fetch = 12.0_m,
                                               .from = -2.0_m,
                                               .to = 8.0_m,
                                               .roof = NeighbourRoof{20.0_deg, Surface::slippery, 6.0_m},
                                               .source = "invented for this example"});
    CHECK(plan.site.neighbours[1] == Neighbour{.name = "motor boat",
                                               .side = NeighbourSide::port,
                                               .gap = 0.8_m,
                                               .eave_z = 0.4_m,
                                               .fetch = 3.0_m,
                                               .source = "invented for this example"});
    CHECK(plan.site.neighbours[2].side == NeighbourSide::stern);
}

TEST_CASE("neighbours: none is said by leaving them out, and an empty list is the same") {
    const Plan plan = plan_by(SnowDocument::nbc2020);
    const std::string text = write_plan(plan);
    CHECK(text.find("neighbours") == std::string::npos);
    nlohmann::json document = nlohmann::json::parse(text);
    document["site"]["neighbours"] = nlohmann::json::array();
    CHECK(read_plan(document.dump()) == plan);
    document["site"]["neighbours"] = nullptr;
    CHECK(codes_and_places(problems_of_text(document.dump())) == Expected{{"plan.type", "/site/neighbours"}});
}

TEST_CASE("neighbours: allowed by every document, on every side, and read back to the last bit") {
    for (const SnowDocument document : snow_documents) {
        Plan plan = plan_by(document);
        plan.site.neighbours = between_neighbours().site.neighbours;
        plan.site.neighbours[0].gap = from_m(0.1 + 0.2);
        plan.site.neighbours[0].roof->slope = from_rad(1.0 / 3.0);
        plan.site.neighbours[1].eave_z = from_m(-1.0 / 7.0);
        plan.site.neighbours[2].side = NeighbourSide::bow;
        for (const UnitsShown units : {UnitsShown::si, UnitsShown::us}) {
            plan.units_shown = units;
            CHECK(found_in(plan) == Expected{});
            CHECK(read_plan(write_plan(plan)) == plan);
        }
    }
}

TEST_CASE("neighbours: as many as a list may have") {
    Plan plan = between_neighbours();
    const Neighbour one = plan.site.neighbours[1];
    plan.site.neighbours.clear();
    for (int i = 0; i < 201; ++i) {
        plan.site.neighbours.push_back(one);
        plan.site.neighbours.back().name += std::to_string(i);
    }
    CHECK(found_in(plan) == Expected{{"plan.list.count", "/site/neighbours"}});
    plan.site.neighbours.pop_back();
    CHECK(found_in(plan) == Expected{});
}

TEST_CASE("neighbours: sizes are believed up to both ends of their range, and not beyond") {
    const struct {
        const char* key;
        std::vector<double> believed, refused;  // m
        Length& (*length)(Neighbour&);
    } rows[]{
        {"gap", {0, 50}, {-0.001, 50.001}, [](Neighbour& n) -> Length& { return n.gap; }},
        {"eave_z", {-30, 0, 100}, {-30.001, 100.001}, [](Neighbour& n) -> Length& { return n.eave_z; }},
        {"fetch", {6, 200}, {-1, 200.001}, [](Neighbour& n) -> Length& { return n.fetch; }},
        {"from", {-300, 7.999}, {-300.001}, [](Neighbour& n) -> Length& { return *n.from; }},
        {"to", {0.001, 300}, {300.001}, [](Neighbour& n) -> Length& { return *n.to; }},
        {"roof/run", {0.001, 12}, {}, [](Neighbour& n) -> Length& { return n.roof->run; }},
    };
    for (const auto& row : rows) {
        const std::string where = std::string("/site/neighbours/0/") + row.key;
        CAPTURE(where);
        for (const double metres : row.believed) {
            CAPTURE(metres);
            Plan plan = between_neighbours();
            row.length(plan.site.neighbours[0]) = from_m(metres);
            CHECK(found_in(plan) == Expected{});
        }
        std::vector<double> refused = row.refused;
        refused.push_back(std::nan(""));
        refused.push_back(HUGE_VAL);
        for (const double metres : refused) {
            CAPTURE(metres);
            Plan plan = between_neighbours();
            row.length(plan.site.neighbours[0]) = from_m(metres);
            const Expected found = found_in(plan);
            CHECK(std::count(found.begin(), found.end(), Expected::value_type{"plan.range", where}) == 1);
        }
    }
    for (const double metres : {0.0, 0.0009}) {  // "over 0"
        Plan plan = between_neighbours();
        plan.site.neighbours[2].fetch = from_m(metres);
        CHECK(found_in(plan) == Expected{{"plan.range", "/site/neighbours/2/fetch"}});
        plan = between_neighbours();
        plan.site.neighbours[0].roof->run = from_m(metres);
        CHECK(found_in(plan) == Expected{{"plan.range", "/site/neighbours/0/roof/run"}});
    }
    for (const auto& [degrees, right] : {std::pair{0.0, true}, std::pair{80.0, true}, std::pair{-0.1, false},
                                         std::pair{80.1, false}, std::pair{std::nan(""), false}}) {
        Plan plan = between_neighbours();
        plan.site.neighbours[0].roof->slope = from_deg(degrees);
        const Expected wrong{{"plan.range", "/site/neighbours/0/roof/slope"}};
        CHECK(found_in(plan) == (right ? Expected{} : wrong));
    }
}

TEST_CASE("neighbours: beside the boat, in part at least") {
    // The rail runs from 0 to 10.6 m.
    const struct {
        std::optional<double> from, to;  // m
        const char* wrong;               // key and code, or empty
        const char* code;
    } rows[]{
        {{}, {}, "", ""},
        {3.0, 4.0, "", ""},
        {-5.0, 20.0, "", ""},
        {{}, 0.001, "", ""},
        {10.599, {}, "", ""},
        {-5.0, 0.0, "to", "site.neighbour.off_boat"},
        {{}, -1.0, "to", "site.neighbour.off_boat"},
        {10.6, 20.0, "from", "site.neighbour.off_boat"},
        {11.0, {}, "from", "site.neighbour.off_boat"},
        {4.0, 4.0, "to", "site.neighbour.order"},
        {4.0, 3.0, "to", "site.neighbour.order"},
    };
    for (const auto& row : rows) {
        for (const NeighbourSide side : {NeighbourSide::port, NeighbourSide::starboard}) {
            Plan plan = between_neighbours();
            Neighbour& shed = plan.site.neighbours[0];
            shed.side = side;
            shed.from.reset();
            shed.to.reset();
            if (row.from) shed.from = from_m(*row.from);
            if (row.to) shed.to = from_m(*row.to);
            CAPTURE(row.from.value_or(-99));
            CAPTURE(row.to.value_or(-99));
            const Expected wrong{{row.code, std::string("/site/neighbours/0/") + row.wrong}};
            CHECK(found_in(plan) == (*row.wrong == '\0' ? Expected{} : wrong));
            if (*row.wrong == '\0') CHECK(read_plan(write_plan(plan)) == plan);
        }
    }
}

TEST_CASE("neighbours: one ahead or astern has no range along the boat, whatever the range is") {
    for (const NeighbourSide side : {NeighbourSide::bow, NeighbourSide::stern}) {
        Plan plan = between_neighbours();
        plan.site.neighbours[0].side = side;
        CHECK(found_in(plan) ==
              Expected{{"plan.key.unknown", "/site/neighbours/0/from"}, {"plan.key.unknown", "/site/neighbours/0/to"}});
        plan.site.neighbours[0].from.reset();
        plan.site.neighbours[0].to.reset();
        CHECK(found_in(plan) == Expected{});
    }
}

TEST_CASE("neighbours: every sentence names the one it is about") {
    const auto advice_after = [](auto change) {
        Plan plan = between_neighbours();
        change(plan.site.neighbours[0]);
        const auto problems = problems_of(plan);
        REQUIRE(problems.size() == 1);
        return problems[0].advice;
    };
    CHECK(advice_after([](Neighbour& n) { n.to = -3.0_m; }).find("\"shed\" ends at x = -3 m") != std::string::npos);
    CHECK(advice_after([](Neighbour& n) { n.to = -1.0_m; }).find("give it the side \"bow\"") != std::string::npos);
    CHECK(advice_after([](Neighbour& n) { n.from = 11.0_m, n.to = 12.0_m; }).find("\"stern\"") != std::string::npos);
    CHECK(advice_after([](Neighbour& n) { n.roof->run = 12.5_m; }).find("over 12.5 m") != std::string::npos);
}
