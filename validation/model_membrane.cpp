// SPDX-License-Identifier: BSD-3-Clause
// Film as a membrane on simple outlines, and water on surfaces. Lengths and loads of the input are plain numbers in SI
// where the theory has none.
//
// Film of the theory of small sag keeps its tension whatever it carries: so loads are small here, and answers scaled
// back.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "coverframe/film/membrane.hpp"
#include "coverframe/film/surface.hpp"
#include "coverframe/units/crossing.hpp"
#include "model.hpp"
#include "sheet.hpp"

namespace coverframe::validation {
namespace {

using Places = std::vector<std::array<double, 3>>;

constexpr double gamma_water = 9810;

/// A disc of radius 1 at z = 0 in rings of six sectors.
TriangleMesh disc(int rings) {
    TriangleMesh mesh;
    mesh.nodes.push_back({0, 0, 0});
    for (int r = 1; r <= rings; ++r) {
        for (int k = 0; k < 6 * r; ++k) {
            const double angle = 2 * std::numbers::pi * k / (6 * r);
            mesh.nodes.push_back({double(r) / rings * std::cos(angle), double(r) / rings * std::sin(angle), 0});
        }
    }
    const auto node = [](int r, int k) { return r == 0 ? 0 : 1 + 3 * r * (r - 1) + (k + 6 * r) % (6 * r); };
    for (int r = 1; r <= rings; ++r) {
        for (int sector = 0; sector < 6; ++sector) {
            for (int k = 0; k < r; ++k) {
                const int outer = sector * r + k, inner = sector * (r - 1) + k;
                mesh.triangles.push_back({node(r, outer), node(r, outer + 1), node(r - 1, inner)});
                if (k > 0) mesh.triangles.push_back({node(r, outer), node(r - 1, inner), node(r - 1, inner - 1)});
            }
        }
    }
    return mesh;
}

/// Depth of the node nearest to a point of the plan.
double depth_at(const Membrane& m, const MembraneState& state, double x, double y) {
    std::size_t nearest = 0;
    const auto distance = [&](std::size_t n) { return std::hypot(m.mesh.nodes[n][0] - x, m.mesh.nodes[n][1] - y); };
    for (std::size_t n = 0; n < m.mesh.nodes.size(); ++n) {
        if (distance(n) < distance(nearest)) nearest = n;
    }
    return -state.places[nearest][2];
}

/// Flat disc that is not stretched at first, in the numbers of Hencky: b0 and W0.
Answers membrane_disc(const Input& input) {
    constexpr double Et = 1e6, load = 1;
    const Membrane m = stretched_membrane(disc(input.count_or("rings", 24)), Et, input.number("nu"), 0);
    const MembraneState state = solve_membrane(m, forces_of_plan_load(m.mesh, {load}));
    usable(state);
    const std::string by = "solve_membrane";
    return {{"W0", answer(depth_at(m, state, 0, 0) / std::cbrt(load / Et), by)},
            {"b0", answer(4 * state.triangles[0].first / (std::cbrt(Et) * std::pow(load, 2.0 / 3)), by)}};
}

/// Taut square under a small even load: sag at the middle by p a2/T.
Answers membrane_square(const Input& input) {
    constexpr double tension = 1e4;
    const int cells = input.count_or("cells", 24);
    const Membrane m = stretched_membrane(rectangle(1, 1, cells, cells), 1e6, 0.3, tension);
    const MembraneState state = solve_membrane(m, forces_of_plan_load(m.mesh, {1.0}));
    return {{"w_centre", answer(depth_at(m, usable(state), 0.5, 0.5) * tension, "solve_membrane")}};
}

/// A tube between two rings of radius r, h apart.
FoundShape tube(double r, double h, int around, int along) {
    TriangleMesh mesh;
    for (int j = 0; j <= along; ++j) {
        for (int i = 0; i < around; ++i) {
            const double angle = 2 * std::numbers::pi * (i + 0.5 * (j % 2)) / around;
            mesh.nodes.push_back({r * std::cos(angle), r * std::sin(angle), h * j / along});
        }
    }
    for (int j = 0; j < along; ++j) {
        for (int i = 0; i < around; ++i) {
            const int a = j * around + i, b = j * around + (i + 1) % around, c = a + around, d = b + around;
            mesh.triangles.push_back(j % 2 == 0 ? std::array<int, 3>{a, b, c} : std::array<int, 3>{a, b, d});
            mesh.triangles.push_back(j % 2 == 0 ? std::array<int, 3>{b, d, c} : std::array<int, 3>{a, d, c});
        }
    }
    std::vector<bool> held(mesh.nodes.size(), false);
    for (std::size_t i = 0; i < static_cast<std::size_t>(around); ++i) held[i] = held[held.size() - 1 - i] = true;
    return find_shape(mesh, held);
}

/// Greatest distance of two rings between which film of even pull still spans.
Answers catenoid(const Input& input) {
    const double radius = input.si<Length>("ring_radius");
    double spans = 1.0 * radius, collapses = 1.6 * radius;
    while (collapses - spans > 2e-3 * radius) {
        const double h = 0.5 * (spans + collapses);
        (tube(radius, h, 32, 12).found ? spans : collapses) = h;
    }
    return {{"h_max", answer(from_m(0.5 * (spans + collapses)), "find_shape")}};
}

/// A long strip between two level edges, its tension high against what it carries; a share of the load, scaled back.
Answers ponding_strip(const Input& input) {
    const double span = input.si<Length>("span"), tension = input.si<LineLoad>("tension");
    const double share = 0.01, load = input.si<Pressure>("load");
    const Membrane m = stretched_membrane(rectangle(8 * span, span, 96, 24), 30 * tension, 0, tension);
    const Places forces = forces_of_plan_load(m.mesh, {share * load});
    const FilledMembrane dry = fill_membrane(m, forces, border_of(m.mesh), {});
    const FilledMembrane wet = fill_membrane(m, forces, border_of(m.mesh), {Rain::Kind::to_the_brim, 0});
    if (!dry.settled || !wet.settled) throw CaseError("the pond does not settle");
    const double w0 = depth_at(m, dry.state, 4 * span, 0.5 * span) / share;
    const double w = depth_at(m, wet.state, 4 * span, 0.5 * span) / share;
    return {{"w_no_pond", answer(from_m(w0), "solve_membrane")},
            {"w_pond", answer(from_m(w), "fill_membrane")},
            {"amplification", answer(w / w0, "fill_membrane")}};
}

/// The tension at which a square under water to its edges loses its stiffness, from how the sag grows near it:
/// 1/amplification goes to zero in a straight line.
Answers ponding_square(const Input& input) {
    const double a = input.si<Length>("side");
    const double guess = gamma_water * a * a / (2 * std::numbers::pi * std::numbers::pi);
    const auto softness = [&](double tension) {
        const Membrane m = stretched_membrane(rectangle(a, a, 24, 24), 30 * tension, 0, tension);
        const Places forces = forces_of_plan_load(m.mesh, {0.05});
        const FilledMembrane dry = fill_membrane(m, forces, border_of(m.mesh), {});
        const FilledMembrane wet = fill_membrane(m, forces, border_of(m.mesh), {Rain::Kind::to_the_brim, 0});
        if (!dry.settled || !wet.settled) throw CaseError("the pond does not settle");
        return depth_at(m, dry.state, a / 2, a / 2) / depth_at(m, wet.state, a / 2, a / 2);
    };
    const double t1 = 1.01 * guess, t2 = 1.03 * guess;
    const double s1 = softness(t1), s2 = softness(t2);
    return {{"T_crit", answer(from_N_per_m(t1 - s1 * (t2 - t1) / (s2 - s1)), "fill_membrane")}};
}

/// A long elastic strip under water to its edges, set off by next to no load.
Answers filled_strip(const Input& input) {
    const double span = input.si<Length>("span");
    const Membrane m = stretched_membrane(rectangle(6 * span, span, 72, 24), input.si<LineLoad>("Et"), 0,
                                          input.si<LineLoad>("pretension"));
    const FilledMembrane filled =
        fill_membrane(m, forces_of_plan_load(m.mesh, {1.0}), border_of(m.mesh), {Rain::Kind::to_the_brim, 0});
    if (!filled.settled) throw CaseError("the pond does not settle");
    double area = 0, tension = 0;
    int counted = 0;
    const double slice = 6 * span / 72;
    for (std::size_t t = 0; t < m.mesh.triangles.size(); ++t) {
        double x = 0, y = 0;
        for (const int n : m.mesh.triangles[t]) {
            x += m.mesh.nodes[static_cast<std::size_t>(n)][0] / 3;
            y += m.mesh.nodes[static_cast<std::size_t>(n)][1] / 3;
        }
        if (x < 3 * span || x > 3 * span + slice) continue;
        TriangleMesh now{filled.state.places, m.mesh.triangles};
        area += wet_part(now, t, 0).volume / slice;
        if (std::abs(y - span / 2) > 0.1 * span) continue;
        tension += filled.state.triangles[t].first;
        ++counted;
    }
    const std::string by = "fill_membrane";
    return {{"T_eq", answer(from_N_per_m(tension / counted), by)},
            {"f_eq", answer(from_m(depth_at(m, filled.state, 3 * span, span / 2)), by)},
            {"water_area", answer(from_m2(area), by)}};
}

/// A pressure normal to the film in given places, as forces at the nodes.
Places pressed(const TriangleMesh& film, double pressure) {
    Places forces(film.nodes.size());
    for (const auto& t : film.triangles) {
        std::array<std::array<double, 3>, 3> at{};
        for (std::size_t k = 0; k < 3; ++k) at[k] = film.nodes[static_cast<std::size_t>(t[k])];
        for (std::size_t d = 0; d < 3; ++d) {
            const std::size_t e = (d + 1) % 3, f = (d + 2) % 3;
            const double normal =
                (at[1][e] - at[0][e]) * (at[2][f] - at[0][f]) - (at[1][f] - at[0][f]) * (at[2][e] - at[0][e]);
            for (const int node : t) forces[static_cast<std::size_t>(node)][d] -= pressure * normal / 6;
        }
    }
    return forces;
}

/// A long elastic strip between two level edges under a pressure normal to it, at its middle.
Answers pressed_strip(const Input& input) {
    const double span = input.si<Length>("span");
    const double pressure = input.si<Pressure>("pressure");
    constexpr int along = 60, rows = 40;
    const Membrane m = stretched_membrane(rectangle(6 * span, span, along, rows), input.si<LineLoad>("Et"), 0,
                                          input.si<LineLoad>("pretension"));
    MembraneState state = solve_membrane(m, forces_of_plan_load(m.mesh, {pressure}));
    double moved = span;
    for (int round = 0; moved > 1e-9 * span; ++round) {
        if (round == 50) throw CaseError("the shape under the pressure does not settle");
        const Places before = usable(state).places;
        state = solve_membrane(m, pressed({before, m.mesh.triangles}, pressure), {}, before);
        moved = 0;
        for (std::size_t n = 0; n < before.size(); ++n) {
            moved = std::max(moved, std::abs(state.places[n][2] - before[n][2]));
        }
    }
    // The four triangles of a cell at the middle of the strip.
    const std::size_t cell = 4 * static_cast<std::size_t>(rows / 2 * along + along / 2);
    double tension = 0;
    for (std::size_t t = cell; t < cell + 4; ++t) tension += usable(state).triangles[t].first / 4;
    const std::string by = "solve_membrane";
    return {{"T_arc", answer(from_N_per_m(tension), by)},
            {"sag_arc", answer(from_m(depth_at(m, state, 3 * span, 0.5 * span)), by)}};
}

/// A long strip from a ridge that does not move to a rail at the same height, over a flat thing under its middle.
Answers contact_strip(const Input& input) {
    const double span = input.si<Length>("span"), tension = input.si<LineLoad>("tension");
    const double load = input.si<Pressure>("load"), gap = input.si<Length>("gap");
    const double share = 0.01;
    const int rows = 160, columns = 20;
    CoverSurface s;
    for (int i = 0; i <= columns; ++i) {
        s.layout.frame.nodes.push_back(
            {"ridge", {4 * span * i / columns, 0, 0}, {true, true, true, true, false, false}});
        if (i == 0) continue;
        FrameMember piece;
        piece.name = "ridge";
        piece.from = i - 1;
        piece.to = i;
        piece.axial_stiffness = 1e6;
        piece.free_length = 4 * span / columns;
        piece.bending = {1e3, 1e3, 0, 0, 1e3};
        s.layout.frame.members.push_back(piece);
    }
    for (int i = 0; i <= columns; ++i) {
        for (int j = 0; j <= rows; ++j) {
            const bool end = i == 0 || i == columns || j == rows;
            s.cover.mesh.nodes.push_back({4 * span * i / columns, span * j / rows, 0});
            s.cover.frame_node.push_back(j == 0 ? i : -1);
            s.cover.held.push_back(j > 0 && end);
            s.cover.outlet.push_back(end);
            if (i == 0 || j == 0) continue;
            const int d = i * (rows + 1) + j, c = d - 1, b = d - rows - 1, a = b - 1;
            s.cover.mesh.triangles.insert(s.cover.mesh.triangles.end(), {{a, c, d}, {a, d, b}});
        }
    }
    s.shape = s.cover.mesh;
    s.tension = tension;
    s.stiffness = 30 * tension;
    s.state.displacement.assign(6 * s.layout.frame.nodes.size(), 0.0);
    const std::vector<double> snow(s.cover.mesh.triangles.size(), share * load);
    const auto middle = static_cast<std::size_t>(columns / 2 * (rows + 1) + rows / 2);
    const SurfaceState free = load_surface(s, snow);
    EdgeState plate{"plate", {}};
    for (int i = 1; i < columns; ++i) {
        for (int j = 1; j < rows; ++j) {
            plate.points.push_back({{4 * span * i / columns, span * j / rows, -share * gap}, span / rows, 0, 0});
        }
    }
    s.obstacles = {plate};
    const SurfaceState touched = load_surface(s, snow);
    if (!free.usable() || !touched.usable()) throw CaseError("the strip finds no equilibrium");
    double reaction = 0, contact = 0;
    for (const EdgePoint& point : touched.obstacles[0].points) {
        if (std::abs(point.place[0] - 2 * span) > 1e-9 || point.force == 0) continue;
        reaction += point.force * point.length / (4 * span / columns) / share;
        contact += point.length;
    }
    const std::string by = "load_surface";
    return {{"w_free", answer(from_m(-free.film.nodes[middle][2] / share), by)},
            {"free_each", answer(from_m(0.5 * (span - contact)), by)},
            {"contact", answer(from_m(contact), by)},
            {"reaction", answer(from_N_per_m(reaction), by)}};
}

/// A grid of cells over a rectangle, held all round: flat, a saddle, or a slope that falls across.
Answers membrane_grid(const Input& input) {
    const double length = input.si<Length>("length"), width = input.si<Length>("width");
    const double rise = input.si<Length>("rise");
    const std::string shape = input.text("shape");
    TriangleMesh mesh = rectangle(length, width, input.count_or("columns", 1), input.count_or("rows", 1));
    for (auto& node : mesh.nodes) {
        if (shape == "saddle") node[2] = rise * (2 * node[0] / length - 1) * (2 * node[1] / width - 1);
        if (shape == "slope") node[2] = -rise * node[1] / width;
    }
    const Membrane m = stretched_membrane(std::move(mesh), input.si<LineLoad>("Et"), input.number("nu"),
                                          input.si<LineLoad>("tension"));
    const MembraneState state = solve_membrane(m, forces_of_plan_load(m.mesh, {input.si<Pressure>("load")}));
    usable(state);
    const auto moved = [&](double x, double y, std::size_t axis) {
        std::size_t nearest = 0;
        const auto away = [&](std::size_t n) { return std::hypot(m.mesh.nodes[n][0] - x, m.mesh.nodes[n][1] - y); };
        for (std::size_t n = 0; n < m.mesh.nodes.size(); ++n) {
            if (away(n) < away(nearest)) nearest = n;
        }
        return state.places[nearest][axis] - m.mesh.nodes[nearest][axis];
    };
    std::array<double, 3> edge{};
    for (std::size_t n = 0; n < m.mesh.nodes.size(); ++n) {
        for (std::size_t d = 0; d < 3 && m.mesh.nodes[n][0] == 0; ++d) edge[d] += state.reaction[n][d];
    }
    const std::string by = "solve_membrane";
    return {{"sag_middle", answer(from_m(-moved(length / 2, width / 2, 2)), by)},
            {"across_middle", answer(from_m(moved(length / 2, width / 2, 1)), by)},
            {"sag_quarter", answer(from_m(-moved(length / 4, width / 4, 2)), by)},
            {"pull_x", answer(from_N(-edge[0]), by)},
            {"hold_z", answer(from_N(edge[2]), by)}};
}

/// Levels of full water on a grid of cells with eight neighbours; the cells of the border are outlets.
Answers flood_grid(const Input& input) {
    const std::vector<double> z = input.numbers("z");
    const int n = input.count_or("columns", 0);
    const int rows = static_cast<int>(z.size()) / std::max(n, 1);
    Places places;
    Lists neighbours{{0}, {}};
    std::vector<bool> outlet;
    for (int j = 0; j < rows; ++j) {
        for (int i = 0; i < n; ++i) {
            places.push_back({double(i), double(j), z[static_cast<std::size_t>(j * n + i)]});
            outlet.push_back(i == 0 || j == 0 || i == n - 1 || j == rows - 1);
            for (int k = -1; k <= 1; ++k) {
                for (int l = -1; l <= 1; ++l) {
                    const bool inside = j + k >= 0 && j + k < rows && i + l >= 0 && i + l < n;
                    if (inside && (k != 0 || l != 0)) neighbours.items.push_back((j + k) * n + i + l);
                }
            }
            neighbours.first.push_back(static_cast<int>(neighbours.items.size()));
        }
    }
    const std::vector<double> level = levels_to_the_brim(places, neighbours, outlet);
    double volume = 0;
    for (std::size_t i = 0; i < level.size(); ++i) volume += level[i] - z[i];
    const std::string by = "levels_to_the_brim";
    return {{"level_centre", answer(level[level.size() / 2], by)},
            {"level_33", answer(level[static_cast<std::size_t>(3 * n + 3)], by)},
            {"volume", answer(volume, by)}};
}

/// Water in a trough of two slopes, with walls at its ends.
Answers trough(const Input& input) {
    const std::vector<double> slopes = input.numbers("side_slopes_deg");
    const double depth = input.si<Length>("depth");
    TriangleMesh mesh = rectangle(2, input.si<Length>("length"), 2, 2);
    for (auto& node : mesh.nodes) {
        node[0] -= 1;
        node[2] = std::abs(node[0]) * std::tan(slopes.at(node[0] < 0 ? 0 : 1) * std::numbers::pi / 180);
    }
    double volume = 0;
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) volume += wet_part(mesh, t, depth).volume;
    return {{"volume", answer(volume, "wet_part")}};
}

}  // namespace

void add_membrane_models(std::map<std::string, Model>& all) {
    all["membrane_disc"] = membrane_disc;
    all["membrane_square"] = membrane_square;
    all["membrane_grid"] = membrane_grid;
    all["catenoid"] = catenoid;
    all["ponding_strip"] = ponding_strip;
    all["ponding_square"] = ponding_square;
    all["filled_strip"] = filled_strip;
    all["pressed_strip"] = pressed_strip;
    all["contact_strip"] = contact_strip;
    all["flood_grid"] = flood_grid;
    all["trough"] = trough;
}

}  // namespace coverframe::validation
