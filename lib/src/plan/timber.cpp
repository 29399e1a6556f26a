// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/plan/timber.hpp"

#include <algorithm>

#include "coverframe/units/literals.hpp"

namespace coverframe {
namespace {

using namespace coverframe::literals;

// Standard acceleration of free fall, 9.80665 m/s2, turns density into weight.
constexpr UnitWeight weight_of(double kg_per_m3) { return UnitWeight::from_value(kg_per_m3 * 9.80665); }

// Spruce-Pine-Fir has the specific gravity G = 0.42, oven-dry weight on oven-dry volume. At the moisture content m
// [percent] its density is 1000 G (1 + m/100)/(1 + 0.009 G m) kg/m3 (NDS Supplement 2018, 3.1.3, from memory). At 19
// percent, the line between dry and wet service, that is 466 kg/m3.
constexpr UnitWeight spruce_pine_fir_weight = weight_of(1000.0 * 0.42 * 1.19 / (1.0 + 0.009 * 0.42 * 19.0));

constexpr std::string_view from_nds =
    "NDS Supplement 2018, table 4A, Spruce-Pine-Fir, 2 in to 4 in thick; read as quoted by an open-source library, not "
    "on the page. Shear modulus E/16 by convention. Unit weight for G = 0.42 at 19 percent moisture, equation from "
    "memory.";
constexpr std::string_view from_en338_c16 =
    "EN 338:2009, table 1; read as quoted by secondary sources, f_c,0,k and E_0,05 also on a teaching page. f_v,k goes "
    "with the crack factor k_cr of EN 1995-1-1/A1:2008, 6.1.7(2). Unit weight from the mean density 370 kg/m3.";
constexpr std::string_view from_en338_c24 =
    "EN 338:2009, table 1; read as quoted by secondary sources, f_c,0,k and E_0,05 also on a teaching page, f_t,0,k "
    "from "
    "memory. f_v,k goes with the crack factor k_cr of EN 1995-1-1/A1:2008, 6.1.7(2). Unit weight from the mean density "
    "420 kg/m3.";

constexpr TimberGrade spruce_pine_fir(std::string_view name, Pressure bending, Pressure tension, Pressure compression,
                                      Pressure modulus, Pressure modulus_low) {
    return {.name = name,
            .document = TimberDocument::nds2018,
            .bending = bending,
            .tension = tension,
            .shear = 135_psi,
            .compression = compression,
            .compression_across = 425_psi,
            .modulus = modulus,
            .modulus_low = modulus_low,
            .shear_modulus = modulus / 16.0,
            .unit_weight = spruce_pine_fir_weight,
            .source = from_nds};
}

constexpr TimberGrade grades[]{
    spruce_pine_fir("Spruce-Pine-Fir Select Structural", 1150_psi, 700_psi, 1400_psi, 1.5e6_psi, 550e3_psi),
    spruce_pine_fir("Spruce-Pine-Fir No.1/No.2", 875_psi, 450_psi, 1150_psi, 1.4e6_psi, 510e3_psi),
    spruce_pine_fir("Spruce-Pine-Fir No.3", 500_psi, 250_psi, 650_psi, 1.2e6_psi, 440e3_psi),
    spruce_pine_fir("Spruce-Pine-Fir Stud", 675_psi, 350_psi, 725_psi, 1.2e6_psi, 440e3_psi),
    {.name = "C16",
     .document = TimberDocument::en1995_1_1,
     .bending = 16_N_per_mm2,
     .tension = 10_N_per_mm2,
     .shear = 3.2_N_per_mm2,
     .compression = 17_N_per_mm2,
     .compression_across = 2.2_N_per_mm2,
     .modulus = 8000_N_per_mm2,
     .modulus_low = 5400_N_per_mm2,
     .shear_modulus = 500_N_per_mm2,
     .unit_weight = weight_of(370.0),
     .source = from_en338_c16},
    {.name = "C24",
     .document = TimberDocument::en1995_1_1,
     .bending = 24_N_per_mm2,
     .tension = 14_N_per_mm2,
     .shear = 4.0_N_per_mm2,
     .compression = 21_N_per_mm2,
     .compression_across = 2.5_N_per_mm2,
     .modulus = 11000_N_per_mm2,
     .modulus_low = 7400_N_per_mm2,
     .shear_modulus = 690_N_per_mm2,
     .unit_weight = weight_of(420.0),
     .source = from_en338_c24},
};

}  // namespace

std::span<const TimberGrade> timber_grades() { return grades; }

const TimberGrade* find_timber_grade(std::string_view name) {
    const auto found = std::find_if(std::begin(grades), std::end(grades),
                                    [&](const TimberGrade& grade) { return grade.name == name; });
    return found == std::end(grades) ? nullptr : found;
}

}  // namespace coverframe
