// SPDX-License-Identifier: BSD-3-Clause
#include "actions/arrangements/common.hpp"

#include <algorithm>
#include <array>
#include <charconv>

#include "coverframe/actions/argument.hpp"
#include "coverframe/actions/rule.hpp"

namespace coverframe {

PlanLoad load_at(const LoadProfile& profile, double share) {
    argument::within(share, 0.0, 1.0, {"arrangement.share.range", "share of the half breadth", "-"});
    Pressure load{};
    for (std::size_t i = 0; i < profile.size(); ++i) {
        const LoadPoint& end = profile[i];
        if (end.share == share) load = std::max(load, end.load.value);
        if (i == 0) continue;
        const LoadPoint& begin = profile[i - 1];
        if (begin.share < share && share < end.share) {
            const double along = (share - begin.share) / (end.share - begin.share);
            load = std::max(load, begin.load.value + along * (end.load.value - begin.load.value));
        }
    }
    return {load};
}

namespace arranging {
namespace {

PlanLoad greatest(const LoadProfile& profile) {
    Pressure most{};
    for (const LoadPoint& point : profile) most = std::max(most, point.load.value);
    return {most};
}

}  // namespace

LoadProfile even(Pressure load) { return {{0.0, {load}}, {1.0, {load}}}; }

StationField heavy_side(bool port, LoadProfile heavy, LoadProfile light) {
    return port ? StationField{std::move(heavy), std::move(light)} : StationField{std::move(light), std::move(heavy)};
}

const char* side_name(bool port) { return port ? "port" : "starboard"; }

Arrangement over_stations(Heading heading, Stations stations, const FieldRule& field, const WorkingsRule& workings) {
    Arrangement arrangement;
    arrangement.name = std::move(heading.name);
    arrangement.clause = std::move(heading.clause);
    arrangement.note = std::move(heading.note);
    const CoverStation* heaviest = nullptr;
    Pressure most{};
    for (const CoverStation& station : stations) {
        StationField at = carries(station) ? field(station) : both(Pressure{});
        const PlanLoad port = greatest(at.port);
        const PlanLoad starboard = greatest(at.starboard);
        const Pressure here = std::max(port.value, starboard.value);
        if (carries(station) && (heaviest == nullptr || here > most)) {
            heaviest = &station;
            most = here;
        }
        arrangement.port.push_back(port);
        arrangement.starboard.push_back(starboard);
        arrangement.port_field.push_back(std::move(at.port));
        arrangement.starboard_field.push_back(std::move(at.starboard));
    }
    if (workings && heaviest != nullptr) arrangement.workings = workings(*heaviest);
    return arrangement;
}

void append(std::vector<Term>& terms, const std::string& rule, const std::vector<double>& arguments,
            const std::vector<ArgumentSource>& sources) {
    const Rule& of = rule_named(rule);
    std::vector<std::string> texts;
    for (const RuleValue& value : of.arguments) {
        const auto found = std::ranges::find(sources, value.symbol, &ArgumentSource::symbol);
        texts.push_back(found == sources.end() ? std::string() : found->source);
    }
    for (Term& term : workings(of, arguments, texts)) {
        const bool argument = term.clause.document.empty();
        const bool there = std::ranges::any_of(terms, [&](const Term& earlier) {
            return earlier.symbol == term.symbol && earlier.value == term.value && earlier.unit == term.unit;
        });
        if (!argument || !there) terms.push_back(std::move(term));
    }
}

std::string text_of_number(double value) {
    std::array<char, 32> digits{};
    return {digits.data(), std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr};
}

}  // namespace arranging
}  // namespace coverframe
