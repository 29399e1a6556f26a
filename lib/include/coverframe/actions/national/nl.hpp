// SPDX-License-Identifier: BSD-3-Clause
// Netherlands: National Annex to NEN-EN 1991-1-3, ground snow load.
//
// How it was read: on a page (beratung.bauforumstahl.de, column 197 on snow), with six numbers worked from it; the
// number of the clause from memory. Edition as read, not stated there.
#pragma once

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::na_nl {

inline const Clause clause_4_1{"NEN-EN 1991-1-3/NB, edition as read", "4.1(1)"};

/// Characteristic ground snow load.
/// s_k = 0.7 kN/m2 everywhere
/// \return s_k [Pa]
/// Source: National Annex to NEN-EN 1991-1-3, to 4.1(1); see the head of this file.
[[nodiscard]] constexpr Pressure ground_load_4_1() { return from_kPa(0.7); }

}  // namespace coverframe::na_nl
