// SPDX-License-Identifier: BSD-3-Clause
// The cover with film as a surface. The interpreter lock is released while it is solved.
#include <pybind11/stl.h>

#include <memory>

#include "binding.hpp"
#include "coverframe/film/surface_survey.hpp"
#include "coverframe/plan/plan.hpp"

namespace coverframe::binding {
namespace {

/// A surface with the plan it points into.
struct Held {
    explicit Held(Plan of) : plan(std::move(of)) {}
    Plan plan;
    CoverSurface surface;
};

using Places = std::vector<std::array<double, 3>>;

py::array_t<double> places_of(const Places& places) {
    py::array_t<double> rows({static_cast<py::ssize_t>(places.size()), py::ssize_t{3}});
    double* to = rows.mutable_data();
    for (const auto& place : places) to = std::copy(place.begin(), place.end(), to);
    return rows;
}

py::array_t<int> corners_of(const TriangleMesh& mesh) {
    py::array_t<int> rows({static_cast<py::ssize_t>(mesh.triangles.size()), py::ssize_t{3}});
    int* to = rows.mutable_data();
    for (const auto& t : mesh.triangles) to = std::copy(t.begin(), t.end(), to);
    return rows;
}

py::tuple edge_of(const EdgeState& edge) {
    Places places;
    for (const EdgePoint& p : edge.points) places.push_back(p.place);
    return py::make_tuple(edge.name, places_of(places), numbers(edge.points, [](const auto& p) { return p.length; }),
                          numbers(edge.points, [](const auto& p) { return p.gap; }),
                          numbers(edge.points, [](const auto& p) { return p.force; }));
}

py::tuple pond_of(const PondFlag& pond) {
    py::list lines;
    for (const auto& line : pond.outline) {
        py::array_t<double> rows({static_cast<py::ssize_t>(line.size()), py::ssize_t{2}});
        double* to = rows.mutable_data();
        for (const auto& spot : line) to = std::copy(spot.begin(), spot.end(), to);
        lines.append(rows);
    }
    return py::make_tuple(pond.place, pond.x, pond.y, pond.volume, pond.weight, pond.depth, pond.area, pond.spills,
                          pond.reaches, lines, pond.sentence());
}

/// Everything a state tells, by name.
py::dict told(const Held& held, const SurfaceState& state) {
    py::list edges, ponds, dips;
    for (const EdgeState& edge : state.obstacles) edges.append(edge_of(edge));
    if (state.usable()) {
        for (const PondFlag& pond : pond_flags(held.surface, state)) ponds.append(pond_of(pond));
        for (const RidgeDip& dip : ridge_dips(held.surface, state)) {
            dips.append(py::make_tuple(dip.bay, dip.x, dip.depth));
        }
    }
    const std::vector<FrameMember>& members = held.surface.layout.frame.members;
    py::dict all;
    all["status"] = name_of(state.status);
    all["message"] = state.message;
    all["places"] = places_of(state.film.nodes);
    all["first"] = numbers(state.triangles, [](const FilmForces& f) { return f.first; });
    all["second"] = numbers(state.triangles, [](const FilmForces& f) { return f.second; });
    all["stretch"] = numbers(state.triangles, [](const FilmForces& f) { return static_cast<double>(f.stretch); });
    all["slope"] = numbers(slopes_of(state.film), [](double slope) { return slope; });
    all["depth"] = numbers(state.water.depth, [](double depth) { return depth; });
    all["obstacles"] = edges;
    all["ponds"] = ponds;
    all["dips"] = dips;
    all["members"] = texts(members, [](const FrameMember& member) { return member.name; });
    all["axial"] = numbers(state.members, [](const MemberForces& f) { return f.axial; });
    all["water"] = state.water.volume();
    all["on_straps"] = state.on_straps;
    all["load"] = state.vertical_load;
    all["reaction"] = state.vertical_reaction;
    all["iterations"] = state.iterations;
    all["rounds"] = state.rounds;
    return all;
}

std::vector<double> items_of(const Numbers& column) { return {column.data(), column.data() + column.size()}; }

std::unique_ptr<Held> rig_held(const Plan& plan, double tension, double spacing, int rows, bool stiff) {
    auto held = std::make_unique<Held>(plan);
    const py::gil_scoped_release unlocked;
    held->surface = rig_surface(held->plan, tension,
                                {.spacing = spacing, .rows = rows, .strap_stiffness = stiff ? Bound::high : Bound::low});
    return held;
}

py::dict load_held(const Held& held, const Numbers& snow, int rain, double depth, double permanent_factor) {
    std::vector<double> loads = items_of(snow);
    if (loads.size() == 1) loads.assign(held.surface.cover.mesh.triangles.size(), loads.front());
    SurfaceState state;
    {
        const py::gil_scoped_release unlocked;
        state = load_surface(held.surface, loads, {static_cast<Rain::Kind>(rain), depth}, permanent_factor);
    }
    return told(held, state);
}

py::list touches_of(const Held& held, const Numbers& snow, double most) {
    std::vector<double> loads = items_of(snow);
    if (loads.size() == 1) loads.assign(held.surface.cover.mesh.triangles.size(), loads.front());
    std::vector<FirstTouch> touches;
    {
        const py::gil_scoped_release unlocked;
        touches = first_touches(held.surface, loads, most);
    }
    py::list rows;
    for (const FirstTouch& touch : touches) rows.append(py::make_tuple(touch.obstacle, touch.share, touch.place));
    return rows;
}

}  // namespace

void bind_surface(py::module_& module) {
    py::class_<Held>(module, "Surface")
        .def(py::init(&rig_held))
        .def_property_readonly("state", [](const Held& held) { return told(held, held.surface.state); })
        .def_property_readonly("drawn", [](const Held& held) { return places_of(held.surface.cover.mesh.nodes); })
        .def_property_readonly("triangles", [](const Held& held) { return corners_of(held.surface.cover.mesh); })
        .def_property_readonly("ridge",
                               [](const Held& held) {
                                   std::vector<int> nodes;
                                   for (std::size_t n = 0; n < held.surface.cover.frame_node.size(); ++n) {
                                       if (held.surface.cover.frame_node[n] >= 0) nodes.push_back(static_cast<int>(n));
                                   }
                                   return nodes;
                               })
        .def("snow_by_station",
             [](const Held& held, const Numbers& x, const Numbers& port, const Numbers& starboard) {
                 const std::vector<double> snow =
                     snow_by_station(held.surface, items_of(x), items_of(port), items_of(starboard));
                 return numbers(snow, [](double load) { return load; });
             })
        .def("load", &load_held)
        .def("first_touches", &touches_of);
}

}  // namespace coverframe::binding
