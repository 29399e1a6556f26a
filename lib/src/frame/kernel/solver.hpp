// SPDX-License-Identifier: BSD-3-Clause
// Equilibrium of one frame under one load after another: what solve() does (frame/solve.hpp, where the method is told),
// with order, band and memory kept from one load to the next. A solution does not depend on what was solved before.
#pragma once

#include <functional>
#include <optional>

#include "frame/kernel/assembly.hpp"
#include "frame/kernel/diagnosis.hpp"

namespace coverframe::kernel {

class Solver {
public:
    /// Keeps the frame, which must stay as it is but for the free lengths of straps and uprights.
    /// \throws InputError for a frame that is not sound (frame.hpp)
    explicit Solver(const Frame& frame);

    /// Goes on with another frame of the same topology, as Assembly::take().
    /// \throws InputError for a frame that is not sound
    void take(const Frame& frame);

    /// \throws InputError as coverframe::solve
    [[nodiscard]] Solution solve(const FrameLoads& loads, const SolveOptions& options,
                                 const std::vector<double>& start);

    [[nodiscard]] const Assembly& assembly() const { return assembly_; }
    /// Of the frame, from corner to corner [m].
    [[nodiscard]] double size() const { return size_; }
    /// \throws InputError as coverframe::solve
    void require(const FrameLoads& loads, const std::vector<double>& start) const;

    /// Where a walk made elsewhere ended: balanced and stable. Full size, every `stride`-th number.
    struct Ended {
        const double* u;
        const double* gradient;
        int stride;
        double energy;
        double largest_force;
        double rounding;
        int iterations;
        double unbalanced;
    };
    /// What solve() makes of it.
    [[nodiscard]] Solution adopt(const Ended& ended, const FrameLoads& loads, const SolveOptions& options,
                                 const std::vector<double>& start);

    /// Sets the springs of the loads to what acts at the displacements u; false while it has not settled itself.
    using Follow = std::function<bool(const Eigen::VectorXd& u, FrameLoads& loads)>;

    /// Equilibrium under loads whose springs follow the frame, set anew before every step of it. A step is one of
    /// solve(), with the springs as they are set; without a spring that changes, the walk is that of solve(). Where it
    /// does not end, or not in a state to use, or the frame has feet that rub, there is no solution: such a frame needs
    /// solve() again and again.
    /// Forces balance a thousand times closer than asked: the last step is nearly always a good one anyway.
    /// Solution::condition is not estimated.
    /// \param start  displacements to begin from, n_nodes by 6
    [[nodiscard]] std::optional<Solution> follow(FrameLoads& loads, const Follow& set_springs,
                                                 const SolveOptions& options, const std::vector<double>& start);

private:
    struct Walk {
        bool balanced = false;
        int iterations = 0;
        int refused = 0;        ///< whole steps, since looking ahead
        int patience = 3;       ///< so many of them before looking ahead
        double unbalanced = 0;  ///< [N]
        std::string reason;
        bool cycles = false;  ///< rounds of friction that do not settle
        bool wants_condition = true;
    };
    [[nodiscard]] Walk walk(const FrameLoads& loads, const SolveOptions& options);
    [[nodiscard]] Walk settle(const FrameLoads& loads, const SolveOptions& options);
    [[nodiscard]] bool follow_springs(FrameLoads& loads, const Follow& set_springs, const SolveOptions& options,
                                      Walk& w);
    [[nodiscard]] Solution conclude(const Walk& w, const FrameLoads& loads, const SolveOptions& options,
                                    const Eigen::VectorXd& begin, bool known_stable = false);
    [[nodiscard]] Solution attempt(const FrameLoads& loads, const SolveOptions& options,
                                   const std::vector<double>& start);
    void approach(const FrameLoads& loads, const SolveOptions& options, Solution& solution);
    void begin_at(const FrameLoads& loads, const std::vector<double>& start);
    void take_gradient();
    [[nodiscard]] bool find_step();
    [[nodiscard]] double longest_share() const;
    [[nodiscard]] bool look_ahead(const FrameLoads& loads, const SolveOptions& options, double enough, Walk& w);
    [[nodiscard]] bool take_step(const FrameLoads& loads, const SolveOptions& options, bool following, Walk& w);
    [[nodiscard]] bool positive_definite(Assembly::State& state);
    [[nodiscard]] bool positive_definite_at(const Eigen::VectorXd& u, const FrameLoads& loads);
    [[nodiscard]] bool look_at_condition(const FrameLoads& loads, Solution& solution);
    void fill(const Walk& w, const FrameLoads& loads, Solution& solution);
    void judge(const Walk& w, const FrameLoads& loads, const SolveOptions& options, const Eigen::VectorXd& begin,
               bool known_stable, Solution& solution);

    const Frame* frame_;
    Assembly assembly_;
    BandedLDLT factor_;
    double size_ = 0;         ///< of the frame, from corner to corner [m]
    bool adrift_ = false;     ///< whether only elastic supports of loads could hold a part
    std::vector<int> loose_;  ///< nodes that hang loose where the walk ended
    Eigen::VectorXd u_;       ///< displacements now, full size
    Assembly::State state_;   ///< at u_
    Eigen::VectorXd tried_;   ///< displacements that the line search looks at
    Assembly::State trial_;   ///< at tried_
    Eigen::VectorXd kept_u_;  ///< u_ while looking ahead
    Eigen::VectorXd kept_full_;
    Assembly::State kept_;
    Eigen::VectorXd gradient_;
    Eigen::VectorXd step_;
    Eigen::VectorXd full_;  ///< step_, full size
    Eigen::VectorXd scale_;
    std::vector<Turned<double>> turns_;  ///< of the nodes where the walk ended; working memory
    std::vector<double> bends_;          ///< of the members there
};

}  // namespace coverframe::kernel
