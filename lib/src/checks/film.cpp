// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/checks/film.hpp"

#include <algorithm>
#include <cmath>

#include "coverframe/actions/arrangement.hpp"
#include "coverframe/units/crossing.hpp"
#include "film_bay.hpp"
#include "shown.hpp"

namespace coverframe {
namespace {

using namespace checks_detail;

const Clause clause_stress{"coverframe", "film stress"};

// ---- stress --------------------------------------------------------------------------------------------------------

double tension_per_metre(const Hung& h) {
    return std::max(h.state.tension_upper, h.state.tension_lower) / h.strip.width;
}

Finding stress_finding(const CheckInput& input, const FilmBay& bay) {
    const UnitsShown units = input.plan.units_shown;
    const Hung worst = hung(input, worst_strip(input, bay.strips, tension_per_metre));
    const Film& film = input.plan.film;
    const LineLoad tension = from_N_per_m(tension_per_metre(worst));
    const Pressure stress = tension / film.thickness.value;
    Finding finding = compare("film.stress", bay.part, clause_stress, input, in_N_per_mm2(stress),
                              in_N_per_mm2(film.strength.value), "N/mm2");
    finding.x = worst.x;
    finding.sentence = opening(bay.part) + " is stretched to " + shown_stress(stress, units) + " " +
                       on_side(input, worst, tension_per_metre) + " where it takes " +
                       shown_stress(film.strength.value, units) +
                       (finding.verdict == Verdict::exceeded ? "; use thicker film, or a steeper cover." : ".");
    if (input.workings)
        finding.workings = {term("T", std::max(worst.state.tension_upper, worst.state.tension_lower), "N",
                                 "largest tension of the strip, along the film"),
                            term("b", worst.strip.width, "m", "width of the strip"),
                            term("t", in_mm(film.thickness.value), "mm", film.thickness.source),
                            term("sigma", in_N_per_mm2(stress), "N/mm2", "T/(b t)", clause_stress),
                            term("strength", in_N_per_mm2(film.strength.value), "N/mm2", film.strength.source)};
    return finding;
}

// ---- shedding ------------------------------------------------------------------------------------------------------

Clause shedding_clause(const Plan& plan) {
    if (plan.basis.shedding_slope) return {"coverframe", "shedding slope of the plan"};
    const SnowDocument document = plan.basis.snow.document;
    return {name_of(document), is_asce7(document) ? "7.4" : is_nbc(document) ? "4.1.6.2" : "5.3.3"};
}

Finding shedding_finding(const CheckInput& input, const Cited<Angle>& threshold, const FilmBay& bay) {
    const Hung flattest =
        hung(input, worst_strip(input, bay.strips, [](const Hung& h) { return -chord_slope(h.state); }));
    const Angle slope = from_rad(std::atan(chord_slope(flattest.state)));
    Finding finding = compare("film.shedding", bay.part, shedding_clause(input.plan), input, in_deg(threshold.value),
                              in_deg(slope), "deg");
    finding.x = flattest.x;
    const std::string slopes = opening(bay.part) + " slopes " + shown(slope) + " from ridge to rail at its flattest";
    finding.sentence =
        finding.verdict == Verdict::satisfied
            ? slopes + ", not under the " + shown(threshold.value) + " from which snow is expected to begin to slide."
            : slopes + ": snow is not expected to slide off under " + shown(threshold.value) +
                  "; raise the ridge, or plan to clear it from the ground with soft tools.";
    if (input.workings)
        finding.workings = {term("L", flattest.state.span, "m", "level span of the strip"),
                            term("h", flattest.state.rise, "m", "height of the rail over the ridge, under load"),
                            term("slope", in_deg(slope), "deg", "arctan(-h/L)"),
                            term("threshold", in_deg(threshold.value), "deg", threshold.source, finding.clause)};
    return finding;
}

}  // namespace

std::vector<Finding> check_film_stress(const CheckInput& input) {
    return for_each_bay(input, [&](const FilmBay& bay) { return stress_finding(input, bay); });
}

std::vector<Finding> check_shedding(const CheckInput& input) {
    require_usable(input);
    const Cited<Angle> threshold = shedding_threshold(input.plan);
    return for_each_bay(input, [&](const FilmBay& bay) { return shedding_finding(input, threshold, bay); });
}

}  // namespace coverframe
