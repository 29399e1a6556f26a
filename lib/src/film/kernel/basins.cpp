// SPDX-License-Identifier: BSD-3-Clause
#include "film/kernel/basins.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "coverframe/base/error.hpp"

namespace coverframe::kernel {

namespace {

constexpr int drains = -1;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

class Flooding {
public:
    Flooding(const std::vector<std::array<double, 3>>& places, const Lists& neighbours, const std::vector<bool>& outlet)
        : places_(places), neighbours_(neighbours), outlet_(outlet), joined_(places.size()) {
        std::iota(joined_.begin(), joined_.end(), 0);
        basin_.assign(places.size(), drains);
        flooded_.assign(places.size(), false);
        found_.runs_to.assign(places.size(), drains);
    }

    Basins run() {
        std::vector<int> order(places_.size());
        std::iota(order.begin(), order.end(), 0);
        std::stable_sort(order.begin(), order.end(),
                         [&](int a, int b) { return places_[at(a)][2] < places_[at(b)][2]; });
        for (const int node : order) flood(node);
        for (const int node : order) {
            if (basin_[at(part_of(node))] == drains) continue;
            throw InputError(
                "film.ponds.outlet", "/outlet", std::to_string(node),
                "water on node " + std::to_string(node) + " finds no way off the surface; give it an outlet");
        }
        return std::move(found_);
    }

private:
    /// A part under water that touches the node being flooded, and the steepest way from the node down into it.
    struct Below {
        int part = 0;
        int way = 0;
        double steepness = 0;
    };

    /// The node that stands for the part a node is in.
    int part_of(int node) {
        while (joined_[at(node)] != node) node = joined_[at(node)] = joined_[at(joined_[at(node)])];
        return node;
    }

    double steepness(int from, int to) const {
        const auto& a = places_[at(from)];
        const auto& b = places_[at(to)];
        return (a[2] - b[2]) / std::hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
    }

    void look_below(int node) {
        below_.clear();
        for (const int* n = neighbours_.begin(at(node)); n != neighbours_.end(at(node)); ++n) {
            if (!flooded_[at(*n)]) continue;
            const int part = part_of(*n);
            const double steep = steepness(node, *n);
            const auto known =
                std::find_if(below_.begin(), below_.end(), [&](const Below& b) { return b.part == part; });
            if (known == below_.end()) {
                below_.push_back({part, *n, steep});
            } else if (steep > known->steepness) {
                *known = {part, *n, steep};
            }
        }
    }

    [[nodiscard]] int runs_to(const Below& below) const { return found_.runs_to[at(below.way)]; }

    int add_basin() {
        found_.all.emplace_back();
        return static_cast<int>(found_.all.size()) - 1;
    }

    /// What the node's part is from now on.
    void join(int node, int basin) {
        for (const Below& b : below_) joined_[at(b.part)] = node;
        basin_[at(node)] = basin;
        flooded_[at(node)] = true;
        if (basin != drains) found_.all[at(basin)].own.push_back(node);
    }

    /// Every basin below ends here.
    void spill(int node, int onward) {
        for (const Below& b : below_) {
            const int basin = basin_[at(b.part)];
            if (basin == drains) continue;
            found_.all[at(basin)].spill = node;
            found_.all[at(basin)].onward = onward;
        }
        join(node, drains);
    }

    void merge(int node) {
        int whole = basin_[at(below_[0].part)];
        for (std::size_t i = 1; i < below_.size(); ++i) {
            const int other = basin_[at(below_[i].part)];
            const int parent = add_basin();
            for (const int child : {whole, other}) {
                found_.all[at(child)].spill = node;
                found_.all[at(child)].parent = parent;
            }
            Basin& p = found_.all[at(parent)];
            p.left = whole;
            p.right = other;
            p.from_left = runs_to(below_[i]);
            p.from_right = runs_to(below_[0]);
            whole = parent;
        }
        join(node, whole);
    }

    void flood(int node) {
        look_below(node);
        if (outlet_[at(node)]) return spill(node, drains);
        if (below_.empty()) {
            found_.runs_to[at(node)] = add_basin();
            return join(node, found_.runs_to[at(node)]);
        }
        const auto flatter = [](const Below& a, const Below& b) { return a.steepness < b.steepness; };
        found_.runs_to[at(node)] = runs_to(*std::max_element(below_.begin(), below_.end(), flatter));
        const Below* off = nullptr;
        for (const Below& b : below_) {
            if (basin_[at(b.part)] == drains && (off == nullptr || b.steepness > off->steepness)) off = &b;
        }
        off != nullptr ? spill(node, runs_to(*off)) : merge(node);
    }

    const std::vector<std::array<double, 3>>& places_;
    const Lists& neighbours_;
    const std::vector<bool>& outlet_;
    std::vector<int> joined_;
    std::vector<int> basin_;  ///< at the node that stands for a part: the basin it is, or `drains`
    std::vector<bool> flooded_;
    std::vector<Below> below_;
    Basins found_;
};

}  // namespace

int Basins::root_of(int basin) const {
    while (all[at(basin)].parent >= 0) basin = all[at(basin)].parent;
    return basin;
}

std::vector<int> Basins::nodes_of(int basin) const {
    std::vector<int> nodes;
    std::vector<int> waiting{basin};
    while (!waiting.empty()) {
        const Basin& b = all[at(waiting.back())];
        waiting.pop_back();
        nodes.insert(nodes.end(), b.own.begin(), b.own.end());
        if (!b.is_lowest()) waiting.insert(waiting.end(), {b.left, b.right});
    }
    return nodes;
}

Basins basins_of(const std::vector<std::array<double, 3>>& places, const Lists& neighbours,
                 const std::vector<bool>& outlet) {
    return Flooding(places, neighbours, outlet).run();
}

}  // namespace coverframe::kernel
