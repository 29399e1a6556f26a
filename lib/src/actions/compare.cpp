// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/compare.hpp"

#include <algorithm>
#include <cmath>

#include "coverframe/base/error.hpp"
#include "coverframe/plan/geometry.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe {
namespace {

constexpr const char* safe = "safe choice for a cover, the plan being made for another document";

bool same_family(SnowDocument a, SnowDocument b) {
    return a == b || (is_asce7(a) && is_asce7(b)) || (is_nbc(a) && is_nbc(b));
}

PlanLoad greatest(const std::vector<PlanLoad>& loads) {
    PlanLoad most{};
    for (const PlanLoad& load : loads) most.value = std::max(most.value, load.value);
    return most;
}

PlanLoad heavier(const ComparedArrangement& arrangement) {
    return {std::max(arrangement.port.value, arrangement.starboard.value)};
}

ComparedDocument compared(Plan plan, std::span<const CoverStation> stations) {
    ComparedDocument document;
    for (const Arrangement& arrangement : snow_arrangements(plan, stations, false)) {
        ComparedArrangement row{arrangement.name, arrangement.clause, greatest(arrangement.port),
                                greatest(arrangement.starboard)};
        if (document.arrangements.empty()) document.balanced = heavier(row);
        if (document.arrangements.empty() || heavier(row).value > document.greatest.value) {
            document.greatest = heavier(row);
            document.greatest_in = row.name;
        }
        document.arrangements.push_back(std::move(row));
        const bool told = std::ranges::count(document.notes, arrangement.note) > 0;
        if (!arrangement.note.empty() && !told) document.notes.push_back(arrangement.note);
    }
    document.factored = {plan.basis.combination.snow.value * document.greatest.value};
    document.shedding = shedding_threshold(plan);
    document.plan = std::move(plan);
    return document;
}

}  // namespace

Plan judged_by(const Plan& plan, const GroundSnow& ground) {
    Plan judged = plan;
    const SnowDocument from = plan.basis.snow.document;
    const SnowDocument to = ground.document;
    judged.site.ground_snow = ground;
    SnowBasis& snow = judged.basis.snow;
    snow.document = to;
    if (!same_family(from, to)) {
        snow.exposure_factor = {1.0, safe};
        snow.thermal_factor = {is_asce7(to) ? 1.2 : 1.0, safe};
    }
    if (to != SnowDocument::asce7_22)
        snow.winter_wind.reset();
    else if (!snow.winter_wind)
        snow.winter_wind = {0.65, "upper end of the map's range, the site's own being unknown"};
    if (!is_nbc(to))
        snow.importance_category.reset();
    else if (!snow.importance_category)
        snow.importance_category = {ImportanceCategory::normal, safe};
    if (from != to) {
        const SnowFactorRange factor = snow_factor_range(to);
        judged.basis.combination.snow = {to == SnowDocument::en1991_1_3 ? 1.5 : factor.low, factor.clause};
    }
    return judged;
}

std::vector<CoverStation> drawn_stations(const Plan& plan, Length spacing) {
    const std::vector<ProfilePoint> ridge = ridge_profile(plan.support);
    const auto& rail = plan.boat.rail;
    if (ridge.size() < 2 || rail.size() < 2 || !(spacing > Length{})) {
        throw InputError("compare.stations", "", "", "ridge and rail need two points each, and the spacing a length");
    }
    const Length bow = std::max(ridge.front().x, rail.front().x);
    const Length stern = std::min(ridge.back().x, rail.back().x);
    if (!(stern > bow)) {
        throw InputError("compare.stations", "", "", "ridge and rail have no stretch of the boat in common");
    }
    const int pieces = std::max(1, static_cast<int>(std::ceil(in_m(stern - bow) / in_m(spacing))));
    std::vector<CoverStation> stations;
    for (int i = 0; i <= pieces; ++i) {
        const Length x = bow + (static_cast<double>(i) / pieces) * (stern - bow);
        const auto at = rail_at(plan.boat, x);
        CoverStation station{.x = x, .slope = from_deg(90.0), .half_breadth = Length{}, .rail_z = Length{}};
        if (at) {
            station.half_breadth = at->half_breadth;
            station.rail_z = at->z;
        }
        if (const auto slope = film_slope_at(plan, x))
            station.slope = *slope;
        else
            station.half_breadth = Length{};
        stations.push_back(station);
    }
    return stations;
}

std::vector<ComparedDocument> compare_snow(const Plan& plan, std::span<const GroundSnow> others,
                                           std::span<const CoverStation> stations) {
    std::vector<ComparedDocument> all{compared(plan, stations)};
    for (const GroundSnow& ground : others) all.push_back(compared(judged_by(plan, ground), stations));
    return all;
}

std::vector<LoadBySlope> load_by_slope(const Plan& plan, std::span<const Angle> slopes, Length half_breadth) {
    Plan alone = plan;  // a cover of one station: no neighbours, no spans
    alone.site.neighbours.clear();
    alone.support.structure = RidgeSupport{};
    std::vector<LoadBySlope> all;
    for (std::size_t i = 0; i < slopes.size(); ++i) {
        const CoverStation station{.x = Length{}, .slope = slopes[i], .half_breadth = half_breadth, .rail_z = Length{}};
        for (const Arrangement& arrangement : snow_arrangements(alone, {&station, 1}, false)) {
            auto row = std::ranges::find(all, arrangement.name, &LoadBySlope::name);
            if (row == all.end()) row = all.insert(all.end(), {arrangement.name, std::vector<PlanLoad>(slopes.size())});
            row->load[i] = {std::max(arrangement.port[0].value, arrangement.starboard[0].value)};
        }
    }
    return all;
}

}  // namespace coverframe
