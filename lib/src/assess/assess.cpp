// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/assess/assess.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "assess/forces.hpp"
#include "assess/outcome.hpp"
#include "assess/solved.hpp"
#include "assess/words.hpp"
#include "assess/worst.hpp"
#include "coverframe/plan/geometry.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe {
namespace {

using assess_detail::Rigging;
using assess_detail::Solved;

/// One station for each node of the ridge line. Where no strip hangs, it has no breadth and is taken as upright.
std::vector<CoverStation> stations_of(const Plan& plan, const Cover& cover) {
    const Layout& layout = cover.layout;
    std::vector<CoverStation> stations;
    for (const int node : layout.stations) {
        const Length x = from_m(layout.frame.nodes[static_cast<std::size_t>(node)].at[0]);
        stations.push_back({.x = x, .slope = from_deg(90.0), .half_breadth = Length{}, .rail_z = Length{}});
    }
    for (const CoverStrip& strip : cover.strips) {
        CoverStation& station = stations[static_cast<std::size_t>(strip.station)];
        station.half_breadth = from_m(std::abs(strip.rail[1]));
        station.rail_z = from_m(strip.rail[2]);
        station.slope = film_slope_at(plan, station.x).value_or(station.slope);
    }
    return stations;
}

SituationResult result_of(const Solved& solved) {
    SituationResult result;
    result.situation = *solved.situation;
    result.status = solved.state.frame.status;
    result.message = assess_detail::message_of(solved.state.frame);
    result.vertical_load = solved.state.vertical_load;
    result.vertical_reaction = solved.state.vertical_reaction;
    if (!solved.usable()) return result;
    for (const int node : solved.cover->layout.stations) {
        const double drop = -solved.state.frame.displacement[6 * static_cast<std::size_t>(node) + 2];
        result.ridge_sag = std::max(result.ridge_sag, drop);
    }
    for (const StripState& strip : solved.state.strips) result.film_sag = std::max(result.film_sag, strip.sag);
    return result;
}

/// How far the film has come down from its drawn place where it came down most [m]. At the fraction s from the ridge a
/// strip comes down by d (1 - s) + 4 f s (1 - s), d the drop of the ridge and f the sag; most at s = (1 - d/(4 f))/2.
double descent_of(const Solved& solved) {
    double furthest = -std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < solved.state.strips.size(); ++i) {
        const double drop = assess_detail::ridge_drop(solved, solved.cover->strips[i]);
        const double sag = solved.state.strips[i].sag;
        const double s = sag > 0 ? std::clamp(0.5 * (1.0 - 0.25 * drop / sag), 0.0, 1.0) : 0.0;
        furthest = std::max(furthest, (1.0 - s) * (drop + 4.0 * sag * s));
    }
    return furthest;
}

/// The service situation in which the film comes down furthest; nullptr if none found equilibrium.
const Solved* lowest_film(const std::vector<Solved>& solved) {
    const Solved* lowest = nullptr;
    double furthest = 0;
    for (const Solved& one : solved) {
        if (!one.usable() || one.situation->limit != Limit::service) continue;
        const double descent = descent_of(one);
        if (lowest == nullptr || descent > furthest) {
            lowest = &one;
            furthest = descent;
        }
    }
    return lowest;
}

std::vector<StationShape> shape_of(const Plan& plan, const Solved& solved) {
    const Layout& layout = solved.cover->layout;
    std::vector<StationShape> shape;
    for (const int node : layout.stations) {
        const std::array<double, 3>& drawn = layout.frame.nodes[static_cast<std::size_t>(node)].at;
        const std::array<double, 3> place = place_of(layout.frame, solved.state.frame, node);
        StationShape station;
        station.x = drawn[0];
        station.ridge_drawn = drawn[2];
        station.ridge_loaded = place[2];
        station.ridge_aside = place[1];
        if (const auto rail = rail_at(plan.boat, from_m(drawn[0]))) {
            station.half_breadth = in_m(rail->half_breadth);
            station.rail_z = in_m(rail->z);
        }
        shape.push_back(station);
    }
    for (std::size_t i = 0; i < solved.cover->strips.size(); ++i) {
        const CoverStrip& strip = solved.cover->strips[i];
        StationShape& station = shape[static_cast<std::size_t>(strip.station)];
        (strip.side == Side::port ? station.port : station.starboard) = solved.state.strips[i];
    }
    return shape;
}

}  // namespace

namespace assess_detail {

Outcome outcome_of(const Assessment& assessment) {
    if (!assessment.failures.empty()) return Outcome::no_equilibrium;
    const Finding* worst = governing(assessment.findings);
    return worst != nullptr && worst->verdict == Verdict::exceeded ? Outcome::exceeded : Outcome::satisfied;
}

}  // namespace assess_detail

const char* name_of(Outcome outcome) {
    switch (outcome) {
        case Outcome::satisfied: return "satisfied";
        case Outcome::exceeded: return "exceeded";
        case Outcome::no_equilibrium: return "no equilibrium";
    }
    return "";
}

int exit_code(Outcome outcome) {
    switch (outcome) {
        case Outcome::satisfied: return 0;
        case Outcome::exceeded: return 1;
        case Outcome::no_equilibrium: break;
    }
    return 3;
}

Assessment assess(const Plan& plan, const AssessOptions& options) {
    const Rigging rigging = assess_detail::rig_all(plan, {.station_spacing = options.station_spacing});

    Assessment assessment;
    assessment.plan = plan;
    assessment.stations = stations_of(plan, rigging.of[0][0].cover);
    assessment.arrangements = snow_arrangements(plan, assessment.stations, options.workings);

    const std::vector<Situation> situations = situations_of(plan, assessment.arrangements);
    const std::vector<Solved> solved = assess_detail::solve_all(rigging, situations, assessment.arrangements);
    for (const Solved& one : solved) assessment.situations.push_back(result_of(one));

    assessment.findings = assess_detail::worst_findings(plan, solved, options.workings);
    assessment.forces = assess_detail::force_ranges(solved);
    if (const Solved* lowest = lowest_film(solved)) {
        assessment.shape = shape_of(plan, *lowest);
        assessment.shape_of = lowest->situation->name;
    }
    assessment.failures = assess_detail::failures_of(assessment.situations);
    assessment.assumptions = assess_detail::assumptions_of(plan, assessment.arrangements);
    assessment.outcome = assess_detail::outcome_of(assessment);
    return assessment;
}

}  // namespace coverframe
