// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/rule.hpp"

#include <array>
#include <set>
#include <stdexcept>

#include <doctest/doctest.h>

#include "actions/catalogue/entry.hpp"
#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;

TEST_CASE("rules: the catalogue is in order, and every entry is found by its name") {
    std::string before;
    for (const Rule& rule : rules()) {
        CAPTURE(text_of(rule));
        CHECK(text_of(rule) > before);
        before = text_of(rule);
        CHECK(&rule_named(text_of(rule)) == &rule);
        CHECK(bool(rule.loop));
        CHECK_FALSE(rule.results.empty());
        CHECK(rule.summary.back() == '.');
    }
    CHECK(code_of([] { return rule_named("en1991_1_3.no_such"); }) == "rule.unknown");
    CHECK(code_of([] { return rule_named(""); }) == "rule.unknown");
}

TEST_CASE("rules: a rule is evaluated by name") {
    // French exercise on multi-pitch roofs (scribd document 449162340), read on a page: 0.24 kN/m2 of 0.45 at 40 deg
    const double mu = evaluate(rule_named("en1991_1_3.shape_coefficient"), std::array{40.0, 0.0}).at(0);
    const double s = evaluate(rule_named("en1991_1_3.roof_load"), std::array{0.45, mu, 1.0, 1.0}).at(0);
    CHECK(close_abs(s, 0.24, 0.005));
}

TEST_CASE("rules: the loop tells which item a rule refuses") {
    const Rule& rule = rule_named("en1991_1_3.shape_coefficient");
    const std::array slopes{10.0, 50.0, 91.0, 20.0};
    const double free = 0.0;
    const std::array<RuleColumn, 2> columns{RuleColumn{slopes.data(), 1}, RuleColumn{&free, 0}};
    std::array<double, 4> mu{};
    double* const to = mu.data();
    std::size_t at = 99;
    CHECK(code_of([&] {
              rule.loop(columns.data(), 4, &to, at);
              return 0;
          }) == "en1991_1_3.pitch.range");
    CHECK(at == 2);
    CHECK(close(mu[1], 0.8 / 3.0, 1e-12));
}

TEST_CASE("rules: wrong arguments are refused") {
    const Rule& rule = rule_named("en1991_1_3.shape_coefficient");
    CHECK(code_of([&] { return evaluate(rule, std::array{10.0}); }) == "rule.arguments");
    for (const double choice : {-1.0, 2.0, 0.5, not_finite[0], not_finite[1]}) {
        CHECK(code_of([&] { return evaluate(rule, std::array{10.0, choice}); }) == "rule.arguments");
    }
}

TEST_CASE("rules: workings give symbols, values, units, formulas and clauses") {
    const Rule& rule = rule_named("en1991_1_3.shape_coefficient");
    const std::array<std::string, 1> sources{"measured by the yard"};
    const std::vector<Term> terms = workings(rule, std::array{45.0, 0.0}, sources);
    REQUIRE(terms.size() == 2);
    CHECK(terms[0] == Term{"slope", 45.0, "deg", "measured by the yard", {}});
    CHECK(terms[1].symbol == "mu_1");
    CHECK(close(terms[1].value, 0.4, 1e-12));
    CHECK(terms[1].unit == "-");
    CHECK(terms[1].formula.ends_with("; sliding: free"));
    CHECK(terms[1].clause == rule.clause);
}

TEST_CASE("rules: limits of an argument stay out of its line, for they are in other units") {
    using namespace catalogue;
    std::vector<Rule> into;
    add(into, {"test", "load", {"test", "1"}, "A load.", Read::derived, "none", us_units},
        {{"a_kpa", "a", "ground snow load, 50 years, 0 to 100"}, {"b_m", "b", "gap, level, over 0 to 3000 ft"},
         {"c", "c", "share"}, {"d", "d", "factor, 0.8 to 1.4; 1.2 for a cover"}},
        {{"load_kpa", "q", "a"}}, [](Pressure a, Length, double, double) { return a; });
    const std::vector<Term> terms = workings(into.at(0), std::array{1.0, 1.0, 1.0, 1.0});
    CHECK(terms[0].formula == "ground snow load, 50 years");
    CHECK(terms[1].formula == "gap, level");
    CHECK(terms[2].formula == "share");
    CHECK(terms[3].formula == "factor");
}

TEST_CASE("rules: an entry that is not sound is found at once") {
    using namespace catalogue;
    std::vector<Rule> into;
    const auto load = [](Pressure p) { return p; };
    const Head head{"test", "load", {"test", "1"}, "A load.", Read::derived, "none"};
    CHECK_NOTHROW(add(into, head, {{"load_kpa", "p", "a load"}}, {{"load_kpa", "q", "p"}}, load));
    CHECK_THROWS_AS(add(into, head, {{"load_m", "p", "a load"}}, {{"load_kpa", "q", "p"}}, load), std::logic_error);
    CHECK_THROWS_AS(add(into, head, {{"load_kpa", "p", "a load"}}, {{"load", "q", "p"}}, load), std::logic_error);
    CHECK_THROWS_AS(add(into, head, {}, {{"load_kpa", "q", "p"}}, load), std::logic_error);
    CHECK_THROWS_AS(add(into, head, {{"load_kpa", "p", "0 to 100"}}, {{"load_kpa", "q", "p"}}, load), std::logic_error);
    CHECK_THROWS_AS(add(into, head, {{"load_kpa", "p", ""}}, {{"load_kpa", "q", "p"}}, load), std::logic_error);
    CHECK_THROWS_AS(add(into, {"test", "load", {"test", "1"}, "", Read::derived, "none"}, {{"load_kpa", "p", "a load"}},
                        {{"load_kpa", "q", "p"}}, load),
                    std::logic_error);
}

TEST_CASE("rules: workings of a document in US units are in psf, ft and pcf") {
    using namespace catalogue;
    std::vector<Rule> into;
    add(into, {"test", "weight", {"test", "1"}, "A weight.", Read::derived, "none", us_units},
        {{"load_kpa", "p", "a load"}, {"depth_m", "d", "a depth"}}, {{"weight_kn_per_m3", "g", "p/d"}},
        [](Pressure p, Length d) { return UnitWeight(p / d); });
    const std::vector<Term> terms = workings(into.at(0), std::array{in_kPa(from_psf(30.0)), in_m(from_ft(2.0))});
    REQUIRE(terms.size() == 3);
    CHECK(terms[0].unit == "psf");
    CHECK(close(terms[0].value, 30.0, 1e-12));
    CHECK(terms[1].unit == "ft");
    CHECK(close(terms[1].value, 2.0, 1e-12));
    CHECK(terms[2].unit == "pcf");
    CHECK(close(terms[2].value, 15.0, 1e-12));
}
