// SPDX-License-Identifier: BSD-3-Clause
// Poles of the support as straight pieces between points of support.
#pragma once

#include <string>
#include <vector>

#include "timber.hpp"

namespace coverframe::checks_detail {

/// A pole, or the part of one between two points, that is judged as one.
struct PoleSpan {
    std::string part;          ///< "ridge, U1 to U2", "pole P3"
    bool ridge = true;         ///< of the ridge line
    std::vector<int> members;  ///< of the frame
    Piece piece;
};

/// Every bay of the ridge line that is a pole, and every other pole of the frame. A node of the ridge line holds the
/// pole if the boat holds it up or anything but the ridge is fixed to it; a bay that ends at a node nothing holds is
/// part of a longer span, and its span is that one.
[[nodiscard]] std::vector<PoleSpan> pole_spans(const Plan& plan, const Layout& layout);

/// Timber of the ridge pole beyond a station of the ridge line: to the next splice or end, forward and aft. Both zero
/// if the ridge is spliced at the station itself.
struct Beyond {
    Length forward{};
    Length aft{};
};
[[nodiscard]] Beyond timber_beyond(const Layout& layout, int station);

}  // namespace coverframe::checks_detail
