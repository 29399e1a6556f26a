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
constexpr double balanced = 1e-5;       ///< of what film brings and the leg holds, over 1 N/m [-]
constexpr double least_pull = 1e-3;     ///< of film along the boat, where contraction leaves none [N/m]

struct Slope {
    double value = 0;
    double by = 0;  ///< its derivative
};

[[noreturn]] void do_not_settle() { throw StateError("film.on_strap", "film and strap do not settle together"); }

/// Root of a function that falls, between a place where it is positive and one where it is not: Newton from `start`,
/// halving where a step would leave what is left between.
template <class Function>
double root_between(double low, double high, double start, const Function& function) {
    double at = start > low && start < high ? start : high;
    for (int step = 0; step < most_steps; ++step) {
        const Slope here = function(at);
        if (here.value == 0.0) return at;
        (here.value > 0.0 ? low : high) = at;
        double next = at - here.value / here.by;
        if (!(next > low && next < high)) next = 0.5 * (low + high);
        const double moved = std::abs(next - at);
        at = next;
        if (moved <= close_enough * at) break;
    }
    return at;
}

/// Root above `low` of a function that ends under zero, by halving; `low` itself if it is not positive there.
template <class Function>
double halved_root(double low, double step, const Function& function) {
    if (!(function(low) > 0.0)) return low;
    double high = low + step;
    while (function(high) > 0.0) {
        step *= 2.0;
        low = high;
        high += step;
        if (!std::isfinite(high)) do_not_settle();
    }
    while (high - low > close_enough * high) {
        const double middle = 0.5 * (low + high);
        (function(middle) > 0.0 ? low : high) = middle;
    }
    return high;
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

/// Where 2 second f + 4 fourth f^3 = load, by Newton from above; or from `start`, where any start leads there.
double lowest_sag(const Climb& climb, double load, double start = 0.0) {
    double f = start;
    if (!(start > 0.0) || climb.second < 0.0)
        f = std::cbrt(0.25 * load / climb.fourth) + std::sqrt(std::max(0.0, -0.5 * climb.second / climb.fourth));
    for (int step = 0; step < most_steps; ++step) {
        const double over = (4.0 * climb.fourth * f * f + 2.0 * climb.second) * f - load;
        const double change = over / (12.0 * climb.fourth * f * f + 2.0 * climb.second);
        f -= change;
        if (!(std::abs(change) > 1e-12 * f)) break;
    }
    return f;
}

/// Film of one side with the pull along the boat as it is looked at now.
class Side {
public:
    Side(const StrapUnderFilm& strap, const FilmBeside& film) : strap_(strap), film_(film) {
        if (film_.bay == 0.0) return;
        pull(std::max(strap_.shrunk, least_pull));
        pull(std::max(stretched_by(0.0), least_pull));
    }

    /// What it brings to a leg that has sunk by f_s [N/m].
    [[nodiscard]] double brings(double sag) const { return brings_and_falls(sag).value; }

    /// The same with its derivative by the sag.
    [[nodiscard]] Slope brings_and_falls(double sag) const {
        if (film_.bay == 0.0) return {};
        const double climb = relieves(sag);
        const double knee = along_ * film_.falls;
        if (climb == 0.5 * climb_.load * film_.bay) return {climb + knee, 0.0};
        const double m = climb_.free_sag;
        const double root = std::sqrt(std::max(0.0, climb_.steepness(sag)));
        const double by = (m - sag) * climb_.fourth * (m + sag) / std::max(root, 1e-300) - root;
        return {climb + knee, 0.8 * along_ * by / std::sqrt(0.4 * along_)};
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
        const double missing = stretched_by(climbing_strain(sag)) - along_;
        if (std::abs(missing) <= close_enough * along_ || (along_ == least_pull && missing <= 0.0)) return true;
        const double slope = last_ > 0.0 && last_ != along_ ? (missing - last_missing_) / (along_ - last_) : -1.0;
        last_ = along_;
        last_missing_ = missing;
        pull(std::max(least_pull, along_ - missing / std::clamp(slope, -20.0, -0.3)));
        return false;
    }

    /// Finds the pull for a leg that has sunk by f_s, the lowest that fits where there are several.
    void settle(double sag) {
        if (film_.bay == 0.0) return;
        pull(halved_root(least_pull, std::max(strap_.shrunk, least_pull), [&](double along) {
            pull(along);
            return stretched_by(climbing_strain(sag)) - along;
        }));
    }

private:
    static double square(double a) { return a * a; }

    [[nodiscard]] double relieves(double sag) const {
        return std::min(0.8 * along_ * slope_at(sag), 0.5 * climb_.load * film_.bay);
    }

    void pull(double along) {
        along_ = along;
        const double l2 = square(strap_.chord);
        const double before = std::abs(climb_.free_sag);
        const double flat =
            strap_.shrunk + strap_.poisson * (along - strap_.shrunk) + strap_.film_stiffness * film_.strain;
        climb_ = {film_.load + along * film_.curves, 4.0 * flat / l2, 16.0 / 3.0 * strap_.film_stiffness / square(l2),
                  0.0};
        // Film that the curve of the boat holds up rises over its chord: the same with its signs turned.
        const double load = std::abs(climb_.load);
        if (load > 0.0 || climb_.second < 0.0) climb_.free_sag = lowest_sag(climb_, load, before);
        if (climb_.load < 0.0) climb_.free_sag = -climb_.free_sag;
    }

    /// f' where the film has the sag f; negative where the leg hangs lower than the film.
    [[nodiscard]] double slope_at(double f) const {
        return (climb_.free_sag - f) * std::sqrt(std::max(0.0, climb_.steepness(f)) / (0.4 * along_));
    }

    /// Pull along the boat of film that is stretched by so much where it climbs.
    [[nodiscard]] double stretched_by(double climbing) const {
        const double stretch = strap_.film_stiffness / (1.0 - square(strap_.poisson));
        const double across = film_.strain + 8.0 / 3.0 * square(climb_.free_sag / strap_.chord);
        return strap_.shrunk + stretch * (strap_.poisson * across + climbing);
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

/// Of a leg with nothing on it, however it hangs.
double unloaded_sag(const StrapUnderFilm& strap) {
    return strap.initial < 0.0 ? strap.chord * std::sqrt(-0.375 * strap.initial / strap.stiffness) : 0.0;
}

double tension_at(const StrapUnderFilm& strap, double sag) {
    const double share = sag / strap.chord;
    return std::max(0.0, strap.initial + 8.0 / 3.0 * strap.stiffness * share * share);
}

/// How far the leg sinks under film that pulls as it does now.
double sag_under(const StrapUnderFilm& strap, const std::array<Side, 2>& sides, double start) {
    const double l2 = strap.chord * strap.chord;
    const auto brought = [&](double f) {
        const Slope fore = sides[0].brings_and_falls(f);
        const Slope aft = sides[1].brings_and_falls(f);
        const double both = fore.value + aft.value;
        return both > 0.0 ? Slope{both, fore.by + aft.by} : Slope{};
    };
    const double unloaded = unloaded_sag(strap);
    const double first = brought(unloaded).value;
    if (first == 0.0) return unloaded;
    // What the film brings less what the leg holds falls with its sag, and under what comes to it first it sinks too
    // far.
    const Climb leg{first, 4.0 * strap.initial / l2, 16.0 / 3.0 * strap.stiffness / (l2 * l2), 0.0};
    const auto too_much = [&](double f) {
        const Slope film = brought(f);
        return Slope{film.value - 2.0 * leg.second * f - 4.0 * leg.fourth * f * f * f,
                     film.by - 2.0 * leg.second - 12.0 * leg.fourth * f * f};
    };
    double lowest = lowest_sag(leg, first);
    double sag = root_between(unloaded, lowest, start, too_much);
    // Film without pull across, over a ridge that hangs down, may bring more as the leg sinks: then it sinks further.
    for (int step = 0; step < most_steps && sag > (1.0 - 1e-6) * lowest && too_much(lowest).value > 0.0; ++step) {
        const double before = lowest;
        lowest *= 1.5;
        sag = root_between(before, lowest, before, too_much);
    }
    return sag;
}

/// Pulls and sag in turn; false if they do not settle.
bool settle_in_turn(const StrapUnderFilm& strap, std::array<Side, 2>& sides, double& sag) {
    for (int turn = 0; turn < most_steps; ++turn) {
        sag = sag_under(strap, sides, sag);
        const bool fore = sides[0].next(sag);
        const bool aft = sides[1].next(sag);
        if (fore && aft) return true;
    }
    return false;
}

/// Pulls for every sag that is looked at: slower, and ends but where the film jumps from one pull to another.
double settle_one_in_the_other(const StrapUnderFilm& strap, std::array<Side, 2>& sides) {
    const double l2 = strap.chord * strap.chord;
    const auto too_much = [&](double f) {
        for (Side& side : sides) side.settle(f);
        const double brought = std::max(0.0, sides[0].brings(f) + sides[1].brings(f));
        return brought - 8.0 * f / l2 * tension_at(strap, f);
    };
    const double sag = halved_root(unloaded_sag(strap), 0.01 * strap.chord, too_much);
    const double held = 8.0 * sag / l2 * tension_at(strap, sag);
    if (std::abs(too_much(sag)) > balanced * (held + 1.0)) do_not_settle();
    return sag;
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
    if (!settle_in_turn(strap, sides, state.sag)) state.sag = settle_one_in_the_other(strap, sides);
    for (std::size_t i = 0; i < sides.size(); ++i) state.beside[i] = sides[i].lift(state.sag);
    state.load = std::max(0.0, state.beside[0].brings + state.beside[1].brings);
    state.tension = tension_at(strap, state.sag);
    return state;
}

}  // namespace coverframe
