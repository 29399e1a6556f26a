// SPDX-License-Identifier: BSD-3-Clause
#include "frame/kernel/pole.hpp"

#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <cmath>
#include <numbers>
#include <random>
#include <vector>

#include "../close.hpp"
#include "coverframe/base/error.hpp"
#include "frame/kernel/assembly.hpp"

using namespace coverframe;
using Eigen::Matrix3d;
using Eigen::MatrixXd;
using Eigen::Vector3d;
using Eigen::VectorXd;
using kernel::EndSprings;
using kernel::Matrix12;
using kernel::Pole;
using kernel::Vector12;
using std::numbers::pi;

namespace {

constexpr BendingStiffness bending{20e3, 5e3, 900e3, 700e3, 3e3};
constexpr double EA = 30e6;
const Vector3d from(0.3, -0.2, 1.1);
const Vector3d to(1.9, 0.4, 1.5);

Pole skew_pole(const EndSprings& springs = {}, double axial = EA) {
    return {from, to, kernel::member_axes(from, to), axial, (to - from).norm() * 1.001, bending, springs};
}

Matrix3d rotation(const Vector3d& t) {
    return Eigen::AngleAxisd(t.norm(), t.norm() > 0 ? Vector3d(t.normalized()) : Vector3d(Vector3d::UnitX()))
        .toRotationMatrix();
}

Vector3d vector_of(const Matrix3d& turn) {
    const Eigen::AngleAxisd a(turn);
    return a.angle() * a.axis();
}

/// End displacements and rotations of a rigid turn about a point.
Vector12 turned(const Vector3d& t, const Vector3d& about) {
    const Matrix3d change = rotation(t) - Matrix3d::Identity();
    Vector12 q;
    q << change * (from - about), t, change * (to - about), t;
    return q;
}

/// A rigid turn by up to `angle`, then strains: ends turned by up to `strain` against it and moved.
std::vector<Vector12> states(double angle, double strain) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> number(-1, 1);
    const auto any = [&] { return Vector3d(number(random), number(random), number(random)); };
    std::vector<Vector12> all;
    for (int i = 0; i < 20; ++i) {
        Vector12 q = turned(angle * any().normalized(), any());
        for (const int end : {3, 9}) {
            const Matrix3d more = rotation(strain * any()) * rotation(Vector3d(q.segment<3>(end)));
            q.segment<3>(end) = vector_of(more);
        }
        q.head<3>() += strain * any();
        q.segment<3>(6) += strain * any();
        all.push_back(q);
    }
    return all;
}

/// Bending of one plane in first order (J. S. Przemieniecki, Theory of Matrix Structural Analysis, from memory): order
/// deflection and slope at `from`, then at `to`. f = 12 EI/(GA L^2).
Eigen::Matrix4d plane_stiffness(double EI, double GA, double length, bool hinged_from, bool hinged_to) {
    const double f = 12 * EI / (GA * length * length);
    const double b = 6 * length;
    const double near = (4 + f) * length * length;
    const double far = (2 - f) * length * length;
    Eigen::Matrix4d k;
    k << 12, b, -12, b, b, near, -b, far, -12, -b, 12, -b, b, far, -b, near;
    k *= EI / (length * length * length * (1 + f));
    const auto release = [&](int i) {  // no force acts on the unknown i
        const Eigen::Vector4d column = k.col(i);
        k -= column * column.transpose() / column(i);
        k.row(i).setZero();
        k.col(i).setZero();
    };
    if (hinged_from) release(1);
    if (hinged_to) release(3);
    return k;
}

/// The linear member in its own axes, without its axial stiffness.
Matrix12 linear_member(double length, bool hinged_from, bool hinged_to) {
    const Eigen::Matrix4d vertical =
        plane_stiffness(bending.EI_vertical, bending.GA_vertical, length, hinged_from, hinged_to);
    const Eigen::Matrix4d level = plane_stiffness(bending.EI_level, bending.GA_level, length, hinged_from, hinged_to);
    // The slope of u3 is minus the rotation about axis 2; the slope of u2 is the rotation about axis 3.
    constexpr std::array<Eigen::Index, 4> in_vertical{2, 4, 8, 10};
    constexpr std::array<Eigen::Index, 4> in_level{1, 5, 7, 11};
    Matrix12 k = Matrix12::Zero();
    for (std::size_t i = 0; i < 4; ++i) {
        for (std::size_t j = 0; j < 4; ++j) {
            const auto at = [&](const Eigen::Matrix4d& plane) {
                return plane(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j));
            };
            k(in_vertical[i], in_vertical[j]) = ((i + j) % 2 == 0 ? 1 : -1) * at(vertical);
            k(in_level[i], in_level[j]) = at(level);
        }
    }
    k(3, 3) = k(9, 9) = bending.GJ / length;
    k(3, 9) = k(9, 3) = -bending.GJ / length;
    return k;
}

/// Stiffness of every end against a unit change, for relative comparison.
double size_of(const Matrix12& k) { return k.cwiseAbs().maxCoeff(); }

void check_derivatives(const Pole& pole, const Vector12& q) {
    const Pole::State state = pole.evaluate(q);
    CHECK(close_abs(state.energy, pole.energy(q), 0));
    const Matrix12 skew = state.tangent - state.tangent.transpose();
    CHECK(close_abs(skew.cwiseAbs().maxCoeff(), 0, 1e-12 * size_of(state.tangent)));
    // Central differences of fourth order.
    const double h = 1e-3;
    for (int i = 0; i < 12; ++i) {
        CAPTURE(i);
        const auto at = [&](double step) { return Vector12(q + step * h * Vector12::Unit(i)); };
        const double slope =
            (8 * (pole.energy(at(1)) - pole.energy(at(-1))) - pole.energy(at(2)) + pole.energy(at(-2))) / (12 * h);
        CHECK(close_abs(slope, state.gradient(i), 1e-7 * size_of(state.tangent)));
        const Vector12 column = (8 * (pole.evaluate(at(1)).gradient - pole.evaluate(at(-1)).gradient) -
                                 pole.evaluate(at(2)).gradient + pole.evaluate(at(-2)).gradient) /
                                (12 * h);
        CHECK(close_abs((column - state.tangent.col(i)).cwiseAbs().maxCoeff(), 0, 1e-7 * size_of(state.tangent)));
    }
}

}  // namespace

TEST_CASE("pole: forces are the gradient of the energy, the tangent its symmetric Hessian") {
    for (const double axial : {EA, 2e4}) {  // with little axial stiffness, so that bending and twist are seen as well
        for (const double angle : {0.0, 0.5, 2.0, 3.0}) {
            for (const double strain : {1e-3, 0.3}) {
                CAPTURE(axial);
                CAPTURE(angle);
                CAPTURE(strain);
                for (const Vector12& q : states(angle, strain)) check_derivatives(skew_pole({}, axial), q);
            }
        }
    }
}

TEST_CASE("pole: springs and hinges keep the derivatives true") {
    for (const EndSprings& springs : {EndSprings{0, 8e3}, EndSprings{2e3, 0}, EndSprings{5e3, 1e4}, EndSprings{0, 0}}) {
        CAPTURE(springs.from);
        CAPTURE(springs.to);
        for (const Vector12& q : states(2.0, 0.3)) check_derivatives(skew_pole(springs, 2e4), q);
    }
}

TEST_CASE("pole: a rigid turn of any size costs nothing") {
    const Pole pole(from, to, kernel::member_axes(from, to), EA, (to - from).norm(), bending);
    std::mt19937 random(3);
    std::uniform_real_distribution<double> number(-1, 1);
    for (const double angle : {1e-6, 0.1, 1.0, pi / 2, 2.5, 3.1, 4.0, 6.0}) {
        CAPTURE(angle);
        for (int i = 0; i < 10; ++i) {
            const Vector3d axis = Vector3d(number(random), number(random), number(random)).normalized();
            const Vector12 q = turned(angle * axis, Vector3d(number(random), number(random), number(random)));
            CHECK(close_abs(pole.energy(q), 0, 1e-20 * EA));
            const Pole::State state = pole.evaluate(q);
            CHECK(close_abs(state.gradient.cwiseAbs().maxCoeff(), 0, 1e-14 * size_of(state.tangent)));
        }
    }
}

TEST_CASE("pole: a rigid turn on top of strains changes neither energy nor what the pole carries") {
    const Pole pole = skew_pole({4e3, 7e3}, 2e4);
    for (const Vector12& q : states(0.0, 0.3)) {
        const double energy = pole.energy(q);
        const kernel::PoleForces forces = pole.forces(q);
        for (const Vector3d& t : {Vector3d(0.4, 0, 0), Vector3d(-0.7, 1.1, 0.3), Vector3d(1.5, -1.5, 1)}) {
            const Matrix3d turn = rotation(t);
            Vector12 turned_on;
            turned_on << turn * (from + q.segment<3>(0)) - from, vector_of(turn * rotation(q.segment<3>(3))),
                turn * (to + q.segment<3>(6)) - to, vector_of(turn * rotation(q.segment<3>(9)));
            CHECK(close(pole.energy(turned_on), energy, 1e-12));
            const kernel::PoleForces again = pole.forces(turned_on);
            CHECK(close(again.axial, forces.axial, 1e-10));
            CHECK(close(again.twist, forces.twist, 1e-10));
            for (std::size_t end = 0; end < 2; ++end) {
                CHECK(close(again.moment_2[end], forces.moment_2[end], 1e-10));
                CHECK(close(again.moment_3[end], forces.moment_3[end], 1e-10));
            }
        }
    }
}

TEST_CASE("pole: turned a little it is the linear Timoshenko member") {
    const Vector3d along = (to - from).normalized();
    const double length = (to - from).norm();
    const Matrix3d axes = kernel::member_axes(from, to);
    Matrix12 turn = Matrix12::Zero();
    for (int block = 0; block < 4; ++block) turn.block<3, 3>(3 * block, 3 * block) = axes;
    for (const bool hinged_from : {false, true}) {
        for (const bool hinged_to : {false, true}) {
            CAPTURE(hinged_from);
            CAPTURE(hinged_to);
            EndSprings springs;
            if (hinged_from) springs.from = 0;
            if (hinged_to) springs.to = 0;
            const Pole pole(from, to, axes, EA, length, bending, springs);
            Matrix12 linear = turn.transpose() * linear_member(length, hinged_from, hinged_to) * turn;
            const Matrix3d bar = EA / length * along * along.transpose();
            linear.block<3, 3>(0, 0) += bar;
            linear.block<3, 3>(6, 6) += bar;
            linear.block<3, 3>(0, 6) -= bar;
            linear.block<3, 3>(6, 0) -= bar;
            const Matrix12 tangent = pole.evaluate(Vector12::Zero()).tangent;
            CHECK(close_abs((tangent - linear).cwiseAbs().maxCoeff(), 0, 1e-12 * size_of(linear)));
            // Far below the rounding of 1 the forces are still those of the linear member.
            const Vector12 tiny = 1e-13 * Vector12::LinSpaced(-1, 2);
            CHECK(close_abs((pole.evaluate(tiny).gradient - linear * tiny).norm(), 0, 1e-10 * (linear * tiny).norm()));
        }
    }
}

TEST_CASE("pole: an end on a spring turns by its own share") {
    // A member held at `to` with a moment M on the node at `from`, which cannot move: the member turns by M L/(4 EI),
    // the spring by M/k (beam of elementary theory, rigid in shear).
    const double k = 7e3;
    const double length = 2.5;
    const Vector3d far(length, 0, 0);
    const Pole pole(Vector3d::Zero(), far, Matrix3d::Identity(), EA, length, {20e3, 20e3, 0, 0, 1e3}, {k, 1e300});
    const Matrix12 tangent = pole.evaluate(Vector12::Zero()).tangent;
    for (const int axis : {4, 5}) CHECK(close(1 / tangent(axis, axis), length / (4 * 20e3) + 1 / k, 1e-12));
    // Large turns of an end on a hinge carry nothing.
    const Pole hinged(Vector3d::Zero(), far, Matrix3d::Identity(), EA, length, {20e3, 20e3, 0, 0, 1e3}, {0, k});
    Vector12 q = Vector12::Zero();
    q.segment<3>(3) << 0, 1.0, 1.5;
    CHECK(close_abs(hinged.energy(q), 0, 1e-20 * EA));
}

TEST_CASE("pole: an end that points against the chord is refused") {
    Vector12 q = Vector12::Zero();
    q.segment<3>(3) =
        vector_of(kernel::member_axes(from, to).transpose() * rotation({0, pi, 0}) * kernel::member_axes(from, to));
    CHECK_THROWS_AS((void)skew_pole().energy(q), StateError);
    q.setZero();
    q.segment<3>(6) = from - to;
    CHECK_THROWS_AS((void)skew_pole().evaluate(q), StateError);
}

namespace {

/// Poles end to end, the first node held, solved by Newton steps with a line search.
struct Chain {
    std::vector<Pole> poles;
    VectorXd q;      ///< six a node
    VectorXd force;  ///< dead, six a node
    std::vector<Eigen::Index> held;

    explicit Chain(const std::vector<Vector3d>& places, double axial, const BendingStiffness& section) {
        for (std::size_t i = 0; i + 1 < places.size(); ++i) {
            poles.emplace_back(places[i], places[i + 1], kernel::member_axes(places[i], places[i + 1]), axial,
                               (places[i + 1] - places[i]).norm(), section);
        }
        q = force = VectorXd::Zero(6 * static_cast<Eigen::Index>(places.size()));
        for (Eigen::Index i = 0; i < 6; ++i) held.push_back(i);
    }

    [[nodiscard]] Eigen::Index tip() const { return q.size() - 6; }

    [[nodiscard]] double energy(const VectorXd& at) const {
        double sum = -force.dot(at);
        for (std::size_t i = 0; i < poles.size(); ++i) {
            sum += poles[i].energy(at.segment<12>(6 * static_cast<Eigen::Index>(i)));
        }
        return sum;
    }

    void evaluate(VectorXd& gradient, MatrixXd& tangent) const {
        gradient = -force;
        tangent = MatrixXd::Zero(q.size(), q.size());
        for (std::size_t i = 0; i < poles.size(); ++i) {
            const Eigen::Index at = 6 * static_cast<Eigen::Index>(i);
            const Pole::State state = poles[i].evaluate(q.segment<12>(at));
            gradient.segment<12>(at) += state.gradient;
            tangent.block<12, 12>(at, at) += state.tangent;
        }
    }

    /// True if the forces balance to `tolerance` within 60 steps.
    bool balance(double tolerance) {
        VectorXd gradient;
        MatrixXd tangent;
        for (int i = 0; i < 60; ++i) {
            evaluate(gradient, tangent);
            for (const Eigen::Index h : held) {
                gradient(h) = 0;
                tangent.row(h).setZero();
                tangent.col(h).setZero();
                tangent(h, h) = 1;
            }
            if (gradient.cwiseAbs().maxCoeff() < tolerance) return true;
            VectorXd step = -tangent.ldlt().solve(gradient);
            if (gradient.dot(step) > 0) step = -step;
            const double here = energy(q);
            while (step.norm() > 1e-14 && !(energy(q + step) <= here + 1e-12 * std::abs(here))) step /= 2;
            q += step;
        }
        return false;
    }
};

std::vector<Vector3d> straight(double length, int pieces) {
    std::vector<Vector3d> places;
    for (int i = 0; i <= pieces; ++i) places.emplace_back(length * i / pieces, 0, 0);
    return places;
}

}  // namespace

TEST_CASE("pole: cantilevers far from straight under a dead load at the tip") {
    // K. Mattiasson, Int. J. Num. Meth. Eng. 17 (1981) 145-153, from memory; every digit found again from elliptic
    // integrals. Length and EI are 1.
    struct Row {
        double load, down, in, turn;
    };
    constexpr std::array<Row, 6> rows{{{1, 0.30172, 0.05643, 0.46135},
                                       {2, 0.49346, 0.16064, 0.78175},
                                       {3, 0.60325, 0.25442, 0.98602},
                                       {4, 0.66996, 0.32894, 1.12124},
                                       {5, 0.71379, 0.38763, 1.21537},
                                       {10, 0.81061, 0.55500, 1.43029}}};
    Chain chain(straight(1, 32), 1e6, {1, 1, 0, 0, 1});
    for (const Row& row : rows) {
        CAPTURE(row.load);
        chain.force(chain.tip() + 2) = -row.load;
        REQUIRE(chain.balance(1e-8));
        CHECK(close(-chain.q(chain.tip() + 2), row.down, 1e-3));
        CHECK(close(-chain.q(chain.tip()), row.in, 1e-3));
        CHECK(close(chain.q(chain.tip() + 4), row.turn, 1e-3));
    }
}

TEST_CASE("pole: a cantilever rolled into a circle") {
    // Krenk, Non-linear Modeling and Analysis of Solids and Structures, pp. 114-115, as printed in an open set of
    // examples: E = 210 GPa, I = 1e-5 m4, L = 1 m, M = 1.32E7 N m. A couple about a fixed axis has a potential.
    const double EI = 210e9 * 1e-5;
    Chain chain(straight(1, 20), 210e9 * 0.01, {EI, EI, 0, 0, EI});
    const Eigen::Index turn = chain.tip() + 4;
    chain.held.push_back(turn);
    for (const Eigen::Index i : {1, 3, 5}) chain.held.push_back(chain.tip() + i);
    for (int i = 1; i <= 16; ++i) {
        const double angle = 2 * pi * i / 16;
        // Start from the circle of that angle: nodes turn evenly.
        for (Eigen::Index node = 0; 6 * node <= chain.tip(); ++node) chain.q(6 * node + 4) = angle * double(node) / 20;
        REQUIRE(chain.balance(1e-3));
    }
    VectorXd gradient;
    MatrixXd tangent;
    chain.evaluate(gradient, tangent);
    CHECK(close(gradient(turn), 1.32e7, 0.002));
    CHECK(close_abs(chain.q(chain.tip()), -1, 1e-6));
    CHECK(close_abs(chain.q(chain.tip() + 2), 0, 1e-6));
}

TEST_CASE("pole: a bow of 45 degrees bent out of its plane") {
    // K. J. Bathe and S. Bolourchi, Int. J. Num. Meth. Eng. 14 (1979) 961-986: radius 100, section 1 by 1, E = 1e7, tip
    // load 600; the tip moves by (-13.4, -23.5, 53.4). Q. Wang and others, SciTech 2015 (NREL/CP-5000-63165):
    // (-13.5, -23.7, 53.4), with EI = GJ = 8.333e5, GA = 41.6667e5. Both as quoted on a public page of test problems,
    // read there; the papers were not opened. Allowed is the spread between published results.
    std::vector<Vector3d> places;
    constexpr int pieces = 32;
    for (int i = 0; i <= pieces; ++i) {
        const double a = pi / 4 * i / pieces;
        places.emplace_back(100 * (1 - std::cos(a)), 100 * std::sin(a), 0);
    }
    const double EI = 8.333e5;
    const double GA = 41.6667e5;
    Chain chain(places, 1e7, {EI, EI, GA, GA, EI});
    for (const double share : {0.125, 0.25, 0.5, 0.75, 1.0}) {
        chain.force(chain.tip() + 2) = 600 * share;
        REQUIRE(chain.balance(1e-6));
    }
    const Vector3d moved = chain.q.segment<3>(chain.tip());
    for (const Vector3d& published : {Vector3d(-13.4, -23.5, 53.4), Vector3d(-13.5, -23.7, 53.4)}) {
        for (int d = 0; d < 3; ++d) CHECK(close_abs(moved(d), published(d), 0.25));
    }
}
