// SPDX-License-Identifier: BSD-3-Clause
#include "assess/surface_rail.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <span>

namespace coverframe::assess_detail {
namespace {

using checks_detail::RailPull;
using checks_detail::RailPulls;
using Place = std::array<double, 3>;

constexpr double piece_length = 0.3;  ///< [m]
constexpr double across = 1e-6;       ///< a rail that goes less far along the boat runs across it [m]

std::size_t at(int i) { return static_cast<std::size_t>(i); }

double between(double a, double b, double share) { return a + share * (b - a); }

double distance(const Place& a, const Place& b) { return std::hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]); }

/// x of the first and the last column.
std::array<double, 2> ends_of(const CoverSurface& surface) {
    std::array<double, 2> ends{};
    bool first = true;
    for (std::size_t n = 0; n < surface.cover.frame_node.size(); ++n) {
        if (surface.cover.frame_node[n] < 0) continue;
        const double x = surface.cover.mesh.nodes[n][0];
        ends = first ? std::array{x, x} : std::array{std::min(ends[0], x), std::max(ends[1], x)};
        first = false;
    }
    return ends;
}

/// A stretch of rail between two of its nodes, with what pulls on it.
struct Stretch {
    Place from{};
    Place to{};
    double length = 0;
    std::array<Place, 2> force{};  ///< on the half at `from`, and on that at `to` [N]

    [[nodiscard]] bool starboard() const { return from[1] + to[1] > 0; }
    /// Forward of the ridge, beside it, aft of it; across the boat at either end.
    [[nodiscard]] int zone(const std::array<double, 2>& ends) const {
        const double x = 0.5 * (from[0] + to[0]);
        const int along = x < ends[0] ? -1 : x > ends[1] ? 1 : 0;
        return std::abs(to[0] - from[0]) < across ? 2 * along : along;
    }
};

std::vector<Stretch> stretches_of(const CoverSurface& surface, const SurfaceState& state,
                                  const std::vector<int>& line) {
    std::vector<Stretch> all;
    for (std::size_t i = 1; i < line.size(); ++i) {
        const Place& from = surface.cover.mesh.nodes[at(line[i - 1])];
        const Place& to = surface.cover.mesh.nodes[at(line[i])];
        all.push_back({from, to, distance(from, to), {}});
    }
    const bool ring = line.front() == line.back();
    // A node pulls on half the stretch before it and half the one behind it.
    for (std::size_t i = ring ? 1 : 0; i < line.size(); ++i) {
        Stretch* before = i > 0 ? &all[i - 1] : nullptr;
        Stretch* behind = i < all.size() ? &all[i] : ring ? &all.front() : nullptr;
        const double length = (before ? before->length : 0) + (behind ? behind->length : 0);
        const Place& force = state.film_on_boat[at(line[i])];
        for (std::size_t d = 0; d < 3; ++d) {
            if (before) before->force[1][d] += force[d] * before->length / length;
            if (behind) behind->force[0][d] += force[d] * behind->length / length;
        }
    }
    return all;
}

/// Stretches of one side without a corner as pieces of even length.
void cut(std::span<const Stretch> stretches, std::vector<RailPull>& pulls) {
    double whole = 0;
    for (const Stretch& s : stretches) whole += s.length;
    const auto pieces = at(std::max(1, static_cast<int>(std::lround(whole / piece_length))));
    const double each = whole / static_cast<double>(pieces);
    std::vector<Place> forces(pieces);
    std::vector<Place> marks{stretches.front().from};
    double past = 0;
    for (const Stretch& s : stretches) {
        for (std::size_t half = 0; half < 2; ++half) {
            const double from = past + 0.5 * static_cast<double>(half) * s.length;
            const double to = from + 0.5 * s.length;
            for (std::size_t p = 0; p < pieces; ++p) {
                const double begins = each * static_cast<double>(p);
                const double ends = p + 1 == pieces ? whole : begins + each;
                const double share = (std::min(to, ends) - std::max(from, begins)) / (to - from);
                if (share <= 0) continue;
                for (std::size_t d = 0; d < 3; ++d) forces[p][d] += share * s.force[half][d];
            }
        }
        while (marks.size() < pieces && each * static_cast<double>(marks.size()) <= past + s.length) {
            const double share = (each * static_cast<double>(marks.size()) - past) / s.length;
            Place& mark = marks.emplace_back();
            for (std::size_t d = 0; d < 3; ++d) mark[d] = between(s.from[d], s.to[d], share);
        }
        past += s.length;
    }
    marks.push_back(stretches.back().to);
    for (std::size_t p = 0; p < pieces; ++p) {
        const Place& a = marks[p];
        const Place& b = marks[p + 1];
        RailPull pull{std::min(a[0], b[0]), std::max(a[0], b[0]), 0, forces[p]};
        if (pull.to - pull.from < across) pull.to = pull.from;
        pull.length = std::max(pull.to - pull.from, std::abs(b[1] - a[1]));
        for (double& force : pull.force) force /= pull.length;
        pulls.push_back(pull);
    }
}

double size_of(const Place& force) { return std::hypot(force[0], force[1], force[2]); }

/// Mean of the strips between two x; empty where there are none [N/m].
std::optional<double> pull_over(const std::vector<RailPull>& strips, double from, double to) {
    Place sum{};
    double covered = 0;
    for (const RailPull& strip : strips) {
        const double length = std::min(strip.to, to) - std::max(strip.from, from);
        if (length <= 0) continue;
        covered += length;
        for (std::size_t d = 0; d < 3; ++d) sum[d] += strip.force[d] * length;
    }
    if (covered == 0) return std::nullopt;
    return size_of(sum) / covered;
}

}  // namespace

RailPulls rail_pulls(const CoverSurface& surface, const SurfaceState& state) {
    RailPulls pulls;
    const std::array<double, 2> ends = ends_of(surface);
    for (const std::vector<int>& line : surface.cover.rails) {
        const std::vector<Stretch> stretches = stretches_of(surface, state, line);
        for (auto from = stretches.begin(); from != stretches.end();) {
            const auto to = std::find_if(from, stretches.end(), [&](const Stretch& s) {
                return s.starboard() != from->starboard() || s.zone(ends) != from->zone(ends);
            });
            cut({from, to}, pulls[from->starboard() ? 1 : 0]);
            from = to;
        }
    }
    return pulls;
}

RailPulls between_ends(const CoverSurface& surface, RailPulls pulls) {
    const std::array<double, 2> ends = ends_of(surface);
    for (std::vector<RailPull>& side : pulls) {
        std::erase_if(side, [&](const RailPull& p) {
            const double x = 0.5 * (p.from + p.to);
            return x < ends[0] || x > ends[1];
        });
    }
    return pulls;
}

RailPulls on_top(RailPulls surface, const MorePull& of) {
    for (std::size_t side = 0; side < 2; ++side) {
        for (RailPull& pull : surface[side]) {
            const double now = size_of(pull.force);
            if (now == 0) continue;
            const std::optional<double> strips = pull_over(of.strips[side], pull.from, pull.to);
            const std::optional<double> judged = pull_over(of.judged[side], pull.from, pull.to);
            const double more = strips && judged ? *judged + of.factor * (now - *strips) : of.factor * now + of.tighter;
            const double grown = std::max(now, more) / now;
            for (double& force : pull.force) force *= grown;
        }
    }
    return surface;
}

}  // namespace coverframe::assess_detail
