// SPDX-License-Identifier: BSD-3-Clause
// The entries of ground snow and combinations in the catalogue, each against its function or a printed number.
#include <array>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "coverframe/actions/rule.hpp"

using namespace coverframe;

namespace {

/// Number of a word among the choices of an argument.
double word(const std::string& rule, std::size_t argument, const std::string& text) {
    const std::vector<std::string>& choices = rule_named(rule).arguments.at(argument).choices;
    for (std::size_t i = 0; i < choices.size(); ++i) {
        if (choices[i] == text) return static_cast<double>(i);
    }
    FAIL("no choice ", text, " in ", rule);
    return -1;
}

std::vector<double> run(const std::string& rule, const std::vector<double>& arguments) {
    return evaluate(rule_named(rule), arguments);
}

}  // namespace

TEST_CASE("catalogue: zones are found under their words") {
    // printed numbers as in the tests of each document
    CHECK(close_abs(run("na_de.ground_load", {word("na_de.ground_load", 0, "2"), 500})[0], 1.60, 0.005));
    CHECK(close_abs(run("na_de.ground_load", {word("na_de.ground_load", 0, "2a"), 0})[0], 1.06, 0.005));
    CHECK(close_abs(run("na_at.ground_load", {word("na_at.ground_load", 0, "2*"), 1064})[0], 3.25, 0.005));
    CHECK(close_abs(run("na_at.ground_load", {word("na_at.ground_load", 0, "4"), 449})[0], 4.0, 0.005));
    CHECK(close(run("na_cz.ground_load", {word("na_cz.ground_load", 0, "VII")})[0], 4.0, 1e-12));
    CHECK(close(run("na_uk.ground_load", {word("na_uk.ground_load", 0, "3"), 100})[0], 0.5, 1e-12));
    CHECK(close(run("na_it.ground_load", {word("na_it.ground_load", 0, "III"), 100})[0], 0.6, 1e-12));
    CHECK(close(run("na_pl.ground_load", {word("na_pl.ground_load", 0, "4"), 100})[0], 1.6, 1e-12));
    CHECK(close(run("en1991_1_3.ground_load", {word("en1991_1_3.ground_load", 0, "uk ireland"), 4.5, 501})[0], 1.53,
                1e-12));
    CHECK(code_of([] {
              return run("en1991_1_3.ground_load", {word("en1991_1_3.ground_load", 0, "norway"), 1, 0});
          }) == "en1991_1_3.region.range");
}

TEST_CASE("catalogue: rules with several results give them in the order of the working") {
    const std::vector<double> lowland =
        run("na_de.exceptional_load_lowland", {word("na_de.exceptional_load_lowland", 0, "1"), 20});
    CHECK(close(lowland.at(0), 0.65, 1e-12));
    CHECK(close(lowland.at(1), 1.495, 1e-12));
    const std::vector<double> france = run("na_fr.ground_load", {word("na_fr.ground_load", 0, "D"), 1500});
    CHECK(close(france.at(0), 0.9, 1e-12));
    CHECK(close(france.at(1), 2.8, 1e-12));
    CHECK(close(france.at(2), 3.7, 1e-12));
    const std::vector<double> swiss = run("na_ch.ground_load", {500, word("na_ch.ground_load", 1, "+200 m")});
    CHECK(close(swiss.at(0), 700, 1e-12));
    CHECK(close(swiss.at(1), 2.0, 1e-12));
    const std::vector<double> ten = run("en1991_1_3.return_period_load", {2.0, 10, 0.6});
    CHECK(close_abs(ten.at(0), 0.70, 0.005));
    CHECK(close(ten.at(1), 2.0 * ten.at(0), 1e-12));
    CHECK(ten.at(0) == run("en1991_1_3.return_period_factor", {10, 0.6}).at(0));
    const std::vector<double> old = run("en1991_1_3.unit_weight", {word("en1991_1_3.unit_weight", 0, "old")});
    CHECK(close(old.at(0), 2.5, 1e-12));
    CHECK(close(old.at(1), 3.5, 1e-12));
}

TEST_CASE("catalogue: combinations by name") {
    struct Row {
        std::string rule;
        std::vector<double> arguments;
        std::array<double, 3> expected;
    };
    // by hand, as in the tests of en1990; leading 0 snow, 1 wind; self-weight 0 worsens, 1 helps
    for (const Row& row : std::vector<Row>{{"en1990.snow_psi", {1, 1000}, {0.5, 0.2, 0.0}},
                                           {"en1990.strength", {0, 0, 0.5, 0.6}, {1.35, 1.5, 0.9}},
                                           {"en1990.strength", {1, 1, 0.5, 0.6}, {1.0, 0.75, 1.5}},
                                           {"en1990.strength_a", {0, 0.5, 0.6}, {1.35, 0.75, 0.9}},
                                           {"en1990.strength_b", {0, 0, 0.5, 0.6}, {1.1475, 1.5, 0.9}},
                                           {"en1990.equilibrium", {1, 1, 0.5, 0.6}, {0.9, 0.75, 1.5}},
                                           {"en1990.exceptional_snow", {0, 0.2, 0.1}, {1.0, 1.0, 0.2}},
                                           {"en1990.exceptional_snow", {1, 0.2, 0.1}, {1.0, 1.0, 0.1}},
                                           {"en1990.characteristic", {1, 0.7, 0.6}, {1.0, 0.7, 1.0}},
                                           {"en1990.frequent", {0, 0.5, 0.2, 0.2, 0.1}, {1.0, 0.5, 0.1}},
                                           {"en1990.quasi_permanent", {0.2, 0.1}, {1.0, 0.2, 0.1}}}) {
        CAPTURE(row.rule);
        const std::vector<double> factors = run(row.rule, row.arguments);
        REQUIRE(factors.size() == 3);
        for (std::size_t k = 0; k < 3; ++k) CHECK(close_abs(factors[k], row.expected[k], 1e-12));
    }
}

TEST_CASE("catalogue: what nobody states is the safe choice") {
    const Rule& period = rule_named("en1991_1_6.return_period");
    CHECK(period.arguments.at(0).otherwise == "longer");
    CHECK(period.arguments.at(1).otherwise == "again");
    CHECK(rule_named("en1991_1_3.unit_weight").arguments.at(0).otherwise == "wet");
    CHECK(rule_named("en1990.snow_psi").arguments.at(0).otherwise == "nordic");
    CHECK(close(run("en13782.reduced_snow_load", {1})[0], 0.2, 1e-12));
    CHECK(code_of([] { return run("en13782.reduced_snow_load", {0}); }) == "en13782.clearing.range");
    CHECK(close(run("en1991_1_6.return_period", {2, 0})[0], 10, 1e-12));
    CHECK(close(run("en13782.simplified_factors", {1})[1], 1.35, 1e-12));
    CHECK(close(run("na_se.mean_of_zones", {2.0, 2.5})[0], 2.25, 1e-12));
    CHECK(close(run("na_fr.low_slope_addition", {0.0})[0], 0.2, 1e-12));
    CHECK(close(run("na_fr.exceptional_load", {1})[0], 1.0, 1e-12));
}
