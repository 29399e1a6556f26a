// SPDX-License-Identifier: BSD-3-Clause
// A surface of flat triangles, such as the film over the boat. Coherent SI: m, m2.
//
// The surface is a field of heights: seen from above no triangle lies under another one or stands upright. Axes as in
// frame/frame.hpp: x aft, y to starboard, z up.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

namespace coverframe {

struct TriangleMesh {
    std::vector<std::array<double, 3>> nodes;   ///< places [m]
    std::vector<std::array<int, 3>> triangles;  ///< indices of nodes, turning the same way seen from above
};

/// A list of indices for each of many things: those of thing i stand at first[i] to first[i + 1].
struct Lists {
    std::vector<int> first;  ///< one more than there are things
    std::vector<int> items;

    [[nodiscard]] std::size_t size() const { return first.size() - 1; }
    [[nodiscard]] const int* begin(std::size_t i) const { return items.data() + first[i]; }
    [[nodiscard]] const int* end(std::size_t i) const { return items.data() + first[i + 1]; }
};

/// Area of a triangle seen from above [m2].
[[nodiscard]] double plan_area(const TriangleMesh& mesh, std::size_t triangle);

/// Share of the plan that belongs to each node, a third of each triangle around it [m2].
[[nodiscard]] std::vector<double> plan_area_of_nodes(const TriangleMesh& mesh);

/// The nodes joined to each node by an edge, in rising order.
[[nodiscard]] Lists neighbours_of(const TriangleMesh& mesh);

/// The triangles around each node, in rising order.
[[nodiscard]] Lists triangles_around(const TriangleMesh& mesh);

/// True for each node on the border of the surface.
[[nodiscard]] std::vector<bool> border_of(const TriangleMesh& mesh);

/// A triangle that has turned over on the way from `drawn`, seen from above; -1 if none has.
[[nodiscard]] int folded_triangle(const TriangleMesh& drawn, const TriangleMesh& now);

/// \throws InputError film.mesh.empty, film.mesh.finite, film.mesh.node (an index that is none), film.mesh.unused (a
///   node without a triangle), film.mesh.fold (a triangle that stands upright, or turns the other way than the first
///   one), film.mesh.edge (an edge of more than two triangles), all at once
void require_sound(const TriangleMesh& mesh);

}  // namespace coverframe
