// SPDX-License-Identifier: BSD-3-Clause
// Laws fitted to yearly maxima.
#include "coverframe/actions/extremes_fit.hpp"
#include "model.hpp"

namespace coverframe::validation {
namespace {

/// Input: "family", "method", "maxima" in multiples of "unit". Answers in the same multiples: "mode" and "scale" of a
/// Gumbel law, "mean", "deviation", and loads "x_2", "x_5", "x_10", "x_25", "x_50", "x_100".
Answers yearly_maxima(const Input& input) {
    const Pressure unit = input.quantity<Pressure>("unit");
    std::vector<Pressure> maxima;
    for (const double value : input.numbers("maxima")) maxima.push_back(value * unit);
    const std::string method = input.text("method");
    if (method != "moments" && method != "l_moments") throw CaseError("a method is \"moments\" or \"l_moments\"");
    const auto how = method == "moments" ? extremes::Method::moments : extremes::Method::l_moments;
    const std::string family = input.text("family");
    if (family != "gumbel" && family != "lognormal") throw CaseError("a family is \"gumbel\" or \"lognormal\"");
    const bool gumbel = family == "gumbel";
    const std::string fitting = gumbel ? "extremes::fit_gumbel" : "extremes::fit_lognormal";
    const extremes::Fit fit = gumbel ? extremes::fit_gumbel(maxima, how) : extremes::fit_lognormal(maxima, how);

    const auto multiple = [&](Pressure load) { return in_kPa(load) / in_kPa(unit); };
    Answers answers{{"mean", answer(multiple(fit.mean), fitting)},
                    {"deviation", answer(fit.variation * multiple(fit.mean), fitting)}};
    if (const auto* law = std::get_if<extremes::GumbelLaw>(&fit.law)) {
        answers["mode"] = answer(multiple(law->mode), fitting);
        answers["scale"] = answer(multiple(law->scale), fitting);
    }
    for (const int years : {2, 5, 10, 25, 50, 100}) {
        answers["x_" + std::to_string(years)] =
            answer(multiple(extremes::load(fit, years)), fitting + " extremes::load");
    }
    return answers;
}

}  // namespace

void add_extremes_models(std::map<std::string, Model>& all) { all["yearly_maxima"] = yearly_maxima; }

}  // namespace coverframe::validation
