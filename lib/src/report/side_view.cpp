// SPDX-License-Identifier: BSD-3-Clause
#include <algorithm>
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

struct Side {
    const Assessment& assessment;
    double scale;

    [[nodiscard]] Spot operator()(double x, double z) const { return {x * scale, -z * scale}; }
    [[nodiscard]] Spot operator()(const Point& at) const { return (*this)(in_m(at.x), in_m(at.z)); }
    [[nodiscard]] const Plan& plan() const { return assessment.plan; }
    [[nodiscard]] UnitsShown units() const { return assessment.plan.units_shown; }
    [[nodiscard]] const std::vector<RailStation>& rail() const { return assessment.plan.boat.rail; }
};

double keel_z(const Boat& boat) {
    double z = in_m(boat.rail.front().z);
    double breadth = 0;
    for (const RailStation& station : boat.rail) {
        z = std::min(z, in_m(station.z));
        breadth = std::max(breadth, in_m(station.half_breadth));
    }
    z -= std::max(0.9 * breadth, 0.3);
    for (const Stand& stand : boat.stands) z = std::min(z, in_m(stand.z) - 0.2);
    return z;
}

std::vector<Spot> rail_line(const Side& side, double below = 0) {
    std::vector<Spot> line;
    for (const RailStation& station : side.rail()) line.push_back(side(in_m(station.x), in_m(station.z) - below));
    return line;
}

// Rail line on top, transom aft, a keel that turns up into the stem.
void draw_hull(Canvas& canvas, const Side& side) {
    constexpr int pieces = 20;
    const double bow = in_m(side.rail().front().x);
    const double stern = in_m(side.rail().back().x);
    const double bow_z = in_m(side.rail().front().z);
    const double keel = keel_z(side.plan().boat);
    const double length = stern - bow;
    std::vector<Spot> outline = rail_line(side);
    outline.push_back(side(stern - 0.02 * length, keel));
    const double x[4] = {bow + 0.36 * length, bow + 0.17 * length, bow + 0.06 * length, bow};
    const double z[4] = {keel, keel, keel + 0.45 * (bow_z - keel), bow_z};
    for (int i = 0; i < pieces; ++i) {
        const double t = static_cast<double>(i) / pieces;
        const double u = 1 - t;
        const double b[4] = {u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t};
        outline.push_back(side(b[0] * x[0] + b[1] * x[1] + b[2] * x[2] + b[3] * x[3],
                               b[0] * z[0] + b[1] * z[1] + b[2] * z[2] + b[3] * z[3]));
    }
    canvas.path(outline, pen::outline, true);
    canvas.keep_free(outline);
}

std::vector<Spot> ridge_drawn(const Side& side) {
    std::vector<Spot> line;
    for (const ProfilePoint& point : ridge_profile(side.plan().support))
        line.push_back(side(in_m(point.x), in_m(point.z)));
    return line;
}

std::vector<Spot> ridge_loaded(const Side& side) {
    std::vector<Spot> line;
    for (const StationShape& shape : side.assessment.shape) line.push_back(side(shape.x, shape.ridge_loaded));
    return line;
}

// The film as a pale field from ridge to band.
void draw_film(Canvas& canvas, const Side& side) {
    std::vector<Spot> field = ridge_loaded(side).empty() ? ridge_drawn(side) : ridge_loaded(side);
    std::vector<Spot> edge = rail_line(side, in_m(side.plan().support.band.below_rail));
    field.insert(field.end(), edge.rbegin(), edge.rend());
    canvas.path(field, pen::film, true);
}

void draw_upright(Canvas& canvas, const Side& side, const Upright& upright) {
    const Stand* stand = find_stand(side.plan().boat, upright.stands_on);
    if (stand == nullptr) return;
    const double x = in_m(upright.x);
    const double floor = in_m(stand->z);
    const double foot = floor + in_m(upright.pad.thickness);
    const double half = std::max(in_m(upright.section.depth) / 2, 1.5 / side.scale);
    const double pad = in_m(upright.pad.length) / 2;
    const double top = in_m(upright.top);
    canvas.path({side(x - pad, floor), side(x + pad, floor), side(x + pad, foot), side(x - pad, foot)}, pen::upright,
                true);
    const std::vector<Spot> post{side(x - half, foot), side(x + half, foot), side(x + half, top), side(x - half, top)};
    canvas.path(post, pen::upright, true);
    canvas.keep_free(post);
}

std::string hold_name(Hold hold) { return hold == Hold::pinned ? "pinned" : hold == Hold::sliding ? "slides" : "free"; }

void add_ridge_flags(std::vector<Label>& flags, const Side& side, const RidgeSupport& support) {
    const auto add = [&](const RidgeEnd& end, std::string name) {
        flags.push_back({side(in_m(end.x), in_m(end.z)),
                         {.lines = {std::move(name), "level " + alone(end.z, side.units()), hold_name(end.hold)}}});
    };
    add(support.ridge.bow, "ridge at bow");
    for (const Upright& upright : support.uprights) {
        std::vector<std::string> lines{short_name(upright.name), alone(upright.x, side.units()) + " aft",
                                       "top " + alone(upright.top, side.units())};
        if (upright.foot) lines.emplace_back("soft foot");
        flags.push_back({side(in_m(upright.x), in_m(upright.top)), {.lines = lines, .bold = true}});
    }
    add(support.ridge.stern, "ridge at stern");
}

void add_found_flags(std::vector<Label>& flags, const Side& side, const FoundFrame& found) {
    for (const FoundNode& node : found.nodes) {
        if (std::ranges::count(found.ridge_line, node.name) == 0) continue;
        const auto under = std::ranges::find_if(found.members, [&](const FoundMember& member) {
            return member.kind == FoundKind::upright && (member.to == node.name || member.from == node.name);
        });
        std::vector<std::string> lines{short_name(node.name), alone(node.at.x, side.units()) + " aft",
                                       "level " + alone(node.at.z, side.units())};
        if (under != found.members.end()) lines.front() = short_name(under->name) + " to " + short_name(node.name);
        if (under != found.members.end() && under->foot) lines.emplace_back("soft foot");
        flags.push_back({side(node.at), {.lines = lines, .bold = true}});
    }
}

void draw_stands(Canvas& canvas, const Side& side) {
    for (const Stand& stand : side.plan().boat.stands) {
        const std::vector<Spot> line{side(in_m(stand.from), in_m(stand.z)), side(in_m(stand.to), in_m(stand.z))};
        canvas.path(line, pen::stand);
        canvas.keep_free(line);
    }
}

void draw_obstacles(Canvas& canvas, const Side& side) {
    for (const Obstacle& obstacle : side.plan().boat.obstacles) {
        std::vector<Spot> line;
        for (const Point& point : obstacle.outline) line.push_back(side(point));
        canvas.path(line, pen::obstacle);
        for (const Spot& spot : line) canvas.dot(spot, 2, {.width = 0, .fill = colour::obstacle});
        canvas.keep_free(line);
    }
}

Spot middle_of(const Spot& a, const Spot& b) { return {(a.x + b.x) / 2, (a.y + b.y) / 2}; }

// Names inside the drawing; what finds no room there hangs below it.
void name_parts(Canvas& canvas, const Side& side, const std::vector<Label>& flags) {
    for (const Label& flag : flags) canvas.keep_free({{flag.at.x, canvas.extent().top}, flag.at});
    const Box within = canvas.extent();
    std::vector<Label> hanging;
    const auto name = [&](const Label& label, Near where) {
        if (!canvas.words_near(label, within, where)) hanging.push_back(label);
    };
    for (const Obstacle& obstacle : side.plan().boat.obstacles) {
        const auto top = std::ranges::max_element(obstacle.outline, {}, [](const Point& p) { return in_m(p.z); });
        name({side(*top), {.lines = {short_name(obstacle.name)}, .colour = colour::obstacle}}, Near::right);
    }
    for (const Stand& stand : side.plan().boat.stands) {
        const Spot at = middle_of(side(in_m(stand.from), in_m(stand.z)), side(in_m(stand.to), in_m(stand.z)));
        name({at, {.lines = {short_name(stand.name) + ", level " + alone(stand.z, side.units())}, .colour = "#444444"}},
             Near::below);
    }
    const Band& band = side.plan().support.band;
    const double bow = in_m(side.rail().front().x);
    const double length = in_m(side.rail().back().x) - bow;
    const auto on_rail = [&](double share, double below) {
        const auto rail = rail_at(side.plan().boat, from_m(bow + share * length));
        return side(bow + share * length, (rail ? in_m(rail->z) : 0.0) - below);
    };
    name({on_rail(0.16, in_m(band.below_rail)),
          {.lines = {"band, " + alone(band.below_rail, side.units()) + " below rail"}, .colour = "#444444"}},
         Near::below);
    name({on_rail(0.86, 0), {.lines = {"rail"}}}, Near::above);
    canvas.flags_above(flags);
    canvas.flags_below(hanging);
}

Canvas draw(const Assessment& assessment, double scale, double width) {
    const Side side{assessment, scale};
    const Support& support = side.plan().support;
    const auto* built = std::get_if<RidgeSupport>(&support.structure);
    const auto* found = std::get_if<FoundFrame>(&support.structure);
    Canvas canvas;
    draw_film(canvas, side);
    draw_hull(canvas, side);
    draw_stands(canvas, side);
    std::vector<Label> flags;
    if (built != nullptr) {
        for (const Upright& upright : built->uprights) draw_upright(canvas, side, upright);
        add_ridge_flags(flags, side, *built);
    } else if (found != nullptr) {
        draw_found(canvas, *found, side);
        add_found_flags(flags, side, *found);
    }
    canvas.path(rail_line(side), pen::rail);
    canvas.path(rail_line(side, in_m(support.band.below_rail)), pen::band);
    canvas.keep_free(rail_line(side));
    canvas.keep_free(rail_line(side, in_m(support.band.below_rail)));
    draw_obstacles(canvas, side);
    canvas.path(ridge_drawn(side), pen::drawn);
    canvas.keep_free(ridge_drawn(side));
    canvas.path(ridge_loaded(side), pen::loaded);
    canvas.keep_free(ridge_loaded(side));
    if (const auto drop = ridge_drop(assessment); drop && drop->drop > 0) {
        flags.push_back({side(drop->x, drop->z), {.lines = {"ridge down", alone(drop->drop, "m", side.units())}}});
    }
    name_ends(canvas, "bow", "stern");
    name_parts(canvas, side, flags);
    std::vector<KeyLine> key{key_of_shape(assessment)};
    if (!assessment.shape.empty()) key.push_back({pen::drawn, "as drawn"});
    key.push_back({pen::band, "band round the hull"});
    key.push_back({pen::outline,
                   "hull sketched from the rail, not measured. Lengths run aft from the stem head, levels up "
                   "from the plan's datum."});
    finish(canvas, scale, width, side.units(), key);
    return canvas;
}

}  // namespace

std::string side_view(const Assessment& assessment, const DrawingOptions& options) {
    const std::vector<RailStation>& rail = assessment.plan.boat.rail;
    const double length = in_m(rail.back().x) - in_m(rail.front().x);
    const Canvas canvas = fitted([&](double scale) { return draw(assessment, scale, options.width); },
                                 (options.width - 90) / length, options.width);
    return canvas.svg(options.width, "Side view of " + assessment.plan.boat.name + " from port, bow to the left");
}

}  // namespace coverframe
