// SPDX-License-Identifier: BSD-3-Clause
#include <algorithm>
#include <array>
#include <cmath>
#include <variant>

#include "coverframe/plan/geometry.hpp"
#include "coverframe/report/drawing.hpp"
#include "coverframe/units/crossing.hpp"
#include "report/canvas.hpp"
#include "report/format.hpp"
#include "report/picture.hpp"
#include "report/shape.hpp"
#include "report/text.hpp"

namespace coverframe {
namespace {

using namespace reporting;

struct Above {
    const Assessment& assessment;
    double scale;

    // Seen from above with the bow to the left, starboard is at the top.
    [[nodiscard]] Spot operator()(double x, double y) const { return {x * scale, -y * scale}; }
    [[nodiscard]] Spot operator()(const Point& at) const { return (*this)(in_m(at.x), in_m(at.y)); }
    [[nodiscard]] const Plan& plan() const { return assessment.plan; }
    [[nodiscard]] const Boat& boat() const { return assessment.plan.boat; }
    [[nodiscard]] UnitsShown units() const { return assessment.plan.units_shown; }
};

std::vector<Spot> rail_line(const Above& above, double sign) {
    std::vector<Spot> line;
    for (const RailStation& station : above.boat().rail) {
        line.push_back(above(in_m(station.x), sign * in_m(station.half_breadth)));
    }
    return line;
}

void draw_rail(Canvas& canvas, const Above& above) {
    std::vector<Spot> outline = rail_line(above, 1.0);
    const std::vector<Spot> port = rail_line(above, -1.0);
    outline.insert(outline.end(), port.rbegin(), port.rend());
    canvas.path(outline, pen::film, true);
    canvas.path(outline, pen::rail, true);
    canvas.keep_free(outline);
}

void draw_stands(Canvas& canvas, const Above& above) {
    for (const Stand& stand : above.boat().stands) {
        const double half = in_m(stand.half_breadth);
        const double from = in_m(stand.from);
        const double to = in_m(stand.to);
        const std::vector<Spot> edge{above(from, half), above(to, half), above(to, -half), above(from, -half),
                                     above(from, half)};
        canvas.path(edge, pen::stand);
        canvas.keep_free(edge);
    }
}

void draw_pocket(Canvas& canvas, const Above& above, const Pocket& pocket) {
    constexpr double stroke_every = 5;  // px
    std::vector<Spot> outline;
    for (const Pocket::Edge& edge : pocket.edges) outline.push_back(above(edge.x, edge.inner));
    for (auto edge = pocket.edges.rbegin(); edge != pocket.edges.rend(); ++edge)
        outline.push_back(above(edge->x, edge->outer));
    canvas.path(outline, pen::water, true);
    canvas.keep_free(outline);
    const auto at = [&](double x) {
        std::size_t i = 1;
        while (i + 1 < pocket.edges.size() && pocket.edges[i].x < x) ++i;
        const Pocket::Edge& a = pocket.edges[i - 1];
        const Pocket::Edge& b = pocket.edges[i];
        const double t = b.x > a.x ? std::clamp((x - a.x) / (b.x - a.x), 0.0, 1.0) : 0.0;
        return Pocket::Edge{x, a.inner + t * (b.inner - a.inner), a.outer + t * (b.outer - a.outer)};
    };
    const double first = pocket.edges.front().x;
    const double last = pocket.edges.back().x;
    const double step = stroke_every / above.scale;
    for (double x = first + step; x + step < last; x += step) {
        const std::vector<Spot> stroke{above(x, at(x).inner), above(x + step, at(x + step).outer)};
        canvas.path(stroke, pen::water);
        canvas.keep_free(stroke);
    }
}

std::string water_text(double volume, UnitsShown units) {
    constexpr double least = 1e-4;  // m3
    return volume < least ? "under " + alone(0.1, "L", units) : alone(volume * 1e3, "L", units);
}

const Pocket::Edge& widest_of(const Pocket& pocket) {
    return *std::ranges::max_element(pocket.edges, {},
                                     [](const Pocket::Edge& edge) { return std::abs(edge.outer - edge.inner); });
}

// Whether a text has room on the hatching with some of it left to see.
bool holds(const Above& above, const Pocket& pocket, const Words& words) {
    const Pocket::Edge& widest = widest_of(pocket);
    const double across = std::abs(widest.outer - widest.inner) * above.scale;
    const double along = (pocket.edges.back().x - pocket.edges.front().x) * above.scale;
    double width = 0;
    for (const std::string& line : words.lines) width = std::max(width, text_width(line, words.size));
    return across > 2.0 * words.size * static_cast<double>(words.lines.size()) && along > 1.5 * width;
}

Label water_label(const Above& above, const Pocket& pocket) {
    const Pocket::Edge& widest = widest_of(pocket);
    return {above(widest.x, (widest.inner + widest.outer) / 2),
            {.lines = {"water " + water_text(pocket.volume, above.units()),
                       alone(pocket.depth, "m", above.units()) + " deep"},
             .colour = colour::water}};
}

void draw_cross_straps(Canvas& canvas, const Above& above, const RidgeSupport& support, std::vector<Label>& flags) {
    for (const CrossStrap& strap : support.cross_straps) {
        const auto upright = std::ranges::find(support.uprights, strap.over, &Upright::name);
        if (upright == support.uprights.end()) continue;
        const auto rail = rail_at(above.boat(), upright->x);
        if (!rail) continue;
        const double x = in_m(upright->x);
        const double half = in_m(rail->half_breadth);
        const double to_starboard = strap.sides == Sides::port ? 0.0 : half;
        const double to_port = strap.sides == Sides::starboard ? 0.0 : -half;
        const std::vector<Spot> line{above(x, to_port), above(x, to_starboard)};
        canvas.path(line, pen::strap);
        canvas.keep_free(line);
        flags.push_back(
            {line.front(),
             {.lines = {short_name(strap.name), "set " + alone(in_N(strap.pretension), "N", above.units())}}});
    }
}

void draw_uprights(Canvas& canvas, const Above& above, const RidgeSupport& support, std::vector<Label>& flags) {
    for (const Upright& upright : support.uprights) {
        const double x = in_m(upright.x);
        const double length = in_m(upright.pad.length) / 2;
        const double breadth = in_m(upright.pad.breadth) / 2;
        canvas.path({above(x - length, breadth), above(x + length, breadth), above(x + length, -breadth),
                     above(x - length, -breadth)},
                    pen::upright, true);
        canvas.dot(above(x, 0), 2.4, {.width = 0, .fill = colour::ink});
        flags.push_back(
            {above(x, 0),
             {.lines = {short_name(upright.name), alone(upright.x, above.units()) + " aft"}, .bold = true}});
    }
}

void draw_ridge(Canvas& canvas, const Above& above) {
    std::vector<Spot> drawn;
    for (const ProfilePoint& point : ridge_profile(above.plan().support)) drawn.push_back(above(in_m(point.x), 0));
    canvas.path(drawn, pen::drawn);
    std::vector<Spot> loaded;
    for (const StationShape& shape : above.assessment.shape) loaded.push_back(above(shape.x, shape.ridge_aside));
    canvas.path(loaded, pen::loaded);
    canvas.keep_free(drawn);
}

void draw_belly_straps(Canvas& canvas, const Above& above) {
    constexpr double reach = 7;  // px outside the rail
    for (const BellyStrap& strap : above.plan().support.band.belly_straps) {
        const auto rail = rail_at(above.boat(), strap.x);
        if (!rail) continue;
        for (const double sign : {1.0, -1.0}) {
            const Spot at = above(in_m(strap.x), sign * in_m(rail->half_breadth));
            canvas.line(at, {at.x, at.y - sign * reach}, {.width = 3, .colour = colour::grey});
        }
    }
}

// Names inside the drawing; what finds no room there stands above or below it, on its own side of the boat.
void name_parts(Canvas& canvas, const Above& above, const std::vector<Pocket>& water, std::vector<Label> top,
                std::vector<Label> bottom) {
    for (const Label& flag : top) canvas.keep_free({{flag.at.x, canvas.extent().top}, flag.at});
    const Box within = canvas.extent();
    const auto name = [&](const Label& label, Near where) {
        if (!canvas.words_near(label, within, where)) (label.at.y < 0 ? top : bottom).push_back(label);
    };
    for (const Pocket& pocket : water) {
        const Label label = water_label(above, pocket);
        if (!holds(above, pocket, label.words) || !canvas.words_on_plate(label)) name(label, Near::below);
    }
    for (const Obstacle& obstacle : above.boat().obstacles) {
        const Point& end = obstacle.outline.back();
        name({above(end), {.lines = {short_name(obstacle.name)}, .colour = colour::obstacle}}, Near::right);
    }
    for (const Stand& stand : above.boat().stands) {
        const Words text{.lines = {short_name(stand.name)}, .colour = "#444444"};
        const Spot low = above(in_m(stand.from), -in_m(stand.half_breadth));
        const Spot high = above(in_m(stand.to), in_m(stand.half_breadth));
        const Box inside{low.x, high.y, high.x, low.y};
        const std::array<Spot, 4> corners{Spot{high.x, low.y}, high, low, Spot{low.x, high.y}};
        const bool placed = std::ranges::any_of(
            corners, [&](const Spot& corner) { return canvas.words_near({corner, text}, inside, Near::left); });
        if (!placed) name({corners.front(), text}, Near::right);
    }
    canvas.flags_above(top);
    canvas.flags_below(bottom);
}

void name_sides(Canvas& canvas) {
    const Box box = canvas.extent();
    canvas.words({box.left, box.top - 18}, {.lines = {"starboard"}, .size = 11, .bold = true});
    canvas.words({box.left, box.bottom + 6}, {.lines = {"port"}, .size = 11, .bold = true});
}

std::vector<KeyLine> key_of(const Above& above, const std::vector<Pocket>& water) {
    const Plan& plan = above.plan();
    std::vector<KeyLine> key{key_of_shape(above.assessment)};
    if (!above.assessment.shape.empty()) key.push_back({pen::drawn, "ridge as drawn"});
    key.push_back({pen::strap, "straps from rail to rail"});
    if (!plan.support.band.belly_straps.empty()) {
        key.push_back({{.width = 3, .colour = colour::grey},
                       "belly straps under the hull, from band to band (" +
                           std::to_string(plan.support.band.belly_straps.size()) + ")"});
    }
    key.push_back({pen::stand, "where uprights may stand"});
    if (!water.empty()) {
        key.push_back({pen::water, "hatched: hollows that would hold water, to the brim, in the same situation"});
    } else if (!above.assessment.shape.empty()) {
        key.push_back({{.width = 0}, "No hollow holds water in this situation."});
    }
    return key;
}

Canvas draw(const Assessment& assessment, double scale, double width) {
    const Above above{assessment, scale};
    const std::vector<Pocket> water = pockets(assessment);
    Canvas canvas;
    draw_rail(canvas, above);
    draw_stands(canvas, above);
    draw_belly_straps(canvas, above);
    for (const Pocket& pocket : water) draw_pocket(canvas, above, pocket);
    std::vector<Label> top;
    std::vector<Label> bottom;
    if (const auto* built = std::get_if<RidgeSupport>(&assessment.plan.support.structure)) {
        draw_cross_straps(canvas, above, *built, bottom);
        draw_uprights(canvas, above, *built, top);
    } else if (const auto* found = std::get_if<FoundFrame>(&assessment.plan.support.structure)) {
        draw_found(canvas, *found, above);
        for (const FoundMember& member : found->members) {
            const auto node = std::ranges::find(found->nodes, member.to, &FoundNode::name);
            if (member.kind != FoundKind::upright || node == found->nodes.end()) continue;
            top.push_back({above(node->at), {.lines = {short_name(member.name)}, .bold = true}});
        }
    }
    draw_ridge(canvas, above);
    for (const Obstacle& obstacle : above.boat().obstacles) {
        std::vector<Spot> line;
        for (const Point& point : obstacle.outline) line.push_back(above(point));
        canvas.path(line, pen::obstacle);
        for (const Spot& spot : line) canvas.dot(spot, 2, {.width = 0, .fill = colour::obstacle});
        canvas.keep_free(line);
    }
    name_ends(canvas, "bow", "stern");
    name_parts(canvas, above, water, top, bottom);
    name_sides(canvas);
    finish(canvas, scale, width, above.units(), key_of(above, water));
    return canvas;
}

}  // namespace

std::string plan_view(const Assessment& assessment, const DrawingOptions& options) {
    const std::vector<RailStation>& rail = assessment.plan.boat.rail;
    const double length = in_m(rail.back().x) - in_m(rail.front().x);
    const Canvas canvas = fitted([&](double scale) { return draw(assessment, scale, options.width); },
                                 (options.width - 90) / length, options.width);
    return canvas.svg(options.width, "Plan of " + assessment.plan.boat.name + " from above, bow to the left");
}

}  // namespace coverframe
