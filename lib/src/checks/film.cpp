// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/checks/film.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "common.hpp"
#include "coverframe/actions/arrangement.hpp"
#include "coverframe/units/crossing.hpp"
#include "shown.hpp"

namespace coverframe {
namespace {

using namespace checks_detail;

const Clause clause_stress{"coverframe", "film stress"};
const Clause clause_drainage{"coverframe", "drainage"};

/// A strip with its state.
struct Hung {
    const CoverStrip& strip;
    const StripState& state;
    double x = 0;  ///< [m]
};

Hung hung(const CheckInput& input, int i) {
    const CoverStrip& strip = input.cover.strips[at(i)];
    return {strip, input.state.strips[at(i)], x_of(input.cover, strip)};
}

/// "on the port side", or "on both sides" where the strip across is as bad.
template <class Badness>
std::string on_side(const CheckInput& input, const Hung& worst, Badness badness) {
    for (std::size_t i = 0; i < input.cover.strips.size(); ++i) {
        const CoverStrip& strip = input.cover.strips[i];
        if (strip.node == worst.strip.node && strip.side != worst.strip.side &&
            alike(badness(hung(input, static_cast<int>(i))), badness(worst)))
            return "on both sides";
    }
    return std::string("on the ") + name_of(worst.strip.side) + " side";
}

/// The strip of a bay for which `badness` is largest; the first of equals. \pre at least one
template <class Badness>
int worst_strip(const CheckInput& input, const std::vector<int>& strips, Badness badness) {
    return *std::ranges::max_element(strips, {}, [&](int i) { return badness(hung(input, i)); });
}

/// A bay that has film.
struct FilmBay {
    const RidgeBay& bay;
    std::string part;         ///< "film, U1 to U2"
    std::vector<int> strips;  ///< of Cover::strips
};

/// One finding for each bay that has film.
template <class Make>
std::vector<Finding> for_each_bay(const CheckInput& input, Make make) {
    require_usable(input);
    std::vector<Finding> findings;
    for (const RidgeBay& bay : input.cover.layout.bays) {
        const FilmBay film{bay, bay_part("film", bay), strips_of(input.cover, bay)};
        if (!film.strips.empty()) findings.push_back(make(film));
    }
    return findings;
}

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

// ---- drainage ------------------------------------------------------------------------------------------------------

double chord_slope(const StripState& state) { return -state.rise / state.span; }
double sag_slope(const StripState& state) { return 4.0 * state.sag / state.span; }

// Worst where the chord does not fall at all, steepest the wrong way first; then by the share of the chord's slope that
// the sag takes.
std::pair<bool, double> drainage_badness(const Hung& h) {
    const double capacity = chord_slope(h.state);
    if (capacity <= 0.0) return {true, -capacity};
    return {false, sag_slope(h.state) / capacity};
}

/// Water behind one side of a bay.
struct Pond {
    std::vector<int> strips;  ///< neighbours that hold water, the worst strip among them
    double volume = 0;        ///< to the brim [m3]
    double deepest = 0;       ///< [m]
};

// The part of a strip's width that lies in the bay: at the ends of the bay the half on this side of its station.
double width_in(const CheckInput& input, const RidgeBay& bay, const CoverStrip& strip) {
    const auto x = [&](std::size_t station) { return input.cover.layout.frame.nodes[at(bay.stations[station])].at[0]; };
    const std::size_t last = bay.stations.size() - 1;
    if (strip.node == bay.stations.front()) return 0.5 * std::abs(x(1) - x(0));
    if (strip.node == bay.stations.back()) return 0.5 * std::abs(x(last) - x(last - 1));
    return strip.width;
}

// Neighbours of the worst strip on its side, within the bay, that hold water.
Pond pond_of(const CheckInput& input, const FilmBay& bay, int worst) {
    std::vector<int> side;
    for (const int i : bay.strips) {
        if (input.cover.strips[at(i)].side == input.cover.strips[at(worst)].side) side.push_back(i);
    }
    std::ranges::sort(side, {}, [&](int i) { return input.cover.strips[at(i)].station; });
    const auto hollow = [&](int i) { return hollow_of(input.state.strips[at(i)]); };
    auto first = std::ranges::find(side, worst);
    auto end = first + 1;
    while (first != side.begin() && hollow(*(first - 1)).area > 0.0) --first;
    while (end != side.end() && hollow(*end).area > 0.0) ++end;
    Pond pond;
    for (auto it = first; it != end; ++it) {
        pond.strips.push_back(*it);
        pond.volume += hollow(*it).area * width_in(input, bay.bay, input.cover.strips[at(*it)]);
        pond.deepest = std::max(pond.deepest, hollow(*it).depth);
    }
    return pond;
}

bool under_hollow(const Hung& h, const Point& point) {
    const Hollow hollow = hollow_of(h.state);
    const double y = in_m(point.y);
    const bool side = h.strip.side == Side::port ? y <= 0.0 : y >= 0.0;
    const double from_upper = h.state.span - (std::abs(h.strip.rail[1]) - std::abs(y));
    return side && std::abs(in_m(point.x) - h.x) <= 0.5 * h.strip.width && from_upper >= hollow.from &&
           from_upper <= hollow.to;
}

std::string obstacles_under(const CheckInput& input, const Pond& pond) {
    std::string names;
    for (const Obstacle& obstacle : input.plan.boat.obstacles) {
        const bool under = std::ranges::any_of(sampled(obstacle.outline), [&](const Point& point) {
            return std::ranges::any_of(pond.strips, [&](int i) { return under_hollow(hung(input, i), point); });
        });
        if (under) names += (names.empty() ? " over the " : " and the ") + obstacle.name;
    }
    return names;
}

std::string drainage_sentence(const CheckInput& input, const FilmBay& bay, int worst, const Finding& finding) {
    const UnitsShown units = input.plan.units_shown;
    const Hung h = hung(input, worst);
    const Length most = from_m(0.25 * h.state.span * finding.capacity);
    const Length sag = from_m(h.state.sag);
    if (finding.verdict == Verdict::satisfied)
        return opening(bay.part) + " drains: it sags " + shown(sag, units) + " at the most, and water runs off up to " +
               shown(most, units) + ".";
    const std::string side = on_side(input, h, [](const Hung& each) { return each.state.sag; });
    const std::string where = opening(bay.part) + " holds water " + side + ": ";
    const std::string mend = "; raise the ridge or set supports closer, and clear snow and water early.";
    if (finding.capacity <= 0.0) return where + "the ridge is no higher than the rail there" + mend;
    const Pond pond = pond_of(input, bay, worst);
    return where + "it sags " + shown(sag, units) + " where water runs off up to " + shown(most, units) + "; " +
           shown(from_m3(pond.volume), units) + " can gather" + (side == "on both sides" ? " on each, " : " there, ") +
           shown(from_m(pond.deepest), units) + " deep" + obstacles_under(input, pond) + mend;
}

Finding drainage_finding(const CheckInput& input, const FilmBay& bay) {
    const int worst = worst_strip(input, bay.strips, drainage_badness);
    const Hung h = hung(input, worst);
    Finding finding =
        compare("film.drainage", bay.part, clause_drainage, input, sag_slope(h.state), chord_slope(h.state), "-");
    finding.x = h.x;
    finding.sentence = drainage_sentence(input, bay, worst, finding);
    if (input.workings)
        finding.workings = {term("L", h.state.span, "m", "level span of the strip"),
                            term("h", h.state.rise, "m", "height of the rail over the ridge"),
                            term("f", h.state.sag, "m", "sag under the chord at the middle"),
                            term("sag slope", finding.demand, "-", "4 f/L", clause_drainage),
                            term("chord slope", finding.capacity, "-", "-h/L", clause_drainage)};
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
    const std::string slopes = opening(bay.part) + " slopes " + shown(slope) + " at its flattest";
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

std::vector<Finding> check_drainage(const CheckInput& input) {
    return for_each_bay(input, [&](const FilmBay& bay) { return drainage_finding(input, bay); });
}

std::vector<Finding> check_shedding(const CheckInput& input) {
    require_usable(input);
    const Cited<Angle> threshold = shedding_threshold(input.plan);
    return for_each_bay(input, [&](const FilmBay& bay) { return shedding_finding(input, threshold, bay); });
}

}  // namespace coverframe
