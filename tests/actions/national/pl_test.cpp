// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/pl.hpp"

#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::na_pl;

namespace {

const std::vector<Zone> zones{Zone::zone_1, Zone::zone_2, Zone::zone_3, Zone::zone_4, Zone::zone_5};

double load(Zone zone, double altitude) { return in_kPa(ground_load_4_1(zone, from_m(altitude))); }

}  // namespace

TEST_CASE("na_pl: minima and formulas by hand") {
    // formulas and minima read on a page (Silesian province office, Odsniezanie budynkow)
    for (const double altitude : {0.0, 300.0}) CHECK(close(load(Zone::zone_1, altitude), 0.70, 1e-12));
    CHECK(close(load(Zone::zone_1, 500), 2.1, 1e-12));
    for (const double altitude : {0.0, 1500.0}) CHECK(close(load(Zone::zone_2, altitude), 0.9, 1e-12));
    for (const double altitude : {0.0, 300.0}) CHECK(close(load(Zone::zone_3, altitude), 1.2, 1e-12));
    CHECK(close(load(Zone::zone_3, 500), 2.4, 1e-12));
    for (const double altitude : {0.0, 1500.0}) CHECK(close(load(Zone::zone_4, altitude), 1.6, 1e-12));
    CHECK(close(load(Zone::zone_5, 0), 2.0, 1e-12));
    CHECK(close(load(Zone::zone_5, 571), 2.0, 1e-12));
    CHECK(close(load(Zone::zone_5, 1000), 0.93 * std::exp(1.34), 1e-12));
    CHECK(close(ground_load_4_1(Zone::zone_5, 3000_ft), ground_load_4_1(Zone::zone_5, 914.4_m), 1e-12));
}

TEST_CASE("na_pl: more altitude never has less snow, without a jump") {
    for (const Zone zone : zones) {
        double before = load(zone, 0);
        for (double altitude = 0.5; altitude <= 1500; altitude += 0.5) {
            const double now = load(zone, altitude);
            CHECK(now >= before);
            CHECK(now - before < 0.01);
            before = now;
        }
    }
}

TEST_CASE("na_pl: arguments out of range") {
    for (const Zone zone : zones) {
        CHECK(code_of([&] { return load(zone, 1500); }) == "none");
        for (const double bad : {-0.1, 1500.1, not_finite[0], not_finite[1], not_finite[2]}) {
            CHECK(code_of([&] { return load(zone, bad); }) == "na_pl.altitude.range");
        }
    }
    CHECK(code_of([] { return load(static_cast<Zone>(5), 0); }) == "na_pl.zone.unknown");
}
