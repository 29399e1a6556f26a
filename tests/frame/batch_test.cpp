// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/batch.hpp"

#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <cmath>
#include <string>
#include <vector>

#include "../close.hpp"
#include "coverframe/base/error.hpp"
#include "frame/kernel/banded_batch.hpp"
#include "random_frame.hpp"

using namespace coverframe;
using random_frames::Example;
using random_frames::Random;

namespace {

bool same_forces(const MemberForces& a, const MemberForces& b) {
    return a.axial == b.axial && a.moment_vertical_from == b.moment_vertical_from &&
           a.moment_vertical_to == b.moment_vertical_to && a.moment_level_from == b.moment_level_from &&
           a.moment_level_to == b.moment_level_to && a.shear_vertical == b.shear_vertical &&
           a.shear_level == b.shear_level && a.twist == b.twist && a.active == b.active && a.load == b.load;
}

/// Every bit of it.
bool same(const Solution& a, const Solution& b) {
    bool good = a.status == b.status && a.message == b.message && a.displacement == b.displacement &&
                a.reaction == b.reaction && a.unbalanced == b.unbalanced && a.energy == b.energy &&
                a.iterations == b.iterations && a.members.size() == b.members.size();
    for (std::size_t m = 0; good && m < a.members.size(); ++m) good = same_forces(a.members[m], b.members[m]);
    return good;
}

/// The loads of an example, many times over, each time others.
std::vector<FrameLoads> many(const Example& e, Random& random, int count) {
    std::vector<FrameLoads> all(static_cast<std::size_t>(count), e.loads);
    for (FrameLoads& loads : all) {
        const double share = random.between(0, 2);
        for (double& force : loads.force) force = share * force + random.between(-20, 20);
    }
    return all;
}

}  // namespace

TEST_CASE("solve_batch: bit for bit what solve() says of each load, on random frames") {
    int usable = 0;
    for (unsigned seed = 1; seed <= 60; ++seed) {
        CAPTURE(seed);
        const Example e = random_frames::example(seed);
        Random random(seed);
        const std::vector<FrameLoads> loads = many(e, random, 1 + static_cast<int>(seed % 19));
        const std::vector<Solution> together = solve_batch(e.frame, loads);
        REQUIRE(together.size() == loads.size());
        for (std::size_t i = 0; i < loads.size(); ++i) {
            CAPTURE(i);
            const Solution alone = solve(e.frame, loads[i]);
            CHECK(same(together[i], alone));
            usable += alone.usable() ? 1 : 0;
        }
    }
    CHECK(usable > 200);
}

TEST_CASE("solve_batch: springs, couples, a start, and terms that the batch does not have") {
    const Example e = random_frames::example(3, {.slack = false});
    Random random(3);
    std::vector<FrameLoads> loads = many(e, random, 20);
    for (std::size_t i = 0; i < loads.size(); ++i) {
        const int node = e.loose.front();
        const double k = 1e4 * static_cast<double>(i + 1);
        loads[i].springs.push_back({node, {k, 0, 0, 0, k, 100, 0, 100, 2 * k}, {0.001, 0, 0.002}, {5, -7, 11}});
        if (i % 5 == 2) loads[i].springs.push_back(loads[i].springs.front());
        if (i % 7 == 3) loads[i].temperature.assign(e.frame.members.size(), 10.0);
    }
    const Solution before = solve(e.frame, loads[0]);
    REQUIRE(before.usable());
    for (const std::vector<double>& start : {std::vector<double>{}, before.displacement}) {
        const std::vector<Solution> together = solve_batch(e.frame, loads, {}, start);
        for (std::size_t i = 0; i < loads.size(); ++i) {
            CAPTURE(i);
            CHECK(same(together[i], solve(e.frame, loads[i], {}, start)));
        }
    }
}

TEST_CASE("solve_batch: any number of threads, any neighbours, the same bits") {
    const Example e = random_frames::example(11);
    Random random(11);
    std::vector<FrameLoads> loads = many(e, random, 300);
    const std::vector<Solution> one = solve_batch(e.frame, loads);
    for (const int threads : {0, 2, 3, 7}) {
        const std::vector<Solution> several = solve_batch(e.frame, loads, {}, {}, threads);
        for (std::size_t i = 0; i < loads.size(); ++i) CHECK(same(one[i], several[i]));
    }
    std::reverse(loads.begin(), loads.end());
    std::vector<Solution> backwards = solve_batch(e.frame, loads);
    std::reverse(backwards.begin(), backwards.end());
    for (std::size_t i = 0; i < loads.size(); ++i) CHECK(same(one[i], backwards[i]));
    CHECK(solve_batch(e.frame, {}).empty());
}

TEST_CASE("solve_batch: refuses what solve() refuses, and names the first of the loads") {
    const Example e = random_frames::example(5);
    std::vector<FrameLoads> loads(200, e.loads);
    loads[150].force.pop_back();
    CHECK_THROWS_AS((void)solve_batch(e.frame, loads, {}, {}, 2), InputError);
    CHECK_THROWS_AS((void)solve_batch(e.frame, {}, {}, {}, -1), InputError);
    Frame broken = e.frame;
    broken.members[0].axial_stiffness = -1;
    CHECK_THROWS_AS((void)solve_batch(broken, {}), InputError);
}

TEST_CASE("banded batch: the bits of each matrix alone, and the solutions of Eigen's dense LDLT") {
    using kernel::batch;
    for (unsigned seed = 1; seed <= 40; ++seed) {
        CAPTURE(seed);
        Random random(seed);
        const int n = random.whole(1, 60);
        std::vector<int> last;
        for (int t = 0; t < n; ++t) last.push_back(std::min(n - 1, t + random.whole(0, 17)));
        const kernel::Band band(last);
        const auto size = static_cast<std::size_t>(n);
        const auto length = static_cast<std::size_t>(band.length());
        std::vector<double> values(batch * length), scale(batch * size, 1.0), sides(batch * size);
        std::vector<Eigen::VectorXd> alone(batch, Eigen::VectorXd::Zero(band.length()));
        for (std::size_t which = 0; which < batch; ++which) {
            for (int t = 0; t < n; ++t) {
                for (int i = t; i <= band.reach(t); ++i) alone[which](band.at(i, t)) = random.between(-1, 1);
                // Positive definite but for one of them, which may be anything.
                if (which != 3) alone[which](band.diagonal(t)) += 20;
            }
            for (std::size_t i = 0; i < length; ++i) values[batch * i + which] = alone[which](Eigen::Index(i));
        }
        for (double& side : sides) side = random.between(-1, 1);
        const std::vector<double> given = sides;
        kernel::BatchLDLT together(band);
        together.factorise(values.data(), scale.data());
        together.solve(sides.data());
        for (std::size_t which = 0; which < batch; ++which) {
            CAPTURE(which);
            kernel::BandedLDLT factor(band);
            const bool found = factor.factorise(alone[which], Eigen::VectorXd::Ones(n));
            if (!(found && factor.smallest_ratio() > 0)) {
                CHECK(together.smallest_ratio(static_cast<int>(which)) == 0);
                continue;
            }
            CHECK(together.smallest_ratio(static_cast<int>(which)) == factor.smallest_ratio());
            Eigen::VectorXd x(n);
            for (int i = 0; i < n; ++i) x(i) = given[batch * static_cast<std::size_t>(i) + which];
            const Eigen::VectorXd reference = band.dense(alone[which]).ldlt().solve(x);
            factor.solve(x);
            for (int i = 0; i < n; ++i) CHECK(sides[batch * static_cast<std::size_t>(i) + which] == x(i));
            if (which != 3) CHECK(close_abs((x - reference).norm(), 0, 1e-12 * reference.norm()));
        }
    }
}
