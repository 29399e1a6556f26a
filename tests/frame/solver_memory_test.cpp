// SPDX-License-Identifier: BSD-3-Clause
#include "frame/kernel/solver.hpp"

#include <doctest/doctest.h>

#include <cstdlib>
#include <vector>

#include "../close.hpp"
#include "random_frame.hpp"

// Where the library of C lets us, all memory taken is counted, that of Eigen and that of operator new.
#if defined(__GLIBC__) && !defined(__SANITIZE_ADDRESS__)
#define COUNTS_MEMORY 1
namespace {
long taken = 0;
}
extern "C" void* __libc_malloc(std::size_t size);
extern "C" void* malloc(std::size_t size) {
    ++taken;
    return __libc_malloc(size);
}
#endif

using namespace coverframe;
using random_frames::Example;

#ifdef COUNTS_MEMORY
TEST_CASE("solver: steps take no memory, however many there are") {
    int longer = 0;
    for (unsigned seed = 1; seed <= 30; ++seed) {
        CAPTURE(seed);
        const Example e = random_frames::example(seed);
        kernel::Solver solver(e.frame);
        const Solution first = solver.solve(e.loads, {}, {});
        if (!first.usable()) continue;
        // What a solution itself takes: from its own answer there is no step.
        const long before_none = taken;
        const Solution none = solver.solve(e.loads, {}, first.displacement);
        const long for_none = taken - before_none;
        const long before_all = taken;
        const Solution all = solver.solve(e.loads, {}, {});
        const long for_all = taken - before_all;
        CHECK(none.iterations == 0);
        CHECK(for_all == for_none);
        CHECK(for_all > 0);
        longer = std::max(longer, all.iterations);
    }
    CHECK(longer > 5);
}
#endif

TEST_CASE("solver: what was solved before changes no bit") {
    for (unsigned seed = 1; seed <= 20; ++seed) {
        CAPTURE(seed);
        const Example e = random_frames::example(seed);
        FrameLoads other = e.loads;
        for (double& force : other.force) force *= -0.5;
        kernel::Solver solver(e.frame);
        const Solution fresh = solver.solve(e.loads, {}, {});
        (void)solver.solve(other, {}, {});
        const Solution again = solver.solve(e.loads, {}, {});
        CHECK(fresh.displacement == again.displacement);
        CHECK(fresh.energy == again.energy);
        CHECK(fresh.iterations == again.iterations);
    }
}

TEST_CASE("solver: springs that follow but stay as they are give the answer of solve") {
    int usable = 0;
    for (unsigned seed = 1; seed <= 30; ++seed) {
        CAPTURE(seed);
        const Example e = random_frames::example(seed);
        FrameLoads loads = e.loads;
        loads.springs.push_back({e.loose.front(), {2e4, 0, 0, 0, 3e4, 0, 0, 0, 1e4}, {0.001, 0, 0}, {20, 30, -40}});
        kernel::Solver solver(e.frame);
        SolveOptions exact;
        exact.force_tolerance = 1e-13;
        const Solution expected = solver.solve(loads, exact, {});
        const auto stay = [](const Eigen::VectorXd&, FrameLoads&) { return true; };
        const std::vector<double> rest(6 * e.frame.nodes.size(), 0.0);
        const std::optional<Solution> found = solver.follow(loads, stay, {}, rest);
        CHECK(found.has_value() == expected.usable());
        if (!found || !expected.usable()) continue;
        ++usable;
        double size = 0;
        for (const double u : expected.displacement) size = std::max(size, std::abs(u));
        for (std::size_t i = 0; i < expected.displacement.size(); ++i) {
            CHECK(close_abs(found->displacement[i], expected.displacement[i], 1e-8 * size));
        }
    }
    CHECK(usable > 15);
}
