// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/surface_survey.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <numbers>

#include "coverframe/base/error.hpp"
#include "coverframe/film/locator.hpp"
#include "film/kernel/wet.hpp"

namespace coverframe {

namespace {

/// Nearer to the centreline than this a place is on it [m].
constexpr double on_centreline = 0.02;
/// An obstacle further away than this says nothing about a place [m].
constexpr double out_of_sight = 2;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

std::string shown(double value, int digits) {
    std::array<char, 64> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, digits).ptr;
    return {text.data(), end};
}

/// Two digits that count: "23", "2.3", "0.23".
std::string two_digits(double value) {
    const double size = std::abs(value);
    return shown(value, size >= 10 ? 0 : size >= 1 ? 1 : 2);
}

double station_x(const CoverSurface& surface, int node) { return surface.layout.frame.nodes[at(node)].at[0]; }

std::string bay_text(const CoverSurface& surface, double x) {
    const std::vector<RidgeBay>& bays = surface.layout.bays;
    if (bays.empty()) return "at x = " + shown(x, 2) + " m";
    if (x < station_x(surface, bays.front().stations.front())) return "forward of the ridge";
    for (const RidgeBay& bay : bays) {
        if (x > station_x(surface, bay.stations.back())) continue;
        const std::size_t to = bay.name.find(" to ");
        return "between " + bay.name.substr(0, to) + " and " + bay.name.substr(to + 4);
    }
    return "aft of the ridge";
}

/// Where a place lies along the boat against the obstacle that is nearest to it; empty if there is none near.
std::string obstacle_text(const CoverSurface& surface, double x, double y) {
    double nearest = out_of_sight;
    std::string text;
    for (const EdgeState& edge : surface.obstacles) {
        double low = std::numeric_limits<double>::infinity(), high = -low, away = low;
        for (const EdgePoint& p : edge.points) {
            low = std::min(low, p.place[0]);
            high = std::max(high, p.place[0]);
            away = std::min(away, std::hypot(p.place[0] - x, p.place[1] - y));
        }
        if (!(away < nearest)) continue;
        nearest = away;
        const double along = x < low ? low - x : x > high ? x - high : 0;
        text = along < 0.05 ? "beside the " + edge.name
                            : shown(along, 1) + " m " + (x < low ? "forward of the " : "aft of the ") + edge.name;
    }
    return text;
}

std::array<double, 3> place_of_station(const CoverSurface& surface, const SurfaceState& state, int node) {
    std::array<double, 3> place = surface.layout.frame.nodes[at(node)].at;
    for (std::size_t d = 0; d < 3; ++d) place[d] += state.displacement[6 * at(node) + d];
    return place;
}

/// Obstacles of which a point lies under the water of a pond.
std::vector<std::string> under(const CoverSurface& surface, const SurfaceState& state, const Pond& pond,
                               const Locator& locator) {
    std::vector<bool> wet(state.film.nodes.size(), false);
    for (const int n : pond.nodes) wet[at(n)] = true;
    std::vector<std::string> names;
    for (const EdgeState& edge : surface.obstacles) {
        const bool reached = std::any_of(edge.points.begin(), edge.points.end(), [&](const EdgePoint& p) {
            const auto found = locator.at(p.place[0], p.place[1]);
            if (!found || found->height(state.film) > pond.level) return false;
            const auto& t = state.film.triangles[at(found->triangle)];
            return wet[at(t[0])] || wet[at(t[1])] || wet[at(t[2])];
        });
        if (reached) names.push_back(edge.name);
    }
    return names;
}

}  // namespace

std::string place_on(const CoverSurface& surface, double x, double y) {
    std::string text = bay_text(surface, x);
    text += std::abs(y) < on_centreline ? ", on the centreline" : y < 0 ? ", port" : ", starboard";
    const std::string beside = obstacle_text(surface, x, y);
    return beside.empty() ? text : text + ", " + beside;
}

std::string PondFlag::sentence() const {
    const std::string heavy = weight < 100 ? two_digits(weight) + " N" : two_digits(weight / 1000) + " kN";
    std::string text = "hollow " + place + ", " + two_digits(volume * 1000) + " L, " + heavy;
    for (const std::string& name : reaches) text += ", reaches the " + name;
    return text;
}

std::vector<PondFlag> pond_flags(const CoverSurface& surface, const SurfaceState& state, double least) {
    std::vector<PondFlag> flags;
    if (state.film.triangles.empty()) return flags;
    const Locator locator(state.film);
    for (const Pond& pond : state.water.ponds) {
        if (pond.volume < least) continue;
        const auto& deepest = state.film.nodes[at(pond.deepest)];
        const auto& spill = state.film.nodes[at(pond.spill)];
        PondFlag& flag = flags.emplace_back();
        flag.place = place_on(surface, deepest[0], deepest[1]);
        flag.x = deepest[0];
        flag.y = deepest[1];
        flag.volume = pond.volume;
        flag.weight = kernel::water_weight * pond.volume;
        flag.depth = pond.depth;
        flag.area = pond.area;
        flag.spills = place_on(surface, spill[0], spill[1]);
        flag.reaches = under(surface, state, pond, locator);
        flag.outline = outline_of(state.film, pond);
    }
    return flags;
}

std::vector<double> slopes_of(const TriangleMesh& film) {
    std::vector<double> slopes;
    slopes.reserve(film.triangles.size());
    for (std::size_t t = 0; t < film.triangles.size(); ++t) {
        const auto& corner = film.triangles[t];
        const auto& a = film.nodes[at(corner[0])];
        const auto& b = film.nodes[at(corner[1])];
        const auto& c = film.nodes[at(corner[2])];
        const std::array<double, 3> u{b[0] - a[0], b[1] - a[1], b[2] - a[2]};
        const std::array<double, 3> v{c[0] - a[0], c[1] - a[1], c[2] - a[2]};
        const double nx = u[1] * v[2] - u[2] * v[1];
        const double ny = u[2] * v[0] - u[0] * v[2];
        const double nz = u[0] * v[1] - u[1] * v[0];
        slopes.push_back(std::atan2(std::hypot(nx, ny), std::abs(nz)));
    }
    return slopes;
}

SlopeShares slope_shares(const SurfaceState& state, double holds, double sheds) {
    if (!(holds >= 0 && holds <= sheds && sheds <= std::numbers::pi / 2)) {
        throw InputError("film.survey.slope", "/sheds", std::to_string(sheds),
                         "the slope at which film sheds must lie between the one at which it holds and a right angle");
    }
    SlopeShares shares;
    shares.least = std::numbers::pi;
    const std::vector<double> slopes = slopes_of(state.film);
    double whole = 0;
    for (std::size_t t = 0; t < slopes.size(); ++t) {
        const double area = plan_area(state.film, t);
        whole += area;
        (slopes[t] >= sheds ? shares.sheds : slopes[t] < holds ? shares.holds : shares.partly) += area;
        if (slopes[t] >= shares.least) continue;
        shares.least = slopes[t];
        for (std::size_t d = 0; d < 2; ++d) {
            const auto& c = state.film.triangles[t];
            shares.least_at[d] =
                (state.film.nodes[at(c[0])][d] + state.film.nodes[at(c[1])][d] + state.film.nodes[at(c[2])][d]) / 3;
        }
    }
    for (double* share : {&shares.sheds, &shares.partly, &shares.holds}) *share /= whole;
    return shares;
}

std::vector<RidgeDip> ridge_dips(const CoverSurface& surface, const SurfaceState& state, double least) {
    const std::vector<int>& stations = surface.layout.stations;
    std::vector<double> z;
    for (const int node : stations) z.push_back(place_of_station(surface, state, node)[2]);
    // Highest so far from the bow and from the stern: the lower of the two is the rim.
    std::vector<double> from_bow = z, from_stern = z;
    for (std::size_t i = 1; i < z.size(); ++i) from_bow[i] = std::max(from_bow[i - 1], z[i]);
    for (std::size_t i = z.size() - 1; i-- > 0;) from_stern[i] = std::max(from_stern[i + 1], z[i]);
    std::vector<RidgeDip> dips;
    for (const RidgeBay& bay : surface.layout.bays) {
        RidgeDip dip{bay.name, 0, 0};
        for (const int node : bay.stations) {
            const auto i =
                static_cast<std::size_t>(std::find(stations.begin(), stations.end(), node) - stations.begin());
            const double depth = std::min(from_bow[i], from_stern[i]) - z[i];
            if (depth <= dip.depth) continue;
            dip.depth = depth;
            dip.x = place_of_station(surface, state, node)[0];
        }
        if (dip.depth >= least) dips.push_back(dip);
    }
    return dips;
}

std::vector<RidgeFall> ridge_falls(const CoverSurface& surface, const SurfaceState& state) {
    std::vector<RidgeFall> falls;
    for (const RidgeBay& bay : surface.layout.bays) {
        const auto a = place_of_station(surface, state, bay.stations.front());
        const auto b = place_of_station(surface, state, bay.stations.back());
        falls.push_back({bay.name, (a[2] - b[2]) / std::hypot(b[0] - a[0], b[1] - a[1])});
    }
    return falls;
}

std::vector<SupportOverStrap> supports_over_straps(const CoverSurface& surface) {
    const auto& stern = surface.layout.frame.nodes[at(surface.layout.stations.back())].at;
    std::vector<SupportOverStrap> all;
    for (const EdgeState& edge : surface.obstacles) {
        const auto higher = [](const EdgePoint& a, const EdgePoint& b) { return a.place[2] < b.place[2]; };
        const auto top = std::max_element(edge.points.begin(), edge.points.end(), higher);
        const UprightPart* behind = nullptr;
        const auto place = [&](const UprightPart& u) { return surface.layout.frame.nodes[at(u.top)].at; };
        for (const UprightPart& upright : surface.layout.uprights) {
            if (top == edge.points.end() || place(upright)[0] <= top->place[0]) continue;
            if (behind == nullptr || place(upright)[0] < place(*behind)[0]) behind = &upright;
        }
        if (behind == nullptr) continue;
        const double share = (place(*behind)[0] - top->place[0]) / (stern[0] - top->place[0]);
        const double strap = top->place[2] + share * (stern[2] - top->place[2]);
        all.push_back({edge.name, behind->name, place(*behind)[2] - strap});
    }
    return all;
}

namespace {

/// To this share of the greatest load looked at.
constexpr double bisected_to = 0.01;

void require_share(double most) {
    if (std::isfinite(most) && most > 0) return;
    throw InputError("film.survey.share", "/most", std::to_string(most), "give a share over zero");
}

SurfaceState under_share(const CoverSurface& surface, std::vector<double> snow, double share, const Rain& rain) {
    for (double& load : snow) load *= share;
    return load_surface(surface, snow, rain);
}

}  // namespace

std::vector<FirstTouch> first_touches(const CoverSurface& surface, const std::vector<double>& snow, double most) {
    require_share(most);
    const auto at_share = [&](double share) { return under_share(surface, snow, share, {}); };
    const auto touches = [](const SurfaceState& state, std::size_t o) {
        return !state.usable() || state.obstacles[o].force() > 0;
    };
    std::vector<FirstTouch> all;
    const SurfaceState greatest = at_share(most);
    for (std::size_t o = 0; o < surface.obstacles.size(); ++o) {
        FirstTouch& touch = all.emplace_back(FirstTouch{surface.obstacles[o].name, {}, ""});
        if (surface.obstacles[o].points.empty() || !touches(greatest, o)) continue;
        double low = 0, high = most;
        SurfaceState first = greatest;
        while (high - low > bisected_to * most) {
            const double middle = 0.5 * (low + high);
            SurfaceState state = at_share(middle);
            const bool touched = touches(state, o);
            (touched ? high : low) = middle;
            if (touched) first = std::move(state);
        }
        touch.share = high;
        const auto& points = first.obstacles[o].points;
        const auto worst = std::max_element(points.begin(), points.end(),
                                            [](const EdgePoint& a, const EdgePoint& b) { return a.force < b.force; });
        touch.place = place_on(surface, worst->place[0], worst->place[1]);
    }
    return all;
}

namespace {

/// Index of the triangle that pulls hardest.
std::size_t tightest(const SurfaceState& state) {
    const auto less = [](const FilmForces& a, const FilmForces& b) { return a.first < b.first; };
    return static_cast<std::size_t>(std::max_element(state.triangles.begin(), state.triangles.end(), less) -
                                    state.triangles.begin());
}

bool holds(const SurfaceState& state, double strength) {
    return state.usable() && state.triangles[tightest(state)].first < strength;
}

/// What ends a load under which the surface does not hold.
void tell_end(const CoverSurface& surface, const SurfaceState& state, FilmLimit& limit) {
    const std::string share = shown(*limit.share, 2) + " times the load";
    limit.status = state.status;
    if (!state.usable()) {
        limit.end = FilmLimit::End::no_shape;
        limit.place = state.place;
        limit.sentence = "no equilibrium at " + share + ": " + state.message;
        return;
    }
    limit.end = FilmLimit::End::torn;
    double x = 0, y = 0;
    for (const int node : state.film.triangles[tightest(state)]) {
        x += state.film.nodes[at(node)][0] / 3;
        y += state.film.nodes[at(node)][1] / 3;
    }
    limit.place = place_on(surface, x, y);
    limit.sentence = "film " + limit.place + ", tears at " + share;
}

}  // namespace

FilmLimit film_limit(const CoverSurface& surface, const std::vector<double>& snow, double strength, const Rain& rain,
                     double most) {
    require_share(most);
    if (!(std::isfinite(strength) && strength > 0)) {
        throw InputError("film.survey.strength", "/strength", std::to_string(strength),
                         "give the pull at which the film tears in N/m, over zero");
    }
    FilmLimit limit;
    SurfaceState first = under_share(surface, snow, most, rain);
    if (holds(first, strength)) {
        limit.held = most;
        limit.sentence = "film and frame hold " + shown(most, 2) + " times the load";
        return limit;
    }
    limit.share = most;
    SurfaceState bare = under_share(surface, snow, 0, rain);
    if (!holds(bare, strength)) {
        limit.share = 0;
        first = std::move(bare);
    }
    while (*limit.share - limit.held > bisected_to * most) {
        const double middle = 0.5 * (limit.held + *limit.share);
        SurfaceState state = under_share(surface, snow, middle, rain);
        if (holds(state, strength)) {
            limit.held = middle;
        } else {
            limit.share = middle;
            first = std::move(state);
        }
    }
    tell_end(surface, first, limit);
    return limit;
}

}  // namespace coverframe
