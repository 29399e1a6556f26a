// SPDX-License-Identifier: BSD-3-Clause
// How much film the cover takes: its girth along the boat, and the least sheet that reaches under the band all round.
//
// Girth at x, from edge to edge of the film: on each side over the drawn film (plan/geometry.hpp) from ridge to rail,
// on to the band, and under it; and once the breadth of a ridge pole, over which film folds,
//   girth(x) = 2 (s + sqrt(d^2 + i^2) + tuck) + pole
//   s     ridge to rail: sqrt(b^2 + h^2), b the half breadth of the rail, h the height of the ridge line over it
//   d, i  depth of the band below the rail and its inset, the same all round (plan/support.hpp)
//   tuck  film past the band (plan/film.hpp)
//   pole  the broadest of the ridge's poles, counted all along; 0 for a strap
// Ahead of the ridge's bow end and aft of its stern end film closes the cover as a fan from the ridge end to the rail
// all round (film/cover_mesh.hpp). There s is the cut through the fan at x, from the middle to the rail: straight from
// crease to crease, a crease going from the ridge end to each corner of the rail and to the middle of stem or transom.
//
// Between the points of rail and ridge b, h and the corners of such a cut run straight in x, so every length of them is
// convex: the widest place is one of those points. All are looked at, and the width is exact for the drawn film.
//
// Length of the sheet, along the middle: tuck and band at the stem, up to the ridge's bow end, along the ridge line,
// down from its stern end to the transom, band and tuck.
//
// Shrinking takes length away and gives none: the sheet as it is laid must be no shorter than this.
//   * The shortest way from ridge to rail leans fore and aft where the two diverge; the cut at x asks for more, on the
//     four demo plans for some 1 mm a side.
//   * At bow and stern the film goes down diagonally, in pleats. A flat sheet has film to spare at its corners, as a
//     cloth has at those of a table, so width and length are asked for along the middle and across it alone.
//   * Nothing is added for pleats, seams, a sheet laid askew or a rail with much sheer: this is the least sheet there
//     can be, not the one to order.
#pragma once

#include <optional>
#include <string>

#include "coverframe/plan/plan.hpp"

namespace coverframe {

/// Girth of the cover at x, film under the band included; empty off the rail line, and all along for a plan whose rail
/// or ridge line does not run from bow to stern, the ridge within the rail, or that holds no numbers.
[[nodiscard]] std::optional<Length> girth_at(const Plan& plan, Length x);

/// The least sheet of film that covers a boat.
struct FilmSheet {
    Length width{};      ///< across the boat, from edge to edge [m]
    Length length{};     ///< from bow to stern [m]
    Length widest_at{};  ///< x of the greatest girth, the first one from the bow [m]
    std::string
        place;  ///< of it: "at U2", "between U1 and U2", "at the stern end of the ridge", "forward of the ridge"
};

/// Empty where girth_at is empty everywhere.
[[nodiscard]] std::optional<FilmSheet> sheet_needed(const Plan& plan);

}  // namespace coverframe
