// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/extremes.hpp"

#include <cmath>

#include "actions/extremes_law.hpp"
#include "coverframe/actions/argument.hpp"
#include "coverframe/base/error.hpp"

namespace coverframe::extremes {
namespace {

double checked_return_period(double years) {
    return argument::within(years, shortest_return_period, longest_return_period,
                            {"extremes.return_period.range", "return period", "years"});
}

double checked_variation(double variation, double least) {
    return argument::within(variation, least, 2.0, {"extremes.variation.range", "coefficient of variation", "-"});
}

double checked_winters(double winters) {
    argument::within(winters, 1.0, 1000.0, {"extremes.winters.range", "number of winters", "-"});
    if (winters != std::floor(winters)) {
        throw InputError("extremes.winters.range", "", law::text_of(winters),
                         "a number of winters is whole: a yearly maximum is not scaled by months");
    }
    return winters;
}

Family checked(Family family) {
    if (family == Family::gumbel || family == Family::lognormal) return family;
    argument::refuse({"extremes.family.unknown", "number of the law", "-"}, static_cast<double>(family), 0, 1);
}

double factor(double years) { return (law::gumbel_exceeded(1.0 / years) - law::gumbel_mean) / law::gumbel_deviation; }

/// Deviation of the logarithm.
double log_deviation(double variation) { return std::sqrt(std::log1p(variation * variation)); }

double over_50(Family family, double variation, double years) {
    if (family == Family::gumbel) return (1.0 + variation * factor(years)) / (1.0 + variation * factor(50.0));
    const double steps = law::normal_exceeded(1.0 / years) - law::normal_exceeded(1.0 / 50.0);
    return std::exp(steps * log_deviation(variation));
}

}  // namespace

double gumbel_frequency_factor(double return_period) { return factor(checked_return_period(return_period)); }

double load_over_mean(Family family, double variation, double return_period) {
    checked_variation(variation, 0.0);
    checked_return_period(return_period);
    if (checked(family) == Family::gumbel) return 1.0 + variation * factor(return_period);
    const double s = log_deviation(variation);
    return std::exp(law::normal_exceeded(1.0 / return_period) * s - 0.5 * s * s);
}

double load_over_50_year_load(Family family, double variation, double return_period) {
    return over_50(checked(family), checked_variation(variation, 0.0), checked_return_period(return_period));
}

Pressure load_of_return_period(Pressure load_50, Family family, double variation, double return_period) {
    argument::within(in_kPa(load_50), 0.0, 100.0, {"extremes.load.range", "50-year load", "kPa"});
    return load_over_50_year_load(family, variation, return_period) * load_50;
}

double return_period_of_multiple(Family family, double variation, double multiple) {
    checked_variation(variation, 0.05);
    argument::within(multiple, over_50(checked(family), variation, shortest_return_period),
                     over_50(family, variation, longest_return_period),
                     {"extremes.multiple.range", "multiple of the 50-year load", "-"});
    if (family == Family::gumbel) {
        const double k = (multiple * (1.0 + variation * factor(50.0)) - 1.0) / variation;
        return 1.0 / law::gumbel_chance_over(law::gumbel_mean + law::gumbel_deviation * k);
    }
    const double u = law::normal_exceeded(1.0 / 50.0) + std::log(multiple) / log_deviation(variation);
    return 1.0 / law::normal_chance_over(u);
}

double exceedance_in_winters(double return_period, double winters) {
    return -std::expm1(checked_winters(winters) * std::log1p(-1.0 / checked_return_period(return_period)));
}

double yearly_chance(double chance, double winters) {
    argument::within(chance, 1e-6, 0.999, {"extremes.chance.range", "chance over the winters", "-"});
    return -std::expm1(std::log1p(-chance) / checked_winters(winters));
}

double return_period_of_reliability_index(double reliability_index, double sensitivity) {
    argument::within(reliability_index, 0.0, 6.0, {"extremes.reliability_index.range", "reliability index", "-"});
    argument::within(sensitivity, 0.0, 1.0, {"extremes.sensitivity.range", "sensitivity", "-"});
    return 1.0 / law::normal_chance_over(sensitivity * reliability_index);
}

}  // namespace coverframe::extremes
