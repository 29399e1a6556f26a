// SPDX-License-Identifier: BSD-3-Clause
#include "catenary.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>

#include "coverframe/base/error.hpp"

namespace coverframe::kernel {
namespace {

using Eigen::Vector3d;

/// sinh x - x
double sinh_over(double x) {
    if (x > 0.5) return std::sinh(x) - x;
    const double s = x * x;
    return x * s / 6 * (1 + s / 20 * (1 + s / 42 * (1 + s / 72 * (1 + s / 110 * (1 + s / 156 * (1 + s / 210))))));
}

/// x/tanh x - 1
double excess_of(double x) {
    if (x > 0.05) return x / std::tanh(x) - 1;
    const double s = x * x;
    return s / 3 * (1 - s / 15 * (1 - 2 * s / 21 * (1 - s / 10)));
}

/// 1 - 2x/sinh 2x
double bend_of(double x) {
    const double z = 2 * x;
    if (z > 0.06) return 1 - z / std::sinh(z);
    const double s = z * z;
    return s / 6 * (1 - s * 7 / 60 * (1 - s * 31 / 294 * (1 - s * 381 / 3720)));
}

/// The chord and the load in numbers without dimension.
struct Shape {
    double along = 0;    ///< c_e/L0
    double across = 0;   ///< c_h/L0
    double stretch = 0;  ///< |c|/L0 - 1
    double f = 0;        ///< w/(2 EA)
};

/// Left side of the equation for x, less one, and its derivative along ln x.
struct Excess {
    double value = 0;
    double slope = 0;
};

Excess excess(const Shape& shape, double x) {
    const double tanh = std::tanh(x);
    const double s = std::sinh(x) / (x + shape.f);
    const double t = tanh / (tanh + shape.f);
    const double across = shape.across * shape.across;
    const double along = shape.along * shape.along;
    const double ds = (std::cosh(x) - s) / (x + shape.f);
    const double dt = shape.f * (1 - tanh * tanh) / ((tanh + shape.f) * (tanh + shape.f));
    // s^2 - 1 and t^2 - 1 as products, and |c|^2/L0^2 - 1 by the stretch: a stiff strap would drown in rounding.
    return {across * (s + 1) * (sinh_over(x) - shape.f) / (x + shape.f) - along * (t + 1) * shape.f / (tanh + shape.f) +
                shape.stretch * (2 + shape.stretch),
            2 * x * (across * s * ds + along * t * dt)};
}

/// Pull along the chord in the shallow limit, over EA; f_n is the load square to the chord over 2 EA.
double shallow_pull(double stretch, double f_n) {
    const double load = f_n * f_n / 6;
    double pull = std::max(stretch, 0.0) + std::cbrt(load);
    for (int i = 0; i < 100 && pull > 0; ++i) {  // falls to the root from above
        const double step = ((pull - stretch) * pull * pull - load) / (pull * (3 * pull - 2 * stretch));
        pull -= step;
        if (!(step > 1e-15 * pull)) break;
    }
    return pull;
}

/// The root x. Newton along ln x, between bounds.
double root_of(const Shape& shape) {
    const double chord = std::hypot(shape.across, shape.along);
    const double pull = shallow_pull(shape.stretch, shape.f * shape.across / chord);
    const double deep = std::log(2 * (1 + shape.f) / shape.across + 2) + 2;
    double x = std::min(shape.f / std::max(pull, 1e-300), deep);
    double low = 0;
    double high = std::numeric_limits<double>::infinity();
    for (int i = 0; i < 200; ++i) {
        const Excess now = excess(shape, x);
        if (now.value == 0) return x;
        (now.value < 0 ? low : high) = x;
        const double step = -std::log1p(now.value) * (1 + now.value) / now.slope;
        double next = x * std::exp(std::clamp(step, -2.0, 2.0));
        if (!(next > low && next < high)) {
            next = high < std::numeric_limits<double>::infinity() ? (low > 0 ? std::sqrt(low) * std::sqrt(high) : x / 8)
                                                                  : 2 * x;
        }
        if (std::abs(next - x) <= 2e-16 * x || next == low || next == high) return next;
        x = next;
    }
    return x;
}

/// Forces at the middle and at the ends, in the plane of the load and the chord.
struct Plane {
    double w = 0;         ///< the whole load [N]
    double slip = 0;      ///< 1/EA
    double a = 0, h = 0;  ///< M
    double k = 0, A = 1, B = 0;
    double X = 0, Y = 1;
    double N = 0;
    double swing = 0;  ///< a/N times w: T1 = N/2 + swing
    double bend = 0;   ///< (N/4 - a^2/N)(1 - (1 - y^2) A)
    bool doubled = false;
};

Plane solve_plane(const Shape& shape, double w, double EA) {
    Plane p;
    p.w = w;
    p.slip = 1 / EA;
    double x = 0;
    double y = 1;
    if (shape.across > 1e-100) {
        x = root_of(shape);
        y = std::tanh(x);
    } else if (shape.stretch > shape.f) {
        y = shape.f / shape.stretch;
        x = std::atanh(y);
    } else {
        p.doubled = true;
    }
    p.N = w / y;
    p.k = 2 / p.N;
    p.a = shape.along / (p.k + p.slip);
    p.swing = p.a * y;
    if (p.doubled) {
        p.X = 1;
        p.Y = 0;
        p.bend = p.N / 4 - p.a * p.a / p.N;
        return p;
    }
    p.B = excess_of(x);
    p.A = 1 + p.B;
    p.h = shape.across > 1e-100 ? shape.across / (p.k * p.A + p.slip) : 0;
    const double both = (p.N / 2 + p.swing) * (p.N / 2 - p.swing);
    const double turned = p.h * std::cosh(x);
    const double straight = p.a / std::cosh(x);
    p.X = turned * turned / both;
    p.Y = straight * straight / both;
    p.bend = turned * turned / p.N * bend_of(x);
    return p;
}

/// Greatest distance from the chord, square to it, over L0.
double sag_of(const Plane& p, const Shape& shape) {
    const double chord = std::hypot(shape.across, shape.along);
    const double v1 = p.a + p.w / 2;
    if (chord == 0) return v1 / p.w * (1 + v1 * p.slip / 2);
    if (p.h == 0) return 0;
    // The strap runs along the chord where the part of its force along the load is v.
    const double give = p.k * p.A + p.slip;
    const double v = p.a * (p.k + p.slip) / give;
    const double share = 0.5 + p.a * p.k * p.B / (give * p.w);  // of the free length, from `from`
    const double sum = p.N / 2 + p.swing + std::hypot(p.h, v);
    const double y = share * p.w / sum;
    const double angle = y < 0.5 ? std::atanh(y) : (std::asinh(v1 / p.h) - std::asinh(v / p.h)) / 2;
    const double down = share * (v1 + v) * (1 / sum + p.slip / 2);
    const double over = (2 * angle / p.w + share * p.slip) / give;  // of the way across
    return std::abs(down - shape.along * over) * shape.across / chord;
}

/// The strap without a load.
Catenary straight(const Vector3d& chord, double stretch, double EA, double L0) {
    Catenary c;
    c.middle.setZero();
    c.tangent.setZero();
    if (stretch < 0) return c;
    const Vector3d n = chord.normalized();
    const double pull = EA / L0 * stretch;
    c.energy = 0.5 * pull * stretch;
    c.middle = pull * n;
    c.turning = pull / (L0 + stretch);
    c.tangent = c.turning * Eigen::Matrix3d::Identity() + (EA / L0 - c.turning) * n * n.transpose();
    c.tension_from = c.tension_to = c.least = pull;
    return c;
}

Catenary hung(const Vector3d& chord, double stretch, double EA, double L0, const Vector3d& q) {
    const double w = q.norm() * L0;
    const Vector3d e = q.normalized();
    const double down = chord.dot(e);
    const Vector3d level = chord - down * e;
    const Shape shape{down / L0, level.norm() / L0, stretch / L0, w / (2 * EA)};
    const Plane p = solve_plane(shape, w, EA);
    const Vector3d across = shape.across > 1e-100 ? Vector3d(level.normalized()) : Vector3d(Vector3d::Zero());

    Catenary c;
    c.energy = L0 * ((p.a * p.a + p.h * p.h - w * w / 12) * p.slip / 2 - p.bend);
    c.middle = p.a * e + p.h * across;
    c.tension_from = p.N / 2 + p.swing;
    c.tension_to = p.N / 2 - p.swing;
    const bool level_inside = p.a + w / 2 > 0 && p.a - w / 2 < 0;
    c.least = level_inside ? p.h : std::min(c.tension_from, c.tension_to);
    c.sag = L0 * sag_of(p, shape);
    if (p.doubled) {
        c.tangent = e * e.transpose() / (L0 * (p.k + p.slip));
        return c;
    }
    const double along = p.k * p.X + p.slip;
    const double over = p.k * (p.B + p.Y) + p.slip;
    const double both = p.k * p.a * p.h / (c.tension_from * c.tension_to);  // minus F_eh
    const double size = L0 * (p.k * p.k * p.X * p.B + p.slip * (p.k * p.A + p.slip));
    c.turning = 1 / (L0 * (p.k * p.A + p.slip));
    c.tangent = c.turning * (Eigen::Matrix3d::Identity() - e * e.transpose() - across * across.transpose());
    c.tangent += over / size * e * e.transpose() + along / size * across * across.transpose();
    c.tangent += both / size * (e * across.transpose() + across * e.transpose());
    return c;
}

}  // namespace

Catenary catenary(const Vector3d& chord, double stretch, double EA, double L0, const Vector3d& q) {
    const double share = q.norm() * L0 / EA;
    const bool sound = chord.allFinite() && std::isfinite(stretch) && EA > 0 && L0 > 0 && std::isfinite(share);
    // A load that is nothing against the strap's stiffness leaves it straight, or slack.
    Catenary c =
        !sound || share < 1e-250 ? straight(chord, sound ? stretch : -1, EA, L0) : hung(chord, stretch, EA, L0, q);
    if (!sound || !std::isfinite(c.energy) || !c.tangent.allFinite() || !std::isfinite(c.sag)) {
        throw StateError("frame.strap.shape", "the shape of a loaded strap cannot be found from numbers of that size");
    }
    return c;
}

Parabola parabola(const Vector3d& chord, double EA, double L0, const Vector3d& q) {
    const double length = chord.norm();
    const double square = L0 * (q - q.dot(chord) / (length * length) * chord).norm();
    const double pull = EA * shallow_pull(length / L0 - 1, square / (2 * EA));
    return {pull, square * length / (8 * pull)};
}

}  // namespace coverframe::kernel
