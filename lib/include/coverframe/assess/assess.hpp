// SPDX-License-Identifier: BSD-3-Clause
// The whole job in one call: plan in, findings out.
#pragma once

#include <string>
#include <vector>

#include "coverframe/actions/arrangement.hpp"
#include "coverframe/assess/situation.hpp"
#include "coverframe/base/finding.hpp"
#include "coverframe/film/cover.hpp"
#include "coverframe/plan/plan.hpp"

namespace coverframe {

enum class Outcome {
    satisfied,       ///< every finding is satisfied or not applicable
    exceeded,        ///< at least one finding is exceeded
    no_equilibrium,  ///< in at least one situation the cover cannot stand; findings of the others are kept
};

[[nodiscard]] const char* name_of(Outcome outcome);

/// What came out of one situation.
struct SituationResult {
    Situation situation;
    SolveStatus status = SolveStatus::not_run;
    std::string message;           ///< what cannot stand, where and why; empty if converged
    double vertical_load = 0;      ///< [N]
    double vertical_reaction = 0;  ///< [N]; agrees with the load, or the situation is not usable
    double ridge_sag = 0;          ///< largest drop of the ridge line from its drawn place [m]
    double film_sag = 0;           ///< largest sag of a strip under its chord [m]
};

/// Smallest and largest value of a force in a part over all situations.
struct ForceRange {
    std::string part;              ///< "U2", "C1 port", "ridge, bow to U1"
    std::string quantity;          ///< "push", "tension", "bending moment", "reaction at the bow"
    std::string unit;              ///< "N", "N m"
    double least = 0;
    std::string least_in;          ///< situation
    double greatest = 0;
    std::string greatest_in;
};

/// The shape of the cover at one station, drawn and in the service situation in which the film comes down furthest.
struct StationShape {
    double x = 0;               ///< [m]
    double half_breadth = 0;    ///< [m]
    double rail_z = 0;          ///< [m]
    double ridge_drawn = 0;     ///< z [m]
    double ridge_loaded = 0;    ///< z [m]
    double ridge_aside = 0;     ///< y of the loaded ridge, to starboard [m]
    StripState port;            ///< loaded; span 0 where there is no strip
    StripState starboard;
};

struct AssessOptions {
    bool workings = true;       ///< findings carry the lines to redo them by hand
    Length station_spacing = Length::from_value(0.25);
};

struct Assessment {
    Plan plan;
    Outcome outcome = Outcome::no_equilibrium;
    std::vector<CoverStation> stations;     ///< where the arrangements are given
    std::vector<Arrangement> arrangements;
    std::vector<SituationResult> situations;
    std::vector<Finding> findings;          ///< worst first; one for each check and part
    std::vector<ForceRange> forces;
    std::vector<StationShape> shape;        ///< from bow to stern
    std::string shape_of;                   ///< the situation `shape` belongs to
    std::vector<std::string> failures;      ///< sentences for situations without equilibrium
    std::vector<std::string> assumptions;   ///< what was simplified or read into a document, a sentence each
};

/// \throws InputError with every problem of a plan that cannot be laid out
[[nodiscard]] Assessment assess(const Plan& plan, const AssessOptions& options = {});

/// 0 satisfied, 1 exceeded, 3 no equilibrium (2 is a plan that was refused).
[[nodiscard]] int exit_code(Outcome outcome);

}  // namespace coverframe
