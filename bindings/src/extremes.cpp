// SPDX-License-Identifier: BSD-3-Clause
// Laws fitted to yearly maxima. A fit crosses as plain values: family (0 Gumbel, 1 lognormal), method (0 moments, 1
// L-moments), mode or median [kPa], scale [kPa] or deviation of the logarithm, winters, winters without snow.
#include "coverframe/actions/extremes_fit.hpp"

#include <cstdint>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "binding.hpp"

namespace coverframe::binding {
namespace {

using extremes::Fit;
using extremes::GumbelLaw;
using extremes::LognormalLaw;
using extremes::Method;

py::tuple fitted(int family, int method, const Numbers& maxima_kpa) {
    std::vector<Pressure> maxima;
    for (const double load : std::span(maxima_kpa.data(), static_cast<std::size_t>(maxima_kpa.size()))) {
        maxima.push_back(from_kPa(load));
    }
    const auto how = static_cast<Method>(method);
    const Fit fit = family == 0 ? extremes::fit_gumbel(maxima, how) : extremes::fit_lognormal(maxima, how);
    double first = 0;
    double second = 0;
    if (const auto* gumbel = std::get_if<GumbelLaw>(&fit.law)) {
        first = in_kPa(gumbel->mode);
        second = in_kPa(gumbel->scale);
    } else {
        const auto& lognormal = std::get<LognormalLaw>(fit.law);
        first = in_kPa(lognormal.median);
        second = lognormal.log_deviation;
    }
    return py::make_tuple(first, second, fit.winters, fit.winters_without_snow, in_kPa(fit.mean), fit.variation,
                          fit.caution);
}

Fit fit_of(int family, int method, double first, double second, int winters, int without_snow) {
    Fit fit;
    if (family == 0)
        fit.law = GumbelLaw{from_kPa(first), from_kPa(second)};
    else
        fit.law = LognormalLaw{from_kPa(first), second};
    fit.method = static_cast<Method>(method);
    fit.winters = winters;
    fit.winters_without_snow = without_snow;
    return fit;
}

/// Calls `each(i)` for every return period without the interpreter lock, and says which one is refused.
template <class Each>
void for_each(std::size_t count, Each each) {
    const py::gil_scoped_release unlocked;
    for (std::size_t i = 0; i < count; ++i) {
        try {
            each(i);
        } catch (const InputError& error) {
            if (count == 1) throw;
            std::vector<Problem> problems = error.problems();
            for (Problem& problem : problems) problem.where = "/" + std::to_string(i);
            throw InputError(std::move(problems));
        }
    }
}

py::array_t<double> loads(int family, int method, double first, double second, int winters, int without_snow,
                          const Numbers& return_periods) {
    const Fit fit = fit_of(family, method, first, second, winters, without_snow);
    py::array_t<double> result(return_periods.size());
    const double* years = return_periods.data();
    double* to = result.mutable_data();
    for_each(static_cast<std::size_t>(return_periods.size()),
             [&](std::size_t i) { to[i] = in_kPa(extremes::load(fit, years[i])); });
    return result;
}

py::tuple intervals(int family, int method, double first, double second, int winters, int without_snow,
                    const Numbers& return_periods, double level, int draws, std::uint64_t seed) {
    const Fit fit = fit_of(family, method, first, second, winters, without_snow);
    py::array_t<double> low(return_periods.size());
    py::array_t<double> high(return_periods.size());
    const double* years = return_periods.data();
    double* to_low = low.mutable_data();
    double* to_high = high.mutable_data();
    for_each(static_cast<std::size_t>(return_periods.size()), [&](std::size_t i) {
        const extremes::Interval found = extremes::interval(fit, years[i], level, {.number = draws, .seed = seed});
        to_low[i] = in_kPa(found.low);
        to_high[i] = in_kPa(found.high);
    });
    return py::make_tuple(low, high);
}

}  // namespace

void bind_extremes(py::module_& module) {
    module.def("extremes_fit", fitted);
    module.def("extremes_load", loads);
    module.def("extremes_interval", intervals);
}

}  // namespace coverframe::binding
