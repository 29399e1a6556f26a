// SPDX-License-Identifier: BSD-3-Clause
// What water covers: the wet part of a triangle and the outline of a pond.
#include <algorithm>
#include <map>
#include <utility>

#include "coverframe/film/ponds.hpp"
#include "film/kernel/wet.hpp"

namespace coverframe {

namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

}  // namespace

WetPart wet_part(const TriangleMesh& mesh, std::size_t triangle, double level) {
    const std::array<int, 3>& t = mesh.triangles[triangle];
    const kernel::WetMoments m = kernel::wet_moments(
        {level - mesh.nodes[at(t[0])][2], level - mesh.nodes[at(t[1])][2], level - mesh.nodes[at(t[2])][2]});
    const double area = plan_area(mesh, triangle);
    WetPart part;
    part.area = area * m.area;
    for (std::size_t i = 0; i < 3; ++i) part.share[i] = area * m.depth(static_cast<Eigen::Index>(i));
    part.volume = part.share[0] + part.share[1] + part.share[2];
    return part;
}

std::vector<std::vector<std::array<double, 2>>> outline_of(const TriangleMesh& mesh, const Pond& pond) {
    using Edge = std::pair<int, int>;
    std::vector<bool> wet(mesh.nodes.size(), false);
    for (const int node : pond.nodes) wet[at(node)] = true;
    // Along the edge of the water with the water to one side: where the line enters a triangle and where it leaves it.
    std::map<Edge, Edge> onward;
    std::map<Edge, bool> entered;
    for (const auto& t : mesh.triangles) {
        Edge in{-1, -1}, out{-1, -1};
        for (std::size_t k = 0; k < 3; ++k) {
            const int a = t[k];
            const int b = t[(k + 1) % 3];
            if (wet[at(a)] == wet[at(b)]) continue;
            (wet[at(a)] ? in : out) = std::minmax(a, b);
        }
        if (in.first < 0) continue;
        onward[in] = out;
        entered[out] = true;
    }
    const auto crossing = [&](const Edge& edge) {
        const auto& a = mesh.nodes[at(edge.first)];
        const auto& b = mesh.nodes[at(edge.second)];
        const double s = std::clamp((pond.level - a[2]) / (b[2] - a[2]), 0.0, 1.0);
        return std::array<double, 2>{a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1])};
    };
    std::vector<std::vector<std::array<double, 2>>> lines;
    const auto follow = [&](Edge edge) {
        std::vector<std::array<double, 2>> line{crossing(edge)};
        for (auto next = onward.find(edge); next != onward.end(); next = onward.find(edge)) {
            edge = next->second;
            onward.erase(next);
            line.push_back(crossing(edge));
        }
        lines.push_back(std::move(line));
    };
    std::vector<Edge> open;
    for (const auto& [edge, next] : onward) {
        if (entered.find(edge) == entered.end()) open.push_back(edge);
    }
    for (const Edge& edge : open) follow(edge);
    while (!onward.empty()) follow(onward.begin()->first);
    return lines;
}

}  // namespace coverframe
