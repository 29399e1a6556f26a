// SPDX-License-Identifier: BSD-3-Clause
// An even load along a pole, and its temperature, as energies beside the pole's own (pole.hpp). Plain SI doubles: m, N.
//
// Load q per drawn length, direction fixed. r, A_k, B_k as in pole.hpp, L the drawn length; u and the turns are those
// of the member's ends. With c the share of each plane and end (plane_beam.hpp):
//
//   E = -q L.(u_from + u_to)/2 - L^2 sum over ends [ c q.(X_1 - r) - d ((q.X_3)(r.X_3) - (q.X_2)(r.X_2)) ]
//
//   X = A at `from`, B at `to`;  c = (c3 + c2)/2,  d = (c3 - c2)/2  of the planes of axes 3 and 2 at that end
//
// X_1 - r is the slope of the end, and with d, which is 0 unless an end spring meets two planes of unlike stiffness,
// each plane has its own share. Rigid ends: c = 1/12 and -1/12, r drops out and each node turns on a lever of its own,
// -L^2/12 q.A_1 and +L^2/12 q.B_1; no unknown of one node meets one of the other.
//
// Forces in the member: the moments of its ends get the load's part, +L^2 c3 q.X_3 about axis 2 and -L^2 c2 q.X_2 about
// axis 3: fixed-ended -q L^2/12, on two hinges 0.
//
// Warmth: strain a = alpha dT makes the axial energy EA/(2 L0) (e - a L0)^2, e = l - L0: to EA/(2 L0) e^2 come
// -EA a e and a constant.
//
// Exact: the first order, whatever the shear stiffness; rigid turns of any size. Limits: those of pole.hpp; solve.hpp
// names the terms of the second order.
// Source: principle of virtual work on the textbook's beam (McGuire, Gallagher and Ziemian, Matrix Structural Analysis,
// from memory); derivatives worked out here.
#pragma once

#include <Eigen/Core>
#include <array>

#include "frame/kernel/pole.hpp"

namespace coverframe::kernel {

class PoleLoad {
public:
    /// \param from,to  drawn places of the ends [m]
    /// \param axes     rows: drawn axes 1, 2, 3
    PoleLoad(const Eigen::Vector3d& from, const Eigen::Vector3d& to, const Eigen::Matrix3d& axes,
             const BendingStiffness& bending, const EndSprings& springs);

    /// Adds energy, gradient and Hessian of the load `q` [N/m] at the ends `d`.
    /// \param geometric  false: no Hessian; all of it comes from the load's present direction
    void add(const Eigen::Vector3d& q, const Vector12& d, bool geometric, Pole::State& state) const;

    /// Adds the load's part to the moments of the ends.
    /// \returns the whole load along the axes 1, 2, 3 [N]
    [[nodiscard]] Eigen::Vector3d add(const Eigen::Vector3d& q, const Vector12& d, PoleForces& forces) const;

private:
    void add_chord(int end, const Eigen::Vector3d& q, const Vector12& d, bool geometric, Pole::State& state) const;

    Eigen::Vector3d drawn_;
    Eigen::Matrix3d axes_;  ///< columns e1 e2 e3
    double length_;
    std::array<double, 2> share_;   ///< c at from and to
    std::array<double, 2> uneven_;  ///< d at from and to
    bool by_chord_;                 ///< whether r plays a part
};

/// Adds what a pole's energy changes by when it is warmer by the strain `a`.
/// \param chord  present line between the ends [m]
void add_warmth(double EA, double free_length, double a, const Eigen::Vector3d& chord, bool geometric,
                Pole::State& state);

}  // namespace coverframe::kernel
