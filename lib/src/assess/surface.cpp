// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/assess/surface.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "assess/between_stations.hpp"
#include "assess/strip_cover.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Middle of a triangle as drawn.
std::array<double, 2> middle_of(const TriangleMesh& mesh, const std::array<int, 3>& t) {
    std::array<double, 2> middle{};
    for (const int node : t) {
        for (std::size_t d = 0; d < 2; ++d) middle[d] += mesh.nodes[at(node)][d] / 3;
    }
    return middle;
}

SurfaceLook look_of(const Assessment& assessment, const SurfaceSurvey& survey, const SurfaceState& state,
                    const std::string& arrangement) {
    SurfaceLook look;
    look.arrangement = arrangement;
    look.status = state.status;
    look.message = state.message;
    if (!state.usable()) return look;
    look.water = state.water.volume();
    look.ponds = pond_flags(survey.surface, state);
    look.slopes = slope_shares(state, 0.5 * survey.shedding, survey.shedding);
    look.dips = ridge_dips(survey.surface, state);
    look.lifts = state.lifts;
    look.snaps = state.snaps;
    for (std::size_t o = 0; o < state.obstacles.size(); ++o) {
        const EdgeState& edge = state.obstacles[o];
        look.touches.push_back({edge.name, edge.least_gap(), in_m(assessment.plan.boat.obstacles[o].clearance.value),
                                edge.force(), edge.greatest_force()});
    }
    return look;
}

/// How bad a look is: no equilibrium before litres of water before nearness.
std::array<double, 3> badness(const SurfaceLook& look) {
    double nearest = std::numeric_limits<double>::infinity();
    for (const SurfaceTouch& touch : look.touches) nearest = std::min(nearest, touch.least_gap - touch.needed);
    return {look.usable() ? 0.0 : 1.0, std::floor(1000 * look.water), -nearest};
}

/// The arrangement in which the film rests hardest on an obstacle; nullptr if it never does.
const Arrangement* hardest_on(const Assessment& assessment, const SurfaceSurvey& survey, std::size_t obstacle) {
    const Arrangement* hardest = nullptr;
    double most = 0;
    for (std::size_t k = 1; k < survey.looks.size(); ++k) {
        const SurfaceLook& look = survey.looks[k];
        if (!look.usable() || !(look.touches[obstacle].force > most)) continue;
        most = look.touches[obstacle].force;
        hardest = &assessment.arrangements[k - 1];
    }
    return hardest;
}

void find_first_touches(const Assessment& assessment, SurfaceSurvey& survey) {
    std::map<const Arrangement*, std::vector<FirstTouch>> known;
    for (std::size_t o = 0; o < assessment.plan.boat.obstacles.size(); ++o) {
        const Arrangement* snow = hardest_on(assessment, survey, o);
        if (snow == nullptr) continue;
        const std::vector<double> loads = snow_over(survey.surface, assessment.stations, *snow);
        const auto [at, is_new] = known.try_emplace(snow);
        if (is_new) at->second = first_touches(survey.surface, loads);
        const FirstTouch& touch = at->second[o];
        if (!touch.share) continue;
        survey.touched.push_back({touch, snow->name, *touch.share * *std::ranges::max_element(loads)});
    }
}

}  // namespace

std::vector<double> snow_over(const CoverSurface& surface, const std::vector<CoverStation>& stations,
                              const Arrangement& arrangement) {
    std::vector<double> snow;
    const TriangleMesh& mesh = surface.cover.mesh;
    for (const auto& t : mesh.triangles) {
        const auto [x, y] = middle_of(mesh, t);
        const auto& field = y < 0 ? arrangement.port_field : arrangement.starboard_field;
        const auto load_of = [&](std::size_t i, double off) {
            const double half = in_m(stations[i].half_breadth);
            return half > 0 ? in_Pa(load_at(field[i], std::min(1.0, off / half)).value) : 0.0;
        };
        const assess_detail::BetweenStations here = assess_detail::between_stations(stations, x);
        const double off = std::abs(y);
        snow.push_back(here.of(load_of(here.before, off), load_of(here.after, off)));
    }
    return snow;
}

SurfaceSurvey survey_surface(const Assessment& assessment, const SurfaceOptions& options) {
    SurfaceSurvey survey;
    SurfaceOptions softest = options;
    softest.strap_stiffness = Bound::low;
    softest.film = Bound::low;
    survey.shedding = in_rad(shedding_threshold(assessment.plan).value);
    survey.surface = rig_surface(assessment.plan, in_N_per_m(assessment.plan.film.tension_low.value), softest);
    survey.supports = supports_over_straps(survey.surface);
    survey.looks.push_back(look_of(assessment, survey, survey.surface.state, "no snow"));
    survey.pictured = survey.surface.state;
    if (!survey.surface.state.usable()) return survey;
    const assess_detail::StripCover strips(assessment);
    for (const Arrangement& arrangement : assessment.arrangements) {
        const SurfaceState state = load_surface(
            survey.surface, snow_over(survey.surface, assessment.stations, arrangement), {Rain::Kind::to_the_brim, 0});
        survey.looks.push_back(look_of(assessment, survey, state, arrangement.name));
        if (state.usable()) strips.compare(arrangement, survey.surface, state, survey.forces);
        if (!(badness(survey.looks[at(survey.worst)]) < badness(survey.looks.back()))) continue;
        survey.worst = static_cast<int>(survey.looks.size()) - 1;
        survey.pictured = state;
    }
    find_first_touches(assessment, survey);
    return survey;
}

}  // namespace coverframe
