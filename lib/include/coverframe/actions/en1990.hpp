// SPDX-License-Identifier: BSD-3-Clause
// EN 1990:2002: partial factors on actions and the combination factors of snow. All of them may be set otherwise by a
// National Annex; the values here are the recommended ones.
#pragma once

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::en1990 {

inline const Clause clause_6_4_3_2{"EN 1990:2002", "6.4.3.2"};
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

/// Accidental situations, such as an exceptional snowfall: 1.0 on all.
/// Source: EN 1990:2002, A1.3.2, Table A1.3; from memory, sure.
inline constexpr PartialFactors accidental_A1_3_2{1.0, 1.0};

/// Where the yard lies, as Table A1.1 divides snow.
enum class CountryGroup {
    nordic,  ///< Finland, Iceland, Norway, Sweden
    other,   ///< the other members
};

/// Factors that turn the characteristic snow load into what accompanies another action.
struct Psi {
    double combination = 0;      ///< psi_0 [-]
    double frequent = 0;         ///< psi_1 [-]
    double quasi_permanent = 0;  ///< psi_2 [-]
};

/// Combination factors of snow on buildings.
/// psi_0, psi_1, psi_2 = 0.7, 0.5, 0.2 (Nordic, or above 1000 m); 0.5, 0.2, 0 (other, up to 1000 m)
/// \param altitude  of the yard above sea level [m], -500 to 1500 m
/// \return the three factors [-]
/// Limits: recommended values. Finland's annex has psi_1 = 0.4 for s_k under 2.75 kN/m2 (read on a page: National
/// Annex to SFS-EN 1990). The altitude ends where EN 1991-1-3 does.
/// Source: EN 1990:2002, A1.2.2, Table A1.1; read on a page (scribd document 627038731).
/// \throws InputError en1990.altitude.range
[[nodiscard]] constexpr Psi snow_psi_A1_2_2(CountryGroup group, Length altitude) {
    argument::within(in_m(altitude), -500.0, 1500.0, {"en1990.altitude.range", "altitude", "m"});
    if (group == CountryGroup::nordic || in_m(altitude) > 1000.0) return {0.7, 0.5, 0.2};
    return {0.5, 0.2, 0.0};
}

}  // namespace coverframe::en1990
