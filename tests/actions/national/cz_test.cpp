// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/cz.hpp"

#include <string>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::na_cz;

TEST_CASE("na_cz: loads of the zones") {
    // snihnastrese.cz, Mapa snehovych oblasti, read on a page
    const auto load = [](Zone zone) { return in_kPa(ground_load_4_1(zone)); };
    CHECK(close(load(Zone::zone_1), 0.7, 1e-12));
    CHECK(close(load(Zone::zone_2), 1.0, 1e-12));
    CHECK(close(load(Zone::zone_3), 1.5, 1e-12));
    CHECK(close(load(Zone::zone_4), 2.0, 1e-12));
    CHECK(close(load(Zone::zone_5), 2.5, 1e-12));
    CHECK(close(load(Zone::zone_6), 3.0, 1e-12));
    CHECK(close(load(Zone::zone_7), 4.0, 1e-12));
}

TEST_CASE("na_cz: zone VIII asks for a local study") {
    CHECK(code_of([] { return ground_load_4_1(Zone::zone_8); }) == "na_cz.zone.range");
    try {
        static_cast<void>(ground_load_4_1(Zone::zone_8));
    } catch (const InputError& error) {
        CHECK(std::string(error.what()).find("local study") != std::string::npos);
    }
    CHECK(code_of([] { return ground_load_4_1(static_cast<Zone>(8)); }) == "na_cz.zone.unknown");
}
