// SPDX-License-Identifier: BSD-3-Clause
// Strips under the conditions of a survey, to tell what a surface brings to the parts beyond them.
#pragma once

#include <vector>

#include "assess/solved.hpp"
#include "coverframe/assess/surface.hpp"
#include "coverframe/checks/check.hpp"
#include "coverframe/film/cover.hpp"

namespace coverframe::assess_detail {

class StripCover {
public:
    /// Keeps the assessment. Straps at their softest, film at its least tension; of the band, at all their bounds.
    explicit StripCover(const Assessment& assessment);

    /// Puts what each part carries under an arrangement among `forces`, where it exceeds the strips more than what is
    /// there. Nothing is put where the strips do not stand.
    /// \param state  of the surface under the same arrangement
    void compare(const Arrangement& arrangement, const CoverSurface& surface, const SurfaceState& state,
                 std::vector<PartForce>& forces) const;

private:
    [[nodiscard]] StripLoads snow_of(const Arrangement& arrangement) const;

    [[nodiscard]] std::vector<PartForce> band_under(const Arrangement& arrangement, const CheckInput& strips,
                                                    const CoverSurface& surface, const SurfaceState& state) const;

    const Assessment& assessment_;
    Rigging rigging_;
};

}  // namespace coverframe::assess_detail
