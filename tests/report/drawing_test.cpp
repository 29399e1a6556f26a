// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/report/drawing.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>
#include <optional>

#include "close.hpp"
#include "coverframe/film/strip.hpp"
#include "report/markup.hpp"
#include "report/sample.hpp"

using namespace coverframe;

namespace {

struct Drawn {
    std::string name;
    std::string svg;
};

std::vector<Drawn> all_views(const Assessment& assessment, const DrawingOptions& options = {}) {
    return {{"side", side_view(assessment, options)},
            {"plan", plan_view(assessment, options)},
            {"section", section_view(assessment, options)}};
}

// Uprights close together, long names with marks of markup in them: what makes labels collide.
Assessment crowded() {
    Assessment a = sample::assessment(UnitsShown::us);
    auto& support = std::get<RidgeSupport>(a.plan.support.structure);
    for (int i = 0; i < 12; ++i) {
        const double x = 3.3 + 0.09 * i;
        support.uprights.push_back(sample::upright("upright <" + std::to_string(i) + "> & more of a name than fits",
                                                   from_m(x), "cockpit sole", from_m(1.85)));
        support.cross_straps.push_back({"strap over " + std::to_string(i), support.uprights.back().name, "woven 25 mm",
                                        from_N(600), Sides::both});
        a.plan.boat.obstacles.push_back({"obstacle number " + std::to_string(i),
                                         {{from_m(x), from_m(0.1 * i - 0.5), from_m(1.0)}},
                                         {from_mm(50), "invented"}});
    }
    return a;
}

// Uprights and straps by nodes and members.
Assessment found() {
    Assessment a = sample::assessment();
    FoundFrame frame;
    frame.nodes = {{"bow", {from_m(0.15), from_m(0), from_m(1.16)}, true},
                   {"foot", {from_m(3.2), from_m(0), from_m(0)}, true},
                   {"top", {from_m(3.2), from_m(0), from_m(1.85)}, false},
                   {"rail", {from_m(3.2), from_m(1.2), from_m(0.82)}, true},
                   {"stern", {from_m(7.1), from_m(0), from_m(1.62)}, true}};
    frame.members = {{"F", FoundKind::pole, "bow", "top", Section{from_mm(38), from_mm(89)}, "C24", "", {}, "", {}},
                     {"A", FoundKind::pole, "top", "stern", Section{from_mm(38), from_mm(89)}, "C24", "", {}, "", {}},
                     {"post",
                      FoundKind::upright,
                      "foot",
                      "top",
                      Section{from_mm(38), from_mm(89)},
                      "C24",
                      "",
                      {},
                      "cockpit sole",
                      FootPad{from_mm(200), from_mm(200), from_mm(20)}},
                     {"stay", FoundKind::strap, "top", "rail", {}, "", "woven 25 mm", from_N(300), "", {}}};
    frame.ridge_line = {"bow", "top", "stern"};
    a.plan.support.structure = frame;
    return a;
}

std::vector<Assessment> samples() {
    return {sample::assessment(),
            sample::assessment(UnitsShown::us),
            sample::fallen(),
            sample::fallen(false),
            crowded(),
            found()};
}

double attribute(const markup::Element& element, const char* name) {
    return std::atof(element.attributes.at(name).c_str());
}

std::optional<markup::TextBox> text(const std::string& svg, const std::string& wanted) {
    for (const markup::TextBox& box : markup::text_boxes(svg)) {
        if (box.text == wanted) return box;
    }
    return std::nullopt;
}

bool has(const std::string& svg, const std::string& wanted) {
    return markup::words(svg).find(wanted) != std::string::npos;
}

}  // namespace

TEST_CASE("drawing: parts are named, with heights and units") {
    const Assessment a = sample::assessment();
    const std::string side = side_view(a);
    for (const char* words :
         {"bow", "stern", "U1", "U4", "1.60 m aft", "top 1.62 m", "windshield", "outboard", "rail",
          "band, 150 mm below rail", "cockpit sole, level 0 mm", "foredeck, level 720 mm", "hull sketched"}) {
        CAPTURE(words);
        CHECK(has(side, words));
    }
    const std::string plan = plan_view(a);
    for (const char* words :
         {"port", "starboard", "bow", "stern", "U2", "C2", "set 600 N", "windshield", "belly straps"}) {
        CAPTURE(words);
        CHECK(has(plan, words));
    }
    const std::string section = section_view(a);
    for (const char* words : {"port", "starboard", "windshield", "100 mm wanted", "deg at the rail"}) {
        CAPTURE(words);
        CHECK(has(section, words));
    }
}

TEST_CASE("section_view: an upright on a soft foot") {
    Assessment a = sample::assessment();
    Upright& upright = std::get<RidgeSupport>(a.plan.support.structure).uprights[1];
    upright.x = from_m(2.7);  // 0.1 m from the section
    CHECK(has(section_view(a), "U2 stands 2.70 m aft"));
    CHECK_FALSE(has(section_view(a), "soft foot"));
    upright.foot.emplace().stiffness = {from_N_per_m(2e5), "invented"};
    CHECK(has(section_view(a), "U2 stands 2.70 m aft on a soft foot"));
    CHECK(has(section_view(a), "soft foot (zigzag)"));
}

TEST_CASE("drawing: the plan's units") {
    const Assessment a = sample::assessment(UnitsShown::us);
    CHECK(has(side_view(a), "5 ft 3 in aft"));
    CHECK(has(plan_view(a), "set 135 lbf"));
    CHECK(has(section_view(a), "3 7/8 in wanted"));
    for (const Drawn& drawn : all_views(a)) {
        CAPTURE(drawn.name);
        CHECK_FALSE(has(drawn.svg, " mm"));
        CHECK_FALSE(has(drawn.svg, " N "));
    }
}

TEST_CASE("drawing: to scale") {
    // U1 and U2 stand 1.6 m apart; the bar says how long it is.
    const std::string plan = plan_view(sample::assessment());
    std::string bad;
    std::optional<double> first;
    std::optional<double> second;
    for (const markup::Element& e : markup::elements(plan, bad)) {
        if (e.name != "circle" || e.attributes.at("fill") != "#000000") continue;
        if (!first) first = attribute(e, "cx");
        else if (!second) second = attribute(e, "cx");
    }
    REQUIRE(first);
    REQUIRE(second);
    const double scale = (*second - *first) / 1.6;
    std::optional<double> metres;
    for (const markup::TextBox& box : markup::text_boxes(plan)) {
        if (box.text.ends_with(" m  (the same scale both ways)")) metres = std::atof(box.text.c_str());
    }
    REQUIRE(metres);
    int bars = 0;
    for (const markup::Element& e : markup::elements(plan, bad)) {
        if (e.name != "polyline" || e.attributes.at("stroke-width") != "1.2") continue;
        const std::string& points = e.attributes.at("points");
        const double left = std::atof(points.c_str());
        const double right = std::atof(points.substr(points.rfind(' ') + 1).c_str());
        CHECK(close(right - left, scale * *metres, 1e-3));
        ++bars;
    }
    CHECK(bars == 1);
}

TEST_CASE("drawing: bow to the left, starboard at the top, port left from astern") {
    const Assessment a = sample::assessment();
    for (const std::string& svg : {side_view(a), plan_view(a)}) {
        REQUIRE(text(svg, "bow"));
        REQUIRE(text(svg, "stern"));
        CHECK(text(svg, "bow")->left < text(svg, "stern")->left);
    }
    CHECK(text(plan_view(a), "starboard")->top < text(plan_view(a), "port")->top);
    CHECK(text(section_view(a), "port")->left < text(section_view(a), "starboard")->left);
}

TEST_CASE("drawing: water of the hollows") {
    // Trapezoids over the stations, by hand, of what the strips hold.
    const Assessment a = sample::assessment();
    double litres = 0;
    double last = 0;
    for (std::size_t i = 0; i < a.shape.size(); ++i) {
        const double area = hollow_of(a.shape[i].port).area;
        CHECK(hollow_of(a.shape[i].starboard).area == 0.0);
        if (i > 0) litres += 500.0 * (area + last) * (a.shape[i].x - a.shape[i - 1].x);
        last = area;
    }
    REQUIRE(litres > 1.0);
    const std::string plan = plan_view(a);
    double shown = 0;
    for (const markup::TextBox& box : markup::text_boxes(plan)) {
        if (box.text.starts_with("water ")) shown += std::atof(box.text.substr(6).c_str());
    }
    CHECK(close(shown, litres, 0.05));  // two digits are shown
    Assessment tight = a;
    for (StationShape& shape : tight.shape) shape.port = shape.starboard;
    CHECK(has(plan_view(tight), "No hollow holds water"));
}

TEST_CASE("drawing: the loaded shape is thick, the drawn one dashed") {
    for (const Drawn& drawn : all_views(sample::assessment())) {
        CAPTURE(drawn.name);
        CHECK(drawn.svg.find("stroke-width=\"2.4\"") != std::string::npos);
        CHECK(drawn.svg.find("stroke-dasharray=\"5 3\"") != std::string::npos);
    }
    for (const Drawn& drawn : all_views(sample::fallen(false))) {
        CAPTURE(drawn.name);
        CHECK(drawn.svg.find("stroke-width=\"2.4\"") == std::string::npos);
        CHECK(has(drawn.svg, "no loaded shape"));
    }
}

TEST_CASE("drawing: the gap over an obstacle is the film's height over it") {
    Assessment a = sample::fallen(false);
    a.plan.boat.obstacles = {{"post", {{from_m(3.2), from_m(0.0), from_m(1.50)}}, {from_mm(100), "invented"}}};
    CHECK(has(section_view(a), "film 350 mm over it"));  // the ridge is drawn at 1.85 m there
    a.plan.boat.obstacles.front().outline.front().z = from_m(2.0);
    CHECK(has(section_view(a), "film 150 mm below its edge"));
}

TEST_CASE("drawing: no text covers another") {
    for (const Assessment& a : samples()) {
        for (const double width : {480.0, 720.0, 1100.0}) {
            for (const Drawn& drawn : all_views(a, {.width = width})) {
                CAPTURE(drawn.name);
                CAPTURE(width);
                CHECK(markup::text_boxes(drawn.svg).size() > 4);
                CHECK(markup::covered(drawn.svg) == "");
            }
        }
    }
}

TEST_CASE("drawing: well-formed, complete, the same bytes again") {
    for (const Assessment& a : samples()) {
        const std::vector<Drawn> again = all_views(a);
        for (std::size_t i = 0; i < again.size(); ++i) {
            const std::string& svg = again[i].svg;
            CAPTURE(again[i].name);
            CHECK(markup::trouble(svg) == "");
            CHECK(svg.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\""));
            CHECK(svg.find("viewBox=") != std::string::npos);
            CHECK(svg.find("font=") == std::string::npos);
            CHECK(markup::bad_number(svg) == "");
            CHECK(all_views(a)[i].svg == svg);
        }
    }
}

TEST_CASE("drawing: all text lies inside the picture") {
    for (const Assessment& a : samples()) {
        for (const Drawn& drawn : all_views(a)) {
            std::string bad;
            const std::vector<markup::Element> elements = markup::elements(drawn.svg, bad);
            double left = 0;
            double top = 0;
            double across = 0;
            double down = 0;
            REQUIRE(std::sscanf(elements.front().attributes.at("viewBox").c_str(), "%lf %lf %lf %lf", &left, &top,
                                &across, &down) == 4);
            for (const markup::TextBox& box : markup::text_boxes(drawn.svg)) {
                CAPTURE(box.text);
                CHECK(box.left >= left);
                CHECK(box.right <= left + across);
                CHECK(box.top >= top);
                CHECK(box.bottom <= top + down);
            }
        }
    }
}
