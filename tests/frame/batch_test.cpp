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

/// Every bit of it but the estimate of the condition, which a batch does not give.
bool same(const Solution& a, const Solution& b) {
    bool good = a.status == b.status && a.message == b.message && a.displacement == b.displacement &&
                a.reaction == b.reaction && a.unbalanced == b.unbalanced && a.energy == b.energy &&
                a.unbalanced_moment == b.unbalanced_moment && a.strain_energy == b.strain_energy &&
                a.balance.load_moment == b.balance.load_moment && a.loose == b.loose && a.load_share == b.load_share &&
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

/// The same topology with other places, stiffnesses and free lengths.
std::vector<Frame> variants(const Frame& frame, Random& random, int count) {
    std::vector<Frame> all(static_cast<std::size_t>(count), frame);
    for (Frame& other : all) {
        for (FrameNode& node : other.nodes) {
            for (double& place : node.at) place += random.between(-0.02, 0.02);
        }
        for (std::size_t m = 0; m < other.members.size(); ++m) {
            FrameMember& member = other.members[m];
            const double strain = frame.members[m].free_length / drawn_length(frame, frame.members[m]);
            member.free_length = strain * drawn_length(other, member);
            member.axial_stiffness *= random.between(0.5, 2);
            for (double* stiffness : {&member.bending.EI_vertical, &member.bending.EI_level, &member.bending.GJ}) {
                *stiffness *= random.between(0.8, 1.2);
            }
        }
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
            CHECK(together[i].condition == 0);
            CHECK(together[i].caution.empty());
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

TEST_CASE("solve_batch: many frames of one topology, bit for bit what solve() says of each, on random frames") {
    int usable = 0;
    int alone_differs = 0;
    for (unsigned seed = 1; seed <= 40; ++seed) {
        CAPTURE(seed);
        const Example e = random_frames::example(seed, {.slack = seed % 2 == 0});
        Random random(seed);
        const int count = 1 + static_cast<int>(seed % 19);
        const std::vector<FrameLoads> loads = many(e, random, count);
        const std::vector<Frame> frames = variants(e.frame, random, count);
        const std::vector<Solution> together = solve_batch(frames, loads);
        const std::vector<Solution> one_load = solve_batch(frames, std::span(loads).first(1), {}, {}, 2);
        REQUIRE(together.size() == frames.size());
        REQUIRE(one_load.size() == frames.size());
        for (std::size_t i = 0; i < frames.size(); ++i) {
            CAPTURE(i);
            const Solution alone = solve(frames[i], loads[i]);
            CHECK(same(together[i], alone));
            CHECK(same(one_load[i], solve(frames[i], loads[0])));
            usable += alone.usable() ? 1 : 0;
            alone_differs += alone.energy != solve(frames[0], loads[i]).energy ? 1 : 0;
        }
    }
    CHECK(usable > 150);
    CHECK(alone_differs > 150);
}

TEST_CASE("solve_batch: frames with arms, feet or springs among others, and each with its own start of the walk") {
    const Example e = random_frames::example(3, {.slack = false});
    Random random(3);
    std::vector<Frame> frames = variants(e.frame, random, 21);
    std::vector<FrameLoads> loads = many(e, random, 21);
    for (std::size_t i = 0; i < frames.size(); ++i) {
        if (i % 5 == 1) frames[i].members[0].arm_to = {0.01, 0.02, 0};
        if (i % 7 == 2) loads[i].temperature.assign(e.frame.members.size(), 10.0);
    }
    const Solution before = solve(frames[0], loads[0]);
    REQUIRE(before.usable());
    const auto check = [&](const std::vector<Frame>& all) {
        const std::vector<Solution> together = solve_batch(all, loads, {}, before.displacement);
        for (std::size_t i = 0; i < all.size(); ++i) {
            CAPTURE(i);
            CHECK(same(together[i], solve(all[i], loads[i], {}, before.displacement)));
        }
    };
    check(frames);
    std::swap(frames[0], frames[1]);  // the first one with an arm
    check(frames);
    for (Frame& frame : frames)
        frame.springs.push_back({.node = e.loose.front(), .stiffness = {100, 100, 100, 0, 0, 0}});
    check(frames);
}

TEST_CASE("solve_batch: frames of other topologies are refused, with what differs") {
    const Example e = random_frames::example(5);
    const std::vector<FrameLoads> loads(1, e.loads);
    const auto refused = [&](const Frame& other, const char* what) {
        try {
            (void)solve_batch(std::vector<Frame>{e.frame, e.frame, other}, loads);
            FAIL("not refused");
        } catch (const InputError& error) {
            CAPTURE(what);
            CHECK(error.code() == "frame.batch.topology");
            CHECK(error.where() == "/frames/2");
            CHECK_MESSAGE(std::string(error.what()).find(what) != std::string::npos, error.what());
        }
    };
    Frame other = e.frame;
    other.nodes.push_back(other.nodes.back());
    refused(other, "nodes");
    other = e.frame;
    other.members.pop_back();
    refused(other, "members");
    other = e.frame;
    other.nodes[1].held[2] = !other.nodes[1].held[2];
    refused(other, "held otherwise at node 1");
    other = e.frame;
    other.members[0].kind = other.members[0].kind == MemberKind::bar ? MemberKind::strap : MemberKind::bar;
    refused(other, "another kind of member 0");
    other = e.frame;
    std::swap(other.members[0].from, other.members[0].to);
    refused(other, "member 0 between other nodes");
    other = e.frame;
    other.springs.push_back({.node = 1, .stiffness = {1, 1, 1, 0, 0, 0}});
    refused(other, "springs");
    other = e.frame;
    other.feet.push_back({.node = 1, .stiffness = 1e5});
    refused(other, "feet");
    CHECK_THROWS_AS((void)solve_batch(std::vector<Frame>(3, e.frame), std::vector<FrameLoads>(2, e.loads)), InputError);
    Frame broken = e.frame;
    broken.members[0].axial_stiffness = -1;
    CHECK_THROWS_AS((void)solve_batch(std::vector<Frame>{e.frame, broken}, loads), InputError);
    CHECK(solve_batch(std::vector<Frame>{}, loads).empty());
}

TEST_CASE("solve_batch and solve: without AVX2 the same bits") {
    const bool avx2 = kernel::avx2_in_use();
    for (const unsigned seed : {2u, 9u, 11u, 14u, 23u}) {
        CAPTURE(seed);
        const Example e = random_frames::example(seed);
        Random random(seed);
        const std::vector<FrameLoads> loads = many(e, random, 19);
        const std::vector<Frame> frames = variants(e.frame, random, 19);
        const std::vector<Solution> together = solve_batch(e.frame, loads);
        const std::vector<Solution> several = solve_batch(frames, loads);
        kernel::avx2_in_use() = false;
        const std::vector<Solution> plain_together = solve_batch(e.frame, loads);
        const std::vector<Solution> plain_several = solve_batch(frames, loads);
        for (std::size_t i = 0; i < loads.size(); ++i) {
            CAPTURE(i);
            CHECK(same(plain_together[i], together[i]));
            CHECK(same(plain_several[i], several[i]));
            CHECK(same(solve(e.frame, loads[i]), together[i]));
        }
        kernel::avx2_in_use() = avx2;
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
