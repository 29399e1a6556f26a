// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/ground.hpp"

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "coverframe/units/crossing.hpp"
#include "coverframe/units/literals.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {

GroundSnow ground_of(SnowDocument document) {
    GroundSnow ground;
    ground.load = 1.5_kPa;
    ground.document = document;
    ground.source = "invented";
    return ground;
}

}  // namespace

TEST_CASE("ground: a load goes into the rules of its own edition only") {
    CHECK(load_for(ground_of(SnowDocument::asce7_16), SnowDocument::asce7_16) == 1.5_kPa);
    for (const SnowDocument other : {SnowDocument::asce7_10, SnowDocument::asce7_22, SnowDocument::en1991_1_3}) {
        CHECK(code_of([&] { return load_for(ground_of(SnowDocument::asce7_16), other); }) == "ground.document.mixed");
    }
}

TEST_CASE("ground: the factor on snow belongs to the ground load") {
    // ASCE 7-22, 2.3.1: 1.0 (read on a page: Maguire et al., STRUCTURE magazine, Feb. 2022); ASCE 7-16: 1.6 (from
    // memory, sure); NBC: 1.5 (from memory, sure); EN 1990: 1.5, a national choice (read on a page)
    CHECK(close(factored(ground_of(SnowDocument::asce7_22), 1.0_kPa, 1.0), 1.0_kPa, 1e-15));
    CHECK(close(factored(ground_of(SnowDocument::asce7_16), 1.0_kPa, 1.6), 1.6_kPa, 1e-15));
    CHECK(close(factored(ground_of(SnowDocument::nbc2020), 1.0_kPa, 1.5), 1.5_kPa, 1e-15));
    CHECK(close(factored(ground_of(SnowDocument::en1991_1_3), 1.0_kPa, 1.35), 1.35_kPa, 1e-15));
    const auto refusal = [](SnowDocument document, double factor) {
        return code_of([&] { return factored(ground_of(document), 1.0_kPa, factor); });
    };
    CHECK(refusal(SnowDocument::asce7_22, 1.6) == "ground.factor.mixed");
    CHECK(refusal(SnowDocument::asce7_16, 1.0) == "ground.factor.mixed");
    CHECK(refusal(SnowDocument::asce7_10, 1.5) == "ground.factor.mixed");
    CHECK(refusal(SnowDocument::nbc2015, 1.6) == "ground.factor.mixed");
    CHECK(refusal(SnowDocument::en1991_1_3, 0.9) == "ground.factor.mixed");
    CHECK(refusal(SnowDocument::en1991_1_3, not_finite[0]) == "ground.factor.mixed");
}
