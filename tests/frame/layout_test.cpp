// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/layout.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "../close.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/units/crossing.hpp"

using namespace coverframe;

namespace {

Plan demo(const char* name) {
    return read_plan_file(std::string(COVERFRAME_SOURCE_FOLDER) + "/examples/plans/" + name + ".json");
}

}  // namespace

TEST_CASE("lay_out: stations run from bow to stern no further apart than asked, through every upright top") {
    for (const char* name : {"motor_boat", "sloop", "open_boat", "as_found"}) {
        CAPTURE(name);
        const Plan plan = demo(name);
        const Layout layout = lay_out(plan);
        CHECK_NOTHROW(require_sound(layout.frame));
        const auto x_of = [&](std::size_t i) {
            return layout.frame.nodes[static_cast<std::size_t>(layout.stations[i])].at[0];
        };
        for (std::size_t i = 1; i < layout.stations.size(); ++i) {
            CHECK(x_of(i) > x_of(i - 1));
            CHECK(x_of(i) - x_of(i - 1) <= 0.25 + 1e-9);
        }
        for (const UprightPart& upright : layout.uprights) {
            CHECK(layout.frame.members[static_cast<std::size_t>(upright.member)].kind == MemberKind::upright);
        }
    }
}

TEST_CASE("lay_out: the strap bound chooses the stiffness and nothing else") {
    const Plan plan = demo("motor_boat");
    LayoutOptions stiff;
    stiff.strap_stiffness = Bound::high;
    const Layout soft = lay_out(plan);
    const Layout hard = lay_out(plan, stiff);
    REQUIRE(soft.frame.members.size() == hard.frame.members.size());
    for (std::size_t m = 0; m < soft.frame.members.size(); ++m) {
        const bool strap = soft.frame.members[m].kind == MemberKind::strap;
        CHECK((hard.frame.members[m].axial_stiffness > soft.frame.members[m].axial_stiffness) == strap);
    }
}

TEST_CASE("lay_out: a ridge pole has the section of the plan") {
    const Plan plan = demo("motor_boat");
    const auto& pole = std::get<PoleRidge>(std::get<RidgeSupport>(plan.support.structure).ridge.member);
    const double b = in_m(pole.section.breadth);
    const double d = in_m(pole.section.depth);
    const Layout layout = lay_out(plan);
    REQUIRE(layout.ridge_is_pole);
    const FrameMember& m = layout.frame.members[static_cast<std::size_t>(layout.bays[0].members[0])];
    CHECK(close(m.bending.EI_vertical / m.bending.EI_level, (d * d) / (b * b), 1e-12));
    CHECK(close(m.axial_stiffness * d * d / 12, m.bending.EI_vertical, 1e-12));
}
