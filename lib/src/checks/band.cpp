// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/checks/band.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

#include "checks/band_pulls.hpp"
#include "common.hpp"
#include "coverframe/film/rail.hpp"
#include "coverframe/units/crossing.hpp"
#include "shown.hpp"
#include "strap_strength.hpp"

namespace coverframe {
namespace {

using namespace checks_detail;

const Clause clause_hold{"coverframe", "band held by the rub rail"};
const Clause clause_rail{"coverframe", "film over the rail"};
const Clause clause_cable{"coverframe", "band as a cable"};

/// The pull of the film on the band over one piece of the rail.
struct Pull {
    double from = 0;  ///< x [m]
    double to = 0;
    double length = 0;  ///< of band [m]
    double film = 0;    ///< tension at the rail, per metre [N/m]
    double band = 0;    ///< what of it reaches the band [N/m]
    double rough = 0;   ///< what would reach it over a rough rail [N/m]
    double lift = 0;    ///< of the band, upwards [N/m]
    double net = 0;     ///< lift less what the rub rail takes, never under zero [N/m]
};

using SidePulls = std::vector<Pull>;

double rail_hold(const Plan& plan) {
    const auto& hold = plan.support.band.rub_rail_hold;
    return hold ? in_N_per_m(hold->value) : 0.0;
}

/// From memory; only told, never counted on.
constexpr double rough_rail = 0.4;

/// Direction in which the film leaves the rail, down and outwards, never flatter than it comes.
Angle leaving(const Band& band, Angle arrives) {
    const double below = in_m(band.below_rail);
    const double inset = in_m(band.inset.value_or(Length{}));
    const Angle leaves = below == 0.0 && inset == 0.0 ? from_deg(90.0) : from_rad(std::atan2(below, -inset));
    return std::max(leaves, arrives);
}

/// What film that pulls on the rail does to the band.
Pull over_rail(const Plan& plan, const RailPull& rail) {
    const Band& band = plan.support.band;
    const auto& [x, y, z] = rail.force;
    const Angle arrives = from_rad(std::atan2(z, std::hypot(x, y)));
    const Angle leaves = leaving(band, arrives);
    const double film = std::hypot(x, y, z);
    const auto least = [&](double friction) { return turn_over_rail(film, arrives, leaves, friction).band_pull[0]; };
    // Film below the rail was shrunk too, and keeps that tension however well the rail holds.
    const double shrunk = std::min(film, in_N_per_m(plan.film.tension_high.value));
    Pull pull{.from = rail.from, .to = rail.to, .length = rail.length, .film = film};
    pull.band = band.rail_friction ? std::max(least(band.rail_friction->value), shrunk) : film;
    pull.rough = std::max(least(rough_rail), shrunk);
    pull.lift = pull.band * std::sin(in_rad(leaves));
    pull.net = std::max(pull.lift - rail_hold(plan), 0.0);
    return pull;
}

std::array<SidePulls, 2> over_rails(const Plan& plan, const RailPulls& rails) {
    std::array<SidePulls, 2> sides;
    for (std::size_t side = 0; side < 2; ++side) {
        for (const RailPull& rail : rails[side]) sides[side].push_back(over_rail(plan, rail));
    }
    return sides;
}

/// Force on a length of one side [N].
struct Share {
    double film = 0;    ///< of the film at the rail
    double band = 0;    ///< on the band
    double rough = 0;   ///< on the band if the rail were rough
    double lift = 0;    ///< of the band
    double net = 0;     ///< less what the rub rail takes
    double length = 0;  ///< over which there is film [m]

    Share& operator+=(const Share& other) {
        film += other.film;
        band += other.band;
        rough += other.rough;
        lift += other.lift;
        net += other.net;
        length += other.length;
        return *this;
    }
};

/// How much of a piece lies between two x; a piece across the boat lies at one.
double share_within(const Pull& pull, double from, double to) {
    if (pull.to == pull.from) return pull.from >= from && pull.from < to ? 1.0 : 0.0;
    return std::max(std::min(pull.to, to) - std::max(pull.from, from), 0.0) / (pull.to - pull.from);
}

Share share_of(const SidePulls& pulls, double from, double to) {
    Share share;
    for (const Pull& pull : pulls) {
        const double length = pull.length * share_within(pull, from, to);
        if (length <= 0.0) continue;
        share.film += pull.film * length;
        share.band += pull.band * length;
        share.rough += pull.rough * length;
        share.lift += pull.lift * length;
        share.net += pull.net * length;
        share.length += length;
    }
    return share;
}

/// The share of the side that is pulled harder, and which one that is.
struct Harder {
    Share share;
    Side side = Side::port;
    bool alike = false;  ///< both sides are pulled the same
};

Harder harder(const std::array<SidePulls, 2>& sides, double from, double to) {
    const Share port = share_of(sides[0], from, to);
    const Share starboard = share_of(sides[1], from, to);
    const bool same = alike(port.film, starboard.film) && alike(port.net, starboard.net);
    const bool second = starboard.net > port.net || (starboard.net == port.net && starboard.film > port.film);
    return second ? Harder{starboard, Side::starboard, same} : Harder{port, Side::port, same};
}

std::vector<BellyStrap> from_bow(const Band& band) {
    std::vector<BellyStrap> straps = band.belly_straps;
    std::ranges::stable_sort(straps, [](const BellyStrap& a, const BellyStrap& b) { return a.x < b.x; });
    return straps;
}

std::vector<Term> hold_terms(const CheckInput& input, const Share& share) {
    std::vector<Term> terms{term("length", share.length, "m", "of the band that it holds, on one side"),
                            term("P_film", share.film / 1e3, "kN", "film tension at the rail over that length"),
                            term("P_rough", share.rough / 1e3, "kN",
                                 "what a rough rail (mu = 0.4, from memory) would leave of it; not counted on")};
    const auto& friction = input.plan.support.band.rail_friction;
    if (friction) terms.push_back(term("mu", friction->value, "-", friction->source));
    terms.push_back(term("P_band", share.band / 1e3, "kN",
                         friction ? "P_film e^(-mu theta), not under the tension the film was shrunk to, strip by strip"
                                  : "P_film: no friction on the rail is counted on",
                         clause_rail));
    terms.push_back(term("lift", share.lift / 1e3, "kN", "upward part of P_band, strip by strip"));
    if (const auto& hold = input.plan.support.band.rub_rail_hold)
        terms.push_back(term("rub rail", in_kN_per_m(hold->value), "kN/m", hold->source));
    terms.push_back(term("P", share.net / 1e3, "kN", "lift less what the rub rail takes, strip by strip"));
    return terms;
}

// ---- belly straps --------------------------------------------------------------------------------------------------

Finding belly_finding(const CheckInput& input, const std::array<SidePulls, 2>& sides,
                      const std::vector<BellyStrap>& straps, std::size_t k) {
    constexpr double endless = std::numeric_limits<double>::infinity();
    const UnitsShown units = input.plan.units_shown;
    const BellyStrap& strap = straps[k];
    const double x = in_m(strap.x);
    const double from = k == 0 ? -endless : 0.5 * (in_m(straps[k - 1].x) + x);
    const double to = k + 1 == straps.size() ? endless : 0.5 * (x + in_m(straps[k + 1].x));
    const Harder worst = harder(sides, from, to);
    const StrapKind& kind = strap_kind(input.plan, strap.strap);
    const double demand = std::max(worst.share.net, in_N(strap.pretension));
    const std::string part = "belly strap " + std::to_string(k + 1);
    Finding finding =
        compare("band.lift", part, strap::clause_strength, input, demand / 1e3, in_kN(strap_strength(kind)), "kN");
    finding.x = x;
    finding.sentence =
        opening(part) + ", " + shown(strap.x, units) + " aft of the stem, is pulled with " +
        shown(from_N(demand), units) + " on " +
        (worst.alike ? std::string("each") : std::string("the ") + name_of(worst.side)) + " leg where it may carry " +
        shown(strap_strength(kind), units) +
        (finding.verdict == Verdict::exceeded ? "; put more belly straps beside it, or a stronger one." : ".");
    if (!input.workings) return finding;
    finding.workings = hold_terms(input, worst.share);
    finding.workings.push_back(
        term("T0", in_kN(strap.pretension), "kN", "tension it was set to; the larger of P and T0 counts"));
    add_strength_terms(finding.workings, kind);
    return finding;
}

// ---- without belly straps ------------------------------------------------------------------------------------------

double largest_lift(const SidePulls& pulls) {
    double largest = 0.0;
    for (const Pull& pull : pulls) largest = std::max(largest, pull.lift);
    return largest;
}

Finding rub_rail_finding(const CheckInput& input, const std::array<SidePulls, 2>& sides) {
    const UnitsShown units = input.plan.units_shown;
    const double port = largest_lift(sides[0]);
    const double starboard = largest_lift(sides[1]);
    const Side side = starboard > port ? Side::starboard : Side::port;
    const double pull = std::max(port, starboard);
    const double hold = rail_hold(input.plan);
    Finding finding = compare("band.lift", "band", clause_hold, input, pull / 1e3, hold / 1e3, "kN/m");
    finding.sentence = "The film pulls the band up with up to " + shown(from_N_per_m(pull), units) +
                       (alike(port, starboard) ? " on both sides" : std::string(" on the ") + name_of(side) + " side");
    finding.sentence +=
        hold > 0.0 ? ", and the rub rail holds " + shown(from_N_per_m(hold), units) : ", and nothing holds it down";
    finding.sentence +=
        finding.verdict == Verdict::exceeded ? "; fit belly straps under the hull from band to band." : ".";
    if (input.workings) {
        finding.workings = {
            term("p", pull / 1e3, "kN/m", "largest upward part of what reaches the band of the film", clause_rail)};
        if (const auto& held = input.plan.support.band.rub_rail_hold)
            finding.workings.push_back(term("rub rail", hold / 1e3, "kN/m", held->source));
    }
    return finding;
}

// ---- the band itself -----------------------------------------------------------------------------------------------

/// The band between two belly straps, or round an end of the boat from the last one on one side to that on the other.
struct BandSpan {
    Harder pull;
    std::optional<double> x;  ///< middle [m]; empty: all along
    double tension = 0;       ///< H, along the chord [N]
    double end = 0;           ///< at the belly strap [N]
};

BandSpan band_span(const CheckInput& input, const Harder& pull, std::optional<double> x) {
    const Band& band = input.plan.support.band;
    BandSpan span{pull, x, 0.0, 0.0};
    span.tension = cable_tension(in_N(band.pretension), in_N(strap_kind(input.plan, band.strap).stiffness_high.value),
                                 pull.share.net);
    span.end = std::hypot(span.tension, 0.5 * pull.share.net);
    return span;
}

// Both sides of an end pull on one span of band that goes round it.
Harder both_sides(const std::array<SidePulls, 2>& sides, double from, double to) {
    Harder pull = harder(sides, from, to);
    const Share other = share_of(sides[pull.side == Side::port ? 1 : 0], from, to);
    pull.share += other;
    return pull;
}

std::vector<BandSpan> band_spans(const CheckInput& input, const std::array<SidePulls, 2>& sides,
                                 const std::vector<BellyStrap>& straps) {
    constexpr double endless = std::numeric_limits<double>::infinity();
    const double first = in_m(straps.front().x);
    const double last = in_m(straps.back().x);
    std::vector<BandSpan> spans{band_span(input, both_sides(sides, -endless, first), first)};
    for (std::size_t k = 1; k < straps.size(); ++k) {
        const double from = in_m(straps[k - 1].x);
        const double to = in_m(straps[k].x);
        spans.push_back(band_span(input, harder(sides, from, to), 0.5 * (from + to)));
    }
    spans.push_back(band_span(input, both_sides(sides, last, endless), last));
    return spans;
}

Finding tension_finding(const CheckInput& input, const BandSpan& span) {
    const UnitsShown units = input.plan.units_shown;
    const Band& band = input.plan.support.band;
    const StrapKind& kind = strap_kind(input.plan, band.strap);
    Finding finding = compare("band.tension", "band", strap::clause_strength, input, span.end / 1e3,
                              in_kN(strap_strength(kind)), "kN");
    finding.x = span.x;
    finding.sentence =
        "The band pulls " + shown(from_N(span.end), units) +
        (span.x ? " near " + shown(from_m(*span.x), units) + " aft of the stem" : std::string(" all along")) +
        " where it may carry " + shown(strap_strength(kind), units) +
        (finding.verdict == Verdict::exceeded ? "; set the belly straps closer or use a stronger band." : ".");
    if (!input.workings) return finding;
    finding.workings = hold_terms(input, span.pull.share);
    finding.workings.push_back(term("T0", in_kN(band.pretension), "kN", "tension the band was set to"));
    finding.workings.push_back(term("EA", in_kN(kind.stiffness_high.value), "kN", kind.stiffness_high.source));
    finding.workings.push_back(
        term("H", span.tension / 1e3, "kN", "root of H^3 - T0 H^2 - EA P^2/24 = 0", clause_cable));
    finding.workings.push_back(term("T", span.end / 1e3, "kN", "sqrt[H^2 + (P/2)^2]", clause_cable));
    add_strength_terms(finding.workings, kind);
    return finding;
}

// The rub rail holds the band all along: it carries what it was set to. Where it does not hold, there is no span to
// judge.
Finding band_on_rail_finding(const CheckInput& input, const Finding& lift) {
    if (lift.verdict == Verdict::exceeded)
        return not_applicable(
            "band.tension", "band", clause_cable, input,
            "The band is not judged: it lifts, and no belly straps divide it into lengths it could span.");
    return tension_finding(input, band_span(input, {}, std::nullopt));
}

}  // namespace

namespace checks_detail {

// Each strip pulls from halfway to the strip before it to halfway to the strip behind it; the first and the last reach
// as far as their width says.
RailPulls rail_pulls(const Cover& cover, const CoverState& state) {
    RailPulls pulls;
    for (const Side side : {Side::port, Side::starboard}) {
        const std::vector<int> strips = strips_of(cover, side);
        for (std::size_t k = 0; k < strips.size(); ++k) {
            const CoverStrip& strip = cover.strips[at(strips[k])];
            const double x = x_of(cover, strip);
            const auto half_to = [&](std::size_t other) {
                return 0.5 * std::abs(x_of(cover, cover.strips[at(strips[other])]) - x);
            };
            const bool first = k == 0;
            const bool last = k + 1 == strips.size();
            const double before =
                first ? (last ? 0.5 * strip.width : std::max(strip.width - half_to(k + 1), 0.0)) : half_to(k - 1);
            const double after =
                last ? (first ? 0.5 * strip.width : std::max(strip.width - half_to(k - 1), 0.0)) : half_to(k + 1);
            RailPull pull{x - before, x + after, before + after, state.strips[at(strips[k])].pull_lower};
            for (double& force : pull.force) force /= strip.width;
            pulls[side == Side::port ? 0 : 1].push_back(pull);
        }
    }
    return pulls;
}

std::vector<Finding> judge_band(const CheckInput& input, const RailPulls& rails) {
    const std::array<SidePulls, 2> sides = over_rails(input.plan, rails);
    const std::vector<BellyStrap> straps = from_bow(input.plan.support.band);
    if (straps.empty()) {
        Finding lift = rub_rail_finding(input, sides);
        Finding tension = band_on_rail_finding(input, lift);
        return {std::move(lift), std::move(tension)};
    }
    std::vector<Finding> findings;
    for (std::size_t k = 0; k < straps.size(); ++k) findings.push_back(belly_finding(input, sides, straps, k));
    const std::vector<BandSpan> spans = band_spans(input, sides, straps);
    findings.push_back(tension_finding(input, *std::ranges::max_element(spans, {}, &BandSpan::end)));
    return findings;
}

}  // namespace checks_detail

std::vector<Finding> check_band(const CheckInput& input) {
    require_usable(input);
    return judge_band(input, rail_pulls(input.cover, input.state));
}

}  // namespace coverframe
