// SPDX-License-Identifier: BSD-3-Clause
// The pull of film as a surface, read so that it does not grow with the mesh (assess/surface.hpp).
#pragma once

#include <vector>

#include "coverframe/film/surface.hpp"

namespace coverframe::assess_detail {

class FilmPull {
public:
    FilmPull(const CoverSurface& surface, const SurfaceState& state);

    /// Greatest mean over a disc whose middle lies between these x; 0 where there is no film [N/m].
    [[nodiscard]] double greatest(double from, double to) const;

private:
    struct Piece {
        double x = 0;  ///< of its middle [m]
        double y = 0;
        double area = 0;  ///< in plan [m2]
        double pull = 0;  ///< greater principal pull [N/m]
    };
    [[nodiscard]] double mean_about(const Piece& middle) const;

    std::vector<Piece> pieces_;  ///< from bow to stern
};

}  // namespace coverframe::assess_detail
