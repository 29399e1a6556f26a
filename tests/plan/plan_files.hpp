// SPDX-License-Identifier: BSD-3-Clause
// Plans for tests: the good ones of tests/plans/good, and the bad ones made from them by tests/plans/bad/cases.json.
#pragma once

#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "coverframe/base/error.hpp"
#include "coverframe/plan/read.hpp"

inline std::string file_text(const std::string& path_in_repository) {
    const std::string path = std::string(COVERFRAME_SOURCE_FOLDER) + "/" + path_in_repository;
    std::ifstream file(path, std::ios::binary);
    if (!file) throw std::runtime_error("no such file: " + path);
    return {std::istreambuf_iterator<char>(file), {}};
}

/// \param name  "pole_ridge", "strap_ridge", "found_frame", "beside_a_shed"
inline std::string good_plan_text(const std::string& name) { return file_text("tests/plans/good/" + name + ".json"); }
inline coverframe::Plan good_plan(const std::string& name) { return coverframe::read_plan(good_plan_text(name)); }

/// Code and place of each problem, in order.
using Expected = std::vector<std::pair<std::string, std::string>>;

inline constexpr coverframe::SnowDocument snow_documents[]{
    coverframe::SnowDocument::asce7_10, coverframe::SnowDocument::asce7_16, coverframe::SnowDocument::asce7_22,
    coverframe::SnowDocument::nbc2015,  coverframe::SnowDocument::nbc2020,  coverframe::SnowDocument::en1991_1_3};

/// A good plan on the snow of that document, without anything it does not demand.
inline coverframe::Plan plan_by(coverframe::SnowDocument document) {
    using namespace coverframe;
    Plan plan = good_plan(is_nbc(document) ? "beside_a_shed" : is_asce7(document) ? "pole_ridge" : "strap_ridge");
    SnowBasis& basis = plan.basis.snow;
    plan.site.ground_snow.document = basis.document = document;
    plan.site.ground_snow.return_period_years.reset();
    plan.site.neighbours.clear();
    basis.gable_framing.reset();
    basis.unbalanced_window.reset();
    basis.slid_snow.reset();
    if (is_asce7(document) && document != SnowDocument::asce7_22) {
        basis.winter_wind.reset();
        plan.basis.combination.snow = {1.6, "ASCE 7, chapter 2, from memory"};
    }
    return plan;
}

struct BadPlan {
    std::string name;
    std::string text;
    Expected problems;
};

inline std::string from_hex(const std::string& hex) {
    std::string bytes;
    for (std::size_t i = 0; i + 1 < hex.size(); i += 2) {
        bytes += static_cast<char>(std::stoi(hex.substr(i, 2), nullptr, 16));
    }
    return bytes;
}

inline std::string text_of_case(const nlohmann::json& each) {
    if (each.contains("base")) {
        const nlohmann::ordered_json good = nlohmann::ordered_json::parse(good_plan_text(each.at("base")));
        return good.patch(nlohmann::ordered_json(each.at("edits"))).dump();
    }
    if (each.contains("hex")) return from_hex(each.at("hex"));
    const std::string once = each.at("text");
    std::string text;
    for (int i = each.value("times", 1); i > 0; --i) text += once;
    return text;
}

inline std::vector<BadPlan> bad_plans() {
    std::vector<BadPlan> plans;
    const nlohmann::json file = nlohmann::json::parse(file_text("tests/plans/bad/cases.json"));
    for (const nlohmann::json& each : file.at("cases")) {
        plans.push_back({each.at("name"), text_of_case(each), each.at("problems").get<Expected>()});
    }
    return plans;
}

inline Expected codes_and_places(const std::vector<coverframe::Problem>& problems) {
    Expected found;
    for (const coverframe::Problem& problem : problems) found.emplace_back(problem.code, problem.where);
    return found;
}

/// What is wrong with the text; empty if it is a plan.
inline std::vector<coverframe::Problem> problems_of_text(const std::string& text) {
    try {
        (void)coverframe::read_plan(text);
    } catch (const coverframe::InputError& error) {
        return error.problems();
    }
    return {};
}
