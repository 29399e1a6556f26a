// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/plan/girth.hpp"

#include <algorithm>
#include <cmath>
#include <variant>
#include <vector>

#include "coverframe/plan/geometry.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe {
namespace {

/// A point of a cut across the boat, on one side of the middle [m].
struct Across {
    double off = 0;
    double z = 0;
};

double distance(const Across& a, const Across& b) { return std::hypot(b.off - a.off, b.z - a.z); }

bool rising(const std::vector<RailStation>& rail) {
    return std::adjacent_find(rail.begin(), rail.end(), [](const auto& a, const auto& b) { return !(a.x < b.x); }) ==
           rail.end();
}

bool rising(const std::vector<ProfilePoint>& ridge) {
    return std::adjacent_find(ridge.begin(), ridge.end(), [](const auto& a, const auto& b) { return !(a.x < b.x); }) ==
           ridge.end();
}

double broadest_pole(const Support& support) {
    double breadth = 0;
    if (const auto* built = std::get_if<RidgeSupport>(&support.structure)) {
        if (const auto* pole = std::get_if<PoleRidge>(&built->ridge.member)) breadth = in_m(pole->section.breadth);
        return breadth;
    }
    const auto& found = std::get<FoundFrame>(support.structure);
    const auto on_ridge = [&](const std::string& node) { return std::ranges::count(found.ridge_line, node) > 0; };
    for (const FoundMember& member : found.members) {
        if (member.kind == FoundKind::pole && member.section && on_ridge(member.from) && on_ridge(member.to))
            breadth = std::max(breadth, in_m(member.section->breadth));
    }
    return breadth;
}

/// What the points of ridge_profile() are called.
std::vector<std::string> names_along(const Support& support) {
    if (const auto* found = std::get_if<FoundFrame>(&support.structure)) return found->ridge_line;
    std::vector<std::string> names{"bow"};
    for (const Upright& upright : std::get<RidgeSupport>(support.structure).uprights) names.push_back(upright.name);
    names.emplace_back("stern");
    return names;
}

/// Rail and ridge line of a plan, with what is the same all along.
class DrawnCover {
public:
    explicit DrawnCover(const Plan& plan)
        : boat_(plan.boat),
          support_(plan.support),
          ridge_(ridge_profile(plan.support)),
          names_(names_along(plan.support)),
          to_edge_(std::hypot(in_m(plan.support.band.below_rail), in_m(plan.support.band.inset.value_or(Length{}))) +
                   in_m(tuck_of(plan.film).value)),
          pole_(broadest_pole(plan.support)) {}

    [[nodiscard]] bool sound() const {
        return boat_.rail.size() >= 2 && ridge_.size() >= 2 && ridge_.size() == names_.size() && rising(boat_.rail) &&
               rising(ridge_) && ridge_.front().x >= boat_.rail.front().x && ridge_.back().x <= boat_.rail.back().x;
    }

    /// \pre sound, and x on the rail line
    [[nodiscard]] double girth(Length x) const { return 2.0 * (ridge_to_rail(x) + to_edge_) + pole_; }

    [[nodiscard]] double length() const {
        const auto apart = [](const auto& a, const auto& b) { return std::hypot(in_m(b.x - a.x), in_m(b.z - a.z)); };
        double along = apart(boat_.rail.front(), ridge_.front()) + apart(ridge_.back(), boat_.rail.back());
        for (std::size_t i = 1; i < ridge_.size(); ++i) along += apart(ridge_[i - 1], ridge_[i]);
        return along + 2.0 * to_edge_;
    }

    /// Every place the girth may be greatest at, from bow to stern.
    [[nodiscard]] std::vector<Length> corners() const {
        std::vector<Length> places;
        for (const RailStation& station : boat_.rail) places.push_back(station.x);
        for (const ProfilePoint& point : ridge_) places.push_back(point.x);
        std::ranges::sort(places);
        return places;
    }

    [[nodiscard]] std::string place(Length x) const {
        const auto at = [&](const ProfilePoint& point) { return std::abs(in_mm(x - point.x)) < drawing_accuracy_mm; };
        if (at(ridge_.front())) return "at the bow end of the ridge";
        if (at(ridge_.back())) return "at the stern end of the ridge";
        if (x < ridge_.front().x) return "forward of the ridge";
        if (x > ridge_.back().x) return "aft of the ridge";
        for (std::size_t i = 1; i + 1 < ridge_.size(); ++i) {
            if (at(ridge_[i])) return "at " + names_[i];
        }
        std::size_t i = 1;
        while (ridge_[i].x < x) ++i;
        return "between " + names_[i - 1] + " and " + names_[i];
    }

private:
    static constexpr double drawing_accuracy_mm = 1.0;

    [[nodiscard]] double ridge_to_rail(Length x) const {
        const RailStation rail = *rail_at(boat_, x);
        const Across edge{in_m(rail.half_breadth), in_m(rail.z)};
        if (const auto z = ridge_at(support_, x)) return distance({0.0, in_m(*z)}, edge);
        double length = 0;
        Across from = edge;
        for (const Across& to : creases(x)) {
            length += distance(from, to);
            from = to;
        }
        return length;
    }

    /// Where the creases of the fan beyond the ridge pass x, from the rail to the middle.
    [[nodiscard]] std::vector<Across> creases(Length x) const {
        const bool bow = x < ridge_.front().x;
        const ProfilePoint& apex = bow ? ridge_.front() : ridge_.back();
        std::vector<RailStation> corners;
        for (const RailStation& station : boat_.rail) {
            if (bow ? station.x <= x : station.x >= x) corners.push_back(station);
        }
        if (bow) std::ranges::reverse(corners);
        corners.push_back({corners.back().x, Length{}, corners.back().z});  // the middle of stem or transom
        std::vector<Across> points;
        for (const RailStation& corner : corners) {
            const double share = (x - apex.x) / (corner.x - apex.x);
            points.push_back({share * in_m(corner.half_breadth), in_m(apex.z + (corner.z - apex.z) * share)});
        }
        return points;
    }

    const Boat& boat_;
    const Support& support_;
    std::vector<ProfilePoint> ridge_;
    std::vector<std::string> names_;
    double to_edge_;  ///< from the rail to the edge of the film [m]
    double pole_;     ///< [m]
};

}  // namespace

std::optional<Length> girth_at(const Plan& plan, Length x) {
    const DrawnCover cover(plan);
    if (!cover.sound() || !rail_at(plan.boat, x)) return std::nullopt;
    const double girth = cover.girth(x);
    return std::isfinite(girth) ? std::optional(from_m(girth)) : std::nullopt;
}

std::optional<FilmSheet> sheet_needed(const Plan& plan) {
    const DrawnCover cover(plan);
    if (!cover.sound()) return std::nullopt;
    FilmSheet sheet;
    double widest = -1.0;
    for (const Length& x : cover.corners()) {
        const double girth = cover.girth(x);
        if (!std::isfinite(girth)) return std::nullopt;
        if (girth <= widest) continue;
        widest = girth;
        sheet.widest_at = x;
    }
    sheet.width = from_m(widest);
    sheet.length = from_m(cover.length());
    sheet.place = cover.place(sheet.widest_at);
    return sheet;
}

}  // namespace coverframe
