// SPDX-License-Identifier: BSD-3-Clause
#include "film/cover_solver.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "../close.hpp"
#include "coverframe/plan/read.hpp"

using namespace coverframe;

namespace {

Rigged rigged(const char* name) {
    const Plan plan = read_plan_file(std::string(COVERFRAME_SOURCE_FOLDER) + "/examples/plans/" + name + ".json");
    return rig(build_cover(plan), 200);
}

/// Even snow, snow on one side, and snow that grows from bow to stern.
std::vector<StripLoads> snows(const Cover& cover) {
    std::vector<StripLoads> all(3);
    for (const CoverStrip& strip : cover.strips) {
        all[0].push_back(400);
        all[1].push_back(strip.side == Side::port ? 300 : 0);
        all[2].push_back(10.0 * strip.station);
    }
    return all;
}

double largest(const std::vector<double>& values) {
    double most = 0;
    for (const double value : values) most = std::max(most, std::abs(value));
    return most;
}

}  // namespace

TEST_CASE("cover solver: film and frame walked together give the answer of one after the other") {
    SolveOptions exact;
    exact.force_tolerance = 1e-13;
    for (const char* name : {"motor_boat", "sloop", "open_boat", "as_found"}) {
        const Rigged r = rigged(name);
        CoverSolver solver(r.cover);
        for (const StripLoads& snow : snows(r.cover)) {
            CAPTURE(name);
            const CoverState joint = solver.load(snow, 1.35, {}, &r.state);
            const CoverState apart = load_cover(r.cover, snow, 1.35, exact);
            REQUIRE_MESSAGE(joint.usable(), joint.frame.message);
            REQUIRE_MESSAGE(apart.usable(), apart.frame.message);
            const double size = largest(apart.frame.displacement);
            for (std::size_t i = 0; i < apart.frame.displacement.size(); ++i) {
                CHECK(close_abs(joint.frame.displacement[i], apart.frame.displacement[i], 1e-8 * size));
            }
            for (std::size_t i = 0; i < apart.strips.size(); ++i) {
                CHECK(close(joint.strips[i].level_force, apart.strips[i].level_force, 1e-8));
            }
            CHECK(close(joint.vertical_reaction, joint.vertical_load, 1e-9));
        }
    }
}

TEST_CASE("cover solver: what was solved before changes no bit") {
    const Rigged r = rigged("sloop");
    std::vector<StripLoads> all = snows(r.cover);
    CoverSolver forwards(r.cover);
    CoverSolver backwards(r.cover);
    std::vector<CoverState> one;
    std::vector<CoverState> other;
    for (const StripLoads& snow : all) one.push_back(forwards.load(snow, 1, {}, &r.state));
    std::reverse(all.begin(), all.end());
    for (const StripLoads& snow : all) other.push_back(backwards.load(snow, 1, {}, &r.state));
    std::reverse(other.begin(), other.end());
    for (std::size_t i = 0; i < one.size(); ++i) {
        CHECK(one[i].frame.displacement == other[i].frame.displacement);
        CHECK(one[i].frame.energy == other[i].frame.energy);
    }
}

TEST_CASE("cover solver: snow that no cover carries is told as load_cover tells it") {
    const Rigged r = rigged("open_boat");
    const StripLoads snow(r.cover.strips.size(), 4e6);
    const CoverState joint = CoverSolver(r.cover).load(snow, 1, {}, &r.state);
    const CoverState apart = load_cover(r.cover, snow);
    CHECK_FALSE(apart.usable());
    CHECK(joint.frame.status == apart.frame.status);
    CHECK(joint.frame.message == apart.frame.message);
}
