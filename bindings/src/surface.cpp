// SPDX-License-Identifier: BSD-3-Clause
// The cover with film as a surface. The interpreter lock is released while it is solved.
#include <pybind11/stl.h>

#include <memory>
#include <optional>

#include "coverframe/film/surface_survey.hpp"
#include "coverframe/plan/plan.hpp"
#include "surface_told.hpp"

namespace coverframe::binding {
namespace {

/// A surface with the plan it points into.
struct Held {
    explicit Held(Plan of) : plan(std::move(of)) {}
    Plan plan;
    CoverSurface surface;
};

std::vector<double> items_of(const Numbers& column) { return {column.data(), column.data() + column.size()}; }

/// One load for all triangles, or one each.
std::vector<double> loads_of(const Held& held, const Numbers& snow) {
    std::vector<double> loads = items_of(snow);
    if (loads.size() == 1) loads.assign(held.surface.cover.mesh.triangles.size(), loads.front());
    return loads;
}

std::unique_ptr<Held> rig_held(const Plan& plan, double tension, double spacing, int rows, bool stiff) {
    auto held = std::make_unique<Held>(plan);
    const py::gil_scoped_release unlocked;
    held->surface = rig_surface(
        held->plan, tension, {.spacing = spacing, .rows = rows, .strap_stiffness = stiff ? Bound::high : Bound::low});
    return held;
}

py::dict load_held(const Held& held, const Numbers& snow, int rain, double depth, double permanent_factor) {
    const std::vector<double> loads = loads_of(held, snow);
    SurfaceState state;
    {
        const py::gil_scoped_release unlocked;
        state = load_surface(held.surface, loads, {static_cast<Rain::Kind>(rain), depth}, permanent_factor);
    }
    return told(held.surface, state);
}

py::list touches_of(const Held& held, const Numbers& snow, double most) {
    const std::vector<double> loads = loads_of(held, snow);
    std::vector<FirstTouch> touches;
    {
        const py::gil_scoped_release unlocked;
        touches = first_touches(held.surface, loads, most);
    }
    py::list rows;
    for (const FirstTouch& touch : touches) rows.append(py::make_tuple(touch.obstacle, touch.share, touch.place));
    return rows;
}

const char* name_of(FilmLimit::End end) {
    switch (end) {
        case FilmLimit::End::none: return "none";
        case FilmLimit::End::torn: return "torn";
        case FilmLimit::End::no_shape: return "no shape";
    }
    return "";
}

/// How it ends, status, share held, share not held, place, sentence.
py::tuple limit_of(const Held& held, const Numbers& snow, std::optional<double> strength, double most) {
    const std::vector<double> loads = loads_of(held, snow);
    FilmLimit limit;
    {
        const py::gil_scoped_release unlocked;
        limit = film_limit(held.surface, loads, strength.value_or(held.surface.strength), {}, most);
    }
    return py::make_tuple(name_of(limit.end), coverframe::name_of(limit.status), limit.held, limit.share, limit.place,
                          limit.sentence);
}

}  // namespace

void bind_surface(py::module_& module) {
    py::class_<Held>(module, "Surface")
        .def(py::init(&rig_held))
        .def_property_readonly("state", [](const Held& held) { return told(held.surface, held.surface.state); })
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
        .def("first_touches", &touches_of)
        .def("limit", &limit_of);
}

}  // namespace coverframe::binding
