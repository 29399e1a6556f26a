// SPDX-License-Identifier: BSD-3-Clause
// What time and temperature make of film: its modulus under a load that stays, and the tension left in it.
//
//   modulus after t      E(t) = E_1 (t/t_1)^-n         power law, used as if elastic
//   tension left         T(t) = T_1 (t/t_1)^-n         relaxation by the same law
//   tension after a change of temperature, ends held   T = T_1 - E t_film alpha (Delta temperature), not under 0
//
// n is a property of the film. About 0.1 is where one may start (from memory, uncertain); secant moduli after days are
// 0.4 to 0.6 of the value after a minute (from memory, uncertain), which n = 0.1 gives. Put in measured values. alpha:
// 1e-4 to 2.2e-4 per kelvin for low-density polyethylene (read on material pages).
//
// Limits: small strains, linear viscoelastic film (stress under a third of yield or so); one load at a time. What is
// left of the stretch after each snow lengthens the film for the next: `stretch_left`.
#pragma once

#include "coverframe/frame/layout.hpp"
#include "coverframe/plan/film.hpp"
#include "coverframe/units/quantities.hpp"

namespace coverframe {

/// The modulus that goes with a tension: of film at its low tension, which has relaxed under snow that lies, the creep
/// modulus if the plan gives one; of film at its high tension the modulus.
[[nodiscard]] Pressure film_modulus(const Film& film, Bound tension);

/// \param modulus  E_1, after `known_after` under load, over 0 [Pa]
/// \param exponent n, 0 to 0.5 [-]
/// \param known_after, after  over 0, same unit
/// \throws InputError film.ageing.range
[[nodiscard]] double modulus_after(double modulus, double exponent, double known_after, double after);

/// \param tension  T_1, not negative [N/m]; the rest as modulus_after
/// \throws InputError film.ageing.range
[[nodiscard]] double tension_after(double tension, double exponent, double known_after, double after);

/// Tension in film held at both ends after its temperature has changed.
/// \param tension    before, not negative [N/m]
/// \param stiffness  E t at the new temperature; of a wide strip E t/(1 - nu) [N/m]
/// \param expansion  alpha, 0 to 1e-3 [1/K]
/// \param warmer     change of temperature, negative when it gets colder, -100 to 100 [K]
/// \throws InputError film.ageing.range
[[nodiscard]] double tension_warmed(double tension, double stiffness, double expansion, double warmer);

/// Share by which film stays longer after carrying `tension` for a time: what creep added to the elastic stretch.
/// \param stiffness  E t after `known_after` [N/m]; the rest as modulus_after
/// \throws InputError film.ageing.range
[[nodiscard]] double stretch_left(double tension, double stiffness, double exponent, double known_after, double after);

}  // namespace coverframe
