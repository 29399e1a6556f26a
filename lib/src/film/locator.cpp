// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/locator.hpp"

#include <algorithm>
#include <cmath>

namespace coverframe {

namespace {

/// A point this far outside a triangle, as a share of it, still counts as on its edge.
constexpr double edge = 1e-9;

const std::array<double, 3>& node(const TriangleMesh& mesh, int n) { return mesh.nodes[static_cast<std::size_t>(n)]; }

/// Least and greatest of a coordinate.
std::array<double, 2> range(const TriangleMesh& mesh, const std::array<int, 3>& t, std::size_t axis) {
    return {std::min({node(mesh, t[0])[axis], node(mesh, t[1])[axis], node(mesh, t[2])[axis]}),
            std::max({node(mesh, t[0])[axis], node(mesh, t[1])[axis], node(mesh, t[2])[axis]})};
}

}  // namespace

std::array<double, 3> Located::place(const TriangleMesh& mesh) const {
    const std::array<int, 3>& t = mesh.triangles[static_cast<std::size_t>(triangle)];
    std::array<double, 3> place{};
    for (std::size_t d = 0; d < 3; ++d) {
        place[d] = share[0] * node(mesh, t[0])[d] + share[1] * node(mesh, t[1])[d] + share[2] * node(mesh, t[2])[d];
    }
    return place;
}

Locator::Locator(const TriangleMesh& mesh) : mesh_(mesh) {
    std::array<double, 2> high{};
    for (std::size_t axis = 0; axis < 2; ++axis) {
        low_[axis] = high[axis] = mesh.nodes.front()[axis];
        for (const auto& place : mesh.nodes) {
            low_[axis] = std::min(low_[axis], place[axis]);
            high[axis] = std::max(high[axis], place[axis]);
        }
    }
    size_ = std::sqrt((high[0] - low_[0]) * (high[1] - low_[1]) / static_cast<double>(mesh.triangles.size()));
    for (std::size_t axis = 0; axis < 2; ++axis) count_[axis] = 1 + static_cast<int>((high[axis] - low_[axis]) / size_);
    cells_.resize(static_cast<std::size_t>(count_[0] * count_[1]));
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        const auto x = range(mesh, mesh.triangles[t], 0);
        const auto y = range(mesh, mesh.triangles[t], 1);
        for (int j = column(1, y[0]); j <= column(1, y[1]); ++j) {
            for (int i = column(0, x[0]); i <= column(0, x[1]); ++i) cell(i, j).push_back(static_cast<int>(t));
        }
    }
}

int Locator::column(std::size_t axis, double value) const {
    const double place = std::floor((value - low_[axis]) / size_);
    return static_cast<int>(std::clamp(place, 0.0, static_cast<double>(count_[axis] - 1)));
}

std::optional<Located> Locator::at(double x, double y) const {
    const auto index = static_cast<std::size_t>(column(1, y) * count_[0] + column(0, x));
    for (const int t : cells_[index]) {
        const std::array<int, 3>& corner = mesh_.triangles[static_cast<std::size_t>(t)];
        const auto& a = node(mesh_, corner[0]);
        const auto& b = node(mesh_, corner[1]);
        const auto& c = node(mesh_, corner[2]);
        const double whole = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
        Located found{t, {}};
        found.share[1] = ((x - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (y - a[1])) / whole;
        found.share[2] = ((b[0] - a[0]) * (y - a[1]) - (x - a[0]) * (b[1] - a[1])) / whole;
        found.share[0] = 1 - found.share[1] - found.share[2];
        if (*std::min_element(found.share.begin(), found.share.end()) >= -edge) return found;
    }
    return std::nullopt;
}

}  // namespace coverframe
