// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/strip.hpp"

#include <algorithm>
#include <cmath>

#include "coverframe/base/error.hpp"
#include "film/kernel/hanging.hpp"

namespace coverframe {

namespace {

using kernel::FittingLength;

struct Ends {
    double span = 0;
    double rise = 0;
    std::array<double, 2> towards{};  ///< level unit vector from the upper to the lower end
};

Ends ends_of(const std::array<double, 3>& upper, const std::array<double, 3>& lower) {
    const double dx = lower[0] - upper[0];
    const double dy = lower[1] - upper[1];
    Ends e;
    e.span = std::hypot(dx, dy);
    e.rise = lower[2] - upper[2];
    if (!(e.span > 1e-9) || !std::isfinite(e.span) || !std::isfinite(e.rise)) {
        throw InputError("film.strip", "", "", "the two ends of a film strip must lie apart in plan, at finite places");
    }
    e.towards = {dx / e.span, dy / e.span};
    return e;
}

/// The level force before anything is known of it.
double first_guess(const Strip& strip, double L, double h) {
    const double EA = strip.stiffness;
    const double chord = std::hypot(L, h);
    const double taut = std::max(EA * (chord - strip.free_length) / strip.free_length, 0.0) * L / chord;
    return std::max({taut, std::cbrt(EA * strip.load * strip.load / 24), 1e-6 * std::abs(strip.load)});
}

/// The level force for which the strip fits its free length, and what was known of the length before the last step.
struct Settled {
    double H = 0;
    double change = 0;
    FittingLength fit;
};

/// The fitting length falls with H, from without end to zero.
Settled settle(const Strip& strip, double L, double h, double start, double tolerance) {
    Settled s;
    s.H = start > 0 ? start : first_guess(strip, L, h);
    double low = 0;
    double high = 1e300;
    for (int i = 0; i < 200; ++i) {
        s.fit = kernel::fitting_length(s.H, L, h, strip.load, strip.stiffness);
        const double error = s.fit.value - strip.free_length;
        (error > 0 ? low : high) = s.H;
        // No further than a thousandfold at once: far from the root the step says little, and H must not end at 0.
        constexpr double furthest = 7;
        double next = s.H * std::exp(std::clamp(-error / (s.fit.by_H * s.H), -furthest, furthest));
        if (!(next > low && next < high)) next = high < 1e300 ? 0.5 * (low + high) : 4 * s.H;
        const bool exact = std::abs(error) <= 4e-16 * strip.free_length;
        s.change = exact ? 0 : std::abs(next - s.H) / s.H;
        if (!exact) s.H = next;
        if (s.change <= tolerance) break;
    }
    return s;
}

void set_forces(StripState& s, const Ends& e, double W) {
    const double L = s.span;
    const double H = s.level_force;
    const double up_at_upper = H * s.rise / L - W / 2;
    const double up_at_lower = H * s.rise / L + W / 2;
    s.tension_upper = std::hypot(H, up_at_upper);
    s.tension_lower = std::hypot(H, up_at_lower);
    s.pull_upper = {H * e.towards[0], H * e.towards[1], up_at_upper};
    s.pull_lower = {-H * e.towards[0], -H * e.towards[1], -up_at_lower};
}

/// -d pull_upper/d upper from its in-plane parts k_LL (level), k_Lz, k_zz and the level pull across the plane.
void set_stiffness(StripState& s, const Ends& e, double k_LL, double k_Lz, double k_zz) {
    // The in-plane part may lose its sign by the asymmetry that was averaged away; a support never pushes further.
    const double mean = 0.5 * (k_LL + k_zz);
    const double radius = std::hypot(0.5 * (k_LL - k_zz), k_Lz);
    if (mean - radius < 0) {
        const double lift = radius - mean;
        k_LL += lift;
        k_zz += lift;
    }
    const double across = s.level_force / s.span;
    const double c = e.towards[0];
    const double d = e.towards[1];
    s.stiffness = {k_LL * c * c + across * d * d,
                   (k_LL - across) * c * d,
                   k_Lz * c,
                   (k_LL - across) * c * d,
                   k_LL * d * d + across * c * c,
                   k_Lz * d,
                   k_Lz * c,
                   k_Lz * d,
                   k_zz};
}

void require_strip(const Strip& strip) {
    if (!std::isfinite(strip.stiffness) || !(strip.stiffness > 0) || !std::isfinite(strip.free_length) ||
        !(strip.free_length > 0) || !std::isfinite(strip.load)) {
        throw InputError("film.strip", "", "",
                         "stiffness and free length of a strip must be finite and over zero, its load finite");
    }
}

StripState straight_state(const Strip& strip, const Ends& e) {
    StripState s;
    s.span = e.span;
    s.rise = e.rise;
    const double chord = std::hypot(e.span, e.rise);
    const double stretch = chord - strip.free_length;
    s.slack = stretch <= 0;
    if (s.slack) return s;
    const double T = strip.stiffness * stretch / strip.free_length;
    s.level_force = T * e.span / chord;
    set_forces(s, e, 0);
    const double cosine = e.span / chord;
    const double sine = e.rise / chord;
    const double along = strip.stiffness / strip.free_length;
    const double across = T / chord;
    set_stiffness(s, e, along * cosine * cosine + across * sine * sine, (along - across) * cosine * sine,
                  along * sine * sine + across * cosine * cosine);
    return s;
}

}  // namespace

kernel::HangingState kernel::hanging_near(const Strip& strip, const std::array<double, 3>& upper,
                                          const std::array<double, 3>& lower, double start, double tolerance) {
    require_strip(strip);
    const Ends e = ends_of(upper, lower);
    if (strip.load == 0) return {straight_state(strip, e), 0};
    const double L = e.span;
    const double h = e.rise;
    const Settled settled = settle(strip, L, h, start, tolerance);
    const double H = settled.H;
    StripState s;
    s.span = L;
    s.rise = h;
    s.level_force = H;
    s.sag = strip.load * L / (8 * H);
    set_forces(s, e, strip.load);
    // The free length stays: dH = -(by_L dL + by_h dh)/by_H. Moving the upper end by (a, b) gives dL = -a, dh = -b.
    const double H_L = -settled.fit.by_L / settled.fit.by_H;
    const double H_h = -settled.fit.by_h / settled.fit.by_H;
    const double V_L = H_L * h / L - H * h / (L * L);
    const double V_h = H_h * h / L + H / L;
    set_stiffness(s, e, H_L, 0.5 * (H_h + V_L), V_h);
    return {s, settled.change};
}

StripState strip_state(const Strip& strip, const std::array<double, 3>& upper, const std::array<double, 3>& lower) {
    return kernel::hanging_near(strip, upper, lower, 0, 1e-15).strip;
}

double free_length_for_tension(double stiffness, double tension, const std::array<double, 3>& upper,
                               const std::array<double, 3>& lower) {
    const Ends e = ends_of(upper, lower);
    return std::hypot(e.span, e.rise) / (1 + tension / stiffness);
}

Hollow hollow_of(const StripState& state) {
    Hollow hollow;
    if (state.sag <= 0) return hollow;
    // dz/ds = rise - 4 sag (1 - 2 s): lowest where it is zero.
    const double lowest = 0.5 - state.rise / (8 * state.sag);
    if (lowest <= 0 || lowest >= 1) return hollow;
    // The water rises to the lower of the two ends; a parabola is symmetric about its lowest point.
    const double to_edge = std::min(1 - lowest, lowest);
    const double depth = 4 * state.sag * to_edge * to_edge;
    hollow.from = (lowest - to_edge) * state.span;
    hollow.to = (lowest + to_edge) * state.span;
    hollow.deepest = lowest * state.span;
    hollow.depth = depth;
    hollow.area = 2.0 / 3.0 * depth * (hollow.to - hollow.from);
    return hollow;
}

}  // namespace coverframe
