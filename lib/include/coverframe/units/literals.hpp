// SPDX-License-Identifier: BSD-3-Clause
// Literals for quantities: 1.68_m, 30.0_psf, 7.0_mil. Bring them in with `using namespace coverframe::literals;`.
//
// Factors (exact by definition unless said): 1 ft = 0.3048 m; 1 in = 0.0254 m; 1 mil = 0.001 in;
// 1 lbf = 4.4482216152605 N (0.45359237 kg times 9.80665 m/s2). Source: NIST SP 811 (2008), appendix B; from memory.
#pragma once

#include "coverframe/units/quantities.hpp"

namespace coverframe {

namespace factor {
inline constexpr double foot = 0.3048;                        ///< m
inline constexpr double inch = 0.0254;                        ///< m
inline constexpr double mil = 0.0000254;                      ///< m
inline constexpr double pound_force = 4.4482216152605;        ///< N
inline constexpr double degree = 0.017453292519943295769;     ///< rad
inline constexpr double psf = pound_force / (foot * foot);    ///< Pa
inline constexpr double psi = pound_force / (inch * inch);    ///< Pa
inline constexpr double plf = pound_force / foot;             ///< N/m
inline constexpr double pcf = psf / foot;                     ///< N/m3
}  // namespace factor

namespace literals {

#define COVERFRAME_LITERAL(suffix, Quantity, to_si)                                  \
    constexpr Quantity operator""_##suffix(long double value) {                      \
        return Quantity::from_value(static_cast<double>(value) * (to_si));           \
    }                                                                                \
    constexpr Quantity operator""_##suffix(unsigned long long value) {               \
        return Quantity::from_value(static_cast<double>(value) * (to_si));           \
    }

COVERFRAME_LITERAL(m, Length, 1.0)
COVERFRAME_LITERAL(mm, Length, 1e-3)
COVERFRAME_LITERAL(ft, Length, factor::foot)
COVERFRAME_LITERAL(in, Length, factor::inch)
COVERFRAME_LITERAL(mil, Length, factor::mil)
COVERFRAME_LITERAL(m2, Area, 1.0)
COVERFRAME_LITERAL(mm2, Area, 1e-6)
COVERFRAME_LITERAL(N, Force, 1.0)
COVERFRAME_LITERAL(kN, Force, 1e3)
COVERFRAME_LITERAL(lbf, Force, factor::pound_force)
COVERFRAME_LITERAL(N_m, Moment, 1.0)
COVERFRAME_LITERAL(kN_m, Moment, 1e3)
COVERFRAME_LITERAL(N_per_m, LineLoad, 1.0)
COVERFRAME_LITERAL(kN_per_m, LineLoad, 1e3)
COVERFRAME_LITERAL(plf, LineLoad, factor::plf)
COVERFRAME_LITERAL(Pa, Pressure, 1.0)
COVERFRAME_LITERAL(kPa, Pressure, 1e3)
COVERFRAME_LITERAL(MPa, Pressure, 1e6)
COVERFRAME_LITERAL(GPa, Pressure, 1e9)
COVERFRAME_LITERAL(N_per_mm2, Pressure, 1e6)
COVERFRAME_LITERAL(psf, Pressure, factor::psf)
COVERFRAME_LITERAL(psi, Pressure, factor::psi)
COVERFRAME_LITERAL(kN_per_m3, UnitWeight, 1e3)
COVERFRAME_LITERAL(pcf, UnitWeight, factor::pcf)
COVERFRAME_LITERAL(rad, Angle, 1.0)
COVERFRAME_LITERAL(deg, Angle, factor::degree)
COVERFRAME_LITERAL(degC, TemperatureDifference, 1.0)

#undef COVERFRAME_LITERAL

}  // namespace literals
}  // namespace coverframe
