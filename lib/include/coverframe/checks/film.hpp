// SPDX-License-Identifier: BSD-3-Clause
// The film: its stress, whether it drains, and whether its slope sheds.
#pragma once

#include "coverframe/checks/check.hpp"

namespace coverframe {

/// "film.stress" for each ridge bay: largest tension over thickness against the strength (strength situations).
[[nodiscard]] std::vector<Finding> check_film_stress(const CheckInput& input);

/// "film.drainage" for each ridge bay: a strip drains while its sag takes less slope than its chord has at the lower
/// edge, 4 f/L < tan(slope of the chord). Where it does not, the sentence gives the water the bay would hold on the
/// side of the worst strip, filled to the brim, and the obstacles that lie under it. Service situations.
[[nodiscard]] std::vector<Finding> check_drainage(const CheckInput& input);

/// "film.shedding" for each ridge bay: the shedding threshold of the document or the plan (demand) against the least
/// chord slope in the loaded shape (capacity). Service situations.
[[nodiscard]] std::vector<Finding> check_shedding(const CheckInput& input);

}  // namespace coverframe
