// SPDX-License-Identifier: BSD-3-Clause
// Feet of uprights that give, from the plan to the checks: written, read, refused, laid out, settled by N/k.
#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "../actions/refusal.hpp"
#include "../close.hpp"
#include "coverframe/checks/uprights.hpp"
#include "coverframe/film/cover.hpp"
#include "coverframe/frame/layout.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/plan/validate.hpp"
#include "coverframe/units/crossing.hpp"
#include "coverframe/units/literals.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {

constexpr double k = 250e3;  // of a rubber sole or a springy board [N/m]

Plan demo(const char* name) {
    return read_plan_file(std::string(COVERFRAME_SOURCE_FOLDER) + "/examples/plans/" + name + ".json");
}

SoftFoot soft(double stiffness, std::optional<Length> gap = {}, std::optional<FootFriction> friction = {}) {
    return {{from_N_per_m(stiffness), "pressed with a jack and measured"}, gap, friction};
}

FootFriction friction(double low, double high) {
    return {{low, "wood on wet gelcoat"}, {high, "wood on dry gelcoat"}, {from_N_per_m(2e5), "as the pad"}};
}

/// The motor boat with soft feet under some of her uprights.
Plan with_feet(const SoftFoot& foot, std::size_t count = 99) {
    Plan plan = demo("motor_boat");
    auto& uprights = std::get<RidgeSupport>(plan.support.structure).uprights;
    for (std::size_t i = 0; i < std::min(count, uprights.size()); ++i) uprights[i].foot = foot;
    return plan;
}

Rigged rigged(const Plan& plan, Bound straps = Bound::low) {
    LayoutOptions options;
    options.strap_stiffness = straps;
    return rig(build_cover(plan, options), in_N_per_m(plan.film.tension_low.value));
}

double down(const Solution& s, int node) { return -s.displacement[6 * static_cast<std::size_t>(node) + 2]; }

}  // namespace

TEST_CASE("soft feet: a plan reads as it was written, with all of a foot or none") {
    for (const Plan& plan :
         {with_feet(soft(k)), with_feet(soft(k, 4.0_mm, friction(0.1, 0.5)), 1), demo("motor_boat")}) {
        CHECK(read_plan(write_plan(plan)) == plan);
    }
    CHECK(write_plan(demo("motor_boat")).find("\"foot\"") == std::string::npos);
    CHECK(write_plan(with_feet(soft(k))).find("\"250 kN/m\"") != std::string::npos);
}

TEST_CASE("soft feet: numbers out of their range and friction the wrong way round are refused") {
    const auto code = [](const SoftFoot& foot) {
        const Plan plan = with_feet(foot, 1);
        return code_of([&] { return (require_valid(plan), 0); });
    };
    CHECK(code(soft(k)) == "none");
    CHECK(code(soft(k, 100.0_mm, friction(0.05, 1.0))) == "none");
    CHECK(code(soft(999)) == "plan.range");
    CHECK(code(soft(1.001e9)) == "plan.range");
    CHECK(code(soft(k, -1.0_mm)) == "plan.range");
    CHECK(code(soft(k, 101.0_mm)) == "plan.range");
    CHECK(code(soft(k, {}, friction(0.0, 0.5))) == "plan.range");
    CHECK(code(soft(k, {}, friction(0.1, 1.1))) == "plan.range");
    CHECK(code(soft(k, {}, friction(0.5, 0.1))) == "support.upright.friction");
    CHECK(code(soft(k, {}, friction(0.3, 0.3))) == "none");
    for (const double bad : not_finite) CHECK(code(soft(bad)) != "none");
    SoftFoot bare = soft(k);
    bare.stiffness.source.clear();
    CHECK(code(bare) != "none");
}

TEST_CASE("soft feet: without them the frame is what it was; with them the foot is free upwards") {
    const Layout firm = lay_out(demo("motor_boat"));
    CHECK(firm.frame.feet.empty());
    const Layout stepped = lay_out(with_feet(soft(k, 3.0_mm), 1));
    REQUIRE(stepped.frame.feet.size() == 1);
    const Foot& foot = stepped.frame.feet[0];
    CHECK(foot.node == stepped.uprights[0].foot);
    CHECK(close(foot.stiffness, k, 1e-14));
    CHECK(close(foot.gap, 0.003, 1e-14));
    CHECK(foot.friction == 0);
    using Held = std::array<bool, 6>;
    const auto held = [](const Layout& l) { return l.frame.nodes[static_cast<std::size_t>(l.uprights[0].foot)].held; };
    CHECK(held(firm) == Held{true, true, true, false, false, false});
    CHECK(held(stepped) == Held{true, true, false, false, false, false});

    LayoutOptions stiff;
    stiff.strap_stiffness = Bound::high;
    const Plan slippery = with_feet(soft(k, {}, friction(0.1, 0.5)));
    const Layout low = lay_out(slippery);
    const Layout high = lay_out(slippery, stiff);
    CHECK(low.frame.feet.size() == low.uprights.size());
    for (const Foot& f : low.frame.feet) CHECK(f.friction == 0.1);
    for (const Foot& f : high.frame.feet) CHECK(f.friction == 0.5);
    CHECK(close(low.frame.feet[0].side_stiffness, 2e5, 1e-14));
    CHECK(held(low) == Held{});
}

TEST_CASE("soft feet: a pad sinks by N/k under the push of its upright, and a gap is closed first") {
    int settled = 0;
    for (const double gap : {0.0, 0.002}) {
        CAPTURE(gap);
        const Rigged r = rigged(with_feet(soft(k, from_m(gap))));
        REQUIRE_MESSAGE(r.state.usable(), r.state.frame.message);
        for (const double q : {0.0, 400.0, 800.0}) {
            const CoverState s = load_cover(r.cover, StripLoads(r.cover.strips.size(), q));
            REQUIRE_MESSAGE(s.usable(), s.frame.message);
            CHECK(close(s.vertical_reaction, s.vertical_load, 1e-6));
            for (const UprightPart& upright : r.cover.layout.uprights) {
                // By hand: the upright's push, and half of its own weight, on a spring. It leans by minutes of arc.
                const auto m = static_cast<std::size_t>(upright.member);
                const double push = -s.frame.members[m].axial;
                const double weight = r.cover.layout.frame.members[m].weight *
                                      drawn_length(r.cover.layout.frame, r.cover.layout.frame.members[m]);
                if (push <= 0) continue;
                CHECK(close(down(s.frame, upright.foot), gap + (push + 0.5 * weight) / k, 1e-4));
                ++settled;
            }
        }
    }
    CHECK(settled >= 12);
}

TEST_CASE("soft feet: in a support as found they settle as in one that is drawn") {
    Plan plan = demo("as_found");
    std::size_t feet = 0;
    for (FoundMember& member : std::get<FoundFrame>(plan.support.structure).members) {
        if (member.kind == FoundKind::upright) member.foot = soft(k), ++feet;
        if (member.kind == FoundKind::strap) member.pretension = 600.0_N;  // stays taut while the feet settle
    }
    CHECK(read_plan(write_plan(plan)) == plan);
    const Rigged r = rigged(plan);
    REQUIRE_MESSAGE(r.state.usable(), r.state.frame.message);
    REQUIRE(r.cover.layout.frame.feet.size() == feet);
    const CoverState s = load_cover(r.cover, StripLoads(r.cover.strips.size(), 400.0));
    REQUIRE_MESSAGE(s.usable(), s.frame.message);
    CHECK(close(s.vertical_reaction, s.vertical_load, 1e-6));
    for (const UprightPart& upright : r.cover.layout.uprights) {
        // By hand: the upright's push, and half of its own weight, on a spring.
        const FrameMember& m = r.cover.layout.frame.members[static_cast<std::size_t>(upright.member)];
        const double push = -s.frame.members[static_cast<std::size_t>(upright.member)].axial;
        REQUIRE(push > 0);
        const double weight = m.weight * drawn_length(r.cover.layout.frame, m);
        CHECK(close(down(s.frame, upright.foot), (push + 0.5 * weight) / k, 1e-4));
    }
}

TEST_CASE("soft feet: the softer the pad the lower the ridge; a hard one is as good as none") {
    const Rigged firm = rigged(demo("motor_boat"));
    const CoverState reference = load_cover(firm.cover, StripLoads(firm.cover.strips.size(), 900.0));
    REQUIRE(reference.usable());
    const int top = firm.cover.layout.uprights[1].top;
    double last = down(reference.frame, top);
    for (const double stiffness : {1e9, 2e6, 5e5, 2e5}) {
        CAPTURE(stiffness);
        const Rigged r = rigged(with_feet(soft(stiffness)));
        const CoverState s = load_cover(r.cover, StripLoads(r.cover.strips.size(), 900.0));
        REQUIRE_MESSAGE(s.usable(), s.frame.message);
        CHECK(down(s.frame, top) > last);
        if (stiffness == 1e9) CHECK(close_abs(down(s.frame, top), last, 1e-4));
        last = down(s.frame, top);
    }
}

TEST_CASE("soft feet: friction holds them at both bounds, and the checks say how far they settle") {
    const Plan plan = with_feet(soft(2e6, {}, friction(0.2, 0.6)));
    for (const Bound bound : {Bound::low, Bound::high}) {
        const Rigged r = rigged(plan, bound);
        REQUIRE_MESSAGE(r.state.usable(), r.state.frame.message);
        const CoverState s = load_cover(r.cover, StripLoads(r.cover.strips.size(), 900.0));
        REQUIRE_MESSAGE(s.usable(), s.frame.message);
        for (const FootForces& foot : s.frame.feet) {
            const double mu = bound == Bound::low ? 0.2 : 0.6;
            CHECK(std::hypot(foot.side[0], foot.side[1]) <= mu * foot.push * (1 + 1e-6));
        }
        const CheckInput input{plan, r.cover, s, "snow", false};
        int told = 0;
        for (const Finding& f : check_uprights(input)) {
            if (f.check != "upright.foot" || f.verdict == Verdict::not_applicable) continue;
            CHECK_MESSAGE(f.sentence.find("The foot settles by ") != std::string::npos, f.sentence);
            ++told;
        }
        CHECK(told > 0);
    }
    const Plan firm = demo("motor_boat");
    const Rigged r = rigged(firm);
    for (const Finding& f : check_uprights({firm, r.cover, r.state, "rig", false})) {
        CHECK(f.sentence.find("settles") == std::string::npos);
    }
}
