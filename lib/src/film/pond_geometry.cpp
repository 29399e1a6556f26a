// SPDX-License-Identifier: BSD-3-Clause
// What water covers: the wet part of a triangle and the outline of a pond.
#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "coverframe/film/ponds.hpp"
#include "film/kernel/wet.hpp"

namespace coverframe {

namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

using Line = std::vector<std::array<double, 2>>;
using Edge = std::pair<int, int>;

/// The line between nodes that are inside and those that are not, through `height` on each edge it crosses.
class Border {
public:
    Border(const TriangleMesh& mesh, const std::vector<bool>& inside, double height) : mesh_(mesh), height_(height) {
        for (const auto& t : mesh.triangles) {
            Edge in{-1, -1}, out{-1, -1};
            for (std::size_t k = 0; k < 3; ++k) {
                const int a = t[k];
                const int b = t[(k + 1) % 3];
                if (inside[at(a)] == inside[at(b)]) continue;
                (inside[at(a)] ? in : out) = std::minmax(a, b);
            }
            if (in.first < 0) continue;
            onward_[in] = out;
            entered_.insert(out);
        }
    }

    std::vector<Line> lines() {
        std::vector<Line> all;
        std::vector<Edge> open;
        for (const auto& step : onward_) {
            if (entered_.find(step.first) == entered_.end()) open.push_back(step.first);
        }
        for (const Edge& edge : open) all.push_back(follow(edge));
        while (!onward_.empty()) all.push_back(follow(onward_.begin()->first));
        return all;
    }

private:
    [[nodiscard]] std::array<double, 2> crossing(const Edge& edge) const {
        const auto& a = mesh_.nodes[at(edge.first)];
        const auto& b = mesh_.nodes[at(edge.second)];
        const double s = std::clamp((height_ - a[2]) / (b[2] - a[2]), 0.0, 1.0);
        return {a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1])};
    }

    Line follow(Edge edge) {
        Line line{crossing(edge)};
        for (auto next = onward_.find(edge); next != onward_.end(); next = onward_.find(edge)) {
            edge = next->second;
            onward_.erase(next);
            line.push_back(crossing(edge));
        }
        return line;
    }

    const TriangleMesh& mesh_;
    double height_;
    std::map<Edge, Edge> onward_;  ///< where the line enters a triangle, and where it leaves it
    std::set<Edge> entered_;
};

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

std::vector<Line> outline_of(const TriangleMesh& mesh, const Pond& pond) {
    std::vector<bool> wet(mesh.nodes.size(), false);
    for (const int node : pond.nodes) wet[at(node)] = true;
    return Border(mesh, wet, pond.level).lines();
}

std::vector<Line> contour_of(const TriangleMesh& mesh, double height) {
    std::vector<bool> under(mesh.nodes.size(), false);
    for (std::size_t n = 0; n < under.size(); ++n) under[n] = mesh.nodes[n][2] < height;
    return Border(mesh, under, height).lines();
}

}  // namespace coverframe
