// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/membrane.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>
#include <random>

#include "close.hpp"
#include "coverframe/base/error.hpp"

using namespace coverframe;

namespace {

using Places = std::vector<std::array<double, 3>>;

/// A rectangle of nx by ny cells, each cut into four at its middle, so that no direction is favoured.
TriangleMesh rectangle(double length, double width, int nx, int ny) {
    TriangleMesh mesh;
    for (int j = 0; j <= ny; ++j) {
        for (int i = 0; i <= nx; ++i) mesh.nodes.push_back({length * i / nx, width * j / ny, 0});
    }
    for (int j = 0; j < ny; ++j) {
        for (int i = 0; i < nx; ++i) {
            const int a = j * (nx + 1) + i, b = a + 1, c = a + nx + 2, d = a + nx + 1;
            const int middle = static_cast<int>(mesh.nodes.size());
            mesh.nodes.push_back({length * (i + 0.5) / nx, width * (j + 0.5) / ny, 0});
            for (const auto& side : {std::pair{a, b}, {b, c}, {c, d}, {d, a}}) {
                mesh.triangles.push_back({side.first, side.second, middle});
            }
        }
    }
    return mesh;
}

/// A disc of radius 1 in rings.
TriangleMesh disc(int rings) {
    TriangleMesh mesh;
    mesh.nodes.push_back({0, 0, 0});
    for (int r = 1; r <= rings; ++r) {
        for (int k = 0; k < 6 * r; ++k) {
            const double angle = 2 * std::numbers::pi * k / (6 * r);
            mesh.nodes.push_back({double(r) / rings * std::cos(angle), double(r) / rings * std::sin(angle), 0});
        }
    }
    const auto node = [](int r, int k) { return r == 0 ? 0 : 1 + 3 * r * (r - 1) + (k + 6 * r) % (6 * r); };
    for (int r = 1; r <= rings; ++r) {
        for (int sector = 0; sector < 6; ++sector) {
            for (int k = 0; k < r; ++k) {
                const int outer = sector * r + k, inner = sector * (r - 1) + k;
                mesh.triangles.push_back({node(r, outer), node(r, outer + 1), node(r - 1, inner)});
                if (k > 0) mesh.triangles.push_back({node(r, outer), node(r - 1, inner), node(r - 1, inner - 1)});
            }
        }
    }
    return mesh;
}

double deepest(const MembraneState& state) {
    double z = 0;
    for (const auto& place : state.places) z = std::min(z, place[2]);
    return -z;
}

}  // namespace

TEST_CASE("A taut square under an even load sags as the Poisson equation says") {
    // Validation case MB-07: w = 0.0736714 p a^2/T, series (same as torsion of a square bar), for small sag.
    std::vector<double> error;
    for (const int n : {6, 12, 24}) {
        const Membrane m = stretched_membrane(rectangle(1, 1, n, n), 1e6, 0.3, 1e4);
        const MembraneState s = solve_membrane(m, forces_of_plan_load(m.mesh, {1.0}));
        REQUIRE(s.usable());
        error.push_back(std::abs(deepest(s) / (0.0736714218 / 1e4) - 1));
    }
    CAPTURE(error[0]);
    CAPTURE(error[2]);
    CHECK(error[2] < 0.002);
    CHECK(error[1] < 0.3 * error[0]);
    CHECK(error[2] < 0.3 * error[1]);
}

TEST_CASE("A flat disc that is not stretched at first carries a load by stretching alone") {
    // Validation case MB-02: Hencky 1915; Fichter, NASA TP-3658 (1997), b0 from memory, recomputed; nu = 0.3:
    // w = 0.653443 a (p a/(E t))^(1/3), pull at the middle 1.72440/4 (E t)^(1/3) (p a)^(2/3), for small sag.
    std::vector<double> error;
    for (const int rings : {6, 12, 24}) {
        const Membrane m = stretched_membrane(disc(rings), 1e6, 0.3, 0);
        const MembraneState s = solve_membrane(m, forces_of_plan_load(m.mesh, {1.0}));
        CAPTURE(rings);
        CAPTURE(s.message);
        CAPTURE(s.unbalanced);
        CAPTURE(s.iterations);
        REQUIRE(s.usable());
        error.push_back(std::abs(deepest(s) / (0.653443345 * std::cbrt(1e-6)) - 1));
        CHECK(close(s.triangles[0].first, 1.72440406 / 4 * 100, 0.02));
    }
    CAPTURE(error[0]);
    CAPTURE(error[2]);
    CHECK(error[2] < 0.002);
    CHECK(error[1] < 0.35 * error[0]);
    CHECK(error[2] < 0.35 * error[1]);
}

TEST_CASE("A sheet pulled along one direction narrows by wrinkles and pulls in that direction only") {
    // Two opposite sides pulled apart by 1 %, the others free: with nothing across, D e along and nothing else.
    Membrane m;
    m.mesh = rectangle(2, 0.5, 8, 4);
    m.stiffness = 5e4;
    m.poisson = 0.4;
    m.held.assign(m.mesh.nodes.size(), false);
    for (std::size_t n = 0; n < m.held.size(); ++n) {
        const double x = m.mesh.nodes[n][0];
        m.held[n] = x < 1e-9 || x > 2 - 1e-9;
    }
    m.stretch = {1.01};
    const MembraneState s = solve_membrane(m, Places(m.mesh.nodes.size()));
    // The free sides have nothing to keep them flat, but nothing to move them out of the plane either.
    REQUIRE(s.usable());
    double force = 0;
    for (std::size_t n = 0; n < m.held.size(); ++n) {
        if (m.mesh.nodes[n][0] < 1) force += s.reaction[n][0];
    }
    // Between D e of a strip that may narrow and D e/(1 - nu^2) of one that may not.
    const double narrow = 0.5 / 1.01 * 5e4 * 0.01;
    CHECK(-force > 0.999 * narrow);
    CHECK(-force < narrow / (1 - 0.16));
}

TEST_CASE("Film between two rings: the catenoid, and no shape where the rings are too far apart") {
    // Validation case MB-10: rings of radius 10 m; a film spans 12 m between them and not 14 m (13.2549 is the limit).
    const auto tube = [](double h, int around, int along) {
        TriangleMesh mesh;
        for (int j = 0; j <= along; ++j) {
            for (int i = 0; i < around; ++i) {
                const double angle = 2 * std::numbers::pi * (i + 0.5 * (j % 2)) / around;
                mesh.nodes.push_back({10 * std::cos(angle), 10 * std::sin(angle), h * j / along});
            }
        }
        for (int j = 0; j < along; ++j) {
            for (int i = 0; i < around; ++i) {
                const int a = j * around + i, b = j * around + (i + 1) % around, c = a + around, d = b + around;
                if (j % 2 == 0) {
                    mesh.triangles.push_back({a, b, c});
                    mesh.triangles.push_back({b, d, c});
                } else {
                    mesh.triangles.push_back({a, b, d});
                    mesh.triangles.push_back({a, d, c});
                }
            }
        }
        std::vector<bool> held(mesh.nodes.size(), false);
        for (std::size_t i = 0; i < static_cast<std::size_t>(around); ++i) held[i] = held[held.size() - 1 - i] = true;
        return std::pair{mesh, held};
    };
    const auto [mesh, held] = tube(12, 48, 16);
    const FoundShape shape = find_shape(mesh, held);
    CAPTURE(shape.message);
    REQUIRE(shape.found);
    // r = c cosh(z/c) with c cosh(6/c) = 10: c = 7.2 or so; the waist is c.
    double c = 8;
    for (int i = 0; i < 50; ++i) c -= (c * std::cosh(6 / c) - 10) / (std::cosh(6 / c) - 6 / c * std::sinh(6 / c));
    double waist = 10;
    for (const auto& node : shape.mesh.nodes) waist = std::min(waist, std::hypot(node[0], node[1]));
    CAPTURE(shape.rounds);
    CHECK(close(waist, c, 0.01));
    const auto [far, far_held] = tube(14, 48, 16);
    const FoundShape collapsed = find_shape(far, far_held);
    CHECK_FALSE(collapsed.found);
    CHECK_FALSE(collapsed.message.empty());
}

TEST_CASE("Equilibrium, mirror and turns of a sheet with wrinkles") {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> noise(-1, 1);
    for (int trial = 0; trial < 10; ++trial) {
        CAPTURE(trial);
        Membrane m = stretched_membrane(rectangle(2, 1.2, 7, 5), 4e4, 0.4, 60);
        for (auto& node : m.mesh.nodes) node[2] = 0.5 * node[1] + 0.1 * noise(random);
        Places forces(m.mesh.nodes.size());
        for (auto& f : forces) f = {3 * noise(random), 3 * noise(random), -12 + 6 * noise(random)};
        const MembraneState s = solve_membrane(m, forces);
        REQUIRE(s.usable());
        std::array<double, 3> left{};
        double size = 0;
        for (std::size_t n = 0; n < forces.size(); ++n) {
            for (std::size_t d = 0; d < 3; ++d) {
                left[d] += s.reaction[n][d] + (m.held[n] ? 0 : forces[n][d]) + (m.held[n] ? forces[n][d] : 0);
                size += std::abs(forces[n][d]);
            }
        }
        for (const double rest : left) CHECK(std::abs(rest) < 1e-7 * size);

        // Turned about z by 0.7 and mirrored in y.
        const double co = std::cos(0.7), si = std::sin(0.7);
        const auto moved = [&](const std::array<double, 3>& v) {
            return std::array<double, 3>{co * v[0] + si * v[1], si * v[0] - co * v[1], v[2]};
        };
        Membrane other = m;
        for (auto& node : other.mesh.nodes) node = moved(node);
        for (auto& t : other.mesh.triangles) std::swap(t[1], t[2]);
        Places other_forces;
        for (const auto& f : forces) other_forces.push_back(moved(f));
        const MembraneState o = solve_membrane(other, other_forces);
        REQUIRE(o.usable());
        for (std::size_t n = 0; n < forces.size(); ++n) {
            const auto expected = moved(s.places[n]);
            for (std::size_t d = 0; d < 3; ++d) CHECK(std::abs(o.places[n][d] - expected[d]) < 1e-6);
        }
        // From somewhere else to the same place.
        Places start = s.places;
        for (auto& place : start) place[2] -= 0.2 + 0.1 * noise(random);
        const MembraneState again = solve_membrane(m, forces, {}, start);
        REQUIRE(again.usable());
        CHECK(close(again.energy, s.energy, 1e-9));
    }
}

TEST_CASE("More load never lifts the film") {
    const Membrane m = stretched_membrane(rectangle(2, 1, 10, 6), 4e4, 0.4, 80);
    Places before = m.mesh.nodes;
    for (const double load : {50.0, 100.0, 400.0, 1600.0, 4000.0}) {
        const MembraneState s = solve_membrane(m, forces_of_plan_load(m.mesh, {load}));
        REQUIRE(s.usable());
        for (std::size_t n = 0; n < before.size(); ++n) CHECK(s.places[n][2] <= before[n][2] + 1e-9);
        before = s.places;
    }
}

TEST_CASE("Film that nothing stretches is said to hang loose") {
    Membrane m = stretched_membrane(rectangle(1, 1, 4, 4), 4e4, 0.4, 0);
    m.stretch = {0.98};
    const MembraneState s = solve_membrane(m, Places(m.mesh.nodes.size()));
    CHECK(s.status == MembraneStatus::loose);
    CHECK_FALSE(s.message.empty());
}

TEST_CASE("Water on film that folds over itself is not told") {
    const Membrane m = stretched_membrane(rectangle(1, 1, 6, 6), 4e4, 0.4, 40);
    Places forces(m.mesh.nodes.size());
    forces[3 * 7 + 3] = {9000, 0, 0};  // the middle, dragged aside
    const FilledMembrane filled = fill_membrane(m, forces, m.held, {Rain::Kind::to_the_brim, 0});
    CHECK_FALSE(filled.settled);
    CHECK(filled.state.message.find("folds over") != std::string::npos);
}

TEST_CASE("A membrane that is none is refused") {
    const auto code_of = [](const std::function<void(Membrane&, Places&)>& spoil) {
        Membrane m = stretched_membrane(rectangle(1, 1, 2, 2), 4e4, 0.4, 0);
        Places forces(m.mesh.nodes.size());
        spoil(m, forces);
        try {
            (void)solve_membrane(m, forces);
        } catch (const InputError& error) {
            return error.code();
        }
        return std::string("nothing");
    };
    CHECK(code_of([](Membrane& m, Places&) { m.stiffness = 0; }) == "film.membrane.range");
    CHECK(code_of([](Membrane& m, Places&) { m.poisson = 0.5; }) == "film.membrane.range");
    CHECK(code_of([](Membrane& m, Places&) { m.stretch = {1.0, 1.0}; }) == "film.membrane.size");
    CHECK(code_of([](Membrane& m, Places&) { m.stretch = {std::nan("")}; }) == "film.membrane.range");
    CHECK(code_of([](Membrane& m, Places&) { m.held.pop_back(); }) == "film.membrane.size");
    CHECK(code_of([](Membrane&, Places& f) { f.pop_back(); }) == "film.membrane.size");
    CHECK(code_of([](Membrane&, Places& f) { f[0][0] = std::nan(""); }) == "film.membrane.range");
    CHECK(code_of([](Membrane& m, Places&) { m.mesh.nodes[0] = m.mesh.nodes[1]; }) == "film.mesh.fold");
}
