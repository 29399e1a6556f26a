// SPDX-License-Identifier: BSD-3-Clause
// The second equilibrium of a cover: film lies on the cross straps (film/cover.hpp).
#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "coverframe/base/error.hpp"
#include "coverframe/film/film_on_strap.hpp"
#include "film/cover_solver.hpp"
#include "film/kernel/hanging.hpp"

namespace coverframe {
namespace {

using Place = std::array<double, 3>;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// The legs stand still when nothing changes by more than this share of the largest tension or load [-].
constexpr double agreement = 1e-5;
constexpr double agreement_at_once = 2e-6;  ///< of one step of the frame to the next [-]
constexpr int most_rounds = 100;
constexpr const char* not_settled = "film and cross straps do not settle together";
constexpr double hold_along = 1e6;  ///< [N/m]

double stiffness_alone(const LegUnderFilm& under) { return under.carries.stiffness / under.carries.chord; }

/// Of a leg along its chord, at the same load [N/m]: dT/dT_s0 = T/(3 T - 2 T_s0).
double stiffness_of(const LegUnderFilm& under) {
    const double T = under.film.tension;
    return T > 0.0 ? stiffness_alone(under) * T / (3.0 * T - 2.0 * under.carries.initial) : 0.0;
}

double x_of(const Frame& frame, int node) { return frame.nodes[at(node)].at[0]; }

}  // namespace

/// Looks for what the film does to the legs when it does that to them, six numbers a leg: its tension, its load, and of
/// either side what it relieves and the reach of that (FilmLift). Steps that learn from the last one how far to go
/// (Aitken, for all legs together; from memory).
class LegSearch {
public:
    /// \param share  of what is missing that is added at first
    LegSearch(std::size_t legs, double share, double least_share)
        : values_(legs * numbers, 0.0), share_(share), least_share_(least_share) {}

    static constexpr std::size_t numbers = 6;
    [[nodiscard]] double tension(std::size_t leg) const { return values_[numbers * leg]; }
    [[nodiscard]] double load(std::size_t leg) const { return std::max(0.0, values_[numbers * leg + 1]); }
    [[nodiscard]] double relieves(std::size_t leg, std::size_t side) const {
        return std::max(0.0, values_[numbers * leg + 2 + side]);
    }
    [[nodiscard]] double reach(std::size_t leg, std::size_t side) const {
        return std::max(0.0, values_[numbers * leg + 4 + side]);
    }

    /// Adds what is found of a leg.
    static void add(const LegUnderFilm& under, double tension, std::vector<double>& found) {
        const std::array<FilmLift, 2>& sides = under.film.beside;
        found.insert(found.end(),
                     {tension, under.load, sides[0].relieves, sides[1].relieves, sides[0].reach, sides[1].reach});
    }

    /// Takes a tension along with a change that is known beforehand.
    void stretch(std::size_t leg, double change) { values_[numbers * leg] += change; }

    /// The largest of what was missing.
    double step(const std::vector<double>& found) {
        std::vector<double> missing;
        double most = 0.0;
        for (std::size_t i = 0; i < values_.size(); ++i) {
            missing.push_back(found[i] - values_[i]);
            most = std::max(most, std::abs(missing[i]));
        }
        if (!last_.empty()) {
            double along = 0.0;
            double square = 0.0;
            for (std::size_t i = 0; i < missing.size(); ++i) {
                const double change = missing[i] - last_[i];
                along += last_[i] * change;
                square += change * change;
            }
            if (square > 0.0) share_ = std::clamp(-share_ * along / square, least_share_, 1.0);
        }
        for (std::size_t i = 0; i < missing.size(); ++i) values_[i] += share_ * missing[i];
        last_ = std::move(missing);
        return most;
    }

private:
    std::vector<double> values_;
    std::vector<double> last_;  ///< what was missing in the step before
    double share_;              ///< of what is missing that is added
    double least_share_;
};

void CoverSolver::find_legs() {
    const Frame& frame = rigged_.layout.frame;
    for (const CrossStrapPart& part : rigged_.layout.cross_straps) {
        for (const int member : part.members) {
            Leg& leg = legs_.emplace_back();
            leg.member = member;
            const FrameMember& strap = frame.members[at(member)];
            for (std::size_t i = 0; i < strips_.size(); ++i) {
                const int other = strips_[i].node == strap.from ? strap.to
                                  : strips_[i].node == strap.to ? strap.from
                                                                : -1;
                if (other < 0) continue;
                const double y = frame.nodes[at(other)].at[1];
                if (!(strips_[i].side == Side::port ? y < 0.0 : y > 0.0)) continue;
                leg.ridge = strips_[i].node;
                leg.rail = other;
                leg.by = {std::vector<std::size_t>{i}, std::vector<std::size_t>{i}};
            }
        }
    }
    for (Leg& leg : legs_) {
        if (leg.ridge < 0) continue;
        const Side side = strips_[leg.by[0].front()].side;
        const double x = x_of(frame, leg.ridge);
        std::array<double, 2> next{0.0, 0.0};  // the end of the film, unless a leg comes first
        for (const CoverStrip& strip : strips_) {
            if (strip.side != side) continue;
            next[0] = std::max(next[0], x - strip.rail[0]);
            next[1] = std::max(next[1], strip.rail[0] - x);
        }
        for (const Leg& other : legs_) {
            if (other.ridge < 0 || strips_[other.by[0].front()].side != side) continue;
            const double off = x_of(frame, other.ridge) - x;
            if (off < 0.0) next[0] = std::min(next[0], -off);
            if (off > 0.0) next[1] = std::min(next[1], off);
        }
        leg.bay = next;
        for (std::size_t i = 0; i < strips_.size(); ++i) {
            const double off = strips_[i].rail[0] - x;
            if (strips_[i].side != side || off == 0.0) continue;
            const std::size_t way = off < 0.0 ? 0 : 1;
            if (std::abs(off) <= 0.5 * leg.bay[way] + strips_[i].width) leg.by[way].push_back(i);
        }
    }
}

/// How the chords of the strips fall away from the leg's: k d + c d^2/2 at the distance d, by least squares.
void CoverSolver::lean(const Leg& leg, std::size_t side, const CoverState& state, FilmBeside& film) const {
    const Frame& frame = rigged_.layout.frame;
    const CoverStrip& here = strips_[leg.by[side].front()];
    const StripState& own = state.strips[leg.by[side].front()];
    const double chord = std::hypot(own.span, own.rise);
    const double out = here.side == Side::port ? -1.0 : 1.0;
    const auto square_to_chord = [&](const Place& from, const Place& to) {
        return (to[1] - from[1]) * out * -own.rise / chord + (to[2] - from[2]) * own.span / chord;
    };
    const Place top = place_of(frame, state.frame, here.node);
    std::array<double, 3> moment{};  // sums of d^2, d^3, d^4
    std::array<double, 2> fallen{};  // sums of fall d, fall d^2
    for (std::size_t k = 1; k < leg.by[side].size(); ++k) {
        const CoverStrip& there = strips_[leg.by[side][k]];
        const double d = std::abs(there.rail[0] - here.rail[0]);
        const double fall = -0.5 * (square_to_chord(top, place_of(frame, state.frame, there.node)) +
                                    square_to_chord(here.rail, there.rail));
        const double square = d * d;
        moment[0] += square;
        moment[1] += square * d;
        moment[2] += square * square;
        fallen[0] += fall * d;
        fallen[1] += fall * square;
    }
    const double determinant = moment[0] * moment[2] - moment[1] * moment[1];
    if (moment[0] > 0.0) film.falls = fallen[0] / moment[0];  // one strip: straight
    if (!(determinant > 1e-9 * moment[0] * moment[2])) return;
    film.falls = (fallen[0] * moment[2] - fallen[1] * moment[1]) / determinant;
    film.curves = 2.0 * (fallen[1] * moment[0] - fallen[0] * moment[1]) / determinant;
}

FilmBeside CoverSolver::film_beside(const Leg& leg, std::size_t side, const CoverState& state) const {
    FilmBeside film;
    film.bay = leg.bay[side];
    if (film.bay == 0.0) return film;
    const double stretch = rigged_.film_stiffness / (1.0 - rigged_.film_poisson * rigged_.film_poisson);
    double width = 0.0;
    for (const std::size_t i : leg.by[side]) {
        const StripState& hangs = state.strips[i];
        const double length = std::hypot(hangs.span, hangs.rise);
        const double vertical = whole_load_[i] / (strips_[i].width * length);
        film.load += strips_[i].width * vertical * hangs.span / length;
        film.strain +=
            strips_[i].width * (length / strips_[i].strip.free_length - 1.0 - rigged_.film_tension / stretch);
        width += strips_[i].width;
    }
    film.load /= width;
    film.strain /= width;
    lean(leg, side, state, film);
    return film;
}

LegUnderFilm CoverSolver::film_on(const Leg& leg, const CoverState& state) const {
    const Frame& frame = rigged_.layout.frame;
    const FrameMember& strap = frame.members[at(leg.member)];
    const Place a = place_of(frame, state.frame, strap.from);
    const Place b = place_of(frame, state.frame, strap.to);
    const double level = std::hypot(b[0] - a[0], b[1] - a[1]);
    LegUnderFilm under;
    under.member = leg.member;
    StrapUnderFilm& carries = under.carries;
    carries.chord = std::hypot(level, b[2] - a[2]);
    carries.stiffness = strap.axial_stiffness;
    carries.initial = strap.axial_stiffness * (carries.chord - strap.free_length) / strap.free_length;
    under.cosine = level / carries.chord;
    if (leg.ridge < 0) {
        under.end = std::max(0.0, carries.initial);
        under.film.tension = under.end;
        return under;
    }
    carries.film_stiffness = rigged_.film_stiffness;
    carries.poisson = rigged_.film_poisson;
    carries.shrunk = rigged_.film_tension;
    for (std::size_t side = 0; side < 2; ++side) carries.beside[side] = film_beside(leg, side, state);
    under.film = film_on_strap(carries);
    under.load = under.film.load * carries.chord / under.cosine;
    const double sine = std::abs(b[2] - a[2]) / carries.chord;
    under.end = std::hypot(under.film.tension + 0.5 * under.load * sine, 0.5 * under.load * under.cosine);
    return under;
}

/// Takes from the strips near a leg what they hand over to it: the nearer, the more, and never more than they carry.
void CoverSolver::relieve(const Leg& leg, const LegUnderFilm& under, const LegSearch& search, std::size_t number) {
    const double load = search.load(number);
    const double handed = search.relieves(number, 0) + search.relieves(number, 1);
    const double brought = load * under.cosine / under.carries.chord;
    if (leg.ridge < 0 || !(handed > 0.0) || !(brought > 0.0)) return;
    const double share = std::min(1.0, handed / brought);
    for (std::size_t side = 0; side < 2; ++side) {
        const double reach = search.reach(number, side);
        double left = share * load * search.relieves(number, side) / handed;
        constexpr int passes = 3;  // what a strip cannot give is asked of the others
        for (int pass = 0; pass < passes && left > 0.0 && reach > 0.0; ++pass) {
            double sum = 0.0;
            const auto part_of = [&](std::size_t i) {
                const double d = std::abs(strips_[i].rail[0] - strips_[leg.by[side].front()].rail[0]);
                if (!(strips_[i].strip.load > 0.0)) return 0.0;
                return (d == 0.0 ? 0.5 : 1.0) * strips_[i].width * std::exp(-d / reach);
            };
            for (const std::size_t i : leg.by[side]) sum += part_of(i);
            if (!(sum > 0.0)) break;
            const double asked = left;
            std::vector<double> parts;
            for (const std::size_t i : leg.by[side]) parts.push_back(part_of(i) / sum);
            for (std::size_t k = 0; k < parts.size(); ++k) {
                double& carried = strips_[leg.by[side][k]].strip.load;
                const double given = std::min(carried, asked * parts[k]);
                carried -= given;
                left -= given;
            }
        }
    }
}

/// Keeps the upper end of a leg from moving along the boat from where it was in the first equilibrium.
FrameLoads::Spring CoverSolver::kept_along(const Leg& leg, const CoverState& first) const {
    FrameLoads::Spring spring;
    spring.node = leg.ridge;
    const Place place = place_of(rigged_.layout.frame, first.frame, leg.ridge);
    for (std::size_t d = 0; d < 3; ++d) spring.u0[d] = place[d] - rigged_.layout.frame.nodes[at(leg.ridge)].at[d];
    spring.stiffness[0] = hold_along;
    return spring;
}

/// What a leg does at its upper end beyond a straight strap: it pulls along its chord with an added tension, and
/// carries half its load there.
/// \param stiffness  along the chord, beyond that of the straight strap [N/m]
FrameLoads::Spring CoverSolver::added_by(const Leg& leg, const CoverState& state, double tension, double load,
                                         double stiffness) const {
    const Frame& frame = rigged_.layout.frame;
    const FrameMember& strap = frame.members[at(leg.member)];
    const int lower = strap.from == leg.ridge ? strap.to : strap.from;
    const Place a = place_of(frame, state.frame, leg.ridge);
    const Place b = place_of(frame, state.frame, lower);
    const double length = std::hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
    FrameLoads::Spring spring;
    spring.node = leg.ridge;
    for (std::size_t d = 0; d < 3; ++d) {
        const double along = (b[d] - a[d]) / length;
        spring.u0[d] = a[d] - frame.nodes[at(leg.ridge)].at[d];
        spring.force0[d] = tension * along - (d == 2 ? 0.5 * load : 0.0);
        for (std::size_t e = 0; e < 3; ++e) spring.stiffness[3 * d + e] = stiffness * along * (b[e] - a[e]) / length;
    }
    return spring;
}

/// Moves the cover to displacements: places of the frame, ends of the strips.
void CoverSolver::move_to(const Eigen::VectorXd& u, CoverState& now) const {
    now.frame.displacement.assign(u.data(), u.data() + u.size());
    for (std::size_t i = 0; i < strips_.size(); ++i) {
        const CoverStrip& strip = strips_[i];
        const Place upper = place_of(rigged_.layout.frame, now.frame, strip.node);
        now.strips[i].span = std::hypot(strip.rail[0] - upper[0], strip.rail[1] - upper[1]);
        now.strips[i].rise = strip.rail[2] - upper[2];
    }
}

/// Lays film on the legs where the cover is now, and makes a step of the search for the tension and load of each. How
/// much was missing, as a share of the largest.
double CoverSolver::look_at_legs(CoverState& now, LegSearch& search) const {
    const std::vector<LegUnderFilm> last = std::exchange(now.legs, {});
    std::vector<double> found;
    double most = 0.0;
    for (std::size_t i = 0; i < legs_.size(); ++i) {
        const LegUnderFilm& under = now.legs.emplace_back(film_on(legs_[i], now));
        LegSearch::add(under, under.film.tension, found);
        most = std::max({most, under.film.tension, under.load});
        if (!last.empty()) search.stretch(i, stiffness_of(last[i]) * (under.carries.chord - last[i].carries.chord));
    }
    const double missing = search.step(found);
    return most > 0.0 ? missing / most : 0.0;
}

/// Hangs the strips where the cover is now, each with one Newton step of its own while little changes, and gives their
/// pulls to the frame. The largest of their last steps, as a share.
double CoverSolver::hang_strips(CoverState& now, FrameLoads& loads) const {
    constexpr double step_is_enough = 1e-3;
    double change = 0.0;
    for (std::size_t i = 0; i < strips_.size(); ++i) {
        const CoverStrip& strip = strips_[i];
        const Place upper = place_of(rigged_.layout.frame, now.frame, strip.node);
        const kernel::HangingState hung =
            kernel::hanging_near(strip.strip, upper, strip.rail, now.strips[i].level_force, step_is_enough);
        now.strips[i] = hung.strip;
        change = std::max(change, hung.change);
        const double* moved = now.frame.displacement.data() + 6 * strip.node;
        loads.springs[i] = {strip.node, hung.strip.stiffness, {moved[0], moved[1], moved[2]}, hung.strip.pull_upper};
    }
    return change;
}

/// The second equilibrium in one walk: strips and legs are looked at anew at every step of the frame. False if it does
/// not end in a state to use.
bool CoverSolver::lay_at_once(const FrameLoads& own, const SolveOptions& options, CoverState& state) {
    constexpr double settled = 1e-4;  // of the last step of each strip, which leaves the square of that
    constexpr double force_tolerance = 1e-3;
    constexpr double least_share = 0.25;
    CoverState now = state;
    FrameLoads loads = own;
    loads.springs.insert(loads.springs.begin(), strips_.size(), {});
    for (const Leg& leg : legs_) {
        if (leg.ridge >= 0) loads.springs.push_back(kept_along(leg, state));
    }
    const std::size_t kept = loads.springs.size();
    LegSearch search(legs_.size(), 1.0, least_share);
    const auto follow = [&](const Eigen::VectorXd& u, FrameLoads& with) {
        move_to(u, now);
        const bool still = look_at_legs(now, search) <= agreement_at_once;
        for (std::size_t i = 0; i < strips_.size(); ++i) strips_[i].strip.load = whole_load_[i];
        with.springs.resize(kept);
        for (std::size_t i = 0; i < legs_.size(); ++i) {
            const LegUnderFilm& under = now.legs[i];
            relieve(legs_[i], under, search, i);
            if (legs_[i].ridge < 0) continue;
            const double initial = under.carries.initial;
            const double straight = initial > 0.0 ? stiffness_alone(under) : 0.0;
            with.springs.push_back(added_by(legs_[i], now, search.tension(i) - std::max(0.0, initial), search.load(i),
                                            stiffness_of(under) - straight));
        }
        return hang_strips(now, with) <= settled && still;
    };
    SolveOptions coarse = options;
    coarse.force_tolerance = std::max(options.force_tolerance, force_tolerance);
    if (!solver_.follow(loads, follow, coarse, state.frame.displacement)) return false;
    state.legs = std::move(now.legs);
    return true;
}

void CoverSolver::lay_on_straps(const FrameLoads& own, const SolveOptions& options, CoverState& state) {
    whole_load_.clear();
    for (const CoverStrip& strip : strips_) whole_load_.push_back(strip.strip.load);
    try {
        if (!lay_at_once(own, options, state)) lay_in_rounds(own, options, state);
    } catch (const StateError&) {  // of a leg in a place where no sag fits
        state.legs.clear();
        state.no_legs = not_settled;
    }
}

/// The second equilibrium in rounds: what film does to the legs, then the whole cover with that.
void CoverSolver::lay_in_rounds(const FrameLoads& own, const SolveOptions& options, CoverState& state) {
    // Of each leg the tension that the film adds to it, and the load on it.
    LegSearch search(legs_.size(), 0.7, 0.05);
    CoverState now = state;
    for (int round = 0; round < most_rounds; ++round) {
        state.legs.clear();
        std::vector<double> found;
        double most = 0.0;
        for (std::size_t i = 0; i < legs_.size(); ++i) {
            const LegUnderFilm& under = state.legs.emplace_back(film_on(legs_[i], now));
            LegSearch::add(under, under.film.tension - std::max(0.0, under.carries.initial), found);
            most = std::max({most, under.film.tension, under.load});
        }
        if (search.step(found) <= agreement * most) return;
        for (std::size_t i = 0; i < strips_.size(); ++i) strips_[i].strip.load = whole_load_[i];
        FrameLoads loads = own;
        for (std::size_t i = 0; i < legs_.size(); ++i) {
            relieve(legs_[i], state.legs[i], search, i);
            if (legs_[i].ridge < 0) continue;
            loads.springs.push_back(kept_along(legs_[i], state));
            // A straight strap that is slack has no stiffness.
            const double stiffness = state.legs[i].carries.initial < 0.0 ? stiffness_of(state.legs[i]) : 0.0;
            loads.springs.push_back(added_by(legs_[i], now, search.tension(i), search.load(i), stiffness));
        }
        auto next = settle_near(loads, options, now);
        now = next ? std::move(*next) : settle(loads, options, now.frame.displacement);
        if (now.usable()) continue;
        state.legs.clear();
        state.no_legs = now.frame.message;
        return;
    }
    state.legs.clear();
    state.no_legs = not_settled;
}

}  // namespace coverframe
