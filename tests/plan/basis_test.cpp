// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/plan/basis.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "coverframe/plan/validate.hpp"
#include "plan/plan_files.hpp"

using namespace coverframe;

namespace {

Expected found_in(const Plan& plan) { return codes_and_places(problems_of(plan)); }

constexpr const char* factor_of_snow = "/basis/combination/snow/value";

}  // namespace

TEST_CASE("choices of a snow basis: what the plan says, else the default and that the plan does not say") {
    SnowBasis basis;
    CHECK(gable_framing_of(basis) == Cited<GableFraming>{GableFraming::other, "the plan does not say"});
    CHECK(unbalanced_window_of(basis) == Cited<UnbalancedWindow>{UnbalancedWindow::carried_on, choice_left_open});
    CHECK(slid_snow_of(basis) == Cited<SlidSnow>{SlidSnow::caught, choice_left_open});
    basis.gable_framing = Cited<GableFraming>{GableFraming::simple_rafters, "a"};
    basis.unbalanced_window = Cited<UnbalancedWindow>{UnbalancedWindow::as_written, "b"};
    basis.slid_snow = Cited<SlidSnow>{SlidSnow::falls_clear, "c"};
    CHECK(gable_framing_of(basis) == basis.gable_framing);
    CHECK(unbalanced_window_of(basis) == basis.unbalanced_window);
    CHECK(slid_snow_of(basis) == basis.slid_snow);
}

TEST_CASE("choices of a snow basis: allowed by every document, with a source, and read back") {
    for (const SnowDocument document : snow_documents) {
        CAPTURE(name_of(document));
        for (int i = 0; i < 2; ++i) {
            Plan plan = plan_by(document);
            plan.basis.snow.gable_framing = Cited<GableFraming>{static_cast<GableFraming>(i), "a"};
            plan.basis.snow.unbalanced_window = Cited<UnbalancedWindow>{static_cast<UnbalancedWindow>(i), "b"};
            plan.basis.snow.slid_snow = Cited<SlidSnow>{static_cast<SlidSnow>(i), "c"};
            CHECK(found_in(plan) == Expected{});
            CHECK(read_plan(write_plan(plan)) == plan);
        }
    }
    Plan plan = plan_by(SnowDocument::asce7_16);
    plan.basis.snow.gable_framing = Cited<GableFraming>{static_cast<GableFraming>(2), "a"};
    plan.basis.snow.slid_snow = Cited<SlidSnow>{SlidSnow::caught, " "};
    CHECK(found_in(plan) == Expected{{"plan.choice", "/basis/snow/gable_framing/value"},
                                     {"plan.text.empty", "/basis/snow/slid_snow/source"}});
}

TEST_CASE("a plan by each document: what it demands is enough, and reads back") {
    for (const SnowDocument document : snow_documents) {
        CAPTURE(name_of(document));
        const Plan plan = plan_by(document);
        CHECK(found_in(plan) == Expected{});
        CHECK(read_plan(write_plan(plan)) == plan);
        CHECK(write_plan(read_plan(write_plan(plan))) == write_plan(plan));
    }
}

TEST_CASE("a plan by each document: what it demands and what it refuses") {
    for (const SnowDocument document : snow_documents) {
        CAPTURE(name_of(document));
        Plan without = plan_by(document);
        without.basis.snow.winter_wind.reset();
        without.basis.snow.importance_category.reset();
        Expected missing;
        if (document == SnowDocument::asce7_22) missing = {{"plan.key.missing", "/basis/snow/winter_wind"}};
        if (is_nbc(document)) missing = {{"plan.key.missing", "/basis/snow/importance_category"}};
        CHECK(found_in(without) == missing);

        Plan with = plan_by(document);
        with.basis.snow.winter_wind = Cited<double>{0.4, "x"};
        with.basis.snow.importance_category = Cited<ImportanceCategory>{ImportanceCategory::high, "x"};
        Expected unknown;
        if (document != SnowDocument::asce7_22) unknown.emplace_back("plan.key.unknown", "/basis/snow/winter_wind");
        if (!is_nbc(document)) unknown.emplace_back("plan.key.unknown", "/basis/snow/importance_category");
        CHECK(found_in(with) == unknown);
    }
}

TEST_CASE("importance category: four of them, and no fifth") {
    Plan plan = plan_by(SnowDocument::nbc2015);
    for (int i = 0; i < 4; ++i) {
        plan.basis.snow.importance_category->value = static_cast<ImportanceCategory>(i);
        CHECK(found_in(plan) == Expected{});
        CHECK(read_plan(write_plan(plan)) == plan);
    }
    plan.basis.snow.importance_category->value = static_cast<ImportanceCategory>(4);
    CHECK(found_in(plan) == Expected{{"plan.choice", "/basis/snow/importance_category/value"}});
}

TEST_CASE("NBC: no thermal factor, and a wind exposure factor that only lessens") {
    for (const SnowDocument document : {SnowDocument::nbc2015, SnowDocument::nbc2020}) {
        Plan plan = plan_by(document);
        for (const double thermal : {std::nextafter(1.0, 0.0), std::nextafter(1.0, 2.0), 1.2, 0.8}) {
            CAPTURE(thermal);
            plan.basis.snow.thermal_factor.value = thermal;
            const auto problems = problems_of(plan);
            CHECK(codes_and_places(problems) == Expected{{"plan.range", "/basis/snow/thermal_factor/value"}});
            CHECK(problems.at(0).advice.find("must be 1 (the NBC has no thermal factor") != std::string::npos);
        }
        plan.basis.snow.thermal_factor.value = 1;
        for (const double wind : {0.5, 0.75, 1.0}) {
            plan.basis.snow.exposure_factor.value = wind;
            CHECK(found_in(plan) == Expected{});
        }
        for (const double wind : {std::nextafter(0.5, 0.0), std::nextafter(1.0, 2.0)}) {
            plan.basis.snow.exposure_factor.value = wind;
            CHECK(found_in(plan) == Expected{{"plan.range", "/basis/snow/exposure_factor/value"}});
        }
    }
}

// Factors on snow as the leading action. ASCE 7-22, 2.3.1: 1.0, read on a page (Maguire et al., STRUCTURE magazine,
// Feb. 2022). ASCE 7-10, 2.3.2 and ASCE 7-16, 2.3.1: 1.6; NBC, table 4.1.3.2: 1.5; both from memory, sure. EN 1990,
// table A1.2(B): 1.5 recommended; other values by National Annex.
TEST_CASE("factor on snow: the one of the ground load's document, and no other") {
    const double factors[]{0.9, 0.95, std::nextafter(1.0, 0.0), 1.0, std::nextafter(1.0, 2.0), 1.2, 1.4,
                           std::nextafter(1.5, 0.0), 1.5, std::nextafter(1.5, 2.0), std::nextafter(1.6, 0.0), 1.6,
                           std::nextafter(1.6, 2.0), 1.7, 2.0};
    for (const SnowDocument document : snow_documents) {
        CAPTURE(name_of(document));
        for (const double factor : factors) {
            CAPTURE(factor);
            bool right = factor >= 1.0;  // EN 1991-1-3
            if (document == SnowDocument::asce7_22) right = factor == 1.0;
            if (document == SnowDocument::asce7_10 || document == SnowDocument::asce7_16) right = factor == 1.6;
            if (is_nbc(document)) right = factor == 1.5;
            Plan plan = plan_by(document);
            plan.basis.combination.snow.value = factor;
            const Expected mixed{{"plan.combination.mixed", factor_of_snow}};
            CHECK(found_in(plan) == (right ? Expected{} : mixed));
        }
    }
}

TEST_CASE("factor on snow: the sentence names both documents, and what to take") {
    const struct {
        SnowDocument document;
        double factor;
        std::vector<std::string> words;
    } rows[]{
        {SnowDocument::asce7_22,
         1.6,
         {"ASCE 7-10 and ASCE 7-16", "ASCE 7-22 and at strength level already", "take 1 (ASCE 7-22, 2.3.1)"}},
        {SnowDocument::asce7_22, 1.5, {"of the NBC and of EN 1991-1-3", "ASCE 7-22", "take 1 (ASCE 7-22, 2.3.1)"}},
        {SnowDocument::asce7_16, 1.0, {"ASCE 7-22, which are at strength level", "of ASCE 7-16, a char", "take 1.6"}},
        {SnowDocument::asce7_10, 1.5, {"of the NBC", "ASCE 7-10", "take 1.6 (ASCE 7-10, 2.3.2)"}},
        {SnowDocument::nbc2020, 1.6, {"ASCE 7-16", "NBC 2020", "take 1.5 (NBC 2020, table 4.1.3.2)"}},
        {SnowDocument::en1991_1_3,
         0.95,
         {"0.95 does not belong here", "EN 1991-1-3:2003", "take 1 to 2 (EN 1990:2002"}},
    };
    for (const auto& row : rows) {
        Plan plan = plan_by(row.document);
        plan.basis.combination.snow.value = row.factor;
        const auto problems = problems_of(plan);
        REQUIRE(problems.size() == 1);
        CAPTURE(problems[0].advice);
        for (const std::string& word : row.words) {
            CAPTURE(word);
            CHECK(problems[0].advice.find(word) != std::string::npos);
        }
    }
}

TEST_CASE("factor on snow: one that is not believed at all is reported once") {
    Plan plan = plan_by(SnowDocument::asce7_16);
    for (const double factor : {0.89, 2.01, -1.6}) {
        plan.basis.combination.snow.value = factor;
        CHECK(found_in(plan) == Expected{{"plan.range", factor_of_snow}});
    }
}

TEST_CASE("ground load and snow rules: of one document, whichever two they are") {
    for (const SnowDocument ground : snow_documents) {
        for (const SnowDocument rules : snow_documents) {
            Plan plan = plan_by(rules);
            plan.site.ground_snow = plan_by(ground).site.ground_snow;
            const Expected mixed{{"basis.snow.mixed", "/basis/snow/document"}};
            CHECK(found_in(plan) == (ground == rules ? Expected{} : mixed));
        }
    }
}
