// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/uk.hpp"

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::na_uk;

namespace {

double load(Zone zone, double altitude) { return in_kPa(ground_load_NA_2_8(zone, from_m(altitude))); }

}  // namespace

TEST_CASE("na_uk NA.2.8: the load of the map, which is drawn for 100 m, comes back at 100 m") {
    // eurocode.us, Variable actions, snow loads, read on a page: the map has 0.50 kN/m2 at 100 m for most of the South
    // East; that this is zone 3 follows from the formula. A + 100 of the first print would give 0.88.
    CHECK(close(load(Zone::zone_3, 100), 0.50, 1e-12));
    CHECK(close(load(Zone::zone_1, 100), 0.30, 1e-12));
    CHECK(close(load(Zone::zone_5, 100), 0.70, 1e-12));
}

TEST_CASE("na_uk NA.2.8: by hand at other altitudes") {
    CHECK(close(load(Zone::zone_3, 625), 1.50, 1e-12));
    CHECK(close(load(Zone::zone_3, 0), 0.50 - 100.0 / 525.0, 1e-12));
    CHECK(close(load(Zone::zone_1, 0), 0.30 - 100.0 / 525.0, 1e-12));
    CHECK(close(ground_load_NA_2_8(Zone::zone_2, 1000_ft), ground_load_NA_2_8(Zone::zone_2, 304.8_m), 1e-12));
}

TEST_CASE("na_uk NA.2.8: higher zone and higher site have more snow, and there is always some") {
    double lower_zone = 0;
    for (const Zone zone : {Zone::zone_1, Zone::zone_2, Zone::zone_3, Zone::zone_4, Zone::zone_5}) {
        CHECK(load(zone, 0) > lower_zone);
        lower_zone = load(zone, 0);
        double before = 0;
        for (double altitude = 0; altitude <= 1500; altitude += 25) {
            CHECK(load(zone, altitude) > before);
            before = load(zone, altitude);
        }
    }
}

TEST_CASE("na_uk NA.2.8: arguments out of range") {
    CHECK(code_of([] { return load(Zone::zone_5, 1500); }) == "none");
    for (const double bad : {-0.1, 1500.1, not_finite[0], not_finite[1], not_finite[2]}) {
        CHECK(code_of([&] { return load(Zone::zone_1, bad); }) == "na_uk.altitude.range");
    }
    CHECK(code_of([] { return load(static_cast<Zone>(5), 0); }) == "na_uk.zone.unknown");
    CHECK(code_of([] { return load(static_cast<Zone>(-1), 0); }) == "na_uk.zone.unknown");
}
