// SPDX-License-Identifier: BSD-3-Clause
// The ridge: a timber pole in bending about both axes with push or pull, shear, and the uprights' pressure across its
// grain. A strap ridge: checks/straps.hpp. Other poles of a found frame are judged the same way.
//
// Assumptions
//   * The pole buckles between points of support: both as a column and sideways as a beam its length is that of
//     the bay. A point of the ridge line that nothing holds is no support; beyond the last one the pole is a
//     cantilever.
//   * Moments are taken at the ends of every member of the frame, where they are largest (loads act at the nodes).
//   * Both shear forces are put together to one, on a rectangle.
//   * An upright touches the ridge with its depth fore and aft and the narrower of both breadths athwart. Cross straps
//     pull over the ridge, so that all the push goes through it.
#pragma once

#include "coverframe/checks/check.hpp"

namespace coverframe {

/// "ridge.bending" for each bay of a pole ridge (NDS 3.9 or EN 1995-1-1 6.2.3, 6.3.2, 6.3.3), "ridge.shear" (NDS 3.4 or
/// EN 1995-1-1 6.1.7), and "ridge.bearing" over each upright (NDS 3.10.4 or EN 1995-1-1 6.1.5); "pole.bending" and
/// "pole.shear" for each other pole of a found frame. Bending is an interaction sum against 1; a slenderness over the
/// document's limit stands against that limit instead, and a pole that buckles has no utilisation. A section the rules
/// do not cover is not applicable. Strength situations.
/// \throws StateError as require_usable; InputError "checks.grade", "checks.section", "checks.choice" for a plan that
///   does not say what the timber document needs
[[nodiscard]] std::vector<Finding> check_ridge(const CheckInput& input);

}  // namespace coverframe
