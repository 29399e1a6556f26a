// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/resistance/nds2018.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace coverframe::nds2018 {

namespace {

[[noreturn]] void refuse_property(Property property) {
    argument::refuse({"nds2018.property.unknown", "property number", "-"}, static_cast<double>(property), 0, 6);
}

void check_reference(Pressure reference) {
    argument::positive(in_Pa(reference), {"nds2018.reference.range", "reference design value", "Pa"});
}

double stress(Pressure value) { return argument::not_negative(in_Pa(value), {"nds2018.stress.range", "stress", "Pa"}); }

double design(Pressure value) {
    return argument::positive(in_Pa(value), {"nds2018.design_value.range", "design value", "Pa"});
}

// Rows of Table 4A by the dressed width in inches; a tenth of an inch lets metric and slightly swollen sizes in.
constexpr std::array<double, 7> row_ends{3.6, 4.6, 5.6, 7.35, 9.35, 11.35, 16.0};  // nominal 4, 5, 6, 8, 10, 12, 14+

std::size_t row_of(const Lumber& lumber, double widest = row_ends.back()) {
    const double thickness = argument::within(in_in(lumber.thickness), 1.4, 3.6,
                                              {"nds2018.thickness.range", "thickness of dimension lumber", "in"});
    const double width = argument::within(in_in(lumber.width), thickness, widest,
                                          {"nds2018.width.range", "width of dimension lumber", "in"});
    std::size_t row = 0;
    while (width > row_ends[row]) ++row;
    return row;
}

bool nominal_four_thick(const Lumber& lumber) { return in_in(lumber.thickness) > 3.4; }

// The Ylinen form shared by 3.7.1 and 3.3.3: (1 + a)/(2c) - sqrt(((1 + a)/(2c))^2 - a/c), rearranged so that no
// difference of nearly equal numbers is taken and the root never sees a negative one. It is at most 1 but
// for the last bit of the division.
double stability(double a, double c) {
    return std::min(1.0, 2.0 * a / (1.0 + a + std::sqrt((1.0 - a) * (1.0 - a) + 4.0 * a * (1.0 - c))));
}

}  // namespace

double format_conversion_N_3_1(Property property) {
    switch (property) {
        case Property::bending: return 2.54;
        case Property::tension: return 2.70;
        case Property::shear: return 2.88;
        case Property::compression: return 2.40;
        case Property::compression_across: return 1.67;
        case Property::modulus: return 1.0;
        case Property::modulus_low: return 1.76;
    }
    refuse_property(property);
}

double resistance_factor_N_3_2(Property property) {
    switch (property) {
        case Property::bending: return 0.85;
        case Property::tension: return 0.80;
        case Property::shear: return 0.75;
        case Property::compression: return 0.90;
        case Property::compression_across: return 0.90;
        case Property::modulus: return 1.0;
        case Property::modulus_low: return 0.85;
    }
    refuse_property(property);
}

double wet_service_4_3_3(Property property, Pressure reference, double size_factor) {
    check_reference(reference);
    argument::within(size_factor, 0.4, 2.0, {"nds2018.size_factor.range", "size factor C_F", "-"});
    const double sized = in_psi(size_factor * reference);
    switch (property) {
        case Property::bending: return sized <= 1150.0 ? 1.0 : 0.85;
        case Property::tension: return 1.0;
        case Property::shear: return 0.97;
        case Property::compression: return sized <= 750.0 ? 1.0 : 0.8;
        case Property::compression_across: return 0.67;
        case Property::modulus: return 0.9;
        case Property::modulus_low: return 0.9;
    }
    refuse_property(property);
}

double size_factor_4_3_6(Property property, GradeGroup group, const Lumber& lumber) {
    // Nominal width 2 to 4, 5, 6, 8, 10, 12, 14 in and wider.
    constexpr std::array<double, 7> bending{1.5, 1.4, 1.3, 1.2, 1.1, 1.0, 0.9};
    constexpr std::array<double, 7> bending_four_thick{1.5, 1.4, 1.3, 1.3, 1.2, 1.1, 1.0};
    constexpr std::array<double, 7> tension{1.5, 1.4, 1.3, 1.2, 1.1, 1.0, 0.9};
    constexpr std::array<double, 7> compression{1.15, 1.1, 1.1, 1.05, 1.0, 1.0, 0.9};

    const bool stud = group == GradeGroup::stud;
    const std::size_t row = row_of(lumber, stud ? row_ends[2] : row_ends.back());
    switch (property) {
        case Property::bending:
            if (stud) return row == 0 ? 1.1 : 1.0;
            return nominal_four_thick(lumber) ? bending_four_thick[row] : bending[row];
        case Property::tension: return stud ? (row == 0 ? 1.1 : 1.0) : tension[row];
        case Property::compression: return stud ? (row == 0 ? 1.05 : 1.0) : compression[row];
        case Property::shear:
        case Property::compression_across:
        case Property::modulus:
        case Property::modulus_low: return 1.0;
    }
    refuse_property(property);
}

double flat_use_4_3_7(const Lumber& lumber) {
    const std::size_t row = row_of(lumber);
    if (nominal_four_thick(lumber)) return row == 0 ? 1.0 : row <= 3 ? 1.05 : 1.1;
    if (row == 0) return in_in(lumber.width) <= 2.6 ? 1.0 : 1.1;
    return row == 1 ? 1.1 : row <= 3 ? 1.15 : 1.2;
}

Pressure adjusted_4_3_1(Property property, Pressure reference, const Conditions& conditions) {
    argument::within(conditions.time_effect, 0.6, 1.25,
                     {"nds2018.time_effect.range", "time effect factor lambda", "-"});
    const double size = size_factor_4_3_6(property, conditions.group, conditions.lumber);
    const double wet = wet_service_4_3_3(property, reference, size);
    const bool timed = property == Property::bending || property == Property::tension || property == Property::shear ||
                       property == Property::compression;
    return (conditions.wet_service ? wet : 1.0) * size * format_conversion_N_3_1(property) *
           resistance_factor_N_3_2(property) * (timed ? conditions.time_effect : 1.0) * reference;
}

double column_stability_3_7_1(Pressure critical, Pressure compression, double c) {
    argument::positive(in_Pa(critical), {"nds2018.critical.range", "critical buckling design value F_cE", "Pa"});
    argument::positive(in_Pa(compression), {"nds2018.compression.range", "F_c*", "Pa"});
    argument::within(c, 0.5, 1.0, {"nds2018.c.range", "column factor c", "-"});
    return stability(critical / compression, c);
}

Length effective_length_3_3_3(SpanLoad load, Length unsupported, Length depth) {
    argument::positive(in_m(unsupported), {"nds2018.unsupported.range", "unsupported length l_u", "m"});
    argument::positive(in_m(depth), {"nds2018.depth.range", "depth", "m"});
    const double ratio = unsupported / depth;
    if (ratio < 7.0) return (load == SpanLoad::mid_point ? 1.80 : 2.06) * unsupported;
    if (load == SpanLoad::other && ratio > 14.3) return 1.84 * unsupported;
    return (load == SpanLoad::mid_point ? 1.37 : 1.63) * unsupported + 3.0 * depth;
}

double beam_slenderness_3_3_3(Length effective_length, Length depth, Length breadth) {
    const double l_e =
        argument::positive(in_m(effective_length), {"nds2018.effective_length.range", "effective length", "m"});
    const double d = argument::positive(in_m(depth), {"nds2018.depth.range", "depth", "m"});
    const double b = argument::positive(in_m(breadth), {"nds2018.breadth.range", "breadth", "m"});
    return std::sqrt(l_e * d) / b;
}

double beam_stability_3_3_3(Pressure critical, Pressure bending) {
    argument::positive(in_Pa(critical), {"nds2018.critical.range", "critical buckling design value F_bE", "Pa"});
    argument::positive(in_Pa(bending), {"nds2018.bending.range", "F_b*", "Pa"});
    return stability(critical / bending, 0.95);
}

Pressure shear_stress_3_4_2(Force force, Length breadth, Length depth) {
    argument::within(in_N(force), -argument::largest, argument::largest, {"nds2018.force.range", "shear force", "N"});
    argument::positive(in_m(breadth), {"nds2018.breadth.range", "breadth", "m"});
    argument::positive(in_m(depth), {"nds2018.depth.range", "depth", "m"});
    return 1.5 * from_N(std::abs(in_N(force))) / (breadth * depth);
}

BendingCompressionResult bending_compression_3_9_2(const BendingCompression& member) {
    const double f_c = stress(member.compression);
    const double f_b1 = stress(member.edgewise);
    const double f_b2 = stress(member.flatwise);
    const double to_edgewise = f_c / design(member.critical_edgewise);
    const double to_flatwise = f_c / design(member.critical_flatwise);
    const double to_beam = f_b1 / design(member.critical_beam);
    const double in_compression = f_c / design(member.compression_design);
    const double edgewise_design = design(member.edgewise_design);
    const double flatwise_design = design(member.flatwise_design);

    BendingCompressionResult result;
    result.compression_part = in_compression * in_compression;
    const double left_edgewise = 1.0 - to_edgewise;
    const double left_flatwise = 1.0 - to_flatwise - to_beam * to_beam;
    result.stable = left_edgewise > 0.0 && left_flatwise > 0.0;
    if (!result.stable) return result;
    result.edgewise_part = f_b1 / (edgewise_design * left_edgewise);
    result.flatwise_part = f_b2 / (flatwise_design * left_flatwise);
    result.sum = result.compression_part + result.edgewise_part + result.flatwise_part;
    return result;
}

BendingTensionResult bending_tension_3_9_1(const BendingTension& member) {
    const double f_t = stress(member.tension);
    const double f_b1 = stress(member.edgewise);
    const double flatwise = stress(member.flatwise) / design(member.flatwise_design);
    return {.tension_face = f_t / design(member.tension_design) + f_b1 / design(member.edgewise_design) + flatwise,
            .compression_face = (f_b1 - f_t) / design(member.edgewise_design_stable) + flatwise};
}

}  // namespace coverframe::nds2018
