// SPDX-License-Identifier: BSD-3-Clause
// EN 1991-1-3:2003, 5.3.5: a cylindrical cover, such as film over hoops.
//
//                 ___h___          b    span from eave to eave
//              /           \       h    rise of the crown over the eaves
//            /               \     l_s  plan width over which the tangent is no steeper than 60 degrees, in the middle
//           |<------ b ------>|    x    level, from the left eave
//
// (i)  undrifted: 0.8 over l_s
// (ii) drifted: two triangles, each over half of l_s with its peak in the middle of that half; one peak is the
//      coefficient of the cylinder, the other half of it
// Outside l_s there is no snow.
//
// No published number was found to compare with: nothing but the text as remembered stands behind this header.
#pragma once

#include <algorithm>

#include "coverframe/actions/en1991_1_3.hpp"

namespace coverframe::en1991_1_3 {

inline const Clause clause_5_3_5{"EN 1991-1-3:2003", "5.3.5"};

/// Span of a cylinder.   \throws InputError en1991_1_3.span.range
constexpr double span_in_m(Length span) {
    return argument::within(in_m(span), argument::smallest, limit::width_high,
                            {"en1991_1_3.span.range", "span of the cylinder b", "m"});
}

/// Shape coefficient of a cylinder.
/// mu = 0.2 + 10 h/b, at most 2.0
/// \param rise  h [m], 0 to b
/// \param span  b [m], up to 1000 m
/// \return mu, the higher peak of the drifted arrangement [-], 0.2 to 2.0
/// Limits: the upper limit 2.0 is the recommended one. On a flat arc it is less than the 0.8 of the undrifted
/// arrangement.
/// Source: EN 1991-1-3:2003, 5.3.5(1), Eq. 5.4 and 5.5; from memory, sure.
/// \throws InputError en1991_1_3.span.range, en1991_1_3.rise.range
[[nodiscard]] constexpr double cylinder_coefficient_5_3_5(Length rise, Length span) {
    const double b = span_in_m(span);
    const double h = argument::within(in_m(rise), 0.0, b, {"en1991_1_3.rise.range", "rise of the cylinder h", "m"});
    return std::min(0.2 + 10.0 * h / b, 2.0);
}

/// Loaded width of a circular arc.
/// l_s = b up to h/b = tan(30 deg)/2; above, l_s = 2 R sin(60 deg) with R = (b2/4 + h2)/(2 h)
/// \param rise  h [m], 0 to b/2, which is a semicircle
/// \param span  b [m], up to 1000 m
/// \return l_s, the plan width over which the tangent is no steeper than 60 deg [m]
/// Limits: circular arcs; of any other curve l_s is measured.
/// Source: geometry of the circle; that snow stays up to 60 deg EN 1991-1-3:2003, 5.3.5(1), from memory, sure.
/// \throws InputError en1991_1_3.span.range, en1991_1_3.rise.range
[[nodiscard]] constexpr Length loaded_width_5_3_5(Length rise, Length span) {
    const double b = span_in_m(span);
    const double h =
        argument::within(in_m(rise), 0.0, 0.5 * b, {"en1991_1_3.rise.range", "rise of a circular arc h", "m"});
    constexpr double sin_60 = 0.86602540378443865;
    constexpr double half_tan_30 = 0.28867513459481288;
    if (h <= half_tan_30 * b) return span;
    return from_m(std::min(sin_60 * (0.25 * b * b + h * h) / h, b));
}

/// A cylindrical cover.
struct Cylinder {
    Length span{};           ///< b [m], up to 1000 m
    Length loaded_width{};   ///< l_s [m], more than 0, to b; `loaded_width_5_3_5` for a circular arc
    double coefficient = 0;  ///< [-], 0.2 to 2.0, `cylinder_coefficient_5_3_5`
};

/// Distance from the middle of the span at which a cylinder is looked at, positive towards the right eave [m].
/// \throws InputError en1991_1_3.span.range, en1991_1_3.loaded_width.range, en1991_1_3.distance.range
constexpr double from_crown_in_m(const Cylinder& cylinder, Length distance) {
    const double b = span_in_m(cylinder.span);
    argument::within(in_m(cylinder.loaded_width), argument::smallest, b,
                     {"en1991_1_3.loaded_width.range", "loaded width of the cylinder l_s", "m"});
    return argument::within(in_m(distance), 0.0, b, {"en1991_1_3.distance.range", "distance from the eave", "m"}) -
           0.5 * b;
}

/// Undrifted arrangement (i) of a cylinder at a distance from the left eave.
/// mu(x) = 0.8 within l_s, 0 outside
/// \param distance  x [m], 0 to b
/// \return mu [-]
/// Limits: a jump at the ends of l_s is in the text.
/// Source: EN 1991-1-3:2003, 5.3.5, Figure 5.6, case (i); from memory, sure.
/// \throws InputError en1991_1_3.span.range, en1991_1_3.loaded_width.range, en1991_1_3.distance.range
[[nodiscard]] constexpr double cylinder_undrifted_at_5_3_5(const Cylinder& cylinder, Length distance) {
    const double x = from_crown_in_m(cylinder, distance);
    return std::max(x, -x) <= 0.5 * in_m(cylinder.loaded_width) ? 0.8 : 0.0;
}

/// Drifted arrangement (ii) of a cylinder at a distance from the left eave, heavier half on the right.
/// mu(x) = peak (1 - |x - x_peak|/(l_s/4)), not under 0; x_peak = b/2 - l_s/4 with half the coefficient for peak, and
/// b/2 + l_s/4 with all of it
/// \param distance  x [m], 0 to b; x from the right eave gives the heavier half on the left, which is to be looked at
///                  too
/// \return mu [-]
/// Source: EN 1991-1-3:2003, 5.3.5, Figure 5.6, case (ii); from memory, sure.
/// \throws InputError en1991_1_3.span.range, en1991_1_3.loaded_width.range, en1991_1_3.distance.range,
///   en1991_1_3.cylinder_coefficient.range
[[nodiscard]] constexpr double cylinder_drifted_at_5_3_5(const Cylinder& cylinder, Length distance) {
    const double x = from_crown_in_m(cylinder, distance);
    argument::within(cylinder.coefficient, 0.2, 2.0,
                     {"en1991_1_3.cylinder_coefficient.range", "shape coefficient of the cylinder", "-"});
    const double quarter = 0.25 * in_m(cylinder.loaded_width);
    const double from_peak = std::max(x, -x) - quarter;
    const double share = std::max(1.0 - std::max(from_peak, -from_peak) / quarter, 0.0);
    return (x < 0.0 ? 0.5 : 1.0) * cylinder.coefficient * share;
}

}  // namespace coverframe::en1991_1_3
