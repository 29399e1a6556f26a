// SPDX-License-Identifier: BSD-3-Clause
// The two places where a ground load meets what belongs to it: the rules of its document, and the factor on snow.
// Whoever goes through here cannot mix two documents.
#pragma once

#include "coverframe/plan/basis.hpp"
#include "coverframe/plan/site.hpp"

namespace coverframe {

/// The load, for the rules of a document.
/// \throws InputError ground.document.mixed if it belongs to another document or edition
[[nodiscard]] Pressure load_for(const GroundSnow& ground, SnowDocument rules);

/// A snow load that came from this ground load, times the factor on snow for the strength of members.
/// \param factor  of `snow_factor_range`
/// \throws InputError ground.factor.mixed if the factor does not belong to the ground load: 1.6 to a load of ASCE 7-22,
///   which is at strength level already, or 1.0 to a 50-year load of ASCE 7-16
[[nodiscard]] Pressure factored(const GroundSnow& ground, Pressure snow_load, double factor);

}  // namespace coverframe
