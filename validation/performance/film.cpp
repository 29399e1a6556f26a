// SPDX-License-Identifier: BSD-3-Clause
// How long film takes: strips in microseconds, the surface of a whole cover from some 500 to 50,000 nodes, and its
// memory: performance_film [--table=file]. One thread; each entry is the least processor time of some repetitions,
// fewer the longer they take.
#include <sys/resource.h>

#include <Eigen/SparseCore>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <fstream>
#include <functional>
#include <iostream>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "coverframe/film/strip.hpp"
#include "coverframe/film/surface.hpp"
#include "coverframe/plan/read.hpp"
#include "film/kernel/front_factor.hpp"
#include "film/kernel/sparse_tangent.hpp"
#include "frame/kernel/numbers.hpp"

namespace {

using namespace coverframe;

double processor_seconds() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

double peak_megabytes() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return static_cast<double>(usage.ru_maxrss) / 1024;
}

double least_seconds(int times, const std::function<void()>& body) {
    double least = 1e300;
    for (int i = 0; i < times; ++i) {
        const double begin = processor_seconds();
        body();
        least = std::min(least, processor_seconds() - begin);
    }
    return least;
}

std::string text(const char* format, double value) {
    char buffer[64];
    std::snprintf(buffer, sizeof buffer, format, value);
    return buffer;
}

/// One cover at one fineness.
struct Row {
    std::size_t nodes = 0;
    double rig = 0, load = 0, flood = 0, factor = 0;  // s
    int iterations = 0, rounds = 0;
    double memory = 0;  // MB, of the process so far
};

/// One factorisation of the film's tangent alone.
double factor_seconds(const CoverSurface& s, int times) {
    std::vector<std::vector<int>> groups;
    std::vector<int> number(s.cover.held.size(), -1);
    int count = 0;
    for (std::size_t n = 0; n < number.size(); ++n) {
        if (!s.cover.held[n]) number[n] = count++;
    }
    for (const auto& t : s.cover.mesh.triangles) {
        std::vector<int>& group = groups.emplace_back();
        for (const int node : t) {
            const int own = number[static_cast<std::size_t>(node)];
            for (int d = 0; d < 3; ++d) group.push_back(own < 0 ? -1 : 3 * own + d);
        }
    }
    kernel::SparseTangent tangent(3 * count, groups);
    Eigen::SparseMatrix<double> matrix = tangent.matrix();
    for (int c = 0; c < matrix.cols(); ++c) {
        for (Eigen::SparseMatrix<double>::InnerIterator entry(matrix, c); entry; ++entry) {
            entry.valueRef() = entry.row() == entry.col() ? 40 : -1;
        }
    }
    kernel::FrontFactor factor;
    factor.analyse(matrix);
    bool done = true;
    const double seconds = least_seconds(times, [&] { done = factor.factorise(matrix, 0) && done; });
    if (!done) throw std::runtime_error("the film's stiffness cannot be factorised");
    return seconds;
}

Row measured(const Plan& plan, const SurfaceOptions& options) {
    Row row;
    CoverSurface s;
    const int times = options.rows > 40 ? 1 : options.rows > 15 ? 2 : 4;
    row.rig = least_seconds(times, [&] { s = rig_surface(plan, 150, options); });
    if (!s.state.usable()) throw std::runtime_error("the cover does not stand: " + s.state.message);
    row.nodes = s.cover.mesh.nodes.size();
    const std::vector<double> snow(s.cover.mesh.triangles.size(), 900.0);
    SurfaceState state;
    row.load = least_seconds(times, [&] { state = load_surface(s, snow); });
    row.flood = least_seconds(times, [&] { state = load_surface(s, snow, {Rain::Kind::to_the_brim, 0}); });
    if (!state.usable()) throw std::runtime_error("no equilibrium: " + state.message);
    row.iterations = state.iterations;
    row.rounds = state.rounds;
    row.factor = factor_seconds(s, times);
    row.memory = peak_megabytes();
    return row;
}

double strip_microseconds() {
    constexpr int strips = 20000;
    double sum = 0;
    const double seconds = least_seconds(7, [&] {
        for (int i = 0; i < strips; ++i) {
            const double width = 0.2 + 1e-6 * i;
            const Strip strip{45e3 * width, 1.55, 900 * width * 1.2};
            sum += strip_state(strip, {0, 0, 1}, {0, 1.2, 0}).level_force;
        }
    });
    if (!(sum > 0)) throw std::runtime_error("the strips pull nothing");
    return 1e6 * seconds / strips;
}

/// Each cover of the examples near 5,000 nodes.
struct Cover5000 {
    const char* plan;
    SurfaceOptions options;
};

std::vector<std::pair<std::string, Row>> measured_covers() {
    std::vector<std::pair<std::string, Row>> rows;
    for (const Cover5000& cover :
         {Cover5000{"motor_boat", {.spacing = 0.085, .rows = 20}}, Cover5000{"sloop", {.spacing = 0.095, .rows = 19}},
          Cover5000{"open_boat", {.spacing = 0.055, .rows = 23}},
          Cover5000{"as_found", {.spacing = 0.07, .rows = 23}}}) {
        const Plan plan =
            read_plan_file(std::string(COVERFRAME_SOURCE_FOLDER "/examples/plans/") + cover.plan + ".json");
        rows.emplace_back(cover.plan, measured(plan, cover.options));
        std::cout << cover.plan << ": " << rows.back().second.flood << " s\n";
    }
    return rows;
}

void write_covers(std::ostream& out, const std::vector<std::pair<std::string, Row>>& rows) {
    out << "\nEach plan of the examples near 5,000 nodes, the same way:\n\n"
        << "| plan | nodes | rig [s] | snow and water [s] | both [s] | Newton steps of snow and water |\n"
        << "|---|---:|---:|---:|---:|---:|\n";
    for (const auto& [plan, r] : rows) {
        out << "| `" << plan << "` | " << r.nodes << " | " << text("%.2f", r.rig) << " | " << text("%.2f", r.flood)
            << " | " << text("%.2f", r.rig + r.flood) << " | " << r.iterations << " |\n";
    }
}

void write_growth(std::ostream& out, const char* what, const std::vector<Row>& rows, double (*value)(const Row&)) {
    const auto power = [&](const Row& from, const Row& to) {
        return text("%.2f", std::log(value(to) / value(from)) /
                                std::log(static_cast<double>(to.nodes) / static_cast<double>(from.nodes)));
    };
    out << "| " << what << " |";
    for (std::size_t i = 1; i < rows.size(); ++i) out << (i > 1 ? ", " : " ") << power(rows[i - 1], rows[i]);
    out << " | " << power(rows.front(), rows.back()) << " |\n";
}

void write_table(std::ostream& out, const std::vector<Row>& rows,
                 const std::vector<std::pair<std::string, Row>>& covers, double strip) {
    out << "# Speed of the film\n\n"
        << "Written by `performance_film --table=...`; not by hand. Least processor time of a few repetitions, one "
           "thread, factors "
        << (kernel::has_avx2() ? "with" : "without") << " AVX2.\n\n"
        << "One strip (`strip_state`): " << text("%.2f", strip) << " microseconds.\n\n"
        << "The motor boat of the examples with film as a surface, coarse to fine: shrunk on (`rig_surface`), then "
           "under "
           "0.9 kPa\n"
        << "of snow from there, resting on straps and obstacles; the same with every hollow filled. *Factor* is one "
           "sparse\n"
        << "factorisation of the film's stiffness, of which each Newton step needs one. Memory is the peak of the "
           "process.\n\n"
        << "| nodes | rig [s] | snow [s] | snow and water [s] | Newton steps | rounds of filling | factor [ms] | steps "
           "times "
           "factor, of snow and water | memory [MB] |\n|---:|---:|---:|---:|---:|---:|---:|---:|---:|\n";
    for (const Row& r : rows) {
        out << "| " << r.nodes << " | " << text("%.3f", r.rig) << " | " << text("%.3f", r.load) << " | "
            << text("%.3f", r.flood) << " | " << r.iterations << " | " << r.rounds << " | "
            << text("%.1f", 1e3 * r.factor) << " | " << text("%.0f %%", 100 * r.iterations * r.factor / r.flood)
            << " | " << text("%.0f", r.memory) << " |\n";
    }
    out << "\nGrowth, as the power of the number of nodes:\n\n"
        << "| | row to row | first to last |\n|---|---|---:|\n";
    write_growth(out, "snow and water", rows, [](const Row& r) { return r.flood; });
    write_growth(out, "one Newton step of it", rows, [](const Row& r) { return r.flood / r.iterations; });
    write_growth(out, "factor", rows, [](const Row& r) { return r.factor; });
    write_growth(out, "memory", rows, [](const Row& r) { return r.memory; });
    out << "\nA direct factor of a plane mesh cannot grow by less than the power 1.5 in work and n log n in memory "
           "(George 1973,\nfrom memory); the rest of a step is linear.\n";
    write_covers(out, covers);
}

}  // namespace

int main(int count, char** words) try {
    std::string table;
    for (int i = 1; i < count; ++i) {
        const std::string word = words[i];
        if (word.rfind("--table=", 0) != 0) {
            std::cerr << "usage: performance_film [--table=file]\n";
            return 2;
        }
        table = word.substr(8);
    }
    const Plan plan = read_plan_file(COVERFRAME_SOURCE_FOLDER "/examples/plans/motor_boat.json");
    const double strip = strip_microseconds();
    std::vector<Row> rows;
    for (const SurfaceOptions& options :
         {SurfaceOptions{.spacing = 0.4, .rows = 8}, SurfaceOptions{.spacing = 0.2, .rows = 14},
          SurfaceOptions{.spacing = 0.11, .rows = 22}, SurfaceOptions{.spacing = 0.07, .rows = 33},
          SurfaceOptions{.spacing = 0.045, .rows = 50}, SurfaceOptions{.spacing = 0.03, .rows = 75}}) {
        rows.push_back(measured(plan, options));
        std::cout << rows.back().nodes << " nodes: " << rows.back().flood << " s\n";
    }
    const auto covers = measured_covers();
    write_table(std::cout, rows, covers, strip);
    if (!table.empty()) {
        std::ofstream out(table);
        write_table(out, rows, covers, strip);
        if (!out.flush()) throw std::runtime_error("cannot write " + table);
    }
    return 0;
} catch (const std::exception& error) {
    std::cerr << error.what() << "\n";
    return 1;
}
