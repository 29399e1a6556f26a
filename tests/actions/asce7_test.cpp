// SPDX-License-Identifier: BSD-3-Clause
// What 7-10, 7-16 and 7-22 share.
#include "coverframe/actions/asce7.hpp"

#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::asce7;

namespace {

constexpr Surface slippery = Surface::unobstructed_slippery;
constexpr Surface other = Surface::other;

/// A chart and the slope it begins to fall at, [deg].
struct Line {
    SlopeChart chart;
    Surface surface;
    double full;
};
const std::vector<Line> lines{{SlopeChart::warm, slippery, 5.0},       {SlopeChart::warm, other, 30.0},
                              {SlopeChart::cold, slippery, 10.0},      {SlopeChart::cold, other, 37.5},
                              {SlopeChart::very_cold, slippery, 15.0}, {SlopeChart::very_cold, other, 45.0}};

}  // namespace

// ------------------------------------------------------------------------------------------------------------ value

TEST_CASE("asce7 7.3.1: the table of exposure") {
    // ASCE 7-10 Table 7-2; B partially exposed read on a page (O'Rourke, Example 4-3), the rest from memory
    struct Row {
        Terrain terrain;
        double fully, partially, sheltered;
    };
    const std::vector<Row> rows{{Terrain::B, 0.9, 1.0, 1.2}, {Terrain::C, 0.9, 1.0, 1.1}, {Terrain::D, 0.8, 0.9, 1.0}};
    for (const Row& row : rows) {
        CAPTURE(static_cast<int>(row.terrain));
        CHECK(exposure_factor_7_3_1(row.terrain, RoofExposure::fully_exposed) == row.fully);
        CHECK(exposure_factor_7_3_1(row.terrain, RoofExposure::partially_exposed) == row.partially);
        CHECK(exposure_factor_7_3_1(row.terrain, RoofExposure::sheltered) == row.sheltered);
    }
    for (const Terrain treeless : {Terrain::above_tree_line, Terrain::alaska_treeless}) {
        CHECK(exposure_factor_7_3_1(treeless, RoofExposure::fully_exposed) == 0.7);
        CHECK(exposure_factor_7_3_1(treeless, RoofExposure::partially_exposed) == 0.8);
        CHECK(code_of([&] { return exposure_factor_7_3_1(treeless, RoofExposure::sheltered); }) ==
              "asce7.roof_exposure.range");
    }
}

TEST_CASE("asce7 7.4: slope factors against printed numbers") {
    // ASCE 7 commentary C7, Examples 1 and 2, from memory: 0.91 at 33.7 deg, 0.72 at 41 deg, warm, not slippery
    CHECK(close_abs(slope_factor_on_chart_7_4(33.7_deg, SlopeChart::warm, other), 0.91, 0.005));
    CHECK(close_abs(slope_factor_on_chart_7_4(41_deg, SlopeChart::warm, other), 0.72, 0.0051));
    // forum thread on Fig. 7-2b of 7-05, read on a page: 0.72 at 26.6 deg, C_t = 1.1, slippery
    CHECK(close_abs(slope_factor_on_chart_7_4(26.6_deg, SlopeChart::cold, slippery), 0.72, 0.005));
    // by hand: (70 - slope)/55 for an unheated slippery cover
    CHECK(slope_factor_on_chart_7_4(15_deg, SlopeChart::very_cold, slippery) == 1.0);
    CHECK(close(slope_factor_on_chart_7_4(30_deg, SlopeChart::very_cold, slippery), 40.0 / 55.0, 1e-12));
    CHECK(close(slope_factor_on_chart_7_4(45_deg, SlopeChart::very_cold, slippery), 25.0 / 55.0, 1e-12));
    CHECK(close(slope_factor_on_chart_7_4(60_deg, SlopeChart::very_cold, slippery), 10.0 / 55.0, 1e-12));
}

TEST_CASE("asce7 7.4: insulation of the slippery line of warm roofs") {
    CHECK(warm_slippery_applies_7_4_1(30.0, false));
    CHECK_FALSE(warm_slippery_applies_7_4_1(29.9, false));
    CHECK(warm_slippery_applies_7_4_1(20.0, true));
    CHECK_FALSE(warm_slippery_applies_7_4_1(19.9, true));
}

TEST_CASE("asce7 7.7: unit weight and balanced depth") {
    // O'Rourke, Guide to ASCE 7-10, Example 6-2, read on a page: 17.9 pcf at 30 psf
    CHECK(close_abs(in_pcf(unit_weight_7_7(30_psf)), 17.9, 0.05));
    // design firm's article on drifts in 7-16 and 7-22, read on a page: 17.25 pcf at 25 psf
    CHECK(close_abs(in_pcf(unit_weight_7_7(25_psf)), 17.25, 0.005));
    CHECK(close(in_pcf(unit_weight_7_7(0_psf)), 14.0, 1e-12));
    CHECK(close(in_pcf(unit_weight_7_7(300_psf)), 30.0, 1e-12));
    // SI form with the constants converted, rounded there: 0.426 p_g + 2.2 kN/m3
    CHECK(close(in_kN_per_m3(unit_weight_7_7(from_kPa(2.0))), 0.426 * 2.0 + 2.2, 2e-3));
    CHECK(close(in_ft(balanced_depth_7_7(from_psf(35.8), 30_psf)), 2.0, 1e-12));
    CHECK(in_ft(balanced_depth_7_7(0_psf, 30_psf)) == 0.0);
}

// ------------------------------------------------------------------------------------------------------------ limit

TEST_CASE("asce7 7.3: low slopes end below 15 degrees, curved roofs below 10") {
    for (const RoofShape shape : {RoofShape::hip_or_gable, RoofShape::monoslope}) {
        CHECK(low_slope_7_3(0_deg, shape));
        CHECK(low_slope_7_3(14.999_deg, shape));
        CHECK_FALSE(low_slope_7_3(15_deg, shape));
        CHECK_FALSE(low_slope_7_3(90_deg, shape));
    }
    CHECK(low_slope_7_3(9.999_deg, RoofShape::curved));
    CHECK_FALSE(low_slope_7_3(10_deg, RoofShape::curved));
}

TEST_CASE("asce7 7.4: every line is 1 up to its corner, straight, and 0 from 70 degrees") {
    for (const Line& line : lines) {
        CAPTURE(line.full);
        const auto factor = [&](double deg) {
            return slope_factor_on_chart_7_4(from_deg(deg), line.chart, line.surface);
        };
        CHECK(close(in_deg(full_load_slope_on_chart_7_4(line.chart, line.surface)), line.full, 1e-12));
        CHECK(factor(0.0) == 1.0);
        CHECK(factor(line.full) == 1.0);
        CHECK(close_abs(factor(line.full + 1e-9), 1.0, 1e-9));
        CHECK(close(factor(0.5 * (line.full + 70.0)), 0.5, 1e-12));
        CHECK(close(factor(0.25 * line.full + 0.75 * 70.0), 0.25, 1e-12));
        CHECK(close_abs(factor(70.0 - 1e-9), 0.0, 1e-9));
        CHECK(factor(70.0) == 0.0);
        CHECK(factor(90.0) == 0.0);
    }
}

TEST_CASE("asce7 7.7: the cap of the unit weight is met without a step") {
    const double corner = 16.0 / 0.13;
    CHECK(close(in_pcf(unit_weight_7_7(from_psf(corner - 1e-6))), 30.0, 1e-8));
    CHECK(close(in_pcf(unit_weight_7_7(from_psf(corner + 1e-6))), 30.0, 1e-12));
}

TEST_CASE("asce7 7.3.1: an obstruction shelters over ten times its height above the roof") {
    CHECK(obstruction_shelters_7_3_1(0_ft, 5_ft));
    CHECK(obstruction_shelters_7_3_1(50_ft, 5_ft));
    CHECK(obstruction_shelters_7_3_1(from_m(15.24), from_m(1.524)));
    CHECK_FALSE(obstruction_shelters_7_3_1(50.01_ft, 5_ft));
}

TEST_CASE("asce7 7.12: twenty feet, in whatever unit") {
    CHECK(existing_roof_affected_7_12(0_ft));
    CHECK(existing_roof_affected_7_12(20_ft));
    CHECK(existing_roof_affected_7_12(from_m(6.096)));
    CHECK_FALSE(existing_roof_affected_7_12(from_ft(20.001)));
}

// -------------------------------------------------------------------------------------------------------- invariant

TEST_CASE("asce7 7.4: steeper never carries more, colder and rougher never less") {
    for (const Line& line : lines) {
        double before = 1.0;
        for (double deg = 0.0; deg <= 90.0; deg += 0.5) {
            const double now = slope_factor_on_chart_7_4(from_deg(deg), line.chart, line.surface);
            CHECK(now <= before);
            CHECK(now >= 0.0);
            before = now;
        }
    }
    for (double deg = 0.0; deg <= 90.0; deg += 0.5) {
        CAPTURE(deg);
        const auto factor = [&](SlopeChart chart, Surface surface) {
            return slope_factor_on_chart_7_4(from_deg(deg), chart, surface);
        };
        for (const Surface surface : {slippery, other}) {
            CHECK(factor(SlopeChart::cold, surface) >= factor(SlopeChart::warm, surface));
            CHECK(factor(SlopeChart::very_cold, surface) >= factor(SlopeChart::cold, surface));
        }
        for (const SlopeChart chart : {SlopeChart::warm, SlopeChart::cold, SlopeChart::very_cold}) {
            CHECK(factor(chart, other) >= factor(chart, slippery));
        }
    }
}

TEST_CASE("asce7: the same answer from SI and US units") {
    // 1 psf = 47.88025898033584 Pa, 1 ft = 0.3048 m (NIST SP 811, from memory)
    const Pressure ground = from_Pa(30.0 * 47.88025898033584);
    CHECK(close(unit_weight_7_7(ground), unit_weight_7_7(30_psf), 1e-12));
    CHECK(close(balanced_depth_7_7(ground, ground), balanced_depth_7_7(30_psf, 30_psf), 1e-12));
    CHECK(close(sloped_load_7_4(ground, 0.7), sloped_load_7_4(30_psf, 0.7), 1e-12));
}

// ------------------------------------------------------------------------------------------------------------ error

TEST_CASE("asce7: arguments out of range") {
    CHECK(code_of([] { return exposure_factor_7_3_1(static_cast<Terrain>(9), RoofExposure::sheltered); }) ==
          "asce7.terrain.range");
    CHECK(code_of([] { return exposure_factor_7_3_1(Terrain::B, static_cast<RoofExposure>(9)); }) ==
          "asce7.roof_exposure.range");
    CHECK(code_of([] { return obstruction_shelters_7_3_1(from_ft(-1.0), 5_ft); }) == "asce7.distance.range");
    CHECK(code_of([] { return obstruction_shelters_7_3_1(50_ft, 0_ft); }) == "asce7.obstruction.range");
    CHECK(code_of([] { return low_slope_7_3(90.1_deg, RoofShape::curved); }) == "asce7.slope.range");
    CHECK(code_of([] { return slope_factor_on_chart_7_4(from_deg(-0.1), SlopeChart::cold, other); }) ==
          "asce7.slope.range");
    CHECK(code_of([] { return warm_slippery_applies_7_4_1(-1.0, true); }) == "asce7.r_value.range");
    CHECK(code_of([] { return sloped_load_7_4(from_kPa(200.1), 1.0); }) == "asce7.flat_load.range");
    CHECK(code_of([] { return sloped_load_7_4(25_psf, 1.01); }) == "asce7.slope_factor.range");
    CHECK(code_of([] { return sloped_load_7_4(25_psf, -0.01); }) == "asce7.slope_factor.range");
    CHECK(code_of([] { return unit_weight_7_7(from_kPa(100.1)); }) == "asce7.ground_load.range");
    CHECK(code_of([] { return balanced_depth_7_7(from_kPa(200.1), 30_psf); }) == "asce7.balanced_load.range");
    CHECK(code_of([] { return existing_roof_affected_7_12(from_ft(-1.0)); }) == "asce7.gap.range");
    for (const double bad : not_finite) {
        CAPTURE(bad);
        CHECK(code_of([&] { return obstruction_shelters_7_3_1(from_ft(bad), 5_ft); }) == "asce7.distance.range");
        CHECK(code_of([&] { return obstruction_shelters_7_3_1(50_ft, from_ft(bad)); }) == "asce7.obstruction.range");
        CHECK(code_of([&] { return low_slope_7_3(from_deg(bad), RoofShape::curved); }) == "asce7.slope.range");
        CHECK(code_of([&] { return slope_factor_on_chart_7_4(from_deg(bad), SlopeChart::cold, other); }) ==
              "asce7.slope.range");
        CHECK(code_of([&] { return warm_slippery_applies_7_4_1(bad, true); }) == "asce7.r_value.range");
        CHECK(code_of([&] { return sloped_load_7_4(from_psf(bad), 0.5); }) == "asce7.flat_load.range");
        CHECK(code_of([&] { return sloped_load_7_4(25_psf, bad); }) == "asce7.slope_factor.range");
        CHECK(code_of([&] { return unit_weight_7_7(from_psf(bad)); }) == "asce7.ground_load.range");
        CHECK(code_of([&] { return balanced_depth_7_7(from_psf(bad), 30_psf); }) == "asce7.balanced_load.range");
        CHECK(code_of([&] { return existing_roof_affected_7_12(from_ft(bad)); }) == "asce7.gap.range");
    }
}
