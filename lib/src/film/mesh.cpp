// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/mesh.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "coverframe/base/error.hpp"

namespace coverframe {

namespace {

/// Twice the area seen from above, positive where the triangle turns from x to y.
double turn(const TriangleMesh& mesh, const std::array<int, 3>& t) {
    const auto& a = mesh.nodes[static_cast<std::size_t>(t[0])];
    const auto& b = mesh.nodes[static_cast<std::size_t>(t[1])];
    const auto& c = mesh.nodes[static_cast<std::size_t>(t[2])];
    return (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
}

/// From pairs (thing, item) to lists, without doubles.
Lists lists_of(std::vector<std::pair<int, int>> pairs, std::size_t things) {
    std::sort(pairs.begin(), pairs.end());
    pairs.erase(std::unique(pairs.begin(), pairs.end()), pairs.end());
    Lists lists;
    lists.first.assign(things + 1, 0);
    lists.items.reserve(pairs.size());
    for (const auto& [thing, item] : pairs) {
        ++lists.first[static_cast<std::size_t>(thing) + 1];
        lists.items.push_back(item);
    }
    for (std::size_t i = 0; i < things; ++i) lists.first[i + 1] += lists.first[i];
    return lists;
}

/// Every edge as often as triangles have it, lower node first, sorted.
std::vector<std::pair<int, int>> edges_of(const TriangleMesh& mesh) {
    std::vector<std::pair<int, int>> edges;
    edges.reserve(3 * mesh.triangles.size());
    for (const auto& t : mesh.triangles) {
        for (std::size_t k = 0; k < 3; ++k) edges.emplace_back(std::minmax(t[k], t[(k + 1) % 3]));
    }
    std::sort(edges.begin(), edges.end());
    return edges;
}

std::string path(const char* list, std::size_t i) { return std::string("/mesh/") + list + "/" + std::to_string(i); }

void check_nodes(const TriangleMesh& mesh, std::vector<Problem>& problems) {
    std::vector<bool> used(mesh.nodes.size(), false);
    for (const auto& t : mesh.triangles) {
        for (const int node : t) used[static_cast<std::size_t>(node)] = true;
    }
    for (std::size_t n = 0; n < mesh.nodes.size(); ++n) {
        if (!std::all_of(mesh.nodes[n].begin(), mesh.nodes[n].end(), [](double v) { return std::isfinite(v); })) {
            problems.push_back({"film.mesh.finite", path("nodes", n), "", "a place is not a finite number"});
        }
        if (!used[n]) problems.push_back({"film.mesh.unused", path("nodes", n), "", "the node has no triangle"});
    }
}

void check_triangles(const TriangleMesh& mesh, std::vector<Problem>& problems) {
    const double first = turn(mesh, mesh.triangles.front());
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        if (turn(mesh, mesh.triangles[t]) * first > 0) continue;
        problems.push_back({"film.mesh.fold", path("triangles", t), "",
                            "seen from above the triangle has no area or lies under another one"});
    }
    const auto edges = edges_of(mesh);
    for (std::size_t e = 2; e < edges.size(); ++e) {
        if (edges[e] != edges[e - 2]) continue;
        problems.push_back({"film.mesh.edge", "/mesh/triangles",
                            std::to_string(edges[e].first) + ", " + std::to_string(edges[e].second),
                            "more than two triangles meet at one edge"});
    }
}

}  // namespace

double plan_area(const TriangleMesh& mesh, std::size_t triangle) {
    return 0.5 * std::abs(turn(mesh, mesh.triangles[triangle]));
}

std::vector<double> plan_area_of_nodes(const TriangleMesh& mesh) {
    std::vector<double> area(mesh.nodes.size(), 0.0);
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        for (const int node : mesh.triangles[t]) area[static_cast<std::size_t>(node)] += plan_area(mesh, t) / 3;
    }
    return area;
}

Lists neighbours_of(const TriangleMesh& mesh) {
    std::vector<std::pair<int, int>> pairs;
    pairs.reserve(6 * mesh.triangles.size());
    for (const auto& [a, b] : edges_of(mesh)) {
        pairs.emplace_back(a, b);
        pairs.emplace_back(b, a);
    }
    return lists_of(std::move(pairs), mesh.nodes.size());
}

Lists triangles_around(const TriangleMesh& mesh) {
    std::vector<std::pair<int, int>> pairs;
    pairs.reserve(3 * mesh.triangles.size());
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        for (const int node : mesh.triangles[t]) pairs.emplace_back(node, static_cast<int>(t));
    }
    return lists_of(std::move(pairs), mesh.nodes.size());
}

std::vector<bool> border_of(const TriangleMesh& mesh) {
    std::vector<bool> border(mesh.nodes.size(), false);
    const auto edges = edges_of(mesh);
    for (std::size_t e = 0; e < edges.size(); ++e) {
        const bool shared = (e > 0 && edges[e - 1] == edges[e]) || (e + 1 < edges.size() && edges[e + 1] == edges[e]);
        if (shared) continue;
        border[static_cast<std::size_t>(edges[e].first)] = true;
        border[static_cast<std::size_t>(edges[e].second)] = true;
    }
    return border;
}

int folded_triangle(const TriangleMesh& drawn, const TriangleMesh& now) {
    for (std::size_t t = 0; t < now.triangles.size(); ++t) {
        if (!(turn(now, now.triangles[t]) * turn(drawn, drawn.triangles[t]) > 0)) return static_cast<int>(t);
    }
    return -1;
}

void require_sound(const TriangleMesh& mesh) {
    std::vector<Problem> problems;
    const int count = static_cast<int>(mesh.nodes.size());
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        for (const int node : mesh.triangles[t]) {
            if (node >= 0 && node < count) continue;
            problems.push_back({"film.mesh.node", path("triangles", t), std::to_string(node), "there is no such node"});
        }
    }
    if (mesh.triangles.empty()) problems.push_back({"film.mesh.empty", "/mesh", "", "the surface has no triangles"});
    if (problems.empty()) {
        check_nodes(mesh, problems);
        check_triangles(mesh, problems);
    }
    if (!problems.empty()) throw InputError(std::move(problems));
}

}  // namespace coverframe
