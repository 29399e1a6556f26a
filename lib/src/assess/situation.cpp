// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/assess/situation.hpp"

namespace coverframe {
namespace {

Situation situation_of(const Plan& plan, const std::string& snow, int arrangement, Limit limit, Bound film,
                       Bound straps) {
    const bool factored = limit == Limit::strength;
    const CombinationBasis& combination = plan.basis.combination;
    return {.name = snow + (factored ? "; factored" : "; unfactored") +
                    (film == Bound::low ? "; film loose" : "; film tight") +
                    (straps == Bound::low ? "; straps soft" : "; straps stiff"),
            .arrangement = arrangement,
            .limit = limit,
            .permanent_factor = factored ? combination.permanent.value : 1.0,
            .snow_factor = factored ? combination.snow.value : 1.0,
            .film_tension = film,
            .strap_stiffness = straps};
}

}  // namespace

std::vector<Situation> situations_of(const Plan& plan, const std::vector<Arrangement>& arrangements) {
    std::vector<Situation> situations;
    const int count = static_cast<int>(arrangements.size());
    situations.reserve(8 * (arrangements.size() + 1));
    for (int i = -1; i < count; ++i) {
        const std::string snow = i < 0 ? "no snow" : arrangements[static_cast<std::size_t>(i)].name;
        for (const Limit limit : {Limit::strength, Limit::service}) {
            for (const Bound film : {Bound::low, Bound::high}) {
                for (const Bound straps : {Bound::low, Bound::high}) {
                    situations.push_back(situation_of(plan, snow, i, limit, film, straps));
                }
            }
        }
    }
    return situations;
}

}  // namespace coverframe
