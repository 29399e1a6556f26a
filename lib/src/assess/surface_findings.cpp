// SPDX-License-Identifier: BSD-3-Clause
#include <algorithm>
#include <cmath>
#include <utility>

#include "assess/outcome.hpp"
#include "checks/common.hpp"
#include "checks/shown.hpp"
#include "coverframe/assess/surface.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe {
namespace {

using checks_detail::shown;

/// In all, without counting as standing water: hollows as deep as the facets of the mesh, and edges that dry by
/// themselves. A choice of this library, no source.
constexpr double litres_that_may_stand = 1.0;

/// Of its limit, or of its use where that is more: a check that is raised by less stays as it was, and would print the
/// same.
constexpr double least_raise = 0.01;

Finding made(std::string check, std::string part, const std::string& situation, std::string unit) {
    Finding finding;
    finding.clause = {"coverframe", "film as a surface"};
    finding.check = std::move(check);
    finding.part = std::move(part);
    finding.situation = situation.empty() ? situation : situation + "; unfactored; film as a surface";
    finding.unit = std::move(unit);
    return finding;
}

void add_falls(const SurfaceSurvey& survey, std::vector<Finding>& findings) {
    const auto fallen = [](const SurfaceLook& look) { return !look.usable() || !look.snaps.empty(); };
    const auto first = std::ranges::find_if(survey.looks, fallen);
    if (first == survey.looks.end()) return;
    const auto more = std::ranges::count_if(first + 1, survey.looks.end(), fallen);
    Finding& finding = findings.emplace_back(made("surface.stands", "film", first->arrangement, "-"));
    finding.verdict = Verdict::exceeded;
    finding.sentence = (first->usable() ? "Something buckles or snaps over " + first->snaps +
                                              " before the cover comes to rest; hold or stiffen it there"
                                        : "The film as a surface finds no equilibrium: " + first->message) +
                       (more == 0 ? "."
                                  : "; it does not stand under " + std::to_string(more) +
                                        " more arrangements of snow either.");
}

void add_water(const Assessment& assessment, const SurfaceSurvey& survey, std::vector<Finding>& findings) {
    const SurfaceLook* wettest = nullptr;
    for (const SurfaceLook& look : survey.looks) {
        if (look.usable() && (wettest == nullptr || look.water > wettest->water)) wettest = &look;
    }
    if (wettest == nullptr) return;
    Finding& finding = findings.emplace_back(made("surface.water", "film", wettest->arrangement, "L"));
    double held = 0;
    for (const PondFlag& pond : wettest->ponds) held += pond.volume;
    finding.demand = 1e3 * held;
    finding.capacity = litres_that_may_stand;
    finding.utilisation = finding.demand / finding.capacity;
    finding.verdict = finding.demand <= finding.capacity ? Verdict::satisfied : Verdict::exceeded;
    if (finding.verdict == Verdict::satisfied) {
        finding.sentence = "No more water stands on the film than a litre.";
        return;
    }
    finding.x = wettest->ponds.front().x;
    const UnitsShown units = assessment.plan.units_shown;
    const std::size_t more = wettest->ponds.size() - 1;
    finding.sentence = "The film holds " + shown(from_m3(held), units) +
                       " of water; most of it: " + wettest->ponds.front().sentence() +
                       (more == 0   ? ""
                        : more == 1 ? ", and one hollow more"
                                    : ", and " + std::to_string(more) + " hollows more") +
                       "; raise the ridge or set supports closer there, and clear snow and water early.";
}

/// The look in which the film comes nearest to an obstacle, counted from the clearance asked for.
void add_clearance(const Assessment& assessment, const SurfaceSurvey& survey, std::size_t obstacle,
                   std::vector<Finding>& findings) {
    const SurfaceTouch* worst = nullptr;
    const SurfaceLook* in = nullptr;
    for (const SurfaceLook& look : survey.looks) {
        if (!look.usable()) continue;
        const SurfaceTouch& touch = look.touches[obstacle];
        if (!std::isfinite(touch.least_gap)) continue;
        const auto key = [](const SurfaceTouch& t) { return std::pair{-t.least_gap, t.force}; };
        if (worst != nullptr && key(touch) <= key(*worst)) continue;
        worst = &touch;
        in = &look;
    }
    if (worst == nullptr) return;
    const UnitsShown units = assessment.plan.units_shown;
    Finding& finding = findings.emplace_back(made("surface.clearance", worst->obstacle, in->arrangement, "m"));
    const bool rests = worst->force > 0;
    finding.demand = worst->needed;
    finding.capacity = rests ? 0.0 : std::max(worst->least_gap, 0.0);
    finding.verdict = !rests && finding.demand <= finding.capacity ? Verdict::satisfied : Verdict::exceeded;
    if (finding.capacity > 0.0) finding.utilisation = finding.demand / finding.capacity;
    if (rests) {
        finding.sentence = "The film rests on the " + worst->obstacle + " with " + shown(from_N(worst->force), units) +
                           ", up to " + shown(from_N_per_m(worst->greatest_force), units) +
                           " along its edge; raise the support there, for nothing may rest on it.";
    } else {
        finding.sentence = "The film stays " + shown(from_m(finding.capacity), units) + " clear of the " +
                           worst->obstacle + " where " + shown(from_m(finding.demand), units) + " are asked for" +
                           (finding.verdict == Verdict::satisfied ? "." : "; raise the support there.");
    }
}

/// The checks of a part that grow with what it carries.
bool grows(const std::string& check, Carried carried) {
    switch (carried) {
        case Carried::push: return check.starts_with("upright.");
        case Carried::bending_moment: return check == "ridge.bending";
        case Carried::tension: return check == "ridge.strap" || check == "strap.strength";
        case Carried::film_pull: return check == "film.stress";
        case Carried::leg_tension:
        case Carried::band_lift: return check == "band.lift";
        case Carried::band_tension: return check == "band.tension";
    }
    return false;
}

const Finding* worst_check(const Assessment& assessment, const PartForce& force) {
    const Finding* worst = nullptr;
    for (const Finding& finding : assessment.findings) {
        if (finding.part != force.part || !grows(finding.check, force.carried) || !finding.utilisation) continue;
        if (worst == nullptr || *finding.utilisation > *worst->utilisation) worst = &finding;
    }
    return worst;
}

/// The most that the part carries in any situation [N], [N m] or [N/m].
double most_carried(const Assessment& assessment, const PartForce& force, const Finding& worst) {
    if (force.carried == Carried::film_pull)
        return in_Pa(from_N_per_mm2(worst.demand)) * in_m(assessment.plan.film.thickness.value);
    if (force.carried == Carried::tension || of_band(force.carried)) return 1e3 * worst.demand;
    const char* quantity = force.carried == Carried::push ? "push" : "bending moment, sagging";
    for (const ForceRange& range : assessment.forces) {
        if (range.part == force.part && range.quantity == quantity)
            return std::max(std::abs(range.least), std::abs(range.greatest));
    }
    return 0.0;
}

std::string check_name(const PartForce& force) {
    if (force.carried == Carried::push) return "surface.upright";
    if (force.carried == Carried::film_pull) return "surface.film";
    if (of_band(force.carried)) return "surface.band";
    return force.part.starts_with("ridge, ") ? "surface.ridge" : "surface.strap";
}

std::string amount(const PartForce& force, double value, UnitsShown units) {
    if (force.carried == Carried::film_pull || force.carried == Carried::band_lift)
        return shown(from_N_per_m(value), units);
    return force.carried == Carried::bending_moment ? shown(from_N_m(value), units) : shown(from_N(value), units);
}

const char* unit_of(Carried carried) {
    switch (carried) {
        case Carried::push:
        case Carried::tension:
        case Carried::leg_tension:
        case Carried::band_tension: return "kN";
        case Carried::bending_moment: return "kN m";
        case Carried::film_pull:
        case Carried::band_lift: return "kN/m";
    }
    return "";
}

/// "U1 has a push of 2.1 kN under film as a surface and of 1.9 kN under strips (balanced, without factors)".
std::string told(const PartForce& force, UnitsShown units) {
    const bool band = of_band(force.carried);
    std::string text = checks_detail::opening(force.part) + " has a " + name_of(force.carried) + " of " +
                       amount(force, force.surface, units) + " under film as a surface";
    if (band && force.without_ends < (1 - least_raise) * force.surface) {
        text += " (" + amount(force, force.without_ends, units) +
                " without the film that closes bow and stern, which strips leave out)";
    }
    return text + " and of " + amount(force, force.strips, units) + " under strips (" + force.arrangement +
           (band ? ")" : ", without factors)");
}

std::vector<Term> workings_of(const PartForce& force, const CombinationBasis& basis, double most, const Finding& worst,
                              const Finding& raised) {
    const std::string unit = unit_of(force.carried);
    const Term used{"used", *worst.utilisation, "-", "the worst of its checks, " + worst.check, worst.clause};
    if (!of_band(force.carried)) {
        return {{"F strips", force.strips / 1e3, unit, "with film as strips", {}},
                {"F surface", force.surface / 1e3, unit, "with film as a surface, its water with it", {}},
                {"F most", most / 1e3, unit, "the most in any situation, with factors", {}},
                {"gamma", basis.snow.value, "-", basis.snow.source, {}},
                used,
                {"used, surface", raised.demand, "-", "used (1 + gamma (F surface - F strips)/F most)", raised.clause}};
    }
    return {{"gamma", basis.snow.value, "-", basis.snow.source, {}},
            {"F strips", force.strips / 1e3, unit, "with film as strips, " + force.arrangement, {}},
            {"F ends",
             force.without_ends / 1e3,
             unit,
             "with gamma times what the surface pulls more at the rail, without the film closing bow and stern",
             {}},
            {"F surface", force.surface / 1e3, unit, "with all of it", {}},
            {"F most", most / 1e3, unit, "the most in any situation, with factors", {}},
            used,
            {"used, surface", raised.demand, "-", "used (1 + (F surface - F strips)/F most)", raised.clause}};
}

void add_part(const Assessment& assessment, const PartForce& force, std::vector<Finding>& findings) {
    const Finding* worst = worst_check(assessment, force);
    if (worst == nullptr || !(force.excess() > 0.0)) return;
    const double most = most_carried(assessment, force, *worst);
    if (!(most > 0.0)) return;
    const CombinationBasis& basis = assessment.plan.basis.combination;
    const double factor = of_band(force.carried) ? 1.0 : basis.snow.value;
    const double used = *worst->utilisation;
    const double raised = used * (1.0 + factor * force.excess() / most);
    const bool passes = used <= 1.0 && raised > 1.0;
    if (!passes && raised - used < least_raise * std::max(used, 1.0)) return;
    Finding& finding = findings.emplace_back(made(check_name(force), force.part, "", "-"));
    finding.situation = worst->situation;
    finding.demand = raised;
    finding.capacity = 1.0;
    finding.utilisation = finding.demand;
    finding.verdict = finding.demand <= 1.0 ? Verdict::satisfied : Verdict::exceeded;
    finding.x = worst->x;
    const auto share = [](double part) { return checks_detail::number_text(100 * part) + " %"; };
    finding.sentence =
        told(force, assessment.plan.units_shown) + ": its worst check goes from " + share(used) + " to " +
        share(raised) +
        (finding.verdict == Verdict::satisfied ? "." : "; mend it as that check asks, for the greater load.");
    finding.workings = workings_of(force, basis, most, *worst, finding);
}

}  // namespace

std::vector<Finding> surface_findings(const Assessment& assessment, const SurfaceSurvey& survey) {
    std::vector<Finding> findings;
    add_falls(survey, findings);
    add_water(assessment, survey, findings);
    for (std::size_t o = 0; o < assessment.plan.boat.obstacles.size(); ++o)
        add_clearance(assessment, survey, o, findings);
    for (const PartForce& force : survey.forces) add_part(assessment, force, findings);
    std::ranges::stable_sort(findings, worse);
    return findings;
}

void add_surface_findings(Assessment& assessment, const SurfaceSurvey& survey) {
    for (Finding& finding : surface_findings(assessment, survey)) assessment.findings.push_back(std::move(finding));
    std::ranges::stable_sort(assessment.findings, worse);
    assessment.outcome = assess_detail::outcome_of(assessment);
}

}  // namespace coverframe
