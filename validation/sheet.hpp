// SPDX-License-Identifier: BSD-3-Clause
// Pieces of film that several models start from.
#pragma once

#include "coverframe/film/membrane.hpp"

namespace coverframe::validation {

/// A rectangle at z = 0 cut into nx by ny cells of four triangles each; the four of a cell follow one another.
[[nodiscard]] TriangleMesh rectangle(double length, double width, int nx, int ny);

/// \throws CaseError unless it is in equilibrium
const MembraneState& usable(const MembraneState& state);

}  // namespace coverframe::validation
