// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/national/ch.hpp"

#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::na_ch;

namespace {

const std::vector<Correction> corrections{Correction::minus_200_m, Correction::none, Correction::plus_200_m,
                                          Correction::plus_400_m, Correction::plus_500_m};

double load(double altitude, Correction correction) { return in_kPa(ground_load_5(from_m(altitude), correction).load); }

}  // namespace

TEST_CASE("na_ch: guide values of the city of Winterthur") {
    // stadt.winterthur.ch, Verhalten bei Schneedruck, read on a page: 160 kg/m2 at 600 m, 250 kg/m2 at 800 m, printed
    // to the ten. At 400 m it prints 100, the formula has 94.
    const auto mass = [](double altitude) { return 1000.0 * load(altitude, Correction::none) / 9.80665; };
    CHECK(close_abs(mass(600), 160, 5));
    CHECK(close_abs(mass(800), 250, 5));
    CHECK(mass(400) < 100);
    CHECK(mass(400) > 90);
}

TEST_CASE("na_ch: by hand, from memory") {
    // at h_0 = 350 m the formula has 0.8, under the minimum of 0.9; at 700 m it has 2.0
    CHECK(close(load(350, Correction::none), 0.9, 1e-12));
    for (const double altitude : {700.0, 900.0, 500.0, 300.0, 200.0}) {
        const Correction to_700 = altitude == 900   ? Correction::minus_200_m
                                  : altitude == 500 ? Correction::plus_200_m
                                  : altitude == 300 ? Correction::plus_400_m
                                  : altitude == 200 ? Correction::plus_500_m
                                                    : Correction::none;
        const GroundLoad at = ground_load_5(from_m(altitude), to_700);
        CHECK(close(in_m(at.reference_altitude), 700, 1e-12));
        CHECK(close(in_kPa(at.load), 2.0, 1e-12));
    }
    CHECK(close(load(0, Correction::minus_200_m), 0.9, 1e-12));
    CHECK(close(in_m(ground_load_5(0_m, Correction::minus_200_m).reference_altitude), -200, 1e-12));
    CHECK(close(ground_load_5(3000_ft, Correction::none).load, ground_load_5(914.4_m, Correction::none).load, 1e-12));
}

TEST_CASE("na_ch: more altitude never has less snow, without a jump") {
    double lower = 0;
    for (const Correction correction : corrections) {
        CHECK(load(1000, correction) > lower);
        lower = load(1000, correction);
        double before = load(0, correction);
        for (double altitude = 1; altitude <= 2000; altitude += 1) {
            const double now = load(altitude, correction);
            CHECK(now >= before);
            CHECK(now - before < 0.02);
            before = now;
        }
    }
}

TEST_CASE("na_ch: arguments out of range") {
    CHECK(code_of([] { return load(2000, Correction::plus_500_m); }) == "none");
    for (const double bad : {-0.1, 2000.1, not_finite[0], not_finite[1], not_finite[2]}) {
        CHECK(code_of([&] { return load(bad, Correction::none); }) == "na_ch.altitude.range");
    }
    CHECK(code_of([] { return load(500, static_cast<Correction>(5)); }) == "na_ch.correction.unknown");
}
