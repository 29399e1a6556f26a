// SPDX-License-Identifier: BSD-3-Clause
// EN 1990:2002: partial factors, combination factors of snow and wind, and combinations of self-weight, snow and wind.
// All of them may be set otherwise by a National Annex; the values here are the recommended ones.
//
// A combination is three factors, to be put on the characteristic loads before they are brought onto the cover: snow
// acts straight down and wind at right angles to the film, so the loads themselves cannot be added here. A variable
// action that helps is left out, whatever its factor says.
//
// How it was read: psi of snow on a page; 1.35 and 1.5 on a page; the rest from memory, sure.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::en1990 {

inline const Clause clause_6_4_3_2{"EN 1990:2002", "6.4.3.2"};
inline const Clause clause_6_4_3_3{"EN 1990:2002", "6.4.3.3"};
inline const Clause clause_6_5_3{"EN 1990:2002", "6.5.3"};
inline const Clause clause_A1_2_2{"EN 1990:2002", "A1.2.2"};
inline const Clause clause_A1_3_1{"EN 1990:2002", "A1.3.1"};

/// Factors on actions in one combination.
struct PartialFactors {
    double permanent = 0;  ///< gamma_G on self-weight [-]
    double variable = 0;   ///< gamma_Q on the leading variable action [-]
};

/// Self-weight and snow both make it worse: 1.35 G + 1.5 Q.
/// Limits: strength of members (STR), persistent and transient situations, Eq. 6.10.
/// Source: EN 1990:2002, Table A1.2(B), recommended; the 1.5 read on a page (University of Siegen lecture script),
/// the 1.35 read on a page (eurocode.us, Structural timber design, with UK values), the table from memory, sure.
inline constexpr PartialFactors unfavourable_A1_3_1{1.35, 1.5};

/// Self-weight helps, snow makes it worse: 1.0 G + 1.5 Q.   Source: as above, from memory, sure.
inline constexpr PartialFactors favourable_permanent_A1_3_1{1.0, 1.5};

/// Loss of balance (EQU), self-weight tips it over: 1.1 G + 1.5 Q.
/// Source: EN 1990:2002, Table A1.2(A), recommended; from memory, sure.
inline constexpr PartialFactors tipping_permanent_A1_3_1{1.1, 1.5};

/// Loss of balance (EQU), self-weight holds it down: 0.9 G + 1.5 Q.   Source: as above.
inline constexpr PartialFactors holding_permanent_A1_3_1{0.9, 1.5};

/// Accidental situations, such as an exceptional snowfall: 1.0 on all.
/// Source: EN 1990:2002, A1.3.2, Table A1.3; from memory, sure.
inline constexpr PartialFactors accidental_A1_3_2{1.0, 1.0};

/// Reduction of unfavourable self-weight in Eq. 6.10b: xi = 0.85.
/// Source: EN 1990:2002, Table A1.2(B), note, recommended; from memory, sure.
inline constexpr double reduction_A1_3_1 = 0.85;

/// Where the yard lies, as Table A1.1 divides snow.
enum class CountryGroup {
    nordic,  ///< Finland, Iceland, Norway, Sweden
    other,   ///< the other members
};

[[nodiscard]] constexpr std::array<const char*, 2> choices_of(CountryGroup) { return {"nordic", "other"}; }

/// Factors that turn a characteristic load into what accompanies another action, occurs often, or lasts.
struct Psi {
    double combination = 0;      ///< psi_0 [-]
    double frequent = 0;         ///< psi_1 [-]
    double quasi_permanent = 0;  ///< psi_2 [-]
};

/// Combination factors of wind.   Source: EN 1990:2002, Table A1.1; from memory, sure.
inline constexpr Psi wind_psi_A1_2_2{0.6, 0.2, 0.0};

/// Combination factors of snow on buildings.
/// psi_0, psi_1, psi_2 = 0.7, 0.5, 0.2 (Nordic, or above 1000 m); 0.5, 0.2, 0 (other, up to 1000 m)
/// \param altitude  of the yard above sea level [m], -500 to 1500 m
/// \return the three factors [-]
/// Limits: recommended values. Finland's annex has psi_1 = 0.4 for s_k under 2.75 kN/m2 (read on a page: National
/// Annex to SFS-EN 1990). The altitude ends where EN 1991-1-3 does.
/// Source: EN 1990:2002, A1.2.2, Table A1.1; read on a page (scribd document 627038731).
/// \throws InputError en1990.altitude.range, en1990.country.unknown
[[nodiscard]] constexpr Psi snow_psi_A1_2_2(CountryGroup group, Length altitude) {
    if (group != CountryGroup::nordic && group != CountryGroup::other) {
        argument::refuse({"en1990.country.unknown", "country group number", "-"}, static_cast<double>(group), 0, 1);
    }
    argument::within(in_m(altitude), -500.0, 1500.0, {"en1990.altitude.range", "altitude", "m"});
    if (group == CountryGroup::nordic || in_m(altitude) > 1000.0) return {0.7, 0.5, 0.2};
    return {0.5, 0.2, 0.0};
}

/// The variable action that counts in full; the other accompanies it.
enum class Leading { snow, wind };

[[nodiscard]] constexpr std::array<const char*, 2> choices_of(Leading) { return {"snow", "wind"}; }

/// What self-weight does to the effect that is looked at.
enum class SelfWeight { worsens, helps };

[[nodiscard]] constexpr std::array<const char*, 2> choices_of(SelfWeight) { return {"worsens", "helps"}; }

/// Factors on the characteristic loads in one combination.
struct Combination {
    double permanent = 0;  ///< on self-weight G_k [-]
    double snow = 0;       ///< on snow, s_k or the accidental s_Ad [-]
    double wind = 0;       ///< on wind W_k [-]
};

/// Strength of members, persistent and transient situations.
/// gamma_G G + 1.5 Q_lead + 1.5 psi_0 Q_other, gamma_G = 1.35 (self-weight worsens) or 1.0 (helps)
/// \param snow  psi of snow, from `snow_psi_A1_2_2` or a National Annex, each 0 to 1
/// Limits: recommended. Look at both leading actions and, where it is not plain which is worse, at both self-weights.
/// Source: EN 1990:2002, 6.4.3.2, Eq. 6.10, Table A1.2(B); from memory, sure, the factors as above.
/// \throws InputError en1990.leading.unknown, en1990.self_weight.unknown, en1990.snow_psi.range, en1990.wind_psi.range
[[nodiscard]] Combination strength_6_10(Leading leading, SelfWeight self_weight, const Psi& snow,
                                        const Psi& wind = wind_psi_A1_2_2);

/// Strength of members, the first of the two that may replace Eq. 6.10; the worse of both counts.
/// gamma_G G + 1.5 psi_0 S + 1.5 psi_0 W
/// Limits: where the National Annex allows it; for a cover, whose self-weight is next to nothing, 6.10b governs.
/// Source and codes: as `strength_6_10`, Eq. 6.10a.
[[nodiscard]] Combination strength_a_6_10(SelfWeight self_weight, const Psi& snow, const Psi& wind = wind_psi_A1_2_2);

/// Strength of members, the second of the two that may replace Eq. 6.10; the worse of both counts.
/// xi gamma_G G + 1.5 Q_lead + 1.5 psi_0 Q_other, xi gamma_G = 0.85 x 1.35 (self-weight worsens) or 1.0 (helps)
/// Limits: where the National Annex allows it.
/// Source and codes: as `strength_6_10`, Eq. 6.10b.
[[nodiscard]] Combination strength_b_6_10(Leading leading, SelfWeight self_weight, const Psi& snow,
                                          const Psi& wind = wind_psi_A1_2_2);

/// Balance of the whole: tipping and lifting off.
/// gamma_G G + 1.5 Q_lead + 1.5 psi_0 Q_other, gamma_G = 1.1 (self-weight worsens) or 0.9 (helps)
/// Source and codes: as `strength_6_10`, Table A1.2(A).
[[nodiscard]] Combination equilibrium_6_10(Leading leading, SelfWeight self_weight, const Psi& snow,
                                           const Psi& wind = wind_psi_A1_2_2);

/// What accompanies an accidental action: the National Annex says which.
enum class Accompanying { frequent, quasi_permanent };

[[nodiscard]] constexpr std::array<const char*, 2> choices_of(Accompanying) { return {"frequent", "quasi permanent"}; }

/// Exceptional snow, an accidental situation.
/// G + s_Ad + psi_1 W or psi_2 W
/// \param accompanying  psi_1 is the safer
/// \return `snow` is the factor on the exceptional load s_Ad; the ordinary snow does not act beside it
/// Source: EN 1990:2002, 6.4.3.3, Eq. 6.11b, Table A1.3; from memory, sure.
/// \throws InputError en1990.accompanying.unknown, en1990.wind_psi.range
[[nodiscard]] Combination exceptional_snow_6_11(Accompanying accompanying, const Psi& wind = wind_psi_A1_2_2);

/// Serviceability, what must not happen once: G + Q_lead + psi_0 Q_other.
/// Source: EN 1990:2002, 6.5.3, Eq. 6.14b; from memory, sure.   \throws as `strength_6_10`
[[nodiscard]] Combination characteristic_6_14(Leading leading, const Psi& snow, const Psi& wind = wind_psi_A1_2_2);

/// Serviceability, what must not happen often: G + psi_1 Q_lead + psi_2 Q_other.
/// Source: EN 1990:2002, 6.5.3, Eq. 6.15b; from memory, sure.   \throws as `strength_6_10`
[[nodiscard]] Combination frequent_6_15(Leading leading, const Psi& snow, const Psi& wind = wind_psi_A1_2_2);

/// Serviceability, what lasts: G + psi_2 S + psi_2 W.
/// Limits: psi_2 = 0 of snow, up to 1000 m, leaves it out altogether, while a cover that nobody clears carries it for
/// months.
/// Source: EN 1990:2002, 6.5.3, Eq. 6.16b; from memory, sure.   \throws as `strength_6_10`
[[nodiscard]] Combination quasi_permanent_6_16(const Psi& snow, const Psi& wind = wind_psi_A1_2_2);

}  // namespace coverframe::en1990
