// SPDX-License-Identifier: BSD-3-Clause
// Where water on a field of heights collects: its basins, how they lie in one another, and where each one spills.
//
// Heights are given at the nodes of a graph; water runs along its edges to lower nodes and leaves at outlets. Flooding
// by rising height, node after node (equal heights by their number):
//   * a node without a lower neighbour begins a basin;
//   * a node that joins two basins is where they spill into one another: above it they are one, their parent;
//   * a node that joins a basin with a part that drains, or an outlet, is where the basin spills for good.
// A basin without a parent is a root: what it spills runs on, downhill from its spill node, into another root that
// spills no higher, or to an outlet. The level of full water at a node is the height of the spill of its root, or its
// own if that is higher: what a priority flood gives.
//
// Source: Barnes, Callaghan and Wickert, Computing water flow through complex landscapes, Earth Surface Dynamics 9
// (2021): the hierarchy of depressions (abstract read; the form here is our own).
#pragma once

#include <vector>

#include "coverframe/film/mesh.hpp"

namespace coverframe::kernel {

struct Basin {
    int spill = -1;   ///< the node over which it spills
    int parent = -1;  ///< -1: root
    int left = -1;    ///< the basins it is made of; -1: none, water begins to stand at one lowest node
    int right = -1;
    int from_left = -1;    ///< lowest basin where water arrives that spills out of `left` into `right`
    int from_right = -1;   ///< and the other way
    int onward = -1;       ///< of a root: lowest basin where its spilt water arrives; -1: it leaves at an outlet
    std::vector<int> own;  ///< nodes over the spills of `left` and `right`, in rising order

    [[nodiscard]] bool is_lowest() const { return left < 0; }
};

struct Basins {
    std::vector<Basin> all;    ///< a basin stands behind those it is made of
    std::vector<int> runs_to;  ///< lowest basin that water put on a node arrives in; -1: it leaves at an outlet

    [[nodiscard]] int root_of(int basin) const;
    /// All nodes of a basin, those of the basins it is made of first.
    [[nodiscard]] std::vector<int> nodes_of(int basin) const;
};

/// \param places  of the nodes; height is the third number, steepness is measured along the edges
/// \throws InputError film.ponds.outlet if a part of the graph has no outlet
[[nodiscard]] Basins basins_of(const std::vector<std::array<double, 3>>& places, const Lists& neighbours,
                               const std::vector<bool>& outlet);

}  // namespace coverframe::kernel
