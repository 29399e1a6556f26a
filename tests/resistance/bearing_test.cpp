// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/resistance/bearing.hpp"

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using bearing::Foot;

namespace {
// A 2x4 on 18 mm plywood, 200 x 200 mm.
constexpr Foot usual{
    .post_length = 89_mm, .post_breadth = 38_mm, .pad_length = 200_mm, .pad_breadth = 200_mm, .pad_thickness = 18_mm};
}  // namespace

TEST_CASE("bearing: the pad spreads at 45 degrees") {
    // by hand: (89 + 36)(38 + 36) = 9250 mm2; 1 kN on it is 108.1 kPa. The 45 degrees are common practice
    CHECK(close(in_mm2(bearing::foot_area(usual)), 9250.0, 1e-12));
    CHECK(close(in_kPa(bearing::foot_pressure(1_kN, usual)), 1e9 / 9250.0 / 1e3, 1e-12));
    CHECK(in_kPa(bearing::foot_pressure(0_kN, usual)) == 0.0);
    // 2x4 on 3/4 in plywood: (3.5 + 1.5)(1.5 + 1.5) = 15 in2
    CHECK(close(in_mm2(bearing::foot_area({3.5_in, 1.5_in, 8_in, 8_in, 0.75_in})), 15.0 * 645.16, 1e-12));
}

TEST_CASE("bearing: the pad limits the spread") {
    const auto area = [](auto change) {
        Foot foot = usual;
        change(foot);
        return in_mm2(bearing::foot_area(foot));
    };
    CHECK(close(area([](Foot& f) { f.pad_thickness = 0_mm; }), 89.0 * 38.0, 1e-12));
    CHECK(close(area([](Foot& f) { f.pad_length = 100_mm; }), 100.0 * 74.0, 1e-12));
    CHECK(close(area([](Foot& f) { f.pad_breadth = 60_mm; }), 125.0 * 60.0, 1e-12));
    CHECK(close(area([](Foot& f) { f.pad_thickness = 500_mm; }), 200.0 * 200.0, 1e-12));
    CHECK(close(area([](Foot& f) { f.pad_length = 125_mm; }), 9250.0, 1e-12));        // where the pad begins to limit
    CHECK(close(area([](Foot& f) { f.pad_length = 10_m; }), 9250.0, 1e-12));          // a larger pad brings nothing
    CHECK(close(area([](Foot& f) { f.pad_breadth = 30_mm; }), 125.0 * 30.0, 1e-12));  // pad narrower than the post
    double before = 0.0;
    for (double t = 0.0; t < 100.0; t += 1.0) {
        const double now = area([&](Foot& f) { f.pad_thickness = from_mm(t); });
        CHECK(now >= before);
        before = now;
    }
}

TEST_CASE("bearing: turning post and pad together changes nothing") {
    const Foot turned{38_mm, 89_mm, 150_mm, 100_mm, 18_mm};
    const Foot straight{89_mm, 38_mm, 100_mm, 150_mm, 18_mm};
    CHECK(close(bearing::foot_area(turned), bearing::foot_area(straight), 1e-15));
}

TEST_CASE("bearing: arguments out of range") {
    const auto code = [](auto change) {
        Foot foot = usual;
        change(foot);
        return code_of([&] { return bearing::foot_pressure(1_kN, foot); });
    };
    CHECK(code([](Foot&) {}) == "none");
    CHECK(code([](Foot& f) { f.post_length = 0_mm; }) == "bearing.post.range");
    CHECK(code([](Foot& f) { f.post_breadth = 0_mm; }) == "bearing.post.range");
    CHECK(code([](Foot& f) { f.pad_length = 0_mm; }) == "bearing.pad.range");
    CHECK(code([](Foot& f) { f.pad_breadth = 0_mm; }) == "bearing.pad.range");
    CHECK(code([](Foot& f) { f.pad_thickness = from_mm(-1.0); }) == "bearing.thickness.range");
    CHECK(code_of([] { return bearing::foot_pressure(from_kN(-0.1), usual); }) == "bearing.push.range");
    for (const double bad : not_finite) {
        const Length l = from_m(bad);
        CHECK(code([&](Foot& f) { f.post_length = l; }) == "bearing.post.range");
        CHECK(code([&](Foot& f) { f.post_breadth = l; }) == "bearing.post.range");
        CHECK(code([&](Foot& f) { f.pad_length = l; }) == "bearing.pad.range");
        CHECK(code([&](Foot& f) { f.pad_breadth = l; }) == "bearing.pad.range");
        CHECK(code([&](Foot& f) { f.pad_thickness = l; }) == "bearing.thickness.range");
        CHECK(code_of([&] { return bearing::foot_pressure(from_N(bad), usual); }) == "bearing.push.range");
    }
    CHECK(bearing::clause_foot_pad.document == "common practice, no source");
}
