// SPDX-License-Identifier: BSD-3-Clause
// What the rules of resistance/nds2018.hpp refuse.
#include "coverframe/resistance/nds2018.hpp"

#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::nds2018;

namespace {

constexpr GradeGroup graded = GradeGroup::no3_and_better;
constexpr GradeGroup stud = GradeGroup::stud;
constexpr Lumber two_by_four{1.5_in, 3.5_in};

}  // namespace

TEST_CASE("nds2018: arguments out of range") {
    CHECK(code_of([] { return slenderness_3_7_1(0_m, 38_mm); }) == "nds2018.effective_length.range");
    CHECK(code_of([] { return slenderness_3_7_1(1_m, 0_mm); }) == "nds2018.depth.range");
    CHECK(code_of([] { return critical_column_stress_3_7_1(510000_psi, 50.01); }) == "nds2018.column.slenderness");
    CHECK(code_of([] { return critical_column_stress_3_7_1(510000_psi, 0.0); }) == "nds2018.column.slenderness");
    CHECK(code_of([] { return critical_column_stress_3_7_1(0_psi, 20.0); }) == "nds2018.modulus_low.range");
    CHECK(code_of([] { return column_stability_3_7_1(0_psi, 1000_psi); }) == "nds2018.critical.range");
    CHECK(code_of([] { return column_stability_3_7_1(500_psi, 0_psi); }) == "nds2018.compression.range");
    CHECK(code_of([] { return column_stability_3_7_1(500_psi, 1000_psi, 1.1); }) == "nds2018.c.range");
    CHECK(code_of([] { return effective_length_3_3_3(SpanLoad::uniform, 0_m, 89_mm); }) == "nds2018.unsupported.range");
    CHECK(code_of([] { return effective_length_3_3_3(SpanLoad::uniform, 1_m, 0_mm); }) == "nds2018.depth.range");
    CHECK(code_of([] { return beam_slenderness_3_3_3(1_m, 89_mm, 0_mm); }) == "nds2018.breadth.range");
    CHECK(code_of([] { return beam_slenderness_3_3_3(0_m, 89_mm, 38_mm); }) == "nds2018.effective_length.range");
    CHECK(code_of([] { return critical_beam_stress_3_3_3(510000_psi, 50.01); }) == "nds2018.beam.slenderness");
    CHECK(code_of([] { return beam_stability_3_3_3(0_psi, 1000_psi); }) == "nds2018.critical.range");
    CHECK(code_of([] { return beam_stability_3_3_3(500_psi, 0_psi); }) == "nds2018.bending.range");
    CHECK(code_of([] { return shear_stress_3_4_2(1_kN, 0_mm, 89_mm); }) == "nds2018.breadth.range");
    CHECK(code_of([] { return shear_stress_3_4_2(1_kN, 38_mm, 0_mm); }) == "nds2018.depth.range");
    CHECK(code_of([] { return bearing_area_factor_3_10_4(0.4_in, 12_in); }) == "nds2018.bearing_length.range");
    CHECK(code_of([] { return bearing_area_factor_3_10_4(1_in, from_in(-1.0)); }) == "nds2018.to_end.range");
    CHECK(code_of([] { return bearing_strength_3_10_2(425_psi, 1_in, 1_in, 0.9); }) == "nds2018.area_factor.range");
    CHECK(code_of([] { return bearing_strength_3_10_2(0_psi, 1_in, 1_in, 1.0); }) == "nds2018.across.range");
    CHECK(code_of([] {
              return size_factor_4_3_6(Property::bending, graded, {5.5_in, 5.5_in});
          }) == "nds2018.thickness.range");
    CHECK(code_of([] {
              return size_factor_4_3_6(Property::bending, graded, {3.5_in, 1.5_in});
          }) == "nds2018.width.range");
    CHECK(code_of([] {
              return size_factor_4_3_6(Property::bending, graded, {1.5_in, 16.1_in});
          }) == "nds2018.width.range");
    CHECK(code_of([] {
              return size_factor_4_3_6(Property::bending, stud, {1.5_in, 7.25_in});
          }) == "nds2018.width.range");
    CHECK(code_of([] { return flat_use_4_3_7({1.0_in, 3.5_in}); }) == "nds2018.thickness.range");
    CHECK(code_of([] { return wet_service_4_3_3(Property::bending, 0_psi, 1.0); }) == "nds2018.reference.range");
    CHECK(code_of([] { return wet_service_4_3_3(Property::bending, 875_psi, 2.1); }) == "nds2018.size_factor.range");
    CHECK(code_of([] { return adjusted_4_3_1(Property::bending, 875_psi, {.lumber = two_by_four}); }) ==
          "nds2018.time_effect.range");
    CHECK(code_of([] { return adjusted_4_3_1(Property::bending, 875_psi, {.time_effect = 0.8}); }) ==
          "nds2018.thickness.range");
    CHECK(code_of([] { return format_conversion_N_3_1(static_cast<Property>(9)); }) == "nds2018.property.unknown");
    CHECK(code_of([] { return resistance_factor_N_3_2(static_cast<Property>(9)); }) == "nds2018.property.unknown");
}

TEST_CASE("nds2018: an argument that is not finite is refused") {
    for (const double bad : not_finite) {
        CAPTURE(bad);
        const Pressure p = from_psi(bad);
        const Length l = from_in(bad);
        CHECK(code_of([&] { return slenderness_3_7_1(l, 38_mm); }) == "nds2018.effective_length.range");
        CHECK(code_of([&] { return slenderness_3_7_1(1_m, l); }) == "nds2018.depth.range");
        CHECK(code_of([&] { return critical_column_stress_3_7_1(p, 20.0); }) == "nds2018.modulus_low.range");
        CHECK(code_of([&] { return critical_column_stress_3_7_1(510000_psi, bad); }) == "nds2018.column.slenderness");
        CHECK(code_of([&] { return column_stability_3_7_1(p, 1000_psi); }) == "nds2018.critical.range");
        CHECK(code_of([&] { return column_stability_3_7_1(500_psi, p); }) == "nds2018.compression.range");
        CHECK(code_of([&] { return column_stability_3_7_1(500_psi, 1000_psi, bad); }) == "nds2018.c.range");
        CHECK(code_of([&] { return effective_length_3_3_3(SpanLoad::other, l, 89_mm); }) ==
              "nds2018.unsupported.range");
        CHECK(code_of([&] { return effective_length_3_3_3(SpanLoad::other, 1_m, l); }) == "nds2018.depth.range");
        CHECK(code_of([&] { return beam_slenderness_3_3_3(l, 89_mm, 38_mm); }) == "nds2018.effective_length.range");
        CHECK(code_of([&] { return beam_slenderness_3_3_3(1_m, l, 38_mm); }) == "nds2018.depth.range");
        CHECK(code_of([&] { return beam_slenderness_3_3_3(1_m, 89_mm, l); }) == "nds2018.breadth.range");
        CHECK(code_of([&] { return critical_beam_stress_3_3_3(510000_psi, bad); }) == "nds2018.beam.slenderness");
        CHECK(code_of([&] { return critical_beam_stress_3_3_3(p, 20.0); }) == "nds2018.modulus_low.range");
        CHECK(code_of([&] { return beam_stability_3_3_3(p, 1000_psi); }) == "nds2018.critical.range");
        CHECK(code_of([&] { return beam_stability_3_3_3(500_psi, p); }) == "nds2018.bending.range");
        CHECK(code_of([&] { return shear_stress_3_4_2(from_N(bad), 38_mm, 89_mm); }) == "nds2018.force.range");
        CHECK(code_of([&] { return bearing_area_factor_3_10_4(l, 12_in); }) == "nds2018.bearing_length.range");
        CHECK(code_of([&] { return bearing_area_factor_3_10_4(1_in, l); }) == "nds2018.to_end.range");
        CHECK(code_of([&] { return bearing_strength_3_10_2(p, 1_in, 1_in, 1.0); }) == "nds2018.across.range");
        CHECK(code_of([&] { return bearing_strength_3_10_2(425_psi, l, 1_in, 1.0); }) ==
              "nds2018.bearing_length.range");
        CHECK(code_of([&] { return bearing_strength_3_10_2(425_psi, 1_in, l, 1.0); }) == "nds2018.breadth.range");
        CHECK(code_of([&] { return bearing_strength_3_10_2(425_psi, 1_in, 1_in, bad); }) ==
              "nds2018.area_factor.range");
        CHECK(code_of([&] {
                  return size_factor_4_3_6(Property::shear, graded, {l, 3.5_in});
              }) == "nds2018.thickness.range");
        CHECK(code_of([&] { return flat_use_4_3_7({1.5_in, l}); }) == "nds2018.width.range");
        CHECK(code_of([&] { return wet_service_4_3_3(Property::tension, p, 1.0); }) == "nds2018.reference.range");
        CHECK(code_of([&] { return wet_service_4_3_3(Property::tension, 1_psi, bad); }) == "nds2018.size_factor.range");
        CHECK(code_of([&] {
                  return adjusted_4_3_1(Property::modulus, 1_psi, {.lumber = two_by_four, .time_effect = bad});
              }) == "nds2018.time_effect.range");
    }
}

TEST_CASE(
    "nds2018: interactions refuse a stress that is negative or not finite, and a design value that is not positive") {
    const BendingCompression pressed{100_psi, 100_psi, 100_psi, 500_psi, 500_psi, 500_psi, 900_psi, 900_psi, 900_psi};
    const BendingTension pulled{100_psi, 100_psi, 100_psi, 500_psi, 500_psi, 500_psi, 500_psi};
    std::vector<double> bad_stresses(not_finite.begin(), not_finite.end());
    std::vector<double> bad_designs = bad_stresses;
    bad_stresses.push_back(-1.0);
    bad_designs.push_back(0.0);
    const auto pressed_code = [&](Pressure BendingCompression::*field, double value) {
        BendingCompression member = pressed;
        member.*field = from_psi(value);
        return code_of([&] { return bending_compression_3_9_2(member); });
    };
    const auto pulled_code = [&](Pressure BendingTension::*field, double value) {
        BendingTension member = pulled;
        member.*field = from_psi(value);
        return code_of([&] { return bending_tension_3_9_1(member); });
    };
    CHECK(pressed_code(&BendingCompression::compression, 100.0) == "none");
    CHECK(pulled_code(&BendingTension::tension, 100.0) == "none");
    for (const double bad : bad_stresses) {
        for (auto field :
             {&BendingCompression::compression, &BendingCompression::edgewise, &BendingCompression::flatwise}) {
            CHECK(pressed_code(field, bad) == "nds2018.stress.range");
        }
        for (auto field : {&BendingTension::tension, &BendingTension::edgewise, &BendingTension::flatwise}) {
            CHECK(pulled_code(field, bad) == "nds2018.stress.range");
        }
    }
    for (const double bad : bad_designs) {
        for (auto field : {&BendingCompression::compression_design, &BendingCompression::edgewise_design,
                           &BendingCompression::flatwise_design, &BendingCompression::critical_edgewise,
                           &BendingCompression::critical_flatwise, &BendingCompression::critical_beam}) {
            CHECK(pressed_code(field, bad) == "nds2018.design_value.range");
        }
        for (auto field : {&BendingTension::tension_design, &BendingTension::edgewise_design,
                           &BendingTension::edgewise_design_stable, &BendingTension::flatwise_design}) {
            CHECK(pulled_code(field, bad) == "nds2018.design_value.range");
        }
    }
}
