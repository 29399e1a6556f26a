// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_drift.hpp"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::asce7;

namespace {

// Step of the design firm's article on drifts in 7-16 and 7-22: Washington, 25 psf, p_f 17.5 psf, 4 ft high, 30 ft long
LowerRoof washington() { return {.ground_load = 25_psf, .balanced_load = 17.5_psf, .step = 4_ft, .length = 30_ft}; }

double area_ft2(const Drift& drift) { return 0.5 * in_ft(drift.height) * in_ft(drift.width); }

}  // namespace

// ------------------------------------------------------------------------------------------------------------ value

TEST_CASE("asce7 7.7.1: peak of a drift against the printed example") {
    // design firm's article, read on a page: 35.8 psf for h_d = 2.08 ft, 53.3 psf with the balanced load
    const Drift drift = drift_on_roof_7_7_1(washington(), from_ft(2.077));
    CHECK(drift.needed);
    CHECK(close_abs(in_psf(drift.peak), 35.8, 0.05));
    CHECK(close_abs(in_psf(drift.peak + washington().balanced_load), 53.3, 0.05));
    // by hand: h_b = 17.5/17.25 ft, w = 4 h_d, nothing at the end of the roof
    CHECK(close(in_ft(drift.balanced_depth), 17.5 / 17.25, 1e-12));
    CHECK(close(in_ft(drift.clear_height), 4.0 - 17.5 / 17.25, 1e-12));
    CHECK(close(in_ft(drift.width), 8.308, 1e-12));
    CHECK(in_psf(drift.at_end) == 0.0);
}

TEST_CASE("asce7 7.7.1: a drift higher than the step fills it and grows wider") {
    // by hand, no balanced snow, h_c = 2 ft: 2.5 ft gives 4 x 6.25/2 = 12.5 ft, 3 ft is held at 8 h_c = 16 ft
    const LowerRoof roof{.ground_load = 30_psf, .balanced_load = 0_psf, .step = 2_ft, .length = 100_ft};
    const Drift wider = drift_on_roof_7_7_1(roof, 2.5_ft);
    CHECK(close(in_ft(wider.height), 2.0, 1e-12));
    CHECK(close(in_ft(wider.width), 12.5, 1e-12));
    CHECK(close(in_psf(wider.peak), 2.0 * 17.9, 1e-12));
    CHECK(close(in_ft(drift_on_roof_7_7_1(roof, 3_ft).width), 16.0, 1e-12));
    CHECK(close(in_ft(drift_on_roof_7_7_1(roof, 30_ft).width), 16.0, 1e-12));
}

TEST_CASE("asce7 7.7.2: leeward drift across a gap by hand") {
    // s = 6 ft, h = 4 ft: 6 h - s = 18 ft; h_d = 2 ft is lower than 3 ft, 6 h_d = 12 ft shorter than 18 ft
    const Gap gap{.separation = 6_ft, .height = 4_ft, .lower_length = 9_ft};
    const GapDrift low = leeward_drift_over_gap_of_height_7_7_2(gap, 30_psf, 2_ft);
    CHECK(low.needed);
    CHECK(close(in_ft(low.height), 2.0, 1e-12));
    CHECK(close(in_ft(low.length), 12.0, 1e-12));
    CHECK(close(in_psf(low.peak), 35.8, 1e-12));
    CHECK(close(in_psf(low.at_end), 35.8 * 3.0 / 12.0, 1e-12));
    // h_d = 5 ft: the shade of the higher structure governs, 3 ft and 18 ft
    const GapDrift high = leeward_drift_over_gap_of_height_7_7_2(gap, 30_psf, 5_ft);
    CHECK(close(in_ft(high.height), 3.0, 1e-12));
    CHECK(close(in_ft(high.length), 18.0, 1e-12));
}

TEST_CASE("asce7 7.7.1: the cap holds half of the snow upwind") {
    // 2 h^2 gamma = 0.5 I_s p_g l_u
    const Length height = drift_height_cap_7_7_1(30_psf, 4_ft, 1.2);
    CHECK(close(2.0 * in_ft(height) * in_ft(height) * 17.9, 0.5 * 1.2 * 30.0 * 4.0, 1e-12));
    CHECK(in_ft(drift_height_cap_7_7_1(0_psf, 4_ft, 1.0)) == 0.0);
}

// ------------------------------------------------------------------------------------------------------------ limit

TEST_CASE("asce7 7.7.1: no drift where the step is nearly buried") {
    // h_b = 2 ft exactly: h_c/h_b = 0.2 at a step of 2.4 ft
    LowerRoof roof{.ground_load = 30_psf, .balanced_load = 35.8_psf, .step = 2.401_ft, .length = 50_ft};
    CHECK(drift_on_roof_7_7_1(roof, 3_ft).needed);
    roof.step = 2.399_ft;
    const Drift none = drift_on_roof_7_7_1(roof, 3_ft);
    CHECK_FALSE(none.needed);
    CHECK(in_ft(none.height) == 0.0);
    CHECK(in_ft(none.width) == 0.0);
    CHECK(in_psf(none.peak) == 0.0);
    roof.step = 1_ft;
    CHECK_FALSE(drift_on_roof_7_7_1(roof, 3_ft).needed);
    CHECK(close(in_ft(drift_on_roof_7_7_1(roof, 3_ft).clear_height), -1.0, 1e-12));
    // no balanced snow: any step catches a drift
    roof.balanced_load = 0_psf;
    CHECK(drift_on_roof_7_7_1(roof, 3_ft).needed);
}

TEST_CASE("asce7 7.7.1: height and width run on where one branch meets the next") {
    const LowerRoof roof = washington();
    const double h_c = in_ft(drift_on_roof_7_7_1(roof, 1_ft).clear_height);
    for (const double corner : {h_c, std::sqrt(2.0) * h_c}) {
        const Drift below = drift_on_roof_7_7_1(roof, from_ft(corner * (1.0 - 1e-10)));
        const Drift above = drift_on_roof_7_7_1(roof, from_ft(corner * (1.0 + 1e-10)));
        CHECK(close(above.height, below.height, 1e-9));
        CHECK(close(above.width, below.width, 1e-9));
        CHECK(close(above.peak, below.peak, 1e-9));
    }
    CHECK(close(in_ft(drift_on_roof_7_7_1(roof, from_ft(1.5 * h_c)).width), 8.0 * h_c, 1e-12));
}

TEST_CASE("asce7 7.7.1: a roof shorter than the drift cuts it off") {
    LowerRoof roof = washington();
    roof.length = 5_ft;
    const Drift cut = drift_on_roof_7_7_1(roof, 2_ft);
    CHECK(close(in_ft(cut.width), 8.0, 1e-12));  // not squeezed
    CHECK(close(in_psf(cut.at_end), in_psf(cut.peak) * 3.0 / 8.0, 1e-12));
    CHECK(close(drift_load_at_7_7_1(cut.peak, cut.width, 5_ft), cut.at_end, 1e-15));
    roof.length = 8_ft;
    CHECK(close_abs(in_psf(drift_on_roof_7_7_1(roof, 2_ft).at_end), 0.0, 1e-12));
}

TEST_CASE("asce7 7.7.1: load along a drift") {
    CHECK(drift_load_at_7_7_1(30_psf, 8_ft, 0_ft) == 30_psf);
    CHECK(close(drift_load_at_7_7_1(30_psf, 8_ft, 2_ft), 22.5_psf, 1e-12));
    CHECK(close_abs(in_psf(drift_load_at_7_7_1(30_psf, 8_ft, from_ft(8.0 - 1e-9))), 0.0, 1e-7));
    CHECK(in_psf(drift_load_at_7_7_1(30_psf, 8_ft, 8_ft)) == 0.0);
    CHECK(in_psf(drift_load_at_7_7_1(30_psf, 8_ft, 80_ft)) == 0.0);
    CHECK(in_psf(drift_load_at_7_7_1(0_psf, 0_ft, 0_ft)) == 0.0);
}

TEST_CASE("asce7 7.7.2: no leeward drift from 20 ft, or from six times the height") {
    Gap gap{.separation = 19.99_ft, .height = 10_ft, .lower_length = 30_ft};
    CHECK(leeward_drift_over_gap_of_height_7_7_2(gap, 30_psf, 3_ft).needed);
    gap.separation = 20_ft;
    const GapDrift none = leeward_drift_over_gap_of_height_7_7_2(gap, 30_psf, 3_ft);
    CHECK_FALSE(none.needed);
    CHECK(in_psf(none.peak) == 0.0);
    CHECK(in_ft(none.length) == 0.0);
    gap.height = 2_ft;
    gap.separation = from_ft(12.0 - 1e-9);
    CHECK(close_abs(in_psf(leeward_drift_over_gap_of_height_7_7_2(gap, 30_psf, 3_ft).peak), 0.0, 1e-7));  // runs out
    gap.separation = 12_ft;
    CHECK_FALSE(leeward_drift_over_gap_of_height_7_7_2(gap, 30_psf, 3_ft).needed);
}

TEST_CASE("asce7 7.8: short sides and clear undersides catch no drift") {
    CHECK(projection_needs_drift_7_8(15_ft, 0_ft));
    CHECK(projection_needs_drift_7_8(from_m(4.572), 0_ft));  // 15 ft
    CHECK_FALSE(projection_needs_drift_7_8(14.99_ft, 0_ft));
    CHECK(projection_needs_drift_7_8(20_ft, 1.99_ft));
    CHECK_FALSE(projection_needs_drift_7_8(20_ft, 2_ft));
}

// -------------------------------------------------------------------------------------------------------- invariant

TEST_CASE("asce7 7.7.1: a drift of 2 h_d^2, as long as the step holds it") {
    for (double height = 0.1; height <= 4.0; height += 0.1) {
        CAPTURE(height);
        const Drift drift = drift_on_roof_7_7_1(washington(), from_ft(height));
        const double h_c = in_ft(drift.clear_height);
        if (height <= std::sqrt(2.0) * h_c)
            CHECK(close(area_ft2(drift), 2.0 * height * height, 1e-12));
        else
            CHECK(area_ft2(drift) < 2.0 * height * height);
        CHECK(drift.height <= drift.clear_height);
        CHECK(drift.width <= 8.0 * drift.clear_height);
    }
}

TEST_CASE("asce7 7.7.1: a higher drift, a higher step and a denser snow never lower the peak") {
    Pressure before = 0_psf;
    for (double height = 0.0; height <= 8.0; height += 0.1) {
        const Pressure now = drift_on_roof_7_7_1(washington(), from_ft(height)).peak;
        CHECK(now >= before);
        before = now;
    }
    before = 0_psf;
    for (double step = 0.1; step <= 8.0; step += 0.1) {
        LowerRoof roof = washington();
        roof.step = from_ft(step);
        const Pressure now = drift_on_roof_7_7_1(roof, 3_ft).peak;
        CHECK(now >= before);
        before = now;
    }
    Pressure near = 1000_psf;
    for (double gap = 0.1; gap <= 25.0; gap += 0.1) {
        const Gap between{.separation = from_ft(gap), .height = 4_ft, .lower_length = 30_ft};
        const Pressure now = leeward_drift_over_gap_of_height_7_7_2(between, 30_psf, 3_ft).peak;
        CHECK(now <= near);
        near = now;
    }
}

TEST_CASE("asce7 7.7: the same answer from SI and US units") {
    // NIST SP 811, from memory
    const LowerRoof si{.ground_load = from_Pa(25.0 * 47.88025898033584),
                       .balanced_load = from_Pa(17.5 * 47.88025898033584),
                       .step = from_m(4.0 * 0.3048),
                       .length = from_m(7.0 * 0.3048)};
    LowerRoof us = washington();
    us.length = 7_ft;
    for (const double height : {1.0, 2.5, 4.0, 6.0}) {
        const Drift a = drift_on_roof_7_7_1(si, from_m(height * 0.3048));
        const Drift b = drift_on_roof_7_7_1(us, from_ft(height));
        CHECK(close(a.peak, b.peak, 1e-12));
        CHECK(close(a.width, b.width, 1e-12));
        CHECK(close(a.at_end, b.at_end, 1e-11));
    }
    const Gap gap_si{.separation = from_m(6.0 * 0.3048), .height = from_m(4.0 * 0.3048), .lower_length = from_m(3.0)};
    const Gap gap_us{.separation = 6_ft, .height = 4_ft, .lower_length = from_m(3.0)};
    CHECK(close(leeward_drift_over_gap_of_height_7_7_2(gap_si, si.ground_load, 2_ft).peak,
                leeward_drift_over_gap_of_height_7_7_2(gap_us, 25_psf, 2_ft).peak, 1e-12));
}

// ------------------------------------------------------------------------------------------------------------ error

TEST_CASE("asce7 7.7 and 7.8: arguments out of range") {
    const auto code = [](auto change, Length height) {
        LowerRoof roof = washington();
        change(roof);
        return code_of([&] { return drift_on_roof_7_7_1(roof, height); });
    };
    const auto gap_code = [](auto change) {
        Gap gap{.separation = 6_ft, .height = 4_ft, .lower_length = 9_ft};
        change(gap);
        return code_of([&] { return leeward_drift_over_gap_of_height_7_7_2(gap, 30_psf, 2_ft); });
    };
    CHECK(code([](LowerRoof&) {}, 0_ft) == "none");
    CHECK(code([](LowerRoof&) {}, from_ft(-0.1)) == "asce7.drift_height.range");
    CHECK(code([](LowerRoof& r) { r.ground_load = from_psf(-1.0); }, 1_ft) == "asce7.ground_load.range");
    CHECK(code([](LowerRoof& r) { r.balanced_load = from_psf(-1.0); }, 1_ft) == "asce7.balanced_load.range");
    CHECK(code([](LowerRoof& r) { r.step = 0_ft; }, 1_ft) == "asce7.step.range");
    CHECK(code([](LowerRoof& r) { r.length = 601_ft; }, 1_ft) == "asce7.roof_length.range");
    CHECK(gap_code([](Gap&) {}) == "none");
    CHECK(gap_code([](Gap& g) { g.separation = 0_ft; }) == "asce7.gap.range");
    CHECK(gap_code([](Gap& g) { g.height = 0_ft; }) == "asce7.step.range");
    CHECK(gap_code([](Gap& g) { g.lower_length = 0_ft; }) == "asce7.roof_length.range");
    CHECK(code_of([] { return drift_load_at_7_7_1(from_psf(-1.0), 1_ft, 1_ft); }) == "asce7.peak.range");
    CHECK(code_of([] { return drift_load_at_7_7_1(1_psf, from_ft(-1.0), 1_ft); }) == "asce7.width.range");
    CHECK(code_of([] { return drift_load_at_7_7_1(1_psf, 1_ft, from_ft(-1.0)); }) == "asce7.distance.range");
    CHECK(code_of([] { return projection_needs_drift_7_8(0_ft, 0_ft); }) == "asce7.side.range");
    CHECK(code_of([] { return projection_needs_drift_7_8(15_ft, from_ft(-1.0)); }) == "asce7.clearance.range");
    CHECK(code_of([] { return drift_height_cap_7_7_1(30_psf, 601_ft, 1.0); }) == "asce7.fetch.range");
    for (const double bad : not_finite) {
        CAPTURE(bad);
        CHECK(code([](LowerRoof&) {}, from_ft(bad)) == "asce7.drift_height.range");
        CHECK(code([&](LowerRoof& r) { r.ground_load = from_psf(bad); }, 1_ft) == "asce7.ground_load.range");
        CHECK(code([&](LowerRoof& r) { r.balanced_load = from_psf(bad); }, 1_ft) == "asce7.balanced_load.range");
        CHECK(code([&](LowerRoof& r) { r.step = from_ft(bad); }, 1_ft) == "asce7.step.range");
        CHECK(code([&](LowerRoof& r) { r.length = from_ft(bad); }, 1_ft) == "asce7.roof_length.range");
        CHECK(gap_code([&](Gap& g) { g.separation = from_ft(bad); }) == "asce7.gap.range");
        CHECK(gap_code([&](Gap& g) { g.height = from_ft(bad); }) == "asce7.step.range");
        CHECK(code_of([&] { return drift_load_at_7_7_1(from_psf(bad), 1_ft, 1_ft); }) == "asce7.peak.range");
        CHECK(code_of([&] { return drift_load_at_7_7_1(1_psf, from_ft(bad), 1_ft); }) == "asce7.width.range");
        CHECK(code_of([&] { return drift_load_at_7_7_1(1_psf, 1_ft, from_ft(bad)); }) == "asce7.distance.range");
        CHECK(code_of([&] { return projection_needs_drift_7_8(from_ft(bad), 0_ft); }) == "asce7.side.range");
        CHECK(code_of([&] { return projection_needs_drift_7_8(15_ft, from_ft(bad)); }) == "asce7.clearance.range");
    }
}
