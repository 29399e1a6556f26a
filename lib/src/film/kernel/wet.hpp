// SPDX-License-Identifier: BSD-3-Clause
// Water over one flat triangle, its surface at a fixed level: moments over the wet part, energy, forces, tangent.
//
// d = level - z is linear in the triangle; N_i are the shares of its corners; A its area seen from above. All integrals
// are over the part with d > 0 and exact: it is cut into triangles, on which quadratics are a third of the sum over the
// midpoints of the sides.
//
//   energy      Pi = -g/2 A Q,  Q = 1/A integral of d^2    g unit weight of water
//   along z_i   g integral of N_i d                        the weight of the water on corner i
//   along x, y  -g/2 Q dA                                  what the pressure, square to the film, has sideways
// This is the whole pressure of water at rest on the film, as long as the level stays: it has an energy, so its tangent
// is symmetric. Where the water sinks with the film it takes stiffness away (-g integral of N_i N_j): near the tension
// at which a pond grows without end, all of it.
#pragma once

#include <Eigen/Core>
#include <array>

namespace coverframe::kernel {

inline constexpr double water_weight = 9810;  ///< fresh water, per volume [N/m3]

/// Over the wet part, per area of the whole triangle.
struct WetMoments {
    double area = 0;                                      ///< share that is wet [-]
    Eigen::Vector3d depth = Eigen::Vector3d::Zero();      ///< of N_i d [m]
    Eigen::Matrix3d stiffness = Eigen::Matrix3d::Zero();  ///< of N_i N_j [-]
    double square = 0;                                    ///< of d^2 [m2]
};

/// \param depths  level minus height of each corner [m]; negative where dry
[[nodiscard]] WetMoments wet_moments(const Eigen::Vector3d& depths);

/// Energy of the water and its derivatives over the corners' places, x y z each.
struct WetTriangle {
    double energy = 0;  ///< [N m]
    Eigen::Matrix<double, 9, 1> gradient;
    Eigen::Matrix<double, 9, 9> tangent;
};
/// \param corners      places in columns [m]
/// \param unit_weight  g [N/m3]
[[nodiscard]] WetTriangle wet_triangle(const Eigen::Matrix3d& corners, double level, double unit_weight);

}  // namespace coverframe::kernel
