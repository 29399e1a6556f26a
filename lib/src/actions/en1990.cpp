// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1990.hpp"

namespace coverframe::en1990 {

namespace {

void check_psi(const Psi& psi, const argument::Name& name) {
    for (const double value : {psi.combination, psi.frequent, psi.quasi_permanent}) {
        argument::within(value, 0.0, 1.0, name);
    }
}

void check(const Psi& snow, const Psi& wind) {
    check_psi(snow, {"en1990.snow_psi.range", "combination factor psi of snow", "-"});
    check_psi(wind, {"en1990.wind_psi.range", "combination factor psi of wind", "-"});
}

bool helps(SelfWeight self_weight) {
    switch (self_weight) {
        case SelfWeight::worsens: return false;
        case SelfWeight::helps: return true;
    }
    argument::refuse({"en1990.self_weight.unknown", "self-weight number", "-"}, static_cast<double>(self_weight), 0, 1);
}

/// Factors on a variable action while it leads and while it accompanies.
struct Factor {
    double leading = 0;
    double accompanying = 0;
};

Combination combined(Leading leading, double permanent, Factor snow, Factor wind) {
    switch (leading) {
        case Leading::snow: return {permanent, snow.leading, wind.accompanying};
        case Leading::wind: return {permanent, snow.accompanying, wind.leading};
    }
    argument::refuse({"en1990.leading.unknown", "leading action number", "-"}, static_cast<double>(leading), 0, 1);
}

/// Eq. 6.10 with the factors of a table.
Combination fundamental(Leading leading, const PartialFactors& factors, const Psi& snow, const Psi& wind) {
    check(snow, wind);
    const double q = factors.variable;
    return combined(leading, factors.permanent, {q, q * snow.combination}, {q, q * wind.combination});
}

const PartialFactors& strength_factors(SelfWeight self_weight) {
    return helps(self_weight) ? favourable_permanent_A1_3_1 : unfavourable_A1_3_1;
}

}  // namespace

Combination strength_6_10(Leading leading, SelfWeight self_weight, const Psi& snow, const Psi& wind) {
    return fundamental(leading, strength_factors(self_weight), snow, wind);
}

Combination strength_a_6_10(SelfWeight self_weight, const Psi& snow, const Psi& wind) {
    check(snow, wind);
    const PartialFactors& factors = strength_factors(self_weight);
    return {factors.permanent, factors.variable * snow.combination, factors.variable * wind.combination};
}

Combination strength_b_6_10(Leading leading, SelfWeight self_weight, const Psi& snow, const Psi& wind) {
    Combination combination = fundamental(leading, strength_factors(self_weight), snow, wind);
    if (!helps(self_weight)) combination.permanent *= reduction_A1_3_1;
    return combination;
}

Combination equilibrium_6_10(Leading leading, SelfWeight self_weight, const Psi& snow, const Psi& wind) {
    const PartialFactors& factors = helps(self_weight) ? holding_permanent_A1_3_1 : tipping_permanent_A1_3_1;
    return fundamental(leading, factors, snow, wind);
}

Combination exceptional_snow_6_11(Accompanying accompanying, const Psi& wind) {
    check_psi(wind, {"en1990.wind_psi.range", "combination factor psi of wind", "-"});
    const auto [permanent, snow] = accidental_A1_3_2;
    switch (accompanying) {
        case Accompanying::frequent: return {permanent, snow, wind.frequent};
        case Accompanying::quasi_permanent: return {permanent, snow, wind.quasi_permanent};
    }
    argument::refuse({"en1990.accompanying.unknown", "accompanying value number", "-"},
                     static_cast<double>(accompanying), 0, 1);
}

Combination characteristic_6_14(Leading leading, const Psi& snow, const Psi& wind) {
    check(snow, wind);
    return combined(leading, 1.0, {1.0, snow.combination}, {1.0, wind.combination});
}

Combination frequent_6_15(Leading leading, const Psi& snow, const Psi& wind) {
    check(snow, wind);
    return combined(leading, 1.0, {snow.frequent, snow.quasi_permanent}, {wind.frequent, wind.quasi_permanent});
}

Combination quasi_permanent_6_16(const Psi& snow, const Psi& wind) {
    check(snow, wind);
    return {1.0, snow.quasi_permanent, wind.quasi_permanent};
}

}  // namespace coverframe::en1990
