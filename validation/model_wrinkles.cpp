// SPDX-License-Identifier: BSD-3-Clause
// Film that wrinkles: a sheet bent in its plane, rings pulled and turned at their edges, and grids that
// another program solves too.
//
// Bent and pulled at once (Stein and Hedgepeth 1961). A sheet of height h under a pull P along it and a moment M in its
// plane pulls N(y), which grows in a straight line over y because sections stay plane. While M <= P h/6, N >= 0 all
// over. Beyond, a band of width b at one edge wrinkles and pulls nothing; N is a triangle over the rest, h - b, with
// its resultant P at (h - b)/3 from the edge that pulls most:
//   M = P (h/2 - (h - b)/3)             b/h = 3 M/(P h) - 1/2
//   curvature k = N(edge)/(E t (h - b)), N(edge) = 2 P/(h - b)          E t h2 k/(2 P) = 1/(1 - b/h)^2
// A pull across, the same all over, keeps the wrinkled band from being slack and changes neither.
//
// A ring with radii a and c, pulled inwards by Ti at its inner and outwards by To at its outer edge. From a to L it
// wrinkles: Nr = Ti a/r, Nt = 0; beyond, Nr and Nt = A (1 +- L2/r2), so that Nt(L) = 0, with A = Ti a/(2 L):
//   To = A (1 + L2/c2),  u(c) = c (Nt - nu Nr)/(E t),  u(a) = -Ti a (ln(L/a) + nu)/(E t)
//
// A ring held at its outer radius c and turned at its inner one, a, by a moment M (Reissner, On tension field theory,
// 1938, from memory; derived here). All of it wrinkles. Its pull N runs along straight lines that pass the middle at a
// distance e, so it makes the angle alpha with the radius, r sin alpha = e, and
//   N = M/(2 pi e sqrt(r2 - e2))        turning balances: 2 pi r2 N sin alpha cos alpha = M; so do forces
// A line grows longer by the integral of N/(E t) along it, which is w e for a turn w of the inner edge:
//   w = M/(4 pi E t e2) ln[(c2 - e2)/(a2 - e2)]
// An inner edge that cannot move outwards or inwards has the e for which w is least:
//   ln[(c2 - e2)/(a2 - e2)] = e2 [1/(a2 - e2) - 1/(c2 - e2)]
#include <algorithm>
#include <cmath>
#include <numbers>

#include "coverframe/units/crossing.hpp"
#include "model.hpp"
#include "sheet.hpp"

namespace coverframe::validation {
namespace {

using Places = std::vector<std::array<double, 3>>;

bool on(double value, double end) { return std::abs(value - end) < 1e-9; }

std::size_t nearest_node(const TriangleMesh& mesh, double x, double y) {
    const auto away = [&](std::size_t n) { return std::hypot(mesh.nodes[n][0] - x, mesh.nodes[n][1] - y); };
    std::size_t nearest = 0;
    for (std::size_t n = 0; n < mesh.nodes.size(); ++n) {
        if (away(n) < away(nearest)) nearest = n;
    }
    return nearest;
}

double drawn_area(const TriangleMesh& mesh, std::size_t t) {
    const auto& [a, b, c] = mesh.triangles[t];
    const auto node = [&](int n, std::size_t d) { return mesh.nodes[static_cast<std::size_t>(n)][d]; };
    double twice = 0;
    for (std::size_t d = 0; d < 3; ++d) {
        const std::size_t e = (d + 1) % 3;
        const double part = (node(b, d) - node(a, d)) * (node(c, e) - node(a, e)) -
                            (node(b, e) - node(a, e)) * (node(c, d) - node(a, d));
        twice += part * part;
    }
    return 0.5 * std::sqrt(twice);
}

/// Share of the film whose triangles are in a state, of those from triangle `begin` to `end`.
double share_of(const Membrane& m, const MembraneState& state, FilmStretch stretch, std::size_t begin,
                std::size_t end) {
    double part = 0, whole = 0;
    for (std::size_t t = begin; t < end; ++t) {
        const double area = drawn_area(m.mesh, t);
        whole += area;
        if (state.triangles[t].stretch == stretch) part += area;
    }
    return part / whole;
}

double share_of(const Membrane& m, const MembraneState& state, FilmStretch stretch) {
    return share_of(m, state, stretch, 0, m.mesh.triangles.size());
}

Membrane unheld(TriangleMesh mesh, const Input& input) {
    Membrane m;
    m.held.assign(mesh.nodes.size(), false);
    m.mesh = std::move(mesh);
    m.stiffness = input.si<LineLoad>("Et");
    m.poisson = input.number("nu");
    return m;
}

/// Pull along a sheet of unit height under a pull of 1 and a moment, at a height.
double bent_pull(double moment, double y) {
    if (moment <= 1.0 / 6) return 1 + 12 * moment * (0.5 - y);
    const double taut = 1.5 - 3 * moment;  // h - b
    return std::max(0.0, 2 / taut * (1 - y / taut));
}

/// Two nodes of an edge share what a piece of it carries: the integrals of the pull times their shape functions.
std::array<double, 2> shares(double moment, double from, double to) {
    constexpr int parts = 50;
    std::array<double, 2> sum{};
    for (int i = 0; i < parts; ++i) {
        const double s = (i + 0.5) / parts;
        const double force = bent_pull(moment, from + s * (to - from)) * (to - from) / parts;
        sum[0] += (1 - s) * force;
        sum[1] += s * force;
    }
    return sum;
}

/// A sheet twice as long as high, of height 1, held at one node in its middle: all forces balance by themselves.
Answers bent_sheet(const Input& input) {
    const double moment = input.number("M/(P h)"), pull = input.si<LineLoad>("pull");
    const double across = input.si<LineLoad>("pull_across");
    const int rows = input.count_or("rows", 0), columns = 2 * rows;
    Membrane m = unheld(rectangle(2, 1, columns, rows), input);
    Places forces(m.mesh.nodes.size());
    const auto node = [&](int i, int j) { return static_cast<std::size_t>(j * (columns + 1) + i); };
    for (int j = 0; j < rows; ++j) {
        const auto [lower, upper] = shares(moment, double(j) / rows, (j + 1.0) / rows);
        for (const int i : {0, columns}) {
            const double sign = i == 0 ? -pull : pull;
            forces[node(i, j)][0] += sign * lower;
            forces[node(i, j + 1)][0] += sign * upper;
        }
    }
    for (int i = 0; i <= columns; ++i) {
        const double piece = 2.0 / columns * (i == 0 || i == columns ? 0.5 : 1);
        forces[node(i, 0)][1] -= across * piece;
        forces[node(i, rows)][1] += across * piece;
    }
    m.held[node(columns / 2, rows / 2)] = true;
    const MembraneState state = solve_membrane(m, forces);
    usable(state);
    const auto along = [&](int i, int j) { return state.places[node(i, j)][0] - m.mesh.nodes[node(i, j)][0]; };
    const auto turn = [&](int i) { return along(i, 0) - along(i, rows); };
    const double curvature = turn(3 * columns / 4) - turn(columns / 4);
    double wrinkled = 0;
    for (int j = 0; j < rows; ++j) {  // the cells beside the middle
        const auto begin = static_cast<std::size_t>(4 * (j * columns + columns / 2));
        wrinkled += share_of(m, state, FilmStretch::wrinkled, begin, begin + 4) / rows;
    }
    const std::string by = "solve_membrane";
    return {{"b/h", answer(wrinkled, by)}, {"E t h2 k/(2 P)", answer(m.stiffness * curvature / (2 * pull), by)}};
}

/// A ring of `rings` by `around` cells of two triangles, finer inside.
TriangleMesh ring(double inner, double outer, int rings, int around) {
    TriangleMesh mesh;
    for (int r = 0; r <= rings; ++r) {
        const double radius = inner * std::pow(outer / inner, double(r) / rings);
        for (int k = 0; k < around; ++k) {
            const double angle = 2 * std::numbers::pi * (k + 0.5 * (r % 2)) / around;
            mesh.nodes.push_back({radius * std::cos(angle), radius * std::sin(angle), 0});
        }
    }
    for (int r = 0; r < rings; ++r) {
        for (int k = 0; k < around; ++k) {
            const int next = (k + 1) % around;
            const int a = r * around + k, b = r * around + next, c = a + around, d = b + around;
            if (r % 2 == 0) mesh.triangles.insert(mesh.triangles.end(), {{a, c, b}, {b, c, d}});
            if (r % 2 == 1) mesh.triangles.insert(mesh.triangles.end(), {{a, c, d}, {a, d, b}});
        }
    }
    return mesh;
}

Answers pulled_ring(const Input& input) {
    const double inner = input.si<Length>("inner_radius"), outer = input.si<Length>("outer_radius");
    const int rings = input.count_or("rings", 0), around = input.count_or("around", 0);
    Membrane m = unheld(ring(inner, outer, rings, around), input);
    const double pull_in = input.si<LineLoad>("inner_pull"), pull_out = input.si<LineLoad>("outer_pull");
    Places forces(m.mesh.nodes.size());
    const double side = 2 * std::sin(std::numbers::pi / around);  // of a polygon in a circle of radius 1
    for (std::size_t n = 0; n < forces.size(); ++n) {
        const double radius = std::hypot(m.mesh.nodes[n][0], m.mesh.nodes[n][1]);
        const double force = on(radius, inner)   ? -pull_in * side * inner
                             : on(radius, outer) ? pull_out * side * outer
                                                 : 0;
        for (std::size_t d = 0; d < 2; ++d) forces[n][d] = force * m.mesh.nodes[n][d] / radius;
    }
    m.held.back() = true;
    const MembraneState state = solve_membrane(m, forces);
    usable(state);
    // The held node stays where it is: what a radius grows by is seen across the ring.
    const auto grows = [&](std::size_t first) {
        const auto half = static_cast<std::size_t>(around / 2);
        const auto &a = state.places[first], &b = state.places[first + half];
        return 0.5 * std::hypot(a[0] - b[0], a[1] - b[1]) - std::hypot(m.mesh.nodes[first][0], m.mesh.nodes[first][1]);
    };
    const double share = share_of(m, state, FilmStretch::wrinkled);
    const std::string by = "solve_membrane";
    return {{"wrinkled_to", answer(from_m(std::sqrt(inner * inner + share * (outer * outer - inner * inner))), by)},
            {"inner_moves", answer(from_m(grows(0)), by)},
            {"outer_moves", answer(from_m(grows(static_cast<std::size_t>(rings * around))), by)}};
}

/// The inner edge is pulled inwards and round as the straight lines at the distance `line` from the middle do.
Answers turned_ring(const Input& input) {
    const double inner = input.si<Length>("inner_radius"), outer = input.si<Length>("outer_radius");
    const double moment = input.si<Moment>("moment"), line = input.si<Length>("line");
    const int rings = input.count_or("rings", 0), around = input.count_or("around", 0);
    Membrane m = unheld(ring(inner, outer, rings, around), input);
    Places forces(m.mesh.nodes.size());
    const double round = moment / inner / around;
    const double inwards = round * std::sqrt(inner * inner - line * line) / line;
    for (std::size_t n = 0; n < forces.size(); ++n) {
        const double x = m.mesh.nodes[n][0], y = m.mesh.nodes[n][1], radius = std::hypot(x, y);
        m.held[n] = on(radius, outer);
        if (on(radius, inner)) forces[n] = {(-round * y - inwards * x) / inner, (round * x - inwards * y) / inner, 0};
    }
    const MembraneState state = solve_membrane(m, forces);
    usable(state);
    double turns = 0, grows = 0, turning = 0;
    for (std::size_t n = 0; n < forces.size(); ++n) {
        const auto &from = m.mesh.nodes[n], &to = state.places[n];
        turning += to[0] * state.reaction[n][1] - to[1] * state.reaction[n][0];
        if (!on(std::hypot(from[0], from[1]), inner)) continue;
        turns += std::atan2(from[0] * to[1] - from[1] * to[0], from[0] * to[0] + from[1] * to[1]) / around;
        grows += (std::hypot(to[0], to[1]) - inner) / around;
    }
    double along = 0, across = 0;
    for (std::size_t t = 0; t < state.triangles.size(); ++t) {
        along += drawn_area(m.mesh, t) * state.triangles[t].first;
        across += drawn_area(m.mesh, t) * state.triangles[t].second;
    }
    const std::string by = "solve_membrane";
    return {{"turn", answer(from_rad(turns), by)},
            {"inner_moves", answer(from_m(grows), by)},
            {"moment_at_outer_edge", answer(from_N_m(-turning), by)},
            {"across/along", answer(across / along, by)}};
}

/// Forces per length: `up` and `along` on the edge y = width, `out` on the edges at both ends of x.
void add_edge_loads(const Input& input, const TriangleMesh& mesh, int columns, int rows, Places& forces) {
    if (!input.has("up")) return;
    const double length = input.si<Length>("length"), width = input.si<Length>("width");
    const double up = input.si<LineLoad>("up"), along = input.si<LineLoad>("along"), out = input.si<LineLoad>("out");
    for (std::size_t n = 0; n < forces.size(); ++n) {
        const double x = mesh.nodes[n][0], y = mesh.nodes[n][1];
        const bool side = on(x, 0) || on(x, length), top = on(y, width);
        if (top) {
            const double piece = length / columns * (side ? 0.5 : 1);
            forces[n][0] += along * piece;
            forces[n][1] += up * piece;
        }
        if (side) forces[n][0] += (on(x, length) ? out : -out) * width / rows * (top || on(y, 0) ? 0.5 : 1);
    }
}

bool is_held(const Input& input, double x, double y) {
    const double length = input.si<Length>("length"), width = input.si<Length>("width");
    const std::string hold = input.text("hold");
    if (hold == "bottom") return on(y, 0);
    const bool border = on(x, 0) || on(x, length) || on(y, 0) || on(y, width);
    if (hold == "edges") return border;
    const double reach = input.si<Length>("reach") + 1e-9;
    return border && std::min(x, length - x) < reach && std::min(y, width - y) < reach;
}

/// A grid of cells over a rectangle, flat or a saddle, held and pulled in several ways.
Answers wrinkled_grid(const Input& input) {
    const double length = input.si<Length>("length"), width = input.si<Length>("width");
    const double rise = input.has("rise") ? input.si<Length>("rise") : 0;
    const int columns = input.count_or("columns", 1), rows = input.count_or("rows", 1);
    TriangleMesh mesh = rectangle(length, width, columns, rows);
    for (auto& node : mesh.nodes) node[2] = rise * (2 * node[0] / length - 1) * (2 * node[1] / width - 1);
    Membrane m = stretched_membrane(std::move(mesh), input.si<LineLoad>("Et"), input.number("nu"),
                                    input.si<LineLoad>("tension"));
    for (std::size_t n = 0; n < m.held.size(); ++n) m.held[n] = is_held(input, m.mesh.nodes[n][0], m.mesh.nodes[n][1]);
    Places forces = forces_of_plan_load(m.mesh, {input.has("load") ? input.si<Pressure>("load") : 0});
    add_edge_loads(input, m.mesh, columns, rows, forces);
    const MembraneState state = solve_membrane(m, forces);
    usable(state);
    const auto moved = [&](double x, double y, std::size_t axis) {
        const std::size_t n = nearest_node(m.mesh, x, y);
        return state.places[n][axis] - m.mesh.nodes[n][axis];
    };
    std::array<double, 3> left{};
    for (std::size_t n = 0; n < m.mesh.nodes.size(); ++n) {
        for (std::size_t d = 0; d < 3 && m.mesh.nodes[n][0] < length / 2 - 1e-9; ++d) left[d] += state.reaction[n][d];
    }
    const std::string by = "solve_membrane";
    return {{"wrinkled", answer(share_of(m, state, FilmStretch::wrinkled), by)},
            {"slack", answer(share_of(m, state, FilmStretch::slack), by)},
            {"sag_middle", answer(from_m(-moved(length / 2, width / 2, 2)), by)},
            {"sag_quarter", answer(from_m(-moved(length / 4, width / 4, 2)), by)},
            {"along_top", answer(from_m(moved(length / 2, width, 0)), by)},
            {"across_top", answer(from_m(moved(length / 2, width, 1)), by)},
            {"along_middle", answer(from_m(moved(length / 2, width / 2, 0)), by)},
            {"across_middle", answer(from_m(moved(length / 2, width / 2, 1)), by)},
            {"left_x", answer(from_N(-left[0]), by)},
            {"left_y", answer(from_N(-left[1]), by)},
            {"left_z", answer(from_N(left[2]), by)}};
}

}  // namespace

void add_wrinkle_models(std::map<std::string, Model>& all) {
    all["bent_sheet"] = bent_sheet;
    all["pulled_ring"] = pulled_ring;
    all["turned_ring"] = turned_ring;
    all["wrinkled_grid"] = wrinkled_grid;
}

}  // namespace coverframe::validation
