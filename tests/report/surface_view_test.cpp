// SPDX-License-Identifier: BSD-3-Clause
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "coverframe/base/error.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/report/drawing.hpp"

using namespace coverframe;

namespace {

Plan demo(const std::string& name) {
    return read_plan_file(std::string(COVERFRAME_SOURCE_FOLDER) + "/examples/plans/" + name + ".json");
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("surface_view: uprights, water and what the film rests on are named") {
    const Plan plan = demo("sloop");
    const CoverSurface s = rig_surface(plan, 150, {.spacing = 0.25, .rows = 10});
    const std::vector<double> snow(s.cover.mesh.triangles.size(), 900);
    const SurfaceState state = load_surface(s, snow, {Rain::Kind::to_the_brim, 0});
    REQUIRE(state.usable());
    const std::string svg = surface_view(plan, s, state);
    CHECK(svg.starts_with("<svg"));
    CHECK(svg.ends_with("</svg>\n"));
    for (const char* part : {"U1", "U2", "U3", "companionway hatch", "film rests on it", "water ", " deep", "starboard",
                             "port", "bow", "stern", "a line every 50 mm"}) {
        CAPTURE(part);
        CHECK(has(svg, part));
    }
    CHECK_FALSE(has(svg, "nan"));
    CHECK_FALSE(has(svg, "inf"));
}

TEST_CASE("surface_view: a cover without water says so, one without equilibrium is refused") {
    const Plan plan = demo("open_boat");
    const CoverSurface s = rig_surface(plan, 150, {.spacing = 0.4, .rows = 6});
    CHECK(has(surface_view(plan, s, s.state), "No hollow of the film holds"));
    CHECK_THROWS_AS((void)surface_view(plan, s, SurfaceState{}), StateError);
}
