// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/arrangement.hpp"

#include <algorithm>

#include "actions/arrangements/common.hpp"
#include "coverframe/actions/asce7_10.hpp"
#include "coverframe/actions/asce7_16.hpp"
#include "coverframe/actions/asce7_22.hpp"
#include "coverframe/actions/nbc2015.hpp"

namespace coverframe {
namespace {

using namespace arranging;

std::unique_ptr<DocumentSnow> snow_of(const Plan& plan) {
    const SnowDocument document = plan.basis.snow.document;
    if (is_asce7(document)) return asce7_snow(plan);
    if (is_nbc(document)) return nbc_snow(plan);
    return en1991_1_3_snow(plan);
}

Arrangement balanced(const DocumentSnow& snow, Stations stations, bool workings) {
    const auto field = [&](const CoverStation& s) { return both(snow.balanced(s)); };
    const auto terms = [&](const CoverStation& s) { return snow.balanced_workings(s); };
    return over_stations(snow.balanced_heading(), stations, field, workings ? WorkingsRule(terms) : nullptr);
}

/// One side swept bare.
Arrangement cleared(const DocumentSnow& snow, Stations stations, bool port, bool workings) {
    const Clause clause{"common practice, no source", "one side cleared"};
    const auto field = [&](const CoverStation& s) {
        return heavy_side(!port, even(snow.balanced(s)), even(Pressure{}));
    };
    const auto terms = [&](const CoverStation& s) {
        std::vector<Term> lines = snow.balanced_workings(s);
        lines.push_back({"share", 0.0, "-", std::string("on ") + side_name(port) + ", swept bare", clause});
        return lines;
    };
    return over_stations({std::string("cleared to ") + side_name(port), clause,
                          "One side is swept bare before the other: no snow on the one, full balanced snow on the "
                          "other. The documents do not ask for it; whoever clears a cover makes it."},
                         stations, field, workings ? WorkingsRule(terms) : nullptr);
}

/// What the slope sheds lies on its lower half: the balanced load and, there, twice what was shed.
LoadProfile slid_profile(const DocumentSnow& snow, const CoverStation& station) {
    const Pressure stays = snow.balanced(station);
    const Pressure heap = stays + 2.0 * (snow.unshed(station) - stays);
    return {{0.0, {stays}}, {0.5, {stays}}, {0.5, {heap}}, {1.0, {heap}}};
}

std::vector<Arrangement> slid_to_the_rail(const Plan& plan, const DocumentSnow& snow, Stations stations,
                                          bool workings) {
    const SnowBasis& basis = plan.basis.snow;
    const bool sheds = std::ranges::any_of(
        stations, [&](const CoverStation& s) { return carries(s) && snow.unshed(s) > snow.balanced(s); });
    if (basis.surface.value != Surface::slippery || slid_snow_of(basis).value == SlidSnow::falls_clear || !sheds) {
        return {};
    }
    const auto field = [&](const CoverStation& s) {
        const LoadProfile profile = slid_profile(snow, s);
        return StationField{profile, profile};
    };
    const auto terms = [&](const CoverStation& s) {
        std::vector<Term> lines = snow.balanced_workings(s);
        const bool us = is_asce7(basis.document);
        const auto shown = [&](Pressure p) { return us ? in_psf(p) : in_kPa(p); };
        const char* unit = us ? "psf" : "kPa";
        lines.push_back({"p_full", shown(snow.unshed(s)), unit, "balanced load if nothing slid off", {}});
        lines.push_back({"p_heap",
                         shown(slid_profile(snow, s).back().load.value),
                         unit,
                         "p + 2 (p_full - p) on the lower half of the slope, p the balanced load",
                         {}});
        return lines;
    };
    return {over_stations({"slid to the rail", snow.slope_clause(),
                           "The plan claims that snow slides but not that it falls clear of the cover, so what the "
                           "slope sheds lies on the lower half of it, evenly (no source)."},
                          stations, field, workings ? WorkingsRule(terms) : nullptr)};
}

void append_all(std::vector<Arrangement>& all, std::vector<Arrangement> more) {
    std::ranges::move(more, std::back_inserter(all));
}

}  // namespace

std::vector<Arrangement> snow_arrangements(const Plan& plan, std::span<const CoverStation> stations, bool workings) {
    const std::unique_ptr<DocumentSnow> snow = snow_of(plan);
    std::vector<Arrangement> all{balanced(*snow, stations, workings)};
    append_all(all, snow->own(stations, workings));
    if (stations.empty()) return all;
    append_all(all, partial(plan, *snow, stations, workings));
    append_all(all, beside_neighbours(plan, *snow, stations, workings));
    append_all(all, slid_to_the_rail(plan, *snow, stations, workings));
    all.push_back(cleared(*snow, stations, true, workings));
    all.push_back(cleared(*snow, stations, false, workings));
    return all;
}

namespace {

Angle asce7_threshold(const SnowBasis& basis) {
    const bool slippery = basis.surface.value == Surface::slippery;
    const asce7::Surface surface = slippery ? asce7::Surface::unobstructed_slippery : asce7::Surface::other;
    const double thermal = basis.thermal_factor.value;
    switch (basis.document) {
        case SnowDocument::asce7_10: return asce7_10::full_load_slope_7_4(thermal, surface);
        case SnowDocument::asce7_16: return asce7_16::full_load_slope_7_4(thermal, surface);
        default: return asce7_22::full_load_slope_7_4(thermal, surface);
    }
}

}  // namespace

Cited<Angle> shedding_threshold(const Plan& plan) {
    if (plan.basis.shedding_slope) return *plan.basis.shedding_slope;
    const SnowBasis& basis = plan.basis.snow;
    const bool slippery = basis.surface.value == Surface::slippery;
    const std::string document = name_of(basis.document);
    if (is_asce7(basis.document)) {
        return {asce7_threshold(basis),
                document + ", 7.4: slope from which C_s falls at C_t = " + text_of_number(basis.thermal_factor.value) +
                    (slippery ? ", unobstructed slippery surface" : ", other surfaces")};
    }
    if (is_nbc(basis.document)) {
        return {from_deg(slippery ? 15.0 : 30.0), document + ", 4.1.6.2: slope from which C_s falls" +
                                                      (slippery ? ", unobstructed slippery surface" : "")};
    }
    return {from_deg(30.0),
            document + ", 5.3.3: slope from which mu_1 falls" +
                (slippery ? ", snow free to slide" : " where snow is free to slide, which the plan does not claim")};
}

}  // namespace coverframe
