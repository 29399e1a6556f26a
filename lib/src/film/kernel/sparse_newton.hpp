// SPDX-License-Identifier: BSD-3-Clause
// The least of an energy over many unknowns: Newton with the exact sparse tangent and a line search on the energy.
//
// Where the tangent is not positive definite it is shifted by its own size until it is, so every step goes downhill; a
// step is halved until the energy falls by a share of what the slope promises. An energy that is bounded below then
// ends where the forces balance. Where changes of energy drown in rounding, a step that lowers the largest unbalanced
// force is taken instead.
//
// Where forces balance but the energy falls away to some side, as over a pole about to buckle, it goes on to that side.
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
    int departed = -1;  ///< unknown that went furthest where a balance on the way would not last; -1: none was met
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
        int departures = 0;
        constexpr int most_departures = 5;
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
                if (end.stable || ++departures > most_departures || !depart()) return end;
                end.balanced = false;
                step_.cwiseAbs().maxCoeff(&end.departed);
                continue;
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

    double stiffest() const { return std::max(largest(system_.tangent().diagonal()), 1e-9); }

    /// With the least shift that makes the tangent positive definite.
    bool factorise_shifted() {
        for (double shift = 0; shift < 1e6; shift = std::max(10 * shift, 1e-9)) {
            if (factorise(shift * stiffest())) return true;
        }
        return false;
    }

    bool find_step() {
        if (!factorise_shifted()) return false;
        step_ = factor_.solve(-gradient_);
        return step_.allFinite();
    }

    /// Looks at the place a share of the step away; false if there is none.
    bool look_ahead(double share) {
        tried_ = system_.unknowns + share * step_;
        try {
            system_.evaluate(tried_, false);
        } catch (const StateError&) {
            return false;  // a pole is folded there
        }
        return true;
    }

    /// From where forces balance to where the energy is less, along the direction of the least stiffness (inverse
    /// iteration). False if that is no less than nothing: what nothing holds does not fall.
    bool depart() {
        if (!factorise_shifted()) return false;
        step_.resize(gradient_.size());
        for (Eigen::Index i = 0; i < step_.size(); ++i) step_(i) = std::sin(1.0 + 0.7 * static_cast<double>(i));
        constexpr int rounds = 30;
        for (int round = 0; round < rounds; ++round) {
            step_ = factor_.solve(step_).eval();
            step_ /= largest(step_);
        }
        const Eigen::VectorXd force = system_.tangent().template selfadjointView<Eigen::Lower>() * step_;
        const double stiffness = step_.dot(force);
        if (!(stiffness < -1e-9 * stiffest())) return false;
        for (double length = 0.1 * system_.longest_step(); length > 1e-6 * system_.longest_step(); length /= 2) {
            for (const double way : {length, -length}) {
                if (!look_ahead(way) || system_.energy > energy_ + 0.1 * stiffness * length * length) continue;
                system_.unknowns = tried_;
                return true;
            }
        }
        return false;
    }

    bool take_step(double unbalanced) {
        const double descent = gradient_.dot(step_);
        const double noise = 1e-13 * (std::abs(energy_) + force_ * 1e-3);
        double share = std::min(1.0, system_.longest_step() / std::max(largest(step_), 1e-300));
        for (int halvings = 0; halvings < 60; ++halvings, share /= 2) {
            if (!look_ahead(share)) continue;  // nearer there may be
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
