// SPDX-License-Identifier: BSD-3-Clause
// The rotation of a node, R = exp([t]x), from its rotation vector t, with its first and second derivatives.
//
//   R = I + a [t]x + b [t]x^2             a = sin t/t, b = (1 - cos t)/t^2, c = (t - sin t)/t^3
//   w = T dt,  T = I + b [t]x + c [t]x^2  w the turning that a change of t makes, in global axes
//
// An energy that depends on the node through w with moment g has the gradient T^T g along t. Where g is fixed, the
// derivative of that along t is D; its part that is not symmetric is 1/2 T^T [g]x T, which what turns g with the node
// always takes back, so the kernels add the symmetric part alone:
//   (D + D^T)/2 = 1/2 (v t^T + t v^T) + c (t.g) I,  v = -2 b' t x g + 2 c' ((t.g) t - s g) - c g
// with b', c' the derivatives of b and c along s = t.t. T is singular at |t| = 2 pi.
//
// Coefficients. Below s = 1 by the series of c, b' and c', of which a = 1 - s c and b = a/2 - s b' follow without loss.
#pragma once

#include "frame/kernel/space.hpp"

namespace coverframe::kernel {

struct TurnCoefficients {
    double a, b, c, db, dc;
};
[[nodiscard]] TurnCoefficients turn_coefficients(double s);

/// Series along s of c, b' and c', with alternating signs: 1/(2n + 3)!, (n + 1)/(2n + 4)!, (n + 1)/(2n + 5)!.
struct TurnSeries {
    static constexpr int terms = 9;  // the next term is under 1e-17 of the first for s < 1
    Series<terms> c{}, db{}, dc{};

    constexpr TurnSeries() {
        double factor = 1.0 / 6;  // (-1)^n/(2n + 3)!
        for (int n = 0; n < terms; ++n) {
            c.coefficient[n] = factor;
            db.coefficient[n] = -(n + 1) * factor / (2 * n + 4);
            dc.coefficient[n] = -(n + 1) * factor / ((2 * n + 4) * (2 * n + 5));
            factor /= -(2 * n + 4) * (2 * n + 5);
        }
    }
};
inline constexpr TurnSeries turn_series;

/// A node's turn as the members at it need it.
template <class N>
struct Turned {
    Vec<N> t;
    N s, b, c, db, dc;
    Mat<N> change;  ///< R - I
};

template <class N>
COVERFRAME_INLINE void set_coefficients(Turned<N>& turn, N& a) {
    if (all(turn.s < number<N>(1))) {
        constexpr int terms = TurnSeries::terms;
        turn.c = sum_of<terms>(turn_series.c, turn.s);
        turn.db = sum_of<terms>(turn_series.db, turn.s);
        turn.dc = sum_of<terms>(turn_series.dc, turn.s);
        a = 1 - turn.s * turn.c;
        turn.b = 0.5 * a - turn.s * turn.db;
        return;
    }
    if constexpr (sizeof(N) == sizeof(double)) {
        const TurnCoefficients k = turn_coefficients(turn.s);
        a = k.a;
        turn.b = k.b;
        turn.c = k.c;
        turn.db = k.db;
        turn.dc = k.dc;
    } else {
        for (int lane = 0; lane < lanes; ++lane) {
            const TurnCoefficients k = turn_coefficients(turn.s.v[lane]);
            a.v[lane] = k.a;
            turn.b.v[lane] = k.b;
            turn.c.v[lane] = k.c;
            turn.db.v[lane] = k.db;
            turn.dc.v[lane] = k.dc;
        }
    }
}

/// a [t]x + b [t]x^2
template <class N>
COVERFRAME_INLINE Mat<N> spin(const N& a, const N& b, const Vec<N>& t) {
    const Vec<N> at = a * t;
    const Vec<N> bt = b * t;
    const N xx = bt.x * t.x, yy = bt.y * t.y, zz = bt.z * t.z;
    const N xy = bt.x * t.y, xz = bt.x * t.z, yz = bt.y * t.z;
    return {{-(yy + zz), xy + at.z, xz - at.y}, {xy - at.z, -(xx + zz), yz + at.x}, {xz + at.y, yz - at.x, -(xx + yy)}};
}

template <class N>
COVERFRAME_INLINE Turned<N> turned(const Vec<N>& t) {
    Turned<N> turn;
    turn.t = t;
    turn.s = dot(t, t);
    N a;
    set_coefficients(turn, a);
    turn.change = spin(a, turn.b, t);
    return turn;
}

/// T in w = T dt
template <class N>
COVERFRAME_INLINE Mat<N> rate_of(const Turned<N>& turn) {
    Mat<N> rate = spin(turn.b, turn.c, turn.t);
    rate.c0.x = 1 + rate.c0.x;
    rate.c1.y = 1 + rate.c1.y;
    rate.c2.z = 1 + rate.c2.z;
    return rate;
}

/// Adds the symmetric part of the derivative along t of T^T g with g fixed.
template <class N>
COVERFRAME_INLINE void add_rate_change(const Turned<N>& turn, const Vec<N>& g, Sym<N>& sum) {
    const N along = dot(turn.t, g);
    const Vec<N> v =
        (2 * turn.dc * along) * turn.t - (2 * turn.dc * turn.s + turn.c) * g - (2 * turn.db) * cross(turn.t, g);
    add_both(0.5 * v, turn.t, sum);
    add_diagonal(turn.c * along, sum);
}

}  // namespace coverframe::kernel
