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

std::size_t count_of(const RidgeSupport& support) { return support.uprights.size() + 2; }

ProfilePoint point_of(const RidgeSupport& support, std::size_t i) {
    if (i == 0) return {support.ridge.bow.x, support.ridge.bow.z};
    if (i > support.uprights.size()) return {support.ridge.stern.x, support.ridge.stern.z};
    return {support.uprights[i - 1].x, support.uprights[i - 1].top};
}

std::vector<ProfilePoint> profile_of(const RidgeSupport& support) {
    std::vector<ProfilePoint> profile;
    for (std::size_t i = 0; i < count_of(support); ++i) profile.push_back(point_of(support, i));
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

/// Height at x of the line through `count` points; empty outside it.
template <class PointAt>
std::optional<Length> height_of(std::size_t count, PointAt point_at, Length x) {
    for (std::size_t i = 1; i < count; ++i) {
        const ProfilePoint a = point_at(i - 1);
        const ProfilePoint b = point_at(i);
        if (x >= a.x && x <= b.x) return between(a.z, b.z, a.x, b.x, x);
    }
    return std::nullopt;
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
    if (const auto* built = std::get_if<RidgeSupport>(&support.structure)) {
        return height_of(
            count_of(*built), [&](std::size_t i) { return point_of(*built, i); }, x);
    }
    const std::vector<ProfilePoint> profile = ridge_profile(support);
    return height_of(
        profile.size(), [&](std::size_t i) { return profile[i]; }, x);
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
