// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/cover.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "../close.hpp"
#include "coverframe/base/error.hpp"
#include "coverframe/plan/read.hpp"

using namespace coverframe;

namespace {

Plan demo(const char* name) {
    return read_plan_file(std::string(COVERFRAME_SOURCE_FOLDER) + "/examples/plans/" + name + ".json");
}

Rigged rigged(const Plan& plan, double film_tension = 200) { return rig(build_cover(plan), film_tension); }

double push_of(const Rigged& r, const CoverState& s, std::size_t upright) {
    return -s.frame.members[static_cast<std::size_t>(r.cover.layout.uprights[upright].member)].axial;
}

}  // namespace

TEST_CASE("rig: straps are tensioned, film pulls with its tension, everything balances") {
    for (const char* name : {"motor_boat", "sloop", "open_boat", "as_found"}) {
        CAPTURE(name);
        const Rigged r = rigged(demo(name));
        REQUIRE_MESSAGE(r.state.usable(), r.state.frame.message);
        CHECK(close(r.state.vertical_reaction, r.state.vertical_load, 1e-6));
        for (std::size_t i = 0; i < r.cover.strips.size(); ++i) {
            const double tension = 0.5 * (r.state.strips[i].tension_upper + r.state.strips[i].tension_lower);
            CHECK(close(tension / r.cover.strips[i].width, 200, 0.05));
        }
    }
}

TEST_CASE("load_cover: snow is carried, and the ridge carries far more than its share by area") {
    const Rigged r = rigged(demo("motor_boat"));
    const StripLoads snow(r.cover.strips.size(), 900.0);
    const CoverState s = load_cover(r.cover, snow);
    REQUIRE_MESSAGE(s.usable(), s.frame.message);
    CHECK(close(s.vertical_reaction, s.vertical_load, 1e-6));
    double on_ridge = 0;
    double by_area = 0;
    for (std::size_t i = 0; i < s.strips.size(); ++i) {
        on_ridge -= s.strips[i].pull_upper[2];
        by_area += 0.5 * 900 * r.cover.strips[i].width * s.strips[i].span;
    }
    CHECK(on_ridge > 1.3 * by_area);
}

TEST_CASE("load_cover: more snow never lowers the push of an upright, and snow on one side mirrors") {
    const Rigged r = rigged(demo("motor_boat"));
    double last = push_of(r, r.state, 1);
    for (const double q : {200.0, 500.0, 900.0, 1400.0}) {
        CAPTURE(q);
        const CoverState s = load_cover(r.cover, StripLoads(r.cover.strips.size(), q));
        REQUIRE_MESSAGE(s.usable(), s.frame.message);
        CHECK(push_of(r, s, 1) > last);
        last = push_of(r, s, 1);
    }
    StripLoads port(r.cover.strips.size(), 0.0);
    StripLoads starboard = port;
    for (std::size_t i = 0; i < port.size(); ++i) (r.cover.strips[i].side == Side::port ? port : starboard)[i] = 700;
    const CoverState a = load_cover(r.cover, port);
    const CoverState b = load_cover(r.cover, starboard);
    REQUIRE(a.usable());
    REQUIRE(b.usable());
    for (std::size_t u = 0; u < r.cover.layout.uprights.size(); ++u)
        CHECK(close(push_of(r, a, u), push_of(r, b, u), 1e-6));
    const int top = r.cover.layout.uprights[1].top;
    CHECK(close_abs(place_of(r.cover.layout.frame, a.frame, top)[1], -place_of(r.cover.layout.frame, b.frame, top)[1],
                    1e-8));
}

TEST_CASE("load_cover: finer stations change the push of the uprights little") {
    const Plan plan = demo("motor_boat");
    LayoutOptions fine;
    fine.station_spacing = Length::from_value(0.125);
    const Rigged coarse = rigged(plan);
    const Rigged close_by = rig(build_cover(plan, fine), 200);
    const CoverState a = load_cover(coarse.cover, StripLoads(coarse.cover.strips.size(), 900));
    const CoverState b = load_cover(close_by.cover, StripLoads(close_by.cover.strips.size(), 900));
    REQUIRE(a.usable());
    REQUIRE(b.usable());
    for (std::size_t u = 0; u < coarse.cover.layout.uprights.size(); ++u) {
        CHECK(close(push_of(coarse, a, u), push_of(close_by, b, u), 0.02));
    }
}

TEST_CASE("load_cover: refuses loads of the wrong size and negative ones") {
    const Rigged r = rigged(demo("open_boat"));
    CHECK_THROWS_AS((void)load_cover(r.cover, {1, 2}), InputError);
    CHECK_THROWS_AS((void)load_cover(r.cover, StripLoads(r.cover.strips.size(), -1)), InputError);
}
