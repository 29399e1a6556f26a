// SPDX-License-Identifier: BSD-3-Clause
// An assessed plan once more with film as a surface: water, touch and slope under every arrangement of its snow.
//
// The film is looked at where it hangs lowest: shrunk to the least tension of the plan, straps at their softest, snow
// as it is, without factors, over the cover as the arrangement lays it (not the greatest load of a side all over, as
// the strips have it), and every hollow filled to the brim.
//
// Strength is judged by the checks of the assessment, whose film is strips. A surface shears, lies on the cross straps,
// and carries the water it holds: it brings more to some parts and less to others. What a part carries more than with
// strips, under the same arrangement of snow, is taken times the factor on snow and put on top of the most it carries
// in any situation; its worst check is raised in that ratio. Nothing is lowered. A raise of less than one per cent of
// its limit, or of what it was where that is more, is left out, unless it takes the check past its limit.
//
// Pull of the film. Where an upright's top or a strap's end presses through it, film of a finer mesh pulls without end:
// the greatest pull of one triangle says nothing. Read is the greatest mean over a disc of 0.15 m radius in plan, on
// one side of the ridge, of the greater principal pull per width. With columns 0.2, 0.1 and 0.05 m apart (rows to
// match), under 400 Pa, it is 598, 603 and 603 N/m on the open boat of the examples, where single triangles have 623,
// 647 and 1624. The size of the disc is a choice of this library; no source.
//
// Band. The forces of the film on the rail, piece by piece of some 0.3 m, go through the law of the check of the band
// (checks/band.hpp): friction, rub rail, belly straps, band as a cable; the whole pull counts, that along the rail with
// it. Rub rail and pretension do not grow with the snow, so the law is asked with factors, at every bound of film and
// straps: of the strips as they then hang, and of them with the factor times what the surface pulls more on each piece
// put on top of their pull there. Film that closes bow and stern, which strips leave out, pulls on the first and the
// last belly strap and on the band round the ends: against nothing of the strips, all of it is more. Film held along an
// edge without a fan does not pull on the band.
// With columns 0.2, 0.1 and 0.05 m apart, under 400 Pa, the greatest pull of a piece is 532, 550 and 548 N/m on the
// open boat, 807, 798 and 795 on the sloop, 812, 830 and 840 on the motor boat; of single nodes 569, 632 and 667, 854,
// 822 and 857, 869, 931 and 1065. In short fans and beside the corners of a transom pieces settle later: 71, 98 and 103
// N/m over the 0.15 m of the open boat's bow, 166, 176 and 198 beside the sloop's corner. The band
// of the sloop, balanced snow with factors, comes to 8.97, 8.93 and 8.92 kN. The length of the pieces is a choice of
// this library; no source.
#pragma once

#include <string>
#include <vector>

#include "coverframe/assess/assess.hpp"
#include "coverframe/film/surface_survey.hpp"

namespace coverframe {

/// How near the film comes to an obstacle, or how hard it rests on it.
struct SurfaceTouch {
    std::string obstacle;
    double least_gap = 0;       ///< [m]; infinite if no part of it lies under the film
    double needed = 0;          ///< clearance the plan asks for [m]
    double force = 0;           ///< in all [N]
    double greatest_force = 0;  ///< per length of edge [N/m]
};

/// One arrangement of snow.
struct SurfaceLook {
    std::string arrangement;  ///< "no snow" or its name
    SurfaceStatus status = SurfaceStatus::not_run;
    std::string message;
    double water = 0;                   ///< [m3]
    std::vector<PondFlag> ponds;        ///< most water first
    std::vector<SurfaceTouch> touches;  ///< one an obstacle
    SlopeShares slopes;                 ///< over half the shedding slope some snow leaves, over it all that can
    std::vector<RidgeDip> dips;
    std::vector<RidgeLift> lifts;
    std::string snaps;  ///< where something buckled or snapped over first (film/surface.hpp)

    [[nodiscard]] bool usable() const { return status == SurfaceStatus::converged; }
};

enum class Carried { push, bending_moment, tension, film_pull, leg_tension, band_tension, band_lift };

[[nodiscard]] const char* name_of(Carried carried);

/// Whether the perimeter band or a belly strap carries it, with factors.
[[nodiscard]] bool of_band(Carried carried);

/// What a part carries with film as strips and as a surface, without factors, under the arrangement in which the
/// surface exceeds the strips most; the band and its belly straps (of_band()) with factors, in such a situation.
struct PartForce {
    std::string part;           ///< "U2", "ridge, U1 to U2", "C1 port", "film, U1 to U2", as in the findings
    Carried carried = Carried::push;
    double strips = 0;          ///< [N], [N m], of film and lift [N/m]; of a cross strap with film on it
    double surface = 0;         ///< water with it, likewise
    std::string arrangement;    ///< or situation
    double without_ends = 0;    ///< of the band: what is left of `surface` without the film closing bow and stern

    [[nodiscard]] double excess() const { return surface > strips ? surface - strips : 0.0; }
};

/// With how much snow the film first touches an obstacle, under the arrangement in which it rests hardest.
struct TouchLoad {
    FirstTouch touch;
    std::string arrangement;
    double load = 0;  ///< greatest on the cover when it touches [Pa]
};

/// Holds pointers into the assessment's plan: keep the assessment alive.
struct SurfaceSurvey {
    CoverSurface surface;
    double shedding = 0;             ///< threshold of the document or the plan [rad]
    std::vector<SurfaceLook> looks;  ///< first without snow, then in the order of the arrangements
    std::vector<SupportOverStrap> supports;
    std::vector<PartForce> forces;    ///< of uprights, ridge bays, legs of cross straps, film bay by bay, band
    std::vector<TouchLoad> touched;   ///< one an obstacle the film comes to rest on
    int worst = 0;          ///< the look with most water, or the nearest to an obstacle
    SurfaceState pictured;  ///< its state
};

/// Every arrangement; some tenths of a second each.
/// \throws InputError as rig_surface
[[nodiscard]] SurfaceSurvey survey_surface(const Assessment& assessment, const SurfaceOptions& options = {});

/// What the survey says of the cover, worst first:
///   "surface.stands"     an arrangement under which there is no equilibrium, or only after something buckled or
///                        snapped over
///   "surface.water"      water in the look that holds most of it (demand) against a litre, which may stand (capacity;
///                        a choice of this library, no source)
///   "surface.clearance"  for each obstacle the clearance asked for (demand) and the least gap of all looks (capacity)
///   "surface.upright"    for each upright, "surface.ridge" for each bay of the ridge, "surface.strap" for each leg of
///                        a cross strap, "surface.film" for the film of each bay, "surface.band" for each belly strap
///                        and the band: its worst check of the assessment (ridge poles: bending; film: stress), raised
///                        as told above; none where the strips bring more, or hardly less
[[nodiscard]] std::vector<Finding> surface_findings(const Assessment& assessment, const SurfaceSurvey& survey);

/// Puts the findings of a survey among those of its assessment, and judges it by all of them.
void add_surface_findings(Assessment& assessment, const SurfaceSurvey& survey);

/// Snow of an arrangement over the triangles of a surface [Pa].
/// \param stations  of the assessment
[[nodiscard]] std::vector<double> snow_over(const CoverSurface& surface, const std::vector<CoverStation>& stations,
                                            const Arrangement& arrangement);

}  // namespace coverframe
