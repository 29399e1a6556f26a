// SPDX-License-Identifier: BSD-3-Clause
#include "assess/solved.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <map>
#include <memory>
#include <string>

#include "coverframe/units/crossing.hpp"
#include "film/cover_solver.hpp"

namespace coverframe::assess_detail {
namespace {

/// Reactions and loads agree to this share, or the state is not used [-].
constexpr double balance = 1e-6;

StripLoads snow_on(const Cover& cover, const Arrangement& arrangement, double factor) {
    StripLoads loads;
    loads.reserve(cover.strips.size());
    for (const CoverStrip& strip : cover.strips) {
        const auto& side = strip.side == Side::port ? arrangement.port : arrangement.starboard;
        loads.push_back(factor * in_Pa(side[static_cast<std::size_t>(strip.station)].value));
    }
    return loads;
}

std::string newtons(double force) {
    std::array<char, 64> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), force, std::chars_format::general, 9).ptr;
    return std::string(text.data(), end) + " N";
}

/// \param solver  of the situation's cover; made by the first situation that needs it
CoverState state_in(const Situation& situation, const Rigged& rigged, const std::vector<Arrangement>& arrangements,
                    std::unique_ptr<CoverSolver>& solver) {
    if (!rigged.state.usable()) return rigged.state;
    StripLoads snow(rigged.cover.strips.size(), 0.0);
    if (situation.arrangement < 0) {
        if (situation.permanent_factor == 1.0) return rigged.state;
    } else {
        const Arrangement& arrangement = arrangements[static_cast<std::size_t>(situation.arrangement)];
        snow = snow_on(rigged.cover, arrangement, situation.snow_factor);
    }
    if (!solver) solver = std::make_unique<CoverSolver>(rigged.cover);
    // Always from the cover without snow, so that no situation's result depends on another one.
    const bool strength = situation.limit == Limit::strength;  // which alone judges straps
    return solver->load(snow, situation.permanent_factor, {}, &rigged.state, strength);
}

}  // namespace

void require_balance(CoverState& state) {
    if (!state.usable()) return;
    const double left_over = std::abs(state.vertical_load - state.vertical_reaction);
    if (left_over <= balance * std::abs(state.vertical_load)) return;
    state.frame.status = SolveStatus::iteration_limit;
    state.frame.message = "the boat holds up " + newtons(state.vertical_reaction) + " of a load of " +
                          newtons(state.vertical_load) + ", so the result is not used";
}

Rigging rig_all(const Plan& plan, const LayoutOptions& options) {
    Rigging rigging;
    for (const Bound straps : {Bound::low, Bound::high}) {
        LayoutOptions with = options;
        with.strap_stiffness = straps;
        Rigged(&of)[2] = rigging.of[straps == Bound::high];
        of[0] = rig(build_cover(plan, with, Bound::low), in_N_per_m(plan.film.tension_low.value));
        of[1] = rig(build_cover(plan, with, Bound::high), in_N_per_m(plan.film.tension_high.value));
    }
    return rigging;
}

std::vector<Solved> solve_all(const Rigging& rigging, const std::vector<Situation>& situations,
                              const std::vector<Arrangement>& arrangements) {
    std::vector<Solved> all;
    all.reserve(situations.size());
    std::map<const Rigged*, std::unique_ptr<CoverSolver>> solvers;
    for (const Situation& situation : situations) {
        const Rigged& rigged = rigging.at(situation);
        all.push_back({&situation, &rigged.cover, state_in(situation, rigged, arrangements, solvers[&rigged])});
        require_balance(all.back().state);
    }
    return all;
}

double ridge_drop(const Solved& solved, const CoverStrip& strip) {
    return -solved.state.frame.displacement[6 * static_cast<std::size_t>(strip.node) + 2];
}

}  // namespace coverframe::assess_detail
