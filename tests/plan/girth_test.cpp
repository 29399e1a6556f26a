// SPDX-License-Identifier: BSD-3-Clause
// Girth of the cover and the sheet of film it takes: by hand, by the mesh of the film, by what cannot matter.
#include "coverframe/plan/girth.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "close.hpp"
#include "coverframe/film/cover_mesh.hpp"
#include "coverframe/plan/geometry.hpp"
#include "coverframe/plan/validate.hpp"
#include "coverframe/units/crossing.hpp"
#include "plan/plan_files.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {

constexpr const char* demos[]{"motor_boat", "sloop", "open_boat", "as_found"};

Plan demo(const char* name) { return read_plan(file_text(std::string("examples/plans/") + name + ".json")); }

/// A box of 6 m by 2.4 m, its rail level; a strap ridge 0.5 m above it; a band 0.4 m below the rail and 0.3 m inboard.
/// Ridge to rail is sqrt(1.2^2 + 0.5^2) = 1.3 m, rail to band sqrt(0.4^2 + 0.3^2) = 0.5 m, the tuck 0.15 m.
Plan box(Length ridge_from = 0.0_m, Length ridge_to = 6.0_m) {
    Plan plan;
    plan.boat.rail = {{0.0_m, 1.2_m, 1.0_m}, {6.0_m, 1.2_m, 1.0_m}};
    RidgeSupport support;
    support.ridge.member = StrapRidge{"webbing", 1.0_kN};
    support.ridge.bow = {.x = ridge_from, .z = 1.5_m};
    support.ridge.stern = {.x = ridge_to, .z = 1.5_m};
    plan.support.structure = support;
    plan.support.band.below_rail = 0.4_m;
    plan.support.band.inset = 0.3_m;
    return plan;
}

RidgeSupport& built(Plan& plan) { return std::get<RidgeSupport>(plan.support.structure); }

double girth(const Plan& plan, double x) { return in_m(girth_at(plan, from_m(x)).value()); }

/// Lengths along the boat go through `x_of`, heights through `z_of`, all others through `size_of`.
template <class X, class Z, class Size>
Plan moved(Plan plan, X x_of, Z z_of, Size size_of) {
    for (RailStation& station : plan.boat.rail)
        station = {x_of(station.x), size_of(station.half_breadth), z_of(station.z)};
    if (auto* found = std::get_if<FoundFrame>(&plan.support.structure)) {
        for (FoundNode& node : found->nodes) node.at = {x_of(node.at.x), size_of(node.at.y), z_of(node.at.z)};
        for (FoundMember& member : found->members) {
            if (member.section) member.section->breadth = size_of(member.section->breadth);
        }
    } else {
        for (RidgeEnd* end : {&built(plan).ridge.bow, &built(plan).ridge.stern}) {
            end->x = x_of(end->x);
            end->z = z_of(end->z);
        }
        for (Upright& upright : built(plan).uprights) {
            upright.x = x_of(upright.x);
            upright.top = z_of(upright.top);
        }
        if (auto* pole = std::get_if<PoleRidge>(&built(plan).ridge.member))
            pole->section.breadth = size_of(pole->section.breadth);
    }
    Band& band = plan.support.band;
    band.below_rail = size_of(band.below_rail);
    if (band.inset) band.inset = size_of(*band.inset);
    plan.film.tuck = Cited<Length>{size_of(tuck_of(plan.film).value), "x"};
    return plan;
}

/// The boat stern foremost.
Plan turned_about(Plan plan, Length length) {
    plan = moved(
        std::move(plan), [&](Length x) { return length - x; }, [](Length z) { return z; },
        [](Length size) { return size; });
    std::ranges::reverse(plan.boat.rail);
    if (auto* found = std::get_if<FoundFrame>(&plan.support.structure)) {
        std::ranges::reverse(found->ridge_line);
    } else {
        std::swap(built(plan).ridge.bow, built(plan).ridge.stern);
        std::ranges::reverse(built(plan).uprights);
    }
    return plan;
}

/// Length of the cut at x through a surface of triangles. \pre no node lies at x
double cut_through(const TriangleMesh& mesh, double x) {
    double length = 0;
    for (const auto& triangle : mesh.triangles) {
        std::vector<std::array<double, 2>> ends;
        for (std::size_t k = 0; k < 3; ++k) {
            const auto& a = mesh.nodes[static_cast<std::size_t>(triangle[k])];
            const auto& b = mesh.nodes[static_cast<std::size_t>(triangle[(k + 1) % 3])];
            if ((a[0] < x) == (b[0] < x)) continue;
            const double s = (x - a[0]) / (b[0] - a[0]);
            ends.push_back({a[1] + s * (b[1] - a[1]), a[2] + s * (b[2] - a[2])});
        }
        if (ends.size() == 2) length += std::hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]);
    }
    return length;
}

double beside_the_film(const Plan& plan) {
    const Band& band = plan.support.band;
    return 2 *
           (std::hypot(in_m(band.below_rail), in_m(band.inset.value_or(Length{}))) + in_m(tuck_of(plan.film).value));
}

double pole_of(const char* name) {
    return std::string_view(name) == "motor_boat" ? in_m(1.5_in) : std::string_view(name) == "sloop" ? 0.0 : 0.045;
}

}  // namespace

TEST_CASE("girth_at: a box with its ridge from end to end") {
    // 2 (1.3 + 0.5 + 0.15) = 3.9 m everywhere.
    for (const double x : {0.0, 0.7, 3.0, 6.0}) CHECK(close(girth(box(), x), 3.9, 1e-15));
    // A pole of 40 mm is folded over; a longer tuck counts on both sides; without inset the film goes straight down.
    Plan plan = box();
    built(plan).ridge.member = PoleRidge{{40.0_mm, 90.0_mm}, "C24"};
    CHECK(close(girth(plan, 2.0), 3.94, 1e-15));
    plan.film.tuck = Cited<Length>{0.25_m, "x"};
    CHECK(close(girth(plan, 2.0), 4.14, 1e-15));
    plan.support.band.inset.reset();
    CHECK(close(girth(plan, 2.0), 3.94, 1e-15));
}

TEST_CASE("sheet_needed: a box, along the middle") {
    // Gable ends of 0.5 m: 0.5 + 6 + 0.5 + 2 (0.5 + 0.15) = 8.3 m. The bow end is the first of the widest places.
    const FilmSheet whole = sheet_needed(box()).value();
    CHECK(close(whole.width, 3.9_m, 1e-15));
    CHECK(close(whole.length, 8.3_m, 1e-15));
    CHECK(whole.widest_at == 0.0_m);
    CHECK(whole.place == "at the bow end of the ridge");
    // Fans from 1.2 m inside either end: 1.3 + 3.6 + 1.3 + 1.3 = 7.5 m.
    const FilmSheet fans = sheet_needed(box(1.2_m, 4.8_m)).value();
    CHECK(close(fans.width, 3.9_m, 1e-15));
    CHECK(close(fans.length, 7.5_m, 1e-15));
    CHECK(fans.widest_at == 1.2_m);
}

TEST_CASE("girth_at: cuts through a fan") {
    const Plan plan = box(1.2_m, 4.8_m);
    // Halfway to the transom the crease to its corner has come halfway: 0.6 m off and 0.25 m up. From the rail to it
    // sqrt(0.6^2 + 0.25^2) = 0.65 m, and level from there to the middle 0.6 m: 2 (1.25 + 0.65) = 3.8 m.
    CHECK(close(girth(plan, 0.6), 3.8, 1e-15));
    CHECK(close(girth(plan, 5.4), 3.8, 1e-15));
    // At the transom straight across: 2 (1.2 + 0.65) = 3.7 m.
    CHECK(close(girth(plan, 0.0), 3.7, 1e-15));
    CHECK(close(girth(plan, 6.0), 3.7, 1e-15));
    // A pointed stem 1.2 m ahead has no breadth: nothing but the band and what is under it on both sides.
    Plan pointed = plan;
    pointed.boat.rail.insert(pointed.boat.rail.begin(), {-1.2_m, 0.0_m, 1.0_m});
    CHECK(close(girth(pointed, -1.2), 1.3, 1e-15));
    // At x = 0 the crease to the stem has come halfway, 0.25 m up in the middle: 2 (sqrt(1.2^2 + 0.25^2) + 0.65).
    CHECK(close(girth(pointed, 0.0), 2 * (std::hypot(1.2, 0.25) + 0.65), 1e-15));
    // 0.6 m forward: half the breadth is left at the rail, and the stem's crease is at 3/4, 0.125 m up.
    CHECK(close(girth(pointed, -0.6), 2 * (std::hypot(0.6, 0.125) + 0.65), 1e-15));
    // Along the middle up to the ridge's bow end over 2.4 m: sqrt(2.4^2 + 0.5^2) + 3.6 + 1.3 + 1.3.
    CHECK(close(in_m(sheet_needed(pointed)->length), std::hypot(2.4, 0.5) + 6.2, 1e-15));
}

TEST_CASE("girth_at: the film of the surface has the same cuts") {
    for (const char* name : demos) {
        CAPTURE(name);
        const Plan plan = demo(name);
        const Layout layout = lay_out(plan);
        const CoverMesh cover = mesh_cover(plan, layout, 4);
        const auto profile = ridge_profile(plan.support);
        const double stem = in_m(plan.boat.rail.front().x), stern = in_m(plan.boat.rail.back().x);
        const double bow_end = in_m(profile.front().x), stern_end = in_m(profile.back().x);
        for (int i = 1; i < 12; ++i) {
            for (const double x : {stem + (bow_end - stem) * (i + 0.0137) / 12.2,
                                   stern_end + (stern - stern_end) * (i + 0.0137) / 12.2}) {
                CAPTURE(x);
                CHECK(close(girth(plan, x), cut_through(cover.mesh, x) + beside_the_film(plan) + pole_of(name), 1e-12));
            }
        }
    }
}

TEST_CASE("sheet_needed: the widest of ten thousand places, on every demo plan") {
    for (const char* name : demos) {
        CAPTURE(name);
        const Plan plan = demo(name);
        const FilmSheet sheet = sheet_needed(plan).value();
        const double from = in_m(plan.boat.rail.front().x), to = in_m(plan.boat.rail.back().x);
        double widest = 0;
        for (int i = 0; i <= 10000; ++i) widest = std::max(widest, girth(plan, from + (to - from) * i / 10000));
        CHECK(widest <= in_m(sheet.width) * (1 + 1e-14));
        CHECK(close(in_m(sheet.width), widest, 1e-4));
        CHECK(close(sheet.width, girth_at(plan, sheet.widest_at).value(), 0));
        // No shorter than rail and ridge, which it runs along.
        CHECK(in_m(sheet.length) > to - from + beside_the_film(plan));
    }
}

TEST_CASE("girth_at: steady along the boat, also where the ridge ends") {
    for (const char* name : demos) {
        CAPTURE(name);
        const Plan plan = demo(name);
        const double from = in_m(plan.boat.rail.front().x), to = in_m(plan.boat.rail.back().x);
        std::vector<double> places;
        for (const RailStation& station : plan.boat.rail) places.push_back(in_m(station.x));
        for (const ProfilePoint& point : ridge_profile(plan.support)) places.push_back(in_m(point.x));
        for (const double x : places) {
            CAPTURE(x);
            const double here = girth(plan, x);
            CHECK(close(girth(plan, std::max(from, x - 1e-9)), here, 1e-7));
            CHECK(close(girth(plan, std::min(to, x + 1e-9)), here, 1e-7));
        }
    }
}

TEST_CASE("sheet_needed: bow and stern, place and size of the boat do not matter") {
    const auto same = [](Length l) { return l; };
    for (const char* name : demos) {
        CAPTURE(name);
        const Plan plan = demo(name);
        const FilmSheet sheet = sheet_needed(plan).value();

        const Plan about = turned_about(plan, 11.0_m);
        CHECK(close(sheet_needed(about)->width, sheet.width, 1e-13));
        CHECK(close(sheet_needed(about)->length, sheet.length, 1e-13));
        CHECK(close(sheet_needed(about)->widest_at, 11.0_m - sheet.widest_at, 1e-13));

        const Plan aside = moved(
            plan, [](Length x) { return x + 3.7_m; }, [](Length z) { return z - 2.1_m; }, same);
        CHECK(close(sheet_needed(aside)->width, sheet.width, 1e-13));
        CHECK(close(sheet_needed(aside)->length, sheet.length, 1e-13));
        CHECK(sheet_needed(aside)->place == sheet.place);

        const auto larger = [](Length l) { return 1.7 * l; };
        const Plan grown = moved(plan, larger, larger, larger);
        for (double share = 0; share <= 1; share += 0.07) {
            const double x = share * in_m(plan.boat.rail.back().x);
            CHECK(close(girth(grown, std::min(1.7 * x, in_m(grown.boat.rail.back().x))), 1.7 * girth(plan, x), 1e-12));
        }
        CHECK(close(sheet_needed(grown)->length, 1.7 * sheet.length, 1e-13));
    }
}

TEST_CASE("sheet_needed: a higher ridge, a broader rail, a lower band never take less") {
    Plan plan = demo("motor_boat");
    FilmSheet before = sheet_needed(plan).value();
    const auto takes_more = [&] {
        const FilmSheet now = sheet_needed(plan).value();
        const bool more = now.width > before.width && now.length >= before.length;
        before = now;
        return more;
    };
    for (int i = 0; i < 5; ++i) {
        for (Upright& upright : built(plan).uprights) upright.top += 0.1_m;
        CHECK(takes_more());
        for (RailStation& station : plan.boat.rail) station.half_breadth += 0.05_m;
        CHECK(takes_more());
        plan.support.band.below_rail += 0.02_m;
        CHECK(takes_more());
        plan.film.tuck = Cited<Length>{tuck_of(plan.film).value + 0.01_m, "x"};
        CHECK(takes_more());
    }
}

TEST_CASE("sheet_needed: where it is widest, in the words of the plan") {
    Plan plan = demo("motor_boat");
    CHECK(sheet_needed(plan)->place == "between U1 and U2");
    CHECK(sheet_needed(plan)->widest_at == from_ft(12));
    built(plan).uprights[1].top += 0.5_m;
    CHECK(sheet_needed(plan)->place == "at U2");
    built(plan).ridge.stern.z += 2.0_m;
    CHECK(sheet_needed(plan)->place == "at the stern end of the ridge");
    built(plan).ridge.stern.z -= 2.0_m;
    plan.boat.rail.back().half_breadth += 8.0_m;
    CHECK(sheet_needed(plan)->place == "aft of the ridge");
    plan = turned_about(plan, 9.0_m);
    CHECK(sheet_needed(plan)->place == "forward of the ridge");
    CHECK(sheet_needed(demo("as_found"))->place == "between T1 and T2");
}

TEST_CASE("sheet_needed: a found frame is a ridge like any other") {
    // The broadest pole of the ridge counts, and none beside it.
    const Plan found = demo("as_found");
    Plan drawn = found;
    const auto profile = ridge_profile(found.support);
    RidgeSupport support;
    support.ridge.member = PoleRidge{{45.0_mm, 95.0_mm}, "C16"};
    support.ridge.bow = {.x = profile[0].x, .z = profile[0].z};
    support.ridge.stern = {.x = profile[3].x, .z = profile[3].z};
    support.uprights.resize(2);
    for (std::size_t i = 0; i < 2; ++i) {
        support.uprights[i].x = profile[i + 1].x;
        support.uprights[i].top = profile[i + 1].z;
    }
    drawn.support.structure = support;
    CHECK(close(sheet_needed(drawn)->width, sheet_needed(found)->width, 0));
    CHECK(close(sheet_needed(drawn)->length, sheet_needed(found)->length, 0));
    Plan broad = found;
    auto& members = std::get<FoundFrame>(broad.support.structure).members;
    members[2].section->breadth = 60.0_mm;
    CHECK(close(in_m(sheet_needed(broad)->width), in_m(sheet_needed(found)->width) + 0.015, 1e-14));
    members[5].kind = FoundKind::pole;
    members[5].section = Section{300.0_mm, 300.0_mm};
    CHECK(close(in_m(sheet_needed(broad)->width), in_m(sheet_needed(found)->width) + 0.015, 1e-14));
}

TEST_CASE("girth_at and sheet_needed: nothing where no cover is drawn") {
    const auto none = [](const Plan& plan) { return !girth_at(plan, 3.0_m) && !sheet_needed(plan); };
    CHECK_FALSE(none(box()));
    CHECK_FALSE(girth_at(box(), -1e-9_m).has_value());
    CHECK_FALSE(girth_at(box(), 6.01_m).has_value());
    CHECK_FALSE(girth_at(box(), from_m(std::nan(""))).has_value());
    CHECK(none(Plan{}));
    CHECK(none(box(-0.1_m, 6.0_m)));
    CHECK(none(box(0.0_m, 6.1_m)));
    CHECK(none(box(4.0_m, 4.0_m)));
    Plan plan = box();
    std::swap(plan.boat.rail[0], plan.boat.rail[1]);
    CHECK(none(plan));
    plan = box();
    plan.boat.rail[1].half_breadth = from_m(std::nan(""));
    CHECK(none(plan));
    plan = box();
    plan.support.band.below_rail = from_m(std::numeric_limits<double>::infinity());
    CHECK(none(plan));
    plan = demo("as_found");
    std::get<FoundFrame>(plan.support.structure).ridge_line[1] = "nowhere";
    CHECK(none(plan));
}

namespace {

Plan with_sheet(Plan plan, std::optional<Length> width, std::optional<Length> length) {
    plan.film.sheet_width.reset();
    plan.film.sheet_length.reset();
    if (width) plan.film.sheet_width = Cited<Length>{*width, "invented"};
    if (length) plan.film.sheet_length = Cited<Length>{*length, "invented"};
    return plan;
}

}  // namespace

TEST_CASE("problems_of: a sheet that does not reach is refused, one that does is not") {
    for (const char* name : demos) {
        CAPTURE(name);
        const Plan plan = demo(name);
        const FilmSheet needed = sheet_needed(plan).value();
        CHECK(problems_of(with_sheet(plan, {}, {})).empty());
        CHECK(problems_of(with_sheet(plan, needed.width, needed.length)).empty());
        CHECK(problems_of(with_sheet(plan, needed.width - 0.9_mm, needed.length + 9.0_m)).empty());
        CHECK(codes_and_places(problems_of(with_sheet(plan, needed.width - 1.1_mm, {}))) ==
              Expected{{"film.sheet.narrow", "/film/sheet_width"}});
        CHECK(codes_and_places(problems_of(with_sheet(plan, {}, needed.length - 1.1_mm))) ==
              Expected{{"film.sheet.short", "/film/sheet_length"}});
        CHECK(codes_and_places(problems_of(with_sheet(plan, 2.0_m, 3.0_m))) ==
              Expected{{"film.sheet.narrow", "/film/sheet_width"}, {"film.sheet.short", "/film/sheet_length"}});
    }
}

TEST_CASE("problems_of: a sheet too narrow says what is needed, what is missing, where, and what to do") {
    const auto problems = problems_of(with_sheet(demo("as_found"), 3.5_m, 7.0_m));
    REQUIRE(problems.size() == 2);
    // sqrt(1.15^2 + (1.7225... - 0.85)^2) at x = 4.2 m, 0.2 m down to the band, 0.15 m under it, a pole of 45 mm.
    CHECK(problems[0].value == "3.5 m");
    CHECK(problems[0].advice ==
          "the sheet of film is 3.5 m wide as it is laid, and at least 3.64 m are needed, 14 cm more, with the widest "
          "place between T1 and T2 (x = 4.2 m): from band to band over rail, ridge and rail, and 0.15 m under the "
          "band at each edge; shrinking only makes film shorter: take a larger sheet, or weld on a strip");
    CHECK(problems[1].value == "7 m");
    CHECK(problems[1].advice ==
          "the sheet of film is 7 m long as it is laid, and at least 7.79 m are needed, 79 cm more, from the band at "
          "the stem up to the ridge, along it and down to the band at the stern, and 0.15 m under the band at each "
          "edge; shrinking only makes film shorter: take a larger sheet, or weld on a strip");
    const auto in_feet = problems_of(with_sheet(demo("motor_boat"), from_ft(12), {}));
    REQUIRE(in_feet.size() == 1);
    CHECK(in_feet[0].value == "12 ft");
    CHECK(in_feet[0].advice.find("at least 13.25 ft are needed, 15 in more") != std::string::npos);
    CHECK(in_feet[0].advice.find("between U1 and U2 (x = 12 ft)") != std::string::npos);
}

TEST_CASE("problems_of: a sheet is not judged where the cover cannot be drawn, nor one nobody believes") {
    Plan plan = with_sheet(demo("motor_boat"), 2.0_m, {});
    std::swap(plan.boat.rail[2], plan.boat.rail[3]);
    for (const Problem& problem : problems_of(plan)) CHECK(problem.code != "film.sheet.narrow");
    CHECK(codes_and_places(problems_of(with_sheet(demo("motor_boat"), 0.1_m, {}))) ==
          Expected{{"plan.range", "/film/sheet_width/value"}});
}

TEST_CASE("sheet of film: read as it was written, and left out where nothing is said") {
    Plan plan = with_sheet(good_plan("pole_ridge"), from_ft(20.123456789), from_ft(44));
    plan.film.tuck = Cited<Length>{7.0_in, "as the crew does it"};
    CHECK(read_plan(write_plan(plan)) == plan);
    CHECK(tuck_of(plan.film).source == "as the crew does it");
    const std::string bare = write_plan(with_sheet(good_plan("pole_ridge"), {}, {}));
    CHECK(bare.find("sheet_") == std::string::npos);
    CHECK(bare.find("tuck\"") == std::string::npos);
    CHECK(tuck_of(Film{}).value == 0.15_m);
}
