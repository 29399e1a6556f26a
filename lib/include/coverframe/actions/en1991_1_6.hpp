// SPDX-License-Identifier: BSD-3-Clause
// EN 1991-1-6:2005, actions during execution: return period of snow by how long a structure stands.
//
// The table is made for works that stand once. A film is used once; a frame that is set up again every winter is not:
// the chance that the 10-year load is exceeded in ten winters is 65 %, 1 - (1 - 1/n)^N, and EN 1990 does not count
// parts that are taken down for re-use as temporary (from memory, sure). So the caller has to say which it is.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::en1991_1_6 {

inline const Clause clause_3_1{"EN 1991-1-6:2005", "3.1, Table 3.1"};

/// How long the structure stands.
enum class Duration {
    up_to_3_days,
    up_to_3_months,
    up_to_1_year,  ///< one winter of four to seven months falls here
    longer,
};

[[nodiscard]] constexpr std::array<const char*, 4> choices_of(Duration) {
    return {"up to 3 days", "up to 3 months", "up to 1 year", "longer"};
}

/// Whether it is set up again.
enum class Erection {
    once,   ///< the film, or a frame that is scrapped after this winter
    again,  ///< a frame that comes back every winter
};

[[nodiscard]] constexpr std::array<const char*, 2> choices_of(Erection) { return {"once", "again"}; }

/// Return period of climatic actions.
/// n = 2, 5, 10, 50 years for up to 3 days, up to 3 months, up to 1 year, longer
/// \param erection  what is set up again is refused any duration but `longer`
/// \return n [years]. Annex D of EN 1991-1-3 takes 5 years and more, so it has no load for the first row.
/// Limits: recommended values. A stay within one winter does not make the annual maximum smaller unless the cover is
/// struck before the month of the greatest load: do not scale by months.
/// Source: EN 1991-1-6:2005, 3.1, Table 3.1; from memory, sure. The refusal: EN 1990:2002, Table 2.1, note on parts for
/// re-use, from memory, sure.
/// \throws InputError en1991_1_6.duration.range (set up again, but not `longer`), en1991_1_6.duration.unknown,
///   en1991_1_6.erection.unknown
[[nodiscard]] double return_period_3_1(Duration duration, Erection erection);

}  // namespace coverframe::en1991_1_6
