// SPDX-License-Identifier: BSD-3-Clause
// One strap or rope that carries a load between its ends: the elastic catenary. Plain SI doubles: m, N. Axes: any.
//
// The strap of free length L0 and stiffness EA carries the constant force q per free length, in any direction that
// stays, and can be pulled only. s runs over the free length from `from`, r(s) is the place, r(0) = 0, r(L0) = c the
// chord. The force T(s) that one part puts on the other falls evenly and points along the strap:
//
//     T(s) = M - q (s - L0/2),   r' = T/|T| + T/EA,   M the force at the middle
//
// Energy. The load gives its ends a half each, -q L0.(x_from + x_to)/2, and what is left depends on the chord alone:
//
//     P(c) = max over M of  M.c - integral of (|T| + T^2/(2 EA)) ds
//
// P is convex, with the gradient M and the Hessian F^-1, F the integral of (I - t t^T)/|T| + I/EA with t = T/|T|. With
// q = 0 it is EA/(2 L0) <|c| - L0>^2, the strap that pulls only; it goes there without a step as q does.
//
// Closed form. w = |q| L0, e = q/|q|; a and h are the parts of M along e and across it, towards the chord; c_e and c_h
// those of the chord. T1, T2 are the tensions at the ends, N = T1 + T2, y = w/N, A = artanh(y)/y:
//
//     c_e = L0 a (2/N + 1/EA),   c_h = L0 h (2 A/N + 1/EA),   h^2/(1 - y^2) + a^2 = N^2/4
//
// and with y = tanh x, f = w/(2 EA) one equation in one unknown is left, whose left side rises from 0 without end:
//
//     (c_h/L0)^2 (sinh x/(x + f))^2 + (c_e/L0)^2 (tanh x/(tanh x + f))^2 = 1
//
// It has one root, which Newton's method finds between bounds that close in on it. Flexibility with k = 2/N,
// X = (N^2/4 - a^2)/(T1 T2), Y = a^2 (1 - y^2)/(T1 T2), X + Y = 1, B = A - 1, over L0:
//
//     F_ee = k X + 1/EA,   F_hh = k (B + Y) + 1/EA,   F_eh = -k a h/(T1 T2),   across both: k A + 1/EA
//     P = L0 [(M^2 - w^2/12)/(2 EA) - (N/4 - a^2/N) (1 - (1 - y^2) A)]
//
// Where the load runs along the chord (h = 0) the strap is straight, T(s) keeping one sign, or hangs doubled beside
// itself: it then holds nothing across, and the least tension is 0.
//
// Shallow limit. With S the pull along the chord, taken as constant, and the load square to the chord as a parabola:
//
//     S^3 - EA (|c|/L0 - 1) S^2 - EA w_n^2/24 = 0,   w_n = w c_h/|c|,   sag = w_n |c|/(8 S)
//
// `parabola` gives it, for comparison. Measured for a level chord, EA/w from 10 to 1e6: with r the sag over the chord,
// its pull is too high by 0 to 3.6 r^2 (most where the strap hardly stretches: 0.14 % at r = 0.02, 3.6 % at 0.1), its
// sag off by -2.3 r^2 to 1.3 r^2.
//
// Limits. The strap does not bend or push. The load is per free length and does not turn with the strap: weight, and
// what lies on it; not wind square to it. A strain of the strap does not change its load.
//
// Sources: Irvine, Cable Structures (1981), elastic catenary and parabola, from memory; Irvine and Sinclair (1976),
// from memory. The energy, the single equation and the flexibility were worked out here, and are tested against
// differences, against numbers of an integration of r' and against published catenaries.
#pragma once

#include <Eigen/Core>

namespace coverframe::kernel {

/// A strap as it hangs between its ends.
struct Catenary {
    double energy = 0;        ///< P [N m]
    Eigen::Vector3d middle;   ///< M: gradient of the energy along the chord; the pull on `from` is M + q L0/2, on `to`
                              ///< it is q L0/2 - M [N]
    Eigen::Matrix3d tangent;  ///< its Hessian [N/m]
    double turning = 0;  ///< stiffness against turning about the direction of the load, which is all from force and
                         ///< none from stretch: the tangent less this times (I - n n^T), n along the chord, has no
                         ///< negative eigenvalue [N/m]
    double tension_from = 0;  ///< T1 [N]
    double tension_to = 0;    ///< T2 [N]
    double least = 0;         ///< least tension along it [N]
    double sag = 0;           ///< greatest distance from the line between its ends, square to it; with both ends in one
                              ///< place how far it hangs from there [m]
};

/// \param chord    from one end to the other [m]
/// \param stretch  |chord| - L0, which the caller may know better than by taking that difference [m]
/// \param EA,L0    over 0 [N], [m]
/// \param q        force per free length [N/m]; may be 0
/// \throws StateError frame.strap.shape if a number is not finite, or so large that the answer would not be
[[nodiscard]] Catenary catenary(const Eigen::Vector3d& chord, double stretch, double EA, double L0,
                                const Eigen::Vector3d& q);

/// Shallow limit of the above.
struct Parabola {
    double pull = 0;  ///< S [N]
    double sag = 0;   ///< square to the chord [m]
};
[[nodiscard]] Parabola parabola(const Eigen::Vector3d& chord, double EA, double L0, const Eigen::Vector3d& q);

}  // namespace coverframe::kernel
