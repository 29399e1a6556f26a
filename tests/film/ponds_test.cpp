// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/ponds.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>
#include <queue>
#include <random>

#include "close.hpp"
#include "coverframe/base/error.hpp"

using namespace coverframe;

namespace {

/// A grid of squares cut into triangles, from x0 to x1 and y0 to y1, with heights by a function.
TriangleMesh grid(double x0, double x1, int nx, double y0, double y1, int ny,
                  const std::function<double(double, double)>& height) {
    TriangleMesh mesh;
    for (int j = 0; j <= ny; ++j) {
        for (int i = 0; i <= nx; ++i) {
            const double x = x0 + (x1 - x0) * i / nx;
            const double y = y0 + (y1 - y0) * j / ny;
            mesh.nodes.push_back({x, y, height(x, y)});
        }
    }
    for (int j = 0; j < ny; ++j) {
        for (int i = 0; i < nx; ++i) {
            const int a = j * (nx + 1) + i, b = a + 1, c = a + nx + 1, d = c + 1;
            mesh.triangles.push_back({a, b, d});
            mesh.triangles.push_back({a, d, c});
        }
    }
    return mesh;
}

/// Levels of full water by the textbook form: a heap of nodes, lowest first.
std::vector<double> flooded(const std::vector<std::array<double, 3>>& places, const Lists& neighbours,
                            const std::vector<bool>& outlet) {
    using Entry = std::pair<double, int>;
    std::priority_queue<Entry, std::vector<Entry>, std::greater<>> heap;
    std::vector<double> level(places.size(), -1);
    std::vector<bool> known(places.size(), false);
    for (std::size_t n = 0; n < places.size(); ++n) {
        if (!outlet[n]) continue;
        heap.emplace(places[n][2], static_cast<int>(n));
        known[n] = true;
    }
    while (!heap.empty()) {
        const auto [height, node] = heap.top();
        heap.pop();
        level[static_cast<std::size_t>(node)] = height;
        const auto n = static_cast<std::size_t>(node);
        for (const int* k = neighbours.begin(n); k != neighbours.end(n); ++k) {
            const auto next = static_cast<std::size_t>(*k);
            if (known[next]) continue;
            known[next] = true;
            heap.emplace(std::max(height, places[next][2]), *k);
        }
    }
    return level;
}

double sum(const std::vector<double>& values) {
    double total = 0;
    for (const double value : values) total += value;
    return total;
}

}  // namespace

TEST_CASE("Levels of a grid of eight neighbours: the case of the priority flood") {
    // Validation case PN-07, heights made for the algorithm of Barnes, Lehman and Mulla (2014), run by hand.
    const double z[5][5] = {{5, 5, 5, 5, 5}, {5, 2, 3, 2.5, 5}, {5, 3, 4, 3, 4.5}, {5, 2, 3, 1, 4}, {5, 5, 5, 5, 5}};
    std::vector<std::array<double, 3>> places;
    Lists neighbours{{0}, {}};
    std::vector<bool> outlet;
    for (int j = 0; j < 5; ++j) {
        for (int i = 0; i < 5; ++i) {
            places.push_back({double(i), double(j), z[j][i]});
            outlet.push_back(i == 0 || j == 0 || i == 4 || j == 4);
            for (int k = -1; k <= 1; ++k) {
                for (int l = -1; l <= 1; ++l) {
                    if ((k != 0 || l != 0) && j + k >= 0 && j + k < 5 && i + l >= 0 && i + l < 5) {
                        neighbours.items.push_back(5 * (j + k) + i + l);
                    }
                }
            }
            neighbours.first.push_back(static_cast<int>(neighbours.items.size()));
        }
    }
    const std::vector<double> levels = levels_to_the_brim(places, neighbours, outlet);
    double volume = 0;
    for (std::size_t n = 0; n < levels.size(); ++n) volume += levels[n] - places[n][2];
    CHECK(levels[12] == 4.0);
    CHECK(levels[18] == 4.0);
    CHECK(close(volume, 12.5, 1e-12));
    CHECK(levels == flooded(places, neighbours, outlet));
}

TEST_CASE("Water in a trough with straight sides is exact") {
    // Validation case PN-09: area of the triangle times length.
    const double left = std::tan(30 * std::numbers::pi / 180), right = std::tan(10 * std::numbers::pi / 180);
    const TriangleMesh mesh =
        grid(-0.5, 0.5, 2, 0, 2, 3, [&](double x, double) { return x < 0 ? -left * x : right * x; });
    double volume = 0;
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) volume += wet_part(mesh, t, 0.05).volume;
    CHECK(close(volume, 0.0185083316, 1e-8));
}

TEST_CASE("A bowl of revolution fills to its rim, closer with a finer mesh") {
    // z = r^2 in a plain at 1/4: pi/32.
    std::vector<double> error;
    for (const int n : {20, 40, 80}) {
        const TriangleMesh mesh =
            grid(-0.6, 0.6, n, -0.6, 0.6, n, [](double x, double y) { return std::min(x * x + y * y, 0.25); });
        const Water water = water_to_the_brim(mesh, border_of(mesh));
        REQUIRE(water.ponds.size() == 1);
        CHECK(water.ponds[0].full);
        error.push_back(std::abs(water.volume() - std::numbers::pi / 32));
        CHECK(water.ponds[0].depth <= 0.25);
    }
    // The kink at the rim and the bow of the bowl err in opposite senses, so the order shows in the finer two.
    CHECK(error[0] < 0.001 * std::numbers::pi / 32);
    CHECK(error[2] < 0.3 * error[1]);
}

TEST_CASE("Limited water fills hollows in turn") {
    // Along x: two hollows of triangle section, the left one with the lower rim to the right one.
    const std::vector<double> heights{3, 0, 1, 0.5, 2, -1};
    const TriangleMesh mesh =
        grid(0, 5, 5, 0, 1, 1, [&](double x, double) { return heights[static_cast<std::size_t>(std::lround(x))]; });
    std::vector<bool> outlet(mesh.nodes.size(), false);
    outlet[5] = outlet[11] = true;
    const auto after = [&](double volume, std::size_t node) {
        std::vector<double> fallen(mesh.nodes.size(), 0.0);
        fallen[node] = volume;
        return water_of(mesh, outlet, fallen);
    };
    // Left hollow to its rim at 1: wedges of 1/3 and 1 wide: 2/3. Right one to 1: wedges of 1 and 2/3... by hand:
    // to the left of x = 3 the side rises 0.5 over 1, to the right 1.5 over 1: 0.5*0.5*(1 + 1/3) = 1/3.
    const Water half = after(0.3, 1);
    REQUIRE(half.ponds.size() == 1);
    CHECK(close(half.volume(), 0.3, 1e-12));
    CHECK(half.ponds[0].level < 1);
    CHECK_FALSE(half.ponds[0].full);
    const Water spilt = after(0.9, 1);
    REQUIRE(spilt.ponds.size() == 2);
    CHECK(close(spilt.ponds[0].volume, 2.0 / 3, 1e-12));
    CHECK(spilt.ponds[0].full);
    CHECK(close(spilt.ponds[1].volume, 0.9 - 2.0 / 3, 1e-12));
    const Water joined = after(1.5, 3);
    REQUIRE(joined.ponds.size() == 1);
    CHECK(close(joined.volume(), 1.5, 1e-12));
    CHECK(joined.ponds[0].level > 1);
    CHECK(joined.run_off == 0);
    const Water over = after(10, 3);
    CHECK(over.ponds[0].full);
    CHECK(close(over.ponds[0].level, 2.0, 1e-15));
    CHECK(close(over.run_off + over.volume(), 10.0, 1e-12));
    CHECK(close(over.volume(), water_to_the_brim(mesh, outlet).volume(), 1e-12));
}

TEST_CASE("Random surfaces: levels as a priority flood gives them, no water is lost") {
    std::mt19937 random(20240611);
    std::uniform_real_distribution<double> noise(0, 1);
    for (int trial = 0; trial < 60; ++trial) {
        CAPTURE(trial);
        TriangleMesh mesh = grid(0, 3, 12, 0, 2, 9, [&](double x, double) { return 0.3 * x + noise(random); });
        const std::vector<bool> outlet = border_of(mesh);
        const Lists neighbours = neighbours_of(mesh);
        const std::vector<double> expected = flooded(mesh.nodes, neighbours, outlet);
        CHECK(levels_to_the_brim(mesh.nodes, neighbours, outlet) == expected);
        const Water brim = water_to_the_brim(mesh, outlet);
        double brim_volume = 0;
        for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
            double level = -1;  // of the water over the triangle, if there is any
            for (const int node : mesh.triangles[t]) {
                const auto n = static_cast<std::size_t>(node);
                if (expected[n] > mesh.nodes[n][2]) level = std::max(level, expected[n]);
            }
            if (level >= 0) brim_volume += wet_part(mesh, t, level).volume;
        }
        CHECK(close(brim.volume(), brim_volume, 1e-12));
        const std::vector<double> area = plan_area_of_nodes(mesh);
        double before = 0;
        for (const double rain : {0.001, 0.02, 0.1, 0.5, 3.0}) {
            std::vector<double> fallen = area;
            for (double& volume : fallen) volume *= rain;
            const Water water = water_of(mesh, outlet, fallen);
            CHECK(close(water.volume() + water.run_off, sum(fallen), 1e-12));
            CHECK(water.volume() >= before - 1e-12);
            CHECK(water.volume() <= brim.volume() * (1 + 1e-12));
            for (std::size_t n = 0; n < expected.size(); ++n) {
                CHECK(mesh.nodes[n][2] + water.depth[n] <= expected[n] + 1e-12);
            }
            before = water.volume();
        }
        CHECK(close(before, brim.volume(), 1e-9));
    }
}

TEST_CASE("Numbers of nodes do not matter, nor which side is port") {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> noise(0, 1);
    const TriangleMesh mesh = grid(0, 3, 10, 0, 2, 8, [&](double, double) { return noise(random); });
    std::vector<int> place(mesh.nodes.size());
    for (std::size_t i = 0; i < place.size(); ++i) place[i] = static_cast<int>(i);
    std::shuffle(place.begin(), place.end(), random);
    TriangleMesh other;
    other.nodes.resize(mesh.nodes.size());
    for (std::size_t i = 0; i < place.size(); ++i) {
        auto at = mesh.nodes[i];
        at[1] = -at[1];
        other.nodes[static_cast<std::size_t>(place[i])] = at;
    }
    for (const auto& t : mesh.triangles) {
        std::array<int, 3> renamed;
        for (std::size_t k = 0; k < 3; ++k) renamed[k] = place[static_cast<std::size_t>(t[k])];
        other.triangles.push_back(renamed);
    }
    const std::vector<double> fallen = plan_area_of_nodes(mesh);
    std::vector<double> renamed(fallen.size());
    for (std::size_t i = 0; i < place.size(); ++i) renamed[static_cast<std::size_t>(place[i])] = 0.1 * fallen[i];
    std::vector<double> tenth = fallen;
    for (double& volume : tenth) volume *= 0.1;
    const Water a = water_of(mesh, border_of(mesh), tenth);
    const Water b = water_of(other, border_of(other), renamed);
    REQUIRE(a.ponds.size() == b.ponds.size());
    for (std::size_t i = 0; i < a.ponds.size(); ++i) {
        CHECK(close(a.ponds[i].volume, b.ponds[i].volume, 1e-9));
        CHECK(close(a.ponds[i].level, b.ponds[i].level, 1e-9));
    }
    CHECK(close(a.run_off, b.run_off, 1e-9));
}

TEST_CASE("The share of each corner is work-equivalent") {
    // A triangle right under water: N_i d integrated over it is A (2 d_i + d_j + d_k)/12.
    TriangleMesh mesh{{{0, 0, 0}, {2, 0, -1}, {0, 1, -3}}, {{0, 1, 2}}};
    const WetPart part = wet_part(mesh, 0, 1);
    CHECK(close(part.area, 1.0, 1e-12));
    CHECK(close(part.share[0], (2 * 1 + 2 + 4) / 12.0, 1e-12));
    CHECK(close(part.share[1], (1 + 2 * 2 + 4) / 12.0, 1e-12));
    CHECK(close(part.share[2], (1 + 2 + 2 * 4) / 12.0, 1e-12));
    // And partly: a tetrahedron at corner 2, whose sides reach 2/3 and 1: volume = A' d/3.
    const WetPart corner = wet_part(mesh, 0, -1);
    CHECK(close(corner.area, 2.0 / 3, 1e-12));
    CHECK(close(corner.volume, 2.0 / 3 * 2 / 3, 1e-12));
}

TEST_CASE("The outline of a pond closes around its area") {
    const TriangleMesh mesh = grid(-0.6, 0.6, 24, -0.6, 0.6, 24, [](double x, double y) {
        const double r2 = x * x + y * y;
        return r2 <= 0.25 ? r2 : 0.5 - r2;
    });
    std::vector<double> fallen(mesh.nodes.size(), 0.0);
    fallen[fallen.size() / 2] = 0.02;
    const Water water = water_of(mesh, border_of(mesh), fallen);
    REQUIRE(water.ponds.size() == 1);
    const auto lines = outline_of(mesh, water.ponds[0]);
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].front() == lines[0].back());
    double twice = 0;
    for (std::size_t i = 1; i < lines[0].size(); ++i) {
        twice += lines[0][i - 1][0] * lines[0][i][1] - lines[0][i][0] * lines[0][i - 1][1];
    }
    CHECK(close(0.5 * std::abs(twice), water.ponds[0].area, 1e-12));
}

TEST_CASE("What is no surface is named") {
    const auto code_of = [](const std::function<void()>& call) {
        try {
            call();
        } catch (const InputError& error) {
            return error.code();
        }
        return std::string("nothing");
    };
    TriangleMesh mesh = grid(0, 1, 2, 0, 1, 2, [](double x, double) { return x; });
    CHECK(code_of([&] { (void)water_to_the_brim(mesh, std::vector<bool>(9, false)); }) == "film.ponds.outlet");
    CHECK(code_of([&] { (void)water_to_the_brim(mesh, std::vector<bool>(8, true)); }) == "film.ponds.size");
    CHECK(code_of([&] { (void)water_of(mesh, std::vector<bool>(9, true), std::vector<double>(9, -1)); }) ==
          "film.ponds.fallen");
    CHECK(code_of([&] { (void)water_to_the_brim({}, {}); }) == "film.mesh.empty");
    mesh.triangles[0][1] = 9;
    CHECK(code_of([&] { require_sound(mesh); }) == "film.mesh.node");
    mesh.triangles[0] = {0, 4, 1};
    CHECK(code_of([&] { require_sound(mesh); }) == "film.mesh.fold");
    mesh.triangles[0] = {0, 1, 4};
    mesh.nodes[4][2] = std::nan("");
    CHECK(code_of([&] { require_sound(mesh); }) == "film.mesh.finite");
    mesh.nodes.push_back({5, 5, 5});
    mesh.nodes[4][2] = 0;
    CHECK(code_of([&] { require_sound(mesh); }) == "film.mesh.unused");
}
