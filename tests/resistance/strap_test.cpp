// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/resistance/strap.hpp"

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using strap::Strength;

namespace {
// A 19 mm woven cord strap as the trade speaks of it; common practice, no source.
constexpr Strength usual{.break_strength = 9_kN, .buckle_efficiency = 0.75, .ageing = 0.9, .working_share = 1.0 / 3.0};
}  // namespace

TEST_CASE("strap: design strength of one run") {
    // by hand: 9 kN x 0.75 x 0.9/3 = 2.025 kN
    CHECK(close(in_kN(strap::design_strength(usual)), 2.025, 1e-12));
    CHECK(close(strap::design_strength({9_kN, 1.0, 1.0, 1.0}), 9_kN, 1e-15));
    // 1 lbf = 4.4482216152605 N (NIST SP 811, from memory)
    CHECK(close(strap::design_strength({2000_lbf, 0.75, 0.9, 0.3}),
                strap::design_strength({from_N(2000 * 4.4482216152605), 0.75, 0.9, 0.3}), 1e-12));
}

TEST_CASE("strap: every share counts in proportion") {
    const auto changed = [](auto change) {
        Strength s = usual;
        change(s);
        return strap::design_strength(s) / strap::design_strength(usual);
    };
    CHECK(close(changed([](Strength& s) { s.break_strength = 4.5_kN; }), 0.5, 1e-12));
    CHECK(close(changed([](Strength& s) { s.buckle_efficiency /= 3; }), 1.0 / 3, 1e-12));
    CHECK(close(changed([](Strength& s) { s.ageing /= 3; }), 1.0 / 3, 1e-12));
    CHECK(close(changed([](Strength& s) { s.working_share /= 3; }), 1.0 / 3, 1e-12));
}

TEST_CASE("strap: a share that nobody gave, or that is no share, is refused") {
    const auto code = [](auto change) {
        Strength s = usual;
        change(s);
        return code_of([&] { return strap::design_strength(s); });
    };
    CHECK(code([](Strength&) {}) == "none");
    CHECK(code_of([] { return strap::design_strength({}); }) == "strap.break_strength.range");
    for (const double bad : {0.0, -0.1, 1.01}) {
        CHECK(code([&](Strength& s) { s.buckle_efficiency = bad; }) == "strap.buckle_efficiency.range");
        CHECK(code([&](Strength& s) { s.ageing = bad; }) == "strap.ageing.range");
        CHECK(code([&](Strength& s) { s.working_share = bad; }) == "strap.working_share.range");
    }
    for (const double bad : not_finite) {
        CHECK(code([&](Strength& s) { s.break_strength = from_N(bad); }) == "strap.break_strength.range");
        CHECK(code([&](Strength& s) { s.buckle_efficiency = bad; }) == "strap.buckle_efficiency.range");
        CHECK(code([&](Strength& s) { s.ageing = bad; }) == "strap.ageing.range");
        CHECK(code([&](Strength& s) { s.working_share = bad; }) == "strap.working_share.range");
    }
    CHECK(strap::clause_strength.document == "common practice, no source");
}
