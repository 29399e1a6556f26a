// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/ageing.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "close.hpp"
#include "coverframe/base/error.hpp"
#include "coverframe/units/literals.hpp"

using namespace coverframe;
using namespace coverframe::literals;

TEST_CASE("Film gets softer under a load that stays: 0.4 to 0.6 after days with n = 0.1 (from memory, uncertain)") {
    constexpr double minute = 1, day = 1440;
    CHECK(modulus_after(250e6, 0.1, minute, minute) == 250e6);
    const double after = modulus_after(250e6, 0.1, minute, 3 * day) / 250e6;
    CHECK(after > 0.4);
    CHECK(after < 0.6);
    CHECK(close(after, std::exp(-0.1 * std::log(3 * day)), 1e-12));
    CHECK(modulus_after(250e6, 0, minute, day) == 250e6);
    CHECK(close(tension_after(300, 0.1, minute, 3 * day), 300 * after, 1e-12));
}

TEST_CASE("Film at its low tension has the creep modulus, if the plan gives one") {
    Film film;
    film.modulus = {200.0_MPa, "invented"};
    CHECK(film_modulus(film, Bound::low) == 200.0_MPa);
    film.creep_modulus = Cited<Pressure>{90.0_MPa, "invented"};
    CHECK(film_modulus(film, Bound::low) == 90.0_MPa);
    CHECK(film_modulus(film, Bound::high) == 200.0_MPa);
}

TEST_CASE("Film held at both ends gets tight in the cold and slack in the sun") {
    // From +20 to -20 degrees, alpha 1e-4 to 2.2e-4 per kelvin: 0.4 to 0.88 % of stretch.
    CHECK(close(tension_warmed(0, 36e3, 1e-4, -40), 36e3 * 0.004, 1e-12));
    CHECK(close(tension_warmed(100, 36e3, 2.2e-4, -40), 100 + 36e3 * 0.0088, 1e-12));
    CHECK(tension_warmed(100, 36e3, 2.2e-4, 40) == 0);
    CHECK(tension_warmed(100, 36e3, 0, 40) == 100);
}

TEST_CASE("Creep leaves a stretch behind, none without time or load") {
    CHECK(stretch_left(500, 36e3, 0.1, 1, 1) == 0);
    CHECK(stretch_left(0, 36e3, 0.1, 1, 100) == 0);
    CHECK(close(stretch_left(500, 36e3, 0.1, 1, 1e4), 500 / 36e3 * (std::pow(1e4, 0.1) - 1), 1e-12));
}

TEST_CASE("Numbers outside are refused") {
    CHECK_THROWS_AS((void)modulus_after(0, 0.1, 1, 2), InputError);
    CHECK_THROWS_AS((void)modulus_after(1, 0.6, 1, 2), InputError);
    CHECK_THROWS_AS((void)modulus_after(1, 0.1, 0, 2), InputError);
    CHECK_THROWS_AS((void)modulus_after(1, 0.1, 1, std::nan("")), InputError);
    CHECK_THROWS_AS((void)tension_after(-1, 0.1, 1, 2), InputError);
    CHECK_THROWS_AS((void)tension_warmed(1, 36e3, 1e-2, 1), InputError);
    CHECK_THROWS_AS((void)tension_warmed(1, 36e3, 1e-4, 200), InputError);
    CHECK_THROWS_AS((void)stretch_left(1, 36e3, 0.1, 2, 1), InputError);
}
