// SPDX-License-Identifier: BSD-3-Clause
// The dense work on one front of a factor (front_factor.hpp).
#pragma once

#include <cstddef>

namespace coverframe::kernel {

struct FrontPivots {
    bool positive = false;  ///< whether the front is positive definite in its own columns
    double least = 0;       ///< of its pivots
    double greatest = 0;
};

/// Cholesky factor of a front's own columns, and what they leave of the rest. Where the machine has AVX2 and fused
/// operations it uses them, in half the time, and answers differ in the last digits from those of one that has not.
/// \param columns  column-major, `height` rows and `own` columns; lower triangle
/// \param rest     square, `height - own` rows, lower triangle; what is left is added to it
[[nodiscard]] FrontPivots eliminate_front(double* columns, std::ptrdiff_t height, std::ptrdiff_t own, double* rest);

}  // namespace coverframe::kernel
