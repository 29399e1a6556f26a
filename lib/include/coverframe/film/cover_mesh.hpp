// SPDX-License-Identifier: BSD-3-Clause
// The film of a plan as a mesh of triangles, as drawn: straight from the ridge line to the rail.
//
// Every station of the ridge line has a column of nodes down to the rail on each side, at the same x. Forward of the
// ridge's bow end and aft of its stern end the film closes as a fan from the ridge end to the stem and to the transom;
// there the rows have as many pieces as their length asks for, so that triangles stay of one size.
// Where the rail ends with the ridge there is no fan; the film's edge is then held along its drawn line, as by a panel.
//
// Size of the triangles. A strip of film between two lines sags as a parabola; n straight pieces miss it by 1/n^2 of
// the sag: with 12 rows by less than 1 %, the length along it by less still. Along the boat the load varies over a bay.
// The spacing of the stations (LayoutOptions) goes with the number of rows: half-girth over rows keeps triangles even.
//
// Left out: pleats and welds, the film's turn over the rail down to the band (held at the rail line), doors and vents.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "coverframe/film/mesh.hpp"
#include "coverframe/frame/layout.hpp"
#include "coverframe/plan/plan.hpp"

namespace coverframe {

struct CoverMesh {
    TriangleMesh mesh;
    std::vector<int> frame_node;  ///< of each film node on the ridge line the frame node it lies on; -1 elsewhere
    std::vector<bool> held;       ///< film nodes at the rail, and along an edge without a fan
    std::vector<bool> outlet;     ///< film nodes at which water runs off: the rail, the transom, an edge without a fan
    /// Film nodes along the rail, in their order round the boat: one line from an end without a fan to the next; a line
    /// all round begins and ends with the same node.
    std::vector<std::vector<int>> rails;
};

/// \param rows  triangles' rows from ridge to rail, 2 to 200
/// \throws InputError film.mesh.rows; film.mesh.rail if no part of the ridge line lies within a rail of some breadth;
///   film.mesh.fold as require_sound for lines that cross
[[nodiscard]] CoverMesh mesh_cover(const Plan& plan, const Layout& layout, int rows = 12);

}  // namespace coverframe
