// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/it.hpp"

#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::na_it;

namespace {

struct Row {
    Zone zone;
    double low, factor, altitude;
};

// loads to 200 m and formulas read on pages (it.doczz.net document 722400 for zone I alpine, scribd document 547144216
// for the others)
const std::vector<Row> rows{{Zone::zone_1_alpine, 1.50, 1.39, 728},
                            {Zone::zone_1_mediterranean, 1.50, 1.35, 602},
                            {Zone::zone_2, 1.00, 0.85, 481},
                            {Zone::zone_3, 0.60, 0.51, 481}};

double load(Zone zone, double altitude) { return in_kPa(ground_load_3_4_2(zone, from_m(altitude))); }

}  // namespace

TEST_CASE("na_it 3.4.2: constant up to 200 m, then the parabola, which doubles its factor at its own altitude") {
    for (const Row& row : rows) {
        CHECK(close(load(row.zone, 0), row.low, 1e-12));
        CHECK(close(load(row.zone, 200), row.low, 1e-12));
        CHECK(close(load(row.zone, row.altitude), 2.0 * row.factor, 1e-12));
    }
    CHECK(close(ground_load_3_4_2(Zone::zone_2, 3000_ft), ground_load_3_4_2(Zone::zone_2, 914.4_m), 1e-12));
}

TEST_CASE("na_it 3.4.2: at 200 m the load steps down, by less than 0.006 kN/m2, and nowhere else") {
    for (const Row& row : rows) {
        const double step = load(row.zone, 200) - load(row.zone, 200 + 1e-9);
        CHECK(step > 0.0);
        CHECK(step < 0.006);
        double before = load(row.zone, 200.5);
        for (double altitude = 201; altitude <= 1500; altitude += 0.5) {
            CHECK(load(row.zone, altitude) > before);
            CHECK(load(row.zone, altitude) - before < 0.01);
            before = load(row.zone, altitude);
        }
    }
}

TEST_CASE("na_it 3.4.2: arguments out of range") {
    for (const Row& row : rows) {
        CHECK(code_of([&] { return load(row.zone, 1500); }) == "none");
        for (const double bad : {-0.1, 1500.1, not_finite[0], not_finite[1], not_finite[2]}) {
            CHECK(code_of([&] { return load(row.zone, bad); }) == "na_it.altitude.range");
        }
    }
    CHECK(code_of([] { return load(static_cast<Zone>(4), 0); }) == "na_it.zone.unknown");
}
