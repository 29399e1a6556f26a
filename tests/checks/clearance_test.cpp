// SPDX-License-Identifier: BSD-3-Clause
// The film of by_hand.hpp falls from 1.5 m at the centreline to 0.6 m at y = 1.2 m: 0.75 m to the metre. With a sag f
// it comes down by 4 f s (1 - s), s = y/1.2; f = 0.12 m.
#include "coverframe/checks/clearance.hpp"

#include <doctest/doctest.h>

#include "by_hand.hpp"
#include "checks/common.hpp"
#include "close.hpp"
#include "coverframe/units/crossing.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using by_hand::Case;
using by_hand::term;

namespace {

void put(Case& c, std::vector<Point> outline, Length clearance) {
    c.plan.boat.obstacles = {{"windshield", std::move(outline), {clearance, "invented"}}};
}

Finding only(const Case& c) {
    const std::vector<Finding> findings = check_clearance(c.input());
    return findings.size() == 1 ? findings.front() : Finding{};
}

}  // namespace

TEST_CASE("sampled: every point, and none further than 25 mm from the next") {
    const std::vector<Point> outline{{0.0_m, 0.0_m, 1.0_m}, {0.0_m, 0.1_m, 1.0_m}, {0.3_m, 0.5_m, 1.0_m}};
    const std::vector<Point> points = checks_detail::sampled(outline);
    CHECK(points.size() == 4 + 20 + 1);
    CHECK(points.front() == outline.front());
    CHECK(points.back() == outline.back());
    for (std::size_t i = 1; i < points.size(); ++i)
        CHECK(std::hypot(in_mm(points[i].x - points[i - 1].x), in_mm(points[i].y - points[i - 1].y)) < 25.0 + 1e-9);
    CHECK(checks_detail::sampled(std::vector<Point>{outline[0]}).size() == 1);
    CHECK(checks_detail::sampled(std::vector<Point>{outline[0], outline[0]}).size() == 2);
    CHECK(checks_detail::sampled({}).empty());
}

// At y = 0.6, s = 0.5: drawn 1.5 - 0.45 = 1.05 m, sag 0.12 m: 0.93 m. Over z = 0.85 m the gap is 0.08 m; of the drawn
// gap of 0.2 m the clearance takes 0.05 m, so the film may come down 0.15 m and does by 0.12 m.
TEST_CASE("check_clearance: one point at a station") {
    Case c;
    c.workings = true;
    put(c, {{1.0_m, 0.6_m, 0.85_m}}, 50.0_mm);
    const Finding f = only(c);
    CHECK(f.check == "clearance");
    CHECK(f.part == "windshield");
    CHECK(close(f.demand, 0.12, 1e-9));
    CHECK(close(f.capacity, 0.15, 1e-9));
    CHECK(f.unit == "m");
    CHECK(f.verdict == Verdict::satisfied);
    CHECK(f.x.value() == 1.0);
    CHECK(close(term(f, "z_drawn"), 1.05, 1e-9));
    CHECK(close(term(f, "z_loaded"), 0.93, 1e-9));
    CHECK(f.sentence.find("80 mm (3 1/8 in) over the windshield") != std::string::npos);
    CHECK(f.sentence.find("600 mm (1 ft 12 in)") == std::string::npos);
    CHECK(f.sentence.find("to starboard") != std::string::npos);
}

// At y = 1.08, s = 0.9: drawn 0.69 m, sag 4 x 0.12 x 0.9 x 0.1 = 0.0432 m, 147 mm over z = 0.5. More of what is allowed
// is used further in, where the film stays further off.
TEST_CASE("check_clearance: the sentence tells where the film is nearest, not where most is used") {
    Case c;
    put(c, {{1.0_m, 0.6_m, 0.5_m}, {1.0_m, 1.08_m, 0.5_m}}, 20.0_mm);
    const Finding f = only(c);
    CHECK(f.verdict == Verdict::satisfied);
    CHECK(f.demand > 0.05);
    CHECK(f.sentence.find("stays 147 mm") != std::string::npos);
    CHECK(f.sentence.find("1.08 m") != std::string::npos);
}

// Between the strips at x = 1 (sag 0.12) and x = 2 (sag 0.24), a quarter of the way: 0.15 m at s = 0.5.
TEST_CASE("check_clearance: between strips, on the side the point lies on") {
    Case c;
    c.hang(4, 300, 480);
    put(c, {{1.25_m, -0.6_m, 0.5_m}}, 50.0_mm);
    CHECK(close(only(c).demand, 0.15, 1e-9));
    put(c, {{1.25_m, 0.6_m, 0.5_m}}, 50.0_mm);
    CHECK(close(only(c).demand, 0.12, 1e-9));
    put(c, {{2.0_m, -0.3_m, 0.5_m}}, 50.0_mm);  // s = 0.25: 4 x 0.24 x 0.25 x 0.75 = 0.18
    CHECK(close(only(c).demand, 0.18, 1e-9));
}

TEST_CASE("check_clearance: on the centreline only the ridge comes down") {
    Case c;
    c.move(1, 2, -0.03);
    c.strip(2).rise = c.strip(3).rise = -0.87;
    put(c, {{1.0_m, 0.0_m, 1.4_m}}, 50.0_mm);
    CHECK(close(only(c).demand, 0.03, 1e-9));
    put(c, {{1.5_m, 0.0_m, 1.4_m}}, 50.0_mm);
    CHECK(close(only(c).demand, 0.015, 1e-9));
    put(c, {{1.0_m, 0.6_m, 0.5_m}}, 50.0_mm);  // half of the ridge's 30 mm, and the sag of 0.12 m
    CHECK(close(only(c).demand, 0.135, 1e-9));
}

// The ridge has gone 0.12 m to port: y = -0.06 is now on the starboard side of it, s = 0.06/1.32.
TEST_CASE("check_clearance: a ridge that moved aside takes the film along") {
    Case c;
    for (const int node : {0, 1, 2, 3, 4}) c.move(node, 1, -0.12);
    for (StripState& s : c.state.strips) s.sag = 0.0;
    put(c, {{1.0_m, -0.06_m, 0.5_m}}, 50.0_mm);
    const double drawn = 1.5 - 0.9 * 0.05;
    const double loaded = 1.5 - 0.9 * 0.06 / 1.32;
    CHECK(close(only(c).demand, drawn - loaded, 1e-9));
}

// z = 0.85: 0.08 m are left where 0.1 m must be. z = 0.95: 20 mm below the edge.
TEST_CASE("check_clearance: too close, and touching") {
    Case c;
    put(c, {{1.0_m, 0.6_m, 0.85_m}}, 100.0_mm);
    CHECK(only(c).verdict == Verdict::exceeded);
    CHECK(close(only(c).utilisation.value(), 1.2, 1e-9));
    CHECK(only(c).sentence.find("comes down to 80 mm") != std::string::npos);
    put(c, {{1.0_m, 0.6_m, 0.95_m}}, 50.0_mm);
    CHECK(only(c).sentence.find("touches the windshield") != std::string::npos);
    CHECK(only(c).sentence.find("20 mm (0.79 in) below") != std::string::npos);
    CHECK(close(only(c).utilisation.value(), 0.12 / 0.05, 1e-9));
}

TEST_CASE("check_clearance: no room as drawn has no utilisation, and the least margin governs") {
    Case c;
    put(c, {{1.0_m, 0.6_m, 1.0_m}, {1.0_m, 0.6_m, 1.02_m}, {1.0_m, 0.6_m, 1.01_m}}, 50.0_mm);
    const Finding f = only(c);
    CHECK(f.verdict == Verdict::exceeded);
    CHECK_FALSE(f.utilisation.has_value());
    CHECK(close(f.capacity, 1.05 - 1.02 - 0.05, 1e-9));
    CHECK(by_hand::sound({f}));
}

TEST_CASE("check_clearance: a point without room governs over any point that has some") {
    Case c;
    put(c, {{1.0_m, 0.6_m, 1.01_m}, {1.0_m, 0.6_m, 0.95_m}}, 50.0_mm);
    CHECK(close(only(c).capacity, 1.05 - 1.01 - 0.05, 1e-9));
    put(c, {{1.0_m, 0.6_m, 0.95_m}, {1.0_m, 0.6_m, 1.01_m}}, 50.0_mm);
    CHECK(close(only(c).capacity, 1.05 - 1.01 - 0.05, 1e-9));
}

// Along the outline from y = 0 to 1.0 at z = 0.4: the share (4 f s (1 - s))/(1.05 - 0.9 s) is largest where
// 0.48 (s - s^2)/(1.05 - 0.9 s) is: s = (1.05 - sqrt(1.05^2 - 0.9 x 1.05))/0.9 = 0.7257, y = 0.871 m.
TEST_CASE("check_clearance: the point with the largest share governs") {
    Case c;
    put(c, {{1.0_m, 0.0_m, 0.4_m}, {1.0_m, 1.0_m, 0.4_m}}, 50.0_mm);
    const Finding f = only(c);
    const double s = (1.05 - std::sqrt(1.05 * 1.05 - 0.9 * 1.05)) / 0.9;
    CHECK(close(f.utilisation.value(), 0.48 * s * (1 - s) / (1.05 - 0.9 * s), 1e-3));
    CHECK(f.utilisation.value() <= 0.48 * s * (1 - s) / (1.05 - 0.9 * s) + 1e-12);
}

TEST_CASE("check_clearance: film that rises uses nothing up") {
    Case c;
    for (StripState& s : c.state.strips) s.sag = 0.0;
    c.move(1, 2, 0.02);
    c.strip(2).rise = c.strip(3).rise = -0.92;
    put(c, {{1.0_m, 0.0_m, 1.4_m}}, 50.0_mm);
    CHECK(close(only(c).demand, -0.02, 1e-9));
    CHECK(only(c).verdict == Verdict::satisfied);
}

TEST_CASE("check_clearance: out from under the film is not applicable and says where") {
    Case c;
    for (const Point& outside : {Point{-0.1_m, 0.0_m, 0.5_m}, Point{4.1_m, 0.0_m, 0.5_m}, Point{1.0_m, 1.3_m, 0.5_m},
                                 Point{1.0_m, -1.3_m, 0.5_m}}) {
        put(c, {{1.0_m, 0.0_m, 0.5_m}, outside}, 50.0_mm);
        const Finding f = only(c);
        CHECK(f.part == "windshield");
        CHECK(f.verdict == Verdict::not_applicable);
        CHECK(f.sentence.find("windshield is not judged") != std::string::npos);
        CHECK(by_hand::sound({f}));
    }
    put(c, {{0.0_m, 1.2_m, 0.5_m}, {4.0_m, -1.2_m, 0.5_m}}, 50.0_mm);  // on the very edges
    CHECK(only(c).verdict != Verdict::not_applicable);
}

TEST_CASE("check_clearance: what is seen to touch is said, even if the rest is out of sight") {
    Case c;
    put(c, {{1.0_m, 0.6_m, 0.95_m}, {1.0_m, 1.4_m, 0.95_m}}, 50.0_mm);
    CHECK(only(c).verdict == Verdict::exceeded);
}

TEST_CASE("check_clearance: port and starboard mirrored") {
    Case port;
    Case starboard;
    port.hang(2, 300, 480);
    starboard.hang(3, 300, 480);
    for (const int node : {0, 1, 2, 3, 4}) {
        port.move(node, 1, -0.01);
        starboard.move(node, 1, 0.01);
    }
    put(port, {{0.7_m, -0.7_m, 0.6_m}, {1.3_m, -0.3_m, 0.8_m}}, 50.0_mm);
    put(starboard, {{0.7_m, 0.7_m, 0.6_m}, {1.3_m, 0.3_m, 0.8_m}}, 50.0_mm);
    CHECK(close(only(port).demand, only(starboard).demand, 1e-12));
    CHECK(close(only(port).capacity, only(starboard).capacity, 1e-12));
}

TEST_CASE("check_clearance: one finding for each obstacle, none without") {
    Case c;
    CHECK(check_clearance(c.input()).empty());
    c.plan.boat.obstacles = {{"windshield", {{1.0_m, 0.0_m, 0.5_m}}, {50.0_mm, "invented"}},
                             {"arch", {{3.0_m, 0.0_m, 0.9_m}}, {50.0_mm, "invented"}}};
    const std::vector<Finding> findings = check_clearance(c.input());
    REQUIRE(findings.size() == 2);
    CHECK(findings[1].part == "arch");
}
