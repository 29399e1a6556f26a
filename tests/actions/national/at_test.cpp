// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/at.hpp"

#include <utility>
#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "coverframe/actions/en1991_1_3_annex_c.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::na_at;

namespace {

double load(Zone zone, double altitude) { return in_kPa(ground_load_4_1(zone, from_m(altitude))); }

}  // namespace

TEST_CASE("na_at: altitudes at which a page prints 3.25 and 4.0 kN/m2") {
    // wissenwiki.de, Schneelastzonen, read on a page; the Z of zones 2* and 4 were chosen to fit
    struct Row {
        Zone zone;
        double at_3_25, at_4_0;
    };
    for (const Row& row : std::vector<Row>{{Zone::zone_2_star, 1064, 1231},
                                           {Zone::zone_2, 895, 1053},
                                           {Zone::zone_3, 600, 752},
                                           {Zone::zone_4, 253, 449}}) {
        CHECK(close_abs(load(row.zone, row.at_3_25), 3.25, 0.005));
        CHECK(close_abs(load(row.zone, row.at_4_0), 4.0, 0.005));
    }
}

TEST_CASE("na_at: it is the alpine region of EN 1991-1-3, Annex C") {
    for (const auto& pair :
         {std::pair{Zone::zone_2, 2.0}, std::pair{Zone::zone_3, 3.0}, std::pair{Zone::zone_4, 4.5}}) {
        for (double altitude = 0; altitude <= 1500; altitude += 100) {
            const Pressure annex_c =
                en1991_1_3::ground_load_C_1(en1991_1_3::ClimaticRegion::alpine, pair.second, from_m(altitude));
            CHECK(close(ground_load_4_1(pair.first, from_m(altitude)), annex_c, 1e-12));
        }
    }
}

TEST_CASE("na_at: higher zone and higher site have more snow") {
    double lower_zone = 0;
    for (const Zone zone : {Zone::zone_2_star, Zone::zone_2, Zone::zone_3, Zone::zone_4}) {
        CHECK(load(zone, 500) > lower_zone);
        lower_zone = load(zone, 500);
        double before = 0;
        for (double altitude = 0; altitude <= 1500; altitude += 10) {
            CHECK(load(zone, altitude) > before);
            before = load(zone, altitude);
        }
    }
    CHECK(close(ground_load_4_1(Zone::zone_3, 3000_ft), ground_load_4_1(Zone::zone_3, 914.4_m), 1e-12));
}

TEST_CASE("na_at: arguments out of range") {
    CHECK(code_of([] { return load(Zone::zone_2, 1500); }) == "none");
    for (const double bad : {-0.1, 1500.1, not_finite[0], not_finite[1], not_finite[2]}) {
        CHECK(code_of([&] { return load(Zone::zone_2, bad); }) == "na_at.altitude.range");
    }
    CHECK(code_of([] { return load(static_cast<Zone>(4), 0); }) == "na_at.zone.unknown");
}
