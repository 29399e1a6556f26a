// SPDX-License-Identifier: BSD-3-Clause
#include "assess/strip_cover.hpp"

#include <algorithm>
#include <cmath>
#include <span>
#include <string>

#include "assess/between_stations.hpp"
#include "assess/film_pull.hpp"
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
    }
    return "";
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

}  // namespace

StripCover::StripCover(const Assessment& assessment)
    : assessment_(assessment),
      rigged_(rig(build_cover(assessment.plan, {.strap_stiffness = Bound::low}, Bound::low),
                  in_N_per_m(assessment.plan.film.tension_low.value))) {}

/// As each side has it [Pa].
StripLoads StripCover::snow_of(const Arrangement& arrangement) const {
    StripLoads loads;
    for (const CoverStrip& strip : rigged_.cover.strips) {
        const auto& side = strip.side == Side::port ? arrangement.port : arrangement.starboard;
        const BetweenStations here = between_stations(assessment_.stations, strip.rail[0]);
        loads.push_back(here.of(in_Pa(side[here.before].value), in_Pa(side[here.after].value)));
    }
    return loads;
}

void StripCover::compare(const Arrangement& arrangement, const CoverSurface& surface, const SurfaceState& state,
                         std::vector<PartForce>& forces) const {
    if (!rigged_.state.usable()) return;
    const CoverState strips = load_cover(rigged_.cover, snow_of(arrangement));
    if (!strips.usable()) return;
    std::vector<PartForce> now =
        carried_by({assessment_.plan, rigged_.cover, strips, arrangement.name}, arrangement.name);
    const std::vector<double> carried = carried_by(surface, state, now);
    for (std::size_t i = 0; i < now.size(); ++i) now[i].surface = carried.at(i);
    if (forces.empty()) {
        forces = std::move(now);
        return;
    }
    for (std::size_t i = 0; i < now.size(); ++i) {
        const double gained = (now[i].surface - now[i].strips) - (forces[i].surface - forces[i].strips);
        if (gained > 0) forces[i] = std::move(now[i]);
    }
}

}  // namespace assess_detail
}  // namespace coverframe
