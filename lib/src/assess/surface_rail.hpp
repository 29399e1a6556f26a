// SPDX-License-Identifier: BSD-3-Clause
// What film as a surface pulls at the rail with, as the check of the band wants it (checks/band_pulls.hpp).
#pragma once

#include "checks/band_pulls.hpp"
#include "coverframe/film/surface.hpp"

namespace coverframe::assess_detail {

/// The rail in pieces of even length, about 0.3 m each, none of them round a corner: forces of the film on the rail's
/// nodes, each spread over its length of rail, added up over each piece. Nothing is lost. Film held along an edge
/// without a fan does not pull on the band.
[[nodiscard]] checks_detail::RailPulls rail_pulls(const CoverSurface& surface, const SurfaceState& state);

/// The pieces that film closing bow and stern pulls on taken away.
[[nodiscard]] checks_detail::RailPulls between_ends(const CoverSurface& surface, checks_detail::RailPulls pulls);

/// Strips in one situation, and what a surface pulls more.
struct MorePull {
    const checks_detail::RailPulls& strips;  ///< under the snow of the surface, as it is
    const checks_detail::RailPulls& judged;  ///< in the situation
    double factor = 1;                       ///< of the situation on snow
    double tighter = 0;                      ///< how much more the film was shrunk to in the situation [N/m]
};

/// What the surface would pull in the situation: on each piece that of the strips there, and the factor times what the
/// surface pulls more under the snow as it is, but no less than it pulls then. Where there are no strips, the factor
/// times all of it, and what the film was shrunk tighter. The direction is that of the surface.
[[nodiscard]] checks_detail::RailPulls on_top(checks_detail::RailPulls surface, const MorePull& of);

}  // namespace coverframe::assess_detail
