// SPDX-License-Identifier: BSD-3-Clause
// The least of an energy by dynamic relaxation with kinetic damping: a second way to an equilibrium that shares nothing
// with Newton but the forces. No tangent is factorised, slack parts do no harm; many cheap steps instead of few dear
// ones.
//
//   v += r/m,  x += v,  r the unbalanced force;  whenever the kinetic energy has passed a peak all v are set to zero
//
// The time step is 1. It is stable while m >= k/4 for every frequency; m is the sum of the sizes of the tangent's row
// (Gershgorin bounds k by it), four times what is needed, the greatest so far: film that is slack at one step and taut
// at the next would else be thrown to and fro for ever.
//
// Sources: Day (1965) and Barnes, Form finding and analysis of tension structures by dynamic relaxation (1999), from
// memory. The System is that of sparse_newton.hpp.
#pragma once

#include <Eigen/SparseCore>
#include <algorithm>
#include <string>

#include "film/kernel/sparse_newton.hpp"

namespace coverframe::kernel {

template <class System>
class Relaxation {
public:
    explicit Relaxation(System& system) : system_(system) {}

    /// \param tolerance  largest unbalanced force, relative to the largest force in the system
    NewtonEnd run(double tolerance, int most) {
        NewtonEnd end;
        mass_.setZero(system_.unknowns.size());
        rest();
        double before = 0;
        for (end.iterations = 0; end.iterations <= most; ++end.iterations) {
            weigh();
            end.unbalanced = system_.gradient.size() > 0 ? system_.gradient.cwiseAbs().maxCoeff() : 0;
            if (end.unbalanced <= tolerance * system_.largest_force) {
                end.balanced = true;
                return end;
            }
            velocity_ -= system_.gradient.cwiseQuotient(mass_);
            const double kinetic = 0.5 * velocity_.cwiseProduct(mass_).dot(velocity_);
            if (kinetic < before) {
                rest();
                before = 0;
                continue;
            }
            before = kinetic;
            system_.unknowns += velocity_;
        }
        end.reason = "no balance after " + std::to_string(most) + " steps of relaxation";
        return end;
    }

private:
    void rest() { velocity_.setZero(system_.unknowns.size()); }

    /// Looks at the place, with masses for the tangent there.
    void weigh() {
        system_.evaluate(system_.unknowns, true);
        const Eigen::SparseMatrix<double>& K = system_.tangent();
        Eigen::VectorXd sum = Eigen::VectorXd::Zero(K.rows());
        for (int column = 0; column < K.outerSize(); ++column) {
            for (Eigen::SparseMatrix<double>::InnerIterator entry(K, column); entry; ++entry) {
                sum(entry.row()) += std::abs(entry.value());
                if (entry.row() != entry.col()) sum(entry.col()) += std::abs(entry.value());
            }
        }
        mass_ = mass_.cwiseMax(sum).cwiseMax(1e-9 * sum.maxCoeff());
    }

    System& system_;
    Eigen::VectorXd mass_;
    Eigen::VectorXd velocity_;
};

}  // namespace coverframe::kernel
