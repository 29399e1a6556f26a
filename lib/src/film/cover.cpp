// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/cover.hpp"

#include <algorithm>
#include <cmath>

#include "coverframe/base/error.hpp"
#include "coverframe/film/ageing.hpp"
#include "coverframe/plan/geometry.hpp"
#include "coverframe/units/crossing.hpp"
#include "film/cover_solver.hpp"
#include "film/kernel/hanging.hpp"

namespace coverframe {

namespace {

/// A side of the cover narrower than this in plan carries no strip [m].
constexpr double least_span = 0.05;
/// Pulls agree when they differ by no more than this share of the largest one [-].
constexpr double agreement = 1e-9;
constexpr int max_rounds = 100;

std::array<double, 3> sum(const std::array<double, 3>& a, const std::array<double, 3>& b) {
    return {a[0] + b[0], a[1] + b[1], a[2] + b[2]};
}

double largest(const std::array<double, 3>& a) { return std::max({std::abs(a[0]), std::abs(a[1]), std::abs(a[2])}); }

std::array<double, 3> displacement_of(const Solution& solution, int node) {
    if (solution.displacement.empty()) return {};
    const double* u = &solution.displacement[static_cast<std::size_t>(6 * node)];
    return {u[0], u[1], u[2]};
}

double chord(const std::array<double, 3>& a, const std::array<double, 3>& b) {
    return std::hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
}

/// The strip of a cover as it hangs now.
using StripLaw = StripState (*)(const CoverStrip&, const std::array<double, 3>& upper, const void* context);

/// A strip that pulls with the same tension wherever its upper end goes (film being shrunk).
StripState constant_tension(const CoverStrip& strip, const std::array<double, 3>& upper, const void* context) {
    const double tension = *static_cast<const double*>(context) * strip.width;
    // A strip of negligible stretch: its own stiffness drops out and only the turning of the pull is left.
    StripState s;
    const double l = chord(upper, strip.rail);
    s.span = std::hypot(strip.rail[0] - upper[0], strip.rail[1] - upper[1]);
    s.rise = strip.rail[2] - upper[2];
    s.level_force = tension * s.span / l;
    s.tension_upper = s.tension_lower = tension;
    for (std::size_t i = 0; i < 3; ++i) {
        const double n_i = (strip.rail[i] - upper[i]) / l;
        s.pull_upper[i] = tension * n_i;
        s.pull_lower[i] = -tension * n_i;
        for (std::size_t j = 0; j < 3; ++j) {
            const double n_j = (strip.rail[j] - upper[j]) / l;
            s.stiffness[3 * i + j] = tension / l * ((i == j ? 1.0 : 0.0) - n_i * n_j);
        }
    }
    return s;
}

StripState hanging(const CoverStrip& strip, const std::array<double, 3>& upper, const void*) {
    return strip_state(strip.strip, upper, strip.rail);
}

/// The frame of a cover with a solver of its own, and its strips, each with the load it carries now.
struct Coupled {
    const Frame& frame;
    const std::vector<CoverStrip>& strips;
    kernel::Solver& solver;
};

/// Strips as they hang with the frame in the place of `solution`.
void hang(const Coupled& cover, StripLaw law, const void* context, const Solution& solution,
          std::vector<StripState>& states) {
    states.clear();
    for (const CoverStrip& strip : cover.strips)
        states.push_back(law(strip, place_of(cover.frame, solution, strip.node), context));
}

/// Largest difference between the pulls that the frame was solved with and those that the strips have at its place.
double disagreement(const Coupled& cover, const CoverState& state) {
    double most = 0;
    for (std::size_t i = 0; i < cover.strips.size(); ++i) {
        const FrameLoads::Spring& spring = state.frame_loads.springs[i];
        const std::array<double, 3> u = displacement_of(state.frame, cover.strips[i].node);
        for (std::size_t d = 0; d < 3; ++d) {
            double guess = spring.force0[d];
            for (std::size_t e = 0; e < 3; ++e) guess -= spring.stiffness[3 * d + e] * (u[e] - spring.u0[e]);
            most = std::max(most, std::abs(guess - state.strips[i].pull_upper[d]));
        }
    }
    return most;
}

/// Repeats frame and strips until the pulls agree with the place.
CoverState couple(const Coupled& cover, const FrameLoads& own, StripLaw law, const void* context, SolveOptions options,
                  const std::vector<double>& start) {
    // A share of pulls that belong to one place of the film would say nothing about the snow.
    options.approach = false;
    CoverState state;
    state.frame.displacement = start;
    hang(cover, law, context, state.frame, state.strips);
    for (state.rounds = 1; state.rounds <= max_rounds; ++state.rounds) {
        state.frame_loads = own;
        std::vector<FrameLoads::Spring> springs;
        for (std::size_t i = 0; i < cover.strips.size(); ++i) {
            const int node = cover.strips[i].node;
            const StripState& s = state.strips[i];
            springs.push_back({node, s.stiffness, displacement_of(state.frame, node), s.pull_upper});
        }
        state.frame_loads.springs.insert(state.frame_loads.springs.begin(), springs.begin(), springs.end());
        state.frame = cover.solver.solve(state.frame_loads, options, state.frame.displacement);
        if (!state.frame.usable()) return state;
        // Where the frame moved, the supports were a straight-line guess; the true pull at the new place must agree.
        hang(cover, law, context, state.frame, state.strips);
        double pull = 0;
        for (const StripState& s : state.strips) pull = std::max(pull, largest(s.pull_upper));
        if (disagreement(cover, state) <= agreement * pull || pull == 0) return state;
    }
    state.frame.status = SolveStatus::iteration_limit;
    state.frame.message = "film and frame do not settle together";
    return state;
}

/// Vertical loads and reactions of the whole cover.
void balance(const Coupled& cover, const FrameLoads& own, CoverState& state) {
    for (std::size_t i = 2; i < own.force.size(); i += 3) state.vertical_load -= own.force[i];
    for (const CoverStrip& strip : cover.strips) state.vertical_load += strip.strip.load;
    for (std::size_t n = 0; n < cover.frame.nodes.size(); ++n)
        state.vertical_reaction += state.frame.reaction[6 * n + 2];
    for (const StripState& s : state.strips) state.vertical_reaction -= s.pull_lower[2];
}

void add_strips(const Plan& plan, Bound film, Cover& cover) {
    const Layout& layout = cover.layout;
    const double nu = plan.film.poisson.value;
    const double stiffness = in_Pa(film_modulus(plan.film, film)) * in_m(plan.film.thickness.value) / (1 - nu * nu);
    const std::size_t count = layout.stations.size();
    const auto node_at = [&](std::size_t i) -> const FrameNode& {
        return layout.frame.nodes[static_cast<std::size_t>(layout.stations[i])];
    };
    for (std::size_t i = 0; i < count; ++i) {
        const double x = node_at(i).at[0];
        const double before = i > 0 ? x - node_at(i - 1).at[0] : 0;
        const double after = i + 1 < count ? node_at(i + 1).at[0] - x : 0;
        const std::optional<RailStation> rail = rail_at(plan.boat, from_m(x));
        if (!rail || in_m(rail->half_breadth) < least_span) continue;
        for (const Side side : {Side::port, Side::starboard}) {
            CoverStrip strip;
            strip.station = static_cast<int>(i);
            strip.node = layout.stations[i];
            strip.side = side;
            strip.width = 0.5 * (before + after);
            strip.rail = {x, (side == Side::port ? -1 : 1) * in_m(rail->half_breadth), in_m(rail->z)};
            strip.strip.stiffness = stiffness * strip.width;
            strip.strip.free_length = chord(node_at(i).at, strip.rail);
            cover.strips.push_back(strip);
        }
    }
}

/// Weight of each strip's film, by its drawn area [N].
double film_load(const Cover& cover, const CoverStrip& strip) {
    const auto& upper = cover.layout.frame.nodes[static_cast<std::size_t>(strip.node)].at;
    return cover.film_weight * strip.width * chord(upper, strip.rail);
}

double plan_span(const Cover& cover, const CoverStrip& strip) {
    const auto& upper = cover.layout.frame.nodes[static_cast<std::size_t>(strip.node)].at;
    return std::hypot(strip.rail[0] - upper[0], strip.rail[1] - upper[1]);
}

}  // namespace

std::array<double, 3> place_of(const Frame& frame, const Solution& solution, int node) {
    return sum(frame.nodes[static_cast<std::size_t>(node)].at, displacement_of(solution, node));
}

Cover build_cover(const Plan& plan, const LayoutOptions& options, Bound film) {
    Cover cover;
    cover.layout = lay_out(plan, options);
    cover.film_weight = in_N_per_m3(plan.film.unit_weight.value) * in_m(plan.film.thickness.value);
    cover.film_stiffness = in_Pa(film_modulus(plan.film, film)) * in_m(plan.film.thickness.value);
    cover.film_poisson = plan.film.poisson.value;
    add_strips(plan, film, cover);
    return cover;
}

Rigged rig(const Cover& cover, double film_tension, const SolveOptions& options) {
    Rigged rigged{cover, {}};
    rigged.cover.film_tension = film_tension;
    const FrameLoads own = self_weight(cover.layout.frame, 1.0);
    Tensioned tensioned = tension_straps(cover.layout.frame, cover.layout.runs, own, options);
    rigged.cover.layout.frame = std::move(tensioned.frame);
    if (!tensioned.solution.usable()) {
        rigged.state.frame = std::move(tensioned.solution);
        return rigged;
    }
    kernel::Solver solver(rigged.cover.layout.frame);
    CoverState shrunk = couple({rigged.cover.layout.frame, rigged.cover.strips, solver}, own, constant_tension,
                               &film_tension, options, tensioned.solution.displacement);
    if (!shrunk.usable()) {
        rigged.state = std::move(shrunk);
        return rigged;
    }
    for (CoverStrip& strip : rigged.cover.strips) {
        strip.strip.free_length =
            free_length_for_tension(strip.strip.stiffness, film_tension * strip.width,
                                    place_of(rigged.cover.layout.frame, shrunk.frame, strip.node), strip.rail);
    }
    rigged.state = load_cover(rigged.cover, StripLoads(cover.strips.size(), 0.0), 1.0, options);
    return rigged;
}

CoverSolver::CoverSolver(const Cover& rigged)
    : rigged_(rigged),
      strips_(rigged.strips),
      solver_(rigged.layout.frame),
      weight_(self_weight(rigged.layout.frame, 1)) {
    for (const CoverStrip& strip : strips_) {
        film_load_.push_back(film_load(rigged_, strip));
        plan_area_.push_back(strip.width * plan_span(rigged_, strip));
    }
    find_legs();
}

void CoverSolver::put_on(const StripLoads& snow, double share, double permanent_factor) {
    for (std::size_t i = 0; i < strips_.size(); ++i) {
        strips_[i].strip.load = share * snow[i] * plan_area_[i] + permanent_factor * film_load_[i];
    }
}

CoverState CoverSolver::settle(const FrameLoads& own, const SolveOptions& options, const std::vector<double>& start) {
    return couple({rigged_.layout.frame, strips_, solver_}, own, hanging, nullptr, options, start);
}

/// Film and frame as one: the strips are looked at anew at every step of the frame, each with one Newton step of its
/// own while little changes.
std::optional<CoverState> CoverSolver::settle_near(const FrameLoads& own, const SolveOptions& options,
                                                   const CoverState& near) {
    constexpr double step_is_enough = 1e-3;
    constexpr double settled = 1e-10;
    CoverState state;
    state.strips = near.strips;
    state.frame_loads = own;
    state.frame_loads.springs.insert(state.frame_loads.springs.begin(), strips_.size(), {});
    const auto follow = [&](const Eigen::VectorXd& u, FrameLoads& loads) {
        double change = 0;
        for (std::size_t i = 0; i < strips_.size(); ++i) {
            const CoverStrip& strip = strips_[i];
            const double* moved = u.data() + 6 * strip.node;
            const std::array<double, 3> here{moved[0], moved[1], moved[2]};
            const auto& drawn = rigged_.layout.frame.nodes[static_cast<std::size_t>(strip.node)].at;
            const kernel::HangingState now = kernel::hanging_near(strip.strip, sum(drawn, here), strip.rail,
                                                                  state.strips[i].level_force, step_is_enough);
            state.strips[i] = now.strip;
            change = std::max(change, now.change);
            loads.springs[i] = {strip.node, now.strip.stiffness, here, now.strip.pull_upper};
        }
        return change <= settled;
    };
    std::optional<Solution> frame = solver_.follow(state.frame_loads, follow, options, near.frame.displacement);
    if (!frame) return std::nullopt;
    state.frame = std::move(*frame);
    state.rounds = state.frame.iterations;
    return state;
}

CoverState CoverSolver::load(const StripLoads& snow, double permanent_factor, const SolveOptions& options,
                             const CoverState* near, bool lie_on_straps) {
    const bool good = snow.size() == strips_.size() &&
                      std::all_of(snow.begin(), snow.end(), [](double q) { return std::isfinite(q) && q >= 0; });
    if (!good)
        throw InputError("film.loads", "/snow", "",
                         "there must be one finite plan load of zero or more for each strip");
    FrameLoads own = weight_;
    for (double& force : own.force) force *= permanent_factor;
    put_on(snow, 1, permanent_factor);
    std::optional<CoverState> joint;
    if (near != nullptr && near->usable()) joint = settle_near(own, options, *near);
    CoverState state = joint ? std::move(*joint) : settle(own, options, {});
    if (!state.usable()) {
        // From the drawn shape the first pulls of a soft cover are far too strong; in steps the shape can follow.
        constexpr int steps = 10;
        put_on(snow, 0, permanent_factor);
        state = settle(own, options, {});
        for (int step = 1; step <= steps && state.usable(); ++step) {
            const std::vector<double> start = state.frame.displacement;
            put_on(snow, static_cast<double>(step) / steps, permanent_factor);
            state = settle(own, options, start);
            if (!state.usable()) {
                state.frame.message += " (with " + std::to_string(100 * step / steps) + " % of this snow)";
            }
        }
    }
    if (state.usable()) balance({rigged_.layout.frame, strips_, solver_}, own, state);
    if (state.usable() && lie_on_straps) lay_on_straps(own, options, state);
    return state;
}

CoverState load_cover(const Cover& rigged, const StripLoads& snow, double permanent_factor,
                      const SolveOptions& options) {
    return CoverSolver(rigged).load(snow, permanent_factor, options);
}

}  // namespace coverframe
