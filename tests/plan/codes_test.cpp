// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/plan/codes.hpp"

#include <algorithm>
#include <set>
#include <string>

#include <doctest/doctest.h>

#include "coverframe/plan/validate.hpp"
#include "plan/plan_files.hpp"

using namespace coverframe;

TEST_CASE("plan codes: each stands once, is dotted and lower case, and has a meaning") {
    std::set<std::string_view> seen;
    for (const ProblemCode& each : plan_problem_codes) {
        CAPTURE(each.code);
        CHECK(seen.insert(each.code).second);
        CHECK(each.code.find('.') != std::string_view::npos);
        CHECK(each.code.find_first_not_of("abcdefghijklmnopqrstuvwxyz8._") == std::string_view::npos);
        CHECK(each.meaning.size() > 10);
    }
}

TEST_CASE("plan codes: what is reported is listed, and what is listed is reported") {
    std::set<std::string> reported;
    for (const BadPlan& bad : bad_plans()) {
        for (const Problem& problem : problems_of_text(bad.text)) reported.insert(problem.code);
    }
    try {
        (void)read_plan_file("no such folder/no such plan.json");
    } catch (const InputError& error) {
        reported.insert(error.code());
    }
    Plan made_in_code = good_plan("pole_ridge");
    made_in_code.title = "\xff";
    for (const Problem& problem : problems_of(made_in_code)) reported.insert(problem.code);

    std::set<std::string> listed;
    for (const ProblemCode& each : plan_problem_codes) listed.emplace(each.code);
    for (const std::string& code : reported) {
        CAPTURE(code);
        CHECK(listed.contains(code));
    }
    for (const std::string& code : listed) {
        CAPTURE(code);
        CHECK(reported.contains(code));
    }
}
