// SPDX-License-Identifier: BSD-3-Clause
// A whole cover, filled by hand from formulas for its rail and ridge, and brought under snow by the library: by coupled
// strips and frame, or with "rows" by film as a surface.
//
// Input: "length"; "rail": half breadth by a fraction of the greatest forward and aft of "widest"; "ridge": height at
// "peak" and its relative fall to the ends; "film", "pole", "uprights", "straps", "stations", "snow".
#include <algorithm>
#include <cmath>

#include "coverframe/film/cover.hpp"
#include "coverframe/film/surface.hpp"
#include "coverframe/units/crossing.hpp"
#include "model.hpp"

namespace coverframe::validation {
namespace {

const std::string rule = "load_cover";

/// Lines of the hull and the ridge.
struct Lines {
    double length = 0;
    double greatest = 0, widest = 0, fall_forward = 0, aft_scale = 0;  // rail
    double top = 0, peak = 0, fall = 0, fall_over = 0;                 // ridge

    [[nodiscard]] double half_breadth(double x) const {
        const double t = (widest - x) / (x <= widest ? widest : aft_scale);
        return greatest * (1.0 - (x <= widest ? fall_forward : 1.0) * t * t);
    }
    [[nodiscard]] double ridge(double x) const { return top * (1.0 - fall * std::abs(x - peak) / fall_over); }
};

Lines read_lines(const Input& input) {
    const Input rail = input.at("rail");
    const Input ridge = input.at("ridge");
    return {.length = input.si<Length>("length"),
            .greatest = rail.si<Length>("greatest_half_breadth"),
            .widest = rail.si<Length>("widest_at"),
            .fall_forward = rail.number("share_lost_forward"),
            .aft_scale = rail.si<Length>("aft_scale"),
            .top = ridge.si<Length>("top"),
            .peak = ridge.si<Length>("peak_at"),
            .fall = ridge.number("share_lost"),
            .fall_over = ridge.si<Length>("lost_over")};
}

FrameMember member_between(const Frame& frame, const std::string& name, MemberKind kind, int from, int to, double EA) {
    FrameMember member;
    member.name = name;
    member.kind = kind;
    member.from = from;
    member.to = to;
    member.axial_stiffness = EA;
    member.free_length = drawn_length(frame, member);
    return member;
}

int add_node(Frame& frame, const std::array<double, 3>& at, const std::array<bool, 6>& held) {
    frame.nodes.push_back({"node " + std::to_string(frame.nodes.size()), at, held});
    return static_cast<int>(frame.nodes.size()) - 1;
}

/// The ridge pole, one piece from station to station, both ends pinned and kept from rolling.
void add_ridge(Cover& cover, const Lines& lines, const Input& pole, int pieces) {
    const double E = pole.si<Pressure>("E");
    const double b = pole.si<Length>("breadth");
    const double d = pole.si<Length>("depth");
    Frame& frame = cover.layout.frame;
    for (int i = 0; i <= pieces; ++i) {
        const bool end = i == 0 || i == pieces;
        const double x = lines.length * i / pieces;
        cover.layout.stations.push_back(add_node(frame, {x, 0, lines.ridge(x)}, {end, end, end, end, false, false}));
        if (i == 0) continue;
        FrameMember piece = member_between(frame, "ridge", MemberKind::pole, i - 1, i, E * b * d);
        piece.bending = {E * b * d * d * d / 12, E * d * b * b * b / 12, 0, 0, E / 16 * d * b * b * b / 3};
        frame.members.push_back(piece);
    }
}

/// Uprights with a strap to each side from their tops; indices of the members in `uprights` and `straps`.
void add_uprights(Cover& cover, const Lines& lines, const Input& input, std::vector<int>& uprights,
                  std::vector<int>& straps) {
    const Input upright = input.at("uprights");
    const Input strap = input.at("straps");
    const double EA = upright.si<Pressure>("E") * upright.si<Length>("breadth") * upright.si<Length>("depth");
    const double strap_EA = strap.si<Force>("EA");
    const double tension = strap.si<Force>("tension");
    Frame& frame = cover.layout.frame;
    const std::array<bool, 6> fixed{true, true, true, true, true, true};
    for (const std::string& text : upright.texts("at")) {
        const double x = in_m(read<Length>(text));
        const auto place = [&](int node) {
            return std::abs(frame.nodes[static_cast<std::size_t>(node)].at[0] - x) < 1e-9;
        };
        const auto top = std::ranges::find_if(cover.layout.stations, place);
        if (top == cover.layout.stations.end()) throw CaseError("an upright stands at no station");
        const int foot = add_node(frame, {x, 0, upright.si<Length>("foot")}, fixed);
        uprights.push_back(static_cast<int>(frame.members.size()));
        frame.members.push_back(member_between(frame, "upright at " + text, MemberKind::upright, foot, *top, EA));
        for (const double side : {-1.0, 1.0}) {
            const int rail = add_node(frame, {x, side * lines.half_breadth(x), 0}, fixed);
            FrameMember leg = member_between(frame, "strap at " + text, MemberKind::strap, *top, rail, strap_EA);
            leg.free_length /= 1.0 + tension / strap_EA;
            straps.push_back(static_cast<int>(frame.members.size()));
            frame.members.push_back(leg);
        }
    }
}

/// A strip to each side of every station but the ends, where the film is fixed.
void add_film(Cover& cover, const Lines& lines, const Input& film) {
    const double Et = film.si<Pressure>("E") * film.si<Length>("thickness");
    const double tension = film.si<LineLoad>("tension");
    const double width = lines.length / static_cast<double>(cover.layout.stations.size() - 1);
    for (std::size_t i = 1; i + 1 < cover.layout.stations.size(); ++i) {
        const int node = cover.layout.stations[i];
        const std::array<double, 3> top = cover.layout.frame.nodes[static_cast<std::size_t>(node)].at;
        for (const Side side : {Side::port, Side::starboard}) {
            const double sign = side == Side::port ? -1.0 : 1.0;
            CoverStrip strip;
            strip.station = static_cast<int>(i);
            strip.node = node;
            strip.side = side;
            strip.width = width;
            strip.rail = {top[0], sign * lines.half_breadth(top[0]), 0};
            strip.strip.stiffness = Et * width;
            strip.strip.free_length = free_length_for_tension(Et * width, tension * width, top, strip.rail);
            cover.strips.push_back(strip);
        }
    }
}

/// Vertical force of both sides on the ridge per length, at the station nearest to x.
double ridge_line_load(const Cover& cover, const CoverState& state, double x) {
    double load = 0;
    for (std::size_t i = 0; i < cover.strips.size(); ++i) {
        const CoverStrip& strip = cover.strips[i];
        if (std::abs(strip.rail[0] - x) < 1e-9) load -= state.strips[i].pull_upper[2] / strip.width;
    }
    if (load == 0) throw CaseError("no strip hangs at the station asked for");
    return load;
}

/// Where the members are that the answers are about.
struct Supports {
    std::vector<std::string> places;
    std::vector<int> uprights;
    std::vector<int> straps;
};

void answer_frame(const Supports& at, const std::vector<int>& stations, const std::vector<MemberForces>& members,
                  const std::vector<double>& displacement, const std::string& by, Answers& answers) {
    for (std::size_t i = 0; i < at.places.size(); ++i) {
        const auto axial = [&](int member) { return members[static_cast<std::size_t>(member)].axial; };
        answers["upright_" + at.places[i]] = {-axial(at.uprights[i]), Dimension::force, by};
        const double strap = 0.5 * (axial(at.straps[2 * i]) + axial(at.straps[2 * i + 1]));
        answers["strap_" + at.places[i]] = {strap, Dimension::force, by};
    }
    double sag = 0;
    for (const int node : stations) sag = std::max(sag, -displacement[static_cast<std::size_t>(node) * 6 + 2]);
    answers["largest_ridge_sag"] = {sag, Dimension::length, by};
}

Answers by_strips(const Input& input, const Cover& cover, const Supports& supports) {
    const double snow = input.si<Pressure>("snow");
    const CoverState state = load_cover(cover, StripLoads(cover.strips.size(), snow));
    if (!state.usable()) {
        throw CaseError("the cover ends as " + std::string(name_of(state.frame.status)) + ": " + state.frame.message);
    }
    Answers answers;
    for (const std::string& x : input.texts("ridge_load_at")) {
        const double load = ridge_line_load(cover, state, in_m(read<Length>(x)));
        answers["ridge_line_load_" + x] = {load, Dimension::line_load, rule};
    }
    answer_frame(supports, cover.layout.stations, state.frame.members, state.frame.displacement, rule, answers);
    double film_sag = 0;
    for (const StripState& strip : state.strips) film_sag = std::max(film_sag, strip.sag);
    answers["largest_film_sag"] = {film_sag, Dimension::length, rule};
    answers["balance"] = {state.vertical_reaction / state.vertical_load, Dimension::pure, rule};
    return answers;
}

/// Film straight from ridge to rail, held at the rail and at both ends.
CoverMesh mesh_of(const Cover& cover, const Lines& lines, int rows) {
    CoverMesh film;
    const std::vector<int>& stations = cover.layout.stations;
    const auto add = [&](const std::array<double, 3>& place, int frame_node, bool held) {
        film.mesh.nodes.push_back(place);
        film.frame_node.push_back(frame_node);
        film.held.push_back(held);
        film.outlet.push_back(held);
        return static_cast<int>(film.mesh.nodes.size()) - 1;
    };
    std::vector<std::vector<int>> columns;  // from port rail over the ridge to starboard rail
    for (std::size_t i = 0; i < stations.size(); ++i) {
        const std::array<double, 3>& top = cover.layout.frame.nodes[static_cast<std::size_t>(stations[i])].at;
        const bool end = i == 0 || i + 1 == stations.size();
        std::vector<int>& column = columns.emplace_back();
        for (int j = -rows; j <= rows; ++j) {
            const double share = static_cast<double>(std::abs(j)) / rows;
            const double y = static_cast<double>(j) / rows * lines.half_breadth(top[0]);
            column.push_back(add({top[0], y, top[2] * (1 - share)}, j == 0 ? stations[i] : -1,
                                 j != 0 && (end || std::abs(j) == rows)));
        }
    }
    for (std::size_t i = 1; i < columns.size(); ++i) {
        for (std::size_t j = 1; j < columns[i].size(); ++j) {
            const int a = columns[i - 1][j - 1], b = columns[i][j - 1], c = columns[i][j], d = columns[i - 1][j];
            const bool port = j <= static_cast<std::size_t>(rows);
            film.mesh.triangles.push_back(port ? std::array<int, 3>{a, b, d} : std::array<int, 3>{a, b, c});
            film.mesh.triangles.push_back(port ? std::array<int, 3>{b, c, d} : std::array<int, 3>{a, c, d});
        }
    }
    return film;
}

Answers by_surface(const Input& input, const Cover& cover, const Lines& lines, const Supports& supports) {
    const Input film = input.at("film");
    CoverSurface surface;
    surface.layout = cover.layout;
    surface.cover = mesh_of(cover, lines, input.count_or("rows", 16));
    surface.shape = surface.cover.mesh;
    surface.tension = film.si<LineLoad>("tension");
    surface.stiffness = film.si<Pressure>("E") * film.si<Length>("thickness");
    surface.net = true;
    surface.state.displacement.assign(6 * cover.layout.frame.nodes.size(), 0.0);
    const std::vector<double> snow(surface.cover.mesh.triangles.size(), input.si<Pressure>("snow"));
    const SurfaceState state = load_surface(surface, snow);
    if (!state.usable()) throw CaseError("the surface ends as " + std::string(name_of(state.status)));
    const std::string by = "load_surface";
    Answers answers;
    // Pull of the film's triangles alone: the net leaves out the snow that falls on the nodes of the ridge themselves.
    const double spacing = lines.length / static_cast<double>(cover.layout.stations.size() - 1);
    const std::vector<double> own = plan_area_of_nodes(surface.cover.mesh);
    for (const std::string& x : input.texts("ridge_load_at")) {
        const double place = in_m(read<Length>(x));
        for (std::size_t n = 0; n < own.size(); ++n) {
            const int node = surface.cover.frame_node[n];
            if (node < 0 || std::abs(surface.cover.mesh.nodes[n][0] - place) > 1e-9) continue;
            const double pull = -state.film_on_frame[static_cast<std::size_t>(node)][2] - snow.front() * own[n];
            answers["ridge_line_load_" + x] = {pull / spacing, Dimension::line_load, by};
        }
    }
    answer_frame(supports, cover.layout.stations, state.members, state.displacement, by, answers);
    double film_sag = 0;
    for (std::size_t n = 0; n < state.film.nodes.size(); ++n) {
        film_sag = std::max(film_sag, surface.cover.mesh.nodes[n][2] - state.film.nodes[n][2]);
    }
    answers["largest_film_sag"] = {film_sag, Dimension::length, by};
    answers["balance"] = {state.vertical_reaction / state.vertical_load, Dimension::pure, by};
    return answers;
}

Answers net_cover(const Input& input) {
    const Lines lines = read_lines(input);
    Cover cover;
    Supports supports{input.at("uprights").texts("at"), {}, {}};
    add_ridge(cover, lines, input.at("pole"), input.count_or("pieces", 60));
    add_uprights(cover, lines, input, supports.uprights, supports.straps);
    if (input.has("rows")) return by_surface(input, cover, lines, supports);
    add_film(cover, lines, input.at("film"));
    return by_strips(input, cover, supports);
}

}  // namespace

void add_cover_models(std::map<std::string, Model>& all) { all["net_cover"] = net_cover; }

}  // namespace coverframe::validation
