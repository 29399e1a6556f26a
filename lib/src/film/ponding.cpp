// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/ponding.hpp"

#include <cmath>
#include <numbers>

#include "coverframe/base/error.hpp"
#include "coverframe/film/strip.hpp"
#include "film/kernel/wet.hpp"

namespace coverframe {

namespace {

StripState state_of(const PondingStrip& s) {
    const std::array<double, 3> upper{};
    const std::array<double, 3> lower{0, s.span, -s.fall};
    return strip_state({s.stiffness, free_length_for_tension(s.stiffness, s.pretension, upper, lower), s.load * s.span},
                       upper, lower);
}

bool drains(const PondingStrip& s) { return 4 * state_of(s).sag < s.fall; }

/// The value nearest to `from` at which the strip drains, between one at which it does not and `to`; empty if it does
/// not even there. `with` gives the strip at a value.
template <class With>
std::optional<double> needed(double from, double to, With with) {
    if (!drains(with(to))) return {};
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (from + to);
        (drains(with(middle)) ? to : from) = middle;
    }
    return to;
}

}  // namespace

Ponding ponding_of(const PondingStrip& strip) {
    const auto positive = [](double value) { return std::isfinite(value) && value > 0; };
    const auto not_negative = [](double value) { return std::isfinite(value) && value >= 0; };
    if (!positive(strip.span) || !positive(strip.stiffness) || !positive(strip.load) || !not_negative(strip.fall) ||
        !not_negative(strip.pretension)) {
        throw InputError("film.ponding.range", "", "",
                         "span, stiffness and load must be over zero, fall and tension not negative");
    }
    const StripState state = state_of(strip);
    Ponding p;
    p.sag = state.sag;
    p.tension = state.level_force;
    p.drains = 4 * state.sag < strip.fall;
    const double pi = std::numbers::pi;
    p.critical_tension = kernel::water_weight * strip.span * strip.span / (pi * pi);
    p.longest_span = pi * std::sqrt(p.tension / kernel::water_weight);
    p.holds_water = p.tension > p.critical_tension;
    if (p.drains) return p;
    p.fall_needed = needed(strip.fall, 2 * strip.span, [&](double fall) {
        PondingStrip other = strip;
        other.fall = fall;
        return other;
    });
    p.pretension_needed = needed(strip.pretension, 20 * std::fmax(strip.pretension, p.tension), [&](double tension) {
        PondingStrip other = strip;
        other.pretension = tension;
        return other;
    });
    constexpr double least_span = 0.05;
    if (strip.span > least_span) {
        p.span_needed = needed(strip.span, least_span, [&](double span) {
            PondingStrip other = strip;
            other.fall = strip.fall * span / strip.span;
            other.span = span;
            return other;
        });
    }
    return p;
}

}  // namespace coverframe
