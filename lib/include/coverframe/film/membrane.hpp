// SPDX-License-Identifier: BSD-3-Clause
// Film as a surface: a mesh of flat triangles that pull, wrinkle and go slack, in equilibrium under loads at its nodes.
//
// The film is elastic and isotropic, thin (no bending), with small strains; its stiffness is E t per width. It cannot
// push: where it would, it wrinkles and pulls in one direction only, or is slack. The energy of a triangle in each of
// these states is written out in lib/src/film/kernel/membrane.hpp. Equilibrium is the least of the energy of all
// triangles less the work of the loads, found as for a frame (frame/solve.hpp): Newton with the exact tangent, a line
// search on the energy, and a last look at the tangent without any shift.
//
// A constant-strain triangle in a flat, taut sheet errs by the square of its size in sag and tension, measured in
// tests/film/membrane_test.cpp.
//
// Limits: strains under 3 to 5 % (polyethylene yields and flows beyond); no creep (put in the modulus of the time under
// load); loads keep their direction and size. A sheet that hangs slack with nothing on it has no shape; this is said.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "coverframe/film/mesh.hpp"
#include "coverframe/film/ponds.hpp"

namespace coverframe {

struct Membrane {
    TriangleMesh mesh;       ///< as drawn
    std::vector<bool> held;  ///< one a node: it does not move
    double stiffness = 0;    ///< E t [N/m]
    double poisson = 0;      ///< nu [-], 0 to under 0.5
    /// How much each triangle is stretched in the drawn places over its free shape; one number a triangle, or one for
    /// all: 1.01 is a film shrunk by 1 %.
    std::vector<double> stretch{1.0};
};

/// How much film is stretched that pulls with `tension` per present width in all directions [-]; it has to be under
/// stiffness/(1 - poisson).
[[nodiscard]] double stretch_for_tension(double stiffness, double poisson, double tension);

enum class FilmStretch { taut, wrinkled, slack };

/// What one triangle carries.
struct FilmForces {
    FilmStretch stretch = FilmStretch::slack;
    double first = 0;                   ///< greatest pull per width [N/m]
    double second = 0;                  ///< pull across it [N/m], 0 where wrinkled
    std::array<double, 3> direction{};  ///< of the greatest pull
};

enum class MembraneStatus {
    not_run,
    converged,        ///< forces balance in a stable shape: all fields valid
    loose,            ///< part of the film has no shape of its own; `message` names the node
    iteration_limit,  ///< last state kept; do not check against it
};

[[nodiscard]] const char* name_of(MembraneStatus status);

struct MembraneState {
    MembraneStatus status = MembraneStatus::not_run;
    std::string message = "not run";
    std::vector<std::array<double, 3>> places;  ///< of the nodes [m]
    std::vector<FilmForces> triangles;
    std::vector<std::array<double, 3>> reaction;  ///< of what holds the nodes, on the film [N]; 0 at free nodes
    double unbalanced = 0;                        ///< largest force left over at a free node [N]
    double energy = 0;                            ///< [N m]
    int iterations = 0;

    [[nodiscard]] bool usable() const { return status == MembraneStatus::converged; }
};

/// Film over a mesh, held along its border, that pulls with `tension` in all directions as drawn.
/// \param stiffness  E t [N/m]
/// \param tension    [N/m]
[[nodiscard]] Membrane stretched_membrane(TriangleMesh mesh, double stiffness, double poisson, double tension);

struct MembraneOptions {
    int max_iterations = 300;
    double force_tolerance = 1e-9;  ///< largest unbalanced force, relative to the largest force of a triangle or load
};

/// Equilibrium under dead forces at the nodes.
/// \param forces  one a node [N]
/// \param start   places to begin from; empty: as drawn
/// \throws InputError as require_sound(mesh), film.membrane.size, film.membrane.range (not positive, not finite)
[[nodiscard]] MembraneState solve_membrane(const Membrane& membrane, const std::vector<std::array<double, 3>>& forces,
                                           const MembraneOptions& options = {},
                                           const std::vector<std::array<double, 3>>& start = {});

/// A membrane with the water that stands on it.
struct FilledMembrane {
    MembraneState state;
    Water water;
    bool settled = false;  ///< false: the water grows as long as there is any, or no shape holds it
    int rounds = 0;
};

/// Equilibrium under dead forces and water, whose hollows are filled again until level and shape settle.
/// \param outlet  nodes at which water leaves
/// \throws as solve_membrane and water_to_the_brim
[[nodiscard]] FilledMembrane fill_membrane(const Membrane& membrane, const std::vector<std::array<double, 3>>& forces,
                                           const std::vector<bool>& outlet, const Rain& rain,
                                           const MembraneOptions& options = {});

/// A load per plan area as forces at the nodes: a third of each triangle's to each corner, downwards.
/// \param load  one a triangle, or one for all [Pa]
/// \throws InputError as require_sound(mesh), film.membrane.size
[[nodiscard]] std::vector<std::array<double, 3>> forces_of_plan_load(const TriangleMesh& mesh,
                                                                     const std::vector<double>& load);

/// The shape that film of the same pull in all directions takes between its held nodes, without load: least area.
struct FoundShape {
    bool found = false;
    std::string message;  ///< why not
    TriangleMesh mesh;
    int rounds = 0;
};

/// Each round gives every triangle the constant stress of its present shape and solves for the places in balance, which
/// is linear (energy of Dirichlet; Pinkall and Polthier, Computing discrete minimal surfaces and their conjugates,
/// 1993, from memory; it never grows the area). It ends with a round that takes away no more than `tolerance` of the
/// area: nodes that still slide within the surface change nothing. \throws InputError as solve_membrane; a shape that
/// closes up on itself is `found == false`
[[nodiscard]] FoundShape find_shape(const TriangleMesh& mesh, const std::vector<bool>& held, double tolerance = 1e-9,
                                    int max_rounds = 2000);

}  // namespace coverframe
