// SPDX-License-Identifier: BSD-3-Clause
// The whole cover in one equilibrium: film as a surface, frame under it, what it touches, and the water that stands on
// it.
//
// Where strips (cover.hpp) look at one cut across the boat, the surface carries load along the boat too, lies on cross
// straps and obstacles, and shows where hollows are. Slower: a second instead of a millisecond.
//
// Stages, as in the yard
//   1 straps tensioned on the bare frame
//   2 film shrunk: the shape in which it pulls with the same tension in all directions, while the frame gives way
//   3 film of fixed free size in that shape: elastic from here on (membrane.hpp: pulls, wrinkles, goes slack)
//   4 snow by plan area, then water: hollows of the deformed film are found (ponds.hpp), filled, the shape is solved
//     again under the water, and so on until neither level nor volume moves
// All of it is one energy, film and frame together (lib/src/film/kernel/surface_system.hpp).
//
// What the film rests on
//   * obstacles: their upper edges, points every 25 mm, over which the film slides. They push straight up; an edge
//     without any friction would push across the film, and so down its slope a little
//   * cross straps: cut into pieces, which give way under the film. While it shrinks, film slides over them; from then
//     on the same point of the film stays over the same point of the strap, as friction makes it. Nothing but the push
//     up and down passes between them
// Such a bearing gives way by 0.01 mm for each newton, which stands for the softness of webbing and edge and is far
// below what anything here depends on.
//   * the ridge: film keeps to its points sideways and presses down on them. Where it would pull them up, as over an
//     upright that is lower than its neighbours, it lifts off. Film that may lift off rests on bearings that give way
//     by 0.001 mm for each newton
//
// Water. A pond is filled to where it runs over. If its volume keeps growing with each round, or no shape holds it, the
// status is `growing`: the film sinks faster than the water level, until it yields or something stops it.
//
// A short, steep panel such as a stern fan can be pulled until its upper edge leans over by millimetres, which a fine
// mesh shows. It sheds; water meets it in plan where it was drawn.
//
// Simplifications: pleats, welds and doors left out; film held at the rail line and along ends without a fan
// (cover_mesh.hpp); small strains, one modulus for the time under load; snow keeps its place and does not slide; water
// without flow. A tension field has no wrinkle depth: wrinkles that hold water are not seen. Feet with friction hold
// sideways whatever comes; whether they slip, strips tell (cover.hpp).
//
// Size of the mesh. Measured from 12 rows and 0.2 m to 48 rows and 0.07 m, under 0.8 kPa without obstacles:
//   open boat   ridge +0.8 %, cross straps -0.6 %, uprights +0.5 %, greatest sag +0.8 %
//   sloop       ridge -4.5 %, cross straps +5.9 %, uprights +0.3 %, greatest sag +1.0 %
// Where film lies on a cross strap its load peaks where the strap leaves the ridge, the more the finer the mesh, at the
// expense of the ridge node beside it; the upright under both carries their sum. Triangles as small as webbing is wide
// (some 50 mm) are fine enough for the pull of a strap.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "coverframe/film/cover_mesh.hpp"
#include "coverframe/film/locator.hpp"
#include "coverframe/film/membrane.hpp"
#include "coverframe/film/ponds.hpp"
#include "coverframe/frame/layout.hpp"
#include "coverframe/frame/solve.hpp"
#include "coverframe/plan/plan.hpp"

namespace coverframe {

struct SurfaceOptions {
    double spacing = 0.2;  ///< of the columns along the ridge, 0.02 to 1 [m]
    int rows = 12;         ///< of triangles from ridge to rail, 2 to 200
    Bound strap_stiffness = Bound::low;
    Bound film = Bound::high;       ///< tension the film is shrunk to, which decides its modulus (ageing.hpp)
    double force_tolerance = 1e-8;  ///< largest unbalanced force, relative to the largest force; over 0 to 1e-3
    int max_iterations = 200;       ///< Newton steps of one equilibrium, 1 or more
};

/// A point of an edge that the film must stay off, or may come to rest on.
struct EdgePoint {
    std::array<double, 3> place{};  ///< [m]
    double length = 0;              ///< of edge it stands for [m]
    double gap = 0;                 ///< height of the film over it; negative by the softness of the bearing; infinite
                                    ///< where no film is [m]
    double force = 0;               ///< of the film on it, per length of edge [N/m]
};

struct EdgeState {
    std::string name;               ///< of the obstacle
    std::vector<EdgePoint> points;  ///< those that lie under the film

    [[nodiscard]] double least_gap() const;
    [[nodiscard]] double force() const;           ///< in all [N]
    [[nodiscard]] double greatest_force() const;  ///< per length [N/m]
};

/// Where film has lifted off the ridge.
struct RidgeLift {
    double x = 0;    ///< of the ridge node [m]
    double gap = 0;  ///< height of the film over it [m]
};

enum class SurfaceStatus {
    not_run,
    converged,        ///< one equilibrium of film, frame and water: all fields valid
    frame_fails,      ///< the frame does not stand before there is any film on it
    loose,            ///< film or frame has no shape of its own somewhere
    growing,          ///< water sinks the film faster than it fills
    folded,           ///< film lies over itself where water stands, or by 1 % of its plan: water cannot be told
    iteration_limit,  ///< last state kept; do not check against it
};

[[nodiscard]] const char* name_of(SurfaceStatus status);

struct SurfaceState {
    SurfaceStatus status = SurfaceStatus::not_run;
    std::string message = "not run";
    std::string place;  ///< where, as place_on() says it, of a status that is no equilibrium; empty if not known
    std::string snaps;  ///< where something buckles or snaps over on the way: forces balanced there, but the next gust
                        ///< would have ended it, and this is the balance it leaves for; empty if nothing does
    TriangleMesh film;  ///< where it is
    std::vector<FilmForces> triangles;
    std::vector<double> displacement;                  ///< of the frame's nodes, 6 each [m, rad]
    std::vector<MemberForces> members;                 ///< of the frame
    std::vector<std::array<double, 3>> film_on_frame;  ///< force of the film on each frame node, cross straps apart [N]
    std::vector<std::array<double, 3>> film_on_boat;   ///< and where film nodes are held; one a film node [N]
    std::vector<EdgeState> obstacles;
    Water water;
    std::vector<RidgeLift> lifts;  ///< in the order of the ridge line
    double on_straps = 0;          ///< force of the film on cross straps [N]
    double vertical_load = 0;      ///< film, snow, water, frame [N]
    double vertical_reaction = 0;  ///< of the boat at frame, feet, rail and obstacles [N]
    double unbalanced = 0;         ///< [N]
    int iterations = 0;            ///< Newton steps in all
    int rounds = 0;                ///< of filling

    [[nodiscard]] bool usable() const { return status == SurfaceStatus::converged; }
};

/// A node of a cross strap, and the point of the film over it.
struct StrapRest {
    int frame_node = 0;
    Located film;
};

/// A plan with its film shrunk on. Holds pointers into the plan: keep the plan alive.
struct CoverSurface {
    Layout layout;         ///< frame with free lengths found
    CoverMesh cover;       ///< film as drawn
    TriangleMesh shape;    ///< in which it pulls evenly
    double tension = 0;    ///< of that pull [N/m]
    double stiffness = 0;  ///< E t [N/m]
    double poisson = 0;
    double strength = 0;     ///< pull per width at which the film is torn (film_limit()) [N/m]
    bool net = false;        ///< threads along and across the boat without shear instead of film, to compare with nets
    double film_weight = 0;  ///< per area of film [Pa]
    std::vector<EdgeState> obstacles;  ///< their points
    std::vector<StrapRest> on_straps;  ///< once the film has shrunk
    std::vector<int> loose;            ///< film nodes on the ridge line that may lift off it
    SurfaceOptions options;
    SurfaceState state;  ///< shrunk, no snow; usable() tells whether it stands
};

/// Stages 1 to 3.
/// \param film_tension  after shrinking, over 0 [N/m]
/// \throws InputError as lay_out and mesh_cover; film.surface.range; film.surface.obstacle for an edge that comes
///   through the drawn film; film.surface.stretch for film that must stretch by over 5 % to pull so hard
[[nodiscard]] CoverSurface rig_surface(const Plan& plan, double film_tension, const SurfaceOptions& options = {});

/// Stage 4.
/// \param snow  plan load over each triangle, already multiplied by its factor [Pa]
/// \param permanent_factor  on the weight of film and frame, not negative [-]
/// \throws InputError film.surface.loads (snow up to 1 MPa), film.surface.stretch; film.surface.range for a surface put
///   together or changed by hand that does not fit itself
[[nodiscard]] SurfaceState load_surface(const CoverSurface& surface, const std::vector<double>& snow,
                                        const Rain& rain = {}, double permanent_factor = 1.0);

/// Snow given by station and side as snow over triangles: straight between stations, the end values beyond them.
/// \param x  of the stations, one or more, rising [m]
/// \param port, starboard  one a station [Pa]
/// \return one a triangle [Pa]
/// \throws InputError film.surface.loads
[[nodiscard]] std::vector<double> snow_by_station(const CoverSurface& surface, const std::vector<double>& x,
                                                  const std::vector<double>& port,
                                                  const std::vector<double>& starboard);

}  // namespace coverframe
