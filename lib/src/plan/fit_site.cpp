// SPDX-License-Identifier: BSD-3-Clause
// Site and basis: neighbours beside the boat, and whether ground load, snow rules and factors belong to one document.
#include "plan/fit.hpp"
#include "plan/json_value.hpp"
#include "plan/limits.hpp"

namespace coverframe::plan_detail {
namespace {

/// Whose factor it is, for the sentence; empty if it is nobody's.
std::string owner_of(double factor) {
    if (factor == 1.0) return " belongs to ground loads of ASCE 7-22, which are at strength level";
    if (factor == 1.5) return " belongs to 50-year ground loads of the NBC and of EN 1991-1-3";
    if (factor == 1.6) return " belongs to 50-year ground loads of ASCE 7-10 and ASCE 7-16";
    return "";
}

void fit_snow_factor(Fit& fit, SnowDocument document) {
    const double factor = fit.plan.basis.combination.snow.value;
    const SnowFactorRange due = snow_factor_range(document);
    const bool believed = factor >= limit::action_factor.low && factor <= limit::action_factor.high;
    if (!believed || (factor >= due.low && factor <= due.high)) return;  // an unbelievable one is reported as such
    const std::string owner = owner_of(factor);
    const std::string most = due.low == due.high ? "" : " to " + number_text(due.high);
    fit.add("plan.combination.mixed", "/basis/combination/snow/value", number_text(factor),
            "a snow factor of " + number_text(factor) + (owner.empty() ? " does not belong here: " : owner + ", but ") +
                "the ground load is of " + name_of(document) +
                (level_of(document) == Level::strength ? " and at strength level already"
                                                       : ", a characteristic load with no factor in it") +
                "; take " + number_text(due.low) + most + " (" + due.clause + ")");
}

void fit_neighbour(Fit& fit, std::size_t i) {
    const Neighbour& neighbour = fit.plan.site.neighbours[i];
    const std::string who = "neighbour \"" + neighbour.name + '"';
    if (neighbour.from && neighbour.to && !(*neighbour.from < *neighbour.to)) {
        fit.add("site.neighbour.order", at("/site/neighbours", i, "to"), fit.say(*neighbour.to),
                who + " ends at x = " + fit.say(*neighbour.to) + ", not aft of where it begins (" +
                    fit.say(*neighbour.from) + "); \"from\" is its forward end");
    } else if (rail_is_sound(fit.plan.boat)) {
        const auto [stem, stern] = rail_ends(fit.plan.boat);
        const bool astern = neighbour.from && *neighbour.from >= stern;
        if (astern || (neighbour.to && *neighbour.to <= stem)) {
            const Length end = astern ? *neighbour.from : *neighbour.to;
            fit.add("site.neighbour.off_boat", at("/site/neighbours", i, astern ? "from" : "to"), fit.say(end),
                    who + (astern ? " begins" : " ends") + " at x = " + fit.say(end) +
                        " and so does not stand beside the boat, whose rail runs from " + fit.say(stem) + " to " +
                        fit.say(stern) + "; check the x, or give it the side " + (astern ? "\"stern\"" : "\"bow\""));
        }
    }
    if (!neighbour.roof || neighbour.roof->run <= neighbour.fetch) return;
    fit.add("site.neighbour.run", at("/site/neighbours", i, "roof/run"), fit.say(neighbour.roof->run),
            who + ": its roof slopes over " + fit.say(neighbour.roof->run) + ", but all of it is only " +
                fit.say(neighbour.fetch) + " long across the eave; \"fetch\" counts from eave to eave");
}

}  // namespace

void fit_site(Fit& fit) {
    const std::vector<Neighbour>& neighbours = fit.plan.site.neighbours;
    fit_names(fit, names_in(neighbours), "/site/neighbours", "neighbour", "site.neighbour.duplicate");
    for (std::size_t i = 0; i < neighbours.size(); ++i) fit_neighbour(fit, i);
}

void fit_basis(Fit& fit) {
    const SnowDocument ground = fit.plan.site.ground_snow.document;
    const SnowDocument rules = fit.plan.basis.snow.document;
    if (ground == rules) return fit_snow_factor(fit, ground);
    fit.add("basis.snow.mixed", "/basis/snow/document", name_of(rules),
            std::string("the ground load belongs to ") + name_of(ground) + ", the snow rules to " + name_of(rules) +
                ": their loads do not mean the same; take both from one document");
}

}  // namespace coverframe::plan_detail
