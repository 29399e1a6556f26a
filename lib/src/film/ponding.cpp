// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/ponding.hpp"

#include <algorithm>
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
    constexpr int halvings = 24;  // to 1e-7 of the range
    if (!drains(with(to))) return {};
    for (int i = 0; i < halvings; ++i) {
        const double middle = 0.5 * (from + to);
        (drains(with(middle)) ? to : from) = middle;
    }
    return to;
}

void require(const PondingStrip& strip) {
    const auto positive = [](double value) { return std::isfinite(value) && value > 0; };
    const bool good = positive(strip.span) && positive(strip.stiffness) && positive(strip.load) &&
                      std::isfinite(strip.fall) && strip.fall >= 0 && std::isfinite(strip.pretension) &&
                      strip.pretension > -0.5 * strip.stiffness;
    if (good) return;
    throw InputError(
        "film.ponding.range", "", "",
        "span, stiffness and load must be over zero, fall not negative, and slack less than half the span");
}

}  // namespace

double critical_ponding_tension(double span) {
    if (!(std::isfinite(span) && span > 0)) {
        throw InputError("film.ponding.range", "/span", "", "the span of a strip must be over zero");
    }
    return kernel::water_weight * span * span / (std::numbers::pi * std::numbers::pi);
}

double settling_tension(double span, double fall, double load) {
    const double all_over = critical_ponding_tension(span);
    if (!(std::isfinite(fall) && fall >= 0 && std::isfinite(load) && load > 0)) {
        throw InputError("film.ponding.range", "", "", "load must be over zero, fall not negative");
    }
    const double S = std::sqrt(2 * kernel::water_weight * fall / load);
    if (S <= 2) return all_over;
    const double kL = 2 * std::atan(std::sqrt(S / (S - 2))) + std::sqrt(S * (S - 2));
    return kernel::water_weight * span * span / (kL * kL);
}

std::optional<double> fall_to_drain(const PondingStrip& strip) {
    require(strip);
    if (drains(strip)) return strip.fall;
    const auto with = [&](double fall) {
        PondingStrip other = strip;
        other.fall = fall;
        return other;
    };
    // From some 1.4 spans on, film is so much longer the more it falls that it sags further again.
    const double step = 0.05 * strip.span;
    for (double from = strip.fall; from < 2 * strip.span; from += step) {
        if (const auto fall = needed(from, std::min(from + step, 2 * strip.span), with)) return fall;
    }
    return {};
}

Ponding ponding_of(const PondingStrip& strip) {
    require(strip);
    const StripState state = state_of(strip);
    Ponding p;
    p.sag = state.sag;
    p.tension = state.level_force;
    p.drains = 4 * state.sag < strip.fall;
    p.critical_tension = critical_ponding_tension(strip.span);
    p.longest_span = std::numbers::pi * std::sqrt(p.tension / kernel::water_weight);
    p.holds_water = p.tension > p.critical_tension;
    if (p.drains) return p;
    p.fall_needed = fall_to_drain(strip);
    p.pretension_needed = needed(strip.pretension, 20 * std::max(strip.pretension, p.tension), [&](double tension) {
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
