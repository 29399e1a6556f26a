// SPDX-License-Identifier: BSD-3-Clause
// Drawings of a cover as SVG text: side view, plan, section. Drawn shape thin and dashed, loaded shape thick; to scale,
// numbers in the plan's units. Each is an `svg` element that stands alone as a file or inside a page.
#pragma once

#include <string>

#include "coverframe/assess/assess.hpp"
#include "coverframe/film/surface.hpp"

namespace coverframe {

struct DrawingOptions {
    double width = 720;  ///< of the picture [CSS px]
};

/// Boat and support from port, bow to the left.
[[nodiscard]] std::string side_view(const Assessment& assessment, const DrawingOptions& options = {});

/// From above, bow to the left, starboard at the top, with hollows that would hold water.
[[nodiscard]] std::string plan_view(const Assessment& assessment, const DrawingOptions& options = {});

/// Across the boat, seen from astern, where the film comes closest to an obstacle, or sags most if there is none.
[[nodiscard]] std::string section_view(const Assessment& assessment, const DrawingOptions& options = {});

/// From above, with the film as a surface: contours of height, ponds with their litres, and what the film rests on.
/// \param state  of `surface`, a cover of `plan`
/// \throws StateError film.surface.unusable
[[nodiscard]] std::string surface_view(const Plan& plan, const CoverSurface& surface, const SurfaceState& state,
                                       const DrawingOptions& options = {});

}  // namespace coverframe
