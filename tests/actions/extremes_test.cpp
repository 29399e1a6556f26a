// SPDX-License-Identifier: BSD-3-Clause
// Tables marked "computed" were printed by another program from the same laws, for the project's notes on reliability;
// nobody published them. Other numbers name their source.
#include "coverframe/actions/extremes.hpp"

#include <array>
#include <cmath>
#include <numbers>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "coverframe/actions/rule.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::extremes;

namespace {

constexpr std::array both{Family::gumbel, Family::lognormal};
constexpr std::array variations{0.3, 0.4, 0.6, 0.8, 1.0};

}  // namespace

TEST_CASE("extremes: frequency factor of the Gumbel law") {
    // general statistics, from memory: 1.305, 2.044, 2.592, 3.137
    CHECK(close_abs(gumbel_frequency_factor(10), 1.305, 0.0005));
    CHECK(close_abs(gumbel_frequency_factor(25), 2.044, 0.0005));
    CHECK(close_abs(gumbel_frequency_factor(50), 2.592, 0.0005));
    CHECK(close_abs(gumbel_frequency_factor(100), 3.137, 0.0005));
    // EN 1991-1-3:2003, Eq. D.1, from memory, sure: 2.5923 for 50 years
    CHECK(close_abs(gumbel_frequency_factor(50), 2.5923, 0.00005));
    CHECK(close(gumbel_frequency_factor(2),
                -std::sqrt(6.0) / std::numbers::pi * (0.5772156649015329 + std::log(std::log(2.0))), 1e-14));
}

TEST_CASE("extremes: loads over the mean and over the 50-year load, computed table") {
    struct Row {
        double variation, mean_ln, mean_g, x10_ln, x10_g, x100_ln, x100_g, x1000_ln, x1000_g;
    };
    constexpr std::array<Row, 5> rows{{{0.3, 1.750, 1.778, .797, .783, 1.083, 1.092, 1.356, 1.395},
                                       {0.4, 2.048, 2.037, .743, .747, 1.111, 1.107, 1.491, 1.460},
                                       {0.6, 2.678, 2.555, .652, .698, 1.163, 1.128, 1.777, 1.550},
                                       {0.8, 3.311, 3.074, .581, .665, 1.211, 1.142, 2.073, 1.610},
                                       {1.0, 3.909, 3.592, .526, .642, 1.255, 1.152, 2.370, 1.652}}};
    const double half = 0.000501;
    for (const Row& row : rows) {
        CAPTURE(row.variation);
        const double v = row.variation;
        CHECK(close_abs(load_over_mean(Family::lognormal, v, 50), row.mean_ln, half));
        CHECK(close_abs(load_over_mean(Family::gumbel, v, 50), row.mean_g, half));
        CHECK(close_abs(load_over_50_year_load(Family::lognormal, v, 10), row.x10_ln, half));
        CHECK(close_abs(load_over_50_year_load(Family::gumbel, v, 10), row.x10_g, half));
        CHECK(close_abs(load_over_50_year_load(Family::lognormal, v, 100), row.x100_ln, half));
        CHECK(close_abs(load_over_50_year_load(Family::gumbel, v, 100), row.x100_g, half));
        CHECK(close_abs(load_over_50_year_load(Family::lognormal, v, 1000), row.x1000_ln, half));
        CHECK(close_abs(load_over_50_year_load(Family::gumbel, v, 1000), row.x1000_g, half));
    }
}

TEST_CASE("extremes: closed forms of the two laws") {
    for (const double v : {0.0, 0.1, 0.5, 1.0, 2.0}) {
        CAPTURE(v);
        // the median of a lognormal law of mean 1
        CHECK(close(load_over_mean(Family::lognormal, v, 2), 1 / std::sqrt(1 + v * v), 1e-14));
        // Phi(3) = 0.99865010196836990, tables of the normal law
        const double s = std::sqrt(std::log(1 + v * v));
        CHECK(
            close(load_over_mean(Family::lognormal, v, 1 / 0.0013498980316300933), std::exp(3 * s - s * s / 2), 1e-12));
        // Eq. D.1 of EN 1991-1-3:2003, from memory, sure: its constants are rounded
        const double d1 =
            (1 - v * std::sqrt(6.0) / std::numbers::pi * (std::log(-std::log(1 - 0.1)) + 0.57722)) / (1 + 2.5923 * v);
        CHECK(close(load_over_50_year_load(Family::gumbel, v, 10), d1, 2e-5));
        for (const Family family : both) CHECK(load_over_50_year_load(family, v, 50) == 1.0);
    }
    for (const Family family : both) {
        for (const double years : {2.0, 10.0, 1e6}) {
            CHECK(load_over_mean(family, 0, years) == 1.0);
            CHECK(load_over_50_year_load(family, 0, years) == 1.0);
        }
    }
}

TEST_CASE("extremes: rarer loads are greater, and more scatter spreads them") {
    for (const Family family : both) {
        for (const double v : {0.05, 0.3, 0.8, 2.0}) {
            double before = 0;
            for (double years = 2; years < 1e6; years *= 1.7) {
                CAPTURE(years);
                const double now = load_over_50_year_load(family, v, years);
                CHECK(now > before);
                CHECK(now > 0);
                CHECK(close(load_over_mean(family, v, years) / load_over_mean(family, v, 50), now, 1e-13));
                before = now;
                const double more = load_over_50_year_load(family, v * 0.9, years);
                if (years < 49) CHECK(now < more);
                if (years > 51) CHECK(now > more);
            }
        }
    }
}

TEST_CASE("extremes: what 1.5 times a load of fewer years amounts to, computed table") {
    constexpr std::array years{5.0, 10.0, 15.0, 25.0, 50.0};
    struct Cell {
        double multiple, period;
    };
    constexpr std::array<std::array<Cell, 5>, 5> table{{
        {{{1.026, 61}, {1.174, 186}, {1.258, 351}, {1.361, 771}, {1.5, 2213}}},
        {{{0.948, 36}, {1.121, 109}, {1.218, 206}, {1.338, 452}, {1.5, 1297}}},
        {{{0.840, 21}, {1.046, 64}, {1.163, 121}, {1.307, 265}, {1.5, 760}}},
        {{{0.769, 16}, {0.997, 49}, {1.126, 93}, {1.286, 203}, {1.5, 582}}},
        {{{0.718, 14}, {0.962, 42}, {1.100, 79}, {1.271, 173}, {1.5, 496}}},
    }};
    for (std::size_t i = 0; i < 5; ++i) {
        for (std::size_t k = 0; k < 5; ++k) {
            CAPTURE(variations[i]);
            CAPTURE(years[k]);
            const double multiple = 1.5 * load_over_50_year_load(Family::gumbel, variations[i], years[k]);
            CHECK(close_abs(multiple, table[i][k].multiple, 0.000501));
            CHECK(close_abs(return_period_of_multiple(Family::gumbel, variations[i], multiple), table[i][k].period,
                            0.51));
        }
    }
}

TEST_CASE("extremes: the return period of a multiple is the inverse") {
    for (const Family family : both) {
        for (const double v : {0.05, 0.3, 1.0, 2.0}) {
            for (const double years : {2.0, 10.0, 50.0, 12345.0, 1e6}) {
                CAPTURE(v);
                CAPTURE(years);
                const double multiple = load_over_50_year_load(family, v, years);
                CHECK(close(return_period_of_multiple(family, v, multiple), years, 1e-8));
            }
            const double top = load_over_50_year_load(family, v, 1e6);
            const double bottom = load_over_50_year_load(family, v, 2);
            CHECK(code_of([&] { return return_period_of_multiple(family, v, top * 1.0001); }) ==
                  "extremes.multiple.range");
            CHECK(code_of([&] { return return_period_of_multiple(family, v, bottom * 0.9999); }) ==
                  "extremes.multiple.range");
        }
    }
}

TEST_CASE("extremes: chance over several winters") {
    constexpr std::array winters{1.0, 3.0, 5.0, 10.0};
    constexpr std::array years{5.0, 10.0, 20.0, 25.0, 50.0};
    constexpr std::array<std::array<double, 5>, 4> table{{{.200, .100, .050, .040, .020},  // computed
                                                          {.488, .271, .143, .115, .059},
                                                          {.672, .410, .226, .185, .096},
                                                          {.893, .651, .401, .335, .183}}};
    for (std::size_t i = 0; i < 4; ++i) {
        for (std::size_t k = 0; k < 5; ++k) {
            CHECK(close_abs(exceedance_in_winters(years[k], winters[i]), table[i][k], 0.000501));
        }
    }
    // Colorado Water Conservation Board, weblink document 54318, read on a page: the one-percent flood has a chance of
    // 26 percent in 30 years and of 39 percent in 50
    CHECK(close_abs(exceedance_in_winters(100, 30), 0.26, 0.005));
    CHECK(close_abs(exceedance_in_winters(100, 50), 0.39, 0.005));
    // EN 1998-1:2004, 2.1, from memory, sure: 10 percent in 50 years is once in 475 years
    CHECK(close_abs(1 / yearly_chance(0.1, 50), 475, 0.5));
    CHECK(close(exceedance_in_winters(10, 1), 0.1, 1e-15));
    for (const double n : {1.0, 7.0, 1000.0}) {
        for (const double t : {2.0, 50.0, 1e6}) {
            CAPTURE(n);
            CAPTURE(t);
            const double chance = exceedance_in_winters(t, n);
            if (chance >= 1e-6 && chance <= 0.999) CHECK(close(1 / yearly_chance(chance, n), t, 1e-9));
        }
    }
    CHECK(exceedance_in_winters(50, 11) > exceedance_in_winters(50, 10));
    CHECK(exceedance_in_winters(50, 10) < exceedance_in_winters(49, 10));
}

TEST_CASE("extremes: the load a reliability index asks for, computed table") {
    struct Row {
        double index, chance;
        std::array<double, 5> gumbel, lognormal;
    };
    constexpr std::array<Row, 7> rows{{
        {2.3, 5.4e-2, {.87, .85, .82, .80, .78}, {.88, .84, .78, .73, .69}},
        {2.9, 2.1e-2, {.99, .99, .99, .99, .99}, {.99, .99, .99, .98, .98}},
        {3.1, 1.5e-2, {1.04, 1.04, 1.05, 1.06, 1.06}, {1.03, 1.05, 1.07, 1.09, 1.10}},
        {3.3, 1.0e-2, {1.09, 1.10, 1.12, 1.13, 1.14}, {1.08, 1.10, 1.15, 1.20, 1.24}},
        {3.7, 4.8e-3, {1.19, 1.22, 1.26, 1.29, 1.31}, {1.17, 1.23, 1.35, 1.46, 1.56}},
        {4.2, 1.6e-3, {1.33, 1.38, 1.46, 1.51, 1.54}, {1.30, 1.41, 1.63, 1.87, 2.09}},
        {4.7, 5.0e-4, {1.49, 1.57, 1.68, 1.75, 1.80}, {1.44, 1.61, 1.98, 2.39, 2.80}},
    }};
    for (const Row& row : rows) {
        CAPTURE(row.index);
        const double years = return_period_of_reliability_index(row.index, 0.7);
        CHECK(close(1 / years, row.chance, 0.05));
        for (std::size_t k = 0; k < 5; ++k) {
            CAPTURE(variations[k]);
            CHECK(close_abs(load_over_50_year_load(Family::gumbel, variations[k], years), row.gumbel[k], 0.00501));
            CHECK(
                close_abs(load_over_50_year_load(Family::lognormal, variations[k], years), row.lognormal[k], 0.00501));
        }
    }
    CHECK(close(return_period_of_reliability_index(0, 0.7), 2.0, 1e-15));
    // Phi(-3) = 0.00134990, tables of the normal law
    CHECK(close(1 / return_period_of_reliability_index(3, 1), 0.0013498980316300933, 1e-12));
}

TEST_CASE("extremes: loads in SI and in US units") {
    for (const Family family : both) {
        const Pressure si = load_of_return_period(from_kPa(in_kPa(30_psf)), family, 0.6, 10);
        const Pressure us = load_of_return_period(30_psf, family, 0.6, 10);
        CHECK(close(si, us, 1e-12));
        CHECK(close(in_psf(us), 30 * load_over_50_year_load(family, 0.6, 10), 1e-12));
        CHECK(load_of_return_period(0_kPa, family, 0.6, 10) == 0_kPa);
    }
}

TEST_CASE("extremes: arguments out of range") {
    const auto g = Family::gumbel;
    for (const double bad : {not_finite[0], not_finite[1], not_finite[2], -0.1, 2.1}) {
        CHECK(code_of([&] { return load_over_mean(g, bad, 10); }) == "extremes.variation.range");
        CHECK(code_of([&] { return load_over_50_year_load(g, bad, 10); }) == "extremes.variation.range");
        CHECK(code_of([&] { return return_period_of_multiple(g, bad, 1); }) == "extremes.variation.range");
    }
    CHECK(code_of([&] { return return_period_of_multiple(g, 0.04, 1); }) == "extremes.variation.range");
    for (const double bad : {not_finite[0], not_finite[1], not_finite[2], -10.0, 0.0, 1.0, 1.99, 1.1e6}) {
        CHECK(code_of([&] { return gumbel_frequency_factor(bad); }) == "extremes.return_period.range");
        CHECK(code_of([&] { return load_over_mean(g, 0.5, bad); }) == "extremes.return_period.range");
        CHECK(code_of([&] { return load_over_50_year_load(g, 0.5, bad); }) == "extremes.return_period.range");
        CHECK(code_of([&] { return load_of_return_period(1_kPa, g, 0.5, bad); }) == "extremes.return_period.range");
        CHECK(code_of([&] { return exceedance_in_winters(bad, 1); }) == "extremes.return_period.range");
    }
    for (const double bad : {not_finite[0], not_finite[1], not_finite[2], -1.0, 0.0, 0.5, 1.5, 1001.0}) {
        CHECK(code_of([&] { return exceedance_in_winters(50, bad); }) == "extremes.winters.range");
        CHECK(code_of([&] { return yearly_chance(0.1, bad); }) == "extremes.winters.range");
    }
    for (const double bad : {not_finite[0], not_finite[1], not_finite[2], -0.1, 0.0, 1.0}) {
        CHECK(code_of([&] { return yearly_chance(bad, 10); }) == "extremes.chance.range");
    }
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return load_of_return_period(from_kPa(bad), g, 0.5, 10); }) == "extremes.load.range");
        CHECK(code_of([&] { return return_period_of_multiple(g, 0.5, bad); }) == "extremes.multiple.range");
        CHECK(code_of([&] { return return_period_of_reliability_index(bad, 0.7); }) ==
              "extremes.reliability_index.range");
        CHECK(code_of([&] { return return_period_of_reliability_index(3, bad); }) == "extremes.sensitivity.range");
    }
    CHECK(code_of([&] { return load_of_return_period(101_kPa, g, 0.5, 10); }) == "extremes.load.range");
    CHECK(code_of([&] { return return_period_of_reliability_index(6.1, 0.7); }) == "extremes.reliability_index.range");
    CHECK(code_of([&] { return return_period_of_reliability_index(3, 1.1); }) == "extremes.sensitivity.range");
    CHECK(code_of([&] { return load_over_mean(static_cast<Family>(7), 0.5, 10); }) == "extremes.family.unknown");
}

TEST_CASE("extremes: the rules of the catalogue") {
    const auto first = [](const char* name, std::span<const double> arguments) {
        return evaluate(rule_named(name), arguments);
    };
    CHECK(first("extremes.gumbel_frequency_factor", std::array{50.0})[0] == gumbel_frequency_factor(50));
    CHECK(first("extremes.load_over_mean", std::array{1.0, 0.6, 50.0})[0] ==
          load_over_mean(Family::lognormal, 0.6, 50));
    const auto load = first("extremes.load_of_return_period", std::array{2.0, 0.0, 0.6, 10.0});
    CHECK(load[0] == first("extremes.load_over_50_year_load", std::array{0.0, 0.6, 10.0})[0]);
    CHECK(close(load[1], 2 * load[0], 1e-15));
    CHECK(close(first("extremes.return_period_of_multiple", std::array{0.0, 0.6, 1.5})[0], 760, 0.001));
    const double chance = first("extremes.exceedance_in_winters", std::array{50.0, 10.0})[0];
    const auto back = first("extremes.yearly_chance", std::array{chance, 10.0});
    CHECK(close(back[0], 0.02, 1e-12));
    CHECK(close(back[1], 50, 1e-12));
    CHECK(close(first("extremes.return_period_of_reliability_index", std::array{3.8, 0.7})[0],
                return_period_of_reliability_index(3.8, 0.7), 1e-15));
    const std::vector<Term> terms =
        workings(rule_named("extremes.load_of_return_period"), std::array{2.0, 0.0, 0.6, 10.0});
    CHECK(terms[2].unit == "years");
    CHECK_FALSE(rule_named("extremes.load_over_50_year_load").arguments[0].otherwise);
}
