// SPDX-License-Identifier: BSD-3-Clause
// A situation with the cover it was worked out on and what came of it: what findings, forces and shape are read from.
#pragma once

#include <cstddef>
#include <vector>

#include "coverframe/assess/situation.hpp"
#include "coverframe/film/cover.hpp"

namespace coverframe::assess_detail {

/// Lives as long as the situation and the rigged cover it points to.
struct Solved {
    const Situation* situation = nullptr;
    const Cover* cover = nullptr;
    CoverState state;

    [[nodiscard]] bool usable() const { return state.usable(); }
};

/// Straps and film as rigged, for each bound of both.
struct Rigging {
    Rigged of[2][2];  ///< [strap stiffness][film tension], low before high

    [[nodiscard]] const Rigged& at(const Situation& situation) const {
        return of[situation.strap_stiffness == Bound::high][situation.film_tension == Bound::high];
    }
};

/// Tensions the straps and shrinks the film once for each bound of strap stiffness and film tension.
[[nodiscard]] Rigging rig_all(const Plan& plan, const LayoutOptions& options);

/// A usable state whose vertical reactions do not agree with its loads to 1e-6 is made unusable: status
/// iteration_limit, and a message that says so.
void require_balance(CoverState& state);

/// Every situation of the list, in its order, each with balance required.
/// \param arrangements  made for one station for each node of the ridge line
[[nodiscard]] std::vector<Solved> solve_all(const Rigging& rigging, const std::vector<Situation>& situations,
                                            const std::vector<Arrangement>& arrangements);

/// How far the ridge line has come down from its drawn place at a strip's upper end [m]; negative if it rose.
[[nodiscard]] double ridge_drop(const Solved& solved, const CoverStrip& strip);

}  // namespace coverframe::assess_detail
