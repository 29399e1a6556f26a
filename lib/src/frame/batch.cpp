// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/batch.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <functional>
#include <string>
#include <thread>

#include "coverframe/base/error.hpp"
#include "kernel/batch_solver.hpp"

namespace coverframe {

namespace {

/// Loads that a thread takes at a time: enough to make the taking free.
constexpr std::size_t piece = 8 * kernel::batch;

/// Where the first refusal of all is kept, whichever thread comes to it first.
struct Refusal {
    std::size_t piece = 0;
    std::exception_ptr reason;
};

/// What is the case with the n-th of all.
using CaseAt = std::function<kernel::BatchSolver::Case(std::size_t)>;

std::vector<Solution> solve_all(const Frame& first, std::size_t count, const CaseAt& case_at,
                                const SolveOptions& options, const std::vector<double>& start, int threads) {
    if (threads < 0) {
        throw InputError("frame.threads", "/threads", std::to_string(threads), "there cannot be fewer than no threads");
    }
    std::vector<Solution> solutions(count);
    const std::size_t pieces = (count + piece - 1) / piece;
    const std::size_t wanted =
        threads > 0 ? static_cast<std::size_t>(threads) : std::max<std::size_t>(std::thread::hardware_concurrency(), 1);
    std::vector<Refusal> refusals(std::clamp<std::size_t>(wanted, 1, std::max<std::size_t>(pieces, 1)));
    std::atomic<std::size_t> next = 0;
    const auto work = [&](Refusal& refusal) {
        std::size_t at = 0;
        try {
            kernel::BatchSolver solver(first);
            std::vector<kernel::BatchSolver::Case> cases;
            while ((at = next++) < pieces) {
                const std::size_t end = std::min(count, (at + 1) * piece);
                for (std::size_t i = at * piece; i < end; i += kernel::batch) {
                    cases.clear();
                    for (std::size_t k = i; k < std::min<std::size_t>(i + kernel::batch, end); ++k) {
                        cases.push_back(case_at(k));
                    }
                    solver.solve(cases, options, start, std::span(solutions).subspan(i, cases.size()));
                }
            }
        } catch (...) {
            refusal = {at, std::current_exception()};
        }
    };
    {
        std::vector<std::jthread> others;
        for (std::size_t i = 1; i < refusals.size(); ++i)
            others.emplace_back([&work, &refusals, i] { work(refusals[i]); });
        work(refusals[0]);
    }
    const Refusal* refused = nullptr;
    for (const Refusal& refusal : refusals) {
        if (refusal.reason && (refused == nullptr || refusal.piece < refused->piece)) refused = &refusal;
    }
    if (refused != nullptr) std::rethrow_exception(refused->reason);
    return solutions;
}

/// What is different in the topology of two frames; empty if nothing is.
std::string difference(const Frame& frame, const Frame& first) {
    const auto counts = [](const char* what, std::size_t here, std::size_t there) {
        return "has " + std::to_string(here) + " " + what + ", not " + std::to_string(there);
    };
    if (frame.nodes.size() != first.nodes.size()) return counts("nodes", frame.nodes.size(), first.nodes.size());
    if (frame.members.size() != first.members.size()) {
        return counts("members", frame.members.size(), first.members.size());
    }
    if (frame.springs.size() != first.springs.size()) {
        return counts("springs", frame.springs.size(), first.springs.size());
    }
    if (frame.feet.size() != first.feet.size()) return counts("feet", frame.feet.size(), first.feet.size());
    for (std::size_t n = 0; n < frame.nodes.size(); ++n) {
        if (frame.nodes[n].held != first.nodes[n].held) return "is held otherwise at node " + std::to_string(n);
    }
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        const FrameMember& here = frame.members[m];
        const FrameMember& there = first.members[m];
        if (here.kind != there.kind) return "has another kind of member " + std::to_string(m);
        if (here.from != there.from || here.to != there.to) {
            return "has member " + std::to_string(m) + " between other nodes";
        }
    }
    for (std::size_t s = 0; s < frame.springs.size(); ++s) {
        if (frame.springs[s].node != first.springs[s].node) return "has spring " + std::to_string(s) + " elsewhere";
    }
    for (std::size_t f = 0; f < frame.feet.size(); ++f) {
        if (frame.feet[f].node != first.feet[f].node) return "has foot " + std::to_string(f) + " elsewhere";
    }
    return "";
}

}  // namespace

std::vector<Solution> solve_batch(const Frame& frame, std::span<const FrameLoads> loads, const SolveOptions& options,
                                  const std::vector<double>& start, int threads) {
    require_sound(frame);
    const auto case_at = [&](std::size_t i) { return kernel::BatchSolver::Case{&frame, &loads[i]}; };
    return solve_all(frame, loads.size(), case_at, options, start, threads);
}

std::vector<Solution> solve_batch(std::span<const Frame> frames, std::span<const FrameLoads> loads,
                                  const SolveOptions& options, const std::vector<double>& start, int threads) {
    if (loads.size() != 1 && loads.size() != frames.size()) {
        throw InputError(
            "frame.batch.loads", "/loads", std::to_string(loads.size()),
            "there must be one set of loads, or one for each of the " + std::to_string(frames.size()) + " frames");
    }
    for (std::size_t i = 0; i < frames.size(); ++i) {
        const std::string other = difference(frames[i], frames[0]);
        if (other.empty()) continue;
        throw InputError("frame.batch.topology", "/frames/" + std::to_string(i), "",
                         "frame " + std::to_string(i) + " differs from the first one: it " + other);
    }
    if (frames.empty()) return {};
    require_sound(frames[0]);
    const auto case_at = [&](std::size_t i) {
        return kernel::BatchSolver::Case{&frames[i], &loads[loads.size() == 1 ? 0 : i]};
    };
    return solve_all(frames[0], frames.size(), case_at, options, start, threads);
}

}  // namespace coverframe
