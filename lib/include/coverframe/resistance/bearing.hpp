// SPDX-License-Identifier: BSD-3-Clause
// How hard the foot of an upright presses on what it stands on. What the deck or sole can take is the boat builder's
// figure; there is no general one.
#pragma once

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::bearing {

inline const Clause clause_foot_pad{"common practice, no source", "foot pad"};

/// An upright on a plywood pad.
struct Foot {
    Length post_length{};    ///< section of the upright, fore and aft [m], positive
    Length post_breadth{};   ///< section of the upright, athwart [m], positive
    Length pad_length{};     ///< pad, fore and aft [m], positive
    Length pad_breadth{};    ///< pad, athwart [m], positive
    Length pad_thickness{};  ///< pad [m], not negative; zero for none
};

/// Area over which the pad spreads the force of the post: 45 degrees through its thickness.
/// A = min(post length + 2 t, pad length) min(post breadth + 2 t, pad breadth)
/// \return [m2]
/// Limits: post in the middle of the pad, pad lying flat on something stiffer than itself. A larger pad of the same
/// thickness brings nothing more, which the result shows.
/// Source: common practice; the 45 degrees from memory.
/// \throws InputError bearing.post.range, bearing.pad.range, bearing.thickness.range
[[nodiscard]] constexpr Area foot_area(const Foot& foot) {
    const argument::Name post{"bearing.post.range", "side of the post", "m"};
    const argument::Name pad{"bearing.pad.range", "side of the pad", "m"};
    argument::positive(in_m(foot.post_length), post);
    argument::positive(in_m(foot.post_breadth), post);
    argument::positive(in_m(foot.pad_length), pad);
    argument::positive(in_m(foot.pad_breadth), pad);
    argument::not_negative(in_m(foot.pad_thickness), {"bearing.thickness.range", "thickness of the pad", "m"});
    const Length spread_length = foot.post_length + 2.0 * foot.pad_thickness;
    const Length spread_breadth = foot.post_breadth + 2.0 * foot.pad_thickness;
    const Length length = spread_length < foot.pad_length ? spread_length : foot.pad_length;
    const Length breadth = spread_breadth < foot.pad_breadth ? spread_breadth : foot.pad_breadth;
    return length * breadth;
}

/// Pressure under the pad.
/// p = N/A, A of `foot_area`
/// \param push  N, compression of the upright at its foot [N], not negative
/// \return [Pa]
/// Limits: as `foot_area`; force straight down through the middle.
/// Source: common practice, no source.
/// \throws InputError bearing.push.range and those of `foot_area`
[[nodiscard]] constexpr Pressure foot_pressure(Force push, const Foot& foot) {
    argument::not_negative(in_N(push), {"bearing.push.range", "push of the upright", "N"});
    return push / foot_area(foot);
}

}  // namespace coverframe::bearing
