// SPDX-License-Identifier: BSD-3-Clause
// The film: its stress, whether it drains, and whether its slope sheds.
#pragma once

#include "coverframe/checks/check.hpp"

namespace coverframe {

/// "film.stress" for each ridge bay: largest tension over thickness against the strength (strength situations).
[[nodiscard]] std::vector<Finding> check_film_stress(const CheckInput& input);

/// "film.drainage" for each ridge bay: a strip drains while its sag takes less slope than its chord has at the lower
/// edge, 4 f/L < tan(slope of the chord). Where it does not, the sentence gives the water the bay would hold on the
/// side of the worst strip, filled to the brim, the obstacles that lie under it, and by how much the ridge would have
/// to be higher; the workings add the tension and the span that would do instead. Service situations.
[[nodiscard]] std::vector<Finding> check_drainage(const CheckInput& input);

/// "film.ponding" for each ridge bay: where a strip does not drain, the least level tension with which the water behind
/// its lower edge stops sinking it (demand; `settling_tension` of film/ponding.hpp) against its own (capacity). Not
/// applicable where the bay drains. Service situations.
[[nodiscard]] std::vector<Finding> check_ponding(const CheckInput& input);

/// "film.shedding" for each ridge bay: the shedding threshold of the document or the plan (demand) against the least
/// chord slope in the loaded shape (capacity). Service situations.
[[nodiscard]] std::vector<Finding> check_shedding(const CheckInput& input);

}  // namespace coverframe
