// SPDX-License-Identifier: BSD-3-Clause
// How long the frame's linear algebra takes, as ratios within one run: performance_frame [--table=file] [flags of
// Google Benchmark]. The machine is named in general terms only, as times say little about another one.
//
// Each entry is the least processor time of several repetitions: what disturbs a run only ever makes it longer. All
// matrices are tangents of frames under their first snow arrangement.
#include <benchmark/benchmark.h>
#include <sys/resource.h>

#include <Eigen/Dense>
#include <Eigen/SparseCholesky>
#include <cmath>
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
#include "coverframe/frame/batch.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/units/crossing.hpp"
#include "film/cover_solver.hpp"
#include "film/kernel/hanging.hpp"
#include "frame/kernel/banded_batch.hpp"
#include "frame/kernel/solver.hpp"

namespace {

using namespace coverframe;
using Eigen::VectorXd;

/// A plan with everything that is worked out before the first situation, and one loaded state of its frame.
struct Subject {
    std::string name;
    Plan plan;
    Assessment assessment;
    assess_detail::Rigging rigging;
    std::vector<Situation> situations;
    std::vector<assess_detail::Solved> solved;  ///< those with snow
    CoverState loaded;
    std::vector<Strip> hung;  ///< the strips of that state with their loads

    [[nodiscard]] const Frame& frame() const { return rigging.of[0][0].cover.layout.frame; }

    [[nodiscard]] StripLoads snow_on(const assess_detail::Solved& one) const {
        const Arrangement& snow = assessment.arrangements[static_cast<std::size_t>(one.situation->arrangement)];
        StripLoads loads;
        for (const CoverStrip& strip : one.cover->strips) {
            const auto& side = strip.side == Side::port ? snow.port : snow.starboard;
            loads.push_back(one.situation->snow_factor * in_Pa(side[static_cast<std::size_t>(strip.station)].value));
        }
        return loads;
    }
};

/// In place, as what is solved points to the situations and covers.
void set_up(const std::string& name, Subject& s) {
    s.name = name;
    s.plan = read_plan_file(COVERFRAME_SOURCE_FOLDER "/examples/plans/" + name + ".json");
    s.assessment = assess(s.plan);
    s.rigging = assess_detail::rig_all(s.plan, {});
    s.situations = situations_of(s.plan, s.assessment.arrangements);
    for (assess_detail::Solved& one : assess_detail::solve_all(s.rigging, s.situations, s.assessment.arrangements)) {
        if (one.situation->arrangement < 0 || !one.usable()) continue;
        const bool first = one.situation->arrangement == 0 && one.cover == &s.rigging.of[0][0].cover;
        if (first && !s.loaded.usable()) s.loaded = one.state;
        s.solved.push_back(std::move(one));
    }
    if (!s.loaded.usable()) throw std::runtime_error("the plan has no loaded state to measure on");
    for (std::size_t i = 0; i < s.loaded.strips.size(); ++i) {
        s.hung.push_back(s.rigging.of[0][0].cover.strips[i].strip);
        s.hung.back().load = -s.loaded.strips[i].pull_upper[2] - s.loaded.strips[i].pull_lower[2];
    }
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
struct Bodies {
    std::string plan;
    std::vector<std::pair<std::string, Body>> all;
    std::vector<std::pair<std::string, Body>> once;  ///< so long that one run of each repetition is enough

    void add(const char* what, Body body) { all.emplace_back(plan + "/" + what, std::move(body)); }
};

/// The factor alone, and with what an iteration and a solution need besides.
void add_linear(const Subject& s, const Tangent& t, Bodies& to) {
    const auto factor = std::make_shared<kernel::BandedLDLT>(t.assembly.band());
    const auto x = std::make_shared<VectorXd>(t.side);
    to.add("banded", [=, &t] {
        if (!factor->factorise(t.state.K, t.scale)) throw std::runtime_error("the tangent has no factor");
        *x = t.side;
        factor->solve(*x);
    });
    const auto state = std::make_shared<kernel::Assembly::State>(t.state);
    const auto scale = std::make_shared<VectorXd>(t.scale);
    to.add("iteration", [=, &s, &t] {
        t.assembly.evaluate(t.u, s.loaded.frame_loads, *state);
        kernel::scale_of(t.assembly.band(), state->K, *scale);
        if (!kernel::factorise_positive(*factor, state->K, *scale, 0)) throw std::runtime_error("no factor");
        *x = t.side;
        factor->solve(*x);
    });
    to.add("energy", [=, &s, &t] { benchmark::DoNotOptimize(t.assembly.energy(t.u, s.loaded.frame_loads, *state)); });
    const auto solver = std::make_shared<kernel::Solver>(s.frame());
    to.add("settled", [=, &s] {
        benchmark::DoNotOptimize(solver->solve(s.loaded.frame_loads, {}, s.loaded.frame.displacement).energy);
    });
}

/// The same tangent by other solvers, and several at a time.
void add_comparisons(const Tangent& t, Bodies& to) {
    const auto factor = std::make_shared<kernel::BandedLDLT>(t.assembly.band());
    if (!factor->factorise(t.state.K, t.scale)) throw std::runtime_error("the tangent has no factor");
    const auto x = std::make_shared<VectorXd>(t.side);
    const auto eight = std::make_shared<kernel::BandedLDLT::Sides>();
    to.add("eight sides", [=, &t] {
        *eight = t.side.replicate(1, 8);
        factor->solve(*eight);
    });
    for (const bool zeros : {true, false}) {
        const auto sparse = std::make_shared<Sparse>(sparse_of(t, zeros));
        const auto simplicial = std::make_shared<Eigen::SimplicialLDLT<Sparse>>();
        simplicial->analyzePattern(*sparse);
        to.add(zeros ? "simplicial" : "simplicial without zeros", [=, &t] {
            simplicial->factorize(*sparse);
            *x = simplicial->solve(t.side);
        });
    }
    const auto dense = std::make_shared<Eigen::MatrixXd>(t.assembly.band().dense(t.state.K));
    const auto full = std::make_shared<Eigen::LDLT<Eigen::MatrixXd>>(dense->rows());
    to.add("dense", [=, &t] {
        full->compute(*dense);
        *x = full->solve(t.side);
    });
    const auto several = [](const VectorXd& one, Eigen::Index length) {
        std::vector<double> all;
        for (Eigen::Index i = 0; i < length; ++i) all.insert(all.end(), kernel::batch, one(i));
        return all;
    };
    const auto batch = std::make_shared<kernel::BatchLDLT>(t.assembly.band());
    const std::vector<double> K = several(t.state.K, t.assembly.band().length());
    const std::vector<double> scale = several(t.scale, t.scale.size());
    const std::vector<double> side = several(t.side, t.side.size());
    const auto sides = std::make_shared<std::vector<double>>(side);
    to.add("eight matrices", [=] {
        batch->factorise(K.data(), scale.data());
        *sides = side;
        batch->solve(sides->data());
    });
}

void add_situations(const Subject& s, Bodies& to) {
    to.add("strips", [&s] {
        const Cover& cover = s.rigging.of[0][0].cover;
        for (std::size_t i = 0; i < cover.strips.size(); ++i) {
            const CoverStrip& strip = cover.strips[i];
            benchmark::DoNotOptimize(kernel::hanging_near(s.hung[i], place_of(s.frame(), s.loaded.frame, strip.node),
                                                          strip.rail, s.loaded.strips[i].level_force, 1e-3));
        }
    });
    to.add("all situations", [&s] {
        benchmark::DoNotOptimize(assess_detail::solve_all(s.rigging, s.situations, s.assessment.arrangements).size());
    });
    const auto solvers = std::make_shared<std::map<const Cover*, CoverSolver>>();
    const auto again = [&s, solvers](bool on_straps) {
        for (const assess_detail::Solved& one : s.solved) {
            CoverSolver& solver = solvers->try_emplace(one.cover, *one.cover).first->second;
            const bool lie = on_straps && one.situation->limit == Limit::strength;
            benchmark::DoNotOptimize(
                solver.load(s.snow_on(one), one.situation->permanent_factor, {}, &one.state, lie).vertical_load);
        }
    };
    to.add("all situations again", [again] { again(false); });
    to.add("again on straps", [again] { again(true); });
    to.add("rigging", [&s] { benchmark::DoNotOptimize(assess_detail::rig_all(s.plan, {}).of[0][0].state.rounds); });
    to.add("assess", [&s] { benchmark::DoNotOptimize(assess(s.plan).situations.size()); });
}

constexpr int many = 10000;

/// Many loads, each another one, from the state of the first; alone and side by side.
void add_batches(const Subject& s, Bodies& to) {
    const auto loads = std::make_shared<std::vector<FrameLoads>>(many, s.loaded.frame_loads);
    for (int i = 0; i < many; ++i) {
        const double share = 1 + 0.1 * std::sin(i);
        for (double& force : (*loads)[static_cast<std::size_t>(i)].force) force *= share;
        for (FrameLoads::Spring& spring : (*loads)[static_cast<std::size_t>(i)].springs) {
            for (double& force : spring.force0) force *= share;
        }
    }
    const auto start = std::make_shared<std::vector<double>>(s.loaded.frame.displacement);
    const auto solver = std::make_shared<kernel::Solver>(s.frame());
    to.once.emplace_back(to.plan + "/many alone", [=] {
        std::vector<Solution> solutions;
        solutions.reserve(loads->size());
        for (const FrameLoads& one : *loads) solutions.push_back(solver->solve(one, {}, *start));
        benchmark::DoNotOptimize(solutions.data());
    });
    to.once.emplace_back(to.plan + "/many together",
                         [=, &s] { benchmark::DoNotOptimize(solve_batch(s.frame(), *loads, {}, *start).data()); });
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

/// Most memory that the program has had [MB].
double peak_memory() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return static_cast<double>(usage.ru_maxrss) / 1024;
}

/// Times of one plan [us].
struct Times {
    const std::map<std::string, double>& least;
    std::string plan;

    [[nodiscard]] double of(const char* what) const { return least.at(plan + "/" + what) / 1000; }
};

/// Mean number of steps of the situations that are walked from the cover without snow.
double mean_steps(const Subject& s) {
    double steps = 0;
    for (const assess_detail::Solved& one : s.solved) steps += one.state.frame.iterations;
    return steps / static_cast<double>(s.solved.size());
}

std::string met(double value, double goal) {
    return value <= goal ? "met" : "missed, " + text("%.1f", value / goal) + " times the goal";
}

void write_comparisons(std::ostream& out, const Times& t) {
    const double base = t.of("banded");
    const auto row = [&](const char* what, const char* key, double share = 1) {
        out << "| " << what << " | " << text("%.1f", t.of(key) * share) << " | "
            << text("%.2f", t.of(key) * share / base) << " |\n";
    };
    out << "| motor boat | microseconds | times the bare factor and solve |\n|---|---:|---:|\n";
    row("banded factor and solve of the tangent", "banded");
    row("the same by Eigen's SimplicialLDLT, pattern of any state", "simplicial");
    row("the same, without what is zero in this symmetric state", "simplicial without zeros");
    row("the same by Eigen's dense LDLT", "dense");
    row("one right-hand side of eight on one factor", "eight sides", 1.0 / 8);
    row("factor and solve of one matrix of eight side by side", "eight matrices", 1.0 / 8);
    row("energy alone", "energy");
    row("one iteration: forces, tangent, factor, solve", "iteration");
    row("solve() from its own answer: forces, proof of stability, condition, results", "settled");
    row("all strips of film once", "strips");
    row("one of 10,000 solves, one after the other", "many alone", 1.0 / many);
    row("one of 10,000 solves, eight side by side", "many together", 1.0 / many);
}

void write_plans(std::ostream& out, const std::vector<std::unique_ptr<Subject>>& subjects,
                 const std::map<std::string, double>& least) {
    out << "| plan | unknowns | half width | iteration / bare | situations | steps each | all situations [ms] | from "
           "their own answers [ms] | the same, film on cross straps too [ms] | rigging [ms] | assess() [ms] "
           "|\n|---|---:|---:|---:|---:|---:|---:|---:|---:|---:|---:|\n";
    for (const auto& s : subjects) {
        const Times t{least, s->name};
        const kernel::Assembly assembly(s->frame());
        out << "| " << s->name << " | " << assembly.unknowns() << " | " << assembly.band().half_width() << " | "
            << text("%.2f", t.of("iteration") / t.of("banded")) << " | " << s->situations.size() << " | "
            << text("%.1f", mean_steps(*s)) << " | " << text("%.2f", t.of("all situations") / 1000) << " | "
            << text("%.2f", t.of("all situations again") / 1000) << " | "
            << text("%.2f", t.of("again on straps") / 1000) << " | " << text("%.2f", t.of("rigging") / 1000) << " | "
            << text("%.2f", t.of("assess") / 1000) << " |\n";
    }
}

void write_goals(std::ostream& out, const Subject& s, const Times& t) {
    const double steps = mean_steps(s);
    const auto count = static_cast<double>(s.solved.size());
    const double one = t.of("all situations") / static_cast<double>(s.situations.size());
    const double again = t.of("all situations again");
    const double iteration = t.of("iteration");
    const double strips = t.of("strips");
    out << "## Goals, on the motor boat\n\n* An iteration within 3 times the bare factor and solve: "
        << text("%.2f", iteration / t.of("banded")) << ", " << met(iteration, 3 * t.of("banded"))
        << ".\n* All situations from their own answers within 0.5 ms on one core: " << text("%.2f", again / 1000)
        << " ms, " << met(again, 500) << ".\n  One of them takes " << text("%.1f", again / count)
        << " us: its strips once " << text("%.1f", strips) << ", forces, tangent and a factor that proves it\n  "
        << "stable about an iteration, " << text("%.1f", iteration) << ", the rest results and copies of states. Bare "
        << "factors and\n  solves alone would be " << text("%.2f", count * t.of("banded") / 1000)
        << " ms, side by side " << text("%.2f", count * t.of("eight matrices") / 8000)
        << " ms.\n  Film that lies on cross straps is not in it; its own equilibrium, where strength is asked for, "
           "takes "
        << text("%.1f", (t.of("again on straps") - again) / 1000)
        << " ms more.\n* Many loads together at least 3 times as "
        << "fast as one after the other: " << text("%.2f", t.of("many alone") / t.of("many together")) << ", "
        << met(3 * t.of("many together"), t.of("many alone")) << ".\n\n"
        << "A situation from the cover without snow takes " << text("%.0f", one) << " us for " << text("%.1f", steps)
        << " steps: " << text("%.0f", 100 * steps * iteration / one) << " % are iterations\nof "
        << "the frame, " << text("%.0f", 100 * (steps + 1) * strips / one)
        << " % strips, "
           "the rest film on cross straps, the last look, results and copies. Of assess(), all situations\nare "
        << text("%.0f", 100 * t.of("all situations") / t.of("assess")) << " % and the rigging "
        << text("%.0f", 100 * t.of("rigging") / t.of("assess")) << " %; the rest is checks.\n";
}

void write_table(std::ostream& out, const std::vector<std::unique_ptr<Subject>>& subjects,
                 const std::map<std::string, double>& least, double before_many, double after) {
    const Times t{least, subjects.front()->name};
    out << "# Speed of the frame\n\n"
        << "Written by `performance_frame --table=...`; not by hand. Least processor time of several repetitions, one\n"
        << "thread. " << machine() << ".\n\n";
    write_comparisons(out, t);
    out << "\nThe four plans of the examples:\n\n";
    write_plans(out, subjects, least);
    out << "\n";
    write_goals(out, *subjects.front(), t);
    out << "\nMost memory: " << text("%.0f", before_many) << " MB with all four plans assessed, " << text("%.0f", after)
        << " MB with 10,000 loads and their solutions kept.\n";
}

void register_all(const Bodies& bodies) {
    const auto add = [](const std::pair<std::string, Body>& named) {
        return benchmark::RegisterBenchmark(named.first.c_str(), [body = named.second](benchmark::State& state) {
            for (auto _ : state) body();
        });
    };
    for (const auto& named : bodies.all) add(named)->Repetitions(15)->MinTime(0.02)->ReportAggregatesOnly(false);
    for (const auto& named : bodies.once) add(named)->Repetitions(5)->Iterations(1)->ReportAggregatesOnly(false);
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
    std::vector<std::unique_ptr<Subject>> subjects;
    std::vector<std::unique_ptr<Tangent>> tangents;
    for (const char* name : {"motor_boat", "sloop", "open_boat", "as_found"}) {
        subjects.push_back(std::make_unique<Subject>());
        set_up(name, *subjects.back());
        tangents.push_back(std::make_unique<Tangent>(*subjects.back()));
        Bodies bodies{.plan = name, .all = {}, .once = {}};
        add_linear(*subjects.back(), *tangents.back(), bodies);
        if (subjects.size() == 1) add_comparisons(*tangents.back(), bodies);
        add_situations(*subjects.back(), bodies);
        register_all(bodies);
    }
    const double before_many = peak_memory();
    Bodies batches{.plan = subjects.front()->name, .all = {}, .once = {}};
    add_batches(*subjects.front(), batches);
    register_all(batches);
    Collector collector;
    benchmark::RunSpecifiedBenchmarks(&collector);
    if (!table.empty()) {
        std::ofstream out(table);
        write_table(out, subjects, collector.least, before_many, peak_memory());
        if (!out.flush()) throw std::runtime_error("cannot write " + table);
    }
    return 0;
} catch (const std::exception& error) {
    std::cerr << error.what() << "\n";
    return 1;
}
