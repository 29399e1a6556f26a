// SPDX-License-Identifier: BSD-3-Clause
// Which triangle of a mesh lies under a point of the plan.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "coverframe/film/mesh.hpp"

namespace coverframe {

/// A point of a mesh: its triangle and the share of each corner in it.
struct Located {
    int triangle = 0;
    std::array<double, 3> share{};

    [[nodiscard]] std::array<double, 3> place(const TriangleMesh& mesh) const;
    [[nodiscard]] double height(const TriangleMesh& mesh) const { return place(mesh)[2]; }
};

/// Keeps the mesh, and is good for the places it has at the start.
class Locator {
public:
    explicit Locator(const TriangleMesh& mesh);

    /// Empty outside the mesh.
    [[nodiscard]] std::optional<Located> at(double x, double y) const;

private:
    [[nodiscard]] int column(std::size_t axis, double value) const;
    [[nodiscard]] std::vector<int>& cell(int i, int j) { return cells_[static_cast<std::size_t>(j * count_[0] + i)]; }

    const TriangleMesh& mesh_;
    std::array<double, 2> low_{};
    std::array<int, 2> count_{1, 1};
    double size_ = 1;                      ///< of a cell [m]
    std::vector<std::vector<int>> cells_;  ///< triangles that may reach into each
};

}  // namespace coverframe
