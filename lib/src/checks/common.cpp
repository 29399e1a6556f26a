// SPDX-License-Identifier: BSD-3-Clause
#include "common.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "coverframe/units/crossing.hpp"

namespace coverframe::checks_detail {

std::string bay_part(std::string_view what, const RidgeBay& bay) { return std::string(what) + ", " + bay.name; }

std::string opening(std::string_view part) {
    std::string text(part);
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return text.find(", ") == std::string::npos ? text : text + ",";
}

Finding not_applicable(std::string check, std::string part, Clause clause, const CheckInput& input,
                       std::string sentence) {
    Finding finding;
    finding.check = std::move(check);
    finding.part = std::move(part);
    finding.clause = std::move(clause);
    finding.situation = input.situation;
    finding.unit = "-";
    finding.verdict = Verdict::not_applicable;
    finding.sentence = std::move(sentence);
    return finding;
}

Term term(std::string symbol, double value, std::string unit, std::string formula, Clause clause) {
    return {std::move(symbol), value, std::move(unit), std::move(formula), std::move(clause)};
}

std::vector<int> strips_of(const Cover& cover, const RidgeBay& bay) {
    std::vector<int> found;
    for (std::size_t i = 0; i < cover.strips.size(); ++i) {
        if (std::ranges::find(bay.stations, cover.strips[i].node) != bay.stations.end())
            found.push_back(static_cast<int>(i));
    }
    return found;
}

std::vector<int> strips_of(const Cover& cover, Side side) {
    std::vector<int> found;
    for (std::size_t i = 0; i < cover.strips.size(); ++i) {
        if (cover.strips[i].side == side) found.push_back(static_cast<int>(i));
    }
    std::ranges::sort(found, {}, [&](int i) { return cover.strips[at(i)].station; });
    return found;
}

double load_of(const StripState& strip) { return -(strip.pull_upper[2] + strip.pull_lower[2]); }

double x_of(const Cover& cover, const CoverStrip& strip) { return cover.layout.frame.nodes[at(strip.node)].at[0]; }

double length_of(const Frame& frame, const RidgeBay& bay) {
    double length = 0.0;
    for (const int m : bay.members) length += drawn_length(frame, frame.members[at(m)]);
    return length;
}

double middle_x(const Frame& frame, const FrameMember& member) {
    return 0.5 * (frame.nodes[at(member.from)].at[0] + frame.nodes[at(member.to)].at[0]);
}

double cable_tension(double initial, double stiffness, double load) {
    const double cube = stiffness * load * load / 24.0;
    if (!(cube > 0.0)) return std::max(initial, 0.0);
    // The cubic is convex from its root on and not negative here, so Newton falls towards the root without passing it.
    double tension = std::max(initial, 0.0) + std::cbrt(cube);
    for (int i = 0; i < 200; ++i) {
        const double value = tension * tension * (tension - initial) - cube;
        const double slope = tension * (3.0 * tension - 2.0 * initial);
        const double next = tension - value / slope;
        if (!(next > 0.0 && next < tension)) break;
        tension = next;
    }
    return tension;
}

std::vector<Point> sampled(std::span<const Point> outline) {
    constexpr double spacing_mm = 25.0;
    std::vector<Point> points;
    for (std::size_t i = 0; i + 1 < outline.size(); ++i) {
        const Point& a = outline[i];
        const Point& b = outline[i + 1];
        const double length = std::hypot(in_mm(b.x - a.x), in_mm(b.y - a.y), in_mm(b.z - a.z));
        const int parts = std::max(1, static_cast<int>(std::ceil(length / spacing_mm)));
        for (int k = 0; k < parts; ++k) {
            const double t = static_cast<double>(k) / parts;
            points.push_back({a.x + t * (b.x - a.x), a.y + t * (b.y - a.y), a.z + t * (b.z - a.z)});
        }
    }
    if (!outline.empty()) points.push_back(outline.back());
    return points;
}

}  // namespace coverframe::checks_detail
