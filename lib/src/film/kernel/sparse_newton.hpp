// SPDX-License-Identifier: BSD-3-Clause
// The least of an energy over many unknowns: Newton with the exact sparse tangent and a line search on the energy.
//
// Where the tangent is not positive definite it is shifted by its own size until it is, so every step goes downhill; a
// step is halved until the energy falls by a share of what the slope promises. An energy that is bounded below then
// ends where the forces balance. Where changes of energy drown in rounding, a step that lowers the largest unbalanced
// force is taken instead.
//
// A System has
//   Eigen::VectorXd unknowns                            where it is
//   void follow()                                       what is done anew after each step, before the next evaluate
//   void evaluate(const VectorXd& at, bool tangent)     energy, gradient and, if asked, the tangent there
//   double energy, largest_force;  VectorXd gradient;   of the last evaluate
//   const SparseMatrix<double>& tangent() const         lower triangle
//   double longest_step() const                         how far an unknown may go in one step
#pragma once

#include <Eigen/SparseCore>
#include <algorithm>
#include <cmath>
#include <string>

#include "coverframe/base/error.hpp"
#include "film/kernel/front_factor.hpp"

namespace coverframe::kernel {

struct NewtonEnd {
    bool balanced = false;
    bool stable = false;  ///< positive definite without a shift; of a balanced end
    std::string reason;   ///< why it is not balanced
    double unbalanced = 0;
    int iterations = 0;
};

/// A pivot below this share of the largest is no resistance at all.
inline constexpr double singular_pivot = 1e-12;

template <class System>
class SparseNewton {
public:
    /// Keeps the system; works out the order of its factor.
    explicit SparseNewton(System& system) : system_(system) { factor_.analyse(system.tangent()); }

    /// \param tolerance  largest unbalanced force, relative to the largest force in the system
    NewtonEnd run(double tolerance, int most) {
        NewtonEnd end;
        for (end.iterations = 0; end.iterations <= most; ++end.iterations) {
            system_.follow();
            system_.evaluate(system_.unknowns, true);
            energy_ = system_.energy;
            force_ = system_.largest_force;
            gradient_ = system_.gradient;
            end.unbalanced = largest(gradient_);
            if (end.unbalanced <= tolerance * force_) {
                end.balanced = true;
                end.stable = factorise(0);
                return end;
            }
            if (!find_step()) {
                end.reason = "the stiffness of the film cannot be solved";
                return end;
            }
            if (!take_step(end.unbalanced)) {
                end.reason = "the energy stops falling before the forces balance";
                return end;
            }
        }
        end.reason = "no balance after " + std::to_string(most) + " steps";
        return end;
    }

private:
    static double largest(const Eigen::VectorXd& v) { return v.size() > 0 ? v.cwiseAbs().maxCoeff() : 0; }

    bool factorise(double shift) {
        if (gradient_.size() == 0) return true;
        return factor_.factorise(system_.tangent(), shift) &&
               factor_.least_pivot() > singular_pivot * factor_.greatest_pivot();
    }

    bool find_step() {
        const double size = std::max(largest(system_.tangent().diagonal()), 1e-9);
        for (double shift = 0; shift < 1e6; shift = std::max(10 * shift, 1e-9)) {
            if (!factorise(shift * size)) continue;
            step_ = factor_.solve(-gradient_);
            if (step_.allFinite()) return true;
        }
        return false;
    }

    bool take_step(double unbalanced) {
        const double descent = gradient_.dot(step_);
        const double noise = 1e-13 * (std::abs(energy_) + force_ * 1e-3);
        double share = std::min(1.0, system_.longest_step() / std::max(largest(step_), 1e-300));
        for (int halvings = 0; halvings < 60; ++halvings, share /= 2) {
            tried_ = system_.unknowns + share * step_;
            try {
                system_.evaluate(tried_, false);
            } catch (const StateError&) {
                continue;  // a pole is folded there: not a place to go to, look nearer
            }
            const bool lower = system_.energy <= energy_ + 1e-4 * share * descent;
            const bool drowned = std::abs(share * descent) < noise && largest(system_.gradient) < unbalanced;
            if (!lower && !drowned) continue;
            system_.unknowns = tried_;
            return true;
        }
        return false;
    }

    System& system_;
    FrontFactor factor_;
    double energy_ = 0;
    double force_ = 0;
    Eigen::VectorXd gradient_;
    Eigen::VectorXd step_;
    Eigen::VectorXd tried_;
};

}  // namespace coverframe::kernel
