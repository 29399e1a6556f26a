// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/plan/validate.hpp"

#include <algorithm>
#include <cstdio>
#include <variant>

#include "coverframe/plan/geometry.hpp"
#include "coverframe/plan/timber.hpp"
#include "coverframe/units/crossing.hpp"
#include "plan/fit.hpp"
#include "plan/json_value.hpp"
#include "plan/suggest.hpp"

namespace coverframe {
namespace plan_detail {
namespace {

template <class Named>
std::vector<std::string_view> names_of(const std::vector<Named>& list) {
    std::vector<std::string_view> names;
    for (const Named& each : list) names.push_back(each.name);
    return names;
}

/// "; known are A, B", shortened.
std::string known_are(const std::vector<std::string_view>& names) {
    if (names.empty()) return "; there are none in this plan";
    std::string text = "; known are ";
    for (std::size_t i = 0; i < names.size() && i < 8; ++i)
        text += (i == 0 ? "\"" : ", \"") + std::string(names[i]) + "\"";
    return text + (names.size() > 8 ? " and others" : "");
}

}  // namespace

std::string help_with(std::string_view name, const std::vector<std::string_view>& names) {
    const std::string guess = did_you_mean(name, names);
    return guess.empty() ? known_are(names) : guess;
}

std::string Fit::say(Length length) const {
    const bool us = plan.units_shown == UnitsShown::us;
    char buffer[64];
    std::snprintf(buffer, sizeof buffer, us ? "%.2f" : "%.3f", us ? in_ft(length) : in_m(length));
    std::string text = buffer;
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    if (text == "-0") text = "0";
    return text + (us ? " ft" : " m");
}

std::string at(std::string_view list, std::size_t index, std::string_view key) {
    std::string where = std::string(list) + '/' + std::to_string(index);
    return key.empty() ? where : where + '/' + std::string(key);
}

void fit_names(Fit& fit, const std::vector<std::string>& names, std::string_view list, std::string_view what,
               const std::string& code) {
    for (std::size_t i = 1; i < names.size(); ++i) {
        const auto end = names.begin() + static_cast<std::ptrdiff_t>(i);
        if (std::find(names.begin(), end, names[i]) == end) continue;
        fit.add(code, at(list, i, "name"), names[i],
                "two have the name \"" + names[i] + "\"; give each " + std::string(what) + " its own");
    }
}

void fit_strap_name(Fit& fit, const std::string& strap, const std::string& where, const std::string& of_what) {
    if (find_strap_kind(fit.plan, strap) != nullptr) return;
    fit.add("strap.unknown", where, strap,
            of_what + ": no kind of strap is called \"" + strap + '"' + help_with(strap, names_of(fit.plan.straps)));
}

void fit_grade_name(Fit& fit, const std::string& grade, const std::string& where, const std::string& of_what) {
    const TimberDocument document = fit.plan.basis.timber.document;
    std::vector<std::string_view> of_document;
    for (const TimberGrade& each : timber_grades()) {
        if (each.document == document) of_document.push_back(each.name);
    }
    const TimberGrade* found = find_timber_grade(grade);
    if (found == nullptr) {
        fit.add("timber.grade.unknown", where, grade,
                of_what + ": no timber grade is called \"" + grade + '"' + known_are(of_document));
    } else if (found->document != document) {
        fit.add("timber.grade.document", where, grade,
                of_what + ": the values of \"" + grade + "\" belong to " + name_of(found->document) +
                    ", but the timber is judged by " + name_of(document) + "; take a grade of that document" +
                    known_are(of_document));
    }
}

const Stand* fit_stand_name(Fit& fit, const std::string& stand, const std::string& where, const std::string& of_what) {
    const Stand* found = find_stand(fit.plan.boat, stand);
    if (found == nullptr) {
        fit.add("support.upright.stand_unknown", where, stand,
                of_what + " stands on \"" + stand + "\", which is none of the stands of the boat" +
                    help_with(stand, names_of(fit.plan.boat.stands)));
    }
    return found;
}

void fit_friction(Fit& fit, const std::optional<SoftFoot>& foot, const std::string& where, const std::string& name) {
    if (!foot || !foot->friction || foot->friction->low.value <= foot->friction->high.value) return;
    fit.add("support.upright.friction", where + "/foot/friction/low", number_text(foot->friction->low.value),
            "the least friction under " + name + " is over the greatest, " + number_text(foot->friction->high.value) +
                "; swap them");
}

void fit_upright_length(Fit& fit, Length length, const Section& section, const std::string& where,
                        const std::string& name) {
    // NDS 2018, 3.7.1.4: slenderness of columns at most 50. Taken for every document.
    constexpr double most_slender = 50.0;
    const Length thin = std::min(section.breadth, section.depth);
    const Length thick = std::max(section.breadth, section.depth);
    if (length <= Length{}) {
        fit.add("support.upright.height", where, fit.say(length),
                name + " has a length of " + fit.say(length) +
                    ": its top must be above its foot; measure from the stand to the ridge");
    } else if (length < 2.0 * thick) {
        fit.add("support.upright.short", where, fit.say(length),
                name + " is " + fit.say(length) +
                    " long, less than twice its section: that is a block, not an upright; "
                    "raise its top or let it stand lower");
    } else if (length > most_slender * thin) {
        fit.add("support.upright.slender", where, fit.say(length),
                name + " is " + fit.say(length) + " long, more than 50 times its thinner side of " + fit.say(thin) +
                    " (NDS 2018, 3.7.1.4); take a thicker section or lower the ridge");
    }
}

std::vector<Problem> fit_problems(const Plan& plan) {
    Fit fit{plan};
    fit_site(fit);
    fit_basis(fit);
    fit_boat(fit);
    fit_straps(fit);
    fit_ridge_line(fit);
    if (const auto* support = std::get_if<RidgeSupport>(&plan.support.structure)) fit_ridge_support(fit, *support);
    if (const auto* found = std::get_if<FoundFrame>(&plan.support.structure)) fit_found_frame(fit, *found);
    fit_band(fit);
    fit_film(fit);
    return std::move(fit.problems);
}

}  // namespace plan_detail

std::vector<Problem> problems_of(const Plan& plan) {
    bool finite = true;
    std::vector<Problem> problems = plan_detail::value_problems(plan, finite);
    if (finite) {  // sizes that are no numbers can be compared with nothing
        for (Problem& problem : plan_detail::fit_problems(plan)) problems.push_back(std::move(problem));
    }
    plan_detail::in_document_order(plan, problems);
    return problems;
}

void require_valid(const Plan& plan) {
    std::vector<Problem> problems = problems_of(plan);
    if (!problems.empty()) throw InputError(std::move(problems));
}

}  // namespace coverframe
