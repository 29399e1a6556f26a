// SPDX-License-Identifier: BSD-3-Clause
#include "report/shape.hpp"

#include <algorithm>
#include <cmath>

#include "coverframe/plan/geometry.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe::reporting {
namespace {

constexpr int pieces = 24;  // a side of a loaded cut

double between(double a, double b, double t) { return a + t * (b - a); }

// Points of one side from ridge to rail, both included.
std::vector<Across> side_of(const StationShape& shape, const StripState& strip, double sign) {
    std::vector<Across> line;
    for (int i = 0; i <= pieces; ++i) {
        const double s = static_cast<double>(i) / pieces;
        const double height = strip.span > 0 ? strip.height(s) : s * (shape.rail_z - shape.ridge_loaded);
        line.push_back({between(shape.ridge_aside, sign * shape.half_breadth, s), shape.ridge_loaded + height});
    }
    return line;
}

std::vector<Across> loaded_line(const StationShape& shape) {
    std::vector<Across> line = side_of(shape, shape.port, -1.0);
    std::ranges::reverse(line);
    const std::vector<Across> starboard = side_of(shape, shape.starboard, 1.0);
    line.insert(line.end(), starboard.begin() + 1, starboard.end());
    return line;
}

// Loaded line at x between the two stations next to it; empty outside them.
std::vector<Across> loaded_at(const std::vector<StationShape>& shapes, double x) {
    constexpr double slip = 1e-9;
    if (shapes.empty() || x < shapes.front().x - slip || x > shapes.back().x + slip) return {};
    const auto after = std::ranges::lower_bound(shapes, x, {}, &StationShape::x);
    if (after == shapes.begin()) return loaded_line(shapes.front());
    if (after == shapes.end()) return loaded_line(shapes.back());
    const StationShape& a = *std::prev(after);
    const StationShape& b = *after;
    const double t = (x - a.x) / (b.x - a.x);
    std::vector<Across> line = loaded_line(a);
    const std::vector<Across> next = loaded_line(b);
    for (std::size_t i = 0; i < line.size(); ++i) {
        line[i] = {between(line[i].y, next[i].y, t), between(line[i].z, next[i].z, t)};
    }
    return line;
}

void keep_closer(std::optional<Closest>& best, const Assessment& assessment, const Obstacle& obstacle, double x,
                 double y, double z) {
    const std::optional<Cut> cut = cut_at(assessment, x);
    if (!cut) return;
    const std::optional<double> film = film_height(*cut, y);
    if (film && (!best || *film - z < best->gap)) best = Closest{&obstacle, x, y, z, *film - z};
}

void close_pocket(std::vector<Pocket>& all, Pocket& open) {
    if (open.volume > 0) all.push_back(open);
    open = {};
}

void add_side(std::vector<Pocket>& all, const std::vector<StationShape>& shapes, double sign) {
    Pocket open;
    double last_area = 0;
    for (std::size_t i = 0; i < shapes.size(); ++i) {
        const StationShape& shape = shapes[i];
        const StripState& strip = sign < 0 ? shape.port : shape.starboard;
        const Hollow hollow = strip.span > 0 ? hollow_of(strip) : Hollow{};
        const double step = i == 0 ? 0.0 : shape.x - shapes[i - 1].x;
        const auto y = [&](double level) { return shape.ridge_aside + sign * level; };
        if (hollow.area > 0) {
            if (open.edges.empty()) {
                const double x = i == 0 ? shape.x : shapes[i - 1].x;
                open.edges.push_back({x, y(hollow.deepest), y(hollow.deepest)});
            }
            open.edges.push_back({shape.x, y(hollow.from), y(hollow.to)});
            open.depth = std::max(open.depth, hollow.depth);
        } else if (!open.edges.empty()) {
            const double middle = (open.edges.back().inner + open.edges.back().outer) / 2;
            open.edges.push_back({shape.x, middle, middle});
        }
        open.volume += step * (last_area + hollow.area) / 2;
        if (hollow.area <= 0) close_pocket(all, open);
        last_area = hollow.area;
    }
    close_pocket(all, open);
}

}  // namespace

std::optional<Cut> cut_at(const Assessment& assessment, double x) {
    const std::optional<RailStation> rail = rail_at(assessment.plan.boat, from_m(x));
    const std::optional<Length> ridge = ridge_at(assessment.plan.support, from_m(x));
    if (!rail || !ridge) return std::nullopt;
    Cut cut;
    cut.x = x;
    cut.half_breadth = in_m(rail->half_breadth);
    cut.rail_z = in_m(rail->z);
    cut.ridge_drawn = in_m(*ridge);
    cut.drawn = {{-cut.half_breadth, cut.rail_z}, {0, cut.ridge_drawn}, {cut.half_breadth, cut.rail_z}};
    cut.loaded = loaded_at(assessment.shape, x);
    cut.ridge_index = cut.loaded.size() / 2;
    return cut;
}

std::optional<double> film_height(const Cut& cut, double y) {
    const std::vector<Across>& line = cut.loaded.empty() ? cut.drawn : cut.loaded;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const Across& a = line[i];
        const Across& b = line[i + 1];
        if (y < a.y || y > b.y || b.y <= a.y) continue;
        return between(a.z, b.z, (y - a.y) / (b.y - a.y));
    }
    return std::nullopt;
}

std::optional<Closest> closest_to(const Assessment& assessment, const Obstacle& obstacle) {
    constexpr int steps = 40;  // between two points of the outline
    std::optional<Closest> best;
    const std::vector<Point>& outline = obstacle.outline;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Point& a = outline[i];
        const Point& b = outline[std::min(i + 1, outline.size() - 1)];
        for (int k = 0; k <= (i + 1 < outline.size() ? steps : 0); ++k) {
            const double t = static_cast<double>(k) / steps;
            keep_closer(best, assessment, obstacle, between(in_m(a.x), in_m(b.x), t), between(in_m(a.y), in_m(b.y), t),
                        between(in_m(a.z), in_m(b.z), t));
        }
    }
    return best;
}

double place_of_section(const Assessment& assessment) {
    std::optional<Closest> best;
    for (const Obstacle& obstacle : assessment.plan.boat.obstacles) {
        const std::optional<Closest> place = closest_to(assessment, obstacle);
        if (place && (!best || place->gap < best->gap)) best = place;
    }
    if (best) return best->x;
    const auto sag_of = [](const StationShape& shape) { return std::max(shape.port.sag, shape.starboard.sag); };
    const auto most = std::ranges::max_element(assessment.shape, {}, sag_of);
    if (most != assessment.shape.end()) return most->x;
    const std::vector<ProfilePoint> ridge = ridge_profile(assessment.plan.support);
    return ridge.empty() ? 0.0 : (in_m(ridge.front().x) + in_m(ridge.back().x)) / 2;
}

std::optional<RidgeDrop> ridge_drop(const Assessment& assessment) {
    std::optional<RidgeDrop> most;
    for (const StationShape& shape : assessment.shape) {
        const double drop = shape.ridge_drawn - shape.ridge_loaded;
        if (!most || drop > most->drop) most = RidgeDrop{shape.x, shape.ridge_loaded, drop};
    }
    return most;
}

std::vector<Pocket> pockets(const Assessment& assessment) {
    std::vector<Pocket> all;
    add_side(all, assessment.shape, -1.0);
    add_side(all, assessment.shape, 1.0);
    return all;
}

}  // namespace coverframe::reporting
