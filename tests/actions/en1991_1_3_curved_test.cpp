// SPDX-License-Identifier: BSD-3-Clause
// No published number of a cylinder was found: values here are the text as remembered, worked by hand, and geometry.
#include "coverframe/actions/en1991_1_3_curved.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::en1991_1_3;

namespace {

constexpr Cylinder arc{.span = from_m(4.0), .loaded_width = from_m(3.0), .coefficient = 1.6};

double drifted(double x) { return cylinder_drifted_at_5_3_5(arc, from_m(x)); }
double undrifted(double x) { return cylinder_undrifted_at_5_3_5(arc, from_m(x)); }

}  // namespace

TEST_CASE("en1991_1_3 5.3.5: coefficient of a cylinder") {
    const auto mu = [](double rise, double span) { return cylinder_coefficient_5_3_5(from_m(rise), from_m(span)); };
    CHECK(mu(0.0, 5.0) == 0.2);
    CHECK(close(mu(0.5, 5.0), 1.2, 1e-12));  // by hand
    CHECK(close_abs(mu(0.9 - 1e-9, 5.0), 2.0, 1e-8));  // continuous at h/b = 0.18
    CHECK(close(mu(0.9, 5.0), 2.0, 1e-12));
    CHECK(mu(5.0, 5.0) == 2.0);
    double before = 0.0;
    for (double rise = 0.0; rise <= 5.0; rise += 0.05) {
        CHECK(mu(rise, 5.0) >= before);
        before = mu(rise, 5.0);
        CHECK(close(mu(1e-2 * rise, 5e-2), mu(rise, 5.0), 1e-12));  // shape alone counts
    }
    CHECK(close(cylinder_coefficient_5_3_5(2_ft, 20_ft), 1.2, 1e-12));
    CHECK(code_of([&] { return mu(5.1, 5.0); }) == "en1991_1_3.rise.range");
    CHECK(code_of([&] { return mu(-0.1, 5.0); }) == "en1991_1_3.rise.range");
    CHECK(code_of([&] { return mu(1.0, 0.0); }) == "en1991_1_3.span.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return mu(bad, 5.0); }) == "en1991_1_3.rise.range");
        CHECK(code_of([&] { return mu(1.0, bad); }) == "en1991_1_3.span.range");
    }
}

TEST_CASE("en1991_1_3 5.3.5: loaded width of a circular arc") {
    const auto width = [](double rise, double span) { return in_m(loaded_width_5_3_5(from_m(rise), from_m(span))); };
    CHECK(width(0.0, 4.0) == 4.0);
    CHECK(width(1.0, 4.0) == 4.0);
    // an arc whose end stands at 60 deg has h = b tan(30 deg)/2
    CHECK(close(width(2.0 * std::tan(in_rad(from_deg(30.0))), 4.0), 4.0, 1e-12));
    CHECK(close(width(1.155, 4.0), 4.0, 1e-3));  // continuous just above
    // a semicircle of radius 2 m: 2 x 2 sin(60 deg)
    CHECK(close(width(2.0, 4.0), 4.0 * std::sqrt(0.75), 1e-12));
    // the tangent at the end of the loaded width is 60 deg, by the radius found another way
    for (const double rise : {1.2, 1.4, 1.6, 1.8, 2.0}) {
        const double half_angle = 2.0 * std::atan(rise / 2.0);  // of the arc: tan(half/2) = h/(b/2)
        const double radius = 2.0 / std::sin(half_angle);
        CHECK(close(std::asin(0.5 * width(rise, 4.0) / radius), in_rad(from_deg(60.0)), 1e-9));
    }
    double before = 4.0;
    for (double rise = 0.0; rise <= 2.0; rise += 0.02) {
        CHECK(width(rise, 4.0) <= before);
        before = width(rise, 4.0);
    }
    CHECK(code_of([&] { return width(2.01, 4.0); }) == "en1991_1_3.rise.range");
    CHECK(code_of([&] { return width(1.0, -4.0); }) == "en1991_1_3.span.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return width(bad, 4.0); }) == "en1991_1_3.rise.range");
        CHECK(code_of([&] { return width(1.0, bad); }) == "en1991_1_3.span.range");
    }
}

TEST_CASE("en1991_1_3 5.3.5: undrifted arrangement") {
    CHECK(undrifted(0.0) == 0.0);
    CHECK(undrifted(0.49) == 0.0);
    CHECK(undrifted(0.5) == 0.8);
    CHECK(undrifted(2.0) == 0.8);
    CHECK(undrifted(3.5) == 0.8);
    CHECK(undrifted(3.51) == 0.0);
    CHECK(undrifted(4.0) == 0.0);
}

TEST_CASE("en1991_1_3 5.3.5: drifted arrangement") {
    CHECK(drifted(0.0) == 0.0);
    CHECK(drifted(0.5) == 0.0);
    CHECK(close(drifted(1.25), 0.8, 1e-12));  // peak of the lighter half, a quarter of l_s from the crown
    CHECK(drifted(2.0) == 0.0);               // the crown is bare
    CHECK(close(drifted(2.75), 1.6, 1e-12));  // peak of the heavier half
    CHECK(drifted(3.5) == 0.0);
    CHECK(drifted(4.0) == 0.0);
    CHECK(close(drifted(0.875), 0.4, 1e-12));
    CHECK(close(drifted(3.125), 0.8, 1e-12));
    // the heavier half is twice the lighter one, and each triangle holds peak times l_s/4
    double left = 0.0;
    double right = 0.0;
    constexpr int pieces = 4000;
    for (int i = 0; i < pieces; ++i) {
        const double x = 4.0 * (i + 0.5) / pieces;
        (x < 2.0 ? left : right) += drifted(x) * 4.0 / pieces;
        CHECK(close_abs(drifted(x + 1e-9), drifted(x), 1e-6));  // continuous
        CHECK(drifted(x) <= arc.coefficient);
    }
    CHECK(close(right, 1.6 * 3.0 / 4.0, 1e-5));
    CHECK(close(left, 0.5 * right, 1e-5));
}

TEST_CASE("en1991_1_3 5.3.5: arguments out of range") {
    const auto code = [](Cylinder cylinder, double x) {
        return code_of([&] { return cylinder_drifted_at_5_3_5(cylinder, from_m(x)); });
    };
    CHECK(code(arc, 1.0) == "none");
    CHECK(code(arc, -0.1) == "en1991_1_3.distance.range");
    CHECK(code(arc, 4.1) == "en1991_1_3.distance.range");
    CHECK(code({0_m, 3_m, 1.6}, 1.0) == "en1991_1_3.span.range");
    CHECK(code({4_m, 4.1_m, 1.6}, 1.0) == "en1991_1_3.loaded_width.range");
    CHECK(code({4_m, 0_m, 1.6}, 1.0) == "en1991_1_3.loaded_width.range");
    CHECK(code({4_m, 3_m, 2.1}, 1.0) == "en1991_1_3.cylinder_coefficient.range");
    CHECK(code({4_m, 3_m, 0.1}, 1.0) == "en1991_1_3.cylinder_coefficient.range");
    CHECK(code_of([] { return cylinder_undrifted_at_5_3_5(arc, 4.1_m); }) == "en1991_1_3.distance.range");
    for (const double bad : not_finite) {
        CHECK(code(arc, bad) == "en1991_1_3.distance.range");
        CHECK(code({from_m(bad), 3_m, 1.6}, 1.0) == "en1991_1_3.span.range");
        CHECK(code({4_m, from_m(bad), 1.6}, 1.0) == "en1991_1_3.loaded_width.range");
        CHECK(code({4_m, 3_m, bad}, 1.0) == "en1991_1_3.cylinder_coefficient.range");
    }
}
