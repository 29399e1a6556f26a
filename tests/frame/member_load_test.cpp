// SPDX-License-Identifier: BSD-3-Clause
#include "frame/kernel/member_load.hpp"

#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <array>
#include <random>
#include <vector>

#include "../close.hpp"
#include "frame/kernel/assembly.hpp"

using namespace coverframe;
using Eigen::Matrix3d;
using Eigen::Vector3d;
using kernel::Arms;
using kernel::EndSprings;
using kernel::Matrix12;
using kernel::Pole;
using kernel::PoleLoad;
using kernel::Vector12;

namespace {

constexpr BendingStiffness bending{20e3, 5e3, 900e3, 700e3, 3e3};
const Vector3d from(0.3, -0.2, 1.1);
const Vector3d to(1.9, 0.4, 1.5);
const Vector3d load(120, -310, 240);
constexpr std::array<EndSprings, 5> all_springs{
    {{}, {0, std::numeric_limits<double>::infinity()}, {2e3, 0}, {5e3, 1e4}, {0, 0}}};

Matrix3d rotation(const Vector3d& t) { return Eigen::AngleAxisd(t.norm(), t.normalized()).toRotationMatrix(); }

Vector3d vector_of(const Matrix3d& turn) {
    const Eigen::AngleAxisd a(turn);
    return a.angle() * a.axis();
}

/// Both nodes turned by about `angle` and moved, with strains of about `strain`.
std::vector<Vector12> states(double angle, double strain) {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> number(-1, 1);
    const auto any = [&] { return Vector3d(number(random), number(random), number(random)); };
    std::vector<Vector12> all;
    for (int i = 0; i < 10; ++i) {
        const Matrix3d turn = rotation(angle * any().normalized());
        const Vector3d away = any();
        Vector12 d;
        d << turn * from - from + away + strain * any(), vector_of(rotation(strain * any()) * turn),
            turn * to - to + away + strain * any(), vector_of(rotation(strain * any()) * turn);
        all.push_back(d);
    }
    return all;
}

PoleLoad pole_load(const EndSprings& springs) { return {from, to, kernel::member_axes(from, to), bending, springs}; }

Pole::State zero() { return {0, 0, Vector12::Zero(), Matrix12::Zero()}; }

/// Gradient against differences of the energy, Hessian against differences of the gradient, of fourth order.
template <class Evaluate>
void check_derivatives(const Evaluate& evaluate, const Vector12& d) {
    const Pole::State here = evaluate(d);
    const double size = 1 + here.tangent.cwiseAbs().maxCoeff();
    CHECK(close_abs((here.tangent - here.tangent.transpose()).cwiseAbs().maxCoeff(), 0, 1e-12 * size));
    const double h = 1e-3;
    for (int i = 0; i < 12; ++i) {
        CAPTURE(i);
        const auto at = [&](double step) { return evaluate(Vector12(d + step * h * Vector12::Unit(i))); };
        const std::array<Pole::State, 4> near{at(-2), at(-1), at(1), at(2)};
        const double slope =
            (8 * (near[2].energy - near[1].energy) - near[3].energy + near[0].energy) / (12 * h);
        CHECK(close_abs(slope, here.gradient(i), 1e-7 * size));
        const Vector12 column =
            (8 * (near[2].gradient - near[1].gradient) - near[3].gradient + near[0].gradient) / (12 * h);
        CHECK(close_abs((column - here.tangent.col(i)).cwiseAbs().maxCoeff(), 0, 1e-7 * size));
    }
}

}  // namespace

TEST_CASE("member load: forces are the gradient of the energy, the tangent its symmetric Hessian") {
    for (const EndSprings& springs : all_springs) {
        CAPTURE(springs.from);
        CAPTURE(springs.to);
        const PoleLoad own = pole_load(springs);
        const auto evaluate = [&](const Vector12& d) {
            Pole::State state = zero();
            own.add(load, d, true, state);
            return state;
        };
        for (const double angle : {1e-3, 2.0}) {
            for (const Vector12& d : states(angle, 0.2)) check_derivatives(evaluate, d);
        }
    }
}

TEST_CASE("member load: warmth has a gradient and a Hessian") {
    const auto evaluate = [](const Vector12& d) {
        Pole::State state = zero();
        const Vector3d chord = to - from + d.segment<3>(6) - d.segment<3>(0);
        state.axial = 4e3 / 1.7 * (chord.norm() - 1.7);  // the energy of warmth speaks of the stretch through it
        kernel::add_warmth(4e3, 1.7, 2e-3, chord, true, state);
        return state;
    };
    for (const Vector12& d : states(1.0, 0.2)) check_derivatives(evaluate, d);
    // Together with 1/2 k e^2 it is 1/2 k (e - a L0)^2.
    Pole::State state = zero();
    state.axial = 4e3 / 1.7 * 0.1;
    state.energy = 0.5 * 4e3 / 1.7 * 0.1 * 0.1;
    kernel::add_warmth(4e3, 1.7, 2e-2, Vector3d(1.8, 0, 0), true, state);
    CHECK(close(state.energy, 0.5 * 4e3 / 1.7 * 0.066 * 0.066, 1e-12));
    CHECK(close(state.axial, 4e3 / 1.7 * 0.066, 1e-12));
}

TEST_CASE("member load: the energy turns with the member and its load") {
    for (const EndSprings& springs : all_springs) {
        const PoleLoad own = pole_load(springs);
        const auto energy = [&](const Vector3d& q, const Vector12& d) {  // of the places, not of how they changed
            Pole::State state = zero();
            own.add(q, d, true, state);
            return state.energy - (to - from).norm() * q.dot(from + to) / 2;
        };
        for (const Vector12& d : states(1e-3, 0.2)) {
            const double here = energy(load, d);
            for (const Vector3d& t : {Vector3d(0.4, 0, 0), Vector3d(-0.7, 1.1, 0.3), Vector3d(1.5, -1.5, 1)}) {
                const Matrix3d turn = rotation(t);
                Vector12 turned;
                turned << turn * (from + d.segment<3>(0)) - from, vector_of(turn * rotation(d.segment<3>(3))),
                    turn * (to + d.segment<3>(6)) - to, vector_of(turn * rotation(d.segment<3>(9)));
                CHECK(close(energy(turn * load, turned), here, 1e-12));
            }
        }
    }
}

TEST_CASE("member load: shares of ends on springs and hinges") {
    // Fixed-end moments of the textbook: q L^2/12, and q L^2/8 beside a hinge without shear (from memory).
    constexpr double EI = 3e3;
    constexpr double L = 1.7;
    const double rigid = std::numeric_limits<double>::infinity();
    CHECK(close(kernel::plane_beam(EI, 0, L, {}).load(0), 1.0 / 12, 1e-15));
    CHECK(close(kernel::plane_beam(EI, 5e4, L, {}).load(1), -1.0 / 12, 1e-15));
    CHECK(close(kernel::plane_beam(EI, 0, L, {0, rigid}).load(1), -1.0 / 8, 1e-15));
    CHECK(kernel::plane_beam(EI, 0, L, {0, rigid}).load(0) == 0);
    CHECK(kernel::plane_beam(EI, 0, L, {0, 0}).load.cwiseAbs().maxCoeff() < 1e-16);
    // Springs k at both ends of a span whose nodes do not turn: M = q L^2/12 / (1 + 2 EI/(k L)), from
    // q L^3/(24 EI) - M L/(2 EI) = M/k.
    for (const double k : {1e2, 4e3, 1e9}) {
        CHECK(close(kernel::plane_beam(EI, 0, L, {k, k}).load(0), 1.0 / 12 / (1 + 2 * EI / (k * L)), 1e-12));
    }
    // One end rigid, the other on a hinge, soft in shear: the propped cantilever's q L^4/(8 EI) + q L^2/(2 GA) =
    // R (L^3/(3 EI) + L/GA), M = q L^2/2 - R L.
    constexpr double GA = 8e3;
    const double R = (L * L * L * L / (8 * EI) + L * L / (2 * GA)) / (L * L * L / (3 * EI) + L / GA);
    CHECK(close(kernel::plane_beam(EI, GA, L, {rigid, 0}).load(0) * L * L, L * L / 2 - R * L, 1e-12));
}

TEST_CASE("arm: the energy of a member on arms has a gradient and a Hessian") {
    const Pole pole(from, to, kernel::member_axes(from, to), 2e4, (to - from).norm() * 1.001, bending);
    const PoleLoad own = pole_load({});
    for (const std::array<Vector3d, 2>& arm :
         {std::array<Vector3d, 2>{Vector3d(0.1, -0.2, 0.05), Vector3d(-0.3, 0.1, 0.2)},
          std::array<Vector3d, 2>{Vector3d::Zero(), Vector3d(0, 0, 0.4)}}) {
        const Arms arms(arm);
        const auto evaluate = [&](const Vector12& nodes) {
            Pole::State state = pole.evaluate(arms.ends(nodes));
            own.add(load, arms.ends(nodes), true, state);
            arms.carry(nodes, true, state.gradient, state.tangent);
            return state;
        };
        for (const double angle : {1e-3, 2.0}) {
            for (const Vector12& d : states(angle, 0.05)) check_derivatives(evaluate, d);
        }
    }
}

TEST_CASE("arm: the end of an arm is where the turned arm points") {
    const Vector3d a(0.2, -0.1, 0.3);
    const Arms arms({a, Vector3d::Zero()});
    Vector12 nodes;
    nodes << 1, 2, 3, 0.4, 1.5, -0.7, 4, 5, 6, 0.1, 0.2, 0.3;
    const Vector12 ends = arms.ends(nodes);
    const Vector3d expected = Vector3d(1, 2, 3) + rotation({0.4, 1.5, -0.7}) * a - a;
    CHECK(close_abs((ends.head<3>() - expected).norm(), 0, 1e-14));
    CHECK((ends.tail<9>() - nodes.tail<9>()).norm() == 0);
}
