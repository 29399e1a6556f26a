// SPDX-License-Identifier: BSD-3-Clause
// A strip of film (film/strip.hpp, where symbols and equations are told) near a level force that is known already.
//
// The integral of the compatibility equation. Along t from -1 to 1 its integrand has no singularity closer than t = 2
// L/b off the real axis, b = W L/H the bow of Z, so n-point Gauss-Legendre quadrature errs by a share of no more than
// r^(-2n), r = 2 L/b + sqrt((2 L/b)^2 + 1). The points are as many as bring that under 1e-15: 8 up to b = 0.4 L, 12 to
// b = 0.8 L, else 20. Four points are worked on together, the sums made in one order on every machine.
#pragma once

#include "coverframe/film/strip.hpp"

namespace coverframe::kernel {

/// Free length that a strip with level force H fits between its ends, and its derivatives by H, L and h.
struct FittingLength {
    double value = 0;
    double by_H = 0;
    double by_L = 0;
    double by_h = 0;
};
[[nodiscard]] FittingLength fitting_length(double H, double L, double h, double W, double EA);

/// The state of a strip, and how far it is from settled.
struct HangingState {
    StripState strip;
    double change = 0;  ///< relative change of H by the last Newton step [-]
};

/// As strip_state(), from Newton steps on log H that end with the first one under `tolerance`. The forces are those
/// after that step, so the error left is about the square of it; the stiffness is that before it.
/// \param start  level force to begin with [N]; 0: none is known
[[nodiscard]] HangingState hanging_near(const Strip& strip, const std::array<double, 3>& upper,
                                        const std::array<double, 3>& lower, double start, double tolerance);

}  // namespace coverframe::kernel
