// SPDX-License-Identifier: BSD-3-Clause
#include "assess/film_pull.hpp"

#include <algorithm>

namespace coverframe::assess_detail {
namespace {

constexpr double radius = 0.15;  ///< of the disc [m]

}  // namespace

FilmPull::FilmPull(const CoverSurface& surface, const SurfaceState& state) {
    const TriangleMesh& mesh = surface.cover.mesh;
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        Piece& piece = pieces_.emplace_back();
        for (const int node : mesh.triangles[t]) {
            piece.x += mesh.nodes[static_cast<std::size_t>(node)][0] / 3;
            piece.y += mesh.nodes[static_cast<std::size_t>(node)][1] / 3;
        }
        piece.area = plan_area(mesh, t);
        piece.pull = state.triangles[t].first;
    }
    std::ranges::stable_sort(pieces_, {}, &Piece::x);
}

double FilmPull::mean_about(const Piece& middle) const {
    double area = 0;
    double pull = 0;
    const auto from = std::ranges::lower_bound(pieces_, middle.x - radius, {}, &Piece::x);
    for (auto piece = from; piece != pieces_.end() && piece->x <= middle.x + radius; ++piece) {
        const double x = piece->x - middle.x;
        const double y = piece->y - middle.y;
        if (piece->y * middle.y < 0 || x * x + y * y > radius * radius) continue;
        area += piece->area;
        pull += piece->area * piece->pull;
    }
    return area > 0 ? pull / area : middle.pull;
}

double FilmPull::greatest(double from, double to) const {
    double greatest = 0;
    for (const Piece& piece : pieces_) {
        if (piece.x >= from && piece.x <= to) greatest = std::max(greatest, mean_about(piece));
    }
    return greatest;
}

}  // namespace coverframe::assess_detail
