// SPDX-License-Identifier: BSD-3-Clause
#include <algorithm>
#include <cmath>

#include "coverframe/base/error.hpp"
#include "coverframe/film/surface_survey.hpp"
#include "coverframe/report/drawing.hpp"
#include "coverframe/units/crossing.hpp"
#include "report/canvas.hpp"
#include "report/format.hpp"
#include "report/picture.hpp"

namespace coverframe {
namespace {

using namespace reporting;

constexpr double contour_step = 0.05;  // m
constexpr Pen contour_pen{.width = 0.5, .colour = colour::grey};

struct Seen {
    const Plan& plan;
    const CoverSurface& surface;
    const SurfaceState& state;
    std::vector<PondFlag> ponds;
    double scale;

    // Seen from above with the bow to the left, starboard is at the top.
    [[nodiscard]] Spot operator()(double x, double y) const { return {x * scale, -y * scale}; }
    [[nodiscard]] Spot node(int n) const {
        const auto& place = state.film.nodes[static_cast<std::size_t>(n)];
        return (*this)(place[0], place[1]);
    }
};

std::vector<Spot> spots_of(const Seen& seen, const std::vector<std::array<double, 2>>& line) {
    std::vector<Spot> spots;
    for (const auto& at : line) spots.push_back(seen(at[0], at[1]));
    return spots;
}

void draw_rail(Canvas& canvas, const Seen& seen) {
    std::vector<Spot> outline;
    const std::vector<RailStation>& rail = seen.plan.boat.rail;
    for (const RailStation& r : rail) outline.push_back(seen(in_m(r.x), in_m(r.half_breadth)));
    for (auto r = rail.rbegin(); r != rail.rend(); ++r) outline.push_back(seen(in_m(r->x), -in_m(r->half_breadth)));
    canvas.path(outline, pen::film, true);
    canvas.path(outline, pen::rail, true);
    canvas.keep_free(outline);
}

void draw_contours(Canvas& canvas, const Seen& seen) {
    double low = seen.state.film.nodes.front()[2], high = low;
    for (const auto& node : seen.state.film.nodes) {
        low = std::min(low, node[2]);
        high = std::max(high, node[2]);
    }
    for (double level = std::ceil(low / contour_step) * contour_step; level < high; level += contour_step) {
        for (const auto& line : contour_of(seen.state.film, level)) canvas.path(spots_of(seen, line), contour_pen);
    }
}

/// Slanting strokes inside closed lines.
void hatch(Canvas& canvas, const std::vector<std::vector<Spot>>& lines) {
    constexpr double apart = 5;  // px
    double low = 1e300, high = -1e300;
    for (const auto& line : lines) {
        for (const Spot& s : line) {
            low = std::min(low, s.x + s.y);
            high = std::max(high, s.x + s.y);
        }
    }
    for (double c = std::ceil(low / apart) * apart; c < high; c += apart) {
        std::vector<Spot> crossings;
        for (const auto& line : lines) {
            for (std::size_t i = 0; i < line.size(); ++i) {
                const Spot& a = line[i];
                const Spot& b = line[(i + 1) % line.size()];
                const double da = a.x + a.y - c, db = b.x + b.y - c;
                if ((da < 0) == (db < 0)) continue;
                const double t = da / (da - db);
                crossings.push_back({a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)});
            }
        }
        std::ranges::sort(crossings, {}, &Spot::x);
        for (std::size_t i = 1; i < crossings.size(); i += 2) canvas.line(crossings[i - 1], crossings[i], pen::water);
    }
}

void draw_ponds(Canvas& canvas, const Seen& seen, std::vector<Label>& top, std::vector<Label>& bottom) {
    for (const PondFlag& pond : seen.ponds) {
        std::vector<std::vector<Spot>> lines;
        for (const auto& line : pond.outline) {
            lines.push_back(spots_of(seen, line));
            canvas.path(lines.back(), pen::water, true);
        }
        hatch(canvas, lines);
        const UnitsShown units = seen.plan.units_shown;
        Label label{
            seen(pond.x, pond.y),
            {.lines = {"water " + alone(pond.volume * 1e3, "L", units), alone(pond.depth, "m", units) + " deep"},
             .colour = colour::water}};
        for (const std::string& name : pond.reaches) label.words.lines.push_back("reaches " + short_name(name));
        (pond.y >= 0 ? top : bottom).push_back(label);
    }
}

void draw_obstacles(Canvas& canvas, const Seen& seen) {
    for (const Obstacle& obstacle : seen.plan.boat.obstacles) {
        std::vector<Spot> line;
        for (const Point& p : obstacle.outline) line.push_back(seen(in_m(p.x), in_m(p.y)));
        canvas.path(line, pen::obstacle);
        canvas.keep_free(line);
    }
    for (const EdgeState& edge : seen.state.obstacles) {
        for (const EdgePoint& point : edge.points) {
            if (point.force > 0)
                canvas.dot(seen(point.place[0], point.place[1]), 2.6, {.width = 0, .fill = colour::ink});
        }
    }
}

void draw_ridge(Canvas& canvas, const Seen& seen, std::vector<Label>& top) {
    std::vector<Spot> line;
    for (std::size_t n = 0; n < seen.surface.cover.frame_node.size(); ++n) {
        if (seen.surface.cover.frame_node[n] >= 0) line.push_back(seen.node(static_cast<int>(n)));
    }
    canvas.path(line, pen::loaded);
    canvas.keep_free(line);
    for (const UprightPart& upright : seen.surface.layout.uprights) {
        const auto& at = seen.surface.layout.frame.nodes[static_cast<std::size_t>(upright.top)].at;
        canvas.dot(seen(at[0], at[1]), 3.2, {.width = 1.1, .colour = colour::ink, .fill = "#ffffff"});
        top.push_back({seen(at[0], at[1]), {.lines = {short_name(upright.name)}, .bold = true}});
    }
}

// Outside the boat, where no contour runs through the words.
void name_obstacles(const Seen& seen, std::vector<Label>& top, std::vector<Label>& bottom) {
    for (std::size_t o = 0; o < seen.state.obstacles.size(); ++o) {
        const EdgeState& edge = seen.state.obstacles[o];
        const Point& end = seen.plan.boat.obstacles[o].outline.back();
        Label label{seen(in_m(end.x), in_m(end.y)), {.lines = {short_name(edge.name)}, .colour = colour::obstacle}};
        if (edge.force() > 0) {
            label.words.lines.push_back("film rests on it, " + alone(edge.force(), "N", seen.plan.units_shown));
        }
        (in_m(end.y) > 0 ? top : bottom).push_back(label);
    }
}

void name_sides(Canvas& canvas) {
    const Box box = canvas.extent();
    canvas.words({box.left, box.top - 18}, {.lines = {"starboard"}, .size = 11, .bold = true});
    canvas.words({box.left, box.bottom + 6}, {.lines = {"port"}, .size = 11, .bold = true});
}

std::vector<KeyLine> key_of(const Seen& seen) {
    const UnitsShown units = seen.plan.units_shown;
    std::vector<KeyLine> key{{pen::loaded, "ridge as loaded"},
                             {contour_pen, "height of the film, a line every " + alone(contour_step, "m", units)},
                             {pen::obstacle, "obstacles; black dots where the film rests on them"}};
    if (seen.ponds.empty()) {
        key.push_back({{.width = 0}, "No hollow of the film holds more than a cupful of water."});
    } else {
        key.push_back({pen::water, "hatched: hollows with the water they hold"});
    }
    return key;
}

Canvas draw(const Plan& plan, const CoverSurface& surface, const SurfaceState& state, double scale, double width) {
    const Seen seen{plan, surface, state, pond_flags(surface, state), scale};
    Canvas canvas;
    std::vector<Label> top, bottom;
    draw_rail(canvas, seen);
    draw_contours(canvas, seen);
    draw_ponds(canvas, seen, top, bottom);
    draw_obstacles(canvas, seen);
    draw_ridge(canvas, seen, top);
    name_obstacles(seen, top, bottom);
    name_ends(canvas, "bow", "stern");
    canvas.flags_above(top);
    canvas.flags_below(bottom);
    name_sides(canvas);
    finish(canvas, scale, width, plan.units_shown, key_of(seen));
    return canvas;
}

}  // namespace

std::string surface_view(const Plan& plan, const CoverSurface& surface, const SurfaceState& state,
                         const DrawingOptions& options) {
    if (!state.usable()) {
        throw StateError("film.surface.unusable", "the cover is in no equilibrium: " + state.message);
    }
    const double length = in_m(plan.boat.rail.back().x - plan.boat.rail.front().x);
    const Canvas canvas = fitted([&](double scale) { return draw(plan, surface, state, scale, options.width); },
                                 0.9 * options.width / length, options.width);
    return canvas.svg(options.width, "Film of the cover seen from above, with heights and water: " + plan.title);
}

}  // namespace coverframe
