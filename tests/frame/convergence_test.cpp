// SPDX-License-Identifier: BSD-3-Clause
// How fast poles get to exact answers with the number of their members. The exact numbers are those of
// validation/independent/rates.py: elliptic integrals for the cantilever (Bisshopp and Drucker 1945), Timoshenko's
// beam-column and the secant formula, from memory, evaluated with SciPy.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "../close.hpp"
#include "coverframe/frame/solve.hpp"

using namespace coverframe;

namespace {

constexpr double pi = std::numbers::pi;

/// A pole of 1 m and 1 N m2 along x, in one plane.
Frame pole(int pieces, double EA) {
    Frame f;
    for (int i = 0; i <= pieces; ++i) {
        f.nodes.push_back({"n" + std::to_string(i), {1.0 * i / pieces, 0, 0}, {false, true, false, true, false, true}});
    }
    for (int i = 0; i < pieces; ++i) {
        FrameMember m;
        m.name = "pole";
        m.from = i;
        m.to = i + 1;
        m.axial_stiffness = EA;
        m.free_length = 1.0 / pieces;
        m.bending = {1, 1, 0, 0, 1};
        f.members.push_back(m);
    }
    return f;
}

using Numbers = std::array<double, 3>;

/// Tip down, tip back, turn of the tip under P across it.
Numbers cantilever(int pieces, double P) {
    Frame f = pole(pieces, 1e7);
    f.nodes.front().held = {true, true, true, true, true, true};
    FrameLoads loads;
    loads.force.assign(3 * f.nodes.size(), 0.0);
    loads.force.back() = -P;
    const SolveOptions options{.force_tolerance = 1e-8, .rotation_limit = 1.5};
    std::vector<double> start;
    for (const double stiff : {1e3, 1e5, 1e7}) {  // a straight step stretches a stiff pole
        for (FrameMember& m : f.members) m.axial_stiffness = stiff;
        start = solve(f, loads, options, start).displacement;
    }
    const Solution s = solve(f, loads, options, start);
    REQUIRE_MESSAGE(s.usable(), s.message);
    const std::size_t tip = 6 * static_cast<std::size_t>(pieces);
    return {-s.displacement[tip + 2], -s.displacement[tip], s.displacement[tip + 4]};
}

/// Deflection and moment at the middle at half the Euler load; a force Q there, or the push eccentric by e.
Numbers pressed(int pieces, double Q, double e) {
    Frame f = pole(2 * pieces, 1e8);
    f.nodes.front().held[0] = f.nodes.front().held[2] = f.nodes.back().held[2] = true;
    const double P = 0.5 * pi * pi;
    FrameLoads loads;
    loads.force.assign(3 * f.nodes.size(), 0.0);
    loads.couple.assign(3 * f.nodes.size(), 0.0);
    loads.force[loads.force.size() - 3] = -P;
    loads.force[3 * static_cast<std::size_t>(pieces) + 2] = -Q;
    loads.couple[1] = P * e;
    loads.couple[loads.couple.size() - 2] = -P * e;
    const Solution s = solve(f, loads, {.force_tolerance = 1e-10});
    REQUIRE_MESSAGE(s.usable(), s.message);
    const auto middle = static_cast<std::size_t>(pieces);
    return {-s.displacement[6 * middle + 2], s.members[middle - 1].moment_vertical_to, 0};
}

/// The power by which every error falls from 4 pieces to 16, each halving within 0.2 of 2.
template <class Answer>
void falls_by_the_square(const Answer& answer, const Numbers& exact, const std::vector<std::size_t>& which,
                         double last_error) {
    for (const std::size_t i : which) {
        CAPTURE(i);
        std::vector<double> errors;
        for (const int pieces : {4, 8, 16}) errors.push_back(std::abs(answer(pieces)[i] / exact[i] - 1));
        CHECK(close_abs(std::log2(errors[0] / errors[1]), 2.0, 0.2));
        CHECK(close_abs(std::log2(errors[1] / errors[2]), 2.0, 0.1));
        CHECK(errors[2] < last_error);
    }
}

}  // namespace

TEST_CASE("convergence: a cantilever turns far, and its error falls by the square of the number of pieces") {
    falls_by_the_square([](int n) { return cantilever(n, 1); },
                        {0.301720773799813, 0.0564332362833767, 0.461351949711879}, {0, 1, 2}, 8e-4);
    // The error of the move back changes its sign near 16 pieces.
    falls_by_the_square([](int n) { return cantilever(n, 10); },
                        {0.810609024880297, 0.554995597753751, 1.43028553880386}, {0, 2}, 6e-4);
    CHECK(close(cantilever(16, 10)[1], 0.554995597753751, 1e-4));
}

TEST_CASE("convergence: a pressed pole, pushed across or eccentric, likewise") {
    falls_by_the_square([](int n) { return pressed(n, 1e-4, 0); }, {0.0413809963371197e-4, 0.454207031785149e-4, 0},
                        {0, 1}, 9e-4);
    falls_by_the_square([](int n) { return pressed(n, 0, 1e-4); }, {1.25217190284318e-4, 11.1140228621554e-4, 0},
                        {0, 1}, 9e-4);
}
