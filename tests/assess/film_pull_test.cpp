// SPDX-License-Identifier: BSD-3-Clause
// The pull of a flat film that is known everywhere: means over the disc by its area, pi r^2 with r = 0.15 m (surface.hpp).
#include "assess/film_pull.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <functional>
#include <numbers>

#include "close.hpp"

using namespace coverframe;

namespace {

constexpr double cell = 0.02;    // [m]
constexpr double radius = 0.15;  // [m]
constexpr double disc = std::numbers::pi * radius * radius;

/// A sheet from x = 0 to 1.6 m, y = -0.6 to 0.6 m, in square cells of two triangles; its pull by the middle of the cell.
assess_detail::FilmPull sheet(const std::function<double(double x, double y)>& pull) {
    constexpr int along = 80;
    constexpr int across = 60;
    CoverSurface surface;
    SurfaceState state;
    TriangleMesh& mesh = surface.cover.mesh;
    for (int j = 0; j <= across; ++j) {
        for (int i = 0; i <= along; ++i) mesh.nodes.push_back({i * cell, j * cell - 0.6, 1.5});
    }
    for (int j = 0; j < across; ++j) {
        for (int i = 0; i < along; ++i) {
            const int a = j * (along + 1) + i;
            const int d = a + along + 1;
            for (const std::array<int, 3>& corners : {std::array{a, a + 1, d + 1}, std::array{a, d + 1, d}}) {
                mesh.triangles.push_back(corners);
                FilmForces forces;
                forces.first = pull((i + 0.5) * cell, (j + 0.5) * cell - 0.6);
                state.triangles.push_back(forces);
            }
        }
    }
    return {surface, state};
}

/// 1000 N/m on a spot of 4 by 4 cells about a place, nothing elsewhere.
auto spot(double x0, double y0) {
    return [x0, y0](double x, double y) {
        return std::abs(x - x0) < 2 * cell && std::abs(y - y0) < 2 * cell ? 1000.0 : 0.0;
    };
}

constexpr double of_spot = 1000 * 16 * cell * cell;  // [N]

}  // namespace

TEST_CASE("film pull: an even one is its own mean, one that grows along the boat is that of the last disc") {
    CHECK(close(sheet([](double, double) { return 437.0; }).greatest(0, 1.6), 437, 1e-12));
    // whose middle lies up to the last cell that belongs to the bay, and the disc reaches on into the next one
    CHECK(close(sheet([](double x, double) { return 1000 * x; }).greatest(0.4, 1.0), 1000, 0.02));
    CHECK(sheet([](double, double) { return 437.0; }).greatest(2, 3) == 0.0);
}

TEST_CASE("film pull: a spot is spread over the disc") {
    CHECK(close(sheet(spot(0.8, 0.3)).greatest(0, 1.6), of_spot / disc, 0.04));
    CHECK(close(sheet(spot(0.8, -0.3)).greatest(0, 1.6), of_spot / disc, 0.04));
}

TEST_CASE("film pull: the disc ends at the ridge") {
    // The middle nearest to the ridge has its half of the disc and a strip of the other half.
    const double middle = cell / 3;
    const double counted = 0.5 * disc + 2 * radius * middle;
    CHECK(close(sheet(spot(0.8, 2 * cell)).greatest(0, 1.6), of_spot / counted, 0.05));
    CHECK(close(sheet(spot(0.8, -2 * cell)).greatest(0, 1.6), of_spot / counted, 0.05));
}

TEST_CASE("film pull: a spot counts for the bays that the disc reaches it from") {
    const assess_detail::FilmPull film = sheet(spot(0.8, 0.3));
    CHECK(film.greatest(1.0, 1.6) == 0.0);
    CHECK(film.greatest(0.0, 0.6) == 0.0);
    CHECK(close(film.greatest(0.88, 1.6), of_spot / disc, 0.05));
    CHECK(close(film.greatest(0.0, 0.72), of_spot / disc, 0.05));
}
