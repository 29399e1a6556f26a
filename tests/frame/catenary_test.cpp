// SPDX-License-Identifier: BSD-3-Clause
#include "frame/kernel/catenary.hpp"

#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <array>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "frame/random_frame.hpp"

using namespace coverframe;
using coverframe::kernel::Catenary;
using Eigen::Matrix3d;
using Eigen::Vector3d;
using random_frames::Random;

namespace {

Catenary hang(const Vector3d& chord, double EA, double L0, const Vector3d& q) {
    return kernel::catenary(chord, chord.norm() - L0, EA, L0, q);
}

/// A strap of which the force at the middle was given, and the chord integrated from it.
struct Integrated {
    const char* name;
    Vector3d middle;
    Vector3d q;
    double EA, L0;
    Vector3d chord;
    double energy, sag;
};

/// SciPy 1.17.1: chord and energy by integrate.quad (1e-14) of r' = T/|T| + T/EA and of |T| + T^2/(2 EA), sag from
/// integrate.solve_ivp (DOP853, 1e-12) by optimize.minimize_scalar. No term of the closed form is in it.
const std::vector<Integrated>& integrated() {
    static const std::vector<Integrated> all{{"taut level, snow",
                                              {600, 0, 0},
                                              {0, 0, -150},
                                              1e5,
                                              2.5,
                                              {2.476000539108953, 0, 0},
                                              -43.11450768482,
                                              0.19193552856},
                                             {"taut, inclined, wind and weight",
                                              {500, 40, 300},
                                              {5, 60, -180},
                                              8e4,
                                              3.2,
                                              {2.704141153752127, 0.2504115629375224, 1.517842250529204},
                                              -127.6993183047,
                                              0.36594966656},
                                             {"slack, level",
                                              {30, 0, 2},
                                              {0, 0, -25},
                                              1e5,
                                              2,
                                              {1.818952980753443, 0, 0.1023902319339812},
                                              -11.69689263214,
                                              0.36125374099},
                                             {"deep, ends close together",
                                              {2.5, 1, 4},
                                              {0, 0, -30},
                                              6e4,
                                              4,
                                              {0.6327122785784243, 0.2530849114313697, 0.2666640270103918},
                                              -118.7105494985,
                                              1.7858521149},
                                             {"steep, hangs below its lower end",
                                              {3, 0.5, -20},
                                              {0, 0, -40},
                                              6e4,
                                              2,
                                              {0.4694590853963025, 0.07824318089938374, -0.9968443056007983},
                                              -29.47017751239,
                                              0.4210178275},
                                             {"steep and taut",
                                              {10, 5, 900},
                                              {0, 0, -40},
                                              6e4,
                                              2,
                                              {0.02256848356606048, 0.01128424178303024, 2.029845391554428},
                                              13.49301115362,
                                              0.00028049105845},
                                             {"soft rope, heavy",
                                              {50, -20, 10},
                                              {10, 0, -300},
                                              2e3,
                                              1.5,
                                              {0.7498623911344088, -0.2990874308413021, 0.0852292944860408},
                                              -157.8345237504,
                                              0.63155441157},
                                             {"nearly straight",
                                              {1000, 200, -50},
                                              {0, 0, -0.2},
                                              1e6,
                                              2.5,
                                              {2.451010510082437, 0.4902021020164876, -0.1225505230575687},
                                              1.30307408565,
                                              0.00015300436703}};
    return all;
}

/// A strap like those of covers, now and then one that nobody would hang.
struct Any {
    Vector3d chord, q;
    double EA, L0;
};

Any any(unsigned seed) {
    Random random(seed);
    const auto vector = [&](double size) {
        Vector3d v{random.between(-1, 1), random.between(-1, 1), random.between(-1, 1)};
        return Vector3d(size * v.normalized());
    };
    Any one;
    one.L0 = random.between(0.3, 6);
    one.EA = std::pow(10, random.between(3.3, 6.5));
    one.chord = vector(one.L0 * (random.chance(0.5) ? random.between(0.99, 1.01) : random.between(0.02, 1.1)));
    one.q = vector(std::pow(10, random.between(-2, 2.7)));
    return one;
}

}  // namespace

TEST_CASE("catenary: the force at the middle, the energy and the sag are those of the integrated shape") {
    for (const Integrated& one : integrated()) {
        CAPTURE(one.name);
        const Catenary c = hang(one.chord, one.EA, one.L0, one.q);
        // The chord is known to 1e-15 or so of its length, which a stiff strap turns into EA times that.
        const double room = 1e-14 * one.EA + 1e-9 * one.middle.norm();
        CHECK(close_abs((c.middle - one.middle).norm(), 0, room));
        CHECK(close_abs(c.energy, one.energy, 1e-10 * (1 + std::abs(one.energy))));
        CHECK(close_abs(c.sag, one.sag, 1e-9 * one.L0));
        const Vector3d half = one.q * (one.L0 / 2);
        CHECK(close(c.tension_from, (one.middle + half).norm(), 1e-8));
        CHECK(close(c.tension_to, (one.middle - half).norm(), 1e-8));
    }
}

TEST_CASE("catenary: the level catenary of the textbooks, and the least tension is its horizontal force") {
    // Inextensible: sag = a (cosh(L/2a) - 1), length = 2 a sinh(L/2a), H = a q (Irvine, from memory). Here a = 2 m,
    // L = 3 m, q = 40 N/m.
    const double a = 2, L = 3, q = 40;
    const Catenary c = hang({L, 0, 0}, 1e12, 2 * a * std::sinh(L / (2 * a)), {0, 0, -q});
    CHECK(close(c.least, a * q, 1e-6));
    CHECK(close(c.middle.x(), a * q, 1e-6));
    CHECK(close_abs(c.middle.z(), 0, 1e-9));
    CHECK(close(c.sag, a * (std::cosh(L / (2 * a)) - 1), 1e-6));
    CHECK(close(c.tension_from, a * q * std::cosh(L / (2 * a)), 1e-6));
    CHECK(close(c.tension_to, c.tension_from, 1e-12));
}

TEST_CASE("catenary: the force is the slope of the energy and the tangent the slope of the force") {
    int deep = 0;
    for (unsigned seed = 1; seed <= 400; ++seed) {
        CAPTURE(seed);
        const Any one = any(seed);
        const Catenary c = hang(one.chord, one.EA, one.L0, one.q);
        deep += c.least < 0.2 * c.tension_from ? 1 : 0;
        const double step = 1e-5 * one.L0;
        const double stiffest = c.tangent.norm();
        const Eigen::SelfAdjointEigenSolver<Matrix3d> eigen(c.tangent);
        CHECK(eigen.eigenvalues()(0) > 0);
        CHECK(close_abs((c.tangent - c.tangent.transpose()).norm(), 0, 1e-13 * stiffest));
        const Vector3d n = one.chord.normalized();
        const Matrix3d left = c.tangent - c.turning * (Matrix3d::Identity() - n * n.transpose());
        CHECK(Eigen::SelfAdjointEigenSolver<Matrix3d>(left).eigenvalues()(0) >= -1e-12 * stiffest);
        for (int i = 0; i < 3; ++i) {
            const Vector3d d = step * Vector3d::Unit(i);
            const Catenary more = hang(one.chord + d, one.EA, one.L0, one.q);
            const Catenary less = hang(one.chord - d, one.EA, one.L0, one.q);
            // Bounds from the change of the tangent over the step: cut off, but for rounding, by its third power.
            const double bent = (more.tangent - less.tangent).norm() * step;
            const double noise = 1e-13 * (c.tension_from + c.tension_to) * one.L0;
            CHECK(close_abs((more.energy - less.energy) / (2 * step), c.middle(i), bent + noise / step));
            const Vector3d slope = (more.middle - less.middle) / (2 * step);
            const double curved = (more.tangent - 2 * c.tangent + less.tangent).norm();
            CHECK(close_abs((slope - c.tangent.col(i)).norm(), 0,
                            curved + 1e-7 * stiffest + 1e-12 * c.middle.norm() / step));
        }
    }
    CHECK(deep > 50);
}

TEST_CASE("catenary: its ends balance the load, and turning it or swapping them changes nothing") {
    for (unsigned seed = 501; seed <= 700; ++seed) {
        CAPTURE(seed);
        const Any one = any(seed);
        const Catenary c = hang(one.chord, one.EA, one.L0, one.q);
        const Vector3d half = one.q * (one.L0 / 2);
        const double size = c.tension_from + c.tension_to;
        CHECK(close((c.middle + half).norm(), c.tension_from, 1e-9));
        CHECK(close((half - c.middle).norm(), c.tension_to, 1e-9));
        // The strap hangs in the plane of load and chord.
        CHECK(close_abs(c.middle.dot(one.q.cross(one.chord)), 0, 1e-9 * size * one.q.norm() * one.L0));
        const Catenary back = hang(-one.chord, one.EA, one.L0, one.q);
        CHECK(close_abs((back.middle + c.middle).norm(), 0, 1e-9 * size));
        CHECK(close_abs(back.energy, c.energy, 1e-9 * size * one.L0));
        CHECK(close_abs(back.sag, c.sag, 1e-9 * one.L0));
        CHECK(c.least <= std::min(c.tension_from, c.tension_to) * (1 + 1e-12));
        CHECK(c.least >= 0);
        Random random(seed);
        const Vector3d axis = Vector3d{random.between(-1, 1), random.between(-1, 1), 1}.normalized();
        const Matrix3d turn = Eigen::AngleAxisd(random.between(0.1, 6), axis).toRotationMatrix();
        const Catenary turned = hang(turn * one.chord, one.EA, one.L0, turn * one.q);
        CHECK(close_abs((turned.middle - turn * c.middle).norm(), 0, 1e-9 * size + 1e-14 * one.EA));
        CHECK(close_abs(turned.sag, c.sag, 1e-9 * one.L0));
    }
}

TEST_CASE("catenary: as the load goes it becomes the straight strap, taut, just taut and slack") {
    const double EA = 1e5, L0 = 2;
    for (const double share : {1.01, 1.0001, 1.0, 0.9999, 0.9}) {
        CAPTURE(share);
        const Vector3d n = Vector3d{2, 1, 0.5}.normalized();
        const Catenary bare = hang(share * L0 * n, EA, L0, {0, 0, 0});
        CHECK(close(bare.energy, share > 1 ? 0.5 * EA * L0 * (share - 1) * (share - 1) : 0, 1e-9));
        CHECK(close(bare.tension_from, share > 1 ? EA * (share - 1) : 0, 1e-9));
        double before = std::numeric_limits<double>::infinity();
        for (double size = 1; size > 1e-12; size /= 100) {
            CAPTURE(size);
            const Catenary c = hang(share * L0 * n, EA, L0, {0, 0, -size});
            const double off = (c.middle - bare.middle).norm();
            CHECK(off <= before + 1e-14 * EA);
            // taut by the square of the load, just taut by (EA w^2/24)^(1/3), slack in proportion
            CHECK(off <= 20 * size + 1.1 * std::cbrt(EA * 4 * size * size / 24));
            if (share > 1) CHECK(close_abs((c.tangent - bare.tangent).norm(), 0, 200 * EA * size / 100));
            before = off;
        }
        for (const double size : {1e-100, 1e-240, 1e-248, 1e-300}) {
            const Catenary c = hang(share * L0 * n, EA, L0, {0, 0, -size});
            CHECK(close_abs((c.middle - bare.middle).norm(), 0, 1e-9));
        }
    }
}

TEST_CASE("catenary: the load along the chord") {
    // By hand: hanging straight down, T = M -+ w/2, |c| = L0 (1 + M/EA) as long as the lower end pulls.
    const double EA = 6e4, L0 = 2, q = 50, w = q * L0;
    for (const double M : {51.0, 200.0, 2000.0}) {
        CAPTURE(M);
        const Catenary c = hang({0, 0, -L0 * (1 + M / EA)}, EA, L0, {0, 0, -q});
        CHECK(close(c.middle.z(), -M, 1e-9));
        CHECK(close(c.tension_from, M + w / 2, 1e-9));
        CHECK(close(c.least, M - w / 2, 1e-7));
        CHECK(close(c.tangent(2, 2), EA / L0, 1e-9));
        CHECK(c.sag == 0);
        // across it the flexibility is the integral of 1/T, (L0/w) ln(T1/T2), and L0/EA
        const double across = L0 / w * std::log((M + w / 2) / (M - w / 2)) + L0 / EA;
        CHECK(close(c.tangent(0, 0), 1 / across, 1e-9));
        CHECK(close(c.tangent(1, 1), 1 / across, 1e-9));
    }
    // Doubled: without stretch, the two legs differ by the chord; each end carries its leg.
    const Catenary doubled = hang({0, 0, -0.5}, 1e12, L0, {0, 0, -q});
    CHECK(close(doubled.tension_from, q * (L0 + 0.5) / 2, 1e-9));
    CHECK(close(doubled.tension_to, q * (L0 - 0.5) / 2, 1e-9));
    CHECK(doubled.least == 0);
    CHECK(doubled.tangent(0, 0) == 0);
    CHECK(close(doubled.tangent(2, 2), q / 2, 1e-9));
    const Catenary ring = hang({0, 0, 0}, 1e12, L0, {0, 0, -q});
    CHECK(close(ring.sag, L0 / 2, 1e-9));
    CHECK(close(ring.tension_from, w / 2, 1e-9));
    // No step on the way there: a little to the side it is nearly the same.
    for (const double aside : {1e-3, 1e-6, 1e-9, 1e-12, 1e-40, 1e-120}) {
        CAPTURE(aside);
        const Catenary c = hang({aside, 0, -0.5}, 1e12, L0, {0, 0, -q});
        CHECK(close_abs(c.energy, doubled.energy, 200 * aside + 1e-12));
        CHECK(close_abs((c.middle - doubled.middle).norm(), 0, 300 * aside + 1e-9));
        const Catenary taut = hang({aside, 0, -2.01}, EA, L0, {0, 0, -q});
        CHECK(close_abs(taut.energy, hang({0, 0, -2.01}, EA, L0, {0, 0, -q}).energy, 200 * aside + 1e-12));
    }
}

TEST_CASE(
    "catenary: shorter is tauter, more load is never less pull, and nothing jumps on the way from slack to taut") {
    for (unsigned seed = 801; seed <= 840; ++seed) {
        CAPTURE(seed);
        const Any one = any(seed);
        double before = -1;
        double sag_before = std::numeric_limits<double>::infinity();
        double pull_before = -std::numeric_limits<double>::infinity();
        const Vector3d n = one.chord.normalized();
        for (double share = 0.05; share < 1.05; share += 0.005) {
            const Catenary c = hang(share * one.L0 * n, one.EA, one.L0, one.q);
            CHECK(n.dot(c.middle) > pull_before);  // convex along the chord
            CHECK(c.least > before - 1e-9 * c.tension_from - (share < 0.1 ? 1e9 : 0));
            if (share > 0.8) CHECK(c.sag < sag_before * (1 + 1e-9));
            before = c.least;
            sag_before = c.sag;
            pull_before = n.dot(c.middle);
        }
        const Catenary more = hang(one.chord, one.EA, one.L0, 1.1 * one.q);
        const Catenary now = hang(one.chord, one.EA, one.L0, one.q);
        CHECK(more.tension_from + more.tension_to > now.tension_from + now.tension_to);
    }
}

TEST_CASE("parabola: its pull is too high by up to 3.6 times the square of the sag ratio") {
    // Measured against the exact strap; the numbers of the header.
    for (const double ratio : {0.005, 0.01, 0.02, 0.05, 0.1}) {
        for (const double stiff : {10.0, 1e3, 1e6}) {
            CAPTURE(ratio);
            CAPTURE(stiff);
            const Vector3d chord{3, 0, 0};
            const double q = 100, EA = stiff * q * 3;
            // A length that gives about that ratio: L0 (1 + S/EA) = L (1 + 8/3 ratio^2)
            const double S = q * 3 / (8 * ratio);
            const double L0 = 3 * (1 + 8.0 / 3 * ratio * ratio) / (1 + S / EA);
            const Catenary exact = hang(chord, EA, L0, {0, 0, -q});
            const kernel::Parabola shallow = kernel::parabola(chord, EA, L0, {0, 0, -q});
            const double squared = (exact.sag / 3) * (exact.sag / 3);
            const double pull = (shallow.pull / exact.middle.x() - 1) / squared;
            const double sag = (shallow.sag / exact.sag - 1) / squared;
            CHECK(pull > 0);
            CHECK(pull < 3.6);
            CHECK(sag > -2.3);
            CHECK(sag < 1.3);
            if (stiff == 1e6 && ratio >= 0.02) CHECK(pull > 3.5);
            if (stiff == 1e6 && ratio >= 0.02) CHECK(sag < -2.1);
        }
    }
}

TEST_CASE("catenary: numbers that have no answer are refused") {
    const auto code = [](const Vector3d& chord, double EA, double L0, const Vector3d& q) -> std::string {
        try {
            static_cast<void>(hang(chord, EA, L0, q));
        } catch (const StateError& error) {
            return error.code();
        }
        return "none";
    };
    for (const double bad : not_finite) {
        CHECK(code({bad, 0, 0}, 1e5, 2, {0, 0, -1}) == "frame.strap.shape");
        CHECK(code({2, 0, 0}, bad, 2, {0, 0, -1}) == "frame.strap.shape");
        CHECK(code({2, 0, 0}, 1e5, bad, {0, 0, -1}) == "frame.strap.shape");
        CHECK(code({2, 0, 0}, 1e5, 2, {0, 0, bad}) == "frame.strap.shape");
    }
    CHECK(code({2, 0, 0}, 0, 2, {0, 0, -1}) == "frame.strap.shape");
    CHECK(code({2, 0, 0}, 1e5, 0, {0, 0, -1}) == "frame.strap.shape");
    CHECK(code({2, 0, 0}, 1e5, 2, {0, 0, -1}) == "none");
}
