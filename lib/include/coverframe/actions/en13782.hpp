// SPDX-License-Identifier: BSD-3-Clause
// EN 13782, tents: the two things of it that concern snow on a cover. All of it is from memory, fairly sure; the text
// could not be read, and which of its editions (2005, 2015) the memory is of is not known. Its clauses are therefore
// not numbered here.
//
// The document also lets snow be left out where none falls, where the tent does not stand in the season, where its
// shape keeps snow off, or where heating started before the fall keeps the air under the whole cover above about 2 degC
// and the film is tensioned so that no pond can form. None of that is offered: an assessment without snow is not one.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::en13782 {

inline const Clause clause_snow{"EN 13782, edition as remembered", "snow loads"};
inline const Clause clause_factors{"EN 13782, edition as remembered", "partial factors"};

/// What somebody answers for.
enum class Clearing {
    none,           ///< nobody is bound to go out
    depth_to_8_cm,  ///< an organised watch keeps the snow at 8 cm or less everywhere, day and night, all season
};

[[nodiscard]] constexpr std::array<const char*, 2> choices_of(Clearing) { return {"none", "depth to 8 cm"}; }

/// Reduced snow load of a tent that is kept cleared. Never a default: it stands for a watch, not for a cover.
/// s = 0.2 kN/m2 over the whole cover
/// \param clearing  the condition that is claimed; without it the rule is refused
/// \return s, per horizontal area [Pa]
/// Limits: 8 cm are 0.2 kN/m2 at 2.5 kN/m3. The same 8 cm of wet snow are 0.32 kN/m2 (EN 1991-1-3, Annex E), and 36 cm
/// may fall fresh in a night of 12 hours before anybody comes. Clearing one side also makes a load of full against
/// nothing, which this does not cover. NBC of Canada forbids a lower load for clearing altogether.
/// Source: EN 13782; from memory, fairly sure. That reduced loads exist for heated tents is confirmed by a paper
/// (Kimbar 2015).
/// \throws InputError en13782.clearing.range (none claimed), en13782.clearing.unknown
[[nodiscard]] Pressure reduced_snow_load(Clearing clearing);

/// How many variable actions act at once.
enum class VariableActions { one, several };

[[nodiscard]] constexpr std::array<const char*, 2> choices_of(VariableActions) { return {"one", "several"}; }

/// Partial factors of the simplified combination.
struct PartialFactors {
    double permanent = 0;  ///< on self-weight [-]
    double variable = 0;   ///< on each variable action [-]
};

/// Simplified partial factors of tents.
/// 1.35 G + 1.5 Q with one variable action, 1.35 G + 1.35 (Q_1 + Q_2 + ...) with several
/// Limits: self-weight that makes it worse.
/// Source: EN 13782 and the former ENV 1993; from memory, fairly sure.
/// \throws InputError en13782.variable_actions.unknown
[[nodiscard]] constexpr PartialFactors simplified_factors(VariableActions actions) {
    switch (actions) {
        case VariableActions::one: return {1.35, 1.5};
        case VariableActions::several: return {1.35, 1.35};
    }
    argument::refuse({"en13782.variable_actions.unknown", "variable actions number", "-"},
                     static_cast<double>(actions), 0, 1);
}

}  // namespace coverframe::en13782
