// SPDX-License-Identifier: BSD-3-Clause
// An assessment made by hand, so that the report is tested without the calculation. The boat, the yard and every number
// are invented.
#pragma once

#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "coverframe/assess/assess.hpp"
#include "coverframe/plan/geometry.hpp"
#include "coverframe/units/crossing.hpp"

namespace sample {

using namespace coverframe;
using namespace coverframe::literals;

inline Boat boat() {
    Boat b;
    b.name = "Seven-metre open boat";
    b.rail = {{0.0_m, 0.0_m, 1.05_m},   {0.8_m, 0.62_m, 0.97_m}, {2.0_m, 1.08_m, 0.88_m}, {3.6_m, 1.26_m, 0.80_m},
              {5.4_m, 1.24_m, 0.78_m}, {7.2_m, 1.12_m, 0.80_m}};
    b.stands = {{"cockpit sole", 2.6_m, 6.9_m, 0.75_m, 0.0_m, {150.0_kPa, "common practice, no source"}},
                {"foredeck", 0.6_m, 2.2_m, 0.4_m, 0.72_m, {80.0_kPa, "yard test on 3 November"}}};
    b.obstacles = {
        {"windshield",
         {{2.9_m, -0.85_m, 0.88_m}, {2.6_m, -0.45_m, 1.12_m}, {2.6_m, 0.45_m, 1.12_m}, {2.9_m, 0.85_m, 0.88_m}},
         {100.0_mm, "common practice, no source"}},
        {"outboard", {{7.1_m, 0.0_m, 1.28_m}}, {50.0_mm, "common practice, no source"}}};
    return b;
}

inline StrapKind strap() {
    return {"woven 25 mm",
            {25.0_kN, "lower bound, invented"},
            {120.0_kN, "upper bound, invented"},
            {9.0_kN, "catalogue, invented"},
            {0.8, "common practice, no source"},
            {0.7, "common practice, no source"},
            {0.33, "common practice, no source"}};
}

inline Upright upright(std::string name, Length x, std::string on, Length top) {
    return {std::move(name), x, std::move(on), top, {38.0_mm, 89.0_mm}, "C24", {300.0_mm, 200.0_mm, 38.0_mm}, {}};
}

inline Support support() {
    RidgeSupport r;
    r.ridge.member = PoleRidge{{38.0_mm, 89.0_mm}, "C24"};
    r.ridge.bow = {0.15_m, 1.16_m, Hold::pinned};
    r.ridge.stern = {7.1_m, 1.62_m, Hold::sliding};
    r.uprights = {upright("U1", 1.6_m, "foredeck", 1.62_m), upright("U2", 3.2_m, "cockpit sole", 1.85_m),
                  upright("U3", 4.8_m, "cockpit sole", 1.86_m), upright("U4", 6.4_m, "cockpit sole", 1.76_m)};
    for (const Upright& u : r.uprights) {
        r.cross_straps.push_back({"C" + u.name.substr(1), u.name, "woven 25 mm", 600.0_N, Sides::both});
    }
    Support s;
    s.structure = r;
    s.band.strap = "woven 25 mm";
    s.band.pretension = 800.0_N;
    s.band.below_rail = 150.0_mm;
    s.band.hangers = {0.8_m};
    s.band.belly_straps = {
        {2.0_m, "woven 25 mm", 300.0_N}, {4.0_m, "woven 25 mm", 300.0_N}, {6.0_m, "woven 25 mm", 300.0_N}};
    s.band.rub_rail_hold = Cited<LineLoad>{100.0_N_per_m, "common practice, no source"};
    return s;
}

inline Plan plan() {
    Plan p;
    p.title = "Winter cover, open boat";
    p.note = "Invented for tests: no such boat, yard or measurement exists.";
    p.site = {"Yard by the lake", {1.5_kPa, SnowDocument::en1991_1_3, "", "invented"}};
    p.basis.snow = {SnowDocument::en1991_1_3, {1.0, "EN 1991-1-3:2003, 5.2(7)"}, {1.0, "EN 1991-1-3:2003, 5.2(8)"},
                    {Surface::other, "straps stand proud"}, {}};
    p.basis.combination = {{1.35, "EN 1990:2002, A1.2(B)"}, {1.5, "EN 1990:2002, A1.2(B)"}};
    p.basis.timber.document = TimberDocument::en1995_1_1;
    p.basis.timber.modification_factor = Cited<double>{0.7, "EN 1995-1-1:2004, Table 3.1, from memory"};
    p.basis.timber.material_factor = Cited<double>{1.3, "EN 1995-1-1:2004, Table 2.3, from memory"};
    p.basis.shedding_slope = Cited<Angle>{30.0_deg, "EN 1991-1-3:2003, 5.3"};
    p.boat = boat();
    p.straps = {strap()};
    p.support = support();
    p.film = {{0.18_mm, "measured, invented"}, {200.0_N_per_m, "invented"},         {900.0_N_per_m, "invented"},
              {150.0_MPa, "invented"},         {0.4, "common practice, no source"}, {9.0_MPa, "invented"},
              {9.1_kN_per_m3, "invented"}};
    return p;
}

// A strip from ridge to rail with a sag of `share` of its span.
inline StripState strip(double span, double rise, double share) {
    StripState s;
    s.span = span;
    s.rise = rise;
    s.sag = share * span;
    return s;
}

inline std::vector<StationShape> shape(const Plan& p) {
    std::vector<StationShape> all;
    for (double x = 0.15; x < 7.11; x += 0.2482) {
        const auto rail = rail_at(p.boat, from_m(x));
        const auto ridge = ridge_at(p.support, from_m(x));
        if (!rail || !ridge) continue;
        StationShape s;
        s.x = x;
        s.half_breadth = in_m(rail->half_breadth);
        s.rail_z = in_m(rail->z);
        s.ridge_drawn = in_m(*ridge);
        const double bow_share = (x - 0.15) / 6.95;
        s.ridge_loaded = s.ridge_drawn - 0.05 * std::pow(std::sin(3.14159 * (x - 1.6) / 1.6), 2) * bow_share;
        s.ridge_aside = 0.03 * bow_share;
        const double share = x > 2.0 && x < 4.5 ? 0.235 : 0.10;
        s.port = strip(s.half_breadth + s.ridge_aside, s.rail_z - s.ridge_loaded, share);
        s.starboard = strip(s.half_breadth - s.ridge_aside, s.rail_z - s.ridge_loaded, 0.08);
        all.push_back(s);
    }
    return all;
}

inline Finding finding(std::string check, std::string part, Clause clause, double demand, double capacity,
                       std::string unit, std::string sentence) {
    Finding f;
    f.check = std::move(check);
    f.part = std::move(part);
    f.clause = std::move(clause);
    f.situation = "balanced snow, factored, film slack, straps soft";
    f.demand = demand;
    f.capacity = capacity;
    f.unit = std::move(unit);
    if (capacity > 0) f.utilisation = demand / capacity;
    f.verdict = capacity > 0 && demand <= capacity ? Verdict::satisfied : Verdict::exceeded;
    f.sentence = std::move(sentence);
    f.x = 2.4;
    f.workings = {{"M", 412.0, "N m", "largest moment in the bay", {}},
                  {"W", 5.017e-5, "m3", "b d^2/6", {}},
                  {"k_mod", 0.7, "-", "given in the plan", {"EN 1995-1-1:2004", "3.1.3"}},
                  {"f_d", 12.92, "N/mm2", "k_mod f_k / gamma_M", {"EN 1995-1-1:2004", "2.4.1"}}};
    return f;
}

inline std::vector<Finding> findings() {
    const Clause timber{"EN 1995-1-1:2004", "6.3.3"};
    const Clause own{"coverframe", "strip drains"};
    std::vector<Finding> f{
        finding("strap.strength", "C3 port", {"common practice, no source", ""}, 240, 0, "N",
                "Strap C3 has no strength left to port: put a new one on."),
        finding("film.drainage", "film, U1 to U2", own, 31.2, 24.0, "deg",
                "Water stays on the film between U1 and U2, 22 L of it over the windshield: raise the ridge or shrink "
                "again."),
        finding("ridge.bending", "ridge, U2 to U3", timber, 15.2, 12.92, "N/mm2",
                "The ridge between U2 and U3 is bent too far: put another upright halfway."),
        finding("clearance", "windshield", {"plan", "clearance"}, 0.041, 0.048, "m",
                "The film stays 107 mm over the windshield."),
        finding("upright.hold", "U2", own, 1830, 2400, "N", "U2 is held upright by straps C2."),
        finding("upright.column", "U2", timber, 1830, 6100, "N", "U2 is strong enough as a column."),
        finding("upright.foot", "U1", {"plan", "stand"}, 31.5, 80, "kPa", "The foredeck takes the foot of U1."),
        finding("ridge.shear", "ridge, U2 to U3", timber, 0.61, 1.35, "N/mm2", "The ridge holds in shear."),
        finding("film.stress", "film, U2 to U3", {"plan", "film"}, 6.1, 9.0, "N/mm2",
                "The film holds between U2 and U3."),
        finding("band.tension", "band", {"plan", "strap"}, 1210, 1663, "N", "The band holds."),
        finding("band.lift", "belly strap at 4 m", {"plan", "strap"}, 980, 1663, "N",
                "The belly strap at 4 m holds the band."),
    };
    f[0].utilisation.reset();
    Finding none;
    none.check = "film.shedding";
    none.part = "film, bow to U1";
    none.clause = {"EN 1991-1-3:2003", "5.3"};
    none.sentence = "No snow is counted on to slide from the film forward of U1.";
    f.push_back(none);
    return f;
}

inline Assessment assessment(UnitsShown units = UnitsShown::si) {
    Assessment a;
    a.plan = plan();
    a.plan.units_shown = units;
    a.outcome = Outcome::exceeded;
    for (const double x : {1.0, 3.0, 5.0}) a.stations.push_back({from_m(x), 31.0_deg, 1.1_m});
    Arrangement balanced;
    balanced.name = "balanced";
    balanced.clause = {"EN 1991-1-3:2003", "5.3.3"};
    balanced.note = "Snow is taken as kept from sliding.";
    balanced.port = {{1.2_kPa}, {1.2_kPa}, {1.2_kPa}};
    balanced.starboard = balanced.port;
    balanced.workings = {{"s", 1.2, "kPa", "mu_1 C_e C_t s_k", {"EN 1991-1-3:2003", "5.2"}}};
    Arrangement half = balanced;
    half.name = "half to port";
    half.note.clear();
    half.port = {{0.6_kPa}, {0.6_kPa}, {0.6_kPa}};
    a.arrangements = {balanced, half};
    const auto add = [&](std::string name, int arrangement, Limit limit) {
        SituationResult r;
        r.situation = {std::move(name), arrangement, limit, 1.35, limit == Limit::strength ? 1.5 : 1.0,
                       Bound::low,      Bound::low};
        r.status = SolveStatus::converged;
        r.vertical_load = 15230;
        r.vertical_reaction = 15230;
        r.ridge_sag = 0.047;
        r.film_sag = 0.21;
        a.situations.push_back(r);
    };
    add("no snow, factored, film slack, straps soft", -1, Limit::strength);
    add("balanced snow, factored, film slack, straps soft", 0, Limit::strength);
    add("balanced snow, as it lies, film slack, straps soft", 0, Limit::service);
    add("half to port, as it lies, film tight, straps stiff", 1, Limit::service);
    a.findings = findings();
    a.forces = {{"U2", "push", "N", 120, a.situations[0].situation.name, 1830, a.situations[1].situation.name},
                {"C2 port", "tension", "N", 0, a.situations[1].situation.name, 905, a.situations[3].situation.name},
                {"ridge, U2 to U3", "bending moment", "N m", -12, a.situations[0].situation.name, 762,
                 a.situations[1].situation.name}};
    a.shape = shape(a.plan);
    a.shape_of = a.situations[2].situation.name;
    a.assumptions = {"Strips of film do not share load along the boat.", "The film closing bow and stern is left out."};
    return a;
}

/// In one situation nothing holds the cover up.
inline Assessment fallen(bool any_shape = true) {
    Assessment a = assessment();
    a.outcome = Outcome::no_equilibrium;
    a.failures = {
        "U3 falls to port in \"half to port\": both straps of C3 are slack. Pull C3 tighter or add a strap to "
        "starboard."};
    a.situations[3].status = SolveStatus::unstable;
    a.situations[3].message = a.failures.front();
    a.situations[3].vertical_reaction = std::nan("");
    if (!any_shape) {
        a.shape.clear();
        a.shape_of.clear();
        a.findings.clear();
        a.forces.clear();
    }
    return a;
}

}  // namespace sample
