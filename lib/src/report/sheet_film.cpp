// SPDX-License-Identifier: BSD-3-Clause
#include <algorithm>
#include <cmath>
#include <numbers>

#include "coverframe/film/strip.hpp"
#include "coverframe/report/drawing.hpp"
#include "coverframe/units/crossing.hpp"
#include "report/format.hpp"
#include "report/html.hpp"
#include "report/sheet.hpp"

namespace coverframe::reporting {
namespace {

std::string pond_sentence(const PondFlag& pond, UnitsShown units) {
    std::string text = "A hollow " + pond.place + ", holds " + both(pond.volume * 1e3, "L", units) + ", " +
                       both(pond.depth, "m", units) + " deep, " + both(pond.weight, "N", units, 2);
    for (const std::string& name : pond.reaches) text += ", over the " + name;
    return text + ". It runs over " + pond.spills + '.';
}

std::string gap_sentence(const SurfaceTouch& touch, UnitsShown units) {
    if (touch.force > 0) {
        return "The film rests on the " + touch.obstacle + " with " + both(touch.force, "N", units) + ", up to " +
               both(touch.greatest_force, "N/m", units) + " along its edge. Nothing may rest on it.";
    }
    if (!std::isfinite(touch.least_gap)) return "The " + touch.obstacle + " reaches out from under the film.";
    std::string text = "The film stays " + both(touch.least_gap, "m", units) + " clear of the " + touch.obstacle;
    if (touch.least_gap < touch.needed) return text + ", and " + both(touch.needed, "m", units) + " are asked for.";
    return text + " (" + both(touch.needed, "m", units) + " asked for).";
}

std::string first_sentence(const TouchLoad& first, UnitsShown units) {
    return "It first touches the " + first.touch.obstacle + " with " + percent(*first.touch.share) +
           " of the snow of \"" + first.arrangement + "\", " + both(first.load / 1000, "kPa", units) +
           " where most of it lies: clear it before that.";
}

std::string support_sentence(const SupportOverStrap& support, UnitsShown units) {
    return "Behind the " + support.obstacle + ", " + support.upright + " stands " + both(support.height, "m", units) +
           " over a line from the top of the " + support.obstacle + " to the stern end of the ridge; some " +
           both(0.25, "m", units, 2) + " is usual behind a windshield (common practice, no source).";
}

/// What a strength per area is worth.
std::string span_sentence(const Plan& plan) {
    constexpr double often_said = 12.3e3;  // Pa; common practice, no source: 256 lb per square foot
    const Film& film = plan.film;
    const double thickness = in_m(film.thickness.value);
    const double nu = film.poisson.value;
    const double stiffness = in_Pa(film.modulus.value) * thickness / (1 - nu * nu);
    const double limit = in_Pa(film.strength.value) * thickness;
    const double before = std::min(in_N_per_m(film.tension_low.value), 0.5 * limit);
    const double span = span_at_limit(stiffness, before, limit, often_said);
    return "A load per area says nothing about film without its span: this film would reach its strength under " +
           both(often_said / 1000, "kPa", plan.units_shown) + " over a span of " + both(span, "m", plan.units_shown) +
           ".";
}

std::string nearest_html(const SurfaceLook& look, UnitsShown units) {
    const SurfaceTouch* nearest = nullptr;
    for (const SurfaceTouch& touch : look.touches) {
        if (!std::isfinite(touch.least_gap)) continue;
        if (nearest == nullptr || touch.least_gap - touch.needed < nearest->least_gap - nearest->needed)
            nearest = &touch;
    }
    if (nearest == nullptr) return tag("span", "none");
    if (nearest->force > 0) {
        return tag("span", nearest->obstacle + ": rests with ") + value_html(nearest->force, "N", units);
    }
    return tag("span", nearest->obstacle + ": ") + value_html(nearest->least_gap, "m", units);
}

std::string looks_html(const SurfaceSurvey& survey, UnitsShown units) {
    Table table{{"snow", "water", "nearest to", "sheds", "partly", "holds"}, {}};
    for (const SurfaceLook& look : survey.looks) {
        const std::string name = tag("span", look.arrangement, "small");
        if (!look.usable()) {
            table.rows.push_back({name, tag("span", look.message), "", "", "", ""});
            continue;
        }
        table.rows.push_back({name, value_html(look.water * 1e3, "L", units), nearest_html(look, units),
                              tag("span", whole_percent(look.slopes.sheds), "n"),
                              tag("span", whole_percent(look.slopes.partly), "n"),
                              tag("span", whole_percent(look.slopes.holds), "n")});
    }
    return table_html(table);
}

}  // namespace

std::string film_html(const Assessment& assessment, const SurfaceSurvey& survey) {
    const UnitsShown units = assessment.plan.units_shown;
    const SurfaceLook& worst = survey.looks[static_cast<std::size_t>(survey.worst)];
    std::string html =
        tag("p",
            "The film as one surface, at its least tension and on the softest straps, under snow as it "
            "is, without factors, "
            "every hollow filled to the brim. It carries along the boat as well, so it may hold less water "
            "than the strips of the drawings above, by which water is judged too. What it brings to "
            "uprights, ridge, straps, film and band beyond the strips is among the checks. Worst of all "
            "arrangements: " +
                worst.arrangement + '.') +
        '\n';
    if (!worst.usable())
        return html + tag("p", "No equilibrium: " + worst.message, "strong") + '\n' + looks_html(survey, units);
    std::vector<std::string> sentences;
    for (const PondFlag& pond : worst.ponds)
        sentences.push_back(pond_sentence(pond, units));
    if (worst.ponds.empty()) sentences.emplace_back("No hollow holds more than a cupful of water.");
    for (const SurfaceTouch& touch : worst.touches) sentences.push_back(gap_sentence(touch, units));
    for (const TouchLoad& first : survey.touched) sentences.push_back(first_sentence(first, units));
    for (const RidgeDip& dip : worst.dips) {
        sentences.push_back("The ridge dips by " + both(dip.depth, "m", units) + ", from " + dip.bay + ", " +
                            both(dip.x, "m", units) + " aft.");
    }
    if (!worst.lifts.empty()) {
        const RidgeLift& lift = *std::ranges::max_element(worst.lifts, {}, &RidgeLift::gap);
        sentences.push_back("The film lifts off the ridge, by " + both(lift.gap, "m", units) + " most, " +
                            both(lift.x, "m", units) + " aft: the ridge is too low there.");
    }
    for (const SupportOverStrap& support : survey.supports) sentences.push_back(support_sentence(support, units));
    sentences.push_back("Flattest film: " + both(worst.slopes.least * 180 / std::numbers::pi, "deg", units) + ", " +
                        place_on(survey.surface, worst.slopes.least_at[0], worst.slopes.least_at[1]) +
                        ". Snow counts as shed from " + both(survey.shedding * 180 / std::numbers::pi, "deg", units) +
                        " on, as held under half of that.");
    sentences.push_back(span_sentence(assessment.plan));
    html += list_html(sentences) + '\n' + looks_html(survey, units) + '\n';
    return html +
           wrap("figure", '\n' + tag("figcaption", "Film from above: " + worst.arrangement) + '\n' +
                              surface_view(assessment.plan, survey.surface, survey.pictured, {.width = 680})) +
           '\n';
}

}  // namespace coverframe::reporting
