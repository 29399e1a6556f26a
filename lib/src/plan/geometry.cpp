// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/plan/geometry.hpp"

#include <algorithm>
#include <cmath>
#include <variant>

#include "coverframe/units/crossing.hpp"

namespace coverframe {
namespace {

/// Between a at `from` and b at `to`. \pre from < to, and x between them; the ends come out as they are
Length between(Length a, Length b, Length from, Length to, Length x) {
    if (x <= from) return a;
    if (x >= to) return b;
    const double share = (x - from) / (to - from);
    return a + (b - a) * share;
}

std::vector<ProfilePoint> profile_of(const RidgeSupport& support) {
    std::vector<ProfilePoint> profile{{support.ridge.bow.x, support.ridge.bow.z}};
    for (const Upright& upright : support.uprights) profile.push_back({upright.x, upright.top});
    profile.push_back({support.ridge.stern.x, support.ridge.stern.z});
    return profile;
}

std::vector<ProfilePoint> profile_of(const FoundFrame& found) {
    std::vector<ProfilePoint> profile;
    for (const std::string& name : found.ridge_line) {
        const auto node =
            std::find_if(found.nodes.begin(), found.nodes.end(), [&](const FoundNode& n) { return n.name == name; });
        if (node != found.nodes.end()) profile.push_back({node->at.x, node->at.z});
    }
    return profile;
}

template <class Named>
const Named* find_named(const std::vector<Named>& list, std::string_view name) {
    const auto found = std::find_if(list.begin(), list.end(), [&](const Named& each) { return each.name == name; });
    return found == list.end() ? nullptr : &*found;
}

}  // namespace

std::optional<RailStation> rail_at(const Boat& boat, Length x) {
    for (std::size_t i = 1; i < boat.rail.size(); ++i) {
        const RailStation& a = boat.rail[i - 1];
        const RailStation& b = boat.rail[i];
        if (!(x >= a.x && x <= b.x)) continue;
        return RailStation{x, between(a.half_breadth, b.half_breadth, a.x, b.x, x), between(a.z, b.z, a.x, b.x, x)};
    }
    return std::nullopt;
}

std::vector<ProfilePoint> ridge_profile(const Support& support) {
    return std::visit([](const auto& structure) { return profile_of(structure); }, support.structure);
}

std::optional<Length> ridge_at(const Support& support, Length x) {
    const std::vector<ProfilePoint> profile = ridge_profile(support);
    for (std::size_t i = 1; i < profile.size(); ++i) {
        const ProfilePoint& a = profile[i - 1];
        const ProfilePoint& b = profile[i];
        if (x >= a.x && x <= b.x) return between(a.z, b.z, a.x, b.x, x);
    }
    return std::nullopt;
}

std::optional<Length> film_height_at(const Plan& plan, Length x, Length y) {
    const auto rail = rail_at(plan.boat, x);
    const auto ridge = ridge_at(plan.support, x);
    const Length off = y < Length{} ? -y : y;
    if (!rail || !ridge || !(rail->half_breadth > Length{}) || !(off <= rail->half_breadth)) return std::nullopt;
    return between(*ridge, rail->z, Length{}, rail->half_breadth, off);
}

std::optional<Angle> film_slope_at(const Plan& plan, Length x) {
    const auto rail = rail_at(plan.boat, x);
    const auto ridge = ridge_at(plan.support, x);
    if (!rail || !ridge || !(rail->half_breadth > Length{})) return std::nullopt;
    return from_rad(std::atan2(in_m(*ridge - rail->z), in_m(rail->half_breadth)));
}

const Stand* find_stand(const Boat& boat, std::string_view name) { return find_named(boat.stands, name); }

const StrapKind* find_strap_kind(const Plan& plan, std::string_view name) { return find_named(plan.straps, name); }

}  // namespace coverframe
