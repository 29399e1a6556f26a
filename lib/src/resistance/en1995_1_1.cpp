// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/resistance/en1995_1_1.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace coverframe::en1995_1_1 {

namespace {

double length(Length value, const argument::Name& name) { return argument::positive(in_m(value), name); }

double stress(Pressure value) {
    return argument::not_negative(in_Pa(value), {"en1995_1_1.stress.range", "stress", "Pa"});
}

double strength(Pressure value) {
    return argument::positive(in_Pa(value), {"en1995_1_1.strength.range", "design strength", "Pa"});
}

constexpr argument::Name slenderness_name{"en1995_1_1.relative_slenderness.range", "relative slenderness", "-"};
constexpr argument::Name depth_name{"en1995_1_1.depth.range", "depth", "m"};
constexpr argument::Name breadth_name{"en1995_1_1.breadth.range", "breadth", "m"};
constexpr argument::Name effective_length_name{"en1995_1_1.effective_length.range", "effective length", "m"};
constexpr argument::Name modulus_low_name{"en1995_1_1.modulus_low.range", "E_0,05", "Pa"};

// Bending terms of a pair of sums: full bending about one axis, 0.7 of it about the other.
struct Sums {
    double about_y;
    double about_z;
};

Sums bending_sums(double ratio_y, double ratio_z) {
    return {ratio_y + redistribution_6_1_6 * ratio_z, redistribution_6_1_6 * ratio_y + ratio_z};
}

}  // namespace

double modification_factor_3_1_3(ServiceClass service, Duration duration) {
    constexpr std::array<double, 5> dry{0.60, 0.70, 0.80, 0.90, 1.10};
    constexpr std::array<double, 5> moist{0.50, 0.55, 0.65, 0.70, 0.90};
    const auto column = static_cast<std::size_t>(duration);
    if (column >= dry.size()) {
        argument::refuse({"en1995_1_1.duration.unknown", "duration number", "-"}, static_cast<double>(duration), 0, 4);
    }
    switch (service) {
        case ServiceClass::one:
        case ServiceClass::two: return dry[column];
        case ServiceClass::three: return moist[column];
    }
    argument::refuse({"en1995_1_1.service.unknown", "service class number", "-"}, static_cast<double>(service), 0, 2);
}

double depth_factor_3_2(Length depth) {
    const double h = in_mm(depth);
    length(depth, depth_name);
    return h < 150.0 ? std::min(std::pow(150.0 / h, 0.2), 1.3) : 1.0;
}

double relative_slenderness_6_3_2(Length effective_length, Length depth, Pressure compression, Pressure modulus_low) {
    const double l_ef = length(effective_length, effective_length_name);
    const double h = length(depth, depth_name);
    const double f = argument::positive(in_Pa(compression), {"en1995_1_1.compression.range", "f_c,0,k", "Pa"});
    const double e = argument::positive(in_Pa(modulus_low), modulus_low_name);
    return l_ef * std::sqrt(12.0) / h / std::numbers::pi * std::sqrt(f / e);
}

double instability_factor_6_3_2(double relative_slenderness, double straightness) {
    const double s = argument::not_negative(relative_slenderness, slenderness_name);
    argument::within(straightness, 0.0, 0.5, {"en1995_1_1.straightness.range", "straightness factor beta_c", "-"});
    if (s <= 0.3) return 1.0;
    const double k = 0.5 * (1.0 + straightness * (s - 0.3) + s * s);
    // (k - s)(k + s), so that the root stays real: k - s = 0.5 [(1 - s)^2 + beta_c (s - 0.3)] >= 0
    const double above = 0.5 * ((1.0 - s) * (1.0 - s) + straightness * (s - 0.3));
    return std::min(1.0, 1.0 / (k + std::sqrt(above * (k + s))));  // at most 1 but for the last bit of the division
}

BendingCompressionResult bending_compression_6_3_2(const BendingCompression& member) {
    const double compression = stress(member.compression) / strength(member.compression_strength);
    const Sums bending = bending_sums(stress(member.bending_y) / strength(member.bending_y_strength),
                                      stress(member.bending_z) / strength(member.bending_z_strength));
    BendingCompressionResult result{.factor_y = instability_factor_6_3_2(member.slenderness_y),
                                    .factor_z = instability_factor_6_3_2(member.slenderness_z),
                                    .stocky = member.slenderness_y <= 0.3 && member.slenderness_z <= 0.3};
    result.about_y = bending.about_y + (result.stocky ? compression * compression : compression / result.factor_y);
    result.about_z = bending.about_z + (result.stocky ? compression * compression : compression / result.factor_z);
    return result;
}

Length effective_length_6_3_3(SpanLoad load, Length span, Length depth, LoadedEdge edge) {
    length(span, {"en1995_1_1.span.range", "span", "m"});
    length(depth, depth_name);
    double share = 1.0;
    switch (load) {
        case SpanLoad::constant_moment: share = 1.0; break;
        case SpanLoad::uniform: share = 0.9; break;
        case SpanLoad::mid_point: share = 0.8; break;
        case SpanLoad::cantilever_uniform: share = 0.5; break;
        case SpanLoad::cantilever_point: share = 0.8; break;
    }
    const double depths = edge == LoadedEdge::compression ? 2.0 : edge == LoadedEdge::tension ? -0.5 : 0.0;
    const Length l_ef = share * span + depths * depth;
    length(l_ef, effective_length_name);
    return l_ef;
}

Pressure critical_bending_6_3_3(Length breadth, Length depth, Length effective_length, Pressure modulus_low) {
    const double b = length(breadth, breadth_name);
    const double h = length(depth, depth_name);
    const double l_ef = length(effective_length, effective_length_name);
    argument::positive(in_Pa(modulus_low), modulus_low_name);
    return 0.78 * b * b / (h * l_ef) * modulus_low;
}

double relative_slenderness_6_3_3(Pressure bending, Pressure critical) {
    argument::positive(in_Pa(bending), {"en1995_1_1.bending.range", "f_m,k", "Pa"});
    argument::positive(in_Pa(critical), {"en1995_1_1.critical.range", "critical bending stress", "Pa"});
    return std::sqrt(bending / critical);
}

double lateral_buckling_6_3_3(const LateralBuckling& member) {
    const double k_crit = argument::within(member.lateral_factor, argument::smallest, 1.0,
                                           {"en1995_1_1.factor.range", "lateral buckling factor k_crit", "-"});
    const double k_cz = argument::within(member.instability_factor_z, argument::smallest, 1.0,
                                         {"en1995_1_1.factor.range", "instability factor k_c,z", "-"});
    const double bending = stress(member.bending) / (k_crit * strength(member.bending_strength));
    const double compression = stress(member.compression) / (k_cz * strength(member.compression_strength));
    return std::max(bending, bending * bending + compression);
}

BendingTensionResult bending_tension_6_2_3(const BendingTension& member) {
    const double tension = stress(member.tension) / strength(member.tension_strength);
    const Sums bending = bending_sums(stress(member.bending_y) / strength(member.bending_y_strength),
                                      stress(member.bending_z) / strength(member.bending_z_strength));
    return {.about_y = tension + bending.about_y, .about_z = tension + bending.about_z};
}

Pressure shear_stress_6_1_7(Force force, Length breadth, Length depth, double crack_factor) {
    argument::within(in_N(force), -argument::largest, argument::largest,
                     {"en1995_1_1.force.range", "shear force", "N"});
    length(breadth, breadth_name);
    length(depth, depth_name);
    argument::within(crack_factor, 0.5, 1.0, {"en1995_1_1.crack_factor.range", "crack factor k_cr", "-"});
    return 1.5 / crack_factor * from_N(std::abs(in_N(force))) / (breadth * depth);
}

Length effective_contact_6_1_5(Length contact, Length beyond_one, Length beyond_two) {
    const double l = length(contact, {"en1995_1_1.contact.range", "contact length", "m"});
    const argument::Name name{"en1995_1_1.beyond.range", "free timber beyond the contact", "m"};
    const double one = argument::not_negative(in_m(beyond_one), name);
    const double two = argument::not_negative(in_m(beyond_two), name);
    const double most = std::min(0.030, l);
    return from_m(l + std::min(most, one) + std::min(most, two));
}

Angle out_of_plumb_5_4_4(Length height) {
    const double h = length(height, {"en1995_1_1.height.range", "height", "m"});
    return from_rad(h <= 5.0 ? 0.005 : 0.005 * std::sqrt(5.0 / h));
}

}  // namespace coverframe::en1995_1_1
