// SPDX-License-Identifier: BSD-3-Clause
// Whether the parts of a plan fit one another, part by part. Everything here expects finite numbers and nothing else.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "coverframe/base/error.hpp"
#include "coverframe/plan/plan.hpp"

namespace coverframe::plan_detail {

/// Collects problems and knows how to speak of this plan's parts.
struct Fit {
    const Plan& plan;
    std::vector<Problem> problems{};

    void add(std::string code, std::string where, std::string value, std::string advice) {
        problems.push_back({std::move(code), std::move(where), std::move(value), std::move(advice)});
    }

    /// A length in the unit the plan is shown in, to the millimetre or a hundredth of a foot.
    [[nodiscard]] std::string say(Length length) const;
};

/// "/boat/stands/2/name".
[[nodiscard]] std::string at(std::string_view list, std::size_t index, std::string_view key = {});

/// What may help after a name that is not in a list: "; did you mean "U1"?", or the names that are.
[[nodiscard]] std::string help_with(std::string_view name, const std::vector<std::string_view>& names);

/// Names that stand twice in a list are reported under `code`.
/// \param what  "upright", for the sentence
void fit_names(Fit& fit, const std::vector<std::string>& names, std::string_view list, std::string_view what,
               const std::string& code);

/// A reference to a strap kind, or to a timber grade of the plan's document.
void fit_strap_name(Fit& fit, const std::string& strap, const std::string& where, const std::string& of_what);
void fit_grade_name(Fit& fit, const std::string& grade, const std::string& where, const std::string& of_what);

/// The stand of that name, reported if there is none.
const Stand* fit_stand_name(Fit& fit, const std::string& stand, const std::string& where, const std::string& of_what);

/// Length of an upright against its section: not above its foot, a mere block, too slender.
void fit_upright_length(Fit& fit, Length length, const Section& section, const std::string& where,
                        const std::string& name);

/// Friction of a soft foot, if there is any: least not over greatest.
void fit_friction(Fit& fit, const std::optional<SoftFoot>& foot, const std::string& where, const std::string& name);

/// Whether anything can be compared with the rail line.
[[nodiscard]] bool rail_is_sound(const Boat& boat);

/// Forward and after end of the rail line. \pre at least one station
[[nodiscard]] std::pair<Length, Length> rail_ends(const Boat& boat);

template <class Named>
[[nodiscard]] std::vector<std::string> names_in(const std::vector<Named>& list) {
    std::vector<std::string> names;
    for (const Named& each : list) names.push_back(each.name);
    return names;
}

void fit_site(Fit& fit);
void fit_basis(Fit& fit);
void fit_boat(Fit& fit);
void fit_straps(Fit& fit);
void fit_ridge_line(Fit& fit);  ///< either kind of structure
void fit_ridge_support(Fit& fit, const RidgeSupport& support);
void fit_found_frame(Fit& fit, const FoundFrame& found);
void fit_band(Fit& fit);
void fit_film(Fit& fit);

/// Every problem of fit. \pre every number is finite
[[nodiscard]] std::vector<Problem> fit_problems(const Plan& plan);

/// Every value that breaks its own rule; `finite` tells whether all numbers are.
[[nodiscard]] std::vector<Problem> value_problems(const Plan& plan, bool& finite);

/// Sorts problems by the place of their field in the document; those of one field keep their order.
void in_document_order(const Plan& plan, std::vector<Problem>& problems);

}  // namespace coverframe::plan_detail
