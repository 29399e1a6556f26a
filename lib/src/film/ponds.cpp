// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/ponds.hpp"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <limits>
#include <numeric>
#include <string>
#include <utility>

#include "coverframe/base/error.hpp"
#include "film/kernel/basins.hpp"

namespace coverframe {

namespace {

using kernel::Basin;
using kernel::Basins;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

void require_outlets(const TriangleMesh& mesh, const std::vector<bool>& outlet) {
    require_sound(mesh);
    if (outlet.size() != mesh.nodes.size()) {
        throw InputError(
            "film.ponds.size", "/outlet", std::to_string(outlet.size()),
            "say of each of the " + std::to_string(mesh.nodes.size()) + " nodes whether water leaves there");
    }
}

/// Hollows of one surface and the water in them.
class Hollows {
public:
    Hollows(const TriangleMesh& mesh, const std::vector<bool>& outlet)
        : mesh_(mesh),
          around_(triangles_around(mesh)),
          basins_(kernel::basins_of(mesh.nodes, neighbours_of(mesh), outlet)),
          seen_(mesh.triangles.size(), 0) {
        capacity_.reserve(basins_.all.size());
        for (int b = 0; b < static_cast<int>(basins_.all.size()); ++b) capacity_.push_back(content(b, spill_height(b)));
    }

    /// Fills every root to its spill.
    Water brim() {
        Water water;
        water.run_off = std::numeric_limits<double>::infinity();
        for (int b = 0; b < static_cast<int>(basins_.all.size()); ++b) {
            if (basins_.all[at(b)].parent < 0) add_pond(b, spill_height(b), true, water);
        }
        return finished(std::move(water));
    }

    Water filled(const std::vector<double>& fallen) {
        Water water;
        held_.assign(basins_.all.size(), 0.0);
        std::vector<double> arrives(basins_.all.size(), 0.0);
        for (std::size_t n = 0; n < fallen.size(); ++n) {
            const int lowest = basins_.runs_to[n];
            (lowest < 0 ? water.run_off : arrives[at(lowest)]) += fallen[n];
        }
        for (int b = 0; b < static_cast<int>(arrives.size()); ++b) water.run_off += pour(b, arrives[at(b)]);
        for (int b = 0; b < static_cast<int>(basins_.all.size()); ++b) {
            if (basins_.all[at(b)].parent < 0) add_ponds(b, water);
        }
        return finished(std::move(water));
    }

private:
    [[nodiscard]] double spill_height(int basin) const { return mesh_.nodes[at(basins_.all[at(basin)].spill)][2]; }

    /// Water that stands in a basin at a level not over its spill.
    double content(int basin, double level) {
        double volume = 0;
        for_wet(basins_.nodes_of(basin), level, [&](const WetPart& part) { volume += part.volume; });
        return volume;
    }

    /// Each triangle with a corner under the level once.
    template <class Use>
    void for_wet(const std::vector<int>& nodes, double level, Use use) {
        ++mark_;
        for (const int node : nodes) {
            if (mesh_.nodes[at(node)][2] >= level) continue;
            for (const int* t = around_.begin(at(node)); t != around_.end(at(node)); ++t) {
                if (std::exchange(seen_[at(*t)], mark_) != mark_) use(wet_part(mesh_, at(*t), level));
            }
        }
    }

    /// Room over the spills of what a basin is made of.
    [[nodiscard]] double room(int basin) const {
        const Basin& b = basins_.all[at(basin)];
        if (b.is_lowest()) return capacity_[at(basin)];
        return std::max(0.0, capacity_[at(basin)] - capacity_[at(b.left)] - capacity_[at(b.right)]);
    }

    /// Takes up what a basin has room for over what it is made of; gives back the rest.
    double keep(int basin, double volume) {
        const double free = room(basin) - held_[at(basin)];
        if (volume >= free) {
            held_[at(basin)] = room(basin);
            return volume - free;
        }
        held_[at(basin)] += volume;
        return 0;
    }

    /// Water that arrives in a lowest basin of `top` fills it, then what lies beside it, then what holds both, and so
    /// on upwards. Gives back what `top` has no room for.
    double pour_within(int top, int lowest, double volume) {
        volume = keep(lowest, volume);
        for (int b = lowest; volume > 0 && b != top; b = basins_.all[at(b)].parent) {
            const int parent = basins_.all[at(b)].parent;
            const Basin& p = basins_.all[at(parent)];
            const int beside = p.left == b ? p.right : p.left;
            if (!is_full(beside)) volume = pour_within(beside, p.left == b ? p.from_left : p.from_right, volume);
            volume = keep(parent, volume);
        }
        return volume;
    }

    [[nodiscard]] bool is_full(int basin) const { return held_[at(basin)] >= room(basin) && holds_all_below(basin); }

    [[nodiscard]] bool holds_all_below(int basin) const {
        const Basin& b = basins_.all[at(basin)];
        return b.is_lowest() || (is_full(b.left) && is_full(b.right));
    }

    /// Gives what leaves the surface.
    double pour(int lowest, double volume) {
        while (lowest >= 0 && volume > 0) {
            const int root = basins_.root_of(lowest);
            volume = pour_within(root, lowest, volume);
            lowest = basins_.all[at(root)].onward;
        }
        return volume;
    }

    /// The ponds of a basin: one where it holds water over what it is made of, else those in it.
    void add_ponds(int basin, Water& water) {
        std::vector<int> waiting{basin};
        while (!waiting.empty()) {
            const int b = waiting.back();
            waiting.pop_back();
            const Basin& basin_of = basins_.all[at(b)];
            if (held_[at(b)] > 0) {
                add_pond(b, level_of(b), held_[at(b)] >= room(b), water);
            } else if (!basin_of.is_lowest()) {
                waiting.insert(waiting.end(), {basin_of.left, basin_of.right});
            }
        }
    }

    /// The level at which a basin holds its water.
    double level_of(int basin) {
        const Basin& b = basins_.all[at(basin)];
        const double top = spill_height(basin);
        if (held_[at(basin)] >= room(basin)) return top;
        const double wanted = held_[at(basin)] + (b.is_lowest() ? 0.0 : capacity_[at(b.left)] + capacity_[at(b.right)]);
        const double bottom = b.is_lowest() ? mesh_.nodes[at(b.own.front())][2] : spill_height(b.left);
        const auto excess = [&](double level) { return content(basin, level) - wanted; };
        const double low = excess(bottom);
        const double high = excess(top);
        if (low >= 0) return bottom;
        if (high <= 0) return top;
        std::uintmax_t most = 200;
        const auto found = boost::math::tools::toms748_solve(excess, bottom, top, low, high,
                                                             boost::math::tools::eps_tolerance<double>(), most);
        return 0.5 * (found.first + found.second);
    }

    void add_pond(int basin, double level, bool full, Water& water) {
        Pond pond;
        pond.level = level;
        pond.spill = basins_.all[at(basin)].spill;
        pond.full = full;
        const std::vector<int> nodes = basins_.nodes_of(basin);
        for_wet(nodes, level, [&](const WetPart& part) {
            pond.volume += part.volume;
            pond.area += part.area;
        });
        for (const int node : nodes) {
            const double depth = level - mesh_.nodes[at(node)][2];
            if (!(depth > 0)) continue;
            pond.nodes.push_back(node);
            if (depth <= pond.depth) continue;
            pond.depth = depth;
            pond.deepest = node;
        }
        std::sort(pond.nodes.begin(), pond.nodes.end());
        if (pond.volume > 0) water.ponds.push_back(std::move(pond));
    }

    Water finished(Water water) const {
        std::stable_sort(water.ponds.begin(), water.ponds.end(),
                         [](const Pond& a, const Pond& b) { return a.volume > b.volume; });
        water.depth.assign(mesh_.nodes.size(), 0.0);
        for (const Pond& pond : water.ponds) {
            for (const int node : pond.nodes) water.depth[at(node)] = pond.level - mesh_.nodes[at(node)][2];
        }
        return water;
    }

    const TriangleMesh& mesh_;
    Lists around_;
    Basins basins_;
    std::vector<double> capacity_;  ///< up to the spill, of each basin [m3]
    std::vector<double> held_;      ///< over what a basin is made of [m3]
    std::vector<int> seen_;         ///< last mark of each triangle
    int mark_ = 0;
};

}  // namespace

double Water::volume() const {
    return std::accumulate(ponds.begin(), ponds.end(), 0.0,
                           [](double sum, const Pond& pond) { return sum + pond.volume; });
}

Water water_to_the_brim(const TriangleMesh& mesh, const std::vector<bool>& outlet) {
    require_outlets(mesh, outlet);
    return Hollows(mesh, outlet).brim();
}

Water water_of(const TriangleMesh& mesh, const std::vector<bool>& outlet, const std::vector<double>& fallen) {
    require_outlets(mesh, outlet);
    const bool good = fallen.size() == mesh.nodes.size() &&
                      std::all_of(fallen.begin(), fallen.end(), [](double v) { return std::isfinite(v) && v >= 0; });
    if (!good) {
        throw InputError("film.ponds.fallen", "/fallen", std::to_string(fallen.size()),
                         "give one volume of water for each node, finite and not negative");
    }
    return Hollows(mesh, outlet).filled(fallen);
}

Water water_after(const TriangleMesh& mesh, const TriangleMesh& drawn, const std::vector<bool>& outlet,
                  const Rain& rain) {
    if (rain.kind == Rain::Kind::to_the_brim) return water_to_the_brim(mesh, outlet);
    std::vector<double> fallen = plan_area_of_nodes(drawn);
    for (double& volume : fallen) volume *= rain.kind == Rain::Kind::depth ? rain.depth : 0;
    return water_of(mesh, outlet, fallen);
}

std::vector<double> levels_over(const TriangleMesh& mesh, const Water& water) {
    constexpr double dry = -std::numeric_limits<double>::infinity();
    std::vector<double> node(mesh.nodes.size(), dry);
    for (const Pond& pond : water.ponds) {
        for (const int n : pond.nodes) node[at(n)] = pond.level;
    }
    std::vector<double> level(mesh.triangles.size(), dry);
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        for (const int n : mesh.triangles[t]) level[t] = std::max(level[t], node[at(n)]);
    }
    return level;
}

std::vector<double> levels_to_the_brim(const std::vector<std::array<double, 3>>& places, const Lists& neighbours,
                                       const std::vector<bool>& outlet) {
    const Basins basins = kernel::basins_of(places, neighbours, outlet);
    std::vector<double> levels;
    levels.reserve(places.size());
    for (const auto& place : places) levels.push_back(place[2]);
    for (int b = 0; b < static_cast<int>(basins.all.size()); ++b) {
        if (basins.all[at(b)].parent >= 0) continue;
        const double level = places[at(basins.all[at(b)].spill)][2];
        for (const int node : basins.nodes_of(b)) levels[at(node)] = std::max(level, levels[at(node)]);
    }
    return levels;
}

}  // namespace coverframe
