// SPDX-License-Identifier: BSD-3-Clause
#include "assess/words.hpp"

#include <algorithm>
#include <iterator>

namespace coverframe::assess_detail {
namespace {

const char* advice_for(SolveStatus status) {
    switch (status) {
        case SolveStatus::mechanism: return "add a strap, a brace or a hold that works in that direction";
        case SolveStatus::unstable: return "add or tighten straps there, set uprights closer or use a stiffer pole";
        case SolveStatus::large_rotation:
            return "add or tighten straps there, use a stiffer pole or set uprights closer";
        case SolveStatus::ill_conditioned: return "look for a stiffness that is out by powers of ten";
        case SolveStatus::cycling:
        case SolveStatus::iteration_limit:
            return "look for a part that is held too weakly, and count the cover as unable to stand until it is found";
        case SolveStatus::converged:
        case SolveStatus::not_run: break;
    }
    return "";
}

/// Sentences of the models (frame/frame.hpp, film/cover.hpp, film/strip.hpp) and checks, in the order of the work.
constexpr const char* model_assumptions[] = {
    "The boat does not give: feet of uprights, ridge ends and rails stay where they are.",
    "Straps pull only, uprights push only, and there is no friction where a strap passes over an upright.",
    "A ridge pole is straight and free of stress as drawn; where its pieces meet at more than half a degree it is "
    "taken as spliced, and the splice carries no bending moment.",
    "The stiffness of straps and the tension of the film are known as ranges only; both ends of both are looked at, "
    "and the tension of the film is not multiplied by a load factor.",
    "The film is a row of strips from ridge to rail that share no load along the boat; the film that closes bow and "
    "stern is left out.",
    "Snow is spread evenly along each strip, and does not shift as the film sags.",
    "Film that lies on a cross strap climbs onto it by its pull along the boat, shares its load with it and pulls the "
    "top of the upright over; only the check of the cross straps has that, the others leave the film to its strips.",
    "Self-weight always takes its unfavourable factor, also where it would hold a part down.",
    "Wind, ice and blows are not looked at. Snow from a neighbour is looked at only if the plan names the neighbour.",
    "Snow lies still: what falls off in one piece is not looked at.",
};

}  // namespace

std::string message_of(const Solution& solution) {
    if (solution.usable()) return {};
    const std::string advice = advice_for(solution.status);
    return advice.empty() ? solution.message : solution.message + "; " + advice;
}

std::vector<std::string> failures_of(const std::vector<SituationResult>& situations) {
    std::vector<std::string> sentences;
    for (auto one = situations.begin(); one != situations.end(); ++one) {
        if (one->status == SolveStatus::converged) continue;
        const auto same = [&](const SituationResult& other) { return other.message == one->message; };
        if (std::any_of(situations.begin(), one, same)) continue;
        const auto more = std::count_if(one + 1, situations.end(), same);
        std::string where = "In \"" + one->situation.name + "\"";
        if (more == 1) where += " and one more situation";
        if (more > 1) where += " and " + std::to_string(more) + " more situations";
        sentences.push_back(where + " the cover cannot stand: " + one->message + ".");
    }
    return sentences;
}

bool has_soft_foot(const Support& support) {
    const auto soft = [](const auto& part) { return part.foot.has_value(); };
    if (const auto* ridge = std::get_if<RidgeSupport>(&support.structure))
        return std::ranges::any_of(ridge->uprights, soft);
    return std::ranges::any_of(std::get<FoundFrame>(support.structure).members, soft);
}

std::vector<std::string> assumptions_of(const Plan& plan, const std::vector<Arrangement>& arrangements) {
    std::vector<std::string> sentences(std::begin(model_assumptions), std::end(model_assumptions));
    const auto& friction = plan.support.band.rail_friction;
    sentences.push_back(friction ? "Friction on the rail keeps a part of the film's pull off the band: " +
                                       friction->source + "."
                                 : "The film's whole tension goes on from the rail to the band; friction on the rail "
                                   "would take some of it.");
    if (has_soft_foot(plan.support)) {
        sentences.push_back(
            "Uprights with a soft foot stand on what gives under them, and lift off; where only friction holds a foot "
            "level, its least value is looked at with soft straps and its greatest with stiff ones.");
    }
    for (const Arrangement& arrangement : arrangements) {
        const bool known = std::find(sentences.begin(), sentences.end(), arrangement.note) != sentences.end();
        if (!arrangement.note.empty() && !known) sentences.push_back(arrangement.note);
    }
    if (plan.basis.shedding_slope) {
        sentences.push_back("The slope from which snow is expected to leave the cover is the plan's own: " +
                            plan.basis.shedding_slope->source + ".");
    }
    return sentences;
}

}  // namespace coverframe::assess_detail
