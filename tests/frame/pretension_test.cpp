// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/pretension.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "../close.hpp"
#include "coverframe/base/error.hpp"
#include "frame/members.hpp"

using namespace coverframe;
using namespace coverframe::built;

namespace {

/// A ridge strap over one upright, with a cross strap over its top.
Frame frame_of_straps() {
    Frame f;
    const auto add = [&](const char* name, double x, double y, double z, bool held) {
        FrameNode n;
        n.name = name;
        n.at = {x, y, z};
        if (held) n.held = {true, true, true, false, false, false};
        f.nodes.push_back(n);
    };
    add("foot", 2, 0, -0.7, true);
    add("top", 2, 0, 0.5, false);
    add("bow", 0, 0, 0, true);
    add("stern", 4, 0, 0, true);
    add("port", 2, -1.2, 0, true);
    add("starboard", 2, 1.2, 0, true);
    join(f, "U1", MemberKind::upright, 0, 1, 3e6);
    join(f, "ridge", MemberKind::strap, 2, 1, 4e5);
    join(f, "ridge", MemberKind::strap, 1, 3, 4e5);
    join(f, "C1 port", MemberKind::strap, 1, 4, 1e5);
    join(f, "C1 starboard", MemberKind::strap, 1, 5, 1e5);
    return f;
}

}  // namespace

TEST_CASE("tension_straps: every strap carries its set tension in the assembled frame") {
    const std::vector<StrapRun> runs{{"ridge", {1, 2}, 900}, {"C1", {3, 4}, 400}};
    const Tensioned t = tension_straps(frame_of_straps(), runs, {});
    REQUIRE(t.solution.usable());
    for (const std::size_t m : {1u, 2u}) CHECK(close(t.solution.members[m].axial, 900, 1e-8));
    for (const std::size_t m : {3u, 4u}) CHECK(close(t.solution.members[m].axial, 400, 1e-8));
    // The upright carries the vertical parts of all four pulls at the present place of its top.
    const double z = 0.5 + t.solution.displacement[6 + 2];
    const double expected = 2 * 900 * z / std::hypot(2.0, z) + 2 * 400 * z / std::hypot(1.2, z);
    CHECK(close(-t.solution.members[0].axial, expected, 1e-8));
}

TEST_CASE("tension_straps: a strap that is only laid on keeps its drawn length") {
    const Tensioned t = tension_straps(frame_of_straps(), {{"ridge", {1, 2}, 900}, {"C1", {3, 4}, 0}}, {});
    CHECK(close(t.frame.members[3].free_length, drawn_length(t.frame, t.frame.members[3]), 1e-15));
}

TEST_CASE("tension_straps: refuses runs that are no straps") {
    CHECK_THROWS_AS((void)tension_straps(frame_of_straps(), {{"U1", {0}, 100}}, {}), InputError);
    CHECK_THROWS_AS((void)tension_straps(frame_of_straps(), {{"C1", {3, 4}, -1}}, {}), InputError);
}
