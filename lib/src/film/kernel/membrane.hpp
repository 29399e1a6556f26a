// SPDX-License-Identifier: BSD-3-Clause
// One flat triangle of film: energy, forces, tangent. Plain SI doubles: m, N.
//
// The free shape is a flat triangle of area A0. With F (3 by 2) the gradient of the present places along the free
// shape, E = (F^T F - I)/2 its Green strain with principal values E1 >= E2, l_i = sqrt(1 + 2 E_i) the principal
// stretches and e_i = l_i - 1 the strains of engineering, D = E t the stiffness of the film per width:
//   taut       e2 + nu e1 >= 0             W = D/(2 (1 - nu^2)) (e1^2 + e2^2 + 2 nu e1 e2)
//   wrinkled   e1 > 0, e2 + nu e1 < 0      W = D/2 e1^2           pulls along the first principal direction only
//   slack      e1 <= 0                     W = 0
// Energy = A0 W. W is the least energy that fine wrinkles leave of the elastic one: film cannot push. Its slope
// S = dW/dE is continuous; its second derivative jumps where wrinkles begin and is taken from the side the state is on.
// Forces per free width are linear in e, as in a strip.
//
//   gradient of node a    A0 F S g_a                 g_a gradient of the shape function of a along the free shape
//   tangent of a and b    A0 (B_a^T C B_b + (g_a S g_b) I),   B the variation of E, C = dS/dE
//
// With n, m the principal directions and s_i = dW/dE_i = (dW/de_i)/l_i:
//   C = sum of ds_i/dE_j (n_i n_i : n_j n_j) + 2 (s1 - s2)/(E1 - E2) (n m : n m)
// the last for the turning of the principal directions; written without the difference of equals in the code.
//
// Woven cloth without shear, a net, is there for comparison: threads along two directions of the free shape that do not
// know of one another,  W = D/2 (<E11>^2 + <E22>^2).
//
// Limits: strains small enough for one modulus (polyethylene: under 3 to 5 %), constant in a triangle; wrinkles have no
// stiffness and no size; isotropic film.
//
// Sources: Pipkin, The relaxed energy density for isotropic elastic membranes (1986), and Ziegler, Wagner and
// Bletzinger (2002) for the criterion by stress and strain; from memory, derivatives worked out here.
#pragma once

#include <Eigen/Core>

namespace coverframe::kernel {

using Vector9 = Eigen::Matrix<double, 9, 1>;
using Matrix9 = Eigen::Matrix<double, 9, 9>;

enum class Stretch { taut, wrinkled, slack };

/// Film by its two numbers.
struct Sheet {
    double stiffness = 0;  ///< D = E t [N/m]
    double poisson = 0;    ///< nu, 0 to under 0.5
    bool net = false;      ///< threads along the axes of the free shape, no shear
};

/// The free shape of one triangle.
struct FreeTriangle {
    /// Rows: corner; columns: gradient of its shape function along the two axes of the free shape [1/m].
    Eigen::Matrix<double, 3, 2> gradient;
    double area = 0;  ///< A0 [m2]
};

/// The free shape of a triangle that is as drawn when stretched by `stretch` in all directions of its plane (1: free as
/// drawn). Axis 1 is along x as seen in its plane, which only a net asks about.
[[nodiscard]] FreeTriangle free_triangle(const Eigen::Vector3d& a, const Eigen::Vector3d& b, const Eigen::Vector3d& c,
                                         double stretch);

/// What one triangle carries.
struct SheetStress {
    Stretch stretch = Stretch::slack;
    double first = 0;   ///< pull along the first principal direction, per present width; wrinkled: per free width [N/m]
    double second = 0;  ///< across it [N/m]
    Eigen::Vector3d direction = Eigen::Vector3d::Zero();  ///< of the first, in space
};

class Triangle {
public:
    /// \param x  places of the corners, one after the other
    Triangle(const FreeTriangle& free, const Sheet& sheet, const Vector9& x);

    [[nodiscard]] double energy() const;
    [[nodiscard]] Vector9 gradient() const;
    [[nodiscard]] Matrix9 tangent() const;
    [[nodiscard]] SheetStress stress() const;

private:
    void pull_net();
    [[nodiscard]] Eigen::Matrix3d stiffness() const;  ///< C

    const FreeTriangle& free_;
    const Sheet& sheet_;
    Eigen::Matrix<double, 3, 2> F_;
    Stretch stretch_ = Stretch::slack;
    double energy_ = 0;       ///< W
    Eigen::Vector2d n_;       ///< first principal direction
    Eigen::Vector3d strain_;  ///< E11, E22, 2 E12
    Eigen::Vector2d e_;       ///< e1, e2
    Eigen::Vector3d force_;   ///< S11, S22, S12
};

/// A triangle that pulls with the same force T per width in all directions, however far it is stretched, as a soap film
/// does: energy T times its area.
class EvenTriangle {
public:
    /// \param x  places of the corners, one after the other
    EvenTriangle(const Vector9& x, double tension);

    [[nodiscard]] double energy() const { return 0.5 * tension_ * twice_; }
    [[nodiscard]] Vector9 gradient() const;
    [[nodiscard]] Matrix9 tangent() const;
    /// Tangent of film whose stress keeps its direction in the triangle: never softer than the true one, and not soft
    /// where the triangle slides in its own plane (Pinkall and Polthier, Computing discrete minimal surfaces and their
    /// conjugates, 1993, from memory).
    [[nodiscard]] Matrix9 secant() const;

private:
    [[nodiscard]] Eigen::Matrix<double, 3, 9> normal_change() const;

    double tension_ = 0;
    double twice_ = 0;          ///< the area [m2]
    Eigen::Vector3d normal_;    ///< unit
    Eigen::Matrix3d opposite_;  ///< columns: the side opposite each corner
};

}  // namespace coverframe::kernel
