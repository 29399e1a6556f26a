// SPDX-License-Identifier: BSD-3-Clause
// The timber grades a plan can name, with their reference strengths.
#pragma once

#include <span>
#include <string_view>

#include "coverframe/plan/basis.hpp"
#include "coverframe/units/quantities.hpp"

namespace coverframe {

/// Reference design values (NDS) or characteristic values (EN 338) of one grade, before any factor.
struct TimberGrade {
    std::string_view name;          ///< as written in a plan: "Spruce-Pine-Fir No.1/No.2", "C24"
    TimberDocument document{};      ///< the design document the values belong to
    Pressure bending{};             ///< F_b or f_m,k
    Pressure tension{};             ///< F_t or f_t,0,k
    Pressure shear{};               ///< F_v or f_v,k
    Pressure compression{};         ///< F_c or f_c,0,k
    Pressure compression_across{};  ///< F_c,perp or f_c,90,k
    Pressure modulus{};             ///< E or E_0,mean
    Pressure modulus_low{};         ///< E_min or E_0,05
    Pressure shear_modulus{};       ///< E/16 (NDS) or G_mean
    UnitWeight unit_weight{};       ///< mean, air dry
    std::string_view source;
};

/// Every grade known to the library.
[[nodiscard]] std::span<const TimberGrade> timber_grades();

/// The grade of that name, or nullptr.
[[nodiscard]] const TimberGrade* find_timber_grade(std::string_view name);

}  // namespace coverframe
