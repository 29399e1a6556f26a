// SPDX-License-Identifier: BSD-3-Clause
#include "assess/strip_cover.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <span>
#include <string>

#include "assess/between_stations.hpp"
#include "assess/film_pull.hpp"
#include "assess/surface_rail.hpp"
#include "checks/band_pulls.hpp"
#include "coverframe/checks/film.hpp"
#include "coverframe/checks/straps.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe {

const char* name_of(Carried carried) {
    switch (carried) {
        case Carried::push: return "push";
        case Carried::bending_moment: return "bending moment";
        case Carried::tension: return "tension";
        case Carried::film_pull: return "pull";
        case Carried::leg_tension: return "leg tension";
        case Carried::band_tension: return "band tension";
        case Carried::band_lift: return "lift";
    }
    return "";
}

bool of_band(Carried carried) {
    return carried == Carried::leg_tension || carried == Carried::band_tension || carried == Carried::band_lift;
}

namespace assess_detail {
namespace {

using Members = std::vector<MemberForces>;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

double push_of(const Members& members, const UprightPart& upright) {
    const MemberForces& along = members[at(upright.member)];
    return std::max(0.0, -std::min(along.axial_at(0), along.axial_at(1)));
}

double pull_of(const Members& members, std::span<const int> of) {
    double most = 0;
    for (const int m : of) most = std::max({most, members[at(m)].axial_at(0), members[at(m)].axial_at(1)});
    return most;
}

double moment_of(const Members& members, std::span<const int> of) {
    double most = 0;
    for (const int m : of) {
        const MemberForces& f = members[at(m)];
        most = std::max({most, std::abs(f.moment_vertical_from), std::abs(f.moment_vertical_to)});
    }
    return most;
}

/// What the parts carry with film as strips. Of cross straps their check tells, which puts the film on them.
std::vector<PartForce> carried_by(const CheckInput& strips, const std::string& arrangement) {
    const Layout& layout = strips.cover.layout;
    const Members& members = strips.state.frame.members;
    std::vector<PartForce> all;
    for (const UprightPart& upright : layout.uprights) {
        all.push_back({upright.name, Carried::push, push_of(members, upright), 0, arrangement});
    }
    for (const RidgeBay& bay : layout.bays) {
        const bool pole = layout.frame.members[at(bay.members.front())].kind == MemberKind::pole;
        all.push_back({"ridge, " + bay.name, pole ? Carried::bending_moment : Carried::tension,
                       pole ? moment_of(members, bay.members) : pull_of(members, bay.members), 0, arrangement});
    }
    for (const Finding& leg : check_straps(strips)) {
        if (leg.check == "strap.strength") {
            all.push_back({leg.part, Carried::tension, 1e3 * leg.demand, 0, arrangement});
        }
    }
    const double thickness = in_m(strips.plan.film.thickness.value);
    for (const Finding& bay : check_film_stress(strips)) {
        all.push_back({bay.part, Carried::film_pull, in_Pa(from_N_per_mm2(bay.demand)) * thickness, 0, arrangement});
    }
    return all;
}

/// The same parts with film as a surface, in the same order; legs of cross straps are in pieces there.
std::vector<double> carried_by(const CoverSurface& surface, const SurfaceState& state,
                               const std::vector<PartForce>& strips) {
    const Layout& layout = surface.layout;
    const Members& members = state.members;
    std::vector<double> all;
    for (const UprightPart& upright : layout.uprights) all.push_back(push_of(members, upright));
    for (const RidgeBay& bay : layout.bays) {
        const bool pole = layout.frame.members[at(bay.members.front())].kind == MemberKind::pole;
        all.push_back(pole ? moment_of(members, bay.members) : pull_of(members, bay.members));
    }
    for (const CrossStrapPart& strap : layout.cross_straps) {
        const auto leg_of = [&](int m) -> const std::string& { return layout.frame.members[at(m)].name; };
        for (auto from = strap.members.begin(); from != strap.members.end();) {
            const auto to = std::find_if(from, strap.members.end(), [&](int m) { return leg_of(m) != leg_of(*from); });
            all.push_back(pull_of(members, {from, to}));
            from = to;
        }
    }
    const FilmPull pull(surface, state);
    const auto x_of = [&](int node) { return layout.frame.nodes[at(node)].at[0]; };
    for (const RidgeBay& bay : layout.bays) {
        if (std::ranges::find(strips, "film, " + bay.name, &PartForce::part) == strips.end()) continue;
        all.push_back(pull.greatest(x_of(bay.stations.front()), x_of(bay.stations.back())));
    }
    return all;
}

/// What the check of the band finds of its parts where the film pulls like this. A band that the rub rail alone holds
/// has a lift; its tension does not change with the film.
std::vector<PartForce> band_carries(const CheckInput& input, const checks_detail::RailPulls& rails) {
    const bool straps = !input.plan.support.band.belly_straps.empty();
    std::vector<PartForce> all;
    for (const Finding& part : checks_detail::judge_band(input, rails)) {
        const bool tension = part.check == "band.tension";
        if (tension && !straps) continue;
        const Carried carried = tension ? Carried::band_tension : straps ? Carried::leg_tension : Carried::band_lift;
        all.push_back({part.part, carried, 1e3 * part.demand, 0, input.situation});
    }
    return all;
}

/// Of each part the one in which the surface exceeds the strips more.
void keep_greater(std::vector<PartForce> now, std::vector<PartForce>& most) {
    for (std::size_t i = 0; i < now.size(); ++i) {
        const double gained = (now[i].surface - now[i].strips) - (most[i].surface - most[i].strips);
        if (gained > 0) most[i] = std::move(now[i]);
    }
}

}  // namespace

StripCover::StripCover(const Assessment& assessment)
    : assessment_(assessment), rigging_(rig_all(assessment.plan, {})) {}

/// As each side has it [Pa].
StripLoads StripCover::snow_of(const Arrangement& arrangement) const {
    StripLoads loads;
    for (const CoverStrip& strip : rigging_.of[0][0].cover.strips) {
        const auto& side = strip.side == Side::port ? arrangement.port : arrangement.starboard;
        const BetweenStations here = between_stations(assessment_.stations, strip.rail[0]);
        loads.push_back(here.of(in_Pa(side[here.before].value), in_Pa(side[here.after].value)));
    }
    return loads;
}

/// The band under strips and under the surface, by one law, in the situation of the arrangement in which the surface
/// exceeds the strips most. Where the strips stand in none, nothing is carried.
/// \param strips  under the arrangement, as the surface is
std::vector<PartForce> StripCover::band_under(const Arrangement& arrangement, const CheckInput& strips,
                                              const CoverSurface& surface, const SurfaceState& state) const {
    const Plan& plan = assessment_.plan;
    const checks_detail::RailPulls under_strips = checks_detail::rail_pulls(strips.cover, strips.state);
    const checks_detail::RailPulls under_surface = rail_pulls(surface, state);
    std::vector<PartForce> most;
    for (const Situation& situation : situations_of(plan, {arrangement})) {
        if (situation.limit != Limit::strength || situation.arrangement < 0) continue;
        const Rigged& rigged = rigging_.at(situation);
        if (!rigged.state.usable()) continue;
        StripLoads snow = snow_of(arrangement);
        for (double& load : snow) load *= situation.snow_factor;
        const CoverState judged = load_cover(rigged.cover, snow, situation.permanent_factor);
        if (!judged.usable()) continue;
        const checks_detail::RailPulls pulls = checks_detail::rail_pulls(rigged.cover, judged);
        const checks_detail::RailPulls raised = on_top(
            under_surface, {under_strips, pulls, situation.snow_factor, rigged.cover.film_tension - surface.tension});
        const CheckInput input{plan, rigged.cover, judged, situation.name};
        std::vector<PartForce> now = band_carries(input, pulls);
        const std::vector<PartForce> whole = band_carries(input, raised);
        const std::vector<PartForce> without_ends = band_carries(input, between_ends(surface, raised));
        for (std::size_t i = 0; i < now.size(); ++i) {
            now[i].surface = whole.at(i).strips;
            now[i].without_ends = without_ends.at(i).strips;
        }
        if (most.empty())
            most = std::move(now);
        else
            keep_greater(std::move(now), most);
    }
    if (most.empty()) {
        most = band_carries(strips, under_strips);
        for (PartForce& part : most) part.strips = 0;
    }
    return most;
}

void StripCover::compare(const Arrangement& arrangement, const CoverSurface& surface, const SurfaceState& state,
                         std::vector<PartForce>& forces) const {
    const Rigged& rigged = rigging_.of[0][0];
    if (!rigged.state.usable()) return;
    const CoverState strips = load_cover(rigged.cover, snow_of(arrangement));
    if (!strips.usable()) return;
    const CheckInput input{assessment_.plan, rigged.cover, strips, arrangement.name};
    std::vector<PartForce> now = carried_by(input, arrangement.name);
    const std::vector<double> carried = carried_by(surface, state, now);
    for (std::size_t i = 0; i < now.size(); ++i) now[i].surface = carried.at(i);
    std::ranges::move(band_under(arrangement, input, surface, state), std::back_inserter(now));
    if (forces.empty())
        forces = std::move(now);
    else
        keep_greater(std::move(now), forces);
}

}  // namespace assess_detail
}  // namespace coverframe
