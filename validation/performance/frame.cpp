// SPDX-License-Identifier: BSD-3-Clause
// How long the frame's linear algebra takes, as ratios within one run: performance_frame [--table=file] [flags of
// Google Benchmark]. The machine is named in general terms only, as times say little about another one.
//
// Each entry is the least processor time of several repetitions: what disturbs a run only ever makes it longer. All
// matrices are the tangent of the motor boat's frame under its first snow arrangement.
#include <benchmark/benchmark.h>

#include <Eigen/Dense>
#include <Eigen/SparseCholesky>
#include <cstdio>
#include <fstream>
#include <functional>
#include <iostream>
#include <map>
#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

#include "assess/solved.hpp"
#include "coverframe/assess/assess.hpp"
#include "coverframe/plan/read.hpp"
#include "frame/kernel/solver.hpp"

namespace {

using namespace coverframe;
using Eigen::VectorXd;

/// A plan with everything that is worked out before the first situation, and one loaded state of its frame.
struct Subject {
    Plan plan;
    Assessment assessment;
    assess_detail::Rigging rigging;
    std::vector<Situation> situations;
    CoverState loaded;

    [[nodiscard]] const Frame& frame() const { return rigging.of[0][0].cover.layout.frame; }
};

Subject subject_of(const std::string& file) {
    Subject s;
    s.plan = read_plan_file(file);
    s.assessment = assess(s.plan);
    s.rigging = assess_detail::rig_all(s.plan, {});
    s.situations = situations_of(s.plan, s.assessment.arrangements);
    for (const assess_detail::Solved& one :
         assess_detail::solve_all(s.rigging, s.situations, s.assessment.arrangements)) {
        if (one.situation->arrangement == 0 && one.cover == &s.rigging.of[0][0].cover && one.usable()) {
            s.loaded = one.state;
            break;
        }
    }
    if (!s.loaded.usable()) throw std::runtime_error("the plan has no loaded state to measure on");
    return s;
}

/// The tangent in the loaded state, and a right-hand side.
struct Tangent {
    kernel::Assembly assembly;
    VectorXd u;
    kernel::Assembly::State state;
    VectorXd scale;
    VectorXd side;

    explicit Tangent(const Subject& s)
        : assembly(s.frame()),
          u(Eigen::Map<const VectorXd>(s.loaded.frame.displacement.data(),
                                       static_cast<Eigen::Index>(s.loaded.frame.displacement.size()))) {
        assembly.evaluate(u, s.loaded.frame_loads, state);
        kernel::scale_of(assembly.band(), state.K, scale);
        side = VectorXd::LinSpaced(assembly.unknowns(), -1, 1);
    }
};

using Sparse = Eigen::SparseMatrix<double>;

/// The tangent with all entries of its band, as any state may have them, or with those that are not zero in this one.
Sparse sparse_of(const Tangent& t, bool zeros) {
    const kernel::Band& band = t.assembly.band();
    std::vector<Eigen::Triplet<double>> entries;
    for (int column = 0; column < band.size(); ++column) {
        for (int row = column; row <= band.reach(column); ++row) {
            const double value = t.state.K(band.at(row, column));
            if (zeros || value != 0) entries.emplace_back(row, column, value);
        }
    }
    Sparse lower(band.size(), band.size());
    lower.setFromTriplets(entries.begin(), entries.end());
    return lower;
}

using Body = std::function<void()>;

/// What is measured, by the name it has in the table.
std::vector<std::pair<std::string, Body>> bodies_of(const Subject& s, const Tangent& t) {
    std::vector<std::pair<std::string, Body>> all;
    const auto factor = std::make_shared<kernel::BandedLDLT>(t.assembly.band());
    const auto x = std::make_shared<VectorXd>(t.side);
    all.emplace_back("banded", [=, &t] {
        if (!factor->factorise(t.state.K, t.scale)) throw std::runtime_error("the tangent has no factor");
        *x = t.side;
        factor->solve(*x);
    });
    const auto eight = std::make_shared<kernel::BandedLDLT::Sides>();
    all.emplace_back("eight sides", [=, &t] {
        *eight = t.side.replicate(1, 8);
        factor->solve(*eight);
    });
    const auto state = std::make_shared<kernel::Assembly::State>(t.state);
    all.emplace_back("iteration", [=, &s, &t] {
        t.assembly.evaluate(t.u, s.loaded.frame_loads, *state);
        VectorXd scale;
        kernel::scale_of(t.assembly.band(), state->K, scale);
        if (!kernel::factorise_positive(*factor, state->K, scale, 0)) throw std::runtime_error("no factor");
        *x = t.side;
        factor->solve(*x);
    });
    const auto solver = std::make_shared<kernel::Solver>(s.frame());
    all.emplace_back("settled", [=, &s] {
        benchmark::DoNotOptimize(solver->solve(s.loaded.frame_loads, {}, s.loaded.frame.displacement).energy);
    });
    const auto dense = std::make_shared<Eigen::MatrixXd>(t.assembly.band().dense(t.state.K));
    for (const bool zeros : {true, false}) {
        const auto sparse = std::make_shared<Sparse>(sparse_of(t, zeros));
        const auto simplicial = std::make_shared<Eigen::SimplicialLDLT<Sparse>>();
        simplicial->analyzePattern(*sparse);
        all.emplace_back(zeros ? "simplicial" : "simplicial without zeros", [=, &t] {
            simplicial->factorize(*sparse);
            *x = simplicial->solve(t.side);
        });
    }
    const auto full = std::make_shared<Eigen::LDLT<Eigen::MatrixXd>>(dense->rows());
    all.emplace_back("dense", [=, &t] {
        full->compute(*dense);
        *x = full->solve(t.side);
    });
    all.emplace_back("all situations", [&s] {
        benchmark::DoNotOptimize(assess_detail::solve_all(s.rigging, s.situations, s.assessment.arrangements).size());
    });
    all.emplace_back("assess", [&s] { benchmark::DoNotOptimize(assess(s.plan).situations.size()); });
    return all;
}

/// Prints as usual, and keeps the least processor time of each name [ns].
class Collector : public benchmark::ConsoleReporter {
public:
    std::map<std::string, double> least;

    void ReportRuns(const std::vector<Run>& runs) override {
        ConsoleReporter::ReportRuns(runs);
        for (const Run& run : runs) {
            if (run.run_type != Run::RT_Iteration || run.error_occurred || run.iterations == 0) continue;
            const double time = 1e9 * run.cpu_accumulated_time / static_cast<double>(run.iterations);
            const auto [place, fresh] = least.emplace(run.run_name.function_name, time);
            if (!fresh) place->second = std::min(place->second, time);
        }
    }
};

std::string text(const char* format, double value) {
    char buffer[64];
    std::snprintf(buffer, sizeof buffer, format, value);
    return buffer;
}

std::string compiler() {
#if defined(__clang__)
    return "Clang " + std::to_string(__clang_major__);
#elif defined(__GNUC__)
    return "GCC " + std::to_string(__GNUC__);
#else
    return "another compiler";
#endif
}

std::string machine() {
    std::string name = "another processor";
#ifdef __x86_64__
    name = __builtin_cpu_supports("avx2") ? "x86-64 with AVX2" : "x86-64 without AVX2";
#elif defined(__aarch64__)
    name = "64-bit ARM";
#endif
    const benchmark::CPUInfo& cpu = benchmark::CPUInfo::Get();
    return name + ", " + std::to_string(cpu.num_cpus) + " cores, about " +
           text("%.1f GHz", cpu.cycles_per_second / 1e9) + "; " + compiler();
}

void write_table(std::ostream& out, const Subject& s, const Tangent& t, std::map<std::string, double> least) {
    const double base = least.at("banded");
    const auto row = [&](const char* what, const char* key) {
        out << "| " << what << " | " << text("%.1f", least.at(key) / 1000) << " | "
            << text("%.2f", least.at(key) / base) << " |\n";
    };
    const double situations = static_cast<double>(s.situations.size());
    least["situation"] = least.at("all situations") / situations;
    least["side"] = least.at("eight sides") / 8;
    out << "# Speed of the frame\n\n"
        << "Written by `performance_frame --table=...`; not by hand. Least processor time of several repetitions, one\n"
        << "thread. " << machine() << ".\n\n"
        << "The motor boat of the examples: " << t.assembly.unknowns() << " unknowns, half width "
        << t.assembly.band().half_width() << ", " << s.frame().members.size() << " members, " << s.situations.size()
        << " situations.\n\n"
        << "| what | microseconds | times the bare factor and solve |\n|---|---:|---:|\n";
    row("banded factor and solve of the tangent", "banded");
    row("the same by Eigen's SimplicialLDLT, pattern of any state", "simplicial");
    row("the same, without what is zero in this symmetric state", "simplicial without zeros");
    row("the same by Eigen's dense LDLT", "dense");
    row("one right-hand side of eight on one factor", "side");
    row("one iteration: forces, tangent, factor, solve", "iteration");
    row("solve() from its own answer: forces, proof of stability, results", "settled");
    row("one situation, film and frame together", "situation");
    row("all situations of the plan", "all situations");
    row("assess(): rigging, all situations, all checks", "assess");
}

}  // namespace

int main(int count, char** words) try {
    std::string table;
    std::vector<char*> rest;
    for (int i = 0; i < count; ++i) {
        const std::string word = words[i];
        if (word.rfind("--table=", 0) == 0)
            table = word.substr(8);
        else
            rest.push_back(words[i]);
    }
    int left = static_cast<int>(rest.size());
    benchmark::Initialize(&left, rest.data());
    if (benchmark::ReportUnrecognizedArguments(left, rest.data())) return 2;
    const Subject subject = subject_of(COVERFRAME_SOURCE_FOLDER "/examples/plans/motor_boat.json");
    const Tangent tangent(subject);
    for (const auto& named : bodies_of(subject, tangent)) {
        const Body body = named.second;
        benchmark::RegisterBenchmark(named.first.c_str(),
                                     [body](benchmark::State& state) {
                                         for (auto _ : state) body();
                                     })
            ->Repetitions(15)
            ->MinTime(0.02)
            ->ReportAggregatesOnly(false);
    }
    Collector collector;
    benchmark::RunSpecifiedBenchmarks(&collector);
    if (!table.empty()) {
        std::ofstream out(table);
        write_table(out, subject, tangent, collector.least);
        if (!out.flush()) throw std::runtime_error("cannot write " + table);
    }
    return 0;
} catch (const std::exception& error) {
    std::cerr << error.what() << "\n";
    return 1;
}
