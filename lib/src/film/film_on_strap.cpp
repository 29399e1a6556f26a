// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/film_on_strap.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "coverframe/base/error.hpp"

namespace coverframe {
namespace {

constexpr int most_steps = 200;
constexpr double close_enough = 1e-10;  ///< of roots [-]
constexpr double least_pull = 1e-3;     ///< of film along the boat, where contraction leaves none [N/m]

/// Root of a function that falls, from a place where it is positive to one where it is not (false position, Illinois).
template <class Function>
double root_between(double low, double at_low, double high, double at_high, const Function& function) {
    int last = 0;
    for (int step = 0; step < most_steps && at_low > 0.0 && at_high < 0.0; ++step) {
        const double middle = low + (high - low) * at_low / (at_low - at_high);
        const double moved = std::min(middle - low, high - middle);
        const double value = function(middle);
        if (value > 0.0) {
            low = middle;
            at_low = value;
            if (last > 0) at_high *= 0.5;
            last = 1;
        } else {
            high = middle;
            at_high = value;
            if (last < 0) at_low *= 0.5;
            last = -1;
        }
        if (moved <= close_enough * std::abs(middle)) return middle;
    }
    return at_low > 0.0 ? high : low;
}

/// Film of one side with a given pull along the boat: a polynomial G with its top at the free sag.
struct Climb {
    double load = 0;      ///< p + T_x c
    double second = 0;    ///< 4 (T_0 + nu (T_x - T_0) + E t e)/l^2
    double fourth = 0;    ///< 16/3 E t/l^4
    double free_sag = 0;  ///< f_m

    /// [G(f_m) - G(f)]/(f_m - f)^2, over zero.
    [[nodiscard]] double steepness(double f) const {
        const double m = free_sag;
        return second + fourth * (3.0 * m * m + 2.0 * m * f + f * f);
    }
};

/// Where 2 second f + 4 fourth f^3 = load, by Newton from above.
double lowest_sag(const Climb& climb, double load) {
    double f = std::cbrt(0.25 * load / climb.fourth) + std::sqrt(std::max(0.0, -0.5 * climb.second / climb.fourth));
    for (int step = 0; step < most_steps; ++step) {
        const double over = (4.0 * climb.fourth * f * f + 2.0 * climb.second) * f - load;
        const double change = over / (12.0 * climb.fourth * f * f + 2.0 * climb.second);
        f -= change;
        if (!(change > 1e-12 * f)) break;
    }
    return f;
}

/// Film of one side with the pull along the boat as it is looked at now.
class Side {
public:
    Side(const StrapUnderFilm& strap, const FilmBeside& film) : strap_(strap), film_(film) {
        if (film_.bay > 0.0) pull(std::max(strap_.shrunk, least_pull));
    }

    /// What it brings to a leg that has sunk by f_s [N/m].
    [[nodiscard]] double brings(double sag) const {
        if (film_.bay == 0.0) return 0.0;
        return relieves(sag) + along_ * film_.falls;
    }

    [[nodiscard]] FilmLift lift(double sag) const {
        if (film_.bay == 0.0) return {};
        const double slope = slope_at(sag);
        return {along_, climb_.free_sag, brings(sag), std::max(0.0, relieves(sag)),
                slope > 0.0 ? (climb_.free_sag - sag) / slope : 0.0};
    }

    /// Takes the next pull for a leg that has sunk by f_s, on the line through the last two; true if this one was
    /// right.
    bool next(double sag) {
        if (film_.bay == 0.0) return true;
        const double missing = stretched_to(sag) - along_;
        if (std::abs(missing) <= close_enough * along_ || (along_ == least_pull && missing <= 0.0)) return true;
        const double slope = last_ > 0.0 && last_ != along_ ? (missing - last_missing_) / (along_ - last_) : -1.0;
        last_ = along_;
        last_missing_ = missing;
        pull(std::max(least_pull, along_ - missing / std::clamp(slope, -20.0, -0.3)));
        return false;
    }

private:
    static double square(double a) { return a * a; }

    [[nodiscard]] double relieves(double sag) const {
        return std::min(0.8 * along_ * slope_at(sag), 0.5 * climb_.load * film_.bay);
    }

    void pull(double along) {
        along_ = along;
        const double l2 = square(strap_.chord);
        const double flat =
            strap_.shrunk + strap_.poisson * (along - strap_.shrunk) + strap_.film_stiffness * film_.strain;
        climb_ = {film_.load + along * film_.curves, 4.0 * flat / l2, 16.0 / 3.0 * strap_.film_stiffness / square(l2),
                  0.0};
        // Film that the curve of the boat holds up rises over its chord: the same with its signs turned.
        const double load = std::abs(climb_.load);
        if (load > 0.0 || climb_.second < 0.0) climb_.free_sag = lowest_sag(climb_, load);
        if (climb_.load < 0.0) climb_.free_sag = -climb_.free_sag;
    }

    /// f' where the film has the sag f; negative where the leg hangs lower than the film.
    [[nodiscard]] double slope_at(double f) const {
        return (climb_.free_sag - f) * std::sqrt(std::max(0.0, climb_.steepness(f)) / (0.4 * along_));
    }

    /// Pull along the boat of film that climbs onto a leg which has sunk by f_s.
    [[nodiscard]] double stretched_to(double sag) const {
        const double stretch = strap_.film_stiffness / (1.0 - square(strap_.poisson));
        const double across = film_.strain + 8.0 / 3.0 * square(climb_.free_sag / strap_.chord);
        return strap_.shrunk + stretch * (strap_.poisson * across + climbing_strain(sag));
    }

    /// 16/21 (2/a) integral from f_s to f_m of f'/2 df, by Gauss with four points.
    [[nodiscard]] double climbing_strain(double sag) const {
        constexpr std::array<double, 4> place{0.0694318442029737, 0.3300094782075719, 0.6699905217924281,
                                              0.9305681557970263};
        constexpr std::array<double, 4> weight{0.1739274225687269, 0.3260725774312731, 0.3260725774312731,
                                               0.1739274225687269};
        const double way = climb_.free_sag - sag;
        double sum = 0.0;
        for (std::size_t i = 0; i < place.size(); ++i) sum += weight[i] * slope_at(sag + place[i] * way);
        return 16.0 / 21.0 / film_.bay * way * sum;
    }

    const StrapUnderFilm& strap_;
    const FilmBeside& film_;
    Climb climb_;
    double along_ = 0.0;  ///< T_x
    double last_ = 0.0;
    double last_missing_ = 0.0;
};

/// How far the leg sinks under film that pulls as it does now.
double sag_under(const StrapUnderFilm& strap, const std::array<Side, 2>& sides) {
    const double l2 = strap.chord * strap.chord;
    const auto brought = [&](double f) { return std::max(0.0, sides[0].brings(f) + sides[1].brings(f)); };
    const double unloaded =
        strap.initial < 0.0 ? strap.chord * std::sqrt(-0.375 * strap.initial / strap.stiffness) : 0.0;
    const double first = brought(unloaded);
    if (first == 0.0) return unloaded;
    // What the film brings less what the leg holds falls with its sag, and under what comes to it first it sinks too
    // far.
    const Climb leg{first, 4.0 * strap.initial / l2, 16.0 / 3.0 * strap.stiffness / (l2 * l2), 0.0};
    const auto too_much = [&](double f) { return brought(f) - 2.0 * leg.second * f - 4.0 * leg.fourth * f * f * f; };
    const double lowest = lowest_sag(leg, first);
    return root_between(unloaded, first, lowest, too_much(lowest), too_much);
}

void require_numbers(const StrapUnderFilm& strap) {
    bool good = strap.chord > 0.0 && strap.stiffness > 0.0 && strap.film_stiffness > 0.0 && strap.poisson >= 0.0 &&
                strap.poisson < 0.5 && strap.shrunk >= 0.0;
    double sum = strap.chord + strap.initial + strap.stiffness + strap.film_stiffness + strap.shrunk;
    for (const FilmBeside& film : strap.beside) {
        good = good && film.bay >= 0.0 && film.load >= 0.0;
        sum += film.bay + film.load + film.strain + film.falls + film.curves;
    }
    if (good && std::isfinite(sum)) return;
    throw InputError("film.on_strap", "/strap", std::to_string(sum),
                     "chord and stiffnesses must be over zero, loads, bays and shrunk tension not under zero, the "
                     "contraction 0 to under 0.5, and all of them finite");
}

}  // namespace

FilmOnStrap film_on_strap(const StrapUnderFilm& strap) {
    require_numbers(strap);
    std::array<Side, 2> sides{Side(strap, strap.beside[0]), Side(strap, strap.beside[1])};
    FilmOnStrap state;
    for (int step = 0; step < most_steps; ++step) {
        state.sag = sag_under(strap, sides);
        const bool fore = sides[0].next(state.sag);
        const bool aft = sides[1].next(state.sag);
        if (!fore || !aft) continue;
        for (std::size_t i = 0; i < sides.size(); ++i) state.beside[i] = sides[i].lift(state.sag);
        state.load = std::max(0.0, state.beside[0].brings + state.beside[1].brings);
        state.tension = std::max(
            0.0, strap.initial + 8.0 / 3.0 * strap.stiffness * (state.sag / strap.chord) * (state.sag / strap.chord));
        return state;
    }
    throw StateError("film.on_strap", "film and strap do not settle together");
}

}  // namespace coverframe
