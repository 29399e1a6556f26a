// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/iso4355.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using iso4355::Surface;

TEST_CASE("iso4355: balanced load") {
    // Pertermann and Puthli (KIT), Comments on ISO 4355:2013, Part I, read on a page: s_b = s_0 C_t for C_e = 1.25
    CHECK(close(iso4355::balanced_load_eq_3(1.7_kPa, 1.25, 1.0, 1.0), 1.7_kPa, 1e-12));
    CHECK(close(iso4355::balanced_load_eq_3(1.7_kPa, 1.25, 1.2, 1.0), 2.04_kPa, 1e-12));
    // by hand: 0.8 x 0.9 x 1.1 x 0.5 x 40 psf
    CHECK(close(in_psf(iso4355::balanced_load_eq_3(40_psf, 0.9, 1.1, 0.5)), 15.84, 1e-12));
    CHECK(in_kPa(iso4355::balanced_load_eq_3(0_kPa, 1.0, 1.0, 1.0)) == 0.0);
    CHECK(in_kPa(iso4355::balanced_load_eq_3(2_kPa, 1.0, 1.0, 0.0)) == 0.0);

    const auto code = [](double ground, double exposure, double thermal, double slope) {
        return code_of([=] { return iso4355::balanced_load_eq_3(from_kPa(ground), exposure, thermal, slope); });
    };
    CHECK(code(-1, 1, 1, 1) == "iso4355.ground_snow.range");
    CHECK(code(101, 1, 1, 1) == "iso4355.ground_snow.range");
    CHECK(code(1, 0.49, 1, 1) == "iso4355.exposure.range");
    CHECK(code(1, 1.26, 1, 1) == "iso4355.exposure.range");
    CHECK(code(1, 1, 0.49, 1) == "iso4355.thermal.range");
    CHECK(code(1, 1, 1.41, 1) == "iso4355.thermal.range");
    CHECK(code(1, 1, 1, -0.1) == "iso4355.slope_coefficient.range");
    CHECK(code(1, 1, 1, 1.01) == "iso4355.slope_coefficient.range");
    CHECK(code(0, 0.5, 0.5, 0) == "none");
    CHECK(code(100, 1.25, 1.4, 1) == "none");
    for (const double bad : not_finite) {
        CHECK(code(bad, 1, 1, 1) == "iso4355.ground_snow.range");
        CHECK(code(1, bad, 1, 1) == "iso4355.exposure.range");
        CHECK(code(1, 1, bad, 1) == "iso4355.thermal.range");
        CHECK(code(1, 1, 1, bad) == "iso4355.slope_coefficient.range");
    }
}

TEST_CASE("iso4355: exposure coefficient and the size of the roof") {
    // by hand: 2 x 20 - 400/50
    CHECK(close(iso4355::characteristic_length(20_m, 50_m), 32_m, 1e-12));
    for (const double small : {0.5, 0.8, 1.0, 1.2, 1.25}) {
        CAPTURE(small);
        CHECK(iso4355::exposure_coefficient(small, 0_m) == small);
        CHECK(iso4355::exposure_coefficient(small, 50_m) == small);
        CHECK(close_abs(iso4355::exposure_coefficient(small, from_m(50.0 + 1e-9)), small, 1e-9));
        // read on a page (KIT): rises towards 1.25
        CHECK(close(iso4355::exposure_coefficient(small, 1e6_m), 1.25, 1e-12));
        double before = small;
        for (double l = 0.0; l < 1000.0; l += 10.0) {
            const double now = iso4355::exposure_coefficient(small, from_m(l));
            CHECK(now >= before);
            before = now;
        }
    }
    // by hand: 1.25 - 0.25 exp(-0.005) at 51 m, 1.25 - 0.25/e at 250 m
    CHECK(close(iso4355::exposure_coefficient(1.0, 51_m), 1.0012468802, 1e-9));
    CHECK(close(iso4355::exposure_coefficient(1.0, 250_m), 1.1580301397, 1e-9));

    CHECK(code_of([] { return iso4355::characteristic_length(0_m, 3_m); }) == "iso4355.width.range");
    CHECK(code_of([] { return iso4355::characteristic_length(4_m, 3_m); }) == "iso4355.length.range");
    CHECK(code_of([] { return iso4355::exposure_coefficient(1.3, 3_m); }) == "iso4355.exposure.range");
    CHECK(code_of([] { return iso4355::exposure_coefficient(1.0, -1_m); }) == "iso4355.characteristic_length.range");
    for (const double bad : not_finite) {
        CHECK(code_of([=] { return iso4355::characteristic_length(from_m(bad), 3_m); }) == "iso4355.width.range");
        CHECK(code_of([=] { return iso4355::characteristic_length(3_m, from_m(bad)); }) == "iso4355.length.range");
        CHECK(code_of([=] { return iso4355::exposure_coefficient(bad, 3_m); }) == "iso4355.exposure.range");
        CHECK(code_of([=] { return iso4355::exposure_coefficient(1.0, from_m(bad)); }) ==
              "iso4355.characteristic_length.range");
    }
}

TEST_CASE("iso4355: slope coefficient") {
    const auto mu = [](double deg, Surface surface) { return iso4355::slope_coefficient(from_deg(deg), surface); };
    // by hand: sqrt(cos 45), sqrt(cos 59.985)
    CHECK(close(mu(30.0, Surface::other), 0.8408964153, 1e-9));
    CHECK(close(mu(30.0, Surface::slippery), 0.7072670696, 1e-9));
    struct End {
        Surface surface;
        double deg;
    };
    for (const End& end : {End{Surface::other, 60.0}, End{Surface::slippery, 90.0 / (1.5 * 1.333)}}) {
        CAPTURE(end.deg);
        CHECK(mu(0.0, end.surface) == 1.0);
        CHECK(mu(end.deg - 1e-3, end.surface) > 0.0);
        CHECK(mu(end.deg - 1e-6, end.surface) < 2e-4);  // continuous, upright at its end
        CHECK(mu(end.deg + 1e-9, end.surface) == 0.0);
        CHECK(mu(70.0, end.surface) == 0.0);
        CHECK(mu(90.0, end.surface) == 0.0);
        double before = 1.0;
        for (double deg = 0.0; deg <= 90.0; deg += 0.25) {
            const double now = mu(deg, end.surface);
            CHECK(std::isfinite(now));
            CHECK(now <= before);
            CHECK(mu(deg, Surface::slippery) <= mu(deg, Surface::other));
            before = now;
        }
    }
    for (const double bad : {-1.0, 91.0, not_finite[0], not_finite[1], not_finite[2]}) {
        CHECK(code_of([&] { return mu(bad, Surface::other); }) == "iso4355.slope.range");
    }
}
