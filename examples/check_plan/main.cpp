// SPDX-License-Identifier: BSD-3-Clause
// check_plan: judges a plan file from the command line.
//
//   check_plan plan.json [--sheet sheet.html [--film]]
//
//   1. read and validate the plan        refused: every problem on a line of its own, exit code 2
//   2. assess it                         one call: situations, equilibrium, findings
//   3. with --film look at film as a surface too (some seconds), and judge by that as well
//   4. print the report                  cautions first, then the verdict and the findings, worst first
//   5. write the job sheet, if asked
//   6. give the verdict as exit code     0 satisfied, 1 something exceeded, 3 the cover cannot stand
//
// Try it on examples/plans/motor_boat.json, an invented boat at an invented yard.
#include <fstream>
#include <iostream>
#include <optional>
#include <string>

#include "coverframe/assess/assess.hpp"
#include "coverframe/base/error.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/report/report.hpp"

namespace {

constexpr int refused = 2;

int list_problems(const coverframe::InputError& error) {
    for (const coverframe::Problem& problem : error.problems()) {
        if (problem.code == "plan.file") {
            std::cerr << problem.advice << '\n';
        } else {
            std::cerr << problem.code << (problem.where.empty() ? "" : " ") << problem.where << ": ";
            std::cerr << problem.advice << '\n';
        }
    }
    return refused;
}

bool write(const std::string& path, const std::string& text) {
    std::ofstream file(path, std::ios::binary);
    file << text;
    file.close();
    if (!file) std::cerr << "cannot write " << path << '\n';
    return static_cast<bool>(file);
}

}  // namespace

int main(int count, char** arguments) {
    const std::string last = arguments[count - 1];
    const bool film = count == 5 && last == "--film";
    if (count != 2 && !((count == 4 || film) && std::string(arguments[2]) == "--sheet")) {
        std::cerr << "usage: check_plan plan.json [--sheet sheet.html [--film]]\n";
        return refused;
    }
    try {
        const coverframe::Plan plan = coverframe::read_plan_file(arguments[1]);
        coverframe::Assessment assessment = coverframe::assess(plan);
        std::optional<coverframe::SurfaceSurvey> survey;
        if (film) {
            survey = coverframe::survey_surface(assessment);
            coverframe::add_surface_findings(assessment, *survey);
        }
        std::cout << coverframe::text_report(assessment);
        if (count > 2 && !write(arguments[3], coverframe::job_sheet(assessment, survey ? &*survey : nullptr)))
            return refused;
        return coverframe::exit_code(assessment.outcome);
    } catch (const coverframe::InputError& error) {
        return list_problems(error);
    }
}
