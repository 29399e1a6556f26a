// SPDX-License-Identifier: BSD-3-Clause
// One rigged cover under one snow after another (film/cover.hpp), with order, band and memory of its frame kept.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "coverframe/film/cover.hpp"
#include "frame/kernel/solver.hpp"

namespace coverframe {

class LegSearch;

class CoverSolver {
public:
    /// Keeps the cover, which must stay as it is.
    explicit CoverSolver(const Cover& rigged);

    /// As load_cover(). The state does not depend on what was solved before.
    /// \param near  a usable state of the same cover, or nullptr. With one, film and frame are walked together from
    ///   there; where that does not end in a state to use, or there is none, the answer is that from the drawn shape.
    ///   Both agree to the tolerance of the options.
    /// \param lie_on_straps  whether to look for the second equilibrium, which costs some times the first
    [[nodiscard]] CoverState load(const StripLoads& snow, double permanent_factor, const SolveOptions& options,
                                  const CoverState* near = nullptr, bool lie_on_straps = true);

private:
    /// A leg of a cross strap in the drawn cover.
    struct Leg {
        int member = 0;
        int ridge = -1;                              ///< its node on the ridge line; -1: no film lies on it
        int rail = 0;                                ///< its node at the rail
        std::array<double, 2> bay{};                 ///< to the next support, forward and aft [m]
        std::array<std::vector<std::size_t>, 2> by;  ///< strips over the near half of either bay, its own first
    };
    void find_legs();
    [[nodiscard]] LegUnderFilm film_on(const Leg& leg, const CoverState& state) const;
    [[nodiscard]] FilmBeside film_beside(const Leg& leg, std::size_t side, const CoverState& state) const;
    void lean(const Leg& leg, std::size_t side, const CoverState& state, FilmBeside& film) const;
    void relieve(const Leg& leg, const LegUnderFilm& under, const LegSearch& search, std::size_t number);
    [[nodiscard]] FrameLoads::Spring kept_along(const Leg& leg, const CoverState& first) const;
    [[nodiscard]] FrameLoads::Spring added_by(const Leg& leg, const CoverState& state, double tension, double load,
                                              double stiffness) const;
    void move_to(const Eigen::VectorXd& u, CoverState& now) const;
    [[nodiscard]] double look_at_legs(CoverState& now, LegSearch& search) const;
    [[nodiscard]] double hang_strips(CoverState& now, FrameLoads& loads) const;
    /// Fills in the legs of a usable state, or why there are none.
    void lay_on_straps(const FrameLoads& own, const SolveOptions& options, CoverState& state);
    [[nodiscard]] bool lay_at_once(const FrameLoads& own, const SolveOptions& options, CoverState& state);
    void lay_in_rounds(const FrameLoads& own, const SolveOptions& options, CoverState& state);

    void put_on(const StripLoads& snow, double share, double permanent_factor);
    [[nodiscard]] CoverState settle(const FrameLoads& own, const SolveOptions& options,
                                    const std::vector<double>& start);
    [[nodiscard]] std::optional<CoverState> settle_near(const FrameLoads& own, const SolveOptions& options,
                                                        const CoverState& near);

    const Cover& rigged_;
    std::vector<CoverStrip> strips_;  ///< with the load of now
    kernel::Solver solver_;
    FrameLoads weight_;              ///< of the frame, without factor
    std::vector<double> film_load_;  ///< weight of each strip [N]
    std::vector<double> plan_area_;  ///< of each strip, drawn [m2]
    std::vector<Leg> legs_;
    std::vector<double> whole_load_;  ///< of each strip, what it hands over to legs included [N]
};

}  // namespace coverframe
