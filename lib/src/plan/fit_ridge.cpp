// SPDX-License-Identifier: BSD-3-Clause
// The ridge line of either kind of structure, and a support of ridge, uprights and cross straps.
#include <algorithm>
#include <variant>

#include "coverframe/plan/geometry.hpp"
#include "coverframe/units/crossing.hpp"
#include "plan/fit.hpp"
#include "plan/json_value.hpp"

namespace coverframe::plan_detail {
namespace {

using namespace coverframe::literals;

constexpr Length drawing_accuracy = 1.0_mm;

/// The objects the points of ridge_profile() come from.
std::vector<std::string> fields_of_profile(const Support& support) {
    std::vector<std::string> fields;
    if (const auto* ridge = std::get_if<RidgeSupport>(&support.structure)) {
        fields.push_back("/support/ridge/bow");
        for (std::size_t i = 0; i < ridge->uprights.size(); ++i) fields.push_back(at("/support/uprights", i));
        fields.push_back("/support/ridge/stern");
    } else if (const auto* found = std::get_if<FoundFrame>(&support.structure)) {
        for (std::size_t i = 0; i < found->ridge_line.size(); ++i) {
            const bool known = std::any_of(found->nodes.begin(), found->nodes.end(),
                                           [&](const FoundNode& n) { return n.name == found->ridge_line[i]; });
            if (known) fields.push_back(at("/support/ridge_line", i));
        }
    }
    return fields;
}

void add_below_rail(Fit& fit, const std::string& where, Length x, Length ridge, Length rail) {
    fit.add("support.ridge.below_rail", where, fit.say(ridge),
            "the ridge line lies " + fit.say(rail - ridge) + " below the rail at x = " + fit.say(x) +
                ": the film would slope inwards there and hold water; raise it above " + fit.say(rail));
}

void fit_upright_place(Fit& fit, const RidgeSupport& support, std::size_t i) {
    const Upright& upright = support.uprights[i];
    const std::string where = at("/support/uprights", i, "x");
    constexpr Length apart = 10.0_mm;
    const Length from = support.ridge.bow.x + apart;
    const Length to = support.ridge.stern.x - apart;
    if (support.ridge.bow.x < support.ridge.stern.x && (upright.x < from || upright.x > to)) {
        fit.add("support.upright.off_ridge", where, fit.say(upright.x),
                "upright " + upright.name + " at x = " + fit.say(upright.x) +
                    " does not stand under the ridge, which runs from " + fit.say(support.ridge.bow.x) + " to " +
                    fit.say(support.ridge.stern.x) + "; move it inside, at least 1 cm from the end");
    }
    if (!rail_at(fit.plan.boat, upright.x)) {
        fit.add("support.upright.off_boat", where, fit.say(upright.x),
                "upright " + upright.name + " at x = " + fit.say(upright.x) +
                    " is beyond the rail line; move it onto the boat");
    }
    if (i > 0 && !(upright.x > support.uprights[i - 1].x)) {
        fit.add("support.upright.order", where, fit.say(upright.x),
                "upright " + upright.name + " at x = " + fit.say(upright.x) + " does not stand aft of " +
                    support.uprights[i - 1].name + " at " + fit.say(support.uprights[i - 1].x) +
                    "; list the uprights from bow to stern");
    }
}

void fit_upright_foot(Fit& fit, const Upright& upright, std::size_t i) {
    const Stand* stand =
        fit_stand_name(fit, upright.stands_on, at("/support/uprights", i, "stands_on"), "upright " + upright.name);
    if (stand == nullptr) return;
    const std::string reach = "\"" + stand->name + "\", which reaches from " + fit.say(stand->from) + " to " +
                              fit.say(stand->to) + " and " + fit.say(stand->half_breadth) + " to each side";
    if (!(stand->from < stand->to)) return;  // spoken of as a stand
    if (upright.x < stand->from || upright.x > stand->to) {
        fit.add("support.upright.off_stand", at("/support/uprights", i, "x"), fit.say(upright.x),
                "upright " + upright.name + " at x = " + fit.say(upright.x) + " is not on " + reach +
                    "; move it or name another stand");
    } else if (upright.x - upright.pad.length / 2.0 < stand->from - drawing_accuracy ||
               upright.x + upright.pad.length / 2.0 > stand->to + drawing_accuracy ||
               upright.pad.breadth / 2.0 > stand->half_breadth + drawing_accuracy) {
        fit.add("support.upright.pad_off_stand", at("/support/uprights", i, "pad"),
                fit.say(upright.pad.length) + " by " + fit.say(upright.pad.breadth),
                "the foot pad of upright " + upright.name + " reaches over the edge of " + reach +
                    "; move the upright or take a smaller pad");
    }
    fit_upright_length(fit, upright.top - stand->z - upright.pad.thickness, upright.section,
                       at("/support/uprights", i, "top"), "upright " + upright.name);
}

void fit_bracing(Fit& fit, const RidgeSupport& support, std::size_t i) {
    const Upright& upright = support.uprights[i];
    bool port = false;
    bool starboard = false;
    for (const CrossStrap& strap : support.cross_straps) {
        if (strap.over != upright.name) continue;
        port = port || strap.sides != Sides::starboard;
        starboard = starboard || strap.sides != Sides::port;
    }
    if (port && starboard) return;
    const std::string missing = !port && !starboard ? "from rail to rail over it" : port ? "to starboard" : "to port";
    fit.add("support.upright.unbraced", at("/support/uprights", i), upright.name,
            "upright " + upright.name + " has no strap " + missing +
                ": nothing stops it from falling over; add a cross strap " + missing);
}

void fit_free_end(Fit& fit, const RidgeSupport& support, const RidgeEnd& end, const std::string& which) {
    constexpr Length near = 0.5_m;
    if (end.hold != Hold::free || std::holds_alternative<StrapRidge>(support.ridge.member)) return;
    const bool stands_near = std::any_of(support.uprights.begin(), support.uprights.end(),
                                         [&](const Upright& u) { return u.x >= end.x - near && u.x <= end.x + near; });
    if (stands_near) return;
    fit.add("support.ridge.free_end", "/support/ridge/" + which + "/hold", "free",
            "the " + which + " end of the ridge at x = " + fit.say(end.x) +
                " is held by nothing and no upright stands within " + fit.say(near) +
                " of it; tie it down (\"pinned\" or \"sliding\") or add an upright there");
}

void fit_strap_ridge(Fit& fit, const Ridge& ridge) {
    const auto* strap = std::get_if<StrapRidge>(&ridge.member);
    if (strap == nullptr) return;
    fit_strap_name(fit, strap->strap, "/support/ridge/strap", "the ridge");
    const auto refuse_loose = [&](const RidgeEnd& end, const std::string& which) {
        if (end.hold == Hold::pinned) return;
        fit.add("support.ridge.strap_end", "/support/ridge/" + which + "/hold",
                end.hold == Hold::free ? "free" : "sliding",
                "a strap ridge cannot be tight with a " + which +
                    " end that is not \"pinned\"; make it fast to the boat, or "
                    "take a pole");
    };
    refuse_loose(ridge.bow, "bow");
    refuse_loose(ridge.stern, "stern");
}

}  // namespace

void fit_ridge_line(Fit& fit) {
    const std::vector<ProfilePoint> profile = ridge_profile(fit.plan.support);
    const std::vector<std::string> fields = fields_of_profile(fit.plan.support);
    const bool by_uprights = std::holds_alternative<RidgeSupport>(fit.plan.support.structure);
    bool below = false;
    for (std::size_t i = 0; i < profile.size(); ++i) {
        const auto rail = rail_at(fit.plan.boat, profile[i].x);
        const bool at_upright = fields[i].starts_with("/support/uprights");
        if (!rail) {
            if (at_upright) continue;  // spoken of as an upright
            fit.add("support.ridge.off_boat", fields[i] + (by_uprights ? "/x" : ""), fit.say(profile[i].x),
                    "the ridge line has a point at x = " + fit.say(profile[i].x) +
                        ", beyond the rail line; end the ridge on the boat, or extend the rail line to where the film "
                        "goes");
        } else if (profile[i].z < rail->z - drawing_accuracy) {
            below = true;
            add_below_rail(fit,
                           fields[i] + (!by_uprights ? ""
                                        : at_upright ? "/top"
                                                     : "/z"),
                           profile[i].x, profile[i].z, rail->z);
        }
    }
    if (below) return;
    // Both lines are straight between their points, so the points of the rail are all that is left to look at.
    for (const RailStation& station : fit.plan.boat.rail) {
        const auto ridge = ridge_at(fit.plan.support, station.x);
        if (!ridge || *ridge >= station.z - drawing_accuracy) continue;
        return add_below_rail(fit, by_uprights ? "/support/ridge" : "/support/ridge_line", station.x, *ridge,
                              station.z);
    }
}

void fit_ridge_support(Fit& fit, const RidgeSupport& support) {
    const Ridge& ridge = support.ridge;
    if (!(ridge.bow.x < ridge.stern.x)) {
        fit.add("support.ridge.order", "/support/ridge/stern/x", fit.say(ridge.stern.x),
                "the stern end of the ridge at x = " + fit.say(ridge.stern.x) + " does not lie aft of the bow end at " +
                    fit.say(ridge.bow.x) + "; x grows from the stem head aft");
    }
    if (const auto* pole = std::get_if<PoleRidge>(&ridge.member)) {
        fit_grade_name(fit, pole->grade, "/support/ridge/grade", "the ridge");
    }
    fit_strap_ridge(fit, ridge);
    fit_free_end(fit, support, ridge.bow, "bow");
    fit_free_end(fit, support, ridge.stern, "stern");

    std::vector<std::string> names;
    for (const Upright& upright : support.uprights) names.push_back(upright.name);
    fit_names(fit, names, "/support/uprights", "upright", "support.upright.duplicate");
    for (std::size_t i = 0; i < support.uprights.size(); ++i) {
        fit_upright_place(fit, support, i);
        fit_upright_foot(fit, support.uprights[i], i);
        fit_friction(fit, support.uprights[i].foot, at("/support/uprights", i), "upright " + support.uprights[i].name);
        fit_grade_name(fit, support.uprights[i].grade, at("/support/uprights", i, "grade"),
                       "upright " + support.uprights[i].name);
        fit_bracing(fit, support, i);
    }

    const std::vector<std::string_view> known(names.begin(), names.end());
    std::vector<std::string> strap_names;
    for (std::size_t i = 0; i < support.cross_straps.size(); ++i) {
        const CrossStrap& strap = support.cross_straps[i];
        strap_names.push_back(strap.name);
        if (std::find(names.begin(), names.end(), strap.over) == names.end()) {
            fit.add("support.cross_strap.over_unknown", at("/support/cross_straps", i, "over"), strap.over,
                    "cross strap " + strap.name + " goes over \"" + strap.over +
                        "\", which is no upright of this plan" + help_with(strap.over, known));
        }
        fit_strap_name(fit, strap.strap, at("/support/cross_straps", i, "strap"), "cross strap " + strap.name);
    }
    fit_names(fit, strap_names, "/support/cross_straps", "cross strap", "support.cross_strap.duplicate");
}

}  // namespace coverframe::plan_detail
