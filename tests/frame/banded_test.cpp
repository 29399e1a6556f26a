// SPDX-License-Identifier: BSD-3-Clause
// Against Eigen's dense LDLT (with pivoting) and its symmetric eigenvalues, on patterns as frames have them.
#include "frame/kernel/banded.hpp"

#include <doctest/doctest.h>

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <random>

#include "../close.hpp"

using namespace coverframe;
using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;
using kernel::Band;
using kernel::BandedLDLT;

namespace {

using Links = std::vector<std::array<int, 2>>;

/// Nodes with some unknowns each, numbered in an order, and the band that their links make.
struct Pattern {
    std::vector<int> first;  ///< first unknown of each node
    std::vector<int> many;   ///< unknowns of each node
    Links links;
    Band band;
};

Pattern pattern_of(const std::vector<int>& many, const Links& links, const std::vector<int>& order) {
    Pattern p{std::vector<int>(many.size()), many, links, {}};
    int next = 0;
    for (const int node : order) {
        p.first[static_cast<std::size_t>(node)] = next;
        next += many[static_cast<std::size_t>(node)];
    }
    std::vector<int> last(static_cast<std::size_t>(next));
    const auto reach = [&](int from, int to) {
        const auto f = static_cast<std::size_t>(from);
        const auto t = static_cast<std::size_t>(to);
        for (int i = 0; i < p.many[f]; ++i) {
            int& l = last[static_cast<std::size_t>(p.first[f] + i)];
            l = std::max(l, p.first[t] + p.many[t] - 1);
        }
    };
    for (int node = 0; node < static_cast<int>(many.size()); ++node) reach(node, node);
    for (const auto& [a, b] : links) {
        reach(a, b);
        reach(b, a);
    }
    p.band = Band(last);
    return p;
}

std::vector<int> as_drawn(int nodes) {
    std::vector<int> order(static_cast<std::size_t>(nodes));
    std::iota(order.begin(), order.end(), 0);
    return order;
}

Links chain(int nodes) {
    Links links;
    for (int i = 0; i + 1 < nodes; ++i) links.push_back({i, i + 1});
    return links;
}

Links ring(int nodes) {
    Links links = chain(nodes);
    links.push_back({nodes - 1, 0});
    return links;
}

/// Sum over all links of G^T G with a random G, and something on every node: positive definite, filled as a frame is.
MatrixXd stiffness(const Pattern& p, std::mt19937& random) {
    std::normal_distribution<double> normal;
    MatrixXd K = MatrixXd::Zero(p.band.size(), p.band.size());
    const auto add = [&](const std::vector<int>& unknowns) {
        const auto n = static_cast<Index>(unknowns.size());
        MatrixXd G(n, n);
        for (Index i = 0; i < G.size(); ++i) G(i) = normal(random);
        K(unknowns, unknowns) += G.transpose() * G;
    };
    const auto unknowns_of = [&](std::initializer_list<int> nodes) {
        std::vector<int> all;
        for (const int node : nodes) {
            for (int i = 0; i < p.many[static_cast<std::size_t>(node)]; ++i)
                all.push_back(p.first[static_cast<std::size_t>(node)] + i);
        }
        return all;
    };
    for (int node = 0; node < static_cast<int>(p.many.size()); ++node) add(unknowns_of({node}));
    for (const auto& [a, b] : p.links) add(unknowns_of({a, b}));
    return K;
}

VectorXd banded(const Band& band, const MatrixXd& K) {
    VectorXd values = VectorXd::Zero(band.length());
    for (int t = 0; t < band.size(); ++t) {
        for (int i = t; i <= band.reach(t); ++i) values(band.at(i, t)) = K(i, t);
    }
    return values;
}

VectorXd random_vector(Index n, std::mt19937& random) {
    std::normal_distribution<double> normal;
    VectorXd b(n);
    for (Index i = 0; i < n; ++i) b(i) = normal(random);
    return b;
}

/// Mixed frames: a chain of poles with pinned nodes among it, and links further along.
Pattern mixed(std::mt19937& random) {
    const int nodes = std::uniform_int_distribution<int>(2, 24)(random);
    std::vector<int> many;
    for (int i = 0; i < nodes; ++i) many.push_back(std::array<int, 4>{6, 6, 3, 1}[random() % 4]);
    Links links = chain(nodes);
    for (int i = 0; i + 2 < nodes; i += 3) links.push_back({i, i + 2});
    return pattern_of(many, links, kernel::reverse_cuthill_mckee(nodes, links));
}

}  // namespace

TEST_CASE("banded: solves as Eigen's dense LDLT does, from 1e-8 to 1e8") {
    std::mt19937 random(1);
    for (int round = 0; round < 60; ++round) {
        CAPTURE(round);
        const Pattern p = mixed(random);
        const double size = std::pow(10.0, round % 17 - 8);
        const MatrixXd K = size * stiffness(p, random);
        REQUIRE((p.band.dense(banded(p.band, K)).array() == K.array()).all());
        const VectorXd b = random_vector(K.rows(), random);
        BandedLDLT factor(p.band);
        REQUIRE(factor.factorise(banded(p.band, K), K.diagonal()));
        CHECK(factor.negative() == 0);
        CHECK(factor.smallest_ratio() > 0);
        CHECK(factor.smallest_ratio() <= 1);
        VectorXd x = b;
        factor.solve(x);
        const VectorXd expected = K.ldlt().solve(b);
        const double condition = Eigen::SelfAdjointEigenSolver<MatrixXd>(K).eigenvalues().maxCoeff() /
                                 Eigen::SelfAdjointEigenSolver<MatrixXd>(K).eigenvalues().minCoeff();
        CHECK(close_abs((x - expected).norm(), 0, 1e-14 * condition * expected.norm()));
        CHECK(close_abs((K * x - b).norm(), 0, 1e-13 * K.norm() * x.norm()));
    }
}

TEST_CASE("banded: a unit in every second row of a frame is of another size, as metres and radians are") {
    std::mt19937 random(2);
    const Pattern p = mixed(random);
    VectorXd unit(p.band.size());
    for (Index i = 0; i < unit.size(); ++i) unit(i) = i % 2 == 0 ? 1e-4 : 1e4;
    const MatrixXd K = unit.asDiagonal() * stiffness(p, random) * unit.asDiagonal();
    const VectorXd b = unit.asDiagonal() * random_vector(K.rows(), random);
    BandedLDLT factor(p.band);
    REQUIRE(factor.factorise(banded(p.band, K), K.diagonal()));
    VectorXd x = b;
    factor.solve(x);
    const VectorXd even = unit.asDiagonal() * x;
    const VectorXd left = unit.cwiseInverse().asDiagonal() * (K * x - b);
    const MatrixXd scaled = unit.cwiseInverse().asDiagonal() * K * unit.cwiseInverse().asDiagonal();
    CHECK(close_abs(left.norm(), 0, 1e-13 * scaled.norm() * even.norm()));
}

TEST_CASE("banded: counts negative eigenvalues of an indefinite matrix") {
    std::mt19937 random(3);
    int most = 0;
    for (int round = 0; round < 60; ++round) {
        CAPTURE(round);
        const Pattern p = mixed(random);
        MatrixXd K = stiffness(p, random);
        const double shift = (round % 6) * 0.1 * K.diagonal().maxCoeff();
        const VectorXd one = VectorXd::Ones(K.rows());
        BandedLDLT factor(p.band);
        REQUIRE(factor.factorise(banded(p.band, K), one, -shift));
        K.diagonal().array() -= shift;
        const VectorXd eigen = Eigen::SelfAdjointEigenSolver<MatrixXd>(K, Eigen::EigenvaluesOnly).eigenvalues();
        REQUIRE(eigen.cwiseAbs().minCoeff() > 1e-9 * eigen.cwiseAbs().maxCoeff());
        CHECK(factor.negative() == static_cast<int>((eigen.array() < 0).count()));
        CHECK((factor.smallest_ratio() < 0) == (factor.negative() > 0));
        most = std::max(most, factor.negative());
        const VectorXd b = random_vector(K.rows(), random);
        VectorXd x = b;
        factor.solve(x);
        CHECK(close_abs((K * x - b).norm(), 0, 1e-8 * K.norm() * x.norm()));
    }
    CHECK(most > 5);
}

TEST_CASE("banded: a matrix without resistance has no factor, or a pivot of nothing") {
    SUBCASE("a bar free at both ends: the last pivot is exactly zero") {
        const Band band({1, 1});
        BandedLDLT factor(band);
        MatrixXd K(2, 2);
        K << 3, -3, -3, 3;
        CHECK_FALSE(factor.factorise(banded(band, K), K.diagonal()));
        CHECK(close_abs(factor.smallest_ratio(), 0, 0));
        CHECK(factor.factorise(banded(band, K), K.diagonal(), 1e-6));
    }
    SUBCASE("a chain of bars free at both ends: nothing but rounding is left") {
        const int n = 40;
        const Pattern p = pattern_of(std::vector<int>(n, 1), chain(n), as_drawn(n));
        MatrixXd K = MatrixXd::Zero(n, n);
        for (int i = 0; i + 1 < n; ++i) {
            const double k = 1.0 / (3 + i);
            K(i, i) += k;
            K(i + 1, i + 1) += k;
            K(i, i + 1) = K(i + 1, i) = -k;
        }
        BandedLDLT factor(p.band);
        const bool whole = factor.factorise(banded(p.band, K), K.diagonal());
        CHECK(std::abs(whole ? factor.smallest_ratio() : 0.0) < 1e-11);
    }
    SUBCASE("numbers that are none") {
        const Band band({1, 1});
        BandedLDLT factor(band);
        const VectorXd one = VectorXd::Ones(2);
        for (const double wrong : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
            MatrixXd K = MatrixXd::Identity(2, 2);
            K(1, 0) = wrong;
            CHECK_FALSE(factor.factorise(banded(band, K), one));
            CHECK(factor.factorise(banded(band, MatrixXd::Identity(2, 2)), one));
        }
    }
}

TEST_CASE("banded: one unknown, and none") {
    BandedLDLT one(Band({0}));
    CHECK(one.band().half_width() == 0);
    VectorXd values = banded(one.band(), MatrixXd::Constant(1, 1, -4));
    REQUIRE(one.factorise(values, VectorXd::Constant(1, 2.0)));
    CHECK(one.negative() == 1);
    CHECK(close(one.smallest_ratio(), -2.0, 0));
    VectorXd b = VectorXd::Constant(1, 6.0);
    one.solve(b);
    CHECK(close(b(0), -1.5, 0));

    BandedLDLT none((Band(std::vector<int>{})));
    CHECK(none.factorise(VectorXd(0), VectorXd(0)));
    CHECK(none.negative() == 0);
    VectorXd nothing(0);
    none.solve(nothing);
    CHECK(nothing.size() == 0);
}

TEST_CASE("banded: several right-hand sides give the bits of one after the other") {
    std::mt19937 random(4);
    for (const Index sides : {1, 2, 4, 5, 8, 11}) {
        CAPTURE(sides);
        const Pattern p = mixed(random);
        const MatrixXd K = stiffness(p, random);
        BandedLDLT factor(p.band);
        REQUIRE(factor.factorise(banded(p.band, K), K.diagonal()));
        BandedLDLT::Sides all(K.rows(), sides);
        for (Index s = 0; s < sides; ++s) all.col(s) = random_vector(K.rows(), random);
        const BandedLDLT::Sides before = all;
        factor.solve(all);
        for (Index s = 0; s < sides; ++s) {
            VectorXd alone = before.col(s);
            factor.solve(alone);
            CHECK((alone.array() == all.col(s).array()).all());
        }
    }
}

TEST_CASE("banded: a factor may be made again, with the same bits") {
    std::mt19937 random(5);
    const Pattern p = mixed(random);
    const MatrixXd K = stiffness(p, random);
    const VectorXd b = random_vector(K.rows(), random);
    BandedLDLT factor(p.band);
    REQUIRE(factor.factorise(banded(p.band, K), K.diagonal()));
    VectorXd first = b;
    factor.solve(first);
    REQUIRE(factor.factorise(banded(p.band, 3 * K), K.diagonal(), 0.5));
    REQUIRE(factor.factorise(banded(p.band, K), K.diagonal()));
    VectorXd again = b;
    factor.solve(again);
    CHECK((first.array() == again.array()).all());
}

TEST_CASE("banded: wide bands, where rows no longer fit the registers at once") {
    std::mt19937 random(6);
    for (const int width : {14, 15, 16, 17, 31, 40, 63}) {
        CAPTURE(width);
        const int n = 64;
        Links links;
        for (int i = 0; i < n; ++i) {
            if (i + width < n) links.push_back({i, i + width});
        }
        const Pattern p = pattern_of(std::vector<int>(n, 1), links, as_drawn(n));
        CHECK(p.band.half_width() == width);
        const MatrixXd K = stiffness(p, random);
        const VectorXd b = random_vector(n, random);
        BandedLDLT factor(p.band);
        REQUIRE(factor.factorise(banded(p.band, K), K.diagonal()));
        VectorXd x = b;
        factor.solve(x);
        CHECK(close_abs((K * x - b).norm(), 0, 1e-13 * K.norm() * x.norm()));
    }
}

TEST_CASE("reverse_cuthill_mckee: a mixed-up chain gets the width of two nodes, a ring of three") {
    std::mt19937 random(7);
    const int nodes = 30;
    std::vector<int> name = as_drawn(nodes);
    std::shuffle(name.begin(), name.end(), random);
    const auto renamed = [&](Links links) {
        for (auto& link : links) {
            for (int& node : link) node = name[static_cast<std::size_t>(node)];
        }
        return links;
    };
    const std::vector<int> six(nodes, 6);
    const Links single = renamed(chain(nodes));
    CHECK(pattern_of(six, single, kernel::reverse_cuthill_mckee(nodes, single)).band.half_width() == 11);
    const Links closed = renamed(ring(nodes));
    const Pattern p = pattern_of(six, closed, kernel::reverse_cuthill_mckee(nodes, closed));
    CHECK(p.band.half_width() == 17);
    CHECK(p.band.work() < 0.05 * pattern_of(six, ring(nodes), as_drawn(nodes)).band.work());
    const MatrixXd K = stiffness(p, random);
    const VectorXd b = random_vector(K.rows(), random);
    BandedLDLT factor(p.band);
    REQUIRE(factor.factorise(banded(p.band, K), K.diagonal()));
    VectorXd x = b;
    factor.solve(x);
    CHECK(close_abs((x - K.ldlt().solve(b)).norm(), 0, 1e-10 * x.norm()));
}

TEST_CASE("reverse_cuthill_mckee: every node once, parts that do not hang together included") {
    CHECK(kernel::reverse_cuthill_mckee(0, {}).empty());
    std::vector<int> order = kernel::reverse_cuthill_mckee(7, {{5, 2}, {2, 5}, {3, 3}, {0, 6}, {6, 1}});
    std::sort(order.begin(), order.end());
    CHECK(order == as_drawn(7));
}
