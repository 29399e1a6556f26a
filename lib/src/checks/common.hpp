// SPDX-License-Identifier: BSD-3-Clause
// Small things every check needs.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "coverframe/checks/check.hpp"

namespace coverframe::checks_detail {

[[nodiscard]] constexpr std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// "ridge, U1 to U2".
[[nodiscard]] std::string bay_part(std::string_view what, const RidgeBay& bay);

/// A part at the beginning of a sentence: "ridge, U1 to U2" -> "Ridge, U1 to U2,".
[[nodiscard]] std::string opening(std::string_view part);

/// A finding that the rule does not cover, with the reason.
[[nodiscard]] Finding not_applicable(std::string check, std::string part, Clause clause, const CheckInput& input,
                                     std::string sentence);

/// A line of a working; plain arithmetic without a clause.
[[nodiscard]] Term term(std::string symbol, double value, std::string unit, std::string formula, Clause clause = {});

/// Whether two values are the same but for what arithmetic leaves over.
[[nodiscard]] constexpr bool alike(double a, double b) {
    const double difference = a > b ? a - b : b - a;
    const double size = (a > 0.0 ? a : -a) + (b > 0.0 ? b : -b);
    return difference <= 1e-6 * size;
}

/// Indices of the strips that hang on the stations of a bay, both ends included, in the order of Cover::strips.
[[nodiscard]] std::vector<int> strips_of(const Cover& cover, const RidgeBay& bay);

/// Indices of the strips of one side, from bow to stern.
[[nodiscard]] std::vector<int> strips_of(const Cover& cover, Side side);

/// Whole vertical load on a strip, from what it pulls on its ends, down positive [N].
[[nodiscard]] double load_of(const StripState& strip);

/// x of a strip's station as drawn [m].
[[nodiscard]] double x_of(const Cover& cover, const CoverStrip& strip);

/// Length of a bay along the drawn ridge line [m].
[[nodiscard]] double length_of(const Frame& frame, const RidgeBay& bay);

/// x at the middle of a member as drawn [m].
[[nodiscard]] double middle_x(const Frame& frame, const FrameMember& member);

/// Tension of a shallow elastic cable under a load W spread along it: the positive root of
/// T^3 - T0 T^2 - EA W^2/24 = 0. T0 is the tension without the load; negative where there is slack to take up first.
/// Without load max(T0, 0).
/// Source: Irvine, Cable Structures (1981), from memory.
/// \param initial  T0 [N]   \param stiffness  EA [N], positive   \param load  W, across the chord [N]   \return T [N]
[[nodiscard]] double cable_tension(double initial, double stiffness, double load);

/// The points of an outline and, between them, points at most 25 mm apart.
[[nodiscard]] std::vector<Point> sampled(std::span<const Point> outline);

}  // namespace coverframe::checks_detail
