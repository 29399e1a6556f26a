// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/extremes_fit.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>
#include <string>
#include <vector>

#include "actions/extremes_law.hpp"
#include "coverframe/actions/argument.hpp"
#include "coverframe/base/error.hpp"

namespace coverframe::extremes {
namespace {

constexpr double least_snow = 0.001;  // [kPa] a tenth of a millimetre of water
constexpr double most_snow = 100.0;   // [kPa]

/// Place and scale of a law; of x in kPa (Gumbel) or of ln x (lognormal).
struct PlaceAndScale {
    double place = 0;
    double scale = 0;
};

double mean_of(const std::vector<double>& values) {
    double sum = 0;
    for (const double value : values) sum += value;
    return sum / static_cast<double>(values.size());
}

double deviation_of(const std::vector<double>& values, double mean) {
    double sum = 0;
    for (const double value : values) sum += (value - mean) * (value - mean);
    return std::sqrt(sum / static_cast<double>(values.size() - 1));
}

/// Second L-moment, as the sum of (2 i - 1 - n) x_(i) over n (n - 1): nothing large is taken from anything large.
double l_scale_of(const std::vector<double>& sorted) {
    const double n = static_cast<double>(sorted.size());
    double sum = 0;
    double weight = 1.0 - n;
    for (const double value : sorted) {
        sum += weight * value;
        weight += 2.0;
    }
    return sum / (n * (n - 1.0));
}

/// Fits the law to values, which it may reorder.
PlaceAndScale fitted(Family family, Method method, std::vector<double>& values) {
    const double mean = mean_of(values);
    double scale = 0;
    if (method == Method::moments) {
        scale = deviation_of(values, mean);
        if (family == Family::gumbel) scale /= law::gumbel_deviation;
    } else {
        std::ranges::sort(values);
        scale = l_scale_of(values) * (family == Family::gumbel ? 1.0 / std::numbers::ln2 : std::sqrt(std::numbers::pi));
    }
    return {family == Family::gumbel ? mean - law::gumbel_mean * scale : mean, scale};
}

/// The maxima of the winters with snow [kPa].
std::vector<double> snow_of(std::span<const Pressure> maxima) {
    std::vector<double> snow;
    for (std::size_t i = 0; i < maxima.size(); ++i) {
        const double load = in_kPa(maxima[i]);
        if (load == 0.0) continue;
        if (!(load >= least_snow && load <= most_snow)) {
            throw InputError("extremes.maxima.range", "/" + std::to_string(i), law::text_of(load) + " kPa",
                             "a yearly maximum is 0 or lies between 0.001 and 100 kPa");
        }
        snow.push_back(load);
    }
    return snow;
}

void check_enough(const std::vector<double>& snow, std::size_t winters) {
    const std::string counted = std::to_string(snow.size()) + " of " + std::to_string(winters) + " winters have snow";
    if (winters > 0 && snow.empty()) {
        throw InputError("extremes.maxima.no_snow", "", counted, "no winter has snow: there is no law to fit");
    }
    if (snow.size() < static_cast<std::size_t>(fewest_winters)) {
        throw InputError("extremes.maxima.few", "", counted,
                         counted + "; a law needs at least " + std::to_string(fewest_winters));
    }
    if (std::ranges::min(snow) == std::ranges::max(snow)) {
        throw InputError("extremes.maxima.equal", "", law::text_of(snow.front()) + " kPa",
                         "all winters with snow have the same maximum: a series that was measured has scatter");
    }
}

Fit fit(Family family, Method method, std::span<const Pressure> maxima) {
    if (method != Method::moments && method != Method::l_moments) {
        argument::refuse({"extremes.method.unknown", "number of the method", "-"}, static_cast<double>(method), 0, 1);
    }
    std::vector<double> snow = snow_of(maxima);
    check_enough(snow, maxima.size());
    Fit result;
    result.method = method;
    result.winters = static_cast<int>(maxima.size());
    result.winters_without_snow = static_cast<int>(maxima.size() - snow.size());
    const double mean = mean_of(snow);
    result.mean = from_kPa(mean);
    result.variation = deviation_of(snow, mean) / mean;
    if (snow.size() < static_cast<std::size_t>(winters_for_a_law)) {
        result.caution = "Only " + std::to_string(snow.size()) +
                         " winters with snow: loads of long return periods are uncertain, so use the upper end of the "
                         "interval, or a code.";
    }
    if (family == Family::lognormal) {
        for (double& load : snow) load = std::log(load);
        const PlaceAndScale found = fitted(family, method, snow);
        result.law = LognormalLaw{from_kPa(std::exp(found.place)), found.scale};
    } else {
        const PlaceAndScale found = fitted(family, method, snow);
        result.law = GumbelLaw{from_kPa(found.place), from_kPa(found.scale)};
    }
    return result;
}

Family family_of(const Fit& fit) {
    return std::holds_alternative<GumbelLaw>(fit.law) ? Family::gumbel : Family::lognormal;
}

double checked(double value, double low, double high, const char* name, const char* unit) {
    return argument::within(value, low, high, {"extremes.fit.range", name, unit});
}

/// A fit may have been filled in by hand.
PlaceAndScale checked(const Fit& fit) {
    checked(fit.winters, fewest_winters, 1e6, "number of winters", "-");
    checked(fit.winters_without_snow, 0, fit.winters - fewest_winters, "number of winters without snow", "-");
    if (const auto* gumbel = std::get_if<GumbelLaw>(&fit.law)) {
        return {checked(in_kPa(gumbel->mode), -most_snow, most_snow, "mode", "kPa"),
                checked(in_kPa(gumbel->scale), 1e-12, most_snow, "scale", "kPa")};
    }
    const auto& lognormal = std::get<LognormalLaw>(fit.law);
    return {std::log(checked(in_kPa(lognormal.median), least_snow, most_snow, "median", "kPa")),
            checked(lognormal.log_deviation, 1e-12, 10.0, "deviation of the logarithm", "-")};
}

/// Chance q with which the law of the winters with snow is exceeded by the load of T years.
double chance_in_snow(double return_period, int winters, int with_snow) {
    return winters / (return_period * with_snow);
}

double checked_return_period(double years) {
    return argument::within(years, shortest_return_period, longest_return_period,
                            {"extremes.return_period.range", "return period", "years"});
}

double load_at(Family family, double value) { return family == Family::gumbel ? value : std::exp(value); }

[[noreturn]] void refuse_dry(double return_period) {
    throw InputError("extremes.return_period.dry", "", law::text_of(return_period) + " years",
                     "the return period lies in, or too near, the share of winters without snow for an interval");
}

/// Standard values and counts of drawn series.
class Drawer {
public:
    explicit Drawer(std::uint64_t seed) : engine_(seed) {}

    /// How many of `winters` have snow, if `with_snow` of them did.
    int winters_with_snow(int winters, int with_snow) {
        if (with_snow == winters) return winters;
        const double share = static_cast<double>(with_snow) / winters;
        int count = 0;
        do {
            count = 0;
            for (int i = 0; i < winters; ++i) count += uniform() < share ? 1 : 0;
        } while (count < fewest_winters);
        return count;
    }

    void fill(std::vector<double>& values, Family family) {
        for (double& value : values) value = law::exceeded(family, uniform());
    }

private:
    double uniform() { return (static_cast<double>(engine_() >> 11) + 0.5) * 0x1p-53; }

    std::mt19937_64 engine_;
};

/// Distances (estimate - truth)/fitted scale of series drawn from the standard law, in order; minus infinity where the
/// return period fell into the share of bare winters.
std::vector<double> distances(const Fit& fit, double return_period, const Draws& draws) {
    const Family family = family_of(fit);
    const int with_snow = fit.winters - fit.winters_without_snow;
    const double truth = law::exceeded(family, chance_in_snow(return_period, fit.winters, with_snow));
    Drawer drawer(draws.seed);
    std::vector<double> values;
    std::vector<double> result(static_cast<std::size_t>(draws.number));
    for (double& distance : result) {
        const int count = drawer.winters_with_snow(fit.winters, with_snow);
        values.resize(static_cast<std::size_t>(count));
        drawer.fill(values, family);
        const double q = chance_in_snow(return_period, fit.winters, count);
        if (q >= 1.0) {
            distance = -std::numeric_limits<double>::infinity();
            continue;
        }
        const PlaceAndScale found = fitted(family, fit.method, values);
        distance = law::exceeded(family, q) + (found.place - truth) / found.scale;
    }
    std::ranges::sort(result);
    return result;
}

/// The value below which the share p of the sorted values lies, between neighbours at p (n + 1).
double quantile(const std::vector<double>& sorted, double p) {
    const double rank = p * (static_cast<double>(sorted.size()) + 1.0);
    const auto below = static_cast<std::size_t>(rank);
    const double low = sorted[below - 1];
    if (std::isinf(low)) return low;
    return low + (rank - static_cast<double>(below)) * (sorted[below] - low);
}

}  // namespace

double dry_share(const Fit& fit) {
    static_cast<void>(checked(fit));
    return static_cast<double>(fit.winters_without_snow) / fit.winters;
}

Fit fit_gumbel(std::span<const Pressure> maxima, Method method) { return fit(Family::gumbel, method, maxima); }

Fit fit_lognormal(std::span<const Pressure> maxima, Method method) { return fit(Family::lognormal, method, maxima); }

Pressure load(const Fit& fit, double return_period) {
    const PlaceAndScale given = checked(fit);
    checked_return_period(return_period);
    const double q = chance_in_snow(return_period, fit.winters, fit.winters - fit.winters_without_snow);
    if (q >= 1.0) return Pressure{};
    const double result = load_at(family_of(fit), given.place + given.scale * law::exceeded(family_of(fit), q));
    if (result < 0.0) {
        throw InputError("extremes.return_period.low_tail", "", law::text_of(return_period) + " years",
                         "the Gumbel law gives a negative load for this return period: only its upper tail is of use");
    }
    return from_kPa(result);
}

Interval interval(const Fit& fit, double return_period, double level, const Draws& draws) {
    const PlaceAndScale given = checked(fit);
    checked_return_period(return_period);
    argument::within(level, 0.5, 0.99, {"extremes.level.range", "level of confidence", "-"});
    argument::within(draws.number, 1e3, 1e6, {"extremes.draws.range", "number of drawn series", "-"});
    const double q = chance_in_snow(return_period, fit.winters, fit.winters - fit.winters_without_snow);
    if (q >= 1.0) refuse_dry(return_period);
    static_cast<void>(load(fit, return_period));
    const Family family = family_of(fit);
    const double estimate = given.place + given.scale * law::exceeded(family, q);
    const std::vector<double> drawn = distances(fit, return_period, draws);
    const double least = quantile(drawn, 0.5 * (1.0 - level));
    if (std::isinf(least)) refuse_dry(return_period);
    const double low = load_at(family, estimate - given.scale * quantile(drawn, 0.5 * (1.0 + level)));
    const double high = load_at(family, estimate - given.scale * least);
    return {from_kPa(std::max(low, 0.0)), from_kPa(high)};
}

}  // namespace coverframe::extremes
