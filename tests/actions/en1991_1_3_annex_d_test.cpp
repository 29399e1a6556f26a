// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1991_1_3_annex_d.hpp"

#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::en1991_1_3;

TEST_CASE("en1991_1_3 annex D: 10 years against a printed number") {
    // Ingenio on the Italian Circolare 2019, C3.4.1, read on a page: about 0.70 for 10 years; V = 0.6 is what fits
    CHECK(close_abs(return_period_factor_D_1(10, 0.6), 0.70, 0.005));
}

TEST_CASE("en1991_1_3 annex D: it is the quantile of a Gumbel distribution") {
    // general statistics: x_n = mean {1 + V k}, k = -(sqrt(6)/pi) [C + ln(-ln(1 - 1/n))], C Euler's constant; the
    // document rounds C and k_50, hence 2e-5
    const double pi = 3.14159265358979324, euler = 0.577215664901532861;
    const auto k = [&](double n) { return -std::sqrt(6.0) / pi * (euler + std::log(-std::log(1.0 - 1.0 / n))); };
    for (const double v : {0.2, 0.3, 0.4, 0.6, 1.0, 2.0}) {
        CAPTURE(v);
        CHECK(close_abs(return_period_factor_D_1(50, v), 1.0, 2e-5));
        for (const double n : {5.0, 10.0, 20.0, 25.0, 100.0, 1000.0, 10000.0}) {
            CAPTURE(n);
            CHECK(close(return_period_factor_D_1(n, v), (1.0 + v * k(n)) / (1.0 + v * k(50)), 2e-5));
        }
    }
}

TEST_CASE("en1991_1_3 annex D: the load is the factor times the 50-year load") {
    const ReturnPeriodLoad ten = return_period_load_D_1(2.0_kPa, 10, 0.4);
    CHECK(ten.factor == return_period_factor_D_1(10, 0.4));
    CHECK(close(in_kPa(ten.load), 2.0 * ten.factor, 1e-12));
    CHECK(in_kPa(return_period_load_D_1(from_kPa(0.0), 10, 0.4).load) == 0.0);
    // 1 psf = 47.88025898033584 Pa (NIST SP 811, from memory)
    CHECK(close(return_period_load_D_1(40_psf, 25, 0.3).load,
                return_period_load_D_1(from_Pa(40 * 47.88025898033584), 25, 0.3).load, 1e-12));
}

TEST_CASE("en1991_1_3 annex D: longer periods have more, and more scatter pulls further from 50 years") {
    for (const double v : {0.0, 0.2, 0.6, 2.0}) {
        double before = 0;
        for (double n = 5; n <= 1e4; n *= 1.2) {
            const double factor = return_period_factor_D_1(n, v);
            CHECK(factor > 0.0);
            CHECK((v == 0.0 ? factor == 1.0 : factor > before));
            before = factor;
        }
    }
    CHECK(return_period_factor_D_1(10, 0.6) < return_period_factor_D_1(10, 0.3));
    CHECK(return_period_factor_D_1(100, 0.6) > return_period_factor_D_1(100, 0.3));
}

TEST_CASE("en1991_1_3 annex D: arguments out of range") {
    // P_n at most 0.2
    CHECK(code_of([] { return return_period_factor_D_1(5, 0.6); }) == "none");
    CHECK(code_of([] { return return_period_factor_D_1(4.99, 0.6); }) == "en1991_1_3.return_period.range");
    CHECK(code_of([] { return return_period_factor_D_1(10001, 0.6); }) == "en1991_1_3.return_period.range");
    CHECK(code_of([] { return return_period_factor_D_1(10, -0.01); }) == "en1991_1_3.variation.range");
    CHECK(code_of([] { return return_period_factor_D_1(10, 2.01); }) == "en1991_1_3.variation.range");
    CHECK(code_of([] { return return_period_load_D_1(from_kPa(-0.1), 10, 0.6); }) == "en1991_1_3.ground_load.range");
    CHECK(code_of([] { return return_period_load_D_1(from_kPa(100.1), 10, 0.6); }) == "en1991_1_3.ground_load.range");
    CHECK(code_of([] { return return_period_load_D_1(1_kPa, 2, 0.6); }) == "en1991_1_3.return_period.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return return_period_factor_D_1(bad, 0.6); }) == "en1991_1_3.return_period.range");
        CHECK(code_of([&] { return return_period_factor_D_1(10, bad); }) == "en1991_1_3.variation.range");
        CHECK(code_of([&] { return return_period_load_D_1(from_kPa(bad), 10, 0.6); }) ==
              "en1991_1_3.ground_load.range");
    }
    CHECK(annex_D.number == "Annex D, Eq. D.1");
}
