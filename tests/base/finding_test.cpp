// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/base/finding.hpp"

#include <array>
#include <limits>
#include <vector>

#include <doctest/doctest.h>

using namespace coverframe;

namespace {

Finding finding(Verdict verdict, std::optional<double> utilisation, std::string part = "ridge") {
    Finding f;
    f.check = "ridge.bending";
    f.part = std::move(part);
    f.utilisation = utilisation;
    f.verdict = verdict;
    return f;
}

// From the least to the worst, each strictly worse than the one before.
std::vector<Finding> in_rising_order() {
    return {finding(Verdict::not_applicable, std::nullopt),
            finding(Verdict::satisfied, std::nullopt),
            finding(Verdict::satisfied, 0.2),
            finding(Verdict::satisfied, 0.99),
            finding(Verdict::exceeded, 1.01),
            finding(Verdict::exceeded, 7.0),
            finding(Verdict::exceeded, std::nullopt)};
}

}  // namespace

TEST_CASE("text_of: document and number, or the document alone") {
    CHECK(text_of(Clause{"ASCE 7-22", "7.4"}) == "ASCE 7-22, 7.4");
    CHECK(text_of(Clause{"common practice, no source", ""}) == "common practice, no source");
}

TEST_CASE("name_of: every verdict has its word") {
    CHECK(std::string(name_of(Verdict::satisfied)) == "satisfied");
    CHECK(std::string(name_of(Verdict::exceeded)) == "exceeded");
    CHECK(std::string(name_of(Verdict::not_applicable)) == "not applicable");
}

TEST_CASE("worse: verdict first, then utilisation, an exceeded finding without capacity worst") {
    const std::vector<Finding> findings = in_rising_order();
    for (std::size_t i = 0; i < findings.size(); ++i) {
        for (std::size_t j = 0; j < findings.size(); ++j) {
            CAPTURE(i);
            CAPTURE(j);
            CHECK(worse(findings[i], findings[j]) == (i > j));
        }
    }
}

TEST_CASE("worse: an exceeded interaction sum of 0.4 still beats a satisfied 0.9") {
    CHECK(worse(finding(Verdict::exceeded, 0.4), finding(Verdict::satisfied, 0.9)));
}

TEST_CASE("worse: port and starboard that differ by rounding are equal, by more they are not") {
    CHECK_FALSE(worse(finding(Verdict::exceeded, 1.32170001), finding(Verdict::exceeded, 1.3217)));
    CHECK_FALSE(worse(finding(Verdict::exceeded, 1.3217), finding(Verdict::exceeded, 1.32170001)));
    CHECK(worse(finding(Verdict::exceeded, 1.3219), finding(Verdict::exceeded, 1.3217)));
    const std::array equals{finding(Verdict::satisfied, 0.5, "port"),
                            finding(Verdict::satisfied, 0.500001, "starboard")};
    CHECK(governing(equals) == &equals[0]);
}

TEST_CASE("governing: the worst one, wherever it stands, and the first of equals") {
    const std::vector<Finding> rising = in_rising_order();
    CHECK(governing(rising) == &rising.back());
    const std::vector<Finding> falling(rising.rbegin(), rising.rend());
    CHECK(governing(falling) == &falling.front());
    const std::array equals{finding(Verdict::satisfied, 0.5, "U1"), finding(Verdict::satisfied, 0.5, "U2")};
    CHECK(governing(equals) == &equals[0]);
}

TEST_CASE("governing: nothing in, nothing out") { CHECK(governing({}) == nullptr); }

TEST_CASE("governing: a utilisation that is no number cannot hide behind a number") {
    const double none = std::numeric_limits<double>::quiet_NaN();
    const std::array findings{finding(Verdict::exceeded, none), finding(Verdict::exceeded, 3.0)};
    CHECK(governing(findings) == &findings[0]);
    CHECK_FALSE(worse(findings[0], findings[0]));
}
