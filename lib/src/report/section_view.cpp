// SPDX-License-Identifier: BSD-3-Clause
#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
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

constexpr double near_by = 0.35;  // parts this near to the section are shown in it [m]

struct Astern {
    const Assessment& assessment;
    Cut cut;
    double scale;

    // Seen from astern: port to the left.
    [[nodiscard]] Spot operator()(double y, double z) const { return {y * scale, -z * scale}; }
    [[nodiscard]] Spot operator()(const Across& at) const { return (*this)(at.y, at.z); }
    [[nodiscard]] const Plan& plan() const { return assessment.plan; }
    [[nodiscard]] UnitsShown units() const { return assessment.plan.units_shown; }
    [[nodiscard]] std::vector<Spot> line(const std::vector<Across>& points) const {
        std::vector<Spot> spots;
        for (const Across& point : points) spots.push_back((*this)(point));
        return spots;
    }
};

void draw_hull(Canvas& canvas, const Astern& astern) {
    constexpr int pieces = 16;
    const double half = astern.cut.half_breadth;
    const double rail = astern.cut.rail_z;
    double keel = rail - std::max(0.9 * half, 0.3);
    for (const Stand& stand : astern.plan().boat.stands) keel = std::min(keel, in_m(stand.z) - 0.2);
    std::vector<Spot> outline;
    for (int i = -pieces; i <= pieces; ++i) {
        // From the keel (t = 0) a bottom with some deadrise that turns up into the topsides.
        const double t = std::abs(static_cast<double>(i)) / pieces;
        const double y = half * (2 * t * (1 - t) * 1.02 + t * t);
        const double z = keel + (rail - keel) * (2 * t * (1 - t) * 0.1 + t * t);
        outline.push_back(astern(i < 0 ? -y : y, z));
    }
    canvas.keep_free(outline);
    canvas.path(outline, pen::outline);
}

void draw_stands(Canvas& canvas, const Astern& astern) {
    for (const Stand& stand : astern.plan().boat.stands) {
        if (in_m(stand.from) > astern.cut.x || in_m(stand.to) < astern.cut.x) continue;
        const double half = in_m(stand.half_breadth);
        const std::vector<Spot> line{astern(-half, in_m(stand.z)), astern(half, in_m(stand.z))};
        canvas.path(line, pen::stand);
        canvas.keep_free(line);
    }
}

const Upright* upright_near(const Astern& astern, const RidgeSupport& support) {
    const Upright* nearest = nullptr;
    for (const Upright& upright : support.uprights) {
        const auto away = [&](const Upright& u) { return std::abs(in_m(u.x) - astern.cut.x); };
        if (away(upright) <= near_by && (nearest == nullptr || away(upright) < away(*nearest))) nearest = &upright;
    }
    return nearest;
}

// A foot that gives, as a spring between what it stands on and its pad, whatever its size.
void draw_soft_foot(Canvas& canvas, const Astern& astern, double pad, double floor) {
    constexpr int turns = 6;
    constexpr double high = 5;  // px
    std::vector<Spot> spring;
    for (int i = 0; i <= 2 * turns; ++i) {
        Spot spot = astern(pad * (static_cast<double>(i) / turns - 1), floor);
        if (i % 2 == 0) spot.y += high;
        spring.push_back(spot);
    }
    canvas.path(spring, pen::soft_foot);
    canvas.keep_free(spring);
}

void draw_upright(Canvas& canvas, const Astern& astern, const Upright& upright, const RidgeSupport& support) {
    const Stand* stand = find_stand(astern.plan().boat, upright.stands_on);
    if (stand == nullptr) return;
    const double floor = in_m(stand->z);
    const double foot = floor + in_m(upright.pad.thickness);
    const double pad = in_m(upright.pad.breadth) / 2;
    const double half = std::max(in_m(upright.section.breadth) / 2, 1.5 / astern.scale);
    const double top = in_m(upright.top);
    for (const CrossStrap& strap : support.cross_straps) {
        if (strap.over != upright.name) continue;
        const auto rail = rail_at(astern.plan().boat, upright.x);
        if (!rail) continue;
        for (const double sign : {-1.0, 1.0}) {
            if ((strap.sides == Sides::port && sign > 0) || (strap.sides == Sides::starboard && sign < 0)) continue;
            canvas.line(astern(0, top), astern(sign * in_m(rail->half_breadth), in_m(rail->z)), pen::strap);
        }
    }
    canvas.path({astern(-pad, floor), astern(pad, floor), astern(pad, foot), astern(-pad, foot)}, pen::upright, true);
    if (upright.foot) draw_soft_foot(canvas, astern, pad, floor);
    const std::vector<Spot> post{astern(-half, foot), astern(half, foot), astern(half, top), astern(-half, top)};
    canvas.path(post, pen::upright, true);
    canvas.keep_free(post);
}

// Film drawn and loaded, and down the topsides to the band.
void draw_film(Canvas& canvas, const Astern& astern) {
    const Cut& cut = astern.cut;
    const double band = cut.rail_z - in_m(astern.plan().support.band.below_rail);
    const bool has_load = !cut.loaded.empty();
    canvas.path(astern.line(cut.drawn), pen::drawn);
    if (has_load) canvas.path(astern.line(cut.loaded), pen::loaded);
    canvas.keep_free(astern.line(has_load ? cut.loaded : cut.drawn));
    canvas.keep_free(astern.line(cut.drawn));
    for (const double sign : {-1.0, 1.0}) {
        const Spot rail = astern(sign * cut.half_breadth, cut.rail_z);
        const Spot end = astern(sign * cut.half_breadth, band);
        canvas.line(rail, end, has_load ? pen::loaded : pen::drawn);
        canvas.dot(end, 3, {.width = 1, .colour = colour::grey, .fill = colour::grey});
    }
}

// Water behind the rail, hatched level.
void draw_water(Canvas& canvas, const Astern& astern) {
    constexpr double stroke_every = 3;  // px
    const std::vector<Across>& line = astern.cut.loaded;
    const double step = stroke_every / astern.scale;
    const auto side = [&](std::size_t from, std::size_t to, int way) {
        // From the rail towards the ridge: where the film lies lower than the rail it passed, water stands.
        const double brim = line[from].z;
        double lowest = brim;
        std::size_t i = from;
        while (i != to && line[i].z <= brim)
            lowest = std::min(lowest, line[i].z), i = static_cast<std::size_t>(static_cast<int>(i) + way);
        for (double z = brim; z > lowest + 0.5 * step; z -= step) {
            double least = 1e9;
            double most = -1e9;
            for (std::size_t k = std::min(from, i); k < std::max(from, i); ++k) {
                const Across& a = line[k];
                const Across& b = line[k + 1];
                if ((a.z - z) * (b.z - z) > 0 || a.z == b.z) continue;
                const double y = a.y + (z - a.z) / (b.z - a.z) * (b.y - a.y);
                least = std::min(least, y);
                most = std::max(most, y);
            }
            if (most > least) canvas.line(astern(least, z), astern(most, z), pen::water);
        }
    };
    if (line.empty()) return;
    side(0, astern.cut.ridge_index, 1);
    side(line.size() - 1, astern.cut.ridge_index, -1);
}

std::vector<const Obstacle*> draw_obstacles(Canvas& canvas, const Astern& astern) {
    std::vector<const Obstacle*> shown_here;
    for (const Obstacle& obstacle : astern.plan().boat.obstacles) {
        const auto is_near = [&](const Point& point) { return std::abs(in_m(point.x) - astern.cut.x) <= near_by; };
        const auto closest = closest_to(astern.assessment, obstacle);
        const bool closest_here = closest && std::abs(closest->x - astern.cut.x) < near_by;
        if (!closest_here && std::ranges::none_of(obstacle.outline, is_near)) continue;
        std::vector<Spot> line;
        for (const Point& point : obstacle.outline) line.push_back(astern(in_m(point.y), in_m(point.z)));
        canvas.path(line, pen::obstacle);
        for (const Spot& spot : line) canvas.dot(spot, 2.2, {.width = 0, .fill = colour::obstacle});
        canvas.keep_free(line);
        if (closest_here) {
            canvas.line(astern(closest->y, closest->z), astern(closest->y, closest->z + closest->gap),
                        {.width = 1.2, .colour = colour::obstacle, .dashes = "2 2"});
        }
        shown_here.push_back(&obstacle);
    }
    return shown_here;
}

std::string slope_text(double rise, double run) {
    return fixed(std::atan2(rise, run) * 180 / std::numbers::pi, 1) + " deg";
}

// Slopes of the film on one side: as drawn, and under load where it is flattest, next to the rail.
Label slope_label(const Astern& astern, bool port) {
    const Cut& cut = astern.cut;
    const Across drawn_middle{(port ? -0.5 : 0.5) * cut.half_breadth, (cut.ridge_drawn + cut.rail_z) / 2};
    Label label{astern(drawn_middle),
                {.lines = {"drawn " + slope_text(cut.ridge_drawn - cut.rail_z, cut.half_breadth)}}};
    if (!cut.loaded.empty()) {
        const std::size_t last = cut.loaded.size() - 1;
        const Across& rail = cut.loaded[port ? 0 : last];
        const Across& next = cut.loaded[port ? 1 : last - 1];
        const std::string slope = slope_text(next.z - rail.z, std::abs(next.y - rail.y));
        label.words.lines.push_back("loaded " + slope + " at the rail");
        if (next.z < rail.z) label.words.lines.push_back("and so holds water");
    }
    return label;
}

void name_obstacles(Canvas& canvas, const Astern& astern, const std::vector<const Obstacle*>& obstacles,
                    std::vector<Label>& hanging, const Box& within) {
    for (const Obstacle* obstacle : obstacles) {
        const auto closest = closest_to(astern.assessment, *obstacle);
        std::vector<std::string> lines{short_name(obstacle->name)};
        if (closest) {
            const std::string gap = alone(std::abs(closest->gap), "m", astern.units());
            lines.push_back(closest->gap < 0 ? "film " + gap + " below its edge" : "film " + gap + " over it");
        }
        lines.push_back(alone(obstacle->clearance.value, astern.units()) + " wanted");
        const auto low = std::ranges::min_element(obstacle->outline, {}, [](const Point& p) { return in_m(p.z); });
        const Label label{astern(in_m(low->y), in_m(low->z)), {.lines = lines, .colour = colour::obstacle}};
        if (!canvas.words_near(label, within, Near::below)) hanging.push_back(label);
    }
}

void name_parts(Canvas& canvas, const Astern& astern, const std::vector<const Obstacle*>& obstacles,
                const Upright* upright) {
    const Cut& cut = astern.cut;
    const Box drawing = canvas.extent();
    const Box roomy{drawing.left - 160, drawing.top - 60, drawing.right + 160, drawing.bottom};
    std::vector<Label> hanging;
    std::vector<Label> top;
    for (const bool port : {true, false}) {
        const Label label = slope_label(astern, port);
        if (!canvas.words_near(label, roomy, port ? Near::left : Near::right)) hanging.push_back(label);
    }
    name_obstacles(canvas, astern, obstacles, hanging, drawing);
    for (const Stand& stand : astern.plan().boat.stands) {
        if (in_m(stand.from) > cut.x || in_m(stand.to) < cut.x) continue;
        const Label label{
            astern(0, in_m(stand.z)),
            {.lines = {short_name(stand.name) + ", level " + alone(stand.z, astern.units())}, .colour = "#444444"}};
        if (!canvas.words_near(label, drawing, Near::below)) hanging.push_back(label);
    }
    Label ridge{astern(0, cut.ridge_drawn),
                {.lines = {"ridge drawn at " + alone(cut.ridge_drawn, "m", astern.units())}}};
    if (!cut.loaded.empty()) {
        const double drop = cut.ridge_drawn - cut.loaded[cut.ridge_index].z;
        const std::string way = drop < 0 ? ", loaded higher by " : ", loaded lower by ";
        ridge.words.lines.front() += way + alone(std::abs(drop), "m", astern.units());
    }
    if (upright != nullptr)
        ridge.words.lines.push_back(short_name(upright->name) + " stands " + alone(upright->x, astern.units()) +
                                    " aft" + (upright->foot ? " on a soft foot" : ""));
    top.push_back(ridge);
    canvas.flags_above(top);
    canvas.flags_below(hanging);
}

Canvas draw(const Assessment& assessment, const Cut& cut, double scale, double width) {
    const Astern astern{assessment, cut, scale};
    Canvas canvas;
    const Upright* upright = nullptr;
    canvas.path(astern.line(cut.loaded.empty() ? cut.drawn : cut.loaded), pen::film, true);
    draw_hull(canvas, astern);
    draw_stands(canvas, astern);
    if (const auto* built = std::get_if<RidgeSupport>(&assessment.plan.support.structure)) {
        upright = upright_near(astern, *built);
        if (upright != nullptr) draw_upright(canvas, astern, *upright, *built);
    }
    draw_water(canvas, astern);
    const std::vector<const Obstacle*> obstacles = draw_obstacles(canvas, astern);
    draw_film(canvas, astern);
    name_ends(canvas, "port", "starboard");
    name_parts(canvas, astern, obstacles, upright);
    std::vector<KeyLine> key{key_of_shape(assessment)};
    if (!cut.loaded.empty()) key.push_back({pen::drawn, "as drawn"});
    if (!obstacles.empty()) key.push_back({pen::obstacle, "not to be touched by the film"});
    if (upright != nullptr) key.push_back({pen::strap, "strap over the upright"});
    if (upright != nullptr && upright->foot) key.push_back({pen::soft_foot, "soft foot (zigzag), gives under the pad"});
    key.push_back({pen::outline, "hull sketched, not measured"});
    finish(canvas, scale, width, astern.units(), key);
    return canvas;
}

}  // namespace

std::string section_view(const Assessment& assessment, const DrawingOptions& options) {
    const double x = place_of_section(assessment);
    const std::optional<Cut> cut = cut_at(assessment, x);
    const std::string title = "Section through " + assessment.plan.boat.name + " seen from astern, " +
                              alone(x, "m", assessment.plan.units_shown) + " aft of the stem head";
    if (!cut || cut->half_breadth <= 0) {
        Canvas canvas;
        canvas.words({0, 0}, {.lines = {"No section: the ridge line lies nowhere over the rails."}});
        return canvas.svg(options.width, title);
    }
    const double height = cut->ridge_drawn - cut->rail_z + 0.9 * cut->half_breadth;
    const double scale =
        std::min(0.55 * options.width / (2 * cut->half_breadth), 0.4 * options.width / std::max(height, 0.1));
    return fitted([&](double s) { return draw(assessment, *cut, s, options.width); }, scale, options.width)
        .svg(options.width, title);
}

}  // namespace coverframe
