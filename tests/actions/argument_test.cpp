// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/argument.hpp"

#include <string>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {
constexpr argument::Name width{"test.width.range", "width", "m"};
}

TEST_CASE("argument: a value inside its range comes back as it is") {
    CHECK(argument::within(0.3, 0.1, 0.5, width) == 0.3);
    CHECK(argument::positive(1e-12, width) == 1e-12);
    CHECK(argument::positive(1e15, width) == 1e15);
    CHECK(argument::not_negative(0.0, width) == 0.0);
    CHECK(close(argument::slope_in_deg(30_deg, "test.slope"), 30.0, 1e-15));
}

TEST_CASE("argument: both ends of a range belong to it") {
    CHECK(argument::within(0.1, 0.1, 0.5, width) == 0.1);
    CHECK(argument::within(0.5, 0.1, 0.5, width) == 0.5);
    CHECK(code_of([] { return argument::within(0.0999, 0.1, 0.5, width); }) == "test.width.range");
    CHECK(code_of([] { return argument::within(0.5001, 0.1, 0.5, width); }) == "test.width.range");
    CHECK(close(argument::slope_in_deg(0_deg, "test.slope"), 0.0, 0));
    CHECK(close(argument::slope_in_deg(90_deg, "test.slope"), 90.0, 1e-15));
    CHECK(close(argument::slope_in_deg(from_rad(1.5707963267948966), "test.slope"), 90.0, 1e-15));
}

TEST_CASE("argument: out of range") {
    CHECK(code_of([] { return argument::positive(0.0, width); }) == "test.width.range");
    CHECK(code_of([] { return argument::positive(-1.0, width); }) == "test.width.range");
    CHECK(code_of([] { return argument::positive(1e16, width); }) == "test.width.range");
    CHECK(code_of([] { return argument::not_negative(-1e-300, width); }) == "test.width.range");
    CHECK(code_of([] { return argument::slope_in_deg(90.0001_deg, "test.slope"); }) == "test.slope");
    CHECK(code_of([] { return argument::slope_in_deg(from_deg(-0.0001), "test.slope"); }) == "test.slope");
    for (const double bad : not_finite) {
        CAPTURE(bad);
        CHECK(code_of([&] { return argument::within(bad, 0.1, 0.5, width); }) == "test.width.range");
        CHECK(code_of([&] { return argument::positive(bad, width); }) == "test.width.range");
        CHECK(code_of([&] { return argument::not_negative(bad, width); }) == "test.width.range");
        CHECK(code_of([&] { return argument::slope_in_deg(from_deg(bad), "test.slope"); }) == "test.slope");
    }
}

TEST_CASE("argument: the error carries the value with its unit") {
    const auto problem_of = [](double value, const argument::Name& name) {
        try {
            argument::refuse(name, value, 0.0, 90.0);
        } catch (const InputError& error) {
            return error.problems().front();
        }
    };
    CHECK(problem_of(120.0, {"test.slope", "slope", "deg"}).value == "120 deg");
    CHECK(problem_of(-0.25, {"test.factor", "factor", "-"}).value == "-0.25");
    CHECK(problem_of(120.0, {"test.slope", "slope", "deg"}).where.empty());
    const std::string advice = problem_of(120.0, {"test.slope", "slope", "deg"}).advice;
    CHECK(advice.find("slope") != std::string::npos);
    CHECK(advice.find("120 deg") != std::string::npos);
    CHECK(advice.find("90 deg") != std::string::npos);
}
