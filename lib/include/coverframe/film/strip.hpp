// SPDX-License-Identifier: BSD-3-Clause
// One strip of film between an upper and a lower support: a cable on an inclined chord.
//
// The strip hangs in the vertical plane through its two ends. L is the level distance of the ends, h the height of the
// lower end over the upper one (usually negative), W the whole vertical load (down positive), spread evenly over L;
// EA its stiffness (modulus times thickness times width) and L0 its free length. With s from 0 (upper) to 1 (lower) and
// H the level part of the tension, which is the same all along:
//   equilibrium     z'(s) = Z(s) = h + (W L/H)(s - 1/2)                     (a parabola; vertical force H Z/L)
//   tension         T(s) = H rho/L,  rho = sqrt(L^2 + Z^2)
//   compatibility   integral from 0 to 1 of rho/(1 + T/EA) ds = L0
// The last equation has one positive root H for W != 0; it is found by Newton on log H inside a bracket, the integral
// by 20-point Gauss-Legendre quadrature. Both ends then pull on their supports; on the upper one with
//   level           H towards the lower end
//   vertical        H h/L - W/2      (a steep, tight strip pulls the ridge down with far more than half its load)
// Sag under the chord at the middle: f = W L/(8 H). Shallow limit: H^3 - T0 H^2 - EA W^2/24 = 0 for h = 0.
//
// Simplifications: no bending stiffness; load does not shift along the strip as it sags; no friction on the ridge (the
// two sides are separate strips held at the ridge line); the lower end is held at the rail line and turns freely.
// A strip without load is straight, and slack when its ends are closer than its free length.
//
// Sources: Irvine, Cable Structures (1981), parabolic cable on an inclined chord, from memory; the compatibility
// equation is derived here. Verified by validation cases CB-21 to CB-24 and MB-04, and by the independent net model.
#pragma once

#include <array>

namespace coverframe {

/// SI numbers, no quantities: a kernel type.
struct Strip {
    double stiffness = 0;    ///< EA [N]
    double free_length = 0;  ///< L0 [m]
    double load = 0;         ///< W, whole vertical load, down positive [N]
};

struct StripState {
    double level_force = 0;     ///< H [N]
    double tension_upper = 0;   ///< at the upper end [N]
    double tension_lower = 0;   ///< at the lower end [N]
    std::array<double, 3> pull_upper{};  ///< force of the strip on its upper support [N]
    std::array<double, 3> pull_lower{};  ///< force of the strip on its lower support [N]
    std::array<double, 9> stiffness{};   ///< -d pull_upper/d upper end, made symmetric, row after row [N/m]
    double span = 0;            ///< L [m]
    double rise = 0;            ///< h, lower end minus upper end [m]
    double sag = 0;             ///< under the chord at the middle [m]
    bool slack = false;

    /// Height at the fraction s of the level span, over the upper end [m].
    [[nodiscard]] double height(double s) const { return rise * s - 4.0 * sag * s * (1.0 - s); }
    /// Slope dz/dx at the fraction s, positive upwards towards the lower end [-].
    [[nodiscard]] double slope(double s) const { return (rise - 4.0 * sag * (1.0 - 2.0 * s)) / span; }
};

/// The state of a strip with its ends at given places.
/// \throws InputError "film.strip" if the ends are not apart in plan, or a number is not finite or not positive
[[nodiscard]] StripState strip_state(const Strip& strip, const std::array<double, 3>& upper,
                                     const std::array<double, 3>& lower);

/// Free length with which an unloaded strip between these ends has this tension [m].
[[nodiscard]] double free_length_for_tension(double stiffness, double tension, const std::array<double, 3>& upper,
                                             const std::array<double, 3>& lower);

/// Level span at which a strip a metre wide, without slope, is pulled to `limit` by a plan load: beyond it the film is
/// overloaded. A load per area says nothing about film without its span.
/// \param stiffness  E t/(1 - nu^2) [N/m]   \param pretension, limit  along the strip, 0 <= pretension < limit [N/m]
/// \param load       [Pa]
/// \throws InputError "film.strip" for numbers outside these
[[nodiscard]] double span_at_limit(double stiffness, double pretension, double limit, double load);

/// Water a strip would hold behind its lower edge, per metre of its width.
struct Hollow {
    double from = 0;    ///< level distance from the upper end where the hollow begins [m]
    double to = 0;      ///< where it ends [m]
    double deepest = 0; ///< level distance of the lowest point from the upper end [m]
    double depth = 0;   ///< [m]
    double area = 0;    ///< cross-section of the water [m2]
};

/// The hollow of a strip, filled to the brim; all zero if it drains.
[[nodiscard]] Hollow hollow_of(const StripState& state);

}  // namespace coverframe
