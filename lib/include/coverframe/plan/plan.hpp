// SPDX-License-Identifier: BSD-3-Clause
// A cover plan: what somebody measured or decided about one boat for one winter. Plain data; plan/read.hpp brings it in
// from a file, plan/validate.hpp says what cannot stand.
#pragma once

#include <string>
#include <vector>

#include "coverframe/plan/basis.hpp"
#include "coverframe/plan/boat.hpp"
#include "coverframe/plan/film.hpp"
#include "coverframe/plan/site.hpp"
#include "coverframe/plan/support.hpp"

namespace coverframe {

/// Which units a report shows first; the others stand beside.
enum class UnitsShown { si, us };

struct Plan {
    std::string title;
    std::string note;                 ///< free text; a demo plan says here that it is invented
    UnitsShown units_shown = UnitsShown::si;
    Site site;
    Basis basis;
    Boat boat;
    std::vector<StrapKind> straps;
    Support support;
    Film film;

    bool operator==(const Plan&) const = default;
};

}  // namespace coverframe
