// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/extremes.hpp"

#include <numbers>

#include "actions/catalogue/elementary.hpp"
#include "actions/catalogue/entry.hpp"

namespace coverframe::catalogue {

using namespace extremes;

namespace {

const std::string space = "extremes";
const std::string laws_read = "Gumbel: quantile and moments on a page (Ouranos, appendix A7); lognormal derived";

// A reduced load is asked for, so neither the law nor the scatter has a word or number that is taken if none is given.
const Text family_text{"family", "law", "law of the yearly maxima"};
const Text variation_text{"coefficient_of_variation", "V", "of the yearly maxima, 0 to 2"};
const Text years_text{"return_period_years", "T", "return period, 2 to 1e6"};
const Text winters_text{"winters", "N", "whole number of winters, 1 to 1000"};
const std::string ratio_formula =
    "Gumbel (1 + V k_T)/(1 + V k_50), k_T = -(sqrt(6)/pi)(0.5772 + ln(-ln(1 - 1/T))); "
    "lognormal exp((u_T - u_50) s), s^2 = ln(1 + V^2), Phi(u_T) = 1 - 1/T";

// Fast forms are of the Gumbel law alone: the quantiles of the normal law have no short series.

constexpr double gumbel_deviation = 1.2825498301618641;  // pi/sqrt(6)

constexpr double fast_gumbel_factor(double years) {
    return (-fast_log(-fast_log1p(-1.0 / years)) - std::numbers::egamma) / gumbel_deviation;
}

/// (1 + V k_T)/(1 + V k_50)
constexpr double fast_over_50(double variation, double factor) {
    constexpr double of_50 = fast_gumbel_factor(50.0);
    return (1.0 + variation * factor) / (1.0 + variation * of_50);
}

constexpr Covered fast_years(double years) { return within(years, shortest_return_period, longest_return_period); }

constexpr Covered fast_gumbel_covered(Family family, double variation, double years) {
    return one_if(family == Family::gumbel) * within(variation, 0.0, 2.0) * fast_years(years);
}

void add_loads(std::vector<Rule>& rules) {
    add(rules,
        {space, "gumbel_frequency_factor", clause_gumbel, "Frequency factor of the Gumbel law.", Read::page,
         "quantile and moments of the law (Ouranos, appendix A7)"},
        {years_text}, {{"frequency_factor", "k_T", "-(sqrt(6)/pi)(0.5772 + ln(-ln(1 - 1/T)))"}},
        [](double years) { return gumbel_frequency_factor(years); },
        [](double years) { return fast(fast_years(years), fast_gumbel_factor(years)); });
    add(rules,
        {space, "load_over_mean", clause_laws, "Load of a return period over the mean yearly maximum.", Read::part,
         laws_read},
        {family_text, variation_text, years_text},
        {{"load_over_mean", "x_T/mean", "Gumbel 1 + V k_T; lognormal exp(u_T s - s^2/2), s^2 = ln(1 + V^2)"}},
        [](Family family, double variation, double years) { return load_over_mean(family, variation, years); },
        [](Family family, double variation, double years) {
            return fast(fast_gumbel_covered(family, variation, years), 1.0 + variation * fast_gumbel_factor(years));
        });
    add(rules,
        {space, "load_over_50_year_load", clause_laws, "Load of a return period over the 50-year load.", Read::part,
         laws_read},
        {family_text, variation_text, years_text}, {{"load_over_50_year_load", "x_T/x_50", ratio_formula}},
        [](Family family, double variation, double years) { return load_over_50_year_load(family, variation, years); },
        [](Family family, double variation, double years) {
            return fast(fast_gumbel_covered(family, variation, years),
                        fast_over_50(variation, fast_gumbel_factor(years)));
        });
    add(rules,
        {space, "load_of_return_period", clause_laws, "Load of a return period from the 50-year load.", Read::part,
         laws_read},
        {{"load_50_years_kpa", "x_50", "50-year load, 0 to 100"}, family_text, variation_text, years_text},
        {{"load_over_50_year_load", "x_T/x_50", ratio_formula}, {"load_kpa", "x_T", "x_50 (x_T/x_50)"}},
        [](Pressure x_50, Family family, double variation, double years) {
            return std::tuple{load_over_50_year_load(family, variation, years),
                              load_of_return_period(x_50, family, variation, years)};
        },
        [](double x_50, Family family, double variation, double years) {
            const double ratio = fast_over_50(variation, fast_gumbel_factor(years));
            return fast(within(x_50, 0.0, 100.0) * fast_gumbel_covered(family, variation, years), ratio, ratio * x_50);
        });
    add(rules,
        {space, "return_period_of_multiple", clause_laws, "Return period of a multiple of the 50-year load.",
         Read::part, laws_read},
        {family_text,
         {"coefficient_of_variation", "V", "of the yearly maxima, 0.05 to 2"},
         {"multiple", "x/x_50", "multiple of the 50-year load, from that of 2 to that of 1e6 years"}},
        {{"return_period_years", "T", "1/(1 - F(x))"}}, [](Family family, double variation, double multiple) {
            return return_period_of_multiple(family, variation, multiple);
        },
        [](Family family, double variation, double multiple) {
            // A little within the range of return periods, so that no rounding puts an item outside.
            constexpr double least = fast_gumbel_factor(shortest_return_period) + 1e-9;
            constexpr double most = fast_gumbel_factor(longest_return_period) - 1e-9;
            constexpr double of_50 = fast_gumbel_factor(50.0);
            const double factor = (multiple * (1.0 + variation * of_50) - 1.0) / variation;
            const double exceeded = std::numbers::egamma + gumbel_deviation * factor;
            return fast(one_if(family == Family::gumbel) * within(variation, 0.05, 2.0) *
                            within(factor, least, most),
                        -1.0 / fast_expm1(-fast_exp(-exceeded)));
        });
}

constexpr Covered fast_winters(double winters) {
    constexpr double counts_one = 0x1.8p52;  // its last bit counts one, so that a sum with it is whole
    return within(winters, 1.0, 1000.0) * one_if((winters + counts_one) - counts_one == winters);
}

void add_chances(std::vector<Rule>& rules) {
    add(rules,
        {space, "exceedance_in_winters", clause_winters,
         "Chance that the load of a return period is exceeded at least once in some winters.", Read::page,
         "Colorado Water Conservation Board, weblink document 54318"},
        {years_text, winters_text}, {{"chance", "P", "1 - (1 - 1/T)^N"}},
        [](double years, double winters) { return exceedance_in_winters(years, winters); },
        [](double years, double winters) {
            return fast(fast_years(years) * fast_winters(winters), -fast_expm1(winters * fast_log1p(-1.0 / years)));
        });
    add(rules,
        {space, "yearly_chance", clause_winters,
         "Yearly chance, and return period, that go with a chance over some winters.", Read::derived,
         "inverse of exceedance_in_winters"},
        {{"chance", "P", "over the winters, 1e-6 to 0.999"}, winters_text},
        {{"yearly_chance", "p", "1 - (1 - P)^(1/N)"}, {"return_period_years", "T", "1/p"}},
        [](double chance, double winters) {
            const double yearly = yearly_chance(chance, winters);
            return std::tuple{yearly, 1.0 / yearly};
        },
        [](double chance, double winters) {
            const double yearly = -fast_expm1(fast_log1p(-chance) / winters);
            return fast(within(chance, 1e-6, 0.999) * fast_winters(winters), yearly, 1.0 / yearly);
        });
    add(rules,
        {space, "return_period_of_reliability_index", clause_reliability,
         "Return period of the load a reliability index asks for.", Read::sure, "EN 1990 C7, alpha 0.7"},
        {{"reliability_index", "beta", "for one year, 0 to 6"},
         {"sensitivity", "alpha", "of the load, 0 to 1; 0.7 in EN 1990"}},
        {{"return_period_years", "T", "1/Phi(-alpha beta)"}},
        [](double beta, double alpha) { return return_period_of_reliability_index(beta, alpha); });
}

}  // namespace

void add_extremes(std::vector<Rule>& rules) {
    add_loads(rules);
    add_chances(rules);
}

}  // namespace coverframe::catalogue
