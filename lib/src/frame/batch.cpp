// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/batch.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
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

}  // namespace

std::vector<Solution> solve_batch(const Frame& frame, std::span<const FrameLoads> loads, const SolveOptions& options,
                                  const std::vector<double>& start, int threads) {
    if (threads < 0) {
        throw InputError("frame.threads", "/threads", std::to_string(threads), "there cannot be fewer than no threads");
    }
    require_sound(frame);
    std::vector<Solution> solutions(loads.size());
    const std::size_t pieces = (loads.size() + piece - 1) / piece;
    const std::size_t wanted =
        threads > 0 ? static_cast<std::size_t>(threads) : std::max<std::size_t>(std::thread::hardware_concurrency(), 1);
    std::vector<Refusal> refusals(std::clamp<std::size_t>(wanted, 1, std::max<std::size_t>(pieces, 1)));
    std::atomic<std::size_t> next = 0;
    const auto work = [&](Refusal& refusal) {
        std::size_t at = 0;
        try {
            kernel::BatchSolver solver(frame);
            while ((at = next++) < pieces) {
                const std::size_t end = std::min(loads.size(), (at + 1) * piece);
                for (std::size_t i = at * piece; i < end; i += kernel::batch) {
                    const std::size_t count = std::min<std::size_t>(kernel::batch, end - i);
                    solver.solve(loads.subspan(i, count), options, start, std::span(solutions).subspan(i, count));
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
    const Refusal* first = nullptr;
    for (const Refusal& refusal : refusals) {
        if (refusal.reason && (first == nullptr || refusal.piece < first->piece)) first = &refusal;
    }
    if (first != nullptr) std::rethrow_exception(first->reason);
    return solutions;
}

}  // namespace coverframe
