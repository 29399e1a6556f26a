// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7_partial.hpp"

#include <set>
#include <string>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::asce7;

namespace {

/// "FHHH": full on the first of four spans, half on the others.
std::string pattern_text(int spans, int pattern) {
    std::string text;
    for (int span = 1; span <= spans; ++span) text += partial_factor_7_5(spans, pattern, span) == 1.0 ? 'F' : 'H';
    return text;
}

std::set<std::string> all_patterns(int spans) {
    std::set<std::string> all;
    for (int pattern = 1; pattern <= partial_patterns_7_5(spans); ++pattern) all.insert(pattern_text(spans, pattern));
    return all;
}

}  // namespace

TEST_CASE("asce7 7.5: members that need partial loading") {
    CHECK(partial_loading_applies_7_5(MemberRun::other, 20_deg));
    CHECK(partial_loading_applies_7_5(MemberRun::other, 0_deg));
    CHECK(partial_loading_applies_7_5(MemberRun::eave_to_ridge, 2.379_deg));
    CHECK_FALSE(partial_loading_applies_7_5(MemberRun::eave_to_ridge, 2.38_deg));
    CHECK_FALSE(partial_loading_applies_7_5(MemberRun::eave_to_ridge, 90_deg));
}

TEST_CASE("asce7 7.5: the loadings of a continuous member") {
    // ASCE 7, Fig. 7.5-1, from memory
    CHECK(all_patterns(2) == std::set<std::string>{"FH", "HF", "FF"});
    CHECK(all_patterns(3) == std::set<std::string>{"FHH", "HHF", "HFF", "FFH"});
    CHECK(all_patterns(4) == std::set<std::string>{"FHHH", "HHHF", "HFFF", "FFFH", "FFHH", "HFFH", "HHFF"});
    CHECK(pattern_text(4, 1) == "FHHH");
    CHECK(pattern_text(4, 2) == "HHHF");
    CHECK(pattern_text(4, 3) == "HFFF");
    CHECK(pattern_text(4, 4) == "FFFH");
    CHECK(pattern_text(4, 5) == "FFHH");
    CHECK(pattern_text(4, 7) == "HHFF");
}

TEST_CASE("asce7 7.5: n + 3 loadings, as many to port as to starboard") {
    for (int spans = 2; spans <= 12; ++spans) {
        CAPTURE(spans);
        CHECK(partial_patterns_7_5(spans) == spans + 3);
        const std::set<std::string> all = all_patterns(spans);
        for (const std::string& pattern : all) CHECK(all.contains({pattern.rbegin(), pattern.rend()}));
        if (spans > 3) CHECK(static_cast<int>(all.size()) == spans + 3);
    }
}

TEST_CASE("asce7 7.5: arguments out of range") {
    CHECK(code_of([] { return partial_loading_applies_7_5(MemberRun::other, 91_deg); }) == "asce7.slope.range");
    CHECK(code_of([] { return partial_patterns_7_5(1); }) == "asce7.spans.range");
    CHECK(code_of([] { return partial_patterns_7_5(1001); }) == "asce7.spans.range");
    CHECK(code_of([] { return partial_factor_7_5(1, 1, 1); }) == "asce7.spans.range");
    CHECK(code_of([] { return partial_factor_7_5(4, 0, 1); }) == "asce7.pattern.range");
    CHECK(code_of([] { return partial_factor_7_5(4, 8, 1); }) == "asce7.pattern.range");
    CHECK(code_of([] { return partial_factor_7_5(4, 7, 4); }) == "none");
    CHECK(code_of([] { return partial_factor_7_5(4, 1, 0); }) == "asce7.span.range");
    CHECK(code_of([] { return partial_factor_7_5(4, 1, 5); }) == "asce7.span.range");
    for (const double bad : not_finite) {
        CHECK(code_of([&] { return partial_loading_applies_7_5(MemberRun::other, from_deg(bad)); }) ==
              "asce7.slope.range");
    }
}
