// SPDX-License-Identifier: BSD-3-Clause
// Film and frame together: strips from the ridge to both rails, coupled with the frame until nothing moves.
//
// Each station of the ridge line carries a strip to port and one to starboard, as wide as its share of the ridge. The
// stages are those of the yard: the straps are tensioned on the bare frame; the film is shrunk, which sets its tension
// with the frame already giving way under it; snow comes last, on free lengths that no longer change.
//
// Coupling: the pull of the strips and their stiffness at the present place of the ridge are given to the frame as
// elastic supports, the frame is solved, and the strips are evaluated at the new place, until the pulls agree with the
// place to the tolerance. At the end the true pulls balance in the frame.
//
// Cross straps. Film that lies on a leg is held up by it between ridge and rail (film_on_strap.hpp). That is looked at
// in a second equilibrium, from the first: each leg carries what the film brings to it where it is, hangs under it
// by a parabola, and pulls the top of its upright aside and down; strips near it carry that much less; strips, frame
// and legs until nothing moves. Tops do not move along the boat in it: the film that lies over them holds them there.
// Legs are read from the second equilibrium (CoverState::legs), everything else from the first, in which the strips
// carry all.
// Under a ridge that is a strap, legs come out too severe: on the sloop of the examples under 500 Pa, against the film
// as a surface in triangles of 0.25 m, 1.25 to 1.35 times as hard with snow on both sides of stiff straps, 1.4 to 1.7
// times with snow on the leg's side alone, and 1.0 to 1.1 times the other side's. On rare covers of that kind with film
// of low tension (60 N/m and less) the search finds no second equilibrium; CoverState::no_legs says so.
//
// Simplifications: strips do not share load along the boat but for what they bring to cross straps; the film closing
// bow and stern is left out; at the rail the strip is held; what of its tension reaches the band is for the check of
// the band (checks/band.hpp).
#pragma once

#include <string>
#include <vector>

#include "coverframe/film/film_on_strap.hpp"
#include "coverframe/film/strip.hpp"
#include "coverframe/frame/layout.hpp"
#include "coverframe/frame/solve.hpp"
#include "coverframe/plan/plan.hpp"

namespace coverframe {

enum class Side { port, starboard };

[[nodiscard]] constexpr const char* name_of(Side side) { return side == Side::port ? "port" : "starboard"; }

/// A strip of the cover: where it hangs and how wide it is.
struct CoverStrip {
    int station = 0;  ///< index into Layout::stations
    int node = 0;     ///< of the frame
    Side side = Side::port;
    double width = 0;              ///< along the boat [m]
    std::array<double, 3> rail{};  ///< its lower end [m]
    Strip strip;                   ///< load is set per situation
};

/// A plan laid out with its film, before any tension.
struct Cover {
    Layout layout;
    std::vector<CoverStrip> strips;
    double film_weight = 0;     ///< per area of film [Pa]
    double film_stiffness = 0;  ///< E t [N/m]
    double film_poisson = 0;    ///< nu [-]
    double film_tension = 0;    ///< it was shrunk to, by rig() [N/m]
};

/// Snow on the cover: one plan load for each strip of Cover::strips [Pa].
using StripLoads = std::vector<double>;

/// A leg of a cross strap with the film lying on it.
struct LegUnderFilm {
    int member = 0;          ///< of the frame
    StrapUnderFilm carries;  ///< in the second equilibrium
    FilmOnStrap film;
    double cosine = 1;  ///< of the slope of its chord
    double load = 0;    ///< W, vertical, in all [N]
    double end = 0;     ///< greatest tension, at one of its ends: sqrt[(T + W sin/2)^2 + (W cos/2)^2] [N]
};

struct CoverState {
    Solution frame;                  ///< equilibrium of the frame with the film's pull on it
    std::vector<StripState> strips;  ///< one a strip of Cover::strips
    FrameLoads frame_loads;          ///< what acted on the frame, film included, for lateral_hold()
    double vertical_load = 0;        ///< everything that presses down: snow, film, frame [N]
    double vertical_reaction = 0;    ///< everything that holds it up: boat at nodes and rail [N]
    int rounds = 0;
    std::vector<LegUnderFilm> legs;  ///< one a member of each of Layout::cross_straps, in their order
    std::string no_legs;             ///< why there is no second equilibrium; `legs` is empty then

    [[nodiscard]] bool usable() const { return frame.usable(); }
};

/// \param film  tension the film will have, which decides its modulus (ageing.hpp)
/// \throws InputError as lay_out
[[nodiscard]] Cover build_cover(const Plan& plan, const LayoutOptions& options = {}, Bound film = Bound::high);

struct Rigged {
    Cover cover;       ///< with all free lengths found
    CoverState state;  ///< straps tensioned and film shrunk, no snow; usable() tells whether that stands
};

/// Tensions the straps on the bare frame, then shrinks the film until each strip pulls with `film_tension` [N/m] along
/// its chord while the frame gives way under it. Self-weight as it is, without factors: this is what the yard does.
[[nodiscard]] Rigged rig(const Cover& cover, double film_tension, const SolveOptions& options = {});

/// Equilibrium of a rigged cover under snow. If it is not found in one go, the snow is laid on in ten steps; a cover
/// that gives way says in `frame.message` with how much of the snow.
/// \param snow  plan load on each strip, already multiplied by its factor [Pa]
/// \throws InputError "film.loads" if the size is wrong or a value is negative or not finite
[[nodiscard]] CoverState load_cover(const Cover& rigged, const StripLoads& snow, double permanent_factor = 1.0,
                                    const SolveOptions& options = {});

/// Present place of a frame node [m].
[[nodiscard]] std::array<double, 3> place_of(const Frame& frame, const Solution& solution, int node);

}  // namespace coverframe
