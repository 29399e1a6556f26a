// SPDX-License-Identifier: BSD-3-Clause
#include "plane_beam.hpp"

#include <Eigen/Dense>
#include <cmath>

namespace coverframe::kernel {

PlaneBeam plane_beam(double EI, double GA, double length, const EndSprings& springs) {
    const double f = GA > 0 ? 12 * EI / (GA * length * length) : 0;
    PlaneBeam beam;
    Eigen::Matrix2d& k = beam.stiffness;
    Eigen::Vector2d& c = beam.load;
    k << 4 + f, 2 - f, 2 - f, 4 + f;
    k *= EI / (length * (1 + f));
    c << 1.0 / 12, -1.0 / 12;
    for (const int i : {0, 1}) {
        const double spring = i == 0 ? springs.from : springs.to;
        if (!std::isfinite(spring) || !(k(i, i) > 0)) continue;
        const Eigen::Vector2d column = k.col(i) / (k(i, i) + spring);
        c -= column * c(i);
        k -= column * k.row(i).eval();
        if (spring > 0) continue;
        k.row(i).setZero();  // what is left there is rounding
        k.col(i).setZero();
        c(i) = 0;
    }
    return beam;
}

}  // namespace coverframe::kernel
