// SPDX-License-Identifier: BSD-3-Clause
// What the setting of straps asks of a run.
#pragma once

#include <algorithm>
#include <vector>

#include "coverframe/frame/pretension.hpp"

namespace coverframe {

inline bool is_strap(const Frame& frame, int member) {
    return member >= 0 && static_cast<std::size_t>(member) < frame.members.size() &&
           frame.members[static_cast<std::size_t>(member)].kind == MemberKind::strap;
}

/// Whether the run has members, and all of them are straps of the frame.
inline bool made_of_straps(const Frame& frame, const StrapRun& run) {
    return !run.members.empty() && std::ranges::all_of(run.members, [&](int m) { return is_strap(frame, m); });
}

/// \param tensions_count  whether the tensions of the runs play a part
/// \throws InputError frame.run for a run that is not made of straps, or whose tension is no number; frame.run.shared
/// for
///   a member of two runs; frame.strap.push for a tension under zero
void require_runs(const Frame& frame, const std::vector<StrapRun>& runs, bool tensions_count);

/// [m]
inline double drawn_length(const Frame& frame, const StrapRun& run) {
    double length = 0;
    for (const int m : run.members) length += drawn_length(frame, frame.members[static_cast<std::size_t>(m)]);
    return length;
}

/// Mean along the drawn run; members that are slack count with no tension [N].
inline double mean_tension(const Frame& frame, const StrapRun& run, const std::vector<MemberForces>& forces) {
    double sum = 0;
    for (const int m : run.members) {
        const auto i = static_cast<std::size_t>(m);
        sum += drawn_length(frame, frame.members[i]) * forces[i].axial;
    }
    return sum / drawn_length(frame, run);
}

}  // namespace coverframe
