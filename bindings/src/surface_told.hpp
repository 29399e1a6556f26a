// SPDX-License-Identifier: BSD-3-Clause
// States of a film surface as Python gets them.
#pragma once

#include <array>
#include <vector>

#include "binding.hpp"
#include "coverframe/film/surface_survey.hpp"

namespace coverframe::binding {

using Places = std::vector<std::array<double, 3>>;

/// n by 3 [m].
py::array_t<double> places_of(const Places& places);

/// t by 3.
py::array_t<int> corners_of(const TriangleMesh& mesh);

/// place, x, y, volume, weight, depth, area, where it runs over, what it reaches, outline, all in a sentence.
py::tuple pond_of(const PondFlag& pond);

/// Everything a state tells, by name.
py::dict told(const CoverSurface& surface, const SurfaceState& state);

}  // namespace coverframe::binding
