// SPDX-License-Identifier: BSD-3-Clause
#include "report/film_sheet.hpp"

#include <cmath>

#include "coverframe/plan/girth.hpp"
#include "coverframe/units/crossing.hpp"
#include "report/format.hpp"
#include "units/inches.hpp"

namespace coverframe::reporting {
namespace {

/// A length to be had at least: up to the centimetre, and to the inch. "4.04 m (13 ft 3 in)".
std::string at_least(Length length, UnitsShown units) {
    constexpr double arithmetic = 1e-6;  // what it leaves behind, of a centimetre or inch
    const std::string si = fixed(std::ceil(in_m(length) * 100 - arithmetic) / 100, 2) + " m";
    const std::string us = detail::feet_and_inches(in_m(from_in(std::ceil(in_in(length) - arithmetic))));
    return units == UnitsShown::us ? us + " (" + si + ')' : si + " (" + us + ')';
}

std::string given_sentence(const Plan& plan) {
    const UnitsShown units = plan.units_shown;
    const auto& width = plan.film.sheet_width;
    const auto& length = plan.film.sheet_length;
    if (!width && !length) return {};
    std::string text = "The sheet of this plan is ";
    if (width) text += both(width->value, units) + " wide";
    if (width && length) text += " and ";
    if (length) text += both(length->value, units) + " long";
    return text + ": large enough.";
}

}  // namespace

std::vector<std::string> film_sheet_sentences(const Plan& plan) {
    const auto sheet = sheet_needed(plan);
    if (!sheet) return {};
    const UnitsShown units = plan.units_shown;
    std::vector<std::string> sentences{
        "The sheet of film: at least " + at_least(sheet->width, units) + " wide and " + at_least(sheet->length, units) +
            " long, with " + both(tuck_of(plan.film).value, units) + " tucked under the band all round.",
        "It is widest " + sheet->place + ", " + both(sheet->widest_at, units) +
            " aft of the stem head: from band to band over rail, ridge and rail. Its length goes from the band at the "
            "stem up to the ridge, along it, and down to the band at the stern.",
        "Lay it with its middle along the ridge. Shrinking only makes film shorter: what does not reach under the band "
        "before the heat does not reach after it. Pleats, seams and a sheet laid askew take more."};
    const std::string given = given_sentence(plan);
    if (!given.empty()) sentences.push_back(given);
    return sentences;
}

}  // namespace coverframe::reporting
