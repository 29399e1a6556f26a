// SPDX-License-Identifier: BSD-3-Clause
#include "surface_told.hpp"

#include <pybind11/stl.h>

namespace coverframe::binding {
namespace {

py::tuple edge_of(const EdgeState& edge) {
    Places places;
    for (const EdgePoint& p : edge.points) places.push_back(p.place);
    return py::make_tuple(edge.name, places_of(places), numbers(edge.points, [](const auto& p) { return p.length; }),
                          numbers(edge.points, [](const auto& p) { return p.gap; }),
                          numbers(edge.points, [](const auto& p) { return p.force; }));
}

}  // namespace

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

py::dict told(const CoverSurface& surface, const SurfaceState& state) {
    py::list edges, ponds, dips, lifts;
    for (const EdgeState& edge : state.obstacles) edges.append(edge_of(edge));
    if (state.usable()) {
        for (const PondFlag& pond : pond_flags(surface, state)) ponds.append(pond_of(pond));
        for (const RidgeDip& dip : ridge_dips(surface, state)) {
            dips.append(py::make_tuple(dip.bay, dip.x, dip.depth));
        }
    }
    for (const RidgeLift& lift : state.lifts) lifts.append(py::make_tuple(lift.x, lift.gap));
    const std::vector<FrameMember>& members = surface.layout.frame.members;
    py::dict all;
    all["status"] = name_of(state.status);
    all["message"] = state.message;
    all["place"] = state.place;
    all["places"] = places_of(state.film.nodes);
    all["first"] = numbers(state.triangles, [](const FilmForces& f) { return f.first; });
    all["second"] = numbers(state.triangles, [](const FilmForces& f) { return f.second; });
    all["stretch"] = numbers(state.triangles, [](const FilmForces& f) { return static_cast<double>(f.stretch); });
    all["slope"] = numbers(slopes_of(state.film), [](double slope) { return slope; });
    all["depth"] = numbers(state.water.depth, [](double depth) { return depth; });
    all["obstacles"] = edges;
    all["ponds"] = ponds;
    all["dips"] = dips;
    all["lifts"] = lifts;
    all["snaps"] = state.snaps;
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

}  // namespace coverframe::binding
