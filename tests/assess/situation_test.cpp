// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/assess/situation.hpp"

#include <doctest/doctest.h>

#include <set>
#include <string>
#include <tuple>
#include <vector>

#include "assess/plans.hpp"
#include "close.hpp"

using namespace coverframe;

namespace {

std::vector<Arrangement> arrangements(std::initializer_list<const char*> names) {
    std::vector<Arrangement> all;
    for (const char* name : names) {
        Arrangement arrangement;
        arrangement.name = name;
        all.push_back(arrangement);
    }
    return all;
}

}  // namespace

TEST_CASE("situation: no snow and each arrangement, strength and service, both bounds of film and straps") {
    const Plan plan = plans::small_boat();
    CHECK(situations_of(plan, {}).size() == 8);
    const auto all = situations_of(plan, arrangements({"balanced", "unbalanced, heavy to port"}));
    REQUIRE(all.size() == 3 * 2 * 2 * 2);
    std::set<std::string> names;
    std::set<std::tuple<int, Limit, Bound, Bound>> kinds;
    for (const Situation& s : all) {
        names.insert(s.name);
        kinds.insert({s.arrangement, s.limit, s.film_tension, s.strap_stiffness});
    }
    CHECK(names.size() == all.size());
    CHECK(kinds.size() == all.size());
    CHECK(all.front().name == "no snow; factored; film loose; straps soft");
    CHECK(all.front().arrangement == -1);
    CHECK(all.back().name == "unbalanced, heavy to port; unfactored; film tight; straps stiff");
    CHECK(all.back().arrangement == 1);
}

TEST_CASE("situation: strength carries the factors of the plan, service none") {
    Plan plan = plans::small_boat_en();
    for (const Situation& s : situations_of(plan, arrangements({"balanced"}))) {
        const bool strength = s.limit == Limit::strength;
        CHECK(s.permanent_factor == (strength ? 1.35 : 1.0));
        CHECK(s.snow_factor == (strength ? 1.5 : 1.0));
    }
}
