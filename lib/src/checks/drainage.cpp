// SPDX-License-Identifier: BSD-3-Clause
#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

#include "coverframe/checks/film.hpp"
#include "coverframe/film/ponding.hpp"
#include "coverframe/units/crossing.hpp"
#include "film_bay.hpp"
#include "shown.hpp"

namespace coverframe {
namespace {

using namespace checks_detail;

const Clause clause_drainage{"coverframe", "drainage"};
const Clause clause_ponding{"coverframe", "ponding"};

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

double load_per_area(const Hung& h) { return load_of(h.state) / (h.state.span * h.strip.width); }

/// The strip for the criteria of ponding; empty where it carries nothing, or its ridge lies lower than the rail.
std::optional<PondingStrip> ponding_strip(const Hung& h) {
    const double load = load_per_area(h);
    const double stiffness = h.strip.strip.stiffness / h.strip.width;
    const double chord = std::hypot(h.state.span, h.state.rise);
    const PondingStrip strip{h.state.span, -h.state.rise, stiffness,
                             stiffness * (chord / h.strip.strip.free_length - 1), load};
    if (load <= 0.0 || strip.fall < 0.0 || strip.pretension <= -0.5 * stiffness) return {};
    return strip;
}

/// "raise the ridge by 120 mm there or set supports closer, and clear snow and water early".
std::string mend(const Hung& h, UnitsShown units) {
    const auto strip = ponding_strip(h);
    const auto fall = strip ? fall_to_drain(*strip) : std::nullopt;
    const std::string by =
        fall && *fall > strip->fall ? " by " + shown(from_m(*fall - strip->fall), units) + " there" : "";
    return "; raise the ridge" + by + " or set supports closer, and clear snow and water early.";
}

/// What would help, one change at a time.
void add_help(const Hung& h, std::vector<Term>& workings) {
    const auto strip = ponding_strip(h);
    if (!strip) return;
    const Ponding ponding = ponding_of(*strip);
    if (ponding.fall_needed)
        workings.push_back(
            term("h needed", *ponding.fall_needed, "m", "fall from ridge to rail with which it would drain"));
    if (ponding.pretension_needed)
        workings.push_back(term("T more", (*ponding.pretension_needed - strip->pretension) / 1e3, "kN/m",
                                "tension it would have to be shrunk to over what it was, to drain between these ends"));
    if (ponding.span_needed)
        workings.push_back(
            term("L needed", *ponding.span_needed, "m", "level span, of the same slope, that would drain"));
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
    if (finding.capacity <= 0.0) return where + "the ridge is no higher than the rail there" + mend(h, units);
    const Pond pond = pond_of(input, bay, worst);
    return where + "it sags " + shown(sag, units) + " where water runs off up to " + shown(most, units) + "; " +
           shown(from_m3(pond.volume), units) + " can gather" + (side == "on both sides" ? " on each, " : " there, ") +
           shown(from_m(pond.deepest), units) + " deep" + obstacles_under(input, pond) + mend(h, units);
}

Finding drainage_finding(const CheckInput& input, const FilmBay& bay) {
    const int worst = worst_strip(input, bay.strips, drainage_badness);
    const Hung h = hung(input, worst);
    Finding finding =
        compare("film.drainage", bay.part, clause_drainage, input, sag_slope(h.state), chord_slope(h.state), "-");
    finding.x = h.x;
    finding.sentence = drainage_sentence(input, bay, worst, finding);
    if (!input.workings) return finding;
    finding.workings = {term("L", h.state.span, "m", "level span of the strip"),
                        term("h", h.state.rise, "m", "height of the rail over the ridge"),
                        term("f", h.state.sag, "m", "sag under the chord at the middle"),
                        term("sag slope", finding.demand, "-", "4 f/L", clause_drainage),
                        term("chord slope", finding.capacity, "-", "-h/L", clause_drainage)};
    if (finding.verdict == Verdict::exceeded) add_help(h, finding.workings);
    return finding;
}

// ---- ponding -------------------------------------------------------------------------------------------------------

double tension_of(const Hung& h) { return h.state.level_force / h.strip.width; }

bool holds_water(const Hung& h) { return sag_slope(h.state) >= chord_slope(h.state); }

/// Level tension with which the water the strip holds would stop sinking it [N/m].
double tension_needed(const Hung& h) {
    const double load = load_per_area(h);
    return load > 0.0 ? settling_tension(h.state.span, std::max(-h.state.rise, 0.0), load)
                      : critical_ponding_tension(h.state.span);
}

double missing_tension(const Hung& h) { return holds_water(h) ? tension_needed(h) - tension_of(h) : -1.0; }
std::pair<bool, double> ponding_badness(const Hung& h) { return {holds_water(h), missing_tension(h)}; }

std::string ponding_sentence(const CheckInput& input, const FilmBay& bay, const Hung& h, bool exceeded) {
    const UnitsShown units = input.plan.units_shown;
    const std::string pulls =
        on_side(input, h, missing_tension) + ": it pulls " + shown(from_N_per_m(tension_of(h)), units) + " level";
    const std::string needed = shown(from_N_per_m(tension_needed(h)), units);
    if (exceeded)
        return opening(bay.part) + " goes on sinking under water " + pulls + " and would need " + needed +
               " to stop; see that no water can stand there, and clear it early.";
    return opening(bay.part) + " stops sinking under the water it holds " + pulls + ", and " + needed + " is enough.";
}

Finding ponding_finding(const CheckInput& input, const FilmBay& bay) {
    const Hung h = hung(input, worst_strip(input, bay.strips, ponding_badness));
    if (!holds_water(h))
        return not_applicable("film.ponding", bay.part, clause_ponding, input,
                              opening(bay.part) + " drains, so no water stands on it that could sink it further.");
    Finding finding =
        compare("film.ponding", bay.part, clause_ponding, input, tension_needed(h) / 1e3, tension_of(h) / 1e3, "kN/m");
    finding.x = h.x;
    finding.sentence = ponding_sentence(input, bay, h, finding.verdict == Verdict::exceeded);
    if (input.workings)
        finding.workings = {
            term("L", h.state.span, "m", "level span of the strip"),
            term("h", h.state.rise, "m", "height of the rail over the ridge"),
            term("q", load_per_area(h) / 1e3, "kPa", "load on the strip, per plan area, without the water"),
            term("T_crit", critical_ponding_tension(h.state.span) / 1e3, "kN/m",
                 "gamma_w L^2/pi^2, gamma_w = 9.81 kN/m3"),
            term("T needed", finding.demand, "kN/m",
                 "with S = sqrt(2 gamma_w (-h)/q): gamma_w L^2/(2 arctan sqrt(S/(S - 2)) + sqrt(S (S - 2)))^2, T_crit "
                 "if S <= 2",
                 clause_ponding),
            term("T", finding.capacity, "kN/m", "level part of the film's tension")};
    return finding;
}

}  // namespace

std::vector<Finding> check_drainage(const CheckInput& input) {
    return for_each_bay(input, [&](const FilmBay& bay) { return drainage_finding(input, bay); });
}

std::vector<Finding> check_ponding(const CheckInput& input) {
    return for_each_bay(input, [&](const FilmBay& bay) { return ponding_finding(input, bay); });
}

}  // namespace coverframe
