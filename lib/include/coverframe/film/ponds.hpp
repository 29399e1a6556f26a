// SPDX-License-Identifier: BSD-3-Clause
// Water on a surface as it is: where it stands, how deep, how heavy, where it runs over, and what runs off.
//
// The surface holds its shape here; film sinks under the water, so whoever looks for the end of that fills the surface,
// finds its new shape, and fills again. Coherent SI: m, m2, m3.
//
// Water runs along the edges of the mesh to the steepest lower node, and leaves the surface at outlets. A hollow fills
// to the height of its lowest rim and then spills, into the next hollow or off. Volume and area of the water are exact
// for the triangles: with depths d_i at the corners of the part under water, the integral of the depth is a third of
// their sum times its area.
//
// Limits: water that lies still; no flow depth, no wind, no suction along the film, no leaks. Water on the way along an
// edge stays in the plane of the mesh, so a rim between two nodes is where a node is: use a mesh finer than the
// hollows.
//
// Sources: Barnes, Lehman and Mulla, Priority-flood (2014), for the levels of full hollows; Barnes, Callaghan and
// Wickert, Earth Surface Dynamics 9 (2021), for limited water (abstracts read).
#pragma once

#include <array>
#include <vector>

#include "coverframe/film/mesh.hpp"

namespace coverframe {

/// Water that stands in one hollow.
struct Pond {
    double level = 0;        ///< height of the water [m]
    double volume = 0;       ///< [m3]
    double area = 0;         ///< of the water seen from above [m2]
    double depth = 0;        ///< greatest [m]
    int deepest = 0;         ///< node where it is deepest
    int spill = 0;           ///< node over which it runs over, or would
    bool full = false;       ///< it stands to the spill
    std::vector<int> nodes;  ///< under water, in rising order of their numbers
};

struct Water {
    std::vector<Pond> ponds;    ///< the one with most water first
    std::vector<double> depth;  ///< of water over each node, 0 where dry [m]
    double run_off = 0;         ///< volume that left at outlets; infinite for unlimited water [m3]

    /// Of all ponds [m3].
    [[nodiscard]] double volume() const;
};

/// How much water there is.
struct Rain {
    enum class Kind { none, to_the_brim, depth };
    Kind kind = Kind::none;
    double depth = 0;  ///< that has fallen or melted, over the plan [m]
};

/// Every hollow filled to where it runs over, as by endless rain.
/// \param outlet  true for each node at which water leaves the surface
/// \throws InputError as require_sound(mesh); film.ponds.size; film.ponds.outlet if a part has no outlet
[[nodiscard]] Water water_to_the_brim(const TriangleMesh& mesh, const std::vector<bool>& outlet);

/// What stands after so much water fell on each node: rain depth times plan_area_of_nodes(), or melted snow.
/// \param fallen  [m3], not negative
/// \throws InputError as water_to_the_brim; film.ponds.fallen
[[nodiscard]] Water water_of(const TriangleMesh& mesh, const std::vector<bool>& outlet,
                             const std::vector<double>& fallen);

/// Water on a surface whose plan areas are those of `drawn`.
/// \throws as above
[[nodiscard]] Water water_after(const TriangleMesh& mesh, const TriangleMesh& drawn, const std::vector<bool>& outlet,
                                const Rain& rain);

/// Level of the water over each triangle, -infinity where it is dry.
[[nodiscard]] std::vector<double> levels_over(const TriangleMesh& mesh, const Water& water);

/// Level of full water over each node by priority flood, and the node's own height where it drains.
/// On any graph: places and neighbours.
[[nodiscard]] std::vector<double> levels_to_the_brim(const std::vector<std::array<double, 3>>& places,
                                                     const Lists& neighbours, const std::vector<bool>& outlet);

/// Edge of a pond seen from above: closed lines, but where the water reaches the border of the mesh they end there.
[[nodiscard]] std::vector<std::vector<std::array<double, 2>>> outline_of(const TriangleMesh& mesh, const Pond& pond);

/// Where a surface has a given height, seen from above: closed lines, but at the border of the mesh they end.
[[nodiscard]] std::vector<std::vector<std::array<double, 2>>> contour_of(const TriangleMesh& mesh, double height);

/// Water over one triangle whose surface stands at `level`.
struct WetPart {
    double area = 0;                ///< seen from above [m2]
    double volume = 0;              ///< [m3]
    std::array<double, 3> share{};  ///< of the volume for each corner, work-equivalent: the integral of N_i d [m3]
};
[[nodiscard]] WetPart wet_part(const TriangleMesh& mesh, std::size_t triangle, double level);

}  // namespace coverframe
