// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/plan/timber.hpp"

#include <set>

#include <doctest/doctest.h>

#include "close.hpp"
#include "coverframe/units/crossing.hpp"

using namespace coverframe;

TEST_CASE("timber: Spruce-Pine-Fir as in NDS Supplement 2018, table 4A") {
    // psi; columns F_b, F_t, F_c, E, E_min as quoted by an open-source library. F_v = 135 and F_c,perp = 425 in all
    // rows.
    const struct {
        const char* name;
        double bending, tension, compression, modulus, modulus_low;
    } rows[]{
        {"Spruce-Pine-Fir Select Structural", 1150, 700, 1400, 1.5e6, 550e3},
        {"Spruce-Pine-Fir No.1/No.2", 875, 450, 1150, 1.4e6, 510e3},
        {"Spruce-Pine-Fir No.3", 500, 250, 650, 1.2e6, 440e3},
        {"Spruce-Pine-Fir Stud", 675, 350, 725, 1.2e6, 440e3},
    };
    for (const auto& row : rows) {
        CAPTURE(row.name);
        const TimberGrade* grade = find_timber_grade(row.name);
        REQUIRE(grade != nullptr);
        CHECK(grade->document == TimberDocument::nds2018);
        CHECK(close(in_psi(grade->bending), row.bending, 1e-12));
        CHECK(close(in_psi(grade->tension), row.tension, 1e-12));
        CHECK(close(in_psi(grade->compression), row.compression, 1e-12));
        CHECK(close(in_psi(grade->modulus), row.modulus, 1e-12));
        CHECK(close(in_psi(grade->modulus_low), row.modulus_low, 1e-12));
        CHECK(close(in_psi(grade->shear), 135, 1e-12));
        CHECK(close(in_psi(grade->compression_across), 425, 1e-12));
        CHECK(close(in_psi(grade->shear_modulus), row.modulus / 16, 1e-12));
    }
    // Printed in N/mm2 beside the psi in the same source: No.1/No.2 6.03, 3.10, 0.93, 2.93, 7.93, 9653, 3516.
    const TimberGrade& no2 = *find_timber_grade("Spruce-Pine-Fir No.1/No.2");
    CHECK(close(in_N_per_mm2(no2.bending), 6.03, 1e-3));
    CHECK(close(in_N_per_mm2(no2.modulus), 9653, 1e-4));
    CHECK(close(in_N_per_mm2(no2.modulus_low), 3516, 1e-4));
}

TEST_CASE("timber: C16 and C24 as in EN 338:2009, table 1") {
    const TimberGrade* c16 = find_timber_grade("C16");
    const TimberGrade* c24 = find_timber_grade("C24");
    REQUIRE(c16 != nullptr);
    REQUIRE(c24 != nullptr);
    CHECK(c16->document == TimberDocument::en1995_1_1);
    CHECK(c24->document == TimberDocument::en1995_1_1);
    const struct {
        Pressure TimberGrade::*value;
        double c16, c24;  // N/mm2
    } rows[]{
        {&TimberGrade::bending, 16, 24},
        {&TimberGrade::tension, 10, 14},
        {&TimberGrade::shear, 3.2, 4.0},
        {&TimberGrade::compression, 17, 21},
        {&TimberGrade::compression_across, 2.2, 2.5},
        {&TimberGrade::modulus, 8000, 11000},
        {&TimberGrade::modulus_low, 5400, 7400},
        {&TimberGrade::shear_modulus, 500, 690},
    };
    for (const auto& row : rows) {
        CHECK(close(in_N_per_mm2(c16->*row.value), row.c16, 1e-12));
        CHECK(close(in_N_per_mm2(c24->*row.value), row.c24, 1e-12));
    }
}

TEST_CASE("timber: unit weights") {
    // Mean densities 370 and 420 kg/m3 (EN 338) times 9.80665 m/s2.
    CHECK(close(in_kN_per_m3(find_timber_grade("C16")->unit_weight), 3.6284605, 1e-9));
    CHECK(close(in_kN_per_m3(find_timber_grade("C24")->unit_weight), 4.118793, 1e-9));
    // NDS Supplement 3.1.3, from memory: 62.4 G/(1 + 0.009 G m) (1 + m/100) pcf; G = 0.42 at m = 19 gives 29.10 pcf.
    CHECK(close(in_pcf(find_timber_grade("Spruce-Pine-Fir Stud")->unit_weight), 29.10, 1e-3));
}

TEST_CASE("timber: every grade is whole, and names are its own") {
    std::set<std::string_view> names;
    CHECK(timber_grades().size() == 6);
    for (const TimberGrade& grade : timber_grades()) {
        CAPTURE(grade.name);
        CHECK(names.insert(grade.name).second);
        CHECK(find_timber_grade(grade.name) == &grade);
        CHECK(grade.modulus_low < grade.modulus);
        CHECK(grade.shear_modulus < grade.modulus_low);
        CHECK(grade.compression_across < grade.compression);
        CHECK(grade.shear < grade.bending);
        CHECK(grade.tension < grade.bending);
        CHECK(in_kN_per_m3(grade.unit_weight) > 3.0);
        CHECK(in_kN_per_m3(grade.unit_weight) < 6.0);
        CHECK(!grade.source.empty());
    }
}

TEST_CASE("timber: a grade that is not known") {
    CHECK(find_timber_grade("C30") == nullptr);
    CHECK(find_timber_grade("") == nullptr);
    CHECK(find_timber_grade("c24") == nullptr);
}
