// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/compare.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <filesystem>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "coverframe/plan/geometry.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/units/crossing.hpp"
#include "coverframe/units/literals.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {

Plan motor_boat() { return read_plan_file(std::string(COVERFRAME_SOURCE_FOLDER) + "/examples/plans/motor_boat.json"); }

GroundSnow ground(SnowDocument document, Pressure load) {
    GroundSnow snow;
    snow.load = load;
    snow.document = document;
    snow.source = "invented";
    if (is_asce7(document)) snow.risk_category = "II";
    if (is_nbc(document)) snow.rain = 0.4_kPa;
    return snow;
}

}  // namespace

TEST_CASE("compare: the plan's own document comes first and is what snow_arrangements gives") {
    const Plan plan = motor_boat();
    const auto stations = drawn_stations(plan);
    const auto all = compare_snow(plan, {}, stations);
    REQUIRE(all.size() == 1);
    const auto arrangements = snow_arrangements(plan, stations, false);
    REQUIRE(all[0].arrangements.size() == arrangements.size());
    double greatest = 0;
    for (std::size_t i = 0; i < arrangements.size(); ++i) {
        CHECK(all[0].arrangements[i].name == arrangements[i].name);
        for (const PlanLoad& load : arrangements[i].port) greatest = std::max(greatest, in_kPa(load.value));
        for (const PlanLoad& load : arrangements[i].starboard) greatest = std::max(greatest, in_kPa(load.value));
    }
    CHECK(close(in_kPa(all[0].greatest.value), greatest, 1e-12));
    CHECK(all[0].plan == plan);
}

TEST_CASE("compare: each other document is judged with its own load, factor and safe choices") {
    const Plan plan = motor_boat();
    const std::array others{ground(SnowDocument::asce7_16, from_psf(30.0)), ground(SnowDocument::nbc2020, 2.0_kPa),
                            ground(SnowDocument::en1991_1_3, 1.5_kPa)};
    const auto all = compare_snow(plan, others, drawn_stations(plan));
    REQUIRE(all.size() == 4);
    const std::array factors{1.6, 1.5, 1.5};
    for (std::size_t i = 0; i < others.size(); ++i) {
        const ComparedDocument& row = all[i + 1];
        CHECK(row.plan.basis.snow.document == others[i].document);
        CHECK(row.plan.site.ground_snow == others[i]);
        CHECK(row.plan.basis.combination.snow.value == factors[i]);
        CHECK(close(in_kPa(row.factored.value), factors[i] * in_kPa(row.greatest.value), 1e-12));
        CHECK(row.greatest.value >= row.balanced.value);
        CHECK_FALSE(row.notes.empty());
    }
    CHECK(all[3].plan.basis.snow.thermal_factor.value == 1.0);
    CHECK(all[3].plan.basis.snow.thermal_factor.source.find("safe choice") == 0);
}

TEST_CASE("compare: the drawn stations follow rail and ridge from end to end") {
    const Plan plan = motor_boat();
    const auto stations = drawn_stations(plan, 0.1_m);
    REQUIRE(stations.size() > 20);
    for (std::size_t i = 1; i < stations.size(); ++i) {
        CHECK(stations[i].x > stations[i - 1].x);
        CHECK(in_m(stations[i].x - stations[i - 1].x) <= 0.1 + 1e-9);
        const auto slope = film_slope_at(plan, stations[i].x);
        if (slope) CHECK(stations[i].slope == *slope);
    }
    Plan nowhere = plan;
    nowhere.boat.rail.clear();
    CHECK(code_of([&] { return drawn_stations(nowhere); }) == "compare.stations");
    CHECK(code_of([&] { return drawn_stations(plan, 0.0_m); }) == "compare.stations");
}

TEST_CASE("compare: loads by slope are those of a cover of that slope") {
    const Plan plan = judged_by(motor_boat(), ground(SnowDocument::en1991_1_3, 1.0_kPa));
    const std::array slopes{0.0_deg, 20.0_deg, 45.0_deg, 60.0_deg, 90.0_deg};
    const auto rows = load_by_slope(plan, slopes, 1.5_m);
    const auto balanced = std::ranges::find(rows, "balanced", &LoadBySlope::name);
    REQUIRE(balanced != rows.end());
    REQUIRE(balanced->load.size() == slopes.size());
    const CoverStation one{.x = {}, .slope = 20.0_deg, .half_breadth = 1.5_m, .rail_z = {}};
    Plan alone = plan;
    alone.support.structure = RidgeSupport{};
    CHECK(balanced->load[1].value == snow_arrangements(alone, {&one, 1}, false).front().port[0].value);
    CHECK(code_of([&] { return load_by_slope(plan, std::array{91.0_deg}, 1.5_m); }) == "en1991_1_3.pitch.range");
}
