// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1991_1_3_annex_c.hpp"

#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::en1991_1_3;

namespace {

const std::vector<ClimaticRegion> with_formula{
    ClimaticRegion::alpine,        ClimaticRegion::central_east,   ClimaticRegion::central_west, ClimaticRegion::greece,
    ClimaticRegion::mediterranean, ClimaticRegion::sweden_finland, ClimaticRegion::uk_ireland,
    ClimaticRegion::iberian_peninsula};

double load(ClimaticRegion region, double zone, double altitude) {
    return in_kPa(ground_load_C_1(region, zone, from_m(altitude)));
}

std::string message_of(ClimaticRegion region, double zone, double altitude) {
    try {
        static_cast<void>(load(region, zone, altitude));
    } catch (const InputError& error) {
        return error.what();
    }
    return "none";
}

}  // namespace

TEST_CASE("en1991_1_3 annex C: alpine region against altitudes printed for Austria") {
    // wissenwiki.de, Schneelastzonen (after OENORM B 1991-1-3), read on a page: altitudes at which the load reaches
    // 3.25 and 4.0 kN/m2. Zones 2 and 3 of Austria are Z = 2 and 3; its zone 4 is Z = 4.5, chosen to fit.
    CHECK(close_abs(load(ClimaticRegion::alpine, 2, 895), 3.25, 0.005));
    CHECK(close_abs(load(ClimaticRegion::alpine, 2, 1053), 4.0, 0.005));
    CHECK(close_abs(load(ClimaticRegion::alpine, 3, 600), 3.25, 0.005));
    CHECK(close_abs(load(ClimaticRegion::alpine, 3, 752), 4.0, 0.005));
    CHECK(close_abs(load(ClimaticRegion::alpine, 4.5, 253), 3.25, 0.005));
    CHECK(close_abs(load(ClimaticRegion::alpine, 4.5, 449), 4.0, 0.005));
}

TEST_CASE("en1991_1_3 annex C: every region by hand, at sea level and at its own altitude") {
    // Table C.1 from memory; at A equal to the altitude of the formula the square is 2, the straight line 1 more
    struct Row {
        ClimaticRegion region;
        double zone, sea_level, altitude, there;
    };
    for (const Row& row : std::vector<Row>{{ClimaticRegion::alpine, 1, 0.651, 728, 1.302},
                                           {ClimaticRegion::central_east, 3, 0.790, 256, 1.580},
                                           {ClimaticRegion::greece, 4, 1.650, 917, 3.300},
                                           {ClimaticRegion::iberian_peninsula, 1, 0.095, 524, 0.190},
                                           {ClimaticRegion::mediterranean, 4.5, 2.032, 452, 4.064},
                                           {ClimaticRegion::central_west, 2, 0.246, 966, 1.246},
                                           {ClimaticRegion::sweden_finland, 1, 1.165, 336, 2.165},
                                           {ClimaticRegion::uk_ireland, 4.5, 0.530, 501, 1.530}}) {
        CAPTURE(choices_of(row.region)[static_cast<std::size_t>(row.region)]);
        CHECK(close(load(row.region, row.zone, 0), row.sea_level, 1e-12));
        CHECK(close(load(row.region, row.zone, row.altitude), row.there, 1e-12));
    }
}

TEST_CASE("en1991_1_3 annex C: higher zone and higher site never have less snow, and there is always some") {
    for (const ClimaticRegion region : with_formula) {
        CAPTURE(choices_of(region)[static_cast<std::size_t>(region)]);
        REQUIRE(map_zones(region).size() >= 3);
        double lower_zone = 0;
        for (const double zone : map_zones(region)) {
            CHECK(load(region, zone, 300) > lower_zone);
            lower_zone = load(region, zone, 300);
            double before = 0;
            for (double altitude = 0; altitude <= 1500; altitude += 25) {
                CHECK(load(region, zone, altitude) > before);
                before = load(region, zone, altitude);
            }
        }
    }
    // an altitude in feet is the same site
    CHECK(close(ground_load_C_1(ClimaticRegion::alpine, 2, 1000_ft),
                ground_load_C_1(ClimaticRegion::alpine, 2, 304.8_m), 1e-12));
}

TEST_CASE("en1991_1_3 annex C: a zone that is not on the map of the region is refused by name and clause") {
    for (const ClimaticRegion region : with_formula) {
        const bool three = region == ClimaticRegion::greece || region == ClimaticRegion::iberian_peninsula;
        CHECK(code_of([&] { return load(region, 1, 0); }) == "none");
        CHECK(code_of([&] { return load(region, 2, 0); }) == "none");
        CHECK(code_of([&] { return load(region, 3, 0); }) == (three ? "en1991_1_3.zone.range" : "none"));
        CHECK(code_of([&] { return load(region, 4, 0); }) == (three ? "none" : "en1991_1_3.zone.range"));
        CHECK(code_of([&] { return load(region, 4.5, 0); }) == (three ? "en1991_1_3.zone.range" : "none"));
        for (const double bad : {0.0, -1.0, 1.5, 5.0, not_finite[0], not_finite[1], not_finite[2]}) {
            CAPTURE(bad);
            CHECK(code_of([&] { return load(region, bad, 0); }) == "en1991_1_3.zone.range");
        }
    }
    const std::string message = message_of(ClimaticRegion::greece, 3, 100);
    CHECK(message.find("greece") != std::string::npos);
    CHECK(message.find("Annex C") != std::string::npos);
    CHECK(message.find("1, 2, 4") != std::string::npos);
}

TEST_CASE("en1991_1_3 annex C: regions without formula, altitudes without rule") {
    for (const ClimaticRegion region : {ClimaticRegion::norway, ClimaticRegion::iceland}) {
        CHECK(map_zones(region).empty());
        CHECK(code_of([&] { return load(region, 1, 0); }) == "en1991_1_3.region.range");
        CHECK(message_of(region, 1, 0).find("national authority") != std::string::npos);
    }
    for (const ClimaticRegion region : with_formula) {
        CHECK(code_of([&] { return load(region, 1, 1500); }) == "none");
        CHECK(code_of([&] { return load(region, 1, 1500.1); }) == "en1991_1_3.altitude.range");
        CHECK(code_of([&] { return load(region, 1, -0.1); }) == "en1991_1_3.altitude.range");
        for (const double bad : not_finite) {
            CHECK(code_of([&] { return load(region, 1, bad); }) == "en1991_1_3.altitude.range");
        }
    }
    const std::string message = message_of(ClimaticRegion::alpine, 1, 1600);
    CHECK(message.find("EN 1991-1-3:2003, 1.1") != std::string::npos);
    CHECK(message.find("1500 m") != std::string::npos);
    const auto no_region = static_cast<ClimaticRegion>(10);
    CHECK(code_of([&] { return ground_load_C_1(no_region, 1, 0_m); }) == "en1991_1_3.region.unknown");
    CHECK(code_of([&] { return map_zones(no_region).size(); }) == "en1991_1_3.region.unknown");
    CHECK(annex_C.document == "EN 1991-1-3:2003");
}
