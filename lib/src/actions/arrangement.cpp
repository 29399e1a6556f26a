// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/arrangement.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <functional>

#include "coverframe/actions/asce7_22.hpp"
#include "coverframe/actions/en1991_1_3.hpp"
#include "coverframe/base/error.hpp"

namespace coverframe {
namespace {

/// Loads of one station, port and starboard; and the lines that lead to them, for its heavier side.
struct StationLoads {
    PlanLoad port;
    PlanLoad starboard;
};
using LoadRule = std::function<StationLoads(const CoverStation&)>;
using WorkingsRule = std::function<std::vector<Term>(const CoverStation&)>;

bool carries(const CoverStation& station) { return station.half_breadth > Length{}; }

Arrangement arrangement_of(std::string name, Clause clause, std::string note) {
    Arrangement arrangement;
    arrangement.name = std::move(name);
    arrangement.clause = std::move(clause);
    arrangement.note = std::move(note);
    return arrangement;
}

// Runs a rule over the stations, and its workings over the one with the heaviest load (the first of equals).
Arrangement over_stations(Arrangement arrangement, std::span<const CoverStation> stations, const LoadRule& loads,
                          const WorkingsRule& workings) {
    const CoverStation* heaviest = nullptr;
    Pressure most{};
    for (const CoverStation& station : stations) {
        const StationLoads at = carries(station) ? loads(station) : StationLoads{};
        arrangement.port.push_back(at.port);
        arrangement.starboard.push_back(at.starboard);
        const Pressure here = std::max(at.port.value, at.starboard.value);
        if (carries(station) && (heaviest == nullptr || here > most)) {
            heaviest = &station;
            most = here;
        }
    }
    if (workings && heaviest != nullptr) arrangement.workings = workings(*heaviest);
    return arrangement;
}

// Shortest text of a number, "." as decimal mark whatever the locale.
std::string text_of_number(double value) {
    std::array<char, 32> digits{};
    return {digits.data(), std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr};
}

}  // namespace

// ---------------------------------------------------------------------------------------------------- ASCE 7-22
namespace {

namespace asce = asce7_22;

/// What the rules of chapter 7 need, taken out of the plan once.
struct AsceSnow {
    Pressure ground{};        // p_g
    asce::RiskCategory category = asce::RiskCategory::II;
    double exposure = 0;      // C_e
    double thermal = 0;       // C_t
    asce::Surface surface = asce::Surface::other;
    double winter_wind = 0;   // W_2
    Pressure flat{};          // p_f
};

asce::RiskCategory risk_category_of(const std::string& text) {
    if (text == "I") return asce::RiskCategory::I;
    if (text == "II") return asce::RiskCategory::II;
    if (text == "III") return asce::RiskCategory::III;
    if (text == "IV") return asce::RiskCategory::IV;
    throw InputError("plan.choice", "/site/ground_snow/risk_category", text,
                     "the risk category must be I, II, III or IV; ASCE 7-22 needs it for the minimum snow load");
}

asce::Surface surface_of(const SnowBasis& basis) {
    return basis.surface.value == Surface::slippery ? asce::Surface::unobstructed_slippery : asce::Surface::other;
}

AsceSnow asce_snow_of(const Plan& plan) {
    const SnowBasis& basis = plan.basis.snow;
    const GroundSnow& ground = plan.site.ground_snow;
    if (!basis.winter_wind) {
        throw InputError("plan.key.missing", "/basis/snow/winter_wind", "",
                         "ASCE 7-22 needs the winter wind parameter W_2 of the site; give it with its source");
    }
    return {.ground = ground.load,
            .category = risk_category_of(ground.risk_category),
            .exposure = basis.exposure_factor.value,
            .thermal = basis.thermal_factor.value,
            .surface = surface_of(basis),
            .winter_wind = basis.winter_wind->value,
            .flat = asce::flat_load_7_3(ground.load, basis.exposure_factor.value, basis.thermal_factor.value)};
}

double slope_factor_at(const AsceSnow& snow, Angle slope) {
    return asce::slope_factor_7_4(slope, snow.thermal, snow.surface);
}

Pressure balanced_at(const AsceSnow& snow, const CoverStation& station) {
    return asce::sloped_load_7_4(snow.flat, slope_factor_at(snow, station.slope));
}

/// The unbalanced case at one station. The drift is worked out for a slope inside the window; `carried_over` is what
/// a station outside of it gets of the surcharge (1 inside).
struct UnbalancedStation {
    Pressure sloped{};        // p_s
    Angle drift_slope{};
    asce::UnbalancedGable gable;
    double carried_over = 1;
    Pressure surcharge{};
    Pressure leeward{};
};

UnbalancedStation unbalanced_at(const AsceSnow& snow, const CoverStation& station) {
    UnbalancedStation at;
    at.sloped = balanced_at(snow, station);
    at.drift_slope = std::clamp(station.slope, asce::unbalanced_from_7_6_1, asce::unbalanced_to_7_6_1);
    at.gable = asce::unbalanced_gable_7_6_1({.sloped_load = at.sloped,
                                             .ground_load = snow.ground,
                                             .slope = at.drift_slope,
                                             .eave_to_ridge = station.half_breadth,
                                             .winter_wind = snow.winter_wind});
    if (station.slope < at.drift_slope) {
        at.carried_over = std::sqrt(std::tan(in_rad(station.slope)) / std::tan(in_rad(at.drift_slope)));
    } else if (station.slope > at.drift_slope) {
        at.carried_over = slope_factor_at(snow, station.slope) / slope_factor_at(snow, at.drift_slope);
    }
    at.surcharge = at.carried_over * at.gable.leeward_surcharge;
    at.leeward = at.sloped + at.surcharge;
    return at;
}

Term station_term(const CoverStation& station) {
    return {"x", in_ft(station.x), "ft", "station with the heaviest load", {}};
}

std::vector<Term> balanced_terms(const Plan& plan, const AsceSnow& snow, const CoverStation& station) {
    const SnowBasis& basis = plan.basis.snow;
    const Angle full = asce::full_load_slope_7_4(snow.thermal, snow.surface);
    const double factor = slope_factor_at(snow, station.slope);
    const bool falls = station.slope > full;
    const char* rule = !falls ? "1, slope up to a" : factor > 0 ? "(70 - slope)/(70 - a)" : "0, slope from 70 degrees";
    return {station_term(station),
            {"p_g", in_psf(snow.ground), "psf", plan.site.ground_snow.source, {}},
            {"C_e", snow.exposure, "-", basis.exposure_factor.source, {}},
            {"C_t", snow.thermal, "-", basis.thermal_factor.source, {}},
            {"p_f", in_psf(snow.flat), "psf", "0.7 C_e C_t p_g", asce::clause_7_3},
            {"slope", in_deg(station.slope), "deg", "drawn, ridge to rail", {}},
            {"a", in_deg(full), "deg", "end of full load for this C_t and surface; surface: " + basis.surface.source,
             asce::clause_7_4},
            {"C_s", factor, "-", rule, asce::clause_7_4},
            {"p_s", in_psf(factor * snow.flat), "psf", "C_s p_f", asce::clause_7_4}};
}

std::vector<Term> minimum_terms(const Plan& plan, const AsceSnow& snow) {
    const GroundSnow& ground = plan.site.ground_snow;
    return {{"p_g", in_psf(snow.ground), "psf", ground.source, {}},
            {"p_m,max", in_psf(asce::minimum_load_limit_7_3_3(snow.category)), "psf",
             "Table 7.3-4, risk category " + ground.risk_category, asce::clause_7_3_3},
            {"p_m", in_psf(asce::minimum_load_7_3_3(snow.ground, snow.category)), "psf", "min(p_g, p_m,max)",
             asce::clause_7_3_3}};
}

std::vector<Term> unbalanced_terms(const Plan& plan, const AsceSnow& snow, const CoverStation& station) {
    const UnbalancedStation at = unbalanced_at(snow, station);
    std::vector<Term> terms = balanced_terms(plan, snow, station);
    const auto add = [&](std::string symbol, double value, std::string unit, std::string formula, Clause clause) {
        terms.push_back({std::move(symbol), value, std::move(unit), std::move(formula), std::move(clause)});
    };
    const double run = 1.0 / std::tan(in_rad(at.drift_slope));
    add("W", in_ft(station.half_breadth), "ft", "half breadth at the rail", {});
    add("l_u", in_ft(std::max(station.half_breadth, asce::shortest_fetch_7_6_1)), "ft", "max(W, 20 ft)",
        asce::clause_7_6_1);
    add("W_2", snow.winter_wind, "-", plan.basis.snow.winter_wind->source, {});
    add("gamma", in_pcf(asce::unit_weight_7_7(snow.ground)), "pcf", "min(0.13 p_g + 14, 30)", asce::clause_7_7);
    add("h_d", in_ft(at.gable.drift_height), "ft", "1.5 sqrt(p_g^0.74 l_u^0.70 W_2^1.7/gamma)", asce::clause_7_6);
    add("S", run, "-",
        station.slope == at.drift_slope ? "1/tan(slope)"
                                        : "1/tan of " + text_of_number(in_deg(at.drift_slope)) +
                                              " deg, the nearest slope inside the window",
        asce::clause_7_6_1);
    if (station.slope < at.drift_slope) {
        add("k", at.carried_over, "-", "sqrt(S tan(slope)), station flatter than the window", {});
    } else if (station.slope > at.drift_slope) {
        add("k", at.carried_over, "-", "C_s(slope)/C_s(end of the window), station steeper than the window", {});
    } else {
        add("k", 1.0, "-", "station inside the window", {});
    }
    add("p_windward", in_psf(at.gable.windward), "psf", "0.3 p_s", asce::clause_7_6_1);
    add("p_drift", in_psf(at.surcharge), "psf", "k h_d gamma/sqrt(S)", asce::clause_7_6_1);
    add("w_drift", in_ft(at.gable.surcharge_width), "ft",
        "min(8 h_d sqrt(S)/3, W) from the ridge; the load is carried on to the rail", asce::clause_7_6_1);
    add("p_leeward", in_psf(at.leeward), "psf", "p_s + p_drift", asce::clause_7_6_1);
    return terms;
}

/// Which cases the slopes of the cover ask for.
struct AsceCases {
    bool minimum = false;
    bool unbalanced = false;
};

AsceCases asce_cases_of(std::span<const CoverStation> stations) {
    AsceCases cases;
    bool reaches_up = false;    // somewhere not flatter than the window
    bool reaches_down = false;  // somewhere not steeper than the window
    for (const CoverStation& station : stations) {
        if (!carries(station)) continue;
        cases.minimum = cases.minimum || asce::minimum_applies_7_3_3(station.slope);
        reaches_up = reaches_up || station.slope >= asce::unbalanced_from_7_6_1;
        reaches_down = reaches_down || station.slope <= asce::unbalanced_to_7_6_1;
    }
    cases.unbalanced = reaches_up && reaches_down;
    return cases;
}

Arrangement asce_balanced(const Plan& plan, const AsceSnow& snow, std::span<const CoverStation> stations,
                          const AsceCases& cases, bool workings) {
    const char* note = cases.unbalanced ? ""
                                        : "No slope of the cover lies between 2.38 degrees and 7 on 12, so ASCE 7-22, "
                                          "7.6.1 asks for no unbalanced snow and none is looked at.";
    const auto loads = [&](const CoverStation& s) {
        const PlanLoad load{balanced_at(snow, s)};
        return StationLoads{load, load};
    };
    const auto terms = [&](const CoverStation& s) { return balanced_terms(plan, snow, s); };
    return over_stations(arrangement_of("balanced", asce::clause_7_4, note), stations, loads,
                         workings ? WorkingsRule(terms) : nullptr);
}

Arrangement asce_minimum(const Plan& plan, const AsceSnow& snow, std::span<const CoverStation> stations,
                         bool workings) {
    const PlanLoad load{asce::minimum_load_7_3_3(snow.ground, snow.category)};
    const auto loads = [&](const CoverStation&) { return StationLoads{load, load}; };
    const auto terms = [&](const CoverStation&) { return minimum_terms(plan, snow); };
    const char* note = "The cover is flatter than 15 degrees in places; the minimum load is put on all of it.";
    return over_stations(arrangement_of("minimum", asce::clause_7_3_3, note), stations, loads,
                         workings ? WorkingsRule(terms) : nullptr);
}

Arrangement asce_unbalanced(const Plan& plan, const AsceSnow& snow, std::span<const CoverStation> stations,
                            bool heavy_to_port, bool workings) {
    const auto loads = [&](const CoverStation& s) {
        const UnbalancedStation at = unbalanced_at(snow, s);
        const PlanLoad lee{at.leeward};
        const PlanLoad windward{at.gable.windward};
        return heavy_to_port ? StationLoads{lee, windward} : StationLoads{windward, lee};
    };
    const auto terms = [&](const CoverStation& s) { return unbalanced_terms(plan, snow, s); };
    const char* name = heavy_to_port ? "unbalanced, heavy to port" : "unbalanced, heavy to starboard";
    const char* note =
        "Unbalanced snow lies on every station, also where the slope is outside the window of ASCE 7-22, 7.6.1 (2.38 "
        "degrees to 7 on 12), and the drift is carried on to the rail; the rule for simple rafters is not used. The "
        "fetch is taken as 20 ft where the half breadth is less.";
    return over_stations(arrangement_of(name, asce::clause_7_6_1, note), stations, loads,
                         workings ? WorkingsRule(terms) : nullptr);
}

std::vector<Arrangement> asce_arrangements(const Plan& plan, std::span<const CoverStation> stations, bool workings) {
    const AsceSnow snow = asce_snow_of(plan);
    const AsceCases cases = asce_cases_of(stations);
    std::vector<Arrangement> all{asce_balanced(plan, snow, stations, cases, workings)};
    if (cases.minimum) all.push_back(asce_minimum(plan, snow, stations, workings));
    if (cases.unbalanced) {
        all.push_back(asce_unbalanced(plan, snow, stations, true, workings));
        all.push_back(asce_unbalanced(plan, snow, stations, false, workings));
    }
    return all;
}

}  // namespace

// ------------------------------------------------------------------------------------------- EN 1991-1-3:2003
namespace {

namespace en = en1991_1_3;

en::Sliding sliding_of(const Plan& plan) {
    return plan.basis.snow.surface.value == Surface::slippery ? en::Sliding::free : en::Sliding::prevented;
}

PlanLoad en_load(const Plan& plan, double shape) {
    const SnowBasis& basis = plan.basis.snow;
    return {en::roof_load_5_2(plan.site.ground_snow.load, shape, basis.exposure_factor.value,
                              basis.thermal_factor.value)};
}

/// One of the three cases of Figure 5.3, port being the first slope.
struct EnCase {
    const char* name;
    const char* number;
    en::ShapePair en::DuopitchArrangements::*shapes;
};

constexpr std::array<EnCase, 3> en_cases{{
    {"balanced", "case (i)", &en::DuopitchArrangements::undrifted},
    {"drifted, heavy to starboard", "case (ii)", &en::DuopitchArrangements::first_halved},
    {"drifted, heavy to port", "case (iii)", &en::DuopitchArrangements::second_halved},
}};

en::ShapePair shapes_at(const Plan& plan, const EnCase& which, const CoverStation& station) {
    const en::Slope slope{station.slope, sliding_of(plan)};
    return en::duopitch_5_3_3(slope, slope).*which.shapes;
}

std::vector<Term> en_terms(const Plan& plan, const EnCase& which, const CoverStation& station) {
    const SnowBasis& basis = plan.basis.snow;
    const en::ShapePair mu = shapes_at(plan, which, station);
    const double full = en::shape_coefficient_pitched_5_3_3(station.slope, sliding_of(plan));
    const bool prevented = sliding_of(plan) == en::Sliding::prevented;
    const char* rule = prevented                         ? "0.8, sliding prevented"
                       : station.slope <= from_deg(30.0) ? "0.8 up to 30 degrees"
                       : full > 0                        ? "0.8 (60 - slope)/30"
                                                         : "0 from 60 degrees";
    return {{"x", in_m(station.x), "m", "station with the heaviest load", {}},
            {"s_k", in_kPa(plan.site.ground_snow.load), "kPa", plan.site.ground_snow.source, {}},
            {"C_e", basis.exposure_factor.value, "-", basis.exposure_factor.source, {}},
            {"C_t", basis.thermal_factor.value, "-", basis.thermal_factor.source, {}},
            {"slope", in_deg(station.slope), "deg", "drawn, ridge to rail", {}},
            {"mu_1", full, "-", std::string(rule) + "; surface: " + basis.surface.source, en::clause_5_3_3},
            {"mu_port", mu.first, "-", mu.first < mu.second ? "0.5 mu_1" : "mu_1", en::clause_5_3_3},
            {"mu_starboard", mu.second, "-", mu.second < mu.first ? "0.5 mu_1" : "mu_1", en::clause_5_3_3},
            {"s_port", in_kPa(en_load(plan, mu.first).value), "kPa", "mu_port C_e C_t s_k", en::clause_5_2},
            {"s_starboard", in_kPa(en_load(plan, mu.second).value), "kPa", "mu_starboard C_e C_t s_k", en::clause_5_2}};
}

std::vector<Arrangement> en_arrangements(const Plan& plan, std::span<const CoverStation> stations, bool workings) {
    const char* sliding = sliding_of(plan) == en::Sliding::free
                              ? "Snow is taken as free to slide off, because the plan claims it."
                              : "Snow is taken as held on the cover at every slope, because the plan does not claim "
                                "that it may slide.";
    std::vector<Arrangement> all;
    for (const EnCase& which : en_cases) {
        const auto loads = [&](const CoverStation& s) {
            const en::ShapePair mu = shapes_at(plan, which, s);
            return StationLoads{en_load(plan, mu.first), en_load(plan, mu.second)};
        };
        const auto terms = [&](const CoverStation& s) { return en_terms(plan, which, s); };
        const Clause clause{en::clause_5_3_3.document, "5.3.3, Figure 5.3, " + std::string(which.number)};
        all.push_back(over_stations(arrangement_of(which.name, clause, sliding), stations, loads,
                                    workings ? WorkingsRule(terms) : nullptr));
    }
    return all;
}

void require_known_rules(SnowDocument document) {
    if (document == SnowDocument::asce7_22 || document == SnowDocument::en1991_1_3) return;
    throw InputError("plan.document.unsupported", "/basis/snow/document", name_of(document),
                     std::string("a plan may name ") + name_of(document) +
                         ", but its snow on a cover is not worked out yet; judge the cover by ASCE 7-22 or EN "
                         "1991-1-3:2003 with a ground load of that document");
}

// What a plan says about its site and no rule here takes up yet is refused: left out in silence it would be unsafe.
void require_known_site(const Site& site) {
    if (!site.neighbours.empty()) {
        throw InputError("plan.neighbours.unsupported", "/site/neighbours", site.neighbours.front().name,
                         "snow that drifts or slides from a neighbour on the cover is not worked out yet; judge it by "
                         "hand, and take the neighbours out of the plan to see the cover without them");
    }
    const std::optional<int>& years = site.ground_snow.return_period_years;
    if (years && *years != 50) {
        throw InputError("plan.return_period.unsupported", "/site/ground_snow/return_period_years",
                         std::to_string(*years),
                         "a ground load of another return period than 50 years is not converted yet; give the one of "
                         "50 years");
    }
}

}  // namespace

std::vector<Arrangement> snow_arrangements(const Plan& plan, std::span<const CoverStation> stations, bool workings) {
    require_known_rules(plan.basis.snow.document);
    require_known_site(plan.site);
    return plan.basis.snow.document == SnowDocument::asce7_22 ? asce_arrangements(plan, stations, workings)
                                                              : en_arrangements(plan, stations, workings);
}

Cited<Angle> shedding_threshold(const Plan& plan) {
    if (plan.basis.shedding_slope) return *plan.basis.shedding_slope;
    const SnowBasis& basis = plan.basis.snow;
    require_known_rules(basis.document);
    const bool slippery = basis.surface.value == Surface::slippery;
    if (basis.document == SnowDocument::asce7_22) {
        return {asce::full_load_slope_7_4(basis.thermal_factor.value, surface_of(basis)),
                text_of(asce::clause_7_4) + ": slope from which C_s falls at C_t = " +
                    text_of_number(basis.thermal_factor.value) +
                    (slippery ? ", unobstructed slippery surface" : ", other surfaces")};
    }
    return {from_deg(30.0), text_of(en::clause_5_3_3) + ": slope from which mu_1 falls" +
                                (slippery ? ", snow free to slide"
                                          : " where snow is free to slide, which the plan does not claim")};
}

}  // namespace coverframe
