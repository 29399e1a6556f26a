// SPDX-License-Identifier: BSD-3-Clause
// The United Kingdom's National Annex to EN 1991-1-3:2003, snow on roofs: which situations are looked at, and the
// drifted arrangement of a duopitch roof, which loads one slope alone.
#pragma once

#include <algorithm>

#include "coverframe/actions/en1991_1_3.hpp"

namespace coverframe::na_uk {

inline const Clause clause_NA_2_2{"NA to BS EN 1991-1-3:2003", "NA.2.2"};
inline const Clause clause_NA_2_18{"NA to BS EN 1991-1-3:2003", "NA.2.18"};

/// Case of Annex A for the whole country: B2, exceptional drifts by Annex B and no exceptional falls.
/// Source: NA to BS EN 1991-1-3:2003, NA.2.2 and NA.2.3; read on a page (New Steel Construction, AD 484).
inline constexpr en1991_1_3::ExceptionalSnow exceptional_NA_2_2 = en1991_1_3::ExceptionalSnow::drifts;

/// Shape coefficient of the loaded slope of a duopitch roof, drifted; the other slope is empty. Each slope is to be
/// looked at as the loaded one.
/// mu = 0.8 up to 15 deg, 0.8 + 0.4 (pitch - 15)/15 to 30 deg, 1.2 (60 - pitch)/30 to 60 deg, 0 from there; at least
/// 0.8 where sliding is prevented
/// \param pitch  of the loaded slope [rad], 0 to pi/2
/// \return mu [-], 0 to 1.2
/// Limits: takes the place of cases (ii) and (iii) of 5.3.3; the undrifted case (i) stays.
/// Source: NA to BS EN 1991-1-3:2003, NA.2.18 and Figure NA.3; that all snow of one slope is gone read on a page (New
/// Steel Construction, AD 484), 1.2 at 30 deg read on a page that goes by the predecessor BS 6399-3
/// (kingspanpanels.com, basic snow loads), the line from memory, moderately sure, the floor where sliding is prevented
/// taken over from
/// 5.3.3(2).
/// \throws InputError na_uk.pitch.range
[[nodiscard]] constexpr double duopitch_drifted_NA_2_18(Angle pitch, en1991_1_3::Sliding sliding) {
    const double deg = argument::slope_in_deg(pitch, "na_uk.pitch.range");
    const double rising = 0.8 + 0.4 * std::clamp((deg - 15.0) / 15.0, 0.0, 1.0);
    const double mu = rising * std::clamp((60.0 - deg) / 30.0, 0.0, 1.0);
    return sliding == en1991_1_3::Sliding::prevented ? std::max(mu, 0.8) : mu;
}

}  // namespace coverframe::na_uk
