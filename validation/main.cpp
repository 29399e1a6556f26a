// SPDX-License-Identifier: BSD-3-Clause
// Runs every validation case against the library: coverframe_validation [--cases dir] [--results file].
//
// Prints the agreement of each number in decimal digits, every miss before it fails, and last
// "validation: N passed, N failed". Returns 0 only if all cases pass and none got lost.
#include <cmath>
#include <cstdio>
#include <exception>
#include <fstream>
#include <iostream>
#include <sstream>

#include "case.hpp"
#include "coverframe/base/error.hpp"
#include "model.hpp"
#include "results.hpp"

#ifndef COVERFRAME_VALIDATION_FOLDER
#define COVERFRAME_VALIDATION_FOLDER "validation"
#endif

namespace coverframe::validation {
namespace {

namespace fs = std::filesystem;

/// Fewer cases than this, and files were lost on the way.
constexpr std::size_t least_cases = 190;

struct Options {
    fs::path root = COVERFRAME_VALIDATION_FOLDER;  ///< holds cases/, held/ and sources.bib
    fs::path cases;                                ///< root/cases unless told
    fs::path results;                              ///< empty: no table is written
};

Options read_options(int count, char** words) {
    Options options;
    for (int i = 1; i < count; i += 2) {
        const std::string word = words[i];
        if (i + 1 >= count || (word != "--cases" && word != "--results")) {
            throw CaseError("usage: coverframe_validation [--cases dir] [--results file]");
        }
        (word == "--cases" ? options.cases : options.results) = words[i + 1];
    }
    if (options.cases.empty()) options.cases = options.root / "cases";
    else options.root = fs::absolute(options.cases).lexically_normal().parent_path();
    return options;
}

bool within(const Expected& expected, double ours) {
    const double allowed = expected.relative ? expected.tolerance * std::abs(expected.value) : expected.tolerance;
    return std::isfinite(ours) && std::abs(ours - expected.value) <= allowed;
}

Compared compare(const Expected& expected, const Answers& answers) {
    const auto found = answers.find(expected.quantity);
    if (found == answers.end()) throw CaseError("the model does not answer \"" + expected.quantity + "\"");
    Compared number;
    number.expected = expected;
    number.rule = found->second.rule;
    number.ours = found->second.si / size_of_unit(found->second.dimension, expected.unit);
    const bool agrees = within(expected, number.ours);
    if (agrees != expected.disagrees.has_value()) {
        number.outcome = agrees ? Outcome::agrees : Outcome::disagrees_as_said;
    }
    return number;
}

RunCase run(const Case& data) {
    RunCase run;
    run.data = data;
    try {
        const auto model = models().find(data.model);
        if (model == models().end()) throw CaseError("there is no model called " + data.model);
        const Input input(data.input);
        const Answers answers = model->second(input);
        for (const std::string& key : input.unread()) throw CaseError("input " + key + " is not used by the model");
        for (const Expected& expected : data.expected) run.numbers.push_back(compare(expected, answers));
    } catch (const std::exception& error) {
        run.error = error.what();
    }
    return run;
}

void report(const RunCase& run) {
    std::cout << (run.passed() ? "ok    " : "FAIL  ") << run.data.topic << '/' << run.data.id << "  "
              << run.data.title << '\n';
    if (!run.error.empty()) std::cout << "      " << run.error << '\n';
    for (const Compared& number : run.numbers) {
        const Expected& e = number.expected;
        char line[256];
        std::snprintf(line, sizeof line, "      %-26s %14.9g  ours %14.9g %-6s %4.1f digits%s\n", e.quantity.c_str(),
                      e.value, number.ours, e.unit.c_str(), digits_of_agreement(number.ours, e.value),
                      number.outcome == Outcome::misses
                          ? (e.disagrees ? "  AGREES although it is marked otherwise" : "  MISSES its tolerance")
                          : (e.disagrees ? "  disagrees, see why" : ""));
        std::cout << line;
    }
}

int run_all(const Options& options) {
    const fs::path bibliography = options.root / "sources.bib";
    const std::vector<Case> cases = read_cases(options.cases, bibliography, false);
    const std::vector<Case> held = read_cases(options.root / "held", bibliography, true);
    std::vector<RunCase> runs;
    std::size_t failed = 0;
    for (const Case& data : cases) {
        runs.push_back(run(data));
        report(runs.back());
        if (!runs.back().passed()) ++failed;
    }
    if (!options.results.empty()) {
        std::ofstream out(options.results, std::ios::binary);
        write_results(out, runs, held, rules_declared(options.root.parent_path() / "lib/include/coverframe"));
        if (!out.flush()) throw CaseError("cannot write " + options.results.string());
    }
    std::cout << "\nmisses:\n";
    for (const RunCase& one : runs) {
        if (!one.passed()) report(one);
    }
    if (failed == 0) std::cout << "none\n";
    const bool complete = runs.size() >= least_cases;
    if (!complete) std::cout << "only " << runs.size() << " cases, at least " << least_cases << " are demanded\n";
    std::cout << "validation: " << runs.size() - failed << " passed, " << failed << " failed" << std::endl;
    return failed == 0 && complete ? 0 : 1;
}

}  // namespace
}  // namespace coverframe::validation

int main(int count, char** words) {
    try {
        return coverframe::validation::run_all(coverframe::validation::read_options(count, words));
    } catch (const std::exception& error) {
        std::cerr << error.what() << std::endl;
        return 2;
    }
}
