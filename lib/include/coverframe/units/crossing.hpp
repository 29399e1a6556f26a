// SPDX-License-Identifier: BSD-3-Clause
// The named crossings between quantities and plain numbers. A number leaves a quantity only through a function whose
// name says the unit, and comes in only through a literal or `in_…`'s twin `from_…`.
#pragma once

#include "coverframe/units/literals.hpp"

namespace coverframe {

#define COVERFRAME_CROSSING(name, Quantity, to_si)                                                        \
    [[nodiscard]] constexpr double in_##name(Quantity quantity) { return quantity.value() / (to_si); }    \
    [[nodiscard]] constexpr Quantity from_##name(double number) { return Quantity::from_value(number * (to_si)); }

COVERFRAME_CROSSING(m, Length, 1.0)
COVERFRAME_CROSSING(mm, Length, 1e-3)
COVERFRAME_CROSSING(ft, Length, factor::foot)
COVERFRAME_CROSSING(in, Length, factor::inch)
COVERFRAME_CROSSING(mil, Length, factor::mil)
COVERFRAME_CROSSING(m2, Area, 1.0)
COVERFRAME_CROSSING(mm2, Area, 1e-6)
COVERFRAME_CROSSING(m3, Volume, 1.0)
COVERFRAME_CROSSING(m4, SecondMoment, 1.0)
COVERFRAME_CROSSING(mm4, SecondMoment, 1e-12)
COVERFRAME_CROSSING(N, Force, 1.0)
COVERFRAME_CROSSING(kN, Force, 1e3)
COVERFRAME_CROSSING(lbf, Force, factor::pound_force)
COVERFRAME_CROSSING(N_m, Moment, 1.0)
COVERFRAME_CROSSING(kN_m, Moment, 1e3)
COVERFRAME_CROSSING(lbf_ft, Moment, factor::pound_force * factor::foot)
COVERFRAME_CROSSING(N_per_m, LineLoad, 1.0)
COVERFRAME_CROSSING(kN_per_m, LineLoad, 1e3)
COVERFRAME_CROSSING(plf, LineLoad, factor::plf)
COVERFRAME_CROSSING(Pa, Pressure, 1.0)
COVERFRAME_CROSSING(kPa, Pressure, 1e3)
COVERFRAME_CROSSING(MPa, Pressure, 1e6)
COVERFRAME_CROSSING(N_per_mm2, Pressure, 1e6)
COVERFRAME_CROSSING(psf, Pressure, factor::psf)
COVERFRAME_CROSSING(psi, Pressure, factor::psi)
COVERFRAME_CROSSING(N_per_m3, UnitWeight, 1.0)
COVERFRAME_CROSSING(kN_per_m3, UnitWeight, 1e3)
COVERFRAME_CROSSING(pcf, UnitWeight, factor::pcf)
COVERFRAME_CROSSING(rad, Angle, 1.0)
COVERFRAME_CROSSING(deg, Angle, factor::degree)
COVERFRAME_CROSSING(degC, TemperatureDifference, 1.0)

#undef COVERFRAME_CROSSING

}  // namespace coverframe
