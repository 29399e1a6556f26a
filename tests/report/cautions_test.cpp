// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/report/cautions.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace coverframe;

namespace {

// Whether one of the sentences holds all of the words.
bool said(std::initializer_list<std::string_view> words) {
    for (const std::string_view sentence : cautions()) {
        bool all = true;
        for (const std::string_view word : words) all = all && sentence.find(word) != std::string_view::npos;
        if (all) return true;
    }
    return false;
}

}  // namespace

TEST_CASE("cautions: say who reads the sheet and what it is not") {
    CHECK(cautions().front().find("competent person") != std::string_view::npos);
    CHECK(said({"Local codes", "licensed practice", "engineer"}));
}

TEST_CASE("cautions: people and snow") {
    CHECK(said({"stands", "on a loaded cover", "under it"}));
    CHECK(said({"from the ground", "soft", "both sides"}));
    CHECK(said({"every snowfall", "re-tensioned"}));
}

TEST_CASE("cautions: flame, fuel and air") {
    CHECK(said({"fuel vents", "before any heating", "OPEN THEM AGAIN"}));
    // OSHA 29 CFR 1910.252(a)(2)(iii)(B): a fire watch of at least half an hour after hot work; read in a summary.
    CHECK(said({"fire watch", "half an hour"}));
    CHECK(said({"carbon monoxide", "solvent", "gas"}));
    CHECK(said({"Winterise first", "before the film"}));
}

TEST_CASE("cautions: few, short and whole sentences") {
    CHECK(cautions().size() <= 10);
    for (const std::string_view sentence : cautions()) {
        CAPTURE(std::string(sentence));
        CHECK(sentence.ends_with('.'));
        CHECK(sentence.size() < 260);
    }
}
