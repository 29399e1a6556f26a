// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/depth_relation.hpp"

#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {

using Relation = Pressure (*)(Length);
const std::vector<Relation> relations{depth_relation::tobiasson_greatorex_1996, depth_relation::sack_sheikh_taheri_1986,
                                      depth_relation::schmidlin_1992};

}  // namespace

TEST_CASE("depth_relation: by hand at four depths") {
    // Formulas from memory (the first sure), the third from an abstract that was read; worked out with a calculator.
    // 0.279 h^1.36: 12^1.36 = 29.357, 20^1.36 = 58.806, 30^1.36 = 102.07, 48^1.36 = 193.43
    const std::vector<double> depths{12.0, 20.0, 30.0, 48.0};
    const std::vector<std::vector<double>> expected{
        {8.2, 16.4, 28.5, 54.0}, {10.8, 18.0, 38.9, 81.4}, {9.4, 15.6, 23.4, 37.5}};
    for (std::size_t r = 0; r < relations.size(); ++r) {
        for (std::size_t d = 0; d < depths.size(); ++d) {
            CAPTURE(r);
            CAPTURE(depths[d]);
            CHECK(close_abs(in_psf(relations[r](from_in(depths[d]))), expected[r][d], 0.05));
        }
    }
    CHECK(close(in_psf(depth_relation::tobiasson_greatorex_1996(1_in)), 0.279, 1e-12));
    // Schmidlin et al. 1992, abstract, read on a page: 0.15 g/cm3; 0.78 psf an inch
    CHECK(close_abs(in_psf(depth_relation::schmidlin_1992(1_in)), 0.78, 0.005));
    CHECK(close(in_kPa(depth_relation::schmidlin_1992(1_m)), 0.15 * 9.80665, 2e-4));
}

TEST_CASE("depth_relation: the two lines of the Rocky Mountains do not meet") {
    const auto load = [](double h) { return in_psf(depth_relation::sack_sheikh_taheri_1986(from_in(h))); };
    CHECK(close(load(22.0), 19.8, 1e-12));
    CHECK(close_abs(load(22.0 + 1e-9), 2.36 * 22.0 - 31.9, 1e-6));
}

TEST_CASE("depth_relation: deeper is never lighter, nothing weighs nothing, nonsense is refused") {
    for (const Relation relation : relations) {
        CHECK(in_psf(relation(0_m)) == 0.0);
        double before = 0.0;
        for (double d = 0.0; d <= 10.0; d += 0.02) {
            const double now = in_psf(relation(from_m(d)));
            CHECK(now >= before);
            before = now;
        }
        for (const double bad : {-0.1, 10.1, not_finite[0], not_finite[1], not_finite[2]}) {
            CHECK(code_of([=] { return relation(from_m(bad)); }) == "depth_relation.depth.range");
        }
        CHECK(close(relation(0.508_m), relation(20_in), 1e-12));
    }
}

TEST_CASE("asce7_commentary C7: other return periods") {
    // from memory, sure: 1.82, 1.20, 1.15, 0.82, and the other way round 0.55, 0.83, 0.87, 1.22
    using asce7_commentary::to_50_years_C7;
    CHECK(to_50_years_C7(10) == 1.82);
    CHECK(to_50_years_C7(25) == 1.20);
    CHECK(to_50_years_C7(30) == 1.15);
    CHECK(to_50_years_C7(50) == 1.0);
    CHECK(to_50_years_C7(100) == 0.82);
    CHECK(close_abs(1.0 / to_50_years_C7(10), 0.55, 0.005));
    CHECK(close_abs(1.0 / to_50_years_C7(25), 0.83, 0.005));
    CHECK(close_abs(1.0 / to_50_years_C7(30), 0.87, 0.005));
    CHECK(close_abs(1.0 / to_50_years_C7(100), 1.22, 0.005));
    for (const double bad : {0.0, 2.0, 10.5, 20.0, 49.0, 200.0, -50.0, not_finite[0], not_finite[1]}) {
        CHECK(code_of([=] { return to_50_years_C7(bad); }) == "asce7_commentary.return_period.range");
    }
}
