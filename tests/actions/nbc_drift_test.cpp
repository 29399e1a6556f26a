// SPDX-License-Identifier: BSD-3-Clause
// Gathered snow of nbc.hpp: steps, neighbours, projections, sliding. No number of these rules was found in print; they
// are worked out here step by step.
#include "coverframe/actions/nbc.hpp"

#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using nbc::StepCase;

namespace {

// A cover beside a boathouse 18 m long with a parapet of 0.6 m, of our own invention.
nbc::Step boathouse() {
    return {.ground_snow = 1.8_kPa,
            .unit_weight = 2.974_kN_per_m3,
            .height = 2.5_m,
            .source = StepCase::I,
            .source_length = 18_m,
            .parapet = 0.6_m};
}

}  // namespace

TEST_CASE("nbc 4.1.6.13: unit weight") {
    // from memory: 2.2 at no snow, 0.43 a kPa, at most 4.0; the Ontario appendix measured 1.0 to 4.5 on roofs (read)
    const auto gamma = [](double S_s) { return in_kN_per_m3(nbc::unit_weight_4_1_6_13(from_kPa(S_s))); };
    CHECK(close(gamma(0.0), 2.2, 1e-12));
    CHECK(close(gamma(2.0), 3.06, 1e-12));
    const double corner = 1.8 / 0.43;
    CHECK(close_abs(gamma(corner - 1e-9), 4.0, 1e-8));
    CHECK(gamma(corner + 1e-9) == 4.0);
    CHECK(gamma(100.0) == 4.0);
    CHECK(code_of([&] { return gamma(-0.1); }) == "nbc.ground_snow.range");
    for (const double bad : not_finite) CHECK(code_of([&] { return gamma(bad); }) == "nbc.ground_snow.range");
}

TEST_CASE("nbc 4.1.6.5: step drift by hand") {
    // h_p' = 0.6 - 0.8 x 1.8/2.974 = 0.115804; F = 0.35 sqrt(2.974 (18 - 0.579018)/1.8) + 0.8 = 2.677754
    // C_a0 = min(2.974 x 2.5/1.44, 2.677754/0.8) = min(5.163, 3.347192); x_d = 5 (1.44/2.974) 2.347192
    const nbc::StepDrift one = nbc::step_drift_4_1_6_5(boathouse());
    CHECK(close(in_m(one.parapet), 0.1158036315, 1e-9));
    CHECK(close(one.fetch, 2.677753534, 1e-9));
    CHECK(close(one.drift.peak, 3.347191917, 1e-9));
    CHECK(close(in_m(one.drift.length), 5.682509013, 1e-9));

    // the same snow across 12 m of the lower roof: F = 0.35 x 0.67 sqrt(2.974 x 12/1.8) + 0.8
    nbc::Step lower = boathouse();
    lower.source_length = 12_m;
    lower.parapet = 0_m;
    for (const StepCase source : {StepCase::II, StepCase::III}) {
        lower.source = source;
        const nbc::StepDrift two = nbc::step_drift_4_1_6_5(lower);
        CHECK(close(two.fetch, 1.844161557, 1e-9));
        CHECK(close(two.drift.peak, 2.305201946, 1e-9));
        CHECK(close(in_m(two.drift.length), 3.159870213, 1e-9));
    }
}

TEST_CASE("nbc 4.1.6.5: limits of a step drift") {
    // a long upper roof: F = 8.59 unlimited; 5 unless the wind has swept it; the step of 2.5 m is full at 5.163194
    nbc::Step step = boathouse();
    step.source_length = 300_m;
    step.parapet = 0_m;
    CHECK(nbc::step_drift_4_1_6_5(step).fetch == 5.0);
    CHECK(close(nbc::step_drift_4_1_6_5(step).drift.peak, 5.163194444, 1e-9));
    step.height = 8_m;
    CHECK(close(nbc::step_drift_4_1_6_5(step).drift.peak, 6.25, 1e-12));
    step.source_wind = 0.75;
    CHECK(close(nbc::step_drift_4_1_6_5(step).fetch, 8.592250424, 1e-9));

    // a full step falls off from its top: peak height of snow h, and C_b S_s C_a0 = beta gamma h
    step = boathouse();
    step.height = 0.6_m;
    CHECK(close(nbc::step_drift_4_1_6_5(step).drift.peak, 2.974 * 0.6 / 1.44, 1e-12));
    step.source = StepCase::II;
    step.height = 0.8_m;
    CHECK(close(nbc::step_drift_4_1_6_5(step).drift.peak, 0.67 * 2.974 * 0.8 / 1.44, 1e-12));

    // a step no higher than the snow beside it: no drift
    for (const double h : {0.0, 0.2, 0.48}) {
        step = boathouse();
        step.height = from_m(h);
        CHECK(nbc::step_drift_4_1_6_5(step).drift.peak == 1.0);
        CHECK(in_m(nbc::step_drift_4_1_6_5(step).drift.length) == 0.0);
    }

    // a parapet holds back at most everything
    step = boathouse();
    step.parapet = 50_m;
    CHECK(close(in_m(nbc::step_drift_4_1_6_5(step).parapet), 3.6, 1e-12));
    CHECK(close_abs(nbc::step_drift_4_1_6_5(step).fetch, 0.8, 1e-6));
    CHECK(close_abs(nbc::step_drift_4_1_6_5(step).drift.peak, 1.0, 1e-6));
    step.parapet = 0.4_m;  // buried
    CHECK(in_m(nbc::step_drift_4_1_6_5(step).parapet) == 0.0);
}

TEST_CASE("nbc 4.1.6.5: how a drift behaves") {
    // more ground snow never less snow anywhere in the drift, from any source
    for (const StepCase source : {StepCase::I, StepCase::II}) {
        for (const double height : {0.5, 1.5, 4.0}) {
            for (const double x : {0.0, 0.5, 2.0, 5.0, 9.0, 20.0}) {
                double before = 0.0;
                for (double S_s = 0.05; S_s < 8.0; S_s += 0.05) {
                    nbc::Step step = boathouse();
                    step.source = source;
                    step.height = from_m(height);
                    step.ground_snow = from_kPa(S_s);
                    step.unit_weight = nbc::unit_weight_4_1_6_13(step.ground_snow);
                    const nbc::Drift drift = nbc::step_drift_4_1_6_5(step).drift;
                    const double load = S_s * 0.8 * nbc::accumulation_4_1_6_5(drift, from_m(x));
                    CHECK(load >= before - 1e-12);
                    before = load;
                }
            }
        }
    }
    // higher steps and longer roofs never less; a higher parapet never more
    double by_height = 0.0, by_length = 0.0, by_parapet = 100.0;
    for (double v = 0.0; v < 30.0; v += 0.25) {
        nbc::Step step = boathouse();
        step.height = from_m(v);
        const double high = nbc::step_drift_4_1_6_5(step).drift.peak;
        step = boathouse();
        step.source_length = from_m(10.0 * v);
        const double wide = nbc::step_drift_4_1_6_5(step).drift.peak;
        step = boathouse();
        step.parapet = from_m(v);
        const double held = nbc::step_drift_4_1_6_5(step).drift.peak;
        CHECK(high >= by_height);
        CHECK(wide >= by_length);
        CHECK(held <= by_parapet);
        by_height = high;
        by_length = wide;
        by_parapet = held;
    }
}

TEST_CASE("nbc 4.1.6.5: along the drift") {
    const nbc::Drift drift{.peak = 3.0, .length = 6_m};
    const auto C_a = [&](double x) { return nbc::accumulation_4_1_6_5(drift, from_m(x)); };
    CHECK(C_a(0.0) == 3.0);
    CHECK(close(C_a(1.5), 2.5, 1e-12));
    CHECK(close(C_a(3.0), 2.0, 1e-12));
    CHECK(close_abs(C_a(6.0 - 1e-9), 1.0, 1e-8));
    CHECK(C_a(6.0) == 1.0);
    CHECK(C_a(100.0) == 1.0);
    CHECK(nbc::accumulation_4_1_6_5({.peak = 1.0, .length = 0_m}, 0_m) == 1.0);
    CHECK(close(nbc::accumulation_4_1_6_5({.peak = 3.0, .length = 20_ft}, 5_ft), 2.5, 1e-12));
    // its slope is that of snow lying at 1 in 5: C_b S_s (C_a0 - 1)/x_d = gamma/5
    const nbc::Drift made = nbc::step_drift_4_1_6_5(boathouse()).drift;
    CHECK(close(1.44 * (made.peak - 1.0) / in_m(made.length), 2.974 / 5.0, 1e-12));

    CHECK(code_of([] { return nbc::accumulation_4_1_6_5({.peak = 0.9, .length = 6_m}, 0_m); }) == "nbc.peak.range");
    CHECK(code_of([] { return nbc::accumulation_4_1_6_5({.peak = 2, .length = -6_m}, 0_m); }) ==
          "nbc.drift_length.range");
    CHECK(code_of([&] { return C_a(-0.1); }) == "nbc.distance.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return C_a(bad); }) == "nbc.distance.range");
        CHECK(code_of([=] { return nbc::accumulation_4_1_6_5({.peak = bad, .length = 6_m}, 0_m); }) ==
              "nbc.peak.range");
        CHECK(code_of([=] { return nbc::accumulation_4_1_6_5({.peak = 2, .length = from_m(bad)}, 0_m); }) ==
              "nbc.drift_length.range");
    }
}

TEST_CASE("nbc 4.1.6.5: a step of nonsense") {
    const auto code = [](auto change) {
        nbc::Step step = boathouse();
        change(step);
        return code_of([&] { return nbc::step_drift_4_1_6_5(step); });
    };
    std::vector<double> bad(not_finite.begin(), not_finite.end());
    bad.push_back(-1.0);
    for (const double v : bad) {
        CHECK(code([=](nbc::Step& s) { s.ground_snow = from_kPa(v); }) == "nbc.ground_snow.range");
        CHECK(code([=](nbc::Step& s) { s.unit_weight = from_kN_per_m3(v); }) == "nbc.unit_weight.range");
        CHECK(code([=](nbc::Step& s) { s.height = from_m(v); }) == "nbc.height.range");
        CHECK(code([=](nbc::Step& s) { s.basic = v; }) == "nbc.basic.range");
        CHECK(code([=](nbc::Step& s) { s.source_length = from_m(v); }) == "nbc.characteristic_length.range");
        CHECK(code([=](nbc::Step& s) { s.parapet = from_m(v); }) == "nbc.parapet.range");
        CHECK(code([=](nbc::Step& s) { s.source_wind = v; }) == "nbc.wind.range");
    }
    CHECK(code([](nbc::Step& s) { s.ground_snow = 0_kPa; }) == "nbc.ground_snow.range");
    CHECK(code([](nbc::Step& s) { s.unit_weight = 10.1_kN_per_m3; }) == "nbc.unit_weight.range");
    CHECK(code([](nbc::Step& s) { s.unit_weight = 0.99_kN_per_m3; }) == "nbc.unit_weight.range");
    CHECK(code([](nbc::Step& s) { s.unit_weight = 10_kN_per_m3; }) == "none");
    CHECK(code([](nbc::Step& s) { s.unit_weight = 1_kN_per_m3; }) == "none");
    // the least snow and the largest sizes still give a number
    nbc::Step far = boathouse();
    far.ground_snow = from_kPa(1e-12);
    far.height = from_m(1e15);
    far.source_length = from_m(1e15);
    far.source_wind = 0.5;
    const nbc::Drift drift = nbc::step_drift_4_1_6_5(far).drift;
    CHECK(std::isfinite(drift.peak));
    CHECK(std::isfinite(nbc::accumulation_4_1_6_5(drift, 1_m)));
}

TEST_CASE("nbc 4.1.6.6: a higher building across a gap") {
    const nbc::Drift drift{.peak = 3.0, .length = 6_m};
    for (const double gap : {0.0, 1.0, 5.0}) {
        for (const double x : {0.0, 1.5, 6.0, 9.0}) {
            CHECK(nbc::adjacent_accumulation_4_1_6_6(drift, from_m(gap), from_m(x)) ==
                  nbc::accumulation_4_1_6_5(drift, from_m(x)));
        }
    }
    // from memory: 5 m
    CHECK(nbc::adjacent_accumulation_4_1_6_6(drift, 5.001_m, 0_m) == 1.0);
    CHECK(nbc::adjacent_accumulation_4_1_6_6(drift, 100_m, 0_m) == 1.0);
    for (const double bad : {-0.1, not_finite[0], not_finite[1], not_finite[2]}) {
        CHECK(code_of([=] { return nbc::adjacent_accumulation_4_1_6_6({}, from_m(bad), 0_m); }) == "nbc.gap.range");
        CHECK(code_of([=] { return nbc::adjacent_accumulation_4_1_6_6({}, 9_m, from_m(bad)); }) ==
              "nbc.distance.range");
    }
}

TEST_CASE("nbc 4.1.6.7: projections") {
    const auto drift = [](Length height, Length longest) {
        return nbc::projection_drift_4_1_6_7(1.8_kPa, 2.974_kN_per_m3, height, longest, 0.8);
    };
    // by hand: min(0.67 x 2.974 x 1.2/1.44, 2.974 x 4/10.8 + 1) = min(1.660483, 2.101481); min(4.02, 2.6667)
    CHECK(close(drift(1.2_m, 4_m).peak, 1.660483333, 1e-9));
    CHECK(close(in_m(drift(1.2_m, 4_m).length), 8.0 / 3.0, 1e-12));
    // tall and short: 2.974 x 1/10.8 + 1 = 1.275370; wide: 3.35 x 1.2
    CHECK(close(drift(9_m, 1_m).peak, 1.275370370, 1e-9));
    CHECK(close(in_m(drift(1.2_m, 40_m).length), 4.02, 1e-12));
    CHECK(drift(0.5_m, 8_m).peak == 1.0);  // lower than the snow beside it
    CHECK(drift(0_m, 0_m).peak == 1.0);
    CHECK(in_m(drift(0_m, 0_m).length) == 0.0);

    CHECK_FALSE(nbc::projection_counts_4_1_6_7(3_m));
    CHECK(nbc::projection_counts_4_1_6_7(3.001_m));

    double by_height = 0.0, by_length = 0.0;
    for (double v = 0.0; v < 10.0; v += 0.1) {
        CHECK(drift(from_m(v), 4_m).peak >= by_height);
        CHECK(drift(2_m, from_m(v)).peak >= by_length);
        by_height = drift(from_m(v), 4_m).peak;
        by_length = drift(2_m, from_m(v)).peak;
    }
    for (const double bad : {-1.0, not_finite[0], not_finite[1], not_finite[2]}) {
        CHECK(code_of([&] { return drift(from_m(bad), 4_m); }) == "nbc.height.range");
        CHECK(code_of([&] { return drift(1_m, from_m(bad)); }) == "nbc.projection.range");
        CHECK(code_of([=] { return nbc::projection_counts_4_1_6_7(from_m(bad)); }) == "nbc.projection.range");
        CHECK(code_of([=] { return nbc::projection_drift_4_1_6_7(from_kPa(bad), 3_kN_per_m3, 1_m, 4_m, 0.8); }) ==
              "nbc.ground_snow.range");
        CHECK(code_of([=] { return nbc::projection_drift_4_1_6_7(1_kPa, from_kN_per_m3(bad), 1_m, 4_m, 0.8); }) ==
              "nbc.unit_weight.range");
        CHECK(code_of([=] { return nbc::projection_drift_4_1_6_7(1_kPa, 3_kN_per_m3, 1_m, 4_m, bad); }) ==
              "nbc.basic.range");
    }
}

TEST_CASE("nbc 4.1.6.11: sliding snow") {
    // by hand: half of 1.44 kPa on 6 m
    CHECK(close(in_kN_per_m(nbc::sliding_total_4_1_6_11(1.44_kPa, 6_m)), 4.32, 1e-12));
    CHECK(close(in_plf(nbc::sliding_total_4_1_6_11(30_psf, 20_ft)), 300.0, 1e-12));
    CHECK(in_kN_per_m(nbc::sliding_total_4_1_6_11(0_kPa, 6_m)) == 0.0);
    CHECK(in_kN_per_m(nbc::sliding_total_4_1_6_11(1_kPa, 0_m)) == 0.0);
    for (const double bad : {-1.0, not_finite[0], not_finite[1], not_finite[2]}) {
        CHECK(code_of([=] { return nbc::sliding_total_4_1_6_11(from_kPa(bad), 6_m); }) == "nbc.upper_load.range");
        CHECK(code_of([=] { return nbc::sliding_total_4_1_6_11(1_kPa, from_m(bad)); }) == "nbc.run.range");
    }
}
