// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/strip.hpp"

#include <algorithm>
#include <cmath>

#include "coverframe/base/error.hpp"

namespace coverframe {

namespace {

/// Gauss-Legendre, 20 points, on -1 to 1: the positive half. Source: Abramowitz and Stegun, table 25.4, from memory;
/// checked by the tests on polynomials up to degree 39.
constexpr std::array<double, 10> abscissa{
    0.0765265211334973, 0.2277858511416451, 0.3737060887154195, 0.5108670019508271, 0.6360536807265150,
    0.7463319064601508, 0.8391169718222188, 0.9122344282513259, 0.9639719272779138, 0.9931285991850949};
constexpr std::array<double, 10> weight{0.1527533871307258, 0.1491729864726037, 0.1420961093183820, 0.1316886384491766,
                                        0.1181945319615184, 0.1019301198172404, 0.0832767415767048, 0.0626720483341091,
                                        0.0406014298003869, 0.0176140071391521};

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

/// Free length that a strip with level force H fits between its ends, and its derivatives by H, L and h.
struct Length {
    double value = 0;
    double by_H = 0;
    double by_L = 0;
    double by_h = 0;
};

Length fitting_length(double H, double L, double h, double W, double EA) {
    Length sum;
    const double bow = W * L / H;  // Z = h + bow (s - 1/2)
    const double stretched = H / (L * EA);
    for (std::size_t i = 0; i < abscissa.size(); ++i) {
        for (const double side : {-0.5, 0.5}) {
            const double away = side * abscissa[i];  // s - 1/2
            const double Z = h + bow * away;
            const double rho = std::sqrt(L * L + Z * Z);
            const double free = 1 / (1 + stretched * rho);
            const double part = rho * free;
            // With stretch = 1 + c rho, c = H/(L EA): d[rho/stretch] = d rho/stretch^2 - rho^2/stretch^2 dc
            const double w = 0.5 * weight[i];
            const double w_rho = w * free * free / rho;
            const double w_c = w * part * part;
            sum.value += w * part;
            sum.by_H -= w_rho * Z * (bow / H) * away + w_c / (L * EA);
            sum.by_h += w_rho * Z;
            sum.by_L += w_rho * (L + Z * (W / H) * away) + w_c * (stretched / L);
        }
    }
    return sum;
}

/// The level force for which the strip fits its free length. The fitting length falls with H, from without end to zero.
double level_force(const Strip& strip, double L, double h) {
    const double W = strip.load;
    const double EA = strip.stiffness;
    const double chord = std::hypot(L, h);
    const double taut = std::max(EA * (chord - strip.free_length) / strip.free_length, 0.0) * L / chord;
    double H = std::max({taut, std::cbrt(EA * W * W / 24), 1e-6 * std::abs(W)});
    double low = 0;
    double high = 1e300;
    for (int i = 0; i < 200; ++i) {
        const Length fit = fitting_length(H, L, h, W, EA);
        const double error = fit.value - strip.free_length;
        (error > 0 ? low : high) = H;
        if (std::abs(error) <= 4e-16 * strip.free_length) break;
        double next = H * std::exp(-error / (fit.by_H * H));
        if (!(next > low && next < high)) next = high < 1e300 ? 0.5 * (low + high) : 4 * H;
        if (std::abs(next - H) <= 1e-15 * H) break;
        H = next;
    }
    return H;
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

StripState strip_state(const Strip& strip, const std::array<double, 3>& upper, const std::array<double, 3>& lower) {
    require_strip(strip);
    const Ends e = ends_of(upper, lower);
    if (strip.load == 0) return straight_state(strip, e);
    StripState s;
    s.span = e.span;
    s.rise = e.rise;
    s.level_force = level_force(strip, e.span, e.rise);
    const double L = e.span;
    const double h = e.rise;
    const double H = s.level_force;
    s.sag = strip.load * L / (8 * H);
    set_forces(s, e, strip.load);
    // The free length stays: dH = -(by_L dL + by_h dh)/by_H. Moving the upper end by (a, b) gives dL = -a, dh = -b.
    const Length fit = fitting_length(H, L, h, strip.load, strip.stiffness);
    const double H_L = -fit.by_L / fit.by_H;
    const double H_h = -fit.by_h / fit.by_H;
    const double V_L = H_L * h / L - H * h / (L * L);
    const double V_h = H_h * h / L + H / L;
    set_stiffness(s, e, H_L, 0.5 * (H_h + V_L), V_h);
    return s;
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
