// SPDX-License-Identifier: BSD-3-Clause
// What a crew wants to know of a solved surface: where water stands, what it reaches, where the film is too flat, where
// the ridge dips, and with how much snow the film first touches something.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "coverframe/film/surface.hpp"

namespace coverframe {

/// "between U2 and U3, port, 0.4 m aft of the windshield": bay, side, and the nearest obstacle if one is within 2 m.
[[nodiscard]] std::string place_on(const CoverSurface& surface, double x, double y);

/// A hollow that holds water.
struct PondFlag {
    std::string place;                 ///< of its deepest point
    double x = 0;                      ///< [m]
    double y = 0;                      ///< [m]
    double volume = 0;                 ///< [m3]
    double weight = 0;                 ///< [N]
    double depth = 0;                  ///< [m]
    double area = 0;                   ///< [m2]
    std::string spills;                ///< place where it runs over
    std::vector<std::string> reaches;  ///< obstacles under the water
    std::vector<std::vector<std::array<double, 2>>> outline;

    /// "hollow between U2 and U3, port, 0.4 m aft of the windshield, 23 L, 0.23 kN, reaches the windshield"
    [[nodiscard]] std::string sentence() const;
};

/// Every pond of at least `least` [m3], most water first. A tenth of a litre is what facets of the mesh may hold.
[[nodiscard]] std::vector<PondFlag> pond_flags(const CoverSurface& surface, const SurfaceState& state,
                                               double least = 1e-4);

/// How the loaded film slopes, by plan area. Where film is steeper than `sheds` snow slides off, under `holds` all of
/// it stays, between the two some.
struct SlopeShares {
    double sheds = 0;  ///< shares of the plan area [-]
    double partly = 0;
    double holds = 0;
    double least = 0;                  ///< least slope of a triangle [rad]
    std::array<double, 2> least_at{};  ///< x, y [m]
};
/// \throws InputError film.survey.slope unless 0 <= holds <= sheds <= a right angle
[[nodiscard]] SlopeShares slope_shares(const SurfaceState& state, double holds, double sheds);

/// Slope of each triangle against the level [rad].
[[nodiscard]] std::vector<double> slopes_of(const TriangleMesh& film);

/// A place where the ridge line, sagging under the film, lies lower than on both sides of it.
struct RidgeDip {
    std::string bay;   ///< "U1 to U2"
    double x = 0;      ///< [m]
    double depth = 0;  ///< under the lower of the two high points beside it [m]
};
[[nodiscard]] std::vector<RidgeDip> ridge_dips(const CoverSurface& surface, const SurfaceState& state,
                                               double least = 0.001);

/// Fall of the ridge line between neighbouring points of support as loaded, positive going aft downwards.
struct RidgeFall {
    std::string bay;
    double slope = 0;  ///< of the chord [-]
};
[[nodiscard]] std::vector<RidgeFall> ridge_falls(const CoverSurface& surface, const SurfaceState& state);

/// How far a support behind an obstacle stands over where a tight strap would lie that runs over the obstacle's highest
/// point to the stern end of the ridge. Behind a windshield some 250 mm (10 in) is usual (common practice, no source).
struct SupportOverStrap {
    std::string obstacle;
    std::string upright;
    double height = 0;  ///< of the ridge line over the strap, negative under it [m]
};
/// The first upright aft of each obstacle over the centreline; none for obstacles without one.
[[nodiscard]] std::vector<SupportOverStrap> supports_over_straps(const CoverSurface& surface);

/// With how much of a snow load film first touches an obstacle.
struct FirstTouch {
    std::string obstacle;
    std::optional<double> share;  ///< of the load; empty if it does not touch at `most` times the load
    std::string place;            ///< where
};
/// One entry an obstacle. Without water. Bisection to 1 % of `most` times the load; a share at which no equilibrium is
/// found counts as touched.
/// \param most  greatest share looked at, over 0
/// \throws InputError film.survey.share; as load_surface
[[nodiscard]] std::vector<FirstTouch> first_touches(const CoverSurface& surface, const std::vector<double>& snow,
                                                    double most = 1.0);

/// How much of a snow load film and frame hold, and what ends it.
struct FilmLimit {
    enum class End {
        none,      ///< they hold at `most` times the load
        torn,      ///< in equilibrium, but a triangle pulls as hard as the film's strength
        no_shape,  ///< no equilibrium: `status` says why
    };
    End end = End::none;
    SurfaceStatus status = SurfaceStatus::converged;  ///< at `share`
    double held = 0;              ///< the greatest share of the load seen to hold; 0 if not even no snow does
    std::optional<double> share;  ///< the least one seen not to; empty if they hold
    std::string place;            ///< where it gives out there; empty if that is not known
    std::string sentence;         ///< "film between U1 and U2, port, tears at 0.83 times the load"
};
/// Bisection to 1 % of `most` times the load. What holds at one share is taken to hold at lesser ones.
///
/// The pull is that of single triangles: where film meets an obstacle or the end of a fan it grows as the mesh gets
/// finer, so a torn place there is a warning to look at, not a strength. "film.stress" judges the film by strips.
/// \param strength  pull per width at which the film is torn, over 0 [N/m]: CoverSurface::strength, or less
/// \param most      greatest share looked at, over 0
/// \throws InputError film.survey.share, film.survey.strength; as load_surface
[[nodiscard]] FilmLimit film_limit(const CoverSurface& surface, const std::vector<double>& snow, double strength,
                                   const Rain& rain = {}, double most = 1.0);

}  // namespace coverframe
