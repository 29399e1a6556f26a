// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/units/quantities.hpp"

#include <type_traits>

#include <doctest/doctest.h>

#include "close.hpp"
#include "coverframe/units/crossing.hpp"

using namespace coverframe;
using namespace coverframe::literals;

TEST_CASE("products and quotients of quantities land in the quantity of the trade") {
    static_assert(std::is_same_v<decltype(1.0_m * 1.0_m), Area>);
    static_assert(std::is_same_v<decltype(1.0_N * 1.0_m), Moment>);
    static_assert(std::is_same_v<decltype(1.0_N / 1.0_m), LineLoad>);
    static_assert(std::is_same_v<decltype(1.0_N / 1.0_m2), Pressure>);
    static_assert(std::is_same_v<decltype(1.0_Pa * 1.0_m), LineLoad>);
    static_assert(std::is_same_v<decltype(1.0_Pa / 1.0_m), UnitWeight>);
    static_assert(std::is_same_v<decltype(1.0_Pa * Volume{}), Moment>);
    static_assert(std::is_same_v<decltype(1.0_m2 * 1.0_m2), SecondMoment>);
    static_assert(std::is_same_v<decltype(1.0_m2 * 1.0_m), Volume>);
}

TEST_CASE("a simply supported ridge by hand: w L2 / 8, with numbers that come out round") {
    const LineLoad load = 1.5_kPa * 2_m;           // 3 kN/m
    const Moment moment = load * 4_m * 4_m / 8.0;  // 6 kN m
    CHECK(close(in_kN_per_m(load), 3.0, 1e-15));
    CHECK(close(in_kN_m(moment), 6.0, 1e-15));
    const Volume section_modulus = 90_mm * (100_mm * 100_mm) / 6.0;  // 150,000 mm3
    CHECK(close(in_N_per_mm2(moment / section_modulus), 40.0, 1e-14));
}

TEST_CASE("quantities start at zero and are as large as a double") {
    CHECK(in_m(Length{}) == 0.0);
    CHECK(in_kPa(PlanLoad{}.value) == 0.0);
    static_assert(sizeof(Force) == sizeof(double));
    static_assert(std::is_standard_layout_v<Pressure>);
}

TEST_CASE("the torque of Boost.Units is no bending moment, nor are its twins of equal dimension") {
    static_assert(!std::is_convertible_v<double, Length>);
    static_assert(!std::is_convertible_v<Length, double>);
    static_assert(!std::is_convertible_v<Pressure, Force>);
    static_assert(!std::is_convertible_v<Pressure, PlanLoad>);
    static_assert(!std::is_same_v<LineLoad, Pressure>);
}
