// SPDX-License-Identifier: BSD-3-Clause
// Every entry of EN 1991-1-3 roofs, called by name with arguments that are all different, against numbers worked by
// hand: an entry that mixes up two arguments or two results is found.
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "coverframe/actions/rule.hpp"

using namespace coverframe;

namespace {

struct Row {
    std::string rule;
    std::vector<double> arguments;
    std::vector<double> results;
};

const std::vector<Row>& rows() {
    // sliding: 0 free, 1 prevented; lower roof: 0 general, 1 canopy, 2 alpine
    static const std::vector<Row> all{
        {"en1991_1_3.exceptional_ground_load", {0.65, 2.3}, {1.495}},
        {"en1991_1_3.design_situations", {3, 1}, {1, 0, 1, 0, 1}},
        {"en1991_1_3.design_situations", {1, 0}, {1, 1, 1, 1, 0}},
        {"en1991_1_3.exposure_coefficient", {2}, {1.2}},
        {"en1991_1_3.roof_load", {2.0, 0.8, 1.2, 1.1}, {2.112}},
        {"en1991_1_3.exceptional_fall_load", {2.0, 0.8, 1.2, 1.1}, {2.112}},
        {"en1991_1_3.exceptional_drift_load", {0.65, 4.0}, {2.6}},
        {"en1991_1_3.shape_coefficient", {45, 0}, {0.4}},
        {"en1991_1_3.raised_shape_coefficient", {45, 0, 1.0}, {0.5}},
        {"en1991_1_3.raised_shape_coefficient", {45, 1, 1.1}, {1.1}},
        {"en1991_1_3.monopitch", {45, 1}, {0.8}},
        {"en1991_1_3.duopitch", {45, 0, 37.5, 1}, {0.4, 0.8, 0.2, 0.4}},
        {"en1991_1_3.duopitch", {45, 1, 37.5, 0}, {0.8, 0.6, 0.4, 0.3}},
        {"en1991_1_3.valley_coefficient", {15}, {1.2}},
        {"en1991_1_3.multi_span", {45, 0, 5, 1}, {0.4, 0.8, 25, 0.8 + 0.8 * 25 / 30}},
        {"en1991_1_3.cylinder_coefficient", {0.5, 5}, {1.2}},
        {"en1991_1_3.loaded_width", {1, 5}, {5}},
        {"en1991_1_3.cylinder_undrifted_at", {4, 3, 0.6}, {0.8}},
        {"en1991_1_3.cylinder_undrifted_at", {4, 3, 0.4}, {0}},
        {"en1991_1_3.cylinder_drifted_at", {4, 3, 1.6, 2.75}, {1.6}},
        {"en1991_1_3.cylinder_drifted_at", {4, 3, 1.6, 1.25}, {0.8}},
        {"en1991_1_3.drift_length", {4.25}, {8.5}},
        {"en1991_1_3.wind_drift", {8, 3, 2.5, 4.0}, {2.2, 1.25, 1.25}},
        {"en1991_1_3.sliding_drift", {20, 6, 5, 0.8}, {0.96}},
        {"en1991_1_3.drift_coefficient_at", {2.8, 5, 2.5}, {1.8}},
        {"en1991_1_3.taller_works", {1.5, 8, 3, 2.5, 25, 4, 0.5}, {5, 0.4, 2.2, 5.0 / 1.5, 2.2, 2.6, 1.52}},
        {"en1991_1_3.projection_drift", {3.5, 4.0}, {7, 1.75, 1.75}},
        {"en1991_1_3.overhang_applies", {800}, {0}},
        {"en1991_1_3.overhang_applies", {801}, {1}},
        {"en1991_1_3.overhang_depth", {1.5}, {0.5}},
        {"en1991_1_3.overhang", {6, 2}, {1.5, 18}},
        {"en1991_1_3.guard_force", {1.2, 5, 30}, {3}},
        {"en1991_1_3.exceptional_valley_drift", {0.5, 1.5, 4, 7, 20}, {4, 7, 6, 40.0 / 11.0, 40.0 / 11.0}},
        {"en1991_1_3.all_valleys", {0.5, 36}, {18}},
        {"en1991_1_3.exceptional_parapet_drift", {0.5, 2, 8, 30}, {8, 8, 7.5, 7.5}},
        {"en1991_1_3.exceptional_abutting_drift", {0.5, 2, 8, 30, 22.5}, {8, 8, 7.5, 7.5, 3.75, 7.5}},
        {"en1991_1_3.obstruction_height", {3, 1.5}, {1.5}},
        {"en1991_1_3.exceptional_obstruction_drift", {0.5, 0.9, 3}, {3, 3.6, 3.6}},
        {"na_de.capped_valley", {1.6, 0.4, 0.3, 1.0}, {1.0}},
        {"na_de.drift_limits", {1, 1.0}, {0.8, 2.0}},
        {"na_de.wall_coefficient", {1.0, 12, 8, 5, 25, 3, 0}, {10, 0.24, 2.24}},
        {"na_de.wall_coefficient", {1.0, 12, 8, 5, 25, 3, 1}, {10, 0.24, 2.0}},
        {"na_uk.duopitch_drifted", {22.5, 0}, {1.0}},
        {"na_uk.duopitch_drifted", {52.5, 1}, {0.8}},
    };
    return all;
}

}  // namespace

TEST_CASE("en1991_1_3 catalogue: every entry gives the numbers worked by hand") {
    for (const Row& row : rows()) {
        CAPTURE(row.rule);
        const std::vector<double> found = evaluate(rule_named(row.rule), row.arguments);
        REQUIRE(found.size() == row.results.size());
        for (std::size_t k = 0; k < found.size(); ++k) {
            CAPTURE(k);
            CHECK(close_abs(found[k], row.results[k], 1e-12));
        }
    }
}

TEST_CASE("en1991_1_3 catalogue: what may be left out is the safe word") {
    for (const Row& row : rows()) {
        for (const RuleValue& value : rule_named(row.rule).arguments) {
            CAPTURE(row.rule);
            CAPTURE(value.keyword);
            if (value.keyword.find("sliding") != std::string::npos && value.measure == Measure::choice) {
                CHECK(value.otherwise == "prevented");
            } else {
                CHECK_FALSE(value.otherwise.has_value());
            }
        }
    }
}

TEST_CASE("en1991_1_3 catalogue: nonsense is refused in every place") {
    for (const Row& row : rows()) {
        const Rule& rule = rule_named(row.rule);
        for (std::size_t k = 0; k < row.arguments.size(); ++k) {
            const Measure measure = rule.arguments[k].measure;
            if (measure == Measure::truth) continue;
            CAPTURE(row.rule);
            CAPTURE(rule.arguments[k].keyword);
            for (const double bad : not_finite) {
                std::vector<double> arguments = row.arguments;
                arguments[k] = bad;
                CHECK(code_of([&] { return evaluate(rule, arguments); }) != "none");
            }
        }
    }
}
