// SPDX-License-Identifier: BSD-3-Clause
// Arrangements a cover gets beyond those of a gable roof: partial spans, neighbours, slid snow, one side cleared; and
// the same cover by every document. All sites and boats are invented.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <vector>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "coverframe/actions/arrangement.hpp"
#include "coverframe/actions/asce7_16.hpp"
#include "coverframe/actions/nbc2015.hpp"
#include "coverframe/units/crossing.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {

constexpr std::array every_document{SnowDocument::asce7_10, SnowDocument::asce7_16, SnowDocument::asce7_22,
                                    SnowDocument::nbc2015,  SnowDocument::nbc2020,  SnowDocument::en1991_1_3};

Plan plan_of(SnowDocument document, Pressure ground, Surface surface = Surface::other) {
    Plan plan;
    plan.site.ground_snow.load = ground;
    plan.site.ground_snow.document = document;
    plan.site.ground_snow.source = "invented";
    plan.basis.snow.document = document;
    plan.basis.snow.exposure_factor = {1.0, "invented"};
    plan.basis.snow.thermal_factor = {is_asce7(document) ? 1.2 : 1.0, "invented"};
    plan.basis.snow.surface = {surface, "invented"};
    if (is_asce7(document)) plan.site.ground_snow.risk_category = "II";
    if (document == SnowDocument::asce7_22) plan.basis.snow.winter_wind = Cited<double>{0.5, "invented"};
    if (is_nbc(document)) {
        plan.site.ground_snow.rain = 0.2 * ground;
        plan.basis.snow.importance_category = Cited<ImportanceCategory>{ImportanceCategory::normal, "invented"};
    }
    return plan;
}

/// A cover of 6 m: half breadth 1.5 m, rail at 1 m.
std::vector<CoverStation> stations_of(double slope_deg) {
    std::vector<CoverStation> stations;
    for (int i = 0; i <= 12; ++i) stations.push_back({from_m(0.5 * i), from_deg(slope_deg), 1.5_m, 1.0_m});
    return stations;
}

Upright upright(const std::string& name, double x) {
    Upright one;
    one.name = name;
    one.x = from_m(x);
    return one;
}

const Arrangement& named(const std::vector<Arrangement>& all, const std::string& name) {
    const auto found = std::ranges::find(all, name, &Arrangement::name);
    REQUIRE(found != all.end());
    return *found;
}

bool has(const std::vector<Arrangement>& all, const std::string& name) {
    return std::ranges::find(all, name, &Arrangement::name) != all.end();
}

Neighbour shed(NeighbourSide side, double eave_z, double gap = 0.0) {
    Neighbour neighbour;
    neighbour.name = "the shed";
    neighbour.side = side;
    neighbour.gap = from_m(gap);
    neighbour.eave_z = from_m(eave_z);
    neighbour.fetch = 10.0_m;
    neighbour.source = "invented";
    return neighbour;
}

double kpa(PlanLoad load) { return in_kPa(load.value); }

}  // namespace

TEST_CASE("arrangement: load profiles are straight between their points, and a step counts its greater side") {
    const LoadProfile profile{{0.0, {1.0_kPa}}, {0.5, {1.0_kPa}}, {0.5, {3.0_kPa}}, {1.0, {2.0_kPa}}};
    CHECK(kpa(load_at(profile, 0.25)) == 1.0);
    CHECK(kpa(load_at(profile, 0.5)) == 3.0);
    CHECK(close(kpa(load_at(profile, 0.75)), 2.5, 1e-12));
    CHECK(kpa(load_at(profile, 1.0)) == 2.0);
    for (const double share : {-0.01, 1.01, not_finite[0], not_finite[1]}) {
        CHECK(code_of([&] { return load_at(profile, share); }) == "arrangement.share.range");
    }
}

TEST_CASE("arrangement: in every document the uniform load of a side is the greatest of its field") {
    for (const SnowDocument document : every_document) {
        for (const Surface surface : {Surface::other, Surface::slippery}) {
            Plan plan = plan_of(document, 1.5_kPa, surface);
            plan.site.neighbours = {shed(NeighbourSide::port, 4.0), shed(NeighbourSide::bow, 5.0, 1.0)};
            plan.site.neighbours[1].name = "the hall";
            plan.site.neighbours[0].roof = NeighbourRoof{30.0_deg, Surface::slippery, 5.0_m};
            const auto stations = stations_of(25.0);
            std::set<std::string> names;
            for (const Arrangement& a : snow_arrangements(plan, stations)) {
                CAPTURE(a.name);
                CAPTURE(name_of(document));
                CHECK(names.insert(a.name).second);
                CHECK_FALSE(a.clause.document.empty());
                CHECK_FALSE(a.workings.empty());
                REQUIRE(a.port_field.size() == stations.size());
                for (std::size_t i = 0; i < stations.size(); ++i) {
                    double most = 0;
                    for (int k = 0; k <= 100; ++k) most = std::max(most, kpa(load_at(a.port_field[i], 0.01 * k)));
                    CHECK(close(kpa(a.port[i]), most, 1e-12));
                    CHECK(a.port_field[i].front().share == 0.0);
                    CHECK(a.port_field[i].back().share == 1.0);
                }
            }
        }
    }
}

TEST_CASE("arrangement: one side cleared is nothing against all of the balanced snow, in every document") {
    for (const SnowDocument document : every_document) {
        const auto all = snow_arrangements(plan_of(document, 1.5_kPa), stations_of(20.0));
        const Arrangement& port = named(all, "cleared to port");
        const Arrangement& starboard = named(all, "cleared to starboard");
        for (std::size_t i = 0; i < port.port.size(); ++i) {
            CHECK(kpa(port.port[i]) == 0.0);
            CHECK(kpa(port.starboard[i]) == kpa(all.front().starboard[i]));
            CHECK(kpa(starboard.starboard[i]) == 0.0);
            CHECK(kpa(starboard.port[i]) == kpa(all.front().port[i]));
        }
        CHECK(port.clause.document == "common practice, no source");
    }
}

TEST_CASE("arrangement: partial loading follows the spans of the ridge") {
    // ASCE 7, 7.5 (from memory, sure): full on an end span, half elsewhere; half on an end span, full elsewhere; full
    // on two neighbouring spans. Three spans leave four patterns.
    Plan plan = plan_of(SnowDocument::asce7_16, 1.5_kPa);
    RidgeSupport support;
    support.uprights = {upright("U1", 2.0), upright("U2", 4.0)};
    plan.support.structure = support;
    const auto stations = stations_of(20.0);
    const auto all = snow_arrangements(plan, stations);
    std::set<std::string> names;
    for (const Arrangement& a : all) {
        if (a.name.starts_with("partial")) names.insert(a.name);
    }
    CHECK(names == std::set<std::string>{"partial, full from bow to U1", "partial, full from bow to U2",
                                         "partial, full from U1 to stern", "partial, full from U2 to stern"});
    const Arrangement& end = named(all, "partial, full from bow to U1");
    const double full = kpa(all.front().port[0]);
    for (std::size_t i = 0; i < stations.size(); ++i) {
        const double share = in_m(stations[i].x) <= 2.0 ? 1.0 : 0.5;  // the upright itself counts as full
        CHECK(close(kpa(end.port[i]), share * full, 1e-12));
        CHECK(close(kpa(end.starboard[i]), share * full, 1e-12));
    }
    support.uprights = {upright("U1", 3.0)};
    plan.support.structure = support;
    const auto two = snow_arrangements(plan, stations);
    CHECK(has(two, "partial, full from bow to U1"));
    CHECK(has(two, "partial, full from U1 to stern"));
    CHECK(std::ranges::count_if(two, [](const Arrangement& a) { return a.name.starts_with("partial"); }) == 2);
    // NBC asks for it up to 15 degrees (read on a page: Ontario code 4.1.6.3), EN 1991-1-3 not at all
    plan = plan_of(SnowDocument::nbc2020, 1.5_kPa);
    plan.support.structure = support;
    CHECK(has(snow_arrangements(plan, stations_of(15.0)), "partial, full from bow to U1"));
    CHECK_FALSE(has(snow_arrangements(plan, stations_of(16.0)), "partial, full from bow to U1"));
    plan = plan_of(SnowDocument::en1991_1_3, 1.5_kPa);
    plan.support.structure = support;
    CHECK_FALSE(has(snow_arrangements(plan, stations), "partial, full from bow to U1"));
}

TEST_CASE("arrangement: Canadian snow on a gable") {
    // NBC, 4.1.6.2 and 4.1.6.9: S = I_s [S_s C_b C_w C_s C_a + S_r]; by hand S_s 2.0, S_r 0.4, normal importance:
    // balanced 1.6 + 0.4 = 2.0 at 30 deg; unbalanced 1.25 x 1.6 + 0.4 = 2.4 against nothing (1.25 read on a page: forum
    // thread on a 45 degree gable; the empty side from memory, sure)
    const auto all = snow_arrangements(plan_of(SnowDocument::nbc2015, 2.0_kPa), stations_of(30.0));
    CHECK(close(kpa(all.front().port[3]), 2.0, 1e-12));
    const Arrangement& port = named(all, "unbalanced, heavy to port");
    CHECK(close(kpa(port.port[3]), 2.4, 1e-12));
    CHECK(kpa(port.starboard[3]) == 0.0);
    // no upper end of the window: at 45 degrees C_s = (70 - 45)/40 = 0.625, so 1.25 x 0.625 x 1.6 + 0.4
    const auto steep = snow_arrangements(plan_of(SnowDocument::nbc2015, 2.0_kPa), stations_of(45.0));
    CHECK(close(kpa(named(steep, "unbalanced, heavy to port").port[3]), 1.65, 1e-12));
    // below 15 degrees the case is carried on with C_a = 1 against nothing
    const auto level = snow_arrangements(plan_of(SnowDocument::nbc2015, 2.0_kPa), stations_of(5.0));
    CHECK(close(kpa(named(level, "unbalanced, heavy to port").port[3]), 2.0, 1e-12));
    CHECK(kpa(named(level, "unbalanced, heavy to port").starboard[3]) == 0.0);
    Plan plan = plan_of(SnowDocument::nbc2015, 2.0_kPa);
    plan.basis.snow.unbalanced_window = Cited<UnbalancedWindow>{UnbalancedWindow::as_written, "invented"};
    CHECK_FALSE(has(snow_arrangements(plan, stations_of(15.0)), "unbalanced, heavy to port"));
    CHECK(has(snow_arrangements(plan, stations_of(16.0)), "unbalanced, heavy to port"));
    plan.site.ground_snow.rain.reset();
    CHECK(code_of([&] { return snow_arrangements(plan, stations_of(20.0)); }) == "plan.key.missing");
    plan = plan_of(SnowDocument::nbc2015, 2.0_kPa);
    plan.basis.snow.importance_category.reset();
    CHECK(code_of([&] { return snow_arrangements(plan, stations_of(20.0)); }) == "plan.key.missing");
}

TEST_CASE("arrangement: drift of EN 1991-1-3 beside a shed, by hand") {
    // 5.3.6: b_1 10 m, b_2 3 m, h 2 m: l_s = 5 m, mu_w = 13/4 = 3.25 (under gamma h/s_k = 4); s_k 1 kPa: 3.25 at the
    // rail, 3.25 - 2.45 x 1.5/5 = 2.515 at the ridge, 1.78 at the far rail
    Plan plan = plan_of(SnowDocument::en1991_1_3, 1.0_kPa);
    plan.site.neighbours = {shed(NeighbourSide::port, 3.0)};
    const auto all = snow_arrangements(plan, stations_of(20.0));
    const Arrangement& drift = named(all, "drift beside the shed");
    CHECK(close(kpa(load_at(drift.port_field[4], 1.0)), 3.25, 1e-12));
    CHECK(close(kpa(load_at(drift.port_field[4], 0.0)), 2.515, 1e-12));
    CHECK(close(kpa(load_at(drift.starboard_field[4], 0.0)), 2.515, 1e-12));
    CHECK(close(kpa(load_at(drift.starboard_field[4], 1.0)), 1.78, 1e-12));
    CHECK(close(kpa(drift.port[4]), 3.25, 1e-12));
    // ahead of the bow: the same line along the boat, with b_2 = 6 m: mu_w = 16/4 = 4
    plan.site.neighbours = {shed(NeighbourSide::bow, 3.0)};
    const auto ahead = snow_arrangements(plan, stations_of(20.0));
    CHECK(close(kpa(named(ahead, "drift beside the shed").port[0]), 4.0, 1e-12));
    CHECK(close(kpa(named(ahead, "drift beside the shed").port[5]), 4.0 - 3.2 * 2.5 / 5.0, 1e-12));
    CHECK(close(kpa(named(ahead, "drift beside the shed").port[11]), 0.8, 1e-12));
    // a roof that sheds adds mu_s = 0.8 b_1s/l_s = 0.8 x 5/5
    plan.site.neighbours = {shed(NeighbourSide::port, 3.0)};
    plan.site.neighbours[0].roof = NeighbourRoof{30.0_deg, Surface::slippery, 5.0_m};
    CHECK(close(kpa(named(snow_arrangements(plan, stations_of(20.0)), "drift beside the shed").port[4]), 4.05, 1e-12));
}

TEST_CASE("arrangement: a neighbour that is not higher brings nothing, and one along part of the boat only there") {
    for (const SnowDocument document : every_document) {
        Plan plan = plan_of(document, 1.5_kPa);
        plan.site.neighbours = {shed(NeighbourSide::port, 1.0)};  // the height of the rail
        CHECK_FALSE(has(snow_arrangements(plan, stations_of(20.0)), "drift beside the shed"));
        plan.site.neighbours = {shed(NeighbourSide::starboard, 4.0)};
        plan.site.neighbours[0].from = 2.0_m;
        plan.site.neighbours[0].to = 3.0_m;
        const auto all = snow_arrangements(plan, stations_of(20.0));
        const Arrangement& drift = named(all, "drift beside the shed");
        CHECK(kpa(drift.starboard[1]) == kpa(all.front().starboard[1]));
        CHECK(kpa(drift.starboard[5]) > kpa(all.front().starboard[5]));
        CHECK(kpa(drift.starboard[5]) > kpa(drift.port[5]));
        CHECK(kpa(drift.starboard[9]) == kpa(all.front().starboard[9]));
    }
}

TEST_CASE("arrangement: drift and sliding of ASCE 7-16 agree with the rules, and stop across a wide gap") {
    Plan plan = plan_of(SnowDocument::asce7_16, from_psf(30.0));
    plan.site.neighbours = {shed(NeighbourSide::port, 4.0)};
    plan.site.neighbours[0].roof = NeighbourRoof{20.0_deg, Surface::slippery, from_ft(20.0)};
    const auto all = snow_arrangements(plan, stations_of(20.0));
    const asce7_16::StepDrift by_rule = asce7_16::step_drift_7_7_1(
        {.ground_load = from_psf(30.0), .balanced_load = all.front().port[0].value, .step = 3.0_m, .length = 3.0_m},
        10.0_m, 1.0);
    const Arrangement& drift = named(all, "drift beside the shed");
    CHECK(close(in_Pa(drift.port[2].value), in_Pa(all.front().port[2].value + by_rule.drift.peak), 1e-12));
    // 0.4 p_f W = 0.4 x 25.2 x 20 = 201.6 lb/ft over 15 ft: 13.44 psf on the balanced 25.2, all over a narrower cover
    const Arrangement& slid = named(all, "slid from the roof of the shed");
    CHECK(close(in_psf(slid.port[2].value), 25.2 + 13.44, 1e-9));
    CHECK(close(in_psf(slid.starboard[2].value), 25.2 + 13.44, 1e-9));
    plan.site.neighbours[0].gap = from_ft(20.5);
    const auto far = snow_arrangements(plan, stations_of(20.0));
    CHECK_FALSE(has(far, "drift beside the shed"));
    CHECK_FALSE(has(far, "slid from the roof of the shed"));
}

TEST_CASE("arrangement: snow slid from a roof of the NBC lies on the half that faces it, and not on the other") {
    // by hand: S with C_s = 1 is 2.0 kPa; T = 0.5 x 2.0 x 4.5 = 4.5 kN/m over a half breadth of 1.5 m: 3.0 kPa more
    Plan plan = plan_of(SnowDocument::nbc2020, 2.0_kPa);
    plan.site.neighbours = {shed(NeighbourSide::starboard, 4.0)};
    plan.site.neighbours[0].roof = NeighbourRoof{25.0_deg, Surface::slippery, 4.5_m};
    const auto all = snow_arrangements(plan, stations_of(20.0));
    const Arrangement& slid = named(all, "slid from the roof of the shed");
    CHECK(close(kpa(slid.starboard[3]), 5.0, 1e-12));
    CHECK(close(kpa(load_at(slid.starboard_field[3], 0.0)), 5.0, 1e-12));
    CHECK(close(kpa(slid.port[3]), 2.0, 1e-12));
}

TEST_CASE("arrangement: snow that slides and is not said to fall clear lies on the lower half, none of it lost") {
    for (const SnowDocument document : every_document) {
        Plan plan = plan_of(document, 1.5_kPa, Surface::slippery);
        const auto all = snow_arrangements(plan, stations_of(45.0));
        const Arrangement& slid = named(all, "slid to the rail");
        const double stays = kpa(all.front().port[0]);
        const double full = kpa(snow_arrangements(plan, stations_of(0.0)).front().port[0]);
        CHECK(full > stays);
        const LoadProfile& profile = slid.port_field[0];
        CHECK(kpa(load_at(profile, 0.2)) == stays);
        CHECK(close(0.5 * (kpa(load_at(profile, 0.2)) + kpa(load_at(profile, 0.8))), full, 1e-12));
        plan.basis.snow.slid_snow = Cited<SlidSnow>{SlidSnow::falls_clear, "invented"};
        CHECK_FALSE(has(snow_arrangements(plan, stations_of(45.0)), "slid to the rail"));
        CHECK_FALSE(has(snow_arrangements(plan_of(document, 1.5_kPa), stations_of(45.0)), "slid to the rail"));
    }
}

TEST_CASE("arrangement: the rule for simple rafters is used only if claimed, beside the general one") {
    Plan plan = plan_of(SnowDocument::asce7_10, from_psf(30.0));
    CHECK_FALSE(has(snow_arrangements(plan, stations_of(20.0)), "simple rafters, heavy to port"));
    plan.basis.snow.gable_framing = Cited<GableFraming>{GableFraming::simple_rafters, "invented"};
    const auto all = snow_arrangements(plan, stations_of(20.0));
    // I_s p_g on the lee side, nothing on the other (7.6.1, from memory, sure)
    CHECK(close(in_psf(named(all, "simple rafters, heavy to port").port[0].value), 30.0, 1e-12));
    CHECK(in_psf(named(all, "simple rafters, heavy to port").starboard[0].value) == 0.0);
    CHECK(has(all, "unbalanced, heavy to port"));
}

TEST_CASE("arrangement: rain lies on nearly level snow of ASCE 7 only") {
    // 7.10: 5 psf up to p_g 20 psf where slope (deg) < W/50 (ft); W = 4.92 ft: 0.098 deg
    const auto level = snow_arrangements(plan_of(SnowDocument::asce7_16, from_psf(20.0)), stations_of(0.05));
    const Arrangement& rain = named(level, "rain on snow");
    CHECK(close(in_psf(rain.port[0].value), 0.7 * 1.2 * 20.0 + 5.0, 1e-9));
    CHECK_FALSE(
        has(snow_arrangements(plan_of(SnowDocument::asce7_16, from_psf(20.0)), stations_of(0.2)), "rain on snow"));
    CHECK_FALSE(
        has(snow_arrangements(plan_of(SnowDocument::asce7_16, from_psf(21.0)), stations_of(0.05)), "rain on snow"));
}

TEST_CASE("arrangement: by every document, more ground snow never less load and a steeper cover never more balanced") {
    for (const SnowDocument document : every_document) {
        for (const Surface surface : {Surface::other, Surface::slippery}) {
            double before = 1e9;
            for (double slope = 0.0; slope <= 90.0; slope += 0.5) {
                const double now = kpa(
                    snow_arrangements(plan_of(document, 1.5_kPa, surface), stations_of(slope), false).front().port[0]);
                CHECK(now <= before);
                before = now;
            }
            for (const double slope : {0.0, 10.0, 15.0, 30.0, 45.0, 60.0, 70.0, 90.0}) {
                auto less = snow_arrangements(plan_of(document, 0.5_kPa, surface), stations_of(slope), false);
                for (const double ground : {0.9, 1.0, 2.0, 4.0}) {
                    auto more =
                        snow_arrangements(plan_of(document, from_kPa(ground), surface), stations_of(slope), false);
                    for (const Arrangement& a : less) {
                        if (!has(more, a.name)) continue;  // rain on snow ends at a ground load
                        CHECK(kpa(named(more, a.name).port[0]) >= kpa(a.port[0]));
                        CHECK(kpa(named(more, a.name).starboard[0]) >= kpa(a.starboard[0]));
                    }
                    less = std::move(more);
                }
            }
        }
    }
}
